/** The card of one head unit: its dish or feeders, supply and level, the order of work; at a dish, alignment and peaking. */
import type { Named } from "../../../formula/build";
import type { Book, BookResult, Look } from "../../book";
import { namedColumn } from "../../named";
import { estimate } from "../names";
import { boxAt, CARD, COLUMNS, RIGHT, type Card, type CardPart, type CardShape } from "./cardSheet";
import { cut, filledRows, inTwoLines, jobMark, one, range, readerOf, text } from "./cardWords";
import { feedersOf, ROOF_CAUTIONS } from "./dishCard";
import { dishesOf, dishInWords, type DishOnCard } from "./dishesOf";
import { pointingPart } from "./pointingPart";

export const HEAD_CARD: CardShape = { rows: 23, columns: COLUMNS.length, across: 1, down: 2 };

/** The order of work; its reasons stand on Commissioning. */
const ORDER = [
  "1 Fit and bond: local code, licensed practice.",
  "2 Give the head unit its minimum volts before aiming.",
  "3 First slot; tilt on the second; then equal drops.",
  "4 While aiming, one meter or one receiver commands it.",
  "5 Each run: lowest, highest frequency, and volts.",
  "6 Feed off before a connector is opened or made.",
] as const;

export function headCards(book: Book): Card[] {
  const { heads } = estimate;
  const { at, field } = readerOf(book, "heads");
  const tolerance = one(field(estimate.commissioningLimits.tolerance.name));
  const volts = one(field(estimate.commissioningLimits.volts_tolerance.name));
  const unit = text(field(estimate.site.unit.name));
  const dishes = dishesOf(book);
  const kindOf = kindsIn(book);
  /** Dishes with a card that has their record of peaking. */
  const pointed = new Set<number>();
  return filledRows(book, heads.id.name).map((row): Card => {
    const word = (key: string): string => text(at(row, key));
    const kind = kindOf(word("type"));
    const dish = kind.isSwitch ? undefined : dishOf(dishes, word("dish"));
    const left = (index: number, value: string, look: Look = CARD.label): CardPart => ({
      row: index,
      column: 0,
      value: cut(value),
      look,
    });
    const predicted = (
      index: number,
      label: string,
      value: string,
      within = "",
      into?: Named,
    ): CardPart[] => [
      left(index, label),
      { row: index, column: 1, value, look: CARD.figure },
      ...(within ? [{ row: index, column: 2, value: within, look: CARD.figure }] : []),
      ...(into ? [boxAt(index, 3, { columns: [into], row: row - 1 })] : []),
    ];
    const level = (end: "low" | "high"): string =>
      range(at(row, `fed_${end}_hot`), at(row, `fed_${end}_cold`));
    const mhz = (end: "low" | "high"): string => `dBµV at ${one(field(estimate.site[end].name), 0)} MHz`;
    const alone = word("fed_outlet");
    const length = at(row, "length");
    const first = dish !== undefined && !pointed.has(dish.row);
    if (dish) pointed.add(dish.row);
    return [
      { row: 0, column: 0, value: `Head unit ${word("id")}`, look: CARD.title },
      { row: 0, column: COLUMNS.length - 1, value: jobMark(book), look: { ...CARD.quiet, align: "right" } },
      left(1, `${word("type")}; ${word("fed_tuners")} tuners on ${word("fed_bands")} user bands`),
      left(
        2,
        dish
          ? `On dish ${dishInWords(dish)}`
          : kind.isSwitch
            ? "A switch: its feeders stand at the right."
            : "On no dish of Dishes",
      ),
      left(
        3,
        [
          word("supply") !== "" ? `Supply ${word("supply")}` : poweredBy(at(row, "fed_off")),
          typeof length === "number" ? `${one(length)} ${unit} ${word("cable_used")}` : "",
        ]
          .filter(Boolean)
          .join("; "),
      ),
      { row: 4, column: 1, value: "predicted", look: CARD.head },
      { row: 4, column: 2, value: "within ±", look: CARD.head },
      { row: 4, column: 3, value: "measured", look: CARD.head },
      ...predicted(5, "volts, all off", one(at(row, "fed_off"))),
      ...predicted(6, "volts, all on", one(at(row, "fed_on"))),
      ...(alone === ""
        ? predicted(7, "volts, least in use", one(at(row, "fed_least")), volts, heads.built_volts)
        : predicted(7, `volts, ${alone} on alone`, one(at(row, "fed_alone")), volts, heads.built_volts)),
      ...predicted(8, "amperes then", one(at(row, "fed_amps"), 2), "", heads.built_amps),
      ...predicted(9, mhz("low"), level("low"), tolerance, heads.built_low),
      ...predicted(10, mhz("high"), level("high"), tolerance, heads.built_high),
      left(
        11,
        `Minimum ${one(at(row, "least"))} V; predicted ${word("check_power") || "not found"}. Levels: cable's end`,
      ),
      ...inTwoLines(`While aiming: ${kind.aiming || "ask the maker how it is read"}.`).map((line, index) =>
        left(12 + index, line),
      ),
      left(14, "Order of work", CARD.heading),
      ...ORDER.map((line, index) => left(15 + index, line)),
      ...(dish
        ? pointingPart(book, dish.row, first)
        : kind.isSwitch
          ? feedersPart(book, word("id"), kind)
          : []),
      ...ROOF_CAUTIONS.map((line, index): CardPart => ({
        row: 21 + index,
        column: 0,
        value: line,
        look: CARD.quiet,
      })),
    ];
  });
}

