import { printFontFiles } from "../hosts/headless/printFontFiles";
import type { WriteDocument } from "./proposalJob";

export const pdfOfDocument: WriteDocument = async (document, paper, at) => {
  // Only who prints waits for what writes PDF.
  const { documentPdf, PrintType, unsetInWords } = await import(
    /* webpackChunkName: "pdf" */ "../hosts/pdf/pdf"
  );
  const { bytes, unset } = await documentPdf(document, { paper, at }, new PrintType(await printFontFiles()));
  return { bytes, unset: unsetInWords(unset) };
};
