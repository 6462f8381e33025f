import type { Column, SheetDefinition } from "../definition";
import { ALL_CORNERS, CORNERS, PAIR_TO_CORNERS } from "./corners";
import { keyColumn } from "./nameKeys";

const AT_BRANCH = "MATCH(rooms_from,branches_id,0)";
const AT_HEAD = "MATCH(rooms_from,heads_id,0)";

/** What the crew measures at the outlet; it stays beside the prediction. */
const measured = (key: string, head: string): Column => ({
  key,
  head,
  unit: "dBµV",
  width: 11,
  format: "one",
  input: {
    what: "Level measured at the outlet; leave blank until it is measured",
    example: "61.5",
    // A meter that finds nothing was read: the diagnosis asks for just that.
    rule: { kind: "number", min: 0, max: 140, orWords: ["no signal"] },
  },
});

const measuredVolts: Column = {
  key: "built_volts",
  head: "Measured, volts",
  unit: "V",
  width: 11,
  format: "one",
  input: {
    what: "Volts measured at the outlet, receivers unplugged and the supply on; blank until measured",
    example: "23.8",
    rule: { kind: "number", min: 0, max: 100 },
  },
};

/** Between channels at one outlet, in dB: EN 60728-1, from memory. */
export const GREATEST_SLOPE = 15;

