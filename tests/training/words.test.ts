/** Words that a trainee or a trainer reads: none is missing, and each line of a worked example holds. */
import { drawFor, exampleOf } from "../../src/training/drawNumbers";
import type { AnySet } from "../../src/training/exercise";
import { trainingSets } from "../../src/training/sets/all";
import { slipValues, unanswerable } from "../../src/training/slips/slipValues";
import { numbersAmong } from "../../src/training/solve";
import { valueOfLine } from "../support/valueOfLine";

const WORD = /\p{L}{2}/u;
/** Height of a site by the sea, the Earth's radius and the orbit's in km, the cables' temperature, levels of EN 60728-1. */
const CONSTANTS = [0, 6378.137, 42_164.17, 20, 47, 77];
/** Figures in another unit, of a kind by its name, or of two questions together. */
const TAKEN_OVER =
  /^(?:current|cost|tuners of room \d.*|margin, a share of the price|resistance of the loop, .*)$/;
const PURE = /factor|share|square|over|divisible|band|steps of|word/;
const drawsOf = (set: AnySet) => [
  exampleOf(set),
  ...Array.from({ length: 6 }, (_, seed) => drawFor(set, seed, { name: "Demonstration", occurrence: 1 })),
];

describe.each(trainingSets.map((set) => [set.id, set] as const))("%s", (id, set) => {
  test("every figure has a label, every number of a question a heading, a task and hints", () => {
    for (const { numbers } of drawsOf(set)) {
      for (const question of set.questions) {
        for (const { label, value } of question.given(numbers as never)) {
          expect(label).toMatch(WORD);
          expect(value).not.toBe("");
        }
        for (const words of [question.heading, question.task, ...question.hints]) expect(words).toMatch(WORD);
      }
    }
  });

  test("every mistake has a name, and no two letters of it are left to guess", () => {
    for (const { numbers, key } of drawsOf(set)) {
      for (const question of set.questions) {
        const names = [
          ...slipValues(set, question, numbers, numbersAmong(key), "mixed up").map(({ name }) => name),
          ...unanswerable(set, question, numbers, numbersAmong(key)),
        ];
        for (const name of names) expect(name).toMatch(WORD);
      }
    }
  });

  test("a figure of the worked example has the unit that the question gives it; the answer that which is asked", () => {
    const { numbers, key } = exampleOf(set);
    const other: string[] = [];
    for (const question of set.questions) {
      const { answer, before } = question;
      const given = [...question.given(numbers as never), ...(before?.(numbers as never) ?? [])];
      const steps = question.example(numbers as never, numbersAmong(key));
      for (const { symbol, value, unit, line } of steps) {
        if (line !== "" || typeof value !== "number") continue;
        // "deg west" is a sign, and a count needs no unit.
        const units = given
          .filter((one) => typeof one.value === "number" && Math.abs(one.value) === Math.abs(value))
          .map((one) => (one.unit ?? "").replace(/ (?:north|south|east|west)$/, ""));
        const counts = ["pieces", "ways", "tuners"];
        if (units.length > 0 && !units.includes(unit) && !units.some((one) => counts.includes(one)))
          other.push(`${question.key}, ${symbol}: "${unit}" for ${units.join(" or ")}`);
      }
      const last = steps.at(-1)!;
      const isBandNumber = answer.kind === "number" && answer.unit === "band" && last.unit === "";
      if (answer.kind === "number" && id !== "bad-quote" && last.unit !== answer.unit && !isBandNumber)
        other.push(`${question.key}: "${last.unit}" for ${answer.unit}`);
    }
    expect(other).toEqual([]);
  });

  test("an earlier answer that a worked example goes on from has its own unit there", () => {
    const { numbers, key } = exampleOf(set);
    const measured = new Map(
      set.questions.flatMap(({ key: name, answer }) =>
        answer.kind === "number" && !answer.exact ? [[name, answer.unit] as const] : [],
      ),
    );
    const other = set.questions.flatMap((question) =>
      question
        .example(numbers as never, numbersAmong(key))
        .filter(({ line }) => line === "")
        .flatMap(({ symbol, value, unit }) => {
          const from = question.needs.find((need) => measured.has(need) && key[need] === value);
          return from === undefined || unit === measured.get(from)
            ? []
            : [`${question.key}, ${symbol}: "${unit}" for ${measured.get(from)}`];
        }),
    );
    expect(other).toEqual([]);
  });

  test("what is worked out has a line and a unit, or is a pure number by its own words", () => {
    if (id === "bad-quote") return;
    const { numbers, key } = exampleOf(set);
    const known = [...Object.values(numbers).flat(), ...Object.values(key), ...CONSTANTS].flatMap((one) =>
      typeof one === "number" ? [Math.abs(one)] : [],
    );
    const bare: string[] = [];
    for (const question of set.questions) {
      for (const { meaning, value, unit, line } of question.example(numbers as never, numbersAmong(key))) {
        if (typeof value !== "number") continue;
        const isKnown = known.some((one) => Math.abs(one - Math.abs(value)) < 1e-9);
        if (line === "" && !isKnown && !TAKEN_OVER.test(meaning)) bare.push(`no line: ${meaning}`);
        if (line !== "" && unit === "" && !PURE.test(meaning)) bare.push(`no unit: ${meaning}`);
      }
    }
    expect(bare).toEqual([]);
  });

  test("the worked example's steps have symbol and words, and each line gives the value beside it", () => {
    const { numbers, key } = exampleOf(set);
    for (const question of set.questions) {
      const steps = question.example(numbers as never, numbersAmong(key));
      const symbols = steps.map(({ symbol }) => symbol);
      // A row of the quote is its own symbol.
      if (id !== "bad-quote") expect(symbols.filter((symbol) => symbol === "")).toEqual([]);
      for (const { meaning } of steps) expect(meaning).toMatch(WORD);
      // What nobody gave must be worked out in a line.
      const last = steps.at(-1)!;
      if (typeof last.value === "number" && id !== "bad-quote") expect(last.line).not.toBe("");
      for (const { line, value, meaning } of steps) {
        // The quote's lines are written as the paper writes them, "4 x 130 = 520.00".
        if (line === "" || typeof value !== "number" || id === "bad-quote") continue;
        const { result, greatest } = valueOfLine(line);
        expect({
          meaning,
          apart: Math.abs(result - value) <= 1e-6 * Math.max(greatest, Math.abs(value), 1e-9),
        }).toEqual({
          meaning,
          apart: true,
        });
      }
    }
  });
});

test("what an earlier question has shown step by step is not shown again", () => {
  const symbols = (id: string, key: string): string[] => {
    const set = trainingSets.find((one) => one.id === id)!;
    const example = exampleOf(set);
    const question = set.questions.find((one) => one.key === key)!;
    return question.example(example.numbers as never, numbersAmong(example.key)).map(({ symbol }) => symbol);
  };
  // The cable's figures stand with the lowest frequency, the dish's three axes with the azimuth.
  for (const [id, first, later, shown] of [
    ["cable", "lossLow", "high", ["k1", "k2", "k0"]],
    ["cable", "lossLow", "slope", ["k1", "k2", "k0"]],
    ["look-angles", "azimuth", "elevation", ["a", "r"]],
  ] as const) {
    expect(symbols(id, first)).toEqual(expect.arrayContaining([...shown]));
    const again = symbols(id, later);
    expect(again.length).toBeGreaterThan(0);
    expect(again.filter((one) => (shown as readonly string[]).includes(one))).toEqual([]);
  }
});
