/** Draws the numbers of one sheet, again and again until they make good questions. */
import type { AnySet, Answer, Given } from "./exercise";
import { toleranceOf } from "./exercise";
import { randomAgain, randomFrom } from "./random";
import { keyOf, type Answers } from "./solve";
import { clashIn } from "./clashIn";

/** Of the sets, their numbers and how they are drawn: a sheet of another version has other numbers. */
export const TRAINING_VERSION = "2";

export interface Drawn {
  readonly numbers: object;
  /** The right answers, by question. */
  readonly key: Answers;
}

const MOST_TRIES = 20_000;
/** Of so many that are usable, the one in which the fewest common mistakes could be taken for each other. */
const CHOICE = 5;

/** Numbers of a set that could be a real job's, without end. */
function* plausible(set: AnySet, whose: string): Generator<Drawn> {
  const text = ["rigsheet", set.id, TRAINING_VERSION, whose].join("\n");
  const random = randomFrom(text);
  const once = randomAgain(`${text}\nonce`);
  for (let tries = 1; tries <= MOST_TRIES; tries++) {
    const numbers = set.draw(random, once()) as object;
    const key = keyOf(set, numbers);
    if (key && (set.plausible?.(numbers as never, key) ?? true)) yield { numbers, key };
  }
  throw new Error(`the set ${set.id} found no numbers in ${MOST_TRIES} draws`);
}

/**
 * @param whose the same text gives the same numbers, on every machine
 * @param unlike another draw whose answers these must not repeat
 */
function drawn(set: AnySet, whose: string, unlike?: Drawn): Drawn {
  let best: { drawn: Drawn; pairs: number } | undefined;
  let usable = 0;
  for (const one of plausible(set, whose)) {
    if (unlike && repeats(set, one.numbers, one.key, unlike)) continue;
    const { withKey, pairs } = clashIn(set, one.numbers, one.key);
    if (withKey !== undefined) continue;
    if (!best || pairs < best.pairs) best = { drawn: one, pairs };
    if (pairs === 0 || ++usable === CHOICE) break;
  }
  return best!.drawn;
}

/** Whether a question has the figures or the measured answer of the worked example. */
const repeats = (set: AnySet, numbers: object, key: Answers, other: Drawn): boolean =>
  set.questions.some(
    (question) =>
      (question.answer.kind === "number" &&
        sameFigures(question.given(numbers as never), question.given(other.numbers as never))) ||
      (toleranceOf(question.answer) > 0 &&
        near(key[question.key], other.key[question.key], 2 * toleranceOf(question.answer))),
  );

const sameFigures = (some: readonly Given[], others: readonly Given[]): boolean =>
  some.length > 0 && JSON.stringify(some) === JSON.stringify(others);

const near = (a: Answer | undefined, b: Answer | undefined, limit: number): boolean =>
  typeof a === "number" && typeof b === "number" && Math.abs(a - b) <= limit;

const examples = new Map<string, Drawn>();

/** The worked example's numbers: the same on every sheet of a set, so that a class can go through it. */
export function exampleOf(set: AnySet): Drawn {
  const known = examples.get(set.id) ?? drawn(set, "worked example");
  examples.set(set.id, known);
  return known;
}

export interface Trainee {
  readonly name: string;
  /** 1, or more for the second of the same name. */
  readonly occurrence: number;
}

/**
 * A trainee's numbers depend on the set, the seed and the name alone: another
 * order of the list, or one more name, leaves the other sheets as they were.
 */
export const drawFor = (set: AnySet, seed: number, trainee: Trainee): Drawn =>
  drawn(set, whoseText(seed, trainee), exampleOf(set));

/** Numbers that may be anybody's: for how likely an answer is, no matter whether it is ambiguous. */
export const anybodysDraw = (set: AnySet, seed: number): Drawn =>
  plausible(set, `anybody\n${seed}`).next().value as Drawn;

export const whoseText = (seed: number, { name, occurrence }: Trainee): string =>
  [seed, occurrence, name.normalize("NFC")].join("\n");
