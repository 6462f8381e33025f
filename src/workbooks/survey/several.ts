/** A name that stands for several outlets: `101-104`, `A1, A2`, `G-01 to G-04`, `3 outlets`. */

export interface Several {
  /** Each by its name; absent where they can't be told. */
  readonly names?: readonly string[];
  readonly words: string;
}

const COUNTED = /^(\d{1,3}) ?(?:outlets?|points?|sockets?|dosen|prises?|prese|tomas?|x|pcs|off|no\.?)$/i;
const OPEN_END = /(?:\bff\b\.?|\betc\b\.?|\bet seq\b\.?|…|\.{3})$/i;
const PARTS = / ?[,;&+/] ?| (?:and|und|et|y|e) /i;
const NAME = /^[\p{L}\d][\p{L}\d .-]*$/u;
const SPAN =
  /^((?:[\p{L}\d.-]*?[\p{L}.-])?)(\d+)( ?(?:–|—|\.{2,3}|…|-) ?| (?:to|bis|till|à|a|thru|through) )((?:[\p{L}\d.-]*?[\p{L}.-])?)(\d+)$/iu;
const MOST = 200;

/**
 * @param names of all outlets of the file
 * @param quantity that the line has; as many names as that are meant
 * @returns undefined for one outlet's name
 */
export function severalIn(
  name: string,
  names: readonly string[],
  quantity: number | undefined,
): Several | undefined {
  const count = COUNTED.exec(name);
  if (count) return Number(count[1]) > 1 || / /.test(name) ? { words: `${count[1]} outlets` } : undefined;
  if (OPEN_END.test(name)) return { words: "more outlets than it names" };
  const parts = name.split(PARTS);
  if (parts.length > 1 && parts.every((part) => NAME.test(part)) && /\d/.test(name)) {
    // "12/4" is a name as well; "A1/A2" is hardly one.
    const couldBeOne =
      /^[^,;&+]*\/[^,;&+]*$/.test(name) && !parts.every((part) => /\p{L}/u.test(part) && /\d/.test(part));
    const isMeant = quantity === parts.length || (!couldBeOne && !isUsual(names, PARTS));
    return isMeant ? { names: parts, words: `${parts.length} outlets` } : undefined;
  }
  return spanIn(name, names, quantity);
}

function spanIn(name: string, names: readonly string[], quantity: number | undefined): Several | undefined {
  const [, before = "", from, sign, again, to] = SPAN.exec(name) ?? [];
  if (from === undefined || to === undefined || sign === undefined) return undefined;
  const count = Number(to) - Number(from) + 1;
  if ((again !== "" && again !== before) || count < 2 || count > MOST) return undefined;
  if (sign.trim() === "-") {
    // "1-02" is a name; "101-104" is four where the others have no hyphen, and both ends have as many digits.
    const couldBe =
      from.length === to.length && (before !== "" || from.length > 1) && (again !== "" || !/\d/.test(before));
    if (!couldBe || (quantity !== count && isUsual(names, /\d ?- ?\p{L}*\d/u))) return undefined;
  }
  const width = from.startsWith("0") || from.length === to.length ? from.length : 0;
  return {
    names: Array.from(
      { length: count },
      (_, index) => before + String(Number(from) + index).padStart(width, "0"),
    ),
    words: `${count} outlets`,
  };
}

/** Half of the file's other names or more are written so; the name itself is. */
const isUsual = (names: readonly string[], pattern: RegExp): boolean =>
  names.length > 1 && countOf(names, pattern) - 1 >= (names.length - 1) / 2;

const counted = new WeakMap<readonly string[], Map<string, number>>();

/** How many of a file's names match; counted once for each file. */
export function countOf(names: readonly string[], pattern: RegExp): number {
  const known = counted.get(names) ?? new Map<string, number>();
  counted.set(names, known);
  let count = known.get(pattern.source);
  if (count === undefined) {
    count = names.filter((name) => pattern.test(name)).length;
    known.set(pattern.source, count);
  }
  return count;
}
