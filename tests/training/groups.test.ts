/** Whole groups of simulated trainees: copies found, nobody else flagged; two slips on one sheet. */
import { simulatedAnswers } from "../../src/build/simulatedAnswers";
import { drawFor, type Drawn } from "../../src/training/drawNumbers";
import type { Answer } from "../../src/training/exercise";
import { markAnswers } from "../../src/training/markAnswers";
import { sharedAnswers, type MarkedSheet } from "../../src/training/sharedAnswers";
import { trainingSets } from "../../src/training/sets/all";
import { slipValues } from "../../src/training/slips/slipValues";
import { numbersAmong, solved } from "../../src/training/solve";
import { tries } from "../support/tries";

const GROUP = tries(30, 100);
const COPIES = 8;

describe.each(trainingSets.map((set) => [set.id, set] as const))("%s", (id, set) => {
  interface Sheet {
    readonly drawn: Drawn;
    readonly answers: Readonly<Record<string, Answer>>;
  }
  const marked = (sheets: readonly Sheet[]): MarkedSheet[] =>
    sheets.map(({ drawn, answers }, index) => ({
      label: String(index),
      drawn,
      answers: markAnswers(set, drawn, (key) => answers[key]),
    }));

  test(`of ${GROUP} sheets with a known slip each, none is flagged; copies are, and only they`, () => {
    const sheets = Array.from({ length: GROUP }, (_, index): Sheet => {
      const drawn = drawFor(set, 500 + index, { name: "Simulated", occurrence: 1 });
      return { drawn, answers: simulatedAnswers(set, drawn, index) };
    });
    expect(sharedAnswers(set, marked(sheets))).toEqual([]);
    let found = 0;
    let others = 0;
    for (let copier = 0; copier < COPIES; copier++) {
      const from = GROUP - 1 - copier;
      const group = [...sheets];
      group[copier] = { drawn: sheets[copier]!.drawn, answers: sheets[from]!.answers };
      const shared = sharedAnswers(set, marked(group));
      const copied = shared.filter(({ one, other }) => one === String(copier) && other === String(from));
      found += copied.length;
      others += shared.length - copied.length;
    }
    process.stdout.write(
      `  ${id}: ${found} of ${COPIES} copied sheets found among ${GROUP}; ${others} other pairs\n`,
    );
    // A pair is flagged where chance would bring it once in fifty groups; here are eight.
    expect(others).toBeLessThanOrEqual(1);
    // The answers to the quote are row numbers and words, which many sheets share by chance.
    expect(found).toBeGreaterThanOrEqual(id === "bad-quote" ? 3 : 6);
  });

  test("a second common slip, made after a first one in the same chain, is named nearly always", () => {
    let made = 0;
    let named = 0;
    let turn = 0;
    for (let seed = 0; seed < 4; seed++) {
      const drawn = drawFor(set, seed, { name: "Simulated", occurrence: 1 });
      const common = (question: (typeof set.questions)[number], own = numbersAmong(drawn.key)) =>
        slipValues(set, question, drawn.numbers, own, "often");
      for (const [index, first] of set.questions.entries()) {
        for (const second of set.questions.slice(index + 1)) {
          for (const one of some(common(first), turn++)) {
            for (const other of some(common(second), turn++)) {
              const sheet: Record<string, Answer> = {};
              let impossible = false;
              for (const question of set.questions) {
                const own = numbersAmong(sheet);
                const slip = question === first ? one : question === second ? other : undefined;
                const answer = slip
                  ? common(question, own).find(({ name }) => name === slip.name)?.value
                  : solved(question, drawn.numbers, own);
                if (answer === undefined) impossible ||= slip !== undefined;
                else
                  sheet[question.key] =
                    typeof answer === "number" && question.answer.kind === "number"
                      ? Number(answer.toFixed(question.answer.decimals))
                      : answer;
              }
              if (impossible) continue;
              const found = markAnswers(set, drawn, (key) => sheet[key]).find(
                ({ key }) => key === second.key,
              )!;
              // Two slips may take each other back.
              if (found.outcome === "right" || found.outcome === "carried over") continue;
              made++;
              if (found.named?.split(" or ").includes(other.name)) named++;
            }
          }
        }
      }
    }
    process.stdout.write(`  ${id}: ${named} of ${made} second slips named\n`);
    expect(named / made).toBeGreaterThan(0.9);
  });
});

/** Three of a list, others each time. */
const some = <T>(list: readonly T[], turn: number): T[] =>
  list.length === 0 ? [] : [0, 1, 2].map((step) => list[(turn * 3 + step) % list.length]!);
