import type { SheetDefinition } from "../definition";

export const diagnosis: SheetDefinition = {
  name: "Diagnosis",
  kind: "print",
  intro:
    "Likely causes of what was measured, likeliest first, over all readings of the job together. Nothing here is certain.",
  print: { orientation: "landscape", onePage: true },
  parts: [
    {
      kind: "answer",
      name: "diagnosis",
      heading: "Likely causes",
      formula:
        "RIG.DIAGNOSE(rooms_outlet,rooms_from,commission_due,rooms_built,diagnosis_band,rooms_built_volts,commission_volts_due,branches_id,branches_from,causes_table,commission_meter,heads_id,heads_built_volts,heads_volts)",
      rows: 8,
      lines: 4,
      columns: [
        { key: "cause", head: "Cause", width: 26 },
        { key: "where", head: "Where", width: 18 },
        { key: "probability", head: "Probability", unit: "by the model", width: 12, format: "percent" },
        { key: "evidence", head: "Evidence", width: 62 },
        { key: "next", head: "Next measurement, which would decide", width: 56 },
      ],
    },
    {
      kind: "grid",
      heading: "Frequencies of the readings",
      heads: ["low end", "high end"],
      rows: [
        {
          name: "diagnosis_band",
          label: "Measured at",
          unit: "MHz",
          format: "integer",
          formulas: ["site_low", "site_high"],
        },
      ],
    },
    {
      kind: "text",
      heading: "How to read it",
      lines: [
        "Enter what was measured on Rooms, in its last three columns: level at the low and the high end, and volts. The more outlets, the surer.",
        "An outlet at which the meter finds nothing is a reading too: enter “no signal”. Blank is not measured.",
        "“check the readings” comes first: what cannot be a level, or stands in the wrong column, is left out until it is put right.",
        "Predicted is the middle between cold and hot. The model, its chances and its sizes stand on Causes and may be changed.",
        "Causes that only volts tell apart stay mixed until volts are entered.",
        "Measure again before anything is taken apart. Switch a supply off before opening it; roofs, ladders and mains by the local code and licensed practice.",
      ],
    },
  ],
};
