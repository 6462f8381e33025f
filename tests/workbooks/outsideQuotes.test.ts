/**
 * The outsider's mistakes, clean jobs and customers' pages (tests/fixtures/quotes)
 * before the Checks sheet and the Quote: a mistake is named at its place, a clean
 * job stays as it was, and the customer's page shows nothing that it must not.
 * Some of each kind run; all do with RIGSHEET_RUNS=most.
 */
import { recalculate } from "../../src/hosts/headless/recalculate";
import { isBookError, type Book } from "../../src/workbooks/book";
import { summarise } from "../../src/workbooks/multiRoom/summarise";
import { namedRows } from "../../src/workbooks/named";
import { todaysName } from "../../src/workbooks/renamedNames";
import {
  after,
  broughtAbout,
  cleanCases,
  computedBase,
  customerCases,
  hasItsCells,
  mistakeCases,
  names,
  wordsOf,
  type Cause,
  type CheckLine,
  type CustomerCase,
  type MistakeCase,
  type QuoteCase,
} from "../support/quoteCases";
import { isMost } from "../support/tries";

const LONG_MS = 3_600_000;
const ALL = isMost;

type Outcome = "named" | "noticed" | "silent";

/** What Checks does not name at the outsider's place, and why; a line that is no longer true fails the test. */
const WEAKER: Readonly<Record<string, readonly [Exclude<Outcome, "named">, string]>> = {
  "splitter-all-no": ["noticed", "each outlet that is dead is counted and the first named, not the splitter"],
  "splitter-6-no": ["noticed", "the same"],
  "splitter-2-no": ["noticed", "the same"],
  "splitter-4-one": ["noticed", "the same"],
  "tap-no": ["noticed", "the same"],
  "block-4way-no": ["noticed", "the same"],
  "too-many-ports": ["noticed", "the splitter with too many is named, not the outlet that came last"],
  "trunk-twice": ["noticed", "the same"],
  "tuners-high": ["noticed", "the outlet that gets no user band is named, not the head unit"],
  "blank-heads_length": ["silent", "a blank length is none: the first device sits right there"],
  "blank-heads_supply": ["silent", "without one the receivers feed it, and do"],
  "blank-rooms_plate": ["silent", "a blank plate is the usual one"],
  "blank-rooms_receiver": ["silent", "a blank receiver is a spare outlet"],
  "feeder-trailing": ["silent", "a blank after a name no longer parts it from its row"],
  "labour-all-uncounted": ["noticed", "the list of labour units is named, no single row of it"],
  "latlon-sign": ["noticed", "the slots that are below the horizon are named: the place may be right"],
  "slot-no-letter": ["noticed", "the slot is named as it reads now, in the east"],
  "obstacle-high": ["noticed", "the slot that the obstacle hides is named"],
  "w-as-a": ["noticed", "the head units short of volts are named, not their kind on Parts"],
  "outlet-twice": ["noticed", "the name that stands twice is named: the row's own is gone"],
  "round-to-tens": ["noticed", "the Quote is named, not the Price sheet from which its total comes"],
};

/** Clean jobs that today's model finds something in, rightly. */
const CLEAN_NO_MORE: Readonly<Record<string, string>> = {
  "one-slot": "two head units that are feeds of one dish take two slots",
  "quantity-2": "two receivers on a plain outlet need what splits them",
};

/** The first of each kind, then every so many. */
const some = <T extends QuoteCase & { readonly kind?: string }>(all: readonly T[], every: number): T[] => {
  const kinds = new Set<string | undefined>([undefined]);
  return all.filter(({ kind }, index) => {
    const first = !kinds.has(kind);
    kinds.add(kind);
    return ALL || first || index % every === 0;
  });
};

const forChecks = mistakeCases.filter(
  (one) => one.fair && (one.mustBeNamedBy === "checks" || one.mustBeNamedBy === "both") && hasItsCells(one),
);
const mistakes = some(forChecks, 15);
const clean = some(cleanCases.filter(hasItsCells), 9);

const fails = ({ result }: CheckLine): boolean => result === "look" || result === "error";
const lineOf = ({ result, what, where }: CheckLine): string => `${result}: ${what} @ ${where}`;
const causesOf = ({ cause }: MistakeCase): readonly Cause[] =>
  Array.isArray(cause) ? (cause as Cause[]) : [cause as Cause];

function outcomeOf(one: MistakeCase): { outcome: Outcome; lines: readonly string[] } {
  const book = recalculate(after(one).book);
  const lines = broughtAbout(computedBase(one), book);
  // What is worth a note needs no more than one.
  const counted = one.severity === "note" ? lines : lines.filter(fails);
  if (counted.some(fails))
    expect(summarise(book).verdict).toMatch(/^(?:1 check needs|\d+ checks need) attention$/);
  const named = causesOf(one).some((cause) => names(counted, wordsOf(one.book, cause)));
  return {
    outcome: named ? "named" : counted.length > 0 ? "noticed" : "silent",
    lines: lines.map(lineOf),
  };
}

test("so many cases are for Checks, and each known miss is one of them", () => {
  expect(forChecks.length).toBeGreaterThan(225);
  expect(Object.keys(WEAKER).filter((id) => !forChecks.some((one) => one.id === id))).toEqual([]);
});

