/** One cable run checked on one page: level at the lowest and the highest frequency, cold and hot, and volts at its end. */
import { f, text } from "../../formula/build";
import { aboutSheet } from "../aboutSheet";
import { lookAt, NONE_FOUND } from "../checkPlaces";
import { CORNER_HEADS } from "../multiRoom/corners";
import { checksOf, checksSheet } from "../checksSheet";
import type { JobInputs, SheetDefinition, WorkbookDefinition } from "../definition";
import { sheetEntryChecks } from "../entryChecks";
import { BUILT_IN_CABLES } from "../multiRoom/parts";
import { askedBeside, bound, fieldsPart, gridPart, worked } from "../parts";
import { versionNow } from "../versions";
import { cableTypes, drop } from "./names";

const about = aboutSheet({
  template: `single-drop check, version ${versionNow("single-drop")}`,
  purpose: [
    "Checks one run from a known level to one outlet: level at the lowest and the highest frequency, cold and hot, slope, and volts.",
    "Fill the boxed cells on the sheet Drop; the verdicts stand at its end.",
  ],
  leftOut: [
    "Connector losses and mismatch ripple, ageing and water in the cable. Beyond 1000 MHz the cable types are extrapolated, ±5 %.",
  ],
});

/** Without a load there is no supply to tell of. */
const WITH_LOAD = { required: f`(${drop.load}>0)` };
const FOUR_CORNERS = { spillRows: 1, spillColumns: 4 };

const dropSheet: SheetDefinition = {
  name: "Drop",
  kind: "input",
  intro: "One run, on one page.",
  print: { orientation: "portrait" },
  parts: [
    fieldsPart("The run", [drop.job, drop.cable, drop.unit, drop.length, drop.ways, drop.excess, drop.plate]),
    fieldsPart("Band, temperatures and levels", [
      askedBeside(drop.low, { atMost: bound(drop.high, "the highest frequency") }),
      askedBeside(drop.high, { atLeast: bound(drop.low, "the lowest frequency") }),
      askedBeside(drop.cold, { atMost: bound(drop.hot, "the hottest cable") }),
      askedBeside(drop.hot, { atLeast: bound(drop.cold, "the coldest cable") }),
      drop.in_low,
      drop.in_high,
      askedBeside(drop.least, { atMost: bound(drop.most, "the maximum level") }),
      askedBeside(drop.most, { atLeast: bound(drop.least, "the minimum level") }),
    ]),
    fieldsPart("Supply over the same cable; leave the load at 0 for none", [
      askedBeside(drop.supply, WITH_LOAD),
      drop.load,
      askedBeside(drop.volts_least, WITH_LOAD),
    ]),
    gridPart("The four corners", CORNER_HEADS, [
      [drop.frequency, [drop.low, drop.low, drop.high, drop.high].map((end) => f`${end}`)],
      [drop.temperature, [drop.cold, drop.hot, drop.cold, drop.hot].map((end) => f`${end}`)],
      [drop.in, [drop.in_low, drop.in_low, drop.in_high, drop.in_high].map((end) => f`${end}`)],
    ]),
    fieldsPart("What comes out, at the four corners", [
      worked(drop.split, f`RIG.SPLITLOSS(${drop.ways},${drop.excess})`),
      worked(
        drop.loss,
        f`RIG.CABLELOSS(${drop.cable},${drop.length},${drop.frequency},${drop.temperature},${drop.unit})`,
        FOUR_CORNERS,
      ),
      worked(drop.level, f`${drop.in}-${drop.loss}-${drop.split}-${drop.plate}`, FOUR_CORNERS),
      worked(drop.verdict, f`RIG.WINDOW(${drop.level},${drop.least},${drop.most})`, FOUR_CORNERS),
      worked(drop.slope, f`INDEX(${drop.level},1,2)-INDEX(${drop.level},1,4)`),
      worked(drop.ohms, f`RIG.LOOPOHMS(${drop.cable},${drop.length},${drop.hot},${drop.unit})`),
      worked(drop.volts, f`RIG.LOADVOLTS(${drop.supply},${drop.load},${drop.ohms})`),
      worked(drop.power, f`RIG.WINDOW(${drop.volts},${drop.volts_least},${drop.supply})`, { verdict: true }),
    ]),
    { kind: "words", heading: "Cable types", name: cableTypes.name, words: BUILT_IN_CABLES },
  ],
};

const checks = checksSheet([
  ...sheetEntryChecks([dropSheet]),
  ...checksOf({
    "limits of level": {
      what: "Minimum and maximum level outside 47 to 77 dBµV",
      limit: "none: EN 60728-1 for satellite IF with QPSK, 8PSK or APSK",
      found: f`(${drop.least}<>"")*(${drop.least}<47)+(${drop.most}<>"")*(${drop.most}>77)`,
      passes: NONE_FOUND,
      where: "Drop",
      places: f`IF((${drop.least}<>"")*(${drop.least}<47),${text(`; ${drop.least.words.label}`)},"")&IF((${drop.most}<>"")*(${drop.most}>77),${text(`; ${drop.most.words.label}`)},"")`,
    },
    "slope too steep": {
      what: "Levels at the lowest and the highest frequency more than 15 dB apart",
      limit: "no: 15 dB between channels at one outlet (EN 60728-1, from memory)",
      found: f`IFERROR((ABS(INDEX(${drop.level},1,1)-INDEX(${drop.level},1,3))>15)+(ABS(INDEX(${drop.level},1,2)-INDEX(${drop.level},1,4))>15),0)`,
      passes: NONE_FOUND,
      where: lookAt("Drop", drop.slope),
    },
    "corners outside": {
      what: "Corners outside minimum and maximum level, or not found",
      limit: "none",
      found: f`4-COUNTIF(${drop.verdict},"ok")`,
      passes: NONE_FOUND,
      where: lookAt("Drop", drop.verdict),
    },
    "short of volts": {
      what: "Short of volts at the end",
      limit: "no",
      found: f`1-COUNTIF(${drop.power},"ok")`,
      passes: NONE_FOUND,
      where: lookAt("Drop", drop.power),
    },
  }),
]);

export const singleDrop: WorkbookDefinition = {
  id: "single-drop",
  title: "Single-drop check",
  version: versionNow("single-drop"),
  sheets: [about, dropSheet, checks],
};

export const singleDropStart: JobInputs = {
  fields: {
    drop_unit: "m",
    drop_ways: 1,
    drop_excess: 0,
    drop_plate: 0,
    drop_low: 950,
    drop_high: 2150,
    drop_cold: -15,
    drop_hot: 55,
    drop_least: 47,
    drop_most: 77,
    drop_load: 0,
  },
};

/** An invented run. */
export const singleDropExample: JobInputs = {
  fields: {
    ...singleDropStart.fields,
    drop_job: "Room 12, outlet 1 (demonstration)",
    drop_cable: "series 6, copper",
    drop_length: 32,
    drop_ways: 4,
    drop_excess: 2.5,
    drop_plate: 1.2,
    drop_in_low: 82,
    drop_in_high: 80,
    drop_supply: 13,
    drop_load: 0.33,
    drop_volts_least: 10.5,
  },
};
