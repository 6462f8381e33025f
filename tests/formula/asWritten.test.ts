/**
 * What is made of formulas as people and other programs write them. The cases were
 * written by hand, before the reader: tests/fixtures/formulas/README.md.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import { rangeOf } from "../../src/formula/address";
import { callIn } from "../../src/formula/callIn";
import { callsUs } from "../../src/formula/callsUs";
import { namesIn } from "../../src/formula/namesIn";
import { readAreas } from "../../src/formula/readAreas";
import { sameFormula } from "../../src/formula/sameFormula";
import { shiftedFormula } from "../../src/formula/shiftedFormula";
import { fromStoredFormula, toStoredFormula } from "../../src/formula/storedFormula";

interface Written {
  reads: { by: string; formula: string; ours: boolean; names: string[]; areas: string[]; call: unknown }[];
  same: { by: string; one: string; other: string }[];
  different: { why: string; one: string; other: string }[];
  stored: { seen: string; stored: string }[];
  readBack: { by: string; stored: string; seen: string }[];
  shifted: { formula: string; rows: number; columns: number; gives: string }[];
}

const written = JSON.parse(
  readFileSync(path.join(__dirname, "../fixtures/formulas/asWritten.json"), "utf8"),
) as Written;

const book = {
  names: [
    { name: "rooms_run", sheet: "Rooms", range: "B3:B9" },
    { name: "site_tax", sheet: "Site", range: "C4" },
    { name: "sum", sheet: "Site", range: "C9" },
    { name: "größe", sheet: "Site", range: "C7" },
    { name: "price_net", sheet: "Site", range: "C8" },
  ],
  sheets: ["Site", "Rooms", "Head units", "It's"].map((name) => ({ name })),
};

const areas = (formula: string): string[] =>
  readAreas(book, "Rooms", formula).map(({ sheet, zone }) => `${sheet}!${rangeOf(zone)}`);

describe("what a formula calls and reads", () => {
  test.each(written.reads)("$by: $formula", ({ formula, ours, names, areas: wanted, call }) => {
    expect(callsUs(formula)).toBe(ours);
    expect(callIn(formula) ?? null).toEqual(call);
    expect(namesIn(book, formula).map(({ name }) => name)).toEqual(names);
    expect(areas(formula).toSorted()).toEqual(wanted.toSorted());
  });

  test("cells of several sheets are cells of each, whatever their order", () => {
    expect(areas("SUM('Site:Head units'!A1)")).toEqual(["Site!A1", "Rooms!A1", "Head units!A1"]);
    expect(areas("SUM('Head units:Rooms'!A1)")).toEqual(["Rooms!A1", "Head units!A1"]);
  });

  test("a broken formula still tells what it names", () => {
    expect(areas('SUM(rooms_run,B3,"C4"').toSorted()).toEqual(["Rooms!B3", "Rooms!B3:B9"]);
    expect(callsUs("RIG.X(1")).toBe(true);
    expect(callIn("RIG.X(1")).toBeUndefined();
  });
});

describe("the same formula, written by", () => {
  test.each(written.same)("$by: $other", ({ one, other }) => {
    expect(sameFormula(one, other)).toBe(true);
    expect(sameFormula(other, one)).toBe(true);
  });

  test("Excel, with an @ before a name of one cell, where that is known", () => {
    const isOneCell = (name: string): boolean => name.toLowerCase() === "site_tax";
    expect(sameFormula("site_tax*2", "@site_tax*2", isOneCell)).toBe(true);
    expect(sameFormula("rooms_run*2", "@rooms_run*2", isOneCell)).toBe(false);
    expect(sameFormula("INDEX(rooms_run,1,4)", "@INDEX(rooms_run,1,4)")).toBe(true);
    expect(sameFormula("INDEX(rooms_run,0,4)", "@INDEX(rooms_run,0,4)")).toBe(false);
  });

  test("what is no formula, only if it is written alike", () => {
    expect(sameFormula("SUM(A1", "sum( a1")).toBe(true);
    expect(sameFormula("SUM(A1", "SUM(A1)")).toBe(false);
    expect(sameFormula('"a  b', '"a b')).toBe(false);
  });
});

describe("another formula, for", () => {
  test.each(written.different)("$why: $other", ({ one, other }) => {
    expect(sameFormula(one, other)).toBe(false);
    expect(sameFormula(other, one)).toBe(false);
  });
});

describe("the stored form", () => {
  test.each(written.stored)("of $seen", ({ seen, stored }) => {
    expect(toStoredFormula(seen)).toBe(stored);
    expect(fromStoredFormula(stored)).toBe(seen);
  });

  test.each(written.readBack)("$by: $stored", ({ stored, seen }) =>
    expect(fromStoredFormula(stored)).toBe(seen),
  );
});

describe("filled down", () => {
  test.each(written.shifted)("$formula by $rows, $columns", ({ formula, rows, columns, gives }) => {
    expect(shiftedFormula(formula, rows, columns)).toBe(gives);
  });
});
