/** What is typed finds the jobs that a person means by it: an outsider's cases, and those of the rules of our own. */
import { finder, searched, type Findable } from "../../src/jobs/search";
import type { JobState } from "../../src/jobs/content";
import cases from "./fixtures/search.json";

interface Case {
  readonly id: string;
  readonly number: string;
  readonly revision: string;
  readonly name: string;
  readonly customer: string;
  readonly total: number | null;
  readonly currency: string;
  readonly state: string;
  readonly date: string;
  readonly away: boolean;
}

const shown = (cases.jobs as readonly Case[])
  .filter(({ away }) => !away)
  .map(({ id, total, state, ...line }) => ({
    id,
    text: searched({
      state: state as JobState,
      line: { ...line, ...(total !== null && { total }), verdict: "" },
    }),
  }));

test("made by someone who had not seen the code: each text finds just the jobs meant", () => {
  expect(cases.queries).toHaveLength(60);
  const wrong = cases.queries.flatMap(({ typed, finds, why }) => {
    const isFound = finder(typed);
    const found = shown.filter(({ text }) => isFound(text)).map(({ id }) => id);
    return found.join() === finds.join()
      ? []
      : [`“${typed}” found ${found.join()}, not ${finds.join()}: ${why}`];
  });
  expect(wrong).toEqual([]);
});

const line = {
  number: "Q-7",
  revision: "B",
  name: "Pension Müller-Lüdenscheid",
  customer: "Bjørn Åse",
  total: 1234567.5,
  currency: "EUR",
  date: "2026-03-09",
  verdict: "2 checks need attention",
};
const job: Findable = { line, state: "draft", file: { name: "müller final.xlsx" } };

test.each([
  ["spelled out", "mueller luedenscheid"],
  ["spelled out where it is written so", "müller", { ...line, name: "Mueller" }],
  ["spelled out where the marks stand for themselves", "mueller", { ...line, name: "Mu\u0308ller" }],
  ["an a with a ring, spelled out", "aase bjoern"],
  ["over the hyphen, without it", "müller lüden"],
  ["a hyphen in the place of a space", "pension-müller"],
  ["with the decimal comma", "1.234.567,50"],
  ["in groups of another country", "1'234'567.50"],
  ["with spaces for groups", "1 234 567,50 €"],
  ["a sign behind", "1,234,567.50€"],
  ["the three letters before", "eur1234567.5"],
  ["the date in words", "9 march 2026"],
  ["the revision", "revision b"],
  ["the file", "final.xlsx"],
  ["in wide letters", "ＭＵＬＬＥＲ"],
  ["with a soft hyphen in it", "mül\u00adler"],
  ["with the marks of another direction", "\u202bpension\u202c"],
  ["with points to Hebrew letters", "שלום", { ...line, name: "שָׁלוֹם" }],
  ["a space for the Hebrew hyphen", "בית הארחה", { ...line, name: "בית־הארחה" }],
  ["with signs to Arabic letters", "محمد", { ...line, name: "مُحَمَّد" }],
  ["only marks", "“ ” – -"],
])("%s: %s", (_, typed, as = line) => {
  expect(finder(typed)(searched({ ...job, line: as }))).toBe(true);
});

test.each([
  ["another sum of the same figures", "234.567.1"],
  ["from one field into the next", "pension-b"],
  ["a hyphen between words that are apart", "pension-lüdenscheid"],
  ["another month", "april"],
  ["no pattern", "m.ller"],
  ["what is not shown", "look"],
  ["a state that it is not in", "sent"],
  ["too much of it", "müller".repeat(500)],
])("not %s: %s", (_, typed) => {
  expect(finder(typed)(searched(job))).toBe(false);
});

test("what it is said of a job is found: conflicting, unreadable, put away, when it was saved", () => {
  const found = (typed: string, one: Findable): boolean => finder(typed)(searched(one));
  expect(found("draft conflicting", { ...job, conflictOf: { job: "job-1", after: "r1" } })).toBe(true);
  expect(found("put away", { ...job, away: true })).toBe(true);
  expect(found("cannot be read", { trouble: { sentence: "", kept: [] }, state: "draft" })).toBe(true);
  expect(found("draft", { trouble: { sentence: "", kept: [] }, state: "draft" })).toBe(false);
  const savedAt = new Date(2026, 5, 30, 9, 5).toISOString();
  for (const typed of ["2026-06-30", "09:05", "30 june"]) expect(found(typed, { savedAt })).toBe(true);
});

test("a currency that is none by its three letters is searched as it stands", () => {
  for (const [currency, typed] of [
    ["€", "€1,234,567.50"],
    ["demonstration money", "demonstration"],
    ["QQQ", "qqq"],
    ["", "1234567"],
  ] as const)
    expect(finder(typed)(searched({ line: { ...line, currency } }))).toBe(true);
});
