/**
 * The outsider's mistakes and clean jobs before the review: the cause is named,
 * the innocent are not blamed, and a clean job stays quiet. One of each kind
 * runs; all do with RIGSHEET_RUNS=most.
 */
import { cleanCases, hasItsCells } from "../support/quoteCases";
import { brought, reviewCases, scored } from "./outsiderCases";
import { isMost } from "../support/tries";

const LONG_MS = 3_600_000;
const ALL = isMost;

/**
 * Named by nothing, or in another cell than the outsider's, and why.
 */
const WEAKER: Readonly<Record<string, string>> = {
  "type-thin": "a cable whose name and type do not fit: names are the firm's own words",
  "type-trunk-59": "the same",
  "price-row-trunk": "a price of the row above that is not out of the way for a trunk",
  "labour-all-uncounted":
    "all six pieces of work are emptied; the list is named at its first row, the outsider's is the fourth",
  "terms-assumptions-empty":
    "the Quote says “none” under its heading now; a quote that assumes nothing is worth a word, not doubtful",
  "blank-fittings_counts":
    "a part that nothing counts is worth knowing, not doubtful: a list may hold more than a job needs",
  "blank-suppliers": "who sells a part is in no sum; a blank is passed over",
  "blank-supplies_amps":
    "named at its cell; the case's row stands elsewhere since the demonstration has another supply",
  "blank-supplies_price": "the same",
  "supply-ma": "the same",
  "zero-supplies_amps": "the same",
  "zero-supplies_price": "the same",
  "head-name-twice": "named at the second of the two that have the name; the outsider's is the first",
  "labour-bonding-deleted": "work that is gone has no cell: it is named at the head of the list of labour",
  "labour-run-deleted": "the same",
};

/** The first of each kind, then every so many. */
const some = <T extends { readonly id: string; readonly kind?: string }>(
  all: readonly T[],
  every: number,
): T[] => {
  const kinds = new Set<string | undefined>();
  return all.filter((one, index) => {
    if (ALL || index % every === 0 || (one.kind !== undefined && !kinds.has(one.kind))) {
      kinds.add(one.kind);
      return true;
    }
    return false;
  });
};

const mistakes = some(reviewCases, 24);
const clean = some(cleanCases.filter(hasItsCells), 16);

test("most of the outsider's cases are for the review", () => {
  expect(reviewCases.length).toBeGreaterThan(290);
  expect(Object.keys(WEAKER).filter((id) => !reviewCases.some((one) => one.id === id))).toEqual([]);
});

test(
  `${mistakes.length} mistakes: the cause is named, and no innocent cell is blamed`,
  () => {
    const counts = { cell: 0, other: 0, silent: 0 };
    const missed: Record<string, readonly string[]> = {};
    const blamed: Record<string, readonly string[]> = {};
    for (const one of mistakes) {
      const result = scored(one);
      counts[result.outcome] += 1;
      if (result.outcome !== "cell" && !(one.id in WEAKER)) missed[one.id] = [result.outcome, ...result.told];
      if (result.blamed.length > 0) blamed[one.id] = result.blamed;
    }
    process.stdout.write(
      `of ${mistakes.length} fair mistakes: ${counts.cell} named at their cause, ${counts.other} something else named, ${counts.silent} silent\n`,
    );
    expect(missed).toEqual({});
    expect(blamed).toEqual({});
  },
  LONG_MS,
);

test(
  `${clean.length} clean jobs: nothing doubtful or wrong is brought about`,
  () => {
    const accused = Object.fromEntries(
      clean.flatMap((one) => {
        const heavy = brought(one).findings.filter(({ weight }) => weight !== "worth knowing");
        return heavy.length > 0 ? [[one.id, heavy.map(({ rule, message }) => `${rule}: ${message}`)]] : [];
      }),
    );
    expect(accused).toEqual({});
  },
  LONG_MS,
);
