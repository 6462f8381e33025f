/** Thresholds of figures in another unit, far beyond what is usual, or far from their neighbours. */
import type { Book } from "../../../src/workbooks/book";
import { filledCells } from "../../../src/review/namedCells";
import { valueAt, type Changes, type Pair } from "./pair";

const U1 = ["F-01", "F-02", "F-03", "F-04", "F-05", "F-06"];
const outlets = (book: Book): string[] => filledCells(book, "rooms_outlet").map(({ value }) => String(value));
const runs = (names: readonly string[], of: (name: string) => number): Changes =>
  Object.fromEntries(names.map((name) => [`rooms_run of ${name}`, of(name)]));
const times =
  (factor: number): Pair["inside"] =>
  (book) =>
    runs(U1, (name) => Math.round(valueAt(book, `rooms_run of ${name}`) * factor * 10) / 10);

/** A usual bound that the rule itself states (common practice, no source). */
const usual = (name: string, inside: number, beyond: number, more: Partial<Pair> = {}): Pair => ({
  rule: "unlikely amount",
  limit: `${name}: ${inside} is usual (the rule's own bound), ${beyond} is not`,
  inside: { [name]: inside },
  beyond: { [name]: beyond },
  at: name,
  ...more,
});
const step = (
  rule: string,
  limit: string,
  name: string,
  inside: number,
  beyond: number,
  more: Partial<Pair> = {},
): Pair => ({
  rule,
  limit,
  inside: { [name]: inside },
  beyond: { [name]: beyond },
  at: name,
  ...more,
});
const FAR = "far from neighbours";

/** The rate of an hour with which labour makes such a share of the direct cost: it grows with its rate, all else stays. */
function rateOfShare(book: Book, share: number): number {
  const [labour, direct, rate] = ["price_labour", "price_direct", "labour_rate"].map((name) =>
    valueAt(book, name),
  );
  return (rate! * (share / (1 - share)) * (direct! - labour!)) / labour!;
}

