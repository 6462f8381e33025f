/** A drawn sheet in the words of the slips that were thought up outside: figures by their labels. */
import * as made from "../fixtures/training/slips";
import * as madePapers from "../fixtures/training/papers";
import type { Drawn } from "../../src/training/drawNumbers";
import type { AnySet, Given } from "../../src/training/exercise";
import { precisionInWords } from "../../src/training/precision";

export interface OutsideSheet {
  readonly set: string;
  readonly trainee: string;
  readonly questions: readonly {
    readonly no: number;
    readonly givens: Readonly<Record<string, readonly [number | string, string]>>;
    readonly asked: string;
    readonly unit: string;
  }[];
  readonly notes: readonly string[];
  readonly rows: Readonly<Record<string, { label: string; q: number; p: number; sum: number }>>;
}

const byLabel = (given: readonly Given[]): Record<string, readonly [number | string, string]> =>
  Object.fromEntries(given.map(({ label, value, unit }) => [label, [value, unit ?? ""]]));

export function outsideSheet(set: AnySet, { numbers }: Drawn, trainee = "Simulated"): OutsideSheet {
  const paper = set.paper?.(numbers as never);
  return {
    set: set.id,
    trainee,
    questions: set.questions.map((question, index) => ({
      no: index + 1,
      givens: byLabel(question.given(numbers as never)),
      asked: precisionInWords(question.answer),
      unit: question.answer.kind === "number" ? question.answer.unit : "",
    })),
    notes: paper?.lines ?? [],
    rows: Object.fromEntries(
      (paper?.rows ?? []).map(([what, q, p, , sum], index) => [
        String(index + 1),
        { label: String(what).replace(/^\d+ {2}/, ""), q: Number(q), p: Number(p), sum: Number(sum) },
      ]),
    ),
  };
}

export interface OutsideSlip {
  readonly id: string;
  readonly set: string;
  /** Number of the question. */
  readonly n: number;
  readonly slip: string;
  readonly family: string;
  readonly likely: "often" | "seldom";
  /** The slip is in the typing or rounding itself. */
  readonly asTyped?: boolean;
  /** Number of the question in which the slip was made, where it is carried on. */
  readonly carried?: number;
  readonly answer: (figures: unknown) => number | string | undefined;
}

/** The fixture has no types of its own. */
export const { slips, bind, right } = made as unknown as {
  readonly slips: readonly OutsideSlip[];
  bind(slip: OutsideSlip, sheet: OutsideSheet): unknown;
  /** The maker's own right answers by question number. */
  right(sheet: unknown): Readonly<Record<number, number | string | undefined>>;
};

/** A whole paper: one slip, carried on with the trainee's own rounded answers. */
export interface OutsidePaper {
  readonly id: string;
  readonly slipAt: number;
  readonly slip: string;
  /** By question number. */
  readonly answers: Readonly<Record<number, number | string>>;
  readonly expectMarks: Readonly<Record<number, number>>;
  readonly note?: string;
}

export const papersOf = madePapers.papersOf as unknown as (sheet: OutsideSheet) => readonly OutsidePaper[];
