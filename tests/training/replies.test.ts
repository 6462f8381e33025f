/** What people type into an answer cell, thought up by someone who had not seen the code. */
import replies from "../fixtures/training/replies.json";
import { trainingSet, type AnswerKind } from "../../src/training/exercise";
import { markAnswers } from "../../src/training/markAnswers";
import { KINDS } from "../../src/training/sets/badQuote";

interface Reply {
  readonly typed: unknown;
  readonly rightAnswer: number | string;
  readonly expect: string;
  /** Also allowed. */
  readonly or?: string;
  readonly asked: string;
  readonly marks?: number | string;
  /** The answer before it was rounded. */
  readonly unrounded?: number;
  /** What a spreadsheet keeps in the cell; null where it kept no result. */
  readonly storedResult?: number | null;
  readonly format?: string;
}

const LEVELS = ["low", "ok", "high"];

function kindOf({ asked, typed, rightAnswer }: Reply): AnswerKind {
  if (asked === "from the list") {
    return { kind: "choice", choices: LEVELS.includes(String(rightAnswer)) ? LEVELS : Object.values(KINDS) };
  }
  if (asked === "exactly") {
    const unit = /head|pcs/.test(String(typed)) ? "head units" : "row";
    return { kind: "number", unit, decimals: 0, exact: true };
  }
  // Of the angles asked for, those that can be below zero are no directions.
  const direction = Number(rightAnswer) >= 0;
  const whole = /^to a whole (.*)$/.exec(asked);
  if (whole)
    return { kind: "number", unit: whole[1]!, decimals: 0, direction: direction && whole[1] === "deg" };
  const [, precision, unit] = /^to ([\d.]+) ?(.*)$/.exec(asked)!;
  const decimals = (precision!.split(".")[1] ?? "").length;
  return { kind: "number", unit: unit!, decimals, direction: direction && unit === "deg" };
}

/** The cell as a spreadsheet would hold it. */
function cellOf({ typed, storedResult, format = "General" }: Reply): unknown {
  if (storedResult === null) return { formula: String(typed).slice(1), format };
  if (storedResult !== undefined) return { value: storedResult, format };
  // The maker's one plain formula: its result counts.
  if (typed === "=7.5+8") return { value: 15.5, formula: "7.5+8", format };
  return typeof typed === "number" ? { value: typed, format } : typed;
}

const cases = (replies as readonly Reply[]).map((reply) => [JSON.stringify(reply.typed), reply] as const);

test("there are 156", () => {
  expect(cases).toHaveLength(156);
});

test.each(cases)("%s", (_, reply) => {
  const key = reply.unrounded ?? reply.rightAnswer;
  const set = trainingSet<object>({
    id: "replies",
    title: "",
    about: "",
    cautions: [],
    draw: () => ({}),
    questions: [
      {
        key: "q",
        heading: "",
        task: "",
        given: () => [],
        answer: kindOf(reply),
        needs: [],
        solve: () => key,
        slips: [],
        hints: [],
        example: () => [],
      },
    ],
  });
  const [marked] = markAnswers(set, { numbers: {}, key: { q: key } }, () => cellOf(reply));
  const { outcome, look } = marked!;
  const was =
    outcome === "unclear" || look !== undefined
      ? "flagged for the trainer"
      : outcome === "right"
        ? "right"
        : "wrong";
  expect([reply.expect, reply.or]).toContain(was);
  // Half a mark's worth is only for what was rounded further than asked, where it was.
  if (reply.marks === 1 && reply.unrounded !== undefined) expect(marked!.points).toBe(1);
});
