/**
 * Understands a supplier's price list: which column is what, how numbers and dates are written, for what a price
 * holds. It tells what it understood; what is not sure is asked, of a line or once of the whole list, and no line with
 * an open question is used.
 */
import { type ImportedCell, type ImportedLine, type ImportedTable, textOf } from "../imported/table";
import { isoDate } from "../sheetDate";
import { asFigures } from "../typed/plainText";
import { currenciesIn, currencyCode } from "./currencies";
import { type ColumnKey } from "./headMeaning";
import { priceLineKind } from "./lineKind";
import type { ListedPrice, ListQuestion, PriceAnswers, PriceList } from "./list";
import { dateOrder, datesInTitle, readListDate, type DateOrder } from "./listDates";
import { columnStyle, type ColumnStyle } from "./listNumbers";
import { packInCell } from "./packOf";
import { plainWords } from "./plainWords";
import { cutCell, type CutCell } from "./priceCell";
import { choosePrices } from "./priceChoice";
import { findColumns, type PriceColumn } from "./priceColumns";
import { readLine, type LineContext } from "./readLine";
import { basisOf, type Basis } from "./saleUnits";
import { settleTwice } from "./twice";

export interface PriceContext {
  /** In which the standards keep prices. */
  readonly currency?: string;
  /** In which this supplier quotes, as its row says. */
  readonly supplierCurrency?: string;
  /** A sheet's date number. */
  readonly today: number;
  /** Sheets of the file that read as price lists. */
  readonly sheets?: readonly string[];
}

const SEPARATOR = /^sep=/i;
const NO_COLUMN = -1;

