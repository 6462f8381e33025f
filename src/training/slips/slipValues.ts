/** Where mistakes lead: the question worked out again with a figure misread, and what else it invites. */
import { isFault, type Fault } from "../../engine/faults";
import type { AnySet, Answer, Earlier, Family, Misreading, Question } from "../exercise";

/**
 * How readily a mistake is thought of: one that is common; one that is met now
 * and then; figures or answers of the sheet mixed up.
 */
export type Rank = "often" | "seldom" | "mixed up";

export interface SlipValue {
  readonly name: string;
  readonly value: Answer;
  readonly rank: Rank;
}

/** A figure of the question, or an earlier answer that it uses. */
interface Quantity {
  readonly what: string;
  readonly value: number;
  readonly invites: readonly Family[];
  /** The numbers and earlier answers with something else in its place. */
  readonly put: (value: number, into: Worked) => Worked;
  readonly unit?: string;
  /** What it shows, or whose answer it is. */
  readonly key: string;
}

interface Worked {
  readonly numbers: object;
  readonly earlier: Earlier;
}

/**
 * @param most the rank up to which mistakes are wanted
 * @returns each mistake with the answer that it leads to from these earlier answers
 */
export const slipValues = (
  set: AnySet,
  question: Question<never>,
  numbers: object,
  earlier: Earlier,
  most: Rank = "seldom",
): SlipValue[] =>
  ledTo(set, question, numbers, earlier, most).filter(
    ({ value }) => typeof value === "string" || Number.isFinite(value),
  );

/** @returns the mistakes of which a spreadsheet makes an error, such as a negative root */
export const unanswerable = (
  set: AnySet,
  question: Question<never>,
  numbers: object,
  earlier: Earlier,
): string[] => {
  const led = ledTo(set, question, numbers, earlier, "mixed up").filter(({ value }) => Number.isNaN(value));
  return [...new Set(led.map(({ name }) => name))];
};

function ledTo(
  set: AnySet,
  question: Question<never>,
  numbers: object,
  earlier: Earlier,
  most: Rank,
): SlipValue[] {
  const found: SlipValue[] = [];
  const add = (name: string, rank: Rank, of: () => Answer | Fault | undefined): void => {
    if (rank === "seldom" && most === "often") return;
    const value = of();
    if (value !== undefined && !isFault(value)) found.push({ name, value, rank });
  };
  const work = ({ numbers: n, earlier: e }: Worked): Answer | Fault =>
    question.formula ? question.formula(n as never, e) : question.solve(n as never, e);
  for (const { name, wrong, seldom } of question.slips)
    add(name, seldom ? "seldom" : "often", () => wrong(numbers as never, earlier));
  const asIs = { numbers, earlier };
  const quantities = [...figuresOf(question, numbers), ...answersUsed(set, question, earlier)];
  for (const { what, value, invites, put } of quantities) {
    for (const { name, as, seldom } of misreadings(invites, value, what))
      add(name, seldom ? "seldom" : "often", () => work(put(as, asIs)));
  }
  if (most !== "mixed up") return found;
  for (const { name, worked } of mixedUp(set, question, asIs, quantities))
    add(name, "mixed up", () => work(worked));
  return found;
}

const misreadings = (invites: readonly Family[], value: number, what: string): Misreading[] =>
  invites.flatMap((family) => family(value, what));

const lower = (label: string): string => label.charAt(0).toLowerCase() + label.slice(1);

function figuresOf(question: Question<never>, numbers: object): Quantity[] {
  const figures = [...question.given(numbers as never), ...(question.before?.(numbers as never) ?? [])];
  return figures.flatMap(({ label, called, unit, of, invites = [] }): Quantity[] => {
    const value = of === undefined ? undefined : (numbers as Readonly<Record<string, unknown>>)[of];
    if (of === undefined || typeof value !== "number") return [];
    const put: Quantity["put"] = (one, into) => ({ ...into, numbers: { ...into.numbers, [of]: one } });
    return [
      { what: called ?? lower(label), value, invites, put, key: of, ...(unit !== undefined && { unit }) },
    ];
  });
}

const numberOf = (set: AnySet, key: string): number => set.questions.findIndex((one) => one.key === key) + 1;

function answersUsed(set: AnySet, { needs, uses = {} }: Question<never>, earlier: Earlier): Quantity[] {
  return needs.flatMap((key): Quantity[] => {
    const value = earlier[key];
    if (value === undefined) return [];
    const put: Quantity["put"] = (one, into) => ({ ...into, earlier: { ...into.earlier, [key]: one } });
    return [{ what: `answer to ${numberOf(set, key)}`, value, invites: uses[key] ?? [], put, key }];
  });
}

interface MixedUp {
  readonly name: string;
  readonly worked: Worked;
}

/** Two parts forgotten; one figure taken for another; one answer for another; an earlier slip made anew. */
function* mixedUp(
  set: AnySet,
  question: Question<never>,
  asIs: Worked,
  quantities: readonly Quantity[],
): Generator<MixedUp> {
  const { numbers, earlier } = asIs;
  const forgettable = quantities.flatMap((one) => {
    const left = misreadings(one.invites, one.value, one.what).find(({ name }) => name.endsWith(" left out"));
    return left ? [{ ...one, without: left.as }] : [];
  });
  for (const [at, one] of forgettable.entries()) {
    for (const other of forgettable.slice(at + 1)) {
      yield {
        name: `${one.what} and ${other.what} left out`,
        worked: other.put(other.without, one.put(one.without, asIs)),
      };
    }
  }
  const onSheet = set.questions.flatMap((one) => figuresOf(one, numbers));
  for (const one of quantities) {
    if (one.unit === undefined) continue;
    const others = new Map(onSheet.map((other) => [other.key, other]));
    for (const other of others.values()) {
      if (other.unit !== one.unit || other.key === one.key) continue;
      const what = other.what === one.what ? `that of another question` : other.what;
      yield { name: `${what} taken for ${one.what}`, worked: one.put(other.value, asIs) };
    }
  }
  for (const key of question.needs) {
    const number = numberOf(set, key);
    const put = (value: number): Worked => ({ numbers, earlier: { ...earlier, [key]: value } });
    for (const [other, value] of Object.entries(earlier)) {
      if (other === key || other === question.key) continue;
      yield { name: `answer to ${numberOf(set, other)} used instead of ${number}`, worked: put(value) };
    }
    const before = set.questions[number - 1]!;
    for (const { name, value } of slipValues(set, before, numbers, earlier, "often"))
      if (typeof value === "number") yield { name, worked: put(value) };
  }
}
