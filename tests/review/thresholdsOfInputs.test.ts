/**
 * "input outside its rule" at both ends of every input of the multi-room estimate: the bound itself stands, a millionth
 * beyond is named; so are half a piece where whole ones are asked for, and a word that a list has not. The bounds are
 * the template's own: the rule has none.
 */
import type { FindingPlace } from "../../src/review/finding";
import { labelsIn } from "../../src/review/labels";
import { namedCells } from "../../src/review/namedCells";
import { inputRules } from "../../src/review/rules/inputRules";
import { textNumbers } from "../../src/review/rules/textNumbers";
import type { BookCell } from "../../src/workbooks/book";
import type { InputRule, Part, WorkbookDefinition } from "../../src/workbooks/definition";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { mendedGuestHouse } from "./cleanJobs";

const mended = mendedGuestHouse();
// Every list that a cell may name has something in it.
const book = layOut(multiRoom, {
  ...mended,
  blocks: { ...mended.blocks, types: [{ name: "double room" }], taxes: [{ name: "reduced", rate: 0.07 }] },
});
const labelAt = labelsIn(book, multiRoom);
const reviewed = {
  read: book,
  own: book,
  computed: book,
  differences: [],
  definition: multiRoom,
  labelAt,
  options: { marginFloor: 0 },
};
const rules = [inputRules, textNumbers];

/** The template with only that part of it which has the input: the rules read part by part, and look at all of them for each value. */
const partOf = (name: string): WorkbookDefinition => {
  const has = (part: Part): boolean =>
    (part.kind === "fields" && part.fields.some((one) => one.name === name)) ||
    (part.kind === "block" && part.columns.some(({ key }) => `${part.name}_${key}` === name));
  return {
    ...multiRoom,
    sheets: multiRoom.sheets.flatMap((sheet) => {
      const parts = sheet.parts.filter(has);
      return parts.length > 0 ? [{ ...sheet, parts }] : [];
    }),
  };
};

/** What the two rules say of a cell that holds the value. */
function named(name: string, value: number | string): string[] {
  const { sheet, cell } = placeOf(name);
  const held = book.sheets.find((one) => one.name === sheet)!.cells as Record<string, BookCell>;
  const before = held[cell];
  held[cell] = { value };
  const found = rules.flatMap(({ find }) => find({ ...reviewed, definition: partOf(name) }));
  if (before) held[cell] = before;
  else delete held[cell];
  return found
    .filter(({ place }) => place?.sheet === sheet && place.cell === cell)
    .map(({ place }) => `${place!.sheet}!${place!.cell}`);
}

/** The first row below a block's thin one; a field's own cell. */
function placeOf(name: string): FindingPlace {
  const cells = namedCells(book, name);
  return (cells[1] ?? cells[0])!.place;
}

const inputs = multiRoom.sheets.flatMap(({ parts }) =>
  parts.flatMap((part): [string, InputRule["rule"]][] => {
    if (part.kind === "fields")
      return part.fields.flatMap(({ name, input }) => (input ? [[name, input.rule]] : []));
    if (part.kind !== "block") return [];
    return part.columns.flatMap(({ key, input }) => (input ? [[`${part.name}_${key}`, input.rule]] : []));
  }),
);
const STEP = 1e-6;

/** The old and the new total on Log may be any sum. */
const UNBOUNDED = ["log_before", "log_after"];
type Bounded = Extract<InputRule["rule"], { kind: "number" }> & { min: number; max: number };
const isBounded = (rule: InputRule["rule"]): rule is Bounded =>
  rule.kind === "number" && rule.min !== undefined && rule.max !== undefined;

test("every input of a number has bounds, but the totals on Log", () => {
  const without = inputs.filter(([, rule]) => rule.kind === "number" && !isBounded(rule));
  expect(without.map(([name]) => name)).toEqual(UNBOUNDED);
});

test("no two inputs are one cell: what the template's other parts say of it can't be missed", () => {
  const cells = inputs.map(([name]) => placeOf(name)).map(({ sheet, cell }) => `${sheet}!${cell}`);
  expect(new Set(cells).size).toBe(inputs.length);
});

test("nothing is named before anything is changed", () => {
  expect(rules.flatMap(({ find }) => find(reviewed))).toEqual([]);
  expect(inputs.length).toBeGreaterThan(150);
});

test.each(inputs.flatMap(([name, rule]) => (isBounded(rule) ? [[name, rule] as const] : [])))(
  "%s: its bounds stand, a step beyond is named",
  (name, { min, max, integer, orWords = [] }) => {
    const step = integer ? 1 : STEP;
    for (const bound of [min, max]) expect([bound, named(name, bound)]).toEqual([bound, []]);
    for (const beyond of [min - step, max + step])
      expect([beyond, named(name, beyond).length]).toEqual([beyond, 1]);
    if (integer) expect(named(name, min + 0.5)).toHaveLength(1);
    for (const word of orWords) {
      expect(named(name, word.toUpperCase())).toEqual([]);
      expect(named(name, `${word}s`)).toHaveLength(1);
    }
    // As text its own least value is no number, and is told as such.
    expect(named(name, String(min))).toHaveLength(1);
    expect(named(name, "some")).toHaveLength(1);
  },
);

test.each(inputs.flatMap(([name, rule]) => (rule.kind === "choice" ? [[name, rule.choices] as const] : [])))(
  "%s: each choice stands, in capitals too; another word is named",
  (name, choices) => {
    for (const choice of choices) expect(named(name, choice.toUpperCase())).toEqual([]);
    expect(named(name, `${choices[0]!}x`)).toHaveLength(1);
    expect(named(name, `${choices[0]!} `)).toHaveLength(1);
  },
);

test.each(inputs.flatMap(([name, rule]) => (rule.kind === "named" ? [[name, rule.name] as const] : [])))(
  "%s: each name of its list stands, in capitals too; another is named",
  (name, list) => {
    const listed = namedCells(book, list).flatMap(({ value }) => (value ? [String(value)] : []));
    expect(listed.length).toBeGreaterThan(0);
    for (const one of listed) expect(named(name, one.toUpperCase())).toEqual([]);
    expect(named(name, `${listed[0]!}x`)).toHaveLength(1);
    expect(named(name, `${listed[0]!} `)).toHaveLength(1);
  },
);

test.each(inputs.flatMap(([name, rule]) => (rule.kind === "date" ? [[name] as const] : [])))(
  "%s: a day stands, a word is named",
  (name) => {
    // 2026-11-02.
    expect(named(name, 46_328)).toEqual([]);
    expect(named(name, "tomorrow")).toHaveLength(1);
  },
);
