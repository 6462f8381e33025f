import { address, columnLetters, parseAddress } from "../../formula/address";
import type { BookSheet } from "../../workbooks/book";
import type { Finding } from "../finding";
import { isBlank } from "../namedCells";
import type { Rule } from "../rule";

export const hidden: Rule = {
  id: "hidden",
  reason: "What is hidden is priced all the same, and nobody reads it over.",
  example: "The Price sheet is hidden; rows 12 to 14 of Rooms are.",
  find: ({ read }) =>
    read.sheets.flatMap((sheet): Finding[] => [
      ...(sheet.hidden
        ? [
            {
              weight: "doubtful" as const,
              place: { sheet: sheet.name, cell: "A1" },
              message: `The sheet ${sheet.name} is hidden.`,
              effect: "Its figures count without being seen.",
              remedy: "Show it again: right-click a sheet's tab, unhide.",
            },
          ]
        : []),
      ...lines(sheet.name, "row", shown(sheet, "row", sheet.hiddenRows), (row) => [
        address(row, 0),
        String(row + 1),
      ]),
      ...lines(sheet.name, "column", shown(sheet, "column", sheet.hiddenColumns), (column) => [
        address(0, column),
        columnLetters(column),
      ]),
    ]),
};

/** Those in which something stands: an empty row that is hidden hides nothing. */
function shown(
  { cells, results }: BookSheet,
  kind: "row" | "column",
  indices: readonly number[] = [],
): number[] {
  if (indices.length === 0) return [];
  const filled = new Set(
    [...new Set([...Object.keys(cells), ...Object.keys(results)])].flatMap((at) =>
      isBlank(results[at] ?? cells[at]?.value) ? [] : [parseAddress(at)![kind]],
    ),
  );
  return indices.filter((index) => filled.has(index));
}

function lines(
  sheet: string,
  kind: "row" | "column",
  indices: readonly number[],
  placeOf: (index: number) => readonly [cell: string, name: string],
): Finding[] {
  if (indices.length === 0) return [];
  const [cell, name] = placeOf(indices[0]!);
  const are = indices.length === 1 ? `${kind} is` : `${kind}s are`;
  return [
    {
      weight: "doubtful",
      place: { sheet, cell },
      message: `${indices.length} ${are} hidden, the first is ${kind} ${name}.`,
      effect: "What stands there counts without being seen.",
      remedy: `Choose the ${kind}s around them and show them again.`,
    },
  ];
}
