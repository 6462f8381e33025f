/** One line of a price list into a price for the unit and for the pack; whatever is not sure is asked, never guessed. */
import { isoDate } from "../sheetDate";
import { type ImportedCell, type ImportedLine, textOf } from "../imported/table";
import { monthOf } from "../typed/months";
import type { Reading } from "../typed/reading";
import { LONGEST_TEXT } from "../typed/typedKind";
import { canStandFor, currenciesIn, isCode } from "./currencies";
import type { ColumnKey } from "./headMeaning";
import type { ListedPrice, PriceAnswers } from "./list";
import { readListDate, type DateOrder } from "./listDates";
import { readFigure, type ColumnStyle } from "./listNumbers";
import { packInCell, packInDescription, type FoundPack } from "./packOf";
import { plainWords } from "./plainWords";
import { DISCONTINUED, ON_REQUEST, type CutCell } from "./priceCell";
import type { PriceChoice } from "./priceChoice";
import type { PriceColumn } from "./priceColumns";
import { basisOf, isLength, saleUnit, type Basis, type SaleUnit } from "./saleUnits";

/** What the whole list says, for each of its lines. */
export interface LineContext {
  readonly place: (key: ColumnKey) => number;
  readonly choice: PriceChoice;
  readonly cutOf: (line: ImportedLine, column: PriceColumn) => CutCell;
  readonly styleOf: (column: number) => ColumnStyle;
  readonly order: DateOrder | undefined;
  readonly answers: PriceAnswers;
  /** Of the list; undefined where it names none. */
  readonly currency: string | undefined;
  readonly own: string | undefined;
  readonly today: number;
  readonly from: number | undefined;
  readonly until: number | undefined;
  /** A heading above the line says for how much its prices hold. */
  readonly heading: Basis | undefined;
  /** Cells of the head row. */
  readonly width: number;
  /** Some lines name their currency. */
  readonly named: boolean;
  /** Of days that were read before: a list has few, each on many lines. */
  readonly days: Map<string, Reading<number | undefined>>;
  /** Lines with a quotation mark that is never closed. */
  readonly opened: ReadonlySet<number>;
}

const quoted = (text: string): string => `“${text.length > 60 ? `${text.slice(0, 59)}…` : text}”`;
const rounded = (value: number): number => Number(value.toPrecision(12));
const MANGLED = /^\d(?:[.,]\d+)?E\+?\d+$/i;
/** "Mar 05", "5-Mar", "04.05.2026", "TRUE": what a workbook program makes of 3-5 and of words. */
const LIKE_DATE =
  /^(?:(\p{L}{3,4})\.?[ -]\d{1,4}|\d{1,2}[.-] ?(\p{L}{3,4})\.?(?:[ -]\d{2,4})?|\d{1,2}[./-]\d{1,2}[./-](?:19|20)\d\d|(?:19|20)\d\d-\d\d-\d\d)$/u;
const TRUTH = /^(?:TRUE|FALSE|WAHR|FALSCH|VRAI|FAUX|VERDADERO|FALSO|WAAR|ONWAAR)$/i;
const ERROR = /^#(?:N\/A|REF!|VALUE!|NAME\?|DIV\/0!|NUM!|NULL!|#+)$/;
/** `="007"` is how some programs keep the noughts of a text. */
const KEPT_TEXT = /^="([^"]*)"$/;

interface Sum {
  readonly value: number;
  /** Decimals as written: what it may be rounded to. */
  readonly decimals: number;
  readonly basis?: Basis;
  readonly currencies: readonly string[];
}

