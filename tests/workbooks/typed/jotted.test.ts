/** What is written where nothing is asked for, and our own figures in the signs of a workbook's people. */
import { valueInWords } from "../../../src/review/whyInWords";
import { inSigns, jotted, sentenceInSigns } from "../../../src/workbooks/typed/jotted";
import { dateAsWritten, writingOf } from "../../../src/workbooks/typed/writing";
import { changeInWords } from "../../../src/workbooks/survey/merge";
import { sheetDate } from "../../../src/workbooks/sheetDate";

const cases: readonly (readonly [tag: string, text: string, content: string | undefined])[] = [
  ["de-DE", "1.234,5", "1234.5"],
  ["de-DE", "1.234", "1234"],
  ["de-DE", "-12,5 %", "-12.5%"],
  ["de-DE", "3.4.2026", "2026-04-03"],
  // No day of theirs: left to the library it would be one of another country.
  ["en-GB", "05/13/2026", "'05/13/2026"],
  ["en-GB", "05/11/2026", "2026-11-05"],
  ["en-US", "05/11/2026", "2026-05-11"],
  ["hu-HU", "2026. 04. 03.", "2026-04-03"],
  ["nl-NL", "3-4-2026", "2026-04-03"],
  ["fr-FR", "12\u202f345,6", "12345.6"],
  ["fr-FR", "12 345,6", "12345.6"],
  ["de-CH", "1'234.50", "1234.5"],
  // A point is no sign between thousands there, and may be a keypad's.
  ["fr-FR", "1.234", undefined],
  ["de-DE", "room 4", undefined],
  ["de-DE", "2-01", undefined],
  ["de-DE", "12,50 €", undefined],
  ["de-DE", "3.16", "3.16"],
];

test.each(cases)("%s: “%s”", (tag, text, content) => {
  expect(jotted(text, writingOf(tag)!)).toBe(content);
});

test("a content in signs, and only where it is a figure", () => {
  expect(
    ["1234.5", "-0.2", "12.5%", "2026-04-03", "'1.5", "a.b", "7", "1.5 m"].map((text) => inSigns(text, ",")),
  ).toEqual(["1234,5", "-0,2", "12,5%", "2026-04-03", "'1.5", "a.b", "7", "1.5 m"]);
});

test("a sentence keeps what it quotes", () => {
  expect(sentenceInSigns("“1.5 kg” is no length. Type 9.5 or 950 cm.", ",")).toBe(
    "“1.5 kg” is no length. Type 9,5 or 950 cm.",
  );
});

test("a value and a change in words", () => {
  const german = writingOf("German");
  expect(valueInWords(14.5, "0.0", german)).toBe("14,5");
  expect(valueInWords(0.125, "0.0%", german)).toBe("12,5 %");
  expect(valueInWords(sheetDate(2026, 11, 5), "yyyy-mm-dd", german)).toBe("05.11.2026");
  expect(valueInWords(14.5, "0.0")).toBe("14.5");
  expect(dateAsWritten("2026-11-05", writingOf("Czech"))).toBe("05. 11. 2026");
  expect(changeInWords({ key: "run", old: 7.9, now: 8.4 }, ",")).toBe("run: 7,9 → 8,4");
  expect(changeInWords({ key: "room", old: "1.2", now: "1.3" }, ",")).toBe("room: 1.2 → 1.3");
});
