/** The help: finding a function by an estimator's words, the keys, and what is saved where. */
import type { SheetFunction } from "../../../functions/core/declare";
import { pageOf, syntaxOf } from "../../../help/facts";
import { INDEX_PAGE, LIMITS_PAGE, SHEETS_PAGE } from "../../../help/frame";
import { NAMESPACE } from "../../../formula/namespace";
import { WRITING_LABEL } from "../../../workbooks/typed/writing";
import { NOTICES_PAGE } from "../protocol";
import { ask } from "./dialogs";
import { make } from "./dom";
import { stand, type Stand } from "./stand";

const KEYS: readonly (readonly [string, string])[] = [
  ["F2 or Enter", "edit the selected cell"],
  ["=", "start a formula; type RIG. to see this workbook's functions"],
  ["Ctrl+Z, Ctrl+Y", "undo, redo"],
  ["Ctrl+J", "all jobs and their revisions, and back"],
  ["Alt+Left, Alt+Right", "what was shown before and after: a job, the list, the start page"],
  ["Ctrl+S", "save the workbook as .xlsx"],
  ["Ctrl+P", "print the quote, other sheets, cards for the crew, or the proposal; or save them as PDF"],
  ["Ctrl+C, Ctrl+V", "copy, paste; calculated cells are left as they are"],
  ["Ctrl+H", "find and replace"],
  [
    "F6",
    "from the grid to the pane, to the bar, and back; there, Check, Read as table has the rows for a screen reader",
  ],
  ["F8", "to the next finding of the list; with Shift to the one before"],
  ["Shift+PageDown, Shift+PageUp", "next sheet, previous sheet"],
];

/** What is saved where. */
const KEPT: Readonly<Record<Stand, string>> = {
  server:
    "Every change is saved at once in the data folder and is there again after a restart. While the server is away, what you type is kept in this browser.",
  folder:
    "Every change is saved at once in this browser, for this address, and nowhere else: nothing goes to the server. The browser may throw it away, as the foot of “Jobs” says, so save files and export.",
  file: "Every change is kept at once in this browser, as a rescue only: other pages that are opened from files may read or clear it. The place of a job is a file: save it, or export all, before you close the page.",
};

export function showHelp(functions: readonly SheetFunction[]): void {
  const list = make("ul", { className: "desk-functions" });
  const search = make("input", {
    id: "search",
    className: "desk-input",
    type: "text",
    autocomplete: "off",
  });
  const found = make("p", { role: "status" });
  const show = () => {
    const words = search.value.toLowerCase().split(/\s+/).filter(Boolean);
    const fitting = functions.filter((one) => words.every((word) => wordsOf(one).includes(word)));
    found.textContent = `${fitting.length} of ${functions.length} functions`;
    list.replaceChildren(...fitting.map(entryOf));
  };
  search.addEventListener("input", show);
  show();
  void ask(
    "Help",
    [
      make(
        "p",
        {},
        "Fill the tinted cells; everything else is calculated as you type. A calculated cell that shows an error says what is wrong, and what to do, when the pointer rests on it or it is selected.",
      ),
      make(
        "p",
        {},
        `Type as you are used to: 9,5 or 9.5 m, 41' 6", 1.2 GHz, 20 %, 27 Nov 2026. A name stays as it is typed, 3-16 too. What can be read in two ways is refused and stays in the cell; “${WRITING_LABEL}”, beside the date of the job, says how dates with strokes and thousands are meant.`,
      ),
      make(
        "p",
        {},
        `${KEPT[stand]} “Jobs” lists all jobs with their frozen revisions; nothing is thrown away but by you. “Export all…” there puts all of them into one file, and “Bring in…” takes such a file in, on any other browser or desk, and loses nothing that is there. “Save .xlsx” makes a workbook file for others. A job of an older version goes on as it is, or is upgraded under Pane, Start, Upgrade, which freezes it first.`,
      ),
      make(
        "p",
        {},
        newTab(INDEX_PAGE, "All help pages, by task and by name"),
        stand === "file" ? ". Read also " : " (in a new tab). Read also ",
        newTab(SHEETS_PAGE, "the sheets, each with a picture and what its cells want"),
        ", and ",
        newTab(LIMITS_PAGE, "what the model leaves out, and where published answers are wrong"),
        ".",
      ),
      make("label", { htmlFor: "search" }, "Find a function"),
      search,
      found,
      list,
      make("h3", {}, "Keys"),
      make(
        "dl",
        { className: "desk-keys" },
        ...KEYS.flatMap(([key, what]) => [make("dt", {}, key), make("dd", {}, what)]),
      ),
      make(
        "p",
        { className: "desk-small" },
        "The grid is o-spreadsheet (LGPL-3.0-or-later) and its view library owl (LGPL-3.0-only), both served unmodified and replaceable. ",
        newTab(NOTICES_PAGE, "Notices of all that comes with Rigsheet"),
      ),
    ],
    [{ label: "Close", value: "" }],
  );
}

const wordsOf = ({ name, group, summary, tasks }: SheetFunction): string =>
  [`${NAMESPACE}.${name}`, group, summary, ...tasks].join(" ").toLowerCase();

function entryOf(one: SheetFunction): HTMLElement {
  const { name, summary, caution } = one;
  return make(
    "li",
    {},
    newTab(pageOf(name), make("code", {}, syntaxOf(one))),
    make("span", {}, ` ${summary}${caution ? ` ${caution}` : ""}`),
  );
}

/** A page of the help beside the workbook, not in its place. */
const newTab = (page: string, ...words: (string | Node)[]): HTMLElement =>
  make("a", { href: `help/${page}`, target: "_blank", rel: "noopener" }, ...words);
