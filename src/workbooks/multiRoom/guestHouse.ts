/**
 * The demonstration job: an invented guest house of 24 outlets on two floors
 * and in an annexe, with two orbital slots and three head units. Everything in
 * it is made up: site, customer, parts, prices, minutes. Two things are wrong on
 * purpose, so that the checks have something to say: the farthest annexe room
 * hangs on a thin cable and gets too little at the high end in heat, and the
 * annexe's head unit falls short of volts until its trunk with the steel centre
 * is changed for the copper one. A steel centre in place of the thin cable would
 * mend the level and starve the head unit.
 *
 * The house hangs on one dish: its two feeds go to two switches in a cabinet
 * under the roof, one behind the other, which a mains pack feeds together with
 * the feeds. The annexe has no mains socket to spare: the feed of its own dish is
 * its head unit, and the receivers feed it and a line amplifier over their cable
 * with 13 V at rest, at most 0.4 A; 10.5 V or more must come to the head unit
 * (EN 50494, from memory), with whichever receiver is on alone. Its dish is on the
 * main roof too, for trees stand before it.
 */
import type { JobInputs } from "../definition";
import { sheetDate } from "../sheetDate";
import { usualCauses } from "./causes";
import { inventedNumbers, inventedPayment, inventedWarranty } from "./inventedFirm";
import { standardExclusions } from "./startingPoint";

type Row = Readonly<Record<string, number | string>>;

const PRICED = {
  supplier: "demonstration",
  priced: sheetDate(2026, 10, 1),
  until: sheetDate(2027, 3, 31),
} as const;

const cables: readonly Row[] = [
  { name: "indoor drop", like: "series 6, copper-clad steel", reel: 100, price: 38, ...PRICED },
  { name: "outdoor drop", like: "series 6, copper", reel: 100, price: 74, ...PRICED },
  { name: "trunk", like: "series 11, copper", reel: 150, price: 265, ...PRICED },
  { name: "trunk, steel centre", like: "series 11, copper-clad steel", reel: 150, price: 168, ...PRICED },
  { name: "thin drop", like: "series 59, copper", reel: 100, price: 29, ...PRICED },
];

/** Diodes of a kind with little drop in each port. */
const STEERED = { power: "towards head unit", drop: 0.4, ohms: 0.1, amps: 1 } as const;

const passives: readonly Row[] = [
  {
    name: "2-way splitter",
    kind: "splitter",
    ways: 2,
    port_low: 4.2,
    port_high: 5.4,
    isolation: 24,
    ...STEERED,
    price: 7.9,
    ...PRICED,
  },
  {
    name: "4-way splitter",
    kind: "splitter",
    ways: 4,
    port_low: 7.8,
    port_high: 9.4,
    isolation: 26,
    ...STEERED,
    price: 12.5,
    ...PRICED,
  },
  {
    name: "6-way splitter",
    kind: "splitter",
    ways: 6,
    port_low: 9.9,
    port_high: 12.1,
    isolation: 28,
    ...STEERED,
    price: 17.8,
    ...PRICED,
  },
  {
    name: "tap 12 dB",
    kind: "tap",
    ways: 2,
    port_low: 12,
    port_high: 12.6,
    through_low: 1.3,
    through_high: 2.1,
    isolation: 28,
    ...STEERED,
    price: 9.4,
    ...PRICED,
  },
  {
    name: "line amplifier",
    kind: "amplifier",
    ways: 1,
    power: "all ports",
    ohms: 0.2,
    amps: 1,
    gain_low: 8,
    gain_high: 12,
    noise: 6,
    most_output: 106,
    load: 0.04,
    least: 10,
    price: 34,
    ...PRICED,
  },
];

