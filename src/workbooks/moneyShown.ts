/** Money with as many decimals as its currency has: chosen once, for all cells of a workbook that show it. */
import type { Look } from "./book";
import { MONEY_FORMAT } from "./looks";

/** The field of a job and of the standards that says so. */
export const DECIMALS_FIELD = "site_decimals";

const withDecimals = (decimals: number): string =>
  decimals === 0 ? "#,##0" : `#,##0.${"0".repeat(decimals)}`;

/** @param decimals from 0 to 3; anything else leaves the two that a template has */
export function withMoneyShown(looks: readonly Look[], decimals: unknown): readonly Look[] {
  if (decimals !== 0 && decimals !== 1 && decimals !== 3) return looks;
  return looks.map((look) =>
    look.format === MONEY_FORMAT ? { ...look, format: withDecimals(decimals) } : look,
  );
}
