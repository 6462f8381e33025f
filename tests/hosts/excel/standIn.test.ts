/** The stand-in refuses what Office refuses: without that, the tests beside this one would prove nothing. */
import type { Book } from "../../../src/workbooks/book";
import type { ExcelStandIn } from "../../support/excelStandIn";
import { inExcel } from "./inExcel";

type Batch = (context: Excel.RequestContext, sheet: Excel.Worksheet) => Promise<unknown>;

const first = (batch: Batch): Promise<unknown> =>
  Excel.run((context) => batch(context, context.workbook.worksheets.getItem("Sheet1")));

const refused: readonly [string, RegExp, Batch, ((excel: ExcelStandIn) => void)?][] = [
  ["reading what was not loaded", /not available/, async (_, sheet) => sheet.getRange("A1").values],
  [
    "reading before the round trip",
    /not available/,
    async (_, sheet) => {
      const cell = sheet.getRange("A1");
      cell.load("values");
      return cell.values;
    },
  ],
  [
    "reading what another load brought",
    /not available/,
    async (context, sheet) => {
      const cell = sheet.getRange("A1");
      cell.load("values");
      await context.sync();
      return cell.formulas;
    },
  ],
  [
    "asking for a null object before the round trip",
    /isNullObject/,
    async (context) => context.workbook.worksheets.getItemOrNullObject("Attic").isNullObject,
  ],
  [
    "a matrix with a column too many",
    /size of the range/,
    async (context, sheet) => {
      sheet.getRange("A1:A2").formulas = [
        [1, 2],
        [3, 4],
      ];
      await context.sync();
    },
  ],
  [
    "a matrix with a row too few",
    /size of the range/,
    async (context, sheet) => {
      sheet.getRange("A1:A2").formulas = [[1]];
      await context.sync();
    },
  ],
  [
    "a sheet that is not there",
    /no sheet Attic/,
    async (context) => {
      context.workbook.worksheets.getItem("Attic").activate();
      await context.sync();
    },
  ],
  [
    "a locked cell of a protected sheet",
    /can't perform/,
    async (context, sheet) => {
      sheet.getRange("A1").formulas = [[1]];
      await context.sync();
    },
    (excel) => excel.state.protectedSheets.set("Sheet1", { insertRows: true }),
  ],
  [
    "anything while a cell is being edited",
    /cell-editing mode/,
    async (context) => context.sync(),
    (excel) => (excel.editing = true),
  ],
  ["a call that it does not know", /not known/, async (_, sheet) => sheet.copy()],
  ["a property that it does not know", /not known/, async (_, sheet) => (sheet.standardWidth = 9)],
  [
    "a line inside one cell",
    /has no InsideHorizontal/,
    async (context, sheet) => {
      sheet.getRange("A1").format.borders.getItem("InsideHorizontal").weight = "Thin";
      await context.sync();
    },
  ],
  [
    "work that is never synced",
    /never synced/,
    async (_, sheet) => {
      sheet.getRange("A1").formulas = [[1]];
    },
  ],
];

for (const [name, sentence, batch, before] of refused) {
  test(name, () =>
    inExcel({}, async (excel) => {
      before?.(excel);
      const kept = JSON.stringify(excel.state.book);
      await expect(first(batch)).rejects.toThrow(sentence);
      expect(JSON.stringify(excel.state.book)).toBe(kept);
    }),
  );
}

test.each(["protect", "unprotect"] as const)("in a group %s is refused: it can never be taken back", (call) =>
  inExcel({}, async () => {
    const grouped = Excel.run({ mergeUndoGroup: true }, async (context) => {
      const { protection } = context.workbook.worksheets.getItem("Sheet1");
      if (call === "protect") protection.protect({});
      else protection.unprotect();
      await context.sync();
    });
    await expect(grouped).rejects.toMatchObject({ code: "UndoNotSupported" });
  }),
);

test("steps to undo: one for each round trip that changed something, one for a merged batch", () =>
  inExcel({}, async (excel) => {
    const twice: Batch = async (context, sheet) => {
      for (const at of ["A1", "A2"]) {
        sheet.getRange(at).formulas = [[1]];
        await context.sync();
      }
    };
    await first(twice);
    expect(excel.undoSteps).toBe(2);
    await Excel.run({ mergeUndoGroup: true }, (context) =>
      twice(context, context.workbook.worksheets.getItem("Sheet1")),
    );
    expect(excel.undoSteps).toBe(3);
    await first(async (context, sheet) => {
      sheet.getRange("A1").load("values");
      await context.sync();
    });
    expect([excel.undoSteps, excel.syncs]).toEqual([3, 5]);
  }));

test("it computes what was entered", () =>
  inExcel({}, async (excel) => {
    await first(async (context, sheet) => {
      sheet.getRange("A1:B1").formulas = [[2, "=A1*21"]];
      await context.sync();
    });
    const book: Book = excel.book();
    expect(book.sheets[0]!.results.B1).toBe(42);
  }));
