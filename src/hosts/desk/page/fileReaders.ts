/** What reads files for the pane and for the page. */
import { HostTrouble, type PaneHost } from "../../../pane/host";
import { api } from "./api";
import { computed } from "./comparing";
import { ServerTrouble } from "./deskTrouble";

const blobOf = (bytes: Uint8Array): Blob => new Blob([bytes as Uint8Array<ArrayBuffer>]);

/** What the server has to say of a file is said as it is. */
function asSaid(error: unknown): never {
  throw error instanceof ServerTrouble ? new HostTrouble(error.message, { cause: error }) : error;
}

export const fileReaders: Pick<PaneHost, "readTables" | "openFile"> & Required<Pick<PaneHost, "compute">> = {
  readTables: (bytes) => api.readTables(blobOf(bytes)).catch(asSaid),
  openFile: (bytes) => api.openXlsx(blobOf(bytes)).catch(asSaid),
  compute: computed,
};
