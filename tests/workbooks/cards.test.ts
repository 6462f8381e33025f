/** The cards for the crew: every figure is the workbook's own, and nothing of a card runs into the next. */
import { recalculate } from "../../src/hosts/headless/recalculate";
import { copyOf } from "../../src/hosts/file/copy/copyOf";
import { parseRange } from "../../src/formula/address";
import type { Book, BookSheet } from "../../src/workbooks/book";
import { layOut } from "../../src/workbooks/layOut";
import { cardsOf } from "../../src/workbooks/multiRoom/cards/cardsOf";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { startingPoint } from "../../src/workbooks/multiRoom/startingPoint";
import { referencePrice, type Job } from "../support/referencePrice";
import { BELOW_V, suppliedBelow } from "../support/suppliedBelow";

const computed = recalculate(layOut(multiRoom, guestHouse));
const cards = cardsOf(computed)!;
const sheet = (name: string): BookSheet => cards.sheets.find((one) => one.name === name)!;
const words = ({ cells }: BookSheet): string[] =>
  Object.values(cells).flatMap(({ value }) => (value === undefined ? [] : [String(value)]));

/** The cells of the card that begins with a title, to the next title of its column. */
function card(of: BookSheet, title: string): string[] {
  const [at] = Object.entries(of.cells).find(([, { value }]) => value === title)!;
  const { top, left } = parseRange(at)!;
  return Object.entries(of.cells).flatMap(([where, { value }]) => {
    const place = parseRange(where)!;
    const inside = place.top >= top && place.top < top + 13 && place.left >= left && place.left < left + 4;
    return inside && value !== undefined ? [String(value)] : [];
  });
}

test("a card for each outlet and each head unit, each with a place to write", () => {
  expect(words(sheet("Outlet cards")).filter((text) => /^Outlet /.test(text))).toHaveLength(24);
  expect(words(sheet("Head unit cards")).filter((text) => /^Head unit H\d$/.test(text))).toHaveLength(3);
  const boxes = Object.values(sheet("Outlet cards").cells).filter(
    ({ look }) => cards.looks[look!]!.edges?.left === "medium",
  );
  expect(boxes).toHaveLength(24 * 3);
});

test("levels are those of the tests' own reference program, with the tolerances of Site", () => {
  const { levels } = referencePrice(guestHouse as unknown as Job);
  const shown = (hot: number, cold: number): string => `${hot.toFixed(1)} to ${cold.toFixed(1)}`;
  for (const outlet of ["G-01", "F-05", "A-07"]) {
    const [lowCold, lowHot, highCold, highHot] = levels.get(outlet)!;
    const own = card(sheet("Outlet cards"), `Outlet ${outlet}`);
    expect(own).toEqual(
      expect.arrayContaining([shown(lowHot!, lowCold!), shown(highHot!, highCold!), "3.0"]),
    );
  }
  // Receivers feed from their outlets, so without them none stand there; from below they do.
  expect(card(sheet("Outlet cards"), "Outlet A-01")).toContain("0.0");
  const below = cardsOf(recalculate(layOut(multiRoom, suppliedBelow)))!.sheets.find(
    ({ name }) => name === "Outlet cards",
  )!;
  expect(card(below, "Outlet G-01")).toContain(BELOW_V.toFixed(1));
  // Below a tap that passes no power there are none either.
  expect(card(below, "Outlet A-01")).toContain("0.0");
});

test("the head unit's card has the reason for the supply, both elevations, and the cautions", () => {
  const text = words(sheet("Head unit cards")).join("\n");
  for (const part of [
    /Give the head unit its minimum volts before aiming\./,
    /On dish D2 0\.90 m, main roof/,
    /Powered by its receivers; 54\.0 m trunk, steel centre/,
    /Minimum 10\.5 V; predicted low\./,
    /one meter or one receiver commands/,
    /off before a connector is/,
    /beam elevation/,
    /rim angle/,
    /declination 3\.5 deg east on 2026-11-02/,
    /Overhead lines/,
    /Bonding, lightning protection and mains: local code/,
    /Not a safety certificate/,
  ]) {
    expect(text).toMatch(part);
  }
});

test("what the crew should know stands on the outlet's card whole", () => {
  const notes = guestHouse.blocks!.rooms!.filter(({ note }) => note);
  expect(notes.length).toBeGreaterThan(0);
  for (const { outlet, note } of notes)
    expect(card(sheet("Outlet cards"), `Outlet ${outlet}`)).toContain(note);
});

test("pages break between cards, never inside one", () => {
  for (const [name, rows] of [
    ["Outlet cards", 4 * 13],
    ["Head unit cards", 2 * 24],
  ] as const) {
    const { print, rowCount } = sheet(name);
    expect(print!.breaks!.every((row) => row % rows === 0)).toBe(true);
    expect(print!.breaks).toHaveLength(Math.ceil(rowCount / rows) - 1);
  }
});

test("the foot names the job; what the workbook does not know is a question mark; no outlets, a sentence", () => {
  const facts = { now: new Date(0), version: "0" };
  const made = copyOf(computed, "cards", facts);
  expect(made.sheets.map(({ print }) => print!.footRight)).toEqual(
    Array(3).fill("D-24, revision 1, 2026-11-02"),
  );
  const broken: Book = recalculate(
    layOut(multiRoom, {
      ...guestHouse,
      blocks: {
        ...guestHouse.blocks,
        rooms: guestHouse.blocks!.rooms!.map((row, index) => (index === 0 ? { ...row, run: -3 } : row)),
      },
    }),
  );
  const outlets = cardsOf(broken)!.sheets.find(({ name }) => name === "Outlet cards")!;
  expect(card(outlets, "Outlet G-01")).toContain("?");
  expect(() => copyOf(recalculate(layOut(multiRoom, startingPoint)), "cards", facts)).toThrow(
    /nothing to make cards of/,
  );
});
