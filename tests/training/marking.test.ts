/** Marking, tried with simulated trainees who make each mistake that is known. */
import { drawFor, type Drawn } from "../../src/training/drawNumbers";
import { toleranceOf, type AnySet, type Answer, type Question } from "../../src/training/exercise";
import { COARSE, pointAndSign } from "../../src/training/generalSlips";
import { markAnswers, POINTS, type MarkedAnswer } from "../../src/training/markAnswers";
import { sharedAnswers, type MarkedSheet } from "../../src/training/sharedAnswers";
import { trainingSets } from "../../src/training/sets/all";
import { slipValues } from "../../src/training/slips/slipValues";
import { numbersAmong, solved } from "../../src/training/solve";

const DRAWS = 40;
/** Each is marked once for every common mistake. */
const NAMED_DRAWS = 12;
const draw = (set: AnySet, seed: number): Drawn => drawFor(set, seed, { name: "Simulated", occurrence: 1 });
/** A count that was forgotten to be rounded is typed to two places. */
const round = ({ answer }: Question<never>, value: Answer): Answer =>
  answer.kind === "choice" ? value : Number(Number(value).toFixed(answer.exact ? 2 : answer.decimals));

type Wrong = Readonly<
  Record<string, (question: Question<never>, own: Record<string, number>) => Answer | undefined>
>;

/**
 * A trainee who works every question out from what stands on the sheet so far,
 * rounds as asked, and goes wrong where `wrong` says so.
 */
function trainee(set: AnySet, { numbers }: Drawn, wrong: Wrong = {}): Record<string, Answer> {
  const sheet: Record<string, Answer> = {};
  for (const question of set.questions) {
    const own = numbersAmong(sheet) as Record<string, number>;
    const answer = wrong[question.key]?.(question, own) ?? solved(question, numbers, own);
    if (answer !== undefined) sheet[question.key] = round(question, answer);
  }
  return sheet;
}

const marks = (set: AnySet, drawn: Drawn, sheet: Readonly<Record<string, unknown>>): MarkedAnswer[] =>
  markAnswers(set, drawn, (key) => sheet[key]);
/** Mistakes that lead to the same answer share it. */
const namesIn = ({ named = "" }: MarkedAnswer): string[] => named.split(" or ");
const at = (marked: readonly MarkedAnswer[], key: string): MarkedAnswer =>
  marked.find((one) => one.key === key)!;

