/** What the desk offers to print, and what of a sheet then stands on paper, without a browser. */
import { paperHtml } from "../../../src/hosts/desk/page/paperHtml";
import { printable } from "../../../src/pane/printable";
import { shownOnGrid } from "../../../src/hosts/grid/shownOnGrid";
import { loadLibrary } from "../../../src/hosts/headless/loadLibrary";
import { textWidth } from "../../../src/pictures/textWidth";
import type { Book, BookSheet } from "../../../src/workbooks/book";
import { layOut } from "../../../src/workbooks/layOut";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../../src/workbooks/multiRoom/guestHouse";
import type { PaperSheet, Typesetting } from "../../../src/workbooks/paperSheet";
import { singleDrop } from "../../../src/workbooks/singleDrop/definition";
import { bookOf, emptySheet } from "../../support/books";
import { DeskInNode } from "./openDesk";

const { helpers, constants } = loadLibrary();
const setting: Typesetting = {
  formatted: (value, format) => helpers.formatValue(value, { format, locale: constants.DEFAULT_LOCALE }),
  textWidth,
};

const shownOf = (book: Book, change?: (desk: DeskInNode, sheetId: string) => void): Book => {
  const desk = new DeskInNode(book);
  change?.(desk, desk.model.getters.getSheetIds()[0]!);
  return shownOnGrid(desk.model, desk.book());
};

/** The first sheet on paper. */
function paperOf(book: Book): PaperSheet {
  const made = printable(book);
  return made.parts([made.choices[0]!], "a4", setting)[0] as PaperSheet;
}
const textsOf = ({ head, before, parts }: PaperSheet): string[][] =>
  [...before, ...head, ...parts.flat()].map(({ cells }) =>
    cells.map(({ text }) => text).filter((text) => text),
  );

const own = (cells: BookSheet["cells"], more: Partial<BookSheet> = {}): BookSheet => ({
  ...emptySheet("Own"),
  rowCount: 30,
  columnCount: 12,
  cells,
  ...more,
});

describe("what is offered", () => {
  test("the customer's page first and alone chosen; the rest in the workbook's order, pictures and cards last", () => {
    const { choices } = printable(shownOf(layOut(multiRoom, guestHouse)));
    expect(choices[0]).toMatchObject({ name: "Quote", chosen: true, forCustomer: true });
    expect(choices.slice(1).some(({ chosen, forCustomer }) => chosen || forCustomer)).toBe(false);
    expect(choices.map(({ name }) => name).slice(-2)).toEqual(["Pictures", "Cards for the crew"]);
    expect(choices.map(({ name }) => name).slice(1, 4)).toEqual(["About", "Site", "Sightline"]);
  });

  test("a workbook without a quote: all of its sheets, as the command prints them", () => {
    const { choices } = printable(shownOf(layOut(singleDrop)));
    expect(choices.length).toBeGreaterThan(1);
    expect(choices.every(({ chosen }) => chosen)).toBe(true);
  });

  test("no hidden sheet, no empty one; one without a print set-up says so", () => {
    const book = bookOf(
      own({ A1: { value: "shown" } }),
      { ...own({ A1: { value: "secret" } }), name: "Secret", hidden: true },
      { ...own({}), name: "Empty" },
    );
    const { choices, paper } = printable(shownOf(book));
    expect(choices).toEqual([
      {
        name: "Own",
        note: expect.stringMatching(/no print set-up/) as string,
        chosen: true,
        forCustomer: false,
      },
    ]);
    expect(paper).toBe("a4");
    expect(printable(shownOf(bookOf(own({})))).choices).toEqual([]);
  });

  test("a hidden quote is not printed, and nothing is chosen in its place", () => {
    const book = layOut(multiRoom, guestHouse);
    const hidden = book.sheets.map((sheet) => (sheet.name === "Quote" ? { ...sheet, hidden: true } : sheet));
    const { choices } = printable(shownOf({ ...book, sheets: hidden }));
    expect(choices.some(({ name, chosen }) => name === "Quote" || chosen)).toBe(false);
  });

  test("the paper is the workbook's own", () => {
    const print = { orientation: "portrait", paper: "letter", footLeft: "Own" } as const;
    expect(printable(shownOf(bookOf(own({ A1: { value: 1 } }, { print })))).paper).toBe("letter");
  });
});

