/**
 * Room types a second time: what a row leaves blank is its type's, and what it fills is its own. Written from the words
 * of the sheet: a receiver "none" is a spare outlet.
 */
import { keyOf } from "./keys";
import {
  eachRow,
  enteredRows,
  figure,
  filledRows,
  isFilled,
  isSame,
  named,
  rowsOf,
  type Cells,
  type Job,
  type Row,
  type Value,
} from "./job";

/** What a row may leave to its type; the words are those of the heads, in small letters. */
const KEYS = {
  receiver: "receiver",
  quantity: "how many",
  cable: "cable",
  run: "run",
  plate: "wall plate",
  route: "route",
  split: "split by",
  shortest: "shortest run",
  longest: "longest run",
  kind: "price group",
} as const;
const ENTRIES = Object.entries(KEYS) as [keyof typeof KEYS, string][];

const typeOf = (job: Job, row: Row): Row | undefined => named(rowsOf(job, "types"), "name", row.type);

/** @returns the row as it counts in the job */
export function withItsType(job: Job, row: Row): Row {
  const type = typeOf(job, row) ?? {};
  const counts: Record<string, Value> = { ...row };
  for (const [key] of ENTRIES) if (!isFilled(row, key) && isFilled(type, key)) counts[key] = type[key]!;
  if (isSame(row.receiver, "none")) delete counts.receiver;
  // The same row where it leaves nothing to a type: whoever draws a job asks for its rows while they still change.
  return isFilled(row, "type") || isFilled(row, "receiver") !== isFilled(counts, "receiver") ? counts : row;
}

/** What the row fills although its type says it, in words. */
const ownOf = (job: Job, row: Row): string[] => {
  const type = typeOf(job, row);
  return ENTRIES.filter(([key]) => type && isFilled(row, key) && isFilled(type, key)).map(([, word]) => word);
};

export const outletsOf = (job: Job, type: Row): Row[] =>
  rowsOf(job, "rooms").filter((row) => isSame(row.type, type.name));
const piecesOf = (job: Job, type: Row): number =>
  isFilled(type, "fitting")
    ? outletsOf(job, type).length * (isFilled(type, "pieces") ? figure(type, "pieces") : 1)
    : 0;
/** Pieces of a fitting that the outlets of all types take. */
export const fittingsOfTypes = (job: Job, fitting: Row): number =>
  filledRows(job, "types", "name")
    .filter((type) => isSame(type.fitting, fitting.name))
    .reduce((sum, type) => sum + piecesOf(job, type), 0);

export function roomTypesSheet(job: Job): Cells {
  const types = rowsOf(job, "types");
  const column = (of: (row: Row) => Value): Value[] => eachRow<Value>(types, "name", of, "");
  return {
    types_used: column((row) => outletsOf(job, row).length),
    types_own: column(
      (row) =>
        enteredRows(job, "rooms").filter((one) => isSame(one.type, row.name) && ownOf(job, one).length > 0)
          .length,
    ),
    types_fitting_pieces: column((row) => piecesOf(job, row)),
    types_fitting_key: types.map((row) => keyOf(row.fitting)),
  };
}

/** The columns of Rooms that tell what counts. */
export function usedColumns(job: Job): Cells {
  const rows = rowsOf(job, "rooms");
  const entered = enteredRows(job, "rooms");
  const used = (key: string): Value[] => rows.map((row) => row[key] ?? "");
  const plain = ["floor", "room", "outlet", "receiver", "quantity", "from", "run"];
  const details = ["route", "port", "split", "kept", "shortest", "longest", "kind"];
  return {
    ...Object.fromEntries([...plain, ...details].map((key) => [`rooms_${key}_used`, used(key)])),
    rooms_own: entered.map((row) => ownOf(job, row).join(", ")),
    rooms_own_key: entered.map((row) => (ownOf(job, row).length > 0 ? keyOf(row.type) : "")),
    rooms_type_key: rows.map((row) => keyOf(row.type)),
    rooms_type_row: rows.map((row) => {
      const at = rowsOf(job, "types").findIndex((type) => isSame(type.name, row.type));
      // The thin row above the first counts.
      return at < 0 ? "" : at + 2;
    }),
    rooms_room_key: rows.map((row) =>
      isFilled(row, "room") && isFilled(row, "type")
        ? [row.type, row.floor, row.room].map((part) => `_${part ?? ""}`).join("")
        : "",
    ),
  };
}

/** Outlets in a room with another number of outlets of its type than the type says. */
export function unlikeTheirType(job: Job): Value[] {
  const rows = filledRows(job, "rooms", "room").filter((row) => isFilled(row, "type"));
  return rows.flatMap((row) => {
    const type = typeOf(job, row);
    const alike = rows.filter(
      (other) =>
        isSame(other.room, row.room) &&
        isSame(other.type, row.type) &&
        (isSame(other.floor, row.floor) || (!isFilled(other, "floor") && !isFilled(row, "floor"))),
    );
    return type && isFilled(type, "outlets") && isFilled(row, "outlet") && alike.length !== type.outlets
      ? [row.outlet!]
      : [];
  });
}
