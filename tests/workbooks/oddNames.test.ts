/**
 * A name does not matter to a price. The demonstration's parts, routes, dishes, devices, head units and outlets get names that a
 * spreadsheet program takes for numbers, days, truth values, comparisons and wildcards; the total, the levels and the
 * volts stay what they were: in our engine, and where LibreOffice computes the frozen file.
 */
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { recalculate } from "../../src/hosts/headless/recalculate";
import type { Book } from "../../src/workbooks/book";
import type { JobInputs } from "../../src/workbooks/definition";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { summarise } from "../../src/workbooks/multiRoom/summarise";
import { namedColumn, namedValue } from "../../src/workbooks/named";
import { referencePrice, type Job } from "../support/referencePrice";
import { recalculated, withLibreOffice } from "../support/tools";

/** Pairs that are one to COUNTIF, days, truth values, comparisons: each its own name to a person. */
const ODD = [
  ...[
    "007",
    "7",
    "07.0",
    "1E5",
    "100000",
    "3-16",
    "16/3",
    "1-1",
    "12/4",
    "1/2",
    "0.5",
    "50%",
    "TRUE",
    "FALSE",
  ],
  ...["<5", ">=1", "<>", "=7", "-3", "+4", "1,5", "1.5", "12:30", "0:30", "$5", "5", "00", "0", "0x1F"],
  ...[
    "1e3",
    "1000",
    "2026-11-27",
    "46353",
    "27.11.2026",
    "Mar 16",
    "(8)",
    "-8",
    "_7",
    "__7",
    "1 000",
    "8.",
    "8",
  ],
];
/** Each stands for others to a lookup. */
const WILD = ["*", "?", "~", "a*", "ab", "a?", "~*", "a~b"];

/** What is a name in its block, and where the names stand again. */
const NAMES: Readonly<Record<string, string>> = {
  cables: "name",
  passives: "name",
  units: "name",
  supplies: "name",
  plates: "name",
  fittings: "name",
  feeds: "name",
  resistors: "name",
  routes: "name",
  dishes: "name",
  branches: "id",
  heads: "id",
  rooms: "outlet",
};
const STAND_IN: Readonly<Record<string, readonly string[]>> = {
  branches: ["from", "device", "cable", "route"],
  heads: ["type", "dish", "supply", "cable", "route"],
  dishes: ["feed", "part"],
  feeders: ["from", "to", "cable", "route"],
  rooms: ["from", "cable", "plate", "route", "split"],
};
const USUAL = ["site_usual_cable", "site_usual_plate", "site_usual_route", "site_closes"];

/** @param nth tells which odd name comes first, so that each name meets others */
function renamed(odd: readonly string[], nth: number): JobInputs {
  const blocks = guestHouse.blocks!;
  const names = Object.entries(NAMES).flatMap(([block, key]) =>
    blocks[block]!.map((row) => String(row[key])),
  );
  const known = new Map<string, string>();
  const step = (index: number): string => {
    const one = odd[(index + nth) % odd.length]!;
    const round = Math.floor(index / odd.length);
    return round === 0 ? one : `${one}${"0".repeat(round)}`;
  };
  const used = new Set<string>();
  let at = 0;
  for (const name of new Set(names)) {
    let wanted = step(at++);
    // Names that differ in case only are one to every program.
    while (used.has(wanted.toLowerCase())) wanted = step(at++);
    used.add(wanted.toLowerCase());
    known.set(name, wanted);
  }
  const row = (block: string) => (one: Readonly<Record<string, number | string>>) =>
    Object.fromEntries(
      Object.entries(one).map(([key, value]) => [
        key,
        key === NAMES[block] || STAND_IN[block]?.includes(key) ? (known.get(String(value)) ?? value) : value,
      ]),
    );
  const fields = guestHouse.fields!;
  return {
    ...guestHouse,
    fields: {
      ...fields,
      ...Object.fromEntries(USUAL.map((name) => [name, known.get(String(fields[name]))!])),
    },
    blocks: Object.fromEntries(Object.entries(blocks).map(([block, rows]) => [block, rows.map(row(block))])),
  };
}

const FIGURES = [
  "rooms_level_low_cold",
  "rooms_level_high_hot",
  "heads_fed_off",
  "heads_fed_least",
  "heads_fed_tuners",
  "dishes_seen_volts",
  "feeders_together",
  "cables_bought_quantity",
  "passives_bought_quantity",
  "units_bought_quantity",
  "supplies_bought_quantity",
  "plates_bought_quantity",
  "feeds_bought_quantity",
  "resistors_bought_quantity",
  "fittings_bought_quantity",
  "route_work_length",
];
const figures = (book: Book) => ({
  total: Number(namedValue(book, "quote_total")).toFixed(2),
  ...Object.fromEntries(FIGURES.map((name) => [name, namedColumn(book, name).map(rounded)])),
});
const rounded = (value: unknown): unknown =>
  typeof value === "number" ? Number(value.toFixed(6)) : (value ?? "");

/** What the figures are with plain names; of the total a program of the tests' own has the last word. */
const plain = figures(recalculate(layOut(multiRoom, guestHouse)));
test("with its own names the demonstration costs what a reference says", () => {
  expect(plain.total).toBe(referencePrice(guestHouse as unknown as Job).total);
});

const lookedAt = (book: Book, what: string): unknown =>
  summarise(book).checks.find((check) => check.what === what)?.result;

test.each([0, 1, 13, 29])("names that look like numbers, days and comparisons, from the %s. on", (nth) => {
  const book = recalculate(layOut(multiRoom, renamed(ODD, nth)));
  expect(figures(book)).toEqual(plain);
  expect(lookedAt(book, "Names with *, ? or ~")).toBe("ok");
});

withLibreOffice("LibreOffice computes the frozen file to the same figures", async () => {
  const book = recalculate(layOut(multiRoom, renamed(ODD, 0)));
  const again = await readXlsx(await recalculated(await writeXlsx(book, { frozen: true }), { to: "xlsx" }));
  expect(figures(again)).toEqual(plain);
});

describe("names with the signs of wildcards", () => {
  const inputs = renamed([...WILD, ...ODD], 0);

  test("a check names them: a lookup may take one for another", () => {
    const book = recalculate(layOut(multiRoom, inputs));
    expect(lookedAt(book, "Names with *, ? or ~")).toBe("look");
  });

  withLibreOffice("whatever LibreOffice makes of them, the check stands beside it", async () => {
    const book = recalculate(layOut(multiRoom, inputs));
    const again = await readXlsx(await recalculated(await writeXlsx(book, { frozen: true }), { to: "xlsx" }));
    expect(lookedAt(again, "Names with *, ? or ~")).toBe("look");
  });
});
