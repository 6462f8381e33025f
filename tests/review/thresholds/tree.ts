/** Thresholds of what is fed by what, of levels and volts, and of what was measured. */
import type { Book } from "../../../src/workbooks/book";
import { filledCells } from "../../../src/review/namedCells";
import { valueAt, type Pair } from "./pair";

/** What is furthest up or down in a column of results. */
const extreme = (book: Book, name: string, of: (...values: number[]) => number): number =>
  of(...filledCells(book, name).flatMap(({ value }) => (typeof value === "number" ? [value] : [])));
const down = (value: number, steps: number): number => Math.floor(value * steps) / steps;
const up = (value: number, steps: number): number => Math.ceil(value * steps) / steps;
const weakest = (book: Book): number => extreme(book, "rooms_weakest", Math.min);
const strongest = (book: Book): number => extreme(book, "rooms_strongest", Math.max);

export const treePairs: readonly Pair[] = [
  {
    rule: "feeding",
    limit: "a branch that is there, in capitals or not: names are the same in capitals",
    inside: { "rooms_from of G-01": "g1" },
    beyond: { "rooms_from of G-01": "G9" },
    at: "rooms_from of G-01",
  },
  {
    rule: "feeding",
    limit: "what feeds a branch is not the branch itself",
    inside: { "branches_from of G2": "g0" },
    beyond: { "branches_from of G2": "g2" },
    at: "branches_from of G2",
  },
  {
    rule: "feeding",
    limit: "a row pasted twice has the same feeder; with another the outlet hangs on two",
    inside: { "rooms_outlet of G-02": "g-01" },
    beyond: { "rooms_outlet of G-05": "g-01" },
    at: "rooms_from of G-05",
  },
  {
    rule: "feeding",
    limit: "a feeder has a name of its own, capitals do not make one",
    inside: { "branches_id of G2": "g2" },
    beyond: { "branches_id of G2": "g1" },
    at: "branches_id of G2",
  },
  {
    rule: "too many on one feed",
    limit: "U2 has 4 ports: 4 outlets on it are all that it feeds, 5 one too many",
    inside: { "rooms_from of F-06": "U2" },
    beyond: { "rooms_from of F-06": "U2", "rooms_from of F-05": "U2" },
    at: "branches_id of U2",
    row: true,
  },
  {
    rule: "too many on one feed",
    limit: "a tap of 2 ways feeds two and the line that goes on",
    given: { "rooms_from of A-02": "A1" },
    inside: {},
    beyond: { "rooms_from of A-03": "A1" },
    at: "branches_from of A2",
  },
  {
    rule: "too many on one feed",
    limit: "a head unit has one output where Parts says nothing: one thing on it",
    inside: {},
    beyond: { "rooms_from of A-01": "H3" },
    at: "rooms_from of A-01",
  },
  {
    rule: "row that cannot be worked out",
    limit: "a 2-way splitter has ports 1 and 2",
    inside: { "branches_port of G1": 2 },
    beyond: { "branches_port of G1": 3 },
    at: "branches_check_row of G1",
  },
  {
    rule: "supply",
    limit: "4 watts are usual for a head unit; 4 amperes are not: watts were meant",
    inside: { "units_load of head unit, 16 bands": 0.35, "units_kind of head unit, 16 bands": "A" },
    beyond: { "units_kind of head unit, 16 bands": "A" },
    at: "units_kind of head unit, 16 bands",
  },
  {
    rule: "supply",
    limit: "more than 3 A (the rule's own bound) were watts",
    given: { "units_kind of head unit, higher voltage": "A" },
    inside: { "units_load of head unit, higher voltage": 3 },
    beyond: { "units_load of head unit, higher voltage": 3.01 },
    at: "units_kind of head unit, higher voltage",
  },
  {
    rule: "supply",
    limit: "a splitter on the way of the supply passes power at all its ports, or at none",
    inside: { "passives_power of 2-way splitter": "All Ports" },
    beyond: { "passives_power of 2-way splitter": "no" },
    at: "passives_power of 2-way splitter",
  },
  {
    rule: "outside limits",
    limit: "the least level on Site: what reaches it is enough, less than a tenth of a dB under it is not",
    inside: (book) => ({ site_level_low: down(weakest(book), 10) }),
    beyond: (book) => ({ site_level_low: up(weakest(book), 10) }),
    at: "rooms_check_level of A-06",
  },
  {
    rule: "outside limits",
    limit: "the least level on Site, reached exactly: itself ok (help page of WINDOW)",
    inside: (book) => ({ site_level_low: weakest(book) }),
    beyond: (book) => ({ site_level_low: weakest(book) + 1e-6 }),
    at: "rooms_check_level of A-06",
  },
  {
    rule: "outside limits",
    limit: "the greatest level on Site, reached exactly",
    inside: (book) => ({ site_level_high: strongest(book) }),
    beyond: (book) => ({ site_level_high: strongest(book) - 1e-6 }),
    at: "rooms_check_level of G-01",
  },
  {
    rule: "outside limits",
    limit: "the least volts of the head unit's maker, to a hundredth of a volt",
    inside: (book) => ({
      "units_least of head unit, 8 bands": down(valueAt(book, "heads_fed_least of H3"), 100),
    }),
    beyond: (book) => ({
      "units_least of head unit, 8 bands": up(valueAt(book, "heads_fed_least of H3"), 100),
    }),
    at: "heads_check_power of H3",
  },
  {
    rule: "outside limits",
    limit: "user bands of the head unit: a tuner each",
    inside: (book) => ({ "units_bands of head unit, 8 bands": valueAt(book, "heads_fed_tuners of H3") }),
    beyond: (book) => ({ "units_bands of head unit, 8 bands": valueAt(book, "heads_fed_tuners of H3") - 1 }),
    at: "rooms_check_bands of A-07",
  },
  {
    rule: "error",
    limit: "a slot is degrees with E or W behind them, in capitals or not; another letter is no side",
    inside: { "slots_slot of 113W": "113w" },
    beyond: { "slots_slot of 113W": "113Q" },
    at: "sight_angles of 113W",
    row: true,
  },
  {
    rule: "failing check",
    limit: "a splitter feeds five outlets from four ports",
    folded: true,
    inside: { "rooms_from of F-06": "U2" },
    beyond: { "rooms_from of F-06": "U2", "rooms_from of F-05": "U2" },
    at: "check outlets unfed",
  },
  {
    rule: "failing check",
    limit: "the quote holds on the day after it is made, not on the day before (Checks)",
    inside: (book) => ({ site_until: valueAt(book, "site_date") + 1 }),
    beyond: (book) => ({ site_until: valueAt(book, "site_date") - 1 }),
    at: "check days of validity",
  },
  {
    rule: "measured off prediction",
    limit: "3 dB on Site over the prediction at the low end, cold",
    inside: (book) => ({ "rooms_built_low of G-01": valueAt(book, "commission_low_to of G-01") + 2.99 }),
    beyond: (book) => ({ "rooms_built_low of G-01": valueAt(book, "commission_low_to of G-01") + 3.01 }),
    at: "rooms_built_low of G-01",
  },
  {
    rule: "measured off prediction",
    limit: "3 dB on Site under the prediction at the high end, hot",
    inside: (book) => ({ "rooms_built_high of G-01": valueAt(book, "commission_high_from of G-01") - 2.99 }),
    beyond: (book) => ({ "rooms_built_high of G-01": valueAt(book, "commission_high_from of G-01") - 3.01 }),
    at: "rooms_built_high of G-01",
  },
  {
    rule: "measured off prediction",
    limit: "1 V on Site at the head unit",
    inside: (book) => ({ "heads_built_volts of H1": valueAt(book, "heads_fed_least of H1") - 0.99 }),
    beyond: (book) => ({ "heads_built_volts of H1": valueAt(book, "heads_fed_least of H1") - 1.01 }),
    at: "heads_built_volts of H1",
  },
  {
    rule: "measured off prediction",
    limit: "exactly the tolerance over what it has with all receivers on is within it",
    given: { commission_volts_tolerance: 0.3 },
    inside: (book) => ({ "heads_built_volts of H1": valueAt(book, "heads_fed_on of H1") + 0.3 }),
    beyond: (book) => ({ "heads_built_volts of H1": valueAt(book, "heads_fed_on of H1") + 0.301 }),
    at: "heads_built_volts of H1",
  },
];
