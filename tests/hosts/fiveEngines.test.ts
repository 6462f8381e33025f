/**
 * One job in five places: the engine called directly, the functions as Excel
 * calls them, the desk's model, the headless computation, and LibreOffice on an
 * office copy. They agree to 1e-9, and in money to the cent.
 */
import { distributionOf } from "../../src/engine/distribution/distribution";
import { isFault } from "../../src/engine/faults";
import type { RoundingRule } from "../../src/engine/estimate/exact";
import { roundMoney } from "../../src/engine/estimate/roundMoney";
import { sellPrice } from "../../src/engine/estimate/sellPrice";
import { allFunctions } from "../../src/functions/all";
import type { Cell } from "../../src/functions/core/cells";
import { jobOf } from "../../src/functions/distribution/jobOf";
import { TABLE_NAMES } from "../../src/functions/distribution/tables";
import { associateAll } from "../../src/hosts/excel/associate";
import { writeCopy } from "../../src/hosts/file/copy/writeCopy";
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { argumentValue } from "../../src/review/argumentValue";
import { callIn } from "../../src/formula/callIn";
import { address, parseAddress } from "../../src/formula/address";
import { isBookError, type Book } from "../../src/workbooks/book";
import type { JobInputs } from "../../src/workbooks/definition";
import { layOut } from "../../src/workbooks/layOut";
import { apartmentBlock } from "../../src/workbooks/multiRoom/apartmentBlock";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { namedColumn, namedRows, namedValue } from "../../src/workbooks/named";
import { ExcelStandIn } from "../support/excelStandIn";
import { referencePrice, type Job } from "../support/referencePrice";
import { recalculated, withLibreOffice } from "../support/tools";
import { DeskInNode } from "./desk/openDesk";

const LIMIT = 1e-9;
const MONEY = ["quote_net", "quote_tax", "quote_total"];

const isUpper = (name: unknown): boolean => /^[HR](09|10)/.test(String(name));
/** The two upper floors of the apartment block: the first two switches of a cascade, the lower with its supply. */
const twoFloors: JobInputs = {
  ...apartmentBlock,
  blocks: {
    ...apartmentBlock.blocks,
    feeders: apartmentBlock.blocks!.feeders!.filter(({ to }) => isUpper(to)),
    heads: apartmentBlock
      .blocks!.heads!.filter(({ id }) => isUpper(id))
      .map((head) => (head.id === "H09" ? { ...head, supply: "mains pack 18 V, 2.5 A" } : head)),
    branches: apartmentBlock.blocks!.branches!.filter(({ id }) => isUpper(id)),
    rooms: apartmentBlock.blocks!.rooms!.filter(({ from }) => isUpper(from)),
  },
};

const excel = new ExcelStandIn();
let remove: () => void;
beforeAll(() => {
  remove = excel.install();
  associateAll(allFunctions);
});
afterAll(() => remove());

/** Every cell that shows a number here and something else there, or one further off than the limit. */
function apart(ours: Book, theirs: Book): { compared: number; off: string[] } {
  const off: string[] = [];
  let compared = 0;
  for (const sheet of ours.sheets) {
    const other = theirs.sheets.find(({ name }) => name === sheet.name)!;
    for (const [at, value] of Object.entries(sheet.results)) {
      if (typeof value !== "number") continue;
      compared++;
      const found = other.results[at] ?? other.cells[at]?.value;
      const scale = Math.max(1, Math.abs(value));
      if (typeof found !== "number" || Math.abs(found - value) > LIMIT * scale) {
        off.push(`${sheet.name} ${at}: ${value} and ${JSON.stringify(found)}`);
      }
    }
  }
  return { compared, off };
}

/** A call of ours as Excel makes it, over the values that the workbook has. */
function asExcelCalls(book: Book, sheet: string, formula: string): unknown[][] | undefined {
  const call = callIn(formula);
  if (!call?.whole) return undefined;
  const { parameters } = allFunctions.find(({ name }) => name === call.name)!;
  const given = call.args.map((text) => argumentValue(book, sheet, text));
  if (given.includes(undefined)) return undefined;
  const asGiven = (cell: Cell): unknown =>
    isFault(cell)
      ? new CustomFunctions.Error(CustomFunctions.ErrorCode.invalidValue, cell.message)
      : (cell ?? "");
  const matrices = given.map((argument) =>
    argument === null || argument === undefined
      ? null
      : Array.isArray(argument)
        ? argument.map((row) => row.map(asGiven))
        : [[asGiven(argument as Cell)]],
  );
  const repeats = parameters.at(-1)?.shape === "repeated";
  const declared = repeats ? parameters.length - 1 : parameters.length;
  const args: unknown[] = Array.from({ length: declared }, (_, index) => matrices[index] ?? null);
  if (repeats) args.push(matrices.slice(declared));
  return excel.associated.get(call.name)!(...args, { functionName: call.name }) as unknown[][];
}

