/**
 * Why a cell shows what it shows: what its formula reads, in the sheet's own
 * words and with values, and in turn what that is worked out from.
 *
 * A formula of ours stands once above its column and reads whole columns. For
 * one row it is told which cells of that row it read; of a list that it looks
 * something up in, the row that the cells of this row name; of any other list
 * how many entries it has, their sum, and the largest of them.
 */
import { parseAddress, address, parseRange, type Place, type Zone } from "../formula/address";
import { parseFormula } from "../formula/parse";
import { printFormula } from "../formula/print";
import { areasOf, type Area } from "../formula/readAreas";
import { withParts, type FormulaNode } from "../formula/tree";
import { isBookError, type Book, type BookCell, type BookResult, type BookSheet } from "../workbooks/book";
import type { Block } from "../workbooks/definition";
import { rowKey } from "../workbooks/rowKey";
import { templateOf } from "../workbooks/templates";
import { isBlank, plainWord } from "./namedCells";
import { areasRead, type AreaRead } from "./wholeAreas";
import { labelsIn } from "./labels";
import { spokenOf, wordsIn, type WordsFor } from "./sheetWords";

export interface Reason {
  readonly sheet: string;
  readonly cell: string;
  /** "Run of A-07 (Rooms H8)" */
  readonly words: string;
  /** Undefined for a blank cell. */
  readonly value: BookResult | undefined;
  /** A number format, where the cell has one. */
  readonly format: string | undefined;
  /** With the sheet's words in the place of names; undefined for what a person or the template typed. */
  readonly formula: string | undefined;
  readonly from: readonly (Reason | Listed)[];
  /** It was told further up, or lies deeper than was asked for: what it is worked out from is left out. */
  readonly isCut: boolean;
}

/** Cells that are read as a whole. */
export interface Listed {
  readonly sheet: string;
  readonly range: string;
  /** "Price on Parts" */
  readonly words: string;
  readonly filled: number;
  /** Of the numbers among them; undefined where there are none. */
  readonly sum: number | undefined;
  /** The largest numbers; of words those that are the rarest, such as the one check that is not ok. */
  readonly toldBy: "largest" | "rarest";
  readonly told: readonly Reason[];
}

export const isListed = (one: Reason | Listed): one is Listed => "filled" in one;

export interface HowFar {
  /** So many steps from the cell that is asked about. */
  readonly deep: number;
  /** So many of a list's entries are told one by one; Infinity tells all, blank ones too. */
  readonly most: number;
}
const USUAL: HowFar = { deep: 2, most: 3 };
/** Several cells of one row that are read together are told one by one up to here. */
const MOST_BESIDE = 4;

/** A formula in words is shown up to here. */
const MOST_LETTERS = 300;

/**
 * @param book computed
 * @param at the sheet's name and the cell, as `B23`
 * @returns undefined for a sheet or cell that is not there
 */
export function why(
  book: Book,
  at: { readonly sheet: string; readonly cell: string },
  how: Partial<HowFar> = {},
): Reason | undefined {
  const sheet = book.sheets.find(({ name }) => name.toLowerCase() === at.sheet.toLowerCase());
  const place = parseAddress(at.cell.toUpperCase().replaceAll("$", ""));
  if (!sheet || !place) return undefined;
  return new Chain(book, { ...USUAL, ...how }).reason(sheet, place, 0);
}

/** A formula and the cells that it fills. */
interface Source {
  readonly formula: string;
  readonly zone: Zone;
}

class Chain {
  private readonly told = new Set<string>();
  private readonly words = new Map<string, WordsFor>();
  private readonly sheets: ReadonlyMap<string, BookSheet>;
  private readonly spills = new Map<BookSheet, ReadonlyMap<number, readonly Source[]>>();
  private readonly blocks: readonly Block[];
  private readonly labelAt: ReturnType<typeof labelsIn>;

  constructor(
    private readonly book: Book,
    private readonly how: HowFar,
  ) {
    const definition = templateOf(book.template)?.definition;
    this.sheets = new Map(book.sheets.map((sheet) => [sheet.name, sheet]));
    this.labelAt = labelsIn(book, definition);
    this.blocks = (definition?.sheets ?? []).flatMap(({ parts }) =>
      parts.filter((part) => part.kind === "block"),
    );
  }

