/**
 * Makes COUNTIF and SUMIFS with a whole column of criteria as fast as a lookup.
 *
 * The library (19.3.7) compares every cell with every criterion: ten thousand
 * outlets against a thousand branches are ten million comparisons. Here the
 * cells are put into an index once, and a criterion that is plain text is looked
 * up in it. Every other criterion (a number, a date, a wildcard, a comparison,
 * letters beyond ASCII) is left to the library, once for each different one; but it does not know that `~~` is
 * a sign like any other, so a text with a `~` is looked up however few the criteria are.
 */
import type { GridLibrary } from "./library";

interface Value {
  readonly value: number | string | boolean | null;
}
/** Columns of cells. */
type Matrix = readonly (readonly (Value | undefined)[])[];
type Compute = (this: unknown, ...args: unknown[]) => unknown;

/** What the library knows of a function beside its typed interface. */
interface Registry {
  readonly mapping: Record<string, Compute>;
  get(name: string): { readonly description: string };
  replace(name: string, description: object): void;
}

/** With fewer criteria an index is not worth its making. */
const FEWEST_CRITERIA = 8;

/** Replaces the two functions in the library's list; prepareLibrary sees to it that this is done once. */
export function registerColumnCriteria(library: GridLibrary): void {
  const registry = library.registries.functionRegistry as unknown as Registry;
  const { arg, isNumber, isDateTime } = library.helpers;

  const replace = (
    name: "COUNTIF" | "SUMIFS",
    args: unknown[],
    parts: (args: readonly unknown[]) => { range: unknown; criteria: unknown; sum?: unknown },
  ): void => {
    const original = registry.mapping[name]!;
    registry.replace(name, {
      ...registry.get(name),
      args,
      compute: function (this: { readonly locale: never }, ...given: unknown[]) {
        const { range, criteria, sum } = parts(given);
        const able = isColumn(range) && isColumn(criteria) && (sum === undefined || isColumn(sum));
        const few = able && criteria[0]!.length < FEWEST_CRITERIA && !criteria[0]!.some(hasTilde);
        if (!able || few || sum?.[0]!.length !== (sum && range[0]!.length))
          return original.apply(this, given);
        const totals = totalsByText(range[0]!, sum?.[0]);
        const isPlain = (text: string): boolean =>
          PLAIN.test(text) &&
          !SPECIAL.test(text.replace(ESCAPED, "")) &&
          text !== "TRUE" &&
          text !== "FALSE" &&
          !isNumber(text, this.locale) &&
          !isDateTime(text, this.locale);
        const known = new Map<unknown, unknown>();
        const answer = (criterion: Value | undefined): unknown => {
          const value = criterion?.value ?? null;
          if (!known.has(value)) {
            const plain = typeof value === "string" && isPlain(value);
            known.set(
              value,
              plain
                ? { value: totals.get(value.replace(ESCAPED, "$1").toLowerCase()) ?? 0 }
                : original.apply(this, name === "COUNTIF" ? [range, criterion] : [sum, range, criterion]),
            );
          }
          return known.get(value);
        };
        return [criteria[0]!.map(answer)];
      },
    });
  };

  replace(
    "COUNTIF",
    [
      arg("range (range)", "The cells that are counted."),
      arg(
        "criterion (any, range<any>)",
        "What a cell must be to be counted; a column gives a count for each.",
      ),
    ],
    ([range, criteria]) => ({ range, criteria }),
  );
  replace(
    "SUMIFS",
    [
      arg("sum_range (range)", "The cells that are added."),
      arg("criteria_range (any, range, repeating)", "The cells that are compared."),
      arg("criterion (any, range<any>, repeating)", "What a cell must be; a column gives a sum for each."),
    ],
    ([sum, range, criteria, ...more]) =>
      more.length > 0 ? { range, criteria: undefined } : { range, criteria, sum },
  );
}

/** Letters whose lower case is their own alone. */
const PLAIN = /^[\x20-\x7e]+$/;
/** A comparison, or a wildcard. */
const SPECIAL = /^[<>=]|[*?~]/;
/** One of them that stands for itself. */
const ESCAPED = /~([*?~])/g;
const hasTilde = (criterion: Value | undefined): boolean =>
  typeof criterion?.value === "string" && criterion.value.includes("~");

function totalsByText(
  cells: readonly (Value | undefined)[],
  sum: readonly (Value | undefined)[] | undefined,
): Map<string, number> {
  const totals = new Map<string, number>();
  cells.forEach((cell, row) => {
    const text = cell?.value;
    if (typeof text !== "string" || !PLAIN.test(text)) return;
    const added = sum ? sum[row]?.value : 1;
    const key = text.toLowerCase();
    totals.set(key, (totals.get(key) ?? 0) + (typeof added === "number" ? added : 0));
  });
  return totals;
}

const isColumn = (value: unknown): value is Matrix =>
  Array.isArray(value) && value.length === 1 && Array.isArray(value[0]);
