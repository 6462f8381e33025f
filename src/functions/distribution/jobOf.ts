/** The tables of a job as a whole: its rows, its site, and where they stand. */
import type { DistributionJob } from "../../engine/distribution/job";
import type { Wanted } from "../../engine/distribution/finding";
import { isFault, type Fault } from "../../engine/faults";
import type { Metres } from "../../engine/quantity";
import { toMetres } from "../../engine/signal/lengthUnits";
import { DEVICES, DISHES, FEEDERS, HEAD_UNITS, SLOTS } from "./columns";
import { outletRows } from "./outletRows";
import { readParts, type Tables } from "./partTables";
import { JobRows } from "./jobRows";
import { readTable } from "./rows";
import { readSettings, siteOf, wantedOf, type Settings } from "./settings";
import { slotRows } from "./slotRows";

/** Where the rows of the job stand in their tables, from 0; a dish that is assumed stands nowhere. */
export interface Places {
  readonly outlets: readonly number[];
  readonly devices: readonly number[];
  readonly headUnits: readonly number[];
  readonly dishes: readonly number[];
  readonly feeders: readonly number[];
}

export interface JobRead {
  readonly job: DistributionJob;
  readonly settings: Settings;
  readonly places: Places;
  readonly wanted: Wanted;
  /** By row of the outlets: the longest that its run may be. */
  readonly longest: readonly (Metres | null)[];
  /** Different floors; one where none is named. */
  readonly floors: number;
}

/** @returns null for a job without any row */
export function jobOf(tables: Tables): JobRead | Fault | null {
  const outlets = outletRows(tables);
  const devices = readTable("devices", tables.devices, DEVICES);
  const headUnits = readTable("head_units", tables.head_units, HEAD_UNITS);
  const dishes = readTable("dishes", tables.dishes, DISHES);
  const feeders = readTable("feeders", tables.feeders, FEEDERS);
  const slots = readTable("slots", tables.slots, SLOTS);
  if (isFault(outlets)) return outlets;
  if (isFault(devices)) return devices;
  if (isFault(headUnits)) return headUnits;
  if (isFault(dishes)) return dishes;
  if (isFault(feeders)) return feeders;
  if (isFault(slots)) return slots;
  const rows = { outlets, devices, headUnits, dishes, feeders };
  if (Object.values(rows).every((some) => some.length === 0)) return null;
  const settings = readSettings(tables.settings);
  if (isFault(settings)) return settings;
  const parts = readParts(tables, settings);
  if (isFault(parts)) return parts;
  const site = siteOf(settings, parts);
  const reader = new JobRows(settings, parts, slotRows(slots, settings.margin));
  const floors = new Set(rows.outlets.flatMap(({ values: { floor } }) => floor ?? []));
  return {
    job: {
      site,
      slots: reader.slots.map(({ slot }) => slot),
      dishes:
        rows.dishes.length > 0
          ? rows.dishes.map((row) => reader.dish(row))
          : rows.headUnits.length > 0
            ? [reader.assumedDish()]
            : [],
      feeders: rows.feeders.map((row) => reader.feeder(row)),
      headUnits: rows.headUnits.map((row) => reader.headUnit(row)),
      devices: rows.devices.map((row) => reader.device(row)),
      outlets: rows.outlets.map((row) => reader.outlet(row)),
    },
    settings,
    places: {
      outlets: rows.outlets.map(({ index }) => index),
      devices: rows.devices.map(({ index }) => index),
      headUnits: rows.headUnits.map(({ index }) => index),
      dishes: rows.dishes.map(({ index }) => index),
      feeders: rows.feeders.map(({ index }) => index),
    },
    wanted: wantedOf(settings),
    longest: rows.outlets.map(({ values: { longest } }) =>
      longest === undefined ? null : toMetres(longest, settings.unit),
    ),
    floors: rows.outlets.length === 0 ? 0 : Math.max(1, floors.size),
  };
}
