/**
 * How a sheet prints, both ways. One page wide and any number tall, unless it is to be one; the foot
 * says "Page x of y" in the middle.
 */
import type { HeaderFooter, NamedRange, PageSetup } from "hucre";
import { parseRange } from "../../formula/address";
import type { BookPrint } from "../../workbooks/book";
import { PAGE_MARGINS } from "../../workbooks/pageRoom";
import { MAX_FOOT_SIDE } from "./limits";
import { absoluteRange, onSheet } from "./references";
import { cutText, fromStoredText, toStoredText } from "./storedText";

export function toPageSetup({ paper, orientation, onePage }: BookPrint): PageSetup {
  const fitToHeight = onePage ? 1 : 0;
  return {
    paperSize: paper,
    orientation,
    fitToPage: true,
    fitToWidth: 1,
    fitToHeight,
    margins: PAGE_MARGINS,
  };
}

export function toFoot({ footLeft = "", footRight = "" }: BookPrint, sheet: string): HeaderFooter {
  const side = (text: string): string => {
    const stored = toStoredText(text, `The foot of sheet "${sheet}"`);
    // An ampersand begins a code of the foot; two are one that prints. A cut must not part them.
    for (let most = MAX_FOOT_SIDE; ; most--) {
      const escaped = cutText(stored, most).replace(/&/g, "&&");
      if (escaped.length <= MAX_FOOT_SIDE) return escaped;
    }
  };
  const left = side(footLeft);
  const right = side(footRight);
  return { oddFooter: `${left && `&L${left}`}&CPage &P of &N${right && `&R${right}`}` };
}

/**
 * What prints and which rows repeat, as the format's reserved names. The
 * library would make these itself, but without quotes around a sheet's name
 * that has blanks, which Excel takes for damage.
 */
export function toPrintNames({ area, repeatFrom, repeatTo }: BookPrint, sheet: string): NamedRange[] {
  const names: NamedRange[] = [];
  if (area !== undefined) {
    names.push({
      name: "_xlnm.Print_Area",
      range: absoluteRange(sheet, area, `The print area of sheet "${sheet}"`),
      scope: sheet,
    });
  }
  if (repeatTo !== undefined) {
    const range = onSheet(sheet, `$${repeatFrom ?? repeatTo}:$${repeatTo}`);
    names.push({ name: "_xlnm.Print_Titles", range, scope: sheet });
  }
  return names;
}

/** One code of a foot: a side, a doubled ampersand, a field, or a font, size, colour or style. */
const FOOT_CODE = /&(?:"[^"]*"|K[0-9A-F]{6}|K\d\d[+-]\d{3}|\d+|[A-Z&+-])/gi;

/** The left and right text of a foot; fields and fonts in them are left out. */
function footSides(foot: string): { L: string; R: string } {
  const sides = { L: "", C: "", R: "" };
  let side: keyof typeof sides = "C";
  let from = 0;
  for (const code of foot.matchAll(FOOT_CODE)) {
    sides[side] += foot.slice(from, code.index);
    from = code.index + code[0].length;
    const letter = code[0].slice(1).toUpperCase();
    if (letter === "&") sides[side] += "&";
    else if (letter === "L" || letter === "C" || letter === "R") side = letter;
  }
  sides[side] += foot.slice(from);
  return sides;
}

/** @returns nothing for a sheet that has no print set-up of ours */
export function fromPageSetup(
  setup: PageSetup | undefined,
  foot: HeaderFooter | undefined,
): BookPrint | undefined {
  if (!setup || !(setup.fitToPage || setup.printArea || setup.printTitlesRow)) return undefined;
  // The library parts an area at commas, also at one in the sheet's name; the range is the last piece.
  const area = setup.printArea?.split(",").at(-1);
  const rows = /^\$?(\d+):\$?(\d+)$/.exec(setup.printTitlesRow ?? "");
  const { L: left, R: right } = footSides(foot?.oddFooter ?? "");
  return {
    orientation: setup.orientation ?? "portrait",
    paper: setup.paperSize === "letter" ? "letter" : "a4",
    ...(setup.fitToPage && setup.fitToHeight === 1 && { onePage: true }),
    ...(area && parseRange(area) && { area: area.replace(/\$/g, "") }),
    ...(rows && { repeatFrom: Number(rows[1]), repeatTo: Number(rows[2]) }),
    ...(left && { footLeft: fromStoredText(left) }),
    ...(right && { footRight: fromStoredText(right) }),
  };
}
