/**
 * What was likely meant in a cell of the guest house: names and figures of the job are those of
 * tests/fixtures/quotes/house.json, the answers by the comments of likelyMeant.ts, worked out by hand.
 */
import type { Finding } from "../../src/review/finding";
import { likelyMeant, type Likely } from "../../src/review/likelyMeant";
import type { FirmSays } from "../../src/review/ranges/firm";
import type { Book } from "../../src/workbooks/book";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { mendedEarlierHouse } from "./cleanJobs";
import { cellAt, change, GONE, type Changes } from "./thresholds/pair";

const job = mendedEarlierHouse();
const laidOut = layOut(multiRoom, job);
const outlets = job.blocks.rooms!.map(({ outlet }) => String(outlet));
const runs = job.blocks.rooms!.map(({ run }) => Number(run));

const firm = (fields: FirmSays["fields"]): FirmSays => ({ called: "firm", fields, rows: {}, learned: [] });

function likely(
  rule: string,
  at: string,
  changes: Changes,
  { standards, usual, also = [] }: { standards?: FirmSays; usual?: Finding["usual"]; also?: string[] } = {},
): { found: Likely | undefined; book: Book } {
  const book: Book = {
    ...laidOut,
    sheets: laidOut.sheets.map((sheet) => ({ ...sheet, cells: { ...sheet.cells }, results: {} })),
  };
  change(book, changes);
  const said = (words: string): Finding => ({
    rule,
    weight: "wrong",
    place: cellAt(book, words),
    message: "It is off.",
    remedy: "Look.",
    ...(usual && { usual }),
  });
  const finding = said(at);
  const judged = { read: book, definition: multiRoom, options: { marginFloor: 0, standards } };
  const all = likelyMeant(judged as unknown as Parameters<typeof likelyMeant>[0], [
    finding,
    ...also.map(said),
  ]);
  return { found: all.get(finding), book };
}

const guess = (meant: number | string): Likely => ({ meant, isGuess: true });
const RULE = "input outside its rule";

describe("a word", () => {
  test.each<[string, string, string, Changes, Likely | undefined]>([
    ["a letter twice", "feeding", "rooms_from of G-01", { "rooms_from of G-01": "G11" }, guess("G1")],
    [
      "two letters swapped",
      RULE,
      "rooms_cable of G-01",
      { "rooms_cable of G-01": "indoor dorp" },
      guess("indoor drop"),
    ],
    ["as near to several", "feeding", "branches_from of G0", { "branches_from of G0": "H9" }, undefined],
    [
      "as near to several, of which the row below has one",
      "feeding",
      "branches_from of G0",
      { "branches_from of G0": "H9", "branches_from of G1": "H2" },
      guess("H2"),
    ],
    ["near to none", RULE, "rooms_cable of G-01", { "rooms_cable of G-01": "rope" }, undefined],
    [
      "a name of its own twice",
      "duplicate",
      "rooms_outlet of G-01",
      { "rooms_outlet of G-02": "G-01" },
      undefined,
    ],
    [
      "of a list in which nothing stands",
      RULE,
      "rooms_type of G-01",
      { "rooms_type of G-01": "double" },
      undefined,
    ],
    [
      "on its list, and neither neighbour has it",
      "feeding",
      "rooms_from of G-02",
      { "rooms_from of G-02": "G2" },
      guess("G1"),
    ],
    ["on its list, as its neighbours", "feeding", "rooms_from of G-02", {}, undefined],
  ])("%s", (name, rule, at, changes, wanted) => {
    const { found, book } = likely(rule, at, changes);
    // What is no name of anything can only be cleared.
    const cleared = { undoing: [{ place: cellAt(book, at) }], isGuess: true };
    expect(found).toEqual(name.includes("nothing stands") ? cleared : wanted);
  });
});

