/** Outlets of the sheet Rooms, each with its plate and what is connected to it. */
import { nameKey } from "../engine/signal/nameKey";
import type { Book } from "../workbooks/book";
import { keysThatCount, type KeyThatCounts } from "../workbooks/multiRoom/keysThatCount";
import { filledRows, numberOf, textOf, type Row } from "./columns";
import { placeholder, type Outlet } from "./items";
import { cornersOf, sentenceOf, spanOf, troublesOf, type PortsTaken } from "./rowFigures";

const TROUBLES = {
  check_row: "see Rooms",
  check_level: "level",
  check_slope: "steep",
  check_noise: "C/N low",
  check_commands: "commands",
  check_bands: "bands",
  check_connectors: "connectors",
  check_applied: "volts",
  check_port: "open port",
} as const;

/** @param taken ports of each part that something hangs on */
export function readOutlets(book: Book, rows: readonly Row[], taken: PortsTaken): Outlet[] {
  const loops = new Set(
    filledRows(book, "plates", "name")
      .filter(({ at }) => numberOf(at("through_low")) !== undefined)
      .map(({ at }) => nameKey(textOf(at("name")))),
  );
  const counted = keysThatCount(book);
  return rows.map((row): Outlet => {
    const { at } = row;
    const name = textOf(at("outlet"));
    const plate = textOf(at("plate_used"));
    const [least, most] = [numberOf(at("weakest")), numberOf(at("strongest"))];
    const corners = cornersOf(row);
    const isLoop = loops.has(nameKey(plate));
    const levels = corners && least !== undefined && most !== undefined ? { least, most } : spanOf(corners);
    // Of a level the verdict's own word says which way.
    const found = troublesOf(row, { ...TROUBLES, check_level: textOf(at("check_level")) });
    const troubles = levels || found.length > 0 ? found : ["unknown"];
    return {
      ...placeholder(name, troubles),
      kind: "outlet",
      from: textOf(at("from")),
      port: textOf(at("place_port")),
      cable: textOf(at("cable_used")),
      length: numberOf(at(counted("run"))),
      corners,
      levels,
      sentence: sentenceOf(row),
      room: [textOf(at("floor")), textOf(at("room"))].filter(Boolean).join(", "),
      plate,
      loops: isLoop,
      ends: isLoop && !taken.has(nameKey(name)) && textOf(at("check_port")) !== "open",
      receiver: receiverOf(counted, row),
      verdict: troubles[0] ?? "ok",
    };
  });
}

/** The user bands first: they are what is looked for. */
function receiverOf(counted: KeyThatCounts, { at }: Row): string {
  const [kind, split, bands] = [counted("receiver"), counted("split"), "place_bands"].map((key) =>
    textOf(at(key)),
  );
  if (kind === "") return "";
  const quantity = numberOf(at(counted("quantity"))) ?? 1;
  const what = [quantity === 1 ? kind : `${quantity} × ${kind}`, split && `by ${split}`]
    .filter(Boolean)
    .join(" ");
  return bands && bands !== NO_BANDS ? `${bands}: ${what}` : what;
}

const NO_BANDS = "none";
