/** Both sides of every limit by which readings of a job are doubted; the limits are the project's assumptions: no source. */
import { plausible } from "../../../src/engine/diagnosis/plausibility";
import type { TypedHead, TypedOutlet } from "../../../src/engine/diagnosis/typedOutlet";
import type { TypedReading } from "../../../src/engine/diagnosis/typedReading";

const value = (number: number, unit?: string): TypedReading =>
  unit === undefined ? { kind: "value", value: number } : { kind: "value", value: number, unit };
const BLANK: TypedReading = { kind: "blank" };

const outletOf = (
  outlet: string,
  predicted: readonly (number | null)[],
  levels: readonly (number | TypedReading)[],
  more: Partial<TypedOutlet> = {},
): TypedOutlet => ({
  outlet,
  head: "H1",
  frequencies: [950, 2150].slice(0, predicted.length),
  predicted,
  levels: levels.map((one) => (typeof one === "number" ? value(one) : one)),
  volts: BLANK,
  voltsPredicted: null,
  ...more,
});

describe("a job's readings", () => {
  const DUE: readonly [number, number][] = [
    [72, 63],
    [70, 60],
    [69, 58],
    [66, 52],
    [61, 44],
  ];
  /** As predicted, but for what one says otherwise. */
  const job = (otherwise: Readonly<Record<number, Partial<TypedOutlet>>> = {}): TypedOutlet[] =>
    DUE.map((due, at) =>
      outletOf(`R${at + 1}`, due, due, { volts: value(18), voltsPredicted: 18, ...otherwise[at + 1] }),
    );
  const levels = (...read: (number | TypedReading)[]): Partial<TypedOutlet> => ({
    levels: read.map((one) => (typeof one === "number" ? value(one) : one)),
  });
  const heads = (volts: TypedReading, head = "H1"): TypedHead => ({ head, volts, voltsPredicted: 18 });
  const wheres = (found: ReturnType<typeof plausible>) => found.doubts.map(({ where }) => where);
  const swapped = (at: number) => levels(DUE[at - 1]![1], DUE[at - 1]![0]);

  test("as predicted, nothing is doubted and all is left as it is", () => {
    const given = job();
    const headsGiven = [heads(value(18))];
    expect(plausible(given, headsGiven)).toEqual({
      doubts: [],
      refused: false,
      outlets: given,
      heads: headsGiven,
    });
  });

  test("three of five outlets swapped: refused as a whole; two: each by itself", () => {
    // R1's ends are 9 dB apart, and so on: each saves at least 18 dB.
    const three = plausible(job({ 1: swapped(1), 4: swapped(4), 5: swapped(5) }), []);
    expect(three).toMatchObject({ refused: true, outlets: [], heads: [] });
    expect(three.doubts).toEqual([
      {
        where: "all readings",
        message:
          "The columns seem to be swapped: at 3 outlets the lowest frequency and highest frequency fit the prediction only in one another's place.",
        next: expect.stringContaining("each in its own column") as string,
      },
    ]);
    const two = plausible(job({ 4: swapped(4), 5: swapped(5) }), []);
    expect(two.refused).toBe(false);
    expect(wheres(two)).toEqual(["R4", "R5"]);
    expect(two.outlets.map((one) => one.levels.map(({ kind }) => kind).join())).toEqual([
      "value,value",
      "value,value",
      "value,value",
      "blank,blank",
      "blank,blank",
    ]);
    expect(two.outlets.map(({ volts }) => volts.kind)).toEqual(Array(5).fill("value"));
  });

  test("swapped with the volts, the volts are left out too", () => {
    const found = plausible(job({ 4: { ...levels(66, 18), volts: value(52) } }), []);
    expect(found.doubts.map(({ message }) => message)).toEqual([
      "R4: highest frequency and volts seem to be swapped: they fit the prediction in one another's place.",
    ]);
    expect(found.outlets[3]).toMatchObject({
      volts: BLANK,
      levels: [BLANK, BLANK],
      outlet: "R4",
      head: "H1",
    });
  });

  test("one end of all outlets in another unit: refused, and the end named", () => {
    const given = job().map((one, at) => ({ ...one, ...levels(DUE[at]![0], DUE[at]![1] - 108.75) }));
    const found = plausible(given, []);
    expect(found.refused).toBe(true);
    expect(wheres(found)).toEqual(["all at the highest frequency"]);
    expect(found.doubts[0]!.message).toContain("dBm");
  });

  test("one head unit of two in dBmV: its outlets alone are left out", () => {
    const other = job().map((one, at) => ({
      ...one,
      outlet: `S${at + 1}`,
      head: "H2",
      ...(at < 2 ? levels(DUE[at]![0] - 60, DUE[at]![1] - 60) : {}),
    }));
    const found = plausible([...job(), ...other.slice(0, 2)], []);
    expect(found.refused).toBe(false);
    expect(wheres(found)).toEqual(["H2"]);
    expect(found.outlets.map((one) => one.levels[0]!.kind)).toEqual([
      ...Array(5).fill("value"),
      "blank",
      "blank",
    ]);
  });

  describe("a unit typed beside the number", () => {
    const typed = (unit: string, count: number) =>
      plausible(
        job(
          Object.fromEntries(
            DUE.slice(0, count).map(([low, high], at) => [
              at + 1,
              levels(value(low, unit), value(high, unit)),
            ]),
          ),
        ),
        [],
      );
    test("at half of the readings or more: refused, and the unit named", () => {
      expect(typed("dBmV", 3)).toMatchObject({ refused: true });
      expect(typed("dBmV", 3).doubts[0]!.message).toBe(
        "These readings do not look like dBµV: they were typed in dBmV.",
      );
      expect(typed("%", 5).doubts[0]!.message).toContain("typed in percent.");
    });
    test("at fewer: each outlet by itself", () => {
      const found = typed("dBmV", 2);
      expect(found.refused).toBe(false);
      expect(wheres(found)).toEqual(["R1", "R2"]);
    });
    test.each(["dBµV", "dB"])("%s is the cell's own", (unit) => {
      expect(typed(unit, 5)).toMatchObject({ refused: false, doubts: [] });
    });
    test("at one reading: that one is left out", () => {
      const found = plausible(job({ 2: levels(70, value(60, "mV")), 3: levels(value(69, "dB"), 58) }), []);
      // Half of an outlet's two readings is enough to ask about both.
      expect(wheres(found)).toEqual(["R2"]);
    });
  });

  describe("one odd level", () => {
    const at = (low: number, high: number) => plausible(job({ 2: levels(low, high) }), []);
    test.each([
      [
        "a zero",
        at(0, 60),
        "R2, lowest frequency: 0 is no level: enter “no signal” if the meter found none, or leave it blank.",
      ],
      [
        "a zero at the highest frequency",
        at(70, 0),
        "R2, highest frequency: 0 is no level: enter “no signal” if the meter found none, or leave it blank.",
      ],
      [
        "more than a meter shows",
        plausible(job({ 2: { ...levels(125, 131), predicted: [124, 120] } }), []),
        "R2, highest frequency: 131 where 120 is predicted: a digit or the unit may be wrong.",
      ],
      [
        "less than a meter shows",
        plausible(job({ 2: { ...levels(-5, -20.1), predicted: [-4, -12] } }), []),
        "R2, highest frequency: −20.1 where −12 is predicted: a digit or the unit may be wrong.",
      ],
      [
        "just more than 15 dB too much",
        at(70, 75.1),
        "R2, highest frequency: 75.1 where 60 is predicted: a digit or the unit may be wrong.",
      ],
      [
        "more than 20 dB down at the lowest frequency alone",
        at(49.9, 60),
        "R2, lowest frequency: 49.9 where 70 is predicted: a digit or the unit may be wrong.",
      ],
      [
        "a point one place off at the highest frequency",
        at(70, 6),
        "R2, highest frequency: 6 where 60 is predicted: it is 10 times too small, so the decimal point may stand one place too far left.",
      ],
    ] as const)("%s", (_, found, words) => {
      expect(found.doubts.map(({ message }) => message)).toEqual([words]);
      expect(found.outlets[1]!.levels.filter(({ kind }) => kind === "blank")).toHaveLength(1);
      expect(
        found.outlets
          .filter((__, place) => place !== 1)
          .flatMap((one) => one.levels)
          .every(({ kind }) => kind === "value"),
      ).toBe(true);
    });
    test.each([
      ["15 dB too much", at(70, 75)],
      ["20 dB down at the lowest frequency", at(50, 60)],
      ["25 dB down at the highest frequency: a cable loses more there", at(70, 35)],
      ["25 dB down with the other end 6.1 dB off", at(45, 53.9)],
    ] as const)("not: %s", (_, found) => {
      expect(found.doubts).toEqual([]);
    });
  });

  describe("volts", () => {
    const volts = (...read: (number | TypedReading)[]) =>
      plausible(
        job(
          Object.fromEntries(
            read.map((one, at) => [at + 1, { volts: typeof one === "number" ? value(one) : one }]),
          ),
        ),
        [],
      );
    test("three odd of five are told once, two one by one", () => {
      const three = volts(61, 62, 63, 18, 18);
      expect(wheres(three)).toEqual(["all volts"]);
      expect(three.doubts[0]!.message).toBe(
        "These volts are not what a supply gives: 61 V, for instance; they may be millivolts.",
      );
      expect(three.outlets.map((one) => one.volts.kind)).toEqual([
        "blank",
        "blank",
        "blank",
        "value",
        "value",
      ]);
      expect(three.outlets.map(({ outlet, levels: both }) => `${outlet} ${both.length}`)).toEqual(
        job().map(({ outlet }) => `${outlet} 2`),
      );
      expect(wheres(volts(61, 62, 18, 18, 18))).toEqual(["R1", "R2"]);
    });
    test("three odd of six are told one by one", () => {
      const found = plausible(
        job(Object.fromEntries([61, 62, 63].map((one, at) => [at + 1, { volts: value(one) }]))),
        [heads(value(18))],
      );
      expect(wheres(found)).toEqual(["R1", "R2", "R3"]);
    });
    test("60 V and 0 V are a supply's, a minus is not", () => {
      expect(volts(60, 0, 18, 18, 18).doubts).toEqual([]);
      expect(wheres(volts(60.1, -0.1, 18, 18, 18))).toEqual(["R1", "R2"]);
    });
    test.each([
      ["mains", 230, undefined, true],
      ["499 V", 499, undefined, true],
      ["500 V and more is no mains", 500, undefined, false],
      ["a minus sign", -18, undefined, false],
      ["millivolts", 230, "mV", false],
      ["millivolts in capitals", 230, "MV", false],
      ["with its unit", 230, "V", true],
    ] as const)("%s: keep off?", (_, read, unit, isDanger) => {
      const [doubt, ...more] = volts(18, value(read, unit)).doubts;
      expect(more).toEqual([]);
      expect(doubt!.where).toBe("R2");
      expect(/keep off it until a licensed electrician has made sure\.$/.test(doubt!.message)).toBe(isDanger);
      expect(doubt!.message).toMatch(/^R2: −?\d+ m?V cannot come from a supply on this cable/i);
    });
    test("in volts, typed large or small, is fine; in another unit it is asked about", () => {
      expect(volts(value(18, "v"), value(18, "V")).doubts).toEqual([]);
      expect(wheres(volts(value(18, "dB")))).toEqual(["R1"]);
    });
    test("at a head unit: that head unit's alone are left out", () => {
      const found = plausible(job(), [heads(value(230)), heads(value(18), "H2")]);
      expect(wheres(found)).toEqual(["H1"]);
      expect(found.heads).toEqual([heads(BLANK), heads(value(18), "H2")]);
    });
  });

  describe("no volts at a head unit whose outlets have their levels", () => {
    test.each([
      ["no signal", { kind: "no signal" }, true],
      ["1 V", value(1), true],
      ["1.1 V", value(1.1), false],
      ["not read", BLANK, false],
    ] as [string, TypedReading, boolean][])("%s", (_, volts, isDoubted) => {
      const found = plausible(job(), [heads(volts), heads(volts, "H2")]);
      expect(wheres(found)).toEqual(isDoubted ? ["H1"] : []);
      expect(found.heads).toEqual([heads(isDoubted ? BLANK : volts), heads(volts, "H2")]);
    });
    test("half of the levels or fewer within 6 dB is no contradiction", () => {
      const low = (count: number) =>
        job(
          Object.fromEntries(
            DUE.slice(0, count).map(([low, high], at) => [at + 1, levels(low - 8, high - 8)]),
          ),
        );
      expect(wheres(plausible(low(2), [heads(value(0))]))).toEqual(["H1"]);
      expect(wheres(plausible(low(3), [heads(value(0))]))).toEqual([]);
    });
    test("one level is too few", () => {
      const one = (...more: (number | TypedReading)[]) => [outletOf("R1", [72, 63], [72, ...more])];
      expect(wheres(plausible(one(BLANK), [heads(value(0))]))).toEqual([]);
      expect(wheres(plausible(one(63), [heads(value(0))]))).toEqual(["H1"]);
    });
  });

  test("what is no reading is listed by its place, six of them, and counted", () => {
    const unread = (text: string): TypedReading => ({ kind: "unread", text });
    const given = job({
      1: { ...levels(unread("a"), unread("b")), volts: unread("c") },
      2: { ...levels(unread("d"), 60), volts: unread("e") },
    });
    const of = (...volts: TypedReading[]) =>
      plausible(
        given,
        volts.map((one, at) => heads(one, `H${at + 1}`)),
      ).doubts.at(-1);
    const six =
      "R1, lowest frequency (“a”); R1, highest frequency (“b”); R1, volts (“c”); R2, lowest frequency (“d”); R2, volts (“e”); H1, volts (“f”)";
    expect(of(unread("f"))).toEqual({
      where: "",
      message: `Not a reading, and taken as not measured: ${six}.`,
      next: expect.stringContaining("Enter a number") as string,
    });
    expect(of(unread("f"), unread("g"), unread("h"))!.message).toContain(`${six}; and 2 more.`);
  });
});
