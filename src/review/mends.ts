/**
 * Where what is wrong is put right: not the cell that shows it, but the inputs that it hangs on, the likeliest first,
 * each with what kind of change would do. What would move the limit and not the job is not among them.
 */
import { isBookError, type Book } from "../workbooks/book";
import type { EstimateCheck } from "../workbooks/multiRoom/checks";
import { isSamePlace, type Finding, type FindingPlace, type Mend } from "./finding";
import { MENDED_BY, type MendStep } from "./mendedBy";
import { isBlank, namedCells, plainWord } from "./namedCells";
import { estimate } from "../workbooks/multiRoom/names";
import { made } from "../workbooks/multiRoom/names/terms";
import { parseAddress, parseRange } from "../formula/address";

const { rooms, branches, heads, types, dishes, feeders, site } = estimate;

/** Rows of a job that have to do with one another, by their block. */
type Rows = Map<string, number>;

const blockOf = (name: string): string => name.slice(0, name.indexOf("_"));

const NAMED_ROWS: Readonly<Record<string, string>> = {
  rooms: rooms.outlet.name,
  branches: branches.id.name,
  heads: heads.id.name,
  feeders: feeders.from.name,
  slots: estimate.slots.slot.name,
  receivers: estimate.receivers.kind.name,
  bonds: estimate.bonds.where.name,
  plans: estimate.plans.plan.name,
  assumptions: estimate.assumptions.text.name,
  exclusions: estimate.exclusions.text.name,
  letterhead: estimate.letterhead.line.name,
  made: made.option.name,
  rests: estimate.rests.cable.name,
  places: estimate.places.floor.name,
};
/** The column by which the rows of a block are called. */
const rowNamesOf = (block: string): string => NAMED_ROWS[block] ?? `${block}_name`;

/**
 * @param seenAt a cell of the row that is wrong; absent where all of the job is meant
 * @returns none for a check that is put right where it is seen
 */
export function mendsOf(check: string, book: Book, seenAt?: FindingPlace): Mend[] {
  const steps = MENDED_BY[check as EstimateCheck] ?? [];
  if (steps.length === 0) return [];
  const rows = rowsAround(book, seenAt);
  const seen = new Set<string>();
  return steps.flatMap((step) => {
    const mend = mendAt(book, step, rows);
    if (!mend) return [];
    const key = `${mend.place.sheet}!${mend.place.cell}`;
    if (seen.has(key)) return [];
    seen.add(key);
    return [mend];
  });
}

function mendAt(book: Book, { at, does, row }: MendStep, rows: Rows): Mend | undefined {
  const cells = namedCells(book, at.name);
  const label = "head" in at.words ? at.words.head : at.words.label;
  const [first] = cells;
  if (!first) return undefined;
  if (cells.length === 1) return { place: first.place, what: label, does };
  const block = blockOf(at.name);
  const names = namedCells(book, rowNamesOf(block));
  const filled = names.find(({ value }) => !isBlank(value))?.index;
  if (row === "only when empty" && filled !== undefined) return undefined;
  // The thin rows above and below a block are not to be filled.
  const free = names.slice(1, -1).find(({ value }) => isBlank(value))?.index ?? names.length - 1;
  const index = row === "new" ? free : (rows.get(block) ?? filled ?? free);
  const cell = cells[index];
  const name = names[index]?.value;
  if (!cell) return undefined;
  return {
    place: cell.place,
    what:
      isBlank(name) || isBookError(name) || at.name === rowNamesOf(block)
        ? label
        : `${label} of ${String(name)}`,
    does,
  };
}

