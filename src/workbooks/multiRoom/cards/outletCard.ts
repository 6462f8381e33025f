/** The card of one outlet: what it should show, and room for what it shows. */
import type { Book, Look } from "../../book";
import { namedColumn } from "../../named";
import { estimate } from "../names";
import { CARD, type Card, type CardPart, type CardShape } from "./cardSheet";
import { filledRows, jobMark, one, range, readerOf, text } from "./cardWords";

export const OUTLET_CARD: CardShape = { rows: 12, columns: 4, across: 2, down: 4 };

/** A line of a card is as wide as the card: what runs further goes on below it, or is cut where no line is left. */
const LONGEST = 56;
const cut = (line: string): string => (line.length > LONGEST ? `${line.slice(0, LONGEST - 1)}…` : line);

export function outletCards(book: Book): Card[] {
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
  return filledRows(book, estimate.rooms.outlet.name).map((row): Card => {
    const word = (key: string): string => text(at(row, key));
    const line = (index: number, value: string, look: Look = CARD.label): CardPart => ({
      row: index,
      column: 0,
      value: cut(value),
      look,
    });
    const predicted = (index: number, label: string, value: string, within: string): CardPart[] => [
      { row: index, column: 0, value: label, look: CARD.label },
      { row: index, column: 1, value, look: CARD.figure },
      { row: index, column: 2, value: within, look: CARD.figure },
      { row: index, column: 3, look: CARD.box },
    ];
    const voltsDue = due.volts[row];
    const note = word("note");
    return [
      { row: 0, column: 0, value: `Outlet ${word("outlet")}`, look: CARD.title },
      { row: 0, column: 3, value: mark, look: { ...CARD.quiet, align: "right" } },
      line(1, [word("floor"), word("room")].filter(Boolean).join(", "), CARD.label),
      line(
        2,
        `${[word("quantity") === "1" ? "" : word("quantity"), word("receiver")].filter(Boolean).join(" × ")}; head unit ${word("head")}, user bands ${word("bands")}`,
      ),
      line(
        3,
        `from ${word("from")} by ${word("cable")}, ${one(at(row, "run"))} ${unit}, to ${word("plate")}`,
      ),
      { row: 4, column: 1, value: "predicted", look: CARD.head },
      { row: 4, column: 2, value: "within ±", look: CARD.head },
      { row: 4, column: 3, value: "measured", look: CARD.head },
      ...predicted(
        5,
        `dBµV at ${one(field(estimate.site.low.name), 0)} MHz`,
        range(due.low_from[row], due.low_to[row]),
        tolerance,
      ),
      ...predicted(
        6,
        `dBµV at ${one(field(estimate.site.high.name), 0)} MHz`,
        range(due.high_from[row], due.high_to[row]),
        tolerance,
      ),
      ...predicted(
        7,
        "volts, unplugged",
        typeof voltsDue === "number" ? one(voltsDue) : "-",
        typeof voltsDue === "number" ? volts : "",
      ),
      line(
        8,
        `Minimum ${one(field(estimate.site.level_low.name), 0)}, maximum ${one(field(estimate.site.level_high.name), 0)} dBµV; predicted level ${word("verdict") || "not found"}.`,
      ),
      line(9, note),
      line(10, "☐ run tested   ☐ receiver connected, then powered   by", CARD.label),
      line(11, "Feed off before a connector is opened.", CARD.quiet),
    ];
  });
}
