/** The pane beside the grid: opened, closed, and reached by F6. */
import * as library from "@odoo/o-spreadsheet";
import { namedPdf } from "../../../pane/pdfFiles";
import { mountPane } from "../../../pane/mountPane";
import { reviewInFull } from "../../../review/reviewInFull";
import type { Book } from "../../../workbooks/book";
import { COPY_NAMES, inSentence } from "../../file/copy/copyNames";
import { api } from "./api";
import { trials } from "./comparing";
import type { Desk } from "./desk";
import { deskHost } from "./deskHost";
import type { DeskGuard } from "./deskPlugin";
import { download, measureAnew } from "./dom";
import { fileReaders } from "./fileReaders";
import type { ReviewsBeside } from "./reviewDropped";
import { downloadPdf, pdfSource } from "./printing";
import { standardsHere } from "./standardsHere";
import { isEditing } from "./unfinished";

export class PaneBeside {
  private mounted = false;

  constructor(
    private readonly root: HTMLElement,
    private readonly bar: HTMLElement,
    private readonly desk: Desk,
    private readonly guard: DeskGuard,
    private readonly reviews: ReviewsBeside,
    private readonly opened: (open: boolean) => void,
    private readonly takeUpgrade: (book: Book, from: string, to: string) => Promise<string>,
    private readonly marks: () => readonly string[],
  ) {}

  /** Closing it keeps what it shows. */
  toggle(): void {
    const open = this.root.hidden !== false;
    this.root.hidden = !open;
    this.opened(open);
    measureAnew();
    if (open) {
      this.mount();
      this.focus();
    } else this.desk.focus();
  }

  /** From the grid to what is open beside it, to the bar, and back to the grid. */
  nextPart(): void {
    const stops = [
      { part: this.reviews.root, focus: () => this.reviews.focus() },
      { part: this.root, focus: () => this.focus() },
      { part: this.bar, focus: () => this.bar.querySelector("button")?.focus() },
    ].filter(({ part }) => !part.hidden);
    const next = stops[stops.findIndex(({ part }) => part.contains(document.activeElement)) + 1];
    if (next) next.focus();
    else this.desk.focus();
  }

  private focus(): void {
    this.root.querySelector<HTMLElement>("[aria-current]")?.focus();
  }

  private mount(): void {
    if (this.mounted) return;
    this.mounted = true;
    const { desk, guard } = this;
    mountPane(
      this.root,
      deskHost(desk, {
        library,
        guard,
        isEditing,
        ...fileReaders,
        standardsHere,
        review: (book) => reviewInFull(book, trials),
        reviews: { marks: () => this.marks(), keep: api.review, settle: api.settle },
        takeUpgrade: (book, from, to) => this.takeUpgrade(book, from, to),
        handOver: async (book, kind) =>
          download(
            await api.copyXlsx(book, kind),
            `${desk.fileTitle} (${kind === "cards" ? "cards" : inSentence(COPY_NAMES[kind])}).xlsx`,
          ),
        handOverPdf: async (wanted, say) => {
          const { bytes, name, said } = await namedPdf(wanted, pdfSource(desk), say);
          downloadPdf(bytes, name);
          return said;
        },
        handOverBook: async (book, file) => download(await api.saveXlsx(book), file),
        storage: () => localStorage,
      }),
    );
  }
}
