/** Each dish by itself on Sightline, Alignment and Bonding: its slots, its obstacle, its conductors. */
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { recalculate } from "../../src/hosts/headless/recalculate";
import type { Book } from "../../src/workbooks/book";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { summarise } from "../../src/workbooks/multiRoom/summarise";
import { namedColumn, namedValue } from "../../src/workbooks/named";
import { heldTo } from "../support/heldTo";
import { jobOnSheets } from "../support/jobsOnSheets";
import { referenceAngles, referencePair } from "../support/referenceSight";
import { recalculated, withLibreOffice } from "../support/tools";

type Row = Readonly<Record<string, string | number>>;

/** The job of two dishes, three slots of which 97W and 113W are on one. */
function job(blocks: Readonly<Record<string, readonly Row[]>> = {}): Book {
  const start = jobOnSheets("6-two-dishes");
  return recalculate(layOut(multiRoom, { ...start, blocks: { ...start.blocks, ...blocks } }));
}
const dishes = (more: Readonly<Record<string, Row>> = {}): Row[] =>
  jobOnSheets("6-two-dishes").blocks!.dishes!.map((row) => ({ ...row, ...more[String(row.name)] }));
const shown = (book: Book, name: string): unknown[] =>
  namedColumn(book, name).filter((value) => value !== "" && value !== undefined);
const check = (book: Book, what: string) => summarise(book).checks.find((one) => one.what === what)!;

const SITE = [36.2, -104.5] as const;
const HEIGHT_M = 1500;

const held = heldTo({
  what: "aims",
  source: "vectors on the ellipsoid (tests/support/referenceSight.ts)",
  basis: "derivation",
  unit: "deg",
});

test("a dish looks at the middle of its two slots, or at its one", () => {
  const book = job();
  const pair = referencePair(...SITE, [-97, -113], HEIGHT_M);
  const one = referenceAngles(...SITE, -77, HEIGHT_M);
  expect(shown(book, "aims_dish")).toEqual(["D1", "D2"]);
  const [azimuths, elevations] = ["aims_to_azimuth", "aims_to_elevation"].map((name) => shown(book, name));
  held.row("D1 azimuth", Number(azimuths![0]), pair.azimuth, 1e-6);
  held.row("D1 elevation", Number(elevations![0]), pair.elevation, 1e-6);
  held.row("D2 azimuth", Number(azimuths![1]), one.azimuth, 1e-6);
  held.row("D2 elevation", Number(elevations![1]), one.elevation, 1e-6);
  held.row("D1 tilt", Number(shown(book, "aims_tilt")[0]), pair.tilt, 1e-3);
  // One slot needs no tilt.
  expect(shown(book, "aims_tilt")).toHaveLength(1);
  expect(shown(book, "aimed_a")).toEqual(["97W", "77W"]);
  expect(shown(book, "aimed_b")).toEqual(["113W"]);
});

test("no row on Dishes: one dish for the first two slots of Site", () => {
  const book = job({ dishes: [], feeders: [] });
  expect(shown(book, "aims_dish")).toEqual(["dish"]);
  expect([shown(book, "aims_a"), shown(book, "aims_b")]).toEqual([["97W"], ["113W"]]);
  expect(namedValue(book, "peaks_elevation")).toBeCloseTo(
    referencePair(...SITE, [-97, -113], HEIGHT_M).elevation,
    6,
  );
});

describe("obstacles", () => {
  const OWN = "Dishes whose beam does not clear their own obstacle";
  const SLOTS = "Slots that the beam does not clear";
  test("a dish that gives one of its own is judged by it, and by none of Site", () => {
    // 77W stands at 39.0 deg; 3 deg are wanted over the obstacle.
    const [low, clear] = [37, 35].map((obstacle) =>
      job({
        dishes: dishes({ D2: { obstacle } }),
        slots: jobOnSheets("6-two-dishes").blocks!.slots!.map((row) =>
          row.slot === "77W" ? { ...row, obstacle: 60 } : row,
        ),
      }),
    ) as [Book, Book];
    expect(check(low, OWN)).toMatchObject({ found: 1, result: "look" });
    expect(shown(low, "aims_verdict")).toEqual(["ok", "low"]);
    expect(check(clear, OWN)).toMatchObject({ found: 0, result: "ok" });
    expect(shown(clear, "aims_verdict")).toEqual(["ok", "ok"]);
    for (const book of [low, clear]) expect(check(book, SLOTS)).toMatchObject({ found: 0, result: "ok" });
  });
  test("where it gives none, that of Site counts, once", () => {
    const book = job({
      slots: jobOnSheets("6-two-dishes").blocks!.slots!.map((row) =>
        row.slot === "77W" ? { ...row, obstacle: 60 } : row,
      ),
    });
    expect(check(book, SLOTS)).toMatchObject({ found: 1 });
    expect(check(book, OWN)).toMatchObject({ found: 0 });
  });
});

