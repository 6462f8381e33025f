/** Thresholds of single entries: what a cell asks for, its unit, its neighbours. */
import { valueAt, GONE, type Pair } from "./pair";

const U1 = ["F-01", "F-02", "F-03", "F-04", "F-05", "F-06"];
const times =
  (factor: number): Pair["inside"] =>
  (book) =>
    Object.fromEntries(
      U1.map((name) => {
        const cell = `rooms_run of ${name}`;
        return [cell, Math.round(valueAt(book, cell) * factor * 10) / 10];
      }),
    );

export const entryPairs: readonly Pair[] = [
  {
    rule: "entry missing",
    limit: "one letter is an entry, a blank is none",
    inside: { site_customer: "x" },
    beyond: { site_customer: " " },
    at: "site_customer",
  },
  {
    rule: "entry missing",
    limit: "a crew rate of 1, the least that may be typed, is one",
    inside: { labour_rate: 1 },
    beyond: { labour_rate: GONE },
    at: "labour_rate",
  },
  {
    rule: "amount of zero",
    limit: "a minute is some, 0 is none",
    inside: { "labour_minutes of run and terminate a cable": 1 },
    beyond: { "labour_minutes of run and terminate a cable": 0 },
    at: "labour_minutes of run and terminate a cable",
  },
  {
    rule: "amount of zero",
    limit: "a tax of a hundredth of a percent is one",
    inside: { site_tax: 0.0001 },
    beyond: { site_tax: 0 },
    at: "site_tax",
  },
  {
    rule: "amount of zero",
    limit: "a reason on Terms makes a zero meant; a name there without a reason does not",
    given: { site_tax: 0, "onpurpose_what free": "Tax" },
    inside: { "onpurpose_why free": "free of tax by law" },
    beyond: {},
    at: "site_tax",
  },
  {
    rule: "text that looks like a number",
    limit: "12.5 as a number, and as text",
    inside: { "rooms_run of G-03": 12.5 },
    beyond: { "rooms_run of G-03": "12.5" },
    at: "rooms_run of G-03",
  },
  {
    rule: "text that looks like a number",
    limit: "a room's name may be a number; a run may not be text",
    inside: { "rooms_room of G-03": "12,5" },
    beyond: { "rooms_run of G-03": "12,5" },
    at: "rooms_run of G-03",
  },
  {
    rule: "input outside its rule",
    limit: "a tax from 0 to 0.5",
    inside: { site_tax: 0.5 },
    beyond: { site_tax: 0.51 },
    at: "site_tax",
  },
  {
    rule: "input outside its rule",
    limit: "a part's name may be in capitals; a blank at its end makes it another",
    inside: { "rooms_plate of G-01": "Single Outlet" },
    beyond: { "rooms_plate of G-01": "single outlet " },
    at: "rooms_plate of G-01",
  },
  {
    rule: "figures that cross",
    limit: "the coldest cable may be as warm as the hottest, no warmer",
    inside: { site_cold: 55 },
    beyond: { site_cold: 56 },
    at: "site_cold",
  },
  {
    rule: "figures that cross",
    limit: "the shortest run may be the run itself, no longer",
    inside: { "rooms_shortest of G-01": 9.5 },
    beyond: { "rooms_shortest of G-01": 9.6 },
    at: "rooms_shortest of G-01",
  },
  {
    rule: "figures that cross",
    limit: "the longest run may be the run itself, no shorter",
    inside: { "rooms_longest of G-01": 9.5 },
    beyond: { "rooms_longest of G-01": 9.4 },
    at: "rooms_longest of G-01",
  },
  {
    rule: "figures that cross",
    limit: "least and greatest level: 77 and 77 do not cross",
    inside: { site_level_low: 47, site_level_high: 77 },
    beyond: { site_level_low: 77, site_level_high: 47 },
    at: "site_level_low",
  },
  {
    rule: "figures that cross",
    limit: "work takes at least as long as is likely, no longer",
    given: { "labour_high of fit a head unit": 60 },
    inside: { "labour_low of fit a head unit": 50 },
    beyond: { "labour_low of fit a head unit": 51 },
    at: "labour_low of fit a head unit",
  },
  {
    rule: "unit slip",
    limit: "3.28 feet are a metre; twice as long is no unit",
    inside: times(1.5),
    beyond: times(3.2808),
    at: "rooms_run of F-01",
  },
  {
    rule: "unit slip",
    limit: "950 MHz; 0.95 is the same in GHz",
    inside: { site_low: 900 },
    beyond: { site_low: 0.95 },
    at: "site_low",
  },
  {
    rule: "unit slip",
    limit: "a level of 92 dBµV is 32 dBmV",
    inside: { "units_out_low of head unit, 16 bands": 90 },
    beyond: { "units_out_low of head unit, 16 bands": 32 },
    at: "units_out_low of head unit, 16 bands",
  },
  {
    rule: "unit slip",
    limit: "a price in cents is a hundred times that in money; twice the price is a price",
    inside: { "plates_price of single outlet": 12.8 },
    beyond: { "plates_price of single outlet": 640 },
    at: "plates_price of single outlet",
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
  {
    rule: "far from neighbours",
    limit: "runs of 8 to 28 m: 30 is one of them, 185 was 18.5",
    inside: { "rooms_run of G-06": 30 },
    beyond: { "rooms_run of G-06": 185 },
    at: "rooms_run of G-06",
  },
  {
    rule: "duplicate",
    limit: "the same name in capitals is the same outlet; another letter is another",
    inside: { "rooms_outlet of A-07": "A-05x" },
    beyond: { "rooms_outlet of A-07": "a-05" },
    at: "rooms_outlet of A-07",
  },
  {
    rule: "duplicate",
    limit: "a part is listed once",
    inside: { "plates_name of outlet with radio": "single outlets" },
    beyond: { "plates_name of outlet with radio": "Single Outlet" },
    at: "plates_name of outlet with radio",
  },
  {
    rule: "run longer than its reel",
    limit:
      "(run + slack 2 m) with 5 % waste from a reel of 100 m: 93.2 m take 99.96 m, 93.3 m take 100.065 m",
    inside: { "rooms_run of A-06": 93.2 },
    beyond: { "rooms_run of A-06": 93.3 },
    at: "rooms_run of A-06",
  },
  {
    rule: "outside the block",
    limit: "the last row made ready is counted, one under the closing row is not",
    inside: { "rooms_outlet last": "X-99" },
    beyond: { "rooms_outlet below": "X-99" },
    at: "rooms_outlet below",
  },
];
