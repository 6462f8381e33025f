/** Gathers the cells of a sheet by their look into few rectangles, and those into lists of addresses. */
import { parseAddress, rangeOf, type Zone } from "../../formula/address";
import type { BookCell } from "../../workbooks/book";

/** An address list that Excel takes in one call has 8,192 characters at most; stay well below. */
const LONGEST_LIST = 2_000;

/** The rectangles of each look, by the look's index. */
export function zonesByLook(cells: Readonly<Record<string, BookCell>>): Map<number, Zone[]> {
  const rowsByLook = new Map<number, Map<number, number[]>>();
  for (const [at, { look }] of Object.entries(cells)) {
    const place = look === undefined ? undefined : parseAddress(at);
    if (!place) continue;
    let rows = rowsByLook.get(look!);
    if (!rows) rowsByLook.set(look!, (rows = new Map()));
    const columns = rows.get(place.row);
    if (columns) columns.push(place.column);
    else rows.set(place.row, [place.column]);
  }
  return new Map([...rowsByLook].map(([look, rows]) => [look, zonesOf(rows)]));
}

/** Stretches of cells side by side, joined downwards where they are equally wide. */
function zonesOf(rows: ReadonlyMap<number, readonly number[]>): Zone[] {
  const done: Zone[] = [];
  let open = new Map<string, Zone>();
  let last = -2;
  for (const row of [...rows.keys()].sort((a, b) => a - b)) {
    const next = new Map<string, Zone>();
    for (const [left, right] of stretches(rows.get(row)!)) {
      const key = `${left} ${right}`;
      const above = row === last + 1 ? open.get(key) : undefined;
      next.set(key, above ? { ...above, bottom: row } : { top: row, left, bottom: row, right });
      if (above) open.delete(key);
    }
    done.push(...open.values());
    open = next;
    last = row;
  }
  return [...done, ...open.values()];
}

function stretches(columns: readonly number[]): [number, number][] {
  const found: [number, number][] = [];
  for (const column of [...columns].sort((a, b) => a - b)) {
    const current = found.at(-1);
    if (current && column === current[1] + 1) current[1] = column;
    else found.push([column, column]);
  }
  return found;
}

/** Address lists such as `A1:B9,D4`, each short enough for one call. */
export function addressLists(addresses: readonly string[]): string[] {
  const lists: string[] = [];
  for (const one of addresses) {
    const list = lists.at(-1);
    if (list !== undefined && list.length + one.length < LONGEST_LIST) {
      lists[lists.length - 1] = `${list},${one}`;
    } else lists.push(one);
  }
  return lists;
}

export const listsOf = (zones: readonly Zone[]): string[] => addressLists(zones.map(rangeOf));