export const unitPairs: readonly Pair[] = [
  {
    rule: "unit slip",
    limit: "3.28 feet are a metre; half as long again is no unit",
    inside: times(1.5),
    beyond: times(3.2808),
    at: "rooms_run of F-01",
  },
  {
    rule: "unit slip",
    limit: "a branch's runs twice as long as the others', as the rule says",
    given: (book) => runs(outlets(book), () => 10),
    inside: runs(U1, () => 19.9),
    beyond: runs(U1, () => 20),
    at: "rooms_run of F-01",
  },
  {
    rule: "unit slip",
    limit: "950 MHz; 0.95 is the same in GHz",
    inside: { site_low: 900 },
    beyond: { site_low: 0.95 },
    at: "site_low",
  },
  step(
    "unit slip",
    "no cable of the trade carries less than 100 MHz to an outlet (the rule's own bound)",
    "site_low",
    100,
    99.9,
  ),
  {
    rule: "unit slip",
    limit: "a level of 92 dBµV is 32 dBmV",
    inside: { "units_out_low of head unit, 16 bands": 90 },
    beyond: { "units_out_low of head unit, 16 bands": 32 },
    at: "units_out_low of head unit, 16 bands",
  },
  step("unit slip", "dBmV are dBµV less 60", "units_out_low of head unit, 16 bands", 60, 59.9),
  {
    rule: "unit slip",
    limit: "a price in cents is a hundred times that in money; twice the price is a price",
    inside: { "plates_price of single outlet": 12.8 },
    beyond: { "plates_price of single outlet": 640 },
    at: "plates_price of single outlet",
  },
  step(
    "unit slip",
    "fifteen times its neighbour's 6.40 is 96 (the rule's own bound)",
    "plates_price of outlet with radio",
    95.9,
    96,
    { results: true },
  ),
  {
    rule: "unit slip",
    limit: "an hour costs no more than two head units of 131 where labour then makes over 80 % of the cost",
    inside: (book) => ({ labour_rate: Math.max(2 * 131, rateOfShare(book, 0.8) - 0.01) }),
    beyond: (book) => ({ labour_rate: Math.max(2 * 131, rateOfShare(book, 0.8)) + 0.01 }),
    at: "labour_rate",
  },
  {
    rule: "unit slip",
    limit: "nor less than a tenth of one where labour then makes under 20 %",
    inside: (book) => ({ labour_rate: Math.min(13.11, rateOfShare(book, 0.2) + 0.01) }),
    beyond: (book) => ({ labour_rate: Math.min(13.1, rateOfShare(book, 0.2)) - 0.01 }),
    at: "labour_rate",
  },
  {
    rule: "unlikely amount",
    limit: "EN 60728-1: 47 dBµV is the least level",
    inside: { site_level_low: 47 },
    beyond: { site_level_low: 46.9 },
    at: "site_level_low",
  },
  {
    rule: "unlikely amount",
    limit: "EN 60728-1: 77 dBµV is the greatest level",
    inside: { site_level_high: 77 },
    beyond: { site_level_high: 77.1 },
    at: "site_level_high",
  },
  {
    rule: "unlikely amount",
    limit: "ten receivers at one outlet; two may stand there",
    inside: { "rooms_quantity of G-01": 2 },
    beyond: { "rooms_quantity of G-01": 10 },
    at: "rooms_quantity of G-01",
  },
  usual("site_tax", 0.3, 0.3001),
  usual("site_contingency", 0.25, 0.2501),
  usual("site_overhead", 0.6, 0.6001),
  usual("site_margin", 0.6, 0.6001),
  usual("site_waste", 0.25, 0.2501),
  usual("site_slack", 10, 10.1),
  // 10 m · 3.2808 ft; 25 m · 3.2808 ft = 82.02 ft.
  usual("site_slack", 32.8, 32.9, { given: { site_unit: "ft" }, limit: "slack: 10 m are 32.8 ft" }),
  usual("cables_reel of thin drop", 25, 24.9),
  usual("cables_reel of thin drop", 82.1, 82, {
    given: {
      site_unit: "ft",
    },
    limit: "a reel: 25 m are 82.02 ft",
  }),
  usual("rooms_quantity of G-01", 4, 5),
  usual("labour_difficulty of fit a head unit", 3, 3.01),
  usual("labour_difficulty of fit a head unit", 0.5, 0.49),
  usual("supplies_amps of supply for the higher voltage", 10, 10.01),
  {
    rule: "unlikely amount",
    limit: "an option is counted in wholes",
    inside: { "options_quantity of second outlet in the lounge": 2 },
    beyond: { "options_quantity of second outlet in the lounge": 2.5 },
    at: "options_quantity of second outlet in the lounge",
  },
  {
    rule: "unlikely amount",
    limit:
      "50 pieces in packs of one that make a quarter of the bill were priced by the pack (the rule's own bound)",
    inside: { "fittings_fixed of dish 0.9 m with mount": 49 },
    beyond: { "fittings_fixed of dish 0.9 m with mount": 50 },
    at: "fittings_pack of dish 0.9 m with mount",
  },
  {
    rule: FAR,
    limit: "runs of 8 to 28 m: 30 is one of them, 185 was 18.5",
    inside: { "rooms_run of G-06": 30 },
    beyond: { "rooms_run of G-06": 185 },
    at: "rooms_run of G-06",
  },
  step(
    FAR,
    "among runs of 10 m: 3.5 deviations of at least a quarter, on a scale of ratios, are 10·e^0.875 = 23.99 m (the rule's own bound)",
    "rooms_run of G-06",
    23.9,
    24,
    { given: (book) => runs(outlets(book), () => 10) },
  ),
  step(FAR, "nothing is run over less than 0.5 m (the rule's own bound)", "rooms_run of G-06", 0.5, 0.4),
  step(FAR, "0.5 m are 1.64 ft", "rooms_run of G-06", 1.7, 1.6, { given: { site_unit: "ft" } }),
  step(FAR, "the same of trunks", "branches_length of G2", 23.9, 24, {
    given: Object.fromEntries(
      ["G0", "G1", "G2", "U0", "U1", "U2", "A1", "A2"].map((id) => [`branches_length of ${id}`, 10]),
    ),
  }),
  ...(
    [
      ["dearer", 31.9, 32.1],
      ["cheaper", 2.1, 1.9],
    ] as const
  ).map(([word, inside, beyond]) =>
    step(
      FAR,
      `four times ${word} than devices at 4 a way: 8 for two ways (the rule's own bound)`,
      "passives_price of tap 12 dB",
      inside,
      beyond,
      {
        given: {
          "passives_price of 2-way splitter": 8,
          "passives_price of 4-way splitter": 16,
          "passives_price of 6-way splitter": 24,
        },
      },
    ),
  ),
  ...(
    [
      ["ten times the others' 1 a metre", 1499, 1500],
      ["a tenth of it", 15.1, 15],
    ] as const
  ).map(([word, inside, beyond]) =>
    step(FAR, `a reel of 150 m at ${word} (the rule's own bound)`, "cables_price of trunk", inside, beyond, {
      given: {
        "cables_price of indoor drop": 100,
        "cables_price of outdoor drop": 100,
        "cables_price of trunk, steel centre": 150,
        "cables_price of thin drop": 100,
      },
    }),
  ),
  {
    rule: FAR,
    limit: "a part twice the size at the same price, to the cent",
    inside: { "units_price of head unit, 16 bands": 96.01 },
    beyond: { "units_price of head unit, 16 bands": 96 },
    at: "units_price of head unit, 16 bands",
  },
  {
    rule: FAR,
    limit: "12 bands may cost what 8 cost, 16 may not: twice the size",
    inside: { "units_price of head unit, higher voltage": 96 },
    beyond: { "units_price of head unit, 16 bands": 96 },
    at: "units_price of head unit, 16 bands",
  },
  ...(
    [
      ["under", 80.1, 80],
      ["over", 104.9, 105],
    ] as const
  ).map(([word, inside, beyond]) =>
    step(
      FAR,
      `12 dB ${word} the middle of all head units' levels: 92 dBµV, 93 with one over it (the rule's own bound)`,
      "units_out_high of head unit, higher voltage",
      inside,
      beyond,
    ),
  ),
];
