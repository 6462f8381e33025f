/**
 * Ties of money on the whole demonstration sheet, in the desk's engine: its tax, its lines and its options, held
 * to decimal.js and to the reference pricing, which share no code with the product.
 */
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import type { JobInputs } from "../../src/workbooks/definition";
import type { Book, BookValue } from "../../src/workbooks/book";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { namedColumn, namedValue, placeOfName } from "../../src/workbooks/named";
import { parseAddress } from "../../src/formula/address";
import { quietly } from "../../src/hosts/headless/loadLibrary";
import { DeskInNode } from "../hosts/desk/openDesk";
import { referencePrice, type Job } from "../support/referencePrice";
import { RULES, shareOf, taxByDecimal, tiesAt, USUAL_RATES } from "../support/usualRates";

/** The demonstration without what is taxed apart, its net made up by one provisional sum. */
function job(
  fields: Record<string, BookValue>,
  provisional: number,
  more: JobInputs["blocks"] = {},
): JobInputs {
  const { blocks } = guestHouse;
  return {
    fields: { ...guestHouse.fields, ...fields } as JobInputs["fields"],
    blocks: {
      ...blocks,
      provisional: [{ name: "Made up to the sum (demonstration)", sum: provisional }],
      ...more,
    },
  };
}

const computed = (inputs: JobInputs): Book => recalculate(layOut(multiRoom, inputs));
const cents = (amount: unknown): number => Math.round(Number(amount) * 100);

test("a net of 7855.65 at 10 %: tax 785.57, or 785.56 with half even, as worked by hand", () => {
  for (const [rule, tax, total] of [
    ["half away", 785.57, 8641.22],
    ["half even", 785.56, 8641.21],
  ] as const) {
    // Half the rooms, so that the rest is less than the sum that is wanted.
    const rooms = guestHouse.blocks!.rooms!.slice(0, 8);
    const fields = { site_tax: 0.1, site_rounding: rule, site_tax_on: "materials and labour" };
    const base = cents(namedValue(computed(job(fields, 0, { rooms })), "price_net"));
    expect(base).toBeLessThan(785_565);
    const inputs = job(fields, (785_565 - base) / 100, { rooms });
    const book = computed(inputs);
    expect(["quote_net", "quote_tax", "quote_total"].map((name) => namedValue(book, name))).toEqual([
      7855.65,
      tax,
      total,
    ]);
    const reference = referencePrice(inputs as unknown as Job);
    expect([reference.net, reference.tax]).toEqual(["7855.65", tax.toFixed(2)]);
  }
});

test("each usual rate at a few of its ties, both rules, on the open desk", () => {
  const fields = { site_tax: 0.1, site_rounding: "half away", site_tax_on: "materials and labour" };
  const desk = new DeskInNode(layOut(multiRoom, job(fields, 0)));
  const book = desk.book();
  const placeOf = (name: string): { sheetId: string; row: number; col: number } => {
    const { sheet, at } = placeOfName(book, name)!;
    const { row, column: col } = parseAddress(at)!;
    return { sheetId: desk.model.getters.getSheetIdByName(sheet)!, row, col };
  };
  const type = (name: string, value: BookValue): void =>
    void quietly(() => desk.model.dispatch("UPDATE_CELL", { ...placeOf(name), content: String(value) }));
  const quoted = (name: string): number => Number(desk.model.getters.getEvaluatedCell(placeOf(name)).value);
  const base = cents(quoted("price_net"));
  let held = 0;
  for (const [rule, mode] of RULES) {
    type("site_rounding", rule);
    for (const percent of USUAL_RATES) {
      type("site_tax", shareOf(percent));
      for (const net of tiesAt(percent, base, base + 20_000).slice(0, 3)) {
        type("provisional_sum", (Math.round(net * 100) - base) / 100);
        expect([rule, percent, quoted("quote_net"), quoted("quote_tax")]).toEqual([
          rule,
          percent,
          net,
          taxByDecimal(net, percent, mode),
        ]);
        held++;
      }
    }
  }
  // Three for each rate and rule, but none at 8 and 20 %.
  expect(held).toBe(2 * 3 * (USUAL_RATES.length - 2));
});

test("a section whose price is a tie: cost times contingency, overhead and margin", () => {
  // By hand: plates of 2.01 at a margin of a third sell at 3.015 each; with nothing else in the section, 3.02.
  const { blocks } = guestHouse;
  const fields = { site_margin: 1 / 3, site_contingency: 0, site_overhead: 0, site_rounding: "half away" };
  const lines = (more: JobInputs["blocks"], rule: string): unknown[] =>
    namedColumn(computed(job({ ...fields, site_rounding: rule }, 0, more)), "price_lines");
  const plates = blocks!.plates!.map((plate) => ({ ...plate, price: 0 }));
  const priced = (price: number): JobInputs["blocks"] => ({
    plates: [{ ...plates[0]!, price }, ...plates.slice(1)],
  });
  const rooms = blocks!.rooms!.map((room, index) => ({
    ...room,
    plate: String(blocks!.plates![index === 0 ? 0 : 1]!.name),
  }));
  const fittings = blocks!.fittings!.map((fitting) => ({ ...fitting, price: 0 }));
  const section = (price: number, rule: string): unknown =>
    lines({ ...priced(price), rooms, fittings }, rule)[2];
  expect(section(2.01, "half away")).toBe(3.02);
  expect(section(2.01, "half even")).toBe(3.02);
  // By hand: 2.03 sells at 3.045.
  expect(section(2.03, "half away")).toBe(3.05);
  expect(section(2.03, "half even")).toBe(3.04);
});

test("provisional sums and options: added exactly, and each option rounded as it prints", () => {
  const more: JobInputs["blocks"] = {
    // By hand: 3 × 3.335 = 10.005; 3 × 0.335 = 1.005; 7 × 0.265 = 1.855.
    provisional: [1, 2, 3].map((n) => ({ name: `Sum ${n} (demonstration)`, sum: 3.335 })),
    options: [
      { name: "Tie one (demonstration)", quantity: 3, each: 0.335, chosen: "yes" },
      { name: "Tie two (demonstration)", quantity: 7, each: 0.265, chosen: "yes" },
      { name: "Not chosen (demonstration)", quantity: 1, each: 4.5, chosen: "no" },
    ],
  };
  const away = computed(job({ site_rounding: "half away" }, 0, more));
  expect(namedColumn(away, "options_sum").slice(1, 4)).toEqual([1.01, 1.86, 4.5]);
  expect(namedColumn(away, "options_quoted_sum").slice(1, 4)).toEqual([1.01, 1.86, 4.5]);
  expect([namedValue(away, "quote_provisional"), namedValue(away, "quote_options")]).toEqual([10.01, 2.87]);
  const even = computed(job({ site_rounding: "half even" }, 0, more));
  expect(namedColumn(even, "options_sum").slice(1, 4)).toEqual([1, 1.86, 4.5]);
  expect([namedValue(even, "quote_provisional"), namedValue(even, "quote_options")]).toEqual([10, 2.86]);
});

test("no piece is bought for the noise of a product: 0.55 for each of 100 outlets in packs of one", () => {
  const rooms = Array.from({ length: 100 }, (_, at) => ({
    ...guestHouse.blocks!.rooms![at % 24]!,
    outlet: `N-${at + 1}`,
  }));
  const fittings = [{ name: "clip (demonstration)", per_outlet: 0.55, pack: 1, price: 1 }];
  const book = computed(job({}, 0, { rooms, fittings }));
  expect(namedColumn(book, "fittings_bought_quantity")[1]).toBe(55);
});
