/**
 * Makes the archive that the library is given out of the one that a person
 * handed over: only the parts that a book is made of, unpacked within their
 * checked sizes, and with three things changed that the library would get wrong.
 */
import { packed, storedPart, unpacked, type ArchiveEntry } from "./archive";
import { checkedGrid } from "./checkedGrid";
import { withErrorsWrittenOut, type ExcelState } from "./excelState";
import { stop, troubles } from "./fileTrouble";
import { findBytes } from "./findBytes";
import { fromXml } from "./markup";
import { MAX_NAMES, MAX_SHEET_COLUMNS, MAX_SLOTS, MAX_STRINGS, MAX_STYLES } from "./limits";
import { aroundCells, type AroundCells } from "./sheetFacts";
import { utf8Part } from "./utf8Part";

/** Pictures, charts, links to other files and the like are not read at all. */
const NEEDED =
  /^(?:\[Content_Types\]\.xml|_rels\/[^/]*\.rels|docProps\/[^/]+\.xml|xl\/(?:_rels\/[^/]+\.rels|[^/]+\.xml|theme\/[^/]+\.xml|comments\/[^/]+\.xml|worksheets\/(?:_rels\/[^/]+\.rels|[^/]+\.xml)))$/i;

const FORMAT_MARK = "rigsheet:";
/** A text in several looks is stored in pieces; so many in the mean are more than people make. */
const PIECES_OF_A_TEXT = 2;

/**
 * Formats that a file names by number only (ECMA-376 part 1, 18.8.30). Those
 * without a text there follow the person's region; a date is shown as ISO 8601.
 */
const BUILT_IN_DATES: Record<number, string> = {
  14: "yyyy-mm-dd",
  15: "d-mmm-yy",
  16: "d-mmm",
  17: "mmm-yy",
  18: "h:mm AM/PM",
  19: "h:mm:ss AM/PM",
  20: "h:mm",
  21: "h:mm:ss",
  22: "yyyy-mm-dd h:mm",
  45: "mm:ss",
  46: "[h]:mm:ss",
  47: "mm:ss.0",
};
for (const id of [27, 28, 29, 30, 31, 32, 33, 34, 35, 36, 50, 51, 52, 53, 54, 55, 56, 57, 58]) {
  BUILT_IN_DATES[id] = "yyyy-mm-dd";
}

/**
 * The library turns a number with a date's format into a date of whole
 * milliseconds, and the number is not the same afterwards. A format in
 * quotes is no date to it; `readFormat` takes the wrapping off.
 */
const wrapped = (format: string): string => `&quot;${FORMAT_MARK}${encodeURIComponent(format)}&quot;`;

export function readFormat(format: string): string {
  const found = /^"rigsheet:(.*)"$/s.exec(format);
  return found ? decodeURIComponent(found[1]!) : format;
}

function withFormatsWrapped(xml: string): string {
  const builtIn = Object.entries(BUILT_IN_DATES)
    .map(([id, format]) => `<numFmt numFmtId="${id}" formatCode="${wrapped(format)}"/>`)
    .join("");
  return xml
    .replace(/<(?:\w+:)?numFmt\s[^>]*>/g, (tag) =>
      tag.replace(
        /\bformatCode=(?:"([^"]*)"|'([^']*)')/,
        (_, double?: string, single?: string) => `formatCode="${wrapped(fromXml(double ?? single ?? ""))}"`,
      ),
    )
    .replace(/<(?:\w+:)?styleSheet\b[^>]*>/, (tag) => `${tag}<numFmts>${builtIn}</numFmts>`);
}