describe.each(trainingSets.map((set) => [set.id, set] as const))("%s", (_, set) => {
  const draws = Array.from({ length: DRAWS }, (_one, seed) => draw(set, seed));

  test("a trainee who rounds every answer as asked and goes on from there has all marks", () => {
    for (const drawn of draws) {
      const marked = marks(set, drawn, trainee(set, drawn));
      expect(marked.filter(({ outcome }) => outcome !== "right")).toEqual([]);
      expect(marked.every(({ points }) => points === POINTS.right)).toBe(true);
    }
  });

  test("so has one who carries every digit, and one who is off by the tolerance", () => {
    for (const drawn of draws) {
      expect(marks(set, drawn, drawn.key).every(({ outcome }) => outcome === "right")).toBe(true);
      for (const question of set.questions) {
        const right = drawn.key[question.key]!;
        if (typeof right !== "number" || toleranceOf(question.answer) === 0) continue;
        for (const side of [-1, 1]) {
          const near = right + side * toleranceOf(question.answer);
          expect(at(marks(set, drawn, { ...drawn.key, [question.key]: near }), question.key).outcome).toBe(
            "right",
          );
          const far = right + side * toleranceOf(question.answer) * 1.2;
          expect(at(marks(set, drawn, { ...drawn.key, [question.key]: far }), question.key).outcome).not.toBe(
            "right",
          );
        }
      }
    }
  });

  test("every common mistake is named, and what follows from it counts as carried over", () => {
    let tried = 0;
    for (const drawn of draws.slice(0, NAMED_DRAWS)) {
      for (const question of set.questions) {
        const right = drawn.key[question.key];
        const common = slipValues(set, question, drawn.numbers, numbersAmong(drawn.key), "often");
        const names = new Set([
          ...common.filter(({ value }) => value !== right).map(({ name }) => name),
          ...(typeof right === "number" ? pointAndSign(question.answer, right) : []).map(({ name }) => name),
        ]);
        for (const name of names) {
          // From the trainee's own rounded answers, as a person would.
          const commonOf = (own: Record<string, number>) =>
            slipValues(set, question, drawn.numbers, own, "often").find((one) => one.name === name)?.value;
          const sheet = trainee(set, drawn, {
            [question.key]: (_question, own) =>
              commonOf(own) ??
              pointAndSign(question.answer, solved(question, drawn.numbers, own) as number).find(
                (one) => one.name === name,
              )?.value,
          });
          tried++;
          const marked = marks(set, drawn, sheet);
          const found = at(marked, question.key);
          expect({ ...found, tried: name }).toMatchObject({
            outcome: "slip",
            points: POINTS.none,
            carriedFrom: [],
            named: expect.any(String) as string,
            tried: name,
          });
          // A general one may be known by what it is in this question: ten times too much is a forgotten division.
          if (common.some((one) => one.name === name))
            expect(namesIn(found)).toEqual(expect.arrayContaining(name.split(" or ")));
          // All that was worked out from it is right in its way: full marks, or half of them.
          for (const later of marked.slice(found.number)) {
            if (later.outcome === "blank") continue;
            expect({
              slip: name,
              ...later,
              ok: ["right", "carried over"].includes(later.outcome),
            }).toMatchObject({
              ok: true,
              points: later.outcome === "right" ? POINTS.right : POINTS.half,
            });
          }
        }
      }
    }
    expect(tried).toBeGreaterThan(NAMED_DRAWS);
  });

  test("an answer rounded too coarsely has half the marks", () => {
    let met = 0;
    for (const drawn of draws) {
      for (const question of set.questions) {
        const right = drawn.key[question.key];
        if (typeof right !== "number" || question.answer.kind === "choice" || question.answer.decimals === 0)
          continue;
        const coarse = Number(right.toFixed(question.answer.decimals - 1));
        if (Math.abs(coarse - right) <= toleranceOf(question.answer) * 1.001) continue;
        met++;
        expect(at(marks(set, drawn, { ...drawn.key, [question.key]: coarse }), question.key)).toMatchObject({
          named: COARSE,
          points: POINTS.half,
        });
      }
    }
    const measured = set.questions.some(({ answer }) => answer.kind === "number" && answer.decimals > 0);
    expect(met > 0).toBe(measured);
  });

  test("blanks and nonsense are worth nothing, and spoil nothing else", () => {
    const [drawn] = draws as [Drawn];
    for (const question of set.questions) {
      for (const [given, outcome] of [
        [undefined, "blank"],
        ["  ", "blank"],
        ["no idea", "unclear"],
        [{ error: "#VALUE!" }, "unclear"],
        [true, "unclear"],
      ] as const) {
        const marked = marks(set, drawn, { ...drawn.key, [question.key]: given });
        expect(at(marked, question.key)).toMatchObject({ outcome, points: 0 });
        expect(marked.filter((one) => one.key !== question.key && one.outcome !== "right")).toEqual([]);
      }
    }
  });
});

test("two mistakes in one chain: the second is named too, and told to stand on the first", () => {
  const set = trainingSets.find(({ id }) => id === "supply")!;
  let named = 0;
  let all = 0;
  for (let seed = 0; seed < DRAWS; seed++) {
    const drawn = draw(set, seed);
    const slip = (key: string, name: string): Wrong => ({
      [key]: (question, own) =>
        slipValues(set, question, drawn.numbers, own).find((one) => one.name === name)?.value,
    });
    const sheet = trainee(set, drawn, {
      ...slip("ohms", "feet taken for metres"),
      ...slip("hotOhms", "heat subtracted instead of added"),
    });
    const marked = marks(set, drawn, sheet);
    expect(namesIn(at(marked, "ohms"))).toContain("feet taken for metres");
    all++;
    const second = at(marked, "hotOhms");
    if (namesIn(second).includes("heat subtracted instead of added") && second.carriedFrom.includes(1))
      named++;
    expect(at(marked, "drop")).toMatchObject({
      outcome: "carried over",
      carriedFrom: [2],
      points: POINTS.half,
    });
  }
  expect([named, all]).toEqual([DRAWS, DRAWS]);
});

