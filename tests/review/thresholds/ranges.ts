/** Thresholds of what rows, floors, the firm's standards and accepted quotes say of each other. */
import type { FirmSays } from "../../../src/review/ranges/firm";
import type { Learned } from "../../../src/review/ranges/learned";
import type { Pair } from "./pair";

const MONEY = "demonstration money";
const firm = (fields: FirmSays["fields"], learned: readonly Learned[] = []): FirmSays => ({
  called: "an invented firm, edition 3",
  fields: { site_currency: MONEY, ...fields },
  rows: {
    plates: { "single outlet": { name: "single outlet", price: 6.4 } },
    fittings: { "compression connector": { name: "compression connector", pack: 100, price: 44 } },
  },
  learned,
});

const hours: Learned = {
  name: "labour_rate",
  what: "Crew rate",
  of: "",
  unit: `${MONEY} per h`,
  low: 56,
  middle: 59,
  high: 62,
  quotes: 5,
};

const BAND = {
  "plans_plan free": "test",
  "plans_band free": 1,
  "plans_centre free": 1000,
  "plans_width free": 46,
};
const NEXT = { "plans_plan last": "test", "plans_band last": 2, "plans_width last": 46 };
const VAN = {
  crew_hours: 8,
  "sites_name free": "van, there and back",
  "sites_kind free": "travel",
  "sites_per free": "day on site",
};
const ALTERNATE = {
  "options_name free": "plates with radio",
  "options_quantity free": 1,
  "options_chosen free": "no",
  "options_instead free": "single outlets",
  "made_option free": "plates with radio",
  "made_part free": "single outlet",
  "made_quantity free": -10,
  "made_option last": "plates with radio",
  "made_part last": "outlet with radio",
};

