/**
 * Calculated cells of a workbook of an earlier version that are typed over, or
 * that come to something else than by today's template. A formula that is only
 * written otherwise is no difference: the template has changed since.
 */
import { address, isInside, parseAddress, parseRange, type Zone } from "../formula/address";
import { inputZone, isBookError, type Book, type BookResult } from "../workbooks/book";
import { calculatedNames, type CalculatedName } from "../workbooks/calculatedNames";
import type { WorkbookDefinition } from "../workbooks/definition";
import { formulaMark } from "../workbooks/formulaMark";
import { namedValue } from "../workbooks/named";
import { versionFormulas } from "../workbooks/versionFormulas";
import { sameFormula } from "../formula/sameFormula";
import { blankBook } from "./blankBook";
import { namesOfBoth, pairedCells } from "./carriedOver";
import type { FindingPlace } from "./finding";
import type { FormulaDifference } from "./formulaDifferences";
import { figure } from "./namedCells";
import { sameResult } from "./sameResult";

/** A calculated cell whose own formula is not today's and comes to something else. */
export interface OtherResult {
  readonly name: string;
  readonly formula: string;
  readonly place: FindingPlace;
  readonly label: string;
  readonly own: BookResult | undefined;
  readonly today: BookResult | undefined;
}

/** On these sheets a formula moves the price. */
const MONEY_SHEETS: ReadonlySet<string> = new Set(["Materials", "Labour", "Price", "Quote"]);
/** What the checks of a version count is its own; today's are worked on the same inputs. */
const NOT_COMPARED = /^(?:checks|about)_/;
/** Half a cent. */
const SAME_MONEY = 0.005;

/**
 * @param own the workbook, computed by its own formulas
 * @param shown the same, with what today's template comes to
 */
export function earlierDifferences(
  own: Book,
  shown: Book,
  definition: WorkbookDefinition,
): { readonly differences: FormulaDifference[]; readonly others: OtherResult[] } {
  const typed = calculatedNames(definition).flatMap((one) => typedOver(own, shown, one));
  const over = new Set(typed.map(({ place }) => `${place!.sheet}!${place!.cell}`));
  const results = otherResults(own, shown, definition).filter(
    ({ place }) => !over.has(`${place.sheet}!${place.cell}`),
  );
  const [now, today] = [own, shown].map((book) => namedValue(book, "quote_total"));
  const moved = typeof now === "number" && typeof today === "number" && Math.abs(now - today) >= SAME_MONEY;
  const kept = versionFormulas(own.template, own.templateVersion);
  // A formula that the workbook's own version had is no change of a person's, whatever it comes to today.
  const isChanged = ({ name, formula, place }: OtherResult): boolean =>
    kept ? !kept.get(name)?.has(formulaMark(formula)) : moved && MONEY_SHEETS.has(place.sheet);
  const changed = results.filter(isChanged);
  return {
    differences: [...typed, ...changed.map((one) => asDifference(one, kept && own.templateVersion))],
    others: results.filter((one) => !changed.includes(one)),
  };
}

const asDifference = (
  { place, label, own, today, formula }: OtherResult,
  version: string | undefined,
): FormulaDifference => ({
  typedOver: false,
  weight: "doubtful",
  place,
  message:
    version === undefined
      ? `${label} comes to ${inWords(own)} by the formula that stands here.`
      : `${label} comes to ${inWords(own)} by a formula that version ${version} of the template did not have: =${formula}`,
  expected: `${inWords(today)}, by today's template.`,
  remedy:
    "See whether the formula was changed or the template has; a workbook made from today's template with these inputs decides.",
});

/** What was typed where a formula belongs, or into the cells that it fills; a cell with an input rule was an input then. */
function typedOver(own: Book, shown: Book, { name, label }: CalculatedName): FormulaDifference[] {
  const found = own.names.find((one) => one.name === name);
  const zone = found && parseRange(found.range);
  const sheet = own.sheets.find((one) => one.name === found?.sheet);
  if (!sheet || !zone) return [];
  const inputs = sheet.validations.flatMap((one) => inputZone(one) ?? []);
  const typed = cellsOf(zone).filter((cell) => {
    const { value, formula } = sheet.cells[cell] ?? {};
    return formula === undefined && value !== undefined && !inputs.some((one) => contains(one, cell));
  });
  const [cell] = typed;
  if (cell === undefined) return [];
  const today = shown.sheets.find((one) => one.name === sheet.name)?.results[cell];
  const others = typed.length - 1;
  const more = others > 0 ? ` and ${others} more ${others === 1 ? "cell" : "cells"}` : "";
  return [
    {
      typedOver: true,
      weight: "wrong",
      place: { sheet: sheet.name, cell },
      message: `${label} is calculated in the template; here ${String(sheet.cells[cell]!.value)} was typed over it${more}.`,
      expected: today === undefined ? "Calculated." : inWords(today),
      remedy: "Start a workbook from today's template and copy the inputs over.",
    },
  ];
}

function contains(zone: Zone, cell: string): boolean {
  const { row, column } = parseAddress(cell)!;
  return isInside(zone, row, column);
}

const cellsOf = ({ top, left, bottom, right }: Zone): string[] =>
  Array.from({ length: (bottom - top + 1) * (right - left + 1) }, (_, index) =>
    address(top + Math.floor(index / (right - left + 1)), left + (index % (right - left + 1))),
  );

function otherResults(own: Book, shown: Book, definition: WorkbookDefinition): OtherResult[] {
  const today = blankBook(definition);
  const pairs = new Map(namesOfBoth(own, shown).map((one) => [one.name, one]));
  return calculatedNames(definition).flatMap(({ name, label, column }): OtherResult[] => {
    const pair = pairs.get(name);
    if (!pair || NOT_COMPARED.test(name)) return [];
    const { from, to } = pair;
    const anchor = address(from.zone.top, from.zone.left);
    const formula = own.sheets.find((one) => one.name === from.sheet)?.cells[anchor]?.formula;
    if (formula === undefined || isTodays(today, name, formula, column, from.zone)) return [];
    for (const [cell] of pairedCells(from.zone, to.zone)) {
      const [here, now] = [from.results[cell], to.results[cell]];
      if (sameResult(here, now) || areWords(here, now)) continue;
      return [{ name, formula, place: { sheet: from.sheet, cell }, label, own: here, today: now }];
    }
    return [];
  });
}

/** Words that are only put otherwise. */
const areWords = (one: BookResult | undefined, other: BookResult | undefined): boolean =>
  typeof one === "string" &&
  typeof other === "string" &&
  one !== "" &&
  other !== "" &&
  !VERDICT.test(one + other);
/** A verdict is no wording. */
const VERDICT = /^(?:ok|low|high|look|error)+$/;

/** Whether a name has today's formula; a field of another size than today's means another thing. */
function isTodays(today: Book, name: string, formula: string, column: boolean, here: Zone): boolean {
  const found = today.names.find((one) => one.name === name)!;
  const zone = parseRange(found.range)!;
  const now = today.sheets.find((one) => one.name === found.sheet)!.cells[address(zone.top, zone.left)]
    ?.formula;
  if (now !== undefined && sameFormula(formula, now)) return true;
  return !column && zone.bottom - zone.top !== here.bottom - here.top;
}

export function inWords(result: BookResult | undefined): string {
  if (isBookError(result)) return result.error;
  if (typeof result === "number") return figure(result);
  return result === undefined || result === "" ? "nothing" : `“${String(result)}”`;
}
