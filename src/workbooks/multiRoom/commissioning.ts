import type { Column, SheetDefinition } from "../definition";

const AT_BRANCH = "MATCH(rooms_from,branches_id,0)";

const level = (key: string, head: string, formula: string): Column => ({
  key,
  head,
  unit: "dBµV",
  width: 10,
  format: "one",
  formula: `IF(rooms_outlet="","",${formula})`,
});

const measured = (key: string, head: string, unit: string, from: string): Column => ({
  key,
  head,
  unit,
  width: 11,
  format: "one",
  room: true,
  formula: `IF(${from}="","",${from})`,
});

/** How far outside the predicted range: zero inside it, and nothing where no number was read. */
const off = (end: "low" | "high", head: string): Column => ({
  key: `${end}_off`,
  head,
  unit: "dB",
  width: 9,
  format: "one",
  formula: `IF(ISNUMBER(rooms_built_${end}),(rooms_built_${end}-commission_${end}_to)*(rooms_built_${end}>commission_${end}_to)+(rooms_built_${end}-commission_${end}_from)*(rooms_built_${end}<commission_${end}_from),"")`,
});

/** More than Diagnosis has lines. */
const NO_LINE = "99";

/** The line of Diagnosis that names a place; more than there are lines where none does. */
const lineOf = (key: string, head: string, place: string): Column => ({
  key,
  head,
  width: 9,
  format: "integer",
  formula: `IF(rooms_outlet="","",IFERROR(MATCH(${place},diagnosis_where,0),${NO_LINE}))`,
});

const lesser = (a: string, b: string): string => `(${a}+${b}-ABS(${a}-${b}))/2`;

const workings: readonly Column[] = [
  off("low", "Low end, outside by"),
  off("high", "High end, outside by"),
  {
    key: "volts_off",
    head: "Volts, off by",
    unit: "V",
    width: 9,
    format: "one",
    formula:
      'IF(ISNUMBER(rooms_built_volts),IF(IFERROR(commission_volts_due="",TRUE),"",rooms_built_volts-commission_volts_due),"")',
  },
  level("due_low", "Low end, middle", "(rooms_level_low_cold+rooms_level_low_hot)/2"),
  level("due_high", "High end, middle", "(rooms_level_high_cold+rooms_level_high_hot)/2"),
  lineOf("at_outlet", "Diagnosis names it", "rooms_outlet"),
  lineOf("at_branch", "its branch", "rooms_from"),
  lineOf("at_head", "its head unit", "rooms_head"),
  {
    key: "near",
    head: "it or its branch",
    width: 9,
    format: "integer",
    formula: `IF(rooms_outlet="","",${lesser("commission_at_outlet", "commission_at_branch")})`,
  },
  {
    key: "line",
    head: "likeliest line",
    width: 9,
    format: "integer",
    formula: `IF(rooms_outlet="","",${lesser("commission_near", "commission_at_head")})`,
  },
];