export const rooms: SheetDefinition = {
  name: "Rooms",
  kind: "input",
  intro: "A row for each outlet. Fill the boxed columns; the others follow.",
  frozenColumns: 3,
  print: { orientation: "landscape", through: "note" },
  parts: [
    {
      kind: "block",
      name: "rooms",
      heading: "Outlets",
      prepared: 30,
      rowName: "outlet",
      columns: [
        {
          key: "floor",
          head: "Floor",
          width: 10,
          input: { what: "Floor or part of the building", example: "ground", rule: { kind: "text" } },
        },
        {
          key: "room",
          head: "Room",
          width: 20,
          input: { what: "The room", example: "12", rule: { kind: "text" } },
        },
        {
          key: "outlet",
          head: "Outlet",
          width: 9,
          input: { what: "A name of its own for each outlet", example: "12-1", rule: { kind: "text" } },
        },
        {
          key: "receiver",
          head: "Receiver",
          width: 20,
          input: {
            what: "What is connected: receiver, recorder, 2 tuners, or a kind of the Parts sheet",
            example: "receiver",
            required: true,
            rule: { kind: "text" },
          },
        },
        {
          key: "quantity",
          head: "How many",
          unit: "pieces",
          width: 10,
          format: "integer",
          input: {
            what: "How many of them at this outlet; blank is one",
            example: "1",
            zero: "note",
            rule: { kind: "number", min: 0, max: 32, integer: true },
          },
        },
        {
          key: "from",
          head: "Fed from",
          width: 10,
          input: {
            what: "The branch or the head unit that feeds this outlet",
            example: "B2",
            required: true,
            rule: { kind: "text" },
          },
        },
        {
          key: "cable",
          head: "Cable",
          width: 18,
          input: {
            what: "A cable of the Parts sheet",
            required: true,
            rule: { kind: "named", name: "cables_name" },
          },
        },
        {
          key: "run",
          head: "Run",
          unit: "m or ft",
          width: 9,
          format: "one",
          input: {
            what: "Length of the cable from there to the outlet, in the unit that Site names",
            example: "14.5",
            required: true,
            rule: { kind: "number", min: 0.1, max: 2000 },
          },
        },
        {
          key: "plate",
          head: "Wall plate",
          width: 16,
          input: {
            what: "A wall plate of the Parts sheet",
            required: true,
            rule: { kind: "named", name: "plates_name" },
          },
        },
        {
          key: "verdict",
          head: "Verdict",
          width: 9,
          formula:
            'IF(rooms_outlet="","",IF(IFERROR(rooms_fits_enough="ok",FALSE),rooms_fits_bearable,rooms_fits_enough))',
        },
        {
          key: "commands",
          head: "Commands",
          width: 12,
          // A receiver commands the head unit with volts and a tone over this path (EN 50494, EN 50607).
          formula: `IF(rooms_outlet="","",IF(IFERROR(INDEX(branches_loss_stops,${AT_BRANCH})>0,FALSE),"dead",IF(IFERROR(INDEX(branches_loss_forks,${AT_BRANCH})>0,FALSE),"doubtful",IF(ISTEXT(rooms_head)*(ISERROR(MATCH(rooms_from,branches_id,0))+ISNUMBER(INDEX(branches_loss_stops,${AT_BRANCH}))),"ok",""))))`,
        },
        {
          key: "margin",
          head: "Over the least",
          unit: "dB",
          width: 9,
          format: "one",
          formula: 'IF(rooms_outlet="","",rooms_weakest-site_level_low)',
        },
        {
          key: "tuners",
          head: "Tuners",
          width: 8,
          format: "integer",
          formula: "RIG.TUNERCOUNT(rooms_receiver,rooms_quantity,receivers_table)",
        },
        {
          key: "head",
          head: "Head unit",
          width: 10,
          formula: `IF(rooms_outlet="","",IFERROR(INDEX(branches_head,${AT_BRANCH}),INDEX(heads_id,${AT_HEAD})))`,
        },
        { key: "bands", head: "User bands", width: 10, formula: "RIG.USERBANDS(rooms_head,rooms_tuners)" },
        {
          key: "weakest",
          // The lesser of two as (a + b - |a - b|) / 2: an error in a condition would spoil the whole column.
          head: "Weakest",
          unit: "dBµV",
          width: 9,
          format: "one",
          formula:
            'IF(rooms_outlet="","",(rooms_level_low_hot+rooms_level_high_hot-ABS(rooms_level_low_hot-rooms_level_high_hot))/2)',
        },
        {
          key: "strongest",
          head: "Strongest",
          unit: "dBµV",
          width: 10,
          format: "one",
          formula:
            'IF(rooms_outlet="","",(rooms_level_low_cold+rooms_level_high_cold+ABS(rooms_level_low_cold-rooms_level_high_cold))/2)',
        },
        {
          key: "note",
          head: "Note",
          width: 26,
          input: { what: "Anything the crew should know", rule: { kind: "text" } },
        },
        {
          key: "shortest",
          head: "Shortest run",
          unit: "m or ft",
          width: 9,
          format: "one",
          input: {
            what: "How short this run may turn out at least; blank goes by the share on Site",
            example: "12",
            rule: { kind: "number", min: 0, max: 2000 },
          },
        },
        {
          key: "longest",
          head: "Longest run",
          unit: "m or ft",
          width: 9,
          format: "one",
          input: {
            what: "How long this run may turn out at most; blank goes by the share on Site",
            example: "18",
            rule: { kind: "number", min: 0, max: 2000 },
          },
        },
        {
          key: "kind",
          head: "Room kind",
          width: 12,
          input: {
            what: "A kind of room of the Parts sheet, for the price of each kind; may be blank",
            rule: { kind: "named", name: "kinds_name" },
          },
        },
        {
          key: "fits",
          head: "Level",
          width: 10,
          across: [
            { key: "enough", head: "at its weakest" },
            { key: "bearable", head: "at its strongest" },
          ],
          formula: "RIG.WINDOW(rooms_extremes,site_level_low,site_level_high)",
        },
        {
          key: "slope",
          head: "Slope, hot",
          unit: "dB",
          width: 9,
          format: "one",
          formula: 'IF(rooms_outlet="","",rooms_level_low_hot-rooms_level_high_hot)',
        },
        {
          key: "even",
          head: "Slope",
          width: 9,
          // Of what one outlet gets at one time: hot and cold each by themselves.
          formula: `IF(rooms_outlet="","",IF(IFERROR((ABS(rooms_slope)>${GREATEST_SLOPE})+(ABS(rooms_level_low_cold-rooms_level_high_cold)>${GREATEST_SLOPE})>0,FALSE),"steep",IF(ISERROR(rooms_slope),"","ok")))`,
        },
        {
          key: "least",
          head: "At its shortest",
          unit: "m or ft",
          width: 9,
          format: "one",
          formula:
            'IF(rooms_outlet="","",IF(rooms_shortest="",rooms_run*(1-site_run_tolerance),rooms_shortest))',
        },
        {
          key: "most",
          head: "At its longest",
          unit: "m or ft",
          width: 9,
          format: "one",
          formula:
            'IF(rooms_outlet="","",IF(rooms_longest="",rooms_run*(1+site_run_tolerance),rooms_longest))',
        },
        {
          key: "stretched",
          head: "Weakest at longest lengths",
          unit: "dBµV",
          width: 13,
          format: "one",
          // Loss is proportional to length; the high end in heat loses most, so this is never too hopeful.
          formula: `IF(rooms_outlet="","",rooms_weakest-rooms_loss_high_hot/(rooms_run+(rooms_run=0))*(rooms_most-rooms_run)-IFERROR(INDEX(branches_loss_stretch,${AT_BRANCH}),0)-INDEX(heads_lead_high_hot,MATCH(rooms_head,heads_id,0))*site_run_tolerance)`,
        },
        {
          key: "within",
          head: "Then",
          width: 9,
          formula: 'IF(rooms_outlet="","",IF(IFERROR(rooms_stretched<site_level_low,TRUE),"low","ok"))',
        },
        {
          key: "own",
          head: "Its own parts",
          unit: "money",
          width: 10,
          format: "money",
          formula:
            'IF(rooms_outlet="","",INDEX(plates_price,MATCH(rooms_plate,plates_name,0))+rooms_run*INDEX(cables_each,MATCH(rooms_cable,cables_name,0)))',
        },
        {
          key: "drift",
          head: "Expected beside the run",
          unit: "money",
          width: 13,
          format: "two",
          // Three-point mean (PERT, from memory): (low + 4 likely + high) / 6, less the likely one.
          formula:
            'IF(rooms_outlet="","",(rooms_least+rooms_most-2*rooms_run)/6*INDEX(cables_each,MATCH(rooms_cable,cables_name,0)))',
        },
        {
          key: "variance",
          head: "Variance of its cable",
          unit: "money²",
          width: 13,
          format: "two",
          // Of the same three points: ((high - low) / 6)².
          formula:
            'IF(rooms_outlet="","",((rooms_most-rooms_least)/6*INDEX(cables_each,MATCH(rooms_cable,cables_name,0)))^2)',
        },
        {
          key: "loss",
          head: "Run loss",
          unit: "dB",
          format: "one",
          width: 9,
          across: CORNERS,
          formula:
            "RIG.CABLELOSS(rooms_cable,rooms_run,corner_frequency,corner_temperature,site_unit,cables_table)",
        },
        {
          key: "level",
          head: "Level",
          unit: "dBµV",
          format: "one",
          width: 9,
          across: CORNERS,
          formula: `IF(rooms_outlet="","",IFERROR(INDEX(branches_level,${AT_BRANCH},${ALL_CORNERS}),INDEX(heads_level,${AT_HEAD},${ALL_CORNERS}))-rooms_loss-INDEX(plates_loss,MATCH(rooms_plate,plates_name,0),${PAIR_TO_CORNERS}))`,
        },
        measured("built_low", "Measured, low end"),
        measured("built_high", "Measured, high end"),
        measuredVolts,
        keyColumn("rooms", "from", "Fed from"),
        keyColumn("rooms", "cable", "Cable"),
        keyColumn("rooms", "plate", "Wall plate"),
        keyColumn("rooms", "head", "Head unit"),
        keyColumn("rooms", "kind", "Room kind"),
      ],
      groups: [
        { name: "rooms_extremes", from: "weakest", to: "strongest" },
        { name: "rooms_built", from: "built_low", to: "built_high" },
      ],
    },
  ],
};
