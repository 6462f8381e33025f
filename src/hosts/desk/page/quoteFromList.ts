/** The dialog that asks for somebody else's quote. */
import { EXAMPLE_LIST, LIST_FILES, PASTE_LIST } from "../../../pane/listedQuote";
import { ask, chooseFile } from "./dialogs";
import { make } from "./dom";

export const isList = ({ name }: File): boolean => /\.(?:csv|txt|tsv)$/i.test(name);

/** @returns undefined where the user thinks better of it */
export async function askForList(): Promise<Blob | undefined> {
  const text = make("textarea", {
    id: "quote-list",
    className: "desk-input desk-list",
    rows: 10,
    dir: "auto",
  });
  const answer = await ask(
    "Quote review from a list",
    [
      make("label", { htmlFor: text.id }, PASTE_LIST),
      text,
      make(
        "button",
        { type: "button", className: "desk-button", onclick: () => (text.value = EXAMPLE_LIST) },
        "Show an invented one",
      ),
      make("p", {}, "Or choose a file: .csv, .txt, .tsv or .xlsx. What cannot be read is asked on Review."),
    ],
    [
      { label: "Take the text", value: "text" },
      { label: "Choose a file…", value: "file" },
      { label: "Cancel", value: "" },
    ],
  );
  if (answer === "text") return new Blob([text.value]);
  return answer === "file" ? chooseFile(LIST_FILES) : undefined;
}
