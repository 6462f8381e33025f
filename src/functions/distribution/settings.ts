/** The settings of a job: one column of what the site's sheet says. */
import type { Wanted } from "../../engine/distribution/finding";
import type { Site } from "../../engine/distribution/job";
import { faults, isFault, type Fault } from "../../engine/faults";
import type { Degrees } from "../../engine/quantity";
import type { Cell, Matrix } from "../core/cells";
import { SETTINGS } from "./columns";
import { partNamed } from "./partBook";
import type { Parts } from "./partTables";
import { readRow, type ValuesOf } from "./rows";

export type Settings = ValuesOf<typeof SETTINGS>;

export function readSettings(table: Matrix | undefined): Settings | Fault {
  const wanted = Object.keys(SETTINGS).length;
  if (!table) return faults.missing("settings", `a column of ${wanted} settings`);
  const [rows, width] = [table.length, table[0]?.length ?? 0];
  const isColumn = width === 1;
  if ((!isColumn && rows > 1) || rows * width > wanted)
    return faults.badShape("settings", rows, width, `one column of ${wanted} settings`);
  const cells = isColumn ? table.map(([cell]) => cell ?? null) : table[0]!;
  const found = valuesIn(cells);
  return isFault(found) ? faults.inColumn("settings", NAMES, found) : found;
}

const NAMES = Object.values(SETTINGS).map(({ name }) => name);

function valuesIn(cells: readonly Cell[]): Settings | Fault {
  const read = readRow(cells, 0, SETTINGS);
  if (!read) return faults.missing(SETTINGS.low.name, SETTINGS.low.wanted);
  if (read.fault) return read.fault;
  const { low, high, cold, hot, levelLow, levelHigh } = read.values;
  if (low === high) return faults.oneFrequency(SETTINGS.low.name, SETTINGS.high.name, low);
  if (low > high) return faults.lowAboveHigh(SETTINGS.low.name, low, SETTINGS.high.name, high, "MHz");
  if (cold > hot) return faults.lowAboveHigh(SETTINGS.cold.name, cold, SETTINGS.hot.name, hot, "°C");
  if (levelLow > levelHigh)
    return faults.lowAboveHigh(SETTINGS.levelLow.name, levelLow, SETTINGS.levelHigh.name, levelHigh, "dBµV");
  return read.values;
}

export function siteOf(settings: Settings, { endResistors }: Parts): Site {
  const { low, high, cold, hot, height, dishLoss, endResistor } = settings;
  const place = (degrees: Degrees | undefined, name: "latitude" | "longitude"): Degrees | Fault =>
    degrees ?? faults.missing(name, SETTINGS[name].wanted);
  return {
    low,
    high,
    cold,
    hot,
    latitude: place(settings.latitude, "latitude"),
    longitude: place(settings.longitude, "longitude"),
    height,
    dishLoss,
    rain: rainOf(settings),
    endResistor:
      endResistor === undefined ? null : partNamed(endResistors, SETTINGS.endResistor.name, endResistor),
  };
}

function rainOf({ availability, rainRate, rainHeight }: Settings): Site["rain"] {
  if (availability === undefined) return null;
  if (rainRate === undefined) return faults.missing(SETTINGS.rainRate.name, SETTINGS.rainRate.wanted);
  if (rainHeight === undefined) return faults.missing(SETTINGS.rainHeight.name, SETTINGS.rainHeight.wanted);
  return { availability, rate: rainRate, height: rainHeight };
}

/** Between outlets, from memory. */
const LEAST_ISOLATION_DB = 30;

export const wantedOf = ({ levelLow, levelHigh, slope }: Settings): Wanted => ({
  levelLeast: levelLow,
  levelMost: levelHigh,
  slopeMost: slope,
  isolationLeast: LEAST_ISOLATION_DB,
});