describe("conductors", () => {
  const WHAT = "Dishes without a conductor on Bonding";
  const bond = (more: Row = {}): Row => ({
    where: "mast to earth bar",
    kind: "mast earthing, copper",
    size: 16,
    ...more,
  });
  test("each dish of several is asked for, as advice", () => {
    const book = job({ bonds: [bond({ dish: "d1" }), bond()] });
    expect(shown(book, "bonded_conductors")).toEqual([1, 0]);
    expect(shown(book, "bonded_verdict")).toEqual(["ok", "look"]);
    expect(check(book, WHAT)).toMatchObject({ found: 1, result: "note" });
  });
  test("several for several dishes: none is asked for", () => {
    const book = job({ bonds: [bond({ dish: "D1" }), bond({ dish: "D2" }), bond({ dish: "D2" })] });
    expect(shown(book, "bonded_conductors")).toEqual([1, 2]);
    expect(check(book, WHAT)).toMatchObject({ found: 0, result: "ok" });
  });
  test("with one dish a conductor need not name it", () => {
    const one = jobOnSheets("1-smallest");
    const with_ = (bonds: Row[]) =>
      recalculate(layOut(multiRoom, { ...one, blocks: { ...one.blocks, bonds } }));
    expect(check(with_([bond()]), WHAT)).toMatchObject({ found: 0 });
    expect(check(with_([]), WHAT)).toMatchObject({ found: 1, result: "note" });
  });
});

test("a dish off its aim stands on Diagnosis once, and each outlet of both switches finds it", () => {
  const start = jobOnSheets("2-cascade");
  const due = recalculate(layOut(multiRoom, start));
  const names = namedColumn(due, "rooms_outlet");
  const read = (outlet: unknown, end: "low" | "high"): number =>
    Number(namedColumn(due, `commission_due_${end}`)[names.indexOf(String(outlet))]) - 6;
  const rooms = start.blocks!.rooms!.map((row: Row): Row => ({
    ...row,
    built_low: read(row.outlet, "low"),
    built_high: read(row.outlet, "high"),
  }));
  const book = recalculate(layOut(multiRoom, { ...start, blocks: { ...start.blocks, rooms } }));
  const causes = namedColumn(book, "diagnosis_cause");
  const places = namedColumn(book, "diagnosis_where");
  expect([causes[0], places[0]]).toEqual(["misaligned", "D1"]);
  expect(causes.filter((cause) => cause === "misaligned")).toHaveLength(1);
  // The first switch stands at the other end of the dish's feeders; of the second the dish is two steps away.
  const found = namedColumn(book, "commission_cause");
  for (const { outlet } of rooms)
    expect([outlet, found[names.indexOf(String(outlet))]]).toEqual([
      outlet,
      /^[34]/.test(String(outlet)) ? "misaligned" : expect.any(String),
    ]);
});

withLibreOffice("LibreOffice finds the same of each dish", async () => {
  const book = job({
    dishes: dishes({ D2: { obstacle: 37 } }),
    bonds: [{ where: "mast", kind: "mast earthing, copper", size: 16, dish: "D1" }],
  });
  const again = await readXlsx(await recalculated(await writeXlsx(book, { frozen: true }), { to: "xlsx" }));
  for (const name of [
    ...["aims_dish", "aims_a", "aims_b", "aims_to_azimuth", "aims_clearance", "aims_verdict", "aims_given"],
    ...["sight_obstacle", "sight_clearance", "sight_own", "aimed_compass", "aimed_face", "aimed_tilt"],
    ...["bonded_dish", "bonded_conductors", "bonded_verdict", "peaks_elevation"],
  ]) {
    const ours = namedColumn(book, name);
    namedColumn(again, name).forEach((value, row) => {
      const own = ours[row];
      if (typeof own === "number") expect([name, row, value]).toEqual([name, row, expect.closeTo(own, 9)]);
      else expect([name, row, value ?? ""]).toEqual([name, row, own ?? ""]);
    });
  }
});
