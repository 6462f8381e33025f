/** Calculated cells that differ from the template's: what is said of each, and what undoes it, by the comments of formulaDifferences.ts. */
import { address, parseRange, type Zone } from "../../src/formula/address";
import { formulaDifferences } from "../../src/review/formulaDifferences";
import { labelsIn } from "../../src/review/labels";
import type { Book, BookCell } from "../../src/workbooks/book";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";

let blank: Book;
/** The price of a metre, and the volts of head units, which a function of ours works out in several columns. */
let each: Zone;
let volts: Zone;
beforeAll(() => {
  blank = layOut(multiRoom, {});
  const zoneOf = (name: string): Zone => parseRange(blank.names.find((one) => one.name === name)!.range)!;
  each = zoneOf("cables_each");
  volts = zoneOf("heads_fed");
});

const EACH = 'IF(cables_name="","",cables_price/cables_reel)';
const atOf = (zone: Zone, row = 0, column = 0): string => address(zone.top + row, zone.left + column);

type Cells = Readonly<Record<string, BookCell>>;
const withCells = (book: Book, sheetName: string, cells: Cells, results: object = {}): Book => ({
  ...book,
  sheets: book.sheets.map((sheet) =>
    sheet.name === sheetName
      ? {
          ...sheet,
          cells: { ...sheet.cells, ...cells },
          results: { ...sheet.results, ...(results as typeof sheet.results) },
        }
      : sheet,
  ),
});
const differences = (book: Book, own: Book = blank) =>
  formulaDifferences(book, own, multiRoom, labelsIn(blank, multiRoom));
const inParts = (cells: Cells) => differences(withCells(blank, "Parts", cells));

test("none in an empty workbook", () => expect(differences(blank)).toEqual([]));

describe("the first cell of a column", () => {
  const here = (cell: BookCell) => inParts({ [atOf(each)]: cell });
  const common = () => ({
    place: { sheet: "Parts", cell: atOf(each) },
    expected: `=${EACH}`,
    undoing: [{ place: { sheet: "Parts", cell: atOf(each) }, formula: EACH }],
  });
  const OVER = {
    typedOver: true,
    weight: "wrong",
    remedy: "Enter the template's formula in this cell again.",
  };
  const ofOwn = { typedOver: false };

  test("typed over", () =>
    expect(here({ value: 0.5 })).toEqual([
      {
        ...common(),
        ...OVER,
        message: "Price per m or ft is calculated in the template; here 0.5 was typed over it.",
      },
    ]));
  test("emptied", () =>
    expect(here({})).toEqual([
      {
        ...common(),
        ...OVER,
        message: "Price per m or ft is calculated in the template; here its formula is gone.",
      },
    ]));
  test("with another formula", () =>
    expect(here({ formula: "cables_price/100" })).toEqual([
      {
        ...common(),
        ...ofOwn,
        weight: "doubtful",
        message: "Price per m or ft has another formula than the template: =cables_price/100",
        remedy: "If that was not meant, enter the template's formula in this cell.",
      },
    ]));
  test("with an @", () =>
    expect(here({ formula: 'IF(@cables_name="","",cables_price/cables_reel)' })).toEqual([
      {
        ...common(),
        ...ofOwn,
        weight: "wrong",
        message:
          'Price per m or ft has an @ in its formula, which takes one row\'s value for all: =IF(@cables_name="","",cables_price/cables_reel)',
        remedy: "Enter the template's formula in this cell again.",
      },
    ]));
  test("written otherwise is the same", () =>
    expect(here({ formula: EACH.toLowerCase(), spill: { rows: 9, columns: 1 } })).toEqual([]));

  describe("that lost its reach", () => {
    const reach = (rows: number): Book =>
      withCells(blank, "Parts", { [atOf(each)]: { formula: EACH, spill: { rows, columns: 1 } } });
    const cut = (spill: BookCell["spill"], rows: number, result?: unknown) =>
      differences(
        withCells(
          blank,
          "Parts",
          { [atOf(each)]: { formula: EACH, ...(spill && { spill }) } },
          result === undefined ? {} : { [atOf(each)]: result },
        ),
        reach(rows),
      );
    const one = { rows: 1, columns: 1 };
    test("is told with how far it reaches", () =>
      expect(cut(one, 11)).toEqual([
        {
          ...common(),
          ...ofOwn,
          weight: "wrong",
          message:
            "Price per m or ft is calculated in its first row only: the formula lost its reach of 11 rows.",
          effect: "All rows below show what they showed before, or nothing.",
          remedy: "Enter the formula again in this cell.",
        },
      ]));
    test.each<[string, BookCell["spill"], number, unknown]>([
      ["it reaches two rows", { rows: 2, columns: 1 }, 11, undefined],
      ["the file does not say how far", undefined, 11, undefined],
      ["computed anew it has one row", one, 1, undefined],
      ["an error stands there, which is told by itself", one, 11, { error: "#VALUE!" }],
    ])("not where %s", (_, spill, rows, result) => expect(cut(spill, rows, result)).toEqual([]));
  });
});

