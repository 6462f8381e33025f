/** What a page shows of a number: expected texts by ECMA-376 part 1, 18.8.31, worked out by hand. */
import { shownNumber } from "../../src/review/numberFormat";

test.each([
  ["#,##0.00", 10684.94, "10,684.94"],
  ["#,##0", 10684.94, "10,685"],
  ["#,##0,", 42426.3, "42"],
  ["#,##0.0,,", 42426300, "42.4"],
  ["0%", 0.125, "13%"],
  ["0.0%", 0.125, "12.5%"],
  ["0.00E+00", 42426.3, "4.24E+04"],
  ['"included"', 5, "included"],
  [";;;", 5, ""],
  ['"1"#,##0.00', 11127.46, "111,127.46"],
  ["[$€-2] #,##0.00", 2, "€ 2.00"],
  ['[>10000]"10,000.00";#,##0.00', 10684.94, "10,000.00"],
  ['[>10000]"10,000.00";#,##0.00', 9.5, "9.50"],
  ["#,##0.00;[Red]-#,##0.00", -5, "-5.00"],
  ["#,##0.00_);(#,##0.00)", -5, "(5.00)"],
  ['0.00;-0.00;"none"', 0, "none"],
  ["General", 1.5, "1.5"],
  // Eleven characters, the point among them (from memory of how sheets show it).
  ["General", 1 / 3, "0.333333333"],
  ["General", 200 / 3, "66.66666667"],
  ["General", 12345678901, "12345678901"],
  ["General", 123456789012, "1.23457E+11"],
  ["General", 0.00001, "1E-05"],
  ["General", 0.0001, "0.0001"],
  ["General", 0, "0"],
  ["#.##0,00", 10684.94, "10684.94000"],
  ["0.0", 0.25, "0.3"],
  ["0.00", 1.005, "1.01"],
  // 2 November 2026 is day 46,328 of the sheet's count.
  ["yyyy-mm-dd", 46328, "2026-11-02"],
  ["dd/mm/yy", 46328, "02/11/26"],
  ["d mmm", 46328, "2 Nov"],
  ["mmmm yyyy", 46328, "November 2026"],
  ["e", 46328, "2026"],
  ["m/d", 46328, "11/2"],
  ['d. "of" mmmm, yy', 46328, "2. of November, 26"],
  // Day 1 is the first of January 1900; the last is 9999-12-31, day 2,958,465.
  ["yyyy", 0, "1899"],
  ["yyyy", -1, "########"],
  ["yyyy-mm-dd", 2958465, "9999-12-31"],
  ["yyyy", 2958466, "########"],
  ["\\x0", 5, "x5"],
  ['"€"0.00', 5, "€5.00"],
  ["[$-407]0", 5, "5"],
  ["#.00", 0.5, ".50"],
  ["0.00", 0.5, "0.50"],
  ['[>5]"more";"less"', 5, "less"],
  ['[>=5]"more";"less"', 5, "more"],
  ['[<5]"less";"more"', 5, "more"],
  ['[<=5]"less";"more"', 5, "less"],
  ['[=5]"five";"other"', 5, "five"],
  ['[<>5]"other";"five"', 5, "five"],
  // No part is for it.
  ['[>5]"more"', 4, "4"],
] as const)("%s shows %d as “%s”", (format, value, text) => {
  expect(shownNumber(format, value).text).toBe(text);
});

test("what a reader has to be told of a format", () => {
  expect(shownNumber(";;;", 5).kind).toBe("nothing");
  expect(shownNumber('"included"', 5).kind).toBe("words");
  expect(shownNumber("#,##0,", 5).thousandsAway).toBe(1);
  expect(shownNumber("#,##0.00", 5).thousandsAway).toBe(0);
  expect([...shownNumber("d mmm", 46328).shows].sort()).toEqual(["day", "month"]);
  expect([...shownNumber("[h]:mm", 1.5).shows]).toEqual(["time"]);
  expect([...shownNumber("yyyy hh:mm", 46328).shows].sort()).toEqual(["time", "year"]);
  const signs = ['"€"0', "\\€0", "€0", "[$€-407]0", "[$€]0"].map((format) => shownNumber(format, 5).currency);
  expect(signs).toEqual(["€", "€", "€", "€", "€"]);
  expect(shownNumber('"pcs" 0', 5).currency).toBe("");
});

test("a format that is no format ends in a text, whatever it is", () => {
  for (const format of [
    "",
    '"',
    "[",
    "\\",
    ";",
    "[>",
    '0"',
    "_",
    "*",
    "E+0",
    "/".repeat(2000),
    '"'.repeat(2001),
  ])
    expect(typeof shownNumber(format, 1234.5).text).toBe("string");
});