export function readPriceList(
  { source, lines, hiddenColumns, opened = [] }: ImportedTable,
  context: PriceContext,
  answers: PriceAnswers = {},
): PriceList {
  const own = context.currency === undefined ? undefined : currencyCode(context.currency);
  const filled = lines.filter(
    ({ line, cells }) =>
      cells.some((cell) => cell !== "" && textOf(cell) !== "") &&
      !(line === 1 && SEPARATOR.test(textOf(cells[0]))),
  );
  const refused = (sentence: string): PriceList => ({
    source,
    columns: [],
    lines: [],
    questions: [{ id: "columns", sentence }],
    notes: [],
  });
  if (filled.length === 0)
    return refused("The file is empty. Give a price list: a head row and a line for each article.");
  const head = findColumns(filled, own, answers.columns, hiddenColumns);
  const { columns } = head;
  const choice = choosePrices(columns, own, answers);
  const questions: ListQuestion[] = [...choice.questions];
  const places = new Map<ColumnKey, number>();
  for (const { key, index } of columns) if (key && !places.has(key)) places.set(key, index);
  const place = (key: ColumnKey): number => places.get(key) ?? NO_COLUMN;
  if (!head.known && answers.columns === undefined)
    questions.push({
      id: "columns",
      sentence:
        "The list has no head row that is known; its columns are guessed from what stands in them. Say what each column is.",
    });
  if (head.perhapsPacks.length > 0 && answers.columns === undefined)
    questions.push({
      id: "columns",
      sentence: `${head.perhapsPacks.map((column) => `“${column.head}”`).join(" and ")} can be what is in a pack, and the head is not known. Say what it is, or “not used”.`,
    });
  const { sheets = [] } = context;
  if (sheets.length > 1 && answers.sheet === undefined)
    questions.push({
      id: "sheet",
      sentence: `${sheets.length} sheets of the file read as price lists: ${sheets.map((name) => `“${name}”`).join(", ")}. Choose one; the others can be taken after it.`,
    });
  if (place("article") === NO_COLUMN && place("description") === NO_COLUMN)
    questions.push({
      id: "columns",
      sentence: "No column of article numbers or descriptions was found. Say which column is what.",
    });

  const priceColumns = [choice.unit, choice.bare, choice.pack, choice.list].filter(
    (one) => one !== undefined,
  );
  const known = new Map<ImportedLine, CutCell[]>();
  const cutsOf = (line: ImportedLine): CutCell[] => {
    const before = known.get(line);
    if (before) return before;
    const cuts = priceColumns.map(({ index }) => cutCell(line.cells[index], own));
    known.set(line, cuts);
    return cuts;
  };
  const cutOf = (line: ImportedLine, column: PriceColumn): CutCell =>
    cutsOf(line)[priceColumns.indexOf(column)]!;

  const named = {
    article: place("article"),
    description: place("description"),
    unit: place("unit"),
    heads: head.line?.cells.map((cell) => textOf(cell)) ?? [],
  };
  const body = filled.slice(head.body);
  const kinds = body.map((line) => priceLineKind(line, cutsOf(line), named));
  const isHead = (line: ImportedLine): boolean => line === head.line;
  const loose = [
    ...filled.slice(0, head.body).filter((line) => !isHead(line)),
    ...body.filter((_, index) => kinds[index] === "words"),
  ].map(({ cells }) =>
    [...new Set(cells.map((cell) => textOf(cell)).filter((text) => text !== ""))].join(" "),
  );
  const prices = body.filter((_, index) => kinds[index] === "price");

  const styles = stylesOf(prices, columns, answers, cutOf, priceColumns);
  const styleOf = (column: number): ColumnStyle => styles.get(column);
  const order = orderOf(prices, place, answers, [...styles.values()]);
  const title = titleOf(loose, order, own, questions, answers);
  const currency = answers.currency ?? title.currency ?? context.supplierCurrency;
  const currencyPlace = place("currency");
  const line: Omit<LineContext, "heading"> = {
    opened: new Set(opened),
    days: new Map(),
    width: Math.max(columns.length === 0 ? 0 : head.line ? head.line.cells.length : columns.length, 1),
    named: prices.some(
      (one) =>
        textOf(one.cells[currencyPlace]) !== "" ||
        cutsOf(one).some((cut) => cut.kind === "figure" && cut.currencies.length > 0),
    ),
    place,
    choice,
    cutOf,
    styleOf,
    order,
    answers,
    currency: currency === undefined ? undefined : currencyCode(currency, own),
    own,
    today: context.today,
    from: title.from,
    until: title.until,
  };
  let heading: Basis | undefined;
  let inHeadings = 0;
  const read: ListedPrice[] = [];
  for (const [index, one] of body.entries()) {
    if (kinds[index] === "words") {
      heading = basisInHeading(one) ?? (isGroup(one) ? undefined : heading);
      if (heading) inHeadings++;
    }
    if (kinds[index] === "price") read.push(readLine(one, { ...line, heading }));
  }
  const settled = withEnded(settleTwice(read, context.today, scaleReader(place("fromQuantity"), prices)));
  askOnce(settled, questions, { answers, title, columns: choice });
  const count = (kind: string): number => kinds.filter((one) => one === kind).length;
  const first = settled.find(({ currency: found }) => found !== undefined)?.currency;
  return {
    source,
    columns,
    lines: settled,
    questions: distinct(questions),
    ...(first !== undefined && { currency: first }),
    ...(title.from !== undefined && { from: title.from }),
    ...(title.until !== undefined && { until: title.until }),
    notes: [
      ...choice.notes,
      ...(styles.size > 0 ? styleNotes(styles, columns) : []),
      ...(currency !== undefined &&
      answers.currency === undefined &&
      title.currency === undefined &&
      !line.named &&
      !priceColumns.some(({ meaning }) => meaning.currencies.length > 0)
        ? [`The list names no currency: ${currency} is taken, in which this supplier quotes.`]
        : []),
      ...(inHeadings > 0 ? ["What a price is for is taken from headings between the lines."] : []),
      ...hiddenNote(prices.filter(({ hidden }) => hidden).length),
      ...passed(count("total"), "a sum"),
      ...passed(count("repeated"), "the heads again"),
    ],
  };
}

/** A price whose last day is over may still be the last one known: a person says so. */
const withEnded = (lines: readonly ListedPrice[]): ListedPrice[] =>
  lines.map((line) =>
    line.expired && line.left === undefined
      ? {
          ...line,
          doubts: [
            ...line.doubts,
            `Its price ended on ${isoDate(line.until!)}. Ask the supplier for a new list, or take it as it is.`,
          ],
        }
      : line,
  );

const plural = (count: number): string => (count === 1 ? "1 line" : `${count} lines`);
const passed = (count: number, what: string): string[] =>
  count === 0 ? [] : [`${plural(count)} with ${what} ${count === 1 ? "is" : "are"} passed over.`];

const hiddenNote = (count: number): string[] =>
  count === 0 ? [] : [`${plural(count)} hidden in the workbook ${count === 1 ? "is" : "are"} read as well.`];

const distinct = (questions: readonly ListQuestion[]): ListQuestion[] =>
  questions.filter(
    ({ sentence }, index) => questions.findIndex((other) => other.sentence === sentence) === index,
  );

function styleNotes(styles: ReadonlyMap<number, ColumnStyle>, columns: readonly PriceColumn[]): string[] {
  const mixed = columns.filter(({ index }) => styles.get(index) === "mixed");
  return mixed.map(
    ({ head }) =>
      `“${head}” is written with decimal points and with decimal commas: a cell that can be either is asked.`,
  );
}

