/**
 * Workbooks dropped on the page are reviewed beside the open job, which stays
 * as it is. A finding's place opens its workbook at that cell.
 */
import { countsOf, findingList } from "../../../pane/findingList";
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

/** @param inFull computes a book anew and reviews it */
export async function readDropped(
  file: File,
  open: (file: File) => Promise<Book>,
  inFull: (book: Book) => FullReview,
): Promise<Dropped> {
  try {
    const book = await open(file);
    const fingerprint = await fingerprintOf(new Uint8Array(await file.arrayBuffer()));
    return { path: file.name, ...(fingerprint !== undefined && { fingerprint }), ...inFull(book), book };
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
  private readonly list = make("div", { className: "desk-review", tabIndex: 0 });
  private readonly report = make("button", { type: "button", className: "desk-button" }, "Save the report");

  /**
   * @param root the part of the page that shows it
   * @param open called with what a finding's place leads to
   * @param closed called when the user has closed it
   */
  constructor(
    readonly root: HTMLElement,
    private readonly open: (chosen: Chosen) => void,
    private readonly closed: () => void,
  ) {
    root.append(
      this.heading,
      this.list,
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
    this.list.replaceChildren(...files.map((one) => this.partOf(one)));
    this.report.onclick = () => download(new Blob([reviewPage(files)], { type: "text/html" }), "review.html");
    this.root.hidden = false;
    this.list.scrollTop = 0;
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

  private partOf(dropped: Dropped): HTMLElement {
    const { path, facts, headline, findings, unreadable, book } = dropped;
    const body =
      unreadable !== undefined
        ? [make("p", {}, `Cannot be read. ${unreadable}`)]
        : findingList(findings, (sheet, cell) => this.open({ book: book!, path, place: { sheet, cell } }));
    const counts = unreadable === undefined && findings.length > 0 ? `: ${countsOf(findings)}` : "";
    return make(
      "section",
      {},
      make("h3", {}, `${path}${counts}`),
      ...(facts?.job ? [make("p", {}, facts.job)] : []),
      ...(headline && findings.length > 0
        ? [make("p", { className: "desk-headline" }, headline.sentence)]
        : []),
      ...body,
    );
  }
}