export function readLine(line: ImportedLine, context: LineContext): ListedPrice {
  const { place, choice, answers, styleOf } = context;
  const doubts: string[] = [];
  const cell = (key: ColumnKey): ImportedCell | undefined => line.cells[place(key)];
  const article = articleIn(cell("article"), doubts);
  const description = textOf(cell("description")).replace(/\s+/g, " ").slice(0, LONGEST_TEXT);
  const base = { line: line.line, article, description };
  if (article === "" && description === "")
    doubts.push(
      "The line names neither an article nor a description. Put one into the list, or leave the line out.",
    );

  if (context.opened.has(line.line))
    doubts.push(
      "The line has a quotation mark that is never closed, so its cells may be parted wrongly. Close it in the list, or leave the line out.",
    );
  if (line.cells.findLastIndex((one) => textOf(one) !== "") >= context.width)
    doubts.push(
      `The line has more cells than the head row, so they may stand in wrong columns. Put text that holds the sign between cells in quotes.`,
    );

  const words = plainWords(`${textOf(cell("status"))} ${description}`);
  const main = [choice.unit, choice.bare, choice.pack].filter((one) => one !== undefined);
  const columns = main.length > 0 ? main : [choice.list].filter((one) => one !== undefined);
  const cuts = columns.map((column) => context.cutOf(line, column));
  const figures = cuts.some(({ kind }) => kind === "figure");
  const gone = cuts.some(({ kind }) => kind === "gone") || DISCONTINUED.test(words);
  if (gone && !figures)
    return {
      ...base,
      doubts: [],
      state: "discontinued",
      left: `The supplier has it no longer: ${quoted(DISCONTINUED.exec(words)?.[0] ?? textsOf(line, columns))}.`,
    };
  const request = cuts.some(({ kind }) => kind === "request") || (!figures && ON_REQUEST.test(words));
  if (request && !figures)
    return {
      ...base,
      doubts: [],
      state: "request",
      left: `It has no price but ${quoted(ON_REQUEST.exec(words)?.[0] ?? textsOf(line, columns))}: ask for it.`,
    };
  if (gone)
    doubts.push(
      `The line has a price, and says that the article is discontinued (${quoted(textOf(cell("status")) || description)}). Take the price only if it can still be bought.`,
    );

  const sum = (column: PriceColumn | undefined): Sum | undefined =>
    column && sumIn(column, context.cutOf(line, column), textOf(line.cells[column.index]), styleOf, doubts);
  const [unitSum, bareSum, packSum, listSum] = [
    sum(choice.unit),
    sum(choice.bare),
    sum(choice.pack),
    sum(choice.list),
  ];
  const priced = unitSum ?? bareSum ?? packSum ?? listSum;
  if (main.length > 0 && listSum && priced === listSum && doubts.length === 0)
    doubts.push(
      `Its net price is blank, as a formula without a stored value is; the price before discount is ${listSum.value}. Open the list in its program, save it again, or put the net price in.`,
    );
  if (!priced && doubts.length === 0)
    doubts.push("The line has no price. Put one into the list, or leave the line out if it is a heading.");

  const dates = datesOf(line, context, doubts);
  const currency = currencyOf(line, context, [unitSum, bareSum, packSum, listSum], doubts);
  const rest = {
    ...base,
    ...dates,
    ...(currency !== undefined && { currency }),
    ...(dates.until !== undefined && dates.until < context.today && { expired: true }),
  };
  if (!priced) return { ...rest, doubts };

  const share = discountOf(line, context, doubts);
  const net = netOf({ unitSum, bareSum, packSum, listSum }, choice, share, answers, doubts);
  const perBasis = basisIn(line, context, doubts);
  const amounts = amountsOf(net, perBasis, line, description, context, doubts);
  return { ...rest, ...amounts, doubts };
}

const textsOf = ({ cells }: ImportedLine, columns: readonly PriceColumn[]): string =>
  columns.map(({ index }) => textOf(cells[index])).find((text) => text !== "") ?? "";

/** "CAT-6" is an article, "MAR-06" may have been 3-6. */
function isLikeDate(text: string): boolean {
  const found = LIKE_DATE.exec(text);
  const word = found?.[1] ?? found?.[2];
  return found !== null && (word === undefined || monthOf(word) !== undefined);
}

