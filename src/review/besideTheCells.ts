/** Rules whose findings are told of a page or a file at some cell of it: two of them are two. */
export const BESIDE_THE_CELLS: ReadonlySet<string> = new Set([
  "page",
  "cannot be read",
  "shown otherwise",
  "tells more than the page",
  "drawn over",
  "hidden by condition",
  "guard removed",
  "words of the quote changed",
  "leads outside",
  "hidden",
]);
