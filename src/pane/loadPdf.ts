/** The PDF writer and its type on a page: two scripts, loaded when somebody prints. */
import type { PrintFont, PrintFonts } from "../hosts/pdf/printFonts";
import type { PrintType } from "../hosts/pdf/printType";
import { fromBase64 } from "../workbooks/base64";
import { HostTrouble } from "./host";
import type * as script from "./pdfScript";

type PdfScript = typeof script;

export interface PdfWriter extends PdfScript {
  readonly type: PrintType;
}

export const PDF_SCRIPTS = ["pdf.js", "pdfType.js"] as const;
export type PdfScriptFile = (typeof PDF_SCRIPTS)[number];

/** What the two leave on the page. */
interface Brought {
  readonly rigsheetPdf?: PdfScript;
  /** The three faces' files. */
  readonly rigsheetType?: Readonly<Record<PrintFont, string>>;
}

/**
 * @param run runs one of the two on the page, and rejects where it does not come
 * @returns what loads them, once; a load that failed is tried again at the next call
 */
export function pdfLoader(run: (file: PdfScriptFile) => Promise<void>): () => Promise<PdfWriter> {
  let loading: Promise<PdfWriter> | undefined;
  const load = async (): Promise<PdfWriter> => {
    const before = window as Brought;
    const missing = [
      ...(before.rigsheetPdf ? [] : [PDF_SCRIPTS[0]]),
      ...(before.rigsheetType ? [] : [PDF_SCRIPTS[1]]),
    ];
    await Promise.all(missing.map(run)).catch(() => undefined);
    const { rigsheetPdf, rigsheetType } = window as Brought;
    // A server may have sent something else in the place of either.
    if (!rigsheetPdf || !rigsheetType) throw new HostTrouble(NOT_LOADED);
    const fonts = Object.fromEntries(
      Object.entries(rigsheetType).map(([face, text]) => [face, fromBase64(text)]),
    ) as unknown as PrintFonts;
    return { ...rigsheetPdf, type: new rigsheetPdf.PrintType(fonts) };
  };
  return () => {
    loading ??= load().catch((error: unknown) => {
      loading = undefined;
      throw error;
    });
    return loading;
  };
}

const NOT_LOADED =
  "The part of Rigsheet that writes PDF (pdf.js, pdfType.js) can't be loaded: its server or the network does not give it now, and it is not kept here yet. Try again with the network; if it stays so, tell whoever keeps the server.";

/** Adds a script to the page, by its address. */
export function runScript(address: string): Promise<void> {
  const script = document.createElement("script");
  script.src = address;
  return new Promise<void>((resolve, reject) => {
    script.addEventListener("load", () => resolve());
    script.addEventListener("error", () => reject(new Error(`${address} did not come.`)));
    document.head.append(script);
  }).finally(() => script.remove());
}
