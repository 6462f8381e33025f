/** Marks the sheets of a group one by one, then looks at them together. */
import type { Book } from "../workbooks/book";
import { drawFor, type Trainee } from "./drawNumbers";
import { markAnswers, POINTS, type MarkedAnswer } from "./markAnswers";
import { answeredByUs, answerIn, changedFigures, codeOf } from "./readSheet";
import { sharedAnswers, type MarkedSheet, type SharedPair } from "./sharedAnswers";
import { sheetCode } from "./sheetCode";
import type { Exercises } from "./trainerKey";

export interface TraineeMarks extends MarkedSheet {
  readonly trainee: Trainee;
  /** Row of the key, from 1. */
  readonly number: number;
  readonly file: string;
  readonly points: number;
  readonly outOf: number;
  /** Worth a look: answers that a function of ours gave. */
  readonly notes: readonly string[];
}

export interface NotMarked {
  readonly file: string;
  readonly reason: string;
}

export interface GroupMarks {
  readonly exercises: Exercises;
  readonly marked: readonly TraineeMarks[];
  readonly notMarked: readonly NotMarked[];
  readonly shared: readonly SharedPair[];
}

export class GroupMarking {
  private readonly byCode: ReadonlyMap<string, number>;
  private readonly marked = new Map<number, TraineeMarks>();
  private readonly notMarked: NotMarked[] = [];

  constructor(private readonly exercises: Exercises) {
    this.byCode = new Map(
      exercises.trainees.map((trainee, index) => [sheetCode(exercises.set, exercises.seed, trainee), index]),
    );
  }

  /** @param read the sheet, or a sentence on why it can't be read */
  add(file: string, read: Book | string): void {
    const reason = typeof read === "string" ? read : this.mark(file, read);
    if (reason !== undefined) this.notMarked.push({ file, reason });
  }

  /** @returns the marks; trainees without a sheet are told of by name */
  done(): GroupMarks {
    const { exercises } = this;
    const marked = [...this.marked.values()].sort((a, b) => a.number - b.number);
    const missing = exercises.trainees.flatMap((trainee, index): NotMarked[] =>
      this.marked.has(index)
        ? []
        : [{ file: `(${labelOf(trainee, index)})`, reason: "No sheet of this trainee was marked." }],
    );
    return {
      exercises,
      marked,
      notMarked: [...this.notMarked, ...missing],
      shared: sharedAnswers(exercises.set, marked),
    };
  }

  private mark(file: string, book: Book): string | undefined {
    const { set, seed, trainees } = this.exercises;
    const found = codeOf(book);
    if ("trouble" in found) return found.trouble;
    const index = this.byCode.get(found.code);
    if (index === undefined) return `Its code ${found.code.slice(0, 20)} is none of this key's.`;
    const trainee = trainees[index]!;
    const before = this.marked.get(index);
    if (before) return `The sheet of ${labelOf(trainee, index)} once more; ${before.file} was marked.`;
    const drawn = drawFor(set, seed, trainee);
    const changed = changedFigures(set, drawn, book);
    if (changed !== undefined) return changed;
    const answers = markAnswers(set, drawn, answerIn(book));
    const ours = answers.filter(({ key }) => answeredByUs(book, key)).map(({ number }) => number);
    this.marked.set(index, {
      label: labelOf(trainee, index),
      trainee,
      number: index + 1,
      file,
      drawn,
      answers,
      points: pointsOf(answers),
      outOf: answers.length * POINTS.right,
      notes: ours.length > 0 ? [`answered by a formula of Rigsheet's: ${ours.join(", ")}`] : [],
    });
    return undefined;
  }
}

const labelOf = ({ name }: Trainee, index: number): string => `${index + 1} ${name}`;

const pointsOf = (answers: readonly MarkedAnswer[]): number =>
  answers.reduce((sum, { points }) => sum + points, 0);