describe("a blank", () => {
  const others = (but: string): number[] => runs.filter((_, index) => outlets[index] !== but);
  test.each<[string, string, string, Changes, Likely | undefined]>([
    [
      "fed as the rows above and below",
      "feeding",
      "rooms_from of G-02",
      { "rooms_from of G-02": GONE },
      guess("G1"),
    ],
    ["between two feeds", "feeding", "rooms_from of G-05", { "rooms_from of G-05": GONE }, undefined],
    ["in capitals or not", "feeding", "rooms_from of G-02", { "rooms_from of G-02": " " }, guess("G1")],
    [
      "where nothing is asked for",
      "unit slip",
      "rooms_from of G-02",
      { "rooms_from of G-02": GONE },
      undefined,
    ],
    [
      "a run like those of its feed",
      "entry missing",
      "rooms_run of G-02",
      { "rooms_run of G-02": GONE },
      { usual: { low: 9.5, high: 12.5 } },
    ],
    [
      "of fewer than three on its feed, like those of its floor",
      "entry missing",
      "rooms_run of G-02",
      { "rooms_run of G-02": GONE, "rooms_from of G-04": "U2" },
      { usual: { low: 9.5, high: 26.5 } },
    ],
    [
      "on no feed and no floor, like all",
      "entry missing",
      "rooms_run of G-02",
      { "rooms_run of G-02": GONE, "rooms_from of G-02": GONE, "rooms_floor of G-02": GONE },
      { usual: { low: Math.min(...others("G-02")), high: Math.max(...others("G-02")) } },
    ],
    [
      "a trunk like the others",
      "entry missing",
      "branches_length of G1",
      { "branches_length of G1": GONE },
      { usual: { low: 2, high: 16 } },
    ],
    ["beside two others", "entry missing", "heads_length of H2", { "heads_length of H2": GONE }, undefined],
    [
      "a figure that is no length",
      "entry missing",
      "rooms_quantity of G-01",
      { "rooms_quantity of G-01": GONE },
      undefined,
    ],
    [
      "a part of which all others are one",
      "part lacking or not needed",
      "rooms_plate of G-01",
      {
        ...Object.fromEntries(outlets.map((one) => [`rooms_plate of ${one}`, "single outlet"])),
        "rooms_plate of G-01": GONE,
      },
      guess("single outlet"),
    ],
    [
      "a part of which the others are two",
      "part lacking or not needed",
      "rooms_plate of G-01",
      { "rooms_plate of G-01": GONE },
      undefined,
    ],
  ])("%s", (_, rule, at, changes, wanted) => expect(likely(rule, at, changes).found).toEqual(wanted));

  test("rows that are named themselves say nothing of what is usual", () => {
    const blank = { "rooms_run of G-02": GONE } as const;
    const also = ["rooms_run of G-03"];
    // Of its feed 9.5 and 11 are left: fewer than three, so its floor without 12.5.
    expect(likely("entry missing", "rooms_run of G-02", blank, { also }).found).toEqual({
      usual: { low: 9.5, high: 26.5 },
    });
  });

  test("what the firm has for it", () => {
    const standards = firm({ site_waste: 0.07 });
    expect(likely("entry missing", "site_waste", { site_waste: GONE }, { standards }).found).toEqual(
      guess(0.07),
    );
    expect(likely("entry missing", "site_waste", { site_waste: GONE }).found).toBeUndefined();
  });
});

describe("a figure outside its rule", () => {
  test.each<[string, string, number, Likely | undefined]>([
    ["a percentage as a whole number", "site_tax", 20, { meant: 0.2 }],
    ["a hundredth of it is too much as well", "site_tax", 60, undefined],
    ["inside its rule", "site_tax", 0.4, undefined],
    ["a sign", "site_slack", -2, { meant: 2 }],
    ["a sign, and too much without it", "site_slack", -200, undefined],
    // A dish of 0.3 to 15 m: only a hundredth of 200 fits, only a hundred times 0.02.
    ["two places too many", "site_dish", 200, { meant: 2 }],
    ["two places too few", "site_dish", 0.02, { meant: 2 }],
    ["90 may be 9 or 0.9", "site_dish", 90, undefined],
    ["0.09 may be 0.9 or 9", "site_dish", 0.09, undefined],
    // 1,000 to 50,000 MHz.
    ["a frequency", "site_downlink", 600_000, { meant: 6000 }],
    ["a frequency of two readings", "site_downlink", 11.7, undefined],
  ])("%s", (_, at, typed, wanted) => expect(likely(RULE, at, { [at]: typed }).found).toEqual(wanted));

  test("two fields in each other's place are changed over", () => {
    const { found, book } = likely(RULE, "site_latitude", { site_latitude: -98.25, site_longitude: 39.5 });
    expect(found).toEqual({
      undoing: [
        { place: cellAt(book, "site_latitude"), value: 39.5 },
        { place: cellAt(book, "site_longitude"), value: -98.25 },
      ],
      isGuess: true,
    });
    // A longitude of 120 fits no latitude.
    expect(
      likely(RULE, "site_latitude", { site_latitude: -98.25, site_longitude: 120 }).found,
    ).toBeUndefined();
  });

  test("else what the firm has, where that fits", () => {
    const of = (value: number): Likely | undefined =>
      likely(RULE, "site_dish", { site_dish: 90 }, { standards: firm({ site_dish: value }) }).found;
    expect(of(1.2)).toEqual(guess(1.2));
    expect(of(20)).toBeUndefined();
  });

  test("a negative sum is a sign too many, unless its line is a discount", () => {
    const of = (name: string): Likely | undefined =>
      likely(RULE, `provisional_sum of ${name}`, {
        "provisional_name free": name,
        "provisional_sum free": -90,
      }).found;
    expect(of("desk")).toEqual({ meant: 90 });
    expect(of("Discount for the season")).toBeUndefined();
  });
});

