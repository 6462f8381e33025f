/**
 * Inserts the sheets of a file into the open workbook. What comes along with
 * them is not documented for each Excel, so it is looked at afterwards: where
 * something is missing that the formulas need, the sheets are taken out again.
 */
import { parseAddress } from "../../formula/address";
import type { Book } from "../../workbooks/book";
import { addProperties, bookLeft, refuseClashes, structureWords, takeBookBack } from "./buildBook";
import { codeOf } from "./excelTrouble";
import { loadGuards } from "./guards";
import { UNGROUPABLE, type Change } from "./inExcel";
import { base64 } from "../../workbooks/base64";
import { factsOf, usedCells } from "./readWorkbook";

const UNPROTECTED =
  "Excel left the sheets' protection behind: protect them with Review, Protect Sheet, so that no formula is typed over.";

/** Before a formula that Excel lets give one result only. */
const CUT = "@";

/** Nothing of the file's sheets is there. */
export interface NotTaken {
  /** Excel's own words, where it refused; what came and was not whole was taken out again. */
  readonly refusal?: string;
}

/** Gives what is to be known of the sheets, in a sentence or empty. */
export const insertingFile = (book: Book, bytes: Uint8Array): Change<void, string | NotTaken> => ({
  plan: (context) => refuseClashes(context, book),
  carryOut: async (context) => {
    context.workbook.insertWorksheetsFromBase64(base64(bytes), { positionType: "End" });
    try {
      await context.sync();
    } catch (error) {
      // Where the connection is lost, the other way is lost too.
      if ([UNGROUPABLE, "RequestAborted"].includes(codeOf(error) ?? "")) throw error;
      return { refusal: String((error as { message?: unknown }).message) };
    }
    if (!(await isWhole(context, book))) {
      await takeBookBack(context, book);
      return {};
    }
    addProperties(context.workbook, book);
    const meant = book.sheets.filter((sheet) => sheet.protected).map(({ name }) => name);
    const guards = loadGuards(context, meant);
    context.workbook.worksheets.getItem(book.sheets[0]!.name).activate();
    await context.sync();
    return guards().length < meant.length ? UNPROTECTED : "";
  },
  takeBack: (context) => takeBookBack(context, book),
  left: () => bookLeft(book),
  words: () => structureWords,
});

/** Whether all names and formulas are where the file has them, and its inputs are free and have their rules. */
async function isWhole(context: Excel.RequestContext, book: Book): Promise<boolean> {
  const loaded = factsOf(context.workbook);
  const inputs = loadInputs(context, book);
  const used = new Map((await usedCells(context)).map((one) => [one.name, one]));
  const places = new Map(loaded().names.map(({ name, sheet, range }) => [name, `${sheet}!${range}`]));
  return (
    inputs() &&
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

/** Of each sheet the first input and the first rule stand for all: what Excel leaves behind, it leaves behind of all. */
function loadInputs({ workbook }: Excel.RequestContext, { sheets, looks }: Book): () => boolean {
  const asked = sheets.flatMap(({ name, cells, validations }) => {
    const sheet = workbook.worksheets.getItem(name);
    const free = Object.entries(cells).find(
      ([, { look }]) => look !== undefined && looks[look]?.locked === false,
    );
    const { protection } = sheet.getRange(free?.[0] ?? "A1").format;
    const { dataValidation } = sheet.getRange(validations[0]?.range ?? "A1");
    protection.load("locked");
    dataValidation.load("type");
    return [{ protection: free && protection, dataValidation: validations[0] && dataValidation }];
  });
  return () =>
    asked.every(
      ({ protection, dataValidation }) => protection?.locked !== true && dataValidation?.type !== "None",
    );
}
