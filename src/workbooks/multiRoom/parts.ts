import type { Block, Column, InputRule, SheetDefinition } from "../definition";

const partName = (what: string, example: string): InputRule => ({ what, example, rule: { kind: "text" } });
/** A low and a high figure beside the likely one; both blank when the likely one is sure enough. */
const doubtful = (key: string, head: string): Column => ({
  key,
  head,
  unit: "min",
  width: 12,
  format: "integer",
  input: {
    what: "With the other figure: the least and the most that it may take; leave both blank if it is sure",
    rule: { kind: "number", min: 0, max: 10_000 },
  },
});

const decibels = (what: string, example: string, more: Partial<InputRule> = {}): InputRule => ({
  what,
  example,
  required: true,
  rule: { kind: "number", min: 0.1, max: 60 },
  ...more,
});
/** A splitter has no line that goes on. */
const OF_A_TAP: Partial<InputRule> = { required: '(passives_kind="tap")' };
const OF_A_PLATE: Partial<InputRule> = { zero: "note", rule: { kind: "number", min: 0, max: 60 } };
const count = (what: string): InputRule => ({
  what,
  example: "1",
  rule: { kind: "number", min: 0, max: 10_000 },
});

/** A price with where it comes from and how long it holds; `block` names the list, of which Materials counts what is bought. */
const priced = (block: string, per: string): Column[] => [
  {
    key: "price",
    head: `Price ${per}`,
    unit: "money",
    width: 12,
    format: "money",
    input: {
      what: `Price ${per}, without tax`,
      example: "42.50",
      required: true,
      zero: "reason",
      zeroWhere: `IFERROR(buy${block}_quantity>0,TRUE)`,
      rule: { kind: "number", min: 0, max: 1_000_000 },
    },
  },
  {
    key: "supplier",
    head: "Supplier",
    width: 14,
    input: { what: "Who quoted the price", rule: { kind: "text" } },
  },
  {
    key: "priced",
    head: "Priced on",
    width: 12,
    format: "date",
    input: { what: "The day of the price", example: "2026-10-01", rule: { kind: "date" } },
  },
  {
    key: "until",
    head: "Valid until",
    width: 12,
    format: "date",
    input: {
      what: "The last day on which the price holds",
      example: "2026-12-31",
      required: true,
      rule: { kind: "date" },
    },
  },
];

/** The names that CABLELOSS knows without a table. */
export const BUILT_IN_CABLES = ["series 59", "series 6", "series 7", "series 11"].flatMap((series) => [
  series,
  `${series}, copper`,
  `${series}, copper-clad steel`,
]);

/** With one of the three the others are wanted too: half a formula gives half a loss. */
const coefficient = (key: "k1" | "k2" | "k0", head: string, min = -1): Column => ({
  key,
  head,
  unit: "dB per 100 m",
  width: 12,
  format: "general",
  input: {
    what: "Loss per 100 m at 20 °C = k1·√f + k2·f + k0, f in MHz; leave all three blank to go by the type",
    required: `(${["k1", "k2", "k0"].map((one) => `(cables_${one}<>"")`).join("+")}>0)`,
    rule: { kind: "number", min, max: 10 },
  },
});

const cables: Block = {
  kind: "block",
  name: "cables",
  heading: "Cables",
  prepared: 6,
  columns: [
    {
      key: "name",
      head: "Cable",
      width: 34,
      input: partName("Your name for the cable, as used on the other sheets", "outdoor trunk"),
    },
    {
      key: "like",
      head: "Type",
      width: 26,
      input: {
        what: "The built-in type whose figures fill the blanks here",
        required: '(cables_k1="")',
        rule: { kind: "named", name: "cable_types" },
      },
    },
    coefficient("k1", "k1", 0.001),
    coefficient("k2", "k2"),
    coefficient("k0", "k0"),
    {
      key: "loop",
      head: "Loop resistance",
      unit: "Ω per 100 m",
      width: 12,
      format: "two",
      input: {
        what: "Centre and screen together at 20 °C; blank goes by the type, which is from memory and ±40 % for the screen: measure or ask the maker",
        rule: { kind: "number", min: 0.1, max: 500 },
      },
    },
    {
      key: "reel",
      head: "Reel",
      unit: "m or ft",
      width: 12,
      format: "integer",
      input: {
        what: "Length of a whole reel, in the unit that Site names",
        example: "100",
        required: true,
        rule: { kind: "number", min: 10, max: 10_000 },
      },
    },
    ...priced("cables", "per reel"),
    {
      key: "each",
      head: "Price per m or ft",
      unit: "money",
      width: 12,
      format: "three",
      formula: 'IF(cables_name="","",cables_price/cables_reel)',
    },
  ],
  groups: [{ name: "cables_table", from: "name", to: "loop" }],
};

