/** The Rooms block of a workbook as a survey finds it: its rows, the names it may use, and the column of each input. */
import { TUNERS_BY_KIND } from "../../engine/tuners/constants";
import type { Book } from "../book";
import type { WorkbookDefinition } from "../definition";
import { estimate } from "../multiRoom/names";
import { rooms } from "../multiRoom/names/rooms";
import { site } from "../multiRoom/names/site";
import { namedColumn } from "../named";
import { OF } from "../names";
import type { PlaceOf } from "../placedBlocks";
import { WRITING_FIELD, writingOf } from "../typed/writing";
import type { RoomsRow, RowChanges } from "./merge";
import { MEANINGS } from "./meanings";
import type { SurveyLists } from "./partNames";
import type { SurveyRow, SurveySetting } from "./survey";

/** What a workbook has already: the unit of its lengths, the rows of its outlets, and the names that they may use. */
export interface RoomsNow {
  readonly unit: "m" | "ft";
  readonly rows: readonly RoomsRow[];
  readonly lists: SurveyLists;
  /** How its people write numbers, as its own field says it; absent where nobody has chosen. */
  readonly writing?: string;
}

/** How a host shows what its workbook holds under a name. */
export interface NamedValues {
  /** A column, thin rows and all; undefined for a name that is not there. */
  column(name: string): readonly unknown[] | undefined;
}

/** @returns undefined for a workbook without a Rooms sheet of ours */
export function roomsIn(book: Book): RoomsNow | undefined {
  if (book.template !== "multi-room") return undefined;
  const known = new Set(book.names.map(({ name }) => name));
  return roomsFrom({ column: (name) => (known.has(name) ? namedColumn(book, name) : undefined) });
}

const KEYS = MEANINGS.map(({ key }) => key);

export function roomsFrom({ column }: NamedValues): RoomsNow | undefined {
  const unit = column(site.unit.name);
  const outlets = column(rooms.outlet.name);
  if (!unit || !outlets) return undefined;
  const columns = KEYS.flatMap((key): [string, readonly unknown[]][] => {
    const values = column(`${rooms[OF].name}_${key}`);
    return values ? [[key, values]] : [];
  });
  const rows = outlets.flatMap((_, offset): RoomsRow[] => {
    const cells: Record<string, number | string> = {};
    for (const [key, values] of columns) {
      const value = values[offset];
      if ((typeof value === "string" && value !== "") || typeof value === "number") cells[key] = value;
    }
    const isFilled = cells.outlet !== undefined && offset > 0 && offset < outlets.length - 1;
    return isFilled ? [{ offset, cells: { ...cells, outlet: String(cells.outlet) } }] : [];
  });
  const writing = writingOf(column(WRITING_FIELD)?.[0]);
  return {
    ...(writing && { writing: writing.tag }),
    unit: unit[0] === "ft" ? "ft" : "m",
    rows,
    lists: listsFrom(column, rows),
  };
}

function listsFrom(column: NamedValues["column"], rows: readonly RoomsRow[]): SurveyLists {
  const words = (...names: string[]): string[] =>
    names.flatMap((name) =>
      (column(name) ?? []).filter((word): word is string => typeof word === "string" && word !== ""),
    );
  const { cables, plates, routes, passives, kinds, receivers, heads, branches } = estimate;
  const from = words(heads.id.name, branches.id.name);
  const ownReceivers = words(receivers.kind.name);
  return {
    cable: words(cables.name.name),
    plate: words(plates.name.name),
    route: words(routes.name.name),
    split: words(passives.name.name),
    kind: words(kinds.name.name),
    receiver: [...new Set([...ownReceivers, ...TUNERS_BY_KIND.keys()])],
    open: ownReceivers.length === 0 ? ["receiver"] : [],
    // An outlet with a through port feeds another.
    from: from.length === 0 ? [] : [...from, ...rows.map(({ cells }) => String(cells.outlet))],
  };
}

export const settingOf = ({ unit, lists, writing }: RoomsNow): SurveySetting => {
  const found = writingOf(writing);
  return { unit, lists, ...(found && { writing: found }) };
};

export interface RoomsBlock {
  readonly sheet: string;
  /** The thin rows above and below. */
  readonly top: number;
  readonly bottom: number;
  /** Of the input columns, by key. */
  readonly columns: ReadonlyMap<string, number>;
}

/**
 * @param placeOf where a name lies, in the words of the host
 * @returns a sentence where the Rooms sheet is not as its template made it
 */
export function roomsBlock(
  definition: WorkbookDefinition | undefined,
  placeOf: PlaceOf,
  rows: readonly SurveyRow[],
  { changed }: RowChanges,
): RoomsBlock | string {
  const inputs = definition?.sheets
    .flatMap(({ parts }) => parts)
    .flatMap((part) => (part.kind === "block" && part.name === rooms[OF].name ? part.columns : []))
    .filter(({ input }) => input);
  if (!inputs || inputs.length === 0)
    return "This workbook was not made from our multi-room template, so it takes no survey.";
  const columns = new Map<string, number>();
  for (const { key } of inputs) {
    const place = placeOf(`${rooms[OF].name}_${key}`);
    if (place) columns.set(key, place.zone.left);
  }
  const outlet = placeOf(rooms.outlet.name);
  // Rows are added where the block's first column ends.
  const needed = [
    inputs[0]!.key,
    "outlet",
    ...rows.flatMap((row) => Object.keys(row)),
    ...changed.flatMap(({ cells }) => cells.map(({ key }) => key)),
  ];
  const lost = needed.find((key) => !columns.has(key));
  if (!outlet || lost !== undefined) {
    return `The workbook has no cells named rooms_${lost ?? "outlet"} any more, so the survey has no place. Open the workbook it was made from.`;
  }
  const { top, bottom } = outlet.zone;
  return { sheet: outlet.sheet, top, bottom, columns };
}
