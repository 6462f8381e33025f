/**
 * Inserts the sheets of a file into the open workbook. What comes along with
 * them is not documented for each Excel, so it is looked at afterwards: where
 * something is missing that the formulas need, the sheets are taken out again.
 */
import { parseAddress } from "../../formula/address";
import type { Book } from "../../workbooks/book";
import { addProperties, refuseClashes, takeBookBack } from "./buildBook";
import { loadGuards } from "./guards";
import { UNGROUPABLE, type Change } from "./inExcel";
import { base64 } from "./newWorkbook";
import { factsOf, usedCells } from "./readWorkbook";

const UNPROTECTED =
  "Excel left the sheets' protection behind: protect them with Review, Protect Sheet, so that no formula is typed over.";

/** Before a formula that Excel lets give one result only. */
const CUT = "@";

/** Gives what is to be known of the sheets, in a sentence or empty; undefined where nothing of them is there. */
export const insertingFile = (book: Book, bytes: Uint8Array): Change<void, string | undefined> => ({
  plan: (context) => refuseClashes(context, book),
  carryOut: async (context) => {
    context.workbook.insertWorksheetsFromBase64(base64(bytes), { positionType: "End" });
    try {
      await context.sync();
    } catch (error) {
      if ((error as { code?: unknown } | undefined)?.code === UNGROUPABLE) throw error;
      return undefined;
    }
    if (!(await isWhole(context, book))) {
      await takeBookBack(context, book);
      return undefined;
    }
    addProperties(context.workbook, book);
    const meant = book.sheets.filter((sheet) => sheet.protected).map(({ name }) => name);
    const guards = loadGuards(context, meant);
    context.workbook.worksheets.getItem(book.sheets[0]!.name).activate();
    await context.sync();
    return guards().length < meant.length ? UNPROTECTED : "";
  },
  takeBack: (context) => takeBookBack(context, book),
});

/** Whether all names and formulas are where the file has them, and spill where they do. */
async function isWhole(context: Excel.RequestContext, book: Book): Promise<boolean> {
  const loaded = factsOf(context.workbook);
  const used = new Map((await usedCells(context)).map((one) => [one.name, one]));
  const places = new Map(loaded().names.map(({ name, sheet, range }) => [name, `${sheet}!${range}`]));
  return (
    book.names.every(({ name, sheet, range }) => places.get(name) === `${sheet}!${range}`) &&
    book.sheets.every(({ name, cells }) => {
      const { top = 0, left = 0, formulas = [] } = used.get(name) ?? {};
      return Object.entries(cells).every(([at, { formula }]) => {
        if (formula === undefined) return true;
        const { row, column } = parseAddress(at)!;
        const there = formulas[row - top]?.[column - left];
        return there !== undefined && !there.startsWith(CUT);
      });
    })
  );
}
