/**
 * The pictures of a job on a sheet of their own at the end of the workbook, each
 * on its own page when printed. The sheet is known by a name that stands on it:
 * it is left out when a workbook is read, and drawn anew when one is written.
 */
import { address } from "../formula/address";
import { lookIndex, type Book, type BookCell, type BookPicture, type BookSheet } from "../workbooks/book";
import { checks } from "../workbooks/checkNames";
import { LOOKS } from "../workbooks/looks";
import { estimate } from "../workbooks/multiRoom/names";
import { namedColumn, namedValue } from "../workbooks/named";
import { PAGE_WIDTH } from "./ink";
import { levelsPicture } from "./levelsPicture";
import { diagramPages } from "./oneLineDiagram";
import type { Picture } from "./picture";
import { slotsPicture } from "./slotsPicture";

const MARK = "pictures_drawn";
const SHEET = "Pictures";
const INTRO = [
  "Drawn from the other sheets when this workbook was written: figures changed since then are not in them.",
  "This sheet is drawn anew whenever Rigsheet writes the workbook, so keep nothing here.",
];
/** More would be a hundred pages that nobody prints, and minutes of drawing. */
const MOST_OUTLETS = 480;

/** Twenty pixels. */
const ROW_POINTS = 15;
const ROW_PIXELS = 20;
const TITLE_POINTS = 21;
/** Columns to show; how wide a program makes them is its own affair, so none is printed but what the pictures reach. */
const COLUMNS = 14;
/** What is left of a landscape page of A4 under the repeated head. */
const PAGE_HEIGHT = 560;
const FIRST_ROW = 4;
/** The master verdict stands in this column on every sheet. */
const VERDICT_COLUMN = 3;

/** @returns the book without a sheet of pictures drawn before */
export function withoutPictures(book: Book): Book {
  const drawn = book.names.find(({ name }) => name === MARK);
  if (!drawn) return book;
  return {
    ...book,
    sheets: book.sheets.filter(({ name }) => name !== drawn.sheet),
    names: book.names.filter(({ sheet }) => sheet !== drawn.sheet),
  };
}

/** @param book a computed multi-room estimate; any other comes back as it is */
export function withPictures(book: Book): Book {
  const plain = withoutPictures(book);
  if (plain.template !== "multi-room") return plain;
  const { pictures, left } = picturesOf(plain);
  if (pictures.length === 0) return plain;
  const looks = [...plain.looks];
  const sheet = layOut(plain, looks, pictures, left);
  return {
    ...plain,
    looks,
    sheets: [...plain.sheets, sheet],
    names: [...plain.names, { name: MARK, sheet: sheet.name, range: "A1" }],
  };
}

/** What there is to draw, and a sentence about what is left out. */
function picturesOf(book: Book): { pictures: readonly Picture[]; left: string } {
  const outlets = namedColumn(book, estimate.rooms.outlet.name).filter(
    (value) => value !== undefined && value !== "",
  ).length;
  const tooMany = outlets > MOST_OUTLETS;
  return {
    pictures: [
      ...(tooMany ? [] : diagramPages(book, PAGE_HEIGHT)),
      levelsPicture(book),
      slotsPicture(book),
    ].filter(({ empty }) => !empty),
    left: tooMany
      ? `The one-line diagram of ${outlets} outlets would take too many pages: draw it with rigsheet picture JOB.xlsx --kind diagram --out diagram.svg`
      : "",
  };
}

function layOut(book: Book, looks: Book["looks"], pictures: readonly Picture[], left: string): BookSheet {
  const cells: Record<string, BookCell> = {};
  const put = (row: number, column: number, look: keyof typeof LOOKS, content: BookCell): void => {
    cells[address(row, column)] = { ...content, look: lookIndex({ looks }, LOOKS[look]) };
  };
  put(0, 0, "title", { value: SHEET });
  const verdict = namedValue(book, checks.verdict.name);
  if (verdict !== undefined) put(0, VERDICT_COLUMN, "verdict", { formula: checks.verdict.name });
  INTRO.forEach((value, index) => put(1 + index, 0, "intro", { value }));
  if (left) put(3, 0, "label", { value: left });

  const placed: BookPicture[] = [];
  const breaks: number[] = [];
  let row = FIRST_ROW;
  for (const picture of pictures) {
    const scale = Math.min(1, PAGE_WIDTH / picture.width);
    const [width, height] = [picture.width * scale, picture.height * scale];
    placed.push({ ...picture, at: address(row, 0), width, height });
    row += Math.ceil(height / ROW_PIXELS) + 1;
    breaks.push(row);
  }
  breaks.pop();
  const name = freeName(book);
  return {
    name,
    cells,
    results: verdict === undefined ? {} : { [address(0, VERDICT_COLUMN)]: verdict },
    rowCount: row,
    columnCount: COLUMNS,
    columnWidths: {},
    rowHeights: Object.fromEntries(
      Array.from({ length: row }, (_, at) => [at, at === 0 ? TITLE_POINTS : ROW_POINTS]),
    ),
    frozenRows: 2,
    frozenColumns: 0,
    validations: [],
    marks: [],
    protected: true,
    print: {
      orientation: "landscape",
      paper: book.sheets.find(({ print }) => print)?.print?.paper ?? "a4",
      repeatFrom: 1,
      repeatTo: 1,
      breaks,
      footLeft: name,
      footRight: book.sheets.find(({ print }) => print?.footRight)?.print?.footRight ?? "",
    },
    pictures: placed,
  };
}

/** A person may have a sheet of that name. */
function freeName({ sheets }: Book): string {
  const taken = new Set(sheets.map(({ name }) => name.toLowerCase()));
  let name = SHEET;
  for (let next = 2; taken.has(name.toLowerCase()); next++) name = `${SHEET} ${next}`;
  return name;
}
