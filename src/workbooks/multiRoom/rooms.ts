import type { SheetDefinition } from "../definition";
import { ALL_CORNERS, CORNERS, PAIR_TO_CORNERS } from "./corners";

const AT_BRANCH = "MATCH(rooms_from,branches_id,0)";
const AT_HEAD = "MATCH(rooms_from,heads_id,0)";

export const rooms: SheetDefinition = {
  name: "Rooms",
  kind: "input",
  intro: "A row for each outlet. Fill the boxed columns; the others follow.",
  frozenColumns: 3,
  print: { orientation: "landscape" },
  parts: [
    {
      kind: "block",
      name: "rooms",
      heading: "Outlets",
      prepared: 30,
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
          width: 16,
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
            rule: { kind: "text" },
          },
        },
        {
          key: "cable",
          head: "Cable",
          width: 18,
          input: { what: "A cable of the Parts sheet", rule: { kind: "named", name: "cables_name" } },
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
            rule: { kind: "number", min: 0, max: 2000 },
          },
        },
        {
          key: "plate",
          head: "Wall plate",
          width: 16,
          input: { what: "A wall plate of the Parts sheet", rule: { kind: "named", name: "plates_name" } },
        },
        {
          key: "note",
          head: "Note",
          width: 18,
          input: { what: "Anything the crew should know", rule: { kind: "text" } },
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
          key: "verdict",
          head: "Verdict",
          width: 9,
          formula: 'IF(rooms_outlet="","",IF(rooms_enough="ok",rooms_bearable,rooms_enough))',
        },
        {
          key: "weakest",
          head: "Weakest",
          unit: "dBµV",
          width: 9,
          format: "one",
          formula:
            'IF(rooms_outlet="","",IF(rooms_level_low_hot<rooms_level_high_hot,rooms_level_low_hot,rooms_level_high_hot))',
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
          key: "strongest",
          head: "Strongest",
          unit: "dBµV",
          width: 9,
          format: "one",
          formula:
            'IF(rooms_outlet="","",IF(rooms_level_low_cold>rooms_level_high_cold,rooms_level_low_cold,rooms_level_high_cold))',
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
          key: "enough",
          head: "At its weakest",
          width: 10,
          formula: "RIG.WINDOW(rooms_weakest,site_level_low,site_level_high)",
        },
        {
          key: "bearable",
          head: "At its strongest",
          width: 10,
          formula: "RIG.WINDOW(rooms_strongest,site_level_low,site_level_high)",
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
      ],
    },
  ],
};
