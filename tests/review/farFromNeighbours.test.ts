/** What is said of a figure that its column allows and its neighbours contradict, each bound on both sides. */
import type { Finding } from "../../src/review/finding";
import { farFromNeighbours } from "../../src/review/rules/farFromNeighbours";
import { at, found, smallBook, type Row } from "./smallBook";

const all = (
  blocks: Parameters<typeof smallBook>[0],
  fields: Parameters<typeof smallBook>[1] = {},
): Finding[] => found(farFromNeighbours, smallBook(blocks, fields));

describe("a length", () => {
  const rows = (key: string, ...lengths: (number | string)[]): Row[] =>
    lengths.map((length) => ({ [key]: length }));
  const FAR = {
    weight: "doubtful",
    expected: "A length like those around it, or a note that says why not.",
    remedy: "Compare with the plan, above all the decimal point.",
  };
  test("of a run, and of a trunk", () =>
    expect(
      all({ rooms: rows("run", 10, 10, 10, 10, 10, 185), branches: rows("length", 0.4, 10, 10, 10, 10, 10) }),
    ).toStrictEqual([
      {
        ...FAR,
        place: at("rooms_run", 6),
        message: "A run of 185, where the middle of the column is 10.",
        effect: "The outlet's level and the cable to buy go by it.",
      },
      {
        ...FAR,
        place: at("branches_length", 1),
        message: "A trunk of 0.4, where the middle of the column is 10.",
        effect: "Every outlet behind it goes by it.",
      },
    ]));
  // Rows that are alike still vary by a quarter: e to the power of 3.5 quarters is 2.399.
  test.each<[string, (number | string)[], Record<string, string>, number]>([
    ["2.39 times the middle", [10, 10, 10, 10, 10, 23.9], {}, 0],
    ["2.4 times", [10, 10, 10, 10, 10, 24], {}, 1],
    ["five lengths", [10, 10, 10, 10, 185], {}, 0],
    ["five, and one that is none", [10, 10, 10, 10, 185, 0, "x", -2], {}, 0],
    ["half a metre", [10, 10, 10, 10, 10, 0.5], {}, 0],
    ["less", [10, 10, 10, 10, 10, 0.49], {}, 1],
    ["half a metre in feet", [10, 10, 10, 10, 10, 1.65], { site_unit: "ft" }, 0],
    ["less, in feet", [10, 10, 10, 10, 10, 1.6], { site_unit: "ft" }, 1],
    ["that in metres", [10, 10, 10, 10, 10, 1.6], { site_unit: "m" }, 0],
    // The middle of 5, 5, 10, 10, 20, 20 is 10; half of them are a doubling off, so that a spread is 1.4826 · ln 2: 36 times is within 3.5 of it.
    ["among lengths that are spread", [5, 5, 10, 10, 20, 360, 20], {}, 0],
    ["farther among those", [5, 5, 10, 10, 20, 370, 20], {}, 1],
  ])("%s", (_, lengths, fields, count) =>
    expect(all({ rooms: rows("run", ...lengths) }, fields)).toHaveLength(count),
  );
});

describe("a price", () => {
  const FAR = {
    weight: "doubtful",
    expected: "A price like those of its kind, or a note that says why not.",
    effect: "Each piece that is bought carries it into the price.",
    remedy: "Look the price up, above all its decimal point.",
  };
  test("of a plate or a head unit", () => {
    for (const block of ["plates", "units"])
      expect(all({ [block]: [{ price: 6 }, { price: 6 }, { price: 60 }] })).toStrictEqual([
        {
          ...FAR,
          place: at(`${block}_price`, 3),
          message: "A price of 60, where the others of its kind are about 6.",
        },
      ]);
  });
  test("of a splitter or tap, for each of its ways", () => {
    const splitter = (ways: number | string, price: number, kind = "splitter"): Row => ({
      kind,
      ways,
      price,
    });
    expect(all({ passives: [splitter(2, 4), splitter(4, 8, "Tap"), splitter(8, 160)] })).toStrictEqual([
      {
        ...FAR,
        place: at("passives_price", 3),
        message: "A price of 160, where the others of its kind are about 16 for 8 ways.",
      },
    ]);
    expect(all({ passives: [splitter(2, 4), splitter(4, 8), splitter(8, 16)] })).toEqual([]);
    // An amplifier has no such neighbours, and what has no ways is no divider.
    expect(all({ passives: [splitter(2, 4), splitter(4, 8), splitter(8, 160, "amplifier")] })).toEqual([]);
    expect(all({ passives: [splitter(2, 4), splitter(4, 8), splitter(0, 160)] })).toEqual([]);
  });
  test.each<[string, number[], number]>([
    ["four times its neighbours", [6, 6, 24], 1],
    ["less than four times", [6, 6, 23.9], 0],
    ["a fourth of them", [24, 24, 6], 1],
    ["more than a fourth", [24, 24, 6.1], 0],
    ["two prices", [6, 60], 0],
    ["nothing among them", [6, 0, 60], 0],
    // Of 1, 2, 4 and 8 the middle is 2.83, and the middle of the ways to it 1.5 doublings or half one, so one: 3.5 · 1.4826 doublings are 36.5 times.
    ["103 among 1 to 8", [1, 2, 4, 8, 103], 0],
    ["104 among 1 to 8", [1, 2, 4, 8, 104], 1],
  ])("%s", (_, prices, count) =>
    expect(all({ plates: prices.map((price) => ({ price })) })).toHaveLength(count),
  );
  test("of a fitting: a clip and a dish are not alike", () =>
    expect(all({ fittings: [{ price: 6 }, { price: 6 }, { price: 60 }] })).toEqual([]));
});

