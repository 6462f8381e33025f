/** The question what is to be printed, on which paper, with the pages as they will come out beside it. */
import type { BookPrint } from "../../../workbooks/book";
import type { WrittenProposal } from "../../../proposal/writtenProposal";
import type { StandardsHere } from "../../../pane/host";
import type { PdfWriter } from "../../../pane/loadPdf";
import type { PrintDoubt } from "../../../pane/beforePrint";
import type { MadePages, ProposalChoice, WantedSheets } from "../../../pane/pdfFiles";
import type { PrintChoice, Printable } from "../../../pane/printable";
import type { Step } from "../../pdf/step";
import type { FindingPlace } from "../../../review/finding";
import { ask } from "./dialogs";
import { make } from "./dom";
import { keepPaper } from "./keptPaper";
import { PagePreview, type Previewed } from "./pagePreview";
import { ProposalChoices } from "./proposalChoices";

type Paper = BookPrint["paper"];

export type WantedPrint =
  /** By the browser's own print dialog. */
  | ({ readonly kind: "sheets" } & WantedSheets)
  | { readonly kind: "proposal"; readonly made: MadePages }
  | {
      readonly kind: "file";
      readonly made: MadePages;
      /** Undefined for the proposal. */
      readonly chosen?: readonly PrintChoice[];
    }
  /** Something is looked at, or put right, before anything is printed. */
  | { readonly kind: "place"; readonly place: FindingPlace };

/** What may be printed, and what somebody should know of it. */
export interface AskedPrint extends Pick<Printable, "choices" | "paper"> {
  /** Number, revision and name of the job. */
  readonly job: string;
  /** On what is being typed and would be missing; empty for nothing. */
  readonly left: string;
  /** On the customer's page. */
  readonly doubts: readonly PrintDoubt[];
  /** Checks fail, so that the customer's page is a draft. */
  readonly isDraft: boolean;
  /** The firm's standards among the jobs. */
  readonly firms: readonly StandardsHere[];
}

/** What makes the pages. */
export interface PageMakers {
  load(): Promise<PdfWriter>;
  sheets(writer: PdfWriter, wanted: WantedSheets, step: Step): Promise<MadePages>;
  /** Absent where the workbook is no estimate that a proposal is made of. */
  readonly proposal?: (
    writer: PdfWriter,
    wanted: ProposalChoice,
    step: Step,
  ) => Promise<WrittenProposal<MadePages>>;
}

const PAPERS: readonly (readonly [Paper, string])[] = [
  ["a4", "A4"],
  ["letter", "Letter"],
];
const NOT_FOR_CUSTOMER = "Not all of it is for the customer: the office's sheets show costs and margin.";
const NOTHING_CHOSEN = "Choose at least one sheet to print.";
const SAVED_LATER = "The file is saved when its pages are made.";

type Made = Previewed & { readonly file?: MadePages };