const passives: Block = {
  kind: "block",
  name: "passives",
  heading: "Splitters and taps",
  prepared: 8,
  columns: [
    {
      key: "name",
      head: "Device",
      width: 34,
      input: partName("Your name for the splitter or tap", "4-way splitter"),
    },
    {
      key: "kind",
      head: "Kind",
      width: 26,
      input: {
        what: "A splitter, or a tap in a line that goes on",
        required: true,
        rule: { kind: "choice", choices: ["splitter", "tap"] },
      },
    },
    {
      key: "ways",
      head: "Ways",
      unit: "ports",
      width: 12,
      format: "integer",
      input: {
        what: "Ports for outlets or branches",
        example: "4",
        required: true,
        rule: { kind: "number", min: 1, max: 64, integer: true },
      },
    },
    {
      key: "port_low",
      head: "Loss to a port, low end",
      unit: "dB",
      format: "one",
      input: decibels("Loss from input to a port at the low end of the band", "7.5"),
    },
    {
      key: "port_high",
      head: "Loss to a port, high end",
      unit: "dB",
      format: "one",
      input: decibels("Loss from input to a port at the high end of the band", "9"),
    },
    {
      key: "through_low",
      head: "Loss through, low end",
      unit: "dB",
      format: "one",
      input: decibels(
        "A tap's loss to the next branch at the low end; blank for a splitter",
        "1.2",
        OF_A_TAP,
      ),
    },
    {
      key: "through_high",
      head: "Loss through, high end",
      unit: "dB",
      format: "one",
      input: decibels("A tap's loss to the next branch at the high end; blank for a splitter", "2", OF_A_TAP),
    },
    {
      key: "power",
      head: "Passes power",
      width: 12,
      input: {
        what: "Whether it passes direct current",
        required: true,
        rule: { kind: "choice", choices: ["no", "one port", "all ports"] },
      },
    },
    ...priced("passives", "each"),
    {
      key: "pass",
      head: "To the next branch",
      unit: "dB",
      format: "one",
      formula: 'IF(passives_name="","",IF(passives_through="",passives_port,passives_through))',
      across: [
        { key: "low", head: "low end" },
        { key: "high", head: "high end" },
      ],
    },
  ],
  groups: [
    { name: "passives_port", from: "port_low", to: "port_high" },
    { name: "passives_through", from: "through_low", to: "through_high" },
  ],
};

