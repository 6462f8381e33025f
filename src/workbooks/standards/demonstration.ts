/**
 * Invented standards of an invented firm: the parts, rates and terms of the
 * demonstration jobs with what else such jobs want, at prices that nobody asks.
 * All its checks pass.
 */
import type { JobInputs } from "../definition";
import { apartmentBlock } from "../multiRoom/apartmentBlock";
import { guestHouse } from "../multiRoom/guestHouse";
import { inventedNumbers, inventedPayment, inventedWarranty } from "../multiRoom/inventedFirm";
import { standardExclusions } from "../multiRoom/startingPoint";
import { sheetDate } from "../sheetDate";
import { standardsStart } from "./start";

type Row = Readonly<Record<string, number | string>>;

const FIRST = "first supplier (demonstration)";
const SECOND = "second supplier (demonstration)";
const DATES = { priced: sheetDate(2026, 10, 1), until: sheetDate(2027, 3, 31) } as const;
const PRICED = { supplier: FIRST, ...DATES } as const;

/** Numbers in the first supplier's list, with what differs from the demonstration jobs. */
const LISTED: Readonly<Record<string, Row>> = {
  "indoor drop": { article: "K-110" },
  "outdoor drop": { article: "K-120" },
  trunk: { article: "K-210" },
  "2-way splitter": { article: "S-02" },
  "4-way splitter": { article: "S-04" },
  "6-way splitter": { article: "S-06" },
  "head unit, 8 bands": { article: "H-08" },
  "head unit, 16 bands": { article: "H-16" },
  "single outlet": { article: "W-01" },
  "outlet with radio": { article: "W-02" },
  "compression connector": { article: "F-06", pack: 100, price: 44 },
  "dish 0.9 m with mount": { article: "D-90" },
  "end resistor": { article: "E-75" },
  "cable clip": { article: "C-01" },
};

/** The rows of all demonstration jobs, each name once, from the first supplier. */
function ofTheJobs(list: string, priced = true): Row[] {
  const rows = [guestHouse, apartmentBlock].flatMap(({ blocks }) => blocks![list] ?? []);
  const byName = new Map(rows.map((row) => [String(row.name), row]));
  return [...byName.values()].map((row) => ({
    ...row,
    ...(priced && PRICED),
    ...LISTED[String(row.name)],
  }));
}

/** Diodes of a kind with little drop in each port. */
const STEERED = { power: "towards head unit", drop: 0.4, ohms: 0.1, amps: 1 } as const;

const passives: readonly Row[] = [
  ...ofTheJobs("passives"),
  {
    name: "3-way splitter",
    kind: "splitter",
    ways: 3,
    port_low: 6.3,
    port_high: 7.6,
    isolation: 24,
    ...STEERED,
    price: 9.6,
    ...PRICED,
    article: "S-03",
  },
  {
    name: "8-way splitter",
    kind: "splitter",
    ways: 8,
    port_low: 11.4,
    port_high: 13.9,
    isolation: 28,
    ...STEERED,
    price: 20.9,
    ...PRICED,
    article: "S-08",
  },
  ...(
    [
      [10, 10.5, 1.6, 2.6, "T-10"],
      [12, 12.6, 1.3, 2.1, "T-12"],
      [15, 15.6, 0.9, 1.6, "T-15"],
    ] as const
  ).map(([low, high, through_low, through_high, article]): Row => ({
    name: `tap ${low} dB, 1-way`,
    kind: "tap",
    ways: 1,
    port_low: low,
    port_high: high,
    through_low,
    through_high,
    isolation: 28,
    ...STEERED,
    price: 8.6,
    ...PRICED,
    article,
  })),
];

const supplies: readonly Row[] = [
  ...ofTheJobs("supplies"),
  {
    name: "inserter 24 V",
    volts: 24,
    amps: 1.5,
    stands: "in the line",
    loss_low: 0.6,
    loss_high: 1.2,
    price: 36,
    ...PRICED,
    article: "I-24",
  },
];

const fittings: readonly Row[] = [
  ...ofTheJobs("fittings"),
  { name: "connector for trunks", fixed: 0, pack: 20, price: 28, ...PRICED, article: "F-11" },
];

/** Prices of what is on Parts by the first supplier, and another's, one of them pinned. */
const offers: readonly Row[] = [
  { part: "indoor drop", supplier: FIRST, article: "K-110", unit: "m", pack: 100, pack_price: 38, ...DATES },
  {
    part: "indoor drop",
    supplier: SECOND,
    article: "2210",
    each: 0.41,
    unit: "m",
    pack: 250,
    pack_price: 102.5,
    ...DATES,
  },
  { part: "4-way splitter", supplier: FIRST, article: "S-04", each: 12.5, unit: "piece", ...DATES },
  { part: "4-way splitter", supplier: SECOND, article: "5104", each: 13.2, unit: "piece", ...DATES },
  { part: "single outlet", supplier: FIRST, article: "W-01", each: 6.4, ...DATES, pinned: "yes" },
  { part: "single outlet", supplier: SECOND, article: "7001", pack: 10, pack_price: 61, ...DATES },
  {
    part: "cable clip",
    supplier: FIRST,
    article: "C-01",
    each: 0.055,
    pack: 100,
    pack_price: 5.5,
    ...DATES,
  },
  {
    part: "cable clip",
    supplier: SECOND,
    article: "9310",
    pack: 500,
    pack_price: 22.5,
    priced: sheetDate(2026, 5, 2),
    until: sheetDate(2026, 9, 30),
  },
];

export const standardsExample: JobInputs = {
  fields: {
    ...standardsStart.fields,
    standards_firm: "Invented firm (demonstration)",
    standards_edition: 3,
    standards_date: sheetDate(2026, 11, 2),
    standards_days: 60,
    site_waste: 0.05,
    site_usual_cable: "indoor drop",
    site_usual_plate: "single outlet",
    site_usual_route: "ceiling void",
    site_closes: "end resistor",
    site_availability: 99.9,
    site_currency: "EUR",
    site_contingency: 0.03,
    site_overhead: 0.12,
    site_margin: 0.22,
    site_tax: 0.2,
    labour_rate: 58,
    crew_size: 2,
    crew_hours: 8,
    ...inventedNumbers,
  },
  blocks: {
    letterhead: [
      { line: "Invented firm (demonstration)" },
      { line: "1 Invented Street, Invented Town" },
      { line: "no telephone, no address of mail" },
    ],
    cables: ofTheJobs("cables"),
    passives,
    units: ofTheJobs("units"),
    supplies,
    plates: ofTheJobs("plates"),
    feeds: ofTheJobs("feeds"),
    plans: guestHouse.blocks!.plans!,
    resistors: ofTheJobs("resistors"),
    fittings,
    receivers: guestHouse.blocks!.receivers!,
    routes: ofTheJobs("routes", false),
    labour: ofTheJobs("labour", false),
    kinds: ofTheJobs("kinds", false),
    suppliers: [
      { name: FIRST, currency: "EUR", contact: "invented; ask at the counter" },
      { name: SECOND, contact: "invented" },
    ],
    offers,
    assumptions: [
      { text: "Ducts and ceiling voids are clear and may be used." },
      { text: "Receivers give their head unit 13 V at rest, and 0.4 A." },
      { text: "Rooms are free on the days agreed." },
    ],
    exclusions: standardExclusions,
    payment: inventedPayment,
    warranty: inventedWarranty,
    log: [
      { date: sheetDate(2026, 11, 2), who: "demonstration", what: "third edition", why: "prices of autumn" },
    ],
  },
};
