/**
 * The name that a workbook program took for a number, as its cell shows it: 7 in the format `000` was typed `007`.
 * @param format of the number
 * @returns undefined for a date: what was typed there is gone
 */
export function shownName(value: number | boolean, format: string | undefined): string | undefined {
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  if (format !== undefined && /^0+$/.test(format)) return String(value).padStart(format.length, "0");
  const letters = (format ?? "").replace(/"[^"]*"|\[[^\]]*\]|\\./g, "");
  return /[dyhs]|m{1,5}/i.test(letters) && letters !== "General" ? undefined : String(value);
}
