/**
 * What was likely meant in a cell that a rule names without knowing it: the name nearest to what was typed, the figure
 * a slip away, what the firm's standards have for it, what the rows beside it say. Where several answers would be
 * right there is a range, or nothing.
 */
import type { Named } from "../formula/build";
import type { Book } from "../workbooks/book";
import { estimate } from "../workbooks/multiRoom/names";
import type { Finding, FindingPlace, Undoing } from "./finding";
import { fedAsOnOtherFloors } from "./floors";
import { inputsIn, type Input, type InputCell } from "./inputsIn";
import { likelySlips } from "./likelySlip";
import { filledCells, isBlank, namedCells, plainWord } from "./namedCells";
import { firmValue } from "./ranges/firmValue";
import { takenFrom, type FirmSays } from "./ranges/firm";
import type { Reviewed } from "./rule";
import { DISCOUNT } from "./rules/discounts";
import { nearest } from "./spelling";

export interface Likely extends Pick<Finding, "meant" | "undoing" | "usual"> {
  /** What is undone is likely, and not known. */
  readonly isGuess?: true;
}

const { rooms, branches, heads, dishes, feeders, passives, supplies } = estimate;

/** Names that a cell without a list of its own may hold. */
const LISTS: Readonly<Record<string, readonly string[]>> = {
  [rooms.from.name]: [branches.id.name, heads.id.name, rooms.outlet.name],
  [rooms.receiver.name]: [estimate.receivers.kind.name],
  [estimate.types.receiver.name]: [estimate.receivers.kind.name],
  [branches.from.name]: [branches.id.name, heads.id.name],
  [branches.device.name]: [passives.name.name, supplies.name.name],
  [heads.dish.name]: [dishes.name.name],
  [feeders.from.name]: [dishes.name.name, heads.id.name],
  [feeders.to.name]: [heads.id.name],
};
const FEEDS: Readonly<Record<string, Named>> = {
  [rooms.from.name]: rooms.outlet,
  [branches.from.name]: branches.id,
};
/** Columns whose rows are of one kind and vary by less than ten times. */
const LENGTHS: ReadonlySet<string> = new Set(
  [rooms.run, branches.length, heads.length, feeders.length, estimate.types.run].map(({ name }) => name),
);
/** Rules that name a cell because something belongs there. */
const ASKED_FOR: ReadonlySet<string> = new Set([
  "entry missing",
  "price missing, expired or changed",
  "feeding",
  "part lacking or not needed",
  "work lacking or counted twice",
]);
const ZERO = "amount of zero";
const FEWEST_FELLOWS = 3;
const PERCENT = 100;
const SLIPS = [10, 100, 1000] as const;

/** @param findings those of which it is not known what was meant */
export function likelyMeant(judged: Reviewed, findings: readonly Finding[]): Map<Finding, Likely> {
  const { read, definition, options } = judged;
  const likely = new Map<Finding, Likely>();
  if (!definition || findings.length === 0) return likely;
  for (const [finding, meant] of likelySlips(read, definition, findings)) likely.set(finding, { meant });
  const asked = new Map(
    findings.flatMap((one) => (one.place && !likely.has(one) ? [[keyOf(one.place), one] as const] : [])),
  );
  if (asked.size === 0) return likely;
  const firm = options.standards ?? takenFrom(read);
  const inputs = inputsIn(read, definition);
  for (const [at, input] of inputs.entries()) {
    for (const cell of input.cells) {
      const finding = asked.get(keyOf(cell.place));
      if (!finding || !cell.inRow) continue;
      const found = new Cell(read, inputs, at, cell, finding, asked, firm).likely();
      if (found) likely.set(finding, found);
    }
  }
  return likely;
}

class Cell {
  private readonly input: Input;
  private readonly value: InputCell["value"];
  /** The other rows of its column, but those that are named themselves. */
  private readonly fellows: readonly InputCell[];

