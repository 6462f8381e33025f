/** What does not fit of a place and its slots, each finding whole and each bound on both sides. */
import type { Finding } from "../../src/review/finding";
import { placeAndSlots } from "../../src/review/rules/placeAndSlots";
import { at, atField, found, smallBook, type Row } from "./smallBook";

const told = (slots: readonly Row[], fields: Row = {}, dishes: readonly Row[] = []): Finding[] =>
  found(placeAndSlots, smallBook({ slots, dishes }, fields));
const named = (...slots: readonly string[]): Row[] => slots.map((slot) => ({ slot }));

describe("a place above the rain", () => {
  const high = (site_height?: number | string, site_rain_height?: number | string): Finding[] =>
    told([], { site_height, site_rain_height });
  test("is a digit too many", () =>
    expect(high(4501, 4.5)).toStrictEqual([
      {
        weight: "doubtful",
        place: atField("site_height"),
        message: "The place is said to lie 4501 m above the sea, higher than the rain above it (4.5 km).",
        expected: "Less than 4500 m: was a digit typed too many?",
        effect: "No rain is reckoned with, so signals look safer than they are.",
        remedy: "Look it up on a map, or correct the rain height.",
      },
    ]));
  test("as high as it, or either unknown: nothing", () => {
    expect(high(4500, 4.5)).toEqual([]);
    expect(high("4501", 4.5)).toEqual([]);
    expect(high(4501, "4.5")).toEqual([]);
    expect(told([])).toEqual([]);
  });
});

describe("slots of one dish", () => {
  test("too far apart, counted from the first, with those that are not", () =>
    expect(told(named("10E", "35 e", "35.5E", "16W", "elsewhere"))).toStrictEqual(
      [
        [3, "35.5E lies 25.5 degrees from 10E, and one dish is to receive both."] as const,
        [4, "16W lies 26 degrees from 10E, and one dish is to receive both."] as const,
      ].map(([row, message]) => ({
        weight: "doubtful",
        place: at("slots_slot", row),
        message,
        expected: "At most 25 degrees apart on one dish (common practice, no source): were digits exchanged?",
        effect: "Its aim, and what the crew sets up, go by it.",
        remedy: "Compare with the list of slots, or add a dish for it.",
      })),
    ));
  test("either side of 180 degrees they are near", () => {
    expect(told(named("170E", "170W"))).toEqual([]);
    expect(told(named("165E", "165W"))[0]!.message).toMatch(/^165W lies 30 degrees from 165E,/);
  });
  test("with two dishes, or with one slot, nothing; with one dish in a row of its own as without", () => {
    const far = named("10E", "50E");
    expect(told(far, {}, [{ name: "D1" }, { name: "D2" }])).toEqual([]);
    expect(told(far, {}, [{ name: "D1" }])).toHaveLength(1);
    expect(told(named("10E"))).toEqual([]);
  });
});

describe("below the horizon", () => {
  /** Far from each other on two dishes, so that nothing else is said. */
  const two = [{ name: "D1" }, { name: "D2" }];
  const from = (latitude: number | string, longitude: number | string, ...slots: string[]): Finding[] =>
    told(named(...slots), { site_latitude: latitude, site_longitude: longitude }, two);
  const WRONG = {
    weight: "wrong",
    effect: "Nothing can be aimed at, and no level of it is worked out.",
  };
  const EAST_OR_WEST =
    "Compare with the map, or with the list of slots: east and west, north and south, and their order.";
  test("all slots, for a house on the other side", () => {
    expect(from(40, 98.25, "97W", " 113w")).toStrictEqual([
      {
        ...WRONG,
        place: atField("site_longitude"),
        message: "From a longitude of 98.25 none of the slots can be seen: 97W,  113w.",
        expected: "-98.25: west is negative.",
        meant: -98.25,
        remedy: EAST_OR_WEST,
      },
    ]);
    expect(from(40, 98.25, "97W")[0]!.place).toEqual(atField("site_longitude"));
  });
  test("one slot whose letter is another", () =>
    expect(from(40, -98, "97W", "113.5E")).toStrictEqual([
      {
        ...WRONG,
        place: at("slots_slot", 2),
        message: "The slot 113.5E is below the horizon of this place.",
        expected: "113.5W, by the place.",
        meant: "113.5W",
        remedy: EAST_OR_WEST,
      },
    ]));
  test("all of them by either sign: the place of another job", () =>
    expect(from(40, -98, "5W", "10W")).toStrictEqual([
      {
        ...WRONG,
        place: atField("site_latitude"),
        message: "From 40, -98 none of the slots can be seen: 5W, 10W.",
        expected: "The place of this job, or slots that stand above it: were they left from another one?",
        remedy: "Compare latitude and longitude with the map.",
      },
    ]));
  test.each<[string, Parameters<typeof from>, string[]]>([
    ["all are seen", [40, -98, "97W", "113W"], []],
    ["straight under the slot", [0, 10, "10E"], []],
    ["one, by either sign, beside one that is seen", [40, -98, "97W", "10W"], []],
    ["one alone, by either sign", [40, -98, "10W"], []],
    [
      "all, of which one by the other letter",
      [40, -98, "113E", "10E"],
      ["The slot 113E is below the horizon of this place."],
    ],
    ["no latitude", ["", 98, "97W"], []],
    ["no longitude", [40, "98", "97W"], []],
    ["no slot", [40, 98], []],
    ["what is no slot", [40, 98, "97 West", "x97W", "97W2"], []],
  ])("%s", (_, asked, messages) => expect(from(...asked).map(({ message }) => message)).toEqual(messages));
});

