/** Level against frequency: the workbook's own levels at the ends, the equations between them. */
import { levelCurves, type OutletCurves } from "../../src/pictures/levelCurves";
import { levelsPicture } from "../../src/pictures/levelsPicture";
import { spreadOut } from "../../src/pictures/spreadOut";
import type { Book } from "../../src/workbooks/book";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { namedColumn } from "../../src/workbooks/named";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { heldTo } from "../support/heldTo";
import { computed, textsIn, withRow, type Row } from "../support/pictureJobs";

/** Coefficients of our own for each cable, so that the reference needs no table of the product's. */
const OWN = [0.45, 0.38, 0.26, 0.27, 0.6].map((k1, index) => ({
  k1,
  k2: 0.0021 + index * 1e-4,
  k0: 0.05 * index,
}));
const cables = guestHouse.blocks!.cables!.map((row, index): Row => ({ ...row, ...OWN[index]! }));
const book = computed({ blocks: { cables } });
const { low, high, coldest, hottest, curves } = levelCurves(book)!;
const byName = (name: string): OutletCurves => curves.find(({ outlet }) => outlet.name === name)!;

const figures = (block: string, key: string, name: string): Record<string, number> =>
  guestHouse.blocks![block]!.find((row) => row[key] === name) as unknown as Record<string, number>;

/** The path of the demonstration's farthest outlet, written out: H3, amplifier A0, tap A1 (through), splitter A2 (a port), plate. */
function referenceLevel(frequency: number, temperature: number): number {
  const share = (frequency - 950) / 1200;
  const between = (atLow: number, atHigh: number): number => atLow + (atHigh - atLow) * share;
  const cable = (name: string, metres: number): number => {
    const index = guestHouse.blocks!.cables!.findIndex((row) => row.name === name);
    const { k1, k2, k0 } = OWN[index]!;
    return (
      ((k1 * Math.sqrt(frequency) + k2 * frequency + k0) / 100) * metres * (1 + 0.00198 * (temperature - 20))
    );
  };
  const unit = figures("units", "name", "head unit, 8 bands");
  const amplifier = figures("passives", "name", "line amplifier");
  const tap = figures("passives", "name", "tap 12 dB");
  const splitter = figures("passives", "name", "6-way splitter");
  const plate = figures("plates", "name", "single outlet");
  return (
    between(unit.out_low!, unit.out_high!) -
    cable("trunk, steel centre", 54) +
    between(amplifier.gain_low!, amplifier.gain_high!) -
    cable("outdoor drop", 4) -
    between(tap.through_low!, tap.through_high!) -
    cable("outdoor drop", 5) -
    between(splitter.port_low!, splitter.port_high!) -
    cable("thin drop", 46) -
    between(plate.loss_low!, plate.loss_high!)
  );
}

describe("between the ends", () => {
  const held = heldTo({
    what: "levelCurves",
    source: "cable-loss equation and straight lines for devices, added up by hand along one path",
    basis: "derivation",
    unit: "dB",
  });
  test("the farthest outlet, hot and cold, over the whole band", () => {
    const { hot, cold } = byName("A-07");
    for (const { frequency, level } of hot)
      held.row(`hot ${frequency}`, level, referenceLevel(frequency, 55), 1e-9);
    for (const { frequency, level } of cold)
      held.row(`cold ${frequency}`, level, referenceLevel(frequency, -15), 1e-9);
    expect(hot.length).toBeGreaterThan(20);
  });
});

test("at both ends exactly the workbook's own levels", () => {
  expect([low, high, coldest, hottest]).toEqual([950, 2150, -15, 55]);
  expect(curves).toHaveLength(3);
  for (const { outlet, hot, cold } of curves) {
    const at = namedColumn(book, "rooms_outlet").indexOf(outlet.name);
    const corner = (name: string): number => namedColumn(book, `rooms_level_${name}`)[at] as number;
    expect(hot[0]!.level).toBeCloseTo(corner("low_hot"), 10);
    expect(hot.at(-1)!.level).toBeCloseTo(corner("high_hot"), 10);
    expect(cold[0]!.level).toBeCloseTo(corner("low_cold"), 10);
    expect(cold.at(-1)!.level).toBeCloseTo(corner("high_cold"), 10);
  }
});

test("worst, median and best by the weakest level of each outlet", () => {
  const names = namedColumn(book, "rooms_outlet");
  const ranked = namedColumn(book, "rooms_weakest")
    .flatMap((weakest, at) => (typeof weakest === "number" ? [{ weakest, name: names[at] }] : []))
    .sort((a, b) => a.weakest - b.weakest);
  const named = (which: "worst" | "median" | "best") =>
    curves.find((one) => one.which.includes(which))!.outlet.name;
  expect(named("worst")).toBe(ranked[0]!.name);
  expect(named("median")).toBe(ranked[11]!.name);
  expect(named("best")).toBe(ranked[23]!.name);
});

