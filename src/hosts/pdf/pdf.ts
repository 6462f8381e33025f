/** All that a host asks of the PDF writer: loaded when somebody prints, and by nobody else. */
export { documentPdf } from "./documentPdf";
export { PrintType } from "./printType";
export { sheetsPdf } from "./sheetsPdf";
export { unsetInWords } from "./unset";