const units: readonly Row[] = [
  {
    name: "head unit, 16 bands",
    bands: 16,
    out_low: 92,
    out_high: 90,
    least: 14,
    load: 0.3,
    kind: "A",
    sits: "fed",
    standard: "EN 50607",
    plan: "16 bands",
    noise: 8,
    slots: 2,
    feeders: 2,
    in_low: 55,
    in_high: 95,
    onward_low: 2,
    onward_high: 3.5,
    sense: 0.015,
    powers_feed: "yes",
    aiming: "read the meter on a feeder, before the switch",
    price: 148,
    ...PRICED,
  },
  {
    name: "head unit, 8 bands",
    bands: 8,
    out_low: 86,
    out_high: 84,
    least: 10.5,
    load: 3,
    kind: "W",
    sits: "on the dish",
    standard: "EN 50494",
    plan: "8 bands",
    noise: 0.7,
    slots: 2,
    aiming: "passes its first slot until a receiver commands",
    price: 96,
    ...PRICED,
  },
  {
    name: "head unit, higher voltage",
    bands: 12,
    out_low: 94,
    out_high: 92,
    least: 20,
    load: 6.5,
    kind: "W",
    sits: "on the dish",
    standard: "maker's own",
    pass_block: "yes",
    outputs: 2,
    noise: 0.8,
    drop: 0.4,
    aiming: "its own port for setting up",
    price: 131,
    ...PRICED,
  },
];

const feeds: readonly Row[] = [
  {
    name: "wideband feed",
    outputs: 2,
    gain: 52,
    noise: 0.9,
    if_low: 290,
    if_high: 2340,
    load: 0.16,
    least: 11,
    price: 31,
    ...PRICED,
  },
];

const supplies: readonly Row[] = [
  { name: "mains pack 18 V", volts: 18, amps: 1.5, stands: "at the head unit", price: 39, ...PRICED },
  {
    name: "supply for the higher voltage",
    volts: 24,
    amps: 1,
    stands: "in the line",
    loss_low: 0.6,
    loss_high: 1.2,
    price: 44,
    ...PRICED,
  },
];

const plates: readonly Row[] = [
  { name: "single outlet", loss_low: 0.7, loss_high: 1.4, ohms: 0.05, price: 6.4, ...PRICED },
  { name: "outlet with radio", loss_low: 1.6, loss_high: 2.6, ohms: 0.05, price: 11.2, ...PRICED },
  {
    name: "loop-through outlet",
    loss_low: 6.5,
    loss_high: 7.4,
    through_low: 2.2,
    through_high: 3.1,
    isolation: 28,
    ...STEERED,
    price: 13.6,
    ...PRICED,
  },
];

const resistors: readonly Row[] = [{ name: "end resistor", blocks: "yes", price: 1.3, ...PRICED }];

/** Bands at even steps; their centres are each kind's own, no standard fixes them. */
const plan = (name: string, bands: number, first: number, step: number, width: number): readonly Row[] =>
  Array.from({ length: bands }, (_, index) => ({
    plan: name,
    band: index + 1,
    centre: first + index * step,
    width,
    standard: index < BANDS_OF_EN_50494 ? "EN 50494" : "EN 50607",
  }));
/** On one cable at most, by EN 50494. */
const BANDS_OF_EN_50494 = 8;

const plans: readonly Row[] = [...plan("8 bands", 8, 1020, 140, 46), ...plan("16 bands", 16, 990, 75, 46)];

const fittings: readonly Row[] = [
  { name: "compression connector", piece: "connector", pack: 50, price: 36, ...PRICED },
  { name: "grounding block", piece: "grounding block", pack: 1, price: 7.2, ...PRICED },
  { name: "receiver lead", piece: "receiver lead", pack: 1, price: 3.1, ...PRICED },
  { name: "dish 0.9 m with mount", pack: 1, price: 189, ...PRICED },
  { name: "dish 1.1 m with mount", pack: 1, price: 264, ...PRICED },
  { name: "cable clip", per_outlet: 25, per_branch: 10, per_head: 40, pack: 100, price: 5.5, ...PRICED },
  {
    name: "bonding bar and conductor set",
    piece: "dish bonding conductor",
    fixed: 1,
    pack: 1,
    price: 58,
    ...PRICED,
  },
  { name: "weather cabinet", fixed: 1, pack: 1, price: 112, ...PRICED },
];

