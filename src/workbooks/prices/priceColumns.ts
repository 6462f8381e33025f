/** Finds the head of a price list and says what each column is taken for, by its head and by what stands below. */
import { type ImportedCell, type ImportedLine, textOf } from "../imported/table";
import { asFigures } from "../typed/plainText";
import { currenciesIn } from "./currencies";
import { headMeaning, PRICE_KEYS, type ColumnKey, type HeadMeaning } from "./headMeaning";
import { plainWords } from "./plainWords";
import { cutCell } from "./priceCell";
import { basisOf, saleUnit } from "./saleUnits";

export interface PriceColumn {
  readonly index: number;
  /** As the file has it; "column 3" where there are no heads. */
  readonly head: string;
  /** Absent for a column that is not used. */
  readonly key?: ColumnKey;
  readonly meaning: HeadMeaning;
}

export interface PriceHead {
  /** Where the body begins, among the filled lines. */
  readonly body: number;
  /** The heads as they stand; undefined for a list without. */
  readonly line?: ImportedLine;
  /** They name a price and an article, as far as is known here. */
  readonly known: boolean;
  /** Columns of whole numbers under heads that nobody here knows, in a list without a column of packs. */
  readonly perhapsPacks: readonly PriceColumn[];
  readonly columns: readonly PriceColumn[];
}

/** A list may begin with an address, terms and a table of contents. */
const HEAD_WITHIN = 60;
/** What stands below a head is judged by so many lines. */
const SAMPLE = 400;
const LONGEST_HEAD = 80;

const headText = (cell: ImportedCell | undefined): string =>
  cell === undefined || typeof cell === "object" ? "" : textOf(cell).replace(/\s+/g, " ");

const meaningOf = (text: string, own: string | undefined): HeadMeaning =>
  text === "" || text.length > LONGEST_HEAD ? { currencies: [] } : headMeaning(text, own);

/** @param chosen by a person, by the column's place: a key, or "" for a column that is not used */
export function findColumns(
  filled: readonly ImportedLine[],
  own: string | undefined,
  chosen: ReadonlyMap<number, ColumnKey | ""> = new Map(),
  hidden: readonly number[] = [],
): PriceHead {
  const found = headIn(filled, own);
  const body = found ? found.body : firstOfBody(filled);
  const sample = filled.slice(body, body + SAMPLE);
  const width = Math.max(0, found?.heads.length ?? 0, ...sample.map(({ cells }) => cells.length));
  const heads = Array.from({ length: width }, (_, index) => found?.heads[index] ?? "");
  const judged = heads.map((head, index): PriceColumn => {
    const meaning = meaningOf(head, own);
    return {
      index,
      head: head === "" ? (found ? "" : `column ${index + 1}`) : head,
      meaning,
      ...(meaning.key && { key: meaning.key }),
    };
  });
  const guessed = found?.known
    ? byContent(withoutHidden(judged, hidden), sample, own)
    : withoutHeads(judged, sample, own);
  const columns = guessed.map((column): PriceColumn => {
    const told = chosen.get(column.index);
    if (told === undefined) return column;
    return told === "" ? unused(column) : { ...column, key: told };
  });
  return {
    body,
    columns,
    known: found?.known ?? false,
    perhapsPacks: found?.known ? perhapsPacks(columns, sample, own) : [],
    ...(found && { line: found.line }),
  };
}

const unused = ({ index, head, meaning }: PriceColumn): PriceColumn => ({ index, head, meaning });

interface FoundHead {
  readonly line: ImportedLine;
  readonly heads: readonly string[];
  readonly body: number;
  readonly known: boolean;
}

function headIn(filled: readonly ImportedLine[], own: string | undefined): FoundHead | undefined {
  const within = filled.slice(0, HEAD_WITHIN);
  for (const [index, line] of within.entries()) {
    const texts = line.cells.map(headText);
    if (!fits(texts, own)) continue;
    const next = filled[index + 1];
    const below = next && isSecondHead(next, texts, own) ? next : undefined;
    return {
      line,
      heads: below ? joined(texts, below.cells.map(headText), false) : texts,
      body: index + (below ? 2 : 1),
      known: true,
    };
  }
  // A head may need both of two lines to say what its columns are.
  for (const [index, line] of within.entries()) {
    const next = filled[index + 1];
    if (!next || !isWords(line) || !isWords(next)) continue;
    const both = joined(line.cells.map(headText), next.cells.map(headText), true);
    if (fits(both, own)) return { line: next, heads: both, body: index + 2, known: true };
  }
  return unknownHead(within);
}

/** Words above figures, in as many columns: heads in another language, or in none. */
function unknownHead(within: readonly ImportedLine[]): FoundHead | undefined {
  const width = ({ cells }: ImportedLine): number => cells.filter((cell) => cell !== "").length;
  for (const [index, line] of within.entries()) {
    const next = within[index + 1];
    const figures = next?.cells.some((cell) => cutCell(cell, undefined).kind === "figure");
    if (next && figures && isWords(line) && Math.abs(width(next) - width(line)) <= 1)
      return { line, heads: line.cells.map(headText), body: index + 1, known: false };
    // Only what stands above all figures can be a head.
    if (line.cells.filter((cell) => cutCell(cell, undefined).kind === "figure").length > 1) return undefined;
  }
  return undefined;
}

