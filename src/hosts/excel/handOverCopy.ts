/** Opens a copy or the cards of the workbook, or another workbook of ours, as a new one, to be saved or printed. */
import { HostTrouble } from "../../pane/host";
import { RIGSHEET_VERSION } from "../../version";
import type { Book } from "../../workbooks/book";
import type { CopyKind } from "../file/copy/copyOf";
import { writeCopy } from "../file/copy/writeCopy";
import { FileTrouble } from "../file/fileTrouble";
import { readXlsx } from "../file/readXlsx";
import { writeXlsx } from "../file/writeXlsx";
import { asTrouble, troubles } from "./excelTrouble";
import { hasApi } from "./inExcel";
import { openDocument } from "./openDocument";

/** The set with which `createWorkbook` came. */
const CREATE_WORKBOOK = "1.8";

export const handOverCopy = (kind: CopyKind): Promise<void> =>
  opened(async () =>
    writeCopy(await readXlsx(await openDocument()), kind, { now: new Date(), version: RIGSHEET_VERSION }),
  );

/** The open workbook as its file would hold it. */
export async function readDocument(): Promise<Book> {
  try {
    return await readXlsx(await openDocument());
  } catch (error) {
    throw error instanceof FileTrouble ? new HostTrouble(error.message, { cause: error }) : asTrouble(error);
  }
}

export const handOverBook = (book: Book): Promise<void> => opened(() => writeXlsx(book));

async function opened(write: () => Promise<Uint8Array>): Promise<void> {
  if (!hasApi(CREATE_WORKBOOK)) throw new HostTrouble(troubles.noNewWorkbook());
  try {
    await Excel.createWorkbook(base64(await write()));
  } catch (error) {
    throw error instanceof FileTrouble ? new HostTrouble(error.message, { cause: error }) : asTrouble(error);
  }
}

/** Pieces that a call can take as arguments. */
const PIECE = 0x8000;

function base64(bytes: Uint8Array): string {
  let text = "";
  for (let at = 0; at < bytes.length; at += PIECE) {
    text += String.fromCharCode(...bytes.subarray(at, at + PIECE));
  }
  return btoa(text);
}
