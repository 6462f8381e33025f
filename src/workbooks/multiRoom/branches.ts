import type { SheetDefinition } from "../definition";
import { ALL_CORNERS, CORNERS, PAIR_TO_CORNERS } from "./corners";
import { countOf, keyColumn } from "./nameKeys";

const DEVICE = "MATCH(branches_device,passives_name,0)";

/**
 * What adds up along the tree besides the loss: for the supply, ohms and the devices that pass it to no port or
 * to one; and what lengths that turn out longer lose more.
 */
const ALONG = [
  ...CORNERS,
  { key: "ohms", head: "loop, hot", unit: "Ω" },
  { key: "stops", head: "no power", unit: "devices" },
  { key: "ones", head: "power at one port", unit: "devices" },
  { key: "place", head: "their rows", unit: "sum" },
  { key: "stretch", head: "trunks at their longest", unit: "dB more" },
  { key: "forks", head: "power to one of several", unit: "devices" },
];

export const branches: SheetDefinition = {
  name: "Branches",
  kind: "input",
  intro:
    "A row for each splitter or tap: what feeds it, through how much trunk cable, and the level at its ports.",
  frozenColumns: 1,
  print: { orientation: "landscape", through: "ways" },
  parts: [
    {
      kind: "block",
      name: "branches",
      heading: "Branches",
      prepared: 10,
      columns: [
        {
          key: "id",
          head: "Branch",
          width: 12,
          input: { what: "A short name for this splitter or tap", example: "B1", rule: { kind: "text" } },
        },
        {
          key: "from",
          head: "Fed from",
          width: 12,
          input: {
            what: "The head unit or the branch that feeds it",
            example: "H1",
            required: true,
            rule: { kind: "text" },
          },
        },
        {
          key: "device",
          head: "Device",
          width: 20,
          input: {
            what: "A splitter or tap of the Parts sheet",
            required: true,
            rule: { kind: "named", name: "passives_name" },
          },
        },
        {
          key: "cable",
          head: "Trunk cable",
          width: 18,
          input: {
            what: "A cable of the Parts sheet",
            required: true,
            rule: { kind: "named", name: "cables_name" },
          },
        },
        {
          key: "length",
          head: "Trunk length",
          unit: "m or ft",
          width: 10,
          format: "one",
          input: {
            what: "Length of the trunk to what feeds it, in the unit that Site names",
            example: "6",
            required: true,
            rule: { kind: "number", min: 0.1, max: 2000 },
          },
        },
        {
          key: "head",
          head: "Head unit",
          width: 10,
          formula: "RIG.TREEROOT(branches_id,branches_from,heads_id)",
        },
        {
          key: "level",
          head: "Level at a port",
          unit: "dBµV",
          format: "one",
          width: 9,
          across: CORNERS,
          formula: `IF(branches_id="","",INDEX(heads_level,MATCH(branches_head,heads_id,0),${ALL_CORNERS})-branches_loss_corners+INDEX(passives_pass,${DEVICE},${PAIR_TO_CORNERS})-INDEX(passives_port,${DEVICE},${PAIR_TO_CORNERS}))`,
        },
        {
          key: "power",
          head: "Passes power",
          width: 12,
          formula: `IF(branches_id="","",INDEX(passives_power,${DEVICE}))`,
        },
        {
          key: "fed",
          head: "Feeds",
          unit: "ports used",
          width: 9,
          format: "integer",
          // A tap's line on to the next branch is not one of its ports.
          formula: `IF(branches_id="","",${countOf("rooms_from", "branches_id")}+${countOf("branches_from", "branches_id")}*(INDEX(passives_kind,${DEVICE})="splitter"))`,
        },
        {
          key: "ways",
          head: "Ports",
          width: 9,
          format: "integer",
          formula: `IF(branches_id="","",INDEX(passives_ways,${DEVICE}))`,
        },
        {
          key: "trunk",
          head: "Trunk loss",
          unit: "dB",
          format: "one",
          width: 9,
          across: CORNERS,
          formula:
            "RIG.CABLELOSS(branches_cable,branches_length,corner_frequency,corner_temperature,site_unit,cables_table)",
        },
        {
          key: "own",
          head: "Trunk and device",
          unit: "dB",
          format: "one",
          width: 9,
          across: CORNERS,
          formula: `IF(branches_id="","",branches_trunk+INDEX(passives_pass,${DEVICE},${PAIR_TO_CORNERS}))`,
        },
        {
          key: "ohms",
          head: "Trunk loop, hot",
          unit: "Ω",
          format: "two",
          width: 9,
          formula:
            "RIG.LOOPOHMS(branches_cable,branches_length,INDEX(corner_temperature,1,4),site_unit,cables_table)",
        },
        {
          key: "stops",
          head: "Passes no power",
          unit: "devices",
          format: "integer",
          width: 9,
          formula: `IF(branches_id="","",(INDEX(passives_power,${DEVICE})="no")*1)`,
        },
        {
          key: "ones",
          head: "Passes power at one port",
          unit: "devices",
          format: "integer",
          width: 9,
          formula: `IF(branches_id="","",(INDEX(passives_power,${DEVICE})="one port")*1)`,
        },
        {
          key: "place",
          // With one such device on a path, the sum of these along it is that device's row.
          head: "Its row, if it passes none",
          unit: "row",
          format: "integer",
          width: 9,
          formula: 'IF(branches_id="","",branches_stops*MATCH(branches_id,branches_id,0))',
        },
        {
          key: "stretch",
          head: "More at its longest",
          unit: "dB",
          format: "one",
          width: 9,
          formula: 'IF(branches_id="","",branches_trunk_high_hot*site_run_tolerance)',
        },
        {
          key: "forks",
          // Which of its ports passes power is not known: of several that are used, at most one.
          head: "Passes it at one of several",
          unit: "devices",
          format: "integer",
          width: 9,
          formula: `IF(branches_id="","",branches_ones*(${countOf("rooms_from", "branches_id")}+${countOf("branches_from", "branches_id")}>1))`,
        },
        {
          key: "loss",
          head: "So far",
          unit: "dB",
          format: "one",
          width: 9,
          across: ALONG,
          formula: "RIG.TREELOSS(branches_id,branches_from,branches_sum,heads_id)",
        },
        {
          key: "variance",
          head: "Variance of its cable",
          unit: "money²",
          width: 10,
          format: "two",
          formula:
            'IF(branches_id="","",(branches_length*site_run_tolerance/3*INDEX(cables_each,MATCH(branches_cable,cables_name,0)))^2)',
        },
        keyColumn("branches", "from", "Fed from"),
        keyColumn("branches", "device", "Device"),
        keyColumn("branches", "cable", "Cable"),
      ],
      groups: [
        { name: "branches_sum", from: "own", to: "forks" },
        { name: "branches_loss_corners", from: "loss_low_cold", to: "loss_high_hot" },
      ],
    },
  ],
};
