/** One cable run checked on one page: level at both ends of the band, cold and hot, and volts at its end. */
import { aboutSheet } from "../aboutSheet";
import type { Bound, Field, Filling, SheetDefinition, WorkbookDefinition } from "../definition";
import { checksSheet } from "../checksSheet";
import { sheetEntryChecks } from "../entryChecks";
import { BUILT_IN_CABLES } from "../multiRoom/parts";
import { versionNow } from "../versions";

const about = aboutSheet({
  template: `single-drop check, version ${versionNow("single-drop")}`,
  purpose: [
    "Checks one run from a known level to one outlet: level at both ends of the band, cold and hot, slope, and volts.",
    "Fill the boxed cells on the sheet Drop; the verdicts stand at its end.",
  ],
  leftOut: [
    "Connector losses and mismatch ripple, ageing and water in the cable. Beyond 1000 MHz the cable types are extrapolated, ±5 %.",
  ],
});

/** Another field that the value must not pass. */
interface Bounds {
  readonly atLeast?: Bound;
  readonly atMost?: Bound;
}

const number = (
  name: string,
  label: string,
  unit: string,
  what: string,
  min: number,
  max: number,
  more: { readonly note?: string; readonly required?: string; readonly bounds?: Bounds } = {},
): Field => ({
  name,
  label,
  unit,
  format: "general",
  note: more.note,
  input: { what, required: more.required ?? true, rule: { kind: "number", min, max, ...more.bounds } },
});

/** Without a load there is no supply to tell of. */
const WITH_LOAD = "(drop_load>0)";

const corners = (name: string, label: string, unit: string, formula: string): Field => ({
  name,
  label,
  unit,
  format: "one",
  formula,
  spillRows: 1,
  spillColumns: 4,
});

