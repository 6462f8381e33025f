/** What is said of cells in which a room type's value counts is said once, at the type. */
import type { Book } from "../workbooks/book";
import { estimate } from "../workbooks/multiRoom/names";
import { BY_TYPE } from "../workbooks/multiRoom/roomTypes";
import type { Finding } from "./finding";
import { filledCells, namedCells, plainWord, type NamedCell } from "./namedCells";

const { rooms, types } = estimate;

/**
 * @param stored the workbook as it was typed: a blank there means the type
 * @param read the same with the types' values in those blanks
 */
export function atTheirType(found: readonly Finding[], stored: Book, read: Book): Finding[] {
  if (filledCells(read, types.name.name).length === 0) return [...found];
  const placed = placesOf(stored, read);
  const told = new Map<string, { finding: Finding; rows: number }>();
  const result: (Finding | string)[] = [];
  for (const finding of found) {
    const type = finding.place && placed.get(`${finding.place.sheet}!${finding.place.cell}`);
    if (!type) {
      result.push(finding);
      continue;
    }
    const key = JSON.stringify([finding.rule, finding.weight, type.place]);
    const known = told.get(key);
    if (known) known.rows += 1;
    else {
      told.set(key, { finding: { ...finding, place: type.place }, rows: 1 });
      result.push(key);
    }
  }
  return result.map((one) => {
    if (typeof one !== "string") return one;
    const { finding, rows: count } = told.get(one)!;
    return count === 1
      ? finding
      : {
          ...finding,
          message: finding.message.replace(/\.?$/, `, and so in ${count - 1} more of this type.`),
        };
  });
}

/** Of each cell of Rooms that its type fills, the cell of the type. */
function placesOf(stored: Book, read: Book): ReadonlyMap<string, NamedCell> {
  const rowOf = new Map(
    filledCells(read, types.name.name).map(({ value, index }) => [plainWord(value), index]),
  );
  const ofRow = namedCells(read, rooms.type.name);
  const found = new Map<string, NamedCell>();
  for (const key of BY_TYPE) {
    const cells = namedCells(read, types[key].name);
    const sheet = stored.sheets.find(
      ({ name }) => name === namedCells(read, rooms[key].name)[0]?.place.sheet,
    );
    for (const { place, index } of filledCells(read, rooms[key].name)) {
      const { value, formula } = sheet?.cells[place.cell] ?? {};
      if ((value ?? "") !== "" || formula !== undefined) continue;
      const type = cells[rowOf.get(plainWord(ofRow[index]?.value)) ?? -1];
      if (type) found.set(`${place.sheet}!${place.cell}`, type);
    }
  }
  return found;
}
