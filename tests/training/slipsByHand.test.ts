/**
 * Where slips lead that nobody outside has thought of (see outsideSlips.test.ts
 * for the others), with round figures and worked out by hand: each line is the
 * question's own formula as somebody writes it down who makes that mistake.
 *
 * Azimuth and elevation: a sphere of 6371 km, Roddy, Satellite Communications,
 * 4th ed., ch. 3. Copper grows by 0.00393 for each °C (IEC 60028, from memory),
 * the loss of a cable by 0.00198 (0.0011 for each °F).
 */
import type { Answer, Earlier } from "../../src/training/exercise";
import { trainingSets } from "../../src/training/sets/all";
import { KINDS, type QuoteNumbers } from "../../src/training/sets/badQuote";
import { slipValues } from "../../src/training/slips/slipValues";

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const deg = (radians: number): number => (radians * 180) / Math.PI;
const tan = (degrees: number): number => Math.tan(rad(degrees));
const { sin, cos, log10, sqrt } = Math;

/** The name of a slip and where it leads; what leads to several answers by one name stands as often. */
type Row = readonly [question: string, name: string, answer: Answer];

function held(id: string, numbers: object, earlier: Earlier, rows: readonly Row[]): void {
  const set = trainingSets.find((one) => one.id === id)!;
  const missed = rows.filter(([key, name, answer]) => {
    const question = set.questions.find((one) => one.key === key)!;
    const found = slipValues(set, question, numbers, earlier).filter((one) => one.name === name);
    return !found.some(({ value }) =>
      typeof value === "number" && typeof answer === "number"
        ? Math.abs(value - answer) <= 1e-9 * Math.max(1, Math.abs(answer))
        : value === answer,
    );
  });
  expect(missed).toEqual([]);
}

test("look angles: slot 20° east of a site at 40° north", () => {
  const cosB = cos(rad(20)) * cos(rad(40));
  const ratio = 6371 / 42164.17;
  const elevation = deg(Math.atan((cosB - ratio) / sqrt(1 - cosB ** 2)));
  const cosRaw = cos(20) * cos(40);
  held(
    "look-angles",
    {
      ...{ latitude: 40, longitude: 10, slot: 30, declination: -4 },
      ...{ obstacle: 8, dish: 2, margin: 3, chimney: 10, rimWidth: 600, rimHeight: 660 },
    },
    { azimuth: 150, elevation: 30, offset: 24 },
    [
      // The sine of 20 rad is above nought, so the angle lies in the first half turn.
      ["azimuth", "degrees used as radians", deg(Math.atan2(sin(20), -sin(40) * cos(20)))],
      ["azimuth", "answer left in radians", rad(180 - deg(Math.atan(tan(20) / sin(rad(40)))))],
      ["azimuth", "angle off the meridian given", deg(Math.atan(tan(20) / sin(rad(40))))],
      // 150° true are 154° by a compass that points 4° to the west.
      ["compass", "half a turn off", 334],
      ["compass", "counted anticlockwise", 206],
      ["elevation", "degrees used as radians", deg(Math.atan((cosRaw - ratio) / sqrt(1 - cosRaw ** 2)))],
      ["elevation", "taken from the vertical", 90 - elevation],
      ["elevation", "answer left in radians", rad(elevation)],
      // (8 − 2)/tan(30° − 3°)
      ["setback", "divided and multiplied by the tangent exchanged", 6 * tan(27)],
      ["setback", "height of the dish left out", 8 / tan(27)],
      ["setback", "height of the dish counted twice", 4 / tan(27)],
      ["setback", "margin left out", 6 / tan(30)],
      ["setback", "margin counted twice", 6 / tan(24)],
      // 2 + 10·tan 30°
      ["ray", "sine for tangent", 7],
      ["ray", "divided and multiplied by the tangent exchanged", 2 + 10 / tan(30)],
      ["ray", "height of the dish left out", 10 * tan(30)],
      ["ray", "height of the dish counted twice", 4 + 10 * tan(30)],
      ["offset", "sine for cosine", deg(Math.asin(600 / 660))],
      ["tilt", "answer to 6 left out", 30],
      ["tilt", "answer to 6 added instead of subtracted", 54],
    ],
  );
});

