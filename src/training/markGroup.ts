/** Marks the sheets of a group one by one, then looks at them together. */
import type { Book } from "../workbooks/book";
import { drawFor, type Drawn, type Trainee } from "./drawNumbers";
import { isWithin, toleranceOf, type AnySet } from "./exercise";
import { markAnswers, POINTS, type MarkedAnswer } from "./markAnswers";
import {
  isAnsweredByOurFunction,
  answerIn,
  besideAnswer,
  changedFigures,
  codeOf,
  nameIn,
  typedOver,
} from "./readSheet";
import { sharedAnswers, type MarkedSheet, type SharedPair } from "./sharedAnswers";
import { sheetCode } from "./sheetCode";
import { sheetFileName } from "./sheetFileName";
import { traineeSheet } from "./traineeSheet";
import type { Exercises } from "./trainerKey";

export interface TraineeMarks extends MarkedSheet {
  readonly trainee: Trainee;
  /** Row of the key, from 1. */
  readonly number: number;
  readonly file: string;
  readonly points: number;
  readonly outOf: number;
  /** Worth a look: what could not be read, what stands beside its cell, a file of another name. */
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
  /** By trainee; several where a sheet came back more than once. */
  private readonly sheets = new Map<number, TraineeMarks[]>();
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
    const notMarked = [...this.notMarked];
    const marked: TraineeMarks[] = [];
    for (const [, copies] of [...this.sheets].sort(([a], [b]) => a - b)) {
      const { chosen, told } = amongCopies(copies);
      if (chosen) marked.push(chosen);
      notMarked.push(...told);
    }
    const done = new Set(marked.map(({ number }) => number));
    const missing = exercises.trainees.flatMap((trainee, index): NotMarked[] =>
      done.has(index + 1) ? [] : [this.missing(trainee, index)],
    );
    return {
      exercises,
      marked,
      notMarked: [...notMarked, ...missing],
      shared: sharedAnswers(exercises.set, marked),
    };
  }

  private missing(trainee: Trainee, index: number): NotMarked {
    const file = `(${labelOf(trainee, index)})`;
    if (this.sheets.has(index)) {
      return { file, reason: "No sheet of this trainee was marked: several came back, and they differ." };
    }
    const own = this.stem(index);
    const unread = this.notMarked.find((one) => stemOf(one.file) === own);
    const why = unread ? ` ${unread.file} bears this name.` : " None came back.";
    return { file, reason: `No sheet of this trainee was marked.${why}` };
  }

  /** The name of a trainee's file as handed out, without its ending. */
  private stem(index: number): string {
    const { trainees } = this.exercises;
    return stemOf(sheetFileName(trainees[index]!, index + 1, trainees.length));
  }

  private mark(file: string, book: Book): string | undefined {
    const { set, seed, trainees } = this.exercises;
    const found = codeOf(book);
    if ("trouble" in found) return found.trouble;
    const index = this.byCode.get(found.code);
    if (index === undefined) return this.strange(book, found.code);
    const trainee = trainees[index]!;
    const drawn = drawFor(set, seed, trainee);
    const changed = changedFigures(set, drawn, book);
    if (changed !== undefined) return changed;
    const answers = markAnswers(set, drawn, answerIn(book));
    this.sheets.set(index, [
      ...(this.sheets.get(index) ?? []),
      {
        label: labelOf(trainee, index),
        trainee,
        number: index + 1,
        file,
        drawn,
        answers,
        points: pointsOf(answers),
        outOf: answers.length * POINTS.right,
        notes: this.notesOn(file, book, index, drawn, answers),
      },
    ]);
    return undefined;
  }

  /** Whose a sheet is that the key doesn't know. */
  private strange(book: Book, code: string): string {
    const { set, trainees } = this.exercises;
    if (book.title !== "" && book.title !== set.title) {
      return `It is a sheet of "${book.title.slice(0, 60)}"; the key is of "${set.title}".`;
    }
    const name = nameIn(book);
    const start = `Its code ${code.slice(0, 20)} is none of this key's`;
    return trainees.some((one) => one.name === name.normalize("NFC"))
      ? `${start}, though "${name}" is on its list: it was made with another seed.`
      : `${start}, and "${name.slice(0, 40)}" is not on its list.`;
  }

  private notesOn(
    file: string,
    book: Book,
    index: number,
    drawn: Drawn,
    answers: readonly MarkedAnswer[],
  ): string[] {
    const { set, seed, trainees } = this.exercises;
    const trainee = trainees[index]!;
    const ours = answers.filter(({ key }) => isAnsweredByOurFunction(book, key)).map(({ number }) => number);
    const name = nameIn(book).normalize("NFC");
    const other = trainees.findIndex((_, at) => at !== index && this.stem(at) === stemOf(file));
    const blanks = answers.filter(({ outcome }) => outcome === "blank");
    const handedOut = blanks.length > 0 ? traineeSheet(set, seed, trainee) : undefined;
    const beside = blanks.flatMap(({ key, number }) => {
      const found = handedOut && besideAnswer(book, handedOut, key);
      return found === undefined ? [] : [`${number} is empty, but ${found}`];
    });
    const over = handedOut && blanks.length === answers.length ? typedOver(book, handedOut) : undefined;
    return [
      ...(ours.length > 0 ? [`answered by a formula of Rigsheet's: ${ours.join(", ")}`] : []),
      ...(blanks.length === answers.length ? ["nothing answered"] : []),
      ...(over === undefined || beside.length > 0 ? [] : [over]),
      ...answers.flatMap(({ number, look }) => (look === undefined ? [] : [`${number}: ${look}`])),
      ...beside,
      ...(oneOff(set, drawn, answers) ? ["the answers seem to be one question off"] : []),
      ...(name === trainee.name ? [] : [`the name in it is "${name.slice(0, 60)}"`]),
      ...(other < 0 ? [] : [`the file is named as that of ${labelOf(trainees[other]!, other)}`]),
    ];
  }
}