describe("a 0", () => {
  const ZERO = "amount of zero";
  test("that may be blank is cleared, one that must be there is not", () => {
    const { found, book } = likely(ZERO, "rooms_shortest of G-01", { "rooms_shortest of G-01": 0 });
    expect(found).toEqual({ undoing: [{ place: cellAt(book, "rooms_shortest of G-01") }], isGuess: true });
    expect(likely(ZERO, "site_waste", { site_waste: 0 }).found).toBeUndefined();
  });
  test("is what the firm has, unless that is 0", () => {
    const of = (value: number): Likely | undefined =>
      likely(ZERO, "site_waste", { site_waste: 0 }, { standards: firm({ site_waste: value }) }).found;
    expect(of(0.07)).toEqual(guess(0.07));
    expect(of(0)).toBeUndefined();
  });
});

describe("a figure a slip away from what is usual", () => {
  const USUAL_TEMPERATURE = { low: 10, high: 80 };
  test.each<[string, string, number, Finding["usual"], Likely | undefined]>([
    ["a lost point", "rooms_run of G-01", 155, undefined, { meant: 15.5 }],
    // 86.9 · 0.3048 = 26.487, and runs are given to a tenth.
    ["feet", "rooms_run of G-01", 86.9, undefined, { meant: 26.5 }],
    ["a minus", "rooms_run of G-01", -14, undefined, { meant: 14 }],
    // (131 − 32) · 5/9 = 55.
    ["degrees Fahrenheit", "site_hot", 131, USUAL_TEMPERATURE, { meant: 55 }],
    [
      "three quarters of an hour",
      "labour_minutes of fit a head unit",
      0.75,
      { low: 12, high: 200 },
      { meant: 45 },
    ],
    ["two places", "labour_minutes of fit a head unit", 0.8, { low: 12, high: 200 }, { meant: 80 }],
    ["a field of which nothing usual is known", "site_hot", 100, undefined, undefined],
  ])("%s", (_, at, typed, usual, wanted) =>
    expect(likely("far from neighbours", at, { [at]: typed }, { usual }).found).toEqual(wanted),
  );

  test("others that are named themselves do not count: of three nothing is known", () => {
    const also = outlets.slice(4).map((one) => `rooms_run of ${one}`);
    const at = "rooms_run of G-01";
    expect(likely("far from neighbours", at, { [at]: 155 }, { also }).found).toBeUndefined();
    // A fourth beside it: 11 to 16, and G-05 has 14.
    expect(likely("far from neighbours", at, { [at]: 155 }, { also: also.slice(1) }).found).toEqual({
      meant: 15.5,
    });
  });
});

test("nothing is known of a workbook of no template, or where nothing was found", () => {
  const judged = { read: laidOut, definition: undefined, options: { marginFloor: 0 } };
  const finding: Finding = {
    weight: "wrong",
    message: "Off.",
    remedy: "Look.",
    place: cellAt(laidOut, "site_tax"),
  };
  expect(likelyMeant(judged as never, [finding]).size).toBe(0);
  expect(likelyMeant({ ...judged, definition: multiRoom } as never, []).size).toBe(0);
});