/** The row in which something is seen, and from it the rows of what it is made of and what feeds it. */
function rowsAround(book: Book, seenAt: FindingPlace | undefined): Rows {
  const rows: Rows = new Map();
  const own = seenAt && ownRow(book, seenAt);
  if (!own) return rows;
  rows.set(own.block, own.index);
  const word = (name: string, index: number | undefined): string =>
    index === undefined ? "" : plainWord(namedCells(book, name)[index]?.value);
  const rowOf = (block: string, called: string): number | undefined =>
    called === ""
      ? undefined
      : namedCells(book, rowNamesOf(block)).find(({ value }) => plainWord(value) === called)?.index;
  const follow = (block: string, ...called: readonly string[]): void => {
    const index = rows.has(block) ? undefined : rowOf(block, called.find((one) => one !== "") ?? "");
    if (index !== undefined) rows.set(block, index);
  };

  const outlet = rows.get("rooms");
  if (outlet !== undefined) {
    follow("types", word(rooms.type.name, outlet));
    const type = rows.get("types");
    follow(
      "cables",
      word(rooms.cable.name, outlet),
      word(types.cable.name, type),
      word(site.usual_cable.name, 0),
    );
    follow(
      "plates",
      word(rooms.plate.name, outlet),
      word(types.plate.name, type),
      word(site.usual_plate.name, 0),
    );
    follow("receivers", word(rooms.receiver.name, outlet), word(types.receiver.name, type));
    follow("passives", word(rooms.split.name, outlet), word(types.split.name, type));
  }
  const above = rows.get("branches");
  follow("branches", outlet === undefined ? word(branches.from.name, above) : feederOf(book, outlet));
  follow("heads", word(rooms.place.head.name, outlet), word(branches.level.head.name, above));
  const device = rows.get("branches");
  if (device !== undefined) {
    follow("passives", word(branches.device.name, device));
    follow("supplies", word(branches.device.name, device));
    follow("cables", word(branches.cable.name, device), word(site.usual_cable.name, 0));
  }
  const head = rows.get("heads");
  if (head !== undefined) {
    follow("units", word(heads.type.name, head));
    follow("supplies", word(heads.supply.name, head));
    follow("cables", word(heads.cable.name, head), word(site.usual_cable.name, 0));
    const id = word(heads.id.name, head);
    const feeder = namedCells(book, feeders.to.name).find(({ value }) => plainWord(value) === id)?.index;
    if (feeder !== undefined && !rows.has("feeders")) rows.set("feeders", feeder);
    follow("dishes", word(heads.dish.name, head), word(feeders.from.name, rows.get("feeders")));
  }
  follow("dishes", word(feeders.from.name, rows.get("feeders")));
  const dish = rows.get("dishes");
  if (dish !== undefined) follow("feeds", word(dishes.feed.name, dish));
  return rows;
}

/** Outlets that pass on to one another are no more than this in a row. */
const MOST_OUTLETS_IN_A_ROW = 50;

/** What feeds an outlet: the device behind the outlets whose plates it comes through. */
function feederOf(book: Book, outlet: number): string {
  const [names, from] = [namedCells(book, rooms.outlet.name), namedCells(book, rooms.from.name)];
  let feeder = plainWord(from[outlet]?.value);
  for (let step = 0; step < MOST_OUTLETS_IN_A_ROW; step++) {
    const through = names.find(({ value }) => plainWord(value) === feeder);
    if (!through || feeder === "") break;
    feeder = plainWord(from[through.index]?.value);
  }
  return feeder;
}

function ownRow(book: Book, { sheet, cell }: FindingPlace): { block: string; index: number } | undefined {
  const at = parseAddress(cell);
  if (!at) return undefined;
  for (const { name, sheet: on, range } of book.names) {
    if (on !== sheet) continue;
    const zone = parseRange(range);
    if (!zone || zone.top === zone.bottom) continue;
    if (at.row < zone.top || at.row > zone.bottom || at.column < zone.left || at.column > zone.right)
      continue;
    const block = blockOf(name);
    if (namedCells(book, rowNamesOf(block)).length > 1) return { block, index: at.row - zone.top };
  }
  return undefined;
}

/** Where a person goes to put it right: the cell itself where it is filled, else the likeliest of what it hangs on. */
export function goesTo({ place, cause, mends = [] }: Finding): FindingPlace | undefined {
  const isMend = (one: FindingPlace | undefined): boolean =>
    mends.some((mend) => isSamePlace(one, mend.place));
  const filled = [place, cause].find(isMend);
  return filled ?? mends[0]?.place ?? place;
}

/** Of many ways those that are told where there is little room. */
const LIKELIEST = 3;

export const likeliest = (mends: readonly Mend[]): readonly Mend[] => mends.slice(0, LIKELIEST);
