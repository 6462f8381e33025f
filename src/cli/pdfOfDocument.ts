import { pdfWriter } from "./pdfWriter";
import type { WriteDocument } from "./proposalJob";

export const pdfOfDocument: WriteDocument = async (document, paper, at) => {
  const { documentPdf, type, unsetInWords } = await pdfWriter();
  const { bytes, unset } = await documentPdf(document, { paper, at }, type);
  return { bytes, unset: unsetInWords(unset) };
};
