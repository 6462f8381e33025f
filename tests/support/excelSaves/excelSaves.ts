/**
 * A corpus of what Excel would have saved of templates/multi-room-demonstration.xlsx, by someone who had not seen the
 * product's code. See README.md.
 */
import type { ExcelSave } from "./excelSave";
import { HARMLESS_SAVES } from "./harmlessSaves";
import { STATE_SAVES } from "./stateSaves";

export type { ExcelSave } from "./excelSave";

export const EXCEL_SAVES: readonly ExcelSave[] = [...HARMLESS_SAVES, ...STATE_SAVES];
