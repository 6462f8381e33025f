/**
 * Workbooks dropped on the page are reviewed beside the open job, which stays
 * as it is. A finding's place opens its workbook at that cell.
 */
import { askForReview } from "../../../jobs/askForReview";
import type { AskedReview, Settling } from "../../../jobs/reviews";
import type { KeptReview } from "../../../review/again/keptReview";
import { countsOf, FindingList, linesBefore, type Listed } from "../../../pane/findingList";
import { placesNow } from "../../../review/again/noted";
import type { Settled } from "../../../review/again/knownAgain";
import type { FullReview } from "../../../review/reviewInFull";
import { reviewPage, type PageFile } from "../../../review/reviewPage";
import type { Book } from "../../../workbooks/book";
import { fingerprintOf } from "../../file/fingerprint";
import { download, make, measureAnew } from "./dom";

/** One dropped workbook; without a book it could not be read. */
export interface Dropped extends PageFile {
  readonly book?: Book;
}

/** What to open, and where in it. */
export interface Chosen {
  readonly book: Book;
  readonly path: string;
  readonly place: { readonly sheet: string; readonly cell: string };
}

/** @param dropped called with the files that were let go over the page */
export function acceptDrops(dropped: (files: readonly File[]) => void): void {
  const hasFiles = (event: DragEvent): boolean => event.dataTransfer?.types.includes("Files") ?? false;
  addEventListener(
    "dragover",
    (event) => {
      if (!hasFiles(event)) return;
      event.preventDefault();
      event.dataTransfer!.dropEffect = "copy";
    },
    { capture: true },
  );
  addEventListener(
    "drop",
    (event) => {
      if (!hasFiles(event)) return;
      // The browser would leave the page for the file.
      event.preventDefault();
      event.stopPropagation();
      if (!document.querySelector("dialog[open]")) dropped([...event.dataTransfer!.files]);
    },
    { capture: true },
  );
}

/**
 * @param inFull computes a book anew and reviews it
 * @param keep puts it beside what earlier reviews of the job found
 */
export async function readDropped(
  file: File,
  open: (file: File) => Promise<Book>,
  inFull: (book: Book) => FullReview,
  keep: (asked: AskedReview) => Promise<KeptReview>,
): Promise<Dropped> {
  try {
    const book = await open(file);
    const fingerprint = await fingerprintOf(new Uint8Array(await file.arrayBuffer()));
    const full = inFull(book);
    const marks = fingerprint === undefined ? [] : [fingerprint];
    // A storage that refuses must not cost the review.
    const kept = await keep(askForReview(book, full, file.name, marks)).catch(() => undefined);
    return {
      path: file.name,
      ...(fingerprint !== undefined && { fingerprint }),
      ...(kept && { kept }),
      ...full,
      book,
    };
  } catch (error) {
    return {
      path: file.name,
      findings: [],
      unreadable: error instanceof Error ? error.message : String(error),
    };
  }
}

/** The list beside the grid: it stays, whatever is opened from it, until it is closed. */
export class ReviewsBeside {
  private readonly heading = make("h2", { tabIndex: -1, className: "desk-dialog-title" });
  private readonly list = new FindingList(2);
  private readonly scrolled = make("div", { className: "desk-review", tabIndex: 0 }, this.list.root);
  private readonly report = make("button", { type: "button", className: "desk-button" }, "Save the report");

  /**
   * @param root the part of the page that shows it
   * @param open called with what a finding's place leads to
   * @param settle keeps that a finding may stay, and why
   * @param closed called when the user has closed it
   */
  constructor(
    readonly root: HTMLElement,
    private readonly open: (chosen: Chosen) => void,
    private readonly settle: (settling: Settling) => Promise<Settled | null>,
    private readonly closed: () => void,
  ) {
    // The list has the looks of the pane.
    root.classList.add("pane");
    root.append(
      this.heading,
      this.scrolled,
      make(
        "p",
        { className: "desk-small" },
        "A place opens its workbook at that cell; the job open then is kept under “earlier”. This list stays until you close it.",
      ),
      make(
        "div",
        { className: "desk-dialog-buttons" },
        make("button", { type: "button", className: "desk-button", onclick: () => this.close() }, "Close"),
        this.report,
      ),
    );
    root.addEventListener("keydown", ({ key }) => {
      if (key === "Escape") this.close();
    });
  }

  show(files: readonly Dropped[]): void {
    this.heading.textContent =
      files.length === 1 ? `Review of ${files[0]!.path}` : `Review of ${files.length} workbooks`;
    const told = [...files];
    this.list.show(
      files.map((one, index) =>
        this.listed(one, files.length > 1, (kept) => (told[index] = { ...one, kept })),
      ),
    );
    this.report.onclick = () => download(new Blob([reviewPage(told)], { type: "text/html" }), "review.html");
    this.root.hidden = false;
    this.scrolled.scrollTop = 0;
    measureAnew();
  }

  /** Once the page has let go of the focus for its own ends. */
  focus(): void {
    this.heading.focus();
  }

  private close(): void {
    this.root.hidden = true;
    measureAnew();
    this.closed();
  }

  private listed(dropped: Dropped, isOneOfMany: boolean, changed: (kept: KeptReview) => void): Listed {
    const { path, facts, headline, findings, unreadable, book, kept } = dropped;
    const counts = unreadable === undefined && findings.length > 0 ? `: ${countsOf(findings)}` : "";
    return {
      ...(isOneOfMany && { heading: `${path}${counts}` }),
      lines: [
        ...(facts?.job ? [make("p", {}, facts.job)] : []),
        ...(unreadable === undefined ? [] : [make("p", {}, `Cannot be read. ${unreadable}`)]),
        ...(isOneOfMany && unreadable === undefined && findings.length === 0
          ? [make("p", {}, "Nothing found.")]
          : []),
        ...(facts ? linesBefore({ headline, facts, findings }) : []),
      ],
      findings,
      goTo: (sheet, cell) => this.open({ book: book!, path, place: { sheet, cell } }),
      placeNow: book ? placesNow(book) : () => undefined,
      ...(kept && {
        kept,
        settle: (key, reason) => this.settle({ id: kept.id, key, ...(reason !== undefined && { reason }) }),
        changed,
      }),
    };
  }
}
