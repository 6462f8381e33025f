/**
 * No text that comes from outside is gone over again for each of its letters: at these lengths that would take
 * hours, and the test runner would give the test up. Speed itself is the bench's matter.
 */
import { fittedText } from "../../src/pictures/textWidth";
import { readSurvey } from "../../src/workbooks/survey/readSurvey";
import { readTyped } from "../../src/workbooks/typed/readTyped";

const HEAD = "outlet;receiver;run (m)";
const survey = (line: string) => {
  const lines = [HEAD, line, "A-01;receiver;9"].map((one, at) => ({ line: at + 1, cells: one.split(";") }));
  return readSurvey([{ source: "text", lines }], { unit: "m" });
};

const WORK: readonly (readonly [what: string, work: (length: number) => unknown])[] = [
  ["a survey line of commas in one cell", (n) => survey(`${",".repeat(n)}x`)],
  ["a survey line of many empty cells", (n) => survey(";".repeat(n))],
  [
    "a survey's head of brackets",
    (n) =>
      readSurvey([{ source: "text", lines: [{ line: 1, cells: ["(".repeat(n), "outlet", "run"] }] }], {
        unit: "m",
      }),
  ],
  ["a survey's run of blanks and digits", (n) => survey(`A;receiver;${"1 ".repeat(n / 2)}`)],
  ["a survey's run of hyphens", (n) => survey(`A;receiver;1${"-".repeat(n)}2`)],
  ["a survey's outlet of hyphens", (n) => survey(`${"1-".repeat(n / 2)}1;receiver;9`)],
  ["a survey's outlet of commas", (n) => survey(`${"A1, ".repeat(n / 4)}A2;receiver;9`)],
  ["a survey's line of words", (n) => survey("total ".repeat(n / 6))],
  ["a name with blanks inside", (n) => readTyped(`a${" ".repeat(n)}b`, { kind: "text", maxLength: 250 })],
  ["a figure of many marks", (n) => readTyped(`1.${"-".repeat(n)}x`, { kind: "date" } as never)],
  ["a long name in a picture", (n) => fittedText("x".repeat(n), 120, 11)],
];

const LONG = 1_000_000;

test.each(WORK)("%s", (_, work) => {
  expect(work(LONG)).toBeDefined();
});