  constructor(
    private readonly read: Book,
    private readonly inputs: readonly Input[],
    private readonly at: number,
    private readonly cell: InputCell,
    private readonly finding: Finding,
    asked: ReadonlyMap<string, Finding>,
    private readonly firm: FirmSays | undefined,
  ) {
    this.input = inputs[at]!;
    this.value = cell.value;
    this.fellows = this.input.cells.filter(
      (one) => one !== cell && one.inRow && !isBlank(one.value) && !asked.has(keyOf(one.place)),
    );
  }

  likely(): Likely | undefined {
    if (isBlank(this.value)) return ASKED_FOR.has(this.finding.rule!) ? this.missing() : undefined;
    if (typeof this.value === "number")
      return this.input.input.rule.kind === "number" ? this.figure(this.value) : undefined;
    return typeof this.value === "string" && this.finding.rule !== "duplicate"
      ? this.word(this.value)
      : undefined;
  }

  private missing(): Likely | undefined {
    const own = this.ofFirm();
    if (own !== undefined) return { meant: own, isGuess: true };
    if (this.input.input.rule.kind === "number") return this.likeItsFellows();
    const word = this.input.name in FEEDS ? this.fed() : this.sameInAll();
    return word === undefined ? undefined : { meant: word, isGuess: true };
  }

  /** Of lengths in rows of the same kind: of one type, else fed from one device, else on one floor. */
  private likeItsFellows(): Likely | undefined {
    if (!LENGTHS.has(this.input.name)) return undefined;
    const families = this.input.block === "rooms" ? [rooms.type, rooms.from, rooms.floor] : [];
    for (const { name } of families) {
      const words = namedCells(this.read, name);
      const own = plainWord(words[this.cell.index]?.value);
      const usual =
        own === ""
          ? undefined
          : rangeOf(this.fellows.filter(({ index }) => plainWord(words[index]?.value) === own));
      if (usual) return { usual };
    }
    const usual = rangeOf(this.fellows);
    return usual && { usual };
  }

  private sameInAll(): string | undefined {
    const words = new Map(this.fellows.map(({ value }) => [plainWord(value), value]));
    const [only] = words.values();
    return this.fellows.length >= FEWEST_FELLOWS && words.size === 1 && typeof only === "string"
      ? only
      : undefined;
  }

  private word(typed: string): Likely | undefined {
    const offered = this.offered();
    if (offered.some((one) => plainWord(one) === plainWord(typed))) {
      const own = this.ofFirm();
      // What is on the list and is named none the less is no slip of a letter.
      if (typeof own === "string" && plainWord(own) !== plainWord(typed) && offered.includes(own))
        return { meant: own, isGuess: true };
      const fed = this.input.name in FEEDS ? this.fed() : undefined;
      return fed !== undefined && plainWord(fed) !== plainWord(typed)
        ? { meant: fed, isGuess: true }
        : undefined;
    }
    // Of a list in which nothing stands nothing can be meant.
    if (offered.length === 0 && this.input.input.rule.kind === "named")
      return { undoing: [{ place: this.cell.place }], isGuess: true };
    const meant =
      nearest(typed, offered, this.beside()) ??
      (this.input.name in FEEDS ? this.fed() : (this.ofFirmOnList(offered) ?? this.sameInAll()));
    return meant === undefined ? undefined : { meant, isGuess: true };
  }

  private offered(): string[] {
    const { rule } = this.input.input;
    const lists = LISTS[this.input.name];
    const words = (names: readonly string[]): string[] =>
      names.flatMap((name) => filledCells(this.read, name).map(({ value }) => String(value)));
    if (rule.kind === "choice") return [...rule.choices];
    if (rule.kind === "named") return words([rule.name]);
    if (lists) return words(lists);
    return rule.kind === "text" && !this.input.namesRows
      ? this.fellows.flatMap(({ value }) => (typeof value === "string" ? [value] : []))
      : [];
  }

  private ofFirmOnList(offered: readonly string[]): string | undefined {
    const own = this.ofFirm();
    return offered.find((one) => plainWord(one) === plainWord(own));
  }

