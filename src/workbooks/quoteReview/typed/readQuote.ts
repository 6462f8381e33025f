/**
 * Reads somebody else's quote out of a table or a text: lines of parts with quantity, price and sum in any order of
 * columns or in free text, and labelled figures. What is not taken is told, with its line.
 */
import {
  isBlank,
  textOf,
  type ImportedCell,
  type ImportedLine,
  type ImportedTable,
} from "../../imported/table";
import { currenciesIn } from "../../prices/currencies";
import type { DecimalSign } from "../../prices/listNumbers";
import { sheetDate } from "../../sheetDate";
import { asName } from "../../typed/plainText";
import { readDate } from "../../typed/readDate";
import { comesTo, isHeadAgain, quoteColumns, type QuoteColumns } from "./quoteColumns";
import {
  decimalSignIn,
  figureOf,
  figuresIn,
  isOfAName,
  LONGEST_LINE,
  plainFigures,
  type Figure,
  type FoundFigure,
} from "./quoteNumbers";
import * as says from "./quoteWords";
import { settled, type Draft, type DraftLine } from "./settleQuote";
import { TEXT_KEYS, type Remark, type TextKey, type TypedQuote } from "./typedQuote";

/** More than any quote has; a longer file is a price list or an export. */
export const MOST_QUOTE_LINES = 5_000;

const NOTHING =
  "No line of a quote was found: none has a quantity, a price or a sum, and none is a total. Give one line for each part, such as “12 x splitter @ 3.50 = 42.00”.";
const WORDS_ONLY = "It has no figure that a quote asks for.";
const FORMULA = "It has a formula as text; type the figure that it shows.";
const UNREAD = "Its figures could not be told apart.";

/**
 * @param tables of the file: each way in which its text could be parted, or the sheets of a workbook
 * @returns a sentence where nothing of a quote is in it
 */
export function readTypedQuote(tables: readonly ImportedTable[]): TypedQuote | string {
  const filled = tables.filter(({ lines }) =>
    lines.some(({ cells }) => cells.some((cell) => textOf(cell) !== "")),
  );
  if (filled.length === 0)
    return "The list is empty. Save or paste the lines of the quote: part, quantity, price, sum, and its total.";
  if (filled[0]!.lines.length > MOST_QUOTE_LINES)
    return `The list has ${filled[0]!.lines.length} lines; a quote is read up to ${MOST_QUOTE_LINES}. Check that the right file was chosen, or give its totals by floor.`;
  const read = filled.flatMap((table) => {
    const style = decimalSignIn(textsIn(table));
    const columns = quoteColumns(table.lines, style);
    if (isCutElsewhere(table)) return [];
    // A text in one column is read as it stands; cells that make no table were parted by signs of their own.
    const isOne = isOneCell(table);
    const ways = columns
      ? [columns, ...(isOne ? [undefined] : [])]
      : isOne || table.sheet !== undefined
        ? [undefined]
        : [];
    return ways.map((way) => {
      const draft = new Reader(style, way).read(table);
      const quote = settled(draft);
      return {
        draft,
        quote,
        score: scoreOf(draft) + agreementOf(quote),
        isHeaded: way?.head !== undefined,
        isCut: way === undefined && isCutIn(table),
      };
    });
  });
  if (read.length === 0) return NOTHING;
  // Where heads name the columns, the lines are not read as sentences.
  const headed = read.filter(({ isHeaded }) => isHeaded);
  const candidates = headed.length > 0 ? read.filter(({ isCut }) => !isCut) : read;
  const best = candidates.reduce((one, other) => (other.score > one.score ? other : one));
  const { lines, figures, facts } = best.draft;
  if (lines.length === 0 && figures.length === 0 && Object.keys(facts).length === 0) return NOTHING;
  return best.quote;
}

function* textsIn({ lines }: ImportedTable): Iterable<string> {
  for (const { cells } of lines) for (const cell of cells) if (typeof cell === "string") yield cell;
}

const isOneCell = ({ lines }: ImportedTable): boolean =>
  lines.every(({ cells }) => cells.filter((cell) => textOf(cell) !== "").length < 2);