test(
  `${mistakes.length} mistakes: a check that fails names the place`,
  () => {
    const counts: Record<Outcome, number> = { named: 0, noticed: 0, silent: 0 };
    const otherwise: Record<string, unknown> = {};
    for (const one of mistakes) {
      const { outcome, lines } = outcomeOf(one);
      counts[outcome] += 1;
      if (outcome !== (WEAKER[one.id]?.[0] ?? "named"))
        otherwise[one.id] = [
          one.what,
          causesOf(one).map((cause) => wordsOf(one.book, cause)),
          outcome,
          ...lines,
        ];
    }
    process.stdout.write(
      `of ${mistakes.length} mistakes for Checks: ${counts.named} named at their place, ${counts.noticed} noticed, ${counts.silent} silent\n`,
    );
    expect(otherwise).toEqual({});
  },
  LONG_MS,
);

test(
  `${clean.length} clean jobs: the master verdict stays as it was`,
  () => {
    const accused: Record<string, unknown> = {};
    for (const one of clean) {
      const base = computedBase(one);
      const book = recalculate(after(one).book);
      const was = summarise(base).verdict;
      const { verdict } = summarise(book);
      if ((verdict !== was) !== one.id in CLEAN_NO_MORE)
        accused[one.id] = [was, verdict, ...broughtAbout(base, book).filter(fails).map(lineOf)];
    }
    process.stdout.write(`of ${clean.length} clean jobs ${Object.keys(accused).length} falsely accused\n`);
    expect(accused).toEqual({});
  },
  LONG_MS,
);

/** What no customer's page may ever show, whatever is missing. */
const NEVER = /^0$|^-0$|^None$|^#|^Err:|NaN|^, |revision $|: 0(?:,|$)|^0 to 0$|^1899|^1900/;
const OF_THE_OFFICE = /\b(?:margin|overhead|contingency|cost|markup|crew rate)\b/i;
/** A tax of 0 is a figure like any; Checks asks for its reason. */
const MAY_BE_ZERO = new Set(["quote_tax"]);
const DATES = new Set(["quote_date", "quote_until"]);
const EPOCH_MS = Date.UTC(1899, 11, 30);
const DAY_MS = 86_400_000;

/** What stands in the named cells of the Quote, as they show it. */
function shownBy(book: Book, name: string): string[] {
  return namedRows(book, name)
    .flat()
    .map((value) => {
      if (isBookError(value)) return value.error;
      if (typeof value === "number" && DATES.has(name))
        return new Date(EPOCH_MS + value * DAY_MS).toISOString().slice(0, 10);
      return value === undefined ? "" : String(value);
    });
}

const isOnQuote = ({ sheet }: { readonly sheet: string }): boolean => sheet === "Quote";

/** The names that a case tells to look at: one, several after a comma, or all. */
function looked(book: Book, { look }: CustomerCase): string[] {
  const all = book.names.filter(isOnQuote).map(({ name }) => name);
  const told = look
    .split(/, | \.\. /)
    .map((name) => todaysName(name) ?? name)
    .filter((name) => all.includes(name));
  return told.length > 0 ? told : all;
}

/** Lists that a case empties are told by their heading. */
const EMPTIED = /^(?:assumptions|exclusions)-none$/;
/** The empty template, whose checks say before the case what is missing. */
const EMPTY = "multi-room";

/** Words in a case's list that say how something shows, rather than what. */
const HOW = / (?:without|as if|in (?:a|the)|with) |^\(|^a |^blank | \(as if/;

test.each(customerCases.map((one) => [one.id, one] as const))("the customer's page: %s", (_, one) => {
  const base = computedBase(one);
  const book = recalculate(after(one).book);
  const onQuote = book.names.filter(isOnQuote);
  for (const { name } of onQuote)
    for (const shown of shownBy(book, name)) {
      const allowed = MAY_BE_ZERO.has(name) && shown === "0";
      expect({ name, shown, never: !allowed && NEVER.test(shown) }).toEqual({ name, shown, never: false });
      expect(shown).not.toMatch(OF_THE_OFFICE);
    }
  const forbidden = one.mustNotShow.filter((word) => !HOW.test(word));
  for (const name of looked(book, one))
    for (const shown of shownBy(book, name)) expect(forbidden).not.toContain(shown);

  const lines = broughtAbout(base, book);
  const { verdict } = summarise(book);
  if (one.checkMustSay === "none") {
    expect(verdict).toBe(summarise(base).verdict);
  } else {
    if (!/note/.test(one.checkMustSay))
      expect(verdict).toMatch(/^(?:1 check needs|\d+ checks need) attention$/);
    const words = one.edits.map(({ field, column, row }) =>
      wordsOf(one.book, { name: (field ?? column)!, row: EMPTIED.test(one.id) ? null : row }),
    );
    const told = { words, lines: lines.map(lineOf) };
    if (one.book !== EMPTY && words.length > 0)
      expect({ ...told, named: words.some((each) => names(lines, each)) }).toEqual({ ...told, named: true });
  }
});
