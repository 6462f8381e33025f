/**
 * The demonstration job: an invented guest house of 24 outlets on two floors
 * and in an annexe, with two orbital slots and three head units. Everything in
 * it is made up: site, customer, parts, prices. Two things are wrong on
 * purpose, so that the checks have something to say: the farthest annexe room
 * hangs on a thin cable and gets too little at the high end in heat, and the
 * annexe's head unit falls short of volts until its trunk with the steel centre
 * is changed for the copper one.
 *
 * The head units are fed by the receivers over their cables: 13 V at rest, at
 * most 0.4 A, and 10.5 V or more at the head unit (EN 50494 and EN 50607, from
 * memory). Each is worked out for the hard case, the receiver of the most
 * resistance feeding it alone.
 */
import type { JobInputs } from "../definition";
import { sheetDate } from "../sheetDate";
import { usualCauses } from "./causes";
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

const passives: readonly Row[] = [
  {
    name: "2-way splitter",
    kind: "splitter",
    ways: 2,
    port_low: 4.2,
    port_high: 5.4,
    power: "all ports",
    price: 7.9,
    ...PRICED,
  },
  {
    name: "4-way splitter",
    kind: "splitter",
    ways: 4,
    port_low: 7.8,
    port_high: 9.4,
    power: "all ports",
    price: 12.5,
    ...PRICED,
  },
  {
    name: "6-way splitter",
    kind: "splitter",
    ways: 6,
    port_low: 9.9,
    port_high: 12.1,
    power: "all ports",
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
    power: "all ports",
    price: 9.4,
    ...PRICED,
  },
];

const units: readonly Row[] = [
  {
    name: "head unit, 16 bands",
    bands: 16,
    out_low: 92,
    out_high: 90,
    least: 10.5,
    load: 4,
    kind: "W",
    price: 148,
    ...PRICED,
  },
  {
    name: "head unit, 8 bands",
    bands: 8,
    out_low: 92,
    out_high: 94,
    least: 10.5,
    load: 0.33,
    kind: "A",
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
    price: 131,
    ...PRICED,
  },
];

const supplies: readonly Row[] = [
  { name: "receiver, 13 V", volts: 13, amps: 0.4, by: "a receiver", price: 0, ...PRICED },
  { name: "supply for the higher voltage", volts: 24, amps: 1, by: "this job", price: 44, ...PRICED },
];

const plates: readonly Row[] = [
  { name: "single outlet", loss_low: 0.7, loss_high: 1.4, price: 6.4, ...PRICED },
  { name: "outlet with radio", loss_low: 1.6, loss_high: 2.6, price: 11.2, ...PRICED },
];

const fittings: readonly Row[] = [
  {
    name: "compression connector",
    per_outlet: 2,
    per_branch: 5,
    per_head: 4,
    fixed: 0,
    pack: 50,
    price: 36,
    ...PRICED,
  },
  {
    name: "dish 0.9 m with mount",
    per_outlet: 0,
    per_branch: 0,
    per_head: 0,
    fixed: 1,
    pack: 1,
    price: 189,
    ...PRICED,
  },
  {
    name: "cable clip",
    per_outlet: 25,
    per_branch: 10,
    per_head: 40,
    fixed: 0,
    pack: 100,
    price: 5.5,
    ...PRICED,
  },
  {
    name: "bonding bar and conductor set",
    per_outlet: 0,
    per_branch: 0,
    per_head: 0,
    fixed: 2,
    pack: 1,
    price: 58,
    ...PRICED,
  },
  {
    name: "weather cabinet",
    per_outlet: 0,
    per_branch: 0,
    per_head: 0,
    fixed: 1,
    pack: 1,
    price: 112,
    ...PRICED,
  },
];

const receivers: readonly Row[] = [{ kind: "recorder, 4 tuners", tuners: 4 }];

const labour: readonly Row[] = [
  {
    name: "mount and align the dish",
    minutes: 180,
    low: 140,
    high: 280,
    per_outlet: 0,
    per_branch: 0,
    per_head: 0,
    fixed: 1,
    difficulty: 1.3,
  },
  {
    name: "fit a head unit",
    minutes: 50,
    per_outlet: 0,
    per_branch: 0,
    per_head: 1,
    fixed: 0,
    difficulty: 1.1,
  },
  {
    name: "fit a splitter or tap",
    minutes: 15,
    per_outlet: 0,
    per_branch: 1,
    per_head: 0,
    fixed: 0,
    difficulty: 1,
  },
  {
    name: "run and terminate a cable",
    minutes: 38,
    low: 30,
    high: 58,
    per_outlet: 1,
    per_branch: 0,
    per_head: 0,
    fixed: 0,
    difficulty: 1.15,
  },
  {
    name: "measure and record an outlet",
    minutes: 6,
    per_outlet: 1,
    per_branch: 0,
    per_head: 0,
    fixed: 0,
    difficulty: 1,
  },
  {
    name: "bonding, by a licensed electrician",
    minutes: 150,
    per_outlet: 0,
    per_branch: 0,
    per_head: 0,
    fixed: 1,
    difficulty: 1,
  },
];