/** Its cells hold the signs by which it is parted in truth: tabs, or the blanks between columns. */
function isCutElsewhere({ lines, sheet }: ImportedTable): boolean {
  if (sheet !== undefined) return false;
  const many = lines.filter(({ cells }) => cells.filter((cell) => textOf(cell) !== "").length > 1);
  return many.length > 0 && isCutIn({ lines: many });
}

/** Tabs or runs of blanks stand in a third of its cells. */
function isCutIn({ lines }: Pick<ImportedTable, "lines">): boolean {
  const filled = lines.filter((line) => !isBlank(line));
  const cut = filled.filter(({ cells }) =>
    cells.some((cell) => typeof cell === "string" && /\S\s*(?:\t| {3,})\s*\S/.test(cell)),
  );
  return cut.length * 3 > filled.length;
}

/** The way by which most lines come out is the one that was meant. */
function scoreOf({ lines, figures, facts, remarks }: Draft): number {
  const points = ({ quantity, each, sum, part }: DraftLine): number =>
    (quantity !== undefined && each !== undefined && sum !== undefined
      ? comesTo(quantity, each, sum)
        ? 6
        : 3
      : sum !== undefined
        ? 2
        : 1) - (/^[^\p{L}]*$/u.test(part) ? 3 : /[;|\t=@]|\S {2,}\S/.test(part) ? 4 : 0);
  return (
    lines.reduce((all, line) => all + points(line), 0) +
    3 * figures.length +
    2 * Object.keys(facts).length -
    4 * remarks.filter(({ kind }) => kind === "unread").length -
    0.1 * remarks.length
  );
}

/** A number that was cut at its comma agrees with nothing. */
function agreementOf({ lines, figures: { net, tax = 0, total } }: TypedQuote): number {
  const sum = lines.reduce((all, one) => (one.optional ? all : all + (one.sum ?? 0)), 0);
  const agree = (one: number | undefined, other: number | undefined): number =>
    one !== undefined && other !== undefined && Math.abs(one - other) < AGREE ? 1 : 0;
  return AGREED * (agree(net !== undefined ? net + tax : undefined, total) + agree(sum, net ?? total));
}
const AGREE = 0.06;
const AGREED = 8;

const RULE = /^[\s\-=_*.|+~–—]+$/;
const DATE =
  /\b(?:\d{4}-\d{1,2}-\d{1,2}|\d{1,2}([./-]) ?\d{1,2}\1 ?\d{2,4}|\d{1,2}(?:st|nd|rd|th|\.|er)? ?(?:de )?\p{L}{3,10}\.?,? ?(?:de )?(?:19|20)\d\d|\p{L}{3,10}\.? \d{1,2}(?:st|nd|rd|th)?, (?:19|20)\d\d)(?!\d)/gu;
const DAYS = { kind: "date", min: sheetDate(2000, 1, 1), max: sheetDate(2100, 1, 1) } as const;
const HOURS_AND_MINUTES = /(\d{1,4}) ?(?:h|hrs?|hours?|std)\.? ?(\d{1,2}) ?(?:m|min|minutes?|minuten)\b\.?/gi;
/** Of a file for a spreadsheet program: by what its cells are parted. */
const SEPARATOR = /^sep=.?$/i;
const NUMBERING = /^(?:\(?\d{1,3}(?:\.\d{1,2})*[.)]|[-*•–>])\s+(?=\S)/;
/** Before a sum, before a price of one, between a quantity and what it counts. */
const AT_SUM = /(?:=|→|:|total|sum|amounts? to|makes|gesamt|zusammen)\s*$/i;
const AT_EACH =
  /(?:@|\bat\b|à|\bje\b|\bper\b|\bx\b|×|\*|\beach\b|\bzu\b|\ba\b|\bpor\b|\bvan\b|\bunit price\b|\brate\b)\s*$/i;
