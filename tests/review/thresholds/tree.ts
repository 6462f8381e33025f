/** Thresholds of what is fed by what, and of levels and volts. */
import { GONE, valueAt, type Pair } from "./pair";
import type { Book } from "../../../src/workbooks/book";

const weakest = (book: Book): number =>
  Math.min(
    ...["A-07", "A-06", "A-05", "F-06", "F-09"].map((name) => valueAt(book, `rooms_weakest of ${name}`)),
  );

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
    rule: "too many on one feed",
    limit: "U2 has 4 ports: 4 outlets on it are all that it feeds, 5 one too many",
    inside: { "rooms_from of F-06": "U2" },
    beyond: { "rooms_from of F-06": "U2", "rooms_from of F-05": "U2" },
    at: "branches_id of U2",
    row: true,
  },
  {
    rule: "too many on one feed",
    limit: "a head unit has one cable: one thing on it",
    given: { "branches_from of A1": "H3" },
    inside: {},
    beyond: { "rooms_from of A-01": "H3" },
    at: "rooms_from of A-01",
  },
  {
    rule: "supply",
    limit: "the head unit whose supply is shared is there, in capitals or not",
    given: { "heads_supply of H2": GONE },
    inside: { "heads_shares of H2": "h1" },
    beyond: { "heads_shares of H2": "H9" },
    at: "heads_shares of H2",
  },
  {
    rule: "supply",
    limit: "a head unit has one supply, its own or another's: not both",
    inside: { "heads_supply of H2": GONE, "heads_shares of H2": "H1" },
    beyond: { "heads_shares of H2": "H1" },
    at: "heads_supply of H2",
    row: true,
  },
  {
    rule: "supply",
    limit: "4 watts are usual for a head unit; 4 amperes are not: watts were meant",
    inside: { "units_load of head unit, 16 bands": 0.35, "units_kind of head unit, 16 bands": "A" },
    beyond: { "units_kind of head unit, 16 bands": "A" },
    at: "units_load of head unit, 16 bands",
    row: true,
  },
  {
    rule: "outside limits",
    limit: "the least level on Site: what reaches it is enough, a tenth of a dB less is not",
    inside: (book) => ({ site_level_low: Math.floor(weakest(book) * 10) / 10 }),
    beyond: (book) => ({ site_level_low: Math.ceil(weakest(book) * 10) / 10 }),
    at: "rooms_fits_enough of A-06",
  },
  {
    rule: "outside limits",
    limit: "the least volts of the head unit's maker, to a hundredth of a volt",
    inside: (book) => ({
      "units_least of head unit, 8 bands": Math.floor(valueAt(book, "heads_volts of H3") * 100) / 100,
    }),
    beyond: (book) => ({
      "units_least of head unit, 8 bands": Math.ceil(valueAt(book, "heads_volts of H3") * 100) / 100,
    }),
    at: "heads_power of H3",
  },
  {
    rule: "outside limits",
    limit: "user bands of the head unit: a tuner each",
    inside: (book) => ({ "units_bands of head unit, 8 bands": valueAt(book, "heads_tuners of H3") }),
    beyond: (book) => ({ "units_bands of head unit, 8 bands": valueAt(book, "heads_tuners of H3") - 1 }),
    at: "heads_capacity of H3",
  },
  {
    rule: "error",
    limit: "a length is 0 or more: below it no loss is found",
    inside: { "rooms_run of G-01": 0.1 },
    beyond: { "rooms_run of G-01": -0.1 },
    at: "rooms_loss of G-01",
    row: true,
  },
  {
    rule: "failing check",
    limit: "ports: five outlets on four",
    inside: { "rooms_from of F-06": "U2" },
    beyond: { "rooms_from of F-06": "U2", "rooms_from of F-05": "U2" },
    at: "checks_result",
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
    inside: (book) => ({ "heads_built_volts of H1": valueAt(book, "heads_volts of H1") - 0.99 }),
    beyond: (book) => ({ "heads_built_volts of H1": valueAt(book, "heads_volts of H1") - 1.01 }),
    at: "heads_built_volts of H1",
  },
];
