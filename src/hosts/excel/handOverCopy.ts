/** Opens a copy or the cards of the workbook, or another workbook of ours, as a new one, to be saved or printed. */
import { HostTrouble } from "../../pane/host";
import { RIGSHEET_VERSION } from "../../version";
import type { Book } from "../../workbooks/book";
import type { CopyKind } from "../file/copy/copyOf";
import { writeCopy } from "../file/copy/writeCopy";
import { FileTrouble } from "../file/fileTrouble";
import { readXlsx } from "../file/readXlsx";
import { writeXlsx } from "../file/writeXlsx";
import { silenceOf } from "../../workbooks/silence";
import { asTrouble, troubles } from "./excelTrouble";
import { openAsNew } from "./newWorkbook";
import { openDocument } from "./openDocument";

export const handOverCopy = (kind: CopyKind): Promise<void> =>
  told(async () => {
    const book = await readXlsx(await openDocument());
    refuseSilence(book);
    await openAsNew(await writeCopy(book, kind, { now: new Date(), version: RIGSHEET_VERSION }));
  });

/** A copy of what no function has worked out looks final and is not. */
export function refuseSilence(book: Book): void {
  const silence = silenceOf(book);
  if (silence) throw new HostTrouble(troubles.nothingToCopy(silence.shown, silence.count));
}

/** The open workbook as its file would hold it. */
export const readDocument = (): Promise<Book> => told(async () => readXlsx(await openDocument()));

/** A workbook that is not open. */
export const readFile = (bytes: Uint8Array): Promise<Book> => told(() => readXlsx(bytes));

export const handOverBook = (book: Book): Promise<void> => told(async () => openAsNew(await writeXlsx(book)));

/** What a file or Excel refuses, as a sentence for a person. */
async function told<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    throw error instanceof FileTrouble ? new HostTrouble(error.message, { cause: error }) : asTrouble(error);
  }
}
