/**
 * What rules say of rows that hang together: what feeds what, what stands twice and what lacks a part. The house is
 * that of tests/fixtures/quotes/house.json: H1 feeds G0, that G1 with G-01 to G-04 and G2 with G-05 to G-08.
 */
import type { Finding } from "../../src/review/finding";
import { cellAt, GONE, type Changes } from "./thresholds/pair";
import { house, said } from "./thresholds/said";

const FEEDING = "feeding";
const MANY = "too many on one feed";
const TWICE = "duplicate";
const PART = "part lacking or not needed";
const outlets = "G-01 G-02 G-03 G-04 G-05 G-06 G-07 G-08".split(" ");
const at = (words: string) => cellAt(house(), words);
const cellOf = (words: string): string => at(words).cell;

test.each<[string, Changes, string, Partial<Finding>]>([
  [
    FEEDING,
    { "rooms_from of G-01": "X9" },
    "rooms_from of G-01",
    { weight: "wrong", message: "G-01 is fed from X9, which is not there." },
  ],
  [FEEDING, { "rooms_from of G-01": GONE }, "rooms_from of G-01", { message: "Nothing feeds G-01." }],
  [
    FEEDING,
    { "rooms_from of G-01": "G1 " },
    "rooms_from of G-01",
    { message: "G-01 is fed from “G1 ”, with a blank at its end.", meant: "G1" },
  ],
  [
    FEEDING,
    { "branches_id of G2": "G1" },
    "branches_id of G2",
    {
      message: `G1 is the name of another feeder too, in Distribution ${cellOf("branches_id of G1")}.`,
      expected: "A name of its own: G2, by what is fed from it.",
      meant: "G2",
    },
  ],
  [FEEDING, { "branches_from of G0": "G0" }, "branches_from of G0", { message: "G0 is fed by itself." }],
  [
    FEEDING,
    { "branches_from of G0": "G1" },
    "branches_from of G0",
    { message: "G0 is fed by itself, round by 1 other." },
  ],
  [
    FEEDING,
    { "branches_from of G0": "G2", "branches_from of G2": "G1" },
    "branches_from of G0",
    { message: "G0 is fed by itself, round by 2 others." },
  ],
  [
    FEEDING,
    { "rooms_outlet of G-02": "G-01", "rooms_from of G-02": "G2" },
    "rooms_from of G-02",
    { message: "G-01 is fed from G2 here and from G1 further up." },
  ],
  [
    FEEDING,
    { "heads_dish of H1": "D9" },
    "heads_dish of H1",
    { message: "D9 is named here, and is not there.", expected: "A dish of the sheet Dishes." },
  ],
  [
    FEEDING,
    { "branches_id of G2": "G2 old" },
    "rooms_from of G-05",
    {
      message: "G-05 is fed from G2, which is not there.",
      undoing: [{ place: at("branches_id of G2"), value: "G2" }],
      isGuess: true,
    },
  ],
  [
    MANY,
    { "rooms_from of G-05": "G1" },
    "branches_device of G1",
    {
      weight: "wrong",
      message: "G1 feeds 5: G-01, G-02, G-03, G-04, G-05. Its part has 4 ports.",
      expected: "As many as it has ports.",
    },
  ],
  // The one of another floor, and the one device among outlets, are the likely slips.
  [
    MANY,
    { "rooms_from of F-01": "G1" },
    "rooms_from of F-01",
    { message: "G1 feeds 5: G-01, G-02, G-03, G-04, F-01. Its part has 4 ports." },
  ],
  [
    MANY,
    { "branches_from of U2": "G1" },
    "branches_from of U2",
    { message: "G1 feeds 5: U2, G-01, G-02, G-03, G-04. Its part has 4 ports." },
  ],
  [
    MANY,
    Object.fromEntries(outlets.concat("F-01").map((one) => [`rooms_from of ${one}`, "G1"])),
    "rooms_from of F-01",
    {
      message: "G1 feeds 9: G-01, G-02, G-03, G-04, G-05, G-06, G-07, G-08 and 1 more. Its part has 4 ports.",
    },
  ],
  [
    MANY,
    { "rooms_from of G-01": "H1" },
    "rooms_from of G-01",
    {
      message: "The one output of H1 feeds one thing, and 2 are said to hang there: G0, G-01.",
      expected: "One: a splitter parts it.",
    },
  ],
  [
    TWICE,
    { "rooms_outlet of G-02": "G-01" },
    "rooms_outlet of G-02",
    {
      weight: "wrong",
      message: `The outlet G-01 stands in ${cellOf("rooms_outlet of G-01")} already.`,
      expected: "Each once, under a name of its own: likely “G-02”.",
      meant: "G-02",
      isGuess: true,
    },
  ],
  [
    TWICE,
    { "rooms_outlet of G-02": "G-01", "rooms_outlet of G-03": "G-09" },
    "rooms_outlet of G-02",
    { expected: "Each once, under a name of its own." },
  ],
  [
    TWICE,
    { "plates_name of outlet with radio": "Single Outlet" },
    "plates_name of outlet with radio",
    { message: `The part Single Outlet stands in ${cellOf("plates_name of single outlet")} already.` },
  ],
  [
    TWICE,
    { "rooms_outlet of G-02": "G-1", "rooms_room of G-02": "Reception" },
    "rooms_outlet of G-02",
    {
      weight: "doubtful",
      message: `G-1 in Reception is likely G-01 of ${cellOf("rooms_outlet of G-01")} again.`,
      isGuess: true,
    },
  ],
  [
    TWICE,
    {
      "provisional_name free": "opening the blocked duct",
      "provisional_sum free": 100,
      "provisional_name free 2": "open up blocked duct",
      "provisional_sum free 2": 100,
    },
    "provisional_name of open up blocked duct",
    { weight: "doubtful", expected: "Each once.", isGuess: true },
  ],
  [
    TWICE,
    { "options_name free": "desk", "options_chosen free": "yes", "provisional_name free": "Desk" },
    "provisional_name of Desk",
    {
      message: `Desk is an option that is chosen, in ${cellOf("options_name free")}, and a provisional sum.`,
      expected: "One of the two.",
    },
  ],
  [PART, { "heads_type of H1": GONE }, "heads_type of H1", { message: "H1 has no kind of head unit." }],
  [PART, { "branches_device of G1": GONE }, "branches_device of G1", { message: "G1 has no part." }],
  [
    PART,
    { "rooms_plate of G-01": GONE },
    "rooms_plate of G-01",
    { weight: "doubtful", message: "G-01 has no wall plate." },
  ],
  [
    PART,
    { "rooms_cable of G-01": GONE },
    "rooms_cable of G-01",
    { weight: "wrong", message: "G-01 has a length and no cable." },
  ],
  [
    PART,
    { "heads_length of H1": 3, "heads_cable of H1": GONE },
    "heads_cable of H1",
    { message: "H1 has a length and no cable." },
  ],
  [PART, { "heads_id free": "H4" }, "heads_id of H4", { weight: "doubtful", message: "H4 feeds nothing." }],
  [
    PART,
    { "branches_id free": "G9", "branches_device free": "4-way splitter" },
    "branches_id of G9",
    { message: "G9 feeds nothing.", expected: "A device that feeds something.", isGuess: true },
  ],
])("%s: %j", (rule, changes, where, wanted) => {
  expect(said(rule, changes, where)).toEqual([expect.objectContaining(wanted)]);
});