describe("an obstacle", () => {
  /** On the equator at 0: straight under 0E, and 60E stands at atan((cos 60° − 0.15127) / sin 60°), 21.93 degrees. */
  const before = (slot: string, obstacle: number | string, site_clearance?: number): Finding[] =>
    told([{ slot, obstacle }], { site_latitude: 0, site_longitude: 0, site_clearance });
  const hides = (most: number, message: string): Finding => ({
    weight: "wrong",
    place: at("slots_obstacle", 1),
    message,
    expected: `At most ${most.toFixed(1)} degrees; were metres typed?`,
    usual: { low: 0, high: most },
    effect: "The dish does not see the slot from there.",
    remedy:
      "Measure the obstacle in degrees above the horizontal, as seen from the dish; or choose another place.",
  });
  test("in the beam, or nearer to it than the clearance asked for", () => {
    expect(before("0E", 85, 5)).toEqual([]);
    expect(before("0E", 85.1, 5)).toStrictEqual([
      hides(85, "The obstacle before 0E reaches 85.1 degrees, and the beam comes in at 90.0."),
    ]);
    expect(before("60E", 16.9, 5)).toEqual([]);
    expect(before("60E", 17, 5)).toStrictEqual([
      hides(16.9, "The obstacle before 60E reaches 17 degrees, and the beam comes in at 21.9."),
    ]);
    expect(before("60E", 21.9)).toEqual([]);
    expect(before("60E", 22)).toStrictEqual([
      hides(21.9, "The obstacle before 60E reaches 22 degrees, and the beam comes in at 21.9."),
    ]);
  });
  test("that is no number, before what is not seen anyway, or at an unknown place: nothing", () => {
    expect(before("60E", "22")).toEqual([]);
    expect(before("170E", 5)).toEqual([]);
    for (const place of [{ site_latitude: 0 }, { site_longitude: 0 }])
      expect(told([{ slot: "60E", obstacle: 22 }], place)).toEqual([]);
    expect(told(named("60E"), { site_latitude: 0, site_longitude: 0 })).toEqual([]);
  });
});

test("a modulation that cannot be read; one that can, and none", () =>
  expect(
    told([
      { slot: "97W", modulation: "8PSK 2/3" },
      { slot: "99W", modulation: "9PSK 2/3" },
      { slot: "101W", modulation: " " },
    ]),
  ).toStrictEqual([
    {
      weight: "wrong",
      place: at("slots_modulation", 2),
      message:
        'The modulation of 99W is “9PSK 2/3”. modulation is "9PSK 2/3"; give modulation and code rate, such as "8PSK 2/3", and "DVB-S" before them where it is not DVB-S2.',
      expected: "A modulation with its code rate, such as 8PSK 2/3.",
      effect: "Its carrier to noise is judged by nothing, and what hangs on its dish is not worked out.",
      remedy: "Compare with the list of transponders.",
    },
  ]));