export const rangePairs: readonly Pair[] = [
  {
    rule: "name says otherwise",
    limit: "the ways that a splitter's name says",
    inside: { "passives_ways of 6-way splitter": 6 },
    beyond: { "passives_ways of 6-way splitter": 7 },
    at: "passives_ways of 6-way splitter",
  },
  {
    rule: "user bands that overlap",
    limit: "46 MHz between the centres of two bands of 46 MHz: they touch",
    given: { ...BAND, ...NEXT },
    inside: { "plans_centre last": 1046 },
    beyond: { "plans_centre last": 1045.9 },
    at: "plans_centre last",
  },
  {
    rule: "place and slots that do not fit",
    // 44.296 deg for 97W at 39.5 N, 98.25 W (satellite.js gives the same to 1e-5), less the 3 deg of Site.
    limit: "the beam's elevation less the clearance, for an obstacle",
    inside: { "slots_obstacle of 97W": 41.29 },
    beyond: { "slots_obstacle of 97W": 41.3 },
    at: "slots_obstacle of 97W",
  },
  {
    rule: "place and slots that do not fit",
    limit: "the sign of the longitude",
    inside: { site_longitude: -98.25 },
    beyond: { site_longitude: 98.25 },
    at: "site_longitude",
  },
  {
    rule: "crew and site costs",
    limit: "half of what the crew costs in a day of 8 hours at 58: 232, for the way there (common practice)",
    given: VAN,
    inside: { "sites_cost of van, there and back": 232 },
    beyond: { "sites_cost of van, there and back": 232.01 },
    at: "sites_cost of van, there and back",
  },
  {
    rule: "crew and site costs",
    limit: "lowest and highest cost to either side of the cost",
    given: { ...VAN, "sites_low free": 30, "sites_high free": 40 },
    inside: { "sites_cost of van, there and back": 40 },
    beyond: { "sites_cost of van, there and back": 40.01 },
    at: "sites_cost of van, there and back",
  },
  {
    rule: "options, alternates and tax classes",
    limit: "as many pieces in as out",
    given: ALTERNATE,
    inside: { "made_quantity last": 10 },
    beyond: { "made_quantity last": 11 },
    at: "made_quantity last",
  },
  {
    rule: "type unlike its rooms",
    limit: "outlets a room: two rooms of the type have one each",
    given: {
      "types_name free": "single",
      "rooms_type of G-05": "single",
      "rooms_type of G-06": "single",
    },
    inside: { "types_outlets of single": 1 },
    beyond: { "types_outlets of single": 2 },
    at: "types_outlets of single",
  },
  {
    rule: "unlike the other floors",
    limit: "a floor that one outlet alone has, among others of its feed on one floor",
    inside: { "rooms_floor of G-06": "ground" },
    beyond: { "rooms_floor of G-06": "grond" },
    at: "rooms_floor of G-06",
  },
  {
    rule: "parts that do not agree",
    limit: "a tenth above the larger part of its kind, at 17.80",
    inside: { "passives_price of 4-way splitter": 19.58 },
    beyond: { "passives_price of 4-way splitter": 19.6 },
    at: "passives_price of 4-way splitter",
  },
  {
    rule: "parts that do not agree",
    limit:
      "half of the 16 mm² that a mast's conductor of copper asks (IEC/EN 60728-11, from works that quote it)",
    inside: { "bonds_size of dish mast to the earth bar": 8 },
    beyond: { "bonds_size of dish mast to the earth bar": 7.9 },
    at: "bonds_size of dish mast to the earth bar",
  },
  {
    rule: "unlike the firm's standards",
    limit: "a fifth of the firm's margin of 22 %",
    options: () => ({ standards: firm({ site_margin: 0.22 }) }),
    inside: { site_margin: 0.2639 },
    beyond: { site_margin: 0.265 },
    at: "site_margin",
  },
  {
    rule: "unlike the firm's standards",
    limit: "a limit looser than the firm's by anything",
    options: () => ({ standards: firm({ site_clearance: 3 }) }),
    inside: { site_clearance: 3 },
    beyond: { site_clearance: 2.9 },
    at: "site_clearance",
  },
  {
    rule: "unlike the firm's standards",
    limit: "half as much again as the firm's price of 6.40",
    options: () => ({ standards: firm({}) }),
    inside: { "plates_price of single outlet": 9.59 },
    beyond: { "plates_price of single outlet": 9.6 },
    at: "plates_price of single outlet",
  },
  {
    rule: "unlike the firm's standards",
    limit: "the firm's price with the tax of 20 %: 6.40 makes 7.68",
    options: () => ({ standards: firm({}) }),
    inside: { "plates_price of single outlet": 7.7 },
    beyond: { "plates_price of single outlet": 7.68 },
    at: "plates_price of single outlet",
  },
  {
    rule: "unlike the firm's standards",
    limit: "three times as dear a piece in a smaller pack: 0.44 makes 1.32",
    options: () => ({ standards: firm({}) }),
    given: { "fittings_pack of compression connector": 50 },
    inside: { "fittings_price of compression connector": 65 },
    beyond: { "fittings_price of compression connector": 66 },
    at: "fittings_price of compression connector",
  },
  {
    rule: "unlike accepted quotes",
    limit: "a quarter above the highest of five: 62 makes 77.50",
    options: () => ({ standards: firm({}, [hours]) }),
    inside: { labour_rate: 77.5 },
    beyond: { labour_rate: 77.51 },
    at: "labour_rate",
  },
  {
    rule: "unlikely amount",
    limit: "an availability of 99.5 % (common practice)",
    inside: { site_availability: 99.5 },
    beyond: { site_availability: 99.4 },
    at: "site_availability",
  },
  {
    rule: "unlikely amount",
    limit: "a coldest cable of 35 °C (common practice)",
    inside: { site_cold: 35 },
    beyond: { site_cold: 35.1 },
    at: "site_cold",
  },
  {
    rule: "unlikely amount",
    limit: "100 pieces of a fitting at one outlet (common practice)",
    inside: { "fittings_per_outlet of cable clip": 100 },
    beyond: { "fittings_per_outlet of cable clip": 101 },
    at: "fittings_per_outlet of cable clip",
  },
  {
    rule: "unlikely amount",
    limit: "45 minutes for one wall plate (common practice)",
    given: { "labour_name free": "plates", "labour_piece free": "wall plate", "labour_difficulty free": 1 },
    inside: { "labour_minutes of plates": 45 },
    beyond: { "labour_minutes of plates": 45.1 },
    at: "labour_minutes of plates",
  },
  {
    rule: "run longer than its reel",
    limit: "four reels of 100 m, for what is left on one (common practice)",
    given: { "rests_cable free": "indoor drop" },
    inside: { "rests_length of indoor drop": 400 },
    beyond: { "rests_length of indoor drop": 401 },
    at: "rests_length of indoor drop",
  },
  {
    rule: "dates that do not agree",
    limit: "400 days between a price and the quote of day 46,328 (common practice)",
    inside: { "cables_priced of trunk": 45_928 },
    beyond: { "cables_priced of trunk": 45_927 },
    at: "cables_priced of trunk",
  },
];
