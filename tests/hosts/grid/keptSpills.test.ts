/** After any edit, the cells of a spill are what a fresh model of the same document shows. */
import fc from "fast-check";
import { loadLibrary, quietly } from "../../../src/hosts/headless/loadLibrary";

const library = loadLibrary();
type Model = InstanceType<typeof library.Model>;

const CELLS = {
  A1: "1",
  A2: "2",
  A3: "x",
  A4: "",
  A5: "5",
  C1: "=A1:A5*2",
  E1: "=C1:C5+1",
  G1: '=IFERROR(E1:E5,"")',
};

const content = fc.constantFrom(
  "1",
  "2",
  "2.0",
  "1.25",
  "0",
  "",
  "x",
  "TRUE",
  "=1/0",
  "=NA()",
  "2026-11-25",
  "$5",
  "50%",
);
const LOCALES = [
  library.constants.DEFAULT_LOCALE,
  {
    ...library.constants.DEFAULT_LOCALE,
    code: "fr_FR",
    thousandsSeparator: " ",
    decimalSeparator: ",",
    formulaArgSeparator: ";",
  },
];
const row = fc.integer({ min: 0, max: 5 });
const edit = fc.oneof(
  fc.record({
    type: fc.constant("UPDATE_CELL"),
    sheetId: fc.constant("S"),
    col: fc.constant(0),
    row,
    content,
  }),
  fc.record({
    type: fc.constant("UPDATE_CELL"),
    sheetId: fc.constant("S"),
    col: fc.constantFrom(0, 2, 4, 6),
    row,
    format: fc.constantFrom("0.00", "0%", "@", ""),
  }),
  fc.record({
    type: fc.constant("ADD_COLUMNS_ROWS"),
    sheetId: fc.constant("S"),
    sheetName: fc.constant("S"),
    dimension: fc.constant("ROW"),
    base: row,
    position: fc.constantFrom("before", "after"),
    quantity: fc.constant(1),
  }),
  fc.record({
    type: fc.constant("REMOVE_COLUMNS_ROWS"),
    sheetId: fc.constant("S"),
    sheetName: fc.constant("S"),
    dimension: fc.constant("ROW"),
    elements: row.map((one) => [one]),
  }),
  fc.record({ type: fc.constant("UPDATE_LOCALE"), locale: fc.constantFrom(...LOCALES) }),
  fc.constantFrom({ type: "REQUEST_UNDO" }, { type: "REQUEST_REDO" }, { type: "EVALUATE_CELLS" }),
);

function shown(model: Model): unknown[] {
  const cells: unknown[] = [];
  for (let col = 0; col < 8; col++)
    for (let at = 0; at < 12; at++) {
      const { value, formattedValue, format, type, message, defaultAlign } = model.getters.getEvaluatedCell({
        sheetId: "S",
        col,
        row: at,
      }) as unknown as Record<string, unknown>;
      cells.push([col, at, value, formattedValue, format, type, message, defaultAlign]);
    }
  return cells;
}

test("edits of contents and formats, rows put in and taken out, undo and redo", () => {
  fc.assert(
    fc.property(fc.array(edit, { minLength: 1, maxLength: 8 }), (edits) => {
      quietly(() => {
        const model = new library.Model({
          sheets: [{ id: "S", name: "S", rowNumber: 12, colNumber: 8, cells: CELLS }],
        });
        for (const one of edits) {
          model.dispatch(one.type as never, one as never);
          expect(shown(model)).toEqual(shown(new library.Model(model.exportData())));
        }
      });
    }),
    { numRuns: 50 },
  );
});
