/** One known mistake at a time, put into a clean job: what the review must name, and in which cell. */
import { address, parseAddress, parseRange } from "../../src/workbooks/address";
import type { Book, BookCell, BookSheet } from "../../src/workbooks/book";
import { filledCells, namedCells, type NamedCell } from "../../src/review/namedCells";

export interface Mistake {
  /** Of the rule that must find it. */
  readonly rule: string;
  /** Another that may: with a load in watts too few volts have no solution, which is an error in the same cell. */
  readonly or?: string;
  /** Where; absent when the finding is about the sheet or the block. */
  readonly cell?: { readonly sheet: string; readonly cell: string };
}

export interface Mutation {
  readonly kind: string;
  /** Changes the copy that it is given; the values are then computed anew, unless they are the mistake. */
  readonly apply: (book: Book, random: () => number) => Mistake;
  /** The mistake lies in what is stored, so nothing is computed after it. */
  readonly stored?: boolean;
}

const pick = <T>(of: readonly T[], random: () => number): T => of[Math.floor(random() * of.length)]!;
const sheetOf = (book: Book, name: string): BookSheet => book.sheets.find((one) => one.name === name)!;

function set(book: Book, { sheet, cell }: { sheet: string; cell: string }, content: BookCell): void {
  const { cells } = sheetOf(book, sheet);
  const { look } = cells[cell] ?? {};
  cells[cell] = { ...(look === undefined ? {} : { look }), ...content };
}

/** A typed value in one of the columns changed. */
const retyped = (
  kind: string,
  rule: string,
  names: readonly string[],
  change: (cell: NamedCell, random: () => number, book: Book) => number | string | undefined,
  may: (cell: NamedCell) => boolean = () => true,
): Mutation => ({
  kind,
  apply: (book, random) => {
    const cell = pick(
      names.flatMap((name) => filledCells(book, name)).filter((one) => one.typed && may(one)),
      random,
    );
    const value = change(cell, random, book);
    set(book, cell.place, value === undefined ? {} : { value });
    return { rule, cell: cell.place };
  },
});

const number = ({ value }: NamedCell): number => Number(value);
const PRICES = ["cables", "passives", "units", "supplies", "plates", "fittings"];
const priced = (key: string): string[] => PRICES.map((block) => `${block}_${key}`);
const field = (book: Book, name: string): NamedCell => namedCells(book, name)[0]!;

/** A formula cell of a field, by name. */
const typedOver = (kind: string, names: readonly string[], value: (now: number) => number): Mutation => ({
  kind,
  apply: (book, random) => {
    const cell = field(book, pick(names, random));
    set(book, cell.place, { value: value(number(cell)) });
    return { rule: "changed formula", cell: cell.place };
  },
});

const otherFormula = (kind: string, name: string, formula: string): Mutation => ({
  kind,
  apply: (book) => {
    const { place } = field(book, name);
    const { spill } = sheetOf(book, place.sheet).cells[place.cell]!;
    set(book, place, { formula, ...(spill && { spill }) });
    return { rule: "changed formula", cell: place };
  },
});

const stale = (kind: string, names: readonly string[]): Mutation => ({
  kind,
  stored: true,
  apply: (book, random) => {
    const cell = pick(
      names.flatMap((name) => filledCells(book, name)).filter(({ value }) => typeof value === "number"),
      random,
    );
    sheetOf(book, cell.place.sheet).results[cell.place.cell] = number(cell) * 1.1 + 1;
    return { rule: "stale value", cell: cell.place };
  },
});

/** A line of text that the template shows. */
const textGone = (kind: string, sheet: string, line: RegExp): Mutation => ({
  kind,
  stored: true,
  apply: (book, random) => {
    const { cells } = sheetOf(book, sheet);
    const cell = pick(
      Object.keys(cells).filter((at) => line.test(String(cells[at]!.value))),
      random,
    );
    set(book, { sheet, cell }, {});
    return { rule: "caution, exclusion or check removed", cell: { sheet, cell } };
  },
});