test("cable: 50 m at 900 and 2500 MHz, whose roots are 30 and 50", () => {
  // In dB for 100 m: 18 + 0.9 + 0.4 below, 30 + 2.5 + 0.4 above.
  held(
    "cable",
    {
      cable: "drop",
      k1: 0.6,
      k2: 0.001,
      k0: 0.4,
      feet: 100,
      low: 900,
      high: 2500,
      hot: 70,
      level: 80,
      plate: 1,
    },
    { metres: 50, lossLow: 9.65, high: 16.45, hotLoss: 18 },
    [
      ["lossLow", "k1 with the wrong sign", (-18 + 1.3) / 2],
      ["lossLow", "decimal point of k1 misplaced", (180 + 1.3) / 2],
      ["lossLow", "decimal point of k1 misplaced", (1.8 + 1.3) / 2],
      ["lossLow", "k2 with the wrong sign", (18 - 0.9 + 0.4) / 2],
      ["lossLow", "decimal point of k0 misplaced", (18.9 + 4) / 2],
      ["lossLow", "decimal point of k0 misplaced", (18.9 + 0.04) / 2],
      ["high", "lowest frequency's loss scaled by the frequency instead of its root", (9.65 * 25) / 9],
      ["lossLow", "root taken of the whole sum", sqrt(540 + 0.9 + 0.4) / 2],
      ["high", "root taken of the whole sum", sqrt(1500 + 2.5 + 0.4) / 2],
      ["high", "k1 with the wrong sign", (-30 + 2.9) / 2],
      ["high", "decimal point of k1 misplaced", (300 + 2.9) / 2],
      ["high", "decimal point of k1 misplaced", (3 + 2.9) / 2],
      ["high", "k2 with the wrong sign", (30 - 2.5 + 0.4) / 2],
      ["high", "decimal point of k0 misplaced", (32.5 + 4) / 2],
      ["high", "decimal point of k0 misplaced", (32.5 + 0.04) / 2],
      ["hotLoss", "growth in heat ten times too small", 16.45 * 1.0099],
    ],
  );
});

test("splitters: 4 ways and 1.5 dB, then 2 ways and 1 dB; taps of 10 and 12 dB", () => {
  const [four, two] = [10 * log10(4), 10 * log10(2)];
  held(
    "splitters",
    {
      ...{ ways: 4, excess: 1.5, ways2: 2, excess2: 1, tap: 10, through: 0.8, tap2: 12 },
      ...{ level: 80, cable: 6 },
    },
    { first: 7.5, both: 11.5, through: 1.3 },
    [
      ["first", "loss beyond the ideal counted twice", four + 3],
      ["both", "second less first", two + 1 - 7.5],
      ["both", "loss beyond the ideal counted twice", 7.5 + two + 2],
      ["both", "answer to 1 counted twice", 15 + two + 1],
      ["through", "tap value taken for the way through", 10],
      ["through", "what the branch takes left out", 0.8],
      // A tap of 10 dB passes on nine tenths.
      ["through", "loss beyond the ideal counted twice", -10 * log10(0.9) + 1.6],
      // 7.5 + 1.3 + 12
      ["branch", "mean taken instead of the sum", 20.8 / 3],
      ["branch", "second tap subtracted instead of added", -3.2],
      ["branch", "second tap counted twice", 32.8],
      ["branch", "answer to 1 left out", 13.3],
      ["branch", "answer to 1 subtracted instead of added", 5.8],
      ["branch", "answer to 1 counted twice", 28.3],
    ],
  );
});

