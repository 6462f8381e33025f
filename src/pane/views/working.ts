/** Showing how the selected cell comes to its value. */
import { NAMESPACE } from "../../formula/namespace";
import { button, make, paragraph, setText } from "../dom";
import { placeInWords, type View } from "../view";
import { workOf, type Work, type WorkedArgument, type WorkedStep } from "../workOf";

export const working: View = {
  id: "working",
  label: "Show calculation",
  title: "Show calculation",
  build: ({ host, run, onSelection }) => {
    const result = make("div", {});
    const show = (): void =>
      void run("Working it out…", async () => {
        const { sheet, at } = await host.selection();
        const work = workOf(await host.readBook(), sheet, at);
        setText(again, `Show the calculation of ${placeInWords({ sheet, at })}`);
        if (typeof work === "string") {
          result.replaceChildren(paragraph(work));
          return "There is no calculation to show for this cell.";
        }
        result.replaceChildren(...shownWork(work, placeInWords({ sheet, at })));
        return `The calculation of ${placeInWords({ sheet, at })} is shown.`;
      });
    const again = button("Show the calculation", show, "pane-button pane-first");
    onSelection((selection) => setText(again, `Show the calculation of ${placeInWords(selection)}`));
    return {
      body: [paragraph("Select a cell that one of the RIG functions calculates."), again, result],
      shown: show,
    };
  },
};

function shownWork({ shown, formula, partOnly, from, args, steps, why }: Work, place: string): HTMLElement[] {
  return [
    make("h2", {}, place),
    paragraph(from ? `Filled by the formula in ${from}:` : "Its formula:"),
    make("p", {}, make("code", {}, `=${formula}`)),
    ...(partOnly ? [paragraph(`Shown is the part that ${NAMESPACE}.${shown.name} does.`, "pane-quiet")] : []),
    ...(args.length > 0
      ? [make("h3", {}, "With"), make("dl", { className: "pane-facts" }, ...args.flatMap(argument))]
      : []),
    make("h3", {}, "By"),
    paragraph(shown.equation),
    paragraph(shown.source, "pane-quiet"),
    ...(why ? [paragraph(why, "pane-way")] : []),
    ...(steps.length > 0
      ? [make("h3", {}, "Step by step"), make("ol", { className: "pane-steps" }, ...steps.map(step))]
      : []),
    ...(shown.caution ? [paragraph(`Caution: ${shown.caution}`, "pane-caution")] : []),
  ];
}

function argument({ name, written, value, unit }: WorkedArgument): HTMLElement[] {
  const same = value === undefined || value === written;
  return [
    make("dt", {}, name),
    make(
      "dd",
      {},
      `${value ?? written}${unit && value !== "blank" ? ` ${unit}` : ""}`,
      ...(same ? [] : [make("span", { className: "pane-quiet" }, ` from ${written}`)]),
    ),
  ];
}

function step({ symbol, meaning, value, line, source }: WorkedStep): HTMLLIElement {
  return make(
    "li",
    {},
    make("p", {}, make("b", {}, `${symbol} = ${value}`)),
    ...(line ? [make("p", {}, make("code", {}, line))] : []),
    paragraph(`${meaning}. ${source}`, "pane-quiet"),
  );
}
