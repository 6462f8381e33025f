/** Opens an office copy, a sealed copy or the cards of the workbook as a new workbook, to be saved or printed. */
import { HostTrouble } from "../../pane/host";
import { RIGSHEET_VERSION } from "../../version";
import type { CopyKind } from "../file/copy/copyOf";
import { writeCopy } from "../file/copy/writeCopy";
import { FileTrouble } from "../file/fileTrouble";
import { readXlsx } from "../file/readXlsx";
import { asTrouble } from "./excelTrouble";
import { openDocument } from "./openDocument";

export async function handOverCopy(kind: CopyKind): Promise<void> {
  try {
    const book = await readXlsx(await openDocument());
    const copy = await writeCopy(book, kind, { now: new Date(), version: RIGSHEET_VERSION });
    await Excel.createWorkbook(base64(copy));
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
