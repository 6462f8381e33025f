import type { SheetDefinition } from "../definition";

export const commissioning: SheetDefinition = {
  name: "Commissioning",
  kind: "print",
  intro:
    "For the crew: what each outlet should show, and what it shows. Enter the measured levels on Rooms, in its last columns.",
  print: { orientation: "landscape" },
  parts: [
    {
      kind: "text",
      heading: "Order of work",
      lines: [
        "1. Fit and bond by the local code and licensed practice; keep clear of overhead lines; safe footing first.",
        "2. Put the supply in line before peaking: a hand meter's 18 V is below what a head unit of this kind needs (common practice, no source).",
        "3. Align the first slot; set the tilt on the second; peak by equal drops either side.",
        "4. Test each run. Connect receivers only when the dish is peaked, and power them when every connection is made (common practice, no source).",
      ],
    },
    {
      kind: "fields",
      heading: "Tolerance",
      fields: [
        {
          name: "commission_tolerance",
          label: "A measured level may differ by",
          unit: "dB",
          format: "one",
          note: "Common practice, no source: meter error and connectors.",
          input: {
            what: "How far a measured level may lie outside the predicted range",
            example: "3",
            rule: { kind: "number", min: 0, max: 20 },
          },
        },
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
        { key: "floor", head: "Floor", width: 12, formula: 'IF(rooms_floor="","",rooms_floor)' },
        { key: "room", head: "Room", width: 18, formula: 'IF(rooms_room="","",rooms_room)' },
        { key: "head", head: "Head unit", width: 12, formula: 'IF(rooms_outlet="","",rooms_head)' },
        { key: "bands", head: "User bands", width: 12, formula: 'IF(rooms_outlet="","",rooms_bands)' },
        {
          key: "low_from",
          head: "Low end, least",
          unit: "dBµV",
          width: 10,
          format: "one",
          formula: 'IF(rooms_outlet="","",rooms_level_low_hot)',
        },
        {
          key: "low_to",
          head: "Low end, most",
          unit: "dBµV",
          width: 10,
          format: "one",
          formula: 'IF(rooms_outlet="","",rooms_level_low_cold)',
        },
        {
          key: "low",
          head: "Low end, measured",
          unit: "dBµV",
          width: 10,
          format: "one",
          formula: 'IF(rooms_built_low="","",rooms_built_low)',
        },
        {
          key: "high_from",
          head: "High end, least",
          unit: "dBµV",
          width: 10,
          format: "one",
          formula: 'IF(rooms_outlet="","",rooms_level_high_hot)',
        },
        {
          key: "high_to",
          head: "High end, most",
          unit: "dBµV",
          width: 10,
          format: "one",
          formula: 'IF(rooms_outlet="","",rooms_level_high_cold)',
        },
        {
          key: "high",
          head: "High end, measured",
          unit: "dBµV",
          width: 10,
          format: "one",
          formula: 'IF(rooms_built_high="","",rooms_built_high)',
        },
        {
          key: "low_off",
          head: "Low end, off by",
          unit: "dB",
          width: 10,
          format: "one",
          // How far outside the range: zero inside it.
          formula:
            'IF(rooms_built_low="","",(rooms_built_low-commission_low_to)*(rooms_built_low>commission_low_to)+(rooms_built_low-commission_low_from)*(rooms_built_low<commission_low_from))',
        },
        {
          key: "high_off",
          head: "High end, off by",
          unit: "dB",
          width: 10,
          format: "one",
          formula:
            'IF(rooms_built_high="","",(rooms_built_high-commission_high_to)*(rooms_built_high>commission_high_to)+(rooms_built_high-commission_high_from)*(rooms_built_high<commission_high_from))',
        },
        {
          key: "verdict",
          head: "Verdict",
          width: 12,
          formula:
            'IF(rooms_outlet="","",IF((rooms_built_low="")+(rooms_built_high="")>0,"to measure",IF(IFERROR((ABS(commission_low_off)>commission_tolerance)+(ABS(commission_high_off)>commission_tolerance),1)>0,"look","ok")))',
        },
      ],
    },
  ],
};