/** @returns undefined when the user thinks better of it */
export async function askWhatToPrint(
  { choices, paper, job, left, doubts, isDraft, firms }: AskedPrint,
  makers: PageMakers,
): Promise<WantedPrint | undefined> {
  const hasCustomers = choices.some(({ forCustomer }) => forCustomer);
  const boxes = choices.map(({ chosen }, index) =>
    make("input", { type: "checkbox", id: `print-${index}`, checked: chosen }),
  );
  const anyway = make("input", { type: "checkbox", id: "print-sheets-anyway" });
  let place: FindingPlace | undefined;
  const goTo = (to: FindingPlace): HTMLButtonElement =>
    make(
      "button",
      {
        type: "button",
        className: "desk-button print-go",
        onclick: () => {
          place = to;
          close("");
        },
      },
      `Go to ${to.sheet} ${to.cell}`,
    );
  const doubted = make(
    "div",
    { className: "print-doubted" },
    make(
      "ul",
      { className: "print-look", ariaLabel: "Before it goes out" },
      ...doubts.map((doubt) => make("li", {}, `${doubt.what} `, ...(doubt.place ? [goTo(doubt.place)] : []))),
    ),
    ...(isDraft
      ? [
          make(
            "label",
            { htmlFor: anyway.id, className: "print-anyway" },
            anyway,
            " No draft, although checks fail",
          ),
        ]
      : []),
  );
  const caution = make("p", { className: "print-caution", role: "status" });
  const marked = (): PrintChoice[] => choices.filter((_, index) => boxes[index]!.checked);
  const papers = make(
    "select",
    { id: "print-paper", className: "desk-input" },
    ...PAPERS.map(([value, label]) => make("option", { value, selected: value === paper }, label)),
  );
  const paperNow = (): Paper => PAPERS[papers.selectedIndex]![0];
  /** Somebody has chosen it; a proposal has its own otherwise. */
  let isPaperChosen = false;
  let isProposal = false;
  const proposal = makers.proposal && new ProposalChoices(firms, () => void preview.follow());

  const madeProposal = async (writer: PdfWriter, step: Step): Promise<Made> => {
    proposal!.forget();
    const chosen = await proposal!.chosen();
    const found = await makers.proposal!(
      writer,
      { ...chosen, ...(isPaperChosen && { paper: paperNow() }) },
      step,
    );
    if (found.refused) {
      proposal!.show(new Set(), found.refused);
      return { pages: [], said: "No proposal is made; what is in the way stands beside." };
    }
    const { parts, look, written } = found;
    papers.selectedIndex = PAPERS.findIndex(([value]) => value === found.paper);
    proposal!.show(parts, [...look, ...(written.unset === "" ? [] : written.unset.split("\n"))]);
    return { pages: written.pages, file: written };
  };
  const madeSheets = async (writer: PdfWriter, step: Step): Promise<Made> => {
    const chosen = marked();
    if (chosen.length === 0) return { pages: [], said: NOTHING_CHOSEN };
    const file = await makers.sheets(writer, { chosen, paper: paperNow(), anyway: anyway.checked }, step);
    unset.textContent = file.unset;
    return { pages: file.pages, file };
  };
  const unset = make("p", { className: "print-caution print-unset", role: "status" });
  const preview = new PagePreview<Made>(
    (writer, step) => (isProposal ? madeProposal(writer, step) : madeSheets(writer, step)),
    () => makers.load(),
    () => {
      if (waiting && preview.made?.file) close("file");
      waiting = false;
    },
  );
  let waiting = false;
  const look = (): void => {
    const chosen = marked();
    boxes[0]!.setCustomValidity(!isProposal && chosen.length === 0 ? NOTHING_CHOSEN : "");
    caution.textContent =
      hasCustomers && chosen.some(({ forCustomer }) => !forCustomer) ? NOT_FOR_CUSTOMER : "";
    doubted.hidden = doubts.length === 0 || !chosen.some(({ forCustomer }) => forCustomer);
    unset.textContent = "";
    void preview.follow();
  };
  for (const box of [...boxes, anyway]) box.addEventListener("change", look);
  papers.addEventListener("change", () => {
    isPaperChosen = true;
    keepPaper(paperNow());
    look();
  });
  const sheets = make(
    "div",
    {},
    doubted,
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
    unset,
  );
  const kinds = (["Sheets and cards", "Proposal for the customer"] as const).map((label, index) => {
    const box = make("input", { type: "radio", name: "print-kind", id: `print-kind-${index}` });
    box.checked = index === 0;
    box.addEventListener("change", () => {
      isProposal = index === 1;
      sheets.hidden = isProposal;
      proposal!.root.hidden = !isProposal;
      look();
    });
    return make("label", { htmlFor: box.id }, box, ` ${label}`);
  });
  if (proposal) proposal.root.hidden = true;
  const answered = ask(
    "Print",
    [
      make("p", { className: "desk-named" }, make("bdi", {}, job)),
      ...(left ? [make("p", {}, left)] : []),
      make(
        "div",
        { className: "print-parts" },
        make(
          "div",
          { className: "print-asked" },
          ...(proposal ? [make("div", { className: "print-kinds", role: "radiogroup" }, ...kinds)] : []),
          sheets,
          ...(proposal ? [proposal.root] : []),
          make("label", { htmlFor: papers.id }, "Paper"),
          papers,
          make(
            "p",
            { className: "desk-small" },
            "Save PDF writes what is shown here. Print… goes on to the browser's own dialog: leave its size at 100 %, and its paper at the one chosen here.",
          ),
        ),
        preview.root,
      ),
    ],
    [
      { label: "Print…", value: "print" },
      { label: "Save PDF", value: "file" },
      { label: "Cancel", value: "" },
    ],
    "print-dialog",
  );
  const dialog = preview.root.closest("dialog")!;
  const close = (value: string): void => dialog.close(value);
  dialog.addEventListener("keydown", (event) => preview.key(event));
  dialog.querySelector("form")!.addEventListener("submit", (event) => {
    const { value } = event.submitter as HTMLButtonElement;
    // What the browser prints of sheets are pages of its own.
    if (value === "" || (value === "print" && !isProposal) || preview.made?.file) return;
    event.preventDefault();
    waiting = value === "file" && preview.isMaking;
    preview.say(waiting ? SAVED_LATER : "");
  });
  look();
  const answer = await answered;
  const file = preview.made?.file;
  preview.stop();
  if (place) return { kind: "place", place };
  if (answer === "print" && !isProposal)
    return { kind: "sheets", chosen: marked(), paper: paperNow(), anyway: anyway.checked };
  if (answer === "" || !file) return undefined;
  if (answer === "print") return { kind: "proposal", made: file };
  return { kind: "file", made: file, ...(!isProposal && { chosen: marked() }) };
}
