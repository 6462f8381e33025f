/** The tables of the job, as every function of the distribution takes them. */
import { call, type Formula, type Named } from "../../formula/build";
import { branches } from "./names/branches";
import { dishes, feeders } from "./names/dishes";
import { heads } from "./names/headUnits";
import { cables, feeds, passives, plans, plates, receivers, resistors, supplies, units } from "./names/parts";
import { rooms } from "./names/rooms";
import { settings, slots } from "./names/site";

export const TABLES: readonly Named[] = [
  rooms.rows,
  rooms.details,
  branches.rows,
  heads.rows,
  dishes.rows,
  feeders.rows,
  slots.rows,
  settings.values,
  cables.table,
  passives.rows,
  plates.rows,
  supplies.rows,
  units.rows,
  receivers.rows,
  feeds.rows,
  plans.rows,
  resistors.rows,
];

/** A function of the distribution, asked of the job. */
export const ofTheJob = (name: string): Formula => call(`RIG.${name}`, ...TABLES);
