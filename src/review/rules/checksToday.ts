/** Today's checks over the inputs of a workbook of an earlier version, told in that workbook's own places. */
import { address, parseAddress, parseRange } from "../../formula/address";
import type { Book } from "../../workbooks/book";
import { checks } from "../../workbooks/checkNames";
import { namesOfBoth } from "../carriedOver";
import type { Finding, FindingPlace } from "../finding";
import { failingChecks } from "./failingChecks";

/**
 * @param fresh today's template with the old inputs, computed
 * @param old the workbook, computed by its own formulas
 */
export function checksToday(fresh: Book, old: Book): Finding[] {
  const placeIn = placesIn(fresh, old);
  const lines = resultCells(old);
  const whats = new Map([...resultCells(fresh)].map(([what, place]) => [keyOf(place), what]));
  return failingChecks(fresh).map((finding): Finding => {
    const cause = finding.cause && placeIn(finding.cause);
    const line = lines.get(whats.get(keyOf(finding.place!))!);
    // What was not asked then, or passed as it was asked then, can't be called wrong now.
    const weight = finding.weight === "wrong" ? "doubtful" : finding.weight;
    if (!line)
      return {
        ...finding,
        weight,
        place: cause,
        cause: undefined,
        message: `A check that the template has since: ${finding.message}`,
      };
    return passed(old, line)
      ? { ...finding, weight, place: line, cause, message: `By today's template: ${finding.message}` }
      : { ...finding, place: line, cause };
  });
}

const passed = (book: Book, { sheet, cell }: FindingPlace): boolean =>
  book.sheets.find(({ name }) => name === sheet)?.results[cell] === "ok";

const keyOf = ({ sheet, cell }: FindingPlace): string => `${sheet}!${cell}`;

/** The cell of each check's result, by the check's words. */
function resultCells(book: Book): Map<string, FindingPlace> {
  const found = book.names.find(({ name }) => name === checks.result.name);
  const zone = found && parseRange(found.range);
  const sheet = book.sheets.find(({ name }) => name === found?.sheet);
  if (!sheet || !zone) return new Map();
  return new Map(
    Array.from({ length: zone.bottom - zone.top + 1 }, (_, index) => {
      const row = zone.top + index;
      const what = String(sheet.cells[address(row, zone.left - 3)]?.value ?? "");
      return [what, { sheet: sheet.name, cell: address(row, zone.left) }];
    }),
  );
}

/** Where a cell of one book lies in another with the same names; undefined for one outside every name of both. */
function placesIn(book: Book, other: Book): (place: FindingPlace) => FindingPlace | undefined {
  const pairs = namesOfBoth(book, other);
  return ({ sheet, cell }) => {
    const { row, column } = parseAddress(cell)!;
    for (const { from, to } of pairs) {
      const [below, right] = [row - from.zone.top, column - from.zone.left];
      const inside = below >= 0 && right >= 0 && row <= from.zone.bottom && column <= from.zone.right;
      const reaches = to.zone.top + below <= to.zone.bottom && to.zone.left + right <= to.zone.right;
      if (from.sheet === sheet && inside && reaches)
        return { sheet: to.sheet, cell: address(to.zone.top + below, to.zone.left + right) };
    }
    return undefined;
  };
}