const receivers: readonly Row[] = [
  { kind: "recorder, 2 tuners", tuners: 2, standard: "EN 50607" },
  { kind: "recorder, 4 tuners", tuners: 4, standard: "EN 50607" },
];

const routes: readonly Row[] = [
  { name: "ceiling void", minutes: 2.2, low: 1.8, high: 3.4, difficulty: 1.1 },
  { name: "surface clips", minutes: 4 },
  { name: "riser", minutes: 2 },
  { name: "existing duct", minutes: 1.5, low: 1.2, high: 2.6 },
  { name: "outside wall", minutes: 6, difficulty: 1.3 },
];

const labour: readonly Row[] = [
  {
    name: "mount and align the dish",
    minutes: 150,
    low: 120,
    high: 240,
    piece: "dish",
    difficulty: 1.3,
  },
  {
    name: "set a further slot on a dish",
    minutes: 45,
    piece: "further slot on a dish",
    difficulty: 1.3,
  },
  { name: "fit a feed", minutes: 10, piece: "feed", difficulty: 1.3 },
  { name: "fit a head unit", minutes: 50, piece: "head unit on a dish", difficulty: 1.1 },
  { name: "fit a switch", minutes: 35, piece: "switch", difficulty: 1.1 },
  { name: "fit a power supply", minutes: 15, piece: "supply", difficulty: 1 },
  { name: "fit a splitter", minutes: 12, piece: "splitter", difficulty: 1 },
  { name: "fit a tap", minutes: 12, piece: "tap", difficulty: 1 },
  { name: "fit an amplifier", minutes: 20, piece: "amplifier", difficulty: 1 },
  {
    name: "terminate a cable end",
    minutes: 4,
    low: 3,
    high: 6,
    piece: "connector",
    difficulty: 1.15,
  },
  { name: "fit a wall plate", minutes: 10, piece: "wall plate", difficulty: 1.15 },
  { name: "fit a grounding block", minutes: 6, piece: "grounding block", difficulty: 1.1 },
  { name: "close a port", minutes: 1, piece: "end resistor", difficulty: 1 },
  { name: "measure and record an outlet", minutes: 6, piece: "outlet to measure", difficulty: 1 },
  {
    name: "bonding, by a licensed electrician",
    minutes: 80,
    piece: "dish bonding conductor",
    difficulty: 1,
  },
  { name: "set up on a floor", minutes: 15, piece: "floor", difficulty: 1 },
  { name: "set up the job and clear away", minutes: 60, fixed: 1, difficulty: 1 },
];

const dishes: readonly Row[] = [
  {
    name: "D1",
    size: 1.1,
    feed: "wideband feed",
    off_focus: 1.5,
    part: "dish 1.1 m with mount",
    location: "main roof, west gable",
    mounting: "mast 60 mm",
    height: 8.5,
  },
  {
    name: "D2",
    off_focus: 1.5,
    part: "dish 0.9 m with mount",
    location: "main roof, east gable",
    mounting: "mast 48 mm",
    height: 8,
  },
];

const feeders: readonly Row[] = [
  { from: "D1", to: "H1", cable: "outdoor drop", length: 7, route: "outside wall" },
  { from: "H1", to: "H2", cable: "outdoor drop", length: 1.5, route: "surface clips" },
];

const heads: readonly Row[] = [
  { id: "H1", type: "head unit, 16 bands", cable: "trunk", length: 20, route: "riser" },
  {
    id: "H2",
    type: "head unit, 16 bands",
    supply: "mains pack 18 V",
    cable: "trunk",
    length: 16,
    route: "riser",
  },
  {
    id: "H3",
    type: "head unit, 8 bands",
    dish: "D2",
    cable: "trunk, steel centre",
    length: 54,
    route: "existing duct",
  },
];

