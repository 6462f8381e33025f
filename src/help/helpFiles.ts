/** Every file of the help, by name, to be written or served beside each other. */
import type { SheetFunction } from "../functions/core/declare";
import { pageOf } from "./facts";
import { EXCEL_PAGE, INDEX_PAGE, LIMITS_PAGE, SCRIPT_FILE, STYLE_FILE } from "./frame";
import { helpIndex } from "./helpIndex";
import { helpPage } from "./helpPage";
import { inExcel } from "./inExcel";
import { modelLimits } from "./modelLimits";
import { sheetPages } from "./sheetPages";
import { SEARCH_SCRIPT } from "./searchScript";
import { STYLE_SHEET } from "./styleSheet";

export const helpFiles = (functions: readonly SheetFunction[]): ReadonlyMap<string, string> =>
  new Map([
    [INDEX_PAGE, helpIndex(functions)],
    [LIMITS_PAGE, modelLimits(functions)],
    [EXCEL_PAGE, inExcel()],
    ...sheetPages(),
    [STYLE_FILE, STYLE_SHEET],
    [SCRIPT_FILE, SEARCH_SCRIPT],
    ...functions.map((one): [string, string] => [pageOf(one.name), helpPage(one)]),
  ]);
