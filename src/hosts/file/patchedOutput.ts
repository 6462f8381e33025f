/**
 * Puts right in the written archive what the library can't write. Each patch
 * says why; in parts that need none nothing is changed.
 */
import { joined } from "../../jobs/joined";
import { copiedPart, deflatedPart, entriesOf, packed, unpacked } from "./archive";
import { withTextKept } from "./keptText";
import { PANE_PARTS, withPaneRelated, withPaneTyped } from "./opensPane";
import { MARKER, SPILLED } from "./storedText";
import type { WrittenSheet } from "./writtenSheet";

/** The part put right, in pieces when it is large. */
type Patch = (xml: string) => string | Iterable<string>;

/** Marked results of formulas: errors and the negative zero, which the library stores as text. */
const MARKED_RESULT = new RegExp(` t="str"(><f[^>]*>[^<]*</f><v>)${MARKER}([^<]*)</v>`, "g");
/** A marked cell without a formula: the negative zero, or text that the formula of another cell fills it with. */
const MARKED_VALUE = new RegExp(
  ` t="inlineStr"( s="\\d+")?><is><r><t(?: xml:space="preserve")?>${MARKER}(?:(-0)|${SPILLED}([^<]*))</t></r></is>`,
  "g",
);

const withMarksResolved = (xml: string): string =>
  xml.includes(MARKER)
    ? xml
        .replace(MARKED_RESULT, (_, middle: string, value: string) =>
          value === "-0" ? `${middle}-0</v>` : ` t="e"${middle}${value}</v>`,
        )
        .replace(MARKED_VALUE, (_, style: string | undefined, zero?: string, text?: string) =>
          zero === undefined ? `${style ?? ""} t="str"><v>${text!}</v>` : `${style ?? ""}><v>-0</v>`,
        )
    : xml;

/**
 * The library asks every program to calculate the whole workbook on opening
 * and says that no engine has calculated it. Excel without the add-in would
 * then replace our values with `#NAME?`. The number is that of the engine of
 * Excel 2019 and later, which leaves cached values alone.
 */
const withCalculation =
  (onOpening: boolean): Patch =>
  (xml) =>
    xml.replace(/<calcPr [^>]*\/>/, `<calcPr calcId="191029"${onOpening ? ' fullCalcOnLoad="1"' : ""}/>`);

/** Blanks and line ends at the ends of a note are lost otherwise. */
const withSpacesKept: Patch = (xml) => xml.replace(/<t>/g, '<t xml:space="preserve">');

/** A picture would be stretched to whole cells; anchored at one cell it keeps its own size. */
const withSizesKept: Patch = (xml) =>
  xml.replace(
    /<xdr:twoCellAnchor>(<xdr:from>.*?<\/xdr:from>)<xdr:to>.*?<\/xdr:to>(<xdr:pic>.*?<a:ext( cx="\d+" cy="\d+")\/>.*?)<\/xdr:twoCellAnchor>/gs,
    "<xdr:oneCellAnchor>$1<xdr:ext$3/>$2</xdr:oneCellAnchor>",
  );

/** What a font is made of, in the order of ECMA-376 part 1, 18.8.22 (CT_Font), as Excel's own validator wants it. */
const PARTS_OF_FONT =
  "b i strike condense extend outline shadow u vertAlign sz color name family charset scheme";
const FONT_ORDER = new Map(PARTS_OF_FONT.split(" ").map((part, index) => [part, index]));

const withFontsInOrder = (xml: string): string =>
  xml.replace(/<font>(.*?)<\/font>/gs, (_, parts: string) => {
    const placeOf = (part: string): number => FONT_ORDER.get(/\w+/.exec(part)![0]) ?? FONT_ORDER.size;
    const inOrder = [...parts.matchAll(/<[^>]*\/>/g)].map(([part]) => part);
    return `<font>${inOrder.sort((a, b) => placeOf(a) - placeOf(b)).join("")}</font>`;
  });

const withProgramNamed: Patch = (xml) => xml.replace(/<Application>[^<]*</, "<Application>Rigsheet<");

/** The library counts a sheet's size with placeholders and without the rows that they stand for. */
const withPlainRows =
  ({ plain, last, marked }: WrittenSheet): Patch =>
  (xml) =>
    plain.placedIn(
      (marked ? withMarksResolved(xml) : xml).replace(
        /<dimension ref="[^"]*"\/>/,
        `<dimension ref="${last === "A1" ? last : `A1:${last}`}"/>`,
      ),
    );

/** One text of tens of megabytes would cost its memory three times over. */
function encoded(pieces: Iterable<string>): Uint8Array {
  const encoder = new TextEncoder();
  const chunks: Uint8Array[] = [];
  let waiting = "";
  const flush = (): void => {
    chunks.push(encoder.encode(waiting));
    waiting = "";
  };
  for (const piece of pieces) {
    waiting += piece;
    if (waiting.length >= 65_536) flush();
  }
  flush();
  return joined(chunks);
}

/**
 * @param bytes the archive as the library wrote it
 * @param sheets what it wrote
 * @param opensPane the workbook's formulas of ours are alive, so it brings our pane with it
 */
export function patchedOutput(
  bytes: Uint8Array,
  sheets: readonly WrittenSheet[],
  opensPane: boolean,
): Uint8Array {
  const calculateOnOpening = sheets.some(({ uncalculated }) => uncalculated);
  const patchFor = (name: string): Patch | undefined => {
    if (name === "xl/workbook.xml") return withCalculation(calculateOnOpening);
    if (name === "xl/styles.xml") return (xml) => withFontsInOrder(withTextKept(xml));
    if (name === "docProps/app.xml") return withProgramNamed;
    if (opensPane && name === "_rels/.rels") return withPaneRelated;
    if (opensPane && name === "[Content_Types].xml") return withPaneTyped;
    if (/^xl\/comments\d+\.xml$/.test(name)) return withSpacesKept;
    if (/^xl\/drawings\/drawing\d+\.xml$/.test(name)) return withSizesKept;
    const sheet = sheets[Number(/^xl\/worksheets\/sheet(\d+)\.xml$/.exec(name)?.[1]) - 1];
    return sheet && (sheet.marked || !sheet.plain.empty) ? withPlainRows(sheet) : undefined;
  };
  const encoder = new TextEncoder();
  return packed([
    ...entriesOf(bytes).map((entry) => {
      const patch = patchFor(entry.name);
      // What the library has packed by its host's own means is packed anew: the same on every host.
      if (!patch)
        return entry.method === 0
          ? copiedPart(bytes, entry)
          : deflatedPart(entry.name, unpacked(bytes, entry));
      const xml = patch(new TextDecoder().decode(unpacked(bytes, entry)));
      return deflatedPart(entry.name, encoded(typeof xml === "string" ? [xml] : xml));
    }),
    ...(opensPane ? PANE_PARTS.map(([name, xml]) => deflatedPart(name, encoder.encode(xml))) : []),
  ]);
}