test.each<[string, Changes, string]>([
  [FEEDING, { "rooms_from of G-01": "g1" }, "rooms_from of G-01"],
  // An outlet may feed the next.
  [FEEDING, { "rooms_from of G-01": "G-02" }, "rooms_from of G-01"],
  [FEEDING, { "rooms_outlet of G-02": "G-01" }, "rooms_from of G-02"],
  [MANY, { "rooms_from of G-04": "G2", "rooms_from of G-05": "G1" }, "branches_device of G1"],
  [TWICE, { "rooms_outlet of G-02": "G-1" }, "rooms_outlet of G-02"],
  [TWICE, { "options_name free": "desk", "provisional_name free": "Desk" }, "provisional_name of Desk"],
  [
    TWICE,
    {
      "provisional_name free": "opening the blocked duct",
      "provisional_sum free": 100,
      "provisional_name free 2": "open up blocked duct",
      "provisional_sum free 2": 101,
    },
    "provisional_name of open up blocked duct",
  ],
  [PART, { "rooms_cable of G-01": GONE, site_usual_cable: "indoor drop" }, "rooms_cable of G-01"],
  [PART, { "rooms_plate of G-01": GONE, site_usual_plate: "single outlet" }, "rooms_plate of G-01"],
  [PART, { "rooms_cable of G-01": GONE, "rooms_run of G-01": GONE }, "rooms_cable of G-01"],
])("%s: %j is nothing to be told", (rule, changes, where) => expect(said(rule, changes, where)).toEqual([]));
