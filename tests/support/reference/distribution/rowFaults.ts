/** Rows that are bad by themselves: a name unknown, a figure that is missing there or in the part they name. */
import { isFilled, plain, type Row, type Value } from "../job";
import { cableNamed } from "./cable";
import { numberIn, rowNamed, settingsOf, wordIn, type TableName, type Tables } from "./tables";

const REQUIRED: Readonly<Record<string, readonly string[]>> = {
  splitter: ["ways", "port_low", "port_high"],
  tap: ["ways", "port_low", "port_high", "through_low", "through_high"],
  amplifier: ["gain_low", "gain_high", "noise_figure"],
  equaliser: ["port_low", "port_high"],
  attenuator: ["port_low", "port_high"],
  filter: ["port_low", "port_high"],
  plate: ["port_low", "port_high"],
  "loop plate": ["port_low", "port_high", "through_low", "through_high"],
  supply: ["volts"],
  "head unit": ["bands", "out_low", "out_high", "least_volts", "load", "load_unit"],
  receiver: ["tuners"],
};
const lacks = (part: Row, kind: string): boolean => REQUIRED[kind]!.some((key) => !isFilled(part, key));

const isAbove = (one: Value | undefined, other: Value | undefined): boolean =>
  typeof one === "number" && typeof other === "number" && one > other;

/** Kinds of receiver that need no row: one tuner, or as many as are counted. */
const KNOWN_RECEIVER = /^(receiver|(receiver|recorder), ?\d{1,2} tuners?)$/;

export function ownFaults(tables: Tables): Map<Row, string> {
  const settings = settingsOf(tables);
  const faults = new Map<Row, string>();
  const filled = (table: TableName, key: string): Row[] => tables[table].filter((row) => isFilled(row, key));
  const check = (row: Row, whats: readonly (string | false | undefined)[]): void => {
    const what = whats.find((one) => one);
    if (what) faults.set(row, what);
  };
  const hasNoCable = (row: Row, length: string): boolean =>
    numberIn(row, length, 0) > 0 &&
    !cableNamed(tables, String(isFilled(row, "cable") ? row.cable : settings.cable));
  /** A part that is named must be there, with all of its figures. */
  const isSpoiled = (
    table: TableName,
    key: string,
    name: Value | undefined,
    kindOf: (part: Row) => string,
  ): boolean => {
    if (name === undefined || name === "") return false;
    const part = rowNamed(tables[table], key, name);
    return !part || lacks(part, kindOf(part));
  };

  for (const row of filled("head_units", "head"))
    check(row, [
      (!isFilled(row, "kind") || isSpoiled("head_unit_kinds", "kind", row.kind, () => "head unit")) && "kind",
      isSpoiled("supplies", "supply", row.supply, () => "supply") && "supply",
      hasNoCable(row, "length") && "cable",
    ]);
  const deviceKind = (part: Row): string => wordIn(part, "kind", "splitter");
  for (const row of filled("devices", "device")) {
    const supply = rowNamed(tables.supplies, "supply", row.part);
    const part = rowNamed(tables.device_parts, "part", row.part);
    check(row, [
      !part && !supply && "part",
      part && lacks(part, deviceKind(part)) && "part",
      !part &&
        supply &&
        (lacks(supply, "supply") || wordIn(supply, "stands") === "at the head unit") &&
        "part",
      hasNoCable(row, "length") && "cable",
    ]);
  }
  for (const row of filled("outlets", "outlet")) {
    const { split_by, shortest, longest } = tables.outlet_details[tables.outlets.indexOf(row)] ?? {};
    const plate = isFilled(row, "plate") ? row.plate : settings.plate;
    const plateKind = (part: Row): string =>
      isFilled(part, "through_low") || isFilled(part, "through_high") ? "loop plate" : "plate";
    const isKnown = KNOWN_RECEIVER.test(wordIn(row, "receiver"));
    check(row, [
      isSpoiled("plates", "plate", plate, plateKind) && "plate",
      isSpoiled("device_parts", "part", split_by, deviceKind) && "what splits it",
      !isFilled(row, "run") && "run",
      isAbove(shortest, row.run) && "shortest",
      isAbove(row.run, longest) && "longest",
      hasNoCable(row, "run") && "cable",
      !isKnown && isSpoiled("receivers", "kind", row.receiver, () => "receiver") && "receiver",
    ]);
  }
  return faults;
}

/** Rows of one name: which of them is meant cannot be told, so that none has a place. */
export function namedAlike(tables: Tables): Row[] {
  const rows = new Map<string, Row[]>();
  for (const [table, key] of [
    ["head_units", "head"],
    ["devices", "device"],
    ["outlets", "outlet"],
  ] as const)
    for (const row of tables[table].filter((one) => isFilled(one, key)))
      rows.set(plain(row[key]), [...(rows.get(plain(row[key])) ?? []), row]);
  return [...rows.values()].flatMap((some) => (some.length > 1 ? some : []));
}