const isWords = ({ cells }: ImportedLine): boolean => {
  const texts = cells.filter((cell) => cell !== "");
  return texts.length > 1 && texts.every((cell) => typeof cell === "string" && !/^[\d.,\s€$£]+$/.test(cell));
};

/** A head has a price, and an article or a description. */
function fits(texts: readonly string[], own: string | undefined): boolean {
  const keys = texts.map((text) => meaningOf(text, own));
  const named = (wanted: (key: ColumnKey) => boolean): boolean => keys.some(({ key }) => key && wanted(key));
  return (
    named((key) => PRICE_KEYS.has(key)) &&
    named((key) => key === "article" || key === "description") &&
    texts.every((text) => !/^[\d.,\s]+$/.test(text))
  );
}

/** Units and currencies, in a line of their own below the heads. */
function isSecondHead(line: ImportedLine, heads: readonly string[], own: string | undefined): boolean {
  let says = 0;
  for (const [index, cell] of line.cells.entries()) {
    if (cell === "") continue;
    if (typeof cell === "object") return false;
    const text = headText(cell);
    const { key } = meaningOf(heads[index] ?? "", own);
    if (key === "article" || (key === "description" && !text.startsWith("("))) return false;
    const cut = cutCell(text.replace(/^[([]|[)\]]$/g, ""), own);
    if (cut.kind === "figure" && !basisOf(text)) return false;
    const below = meaningOf(text, own);
    if (below.key !== undefined || below.currencies.length > 0 || basisOf(text)) says++;
  }
  return says > 0;
}

/** @param spread whether a head that stands over several columns is every one's */
function joined(above: readonly string[], below: readonly string[], spread: boolean): string[] {
  let over = "";
  return Array.from({ length: Math.max(above.length, below.length) }, (_, index) => {
    const top = above[index] ?? "";
    const under = below[index] ?? "";
    if (top !== "") over = top;
    return [top === "" && spread && under !== "" ? over : top, under].filter((text) => text !== "").join(" ");
  });
}

const firstOfBody = (filled: readonly ImportedLine[]): number =>
  Math.max(
    0,
    filled.findIndex(({ cells }) => cells.filter((cell) => cell !== "").length >= 3),
  );

interface Content {
  readonly filled: number;
  readonly figures: number;
  readonly decimals: number;
  readonly units: number;
  readonly bases: number;
  readonly spaced: number;
  readonly distinct: number;
  readonly length: number;
  readonly long: number;
  readonly currencies: number;
  readonly whole: number;
}

function contentOf(sample: readonly ImportedLine[], index: number, own: string | undefined): Content {
  const seen = new Set<string>();
  const count = {
    filled: 0,
    figures: 0,
    decimals: 0,
    units: 0,
    bases: 0,
    spaced: 0,
    length: 0,
    long: 0,
    currencies: 0,
    whole: 0,
  };
  for (const { cells } of sample) {
    const cell = cells[index];
    const text = textOf(cell);
    if (text === "") continue;
    count.filled++;
    seen.add(text);
    count.length += text.length;
    const cut = cutCell(cell, own);
    if (cut.kind === "figure") {
      count.figures++;
      if (cut.number === undefined ? /[.,]\d{1,4}$/.test(cut.figure) : !Number.isInteger(cut.number))
        count.decimals++;
      if (/^\d{8}$|^\d{11,14}$/.test(cut.figure)) count.long++;
    }
    if (/^[A-Z]{3}$/.test(text) && currenciesIn(text).length === 1) count.currencies++;
    if (/^[1-9]\d{0,4}$/.test(text)) count.whole++;
    if (saleUnit(text) !== undefined) count.units++;
    if (basisOf(text, true) !== undefined) count.bases++;
    if (/\p{L}.*\s|\s.*\p{L}/u.test(text)) count.spaced++;
  }
  return { ...count, distinct: seen.size };
}

/** A column that its maker has hidden is no price where another is shown. */
function withoutHidden(columns: readonly PriceColumn[], hidden: readonly number[]): readonly PriceColumn[] {
  const isPrice = ({ key }: PriceColumn): boolean => key !== undefined && PRICE_KEYS.has(key);
  if (!columns.some((column) => isPrice(column) && !hidden.includes(column.index))) return columns;
  return columns.map((column) => {
    if (!isPrice(column) || !hidden.includes(column.index)) return column;
    return unused(column);
  });
}

