/** One known mistake at a time, put into a clean job: what the review must name, and in which cell. */
import { address, parseAddress, parseRange } from "../../src/formula/address";
import type { Book, BookCell, BookSheet } from "../../src/workbooks/book";
import { filledCells, namedCells, type NamedCell } from "../../src/review/namedCells";

export interface Mistake {
  /** Of the rule that must find it. */
  readonly rule: string;
  readonly cell: { readonly sheet: string; readonly cell: string };
}

export interface Mutation {
  readonly kind: string;
  /** Changes the copy that it is given; the values are then computed anew, unless they are the mistake. */
  readonly apply: (book: Book, random: () => number) => Mistake;
  /** The mistake lies in what is stored, so nothing is computed after it. */
  readonly stored?: boolean;
  /** Held to the price list of the job before the mistake. */
  readonly toPriceList?: boolean;
  /** Whether a job can show the mistake; any can where absent. */
  readonly fits?: (book: Book) => boolean;
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
  fits: (book) => names.some((name) => filledCells(book, name).some((one) => one.typed && may(one))),
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
const PRICES = ["cables", "passives", "units", "supplies", "plates", "feeds", "resistors", "fittings"];
const priced = (key: string): string[] => PRICES.map((block) => `${block}_${key}`);
const field = (book: Book, name: string): NamedCell => namedCells(book, name)[0]!;

/** A formula cell of a field, by name. */
const typedOver = (kind: string, names: readonly string[], value: (now: number) => number): Mutation => ({
  kind,
  apply: (book, random) => {
    const cell = field(book, pick(names, random));
    set(book, cell.place, { value: value(number(cell)) });
    return { rule: "formula typed over", cell: cell.place };
  },
});

const otherFormula = (kind: string, name: string, formula: string): Mutation => ({
  kind,
  apply: (book) => {
    const { place } = field(book, name);
    const { spill } = sheetOf(book, place.sheet).cells[place.cell]!;
    set(book, place, { formula, ...(spill && { spill }) });
    return { rule: "formula changed", cell: place };
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
const textGone = (kind: string, rule: string, sheet: string, line: RegExp): Mutation => ({
  kind,
  stored: true,
  apply: (book, random) => {
    const { cells } = sheetOf(book, sheet);
    const cell = pick(
      Object.keys(cells).filter((at) => /^A\d+$/.test(at) && line.test(String(cells[at]!.value))),
      random,
    );
    set(book, { sheet, cell }, {});
    return { rule, cell: { sheet, cell } };
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
  otherFormula("the taxable part reads the cost", "price_taxable", "price_cost"),
  otherFormula("column formula changed", "work_sum", 'IF(labour_name="","",work_hours*labour_rate*2)'),
  otherFormula("total leaves the tax out", "quote_total", "price_net"),
  {
    kind: "column formula cleared",
    apply: (book, random) => {
      const { place } = field(
        book,
        pick(["rooms_weakest", "cables_bought_sum", "heads_spare", "work_hours"], random),
      );
      set(book, place, {});
      return { rule: "formula typed over", cell: place };
    },
  },
  {
    kind: "typed into a calculated column",
    apply: (book, random) => {
      const { place } = pick(
        filledCells(book, pick(["cables_bought_sum", "work_hours", "rooms_slope"], random)),
        random,
      );
      set(book, place, { value: 1 });
      return { rule: "formula typed over", cell: place };
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
      return { rule: "outside limits", cell: namedCells(book, "rooms_check_bands")[index]!.place };
    },
  },
  {
    kind: "a supply too weak",
    apply: (book, random) => {
      // 9 V for kinds that need 12 or more.
      const { index, value } = pick(filledCells(book, "heads_supply"), random);
      const pack = filledCells(book, "supplies_name").find((one) => one.value === value)!;
      set(book, namedCells(book, "supplies_volts")[pack.index]!.place, { value: 9 });
      return { rule: "outside limits", cell: namedCells(book, "heads_check_power")[index]!.place };
    },
  },
  {
    kind: "too little level",
    apply: (book, random) => {
      const { index, place } = pick(filledCells(book, "rooms_run"), random);
      set(book, place, { value: 400 });
      return { rule: "outside limits", cell: namedCells(book, "rooms_check_level")[index]!.place };
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
  {
    kind: "a mains pack forgotten",
    apply: (book, random) => {
      const { index, place } = pick(filledCells(book, "heads_supply"), random);
      set(book, place, {});
      return { rule: "outside limits", cell: namedCells(book, "heads_check_power")[index]!.place };
    },
  },
  {
    kind: "an amplifier that passes no power",
    fits: (book) => filledCells(book, "branches_device").some(({ value }) => value === "line amplifier"),
    apply: (book) => {
      const { index } = filledCells(book, "passives_name").find(({ value }) => value === "line amplifier")!;
      const { place } = namedCells(book, "passives_power")[index]!;
      set(book, place, { value: "no" });
      return { rule: "supply", cell: place };
    },
  },
  {
    kind: "two receivers on one connector",
    apply: (book, random) => {
      const { index, place } = pick(filledCells(book, "rooms_quantity"), random);
      set(book, place, { value: 2 });
      return { rule: "outside limits", cell: namedCells(book, "rooms_check_connectors")[index]!.place };
    },
  },
  retyped("feeders to what is not there", "feeding", ["feeders_to"], () => "H99"),
  retyped("a dish without its mount", "part lacking or not needed", ["dishes_part"], () => undefined),
  retyped("no usual route", "work lacking or counted twice", ["site_usual_route"], () => undefined),
  {
    kind: "a receiver forgotten",
    apply: (book, random) => {
      const { place } = pick(filledCells(book, "rooms_receiver"), random);
      set(book, place, {});
      return { rule: "entry missing", cell: place };
    },
  },
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
  {
    kind: "columns hidden",
    stored: true,
    apply: (book, random) => {
      const column = parseAddress(
        pick(filledCells(book, pick(["rooms_run", "rooms_cable", "rooms_from"], random)), random).place.cell,
      )!.column;
      sheetOf(book, "Rooms").hiddenColumns = [column];
      return { rule: "hidden", cell: { sheet: "Rooms", cell: address(0, column) } };
    },
  },
  textGone(
    "a caution removed",
    "caution or exclusion removed",
    "About",
    /^(Falls|Lightning and bonding|This workbook predicts)/,
  ),
  textGone("a check deleted", "check deleted", "Checks", /^(Outlets|Head units|Parts|Prices)/),
  {
    kind: "an exclusion removed",
    apply: (book, random) => {
      const rows = filledCells(book, "exclusions_text");
      set(book, pick(rows, random).place, {});
      return {
        rule: "caution or exclusion removed",
        cell: namedCells(book, "exclusions_text")[1]!.place,
      };
    },
  },
  {
    kind: "tax on the wrong base",
    fits: (book) => number(field(book, "site_tax")) > 0,
    apply: (book) => {
      set(book, field(book, "price_taxable").place, { formula: "price_cost" });
      return { rule: "tax on the wrong base", cell: field(book, "quote_tax").place };
    },
  },
  {
    kind: "printed tax on other work than Site says",
    stored: true,
    fits: (book) => number(field(book, "site_tax")) > 0,
    apply: (book) => {
      const on = String(field(book, "site_tax_on").value);
      set(book, field(book, "site_tax_on").place, {
        value: on === "materials only" ? "labour only" : "materials only",
      });
      return { rule: "tax on the wrong base", cell: field(book, "quote_tax").place };
    },
  },
  {
    kind: "a total that does not add",
    apply: (book, random) => {
      const { place, value } = field(book, "quote_total");
      set(book, place, { value: Number(value) - 10 - Math.round(random() * 500) });
      return { rule: "total that does not add", cell: place };
    },
  },
  {
    kind: "a price without tax that does not add",
    apply: (book, random) => {
      const { place, value } = field(book, "quote_net");
      set(book, place, { value: Number(value) + 10 + Math.round(random() * 500) });
      return { rule: "total that does not add", cell: place };
    },
  },
  {
    kind: "a check's formula typed over",
    apply: (book, random) => {
      const { place } = pick(filledCells(book, "checks_result"), random);
      set(book, place, { value: "ok" });
      return { rule: "formula typed over", cell: place };
    },
  },
  {
    kind: "an outlet fed by two",
    apply: (book, random) => {
      const { sheet, cell } = pasted(book, "rooms_outlet", random);
      const row = parseAddress(cell)!.row;
      const sources = namedCells(book, "rooms_from");
      const from = sources.find(({ place }) => parseAddress(place.cell)!.row === row)!;
      const others = filledCells(book, "branches_id").filter(({ value }) => value !== from.value);
      set(book, from.place, { value: String(pick(others, random).value) });
      return { rule: "feeding", cell: { sheet, cell: from.place.cell } };
    },
  },
  {
    kind: "branches in a ring",
    fits: (book) => {
      const from = filledCells(book, "branches_from");
      return filledCells(book, "branches_id").some(({ value }) => from.some((one) => one.value === value));
    },
    apply: (book, random) => {
      const ids = filledCells(book, "branches_id");
      const from = namedCells(book, "branches_from");
      const fed = ids.filter(({ index }) => ids.some(({ value }) => value === from[index]!.value));
      const low = pick(fed, random);
      const high = ids.find(({ value }) => value === from[low.index]!.value)!;
      set(book, from[high.index]!.place, { value: String(low.value) });
      const first = high.index < low.index ? high : low;
      return { rule: "feeding", cell: from[first.index]!.place };
    },
  },
  {
    kind: "a level typed in dBmV",
    apply: (book, random) => {
      const cell = pick(
        ["units_out_low", "units_out_high"].flatMap((name) => filledCells(book, name)),
        random,
      );
      set(book, cell.place, { value: number(cell) - 60 });
      return { rule: "unit slip", cell: cell.place };
    },
  },
  retyped(
    "a level far from the others",
    "far from neighbours",
    ["units_out_low", "units_out_high"],
    (cell) => (number(cell) > 90 ? number(cell) - 20 : number(cell) + 20),
  ),
  retyped(
    "a splitter's price with its point lost",
    "far from neighbours",
    ["passives_price"],
    (cell) => number(cell) * 10,
  ),
  retyped("an hourly rate in cents", "unit slip", ["labour_rate"], (cell) => number(cell) * 100),
  {
    ...retyped(
      "a price changed from the list",
      "price missing, expired or changed",
      priced("price"),
      (cell) => Math.round(number(cell) * 97 + 11) / 100,
    ),
    toPriceList: true,
  },
  {
    kind: "the ground block left out",
    apply: (book) => {
      const cell = filledCells(book, "fittings_name").find(({ value }) => /bonding/.test(String(value)))!;
      set(book, cell.place, { value: "bonding conductor" });
      const block = filledCells(book, "fittings_name").find(({ value }) => value === "grounding block")!;
      set(book, block.place, { value: "weatherproof boot" });
      return { rule: "part lacking or not needed", cell: namedCells(book, "fittings_name")[1]!.place };
    },
  },
  {
    kind: "bonding conductors left out",
    apply: (book) => {
      const cells = filledCells(book, "bonds_where");
      for (const { place } of cells) set(book, place, {});
      return { rule: "part lacking or not needed", cell: cells[0]!.place };
    },
  },
  {
    kind: "a fitting that nothing needs",
    apply: (book, random) => {
      // Dishes go by the sheet of dishes.
      const { place, index } = pick(
        filledCells(book, "fittings_name").filter(({ value }) => !/^dish/.test(String(value))),
        random,
      );
      for (const key of ["per_outlet", "per_branch", "per_head", "fixed"])
        set(book, namedCells(book, `fittings_${key}`)[index]!.place, { value: 0 });
      set(book, namedCells(book, "fittings_piece")[index]!.place, {});
      return { rule: "part lacking or not needed", cell: place };
    },
  },
  {
    kind: "a head unit on which nothing hangs",
    apply: (book) => {
      const spare = pasted(book, "heads_id", () => 0);
      set(book, spare, { value: "H-spare" });
      return { rule: "part lacking or not needed", cell: spare };
    },
  },
  {
    kind: "no usual wall plate",
    apply: (book) => {
      const { place } = field(book, "site_usual_plate");
      set(book, place, {});
      return { rule: "part lacking or not needed", cell: place };
    },
  },
  {
    kind: "a discount of more than the price",
    apply: (book) => {
      const { place } = namedCells(book, "discount_sum")[0]!;
      // Dearer than any job of these, in whatever money.
      set(book, place, { value: 9_000_000 });
      set(book, namedCells(book, "discount_reason")[0]!.place, { value: "three houses together" });
      return { rule: "discount that cannot be", cell: place };
    },
  },
  {
    kind: "a discount in two lines",
    apply: (book) => {
      const names = namedCells(book, "provisional_name");
      const sums = namedCells(book, "provisional_sum");
      const free = names.slice(1, -1).filter(({ value }) => value === undefined || value === "");
      const [first, second] = free;
      set(book, first!.place, { value: "discount agreed on the telephone" });
      set(book, second!.place, { value: "early order discount" });
      for (const one of [first!, second!]) set(book, sums[one.index]!.place, { value: -90 });
      return { rule: "discount given twice", cell: second!.place };
    },
  },
  {
    kind: "a discount in a line and in the total",
    apply: (book) => {
      const free = namedCells(book, "provisional_name")
        .slice(1, -1)
        .find(({ value }) => value === undefined || value === "")!;
      set(book, free.place, { value: "discount for a regular customer" });
      set(book, namedCells(book, "provisional_sum")[free.index]!.place, { value: -90 });
      const { place } = field(book, "price_total");
      set(book, place, { formula: "ROUND((price_net+price_tax)*0.95,2)" });
      return { rule: "discount given twice", cell: place };
    },
  },
];
