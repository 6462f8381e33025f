/** The card of a dish whose feed is its own: what stands where, what leads down, bonding, alignment and peaking. */
import type { Book, Look } from "../../book";
import { estimate } from "../names";
import { CARD, COLUMNS, type Card, type CardPart, type CardShape } from "./cardSheet";
import { cut, filledRows, jobMark, one, readerOf, text } from "./cardWords";
import { dishesOf, type DishOnCard } from "./dishesOf";
import { pointingPart } from "./pointingPart";

export const DISH_CARD: CardShape = { rows: 23, columns: COLUMNS.length, across: 1, down: 2 };

/** Lines for feeders and for conductors. */
const FEW = 3;

export const ROOF_CAUTIONS = [
  "Falls: safe footing, the right gear, a second person. Overhead lines: keep mast, ladder and cable well clear. Stop in wind and lightning.",
  "Bonding, lightning protection and mains: local code and licensed practice decide. Supply off before it is opened. Not a safety certificate.",
] as const;

export function dishCards(book: Book): Card[] {
  return dishesOf(book)
    .filter(({ feed }) => feed !== "")
    .map((dish) => cardOf(book, dish));
}

function cardOf(book: Book, dish: DishOnCard): Card {
  const left = (row: number, value: string, look: Look = CARD.label): CardPart => ({
    row,
    column: 0,
    value: cut(value),
    look,
  });
  const list = (from: number, lines: readonly string[], none: string): CardPart[] =>
    (lines.length === 0 ? [none] : shortened(lines)).map((line, index) => left(from + index, line));
  return [
    { row: 0, column: 0, value: `Dish ${dish.name}`, look: CARD.title },
    { row: 0, column: COLUMNS.length - 1, value: jobMark(book), look: { ...CARD.quiet, align: "right" } },
    left(1, `${dish.size} m, for ${dish.slots}`),
    left(2, `Feed: ${dish.feed}${dish.offFocus ? `; ${dish.offFocus} dB off the focus` : ""}`),
    left(3, `Location: ${dish.location || "not given"}`),
    left(
      4,
      `Mounting: ${dish.mounting || "not given"}${dish.height ? `; ${dish.height} m above ground` : ""}`,
    ),
    left(
      5,
      dish.clear
        ? `Carrier to noise at its feed, clear sky: ${dish.clear} dB`
        : "Carrier to noise at its feed: not asked",
    ),
    left(6, dish.volts ? `Volts at its feed, predicted: ${dish.volts}` : "Volts at its feed: not predicted"),
    left(8, "Feeders", CARD.heading),
    ...list(9, feedersOf(book, dish.name), "none on Dishes"),
    left(13, "Bonding conductors", CARD.heading),
    ...list(14, dish.conductors, "none on Bonding: ask before the dish is fitted"),
    left(18, "While aiming", CARD.heading),
    left(19, "The meter powers the feed; the switch's cables are off."),
    ...pointingPart(book, dish.row),
    ...ROOF_CAUTIONS.map((line, index): CardPart => ({
      row: 21 + index,
      column: 0,
      value: line,
      look: CARD.quiet,
    })),
  ];
}

const shortened = (lines: readonly string[]): readonly string[] =>
  lines.length <= FEW ? lines : [...lines.slice(0, FEW - 1), `and ${lines.length - FEW + 1} more`];

/** How many cables lead where, and each of them by its cable and length. */
export function feedersOf(book: Book, from: string, key: "from" | "to" = "from"): string[] {
  const { feeders, site } = estimate;
  const { at, field } = readerOf(book, "feeders");
  const unit = text(field(site.unit.name));
  const same = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();
  return filledRows(book, feeders.to.name)
    .filter((row) => same(text(at(row, key)), from))
    .map((row) => {
      const slot = text(at(row, "slot"));
      const other = text(at(row, key === "from" ? "to" : "from"));
      return `${one(at(row, "check_cables"), 0)} ${key === "from" ? "to" : "from"} ${other}${slot ? ` for ${slot}` : ""}: ${text(at(row, "cable_used"))}, ${one(at(row, "length"))} ${unit}`;
    });
}
