/** All that the command asks of the PDF writer: loaded when somebody prints, and by nobody else. */
export { documentPdf } from "./documentPdf";
export { PrintType } from "./printType";
export { sheetsFacts } from "./sheetsFacts";
export { sheetsPdf } from "./sheetsPdf";
export { unsetAtHome, unsetInWords } from "./unset";