/** @param allOff its volts with all receivers off */
const poweredBy = (allOff: BookResult | undefined): string =>
  typeof allOff === "number" && allOff >= 1 ? "Powered along its cables" : "Powered by its receivers";

interface Kind {
  readonly isSwitch: boolean;
  /** Whether another switch can hang behind it. */
  readonly hasOnward: boolean;
  readonly aiming: string;
}

function kindsIn(book: Book): (name: string) => Kind {
  const { units } = estimate;
  const [names, sits, aiming, onward] = [units.name, units.sits, units.aiming, units.onward_low].map(
    ({ name }) => namedColumn(book, name).map(text),
  );
  return (name) => {
    const row = names!.indexOf(name);
    return {
      isSwitch: sits![row] === "fed",
      hasOnward: (onward![row] ?? "") !== "",
      aiming: (aiming![row] ?? "").replace(/\.$/, ""),
    };
  };
}

const dishOf = (dishes: readonly DishOnCard[], name: string): DishOnCard | undefined =>
  name === "" && dishes.length === 1
    ? dishes[0]
    : dishes.find((dish) => dish.name.trim().toLowerCase() === name.trim().toLowerCase());

/** What comes to a switch, and what goes on from it. */
function feedersPart(book: Book, name: string, { hasOnward }: Kind): CardPart[] {
  const put = (row: number, value: string, look: Look = CARD.label): CardPart => ({
    row,
    column: RIGHT,
    value: cut(value),
    look,
  });
  const [come, go] = [feedersOf(book, name, "to"), feedersOf(book, name)];
  return [
    put(1, "Feeders that come", CARD.heading),
    ...(come.length === 0 ? ["none on Dishes"] : come.slice(0, MOST)).map((line, index) =>
      put(2 + index, line),
    ),
    put(9, "Feeders that go on", CARD.heading),
    ...(go.length === 0
      ? [hasOnward ? "none: close each of its onward ports" : "none"]
      : go.slice(0, MOST)
    ).map((line, index) => put(10 + index, line)),
    put(17, "Mark both ends of each feeder before it is connected.", CARD.quiet),
    put(18, "Where the dish points, its own card says.", CARD.quiet),
  ];
}

/** Lines that there are for feeders. */
const MOST = 6;
