/**
 * Which findings of a review were there before, which are new, which a person has settled and which are gone. A
 * finding is the same where the same rule says it of the same thing, though its row lies elsewhere or is called
 * otherwise; it stays settled as long as what stands there is what was settled.
 */
import type { Noted } from "./noted";

export interface Settled {
  readonly reason: string;
  /** As ISO 8601. */
  readonly at: string;
  /** What stood there. */
  readonly held: Noted["held"];
}

export interface Known extends Noted {
  /** By which it is settled; its own within the reviews of a job. */
  readonly key: number;
  /** When it was found first, as ISO 8601. */
  readonly since: string;
  /** It holds while what was settled stands there, and again when it does again. */
  readonly settled?: Settled;
  /** Not found the last time. */
  readonly isGone?: true;
}

/** `back`: it was gone before. */
export type State = "new" | "still" | "back" | "settled";

export interface Again {
  readonly key: number;
  readonly state: State;
  readonly since: string;
  readonly settled?: Settled;
  /** It was settled, but something else stood there. */
  readonly wasSettled?: Settled;
}

export interface KnownAgain {
  /** One for each that was noted. */
  readonly now: readonly Again[];
  /** Found the last time and not any more. */
  readonly gone: readonly Known[];
  /** To be kept for the next time. */
  readonly known: readonly Known[];
}

/** Of those that are long gone the oldest are forgotten beyond so many. */
const MOST_GONE = 500;

/** What the rows of the job were called the last time, and are now. */
export interface RowsThen {
  readonly before: readonly string[];
  readonly now: readonly string[];
}

/**
 * @param known of the reviews before
 * @param at the time of this one
 */
export function knownAgain(
  known: readonly Known[],
  noted: readonly Noted[],
  rows: RowsThen,
  at: string,
): KnownAgain {
  const same = paired(known, noted, rows);
  const taken = new Set<Known>(same.flatMap((one) => one ?? []));
  let next = known.reduce((most, { key }) => Math.max(most, key), 0);
  const kept = noted.map((one, index): { readonly known: Known; readonly again: Again } => {
    const before = same[index];
    if (!before) {
      const fresh = { ...one, key: ++next, since: at };
      return { known: fresh, again: { key: fresh.key, state: "new", since: at } };
    }
    const { key, settled, since, held, isGone } = before;
    const now: Known = { ...one, key, since, ...(settled && { settled }) };
    if (settled && isAsHeld(settled.held, one))
      return { known: now, again: { key, state: "settled", since, settled } };
    // What was settled and stands there otherwise asks for another look.
    const isOther = settled !== undefined && isAsHeld(settled.held, before) && held !== one.held;
    const state: State = isGone ? "back" : isOther ? "new" : "still";
    return { known: now, again: { key, state, since, ...(settled && { wasSettled: settled }) } };
  });
  const left = known.filter((one) => !taken.has(one));
  return {
    now: kept.map(({ again }) => again),
    gone: left.filter(({ isGone }) => !isGone),
    known: [
      ...kept.map((one) => one.known),
      ...left.map((one): Known => ({ ...one, isGone: true })).slice(-MOST_GONE),
    ],
  };
}

/** Of what was settled. */
const NEARLY = 0.1;

const isAsHeld = (settled: Noted["held"], { held, isComputed }: Noted): boolean =>
  isComputed && typeof settled === "number" && typeof held === "number"
    ? Math.abs(settled - held) <= NEARLY * Math.abs(settled)
    : settled === held;

type Way = (known: Known, now: Noted) => boolean;

/** Settled, it is held to what was settled. */
const heldOf = ({ settled, held }: Known): Noted["held"] => settled?.held ?? held;

function paired(known: readonly Known[], noted: readonly Noted[], rows: RowsThen): (Known | undefined)[] {
  const found: (Known | undefined)[] = noted.map(() => undefined);
  const free = new Set(known);
  const bySubject = groupedBy(known, ({ subject }) => subject);
  const byPlace = groupedBy(known, placeKey);
  const isRenamed = renamedIn(rows);
  /** The surest first. */
  const ways: readonly { readonly near: (now: Noted) => readonly Known[] | undefined; readonly is: Way }[] = [
    { near: ({ subject }) => bySubject.get(subject), is: (one, now) => heldOf(one) === now.held },
    { near: ({ subject }) => bySubject.get(subject), is: () => true },
    {
      near: (now) => byPlace.get(placeKey(now)),
      is: (one, now) => one.held === now.held && isRenamed(one.row, now.row),
    },
  ];
  for (const { near, is } of ways)
    for (const [index, now] of noted.entries()) {
      if (found[index]) continue;
      const one = near(now)?.find(
        (before) =>
          free.has(before) && before.rules.some((rule) => now.rules.includes(rule)) && is(before, now),
      );
      if (!one) continue;
      found[index] = one;
      free.delete(one);
    }
  return found;
}

/** In its place: the old name is nowhere now, and the new one was nowhere; in another building most names are others. */
function renamedIn({
  before,
  now,
}: RowsThen): (one: string | undefined, other: string | undefined) => boolean {
  const [then, since] = [new Set(before), new Set(now)];
  const listOf = (row: string): string => row.slice(0, row.indexOf(" "));
  const isSameList = (list: string): boolean => {
    const rows = before.filter((row) => listOf(row) === list);
    return 2 * rows.filter((row) => since.has(row)).length >= rows.length;
  };
  return (one, other) =>
    one !== undefined &&
    other !== undefined &&
    !since.has(one) &&
    !then.has(other) &&
    listOf(one) === listOf(other) &&
    isSameList(listOf(one));
}

const placeKey = ({ place }: Noted): string => (place ? `${place.sheet}!${place.cell}` : "");

function groupedBy(known: readonly Known[], keyOf: (one: Known) => string): Map<string, Known[]> {
  const groups = new Map<string, Known[]>();
  for (const one of known) {
    const key = keyOf(one);
    const group = groups.get(key);
    if (group) group.push(one);
    else groups.set(key, [one]);
  }
  return groups;
}
