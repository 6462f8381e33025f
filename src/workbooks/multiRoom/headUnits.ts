import type { SheetDefinition } from "../definition";
import { CORNERS, PAIR_TO_CORNERS } from "./corners";
import { supplyPath, TYPE } from "./supplyPath";
import { keyColumn, sumOf } from "./nameKeys";

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
          input: {
            what: "A head unit of the Parts sheet",
            required: true,
            rule: { kind: "named", name: "units_name" },
          },
        },
        {
          key: "supply",
          head: "Supply",
          width: 18,
          input: {
            what: "A supply of the Parts sheet",
            required: '(heads_shares="")',
            rule: { kind: "named", name: "supplies_name" },
          },
        },
        {
          key: "cable",
          head: "Cable",
          width: 18,
          input: {
            what: "The cable from the supply and first branch up to the head unit",
            required: true,
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
            required: true,
            rule: { kind: "number", min: 0.1, max: 2000 },
          },
        },
        {
          key: "at",
          head: "Supply connected at",
          width: 12,
          input: {
            what: "Blank when the supply stands at the lower end of that cable; else the branch whose port it feeds into, or the outlet whose receiver feeds it: the one with the most cable, for it may be on alone",
            example: "A-07",
            rule: { kind: "text" },
          },
        },
        {
          key: "tuners",
          head: "Tuners on it",
          width: 9,
          format: "integer",
          formula: `IF(heads_id="","",${sumOf("rooms_tuners", "rooms_head", "heads_id")})`,
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
          head: "Longest cable allowed, fed at its lower end",
          unit: "m or ft",
          width: 10,
          format: "one",
          formula:
            "RIG.LONGESTRUN(heads_parting,heads_least,heads_draw,heads_cable,heads_kind,INDEX(corner_temperature,1,4),site_unit,cables_table)",
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
            what: "On the row that has the supply: loop resistance of the lead from the supply to where the cables to its head units part; blank is none",
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
          // What a receiver feeds needs none.
          formula: `IF(heads_id="","",(heads_shares="")*(IFERROR(INDEX(supplies_by,MATCH(heads_supply,supplies_name,0)),"")<>"a receiver"))`,
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
          formula: `IF(heads_id="","",heads_supplied-heads_shared*(${sumOf("heads_greatest", "heads_feed", "heads_feed")}-heads_greatest))`,
        },
        {
          key: "parting",
          head: "Where the cables part",
          unit: "V",
          width: 9,
          format: "two",
          formula: `IF(heads_id="","",heads_supplied-heads_shared*${sumOf("heads_greatest", "heads_feed", "heads_feed")})`,
        },
        ...supplyPath,
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
            what: "Volts measured at the head unit under load, fed as this row says; blank until measured",
            example: "11.2",
            rule: { kind: "number", min: 0, max: 100 },
          },
        },
        keyColumn("heads", "type", "Type"),
        keyColumn("heads", "supply", "Supply"),
        keyColumn("heads", "cable", "Cable"),
        keyColumn("heads", "feed", "Feed"),
      ],
      groups: [
        { name: "heads_cables", from: "lead_cable", to: "run_cable" },
        { name: "heads_lengths", from: "lead_length", to: "run_length" },
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