describe("the picture", () => {
  const { svg, description } = levelsPicture(book);

  test("names the three with room, verdict and levels at both ends, and the limits", () => {
    const texts = textsIn(svg);
    for (const { which, outlet, hot, cold } of curves) {
      const failing = outlet.verdict === "ok" ? "" : `, ${outlet.verdict}`;
      expect(texts).toContain(`${which[0]}: ${outlet.name}${failing}`);
      const span = (at: 0 | -1) => `${hot.at(at)!.level.toFixed(1)} to ${cold.at(at)!.level.toFixed(1)}`;
      expect(texts).toContain(`950 MHz ${span(0)}; 2150 MHz ${span(-1)}`);
      expect(description).toContain(
        `${which[0]} outlet ${outlet.name}, ${outlet.verdict}, ${span(0)} dBµV at 950 MHz`,
      );
    }
    for (const words of ["minimum level 47", "maximum level 77", "design floor 53"])
      expect(texts).toContain(words);
  });

  test("says what is taken as a straight line", () => {
    expect(description).toContain("head unit, devices and plates are taken as straight lines");
  });

  test("a failing outlet has heavy dashed lines and its word; a good one neither", () => {
    const failing = levelsPicture(computed());
    expect(textsIn(failing.svg)).toContain("worst: A-07, low");
    expect(failing.svg.match(/stroke-width="2.5" stroke-dasharray/g)).toHaveLength(2);
    const good = levelsPicture(computed({ blocks: { rooms: withRow("outlet", "A-07", { run: 12 }) } }));
    expect(good.svg).not.toContain('stroke-width="2.5"');
  });
});

describe("few outlets, or none", () => {
  const only = (count: number): Book => computed({ blocks: { rooms: (rows) => rows.slice(0, count) } });
  test("one outlet is worst, median and best at once", () => {
    expect(levelCurves(only(1))!.curves.map(({ which }) => which)).toEqual([["worst", "median", "best"]]);
    expect(textsIn(levelsPicture(only(1)).svg)).toContain("worst and median and best: G-01");
  });
  test("two: the lower one is the median too", () => {
    expect(levelCurves(only(2))!.curves.map(({ which }) => which)).toEqual([["worst", "median"], ["best"]]);
  });
  test("none, or no band: says that there is nothing", () => {
    const empty = levelsPicture(recalculate(layOut(multiRoom)));
    expect(empty).toMatchObject({
      empty: true,
      description: expect.stringMatching(/nothing to draw yet/) as string,
    });
    const upsideDown = computed({ fields: { site_low: 2150, site_high: 950 } });
    expect(levelsPicture(upsideDown).empty).toBe(true);
  });
  test("without the cable table: straight lines between the same ends, and it says so", () => {
    const without = { ...book, names: book.names.filter(({ name }) => name !== "cables_table") };
    const straight = levelCurves(without)!;
    for (const [index, one] of straight.curves.entries()) {
      expect(one.straight).toBe(true);
      expect(one.hot).toHaveLength(2);
      expect(one.hot[1]!.level).toBeCloseTo(curves[index]!.hot.at(-1)!.level, 10);
    }
    expect(levelsPicture(without).description).toContain(
      "a straight line where a cable could not be computed",
    );
  });
});

test("lengths in feet are feet", () => {
  const metres = levelCurves(book)!.curves;
  // Without a length a device sits right there.
  const toFeet =
    (...keys: string[]) =>
    (rows: readonly Row[]) =>
      rows.map((row): Row => ({
        ...row,
        ...Object.fromEntries(
          keys.flatMap((key) => (row[key] === undefined ? [] : [[key, Number(row[key]) / 0.3048]])),
        ),
      }));
  const length = toFeet("length");
  const feet = computed({
    fields: { site_unit: "ft" },
    blocks: {
      cables,
      rooms: toFeet("run", "shortest", "longest"),
      branches: length,
      heads: length,
      feeders: length,
    },
  });
  levelCurves(feet)!.curves.forEach(({ hot }, index) => {
    hot.forEach(({ level }, at) => expect(level).toBeCloseTo(metres[index]!.hot[at]!.level, 8));
  });
});

test("labels are moved apart, keep their order and stay inside where they fit", () => {
  expect(spreadOut([10, 12, 300], 40, { from: 0, to: 400 })).toEqual([10, 50, 300]);
  expect(spreadOut([390, 380, 395], 40, { from: 0, to: 400 })).toEqual([320, 280, 360]);
  expect(spreadOut([], 40, { from: 0, to: 10 })).toEqual([]);
});