/** Heads that can be read two ways are settled by what stands below. */
function byContent(
  columns: readonly PriceColumn[],
  sample: readonly ImportedLine[],
  own: string | undefined,
): PriceColumn[] {
  const contents = columns.map(({ index }) => contentOf(sample, index, own));
  const most = (part: number, of: number): boolean => of > 0 && part >= of * 0.8;
  let out = columns.map((column): PriceColumn => {
    const { key, meaning, index } = column;
    const content = contents[index]!;
    const as = (other: ColumnKey | undefined): PriceColumn =>
      other ? { ...column, key: other } : unused(column);
    // Nothing but long whole numbers: barcodes, whatever their head.
    if (key && PRICE_KEYS.has(key) && most(content.long, content.filled)) return as(undefined);
    if (key === "description" && meaning.else === "article") {
      const others = columns.filter((other) => other.index !== index);
      const hasArticle = others.some((other) => other.key === "article");
      const hasDescription = others.some((other) => other.key === "description" && !other.meaning.else);
      if (!hasArticle && (hasDescription || isCodes(content))) return as("article");
      if (hasArticle && hasDescription) return as(undefined);
    }
    if (key === "pack" && most(content.units, content.filled) && content.figures === 0)
      return as(columns.some((other) => other.key === "unit") ? undefined : "unit");
    if (key === "unit" && most(content.figures, content.filled) && content.units === 0)
      return as(columns.some((other) => other.key === "pack" || other.key === "per") ? undefined : "pack");
    if (key === "per" && most(content.decimals, content.filled)) return as("price");
    if (key === "pack" && most(content.decimals, content.filled)) return as("perPack");
    return column;
  });
  out = unknownHeads(out, contents);
  const seen = new Set<ColumnKey>();
  out = out.map((column): PriceColumn => {
    const { key } = column;
    if (key === undefined || PRICE_KEYS.has(key)) return column;
    if (!seen.has(key)) {
      seen.add(key);
      return column;
    }
    return unused(column);
  });
  return out;
}

function perhapsPacks(
  columns: readonly PriceColumn[],
  sample: readonly ImportedLine[],
  own: string | undefined,
): PriceColumn[] {
  if (columns.some(({ key }) => key === "pack")) return [];
  return columns.filter(({ index, head, key, meaning }) => {
    if (key !== undefined || meaning.unused || head === "") return false;
    const { filled, whole, distinct } = contentOf(sample, index, own);
    return filled > sample.length / 2 && whole >= filled * 0.9 && distinct > 1;
  });
}

/** Columns whose heads nobody here knows, by what stands in them; only where it can be nothing else. */
function unknownHeads(columns: readonly PriceColumn[], contents: readonly Content[]): PriceColumn[] {
  const taken = new Set(columns.map(({ key }) => key));
  return columns.map((column): PriceColumn => {
    const content = contents[column.index]!;
    if (column.key !== undefined || column.meaning.unused || content.filled === 0) return column;
    const as = (key: ColumnKey): PriceColumn => {
      taken.add(key);
      return { ...column, key };
    };
    if (!taken.has("unit") && content.units >= content.filled * 0.8) return as("unit");
    if (!taken.has("article") && isCodes(content) && content.figures < content.filled * 0.5)
      return as("article");
    if (!taken.has("description") && content.spaced >= content.filled * 0.5) return as("description");
    if (!taken.has("currency") && content.currencies >= content.filled * 0.8) return as("currency");
    return column;
  });
}

const isCodes = ({ filled, spaced, distinct, length }: Content): boolean =>
  filled > 0 && spaced < filled * 0.3 && distinct > filled * 0.7 && length / filled < 20;

/** Without heads what stands in the columns has to tell. */
function withoutHeads(
  columns: readonly PriceColumn[],
  sample: readonly ImportedLine[],
  own: string | undefined,
): PriceColumn[] {
  const contents = columns.map(({ index }) => contentOf(sample, index, own));
  const taken = new Map<number, ColumnKey>();
  const free = (): number[] => columns.map(({ index }) => index).filter((index) => !taken.has(index));
  const take = (key: ColumnKey, by: (content: Content) => number): void => {
    const [best] = free()
      .map((index) => [index, contents[index]!.filled === 0 ? 0 : by(contents[index]!)] as const)
      .filter(([, score]) => score > 0)
      .sort(([, a], [, b]) => b - a);
    if (best) taken.set(best[0], key);
  };
  take("unit", ({ filled, units }) => (units >= filled * 0.8 ? units / filled : 0));
  take("currency", ({ filled, currencies }) => (currencies >= filled * 0.8 ? 1 : 0));
  const isPrice = ({ filled, decimals, figures, long }: Content): boolean =>
    filled > 0 && figures >= filled * 0.7 && decimals >= filled * 0.3 && long < filled / 2;
  // Of two columns of figures either may be a weight.
  if (contents.filter(isPrice).length === 1) take("price", (content) => (isPrice(content) ? 1 : 0));
  take("description", ({ filled, spaced, length }) => (spaced >= filled * 0.5 ? length / filled : 0));
  take("article", (content) =>
    isCodes(content) && content.figures < content.filled ? content.distinct / content.filled : 0,
  );
  if (contents.filter(({ filled, whole }) => filled > 0 && whole >= filled * 0.9).length === 1)
    take("pack", ({ filled, whole }) => (whole >= filled * 0.9 ? 1 : 0));
  return columns.map((column) => {
    const key = taken.get(column.index);
    return key ? { ...column, key } : column;
  });
}

/** As it is compared with other heads. */
export const headName = (head: string): string => plainWords(asFigures(head));
