/**
 * What an executable that was opened rather than called is to do: a double
 * click gives no words, a workbook dropped on it gives its path alone.
 */
export function wordsFor(given: readonly string[]): readonly string[] {
  if (given.length === 0) return ["desk"];
  return given.length === 1 && /\.xlsx$/i.test(given[0]!) ? ["desk", ...given] : given;
}
