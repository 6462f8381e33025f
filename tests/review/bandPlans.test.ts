/** What is said of user bands that stand twice or overlap, each finding whole and each bound on both sides. */
import type { Finding } from "../../src/review/finding";
import { bandPlans } from "../../src/review/rules/bandPlans";
import { at, found, smallBook, type Row } from "./smallBook";

type BandRow = [band: number | string, centre: number | string, width?: number | string];
const rows = (plan: string, ...bands: BandRow[]): Row[] =>
  bands.map(([band, centre, width = 46]) => ({ plan, band, centre, width }));
const all = (plans: Row[]): Finding[] => found(bandPlans, smallBook({ plans }));
const of = (...bands: BandRow[]): Finding[] => all(rows("P", ...bands));

test("bands apart by their width, or without a centre or a width: nothing", () => {
  expect(of([1, 990], [2, 1036], [3, 1082])).toEqual([]);
  expect(of([1, 990], [2, ""], [3, 991, ""])).toEqual([]);
  // Half of 46 and half of 20.
  expect([of([1, 990], [2, 1023, 20]), of([1, 990], [2, 1022.9, 20]).length]).toEqual([[], 1]);
  // Two plans are two cables.
  expect(all([...rows("P", [1, 990]), ...rows("Q", [1, 990])])).toEqual([]);
});

describe("a number that stands twice", () => {
  const TWICE = {
    weight: "wrong",
    effect: "Nothing that takes this plan can be worked out.",
    remedy: "Take the numbers from the maker's sheet.",
  };
  test("where one is missing, that one was meant", () =>
    expect(of([1, 990], [2, 1036], [2, 1082], [4, 1128])).toStrictEqual([
      {
        ...TWICE,
        place: at("plans_band", 3),
        message: "User band 2 of P stands twice.",
        expected: "3, which is missing.",
        meant: 3,
      },
    ]));
  test("where more are missing, nobody knows which", () =>
    expect(of([1, 990], [1, 1036], [1, 1082])).toStrictEqual(
      [2, 3].map((row) => ({
        ...TWICE,
        place: at("plans_band", row),
        message: "User band 1 of P stands twice.",
        expected: "Each number once.",
      })),
    ));
  test("blank in two rows is no number", () => expect(of(["", 990], ["", 1036])).toEqual([]));
});

describe("two bands that overlap", () => {
  const OVERLAP = {
    weight: "wrong",
    effect: "Both receivers would lose their picture.",
    remedy: "Take the centre from the maker's sheet: were digits exchanged?",
  };
  const odd = (findings: Finding[]) => findings.map(({ place, meant }) => [place, meant]);
  test("the one out of its order is the slip, and belongs between its neighbours", () =>
    expect(of([9, 1590], [1, 990], [3, 1140], [2, 1605])).toStrictEqual([
      {
        ...OVERLAP,
        place: at("plans_centre", 4),
        message: "User bands 2 and 9 of P overlap: 1605 and 1590 MHz.",
        expected: "About 1065 MHz, half-way between its neighbours.",
        meant: 1065,
      },
    ]));
  test("with no neighbour on one side nothing is meant", () =>
    expect(of([1, 990], [2, 1140], [3, 1000])).toStrictEqual([
      {
        ...OVERLAP,
        place: at("plans_centre", 3),
        message: "User bands 1 and 3 of P overlap: 990 and 1000 MHz.",
        expected: "Bands apart by at least their width.",
      },
    ]));
  test("where both are out of order it is the second", () =>
    expect(odd(of([1, 1000], [2, 1600], [3, 1300], [4, 1590], [5, 1400]))).toEqual([
      [at("plans_centre", 4), 1350],
    ]));
  test("at one centre, and the second in order without the first: it is the first", () =>
    expect(odd(of([1, 1000], [2, 1000], [3, 1100]))).toEqual([[at("plans_centre", 1), undefined]]));
  test("one that overlaps with two is told once", () =>
    expect(odd(of([1, 990], [2, 1036], [3, 1082], [4, 1013]))).toEqual([[at("plans_centre", 4), undefined]]));
  test("out of order with the one before alone: it belongs half-way to the one after", () =>
    expect(odd(of([1, 1100], [2, 1085], [3, 1130]))).toEqual([
      [at("plans_centre", 1), undefined],
      [at("plans_centre", 2), 1115],
    ]));
});
