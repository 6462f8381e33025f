/** What a line of a survey is: an outlet, or one of the lines that people put between them. */
import { textOf, type ImportedLine } from "../imported/table";
import { isFloorHeading } from "./floorWords";
import { TOTAL } from "./totalWords";
import type { Layout } from "./layout";
import { headsIn } from "./layout";

export type LineKind =
  | { readonly kind: "outlet" }
  /** The heads once more, or the foot of a page. */
  | { readonly kind: "repeated" }
  | { readonly kind: "floor"; readonly floor: string }
  | { readonly kind: "total"; readonly name: string }
  /** Words under or between the outlets, that are no heading. */
  | { readonly kind: "words"; readonly words: string }
  /** It is struck out by a word. */
  | { readonly kind: "struck"; readonly word: string };

const COUNT = /^\d+(?: ?\p{L}+)?$/u;
/** "16 outlets", "Outlets: 16", "16 no." */
export const OUTLETS_SAID =
  /^(?:= ?)?(\d{1,5}) ?(?:outlets?|points?|sockets?|drops?|dosen|antennendosen|prises?|prese|tomas?|uttag|pcs|pieces|stück|stk|no|nos|off|lines?|units?|x)?\.?$|^(?:outlets?|points?|sockets?|dosen|prises?|count|number|anzahl)\s*[:=]?\s*(\d{1,5})$/i;
const PAGE = /^(?:page|seite|pagina|página|sida|blatt|sheet|p\.) ?\d/i;
const AVERAGE = /^(?:average|mean|durchschnitt|mittel|moyenne|avg|ø)\b/i;
const STRUCK =
  /^[([*–-]* ?(?:cancell?ed|deleted|omit(?:ted)?|struck|void|dropped|not (?:needed|required|wanted|to be (?:done|built|installed))|no longer (?:needed|required|wanted)|do not (?:install|count|price|fit)|ignore|entf[äa]llt|gestrichen|storniert|annul[ée]e?s?|supprim[ée]e?s?|anulad[oa]s?|eliminad[oa]s?|annullat[oa]|vervallen|utgår|udgår|removed from (?:scope|list))(?![\p{L}\d])/iu;
const STRUCK_ANYWHERE =
  /\b(?:CANCELL?ED|cancell?ed|entf[äa]llt|gestrichen|annul[ée]e?|struck out|no longer (?:needed|required|wanted))(?![\p{L}\d])/u;
/** A heading is short; what is longer is a remark. */
const LONGEST_HEADING = 32;

export function lineKind(line: ImportedLine, layout: Layout): LineKind {
  const texts = line.cells.map(textOf);
  const filled = texts.filter((text) => text !== "");
  const first = filled[0] ?? "";
  const at = (key: string): string => texts[layout.columns.get(key) ?? -1] ?? "";
  const [outlet, room] = [at("outlet"), at("room")];
  if (isTotal(texts, filled, outlet, room, layout)) return { kind: "total", name: totalName(filled) };
  if (filled.length === 2 && outlet === "" && PAGE.test(filled[1]!)) return { kind: "repeated" };
  if (filled.length === 1) {
    if (PAGE.test(first)) return { kind: "repeated" };
    // "B2" alone may as well be an outlet of which no more is known.
    const isCode =
      texts.indexOf(first) === layout.columns.get("outlet") && /^\p{L}{0,2}[\d./-]+\p{L}?$/u.test(first);
    if (isFloorHeading(first) && !isCode) return { kind: "floor", floor: first.replace(/[\s:]+$/, "") };
  }
  if (outlet === "" && AVERAGE.test(first)) return { kind: "words", words: filled.join(" ") };
  if (headsIn(line, layout)) return { kind: "repeated" };
  const struck = filled.find((text) => STRUCK.test(text) || STRUCK_ANYWHERE.test(text));
  if (struck !== undefined) return { kind: "struck", word: struck };
  if (filled.length === 1 && isRemark(first, layout, texts)) return { kind: "words", words: first };
  return { kind: "outlet" };
}

function isTotal(
  texts: readonly string[],
  filled: readonly string[],
  outlet: string,
  room: string,
  layout: Layout,
): boolean {
  const first = filled[0] ?? "";
  // Nothing but figures, one of them where the runs stand: a sum without a word.
  const run = texts[layout.columns.get("run") ?? -1] ?? "";
  if (
    run !== "" &&
    outlet === "" &&
    room === "" &&
    filled.every((text) => /^[\d.,' ]+ ?(?:m|ft)?$/.test(text))
  )
    return true;
  // An outlet or a room may have such a word in its name: then the line has a name of its own beside it.
  if (TOTAL.test(first) && (outlet === "" || outlet === first || COUNT.test(outlet) || TOTAL.test(outlet))) {
    if (outlet !== first || room === "" || COUNT.test(room)) return true;
  }
  // Further to the right it is one where no outlet is named.
  const note = new Set(layout.notes);
  return (
    (outlet === "" &&
      texts.some((text, index) => index > 0 && !note.has(index) && text.length <= 40 && TOTAL.test(text))) ||
    (filled.length === 1 && /\d/.test(first) && / /.test(first) && OUTLETS_SAID.test(first))
  );
}

const totalName = (filled: readonly string[]): string =>
  filled.find((text) => TOTAL.test(text)) ?? filled[0]!;

/** Words that stand alone: neither an outlet's name nor a room's. */
function isRemark(text: string, { columns }: Layout, texts: readonly string[]): boolean {
  const index = texts.indexOf(text);
  const isName = index === columns.get("outlet") || index === columns.get("run");
  // A whole line that was parted otherwise than the others is an outlet's.
  if ((text.match(/[;,\t|]/g)?.length ?? 0) >= 3) return false;
  const words = text.split(/\s+/).length;
  return (
    words >= 4 ||
    (text.length > LONGEST_HEADING && words > 1) ||
    (!isName && /[.!:]$/.test(text)) ||
    /^[*†‡]|^\d?\)/.test(text)
  );
}
