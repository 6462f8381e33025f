/** The Rooms block of a workbook as a survey finds it: where its rows lie, and the column of each input. */
import type { Book } from "../book";
import type { WorkbookDefinition } from "../definition";
import { rooms } from "../multiRoom/names/rooms";
import { site } from "../multiRoom/names/site";
import { namedColumn, namedValue } from "../named";
import { OF } from "../names";
import type { PlaceOf } from "../placedBlocks";
import { WRITING_FIELD, writingOf } from "../typed/writing";
import type { SurveyRow } from "./readSurvey";

/** What a workbook has already: the unit of its lengths and the names of its outlets. */
export interface RoomsNow {
  readonly unit: "m" | "ft";
  readonly outlets: readonly string[];
  /** How its people write numbers, as its own field says it; absent where nobody has chosen. */
  readonly writing?: string;
}

/** @returns undefined for a workbook without a Rooms sheet of ours */
export function roomsIn(book: Book): RoomsNow | undefined {
  const named = (name: string): boolean => book.names.some((one) => one.name === name);
  if (book.template !== "multi-room" || !named(site.unit.name) || !named(rooms.outlet.name)) return undefined;
  const writing = writingOf(namedValue(book, WRITING_FIELD));
  return {
    unit: namedValue(book, site.unit.name) === "ft" ? "ft" : "m",
    ...(writing && { writing: writing.tag }),
    outlets: namedColumn(book, rooms.outlet.name).flatMap((outlet) =>
      typeof outlet === "object" || outlet === undefined || outlet === "" ? [] : [String(outlet)],
    ),
  };
}

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
  const needed = [inputs[0]!.key, "outlet", ...rows.flatMap((row) => Object.keys(row))];
  const lost = needed.find((key) => !columns.has(key));
  if (!outlet || lost !== undefined) {
    return `The workbook has no cells named rooms_${lost ?? "outlet"} any more, so the survey has no place. Open the workbook it was made from.`;
  }
  const { top, bottom } = outlet.zone;
  return { sheet: outlet.sheet, top, bottom, columns };
}
