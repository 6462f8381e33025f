/**
 * Workbooks dropped on the page are reviewed beside the open job, which stays
 * as it is. A finding's place opens its workbook at that cell.
 */
import { countsOf, findingList } from "../../../pane/findingList";
import type { Finding } from "../../../review/finding";
import { reviewPage, type PageFile } from "../../../review/reviewPage";
import type { Book } from "../../../workbooks/book";
import { namedValue } from "../../../workbooks/named";
import { ask } from "./dialogs";
import { download, make } from "./dom";

/** One dropped workbook; without a book it could not be read. */
export interface Dropped extends PageFile {
  readonly book?: Book;
}

/** What to open, and where in it. */
export interface Chosen {
  readonly book: Book;
  readonly path: string;
  readonly place?: { readonly sheet: string; readonly cell: string };
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

/** @param findingsOf computes a book anew and reviews it */
export async function readDropped(
  file: File,
  open: (file: File) => Promise<Book>,
  findingsOf: (book: Book) => readonly Finding[],
): Promise<Dropped> {
  try {
    const book = await open(file);
    const job = namedValue(book, "site_job");
    return {
      path: file.name,
      job: typeof job === "string" ? job : undefined,
      findings: findingsOf(book),
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

/** @returns which workbook to open, if any */
export async function showReviews(files: readonly Dropped[]): Promise<Chosen | undefined> {
  let chosen: Chosen | undefined;
  const choose = (one: Chosen, from: Element): void => {
    chosen = one;
    from.closest("dialog")!.close("open");
  };
  const parts = files.map((one) => partOf(one, choose));
  const value = await ask(
    files.length === 1 ? `Review of ${files[0]!.path}` : `Review of ${files.length} workbooks`,
    [
      make("div", { className: "desk-review", tabIndex: 0 }, ...parts),
      make(
        "p",
        {},
        "The job that is open stays as it is. A place opens its workbook there; the job open now is then kept under “earlier”.",
      ),
    ],
    [
      { label: "Close", value: "" },
      { label: "Save the report", value: "report" },
    ],
  );
  if (value === "report") {
    download(new Blob([reviewPage(files)], { type: "text/html" }), "review.html");
  }
  return value === "open" ? chosen : undefined;
}

function partOf(
  { path, job, findings, unreadable, book }: Dropped,
  choose: (one: Chosen, from: Element) => void,
) {
  const part = make("section", {});
  const body =
    unreadable !== undefined
      ? [make("p", {}, `Cannot be read. ${unreadable}`)]
      : findingList(findings, (sheet, cell) => choose({ book: book!, path, place: { sheet, cell } }, part));
  const counts = unreadable === undefined && findings.length > 0 ? `: ${countsOf(findings)}` : "";
  part.append(make("h3", {}, `${path}${counts}`), ...(job ? [make("p", {}, job)] : []), ...body);
  return part;
}
