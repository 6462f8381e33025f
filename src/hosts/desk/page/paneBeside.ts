/** The pane beside the grid: opened, closed, and reached by F6. */
import * as library from "@odoo/o-spreadsheet";
import { mountPane } from "../../../pane/mountPane";
import { HostTrouble } from "../../../pane/host";
import { api, ServerTrouble } from "./api";
import type { Desk } from "./desk";
import { deskHost } from "./deskHost";
import type { DeskGuard } from "./deskPlugin";
import { download } from "./dom";

export class PaneBeside {
  private mounted = false;

  constructor(
    private readonly root: HTMLElement,
    private readonly bar: HTMLElement,
    private readonly desk: Desk,
    private readonly guard: DeskGuard,
    private readonly opened: (open: boolean) => void,
  ) {}

  /** Closing it keeps what it shows. */
  toggle(): void {
    const open = this.root.hidden !== false;
    this.root.hidden = !open;
    this.opened(open);
    // The library measures its canvas when the window changes.
    window.dispatchEvent(new Event("resize"));
    if (open) {
      this.mount();
      this.focus();
    } else this.desk.focus();
  }

  /** From the grid to the pane, to the bar, and back to the grid. */
  nextPart(): void {
    const active = document.activeElement;
    if (this.bar.contains(active)) this.desk.focus();
    else if (this.root.hidden || this.root.contains(active)) this.bar.querySelector("button")?.focus();
    else this.focus();
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
        readSurvey: (bytes, unit, writing) =>
          api
            .readSurvey(new Blob([bytes as Uint8Array<ArrayBuffer>]), unit, writing)
            .catch((error: unknown) => {
              throw error instanceof ServerTrouble ? new HostTrouble(error.message, { cause: error }) : error;
            }),
        handOver: async (book, kind) =>
          download(
            await api.copyXlsx(book, kind),
            `${desk.fileTitle} (${kind === "cards" ? "cards" : `${kind} copy`}).xlsx`,
          ),
        handOverBook: async (book, file) => download(await api.saveXlsx(book), file),
        storage: () => localStorage,
      }),
    );
  }
}

/** The library's editors, in the cell and in the bar above the grid, are always there; the one in use is marked. */
const isEditing = (): boolean => document.querySelector("#grid .o-composer.active") !== null;
