/** Head units and switches as the workbook has them, each with what comes to it from the sky. */
import { nameKey } from "../engine/signal/nameKey";
import type { Book } from "../workbooks/book";
import { estimate } from "../workbooks/multiRoom/names";
import { namedValue } from "../workbooks/named";
import { figure, filledRows, numberOf, textOf, type Row } from "./columns";
import { placeholder, type HeadUnit, type Inlet } from "./items";
import type { Sky } from "./readSky";
import { cornersOf, sentenceOf, spanOf, troublesOf } from "./rowFigures";

const TROUBLES = {
  check_row: "see Head units",
  check_power: "short of volts",
  check_current: "too much current",
  check_input: "input level",
  check_feed: "its feed short of volts",
} as const;

export function readHeadUnits(book: Book, rows: readonly Row[], sky: Sky): HeadUnit[] {
  const kinds = new Map(
    filledRows(book, "units", "name").map((row) => [nameKey(textOf(row.at("name"))), row]),
  );
  const closes = textOf(namedValue(book, estimate.site.closes.name));
  const before = new Set([...sky.feeders.values()].flat().map(({ from }) => nameKey(from)));
  return rows.map((row): HeadUnit => {
    const { at } = row;
    const [name, type] = [textOf(at("id")), textOf(at("type"))];
    const kind = kinds.get(nameKey(type));
    const isSwitch = textOf(kind?.at("sits")) === "fed";
    const last = numberOf(kind?.at("onward_low")) !== undefined && !before.has(nameKey(name));
    const [least, tuners, bands] = ["fed_least", "fed_tuners", "fed_bands"].map((key) => numberOf(at(key)));
    const corners = cornersOf(row, "fed");
    return {
      ...placeholder(name, troublesOf(row, TROUBLES)),
      kind: "head",
      cable: textOf(at("cable_used")),
      length: numberOf(at("length")),
      corners,
      levels: spanOf(corners),
      sentence: sentenceOf(row),
      type,
      isSwitch,
      inlets: isSwitch ? fedFrom(name, sky) : [{ source: onDish(textOf(at("dish")), sky), feeders: [] }],
      supply: textOf(at("supply")),
      volts: `${figure(least)} V, minimum ${figure(numberOf(at("least")))}`,
      tuners: `${figure(tuners, 0)} tuners, ${figure(bands, 0)} bands`,
      onward: last ? { words: `onward ports: ${closes || "open"}`, by: closes } : undefined,
    };
  });
}

function onDish(name: string, { dishes }: Sky): Inlet["source"] {
  if (name === "" && dishes.length === 1) return dishes[0]!;
  return (
    dishes.find((dish) => nameKey(dish.name) === nameKey(name)) ??
    placeholder(name || "no dish", ["not known"])
  );
}

/** By what it comes from, in the order of the feeders. */
function fedFrom(name: string, { dishes, feeders }: Sky): Inlet[] {
  const inlets = new Map<string, Inlet>();
  for (const { from, ...feeder } of feeders.get(nameKey(name)) ?? []) {
    const key = nameKey(from);
    const inlet = inlets.get(key);
    const source = inlet?.source ?? dishes.find((dish) => nameKey(dish.name) === key) ?? placeholder(from);
    inlets.set(key, { source, feeders: [...(inlet?.feeders ?? []), feeder] });
  }
  return inlets.size > 0
    ? [...inlets.values()]
    : [{ source: placeholder("no feeders", ["not fed"]), feeders: [] }];
}