  reason(sheet: BookSheet, place: Place, depth: number): Reason {
    const cell = address(place.row, place.column);
    const own = sheet.cells[cell];
    const source = this.sourceOf(sheet, place);
    const key = `${sheet.name}!${cell}`;
    const isCut = source !== undefined && (this.told.has(key) || depth >= this.how.deep);
    this.told.add(key);
    const parsed = source && parseFormula(source.formula);
    const format = own?.look === undefined ? undefined : this.book.looks[own.look]?.format;
    return {
      sheet: sheet.name,
      cell,
      words: this.wordsOf(sheet.name, cell),
      value: sheet.results[cell] ?? own?.value,
      format,
      formula: source && (parsed?.tree ? this.inWords(parsed.tree, sheet, source, place) : source.formula),
      isCut,
      from: parsed?.tree && !isCut ? this.readBy(parsed.tree, sheet, source!, place, depth + 1) : [],
    };
  }

  private wordsOf(sheet: string, cells: string): string {
    let words = this.words.get(sheet);
    if (!words) this.words.set(sheet, (words = wordsIn(spokenOf(this.book), sheet)));
    const said = words(cells, undefined);
    // Of cells without a label of their own the address says more.
    return said === undefined || said.startsWith("column ") ? `${sheet} ${cells}` : said;
  }

  /** @returns the formula that stands in the cell, or that spills over it */
  private sourceOf(sheet: BookSheet, { row, column }: Place): Source | undefined {
    const own = sheet.cells[address(row, column)];
    if (own?.formula !== undefined) return sourceAt(own.formula, { row, column }, own.spill);
    let spills = this.spills.get(sheet);
    if (!spills) this.spills.set(sheet, (spills = spillsOf(sheet)));
    return spills.get(column)?.find(({ zone }) => zone.top <= row && row <= zone.bottom);
  }

  private readBy(
    tree: FormulaNode,
    sheet: BookSheet,
    source: Source,
    place: Place,
    depth: number,
  ): (Reason | Listed)[] {
    const areas = areasRead(this.book, sheet.name, tree).filter(({ sheet: on }) => this.sheets.has(on));
    const beside = areas.map((area) => this.besideIn(area, source, place));
    // What stands beside it names the rows of the lists.
    const named = new Set(
      beside
        .flatMap((cells) => cells ?? [])
        .map(([on, at]) => plainWord(valueAt(on, at)))
        .filter((word) => word !== ""),
    );
    return areas.flatMap((area, index): (Reason | Listed)[] => {
      const cells = beside[index] ?? this.namedRow(area, named);
      if (cells) return cells.map(([on, at]) => this.reason(on, at, depth));
      return [this.listed(area, depth)];
    });
  }

  /** @returns the cells that a formula reads for this cell of its own; undefined where it reads the area as a whole */
  private besideIn(
    { sheet, zone, whole }: AreaRead,
    { zone: own }: Source,
    place: Place,
  ): (readonly [BookSheet, Place])[] | undefined {
    const on = this.sheets.get(sheet)!;
    const [height, width] = sizeOf(zone);
    const [ownHeight, ownWidth] = sizeOf(own);
    if (height === 1 && width === 1) return [[on, { row: zone.top, column: zone.left }]];
    if (whole) return undefined;
    if (height !== ownHeight && height !== 1) return undefined;
    if (ownHeight === 1 && height === 1 && width > MOST_BESIDE) return undefined;
    const row = height === 1 ? zone.top : zone.top + place.row - own.top;
    if (width === ownWidth && width > 1) return [[on, { row, column: zone.left + place.column - own.left }]];
    if (width > MOST_BESIDE) return undefined;
    return Array.from({ length: width }, (_, index) => [on, { row, column: zone.left + index }] as const);
  }

  /** @returns the cells of a list's row that one of the words names, where exactly one row has such a name */
  private namedRow(
    { sheet, zone }: Area,
    words: ReadonlySet<string>,
  ): (readonly [BookSheet, Place])[] | undefined {
    const on = this.sheets.get(sheet)!;
    const block = this.blocks.find((one) => {
      const first = this.zoneOfName(`${one.name}_${one.columns[0]!.key}`);
      return first?.sheet === sheet && first.zone.top === zone.top && first.zone.bottom === zone.bottom;
    });
    const key = block && rowKey(block.columns);
    const names = key === undefined ? undefined : this.zoneOfName(`${block!.name}_${key}`)?.zone;
    // The names themselves are only looked through.
    if (!names || sizeOf(zone)[1] > MOST_BESIDE) return undefined;
    if (names.left === zone.left && names.right === zone.right) return [];
    const rows: number[] = [];
    for (let row = zone.top; row <= zone.bottom; row++)
      if (words.has(plainWord(valueAt(on, { row, column: names.left })))) rows.push(row);
    if (rows.length !== 1) return undefined;
    return Array.from(
      { length: sizeOf(zone)[1] },
      (_, index) => [on, { row: rows[0]!, column: zone.left + index }] as const,
    );
  }

