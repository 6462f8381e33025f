/** One site and its slots on a card: where to point, and a record of peaking by equal drops. */
import { f } from "../../formula/build";
import { aboutSheet } from "../aboutSheet";
import { NONE_FOUND, SOME_FOUND } from "../checkPlaces";
import { checksOf, checksSheet } from "../checksSheet";
import type { JobInputs, SheetDefinition, WorkbookDefinition } from "../definition";
import { sheetEntryChecks } from "../entryChecks";
import { blockPart, fieldsPart, worked } from "../parts";
import { peaking, peakingHelp, peaks, peaksBlock } from "../peaking";
import { sheetDate } from "../sheetDate";
import { slotFormulas } from "../slotColumns";
import { writingField } from "../typed/writingField";
import { versionNow } from "../versions";
import { card, pair, slots } from "./names";

const about = aboutSheet({
  template: `alignment card, version ${versionNow("alignment-card")}`,
  purpose: [
    "A card for the crew: bearings and elevations of a site's slots, aim and tilt of a dish for two of them,",
    "and a record of peaking by equal drops that gives the correction.",
  ],
  leftOut: [
    "Refraction (less than 0.1 deg above 10 deg), a satellite's wander in its box, a mast out of plumb.",
    "A compass near iron is wrong by far more than the declination's own error.",
  ],
});

const cardSheet: SheetDefinition = {
  name: "Card",
  kind: "input",
  intro:
    "Take it to the roof, on safe footing. Beam elevation and rim angle are different things: mind which one your mount's scale shows.",
  print: { orientation: "landscape", onePage: true },
  parts: [
    fieldsPart("Site", [
      card.job,
      card.date,
      writingField,
      card.latitude,
      card.longitude,
      card.height,
      card.offset,
      card.dish,
      card.frequency,
    ]),
    blockPart(slots, {
      heading: "Slots",
      prepared: 4,
      formulas: {
        ...slotFormulas(slots.slot, card),
        face: f`RIG.FACETILT(${slots.angles.elevation},${card.offset})`,
      },
    }),
    fieldsPart("One dish for the first two slots", [
      worked(pair.a, f`IF(INDEX(${slots.slot},2)="","",INDEX(${slots.slot},2))`),
      worked(pair.b, f`IF(INDEX(${slots.slot},3)="","",INDEX(${slots.slot},3))`),
      worked(
        pair.aim,
        f`IF(${pair.b}="","",RIG.PAIRAIM(${card.latitude},${card.longitude},${pair.a},${pair.b},${card.height}))`,
        { spillRows: 1, spillColumns: 2 },
      ),
      worked(
        pair.tilt,
        f`IF(${pair.b}="","",RIG.PAIRTILT(${card.latitude},${card.longitude},${pair.a},${pair.b},${card.height}))`,
      ),
    ]),
    fieldsPart("Peaking", [
      worked(
        peaking.elevation,
        f`IF(${pair.a}="","",IF(${pair.b}="",INDEX(${slots.angles.elevation},2),INDEX(${pair.aim},1,2)))`,
      ),
    ]),
    peaksBlock(6, card.dish, card.frequency),
    peakingHelp,
  ],
};

const checks = checksSheet([
  ...sheetEntryChecks([cardSheet]),
  ...checksOf({
    "slots to look at": {
      what: "There are slots",
      limit: "1 or more",
      found: f`SUMPRODUCT(--(${slots.slot}<>""))`,
      passes: SOME_FOUND,
      where: "Card, slots",
    },
    "angles unknown": {
      what: "Slots whose angles could not be found, or below the horizon",
      limit: "none",
      found: f`SUMPRODUCT(--ISERROR(${slots.angles.elevation}))+COUNTIF(${slots.angles.elevation},"<0")`,
      passes: NONE_FOUND,
      where: "Card, slots",
    },
    "peaking impossible": {
      what: "Peaking records that cannot be right",
      limit: "none",
      found: f`SUMPRODUCT(--ISERROR(${peaks.found.turn}))`,
      passes: NONE_FOUND,
      where: "Card, peaking: hover the error",
    },
  }),
]);

export const alignmentCard: WorkbookDefinition = {
  id: "alignment-card",
  title: "Alignment card",
  version: versionNow("alignment-card"),
  sheets: [about, cardSheet, checks],
};

export const alignmentCardStart: JobInputs = { fields: { card_offset: 0, card_frequency: 11_700 } };

/** An invented dish. */
export const alignmentCardExample: JobInputs = {
  fields: {
    card_job: "Guest house, main dish (demonstration)",
    card_date: sheetDate(2026, 11, 2),
    card_latitude: 39.5,
    card_longitude: -98.25,
    card_height: 420,
    card_offset: 22.6,
    card_dish: 0.9,
    card_frequency: 11_700,
  },
  blocks: {
    slots: [{ slot: "97W" }, { slot: "113W" }],
    peaks: [
      { what: "main dish, 97W", axis: "azimuth", kind: "dB", step: 1, here: 62, plus: 61, minus: 58.2 },
      { what: "main dish, 97W", axis: "elevation", kind: "dB", step: 1, here: 62, plus: 59.7, minus: 59.7 },
    ],
  },
};
