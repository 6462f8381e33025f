/** Names of rooms, outlets and devices that hold their floor, counted on to another floor: `2-01` becomes `3-01`. */

const DIGITS = /\d+/g;
/** Floors by their number in words; a ground floor is 0 where rooms are numbered by floors. */
const WORDS: Readonly<Record<string, number>> = Object.fromEntries([
  ...["ground", "ground floor", "g", "gf", "eg", "rdc"].map((word) => [word, 0] as const),
  ...["first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth"].map(
    (word, at) => [word, at + 1] as const,
  ),
]);
/** A label without a number that is short enough to stand in a name. */
const SHORT = 3;

interface LabelNumber {
  readonly value: number;
  /** Equal numbers before it in the label: block 2, 2nd floor. */
  readonly before: number;
}

const plainMinus = (label: string): string => label.trim().replace(/\u2212/g, "-");
const numbersIn = (label: string): number[] =>
  [...plainMinus(label).matchAll(/(?:(?:^|\s)-)?\d+/g)].map(([found]) => Number(found));

/** The number of a floor's label: 2 of `2nd`, -1 of `-1`, 1 of `1.OG`, 0 of `ground`; undefined of `lounge`. */
export const floorNumber = (label: string): number | undefined =>
  numbersIn(label)[0] ??
  WORDS[
    plainMinus(label)
      .toLowerCase()
      .replace(/ floor$/, "")
  ];

/** Of several numbers the one in which two labels differ. */
function numberOf(label: string, other: string): LabelNumber | undefined {
  const [own, others] = [numbersIn(label), numbersIn(other)];
  const differing = own.findIndex((value, at) => value !== others[at]);
  const at = own.length > 1 && own.length === others.length && differing >= 0 ? differing : 0;
  const value = own[at] ?? floorNumber(label);
  return value === undefined
    ? undefined
    : { value, before: own.slice(0, at).filter((one) => one === value).length };
}

const isLetter = (sign: string | undefined): boolean => sign !== undefined && /\p{L}/u.test(sign);
const isDigit = (sign: string | undefined): boolean => sign !== undefined && /\d/.test(sign);

/** Where a label stands by itself in a name, not as a part of a longer word or number. */
function placeOf(label: string, name: string): number {
  const [sought, text] = [label.toLowerCase(), name.toLowerCase()];
  const cuts = (
    is: (sign: string | undefined) => boolean,
    inner: string | undefined,
    outer: string | undefined,
  ) => is(inner) && is(outer);
  for (let at = text.indexOf(sought); at >= 0; at = text.indexOf(sought, at + 1)) {
    const [before, after] = [text[at - 1], text[at + sought.length]];
    const [first, last] = [sought[0], sought.at(-1)];
    if (![isLetter, isDigit].some((is) => cuts(is, first, before) || cuts(is, last, after))) return at;
  }
  return -1;
}

const replacedAt = (name: string, at: number, length: number, by: string): string =>
  name.slice(0, at) + by + name.slice(at + length);

/** With as many noughts before it as the old number had. */
const padded = (value: number, like: string): string =>
  value < 0 ? String(value) : String(value).padStart(like.startsWith("0") ? like.length : 0, "0");

/**
 * @param from label of the floor that the name is on
 * @param to label of the other floor
 * @param others names on the same floor: a number in which they differ is not the floor's
 * @returns the name on the other floor; undefined where it does not hold its floor
 */
export function countedOn(
  name: string,
  from: string,
  to: string,
  others: readonly string[] = [],
): string | undefined {
  const label = from.trim();
  if (label === "") return undefined;
  // A bare number is looked for below, with the noughts that it may have.
  const at = /^\d+$/.test(label) ? -1 : placeOf(label, name);
  if (at >= 0) return replacedAt(name, at, label.length, to.trim());
  const number = numberOf(from, to);
  const short = initialOf(label);
  const initial = short === undefined ? -1 : placeOf(short, name);
  const next = numberOf(to, from)?.value ?? (to.trim().length <= SHORT ? to.trim() : undefined);
  if (next === undefined) return undefined;
  // G-01 on the floor Ground.
  if (short !== undefined && initial === 0) return replacedAt(name, initial, short.length, String(next));
  if (number === undefined || number.value < 0) return undefined;
  const places = placesOf(number.value, name).filter(
    (place) => !others.some((one) => differAt(place, name, one)),
  );
  const place = places[Math.min(number.before, places.length - 1)];
  if (!place) return undefined;
  const isWhole = typeof next === "number" && place.isWhole;
  if (!isWhole && typeof next === "number" && next < 0) return undefined;
  return replacedAt(name, place.at, place.length, isWhole ? padded(next, place.text) : String(next));
}

interface NumberPlace {
  readonly at: number;
  readonly length: number;
  readonly text: string;
  /** The floor's number alone, not the beginning of a room's. */
  readonly isWhole: boolean;
}

/** Where a floor's number stands in a name, alone or before that of a room: 201 is room 01 of floor 2, 1201 of floor 12. */
function placesOf(number: number, name: string): NumberPlace[] {
  const places = [...name.matchAll(DIGITS)].flatMap(({ 0: run, index }): NumberPlace[] => {
    if (Number(run) === number && !(number === 0 && run.length > 2))
      return [{ at: index, length: run.length, text: run, isWhole: true }];
    const digits = String(number);
    const significant = number === 0 ? run : run.replace(/^0+(?=\d)/, "");
    // Of the ground floor only a room of three digits shows it: 01 is any floor's first.
    const isLonger = significant.length > digits.length + (number === 0 ? 1 : 0);
    return isLonger && significant.startsWith(digits)
      ? [{ at: index + run.length - significant.length, length: digits.length, text: digits, isWhole: false }]
      : [];
  });
  const isPlain = ({ text, isWhole }: NumberPlace): boolean => !isWhole || text === String(number);
  // Of 2-02 the first is the floor: the other has a nought before it.
  return places.some((place) => place.isWhole && isPlain(place)) ? places.filter(isPlain) : places;
}

/** Whether another name is the same but for the number at that place: S1 and S2 of one floor are counted through. */
function differAt({ at, length }: NumberPlace, name: string, other: string): boolean {
  const [before, after] = [name.slice(0, at).toLowerCase(), name.slice(at + length).toLowerCase()];
  const text = other.toLowerCase();
  if (!text.startsWith(before) || !text.endsWith(after) || text.length <= before.length + after.length)
    return false;
  const middle = text.slice(before.length, text.length - after.length);
  return /^\d+$/.test(middle) && Number(middle) !== Number(name.slice(at, at + length));
}

/** The letter for which the word of a ground floor, a basement or a wing stands. */
const initialOf = (label: string): string | undefined =>
  /^\p{L}{3,}/u.test(label) && !((floorNumber(label) ?? 0) > 0) ? label[0] : undefined;

/** An outlet's name where the name of its room stands in it: `TV2-201` of room 201 is the second of that room. */
export function withItsRoom(name: string, room: string, nextRoom: string | undefined): string | undefined {
  if (nextRoom === undefined || room.trim().length < 2) return undefined;
  const at = placeOf(room.trim(), name);
  return at < 0 ? undefined : replacedAt(name, at, room.trim().length, nextRoom);
}
