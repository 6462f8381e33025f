/** Words that a trainee or a trainer reads: none is missing, and each line of a worked example holds. */
import { drawFor, exampleOf } from "../../src/training/drawNumbers";
import type { AnySet } from "../../src/training/exercise";
import { trainingSets } from "../../src/training/sets/all";
import { slipValues, unanswerable } from "../../src/training/slips/slipValues";
import { numbersAmong } from "../../src/training/solve";
import { valueOfLine } from "../support/valueOfLine";

const WORD = /\p{L}{2}/u;
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
      if (answer.kind === "number" && id !== "bad-quote" && ![answer.unit, ""].includes(last.unit))
        other.push(`${question.key}: "${last.unit}" for ${answer.unit}`);
    }
    expect(other).toEqual([]);
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
