import type { Book } from "../../workbooks/book";
import type { Finding } from "../finding";
import type { FormulaDifference } from "../formulaDifferences";
import { figure } from "../namedCells";
import { priceEffect } from "../priceEffect";
import type { Reviewed, Rule } from "../rule";
import { sameResult } from "../sameResult";

export const typedOver: Rule = {
  id: "formula typed over",
  reason: "A number typed over a formula no longer follows its inputs.",
  example: "The total is a typed 11,000; outlets added later change nothing.",
  find: (reviewed) => {
    const { expected, differences } = reviewed;
    const effect = priceEffect(reviewed);
    const typed = differences.filter(({ typedOver }) => typedOver);
    const { flat, rest } = flattened(typed, reviewed);
    return [
      ...flat,
      ...rest.map(({ typedOver: _, ...finding }): Finding => ({
        effect,
        ...finding,
        expected: withValue(finding, expected),
      })),
    ];
  },
};

/** So many at once are pasted as values, not typed. */
const MANY = 10;
/** On more sheets than these the whole workbook was. */
const FEW_SHEETS = 5;

/** A whole sheet of values in the place of formulas is one thing to know, as long as they are what the formulas come to. */
function flattened(
  typed: readonly FormulaDifference[],
  { read, expected }: Reviewed,
): { readonly flat: readonly Finding[]; readonly rest: readonly FormulaDifference[] } {
  const bySheet = new Map<string, FormulaDifference[]>();
  for (const one of typed) {
    const sheet = one.place?.sheet;
    if (sheet === undefined || !asComputed(one, read, expected)) continue;
    const known = bySheet.get(sheet);
    if (known) known.push(one);
    else bySheet.set(sheet, [one]);
  }
  if (![...bySheet.values()].some(({ length }) => length >= MANY)) return { flat: [], rest: typed };
  // Where one sheet was pasted as values, a sheet of few formulas was as well.
  const whole = [...bySheet].filter(([, { length }], _, all) => length >= MANY || all.length > FEW_SHEETS);
  const folded = new Set(whole.flatMap(([, some]) => some));
  const names = whole.map(([name]) => name);
  const [first] = whole;
  const flat: Finding = {
    weight: "doubtful",
    ...(whole.length === 1 && { place: { sheet: first![0], cell: "A1" } }),
    message:
      whole.length === 1
        ? `${first![1].length} formulas of ${first![0]} were turned into values (typed or pasted over).`
        : `${folded.size} formulas on ${whole.length} sheets were turned into values: ${names.slice(0, 5).join(", ")}${names.length > 5 ? " and more" : ""}.`,
    effect:
      "The values are right today, and follow no change any more; nor do the draft warning and the verdict.",
    remedy: "Work in the workbook that it was made from; keep this one as a copy to be read.",
  };
  return { flat: [flat], rest: typed.filter((one) => !folded.has(one)) };
}

function asComputed({ place }: Finding, read: Book, expected: Book | undefined): boolean {
  const shown = read.sheets.find(({ name }) => name === place!.sheet)?.cells[place!.cell]?.value;
  const meant = expected?.sheets.find(({ name }) => name === place!.sheet)?.results[place!.cell];
  if (shown === undefined) return meant === undefined || meant === "";
  return sameResult(shown, meant);
}

/** What the formula comes to says more to a person than the formula. */
function withValue({ place, expected }: Finding, computed: Book | undefined): string | undefined {
  const sheet = computed?.sheets.find(({ name }) => name === place?.sheet);
  const value = place && sheet?.results[place.cell];
  return typeof value === "number" && expected?.startsWith("=")
    ? `${figure(value)}, by ${expected}`
    : expected;
}