describe("cells below it", () => {
  const EMPTY = "Empty: the result from above fills it.";
  const REMEDY = "Clear the cell; the calculated value comes back by itself.";
  const place = (row: number, column = 0, zone = each, sheet = "Parts") => ({
    place: { sheet, cell: atOf(zone, row, column) },
  });
  test("one typed into", () =>
    expect(inParts({ [atOf(each, 2)]: { value: 7 } })).toEqual([
      {
        typedOver: true,
        weight: "wrong",
        ...place(2),
        message: "Price per m or ft is calculated from the row at its top; here 7 was typed over it.",
        expected: EMPTY,
        undoing: [place(2), { ...place(0), formula: EACH }],
        remedy: REMEDY,
      },
    ]));
  test("more of them, one with a formula", () => {
    const [one, ...others] = inParts({ [atOf(each, 1)]: { formula: "A1*2" }, [atOf(each, 3)]: { value: 7 } });
    expect(others).toEqual([]);
    expect(one!.message).toBe(
      "Price per m or ft is calculated from the row at its top; here =A1*2 was typed over it and 1 more cell.",
    );
    expect(one!.undoing).toEqual([place(1), place(3), { ...place(0), formula: EACH }]);
    expect(
      inParts({
        [atOf(each, 1)]: { value: 1 },
        [atOf(each, 2)]: { value: 1 },
        [atOf(each, 3)]: { value: 7 },
      })[0]!.message,
    ).toMatch(/here 1 was typed over it and 2 more cells\.$/);
  });
  test("the last of them, and the one behind, which is nobody's", () => {
    const last = each.bottom - each.top;
    expect(inParts({ [atOf(each, last)]: { value: 7 } })[0]!.place).toEqual(place(last).place);
    expect(inParts({ [atOf(each, last + 1)]: { value: 7 } })).toEqual([]);
  });
  test("beside it, where the results are several columns wide", () => {
    const typed = withCells(blank, "Head units", { [atOf(volts, 1, 2)]: { value: "x" } });
    const [one] = differences(typed);
    expect(one!.place).toEqual(place(1, 2, volts, "Head units").place);
    expect(one!.message).toMatch(/is calculated from the row at its top; here x was typed over it\.$/);
  });
  test("a look alone is nothing typed", () => expect(inParts({ [atOf(each, 2)]: { look: 3 } })).toEqual([]));
});

describe("a copy for the office, frozen to values", () => {
  const COPY = {
    typedOver: false,
    weight: "worth knowing",
    message: "This is a copy whose cells of ours are frozen to values: they no longer follow their inputs.",
    remedy: "Work in the working workbook that it was made from; compare with that one.",
  };
  const frozen = (note: string) =>
    differences(
      withCells(blank, "Head units", {
        [atOf(volts)]: { value: 18, note },
        [atOf(volts, 1)]: { value: 17 },
      }),
    );
  test.each(["Frozen: RIG.HEADVOLTS(…)", "Volts.\nFrozen: RIG.HEADVOLTS(…)"])(
    "says so once, and not of each cell: %j",
    (note) => expect(frozen(note)).toEqual([COPY]),
  );
  test("another note makes none", () => {
    const told = frozen("Not Frozen: typed");
    expect(told.map(({ typedOver }) => typedOver)).toEqual([true, true]);
  });
  test("what is not of ours is no part of it: Excel computes that", () => {
    const told = inParts({ [atOf(each)]: { value: 5, note: "Frozen: x" } });
    expect(told.map(({ message }) => message)).toEqual([
      COPY.message,
      "Price per m or ft is calculated in the template; here 5 was typed over it.",
    ]);
  });
});

describe("names that are gone", () => {
  const without = (names: readonly string[], sheets: readonly string[] = []): Book => ({
    ...blank,
    names: blank.names.filter(({ name }) => !names.includes(name)),
    sheets: blank.sheets.filter(({ name }) => !sheets.includes(name)),
  });
  const GONE = [
    "site_tax",
    "site_margin",
    "site_unit",
    "site_currency",
    "site_height",
    "site_date",
    "site_until",
  ];
  const inOrder = (count: number): string[] =>
    blank.names.map(({ name }) => name).filter((name) => GONE.slice(0, count).includes(name));
  test("are told as they stand in the template, five of them", () => {
    const [one] = differences(without(GONE.slice(0, 1)));
    expect(one).toEqual({
      typedOver: false,
      weight: "wrong",
      message: "Names that the formulas use are gone: site_tax.",
      remedy:
        "Take back the removal of rows or sheets, or start a workbook from the template and copy the inputs over.",
    });
    const messageOf = (count: number) => differences(without(GONE.slice(0, count)))[0]!.message;
    expect(messageOf(5)).toBe(`Names that the formulas use are gone: ${inOrder(5).join(", ")}.`);
    expect(messageOf(7)).toBe(
      `Names that the formulas use are gone: ${inOrder(7).slice(0, 5).join(", ")} and 2 more.`,
    );
  });
  test("with their sheets", () => {
    expect(differences(without(["site_tax"], ["Terms"]))[0]!.message).toBe(
      "The sheet “Terms” is missing. Names that the formulas use are gone: site_tax.",
    );
    expect(differences(without(["site_tax"], ["Terms", "Crew"]))[0]!.message).toMatch(
      /^The sheets “\w+”, “\w+” are missing\. Names that the formulas use are gone: site_tax\.$/,
    );
  });
});