function articleIn(cell: ImportedCell | undefined, doubts: string[]): string {
  if (typeof cell === "object" && cell.shown === undefined) {
    doubts.push(
      "The file holds a date where the article number stands: a workbook program turns numbers such as 3-16 into one. Type the article number itself as text.",
    );
    return "";
  }
  // An apostrophe in front is the programs' own sign for text.
  const raw = textOf(cell).replace(/^'(?=\d)/, "");
  const text = KEPT_TEXT.exec(raw)?.[1] ?? raw;
  if (/^=/.test(text))
    doubts.push(
      `The article number ${quoted(text)} is a formula, which is not computed. Put the number itself there.`,
    );
  if (MANGLED.test(text) || ERROR.test(text) || isLikeDate(text) || TRUTH.test(text))
    doubts.push(
      `The article number ${quoted(text)} is what a workbook program made of it. Take the number from the supplier's own file.`,
    );
  return text.slice(0, LONGEST_TEXT);
}

function sumIn(
  column: PriceColumn,
  cut: CutCell,
  text: string,
  styleOf: (column: number) => ColumnStyle,
  doubts: string[],
): Sum | undefined {
  if (cut.kind === "formula") {
    doubts.push(
      `${quoted(text)} is a formula, and formulas of a text file are not computed. Put the price itself there.`,
    );
    return undefined;
  }
  if (cut.kind === "words") {
    doubts.push(
      `${quoted(text)} under “${column.head}” can't be read as a price. Put a number there, such as 12.50, or leave the line out.`,
    );
    return undefined;
  }
  if (cut.kind !== "figure") return undefined;
  const read =
    cut.number === undefined ? readFigure(cut.figure, styleOf(column.index)) : { value: cut.number };
  if (!read) {
    doubts.push(
      `${quoted(text)} under “${column.head}” can't be read as a price. Put a number there, such as 12.50, or leave the line out.`,
    );
    return undefined;
  }
  if (!("value" in read)) {
    doubts.push(
      `${quoted(text)} can be ${read.grouped} or ${read.decimal}, and the column does not tell. Say which sign stands before decimals.`,
    );
    return undefined;
  }
  const { value } = read;
  if (value === 0) {
    doubts.push(
      "The price is 0, which more often means that none is stated. Put the price into the list, or leave the line out.",
    );
    return undefined;
  }
  if (value < 0) {
    doubts.push(
      `The price is ${quoted(text)}, less than nothing. Put the price into the list, or leave the line out.`,
    );
    return undefined;
  }
  const decimals = /[.,](\d+)$/.exec(cut.figure)?.[1]?.length ?? 0;
  return {
    value,
    decimals: cut.number === undefined ? decimals : Math.max(2, decimals),
    currencies: cut.currencies,
    ...(cut.basis && { basis: cut.basis }),
  };
}

function datesOf(
  { cells }: ImportedLine,
  { place, order, from, until, days }: LineContext,
  doubts: string[],
): { from?: number; until?: number } {
  const read = (key: "from" | "until"): number | undefined => {
    const cell = cells[place(key)];
    const known = typeof cell === "string" ? `${key} ${cell}` : "";
    const reading = days.get(known) ?? readListDate(cell, order, key === "until");
    if (known !== "") days.set(known, reading);
    if (!("refused" in reading)) return reading.value;
    doubts.push(
      `${quoted(textOf(cell))} under “${key === "from" ? "valid from" : "valid until"}” can't be read as one day. Write year, month and day, such as 2027-03-31.`,
    );
    return undefined;
  };
  const own = { from: read("from"), until: read("until") };
  const found = { from: own.from ?? from, until: own.until ?? until };
  if (found.from !== undefined && found.until !== undefined && found.until < found.from) {
    doubts.push(
      `The price ends on ${isoDate(found.until)}, before it begins on ${isoDate(found.from)}. Put the dates right.`,
    );
  }
  return {
    ...(found.from !== undefined && { from: found.from }),
    ...(found.until !== undefined && { until: found.until }),
  };
}

function currencyOf(
  { cells }: ImportedLine,
  { place, currency, own, choice, named }: LineContext,
  sums: readonly (Sum | undefined)[],
  doubts: string[],
): string | undefined {
  const cell = textOf(cells[place("currency")]);
  const inColumn = cell === "" ? [] : currenciesIn(cell, own);
  if (cell !== "" && inColumn.length !== 1)
    doubts.push(`${quoted(cell)} is no currency that is known. Write its code, such as EUR.`);
  const inCells = sums.flatMap((sum) => sum?.currencies ?? []);
  const inHeads = [choice.unit, choice.bare, choice.pack, choice.list].flatMap((column) =>
    column?.meaning.currencies.length === 1 ? column.meaning.currencies : [],
  );
  const found = [...inCells, ...inColumn, ...inHeads];
  // A sign that several share is the one that the line also names.
  const codes = found.map((one) =>
    isCode(one) ? one : (found.find((code) => isCode(code) && canStandFor(one, code)) ?? one),
  );
  const all = new Set(codes);
  if (all.size > 1)
    doubts.push(`The line names ${[...all].join(" and ")}. Put the one in which its price is into the list.`);
  if (codes.length === 0 && cell === "" && currency === undefined && named)
    doubts.push("The line names no currency, and other lines name theirs. Put it into the list.");
  return codes[0] ?? currency;
}

function discountOf(
  { cells }: ImportedLine,
  { choice, styleOf, answers }: LineContext,
  doubts: string[],
): number | undefined {
  const { discount } = choice;
  if (!discount) return answers.discount;
  const cell = cells[discount.index];
  const text = textOf(cell);
  if (text === "") {
    const unpriced = choice.unit ?? choice.bare ?? choice.pack;
    if (!unpriced)
      doubts.push(
        `Its discount is blank, and the price before discount is ${quoted(textOf(cells[choice.list?.index ?? -1]))}. Put the discount into the list (0 for none).`,
      );
    return 0;
  }
  const isShare = typeof cell === "object" && cell.format?.includes("%");
  const figure = text.replace(/%/g, "").replace(/^[-–]/, "").trim();
  const read =
    typeof cell === "object" ? { value: cell.number } : readFigure(figure, styleOf(discount.index) ?? ",");
  const value = read && "value" in read ? (isShare ? read.value : read.value / 100) : undefined;
  const tiny = value !== undefined && value > 0 && value < 0.01 && !isShare && !text.includes("%");
  if (value === undefined || value < 0 || value >= 1 || tiny) {
    doubts.push(
      `${quoted(text)} under “${discount.head}” can't be read as a discount. Put a share there, such as 15 %.`,
    );
    return undefined;
  }
  return value;
}

interface Net {
  readonly unitSum?: Sum | undefined;
  readonly bareSum?: Sum | undefined;
  readonly packSum?: Sum | undefined;
  readonly listSum?: Sum | undefined;
}

/** Without discount and tax. */
function netOf(
  { unitSum, bareSum, packSum, listSum }: Net,
  choice: PriceChoice,
  share: number | undefined,
  answers: PriceAnswers,
  doubts: string[],
): Net {
  const less = (sum: Sum | undefined, by: number): Sum | undefined =>
    sum && by !== 0 ? { ...sum, value: rounded(sum.value * (1 - by)), decimals: 6 } : sum;
  const untaxed = (sum: Sum | undefined): Sum | undefined =>
    sum && answers.tax ? { ...sum, value: rounded(sum.value / (1 + answers.tax)), decimals: 6 } : sum;
  const main = unitSum ?? bareSum ?? packSum;
  if (!main) {
    const net = untaxed(less(listSum, share ?? 0));
    return choice.list?.meaning.basis ? { unitSum: net } : { bareSum: net };
  }
  if (listSum && choice.discount && share !== undefined) {
    const wanted = listSum.value * (1 - share);
    const near = [unitSum, bareSum, packSum].some(
      (sum) =>
        sum && Math.abs(sum.value - wanted) <= 0.5 * 10 ** -Math.min(sum.decimals, 2) + 0.006 + wanted * 1e-4,
    );
    if (!near)
      doubts.push(
        `${listSum.value} less ${rounded(share * 100)} % is ${rounded(wanted)}, and the net price says ${main.value}. Put one of them right in the list.`,
      );
  }
  if (!listSum && choice.discount === undefined && answers.discount !== undefined && answers.discount > 0) {
    const by = answers.discount;
    return { unitSum: less(unitSum, by), bareSum: less(bareSum, by), packSum: less(packSum, by) };
  }
  return { unitSum: untaxed(unitSum), bareSum: untaxed(bareSum), packSum: untaxed(packSum) };
}

/** For how much the price of the line holds, where a column of its own says it. */
function basisIn({ cells }: ImportedLine, { place }: LineContext, doubts: string[]): Basis | undefined {
  const cell = cells[place("per")];
  const text = textOf(cell);
  if (text === "") return undefined;
  const basis = basisOf(text.replace(/[.,]0+$/, ""), true);
  if (!basis)
    doubts.push(
      `${quoted(text)} can't be read as the quantity for which a price holds. Write it as a number, such as 100.`,
    );
  return basis;
}

type Amounts = Pick<ListedPrice, "unit" | "pack" | "perUnit" | "perPack" | "note">;

function amountsOf(
  { unitSum, bareSum, packSum }: Net,
  perLine: Basis | undefined,
  { cells }: ImportedLine,
  description: string,
  { place, choice, styleOf, heading, answers }: LineContext,
  doubts: string[],
): Amounts {
  const unitText = textOf(cells[place("unit")]);
  const soldIn = unitText === "" ? undefined : packInDescription(unitText);
  const unitBasis = soldIn
    ? { quantity: 1, unit: isLength(soldIn.unit) ? ("reel" as const) : ("pack" as const) }
    : unitText === ""
      ? undefined
      : basisOf(unitText);
  if (unitText !== "" && !unitBasis)
    doubts.push(`${quoted(unitText)} is no unit that is known. Write m, ft, pc, pack or reel.`);
  const packPlace = place("pack");
  const inCell: FoundPack = packInCell(cells[packPlace], styleOf(packPlace));
  if (inCell.doubt) doubts.push(inCell.doubt);
  const inWords = soldIn ?? packInDescription(description);
  const container = [unitBasis?.unit, inCell.word].find((unit) => unit === "pack" || unit === "reel");
  const pack = packFrom(inCell, inWords, unitBasis, container, doubts);

  const sum = unitSum ?? bareSum;
  const column = [unitSum ? choice.unit : choice.bare, packSum ? undefined : choice.list].find(
    (one) => one?.meaning.basis,
  );
  const fitting = column && forUnit(column, unitBasis, doubts);
  const basis =
    sum?.basis ??
    perLine ??
    fitting ??
    (unitBasis && unitBasis.quantity > 1 ? unitBasis : undefined) ??
    heading;
  const unit = contentUnit(basis, unitBasis, pack, inCell);
  const known: Amounts = {
    ...(unit && { unit }),
    ...(pack?.quantity !== undefined && { pack: pack.quantity }),
  };
  if (sum === undefined) return packSum ? fromPack(known, packSum, doubts) : known;

  const forPack =
    basis?.unit === "pack" ||
    basis?.unit === "reel" ||
    (basis === undefined && container !== undefined && !packSum) ||
    // A piece of cable is its reel.
    ((basis ?? unitBasis)?.unit === "pc" && isLength(pack?.unit) && !packSum);
  if (forPack) return fromPack(known, { ...sum, value: rounded(sum.value / (basis?.quantity ?? 1)) }, doubts);
  const several = pack?.quantity !== undefined && pack.quantity > 1;
  const told = basis !== undefined || unitSum !== undefined || (unitBasis !== undefined && !pack?.fromWords);
  if (several && !told && !packSum) {
    if (answers.basis === "pack") return fromPack(known, sum, doubts);
    if (answers.basis === undefined) {
      doubts.push(
        `Nothing says whether ${sum.value} is for one or for the ${pack.quantity}${unit && isLength(unit) ? ` ${unit}` : ""} of a ${unit && isLength(unit) ? "reel" : "pack"}. Say what the prices are for.`,
      );
      return known;
    }
  }
  let perUnit = rounded(sum.value / (basis?.quantity ?? 1));
  if (packSum && pack?.quantity !== undefined) {
    const wanted = perUnit * pack.quantity;
    const slack = (0.5 * 10 ** -Math.min(sum.decimals, 4) * pack.quantity) / (basis?.quantity ?? 1) + 0.0051;
    if (Math.abs(wanted - packSum.value) > slack)
      doubts.push(
        `${pack.quantity} at ${perUnit} are ${rounded(wanted)}, and the price of the pack says ${packSum.value}. Put one of them right in the list.`,
      );
    // The price of one is the other one rounded.
    else if (Math.abs(wanted - packSum.value) > 0.0051) perUnit = rounded(packSum.value / pack.quantity);
  }
  const quantity = pack?.quantity;
  const perPack = packSum?.value ?? (quantity === undefined ? undefined : rounded(perUnit * quantity));
  return { ...known, perUnit, ...(perPack !== undefined && { perPack }) };
}

/** A head may say for what its prices are, and a line that it is sold otherwise. */
function forUnit(
  { head, meaning }: PriceColumn,
  line: Basis | undefined,
  doubts: string[],
): Basis | undefined {
  const basis = meaning.basis!;
  const [one, other] = [basis.unit, line?.unit];
  const isWhole = [one, other].some((unit) => unit === undefined || unit === "reel" || unit === "pack");
  if (isWhole || one === other) return basis;
  if (basis.quantity === 1 && one === "pc") return undefined;
  if (!isLength(one) && !isLength(other)) return basis;
  const others = /(?:bzw\.?|resp\.?|or|oder|ou|of|\/) ?\/?([a-z]+)\.?\)?$/.exec(plainWords(head))?.[1];
  if (others !== undefined && saleUnit(others) === other) return { quantity: 1, unit: other };
  doubts.push(
    `“${head}” holds prices per ${basis.quantity > 1 ? `${basis.quantity} ` : ""}${one}, and the line is sold by the ${other}. Put the price for one ${other} into a column of its own.`,
  );
  return basis;
}