describe.each<[string, JobInputs, number]>([
  ["the guest house", guestHouse, 24],
  ["two floors of the apartment block", twoFloors, 48],
])("%s", (_, inputs, outlets) => {
  const headless = recalculate(layOut(multiRoom, inputs));

  test("headless: the reference program's total, to the cent", () => {
    expect(namedValue(headless, "count_outlets")).toBe(outlets);
    const reference = referencePrice(inputs as unknown as Job);
    expect(MONEY.map((name) => Number(namedValue(headless, name)).toFixed(2))).toEqual([
      reference.net,
      reference.tax,
      reference.total,
    ]);
  });

  test("the engine called directly", () => {
    const { fields } = inputs as unknown as Job;
    const given = [
      "rooms_rows",
      "rooms_details",
      "branches_rows",
      "heads_rows",
      "dishes_rows",
      "feeders_rows",
      "slots_rows",
      "setting_values",
      "cables_table",
      "passives_rows",
      "plates_rows",
      "supplies_rows",
      "units_rows",
      "receivers_rows",
      "feeds_rows",
      "plans_rows",
      "resistors_rows",
    ].map((name) =>
      namedRows(headless, name).map((row) => row.map((cell) => (isBookError(cell) ? null : (cell ?? null)))),
    );
    const read = jobOf(Object.fromEntries(TABLE_NAMES.map((name, at) => [name, given[at]])));
    if (read === null || isFault(read)) throw new Error("the tables of the job can't be read");
    const found = distributionOf(read.job);
    const levels = namedRows(headless, "rooms_level");
    read.places.outlets.forEach((place, outlet) => {
      const direct = [found.levels.lowCold, found.levels.lowHot, found.levels.highCold, found.levels.highHot];
      direct.forEach((level, corner) =>
        expect(Math.abs(Number(levels[place]![corner]) - level[outlet]!)).toBeLessThanOrEqual(LIMIT),
      );
    });
    const volts = namedRows(headless, "heads_fed");
    read.places.headUnits.forEach((place, head) => {
      const { allOff, allOn } = found.supply.headUnits[head]!;
      expect(Math.abs(Number(volts[place]![0]) - allOff.volts)).toBeLessThanOrEqual(LIMIT);
      expect(Math.abs(Number(volts[place]![3]) - allOn.volts)).toBeLessThanOrEqual(LIMIT);
    });
    const cost = Number(namedValue(headless, "price_cost"));
    expect(sellPrice(cost, Number(fields.site_margin))).toBe(namedValue(headless, "price_sell"));
    const rule = fields.site_rounding as RoundingRule;
    const times = namedColumn(headless, "price_times").map(Number);
    const lines = namedColumn(headless, "price_parts").map((part, at) =>
      roundMoney(Number(part), 2, rule, times[at]),
    );
    expect(namedColumn(headless, "price_lines")).toEqual(lines);
    const taxable = Number(namedValue(headless, "price_taxable"));
    const tax = roundMoney(taxable, 2, rule, Number(fields.site_tax));
    expect(namedValue(headless, "price_tax")).toBe(tax);
  });

  test("every call of ours as Excel makes it, over the whole of what it spills", () => {
    const off: string[] = [];
    let compared = 0;
    let calls = 0;
    for (const { name: sheet, cells, results } of headless.sheets) {
      for (const [at, { formula }] of Object.entries(cells)) {
        const answer = formula === undefined ? undefined : asExcelCalls(headless, sheet, formula);
        if (!answer) continue;
        calls++;
        const { row, column } = parseAddress(at)!;
        answer.forEach((line, down) =>
          line.forEach((value, across) => {
            const shown = results[address(row + down, column + across)];
            compared++;
            const same =
              typeof value === "number"
                ? typeof shown === "number" && Math.abs(shown - value) <= LIMIT * Math.max(1, Math.abs(value))
                : isBookError(shown) || (shown ?? "") === value;
            if (!same) off.push(`${sheet} ${at} ${down},${across}: ${String(value)} and ${String(shown)}`);
          }),
        );
      }
    }
    expect(off).toEqual([]);
    expect(calls).toBeGreaterThanOrEqual(15);
    expect(compared).toBeGreaterThan(outlets * 10);
  });

  test("the desk's model", () => {
    const { compared, off } = apart(headless, new DeskInNode(layOut(multiRoom, inputs)).book());
    expect(off).toEqual([]);
    expect(compared).toBeGreaterThan(outlets * 20);
  });

  withLibreOffice("LibreOffice, which recalculates the office copy", async () => {
    const copy = await writeCopy(headless, "office", { now: new Date(0), version: "test" });
    const theirs = await readXlsx(await recalculated(copy, { to: "xlsx" }));
    for (const name of [
      "rooms_weakest",
      "rooms_slope",
      "heads_spare",
      "work_sum",
      "route_work_sum",
      "price_sections",
    ]) {
      const here = namedRows(headless, name).flat();
      const there = namedRows(theirs, name).flat();
      let compared = 0;
      // The copy leaves out empty rows, so the numbers are held to one another in their order.
      const shown = there.filter((value) => typeof value === "number");
      for (const [index, value] of here.filter((one) => typeof one === "number").entries()) {
        compared++;
        expect(Math.abs(Number(shown[index]) - value)).toBeLessThanOrEqual(
          LIMIT * Math.max(1, Math.abs(value)),
        );
      }
      expect(shown).toHaveLength(compared);
      expect(compared).toBeGreaterThan(0);
    }
    for (const name of MONEY) {
      expect(Number(namedValue(theirs, name)).toFixed(2)).toBe(Number(namedValue(headless, name)).toFixed(2));
    }
    expect(namedValue(theirs, "checks_failed")).toBe(namedValue(headless, "checks_failed"));
  });
});
