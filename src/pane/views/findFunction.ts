/** Finding a function by the words of a task, and putting its example into a cell. */
import { allFunctions } from "../../functions/all";
import { make, paragraph, setText } from "../dom";
import { findFunctions } from "../findFunctions";
import { functionEntry } from "../functionEntry";
import type { LooseView } from "../view";

export const findFunction: LooseView = {
  id: "functions",
  label: "Functions",
  title: "Find a function",
  build: (context) => {
    const search = make("input", {
      id: "pane-search",
      className: "pane-input",
      type: "search",
      autocomplete: "off",
      spellcheck: false,
    });
    const count = paragraph("", "pane-quiet");
    count.setAttribute("role", "status");
    const list = make("ul", { className: "pane-list" });
    const entries = new Map(allFunctions.map((one) => [one, functionEntry(one, context)]));
    const show = (): void => {
      const { functions, all } = findFunctions(allFunctions, search.value);
      list.replaceChildren(...functions.map((one) => entries.get(one)!));
      setText(
        count,
        functions.length === 0
          ? "No function has any of these words. Try the thing itself: cable, volts, tuners, azimuth, price."
          : all
            ? `${functions.length} of ${allFunctions.length} functions${search.value.trim() === "" ? "" : ", best first"}`
            : `No function has all of these words; ${functions.length === 1 ? "1 has" : `${functions.length} have`} some, best first.`,
      );
    };
    search.addEventListener("input", show);
    show();
    return {
      body: [
        make("label", { htmlFor: search.id }, "What do you want to know?"),
        search,
        paragraph("For example: how much loss in the cable; which way does the dish point.", "pane-quiet"),
        count,
        list,
      ],
      focus: search,
    };
  },
};