const units: Block = {
  kind: "block",
  name: "units",
  heading: "Head units",
  prepared: 4,
  columns: [
    {
      key: "name",
      head: "Head unit",
      width: 34,
      input: partName("Your name for this kind of head unit", "head unit, 8 bands"),
    },
    {
      key: "bands",
      head: "User bands",
      unit: "per cable",
      width: 26,
      format: "integer",
      input: {
        what: "User bands on its cable: at most 8 (EN 50494) or 32 (EN 50607)",
        example: "8",
        required: true,
        rule: { kind: "number", min: 1, max: 32, integer: true },
      },
    },
    {
      key: "out_low",
      head: "Output, low end",
      unit: "dBµV",
      width: 12,
      format: "one",
      input: {
        what: "Output level at the low end of the band",
        example: "84",
        required: true,
        rule: { kind: "number", min: 40, max: 120 },
      },
    },
    {
      key: "out_high",
      head: "Output, high end",
      unit: "dBµV",
      width: 12,
      format: "one",
      input: {
        what: "Output level at the high end of the band",
        example: "82",
        required: true,
        rule: { kind: "number", min: 40, max: 120 },
      },
    },
    {
      key: "least",
      head: "Least supply",
      unit: "V",
      width: 12,
      format: "one",
      input: {
        what: "Least volts at its own connector, of its maker; near 10.5 V for kinds fed by receivers (EN 50494, EN 50607: from memory)",
        example: "10.5",
        required: true,
        rule: { kind: "number", min: 5, max: 60 },
      },
    },
    {
      key: "load",
      head: "Load",
      unit: "A or W",
      width: 12,
      format: "two",
      input: {
        what: "What it draws: amperes or watts",
        example: "0.35",
        required: true,
        rule: { kind: "number", min: 0.01, max: 100 },
      },
    },
    {
      key: "kind",
      head: "Load is in",
      width: 12,
      input: {
        what: "A for a constant current, W for a constant power",
        required: true,
        rule: { kind: "choice", choices: ["A", "W"] },
      },
    },
    ...priced("units", "each"),
  ],
  groups: [{ name: "units_out", from: "out_low", to: "out_high" }],
};

/** Who brings a source of volts. */
const PROVIDERS = ["this job", "a receiver"] as const;

const supplies: Block = {
  kind: "block",
  name: "supplies",
  heading: "Power supplies and inserters",
  prepared: 4,
  columns: [
    {
      key: "name",
      head: "Supply",
      width: 34,
      input: partName("Your name for the supply, the inserter, or the receiver that feeds", "receiver, 13 V"),
    },
    {
      key: "volts",
      head: "Volts",
      unit: "V",
      width: 26,
      format: "one",
      input: {
        what: "Volts at its output; a receiver gives 13 V at rest (EN 50494, EN 50607: from memory)",
        example: "13",
        required: true,
        rule: { kind: "number", min: 1, max: 60 },
      },
    },
    {
      key: "amps",
      head: "Greatest current",
      unit: "A",
      width: 12,
      format: "two",
      input: {
        what: "The greatest current that it gives; receivers give 0.35 to 0.5 A (from memory)",
        example: "0.4",
        required: true,
        rule: { kind: "number", min: 0.01, max: 20 },
      },
    },
    {
      key: "by",
      head: "Provided by",
      width: 12,
      input: {
        what: "A receiver is there already and is not bought; blank is bought with this job",
        rule: { kind: "choice", choices: [...PROVIDERS] },
      },
    },
    ...priced("supplies", "each"),
  ],
};

const plates: Block = {
  kind: "block",
  name: "plates",
  heading: "Outlets",
  prepared: 4,
  columns: [
    {
      key: "name",
      head: "Wall plate",
      width: 34,
      input: partName("Your name for the outlet's plate", "single outlet"),
    },
    {
      key: "loss_low",
      head: "Loss, low end",
      unit: "dB",
      width: 26,
      format: "one",
      input: decibels("Loss of the plate at the low end of the band", "0.8", OF_A_PLATE),
    },
    {
      key: "loss_high",
      head: "Loss, high end",
      unit: "dB",
      width: 12,
      format: "one",
      input: decibels("Loss of the plate at the high end of the band", "1.5", OF_A_PLATE),
    },
    ...priced("plates", "each"),
  ],
  groups: [{ name: "plates_loss", from: "loss_low", to: "loss_high" }],
};

const fittings: Block = {
  kind: "block",
  name: "fittings",
  heading: "Fittings and sundries",
  prepared: 10,
  columns: [
    { key: "name", head: "Part", width: 34, input: partName("The part", "compression connector") },
    {
      key: "per_outlet",
      head: "Per outlet",
      unit: "pieces",
      width: 26,
      format: "general",
      input: count("Pieces for each outlet"),
    },
    {
      key: "per_branch",
      head: "Per splitter or tap",
      unit: "pieces",
      width: 12,
      format: "general",
      input: count("Pieces for each splitter or tap"),
    },
    {
      key: "per_head",
      head: "Per head unit",
      unit: "pieces",
      width: 12,
      format: "general",
      input: count("Pieces for each head unit"),
    },
    {
      key: "fixed",
      head: "For the job",
      unit: "pieces",
      width: 12,
      format: "general",
      input: count("Pieces once for the job"),
    },
    {
      key: "pack",
      head: "In a pack",
      unit: "pieces",
      width: 12,
      format: "integer",
      input: {
        what: "Pieces in the smallest pack that can be bought",
        example: "50",
        required: true,
        rule: { kind: "number", min: 1, max: 100_000 },
      },
    },
    ...priced("fittings", "per pack"),
  ],
};

