/** The card of one outlet: what it should show, and room for what it shows. */
import type { Named } from "../../../formula/build";
import type { Book, Look } from "../../book";
import { namedColumn, namedValue } from "../../named";
import { keysThatCount, type KeyThatCounts } from "../keysThatCount";
import { estimate } from "../names";
import { boxAt, CARD, type Card, type CardPart, type CardShape } from "./cardSheet";
import { cut, filledRows, jobMark, one, range, readerOf, text } from "./cardWords";

export const OUTLET_CARD: CardShape = { rows: 12, columns: 4, across: 2, down: 4 };

export function outletCards(book: Book): Card[] {
  const { rooms } = estimate;
  const { at, field } = readerOf(book, "rooms");
  const due = {
    low_from: namedColumn(book, estimate.commission.low_from.name),
    low_to: namedColumn(book, estimate.commission.low_to.name),
    high_from: namedColumn(book, estimate.commission.high_from.name),
    high_to: namedColumn(book, estimate.commission.high_to.name),
    volts: namedColumn(book, estimate.commission.volts_due.name),
  };
  const mark = jobMark(book);
  const [tolerance, volts] = [
    one(field(estimate.commissioningLimits.tolerance.name)),
    one(field(estimate.commissioningLimits.volts_tolerance.name)),
  ];
  const unit = text(field(estimate.site.unit.name));
  const onward = onwardOf(book);
  const counted = keysThatCount(book);
  return filledRows(book, estimate.rooms.outlet.name).map((row): Card => {
    const word = (key: string): string => text(at(row, key));
    const counts = (key: Parameters<KeyThatCounts>[0]) => at(row, counted(key));
    const line = (index: number, value: string, look: Look = CARD.label): CardPart => ({
      row: index,
      column: 0,
      value: cut(value),
      look,
    });
    const predicted = (
      index: number,
      label: string,
      value: string,
      within: string,
      into: Named,
    ): CardPart[] => [
      { row: index, column: 0, value: label, look: CARD.label },
      { row: index, column: 1, value, look: CARD.figure },
      { row: index, column: 2, value: within, look: CARD.figure },
      boxAt(index, 3, { columns: [into], row: row - 1 }),
    ];
    const voltsDue = due.volts[row];
    return [
      { row: 0, column: 0, value: `Outlet ${word("outlet")}`, look: CARD.title },
      { row: 0, column: 3, value: mark, look: { ...CARD.quiet, align: "right" } },
      line(1, [word("floor"), word("room")].filter(Boolean).join(", "), CARD.label),
      line(
        2,
        [
          connected(text(counts("quantity")), text(counts("receiver"))),
          text(counts("split")) === "" ? "" : `split by ${text(counts("split"))}`,
          word("place_head") === "" ? "" : `head unit ${word("place_head")}, output ${word("place_output")}`,
        ]
          .filter(Boolean)
          .join("; "),
      ),
      line(3, bandsInWords(word("place_bands"), word("place_centres"))),
      line(
        4,
        `from ${word("from")}${portInWords(word("place_port"))}: ${word("cable_used")}, ${one(counts("run"))} ${unit}; ${word("plate_used") || "no plate"}`,
      ),
      { row: 5, column: 1, value: "predicted", look: CARD.head },
      { row: 5, column: 2, value: "within ±", look: CARD.head },
      { row: 5, column: 3, value: "measured", look: CARD.head },
      ...predicted(
        6,
        `dBµV at ${one(field(estimate.site.low.name), 0)} MHz`,
        range(due.low_from[row], due.low_to[row]),
        tolerance,
        rooms.built_low,
      ),
      ...predicted(
        7,
        `dBµV at ${one(field(estimate.site.high.name), 0)} MHz`,
        range(due.high_from[row], due.high_to[row]),
        tolerance,
        rooms.built_high,
      ),
      ...predicted(
        8,
        "volts, unplugged",
        typeof voltsDue === "number" ? one(voltsDue) : "-",
        typeof voltsDue === "number" ? volts : "",
        rooms.built_volts,
      ),
      line(
        9,
        [
          `${one(field(estimate.site.level_low.name), 0)} to ${one(field(estimate.site.level_high.name), 0)} dBµV; predicted ${VERDICTS[word("verdict")] ?? (word("verdict") || "not found")}`,
          typeof at(row, "level_own") === "number" ? `least in its bands ${one(at(row, "level_own"))}` : "",
        ]
          .filter(Boolean)
          .join("; "),
      ),
      line(10, [onward(row), word("note")].filter(Boolean).join("; ")),
      line(11, "Feed off before a connector is opened; power last.", CARD.quiet),
    ];
  });
}

/** Verdicts that say too little alone. */
const VERDICTS: Readonly<Record<string, string>> = {
  bad: "not: see Rooms",
  dead: "dead: it cannot command",
  steep: "too steep",
  "too many": "too many receivers",
  "left open": "a port left open",
  "passes power": "an end resistor on power",
};

/** What hangs on the through port of an outlet, or what closes it. */
function onwardOf(book: Book): (row: number) => string {
  const { rooms, plates, site } = estimate;
  const column = ({ name }: Named): string[] => namedColumn(book, name).map(text);
  const [outlets, from, used, names, through] = [
    rooms.outlet,
    rooms.from,
    rooms.plate_used,
    plates.name,
    plates.through_low,
  ].map(column) as [string[], string[], string[], string[], string[]];
  const loops = new Set(names.filter((_, row) => through[row] !== ""));
  const fedFrom = new Map<string, string>();
  from.forEach((name, row) => {
    if (!fedFrom.has(name.toLowerCase())) fedFrom.set(name.toLowerCase(), outlets[row]!);
  });
  const closes = text(namedValue(book, site.closes.name));
  return (row) => {
    if (!loops.has(used[row]!)) return "";
    const next = fedFrom.get(outlets[row]!.toLowerCase());
    return `through port: ${next === undefined ? closes || "open" : `on to ${next}`}`;
  };
}

const connected = (quantity: string, receiver: string): string =>
  receiver === ""
    ? "spare"
    : [["", "1"].includes(quantity) ? "" : quantity, receiver].filter(Boolean).join(" × ");

const portInWords = (port: string): string =>
  port === "" ? "" : port === "through" ? ", through port" : `, port ${port}`;

/** Each user band with its centre; the numbers alone where the plan has none. */
function bandsInWords(bands: string, centres: string): string {
  if (bands === "" || bands === "none") return "no user band";
  const [numbers, frequencies] = [bands, centres].map((list) => list.split(",").map((one) => one.trim()));
  return `user band ${numbers!.map((band, index) => (frequencies![index] ? `${band}: ${frequencies![index]} MHz` : band)).join("; ")}`;
}