/** Each column by its own cells; one that does not tell, by the others. */
function stylesOf(
  prices: readonly ImportedLine[],
  columns: readonly PriceColumn[],
  { decimal }: PriceAnswers,
  cutOf: (line: ImportedLine, column: PriceColumn) => CutCell,
  priceColumns: readonly PriceColumn[],
): Map<number, ColumnStyle> {
  const styles = new Map<number, ColumnStyle>();
  const figures = function* (column: PriceColumn): Generator<string> {
    const isPrice = priceColumns.includes(column);
    for (const line of prices) {
      if (isPrice) {
        const cut = cutOf(line, column);
        if (cut.kind === "figure" && cut.number === undefined) yield cut.figure;
      } else {
        const cell = line.cells[column.index];
        if (typeof cell === "string" && cell !== "") yield asFigures(cell.replace(/[%€£$]/g, ""));
      }
    }
  };
  const told = columns.filter(({ key }) => key === "pack" || key === "discount");
  for (const column of [...priceColumns, ...told]) {
    const style = decimal ?? columnStyle(figures(column));
    styles.set(column.index, style);
  }
  const sure = new Set([...styles.values()].filter((style) => style !== undefined));
  if (sure.size === 1) {
    const [only] = sure;
    if (only !== "mixed")
      for (const [index, style] of styles) if (style === undefined) styles.set(index, only);
  }
  return styles;
}

function orderOf(
  prices: readonly ImportedLine[],
  place: (key: ColumnKey) => number,
  { order }: PriceAnswers,
  styles: readonly ColumnStyle[],
): DateOrder | undefined {
  if (order) return order;
  const cells = function* (): Generator<ImportedCell> {
    for (const { cells: one } of prices)
      for (const key of ["from", "until"] as const) yield one[place(key)] ?? "";
  };
  const found = dateOrder(cells());
  if (found === "mixed") return undefined;
  // Nobody who writes decimal commas puts the month first (Unicode CLDR 44).
  return found ?? (styles.includes(",") && !styles.includes(".") ? "dmy" : undefined);
}

interface Title {
  readonly currency?: string;
  readonly from?: number;
  readonly until?: number;
}

const TAX_IN =
  /(?<![a-z])(?:incl?(?:\.|uding|usive(?: of)?)? ?(?:\d+ ?% ?)?(?:vat|tax|gst|btw|mwst|ust|tva|iva)|inkl?(?:\.|usive)? ?(?:\d+ ?% ?)?(?:mwst|ust|mehrwertsteuer|steuer)|t\.?t\.?c\.?|toutes taxes|tva comprise|iva incl\w*|con iva|brutto(?!listen)\w*preise|bruttopreise|gross prices|prices gross|btw inbegrepen)(?![a-z])/;
const SURCHARGE =
  /(?<![a-z])(?:\w*zuschlag\w*|\w*aufschlag\w*|kupferbasis|kupfernotiz|surcharges?|copper base|metal base|fuel levy|levy|supplement (?:cuivre|metal)|surtaxe|recargos?|\w*toeslag\w*|\w*tillaeg|\w*tillagg|sovrapprezzo)(?![a-z])/;
const DISCOUNT_IN =
  /(?<![a-z])(?:less|minus|abzgl\.?|abzuglich|moins|menos|less a|discount(?: of)?|rabatt(?: von)?|remise(?: de)?|descuento(?: del?)?|korting(?: van)?)[ :]*(\d+(?:[.,]\d+)?) ?%|(\d+(?:[.,]\d+)?) ?% ?(?:discount|rabatt|remise|descuento|korting|dto)/;
const LIST_IN =
  /(?<![a-z])(?:list prices?|gross list|listenpreise?|bruttolistenpreise?|prix (?:publics?|tarif)|brutoprijzen|precios? (?:de )?tarifa|recommended retail)(?![a-z])/;

