/** What feeds a head unit, and the resistance between the two: the workings of Head units. */
import type { Column } from "../definition";
import { sumOf } from "./nameKeys";

export const TYPE = "MATCH(heads_type,units_name,0)";
const SUPPLY = "MATCH(heads_source,supplies_name,0)";
/** Along the branches from where the supply feeds in; nothing where that is the head unit's own cable. */
const along = (name: string): string =>
  `IF(heads_id="","",IF((heads_via="")+(heads_via=heads_id)>0,0,INDEX(branches_loss_${name},MATCH(heads_via,branches_id,0))))`;
/** The outlet whose receiver feeds; blank where the supply sits elsewhere. A branch of that name comes first. */
const ofFeedingOutlet = (name: string): string =>
  `IF(heads_id="","",IF(heads_at="","",IF(ISERROR(MATCH(heads_at,branches_id,0)),IFERROR(INDEX(rooms_${name},MATCH(heads_at,rooms_outlet,0)),""),"")))`;

export const supplyPath: readonly Column[] = [
  {
    key: "supplied",
    head: "Supplied",
    unit: "V",
    width: 9,
    format: "one",
    formula: `IF(heads_id="","",INDEX(supplies_volts,${SUPPLY}))`,
  },
  {
    key: "draw",
    head: "Load",
    unit: "A or W",
    width: 9,
    format: "two",
    formula: `IF(heads_id="","",INDEX(units_load,${TYPE}))`,
  },
  {
    key: "kind",
    head: "Load is in",
    width: 9,
    formula: `IF(heads_id="","",INDEX(units_kind,${TYPE}))`,
  },
  {
    key: "via",
    head: "Feeds in at the branch",
    width: 10,
    formula:
      'IF(heads_id="","",IF(heads_at="","",IF(ISERROR(MATCH(heads_at,branches_id,0)),INDEX(rooms_from,MATCH(heads_at,rooms_outlet,0)),heads_at)))',
  },
  // Its own cable and that run side by side: one call works out the loop of both.
  { key: "lead_cable", head: "Its own cable", width: 14, formula: 'IF(heads_cable="","",heads_cable)' },
  { key: "run_cable", head: "Cable of that outlet", width: 14, formula: ofFeedingOutlet("cable") },
  {
    key: "lead_length",
    head: "Its own length",
    unit: "m or ft",
    width: 9,
    format: "one",
    formula: 'IF(heads_length="","",heads_length)',
  },
  {
    key: "run_length",
    head: "Run of that outlet",
    unit: "m or ft",
    width: 9,
    format: "one",
    formula: ofFeedingOutlet("run"),
  },
  {
    key: "ohms",
    head: "Loop, hot",
    unit: "Ω",
    width: 9,
    format: "two",
    across: [
      { key: "lead", head: "its own cable" },
      { key: "run", head: "that run" },
    ],
    formula: "RIG.LOOPOHMS(heads_cables,heads_lengths,INDEX(corner_temperature,1,4),site_unit,cables_table)",
  },
  {
    key: "along",
    head: "Loop of the branches between, hot",
    unit: "Ω",
    width: 9,
    format: "two",
    formula: along("ohms"),
  },
  {
    key: "path",
    head: "Whole path, hot",
    unit: "Ω",
    width: 9,
    format: "two",
    formula:
      'IF(heads_id="","",heads_shared+heads_ohms_lead+heads_along+IF(heads_ohms_run="",0,heads_ohms_run))',
  },
  {
    key: "stops",
    head: "Devices in the path that pass no power",
    width: 12,
    format: "integer",
    formula: along("stops"),
  },
  {
    key: "place",
    head: "Their rows on Branches",
    unit: "sum",
    width: 9,
    format: "integer",
    formula: along("place"),
  },
  {
    key: "current",
    head: "Current",
    unit: "A",
    width: 9,
    format: "two",
    formula: 'IF(heads_id="","",IF(IFERROR(heads_kind="W",FALSE),heads_draw/heads_volts,heads_draw))',
  },
  {
    key: "together",
    head: "Current of all that it feeds",
    unit: "A",
    width: 9,
    format: "two",
    formula: `IF(heads_id="","",${sumOf("heads_current", "heads_feed", "heads_feed")})`,
  },
  {
    key: "amps",
    head: "Supply gives",
    unit: "A",
    width: 9,
    format: "two",
    formula: `IF(heads_id="","",INDEX(supplies_amps,${SUPPLY}))`,
  },
  {
    key: "legs",
    head: "On legs without a load",
    unit: "V",
    width: 9,
    format: "one",
    // A supply that feeds in at a branch or an outlet drops along the cables, and not the same for every leg.
    formula: 'IF(heads_id="","",IF(heads_at="",heads_parting,""))',
  },
];
