/** The Checks sheet, the head of every sheet and About of a small template, from what its checks find. */
import { parseRange } from "../../../../src/formula/address";
import type { Book } from "../../../../src/workbooks/book";
import type { WorkbookDefinition } from "../../../../src/workbooks/definition";
import { verdictOf, type Cells, type Expected } from "../job";

export interface Found {
  /** NaN where it cannot be told. */
  readonly found: number;
  readonly passes: boolean;
  readonly isWish?: true;
  /** The places that its line names, where it names any. */
  readonly places?: readonly string[];
}

export const none = (found: number, places?: readonly string[]): Found => ({
  found,
  passes: found === 0,
  ...(places && { places }),
});

/** What a line of places has room for. */
const LONGEST_PLACES = 76;

function wordOf({ found, passes, isWish }: Found): string {
  if (Number.isNaN(found)) return "error";
  if (passes) return "ok";
  return isWish ? "note" : "look";
}

/** How many checks need a look. */
export const failedOf = (found: Readonly<Record<string, Found>>): number =>
  Object.values(found).filter((one) => ["look", "error"].includes(wordOf(one))).length;

/** @param found by the ids of the definition's checks, every one of them */
export function checkCells(
  definition: WorkbookDefinition,
  book: Book,
  found: Readonly<Record<string, Found>>,
): Cells {
  const checks = definition.sheets.flatMap(({ parts }) =>
    parts.flatMap((part) => (part.kind === "checks" ? part.checks : [])),
  );
  // Where the workbook is computed, they do.
  const ofAll = { "functions answer": none(0), ...found };
  const unknown = checks.filter(({ id }) => !Object.hasOwn(ofAll, id)).map(({ id }) => id);
  if (unknown.length > 0) throw new Error(`the reference knows no check ${unknown.join(", ")}`);
  const sheet = book.sheets.find(({ name }) => name === "Checks")!;
  const zone = parseRange(book.names.find(({ name }) => name === "checks_result")!.range)!;
  const cells: Record<string, Expected> = {};
  for (let row = zone.top + 1; row <= zone.bottom + 1; row++) {
    const { id, where } = checks.find(({ what }) => what === sheet.cells[`A${row}`]?.value)!;
    const one = ofAll[id as keyof typeof ofAll]!;
    cells[`Checks!C${row}`] = one.found;
    cells[`Checks!D${row}`] = wordOf(one);
    if (sheet.cells[`E${row}`]?.formula !== undefined)
      cells[`Checks!E${row}`] =
        wordOf(one) === "ok" ? where : `${where}: ${(one.places ?? []).join("; ").slice(0, LONGEST_PLACES)}`;
  }
  const failed = failedOf(found);
  const verdict = verdictOf(failed);
  return {
    ...cells,
    checks_failed: failed,
    checks_verdict: verdict,
    ...Object.fromEntries(book.sheets.map(({ name }) => [`${name}!D1`, verdict])),
    about_template: new RegExp(`^${definition.title.toLowerCase()}, version ${definition.version}$`),
    about_functions: /^\d+\.\d+\.\d+$/,
    about_state: "ok",
  };
}
