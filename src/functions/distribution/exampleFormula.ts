/** Examples of a distribution's functions: small jobs written out as the tables that a sheet would hold. */
import { TABLE_NAMES, type TableName } from "./tables";

type ExampleCell = string | number;
export type ExampleTables = Readonly<Partial<Record<TableName, readonly (readonly ExampleCell[])[]>>>;

const literal = (cell: ExampleCell): string => (typeof cell === "number" ? String(cell) : `"${cell}"`);

/**
 * @param before arguments before the tables
 * @returns the call as a person would type it */
export function exampleFormula(name: string, tables: ExampleTables, before: readonly string[] = []): string {
  const args = TABLE_NAMES.map((table) => {
    const rows = tables[table];
    return rows ? `{${rows.map((row) => row.map(literal).join(",")).join(";")}}` : "";
  });
  const last = TABLE_NAMES.findLastIndex((table) => tables[table]);
  return `RIG.${name}(${[...before, ...args.slice(0, last + 1)].join(",")})`;
}

const BLANK4 = ["", "", "", ""];

/**
 * Two outlets on a splitter right at a head unit. The cable loses 10 dB and has 10 ohms per 100 m, at 20 °C, which is
 * also the coldest and the hottest; the splitter loses 4 and 5 dB and steers the supply through 0.5 V; the head unit
 * puts out 85 and 83 dBµV and takes 0.1 A. So every figure can be worked by hand.
 */
export const TWO_OUTLETS: ExampleTables = {
  outlets: [
    ["", "", "A", "receiver", "", "S1", "", 10],
    ["", "", "B", "recorder, 2 tuners", "", "S1", "", 20],
  ],
  devices: [["S1", "H1", "2-way"]],
  head_units: [["H1", "unit"]],
  slots: [["13E"]],
  settings: [
    ...["", "", "", "", "m", 950, 2150, 20, 20, 47, 85, 0.1, "drop", "", "clip"].map((cell) => [cell]),
  ],
  cables: [["drop", "", 0, 0, 10, 10]],
  device_parts: [["2-way", "splitter", 2, 4, 5, "", "", "towards head unit", ...BLANK4, "", 0.5]],
  head_unit_kinds: [["unit", 4, 85, 83, 10, 0.1, "A", ...BLANK4, "", "EN 50494"]],
};

/** The first outlet of a job that was worked independently: 13E on 0.8 m at 48.1° north, 11.6° east. */
export const ONE_OUTLET_OF_SKY: ExampleTables = {
  outlets: [["", "", "1", "receiver", "", "S1", "", 8]],
  devices: [["S1", "H1", "4-way"]],
  head_units: [["H1", "unit", "", "", "", 12]],
  dishes: [["D1", 0.8]],
  slots: [["13E", "", "", 51, 27.5, "8PSK 2/3"]],
  settings: [
    ...[48.1, 11.6, 520, "", "m", 950, 2150, -15, 55, 47, 77, "", "drop", "plate", "", "", 99.9, 33, 3.1].map(
      (cell) => [cell],
    ),
  ],
  cables: [["drop", "", 0.645, 0.00068, 0.446, 12.8]],
  device_parts: [["4-way", "splitter", 4, 7.8, 9.4, "", "", "towards head unit"]],
  plates: [["plate", 0.7, 1.4]],
  head_unit_kinds: [
    ["unit", "", 88, 87, 10.5, 2.6, "W", ...BLANK4, "", "EN 50494", "", "", 1, "8 bands", 0.7],
  ],
  band_plans: [["8 bands", 1, 1000]],
};

/** A dish whose feed has four outputs, and a switch that takes four feeders. */
export const FOUR_FEEDERS: ExampleTables = {
  outlets: [["", "", "A", "receiver", "", "H1", "", 0]],
  head_units: [["H1", "switch"]],
  dishes: [["D1", 0.9, "19E", "four"]],
  feeders: [["D1", "H1", "", "", "", 18]],
  slots: [["19E"]],
  settings: [...["", "", "", "", "m", 950, 2150, -15, 55, 47, 85, "", "series 6"].map((cell) => [cell])],
  head_unit_kinds: [["switch", 8, 84, 82, 10, 0.1, "A", ...BLANK4, "fed", "EN 50494"]],
  feeds: [["four", 4, 54, 0.6, "", "", 0.2, 11]],
};

export const BY_HAND = "worked by hand";
export const BY_OTHERS = "by hand in Python, by people who had not seen this code (job 1 of jobs as built)";
