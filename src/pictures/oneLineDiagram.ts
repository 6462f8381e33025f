/**
 * The distribution as a one-line diagram, from the sky to the receivers: head
 * units at the left with their dishes and feeders above them, devices in the
 * middle, outlets at the right, each with its shape, its word and its figures;
 * what fails carries a word and a heavy dashed line. As one picture for the
 * screen, or as pictures of a page each for paper.
 */
import type { Book } from "../workbooks/book";
import { estimate } from "../workbooks/multiRoom/names";
import { namedValue } from "../workbooks/named";
import { textOf } from "./columns";
import { describeDistribution } from "./describeDistribution";
import { columnsFor, type Columns } from "./diagramColumns";
import { itemsOf, readDistribution, type Distribution } from "./distribution";
import { drawSection, type Drawn } from "./drawSection";
import { rowLead } from "./itemLines";
import type { Hanging, Item } from "./items";
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
  "Levels are the weakest and the strongest over the band, cold and hot, of a device at one of its ports: predicted, not measured. Figures before a receiver are its user bands.",
  "A small figure on a line is the port that it leaves by, thr a through port; a stroke over a line counts its cables. A word and a heavy dashed line mark what fails.",
];
const FOOT = (FOOT_WORDS.length + 1) * FOOT_LINE + 12;

interface Piece {
  readonly section: Hanging;
  readonly laidOut: LaidOut;
}

/** What every piece is drawn with. */
interface Frame extends Drawn {
  readonly job: string;
}

export function oneLineDiagram(book: Book): Picture {
  const { distribution, sections, frame } = read(book);
  const pieces = sections.map((section) => ({
    section,
    laidOut: layOutSection(section, frame.columns, frame.unit),
  }));
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
  for (const piece of sections.flatMap((section) => piecesOf(section, frame, room))) {
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
  const { unit, usual } = distribution;
  const columns = columnsFor(sections, unit, ({ item }) => rowLead(item, unit, usual));
  return { distribution, sections, frame: { job, columns, unit, usual } };
}

/** A section in as few pieces as it takes for each to be no higher than there is room. */
function piecesOf(section: Hanging, { columns, unit }: Frame, room: number): Piece[] {
  const laidOut = layOutSection(section, columns, unit);
  const ends = laidOut.boxes.filter(({ hanging }) => hanging.children.length === 0);
  let parts = Math.ceil(laidOut.height / room);
  for (let pieces: Piece[] = [{ section, laidOut }]; ; parts++) {
    if (pieces.every((piece) => piece.laidOut.height <= room) || parts > ends.length) return pieces;
    const groups = Array.from({ length: parts }, () => new Set<Hanging>());
    ends.forEach(({ hanging }, index) => groups[Math.floor((index / ends.length) * parts)]!.add(hanging));
    pieces = cut(section, groups).map((part) => ({
      section: part,
      laidOut: layOutSection(part, columns, unit),
    }));
  }
}

/** What a piece shows in full. */
function shownIn({ item, above = [], children, continued }: Hanging): Item[] {
  return [...(continued ? [] : [...above, item]), ...children.flatMap(shownIn)];
}

function drawn(what: string, pieces: readonly Piece[], items: readonly Item[], frame: Frame): Picture {
  const { job, columns, usual } = frame;
  const title = job ? `${what}: ${job}` : what;
  const { left } = columns.head;
  const inside = columns.width - 2 * left;
  const body: string[] = [textAt(left, TITLE_BASE, title, { size: TITLE, bold: true, width: inside })];
  if (pieces.length === 0) {
    const description = "There is nothing to draw yet: fill Rooms, Distribution and Head units.";
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
    body.push(drawSection(laidOut, frame, top));
    top += laidOut.height + BETWEEN_SECTIONS;
  });
  const height = top - BETWEEN_SECTIONS + FOOT;
  [...FOOT_WORDS, usualWords(usual)].forEach((words, index) =>
    body.push(
      textAt(left, height - FOOT + (index + 1) * FOOT_LINE + 6, words, { color: QUIET, width: inside }),
    ),
  );
  return picture({ title, description: describeDistribution(items), width: columns.width, height }, ...body);
}

/** What the rows leave out. */
const usualWords = ({ cable, plate }: Drawn["usual"]): string =>
  [
    cable && `Cable of an outlet that names none: ${cable}.`,
    plate && `Wall plate of an outlet that names none: ${plate}.`,
  ]
    .filter(Boolean)
    .join(" ");

function captions({ head, devices, outlet, row }: Columns): string[] {
  const caption = (left: number, text: string, more = {}): string =>
    textAt(left, CAPTION_BASE, text, { color: QUIET, ...more });
  return [
    caption(head.left, "dish, head unit"),
    ...devices.map(({ left }, level) => caption(left, level === 0 ? "devices" : "")),
    caption(outlet.left + row.name.left, "outlet"),
    caption(outlet.left + row.room.left, "floor, room"),
    caption(outlet.left + row.lead.left, "cable, plate"),
    caption(outlet.left + row.receiver.left, "bands, receiver"),
    caption(outlet.left + row.levels.left + row.levels.width, "dBµV", { anchor: "end" }),
    caption(outlet.left + row.word.left, "verdict"),
  ];
}