describe("answers that are words, or in another unit", () => {
  test("a word that no mistake leads to is wrong, and no name is made up for it", () => {
    const set = trainingSets.find(({ id }) => id === "cable")!;
    const drawn = draw(set, 3);
    // 60 − 5 − 1 are ok, and so are 60 and 60 + 5 + 1; 5 and 60 − 500 − 1 are low, and nothing is above 77.
    const numbers = { ...drawn.numbers, level: 60, plate: 1 };
    const key = { ...drawn.key, hotLoss: 5, level: 54, verdict: "ok" };
    const verdict = (word: string) => at(marks(set, { numbers, key }, { ...key, verdict: word }), "verdict");
    expect(verdict("high")).toMatchObject({ outcome: "wrong", points: POINTS.none });
    expect(verdict("high")).not.toHaveProperty("named");
    expect(verdict("low")).toMatchObject({ outcome: "slip" });
  });

  test("another unit than the one asked for is told, and is not right whatever the number", () => {
    const set = trainingSets.find(({ id }) => id === "cable")!;
    const drawn = draw(set, 3);
    const metres = drawn.key.metres as number;
    const typed = (text: string) => at(marks(set, drawn, { ...drawn.key, metres: text }), "metres");
    expect(typed(`${metres.toFixed(1)} m`)).toMatchObject({ outcome: "right" });
    expect(typed(`${metres.toFixed(1).replace(".", ",")} metres`)).toMatchObject({ outcome: "right" });
    expect(typed(`${metres.toFixed(1)} ft`)).toMatchObject({ outcome: "wrong", named: "given in ft" });
  });

  test("a choice is known whatever its case and blanks", () => {
    const set = trainingSets.find(({ id }) => id === "cable")!;
    const drawn = draw(set, 3);
    const word = String(drawn.key.verdict);
    expect(
      at(marks(set, drawn, { ...drawn.key, verdict: ` ${word.toUpperCase()} ` }), "verdict").outcome,
    ).toBe("right");
    for (const typed of [
      `It's ${word}.`,
      `it’s ${word}`,
      `It is ${word}`,
      `is ${word}`,
      `too ${word}`,
      `its ${word}`,
    ])
      expect(at(marks(set, drawn, { ...drawn.key, verdict: typed }), "verdict").outcome).toBe("right");
    expect(at(marks(set, drawn, { ...drawn.key, verdict: "perhaps" }), "verdict")).toMatchObject({
      outcome: "unclear",
      named: "not one of the list",
    });
  });
});

describe("sheets that share unlikely answers", () => {
  const set = trainingSets.find(({ id }) => id === "supply")!;
  const group = (count: number): { drawn: Drawn; sheet: Record<string, Answer> }[] =>
    Array.from({ length: count }, (_, index) => {
      const drawn = draw(set, 1000 + index);
      // Everybody makes some mistake of their own.
      const slips = set.questions.filter(({ slips: known }) => known.length > 0);
      const question = slips[index % slips.length]!;
      return {
        drawn,
        sheet: trainee(set, drawn, {
          [question.key]: (one, own) => {
            const known = slipValues(set, one, drawn.numbers, own, "often");
            return known[index % Math.max(1, known.length)]?.value;
          },
        }),
      };
    });
  const marked = (sheets: ReturnType<typeof group>): MarkedSheet[] =>
    sheets.map(({ drawn, sheet }, index) => ({
      label: `sheet ${index + 1}`,
      drawn,
      answers: marks(set, drawn, sheet),
    }));

  test("nobody is flagged where everybody makes mistakes of their own, or plain noise", () => {
    expect(sharedAnswers(set, marked(group(150)))).toEqual([]);
    const noisy = group(150).map((one, index) => ({
      ...one,
      sheet: Object.fromEntries(
        Object.entries(one.sheet).map(([key, value], at2) => [
          key,
          // A wrong number of its own size, by a rule that repeats for nobody.
          typeof value === "number" && (index + at2) % 3 === 0
            ? Number((value * (1.1 + ((index * 7919 + at2 * 104729) % 997) / 1500)).toFixed(2))
            : value,
        ]),
      ),
    }));
    expect(sharedAnswers(set, marked(noisy))).toEqual([]);
  });

  test.each([2, 12, 150])("a copied sheet among %i is found, and only that pair", (count) => {
    const sheets = group(count);
    const from = sheets[count - 1]!;
    sheets[0] = { ...sheets[0]!, sheet: { ...from.sheet } };
    const found = sharedAnswers(set, marked(sheets));
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ one: "sheet 1", other: `sheet ${count}` });
    expect(found[0]!.questions.length).toBeGreaterThanOrEqual(3);
    expect(found[0]!.rightThere).toBeGreaterThan(0);
    expect(found[0]!.byChance).toBeLessThan(0.05);
  });

  test("the same wrong values on two sheets with other numbers are found too", () => {
    const sheets = group(30);
    const invented = { ohms: 7.77, drop: 3.21, volts: 19.99, run: 123 };
    for (const index of [4, 9])
      sheets[index] = { ...sheets[index]!, sheet: { ...sheets[index]!.sheet, ...invented } };
    expect(sharedAnswers(set, marked(sheets))).toMatchObject([
      { one: "sheet 5", other: "sheet 10", questions: [1, 3, 4, 6], rightThere: 0 },
    ]);
  });
});