test("tuners: 10 + 4·2 + 3·4 are 30; 1204 MHz in a band at 1400 MHz", () => {
  held(
    "tuners",
    { receivers: 10, two: 4, four: 3, capacity: 9, rooms: ["receiver"], frequency: 1204, band: 1400 },
    { tuners: 30, units: 4 },
    [
      ["tuners", "recorders left out", 10],
      ["tuners", "two-tuner recorder counted as three", 10 + 12 + 12],
      ["tuners", "four-tuner recorder counted as five", 10 + 8 + 15],
      // 30/9 are 3.33.
      ["units", "rounded to the nearest instead of up", 3],
      // (1204 + 1400)/4 − 350
      ["word", "wanted frequency with the wrong sign", 49 - 350],
      ["word", "decimal point of wanted frequency misplaced", 3360 - 350],
      ["word", "decimal point of wanted frequency misplaced", 30],
      ["word", "user band with the wrong sign", -49 - 350],
      ["word", "decimal point of user band misplaced", 3801 - 350],
      ["word", "decimal point of user band misplaced", 336 - 350],
      ["word2", "wanted frequency left out", -100],
      ["word2", "wanted frequency with the wrong sign", -1304],
      ["word2", "decimal point of wanted frequency misplaced", 11_940],
      ["word2", "decimal point of wanted frequency misplaced", 20.4],
    ],
  );
});

/** Of copper at 70 °C, 1 + 0.00393·50, as somebody has it who goes wrong. */
const COPPER_70: readonly (readonly [name: string, factor: number])[] = [
  ["cold taken for hot", 1 - 0.00393 * 90],
  ["Fahrenheit taken for degrees Celsius", 1 + 0.00393 * 138],
  ["divided by the heat's factor instead of multiplied", 1 / 1.1965],
  ["percent of the heat taken as a share", 20.65],
  ["growth in heat ten times too large", 2.965],
  ["growth in heat ten times too small", 1.01965],
  ["only what heat adds given", 0.1965],
  ["1 left out of the heat's factor, with the whole temperature", 0.2751],
  ["one degree only", 1.00393],
  ["25 °C taken as the base", 1 + 0.00393 * 45],
  ["heat reckoned twice", 1.1965 ** 2],
  ["temperature over 20 taken as the factor", 3.5],
];

test("supply: 14 V, 200 mA and 5 ohm for 100 m at 70 °C", () => {
  held(
    "supply",
    { loop: 5, feet: 100, hot: 70, supply: 14, milliamperes: 200, watts: 4, least: 10, most: 13.55 },
    { ohms: 2, hotOhms: 2.5, drop: 0.5, volts: 13.5 },
    [
      ["hotOhms", "there and back counted twice", 4 * 1.1965],
      ["volts", "ohms divided by amperes", 14 - 2.5 / 0.2],
      ["volts", "current squared, watts for volts", 14 - 0.04 * 2.5],
      // 13.6 V and 13.75 V, where 10 to 13.55 V are asked for.
      ["verdict", "heat left out", "high"],
      ["verdict", "one way taken for the loop", "high"],
      // 4 V over 0.2 A and 0.05 ohm for each metre are 400 m, and so many fewer in heat.
      ...COPPER_70.map(([name, factor]): Row => ["run", name, 400 / factor]),
      ["run", "divided by 1000 instead of 100", 4000 / 1.1965],
      ["run", "minimum volts left out", 1400 / 1.1965],
      ["run", "minimum volts added instead of subtracted", 2400 / 1.1965],
      ["run", "minimum volts counted twice", -600 / 1.1965],
      ["run", "milliamperes divided by 100", 40 / 1.1965],
      // V² − 14·V + 4·2.5 = 0
      ["power", "the lower root taken or drop given instead of the volts left", (14 - sqrt(156)) / 2],
      ["power", "watts taken for amperes", 14 - 4 * 2.5],
    ],
  );
});

test("pricing: runs of 200 m with 2 m of slack on each of five, and 10 % of waste", () => {
  held(
    "pricing",
    {
      ...{ runs: [20, 30, 40, 50, 60], slack: 2, waste: 10, reel: 100, reelPrice: 60, others: 300 },
      ...{ outlets: 10, minutes: 45, rate: 40, margin: 20, tax: 20, discount: 5 },
    },
    { cable: 231, reels: 3, materials: 480, labour: 300, price: 975 },
    [
      ["cable", "divided by 1 + waste instead of multiplied", 210 / 1.1],
      ["cable", "waste reckoned twice", 210 * 1.21],
      ["reels", "rounded to the nearest instead of up", 2],
      ["materials", "other parts counted twice", 180 + 600],
      ["total", "tax ten times too small", 975 * 1.02],
    ],
  );
});

