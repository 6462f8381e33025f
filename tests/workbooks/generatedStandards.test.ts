/**
 * The firm's standards held to a reference of the tests' own (tests/support/reference/small/standards.ts), cell by cell
 * on every sheet: as they begin, as they are demonstrated, and with offers, prices and names drawn from a seed, blanks
 * and bad entries among them. JOB_SEED=17 runs one.
 */
import { recalculate } from "../../src/hosts/headless/recalculate";
import type { JobInputs } from "../../src/workbooks/definition";
import { layOut } from "../../src/workbooks/layOut";
import { standardsWorkbook } from "../../src/workbooks/standards/definition";
import { standardsExample } from "../../src/workbooks/standards/demonstration";
import { standardsStart } from "../../src/workbooks/standards/start";
import { drawn } from "../support/drawn";
import { calculatedCells, compare } from "../support/reference/compare";
import type { Row } from "../support/reference/job";
import { standardsReference } from "../support/reference/small/standards";
import { tries } from "../support/tries";

const ALL_SEEDS = 200;
const seeds =
  process.env.JOB_SEED === undefined
    ? Array.from({ length: tries(8, 14, ALL_SEEDS) }, (_, seed) => seed)
    : [Number(process.env.JOB_SEED)];

const LOOSELY = /^(about_(template|functions)|Checks!E\d+)$/;

function held({ fields = {}, blocks = {} }: JobInputs): void {
  const book = recalculate(layOut(standardsWorkbook, { fields, blocks }));
  const { cells, loosely, differences } = compare(book, standardsReference({ fields, blocks }, book));
  expect(differences).toEqual([]);
  // What is calculated and not compared would be lost from here unseen.
  expect(calculatedCells(book).filter((cell) => !cells.has(cell))).toEqual([]);
  expect([...loosely].filter((name) => !LOOSELY.test(name))).toEqual([]);
}

/** The demonstration's lists with offers of all kinds. */
function filling(seed: number): JobInputs {
  const draw = drawn(5000 + seed);
  const { fields = {}, blocks = {} } = standardsExample;
  const date = Number(fields.standards_date);
  const names = ["cables", "passives", "plates", "fittings", "units"].flatMap((list) =>
    draw
      .shuffled(blocks[list]!)
      .slice(0, 2)
      .map(({ name }) => String(name)),
  );
  const asked = [...names.slice(0, 5), names[0]!.toUpperCase(), "no such part", "7"];
  const maybe = (row: Row, chance = 0.5): Row => (draw.chance(chance) ? row : {});
  const offers = Array.from({ length: draw.whole(0, 24) }, (): Row => {
    if (draw.chance(0.06)) return {};
    return {
      ...maybe({ part: draw.pick(asked) }, 0.97),
      ...maybe({ supplier: draw.pick(["first supplier (demonstration)", "nobody"]) }, 0.9),
      // Few prices, so that some are alike.
      ...maybe({ each: draw.pick([0, 0.39, 4.15, 7.5, 7.5, 12]) }, 0.7),
      ...maybe({ unit: draw.pick(["piece", "m", "ft", "box"]) }),
      ...maybe({ pack: draw.pick([1, 10, 50, 100, 0]) }),
      ...maybe({ pack_price: draw.pick([39, 41.5, 42, 600]) }, 0.4),
      ...maybe({ currency: draw.pick(["EUR", "eur", "XTS"]) }, 0.3),
      ...maybe({ until: date + draw.whole(-60, 60) }, 0.9),
      ...maybe({ pinned: draw.pick(["yes", "no", "maybe"]) }, 0.25),
    };
  });
  const spoilt = Object.fromEntries(
    Object.entries(blocks).map(([list, rows]) => [
      list,
      rows.map((row): Row => {
        if ("price" in row && draw.chance(0.1)) return { ...row, price: draw.pick([0, -1, 38, 5.5]) };
        if ("until" in row && draw.chance(0.1)) return { ...row, until: date - 1 };
        if ("minutes" in row && draw.chance(0.1)) return { ...row, minutes: 0, low: 5 };
        if ("name" in row && draw.chance(0.03)) return { ...row, name: draw.pick(names) };
        return row;
      }),
    ]),
  );
  const others = Object.fromEntries(Object.entries(fields).filter(([name]) => name !== "site_tax_on"));
  return {
    fields: {
      ...(draw.chance(0.2) ? others : fields),
      ...maybe({ site_unit: "ft" }, 0.2),
      ...maybe({ site_margin: 0 }, 0.2),
    },
    blocks: { ...spoilt, offers, ...(draw.chance(0.2) ? { assumptions: [] } : {}) },
  };
}

describe("the firm's standards", () => {
  test("as they begin", () => held(standardsStart));
  test("the demonstration", () => held(standardsExample));
  test.each(seeds)("the filling of seed %i", (seed) => held(filling(seed)));
});
