import { address } from "../../workbooks/address";
import type { Finding } from "../finding";
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
              says: `The sheet ${sheet.name} is hidden.`,
              effect: "Its figures count without being seen.",
              wayOut: "Show it again: right-click a sheet's tab, unhide.",
            },
          ]
        : []),
      ...(sheet.hiddenRows?.length
        ? [
            {
              weight: "doubtful" as const,
              place: { sheet: sheet.name, cell: address(sheet.hiddenRows[0]!, 0) },
              says: `${sheet.hiddenRows.length} ${sheet.hiddenRows.length === 1 ? "row is" : "rows are"} hidden, the first is row ${sheet.hiddenRows[0]! + 1}.`,
              effect: "What stands there counts without being seen.",
              wayOut: "Choose the rows around them and show them again.",
            },
          ]
        : []),
    ]),
};
