/** Surveys made after the reader was mended, by somebody who had not seen it (tests/fixtures/fieldSurveysLater). */
import path from "node:path";
import { casesIn, play } from "../../support/outsideSurveyCases";

const FOLDER = path.join(__dirname, "../../fixtures/fieldSurveysLater");

/** What still comes out otherwise, by file and line. */
const OTHERWISE: Readonly<Record<string, string>> = {
  "05.txt 5": "a length with a question mark is read as that length",
  "05.txt 14": "a word for the same as above is asked about, but not as one",
  "07.txt 18": "a sum over two pages that does not agree is not told",
  "11.xlsx 10": "it is asked about for its length in millimetres, and not as struck out",
  "13.csv 9": "a device that the job has not yet is taken: it may be placed later",
  "14.xlsx 7": "of two outlets on a line the one with a length is read, and the other passed over",
};

test("all fourteen are read as their maker reads them, but for those listed", async () => {
  const wrong: string[] = [];
  let right = 0;
  for (const one of casesIn(FOLDER)) {
    const played = await play(FOLDER, one);
    right += played.right;
    wrong.push(...played.wrong.map((said) => `${one.file} ${said.split(":")[0]!}`));
  }
  expect([...new Set(wrong)].sort()).toEqual(Object.keys(OTHERWISE).sort());
  expect(right).toBeGreaterThanOrEqual(96);
});