const BEHIND_EACH =
  /^\s*(?:each|ea\b|\/ ?\p{L}|per\b|a piece|apiece|je\b|p\.? ?st|pro\b|par\b|l'unite|c\/u|per stuk|p\/st)/iu;
/** Signs of a price. */
const MARKED = /[@=]|\d ?[x×] ?\d|\beach\b/i;
const COUNTED =
  /^\s*(?:x\b|×|\*|pcs?\b|pieces?\b|off\b|no\b|nos\b|stk\b|st\b|stuck\b|u\b|uds?\b|stuks?\b|reels?\b|rolls?\b|m\b|h\b|hrs?\b|hours?\b)/i;

class Reader implements Draft {
  readonly lines: DraftLine[] = [];
  readonly figures: Draft["figures"][number][] = [];
  readonly facts: Record<string, number> = {};
  readonly words: Partial<Record<TextKey, string>> = {};
  readonly remarks: Remark[] = [];
  source = "";
  until: number | undefined;
  dateOf: number | undefined;
  readonly prose: string[] = [];
  private block: (Omit<NewItem, "all"> & { readonly line: number }) | undefined;
  private section: string | undefined;
  private at = 0;
  private text = "";

  constructor(
    private readonly style: DecimalSign | undefined,
    private readonly columns: QuoteColumns | undefined,
  ) {}

  read(table: ImportedTable): this {
    this.source = this.columns || table.sheet !== undefined ? table.source : "text, line by line";
    for (const line of table.lines) this.line(line);
    this.endBlock();
    return this;
  }

  private remark(kind: Remark["kind"], why: string): void {
    this.remarks.push({ line: this.at, text: this.text.slice(0, LONGEST_LINE), why, kind });
  }

  private line(given: ImportedLine): void {
    const line = this.inHours(given);
    const texts = line.cells.map((cell) => textOf(cell));
    const filled = texts.filter((text) => text !== "");
    this.at = line.line;
    this.text = filled.join("  ");
    if (filled.length === 0 || RULE.test(this.text) || given === this.columns?.head) return;
    if (filled.length > 1 && isHeadAgain(line)) return;
    if (line.hidden) return this.remark("unread", "Its row is hidden in the workbook.");
    if (this.columns && filled.length > 1) this.row(line, texts);
    else this.loose(filled.join(" "));
  }

  /** A line of a table. */
  private row({ cells }: ImportedLine, texts: readonly string[]): void {
    const { roles } = this.columns!;
    const found = cells.map((cell) => figureOf(cell, this.style));
    if (found.includes("formula")) {
      const sums = found.every((one, column) => one !== "formula" || roles[column] === "sum");
      const rest = (["quantity", "each"] as const).every(
        (role) => typeof found[roles.indexOf(role)] === "object",
      );
      // Its sum can be worked out; anything else that is a formula can't.
      if (!sums || !rest) {
        const words = texts.find((text, column) => /\p{L}/u.test(text) && found[column] !== "formula") ?? "";
        const rates = figuresIn(plainFigures(words), this.style).filter(({ isPercent }) => isPercent);
        if (says.labelOf(this.withoutFigures(words)) === "tax") this.labelled("tax", rates, words);
        return this.remark("unread", FORMULA);
      }
    }
    if (found.includes("lost")) {
      const isSum = typeof found[roles.indexOf("sum")] === "object";
      this.remark(
        "unread",
        isSum
          ? "A number in it has too many digits to be one; its sum was taken."
          : "A number in it has too many digits to be one.",
      );
      if (!isSum) return;
    }
    const figures = found.map((one) => (typeof one === "object" ? one : undefined));
    const partAt = roles.indexOf("part");
    const isWords = (column: number): boolean =>
      texts[column] !== "" && !figures[column] && roles[column] !== "unit" && /\p{L}/u.test(texts[column]!);
    const labels = texts.flatMap((text, column) =>
      isWords(column) && roles[column] !== "other" && roles[column] !== "position" ? [text] : [],
    );
    const any = labels.length > 0 ? labels : texts.filter((_, column) => isWords(column));
    const given = figures.flatMap((figure, column) =>
      figure && !BESIDE.has(roles[column]) ? [{ ...figure, column, role: roles[column] }] : [],
    );
    const every = figures.flatMap((figure, column) =>
      figure && roles[column] !== "position" ? [figure] : [],
    );
    const pick = (role: says.Role): Figure | undefined => figures[roles.indexOf(role)];
    if (given.length === 0) {
      const [label, value, ...more] = texts.filter((text) => text !== "");
      if (value !== undefined && more.length === 0 && every.length === 0)
        return this.loose(`${label!.replace(/:\s*$/, "")}: ${value}`);
      return this.loose(texts.filter((text) => text !== "").join(" "));
    }
    const [quantity, each, sum] = [pick("quantity"), pick("each"), pick("sum")];
    const label = any.join(" ");
    if (label === "") {
      // A figure below a column is its sum.
      return this.remark("unread", "It has figures and no word that says what they are.");
    }
    const plain = this.withoutFigures(label);
    const inParts = this.keysInParts(label);
    const key = says.labelOf(plain) ?? says.labelOf(any[0]!) ?? inParts?.key;
    const inLabel = figuresIn(plainFigures(label), this.style).filter((one) => !isOfAName(one));
    const isItem = quantity !== undefined && (each !== undefined || sum !== undefined) && !sum?.isPercent;
    if (key && !(isItem && !ALWAYS_A_FIGURE.has(key) && !(key === "subtotal"))) {
      const isLump =
        sum !== undefined &&
        quantity === undefined &&
        each === undefined &&
        FACTS.has(key) &&
        given.length === 1 &&
        sum.isMoney;
      if (!isLump && inParts && inParts.key === key && this.labelledInParts(inParts, every, label)) return;
      if (!isLump && this.labelled(key, [...inLabel, ...every], label)) return;
    }
    const own =
      texts[partAt] !== undefined && texts[partAt] !== "" && !figures[partAt] ? texts[partAt] : any[0]!;
    if (quantity === undefined && each === undefined && sum === undefined) return this.loose(this.text);
    const inWords = (["quantity", "each", "sum"] as const).filter((role) => {
      const column = roles.indexOf(role);
      return (
        (texts[column] ?? "") !== "" &&
        !figures[column] &&
        found[column] !== "formula" &&
        found[column] !== "lost" &&
        !/^[-–—.]+$/.test(texts[column]!)
      );
    });
    const isIncluded = inWords.some((role) =>
      says.IS_INCLUDED.test(says.wordsOf(texts[roles.indexOf(role)]!)),
    );
    if (inWords.length > 0 && !isIncluded) {
      this.remark(
        "unread",
        sum
          ? "A quantity or price in it is no number; its sum was taken."
          : "A quantity, price or sum in it is no number.",
      );
      if (!sum) return;
    }
    const percent = [quantity, each, sum].find((one) => one?.isPercent);
    const unitText = texts[roles.indexOf("unit")]?.toLowerCase();
    const unit = quantity?.unit ?? (unitText || each?.unit);
    const [per, discount] = [pick("per"), pick("discount")];
    this.item({
      part: asName(own),
      ...(quantity && !quantity.isPercent && { quantity: quantity.value }),
      ...(each && !each.isPercent && { each: each.value }),
      ...(sum && !sum.isPercent ? { sum: sum.value } : isIncluded && !each && { sum: 0 }),
      ...(per && per.value > 1 && { per: per.value }),
      ...(discount && discount.value !== 0 && { discount: Math.abs(discount.value) / 100 }),
      ...(unit && { unit }),
      ...(percent && { percent: percent.value }),
      all: this.text,
    });
  }

  /** "Selling price, margin 22 %": a label whose parts are labels, one with its share. */
  private keysInParts(label: string): LabelInParts | undefined {
    const [first, ...more] = label.split(/[,;(]| at | with | bei | mit | a /);
    if (more.length === 0) return undefined;
    const key = says.labelOf(this.withoutFigures(first!));
    if (!key || isTextKey(key)) return undefined;
    for (const part of more) {
      const share = figuresIn(plainFigures(part), this.style).find(({ isPercent }) => isPercent);
      const other = says.labelOf(this.withoutFigures(part));
      if (share && other && other !== key && SHARES.has(other)) return { key, other, share };
    }
    return undefined;
  }

  private labelledInParts(
    { key, other, share }: LabelInParts,
    figures: readonly Figure[],
    label: string,
  ): boolean {
    const rest = figures.filter(({ isPercent }) => !isPercent);
    if (rest.length === 0) return false;
    // What has its margin beside it is the selling price, whatever it is called.
    if (other === "margin" && key === "total")
      return this.labelledInParts({ key: "price", other, share }, figures, label);
    this.labelled(other, [share], label);
    return this.labelled(key, rest, label);
  }

  private get headText(): string {
    return (this.columns?.head?.cells ?? []).map((cell) => textOf(cell)).join(" ");
  }

  private withoutFigures(text: string): string {
    const plain = plainFigures(text);
    let out = "";
    let from = 0;
    for (const { from: start, to } of figuresIn(plain, this.style)) {
      out += `${plain.slice(from, start)} `;
      from = to;
    }
    return (out + plain.slice(from))
      .replace(/[@=×*]|\bx\b/g, " ")
      .replace(/[€£$]|\b(?:EUR|GBP|USD|CHF)\b/g, " ");
  }

  /** A line of free text. */
  private loose(given: string): void {
    const text = plainFigures(given)
      .replace(/\s*\.{3,}\s*/g, " ")
      .replace(NUMBERING, "");
    if (SEPARATOR.test(text)) return;
    if (/^[=@]\s*[A-Z(]/i.test(text)) return this.remark("unread", FORMULA);
    if (/\d{16,}/.test(text)) return this.remark("unread", "A number in it has too many digits to be one.");
    const dates = [...text.matchAll(DATE)].map(([date]) => date);
    const undated = text.replace(DATE, " ");
    const heading = /^([^:=]{1,60}?)\s*[:=]\s*(\S.*)$/.exec(text);
    if (heading && this.inBlock(heading[1]!, heading[2]!)) return;
    const named = heading && says.labelOf(heading[1]!);
    if (named && isTextKey(named)) return this.worded(named, heading[2]!);
    const numbered = QUOTE_NUMBER.exec(text);
    if (numbered) {
      this.worded("quote", numbered[1]!);
      if (dates.length > 0 && VALID.test(says.labelWords(undated))) this.dated(undated, dates);
      return;
    }
    if (dates.length > 0 && this.dated(undated, dates)) return;
    const figures = figuresIn(undated, this.style);
    const real = figures.filter((one) => !isOfAName(one));
    const label = this.withoutFigures(undated);
    const key = says.labelOf(label) ?? (named || undefined);
    if (key === "noise") return;
    if (key && isTextKey(key)) {
      const rest = /^\s*\S+(?:\s+(?:no|nr|number|ref)\.?)?\s*[:#]?\s*(.*)$/i.exec(text)?.[1];
      return rest ? this.worded(key, rest) : this.remark("words", WORDS_ONLY);
    }
    if (key === "date") return;
    const isPriced = real.some(({ isMoney }) => isMoney) || MARKED.test(undated);
    const triple = isPriced ? tripleIn(real) : undefined;
    const inParts = this.keysInParts(text);
    if (inParts && this.labelledInParts(inParts, real, text)) return;
    if (key && real.length > 0 && !(triple && !ALWAYS_A_FIGURE.has(key) && key !== "labour"))
      if (this.labelled(key, real, label)) return;
    if (triple) return this.item({ ...this.ofTriple(undated, triple), all: text });
    if (real.length === 0) return this.heading(text, dates.length > 0);
    const [rate, ...others] = real;
    if (rate!.isPercent && others.length === 0 && says.isOnlyDiscount(label))
      return this.item({ part: asName(label), percent: rate!.value, all: text });
    if (this.inProse(undated)) return;
    // A sentence with numbers in it is no line of a quote.
    const isShort = undated.split(" ").length <= 5 && !/[.!?;]$/.test(undated) && !this.columns;
    const guessed = isPriced || isShort ? this.guessed(undated, real) : undefined;
    if (guessed) return this.item({ ...guessed, all: text });
    if (real.some(({ isMoney }) => isMoney)) return this.remark("unread", UNREAD);
    if (/[.!?]$/.test(text) || text.split(" ").length > 9) return this.remark("words", WORDS_ONLY);
    this.heading(text, false);
  }

  /** "30 h 30 min" as the hours that it is. */
  private inHours(line: ImportedLine): ImportedLine {
    const isTimed = line.cells.some(
      (cell) =>
        typeof cell === "string" && cell.length <= LONGEST_LINE && cell.search(HOURS_AND_MINUTES) >= 0,
    );
    if (!isTimed) return line;
    const inHours = (cell: ImportedCell): ImportedCell =>
      typeof cell === "string"
        ? cell.replace(
            HOURS_AND_MINUTES,
            (_, hours: string, minutes: string) => `${this.written(Number(hours) + Number(minutes) / 60)} h`,
          )
        : cell;
    return { ...line, cells: line.cells.map(inHours) };
  }

  /** As the list writes its decimals. */
  private written(value: number): string {
    return String(Number(value.toFixed(4))).replace(".", this.style ?? ".");
  }

  /** "Part: …", "Quantity: …", "Price each: …", "Sum: …", each on a line of its own. */
  private inBlock(label: string, value: string): boolean {
    const role = says.roleOf(label);
    if (role === "part" && !says.labelOf(label)) {
      this.endBlock();
      this.block = { part: asName(value), line: this.at };
      return true;
    }
    if (
      !this.block ||
      (role !== "quantity" && role !== "each" && role !== "sum") ||
      this.block[role] !== undefined
    ) {
      this.endBlock();
      return false;
    }
    const figure = figureOf(value, this.style);
    if (typeof figure !== "object") return false;
    this.block = {
      ...this.block,
      [role]: figure.value,
      ...(figure.unit !== undefined && { unit: figure.unit }),
    };
    return true;
  }

  private endBlock(): void {
    const { block } = this;
    this.block = undefined;
    if (!block) return;
    const { line, ...item } = block;
    const at = this.at;
    this.at = line;
    this.item({ ...item, all: item.part });
    this.at = at;
  }

  private worded(key: TextKey, value: string): void {
    const word = asName(value.replace(/^[:#\s-]+/, "")).slice(0, 200);
    if (word !== "") this.words[key] ??= word;
  }

  /** @returns whether the line is done with */
  private dated(text: string, dates: readonly string[]): boolean {
    const plain = says.labelWords(text);
    const isUntil = VALID.test(plain);
    const key = says.labelOf(text);
    if (!isUntil && key !== "until") {
      const own = readDate(dates[0]!.replace(/([./]) /g, "$1"), DAYS, {});
      if (key === "date" && "value" in own) this.dateOf ??= own.value;
      return key === "date" || plain === "";
    }
    const read = readDate(dates.at(-1)!.replace(/([./]) /g, "$1"), DAYS, {});
    if ("value" in read) this.until = read.value;
    else this.remark("unread", `The date until which it holds was not read. ${read.refused}`);
    return !/[=@]|\d[.,]\d\d/.test(text);
  }

  private heading(text: string, isDated: boolean): void {
    this.prose.push(says.wordsOf(text));
    const words = text.replace(/[:\s]+$/, "");
    if (!isDated && words.length <= 60 && words.split(" ").length <= 8 && !/[.!?]$/.test(words)) {
      this.section = words;
      // A heading is a place for lines; whether lines follow shows later.
      this.remark("words", "Taken for a heading.");
    } else this.remark("words", WORDS_ONLY);
  }

  /** @returns whether it was taken */
  private labelled(key: says.LabelKey, figures: readonly Figure[], label: string): boolean {
    if (key === "noise") return true;
    const plain = figures.filter(({ isPercent }) => !isPercent);
    const [one, two, three] = plain.slice(-3);
    // Net, tax and both together, in columns of their own.
    if (key === "total" && one && two && three && Math.abs(one.value + two.value - three.value) < AGREE) {
      const rate = figuresIn(plainFigures(this.headText), this.style).filter(({ isPercent }) => isPercent);
      this.labelled("net", [one], label);
      this.labelled("tax", [...rate, two], label);
      return this.labelled("total", [three], `${label} gross`);
    }
    if (key === "until" || key === "date" || isTextKey(key)) return false;
    if (figures.length === 0) return false;
    this.figures.push({
      key,
      figures,
      label: asName(label),
      line: this.at,
      text: this.text,
      section: this.section,
    });
    return true;
  }

  /** "24 outlets with 40 tuners and 3 head units of 16 user bands". */
  private inProse(text: string): boolean {
    let found = false;
    const plain = says.wordsOf(text);
    if (/\d[.,]\d\d(?!\d)/.test(plain)) return false;
    this.prose.push(plain);
    for (const [key, pattern] of PROSE) {
      const value = pattern.exec(plain)?.[1];
      if (value === undefined) continue;
      this.facts[key] ??= Number(value);
      found = true;
    }
    return found;
  }

  private ofTriple(
    text: string,
    [q, e, s]: readonly [FoundFigure, FoundFigure, FoundFigure],
  ): Omit<NewItem, "all"> {
    const unit = q.unit ?? e.unit;
    return {
      part: partOf(text, [q, e, s]),
      quantity: q.value,
      each: e.value,
      sum: s.value,
      ...(unit && { unit }),
    };
  }

  /** By the signs between the figures, where they do not come out. */
  private guessed(text: string, figures: readonly FoundFigure[]): Omit<NewItem, "all"> | undefined {
    const real = figures.filter(({ isPercent }) => !isPercent);
    const percent = figures.find(({ isPercent }) => isPercent)?.value;
    const before = ({ from }: FoundFigure): string => text.slice(0, from);
    const behind = ({ to }: FoundFigure): string => text.slice(to);
    const last = real.at(-1);
    if (!last)
      return percent === undefined ? undefined : { part: asName(this.withoutFigures(text)), percent };
    const isPrice = (one: FoundFigure): boolean =>
      AT_EACH.test(before(one)) || BEHIND_EACH.test(behind(one)) || /^\//.test(one.unit ?? "");
    const counted = real.find(
      (one) =>
        !one.isMoney &&
        (COUNTED.test(behind(one)) ||
          /^[x×]/i.test(behind(one).trim()) ||
          (one.unit !== undefined && says.UNIT.test(one.unit)) ||
          before(one).trim() === "" ||
          /(?:x|×)\s*$/i.test(before(one))),
    );
    const quantity = counted ?? (real.length > 2 ? real.find((one) => !one.isMoney) : undefined);
    const others = real.filter((one) => one !== quantity);
    const priced = others.filter(({ isMoney }) => isMoney);
    const sums =
      priced.length > 0 ? priced : others.filter(({ unit }) => unit === undefined || !says.UNIT.test(unit));
    if (sums.length === 0) return undefined;
    const sum =
      sums.findLast((one) => AT_SUM.test(before(one))) ??
      (sums.length > 1 || !isPrice(sums[0]!) ? sums.at(-1)! : undefined);
    const each =
      sums.find((one) => one !== sum && isPrice(one)) ??
      (sums.length > 1 ? sums.filter((one) => one !== sum).at(-1) : undefined);
    if (!sum && !each) return undefined;
    // One bare number in a sentence is no price.
    if (real.length === 1 && !sum?.isMoney && !each?.isMoney && text.split(" ").length > 6) return undefined;
    const used = [quantity, each, sum].filter((one) => one !== undefined);
    return {
      part: partOf(text, used),
      ...(quantity && { quantity: quantity.value }),
      ...(quantity?.unit !== undefined && { unit: quantity.unit }),
      ...(each && { each: each.value }),
      ...(sum && { sum: sum.value }),
      ...(percent !== undefined && { percent }),
      ...(quantity && sum && !each && !AT_SUM.test(before(sum)) && { perhapsEach: true as const }),
    };
  }

  private item({ all, ...item }: NewItem): void {
    const words = says.wordsOf(`${item.part} ${all}`);
    if (!/\p{L}/u.test(item.part))
      return this.remark("unread", "It has figures and no word that says what they are.");
    const isOption =
      says.IS_OPTIONAL.test(says.wordsOf(all)) ||
      (this.section !== undefined && says.IS_OPTIONAL.test(says.wordsOf(this.section)));
    const isDiscount = says.IS_DISCOUNT.test(says.wordsOf(item.part)) && item.quantity === undefined;
    const { sum, ...rest } = item;
    const [currency] = currenciesIn(all);
    this.lines.push({
      ...rest,
      ...(sum !== undefined && { sum: isDiscount && sum > 0 ? 0 - sum : sum }),
      line: this.at,
      ...(this.section !== undefined && { section: this.section }),
      ...(isOption && { optional: true }),
      ...(isDiscount && { isDiscount: true }),
      ...(says.IS_LABOUR.test(words) && { labour: true }),
      ...(currency !== undefined && { currency }),
    });
  }
}

interface LabelInParts {
  readonly key: says.LabelKey;
  readonly other: says.LabelKey;
  readonly share: Figure;
}

const SHARES: ReadonlySet<says.LabelKey> = new Set(["margin", "overhead", "contingency", "tax"]);

interface NewItem extends Omit<
  DraftLine,
  "line" | "section" | "optional" | "labour" | "isDiscount" | "currency"
> {
  readonly all: string;
}

/** Columns of figures that are neither quantity nor money. */
const BESIDE: ReadonlySet<says.Role | undefined> = new Set<says.Role>([
  "position",
  "other",
  "per",
  "discount",
]);
const isTextKey = (key: says.LabelKey): key is TextKey => (TEXT_KEYS as readonly string[]).includes(key);

/** Whatever stands in its columns, it is no part. */
const ALWAYS_A_FIGURE: ReadonlySet<says.LabelKey> = new Set([
  "noise",
  "total",
  "net",
  "tax",
  "taxes",
  "rounding",
  "taxed",
  "margin",
  "overhead",
  "contingency",
  "cost",
  "price",
  "tuners",
  "bands",
  "outlets",
]);
/** A count; a sum of money beside the word is a line of its own. */
const FACTS: ReadonlySet<says.LabelKey> = new Set(["outlets", "heads", "cable", "tuners", "bands"]);
const QUOTE_NUMBER =
  /^(?:our |unser |notre )?(?:quote|quotation|offer|estimate|tender|proposal|angebot|angebots|devis|offre|presupuesto|oferta|offerte|ref(?:erence)?)(?:[ -]?(?:no|nr|number|nummer|num|n°|nº|n|ref))?[.:#°]*\s+((?=\S*\d)[\p{L}\d][\p{L}\d/.-]*(?:,? (?:rev(?:ision)?|version|v)\.? ?\w+)?)/iu;
const VALID =
  /(?:^|\s)(?:valid(?:ity|ite|ez|a|o|e)?|good until|holds? until|open until|expir(?:es|y)|until|gultig(?:keit)?|gilt bis|valable|geldig(?:heid)?|bindefrist|vigente|hasta|jusqu)(?:\s|$)/;

const FACT_WORDS = {
  outlets: "outlets?|sockets?|dosen|antennendosen|prises|tomas|contactdozen|aansluitpunten",
  tuners: "tuners?|sintonizadores|receiver tuners",
  bands:
    "user bands|bands each|bands per head ?unit|teilnehmerbander|userbander|bandes utilisateur|bandas de usuario|gebruikersbanden",
  heads:
    "head ?units?|kopfeinheiten|kopfstellen|kopfstationen|tetes? de (?:reception|reseau|station)|cabeceras?|kopeenheden|kopstations?|hoofdeenheden",
} as const;
const PROSE = Object.entries(FACT_WORDS).map(
  ([key, words]) =>
    [
      key,
      new RegExp(`(?<![\\d.,-])(\\d{1,5}) (?:tv |sat |satellite |aerial )?(?:${words})(?![a-z])`),
    ] as const,
);

/** Quantity, price and sum that come out: the sum behind both, money before counts. */
function tripleIn(
  figures: readonly FoundFigure[],
): readonly [FoundFigure, FoundFigure, FoundFigure] | undefined {
  const real = figures.filter(({ isPercent }) => !isPercent).slice(0, 12);
  for (let s = real.length - 1; s >= 2; s--)
    for (let one = 0; one < s; one++)
      for (let other = one + 1; other < s; other++) {
        const [a, b, sum] = [real[one]!, real[other]!, real[s]!];
        if (!comesTo(a.value, b.value, sum.value) || (a.value === 1 && b.value === 1 && real.length > 3))
          continue;
        return a.isMoney && !b.isMoney ? [b, a, sum] : [a, b, sum];
      }
  return undefined;
}

const AROUND =
  /^(?:\s|[x×*@=:,;|./-]|(?:each|ea|at|à|je|of|zu|pcs?|pieces?|no|off|stk|st|per|for|unit price)(?![\p{L}\d]))+|(?:\s|[x×*@=:,;|/-]|\.{2,}|(?<![\p{L}\d])(?:each|ea|at|à|je|zu|per|for|x|a|pcs?|stk))+$/giu;

function partOf(text: string, used: readonly FoundFigure[]): string {
  let out = "";
  let from = 0;
  for (const one of [...used].sort((a, b) => a.from - b.from)) {
    out += `${text.slice(from, one.from)}\u0000`;
    from = one.to;
  }
  const pieces = (out + text.slice(from)).split("\u0000").map((piece) => piece.replace(AROUND, "").trim());
  const worded = pieces.filter((piece) => /\p{L}{2}/u.test(piece));
  return asName((worded.length > 0 ? worded : pieces).join(" ").replace(/\s+/g, " ")).slice(0, 200);
}
