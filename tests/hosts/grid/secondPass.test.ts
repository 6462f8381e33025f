/**
 * A formula over a name whose column is filled by another formula's spill is
 * computed right whatever the order in which the library comes to them.
 */
import { fromModel } from "../../../src/hosts/grid/fromModel";
import { loadLibrary, quietly } from "../../../src/hosts/headless/loadLibrary";
import { openModel } from "../../../src/hosts/headless/recalculate";
import type { Book } from "../../../src/workbooks/book";
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