function fromPack(known: Amounts, { value }: Sum, doubts: string[]): Amounts {
  if (known.pack === undefined) {
    doubts.push(
      `The price of ${value} is for a pack or a reel, and nothing says how much is in one. Put the quantity into the list.`,
    );
    return { ...known, perPack: value };
  }
  return { ...known, perPack: value, perUnit: rounded(value / known.pack) };
}

interface Pack {
  readonly quantity?: number;
  readonly unit?: SaleUnit;
  /** Only the description tells. */
  readonly fromWords?: boolean;
}

function packFrom(
  inCell: FoundPack,
  inWords: Basis | undefined,
  unitBasis: Basis | undefined,
  container: SaleUnit | undefined,
  doubts: string[],
): Pack | undefined {
  if (inCell.doubt) return undefined;
  const { quantity } = inCell;
  if (quantity === undefined) {
    if (inWords) return { ...inWords, fromWords: true };
    const single =
      unitBasis !== undefined && unitBasis.quantity === 1 && ["pc", "set", "pair"].includes(unitBasis.unit!);
    return single ? { quantity: 1 } : undefined;
  }
  const unit = inCell.unit ?? (inWords?.quantity === quantity ? inWords.unit : undefined);
  if (inWords && inWords.quantity !== quantity) {
    if (quantity === 1 && container !== undefined) return { ...inWords };
    doubts.push(
      `The pack is ${quantity}, and the description says ${inWords.quantity}${inWords.unit && isLength(inWords.unit) ? ` ${inWords.unit}` : ""}. Put the right one into the list.`,
    );
  }
  if (quantity === 1 && container !== undefined && !inWords && unit === undefined) return undefined;
  return { quantity, ...(unit && { unit }) };
}

/** In what the contents are counted. */
function contentUnit(
  basis: Basis | undefined,
  unitBasis: Basis | undefined,
  pack: Pack | undefined,
  inCell: FoundPack,
): SaleUnit | undefined {
  const inside = [basis?.unit, pack?.unit, unitBasis?.unit, inCell.unit].filter(
    (unit) => unit !== undefined && unit !== "pack" && unit !== "reel",
  );
  const length = inside.find(isLength);
  if (length && (basis ?? unitBasis)?.unit === "pc" && pack?.unit === length) return length;
  if (inside[0]) return inside[0];
  if (unitBasis?.unit === "reel" || basis?.unit === "reel" || inCell.word === "reel") return "m";
  return unitBasis || basis ? "pc" : undefined;
}