/** One row of a block written over the next free one. */
function pasted(book: Book, named: string, random: () => number): { sheet: string; cell: string } {
  const rows = filledCells(book, named);
  const from = parseAddress(pick(rows, random).place.cell)!;
  const last = rows.at(-1)!;
  const to = parseAddress(last.place.cell)!.row + 1;
  const sheet = sheetOf(book, last.place.sheet);
  const block = named.split("_")[0]!;
  for (const { range, name } of book.names) {
    if (!name.startsWith(`${block}_`)) continue;
    const zone = parseRange(range)!;
    for (let column = zone.left; column <= zone.right; column++) {
      const { value } = sheet.cells[address(from.row, column)] ?? {};
      if (value !== undefined) set(book, { sheet: sheet.name, cell: address(to, column) }, { value });
    }
  }
  return { sheet: sheet.name, cell: address(to, from.column) };
}

export const mutations: readonly Mutation[] = [
  typedOver("total typed over", ["quote_total", "price_total"], (now) => now - 100),
  typedOver("tax typed over", ["quote_tax", "price_taxable"], (now) => now * 0.5),
  typedOver(
    "a line of the quote typed over",
    ["quote_labour", "quote_cable", "quote_net"],
    (now) => now + 50,
  ),
  typedOver(
    "cost typed over",
    ["price_direct", "price_cost", "price_labour", "price_overhead"],
    (now) => now * 0.9,
  ),
  otherFormula("cost adds a part only", "price_cost", "price_direct+price_contingency"),
  otherFormula("tax on the wrong base", "price_taxable", "price_cost"),
  otherFormula("column formula changed", "work_sum", 'IF(labour_name="","",work_hours*labour_rate*2)'),
  otherFormula("total leaves the tax out", "quote_total", "price_net"),
  {
    kind: "column formula cleared",
    apply: (book, random) => {
      const { place } = field(
        book,
        pick(["rooms_weakest", "buycables_sum", "heads_tuners", "work_hours"], random),
      );
      set(book, place, {});
      return { rule: "changed formula", cell: place };
    },
  },
  {
    kind: "typed into a calculated column",
    apply: (book, random) => {
      const { place } = pick(
        filledCells(book, pick(["buycables_sum", "work_hours", "rooms_tuners"], random)),
        random,
      );
      set(book, place, { value: 1 });
      return { rule: "changed formula", cell: place };
    },
  },
  stale("old total", ["quote_total", "quote_net"]),
  stale("old level", ["rooms_weakest", "rooms_strongest"]),
  retyped(
    "a run ten times as long",
    "far from neighbours",
    ["rooms_run"],
    (cell) => number(cell) * 10,
    (cell) => number(cell) >= 12,
  ),
  {
    kind: "a branch's runs in feet",
    apply: (book, random) => {
      const from = namedCells(book, "rooms_from");
      const runs = filledCells(book, "rooms_run");
      const feeders = [...new Set(runs.map(({ index }) => from[index]!.value))].filter(
        (one) => runs.filter(({ index }) => from[index]!.value === one).length >= 3,
      );
      const feeder = pick(feeders, random);
      const group = runs.filter(({ index }) => from[index]!.value === feeder);
      for (const run of group) set(book, run.place, { value: Math.round(number(run) * 3.2808 * 10) / 10 });
      return { rule: "unit slip", cell: group[0]!.place };
    },
  },
  retyped("GHz for MHz", "unit slip", ["site_low", "site_high"], (cell) => number(cell) / 1000),
  retyped(
    "cents for money",
    "unit slip",
    priced("price"),
    (cell) => number(cell) * 100,
    (cell) => number(cell) > 0,
  ),
  retyped(
    "a decimal comma",
    "text that looks like a number",
    ["rooms_run", "branches_length", "heads_length"],
    (cell) => `${Math.floor(number(cell))},5`,
  ),
  retyped(
    "a unit typed behind",
    "text that looks like a number",
    ["rooms_run", "heads_length"],
    (cell) => `${number(cell)} m`,
  ),
  retyped("a price as text", "text that looks like a number", priced("price"), (cell) => `${number(cell)}`),
  retyped("fed by nothing", "feeding", ["rooms_from"], () => undefined),
  retyped("fed from what is not there", "feeding", ["rooms_from", "branches_from"], () => "Z9"),
  {
    kind: "a branch named as another",
    apply: (book, random) => {
      const ids = filledCells(book, "branches_id");
      const at = 1 + Math.floor(random() * (ids.length - 1));
      set(book, ids[at]!.place, { value: String(ids[at - 1]!.value) });
      return { rule: "feeding", cell: ids[at]!.place };
    },
  },
  {
    kind: "more tuners than user bands",
    apply: (book, random) => {
      const { index, place } = pick(filledCells(book, "rooms_quantity"), random);
      set(book, place, { value: 32 });
      const from = namedCells(book, "rooms_head")[index]!.value;
      const head = filledCells(book, "heads_id").find(({ value }) => value === from)!;
      return { rule: "outside limits", cell: namedCells(book, "heads_capacity")[head.index]!.place };
    },
  },
  {
    kind: "a supply too weak",
    apply: (book, random) => {
      const { index, place } = pick(filledCells(book, "heads_supply"), random);
      set(book, place, { value: "hand meter 18 V" });
      return { rule: "outside limits", or: "error", cell: namedCells(book, "heads_power")[index]!.place };
    },
  },
  {
    kind: "too little level",
    apply: (book, random) => {
      const { index, place } = pick(filledCells(book, "rooms_run"), random);
      set(book, place, { value: 400 });
      return { rule: "outside limits", cell: namedCells(book, "rooms_fits_enough")[index]!.place };
    },
  },
  {
    kind: "bonding left out",
    apply: (book) => {
      const cell = filledCells(book, "fittings_name").find(({ value }) => /bonding/.test(String(value)))!;
      set(book, cell.place, { value: "spare cabinet" });
      return { rule: "part lacking or not needed", cell: namedCells(book, "fittings_name")[1]!.place };
    },
  },
  retyped("a head unit without inserter", "part lacking or not needed", ["heads_supply"], () => undefined),
  retyped("a price left out", "price missing, expired or changed", priced("price"), () => undefined),
  retyped("a price expired", "price missing, expired or changed", priced("until"), () => 46_000),
  retyped("margin under the floor", "margin under the floor", ["site_margin"], () => 0.022),
  retyped(
    "percent for a share",
    "input outside its rule",
    ["site_tax", "site_margin", "site_waste"],
    () => 20,
  ),
  retyped(
    "a cable that is not on Parts",
    "input outside its rule",
    ["rooms_cable", "branches_cable"],
    () => "mystery",
  ),
  {
    kind: "a row pasted twice",
    apply: (book, random) => ({ rule: "duplicate", cell: pasted(book, "rooms_outlet", random) }),
  },
  {
    kind: "a part listed twice",
    apply: (book, random) => ({
      rule: "duplicate",
      cell: pasted(book, pick(["plates_name", "supplies_name"], random), random),
    }),
  },
  {
    kind: "a row under the block",
    apply: (book) => {
      const { sheet, cell } = namedCells(book, "rooms_outlet").at(-1)!.place;
      const { row, column } = parseAddress(cell)!;
      const below = address(row + 2, column);
      set(book, { sheet, cell: below }, { value: "X-99" });
      return { rule: "outside the block", cell: { sheet, cell: below } };
    },
  },
  {
    kind: "a sheet hidden",
    stored: true,
    apply: (book, random) => {
      const sheet = sheetOf(book, pick(["Price", "Terms", "Labour", "Parts"], random));
      sheet.hidden = true;
      return { rule: "hidden", cell: { sheet: sheet.name, cell: "A1" } };
    },
  },
  {
    kind: "rows hidden",
    stored: true,
    apply: (book, random) => {
      const row = parseAddress(pick(filledCells(book, "rooms_outlet"), random).place.cell)!.row;
      sheetOf(book, "Rooms").hiddenRows = [row];
      return { rule: "hidden", cell: { sheet: "Rooms", cell: address(row, 0) } };
    },
  },
  textGone("a caution removed", "About", /^(Falls|Lightning and bonding|This workbook predicts)/),
  textGone("a check deleted", "Checks", /^(Outlets|Head units|Parts|Prices)/),
  {
    kind: "an exclusion removed",
    apply: (book, random) => {
      const rows = filledCells(book, "exclusions_text");
      set(book, pick(rows, random).place, {});
      return {
        rule: "caution, exclusion or check removed",
        cell: namedCells(book, "exclusions_text")[1]!.place,
      };
    },
  },
];
