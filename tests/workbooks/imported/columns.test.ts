/** What the columns of a file are taken for: chosen, remembered, and given to the command in words. */
import {
  checkedMappings,
  choiceFrom,
  forgetMapping,
  keepMapping,
  rememberedFor,
  samplesOf,
  takenTwice,
  withChoices,
  type ColumnMeaning,
  type MappedColumn,
} from "../../../src/workbooks/imported/columns";

const MEANINGS: readonly ColumnMeaning[] = [
  { key: "room", name: "Room" },
  { key: "run", name: "Run", units: ["m", "ft"], needed: true },
  { key: "note", name: "Note", several: true },
];
const COLUMNS: readonly MappedColumn[] = [
  { column: 0, head: "Room no.", samples: ["101"], key: "room" },
  { column: 1, head: "Length", samples: ["12"], key: "run", unit: "m" },
  { column: 3, head: "Height", samples: ["2.4"] },
];

test("a guess gives way to a choice of the same meaning; two choices of one meaning are said", () => {
  const chosen = withChoices(COLUMNS, { 3: { key: "run", unit: "ft" } }, MEANINGS);
  expect(chosen.map(({ key }) => key)).toEqual(["room", undefined, "run"]);
  expect(chosen[2]!.unit).toBe("ft");
  expect(takenTwice(chosen, MEANINGS)).toBeUndefined();
  const both = withChoices(COLUMNS, { 1: { key: "run" }, 3: { key: "run" } }, MEANINGS);
  expect(takenTwice(both, MEANINGS)).toMatch(/“Length” and “Height” are both taken for “Run”/);
  const notes = withChoices(COLUMNS, { 1: { key: "note" }, 3: { key: "note" } }, MEANINGS);
  expect(takenTwice(notes, MEANINGS)).toBeUndefined();
});

test("what was chosen is found again by the heads, whatever their capitals, and can be forgotten", () => {
  const chosen = withChoices(COLUMNS, { 0: {}, 3: { key: "run", unit: "ft" } }, MEANINGS);
  const kept = keepMapping([], chosen);
  const next = COLUMNS.map((one) => ({ ...one, head: one.head.toUpperCase() }));
  expect(rememberedFor(next, kept, MEANINGS)).toEqual({ 0: {}, 1: {}, 3: { key: "run", unit: "ft" } });
  expect(rememberedFor(next.slice(1), kept, MEANINGS)).toBeUndefined();
  expect(keepMapping(kept, COLUMNS)).toHaveLength(1);
  expect(forgetMapping(kept, next)).toEqual([]);
  expect(checkedMappings(JSON.parse(JSON.stringify(kept)))).toEqual(kept);
  for (const odd of [
    undefined,
    1,
    {},
    [null],
    [{ heads: ["a"], choices: [] }],
    [{ heads: [1], choices: [{}] }],
  ])
    expect(checkedMappings(odd)).toEqual([]);
});

test.each([
  ["Height=run", { column: 3, choice: { key: "run" } }],
  ["height = Run (ft)", { column: 3, choice: { key: "run", unit: "ft" } }],
  ["D=note", { column: 3, choice: { key: "note" } }],
  ["Room no.=not used", { column: 0, choice: {} }],
  ["Width=run", /no column “Width”/],
  ["Height=weight", /“weight” is nothing that a column can be\. Give one of: Room, Run, Note, not used/],
  ["Height=run (km)", /is given in m or ft, not in “km”/],
])("--map %s", (text, wanted) => {
  const found = choiceFrom(text, COLUMNS, MEANINGS);
  if (wanted instanceof RegExp) expect(found).toMatch(wanted);
  else expect(found).toEqual(wanted);
});

test("three different values are shown of a column, a long one shortened", () => {
  const lines = ["a", "", "a", "x".repeat(90), "b", "c"].map((cell, line) => ({ line, cells: [cell] }));
  expect(samplesOf(lines, 0)).toEqual(["a", `${"x".repeat(39)}…`, "b"]);
});
