/** What stands in each column of the functions' results, and how near two workings of it must come. */
import { COLUMNS, TABLE_NAMES, type Answer, type Tables } from "./tables";
import type { Reference } from "./index";

/** "word" is compared as it stands, "name" of an outlet by its figure, of "said" only that a sentence is there. */
export type Column = "word" | "count" | "dB" | "V" | "A" | "name" | "said";
export const NEAR: Readonly<Record<"count" | "dB" | "V" | "A", number>> = {
  count: 0,
  dB: 1e-6,
  V: 0.002,
  A: 0.001,
};

export const RESULTS: Readonly<Record<Exclude<keyof Reference, "NEEDED">, readonly Column[]>> = {
  OUTLETPLACES: ["word", "count", "word", "word", "word", "count"],
  OUTLETLEVELS: ["dB", "dB", "dB", "dB", "dB", "dB"],
  OUTLETNOISE: ["word", "dB", "dB", "dB"],
  OUTLETVOLTS: ["V", "V", "V", "A", "V"],
  OUTLETCHECKS: ["word", "word", "word", "word", "word", "word", "word", "word", "word", "said"],
  DEVICELEVELS: ["word", "count", "word", "count", "dB", "dB", "dB", "dB", "dB", "dB"],
  DEVICECHECKS: ["V", "A", "word", "word", "word", "word", "word", "said"],
  HEADVOLTS: [
    ...(["V", "V", "name", "V", "V", "A", "A", "count", "count"] as const),
    ...(["dB", "dB", "dB", "dB", "dB", "word"] as const),
  ],
  HEADCHECKS: ["word", "word", "word", "word", "word", "word", "said"],
  DISHCHECKS: ["word", "count", "dB", "V", "word", "said"],
  FEEDERCHECKS: ["count", "word", "said"],
};

/** The tables as the ranges that a function is handed: at least a row each, the settings as one column. */
export function rangesOf(tables: Tables): Answer[][][] {
  return TABLE_NAMES.map((table) => {
    const columns: readonly string[] = COLUMNS[table];
    const rows = tables[table].map((row) => columns.map((column) => row[column] ?? null));
    if (table === "settings") return rows[0]!.map((cell) => [cell]);
    return rows.length > 0 ? rows : [columns.map(() => null)];
  });
}

export const blankOf = (cell: unknown): Answer =>
  cell === "" || cell === undefined ? null : (cell as Answer);
