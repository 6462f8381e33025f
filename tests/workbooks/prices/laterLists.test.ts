/** Price lists made after the reader was mended, by somebody who had not seen it (tests/fixtures/priceListsLater). */
import { readdirSync } from "node:fs";
import path from "node:path";
import { casesIn, play } from "./played";

const FOLDER = path.join(__dirname, "../../fixtures/priceListsLater");
const cases = casesIn(
  FOLDER,
  readdirSync(FOLDER)
    .filter((name) => name.endsWith(".json"))
    .sort(),
);

const PRICE_UNIT = "the quantity that a price is for is taken for no pack; the maker says not to judge it";
/** What comes out otherwise, by file and line. */
const OTHERWISE: Readonly<Record<string, string>> = {
  "02.csv line 3": PRICE_UNIT,
  "02.csv line 4": PRICE_UNIT,
  "02.csv line 5": PRICE_UNIT,
  "02.csv line 9": PRICE_UNIT,
  "13.xlsx line 10": "the date of the title is not taken for its lines",
};

test("no line is read otherwise than its maker reads it, but for those listed", async () => {
  const wrong: string[] = [];
  let right = 0;
  for (const one of cases) {
    const played = await play(FOLDER, one, false);
    right += played.right.length;
    expect({ file: one.file, missed: played.asksMissed }).toEqual({ file: one.file, missed: [] });
    wrong.push(...played.wrong.map((said) => `${one.file} ${said.split(":")[0]!}`));
  }
  expect(wrong.sort()).toEqual(Object.keys(OTHERWISE).sort());
  expect(right).toBeGreaterThanOrEqual(54);
});