const drop: SheetDefinition = {
  name: "Drop",
  kind: "input",
  intro: "One run, on one page.",
  print: { orientation: "portrait" },
  parts: [
    {
      kind: "fields",
      heading: "The run",
      fields: [
        {
          name: "drop_job",
          label: "Job and outlet",
          input: { what: "Which run this is", required: true, rule: { kind: "text" } },
        },
        {
          name: "drop_cable",
          label: "Cable",
          input: {
            what: "A built-in cable type",
            required: true,
            rule: { kind: "named", name: "cable_types" },
          },
        },
        {
          name: "drop_unit",
          label: "Lengths in",
          input: {
            what: "The unit of the length",
            required: true,
            rule: { kind: "choice", choices: ["m", "ft"] },
          },
        },
        number("drop_length", "Length", "m or ft", "Length of the run", 0.1, 2000),
        number(
          "drop_ways",
          "Splitter before it",
          "ways",
          "Ways of the splitter in the run; 1 for none",
          1,
          64,
        ),
        number(
          "drop_excess",
          "Loss of that splitter beyond the ideal",
          "dB",
          "Excess loss of the splitter at the high end",
          0,
          30,
          { note: "1 to 3 dB at satellite IF, from memory." },
        ),
        number("drop_plate", "Loss of the outlet", "dB", "Loss of the wall plate", 0, 30),
      ],
    },
    {
      kind: "fields",
      heading: "Band, temperatures and levels",
      fields: [
        number("drop_low", "Lowest frequency", "MHz", "Lowest frequency", 5, 3000, {
          bounds: { atMost: { name: "drop_high", words: "the highest frequency" } },
        }),
        number("drop_high", "Highest frequency", "MHz", "Highest frequency", 5, 3000, {
          bounds: { atLeast: { name: "drop_low", words: "the lowest frequency" } },
        }),
        number("drop_cold", "Coldest cable", "°C", "Coldest cable of the year", -60, 90, {
          bounds: { atMost: { name: "drop_hot", words: "the hottest cable" } },
        }),
        number("drop_hot", "Hottest cable", "°C", "Hottest cable of the year", -60, 90, {
          bounds: { atLeast: { name: "drop_cold", words: "the coldest cable" } },
        }),
        number(
          "drop_in_low",
          "Level going in, low end",
          "dBµV",
          "Level before the splitter at the low end",
          20,
          140,
        ),
        number(
          "drop_in_high",
          "Level going in, high end",
          "dBµV",
          "Level before the splitter at the high end",
          20,
          140,
        ),
        number("drop_least", "Least level at the outlet", "dBµV", "Least level", 20, 120, {
          note: "EN 60728-1: 47 dBµV for satellite IF.",
          bounds: { atMost: { name: "drop_most", words: "the greatest level" } },
        }),
        number("drop_most", "Greatest level at the outlet", "dBµV", "Greatest level", 20, 120, {
          note: "EN 60728-1: 77 dBµV.",
          bounds: { atLeast: { name: "drop_least", words: "the least level" } },
        }),
      ],
    },
    {
      kind: "fields",
      heading: "Supply over the same cable; leave the load at 0 for none",
      fields: [
        number("drop_supply", "Supply", "V", "Volts at the supply", 1, 60, {
          note: "A receiver gives 13 V at rest (EN 50494, EN 50607: from memory).",
          required: WITH_LOAD,
        }),
        number("drop_load", "Load", "A", "Current of the load", 0, 10),
        number("drop_volts_least", "Least volts at the end", "V", "Least volts that the load needs", 1, 60, {
          note: "The maker's figure; near 10.5 V for head units fed by receivers (from memory).",
          required: WITH_LOAD,
        }),
      ],
    },
    {
      kind: "grid",
      heading: "The four corners",
      heads: ["low cold", "low hot", "high cold", "high hot"],
      rows: [
        {
          name: "drop_frequency",
          label: "Frequency",
          unit: "MHz",
          format: "integer",
          formulas: ["drop_low", "drop_low", "drop_high", "drop_high"],
        },
        {
          name: "drop_temperature",
          label: "Cable temperature",
          unit: "°C",
          format: "integer",
          formulas: ["drop_cold", "drop_hot", "drop_cold", "drop_hot"],
        },
        {
          name: "drop_in",
          label: "Level going in",
          unit: "dBµV",
          format: "one",
          formulas: ["drop_in_low", "drop_in_low", "drop_in_high", "drop_in_high"],
        },
      ],
    },
    {
      kind: "fields",
      heading: "What comes out, at the four corners",
      fields: [
        {
          name: "drop_split",
          label: "Loss of the splitter",
          unit: "dB",
          format: "one",
          formula: "RIG.SPLITLOSS(drop_ways,drop_excess)",
        },
        corners(
          "drop_loss",
          "Loss of the cable",
          "",
          "RIG.CABLELOSS(drop_cable,drop_length,drop_frequency,drop_temperature,drop_unit)",
        ),
        corners("drop_level", "Level at the outlet", "", "drop_in-drop_loss-drop_split-drop_plate"),
        corners("drop_verdict", "Verdict", "", "RIG.WINDOW(drop_level,drop_least,drop_most)"),
        {
          name: "drop_slope",
          label: "Slope, hot",
          unit: "dB",
          format: "one",
          formula: "INDEX(drop_level,1,2)-INDEX(drop_level,1,4)",
        },
        {
          name: "drop_ohms",
          label: "Loop resistance, hot",
          unit: "Ω",
          format: "two",
          formula: "RIG.LOOPOHMS(drop_cable,drop_length,drop_hot,drop_unit)",
        },
        {
          name: "drop_volts",
          label: "Volts at the end",
          unit: "V",
          format: "two",
          formula: "RIG.LOADVOLTS(drop_supply,drop_load,drop_ohms)",
        },
        {
          name: "drop_power",
          label: "Volts",
          formula: "RIG.WINDOW(drop_volts,drop_volts_least,drop_supply)",
          verdict: true,
        },
      ],
    },
    { kind: "words", heading: "Cable types", name: "cable_types", words: BUILT_IN_CABLES },
  ],
};

const checks = checksSheet([
  ...sheetEntryChecks([drop]),
  {
    what: "Least and greatest level outside 47 to 77 dBµV",
    limit: "none: EN 60728-1 for satellite IF with QPSK, 8PSK or APSK",
    found: '(drop_least<>"")*(drop_least<47)+(drop_most<>"")*(drop_most>77)',
    passes: "@=0",
    where: "Drop",
    places:
      'IF((drop_least<>"")*(drop_least<47),"; Least level at the outlet","")&IF((drop_most<>"")*(drop_most>77),"; Greatest level at the outlet","")',
  },
  {
    what: "Levels at the two ends of the band more than 15 dB apart",
    limit: "no: 15 dB between channels at one outlet (EN 60728-1, from memory)",
    found:
      "IFERROR((ABS(INDEX(drop_level,1,1)-INDEX(drop_level,1,3))>15)+(ABS(INDEX(drop_level,1,2)-INDEX(drop_level,1,4))>15),0)",
    passes: "@=0",
    where: "Slope",
  },
  {
    what: "Corners outside the window, or not found",
    limit: "none",
    found: '4-COUNTIF(drop_verdict,"ok")',
    passes: "@=0",
    where: "Verdict",
  },
  {
    what: "Short of volts at the end",
    limit: "no",
    found: '1-COUNTIF(drop_power,"ok")',
    passes: "@=0",
    where: "Volts",
  },
]);

export const singleDrop: WorkbookDefinition = {
  id: "single-drop",
  title: "Single-drop check",
  version: versionNow("single-drop"),
  sheets: [about, drop, checks],
};

export const singleDropStart: Filling = {
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
export const singleDropExample: Filling = {
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