const receivers: Block = {
  kind: "block",
  name: "receivers",
  heading: "Receivers",
  prepared: 5,
  columns: [
    {
      key: "kind",
      head: "Kind",
      width: 34,
      input: partName(
        "A kind of receiver; plain receivers and recorders are known already",
        "recorder, 4 tuners",
      ),
    },
    {
      key: "tuners",
      head: "Tuners",
      width: 26,
      format: "integer",
      input: {
        what: "Tuners that it uses at once: a user band each",
        example: "4",
        required: true,
        rule: { kind: "number", min: 0, max: 32, integer: true },
      },
    },
  ],
  groups: [{ name: "receivers_table", from: "kind", to: "tuners" }],
};

const labour: Block = {
  kind: "block",
  name: "labour",
  heading: "Labour units",
  prepared: 10,
  columns: [
    {
      key: "name",
      head: "Work",
      width: 34,
      input: partName("The kind of work", "run and terminate a cable"),
    },
    {
      key: "minutes",
      head: "Minutes each",
      unit: "min",
      width: 26,
      format: "integer",
      input: {
        what: "Crew minutes for one, in normal conditions",
        example: "35",
        required: true,
        zero: "reason",
        zeroWhere: "IFERROR(work_quantity>0,TRUE)",
        rule: { kind: "number", min: 0, max: 10_000 },
      },
    },
    {
      key: "per_outlet",
      head: "Per outlet",
      width: 12,
      format: "general",
      input: count("How often for each outlet"),
    },
    {
      key: "per_branch",
      head: "Per splitter or tap",
      width: 12,
      format: "general",
      input: count("How often for each splitter or tap"),
    },
    {
      key: "per_head",
      head: "Per head unit",
      width: 12,
      format: "general",
      input: count("How often for each head unit"),
    },
    {
      key: "fixed",
      head: "For the job",
      width: 12,
      format: "general",
      input: count("How often once for the job"),
    },
    doubtful("low", "At least"),
    doubtful("high", "At most"),
    {
      key: "difficulty",
      head: "Difficulty",
      unit: "factor",
      width: 12,
      format: "two",
      input: {
        what: "1 in normal conditions; more for height, attic, masonry or occupied rooms",
        example: "1.2",
        required: true,
        rule: { kind: "number", min: 0.5, max: 10 },
      },
    },
  ],
};

const kinds: Block = {
  kind: "block",
  name: "kinds",
  heading: "Kinds of room, for the price of each kind",
  prepared: 5,
  columns: [
    {
      key: "name",
      head: "Room kind",
      width: 34,
      input: partName("A kind of room that Rooms may name", "guest room"),
    },
  ],
};

export const parts: SheetDefinition = {
  name: "Parts",
  kind: "parts",
  intro: "Your parts, prices and labour units. Every name used on the other sheets stands here once.",
  print: { orientation: "landscape" },
  parts: [
    cables,
    passives,
    units,
    supplies,
    plates,
    fittings,
    receivers,
    labour,
    kinds,
    {
      kind: "fields",
      heading: "Crew",
      fields: [
        {
          name: "labour_rate",
          label: "Crew rate",
          unit: "per hour",
          format: "money",
          input: {
            what: "What an hour of the crew costs you",
            example: "60",
            required: true,
            rule: { kind: "number", min: 1, max: 10_000 },
          },
        },
      ],
    },
    {
      kind: "words",
      heading: "Cable types that are built in (from memory of the usual tables; ±5 % beyond 1000 MHz)",
      name: "cable_types",
      words: BUILT_IN_CABLES,
    },
  ],
};
