/** What does not fit of a place and its slots, each finding whole and each bound on both sides. */
import type { Finding } from "../../src/review/finding";
import { placeAndSlots } from "../../src/review/rules/placeAndSlots";
import { at, atField, found, smallBook, type Row } from "./smallBook";

/** Angles of geometry, and no examples: what stands there is nobody's. */
const E = (degrees: number): string => `${degrees}E`;
const W = (degrees: number): string => `${degrees}W`;

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
    expect(told(named(E(10), "35 e", E(35.5), W(16), "elsewhere"))).toStrictEqual(
      [
        [3, `${E(35.5)} lies 25.5 degrees from ${E(10)}, and one dish is to receive both.`] as const,
        [4, `${W(16)} lies 26 degrees from ${E(10)}, and one dish is to receive both.`] as const,
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
    expect(told(named(E(170), W(170)))).toEqual([]);
    expect(told(named(E(165), W(165)))[0]!.message).toContain(`${W(165)} lies 30 degrees from ${E(165)},`);
  });
  test("with two dishes, or with one slot, nothing; with one dish in a row of its own as without", () => {
    const far = named(E(10), E(50));
    expect(told(far, {}, [{ name: "D1" }, { name: "D2" }])).toEqual([]);
    expect(told(far, {}, [{ name: "D1" }])).toHaveLength(1);
    expect(told(named(E(10)))).toEqual([]);
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
    expect(from(40, -98, "97W", E(113.5))).toStrictEqual([
      {
        ...WRONG,
        place: at("slots_slot", 2),
        message: `The slot ${E(113.5)} is below the horizon of this place.`,
        expected: `${W(113.5)}, by the place.`,
        meant: W(113.5),
        remedy: EAST_OR_WEST,
      },
    ]));
  test("all of them by either sign: the place of another job", () =>
    expect(from(40, -98, W(5), W(10))).toStrictEqual([
      {
        ...WRONG,
        place: atField("site_latitude"),
        message: `From 40, -98 none of the slots can be seen: ${W(5)}, ${W(10)}.`,
        expected: "The place of this job, or slots that stand above it: were they left from another one?",
        remedy: "Compare latitude and longitude with the map.",
      },
    ]));
  test.each<[string, Parameters<typeof from>, string[]]>([
    ["all are seen", [40, -98, "97W", "113W"], []],
    ["straight under the slot", [0, 10, E(10)], []],
    ["one, by either sign, beside one that is seen", [40, -98, "97W", W(10)], []],
    ["one alone, by either sign", [40, -98, W(10)], []],
    [
      "all, of which one by the other letter",
      [40, -98, E(113), E(10)],
      [`The slot ${E(113)} is below the horizon of this place.`],
    ],
    ["no latitude", ["", 98, "97W"], []],
    ["no longitude", [40, "98", "97W"], []],
    ["no slot", [40, 98], []],
    ["what is no slot", [40, 98, "97 West", "x97W", "97W2"], []],
  ])("%s", (_, asked, messages) => expect(from(...asked).map(({ message }) => message)).toEqual(messages));
});

describe("an obstacle", () => {
  /** On the equator at 0: straight under 0 degrees east, and 60 degrees east stands at atan((cos 60° − 0.15127) / sin 60°), 21.93 degrees. */
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
    expect(before(E(0), 85, 5)).toEqual([]);
    expect(before(E(0), 85.1, 5)).toStrictEqual([
      hides(85, `The obstacle before ${E(0)} reaches 85.1 degrees, and the beam comes in at 90.0.`),
    ]);
    expect(before(E(60), 16.9, 5)).toEqual([]);
    expect(before(E(60), 17, 5)).toStrictEqual([
      hides(16.9, `The obstacle before ${E(60)} reaches 17 degrees, and the beam comes in at 21.9.`),
    ]);
    expect(before(E(60), 21.9)).toEqual([]);
    expect(before(E(60), 22)).toStrictEqual([
      hides(21.9, `The obstacle before ${E(60)} reaches 22 degrees, and the beam comes in at 21.9.`),
    ]);
  });
  test("that is no number, before what is not seen anyway, or at an unknown place: nothing", () => {
    expect(before(E(60), "22")).toEqual([]);
    expect(before(E(170), 5)).toEqual([]);
    for (const place of [{ site_latitude: 0 }, { site_longitude: 0 }])
      expect(told([{ slot: E(60), obstacle: 22 }], place)).toEqual([]);
    expect(told(named(E(60)), { site_latitude: 0, site_longitude: 0 })).toEqual([]);
  });
});

test("a modulation that cannot be read; one that can, and none", () =>
  expect(
    told([
      { slot: "97W", modulation: "8PSK 2/3" },
      { slot: W(99), modulation: "9PSK 2/3" },
      { slot: W(101), modulation: " " },
    ]),
  ).toStrictEqual([
    {
      weight: "wrong",
      place: at("slots_modulation", 2),
      message: `The modulation of ${W(99)} is “9PSK 2/3”. modulation is "9PSK 2/3"; give modulation and code rate, such as "8PSK 2/3", and "DVB-S" before them where it is not DVB-S2.`,
      expected: "A modulation with its code rate, such as 8PSK 2/3.",
      effect: "Its carrier to noise is judged by nothing, and what hangs on its dish is not worked out.",
      remedy: "Compare with the list of transponders.",
    },
  ]));
