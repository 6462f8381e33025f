/** Devices and inserters of the sheet Distribution. */
import type { DeviceKind } from "../engine/distribution/parts";
import { nameKey } from "../engine/signal/nameKey";
import type { Book } from "../workbooks/book";
import { estimate } from "../workbooks/multiRoom/names";
import { DEVICE_KINDS } from "../workbooks/multiRoom/names/parts";
import { namedValue } from "../workbooks/named";
import { figure, filledRows, numberOf, textOf, type Row } from "./columns";
import { placeholder, type Device, type OpenPorts } from "./items";
import { cornersOf, sentenceOf, spanOf, THROUGH, troublesOf, type PortsTaken } from "./rowFigures";

const TROUBLES = {
  check_row: "see Distribution",
  check_power: "short of volts",
  check_current: "too much current",
  check_output: "output too high",
  check_port: "open port",
} as const;

/** @param taken ports of each part that something hangs on */
export function readDevices(book: Book, rows: readonly Row[], taken: PortsTaken): Device[] {
  const kinds = new Map<string, DeviceKind>(
    filledRows(book, "supplies", "name").map((row) => [nameKey(textOf(row.at("name"))), "inserter"]),
  );
  const closes = textOf(namedValue(book, estimate.site.closes.name));
  for (const row of filledRows(book, "passives", "name")) {
    const kind = DEVICE_KINDS.find((one) => one === textOf(row.at("kind")));
    kinds.set(nameKey(textOf(row.at("name"))), kind ?? "splitter");
  }
  return rows.map((row): Device => {
    const { at } = row;
    const corners = cornersOf(row);
    const [most, limit] = ["level_greatest", "level_limit"].map((key) => numberOf(at(key)));
    const [name, part] = [textOf(at("id")), textOf(at("device"))];
    const shape = kinds.get(nameKey(part));
    return {
      ...placeholder(name, troublesOf(row, TROUBLES)),
      kind: "device",
      from: textOf(at("from")),
      port: textOf(at("level_port")),
      cable: textOf(at("cable_used")),
      length: numberOf(at("length")),
      corners,
      levels: spanOf(corners),
      sentence: sentenceOf(row),
      shape,
      part,
      output:
        most === undefined
          ? ""
          : `output ${figure(most)}${limit === undefined ? "" : ` of ${figure(limit)}`}`,
      open: openPorts(numberOf(at("ways")) ?? 0, shape === "tap", taken.get(nameKey(name)) ?? [], closes),
    };
  });
}

/** What nothing hangs on, and what closes it. */
function openPorts(
  ways: number,
  isTap: boolean,
  taken: readonly string[],
  by: string,
): OpenPorts | undefined {
  const through = taken.filter((port) => port === THROUGH).length;
  const open = Math.max(0, ways - (taken.length - through));
  const words = [
    isTap && through === 0 ? "through port" : "",
    open > 0 ? `${open} port${open === 1 ? "" : "s"}` : "",
  ].filter(Boolean);
  return words.length === 0 ? undefined : { words: `${words.join(", ")}: ${by || "open"}`, by };
}