const heads: readonly Row[] = [
  {
    id: "H1",
    type: "head unit, 16 bands",
    supply: "receiver, 13 V",
    cable: "trunk",
    length: 18,
    at: "G-08",
  },
  {
    id: "H2",
    type: "head unit, 16 bands",
    supply: "receiver, 13 V",
    cable: "trunk",
    length: 14,
    at: "F-09",
  },
  {
    id: "H3",
    type: "head unit, 8 bands",
    supply: "receiver, 13 V",
    cable: "trunk, steel centre",
    length: 54,
    at: "A-06",
  },
];

const branches: readonly Row[] = [
  { id: "G0", from: "H1", device: "2-way splitter", cable: "trunk", length: 2 },
  { id: "G1", from: "G0", device: "4-way splitter", cable: "outdoor drop", length: 9 },
  { id: "G2", from: "G0", device: "4-way splitter", cable: "outdoor drop", length: 14 },
  { id: "U0", from: "H2", device: "2-way splitter", cable: "trunk", length: 2 },
  { id: "U1", from: "U0", device: "6-way splitter", cable: "outdoor drop", length: 8 },
  { id: "U2", from: "U0", device: "4-way splitter", cable: "outdoor drop", length: 16 },
  { id: "A1", from: "H3", device: "tap 12 dB", cable: "outdoor drop", length: 4 },
  { id: "A2", from: "A1", device: "6-way splitter", cable: "outdoor drop", length: 5 },
];

const outlet = (
  floor: string,
  room: string,
  name: string,
  receiver: string,
  from: string,
  cable: string,
  run: number,
  plate = "single outlet",
  note = "",
): Row => ({
  floor,
  room,
  outlet: name,
  receiver,
  quantity: 1,
  from,
  cable,
  run,
  plate,
  kind: kindOf(room),
  note,
});

const kindOf = (room: string): string =>
  room.startsWith("flat") ? "flat" : /room \d|suite/.test(room) ? "guest room" : "common room";

const ONE = "receiver";
const TWO = "recorder, 2 tuners";

/** The survey, outlet by outlet. */
export const guestHouseRooms: readonly Row[] = [
  outlet("ground", "reception", "G-01", ONE, "G1", "indoor drop", 9.5),
  outlet("ground", "breakfast room", "G-02", TWO, "G1", "indoor drop", 16),
  outlet("ground", "lounge", "G-03", TWO, "G1", "indoor drop", 12.5, "outlet with radio"),
  outlet("ground", "office", "G-04", ONE, "G1", "indoor drop", 11),
  outlet("ground", "room 1", "G-05", ONE, "G2", "indoor drop", 14),
  outlet("ground", "room 2", "G-06", ONE, "G2", "indoor drop", 18.5),
  outlet("ground", "room 3", "G-07", ONE, "G2", "indoor drop", 21),
  outlet("ground", "room 4", "G-08", ONE, "G2", "indoor drop", 26.5),
  outlet("first", "room 5", "F-01", ONE, "U1", "indoor drop", 8),
  outlet("first", "room 6", "F-02", ONE, "U1", "indoor drop", 11.5),
  outlet("first", "room 7", "F-03", ONE, "U1", "indoor drop", 13),
  outlet("first", "room 8", "F-04", ONE, "U1", "indoor drop", 17),
  outlet("first", "room 9", "F-05", ONE, "U1", "indoor drop", 19.5),
  outlet("first", "suite, bedroom", "F-06", TWO, "U1", "indoor drop", 22),
  outlet("first", "suite, parlour", "F-07", TWO, "U2", "indoor drop", 15, "outlet with radio"),
  outlet("first", "room 10", "F-08", ONE, "U2", "indoor drop", 20),
  outlet("first", "room 11", "F-09", ONE, "U2", "indoor drop", 24),
  outlet("annexe", "room 12", "A-01", ONE, "A1", "indoor drop", 7),
  outlet("annexe", "room 13", "A-02", ONE, "A2", "indoor drop", 10),
  outlet("annexe", "room 14", "A-03", ONE, "A2", "indoor drop", 15.5),
  outlet("annexe", "room 15", "A-04", ONE, "A2", "indoor drop", 19),
  outlet("annexe", "room 16", "A-05", ONE, "A2", "indoor drop", 23.5),
  outlet("annexe", "flat, kitchen", "A-06", ONE, "A2", "indoor drop", 28),
  outlet(
    "annexe",
    "flat, bedroom",
    "A-07",
    TWO,
    "A2",
    "thin drop",
    46,
    "single outlet",
    "old thin cable in the wall",
  ),
];

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
    commission_tolerance: 3,
    commission_volts_tolerance: 1,
    commission_meter: 1.5,
  },
  blocks: {
    slots: [
      { slot: "97W", service: "main programmes", obstacle: 22 },
      { slot: "113W", service: "second language", obstacle: 18 },
    ],
    cables,
    passives,
    units,
    supplies,
    plates,
    fittings,
    receivers,
    labour,
    kinds: [{ name: "guest room" }, { name: "common room" }, { name: "flat" }],
    bonds: [
      { where: "dish mast to the earth bar", kind: "mast earthing, copper", size: 16, length: 11 },
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
      { text: "Rooms are free on the days agreed." },
    ],
    exclusions: standardExclusions,
    causes: usualCauses,
    log: [{ date: sheetDate(2026, 11, 2), who: "demonstration", what: "first estimate", why: "enquiry" }],
    heads,
    branches,
    // The kitchen's way through the flat is not settled yet.
    rooms: guestHouseRooms.map((row) =>
      row.outlet === "A-06" ? { ...row, shortest: 25, longest: 36 } : row,
    ),
  },
};
