import type { SheetDefinition } from "../definition";
import { CORNERS, PAIR_TO_CORNERS } from "./corners";

const TYPE = "MATCH(heads_type,units_name,0)";
const AT = "MATCH(heads_at,branches_id,0)";
const SUPPLY = "MATCH(heads_source,supplies_name,0)";

export const headUnits: SheetDefinition = {
  name: "Head units",
  kind: "input",
  intro:
    "A row for each head unit: its tuners against its user bands, and its volts at the end of its cable.",
  frozenColumns: 1,
  print: { orientation: "landscape", through: "common" },
  parts: [
    {
      kind: "block",
      name: "heads",
      heading: "Head units",
      prepared: 6,
      columns: [
        {
          key: "id",
          head: "Head unit",
          width: 12,
          input: { what: "A short name for this head unit", example: "H1", rule: { kind: "text" } },
        },
        {
          key: "type",
          head: "Kind",
          width: 22,
          input: { what: "A head unit of the Parts sheet", rule: { kind: "named", name: "units_name" } },
        },
        {
          key: "supply",
          head: "Supply",
          width: 18,
          input: { what: "A supply of the Parts sheet", rule: { kind: "named", name: "supplies_name" } },
        },
        {
          key: "cable",
          head: "Cable",
          width: 18,
          input: {
            what: "The cable from the supply and first branch up to the head unit",
            rule: { kind: "named", name: "cables_name" },
          },
        },
        {
          key: "length",
          head: "Length",
          unit: "m or ft",
          width: 10,
          format: "one",
          input: {
            what: "Length of that cable, in the unit that Site names",
            example: "22",
            rule: { kind: "number", min: 0, max: 2000 },
          },
        },
        {
          key: "at",
          head: "Supply sits at",
          width: 12,
          input: {
            what: "Blank when the supply stands at the foot of that cable; else the branch whose port it feeds into",
            example: "B2",
            rule: { kind: "text" },
          },
        },
        {
          key: "tuners",
          head: "Tuners on it",
          width: 9,
          format: "integer",
          formula: 'IF(heads_id="","",SUMIFS(rooms_tuners,rooms_head,heads_id))',
        },
        {
          key: "bands",
          head: "User bands",
          width: 9,
          format: "integer",
          formula: `IF(heads_id="","",INDEX(units_bands,${TYPE}))`,
        },
        {
          key: "spare",
          head: "Spare bands",
          width: 9,
          format: "integer",
          formula: 'IF(heads_id="","",heads_bands-heads_tuners)',
        },
        {
          key: "capacity",
          head: "Tuners",
          width: 9,
          // A row in error shows its error; in the condition it would spoil the whole column.
          formula:
            'IF(heads_id="","",IF(IFERROR(heads_spare<0,FALSE),"high",IF(ISERROR(heads_spare),heads_spare,"ok")))',
        },
        {
          key: "volts",
          head: "At the head unit",
          unit: "V",
          width: 9,
          format: "two",
          formula: "RIG.LOADVOLTS(heads_offered,heads_draw,heads_path,heads_kind)",
        },
        {
          key: "least",
          head: "Least",
          unit: "V",
          width: 9,
          format: "one",
          formula: `IF(heads_id="","",INDEX(units_least,${TYPE}))`,
        },
        {
          key: "power",
          head: "Volts",
          width: 9,
          formula: "RIG.WINDOW(heads_volts,heads_least,heads_supplied)",
        },
        {
          key: "stopped",
          head: "Stopped by",
          width: 10,
          // The one branch on the way up that passes no power; several cannot be told apart by a sum.
          formula:
            'IF(heads_id="","",IF(IFERROR(heads_stops=1,FALSE),INDEX(branches_id,IFERROR(heads_place+(heads_stops<>1),1)),IF(IFERROR(heads_stops>1,FALSE),"several","")))',
        },
        {
          key: "longest",
          head: "Longest that does, fed at its foot",
          unit: "m or ft",
          width: 10,
          format: "one",
          formula:
            "RIG.LONGESTRUN(heads_parting,heads_least,heads_draw,heads_cable,heads_kind,site_hot,site_unit,cables_table)",
        },
        {
          key: "shares",
          head: "Shares the supply of",
          width: 12,
          input: {
            what: "Blank when it has a supply of its own; else the head unit whose supply feeds this one too",
            example: "H1",
            rule: { kind: "text" },
          },
        },
        {
          key: "common",
          head: "Loop of their common lead",
          unit: "Ω",
          width: 10,
          format: "two",
          input: {
            what: "On the row that has the supply: the lead from the supply to where the cables to its head units part. Blank is none",
            example: "0.8",
            rule: { kind: "number", min: 0, max: 1000 },
          },
        },
        {
          key: "source",
          head: "Supply in use",
          width: 16,
          formula:
            'IF(heads_id="","",IF(heads_shares="",heads_supply,INDEX(heads_supply,MATCH(heads_shares,heads_id,0))))',
        },
        {
          key: "bought",
          head: "Supply of its own",
          unit: "pieces",
          width: 9,
          format: "integer",
          formula: 'IF(heads_id="","",(heads_shares="")*1)',
        },
        {
          key: "feed",
          head: "Fed with",
          width: 9,
          formula: 'IF(heads_id="","",IF(heads_shares="",heads_id,heads_shares))',
        },
        {
          key: "shared",
          head: "Loop that they share",
          unit: "Ω",
          width: 9,
          format: "two",
          formula: 'IF(heads_id="","",INDEX(heads_common,MATCH(heads_feed,heads_id,0))+0)',
        },
        {
          key: "greatest",
          head: "Current at the least volts",
          unit: "A",
          width: 9,
          format: "two",
          // No head unit that has its volts draws more, so a shared lead is never taken too well.
          formula: 'IF(heads_id="","",IF(IFERROR(heads_kind="W",FALSE),heads_draw/heads_least,heads_draw))',
        },
        {
          key: "offered",
          head: "Less what the others take",
          unit: "V",
          width: 9,
          format: "two",
          formula:
            'IF(heads_id="","",heads_supplied-heads_shared*(SUMIFS(heads_greatest,heads_feed,heads_feed)-heads_greatest))',
        },
        {
          key: "parting",
          head: "Where the cables part",
          unit: "V",
          width: 9,
          format: "two",
          formula:
            'IF(heads_id="","",heads_supplied-heads_shared*SUMIFS(heads_greatest,heads_feed,heads_feed))',
        },
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
          key: "ohms",
          head: "Loop, hot",
          unit: "Ω",
          width: 9,
          format: "two",
          formula: "RIG.LOOPOHMS(heads_cable,heads_length,site_hot,site_unit,cables_table)",
        },
        {
          key: "path",
          head: "Whole path, hot",
          unit: "Ω",
          width: 9,
          format: "two",
          formula: `IF(heads_id="","",heads_shared+heads_ohms+IF(heads_at="",0,INDEX(branches_loss_ohms,${AT})))`,
        },
        {
          key: "stops",
          head: "Devices in the path that pass no power",
          width: 12,
          format: "integer",
          formula: `IF(heads_id="","",IF(heads_at="",0,INDEX(branches_loss_stops,${AT})))`,
        },
        {
          key: "place",
          head: "Their rows on Branches",
          unit: "sum",
          width: 9,
          format: "integer",
          formula: `IF(heads_id="","",IF(heads_at="",0,INDEX(branches_loss_place,${AT})))`,
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
          formula: 'IF(heads_id="","",SUMIFS(heads_current,heads_feed,heads_feed))',
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
          // A supply that feeds in at a branch drops along the trunks, and not the same for every leg.
          formula: 'IF(heads_id="","",IF(heads_at="",heads_parting,""))',
        },
        {
          key: "lead",
          head: "Loss of that cable",
          unit: "dB",
          format: "one",
          width: 9,
          across: CORNERS,
          formula:
            "RIG.CABLELOSS(heads_cable,heads_length,corner_frequency,corner_temperature,site_unit,cables_table)",
        },
        {
          key: "level",
          head: "Level at its end",
          unit: "dBµV",
          format: "one",
          width: 9,
          across: CORNERS,
          formula: `IF(heads_id="","",INDEX(units_out,${TYPE},${PAIR_TO_CORNERS})-heads_lead)`,
        },
        {
          key: "variance",
          head: "Variance of that cable",
          unit: "money²",
          width: 10,
          format: "two",
          formula:
            'IF(heads_id="","",(heads_length*site_run_tolerance/3*INDEX(cables_each,MATCH(heads_cable,cables_name,0)))^2)',
        },
        {
          key: "built_volts",
          head: "Measured at the head unit",
          unit: "V",
          width: 10,
          format: "one",
          input: {
            what: "Volts measured at the head unit under load, the supply in line; blank until measured",
            example: "22.4",
            rule: { kind: "number", min: 0, max: 100 },
          },
        },
      ],
    },
    {
      kind: "fields",
      heading: "Head units needed",
      fields: [
        {
          name: "heads_wanted",
          label: "Tuners of all outlets",
          format: "integer",
          formula: "SUM(rooms_tuners)",
        },
        {
          name: "heads_fewest",
          label: "Fewest head units for them",
          format: "integer",
          note: "With the head unit of most user bands on Parts, if every band could be used.",
          formula: 'IF(MAX(units_bands)=0,"",ROUNDUP(heads_wanted/MAX(units_bands),0))',
        },
      ],
    },
  ],
};
