/**
 * Files spoilt by an outsider, and clean variants of them: what is spoilt is named in its cell and as itself, and a
 * harmless change brings nothing that is wrong or doubtful (tests/fixtures/spoiltFiles). Some of each run; all do
 * with RIGSHEET_RUNS=most.
 */
import { cases as cleanVariants } from "../fixtures/spoiltFiles/clean";
import { cases as spoiltCases } from "../fixtures/spoiltFiles/seen";
import {
  brought,
  isHeavy,
  outcomeOf,
  told,
  type CleanVariant,
  type SpoiltCase,
} from "../support/spoiltFiles";
import { tries } from "../support/tries";

const LONG_MS = 3_600_000;
const EVERY = tries(8, 3, 1);

/** Judged otherwise than by the outsider, and why. */
const WEAKER: Readonly<Record<string, string>> = {
  "seen-macros-inside": "the file is refused, with a sentence that names the macros: nothing of it is opened",
  "seen-manual-stale":
    "the mode is named, at the first cell that is old: which input was changed since stands in no file",
  "seen-stale-auto": "the old cells are named: which input was changed after them stands in no file",
};

/** Refused with a sentence before anything is read. */
const REFUSED: Readonly<Record<string, RegExp>> = { "seen-macros-inside": /holds macros/ };

const some = <T>(all: readonly T[]): T[] => all.filter((_, index) => index % EVERY === 0);

test.each(
  some((spoiltCases as readonly SpoiltCase[]).filter(({ fair, id }) => fair && !(id in WEAKER))).map(
    (one) => [one.id, one] as const,
  ),
)(
  "%s is named in its place",
  async (_, one) => {
    const findings = await brought(one);
    expect([outcomeOf(one, findings), findings.map(told)]).toEqual(["named", expect.anything()]);
  },
  LONG_MS,
);

test.each(Object.entries(REFUSED))("%s is refused with its reason", async (id, reason) => {
  const one = (spoiltCases as readonly SpoiltCase[]).find((other) => other.id === id)!;
  await expect(brought(one)).rejects.toThrow(reason);
});

test.each(some(cleanVariants as readonly CleanVariant[]).map((one) => [one.id, one] as const))(
  "%s is harmless",
  async (_, one) => {
    const findings = await brought(one);
    expect(findings.filter(isHeavy).map(told)).toEqual([]);
  },
  LONG_MS,
);

test("what is judged otherwise is a case that there is", () => {
  const ids = (spoiltCases as readonly SpoiltCase[]).map(({ id }) => id);
  for (const id of Object.keys(WEAKER)) expect(ids).toContain(id);
});