describe("a reel", () => {
  const cables = (...rows: [price: number | string, reel: number | string][]) =>
    all({ cables: rows.map(([price, reel]) => ({ price, reel })) });
  test("at the price of a metre", () =>
    expect(cables([50, 100], [60, 100], [60, 100], [0.5, 100])).toStrictEqual([
      {
        weight: "doubtful",
        place: at("cables_price", 4),
        message: "A reel at 0.5: 0.005 for each metre or foot, where the other cables are about 0.6.",
        expected: "The price of a whole reel.",
        effect: "Each reel that is bought carries it into the price.",
        remedy: "Look the price up: of a reel, not of a metre.",
      },
    ]));
  test("of a length that is the odd one", () =>
    expect(cables([50, 100], [120, 200], [60, 100], [50, 1])).toStrictEqual([
      {
        weight: "doubtful",
        place: at("cables_reel", 4),
        message:
          "A reel of 1 at 50, where the other reels are of about 100: 50 for each metre or foot, where the other cables are about 0.6.",
        expected: "A reel of about 100, or the price of so long a one.",
        usual: { low: 100, high: 200 },
        effect: "Too few reels are bought, or too many.",
        remedy: "Look up the length and the price of one reel.",
      },
    ]));
  const where = (findings: Finding[]) => findings.map(({ place }) => `${place!.sheet} ${place!.cell}`);
  test.each<[string, [number | string, number | string][], string[]]>([
    [
      "ten times as dear a metre",
      [
        [50, 100],
        [50, 100],
        [500, 100],
      ],
      ["cables_price A4"],
    ],
    [
      "less than that",
      [
        [50, 100],
        [50, 100],
        [499, 100],
      ],
      [],
    ],
    [
      "a tenth",
      [
        [50, 100],
        [50, 100],
        [5, 100],
      ],
      ["cables_price A4"],
    ],
    [
      "more than that",
      [
        [50, 100],
        [50, 100],
        [5.1, 100],
      ],
      [],
    ],
    [
      "four times as long a reel",
      [
        [50, 100],
        [50, 100],
        [20, 400],
      ],
      ["cables_reel A4"],
    ],
    [
      "less than that",
      [
        [50, 100],
        [50, 100],
        [19, 399],
      ],
      ["cables_price A4"],
    ],
    [
      "a fourth of it",
      [
        [50, 100],
        [50, 100],
        [500, 25],
      ],
      ["cables_reel A4"],
    ],
    [
      "more than that",
      [
        [50, 100],
        [50, 100],
        [500, 26],
      ],
      ["cables_price A4"],
    ],
    [
      "two cables",
      [
        [50, 100],
        [500, 100],
      ],
      [],
    ],
    [
      "two, and some without a price or a reel",
      [
        [50, 100],
        [500, 100],
        ["", 100],
        [0, 100],
        [50, ""],
        [50, 0],
      ],
      [],
    ],
    [
      "all of one price a metre",
      [
        [50, 100],
        [50, 100],
        [100, 200],
      ],
      [],
    ],
  ])("%s", (_, rows, wanted) => expect(where(cables(...rows))).toEqual(wanted));
});

describe("a price copied from another row", () => {
  test("of a part half the size", () =>
    expect(
      all({
        passives: [
          { name: "two", kind: "splitter", ways: 2, price: 9 },
          { name: "four", kind: "splitter", ways: 4, price: 9 },
        ],
        units: [
          { name: "single", kind: "a", bands: 4, price: 90 },
          { name: "double", kind: "b", bands: 8, price: 90 },
        ],
      }),
    ).toStrictEqual(
      [
        ["passives", "four of 4 ways costs what two of 2 costs, 9."],
        ["units", "double of 8 user bands costs what single of 4 costs, 90."],
      ].map(([block, message]) => ({
        weight: "doubtful",
        place: at(`${block}_price`, 2),
        message,
        expected: "A price of its own.",
        effect: "Each piece that is bought carries it into the price.",
        remedy: "Look both prices up: was one copied from the other's row?",
      })),
    ));
  test.each<[string, Row, Row, number]>([
    ["not twice the size", { ways: 2 }, { ways: 3 }, 0],
    ["of another price", { ways: 2 }, { ways: 4, price: 10 }, 0],
    ["of another kind", { ways: 2 }, { ways: 4, kind: "tap" }, 0],
    ["free", { ways: 2, price: 0 }, { ways: 4, price: 0 }, 0],
    ["of no size", { ways: "" }, { ways: 4 }, 0],
    ["of no ways at all", { ways: 0 }, { ways: 0 }, 0],
    ["the larger one first", { ways: 4 }, { ways: 2 }, 1],
  ])("%s", (_, one, other, count) =>
    expect(
      all({ passives: [one, other].map((row) => ({ name: "x", kind: "splitter", price: 9, ...row })) }),
    ).toHaveLength(count),
  );
});

describe("a level of a head unit", () => {
  const levels = (...ends: [low: number | string, high: number | string][]) =>
    all({ units: ends.map(([out_low, out_high]) => ({ out_low, out_high })) });
  test("twelve decibels from the middle of all", () =>
    expect(levels([80, 80], [80, 92])).toStrictEqual([
      {
        weight: "doubtful",
        place: at("units_out_high", 2),
        message: "A level of 92 dBµV, where the other head units and ends of the band have about 80.",
        expected: "A level like those of the others, or a note that says why not.",
        effect: "Every outlet that it feeds goes by it.",
        remedy: "Compare with the maker's sheet.",
      },
    ]));
  test("less than twelve, or three levels in all: nothing", () => {
    expect([levels([80, 80], [80, 91.9]), levels([80, 80], [92, ""])]).toEqual([[], []]);
    expect(levels([68, 80], [80, 80]).map(({ place }) => place)).toEqual([at("units_out_low", 1)]);
  });
});
