/** Letters that look like others: which letters those are is Unicode's (confusables), a few by hand. */
import { deceives, hasOtherBlanks, seenAs } from "../../src/review/lookAlike";

test.each([
  ["trun\u043A", /Cyrillic/],
  ["sit\u0435_overhead", /Cyrillic/],
  ["c\u03BFax", /Greek/],
  ["indoor drop\u200B", /unseen/],
  ["D-240\u200D", /unseen/],
])("%s deceives", (text, what) => expect(deceives(text)).toMatch(what));

test.each(["indoor drop", "Кабель", "Žižkov", "Ωμ", "1/2 µ", "Ada & Ole", ""])(
  "“%s” is what it looks like",
  (text) => expect(deceives(text)).toBeUndefined(),
);

test("what it is taken for", () => {
  expect(seenAs("trun\u043A")).toBe("trunk");
  expect(seenAs("indoor\u00A0drop\u200B")).toBe("indoor drop");
  expect(hasOtherBlanks("indoor\u00A0drop")).toBe(true);
  expect(hasOtherBlanks("indoor drop")).toBe(false);
});