test("a small job: 1000 ft at 2500 MHz and 70 °C, a trunk of 2 ohm", () => {
  // 32.9 dB for 100 m at 20 °C; 1 + 0.00198·50 in heat.
  const inHeat = 1.099;
  held(
    "small-job",
    {
      ...{ receivers: 6, recorders: 2, capacity: 8, ways: 4, excess: 1.5, cable: "drop" },
      ...{ k1: 0.6, k2: 0.001, k0: 0.4, loop: 5, feet: 1000, high: 2500, hot: 70, level: 90, plate: 1 },
      ...{ trunk: 40, supply: 14, amperes: 0.2, unitPrice: 100, parts: 500, hours: 10, rate: 40 },
      ...{ margin: 20, tax: 20 },
    },
    { tuners: 10, units: 2, splitter: 7.5, loss: 100, level: 60, volts: 13.5, cost: 800 },
    [
      ["tuners", "receivers counted twice", 12 + 4],
      ["units", "rounded to the nearest instead of up", 1],
      ["splitter", "loss beyond the ideal counted twice", 10 * log10(4) + 3],
      ["loss", "k1 with the wrong sign", (-30 + 2.9) * 3.048 * inHeat],
      ["loss", "decimal point of k1 misplaced", (300 + 2.9) * 3.048 * inHeat],
      ["loss", "decimal point of k1 misplaced", (3 + 2.9) * 3.048 * inHeat],
      ["loss", "k2 with the wrong sign", (30 - 2.5 + 0.4) * 3.048 * inHeat],
      ["loss", "decimal point of k0 misplaced", (32.5 + 4) * 3.048 * inHeat],
      ["loss", "decimal point of k0 misplaced", (32.5 + 0.04) * 3.048 * inHeat],
      ["loss", "three feet taken for a metre", (32.9 * 10 * inHeat) / 3],
      ["loss", "a yard taken for a foot", 32.9 * 9.144 * inHeat],
      ["loss", "an inch taken for a foot", 32.9 * 0.254 * inHeat],
      ["loss", "0.3 taken for 0.3048", 32.9 * 3 * inHeat],
      ["loss", "digits of 0.3048 exchanged", 32.9 * 3.408 * inHeat],
      ["loss", "feet divided by 3.048", (32.9 * 10 * inHeat) / 3.048],
      ["loss", "growth in heat ten times too small", 32.9 * 3.048 * 1.0099],
      ["loss", "heat reckoned twice", 32.9 * 3.048 * inHeat ** 2],
      // 14 V less 0.2 A·2 ohm, and so many more in heat.
      ...COPPER_70.map(([name, factor]): Row => ["volts", name, 14 - 0.4 * factor]),
      ["volts", "divided by 1000 instead of 100", 14 - 0.04 * 1.1965],
      // 2·100 + 500 + 10·40
      ["cost", "other parts subtracted instead of added", 100],
      ["cost", "other parts counted twice", 1600],
      ["cost", "labour counted twice", 1500],
      // 800 are 1000 with a margin of 20 % of the price.
      ["total", "tax reckoned twice", 1440],
      ["total", "tax ten times too small", 1020],
    ],
  );
});