describe("a sheet on paper", () => {
  test("hidden rows and columns stay away; merged cells are one", () => {
    const book = bookOf(
      own({
        A1: { value: "kept" },
        A2: { value: "secret row" },
        B1: { value: "secret column" },
        C3: { value: "over four" },
        E5: { value: "last" },
      }),
    );
    const paper = paperOf(
      shownOf(book, (desk, sheetId) => {
        desk.dispatchAs("HIDE_COLUMNS_ROWS", { sheetId, dimension: "ROW", elements: [1] });
        desk.dispatchAs("HIDE_COLUMNS_ROWS", { sheetId, dimension: "COL", elements: [1] });
        desk.dispatchAs("ADD_MERGE", { sheetId, target: [{ top: 2, left: 2, bottom: 3, right: 3 }] });
      }),
    );
    expect(textsOf(paper)).toEqual([["kept"], ["over four"], [], ["last"]]);
    expect(paper.columns).toHaveLength(4);
    expect(paper.parts[0]![1]!.cells.find(({ text }) => text)).toMatchObject({ columns: 2, rows: 2 });
    // Five columns less the hidden one; the merged cell stands for two of them, in two rows.
    expect(paper.parts[0]!.map(({ cells }) => cells.length)).toEqual([4, 3, 2, 4]);
  });

  test("a text runs over empty neighbours; at the next filled one it is set smaller, a long one in lines", () => {
    const long = "a text of more than one column's width";
    const wide = "of a column";
    const paper = paperOf(
      shownOf(
        bookOf(
          own({
            A1: { value: long },
            A2: { value: wide },
            B2: { value: "x" },
            A3: { value: long },
            B3: { value: "x" },
            A4: { value: long.repeat(6) },
            D4: { value: "end" },
          }),
        ),
      ),
    );
    const [free, stopped, lined, over] = paper.parts[0]!.map(({ cells }) => cells[0]!);
    const [width] = paper.columns as [number];
    expect(textWidth(wide, 10)).toBeGreaterThan(width);
    // A hairline is as good as cut: it keeps its size, and takes the free cells beside it.
    expect(lined).toMatchObject({ size: 10, columns: 1, look: { wrap: true } });
    expect(over).toMatchObject({ size: 10, columns: 3, look: { wrap: true } });
    expect(paper.parts[0]!.map(({ cells }) => cells.length)).toEqual([4, 4, 4, 2]);
    expect(free).toMatchObject({ size: 10 });
    expect(free!.over!.right + width).toBeGreaterThan(textWidth(long, 10));
    expect(stopped!.over).toBeUndefined();
    expect(textWidth(wide, stopped!.size)).toBeLessThanOrEqual(width);
    expect(stopped!.size).toBeLessThan(10);
  });

  test("a number is never cut and never runs over: it is set smaller, all its digits there", () => {
    const paper = paperOf(
      shownOf({
        ...bookOf(own({ A1: { value: 123456789012.34, look: 0 }, B2: { value: "x" } })),
        looks: [{ format: "#,##0.00" }],
      }),
    );
    const [cell] = paper.parts[0]![0]!.cells;
    expect(cell).toMatchObject({ text: "123,456,789,012.34", align: "right" });
    expect(cell!.over).toBeUndefined();
    expect(textWidth(cell!.text, cell!.size)).toBeLessThanOrEqual(paper.columns[0]!);
    expect(cell!.size).toBeLessThan(10);
  });

  test("a formula over money shows money, as the grid does, and an error is a word", () => {
    const paper = paperOf(
      shownOf({
        ...bookOf(own({ A1: { value: 1234.5, look: 0 }, A2: { formula: "A1*2" }, A3: { formula: "1/0" } })),
        looks: [{ format: "#,##0.00" }],
      }),
    );
    expect(textsOf(paper)).toEqual([["1,234.50"], ["2,469.00"], ["error"]]);
  });

  test("only the print area prints; a page ends where the workbook has it, and repeated rows are the head", () => {
    const cells = Object.fromEntries(
      Array.from({ length: 8 }, (_, row) => [`A${row + 1}`, { value: `row ${row + 1}` }]),
    );
    const paper = paperOf(
      shownOf(
        bookOf(
          own(
            { ...cells, C4: { value: "beside" } },
            {
              print: {
                orientation: "landscape",
                paper: "a4",
                area: "A1:B7",
                repeatFrom: 2,
                repeatTo: 2,
                breaks: [4],
              },
            },
          ),
        ),
      ),
    );
    const texts = (rows: PaperSheet["head"]) => rows.map((row) => row.cells[0]!.text);
    expect(texts(paper.before)).toEqual(["row 1"]);
    expect(texts(paper.head)).toEqual(["row 2"]);
    expect(paper.parts.map(texts)).toEqual([
      ["row 3", "row 4"],
      ["row 5", "row 6", "row 7"],
    ]);
  });

  test("what is typed or comes from a file ends no tag, no rule and no text of the foot", () => {
    const nasty = '</style><script>alert(1)</script>"}\\';
    const made = printable(
      shownOf({
        ...bookOf(
          own(
            { A1: { value: nasty, look: 0 } },
            { print: { orientation: "portrait", paper: "a4", footLeft: nasty } },
          ),
        ),
        looks: [{ color: "red;}</style>", fill: '"}x{' }],
      }),
    );
    const html = paperHtml(nasty, made.parts(made.choices, "a4", setting));
    expect(html.split("</style>")).toHaveLength(2);
    expect(html).not.toContain("<script");
    expect(html).toContain("&lt;script&gt;alert(1)&lt;/script&gt;&quot;}\\");
  });
});