/** A width is a column's own only where the file says so; the library takes every one. */
function withOwnWidths(xml: string, part: string): string {
  const end = xml.search(/<(?:\w+:)?sheetData\b/);
  if (end < 0) return xml;
  let count = 0;
  const head = xml.slice(0, end).replace(/<(?:\w+:)?col\s[^>]*>/g, (tag) => {
    if (!/\bcustomWidth=["'](?:1|true)["']/.test(tag)) return "";
    count += 1;
    return tag;
  });
  // Each may stand for every column of the sheet.
  return count > MAX_SHEET_COLUMNS ? stop(troubles.damaged(part)) : head + xml.slice(end);
}

const DAY_MS = 86_400_000;
const FIRST_DAY = Date.UTC(1899, 11, 30);

/** A day may be stored as ISO 8601 (18.18.11, type d), which the library takes for a text. */
function withDaysCounted(xml: string): string {
  if (!/\st=["']d["']/.test(xml)) return xml;
  return xml.replace(
    /(<(?:\w+:)?c\b[^<>]*?)\st=["']d["']([^<>]*>(?:<(?:\w+:)?f\b[^<>]*>[^<]*<\/(?:\w+:)?f>)?<(?:\w+:)?v>)([^<]*)(?=<)/g,
    (whole, before: string, between: string, text: string) => {
      const at = Date.parse(/[TZ]/.test(text) ? `${text.replace(/Z$/, "")}Z` : text);
      return Number.isFinite(at) ? `${before}${between}${(at - FIRST_DAY) / DAY_MS}` : whole;
    },
  );
}

/** Counts of one tag, whatever its prefix. */
function countOf(bytes: Uint8Array, tag: string): number {
  let count = 0;
  for (const begin of [`<${tag}`, `:${tag}`]) {
    for (let at = findBytes(bytes, begin); at >= 0; at = findBytes(bytes, begin, at + begin.length)) {
      // Not the beginning of a longer name.
      if (/[\s/>]/.test(String.fromCharCode(bytes[at + begin.length] ?? 0))) count += 1;
    }
  }
  return count;
}

/** What would make the library's reader grow without bounds, found on the bytes, before any text is made of them. */
function checkMarkup(name: string, bytes: Uint8Array): void {
  if (findBytes(bytes, "<!DOCTYPE") >= 0 || findBytes(bytes, "<!ENTITY") >= 0) stop(troubles.declares(name));
  if (/^xl\/workbook\.xml$/i.test(name)) {
    const names = countOf(bytes, "definedName");
    if (names > MAX_NAMES) stop(troubles.tooManyNames(names, MAX_NAMES));
  }
  // The texts may lie in a part of any name.
  if (/^xl\/[^/]+\.xml$/i.test(name)) {
    const texts = countOf(bytes, "si");
    // A text in pieces has many elements, which the library holds as objects too.
    const elements = Math.ceil(countOf(bytes, "t") / PIECES_OF_A_TEXT);
    if (Math.max(texts, elements) > MAX_STRINGS)
      stop(troubles.tooManyTexts(Math.max(texts, elements), MAX_STRINGS));
  }
  if (/^xl\/styles[^/]*\.xml$/i.test(name)) {
    const styles = Math.max(
      ...["xf", "font", "fill", "border", "numFmt", "dxf"].map((tag) => countOf(bytes, tag)),
    );
    if (styles > MAX_STYLES) stop(troubles.tooManyStyles(styles, MAX_STYLES));
  }
}

/**
 * @param entries as checked by checkedEntries
 * @param around takes what the sheets' parts hold around their cells, by the parts' names in small letters
 */
export function patchedInput(
  bytes: Uint8Array,
  entries: readonly ArchiveEntry[],
  state: ExcelState,
  around: Map<string, AroundCells>,
): Uint8Array {
  let slots = 0;
  const patched = (name: string, xml: string): string => {
    if (/^xl\/styles[^/]*\.xml$/i.test(name)) return withFormatsWrapped(xml);
    slots += checkedGrid(xml, name);
    if (slots > MAX_SLOTS) stop(troubles.tooManySlots());
    around.set(name.toLowerCase(), aroundCells(xml));
    return withErrorsWrittenOut(withDaysCounted(withOwnWidths(xml, name)), state);
  };
  return packed(
    entries
      .filter(({ name }) => NEEDED.test(name))
      .map((entry) => {
        const content = utf8Part(entry.name, unpacked(bytes, entry));
        checkMarkup(entry.name, content);
        if (!/^xl\/(?:styles[^/]*|worksheets\/[^/]+)\.xml$/i.test(entry.name)) {
          return storedPart(entry.name, content);
        }
        const xml = patched(entry.name, new TextDecoder().decode(content));
        return storedPart(entry.name, new TextEncoder().encode(xml));
      }),
  );
}