test("tuning words: what a fraction of a quarter invites, and what one of three quarters does", () => {
  const set = trainingSets.find(({ id }) => id === "tuners")!;
  const question = set.questions.find(({ key }) => key === "word")!;
  const led = (frequency: number) =>
    new Map(
      slipValues(set, question, { frequency, band: 1400, rooms: [] }, {}).map(({ name, value }) => [
        name,
        value,
      ]),
    );
  // (1201 + 1400)/4 − 350 are 300.25, (1203 + 1400)/4 − 350 are 300.75: right are 300 and 301.
  expect(led(1201).get("rounded up instead of to the nearest")).toBe(301);
  expect(led(1201).has("digits cut off instead of rounded")).toBe(false);
  expect(led(1203).get("digits cut off instead of rounded")).toBe(300);
  expect(led(1203).has("rounded up instead of to the nearest")).toBe(false);
  expect(led(1201).get("not rounded to a whole number")).toBe(300.25);
});

describe("a mistake that these numbers do not allow, or that would lead to the right answer, is none", () => {
  const names = (id: string, key: string, numbers: object, earlier: Earlier): string[] => {
    const set = trainingSets.find((one) => one.id === id)!;
    const question = set.questions.find((one) => one.key === key)!;
    return slipValues(set, question, numbers, earlier).map(({ name }) => name);
  };
  const UP = "rounded to the nearest instead of up";
  const DOWN = "rounded down instead of up";
  const BROKEN = "not rounded to a whole number";

  test("rounding up", () => {
    const tuners = { receivers: 10, two: 4, four: 3, capacity: 8, rooms: ["receiver"] };
    const units = (count: number) => names("tuners", "units", tuners, { tuners: count });
    // 30/8 are 3.75, 33/8 are 4.125, 32/8 are 4.
    expect(units(30)).toEqual(expect.arrayContaining([DOWN, BROKEN]));
    expect(units(30)).not.toContain(UP);
    expect(units(33)).toEqual(expect.arrayContaining([DOWN, BROKEN, UP]));
    for (const name of [DOWN, BROKEN, UP]) expect(units(32)).not.toContain(name);
  });
  test("a full last head unit", () => {
    const free = (tuners: number) =>
      names("tuners", "free", { capacity: 8, rooms: ["receiver"] }, { tuners, units: 4 });
    expect(free(32)).toContain("a full last head unit taken for a free one");
    expect(free(30)).not.toContain("a full last head unit taken for a free one");
  });
  test("rooms of a kind that does not stand before the last", () => {
    const band = (...rooms: string[]) => names("tuners", "band", { rooms }, {});
    const [one, two, four] = ["receiver", "recorder, 2 tuners", "recorder, 4 tuners"];
    const TWO = "two-tuner recorder counted as one";
    const FOUR = "four-tuner recorder counted as two";
    expect(band(one!, two!, one!)).toContain(TWO);
    expect(band(one!, two!, one!)).not.toContain(FOUR);
    expect(band(one!, four!, one!)).toContain(FOUR);
    expect(band(one!, one!, two!)).not.toContain(TWO);
    expect(band(two!, two!, one!)).not.toContain("receivers left out");
    expect(band(one!, one!, one!)).not.toContain("one tuner more for each recorder");
  });
  test("hours that are whole", () => {
    const labour = (minutes: number) =>
      names("pricing", "labour", { outlets: 10, minutes, rate: 40, runs: [] }, {});
    const broken = [
      "hours and minutes written as a decimal",
      "hours cut to whole ones",
      "hours rounded up to whole ones",
    ];
    expect(labour(45)).toEqual(expect.arrayContaining(broken));
    for (const name of broken) expect(labour(60)).not.toContain(name);
    const cost = (hours: number) =>
      names(
        "small-job",
        "cost",
        { unitPrice: 100, parts: 500, hours, rate: 40, capacity: 8, cable: "drop" },
        { units: 2, tuners: 10 },
      );
    expect(cost(10.5)).toContain("half an hour read as 50 minutes");
    expect(cost(10)).not.toContain("half an hour read as 50 minutes");
  });
  test("a negative angle, where it is none", () => {
    const azimuth = (slot: number) =>
      names("look-angles", "azimuth", { latitude: 50, longitude: 10, slot }, {});
    // West of the site the angle lies beyond half a turn.
    expect(azimuth(-10)).toContain("360 not added");
    expect(azimuth(30)).not.toContain("360 not added");
  });
  test("an earlier answer that is missing", () => {
    const scene = { latitude: 40, longitude: 10, slot: 30, obstacle: 8, dish: 2, margin: 3, chimney: 10 };
    const ray = (earlier: Earlier) => names("look-angles", "ray", scene, { elevation: 30, ...earlier });
    const FOUR = ["distance of 4 taken", "distance of 4 taken and height of the dish left out"];
    expect(ray({ setback: 12 })).toEqual(expect.arrayContaining(FOUR));
    for (const name of FOUR) expect(ray({})).not.toContain(name);
    const job = { supply: 14, amperes: 0.2, loop: 5, trunk: 40, hot: 70, feet: 100, cable: "drop" };
    const volts = (earlier: Earlier) => names("small-job", "volts", job, earlier);
    expect(volts({ loss: 6 })).toContain("loss in decibels subtracted from volts");
    expect(volts({})).not.toContain("loss in decibels subtracted from volts");
    // There and back is said once only, of the length.
    expect(volts({}).filter((name) => name === "there and back counted twice")).toHaveLength(1);
  });
});