  /** What the nearest filled rows above and below have. */
  private beside(): string[] {
    const { index } = this.cell;
    const above = this.fellows.findLast((one) => one.index < index);
    const below = this.fellows.find((one) => one.index > index);
    return [above, below].flatMap((one) => (one ? [String(one.value)] : []));
  }

  private fed(): string | undefined {
    const { name } = this.input;
    const onFloors = fedAsOnOtherFloors(this.read, FEEDS[name]!, { name }, this.cell.index);
    const there = new Set(this.offered().map(plainWord));
    if (onFloors !== undefined) return there.has(plainWord(onFloors)) ? onFloors : undefined;
    const [above, below] = this.beside();
    return above !== undefined && above === below && there.has(plainWord(above)) ? above : undefined;
  }

  private figure(typed: number): Likely | undefined {
    const { input, unit = "" } = this.input;
    if (input.rule.kind !== "number") return undefined;
    const { min = -Infinity, max = Infinity } = input.rule;
    if (this.finding.rule === ZERO) return this.zero();
    if (typed >= min && typed <= max) return undefined;
    const isIn = (value: number): boolean => value >= min && value <= max;
    const swapped = this.swapped(typed, isIn);
    if (swapped) return { undoing: swapped, isGuess: true };
    if (unit.startsWith("share") && typed > 1 && isIn(typed / PERCENT))
      return { meant: rounded(typed / PERCENT) };
    if (typed < 0 && min >= 0)
      // A negative sum under such a name is a discount in the wrong place.
      return isIn(-typed) && !DISCOUNT.test(this.cell.called) ? { meant: -typed } : undefined;
    const slips =
      min > 0 && max < Infinity
        ? SLIPS.flatMap((by) => [typed / by, typed * by]).filter((value) => isIn(value))
        : [];
    if (slips.length === 1) return { meant: rounded(slips[0]!) };
    const own = this.ofFirm();
    return typeof own === "number" && isIn(own) ? { meant: own, isGuess: true } : undefined;
  }

  /** A 0 in a cell that may be blank: what the firm has, else what the blank means. */
  private zero(): Likely | undefined {
    const own = this.ofFirm();
    if (typeof own === "number" && own !== 0) return { meant: own, isGuess: true };
    const { required, rule } = this.input.input;
    return own === undefined && required === undefined && rule.kind === "number"
      ? { undoing: [{ place: this.cell.place }], isGuess: true }
      : undefined;
  }

  /** With the field beside it, of the same unit: each fits where the other stands. */
  private swapped(typed: number, fits: (value: number) => boolean): Undoing[] | undefined {
    if (this.input.block !== undefined) return undefined;
    for (const other of [this.inputs[this.at + 1], this.inputs[this.at - 1]]) {
      const cell = other?.cells[0];
      if (!cell || other.block !== undefined || kindOf(other.unit) !== kindOf(this.input.unit)) continue;
      if (other.sheet !== this.input.sheet || other.input.rule.kind !== "number") continue;
      const { min = -Infinity, max = Infinity } = other.input.rule;
      if (typeof cell.value !== "number" || !fits(cell.value) || typed < min || typed > max) continue;
      return [
        { place: this.cell.place, value: cell.value },
        { place: cell.place, value: typed },
      ];
    }
    return undefined;
  }

  private ofFirm(): number | string | undefined {
    return this.firm && firmValue(this.read, this.firm, this.input, this.cell);
  }
}

function rangeOf(cells: readonly InputCell[]): Finding["usual"] {
  const values = cells.flatMap(({ value }) => (typeof value === "number" && value > 0 ? [value] : []));
  return values.length >= FEWEST_FELLOWS
    ? { low: Math.min(...values), high: Math.max(...values) }
    : undefined;
}

/** Degrees north and degrees east are of one kind. */
const kindOf = (unit = ""): string => unit.split(" ")[0]!;

const DECIMALS = 6;
const rounded = (value: number): number => Number(value.toFixed(DECIMALS));
const keyOf = ({ sheet, cell }: FindingPlace): string => `${sheet}!${cell}`;