const stemOf = (file: string): string =>
  (file.split(/[\\/]/).at(-1) ?? "").replace(/\.[^.]*$/, "").normalize("NFC");

const isEmpty = ({ answers }: TraineeMarks): boolean => answers.every(({ outcome }) => outcome === "blank");

/** Of several files of one sheet: never chosen between unless their answers leave no choice. */
function amongCopies(copies: readonly TraineeMarks[]): { chosen?: TraineeMarks; told: NotMarked[] } {
  const filled = copies.filter((one) => !isEmpty(one));
  const chosen = filled[0] ?? copies[0]!;
  const differing = chosen.answers.flatMap(({ number, given }, at) =>
    filled.every(({ answers }) => answers[at]!.given === given) ? [] : [number],
  );
  const others = (file: string): string =>
    copies
      .filter((one) => one.file !== file)
      .map((one) => one.file)
      .join(", ");
  if (differing.length > 0) {
    const where = `question${differing.length > 1 ? "s" : ""} ${differing.join(", ")}`;
    return {
      told: copies.map(({ file, label, notes }) => ({
        file,
        reason: `The sheet of ${label} came back more than once, also as ${others(file)}; the answers differ in ${where}. None was marked: leave the one that counts in the folder and mark again.${alsoNamed(notes)}`,
      })),
    };
  }
  return {
    chosen,
    told: copies
      .filter((one) => one !== chosen)
      .map((one) => ({
        file: one.file,
        reason: `The sheet of ${one.label} once more, with ${isEmpty(one) ? "no answers" : "the same answers"}; ${chosen.file} was marked.${alsoNamed(one.notes)}`,
      })),
  };
}

/** A copy that bears another name is worth a question. */
const alsoNamed = (notes: readonly string[]): string => {
  const note = notes.find((one) => one.startsWith("the name in it"));
  return note === undefined ? "" : ` ${note.charAt(0).toUpperCase()}${note.slice(1)}.`;
};

const LEAST_ONE_OFF = 3;

/** Whether most numbers are right for the question before or after. */
function oneOff(set: AnySet, { key }: Drawn, answers: readonly MarkedAnswer[]): boolean {
  return [-1, 1].some((step) => {
    const numbers = answers.flatMap(({ given, outcome }, at) =>
      typeof given === "number" ? [{ given, outcome, of: set.questions[at + step] }] : [],
    );
    const off = numbers.filter(({ given, outcome, of }) => {
      const right = of && key[of.key];
      return (
        outcome !== "right" && typeof right === "number" && isWithin(given, right, toleranceOf(of!.answer))
      );
    });
    return off.length >= LEAST_ONE_OFF && off.length > numbers.length / 2;
  });
}

const labelOf = ({ name }: Trainee, index: number): string => `${index + 1} ${name}`;

const pointsOf = (answers: readonly MarkedAnswer[]): number =>
  answers.reduce((sum, { points }) => sum + points, 0);