const branches: readonly Row[] = [
  { id: "G0", from: "H1", device: "2-way splitter" },
  { id: "G1", from: "G0", device: "4-way splitter", cable: "outdoor drop", length: 9 },
  { id: "G2", from: "G0", device: "4-way splitter", cable: "outdoor drop", length: 14 },
  { id: "U0", from: "H2", device: "2-way splitter" },
  { id: "U1", from: "U0", device: "6-way splitter", cable: "outdoor drop", length: 8 },
  { id: "U2", from: "U0", device: "4-way splitter", cable: "outdoor drop", length: 16 },
  { id: "A0", from: "H3", device: "line amplifier" },
  { id: "A1", from: "A0", device: "tap 12 dB", cable: "outdoor drop", length: 4 },
  { id: "A2", from: "A1", device: "6-way splitter", port: "through", cable: "outdoor drop", length: 5 },
];

/** Cable, plate and route are Site's usual ones where an outlet has none of its own. */
const outlet = (
  floor: string,
  room: string,
  name: string,
  receiver: string,
  from: string,
  run: number,
  more: Row = {},
): Row => ({
  floor,
  room,
  outlet: name,
  ...(receiver && { receiver, quantity: 1 }),
  from,
  run,
  kind: kindOf(room),
  ...more,
});

const kindOf = (room: string): string =>
  room.startsWith("flat") ? "flat" : /room \d|suite/.test(room) ? "guest room" : "common room";

const ONE = "receiver";
const TWO = "recorder, 2 tuners";
const SPARE = "";

/** The survey, outlet by outlet. */
const guestHouseRooms: readonly Row[] = [
  outlet("ground", "reception", "G-01", ONE, "G1", 9.5),
  outlet("ground", "breakfast room", "G-02", TWO, "G1", 16),
  outlet("ground", "lounge", "G-03", TWO, "G1", 12.5, { plate: "outlet with radio" }),
  outlet("ground", "office", "G-04", SPARE, "G1", 11, { note: "spare, for a desk that comes later" }),
  outlet("ground", "room 1", "G-05", ONE, "G2", 14),
  outlet("ground", "room 2", "G-06", ONE, "G2", 18.5),
  outlet("ground", "room 3", "G-07", ONE, "G2", 21),
  outlet("ground", "room 4", "G-08", ONE, "G2", 26.5),
  outlet("first", "room 5", "F-01", ONE, "U1", 8),
  outlet("first", "room 6", "F-02", ONE, "U1", 11.5),
  outlet("first", "room 7", "F-03", ONE, "U1", 13),
  outlet("first", "room 8", "F-04", ONE, "U1", 17),
  outlet("first", "room 9", "F-05", ONE, "U1", 19.5),
  outlet("first", "suite, bedroom", "F-06", TWO, "U2", 12, { plate: "loop-through outlet" }),
  outlet("first", "suite, parlour", "F-07", TWO, "F-06", 7, { plate: "outlet with radio" }),
  outlet("first", "room 10", "F-08", ONE, "U2", 20),
  outlet("first", "room 11", "F-09", ONE, "U2", 24),
  outlet("annexe", "room 12", "A-01", ONE, "A1", 7),
  outlet("annexe", "room 13", "A-02", ONE, "A2", 10),
  outlet("annexe", "room 14", "A-03", ONE, "A2", 15.5),
  outlet("annexe", "room 15", "A-04", ONE, "A2", 19),
  outlet("annexe", "room 16", "A-05", ONE, "A2", 23.5),
  outlet("annexe", "flat, kitchen", "A-06", ONE, "A2", 28),
  outlet("annexe", "flat, bedroom", "A-07", TWO, "A2", 46, {
    cable: "thin drop",
    note: "old thin cable in the wall",
  }),
];

/** Of outlets whose way is no usual one, or not settled, and of what is installed already. */
const details: Readonly<Record<string, Row>> = {
  // Its recorder stands there already, set to these two.
  "G-03": { kept: "9 10" },
  "G-04": { route: "surface clips" },
  "F-07": { route: "surface clips" },
  "A-06": { shortest: 25, longest: 36 },
  "A-07": { route: "existing duct" },
};

