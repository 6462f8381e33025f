/** One site and its slots on a card: where to point, and a record of peaking by equal drops. */
import { aboutSheet } from "../aboutSheet";
import type { Filling, SheetDefinition, WorkbookDefinition } from "../definition";
import { checksSheet } from "../checksSheet";
import { sheetEntryChecks } from "../entryChecks";
import { peakingHelp, peaksBlock } from "../peaking";
import { sheetDate } from "../sheetDate";
import { slotColumns } from "../slotColumns";
import { writingField } from "../typed/writingField";
import { versionNow } from "../versions";

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

const card: SheetDefinition = {
  name: "Card",
  kind: "input",
  intro:
    "Take it to the roof, on safe footing. Elevation of the beam and tilt of the face are different things: mind which one your mount's scale shows.",
  print: { orientation: "landscape", onePage: true },
  parts: [
    {
      kind: "fields",
      heading: "Site",
      fields: [
        {
          name: "card_job",
          label: "Job",
          input: { what: "Which job and dish", required: true, rule: { kind: "text" } },
        },
        {
          name: "card_date",
          label: "Date",
          format: "date",
          input: {
            what: "Date of the work, for the compass",
            required: true,
            example: "2026-11-02",
            rule: { kind: "date" },
          },
        },
        writingField,
        {
          name: "card_latitude",
          label: "Latitude",
          unit: "deg north",
          format: "three",
          input: {
            what: "Latitude of the dish; south is negative",
            required: true,
            rule: { kind: "number", min: -90, max: 90 },
          },
        },
        {
          name: "card_longitude",
          label: "Longitude",
          unit: "deg east",
          format: "three",
          input: {
            what: "Longitude of the dish; west is negative",
            required: true,
            rule: { kind: "number", min: -180, max: 180 },
          },
        },
        {
          name: "card_height",
          label: "Height",
          unit: "m",
          format: "integer",
          input: { what: "Height above sea level", rule: { kind: "number", min: -500, max: 9000 } },
        },
        {
          name: "card_offset",
          label: "Offset angle of the dish",
          unit: "deg",
          format: "one",
          input: {
            what: "Offset angle of the dish; 0 for a centre-fed one",
            required: true,
            example: "22.6",
            rule: { kind: "number", min: 0, max: 60 },
          },
        },
        {
          name: "card_dish",
          label: "Diameter of the dish",
          unit: "m",
          format: "two",
          input: {
            what: "Diameter of the dish, to compare the width of its beam; may be blank",
            example: "0.9",
            rule: { kind: "number", min: 0.3, max: 15 },
          },
        },
        {
          name: "card_frequency",
          label: "Frequency received at the dish",
          unit: "MHz",
          format: "integer",
          input: {
            what: "A frequency in the middle of the band that the dish receives; may be blank",
            example: "11700",
            rule: { kind: "number", min: 1000, max: 50_000 },
          },
        },
      ],
    },
    {
      kind: "block",
      name: "slots",
      heading: "Slots",
      prepared: 4,
      columns: [
        {
          key: "slot",
          head: "Orbital slot",
          unit: "deg, E or W",
          width: 34,
          input: {
            what: "Orbital slot: its degrees from 0 to 180 with E or W behind them",
            example: "97W",
            rule: { kind: "slot" },
          },
        },
        ...slotColumns("slots_slot", "card"),
        {
          key: "face",
          head: "Tilt of the face back from upright",
          unit: "deg",
          width: 14,
          format: "degrees",
          formula: "RIG.FACETILT(slots_angles_elevation,card_offset)",
        },
      ],
    },
    {
      kind: "fields",
      heading: "One dish for the first two slots",
      fields: [
        { name: "pair_a", label: "First slot", formula: 'IF(INDEX(slots_slot,2)="","",INDEX(slots_slot,2))' },
        {
          name: "pair_b",
          label: "Second slot",
          formula: 'IF(INDEX(slots_slot,3)="","",INDEX(slots_slot,3))',
        },
        {
          name: "pair_aim",
          label: "Aim: azimuth and elevation of the beam",
          format: "degrees",
          formula: 'IF(pair_b="","",RIG.PAIRAIM(card_latitude,card_longitude,pair_a,pair_b,card_height))',
          spillRows: 1,
          spillColumns: 2,
        },
        {
          name: "pair_tilt",
          label: "Tilt, clockwise at the dish facing the slots",
          unit: "deg",
          format: "degrees",
          formula: 'IF(pair_b="","",RIG.PAIRTILT(card_latitude,card_longitude,pair_a,pair_b,card_height))',
        },
      ],
    },
    {
      kind: "fields",
      heading: "Peaking",
      fields: [
        {
          name: "peaks_elevation",
          label: "Elevation of the beam while peaking",
          unit: "deg",
          format: "degrees",
          formula: 'IF(pair_a="","",IF(pair_b="",INDEX(slots_angles_elevation,2),INDEX(pair_aim,1,2)))',
        },
      ],
    },
    peaksBlock(6, "card_dish", "card_frequency"),
    peakingHelp,
  ],
};

const checks = checksSheet([
  ...sheetEntryChecks([card]),
  {
    what: "There are slots",
    limit: "1 or more",
    found: 'SUMPRODUCT(--(slots_slot<>""))',
    passes: "@>0",
    where: "Card, slots",
  },
  {
    what: "Slots whose angles could not be found, or below the horizon",
    limit: "none",
    found: 'SUMPRODUCT(--ISERROR(slots_angles_elevation))+COUNTIF(slots_angles_elevation,"<0")',
    passes: "@=0",
    where: "Card, slots",
  },
  {
    what: "Peaking records that cannot be right",
    limit: "none",
    found: "SUMPRODUCT(--ISERROR(peaks_found_turn))",
    passes: "@=0",
    where: "Card, peaking: hover the error",
  },
]);

export const alignmentCard: WorkbookDefinition = {
  id: "alignment-card",
  title: "Alignment card",
  version: versionNow("alignment-card"),
  sheets: [about, card, checks],
};

export const alignmentCardStart: Filling = { fields: { card_offset: 0, card_frequency: 11_700 } };

/** An invented dish. */
export const alignmentCardExample: Filling = {
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
