/** What a diagnosis says of its readings: means by hand, and what stands for what is left out. */
import { diagnose } from "../../../src/engine/diagnosis/diagnose";
import type { Reading } from "../../../src/engine/diagnosis/evidence";
import { evidenceInWords } from "../../../src/engine/diagnosis/evidenceInWords";
import type { Doubt } from "../../../src/engine/diagnosis/typedOutlet";

const DOUBTFUL = "check the readings";
const BAND = { low: 950, high: 2150 };
/** Off the prediction by so much at the low and the highest frequency. */
const reading = (outlet: string, off: readonly number[], more: Partial<Reading> = {}): Reading => ({
  outlet,
  path: ["B1"],
  frequencies: off.length === 3 ? [950, 1350, 2150] : [950, 2150].slice(0, off.length),
  predicted: off.map((_, at) => 60 - at),
  measured: off.map((one, at) => 60 - at + one),
  volts: null,
  voltsPredicted: null,
  ...more,
});
const HEAD = reading("H1", [], { volts: 17, voltsPredicted: 18 });

describe("evidence in words", () => {
  test.each([
    [
      "one outlet beside another",
      [reading("R1", [-3, -5.25]), reading("R2", [0.5, 1])],
      [0],
      BAND,
      "Measured less predicted, on average: R1: −3.0 dB at the lowest frequency and −5.3 dB at the highest frequency; other outlets of H1: +0.5 dB at the lowest frequency and +1.0 dB at the highest frequency.",
    ],
    [
      "two outlets, each named with its own",
      [reading("R1", [-3, -5]), reading("R2", [3, 5])],
      [0, 1],
      BAND,
      "Measured less predicted, on average: R1 reads −3.0 dB at the lowest frequency and −5.0 dB at the highest frequency; R2 reads +3.0 dB at the lowest frequency and +5.0 dB at the highest frequency.",
    ],
    [
      "three outlets by name, with the mean of each end",
      [reading("R1", [-3, -6]), reading("R2", [-1, -3]), reading("R3", [-2, 0])],
      [0, 1, 2],
      BAND,
      "Measured less predicted, on average: R1, R2, R3: −2.0 dB at the lowest frequency and −3.0 dB at the highest frequency.",
    ],
    [
      "four by their number",
      ["R1", "R2", "R3", "R4"].map((name) => reading(name, [-1, -1])),
      [0, 1, 2, 3],
      BAND,
      "Measured less predicted, on average: 4 outlets: −1.0 dB at the lowest frequency and −1.0 dB at the highest frequency.",
    ],
    [
      "a frequency between the ends, in MHz",
      [reading("R1", [-1, -2, -3])],
      [0],
      BAND,
      "Measured less predicted, on average: R1: −1.0 dB at the lowest frequency and −2.0 dB at 1350 MHz and −3.0 dB at the highest frequency.",
    ],
    [
      "one frequency alone, in MHz",
      [reading("R1", [-1])],
      [0],
      { low: 950, high: 950 },
      "Measured less predicted, on average: R1: −1.0 dB at 950 MHz.",
    ],
    [
      "volts beside the levels, as their mean",
      [
        reading("R1", [0, 0], { volts: 12, voltsPredicted: 18 }),
        reading("R2", [0, 0], { volts: 14, voltsPredicted: 17 }),
        reading("R3", [0, 0], { volts: 1 }),
      ],
      [0, 1, 2],
      BAND,
      "Measured less predicted, on average: R1, R2, R3: +0.0 dB at the lowest frequency and +0.0 dB at the highest frequency, 13.0 V where 17.5 V was predicted.",
    ],
    [
      "what was not heard is counted, and not in the mean",
      [
        reading("R1", [-3, -9], { silent: [false, true] }),
        reading("R2", [-1, -2]),
        reading("R3", [-2, -4], { silent: [false, false] }),
      ],
      [0, 1, 2],
      BAND,
      "Measured less predicted, on average: R1, R2, R3: −2.0 dB at the lowest frequency and −3.0 dB at the highest frequency (1 without signal).",
    ],
    [
      "nothing heard at one end",
      [reading("R1", [-3, -9], { silent: [false, true] })],
      [0],
      BAND,
      "Measured less predicted, on average: R1: −3.0 dB at the lowest frequency and no signal at the highest frequency.",
    ],
    [
      "volts and no level",
      [reading("R1", [], { volts: 0.2, voltsPredicted: 18 })],
      [0],
      BAND,
      "Measured less predicted, on average: R1: no level read, 0.2 V where 18.0 V was predicted.",
    ],
    [
      "the head unit's own volts, apart from its outlets",
      [reading("R1", [-3, -5]), HEAD, reading("R2", [1, 2])],
      [0, 1],
      BAND,
      "Measured less predicted, on average: R1: −3.0 dB at the lowest frequency and −5.0 dB at the highest frequency; other outlets of H1: +1.0 dB at the lowest frequency and +2.0 dB at the highest frequency; at H1 itself 17.0 V where 18.0 V was predicted.",
    ],
    [
      "the head unit's own volts alone",
      [HEAD, reading("R1", [1, 2])],
      [0],
      BAND,
      "At H1 itself 17.0 V where 18.0 V was predicted; other outlets of H1: +1.0 dB at the lowest frequency and +2.0 dB at the highest frequency.",
    ],
  ] as const)("%s", (_, readings, at, band, words) => {
    expect(evidenceInWords(readings, at, "H1", band)).toBe(words);
  });
});

describe("doubts", () => {
  const doubts = (count: number): Doubt[] =>
    Array.from({ length: count }, (_, at) => ({
      where: at === 4 ? "" : `R${at + 1}`,
      message: `says ${at + 1}`,
      next: `next ${at + 1}`,
    }));
  /** Where nothing was measured they stand alone. */
  const shown = (some: readonly Doubt[]) => diagnose([], undefined, undefined, some);
  const row = (at: number) => ({
    cause: DOUBTFUL,
    where: `R${at}`,
    probability: 0,
    evidence: `says ${at}`,
    next: `next ${at}`,
  });

  test("up to four are shown, each in a row", () => {
    expect(shown(doubts(4))).toEqual([1, 2, 3, 4].map(row));
  });
  test("of five the fourth row stands for two, and names those that have a place", () => {
    const five = shown(doubts(5));
    expect(five.slice(0, 3)).toEqual([1, 2, 3].map(row));
    expect(five.slice(3)).toEqual([
      {
        ...row(0),
        where: "",
        evidence: "2 more readings to look at: R4.",
        next: "Put right those above first, and look again.",
      },
    ]);
  });
  test("of the rest, twelve are named", () => {
    const named = (count: number) => shown(doubts(count)).at(-1)!.evidence;
    const twelve = "R4, R6, R7, R8, R9, R10, R11, R12, R13, R14, R15, R16";
    expect(named(16)).toBe(`13 more readings to look at: ${twelve}.`);
    expect(named(17)).toBe(`14 more readings to look at: ${twelve} and others.`);
  });
  test("come first, and alone where nothing can be ranked", () => {
    expect(diagnose([], undefined, undefined, doubts(1))).toEqual([row(1)]);
    const ranked = diagnose(
      [{ head: "H1", readings: [reading("R1", [0, 0])] }],
      undefined,
      undefined,
      doubts(2),
    );
    expect(ranked.slice(0, 2)).toEqual([row(1), row(2)]);
    expect(ranked[2]!.cause).not.toBe(DOUBTFUL);
    expect(ranked.length).toBeLessThanOrEqual(8);
  });
});
