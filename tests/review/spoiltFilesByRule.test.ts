/**
 * What lies in a file beside its figures, each case of the outsider (tests/fixtures/spoiltFiles) by the rules alone:
 * nothing is computed, so that all of them are tried each time. The whole review has them in spoiltFiles.test.ts.
 */
import { cases } from "../fixtures/spoiltFiles/seen";
import type { Finding } from "../../src/review/finding";
import { labelsIn } from "../../src/review/labels";
import { DEFAULT_MARGIN_FLOOR } from "../../src/review/rule";
import { rules } from "../../src/review/ruleList";
import type { Book } from "../../src/workbooks/book";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { outcomeOf, RULES_OF_FILES, spoiltBook, told, type SpoiltCase } from "../support/spoiltFiles";

const OF_THE_FILE: ReadonlySet<string> = new Set([...RULES_OF_FILES, "hidden", "number left out"]);

/** Formulas, results, names and modes: other rules name them, or the review itself before any rule. */
const OF_THE_FIGURES =
  /currency|merged|text-cut|company|name-|quote-flattened|total-|line-other|draft|as-text|xlfn|braces|spill|language|dummy|funcres|manual|stale|precision|circle|three-modes/;

function said(read: Book): Finding[] {
  const labelAt = labelsIn(read, multiRoom);
  return rules
    .filter(({ id }) => OF_THE_FILE.has(id))
    .flatMap(({ id, find }) =>
      find({
        read,
        own: read,
        computed: read,
        expected: read,
        differences: [],
        definition: multiRoom,
        labelAt,
        options: { marginFloor: DEFAULT_MARGIN_FLOOR },
      }).map((one) => ({ ...one, rule: id })),
    );
}

const fair = (cases as readonly SpoiltCase[]).filter(
  (one) => one.fair && one.spoil && one.book === "guest-house" && !OF_THE_FIGURES.test(one.id),
);

test.each(fair.map((one) => [one.id, one] as const))("%s", async (_, one) => {
  const findings = said(await spoiltBook(one));
  expect([outcomeOf(one, findings), findings.map(told)]).toEqual(["named", expect.anything()]);
});
