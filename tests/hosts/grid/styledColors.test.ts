/** The colours that the library's colour picker offers are those that a fresh model of the same document gathers. */
import { loadLibrary, quietly } from "../../../src/hosts/headless/loadLibrary";

const library = loadLibrary();
const SHEET = "S";
const zone = { left: 0, right: 0, top: 0, bottom: 0 };
const target = [zone];
const cell = { sheetId: SHEET, col: 1, row: 1 };

const ways: readonly (readonly [string, string, object])[] = [
  ["a content", "UPDATE_CELL", { ...cell, content: "5" }],
  ["a style with a content", "UPDATE_CELL", { ...cell, content: "6", style: { fillColor: "#112233" } }],
  ["a style alone", "UPDATE_CELL", { ...cell, style: { textColor: "#223344" } }],
  ["formatting", "SET_FORMATTING", { sheetId: SHEET, target, style: { fillColor: "#334455" } }],
  [
    "a border",
    "SET_ZONE_BORDERS",
    { sheetId: SHEET, target, border: { position: "all", style: "thin", color: "#445566" } },
  ],
  [
    "a conditional format",
    "ADD_CONDITIONAL_FORMAT",
    {
      sheetId: SHEET,
      ranges: [{ _sheetId: SHEET, _zone: zone }],
      cf: {
        id: "1",
        rule: {
          type: "CellIsRule",
          operator: "isGreaterThan",
          values: ["1"],
          style: { fillColor: "#556677" },
        },
      },
    },
  ],
];

const colorsOf = (model: InstanceType<typeof library.Model>): string[] =>
  (model.getters as unknown as { getCustomColors(): string[] }).getCustomColors().sort();

test.each(ways)("after %s", (_, type, payload) => {
  quietly(() => {
    const model = new library.Model({ sheets: [{ id: SHEET, name: SHEET, cells: { A1: "1" } }] });
    const before = colorsOf(model);
    model.dispatch(type as never, payload as never);
    const color = /#\d{6}/.exec(JSON.stringify(payload))?.[0];
    expect(colorsOf(model)).toEqual(color === undefined ? before : [...before, color].sort());
    expect(colorsOf(model)).toEqual(colorsOf(new library.Model(model.exportData())));
  });
});
