/** The open workbook's proposal and its printed sheets as PDF: made in the pane, downloaded by the program around it. */
import type { WantedPdf } from "../../pane/host";
import { download } from "../../pane/dom";
import { pdfLoader, runScript } from "../../pane/loadPdf";
import { namedPdf } from "../../pane/pdfFiles";
import { hiddenOnPaper } from "../../workbooks/hiddenOnPaper";
import { troubles } from "./excelTrouble";
import { formattedApart } from "./formattedApart";
import { readDocument, refuseSilence } from "./handOverCopy";

const load = pdfLoader(runScript);

export async function handOverPdf(wanted: WantedPdf, say: (words: string) => void): Promise<string> {
  const book = await readDocument();
  refuseSilence(book);
  const source = { load, book, shown: hiddenOnPaper(book), formatted: formattedApart(book) };
  const { bytes, name, said } = await namedPdf(wanted, source, say);
  download(new Blob([Uint8Array.from(bytes)], { type: "application/pdf" }), name);
  // Some take no download from a pane and do not say so.
  return `${said} ${troubles.ifNoFile()}`;
}