export const commissioning: SheetDefinition = {
  name: "Commissioning",
  kind: "print",
  intro:
    "For the crew: what each outlet should show, and what it shows. Enter what is measured on Rooms, in its last columns.",
  print: { orientation: "landscape", through: "chance", repeatHeads: true },
  parts: [
    {
      kind: "text",
      heading: "Order of work, with its reasons",
      lines: [
        "1. Fit and bond by the local code and licensed practice; keep clear of overhead lines; safe footing first. Nothing that follows is worth a fall.",
        "2. Give the head unit its stated volts before aiming: with less it starts late or not at all. Receivers feed it over the cable (EN 50494, EN 50607); a kind of higher voltage needs its own supply first.",
        "3. Align the first slot; set the tilt on the second, because a tilt turns the dish about the first; peak by equal drops either side, where the beam falls steeply. See Alignment.",
        "4. While you aim, let only one thing command the head unit, the meter or one receiver: another that tunes meanwhile changes what the meter reads (common practice, no source).",
        "5. Measure each run at the low and the high end, and its volts: water, wrong cable and unrated splitters show at the high end first.",
        "6. Switch off what feeds the cable before a connector is opened or made: under power it can short the supply (common practice, no source).",
      ],
    },
    {
      kind: "text",
      heading: "How to read it",
      lines: [
        "Least is with the cable hot, most with it cold; a measured level may lie outside by the tolerance on Site. The likely cause and its probability come from Diagnosis, whose model is on Causes.",
        "Volts: at the outlet, its receiver unplugged, supply on. Where a splitter's diodes pass power only towards the head unit, feed the supply in at the outlet and read at the first branch (common practice, no source).",
        "No volts are predicted at outlets where something feeds in on the way, nor below a device that passes power at one port: they depend on which legs are on. Measure at the head unit, fed as Head units says.",
      ],
    },
    {
      kind: "block",
      name: "commission",
      heading: "Outlets",
      prepared: 30,
      mirrors: "rooms",
      columns: [
        { key: "outlet", head: "Outlet", width: 12, formula: 'IF(rooms_outlet="","",rooms_outlet)' },
        // Joined by & they would be one text of all rows in the desk's engine.
        { key: "floor", head: "Floor", width: 11, formula: 'IF(rooms_floor="","",rooms_floor)' },
        { key: "room", head: "Room", width: 20, formula: 'IF(rooms_room="","",rooms_room)' },
        { key: "head", head: "Head unit", width: 10, formula: 'IF(rooms_outlet="","",rooms_head)' },
        { key: "bands", head: "User bands", width: 8, formula: 'IF(rooms_outlet="","",rooms_bands)' },
        level("low_from", "Low end, least", "rooms_level_low_hot"),
        level("low_to", "Low end, most", "rooms_level_low_cold"),
        measured("low", "Low end, measured", "dBµV", "rooms_built_low"),
        level("high_from", "High end, least", "rooms_level_high_hot"),
        level("high_to", "High end, most", "rooms_level_high_cold"),
        measured("high", "High end, measured", "dBµV", "rooms_built_high"),
        {
          key: "volts_due",
          head: "Volts, predicted",
          unit: "V",
          width: 10,
          format: "one",
          formula: `IF(rooms_outlet="","",IF(IFERROR(INDEX(branches_loss_stops,${AT_BRANCH})>0,FALSE),0,IF(IFERROR(INDEX(branches_loss_ones,${AT_BRANCH})>0,FALSE),"",INDEX(heads_legs,MATCH(rooms_head,heads_id,0)))))`,
        },
        measured("volts", "Volts, measured", "V", "rooms_built_volts"),
        {
          key: "verdict",
          head: "Verdict",
          width: 11,
          formula:
            'IF(rooms_outlet="","",IF((rooms_built_low="")+(rooms_built_high="")>0,"to measure",IF(ISTEXT(rooms_built_low)+ISTEXT(rooms_built_high)+IFERROR((ABS(commission_low_off)>commission_tolerance)+(ABS(commission_high_off)>commission_tolerance),1)+IFERROR((commission_volts_off<>"")*(ABS(commission_volts_off)>commission_volts_tolerance),0)>0,"look","ok")))',
        },
        {
          key: "cause",
          head: "Likely cause",
          width: 26,
          formula:
            'IF(rooms_outlet="","",IF(IFERROR(commission_verdict="look",FALSE),IFERROR(INDEX(diagnosis_cause,commission_line),"see Diagnosis"),""))',
        },
        {
          key: "chance",
          head: "Probability",
          unit: "by the model",
          width: 12,
          format: "percent",
          formula:
            'IF(rooms_outlet="","",IF(IFERROR(commission_verdict="look",FALSE),IFERROR(INDEX(diagnosis_probability,commission_line),""),""))',
        },
        ...workings,
      ],
      groups: [{ name: "commission_due", from: "due_low", to: "due_high" }],
    },
  ],
};
