/**
 * A formula over a name whose column is filled by another formula's spill is
 * computed right whatever the order in which the library comes to them.
 */
import { allFunctions } from "../../../src/functions/all";
import { fromModel } from "../../../src/hosts/grid/fromModel";
import { loadLibrary, quietly } from "../../../src/hosts/headless/loadLibrary";
import { openModel } from "../../../src/hosts/headless/recalculate";
import type { Book } from "../../../src/workbooks/book";
import { parseRange } from "../../../src/formula/address";
import { layOut } from "../../../src/workbooks/layOut";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../../src/workbooks/multiRoom/guestHouse";
import { templates } from "../../../src/workbooks/templates";
import { emptySheet } from "../../support/books";

/** A1 reads the column in the middle of a spill before its own formula stands in line. */
const book: Book = {
  template: "",
  templateVersion: "",
  title: "",
  looks: [],
  sheets: [
    {
      ...emptySheet("S"),
      rowCount: 12,
      columnCount: 8,
      cells: {
        A1: { formula: 'COUNTIF(elevation,"<0")' },
        A3: { value: -97 },
        B2: { formula: "RIG.LOOKANGLES(45,-90,slots)", spill: { rows: 3, columns: 3 } },
        G2: { formula: "RIG.FACETILT(elevation,20)", spill: { rows: 3, columns: 1 } },
        H2: { formula: 'IF(elevation="","",elevation-20)', spill: { rows: 3, columns: 1 } },
      },
    },
  ],
  names: [
    { name: "slots", sheet: "S", range: "A2:A4" },
    { name: "elevation", sheet: "S", range: "C2:C4" },
  ],
};

const library = loadLibrary();
const results = (model: ReturnType<typeof openModel>) =>
  quietly(() => fromModel(library, model)).sheets[0]!.results;

test("on loading", () => {
  const { C3, G3, H3 } = results(openModel(book));
  // The face leans back by the elevation of the beam less the dish's offset angle.
  expect(G3).toBeCloseTo(Number(C3) - 20, 9);
  expect(H3).toBeCloseTo(Number(C3) - 20, 9);
});

test("after an edit, an inserted row, and undo of each", () => {
  const model = openModel(book);
  const sheetId = model.getters.getSheetIds()[0]!;
  const right = (row: number, slot: number) => {
    const now = results(model);
    expect(now[`A${row}`] ?? slot).toBe(slot);
    expect(now[`G${row}`]).toBeCloseTo(Number(now[`C${row}`]) - 20, 9);
    expect(now[`H${row}`]).toBeCloseTo(Number(now[`C${row}`]) - 20, 9);
  };
  quietly(() => model.dispatch("UPDATE_CELL", { sheetId, col: 0, row: 2, content: "-80" }));
  right(3, -80);
  quietly(() =>
    model.dispatch("ADD_COLUMNS_ROWS", {
      sheetId,
      sheetName: "S",
      dimension: "ROW",
      base: 2,
      position: "before",
      quantity: 1,
    }),
  );
  right(4, -80);
  quietly(() => model.dispatch("REQUEST_UNDO"));
  right(3, -80);
  quietly(() => model.dispatch("REQUEST_UNDO"));
  right(3, -97);
});

test.each(templates.map(({ id, demonstration }) => [id, demonstration] as const))(
  "%s: a further computation of everything changes nothing",
  (_, demonstration) => {
    const model = openModel(demonstration());
    const before = quietly(() => fromModel(library, model)).sheets.map((sheet) => sheet.results);
    quietly(() => model.dispatch("EVALUATE_CELLS"));
    expect(quietly(() => fromModel(library, model)).sheets.map((sheet) => sheet.results)).toEqual(before);
  },
);

test("each formula of the demonstration is computed once on loading and once at most for an edit", () => {
  const calls = new Map<string, number>();
  const counted = allFunctions.map(({ name }) => `RIG.${name}`);
  const { mapping } = library.registries.functionRegistry as unknown as {
    mapping: Record<string, (...args: unknown[]) => unknown>;
  };
  const before = { ...mapping };
  for (const name of counted) {
    mapping[name] = function (this: unknown, ...args: unknown[]) {
      calls.set(name, (calls.get(name) ?? 0) + 1);
      return before[name]!.apply(this, args);
    };
  }
  try {
    const laid = layOut(multiRoom, guestHouse);
    const formulas = laid.sheets
      .flatMap(({ cells }) => Object.values(cells))
      .map(({ formula }) => formula ?? "");
    const written = (name: string): number =>
      formulas.reduce((count, one) => count + one.split(`${name}(`).length - 1, 0);
    const model = openModel(laid);
    expect([...calls].filter(([name, times]) => times > written(name))).toEqual([]);
    expect(calls.size).toBeGreaterThan(15);
    calls.clear();
    const sheetId = model.getters.getSheetIds().find((id) => model.getters.getSheetName(id) === "Rooms")!;
    const { range } = laid.names.find(({ name }) => name === "rooms_run")!;
    const { top, left } = parseRange(range)!;
    quietly(() => model.dispatch("UPDATE_CELL", { sheetId, col: left, row: top + 1, content: "33" }));
    expect(calls.get("RIG.OUTLETLEVELS")).toBe(1);
    expect([...calls].filter(([name, times]) => times > written(name))).toEqual([]);
  } finally {
    Object.assign(mapping, before);
  }
});