export const guestHouse: JobInputs = {
  fields: {
    site_job: "Guest house, 24 outlets (demonstration)",
    site_customer: "Invented customer (demonstration)",
    site_place: "Invented address (demonstration)",
    site_prepared_by: "demonstration",
    site_quote: "D-24",
    site_revision: 1,
    site_date: sheetDate(2026, 11, 2),
    site_until: sheetDate(2026, 12, 31),
    site_latitude: 39.5,
    site_longitude: -98.25,
    site_height: 420,
    site_clearance: 3,
    site_dish: 0.9,
    site_unit: "m",
    site_slack: 2,
    site_waste: 0.05,
    site_run_tolerance: 0.1,
    site_usual_cable: "indoor drop",
    site_usual_plate: "single outlet",
    site_usual_route: "ceiling void",
    site_closes: "end resistor",
    site_availability: 99.9,
    site_rain_rate: 42,
    site_rain_height: 3.6,
    site_low: 950,
    site_high: 2150,
    site_cold: -15,
    site_hot: 55,
    site_level_low: 47,
    site_level_high: 77,
    site_level_design: 53,
    site_currency: "demonstration money",
    site_contingency: 0.03,
    site_overhead: 0.12,
    site_margin: 0.22,
    site_tax: 0.2,
    site_tax_on: "materials and labour",
    site_rounding: "half away",
    labour_rate: 58,
    site_offset: 22.6,
    site_downlink: 11700,
    ...inventedNumbers,
    commission_tolerance: 3,
    commission_volts_tolerance: 1,
    commission_meter: 1.5,
  },
  blocks: {
    slots: [
      {
        slot: "97W",
        service: "main programmes",
        obstacle: 22,
        eirp: 50,
        symbol_rate: 27.5,
        modulation: "8PSK 2/3",
      },
      {
        slot: "113W",
        service: "second language",
        obstacle: 18,
        eirp: 49,
        symbol_rate: 22,
        modulation: "QPSK 3/4",
      },
    ],
    cables,
    passives,
    units,
    supplies,
    plates,
    feeds,
    plans,
    resistors,
    fittings,
    receivers,
    routes,
    labour,
    kinds: [{ name: "guest room" }, { name: "common room" }, { name: "flat" }],
    bonds: [
      {
        where: "mast of dish D1 to the earth bar",
        dish: "D1",
        kind: "mast earthing, copper",
        size: 16,
        length: 11,
      },
      {
        where: "mast of dish D2 to the earth bar",
        dish: "D2",
        kind: "mast earthing, copper",
        size: 16,
        length: 14,
      },
      {
        where: "cable screens at the ground floor's entry",
        kind: "cable screen bond, unprotected",
        size: 4,
        length: 2.5,
      },
      {
        where: "cable screens at the annexe's entry",
        kind: "cable screen bond, unprotected",
        size: 2.5,
        length: 3,
      },
    ],
    options: [
      { name: "second outlet in the lounge", quantity: 1, each: 74, chosen: "no" },
      { name: "spare head unit in the cabinet", quantity: 1, each: 145, chosen: "yes" },
    ],
    provisional: [{ name: "opening a blocked duct to the annexe", sum: 180 }],
    assumptions: [
      { text: "Ducts and ceiling voids are clear and may be used." },
      { text: "Receivers give their head unit 13 V at rest, and 0.4 A." },
      { text: "A mains socket stands beside the cabinet under the roof, put there by others." },
      { text: "Rooms are free on the days agreed." },
    ],
    exclusions: standardExclusions,
    letterhead: [{ line: "Invented firm (demonstration)" }, { line: "1 Invented Street, Invented Town" }],
    payment: inventedPayment,
    warranty: inventedWarranty,
    causes: usualCauses,
    log: [{ date: sheetDate(2026, 11, 2), who: "demonstration", what: "first estimate", why: "enquiry" }],
    dishes,
    feeders,
    heads,
    branches,
    rooms: guestHouseRooms.map((row) => ({ ...row, ...details[row.outlet!] })),
  },
};
