import { f } from "../../formula/build";
import type { SheetDefinition } from "../definition";
import { answerPart, gridPart } from "../parts";
import { branches } from "./names/branches";
import { causes } from "./names/causes";
import { commission } from "./names/commissioning";
import { diagnosis, readings } from "./names/diagnosis";
import { dishes, feeders } from "./names/dishes";
import { heads } from "./names/headUnits";
import { rooms } from "./names/rooms";
import { commissioningLimits, site } from "./names/site";

export const diagnosisSheet: SheetDefinition = {
  name: "Diagnosis",
  kind: "print",
  intro:
    "Likely causes of what was measured, likeliest first, over all readings of the job together. Nothing here is certain.",
  print: { orientation: "landscape", onePage: true },
  parts: [
    answerPart(diagnosis, {
      heading: "Likely causes",
      formula: f`RIG.DIAGNOSE(${rooms.outlet},${rooms.from},${commission.due},${rooms.built},${readings.band},${rooms.built_volts},${commission.volts_due},${branches.id},${branches.from},${causes.table},${commissioningLimits.meter},${heads.id},${heads.built_volts},${heads.fed.least},${heads.dish},${feeders.from},${feeders.to},${dishes.name})`,
      rows: 8,
      lines: 4,
    }),
    gridPart(
      "Frequencies of the readings",
      ["lowest frequency", "highest frequency"],
      [[readings.band, [f`${site.low}`, f`${site.high}`]]],
    ),
    {
      kind: "text",
      heading: "How to read it",
      lines: [
        "Enter what was measured on Rooms, in its last three columns: level at the lowest and the highest frequency, and volts. The more outlets, the surer.",
        "An outlet at which the meter finds nothing is a reading too: enter “no signal”. Blank is not measured.",
        "“check the readings” comes first: what cannot be a level, or stands in the wrong column, is left out until it is put right.",
        "Predicted is the middle between cold and hot. The model, its chances and its sizes stand on Causes and may be changed.",
        "One dish is one dish: what is wrong with it shows at all head units that it feeds, and stands here once, under its name.",
        "Causes that only volts tell apart stay mixed until volts are entered.",
        "Measure again before anything is taken apart. Switch a supply off before opening it; roofs, ladders and mains by the local code and licensed practice.",
      ],
    },
  ],
};
