/**
 * Figures on the desk in the signs of a workbook's people. Expected texts are what Node's own Intl writes (ICU 78,
 * Unicode CLDR 48, two digits for day and month), put down here because another Node may have another CLDR.
 */
import { address } from "../../../src/formula/address";
import { formattedAs } from "../../../src/hosts/grid/asWritten";
import { fromModel } from "../../../src/hosts/grid/fromModel";
import type { GridModel } from "../../../src/hosts/grid/library";
import { registerShownAsWritten } from "../../../src/hosts/grid/shownAsWritten";
import { loadLibrary, quietly } from "../../../src/hosts/headless/loadLibrary";
import { openModel } from "../../../src/hosts/headless/recalculate";
import { layOut } from "../../../src/workbooks/layOut";
import { estimate } from "../../../src/workbooks/multiRoom/names";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../../src/workbooks/multiRoom/guestHouse";
import { sheetDate } from "../../../src/workbooks/sheetDate";
import { WRITINGS, writingOf } from "../../../src/workbooks/typed/writing";

const NO_BREAK = "\u00a0";
const NARROW = "\u202f";
const EXPECTED: Readonly<Record<string, readonly [four: string, five: string, date: string]>> = {
  "en-GB": ["1,234.50", "12,345.60", "05/11/2026"],
  "en-US": ["1,234.50", "12,345.60", "11/05/2026"],
  "en-AU": ["1,234.50", "12,345.60", "05/11/2026"],
  "en-CA": ["1,234.50", "12,345.60", "2026-11-05"],
  "cs-CZ": [`1${NO_BREAK}234,50`, `12${NO_BREAK}345,60`, "05. 11. 2026"],
  "da-DK": ["1.234,50", "12.345,60", "05.11.2026"],
  "nl-NL": ["1.234,50", "12.345,60", "05-11-2026"],
  "fi-FI": [`1${NO_BREAK}234,50`, `12${NO_BREAK}345,60`, "05.11.2026"],
  "fr-FR": [`1${NARROW}234,50`, `12${NARROW}345,60`, "05/11/2026"],
  "fr-CH": [`1${NARROW}234,50`, `12${NARROW}345,60`, "05.11.2026"],
  "de-DE": ["1.234,50", "12.345,60", "05.11.2026"],
  "de-AT": [`1${NO_BREAK}234,50`, `12${NO_BREAK}345,60`, "05.11.2026"],
  "de-CH": ["1'234.50", "12'345.60", "05.11.2026"],
  "hu-HU": ["1234,50", `12${NO_BREAK}345,60`, "2026. 11. 05."],
  "it-IT": ["1234,50", "12.345,60", "05/11/2026"],
  "nb-NO": [`1${NO_BREAK}234,50`, `12${NO_BREAK}345,60`, "05.11.2026"],
  "pl-PL": ["1234,50", `12${NO_BREAK}345,60`, "05.11.2026"],
  "pt-BR": ["1.234,50", "12.345,60", "05/11/2026"],
  "pt-PT": ["1234,50", `12${NO_BREAK}345,60`, "05/11/2026"],
  "sk-SK": [`1${NO_BREAK}234,50`, `12${NO_BREAK}345,60`, "05. 11. 2026"],
  "es-ES": ["1234,50", "12.345,60", "05/11/2026"],
  "sv-SE": [`1${NO_BREAK}234,50`, `12${NO_BREAK}345,60`, "2026-11-05"],
};

const library = loadLibrary();
registerShownAsWritten(library);

test("each writing that can be chosen has its texts here", () => {
  expect(WRITINGS.map(({ tag }) => tag).sort()).toEqual(Object.keys(EXPECTED).sort());
});

test.each(Object.entries(EXPECTED))("money and a date in %s", (tag, [four, five, date]) => {
  const writing = writingOf(tag);
  const shown = (value: number, format: string): string => formattedAs(library, value, format, writing);
  expect(shown(1234.5, "#,##0.00")).toBe(four);
  expect(shown(12_345.6, "#,##0.00")).toBe(five);
  expect(shown(sheetDate(2026, 11, 5), "yyyy-mm-dd")).toBe(date);
});

