/** All that a page asks of the PDF writer: a script of its own (pdf.js), loaded when somebody prints. */
export { documentPdf } from "../hosts/pdf/documentPdf";
export { pageSvg, SCREEN_FACES, SCREEN_FAMILY } from "../hosts/pdf/pageSvg";
export { PrintType } from "../hosts/pdf/printType";
export { sheetsFacts } from "../hosts/pdf/sheetsFacts";
export { sheetsPdf } from "../hosts/pdf/sheetsPdf";
export { unsetAtHome, unsetInWords } from "../hosts/pdf/unset";
export { proposalPictures } from "../proposal/proposalPictures";
export { writtenProposal } from "../proposal/writtenProposal";