  private zoneOfName(wanted: string): Area | undefined {
    const found = this.book.names.find(({ name }) => name === wanted);
    const zone = found && parseRange(found.range);
    return zone && { sheet: found.sheet, zone };
  }

  private listed({ sheet, zone }: Area, depth: number): Listed {
    const on = this.sheets.get(sheet)!;
    const range = `${address(zone.top, zone.left)}:${address(zone.bottom, zone.right)}`;
    const numbers: Entry[] = [];
    const words: Entry[] = [];
    const others: Entry[] = [];
    // A reference to whole columns ends where the sheet does.
    const [bottom, right] = [Math.min(zone.bottom, on.rowCount), Math.min(zone.right, on.columnCount)];
    for (let row = zone.top; row <= bottom; row++)
      for (let column = zone.left; column <= right; column++) {
        const value = valueAt(on, { row, column });
        const kind = typeof value === "number" ? numbers : isBlank(value) ? others : words;
        kind.push({ value, place: { row, column } });
      }
    const isOfNumbers = numbers.length >= words.length;
    const told = isOfNumbers ? largestOf(numbers) : rarestOf(words);
    const all = this.how.most === Infinity;
    return {
      sheet,
      range,
      words: this.wordsOf(sheet, range),
      filled: numbers.length + words.length,
      sum: numbers.length === 0 ? undefined : numbers.reduce((sum, { value }) => sum + Number(value), 0),
      toldBy: isOfNumbers ? "largest" : "rarest",
      told: (all ? [...numbers, ...words, ...others] : told.slice(0, this.how.most)).map(({ place }) =>
        this.reason(on, place, depth),
      ),
    };
  }

  /** The formula with labels in the place of names and cells. */
  private inWords(tree: FormulaNode, sheet: BookSheet, source: Source, place: Place): string {
    const labelled = withParts(tree, (node) => {
      const [area] = areasOf(this.book, sheet.name, node);
      if (!area || !this.sheets.has(area.sheet)) return undefined;
      const [first] = this.besideIn({ ...area, whole: false }, source, place) ?? [];
      const label = this.labelAt(area.sheet, first?.[1] ?? { row: area.zone.top, column: area.zone.left });
      // One without a label of its own keeps its address.
      return label.startsWith("column ") ? undefined : `[${label}]`;
    });
    const text = printFormula(labelled);
    return text.length > MOST_LETTERS ? `${text.slice(0, MOST_LETTERS)}…` : text;
  }
}

function sourceAt(
  formula: string,
  { row, column }: Place,
  { rows, columns }: NonNullable<BookCell["spill"]> = { rows: 1, columns: 1 },
): Source {
  return {
    formula,
    zone: { top: row, left: column, bottom: row + rows - 1, right: column + columns - 1 },
  };
}

/** The formulas that fill more than their own cell, by each column that they fill. */
function spillsOf({ cells }: BookSheet): ReadonlyMap<number, readonly Source[]> {
  const found = new Map<number, Source[]>();
  for (const [at, { formula, spill }] of Object.entries(cells)) {
    const place = formula === undefined || !spill ? undefined : parseAddress(at);
    if (!place) continue;
    const source = sourceAt(formula!, place, spill);
    for (let column = source.zone.left; column <= source.zone.right; column++) {
      const known = found.get(column);
      if (known) known.push(source);
      else found.set(column, [source]);
    }
  }
  return found;
}

interface Entry {
  readonly value: BookResult | undefined;
  readonly place: Place;
}

/** Those that are not nought, the largest first, whatever their sign. */
const largestOf = (numbers: readonly Entry[]): readonly Entry[] =>
  numbers
    .filter(({ value }) => value !== 0)
    .sort((a, b) => Math.abs(Number(b.value)) - Math.abs(Number(a.value)));

/** Those that fewest others are like first. */
function rarestOf(words: readonly Entry[]): readonly Entry[] {
  const counts = new Map<string, number>();
  const wordOf = ({ value }: Entry): string => (isBookError(value) ? value.error : plainWord(value));
  for (const one of words) counts.set(wordOf(one), (counts.get(wordOf(one)) ?? 0) + 1);
  return [...words].sort((a, b) => counts.get(wordOf(a))! - counts.get(wordOf(b))!);
}

const valueAt = ({ cells, results }: BookSheet, { row, column }: Place): BookResult | undefined => {
  const at = address(row, column);
  return results[at] ?? cells[at]?.value;
};

const sizeOf = ({ top, left, bottom, right }: Zone): readonly [rows: number, columns: number] => [
  bottom - top + 1,
  right - left + 1,
];