test("of digits that are grouped from five on, rounding and a sign change nothing", () => {
  const shown = (value: number, format = "#,##0.00"): string =>
    formattedAs(library, value, format, writingOf("es-ES"));
  // Intl for es-ES writes these with two digits behind the comma.
  expect([9999.994, 9999.995, -1234.5, -12_345.6, 1_234_567, 999.5].map((value) => shown(value))).toEqual([
    "9999,99",
    "10.000,00",
    "-1234,50",
    "-12.345,60",
    "1.234.567,00",
    "999,50",
  ]);
  // No sign is asked for: the format has none.
  expect(shown(12_345.6, "0.0")).toBe("12345,6");
});

test("nobody has chosen: as the formats have it", () => {
  expect(formattedAs(library, 1234.5, "#,##0.00", undefined)).toBe("1,234.50");
  expect(formattedAs(library, sheetDate(2026, 11, 5), "yyyy-mm-dd", undefined)).toBe("2026-11-05");
});

interface Place {
  readonly sheetId: string;
  readonly row: number;
  readonly col: number;
}
type Texts = GridModel["getters"] & { getCellText(place: Place, how?: { showFormula: boolean }): string };

function placeOf({ getters }: GridModel, name: string): Place {
  const { sheetId, zone } = getters.getNamedRange(name)!.range;
  return { sheetId, row: zone.top, col: zone.left };
}
const shownAt = (model: GridModel, name: string): string[] => {
  const getters = model.getters as Texts;
  const place = placeOf(model, name);
  return [getters.getEvaluatedCell(place).formattedValue, getters.getCellText(place)];
};
const enter = (model: GridModel, name: string, content: string): void =>
  quietly(() => void model.dispatch("UPDATE_CELL" as never, { ...placeOf(model, name), content } as never));

const DATE = estimate.site.date.name;
const TOTAL = estimate.quote.total.name;

/** All that a file has of it, but for the field itself. */
function stored(model: GridModel): string {
  const { sheets } = quietly(() => fromModel(library, model));
  const { sheetId, row, col } = placeOf(model, "written_as");
  const site = model.getters.getSheetName(sheetId);
  return JSON.stringify(
    sheets.map((sheet) => ({
      ...sheet,
      cells: { ...sheet.cells, ...(sheet.name === site && { [address(row, col)]: undefined }) },
    })),
  );
}

test("the field drives what is shown, in one step that undo takes back, and nothing that is stored", () => {
  const model = openModel(layOut(multiRoom, guestHouse));
  const [total] = shownAt(model, TOTAL);
  const [date] = shownAt(model, DATE);
  expect(total).toMatch(/^\d{1,2},\d{3}\.\d\d$/);
  const before = stored(model);

  enter(model, "written_as", "German");
  const german = total!.replace(/[.,]/g, (sign) => (sign === "." ? "," : "."));
  const [year, month, day] = date!.split("-");
  expect(shownAt(model, TOTAL)).toEqual([german, german]);
  expect(shownAt(model, DATE)).toEqual([`${day}.${month}.${year}`, `${day}.${month}.${year}`]);
  expect(stored(model)).toBe(before);

  quietly(() => void model.dispatch("REQUEST_UNDO" as never));
  expect(shownAt(model, TOTAL)).toEqual([total, total]);
  expect(shownAt(model, DATE)).toEqual([date, date]);
});

test("a formula is computed and stored in the one way that files have, and shown in the signs of the language", () => {
  const model = openModel(
    layOut(multiRoom, { ...guestHouse, fields: { ...guestHouse.fields, written_as: "French" } }),
  );
  const sheetId = "own";
  quietly(
    () => void model.dispatch("CREATE_SHEET" as never, { sheetId, position: 1, name: sheetId } as never),
  );
  const put = (row: number, content: string): void =>
    quietly(() => void model.dispatch("UPDATE_CELL" as never, { sheetId, row, col: 0, content } as never));
  put(0, "=ROUND(2.345,2)+1000");
  put(1, '=TEXT(1234.5,"0.0")');
  const getters = model.getters as Texts;
  expect(getters.getCellText({ sheetId, row: 0, col: 0 }, { showFormula: true })).toBe(
    "=ROUND(2,345;2)+1000",
  );
  expect(getters.getCellText({ sheetId, row: 0, col: 0 })).toBe("1002,35");
  // What a function writes is a value, which must not change with the choice.
  expect(getters.getEvaluatedCell({ sheetId, row: 1, col: 0 }).value).toBe("1234.5");
});
