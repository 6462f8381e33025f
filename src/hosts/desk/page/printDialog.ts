/** The question what is to be printed, on which paper. */
import type { BookPrint } from "../../../workbooks/book";
import { ask } from "./dialogs";
import { make } from "./dom";
import type { PrintChoice, Printable } from "./printable";

type Paper = BookPrint["paper"];

export interface WantedPrint {
  readonly chosen: readonly PrintChoice[];
  readonly paper: Paper;
}

const PAPERS: readonly (readonly [Paper, string])[] = [
  ["a4", "A4"],
  ["letter", "Letter"],
];
const NOT_FOR_CUSTOMER = "Not all of it is for the customer: the office's sheets show costs and margin.";

/**
 * @param job its number, revision and name
 * @param left a sentence on what is being typed and would be missing; empty for nothing
 * @returns undefined when the user thinks better of it
 */
export async function askWhatToPrint(
  { choices, paper }: Pick<Printable, "choices" | "paper">,
  job: string,
  left: string,
): Promise<WantedPrint | undefined> {
  const hasCustomers = choices.some(({ forCustomer }) => forCustomer);
  const boxes = choices.map(({ chosen }, index) =>
    make("input", { type: "checkbox", id: `print-${index}`, checked: chosen }),
  );
  const caution = make("p", { className: "print-caution", role: "status" });
  const marked = (): PrintChoice[] => choices.filter((_, index) => boxes[index]!.checked);
  const look = (): void => {
    const chosen = marked();
    boxes[0]!.setCustomValidity(chosen.length === 0 ? "Choose at least one sheet to print." : "");
    caution.textContent =
      hasCustomers && chosen.some(({ forCustomer }) => !forCustomer) ? NOT_FOR_CUSTOMER : "";
  };
  for (const box of boxes) box.addEventListener("change", look);
  look();
  const papers = make(
    "select",
    { id: "print-paper", className: "desk-input" },
    ...PAPERS.map(([value, label]) => make("option", { value, selected: value === paper }, label)),
  );
  const answer = await ask(
    "Print",
    [
      make("p", { className: "desk-named" }, make("bdi", {}, job)),
      ...(left ? [make("p", {}, left)] : []),
      make(
        "fieldset",
        { className: "print-choices" },
        make("legend", {}, "Sheets"),
        ...choices.map(({ name, note }, index) =>
          make(
            "label",
            // What has more to say takes a line of its own.
            { htmlFor: `print-${index}`, className: note ? "print-wide" : "" },
            boxes[index]!,
            make("bdi", {}, name),
            make(
              "span",
              { className: "desk-small" },
              hasCustomers && choices[index]!.forCustomer ? "the customer's page" : note,
            ),
          ),
        ),
      ),
      caution,
      make("label", { htmlFor: papers.id }, "Paper"),
      papers,
      make(
        "p",
        { className: "desk-small" },
        "The browser's own print dialog comes next. It can make a PDF too; leave its size at 100 %, and its paper at the one chosen here.",
      ),
    ],
    [
      { label: "Print…", value: "print" },
      { label: "Cancel", value: "" },
    ],
    "print-dialog",
  );
  return answer === "print" ? { chosen: marked(), paper: PAPERS[papers.selectedIndex]![0] } : undefined;
}