/** What stands above, below and between the lines. */
function titleOf(
  loose: readonly string[],
  order: DateOrder | undefined,
  own: string | undefined,
  questions: ListQuestion[],
  answers: PriceAnswers,
): Title {
  const currencies = new Set<string>();
  let [from, until]: (number | undefined)[] = [];
  const surcharges = new Set<string>();
  for (const text of loose) {
    for (const one of currenciesIn(text, own)) currencies.add(one);
    const plain = plainWords(text);
    if (SURCHARGE.test(plain) && answers.surcharge === undefined) surcharges.add(text.slice(0, 80));
    if (
      TAX_IN.test(plain) &&
      !/(?<![a-z])(?:not|nicht|hors|without|ohne|sin|zzgl|excl|exkl|plus)(?![a-z])/.test(plain) &&
      answers.tax === undefined
    )
      questions.push({
        id: "tax",
        sentence: `The list says “${text.slice(0, 80)}”: its prices hold tax (VAT), and costs are kept without. Say which share of tax is in them (0 for none).`,
      });
    if ((DISCOUNT_IN.test(plain) || LIST_IN.test(plain)) && answers.discount === undefined)
      questions.push({
        id: "discount",
        sentence: `The list says “${text.slice(0, 80)}”. Say which discount comes off its prices (0 for none).`,
      });
    if (!/\d/.test(text)) continue;
    const dates = datesInTitle(text);
    const read = (written: string | undefined, isEnd: boolean): number | undefined => {
      if (written === undefined) return undefined;
      const reading = readListDate(written, order, isEnd);
      if (!("refused" in reading)) return reading.value;
      questions.push({
        id: "dates",
        sentence: `“${written}” in the title can't be read as one day. Say whether days or months come first.`,
      });
      return undefined;
    };
    from ??= read(dates.from, false);
    until ??= read(dates.until, true) ?? (dates.untilYear ? readYearEnd(dates.untilYear) : undefined);
  }
  if (surcharges.size > 0)
    questions.push({
      id: "surcharge",
      sentence: `The list says “${[...surcharges].slice(0, 2).join("” and “")}”: with a surcharge, for copper or other, its prices are not all that is paid. Say that they stand as they are, or put the whole price into the list.`,
    });
  if (currencies.size > 1 && answers.currency === undefined)
    questions.push({
      id: "currency",
      sentence: `The list names ${[...currencies].join(" and ")}. Say in which currency its prices are.`,
    });
  const [only] = currencies.size === 1 ? currencies : [];
  return {
    ...(only !== undefined && { currency: only }),
    ...(from !== undefined && { from }),
    ...(until !== undefined && { until }),
  };
}

const readYearEnd = (year: number): number | undefined => {
  const reading = readListDate(`${year}-12-31`, undefined, true);
  return "refused" in reading ? undefined : reading.value;
};

const HEADING_BASIS =
  /(?:prices?|preise?|prix|precios?|prijs|prijzen|€|eur|£|\$)[^\d]{0,20}?(?:\/|(?<![a-z])(?:per|je|pro|fur|aux|par|pour|por|les|for|voor)(?![a-z])) ?((?:\d+ ?)?[a-z.]+)/;

/** "Cables (prices per 100 m)". */
function basisInHeading({ cells }: ImportedLine): Basis | undefined {
  const text = plainWords(cells.map((cell) => textOf(cell)).join(" "));
  const found = HEADING_BASIS.exec(text);
  return found ? basisOf(found[1]!) : undefined;
}

/** A heading of a group ends what the one before said. */
const isGroup = ({ cells }: ImportedLine): boolean => cells.map((cell) => textOf(cell)).join("").length <= 60;

function scaleReader(column: number, prices: readonly ImportedLine[]): (line: number) => number | undefined {
  if (column === NO_COLUMN) return () => undefined;
  const byLine = new Map(
    prices.map(({ line, cells }) => {
      const { quantity } = packInCell(cells[column], undefined);
      return [line, quantity] as const;
    }),
  );
  return (line) => byLine.get(line);
}

interface Asked {
  readonly answers: PriceAnswers;
  readonly title: Title;
  readonly columns: unknown;
}

/** What several lines ask in the same way is asked once of the list, so that one answer settles them. */
function askOnce(lines: readonly ListedPrice[], questions: ListQuestion[], { answers }: Asked): void {
  const live = lines.filter(({ left }) => left === undefined);
  if (
    live.length > 0 &&
    live.every(({ currency }) => currency === undefined) &&
    answers.currency === undefined
  )
    questions.push({
      id: "currency",
      sentence: "The list names no currency. Say in which its prices are.",
    });
  if (live.some(({ doubts }) => doubts.some((doubt) => doubt.endsWith("Say what the prices are for."))))
    questions.push({
      id: "basis",
      ofLines: true,
      sentence:
        "Nothing says whether prices are for the unit or for the whole pack or reel. Say what they are for.",
    });
  if (
    live.some(({ doubts }) =>
      doubts.some((doubt) => doubt.endsWith("Say which sign stands before decimals.")),
    )
  )
    questions.push({
      id: "decimal",
      ofLines: true,
      sentence: "Some numbers can be thousands or decimals. Say which sign stands before decimals.",
    });
}
