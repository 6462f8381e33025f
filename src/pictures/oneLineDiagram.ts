/**
 * The distribution as a one-line diagram: head units at the left, branches in
 * the middle, outlets at the right, each with its figures; what fails carries a
 * word and a heavy dashed line. As one picture for the screen, or as pictures
 * of a page each for paper.
 */
import type { LengthUnit } from "../engine/signal/lengthUnits";
import type { Book } from "../workbooks/book";
import { estimate } from "../workbooks/multiRoom/names";
import { namedValue } from "../workbooks/named";
import { textOf } from "./columns";
import { describeDistribution } from "./describeDistribution";
import { columnsFor, type Columns } from "./diagramColumns";
import { itemsOf, readDistribution, type Distribution, type Hanging, type Item } from "./distribution";
import { drawSection } from "./drawSection";
import { FAINT, PAGE_WIDTH, QUIET, TITLE } from "./ink";
import { layOutSection, type LaidOut } from "./layOutSection";
import type { Picture } from "./picture";
import { cut, sectionsOf } from "./sections";
import { element, picture, textAt } from "./svg";

const TITLE_BASE = 22;
const CAPTION_BASE = 46;
const FIRST_TOP = 58;
const BETWEEN_SECTIONS = 16;
const FOOT_LINE = 15;
const FOOT_WORDS = [
  "Levels are the weakest and the strongest over the band, cold and hot: predicted, not measured.",
  "A word and a heavy dashed line mark what fails.",
];
const FOOT = FOOT_WORDS.length * FOOT_LINE + 12;

interface Piece {
  readonly section: Hanging;
  readonly laidOut: LaidOut;
}

/** What every piece is drawn with. */
interface Frame {
  readonly job: string;
  readonly columns: Columns;
  readonly unit: LengthUnit;
}

export function oneLineDiagram(book: Book): Picture {
  const { distribution, sections, frame } = read(book);
  const pieces = sections.map((section) => ({ section, laidOut: layOutSection(section, frame.columns) }));
  return drawn("One-line diagram", pieces, itemsOf(distribution), frame);
}

/**
 * @param pageHeight pixels that a picture may be high when it is as wide as the page
 * @returns pictures that hold each outlet once; a head unit or branch that goes on is named again
 */
export function diagramPages(book: Book, pageHeight: number): readonly Picture[] {
  const { sections, frame } = read(book);
  const room = pageHeight * Math.max(1, frame.columns.width / PAGE_WIDTH) - FIRST_TOP - FOOT;
  const pages: Piece[][] = [];
  let left = 0;
  for (const piece of sections.flatMap((section) => piecesOf(section, frame.columns, room))) {
    const needed = piece.laidOut.height + BETWEEN_SECTIONS;
    if (pages.length === 0 || needed > left) {
      pages.push([]);
      left = room + BETWEEN_SECTIONS;
    }
    pages.at(-1)!.push(piece);
    left -= needed;
  }
  if (pages.length === 0) return [oneLineDiagram(book)];
  const title = (page: number): string =>
    pages.length === 1 ? "One-line diagram" : `One-line diagram, part ${page} of ${pages.length}`;
  return pages.map((pieces, index) => {
    const items = pieces.flatMap(({ section }) => shownIn(section));
    return drawn(title(index + 1), pieces, items, frame);
  });
}

function read(book: Book): { distribution: Distribution; sections: readonly Hanging[]; frame: Frame } {
  const distribution = readDistribution(book);
  const sections = sectionsOf(distribution);
  const job = textOf(namedValue(book, estimate.site.job.name));
  return { distribution, sections, frame: { job, columns: columnsFor(sections), unit: distribution.unit } };
}

/** A section in as many pieces as it takes for each to be no higher than there is room. */
function piecesOf(section: Hanging, columns: Columns, room: number): Piece[] {
  const whole = layOutSection(section, columns);
  if (whole.height <= room) return [{ section, laidOut: whole }];
  const parts = Math.ceil(whole.height / (room - whole.boxes[0]!.height));
  const ends = whole.boxes.filter(({ hanging }) => hanging.children.length === 0);
  const groups = Array.from({ length: parts }, () => new Set<Hanging>());
  for (const { hanging, top } of ends) groups[Math.floor((top / whole.height) * parts)]!.add(hanging);
  return cut(
    section,
    groups.filter(({ size }) => size > 0),
  ).map((part) => ({ section: part, laidOut: layOutSection(part, columns) }));
}

/** What a piece shows in full. */
function shownIn({ item, children, continued }: Hanging): Item[] {
  return [...(continued ? [] : [item]), ...children.flatMap(shownIn)];
}

function drawn(
  what: string,
  pieces: readonly Piece[],
  items: readonly Item[],
  { job, columns, unit }: Frame,
): Picture {
  const title = job ? `${what}: ${job}` : what;
  const { left } = columns.head;
  const inside = columns.width - 2 * left;
  const body: string[] = [textAt(left, TITLE_BASE, title, { size: TITLE, bold: true, width: inside })];
  if (pieces.length === 0) {
    const description = "There is nothing to draw yet: fill Rooms, Branches and Head units.";
    body.push(textAt(left, CAPTION_BASE, description));
    return picture({ title, description, width: columns.width, height: 80, empty: true }, ...body);
  }
  body.push(...captions(columns));
  let top = FIRST_TOP;
  pieces.forEach(({ laidOut }, index) => {
    if (index > 0) {
      const y = top - BETWEEN_SECTIONS / 2;
      body.push(
        element("path", {
          d: `M${left} ${y}h${inside}`,
          stroke: FAINT,
        }),
      );
    }
    body.push(drawSection(laidOut, columns, unit, top));
    top += laidOut.height + BETWEEN_SECTIONS;
  });
  const height = top - BETWEEN_SECTIONS + FOOT;
  FOOT_WORDS.forEach((words, index) =>
    body.push(textAt(left, height - FOOT + (index + 1) * FOOT_LINE + 6, words, { color: QUIET })),
  );
  return picture({ title, description: describeDistribution(items), width: columns.width, height }, ...body);
}

function captions({ head, branches, outlet, row }: Columns): string[] {
  const caption = (left: number, text: string, more = {}): string =>
    textAt(left, CAPTION_BASE, text, { color: QUIET, ...more });
  return [
    caption(head.left, "head unit"),
    ...branches.map(({ left }, level) => caption(left, level === 0 ? "branches" : "")),
    caption(outlet.left + 5 + row.name.left, "outlet"),
    caption(outlet.left + 5 + row.room.left, "floor, room"),
    caption(outlet.left + 5 + row.lead.left, "cable, run"),
    caption(outlet.left + 5 + row.levels.left + row.levels.width, "dBµV", { anchor: "end" }),
    caption(outlet.left + 5 + row.word.left, "verdict"),
  ];
}
