/** What a line of a survey is: an outlet, or one of the lines that people put between them. */
import { textOf, type ImportedLine } from "../imported/table";
import { columnsOf, NEEDED, type Head } from "./heads";

export type LineKind =
  | { readonly kind: "outlet" }
  /** The heads once more, or the foot of a page. */
  | { readonly kind: "repeated" }
  | { readonly kind: "floor"; readonly floor: string }
  | { readonly kind: "total"; readonly name: string };

const TOTAL =
  /^(?:(?:grand|sub)[ -]?)?totals?\b|^sum\b|^(?:zwischen)?summe\b|^insgesamt\b|^gesamt\b|^somme\b|^summa\b|^totale\b|^totaal\b/i;
const COUNT = /^\d+(?: \p{L}+)?$/u;
const PAGE = /^(?:page|seite|pagina|página|sida) ?\d/i;
const FLOOR =
  /\b(?:floor|storey|level|basement|annexe?|geschoss|obergeschoss|erdgeschoss|stockwerk|etage|rez-de-chaussée|piano|våning)\b|étage/i;

export function lineKind(line: ImportedLine, head: Head): LineKind {
  const filled = line.cells.map(textOf).filter((text) => text !== "");
  const first = filled[0] ?? "";
  const outlet = textOf(line.cells[head.columns.get("outlet")!]);
  // An outlet or a room may have such a word in its name: then the line has a name of its own beside it.
  if (TOTAL.test(first) && (outlet === "" || outlet === first || COUNT.test(outlet))) {
    const room = textOf(line.cells[head.columns.get("room") ?? -1]);
    if (outlet !== first || room === "" || COUNT.test(room)) return { kind: "total", name: first };
  }
  if (filled.length === 1) {
    if (PAGE.test(first)) return { kind: "repeated" };
    if (FLOOR.test(first)) return { kind: "floor", floor: first };
  }
  const again = columnsOf(line);
  return NEEDED.every((key) => again.get(key) === head.columns.get(key))
    ? { kind: "repeated" }
    : { kind: "outlet" };
}
