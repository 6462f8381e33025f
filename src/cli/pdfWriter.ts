/** What writes PDF, with its type: loaded by who prints, and by nobody else. */
import { printFontFiles } from "../hosts/headless/printFontFiles";
import type * as pdf from "../hosts/pdf/pdf";
import type { PrintType } from "../hosts/pdf/printType";

export async function pdfWriter(): Promise<typeof pdf & { readonly type: PrintType }> {
  const writer = await import(/* webpackChunkName: "pdf" */ "../hosts/pdf/pdf");
  return { ...writer, type: new writer.PrintType(await printFontFiles()) };
}
