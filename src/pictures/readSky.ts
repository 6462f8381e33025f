/** Dishes and feeders as the workbook has them. */
import { nameKey } from "../engine/signal/nameKey";
import type { Book } from "../workbooks/book";
import { estimate } from "../workbooks/multiRoom/names";
import { namedColumn, namedValue } from "../workbooks/named";
import { figure, filledRows, numberOf, textOf, type Row } from "./columns";
import { placeholder, type Dish, type Feeder } from "./items";
import { troublesOf } from "./rowFigures";

export interface Sky {
  readonly dishes: readonly Dish[];
  /** Whether they stand on Dishes; else it is the one of Site. */
  readonly given: boolean;
  /** By the key of the head unit's name that they go to, with what they come from. */
  readonly feeders: ReadonlyMap<string, readonly (Feeder & { readonly from: string })[]>;
}

/** What the one dish is called where Dishes has no row: the dish of Site. */
const THE_DISH = "dish";

export function readSky(book: Book): Sky {
  const size = numberOf(namedValue(book, estimate.site.dish.name));
  const slots = namedColumn(book, estimate.slots.slot.name).map(textOf).filter(Boolean).join(" ");
  const dishes = filledRows(book, "dishes", "name").map((row) => dishOf(row, size, slots));
  const feeders = new Map<string, (Feeder & { from: string })[]>();
  for (const { at } of filledRows(book, "feeders", "to")) {
    const key = nameKey(textOf(at("to")));
    const feeder = {
      from: textOf(at("from")),
      slot: textOf(at("slot")),
      cables: numberOf(at("check_cables")),
      cable: textOf(at("cable_used")),
      length: numberOf(at("length")),
    };
    feeders.set(key, [...(feeders.get(key) ?? []), feeder]);
  }
  const theDish: Dish = { ...placeholder(THE_DISH), kind: "dish", size, slots, feed: "", seen: "" };
  const given = dishes.length > 0;
  return { dishes: given ? dishes : [theDish], given, feeders };
}

function dishOf(row: Row, size: number | undefined, slots: string): Dish {
  const { at } = row;
  const [clear, volts] = [numberOf(at("seen_clear")), numberOf(at("seen_volts"))];
  return {
    ...placeholder(textOf(at("name")), troublesOf(row, { seen_row: "see Dishes" })),
    kind: "dish",
    size: numberOf(at("size")) ?? size,
    slots: textOf(at("slots")) || slots,
    feed: textOf(at("feed")),
    seen: [
      clear === undefined ? "" : `C/N ${figure(clear)} dB`,
      volts === undefined ? "" : `${figure(volts)} V`,
    ]
      .filter(Boolean)
      .join(", "),
    sentence: textOf(at("seen_trouble")),
  };
}