describe("the bad quote, checked by somebody who goes wrong", () => {
  const quote: QuoteNumbers = {
    ...{ receivers: 8, recorders: 5, dropFeet: 1000, trunkFeet: 500 },
    ...{ outlets: 10, outletMinutes: 45, unitMinutes: 90, rate: 40, margin: 20, tax: 10 },
    prices: [100, 50, 200, 1, 2, 30, 40],
    mistakes: {
      reception: { row: 3, kind: KINDS.sum },
      cable: { row: 5, kind: KINDS.feet },
      labour: { row: 9, kind: KINDS.sum },
      totals: { row: 12, kind: KINDS.tax },
    },
    off: { reception: 18, cable: 9, labour: 9, totals: 27 },
  };
  const set = trainingSets.find(({ id }) => id === "bad-quote")!;
  const led = (key: string, earlier: Earlier = {}) => {
    const question = set.questions.find((one) => one.key === key)!;
    return (name: string) =>
      slipValues(set, question, quote, earlier)
        .filter((one) => one.name === name)
        .map(({ value }) => value);
  };

  test("the row of each part that looks wrong to him", () => {
    // 18 tuners need three head units; counted once 13 need two, and rounded down 18 are two.
    const reception = led("receptionRow");
    expect(reception("two-tuner recorder counted as one")).toEqual([1]);
    expect(reception("head units rounded down")).toEqual([1]);
    expect(reception("sums not tried")).toEqual([0]);
    // It is the sum that is wrong, which he tries.
    expect(reception("quantities not compared with the survey")).toEqual([]);
    expect(reception("row of the spreadsheet given")).toEqual([20]);
    expect(reception("place within the part given")).toEqual([]);
    expect(reception("first row of the part taken")).toEqual([1]);
    expect(reception("last row of the part taken")).toEqual([]);
    // 300, 150 and 218.
    expect(reception("row with the greatest sum taken")).toEqual([1]);
    expect(reception("total that follows from the wrong row")).toEqual([10, 11, 12, 13]);
    const cable = led("cableRow");
    // Row 4 is right in metres, so it looks wrong in feet, and in other metres.
    expect(cable("feet taken for metres")).toEqual([4]);
    expect(cable("0.3 taken for 0.3048")).toEqual([4]);
    // Only quantity times price, which is right in every row.
    expect(cable("quantities not compared with the survey")).toEqual([0]);
    expect(cable("sums not tried")).toEqual([]);
    expect(cable("place within the part given")).toEqual([2]);
    expect(cable("minutes taken for hours")).toEqual([]);
    const labour = led("labourRow");
    expect(labour("minutes taken for hours")).toEqual([7]);
    expect(labour("one trip counted")).toEqual([]);
    expect(labour("place within the part given")).toEqual([3]);
    const totals = led("totalsRow");
    expect(totals("margin reckoned as markup")).toEqual([11]);
    expect(totals("cost taken for wrong because it holds wrong rows")).toEqual([10]);
    expect(totals("tax taken for wrong because it goes on from another row")).toEqual([]);
    expect(totals("total that follows from the wrong row")).toEqual([13]);
    expect(totals("place within the part given")).toEqual([3]);
    expect(totals("feet taken for metres")).toEqual([]);
  });
  test("what he says is wrong with it", () => {
    const reception = led("receptionKind");
    expect(reception("sum named where the quantity is wrong")).toEqual([]);
    expect(reception("quantity named where the sum is wrong")).toEqual([
      KINDS.tuners,
      KINDS.feet,
      KINDS.minutes,
    ]);
    expect(reception("mistake of the totals named")).toEqual([
      KINDS.left,
      KINDS.markup,
      KINDS.tax,
      KINDS.added,
    ]);
    const cable = led("cableKind");
    expect(cable("sum named where the quantity is wrong")).toEqual([KINDS.sum]);
    expect(cable("quantity named where the sum is wrong")).toEqual([]);
    expect(cable("mistake of another quantity named")).toEqual([KINDS.tuners, KINDS.minutes]);
    const totals = led("totalsKind");
    expect(totals("margin and tax taken for each other")).toEqual([KINDS.markup]);
    expect(totals("another mistake of the totals named")).toEqual([KINDS.left, KINDS.added]);
    expect(totals("mistake of the rows above named")).toEqual([
      ...[KINDS.sum, KINDS.tuners, KINDS.feet, KINDS.minutes],
    ]);
  });
  test("the sum that he puts right, of the row that he named", () => {
    const sum = led("cableSum", { cableRow: 5 });
    // 500 ft are 152.4 m at 2: 304.8; it stands with 500 m, 1000.
    expect(sum("sum of the quote left as it is")).toEqual([1000]);
    expect(sum("feet taken for metres")).toEqual([1000]);
    expect(sum("quantity of the quote left as it is")).toEqual([1000]);
    expect(sum("difference between right and quoted sum given")).toEqual([695.2]);
    expect(sum("quantity given")).toEqual([152.4]);
    expect(sum("price of one given")).toEqual([2]);
    expect(sum("divided by the price instead of multiplied")).toEqual([76.2]);
    expect(sum("added instead of multiplied")).toEqual([154.4]);
    // The drop cable costs 1; its sum is 304.8 too, so that no mistake is seen, and 3 splitters are 90.
    expect(sum("price of another row taken")).toEqual([152.4]);
    expect(sum("sum of another row put right")).toEqual([90]);
    expect(sum("margin reckoned in")).toEqual([381]);
    expect(sum("tax reckoned in")).toEqual([expect.closeTo(335.28, 9)]);
    expect(sum("two-tuner recorder counted as one")).toEqual([]);
    expect(sum("three feet taken for a metre")).toEqual([333.4]);
    // Without a row nothing is reckoned; a total has no quantity.
    expect(led("cableSum", {})("quantity given")).toEqual([]);
    expect(led("cableSum", { cableRow: 11 })("quantity given")).toEqual([]);
    // Of a row that counts head units, recorders matter: two splitters instead of three.
    expect(led("cableSum", { cableRow: 6 })("two-tuner recorder counted as one")).toEqual([60]);
  });
});

test("a compass bearing is shown with the turn that brings it between 0 and 360", () => {
  const set = trainingSets.find(({ id }) => id === "look-angles")!;
  const { example } = set.questions.find(({ key }) => key === "compass")!;
  const last = (azimuth: number, declination: number) =>
    example({ declination } as never, { azimuth }).at(-1)!;
  expect(last(150, 4)).toMatchObject({ value: 146, line: "150 − 4" });
  expect(last(2, 5)).toMatchObject({ value: 357, line: "2 − 5 + 360" });
  expect(last(5, 5)).toMatchObject({ value: 0, line: "5 − 5" });
  expect(last(358, -5)).toMatchObject({ value: 3, line: "358 − (-5) − 360" });
  expect(last(355, -5)).toMatchObject({ value: 0, line: "355 − (-5) − 360" });
});
