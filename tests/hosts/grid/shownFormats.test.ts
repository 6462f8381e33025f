/** Asked of one cell, conditional formats give what the library gives when it asks them of the whole sheet. */
import * as library from "@odoo/o-spreadsheet";
import fc from "fast-check";
import { tries } from "../../support/tries";
import { loadLibrary, quietly } from "../../../src/hosts/headless/loadLibrary";

const plugins = library.registries.coreViewsPluginRegistry;
const OWN = plugins.get("evaluation_cf");
loadLibrary();
const OURS = plugins.get("evaluation_cf");

type Model = InstanceType<typeof library.Model>;
type Rule = Readonly<Record<string, unknown>>;
const [ROWS, COLUMNS] = [8, 4];

/** @param plugin of the library, or ours in its place */
function modelOf(plugin: typeof OWN, cells: Record<string, string>, formats: readonly object[]): Model {
  plugins.replace("evaluation_cf", plugin);
  try {
    const sheet = { id: "S", name: "S", rowNumber: ROWS, colNumber: COLUMNS, cells };
    return quietly(() => new library.Model({ sheets: [{ ...sheet, conditionalFormats: formats }] }));
  } finally {
    plugins.replace("evaluation_cf", OURS);
  }
}

/** The format of every cell, and of cells beyond the sheet's rows. */
function stylesOf(model: Model): unknown[] {
  const getters = model.getters as unknown as { getCellConditionalFormatStyle(position: object): unknown };
  return Array.from({ length: (ROWS + 2) * COLUMNS }, (_, index) =>
    getters.getCellConditionalFormatStyle({
      sheetId: "S",
      row: Math.floor(index / COLUMNS),
      col: index % COLUMNS,
    }),
  );
}

const STYLES = [{ fillColor: "#111111" }, { textColor: "#222222" }, { fillColor: "#333333", bold: true }];
const cellIs = (operator: string, ...values: string[]): Rule => ({ type: "CellIsRule", operator, values });
const RULES: readonly Rule[] = [
  cellIs("isEqual", "low"),
  cellIs("isEqual", "2"),
  cellIs("isEqual", "=$A$1"),
  cellIs("isNotEqual", "low"),
  cellIs("isGreaterThan", "1"),
  cellIs("isGreaterOrEqualTo", "=B2"),
  cellIs("isLessThan", "2"),
  cellIs("isLessOrEqualTo", "1.5"),
  cellIs("isBetween", "1", "=$B1"),
  cellIs("isNotBetween", "1", "2"),
  cellIs("containsText", "o"),
  cellIs("notContainsText", "o"),
  cellIs("beginsWithText", "l"),
  cellIs("endsWithText", "w"),
  cellIs("isEmpty"),
  cellIs("isNotEmpty"),
  cellIs("customFormula", '=OR(A1="low",A1="high")'),
  cellIs("customFormula", "=$B1>A$2"),
  cellIs("customFormula", "=A1"),
  // These look at all of their range, and are left to the library.
  cellIs("top10", "2"),
  {
    type: "ColorScaleRule",
    minimum: { type: "value", color: 0xffffff },
    maximum: { type: "value", color: 0xff0000 },
  },
];

const content = fc.constantFrom("1", "2", "1.5", "", "low", "Low", "high", "TRUE", "=1/0", "=A1", "=A1:A3");
const range = fc.constantFrom("A1:A8", "A1:D4", "B2:C6", "B3", "C1:D8", "A2:B9");
const place = fc.record({
  row: fc.nat({ max: ROWS - 1 }),
  col: fc.nat({ max: COLUMNS - 1 }),
});
const format = fc
  .record({
    rule: fc.constantFrom(...RULES),
    style: fc.constantFrom(...STYLES),
    ranges: fc.array(range, { minLength: 1, maxLength: 2 }),
  })
  .map(({ rule, style, ranges }) => ({ ranges, rule: { ...rule, style } }));
const edit = fc.oneof(
  fc
    .record({ place, content })
    .map((one) => ["UPDATE_CELL", { sheetId: "S", ...one.place, content: one.content }] as const),
  fc
    .nat({ max: ROWS - 1 })
    .map(
      (base) =>
        [
          "ADD_COLUMNS_ROWS",
          { sheetId: "S", sheetName: "S", dimension: "ROW", base, quantity: 1, position: "after" },
        ] as const,
    ),
  fc.constantFrom(...["0", "1"]).map((id) => ["REMOVE_CONDITIONAL_FORMAT", { sheetId: "S", id }] as const),
  fc.constantFrom(["REQUEST_UNDO", {}] as const, ["REQUEST_REDO", {}] as const),
);

test("as the library's own, after every edit", () => {
  let shown = 0;
  fc.assert(
    fc.property(
      fc.array(fc.tuple(place, content), { maxLength: 12 }),
      fc.array(format, { minLength: 1, maxLength: 4 }),
      fc.array(edit, { maxLength: 5 }),
      (contents, formats, edits) => {
        const cells = Object.fromEntries(
          contents.map(([{ row, col }, one]) => [`${"ABCD"[col]!}${row + 1}`, one]),
        );
        const numbered = formats.map((one, id) => ({ ...one, id: String(id) }));
        const [own, ours] = [OWN, OURS].map((plugin) => modelOf(plugin, cells, numbered)) as [Model, Model];
        const compare = (): void => {
          const wanted = stylesOf(own);
          shown += wanted.filter((style) => style !== undefined).length;
          expect(stylesOf(ours)).toEqual(wanted);
        };
        compare();
        for (const [type, payload] of edits) {
          quietly(() => {
            for (const model of [own, ours]) model.dispatch(type as never, payload as never);
          });
          compare();
        }
      },
    ),
    { numRuns: tries(60, 300, 1000) },
  );
  expect(shown).toBeGreaterThan(0);
});

test.each(RULES.map((rule) => [rule.operator ?? rule.type, rule.values, rule] as const))(
  "%s %j",
  (_, __, rule) => {
    const cells = { A1: "low", A2: "2", B1: "1.5", B2: "1", C3: "=A1", D4: "=1/0", C4: "5", D1: "high" };
    const formats = [{ id: "1", ranges: ["A1:D8"], rule: { ...rule, style: STYLES[0] } }];
    const [own, ours] = [OWN, OURS].map((plugin) => stylesOf(modelOf(plugin, cells, formats)));
    expect(ours).toEqual(own);
    const styled = own!.filter((style) => style !== undefined).length;
    expect(styled).toBeGreaterThan(0);
    expect(styled).toBeLessThan(own!.length);
  },
);

test("a cell that is not drawn is not asked", () => {
  const model = modelOf(OURS, { A1: "low", A2: "low" }, [
    { id: "1", ranges: ["A1:A8"], rule: { ...cellIs("customFormula", '=A1="low"'), style: STYLES[0] } },
  ]);
  const getters = model.getters as unknown as Record<string, (...given: unknown[]) => unknown>;
  const asked = jest.spyOn(getters, "evaluateFormula");
  expect(getters.getCellConditionalFormatStyle!({ sheetId: "S", row: 1, col: 0 })).toEqual(STYLES[0]);
  expect(asked.mock.calls.map(([, formula]) => formula)).toEqual(['=A2="low"']);
});
