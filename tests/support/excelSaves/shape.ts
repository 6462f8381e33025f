/** What Excel does to any workbook when it saves: each habit by itself, and all of them together. */
import {
  type Cell,
  MAIN,
  OFFICE,
  type Pack,
  addPart,
  eachSheet,
  editCells,
  editPart,
  escapeText,
  inlineText,
  parseArea,
  parseRef,
  readAttributes,
  sharedStrings,
  sheetsOf,
  textOf,
} from "./parts";
import { seventeen } from "./recalculate";

/** Each formula of the workbook with its place, "Rooms!AG5". */
export function eachFormula(pack: Pack, see: (at: string, formula: string) => void): void {
  for (const { name, path } of sheetsOf(pack))
    editCells(textOf(pack, path), (cell) => {
      if (cell.formula !== undefined) see(`${name}!${cell.ref}`, cell.formula.text);
      return undefined;
    });
}

/** Areas that array formulas of a sheet fill. */
function spills(xml: string): ReturnType<typeof parseArea>[] {
  return [...xml.matchAll(/<f [^>]*t="array"[^>]*>/g)].map((m) =>
    parseArea(readAttributes(m[0]).get("ref") ?? "A1"),
  );
}

/** Text that a formula spilled is stored as t="str". */
export function spillsAsText(pack: Pack): void {
  const strings = sharedStrings(pack);
  eachSheet(pack, (xml) => {
    const areas = spills(xml);
    return editCells(xml, (cell) => {
      const { r, c } = parseRef(cell.ref);
      if (cell.formula !== undefined) return undefined;
      if (!areas.some((a) => r >= a.r1 && r <= a.r2 && c >= a.c1 && c <= a.c2)) return undefined;
      const type = cell.attributes.get("t");
      if (type === "s") cell.value = strings[Number(cell.value)] ?? "";
      else if (type === "inlineStr") cell.value = inlineText(cell.inline ?? "");
      else return undefined;
      delete cell.inline;
      cell.attributes.set("t", "str");
      return cell;
    });
  });
}

/** All constant text goes to the shared strings, each text once. */
export function textShared(pack: Pack): void {
  const list = (textOf(pack, "xl/sharedStrings.xml").match(/<si>[\s\S]*?<\/si>|<si\/>/g) ?? []).slice();
  const place = new Map(list.map((si, i) => [si, i]));
  let uses = 0;
  eachSheet(pack, (xml) =>
    editCells(xml, (cell) => {
      if (cell.attributes.get("t") === "s") uses++;
      if (cell.attributes.get("t") !== "inlineStr") return undefined;
      uses++;
      const text = inlineText(cell.inline ?? "");
      const space = /^\s|\s$|\n/.test(text) ? ' xml:space="preserve"' : "";
      const si = `<si><t${space}>${escapeText(text)}</t></si>`;
      const at = place.get(si) ?? list.push(si) - 1;
      place.set(si, at);
      delete cell.inline;
      cell.value = String(at);
      cell.attributes.set("t", "s");
      return cell;
    }),
  );
  editPart(pack, "xl/sharedStrings.xml", (xml) =>
    xml.replace(
      /<sst[\s\S]*$/,
      `<sst xmlns="${MAIN}" count="${uses}" uniqueCount="${list.length}">${list.join("")}</sst>`,
    ),
  );
}

export function longNumbers(pack: Pack): void {
  eachSheet(pack, (xml) =>
    editCells(xml, (cell) => {
      const type = cell.attributes.get("t") ?? "n";
      if (type !== "n" || cell.value === undefined || cell.value === "") return undefined;
      const text = seventeen(Number(cell.value));
      if (Number(text) !== Number(cell.value)) throw new Error(`${cell.value} is not ${text}`);
      return { ...cell, value: text };
    }),
  );
}

export function calcChain(pack: Pack): void {
  if (pack.files.has("xl/calcChain.xml")) return;
  const links: string[] = [];
  sheetsOf(pack).forEach(({ path }, i) => {
    editCells(textOf(pack, path), (cell: Cell) => {
      if (cell.formula !== undefined)
        links.push(`<c r="${cell.ref}" i="${i + 1}"${cell.formula.attributes.has("ref") ? ' a="1"' : ""}/>`);
      return undefined;
    });
  });
  addPart(pack, {
    path: "xl/calcChain.xml",
    content: `<calcChain xmlns="${MAIN}">${links.reverse().join("")}</calcChain>`,
    contentType: "application/vnd.openxmlformats-officedocument.spreadsheetml.calcChain+xml",
    owner: "xl/workbook.xml",
    type: `${OFFICE}/calcChain`,
  });
}

export function excelProperties(pack: Pack): void {
  const titles = sheetsOf(pack)
    .map(({ name }) => `<vt:lpstr>${escapeText(name)}</vt:lpstr>`)
    .join("");
  const count = sheetsOf(pack).length;
  pack.files.set(
    "docProps/app.xml",
    '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\r\n' +
      '<Properties xmlns="http://schemas.openxmlformats.org/officeDocument/2006/extended-properties" ' +
      'xmlns:vt="http://schemas.openxmlformats.org/officeDocument/2006/docPropsVTypes">' +
      "<Application>Microsoft Excel</Application><DocSecurity>0</DocSecurity><ScaleCrop>false</ScaleCrop>" +
      '<HeadingPairs><vt:vector size="2" baseType="variant"><vt:variant><vt:lpstr>Worksheets</vt:lpstr></vt:variant>' +
      `<vt:variant><vt:i4>${count}</vt:i4></vt:variant></vt:vector></HeadingPairs><TitlesOfParts>` +
      `<vt:vector size="${count}" baseType="lpstr">${titles}</vt:vector></TitlesOfParts>` +
      "<Company></Company><LinksUpToDate>false</LinksUpToDate><SharedDoc>false</SharedDoc>" +
      "<HyperlinksChanged>false</HyperlinksChanged><AppVersion>16.0300</AppVersion></Properties>",
  );
  editPart(pack, "docProps/core.xml", (xml) =>
    xml
      .replace(/(<dcterms:created)/, "<cp:lastModifiedBy>office</cp:lastModifiedBy>$1")
      .replace(/(<dcterms:modified[^>]*>)[^<]*/, "$12026-11-20T09:12:44Z"),
  );
}

export function namesSorted(pack: Pack): void {
  editPart(pack, "xl/workbook.xml", (xml) =>
    xml.replace(/<definedNames>([\s\S]*?)<\/definedNames>/, (_, inner: string) => {
      const names = inner.match(/<definedName [^>]*>[^<]*<\/definedName>/g) ?? [];
      const key = (one: string): string => (readAttributes(one).get("name") ?? "").toLowerCase();
      names.sort((a, b) => (key(a) < key(b) ? -1 : key(a) > key(b) ? 1 : 0));
      const plain = names.map((one) => one.replace(/'([A-Za-z][A-Za-z0-9_]*)'!/g, "$1!"));
      return `<definedNames>${plain.join("")}</definedNames>`;
    }),
  );
}

const EXTRA =
  ' xmlns:mc="http://schemas.openxmlformats.org/markup-compatibility/2006" mc:Ignorable="x14ac xr xr2 xr3"' +
  ' xmlns:x14ac="http://schemas.microsoft.com/office/spreadsheetml/2009/9/ac"' +
  ' xmlns:xr="http://schemas.microsoft.com/office/spreadsheetml/2014/revision"' +
  ' xmlns:xr2="http://schemas.microsoft.com/office/spreadsheetml/2015/revision2"' +
  ' xmlns:xr3="http://schemas.microsoft.com/office/spreadsheetml/2016/revision3"';

/** x14ac:dyDescent, spans, xr:uid on sheets; fileVersion, workbookPr, revisionPtr, calcFeatures on the workbook. */
export function officeAttributes(pack: Pack): void {
  eachSheet(pack, (xml, _, path) =>
    xml
      .replace(/<worksheet [^>]*>/, (tag) => {
        const id = String(/\d+/.exec(path)?.[0] ?? 0).padStart(12, "0");
        return tag.replace(/>$/, `${EXTRA} xr:uid="{00000000-0001-0000-0000-${id}}">`);
      })
      .replace(/<sheetFormatPr /, '<sheetFormatPr x14ac:dyDescent="0.25" ')
      .replace(/<row r="(\d+)"/g, '<row r="$1" spans="1:58" x14ac:dyDescent="0.25"'),
  );
  editPart(pack, "xl/workbook.xml", (xml) =>
    xml
      .replace(/<workbook [^>]*>/, (tag) =>
        tag.replace(
          />$/,
          ' xmlns:mc="http://schemas.openxmlformats.org/markup-compatibility/2006" mc:Ignorable="x15 xr"' +
            ' xmlns:x15="http://schemas.microsoft.com/office/spreadsheetml/2010/11/main"' +
            ' xmlns:xr="http://schemas.microsoft.com/office/spreadsheetml/2014/revision">',
        ),
      )
      .replace(
        /<bookViews>/,
        '<fileVersion appName="xl" lastEdited="7" lowestEdited="7" rupBuild="29029"/>' +
          '<workbookPr defaultThemeVersion="166925"/><xr:revisionPtr revIDLastSave="0" ' +
          'documentId="8_{7B0A4C52-0E4B-4C6B-9E5B-2D6D0A1B3C4D}" xr6:coauthVersionLast="47" ' +
          'xr6:coauthVersionMax="47" xr10:uidLastSave="{00000000-0000-0000-0000-000000000000}" ' +
          'xmlns:xr6="http://schemas.microsoft.com/office/spreadsheetml/2016/revision6" ' +
          'xmlns:xr10="http://schemas.microsoft.com/office/spreadsheetml/2016/revision10"/><bookViews>',
      )
      .replace(
        "</workbook>",
        '<extLst><ext uri="{B58B0392-4F1F-4190-BB64-5DF3571DCE5F}" ' +
          'xmlns:xcalcf="http://schemas.microsoft.com/office/spreadsheetml/2018/calcfeatures"><xcalcf:calcFeatures>' +
          '<xcalcf:feature name="microsoft.com:RD"/><xcalcf:feature name="microsoft.com:Single"/>' +
          '<xcalcf:feature name="microsoft.com:FV"/><xcalcf:feature name="microsoft.com:CNMTM"/>' +
          "</xcalcf:calcFeatures></ext></extLst></workbook>",
      ),
  );
}

export function attributesReordered(pack: Pack): void {
  const turn = (xml: string): string =>
    xml.replace(
      /<(c|row|f|col|pane|sheetView|sheet|xf|Relationship) ([^>]*?)(\/?)>/g,
      (_, tag, list, close) => {
        const found = (String(list).match(/[\w:]+="[^"]*"/g) ?? []).reverse();
        return `<${String(tag)} ${found.join(" ")}${String(close)}>`;
      },
    );
  for (const [path, data] of pack.files)
    if (typeof data === "string" && /worksheets\/|workbook\.xml|styles\.xml/.test(path))
      pack.files.set(path, turn(data));
}

export function absoluteTargets(pack: Pack): void {
  editPart(pack, "xl/_rels/workbook.xml.rels", (xml) =>
    xml.replace(/Target="(?![/\w]+:|\/)/g, 'Target="/xl/'),
  );
  editPart(pack, "_rels/.rels", (xml) => xml.replace(/Target="(?![/\w]+:|\/)/g, 'Target="/'));
}

/** Styles in another order, built-in format numbers, escaped formats, another theme. */
export function stylesRenumbered(pack: Pack): void {
  let last = 0;
  editPart(pack, "xl/styles.xml", (xml) =>
    xml
      .replace(/formatCode="yyyy-mm-dd"/g, 'formatCode="yyyy\\-mm\\-dd"')
      .replace(/(<cellXfs count=")(\d+)(">)([\s\S]*?)<\/cellXfs>/, (_, a, n, b, inner) => {
        last = Number(n) - 1;
        const list = String(inner).match(/<xf [^>]*?(?:\/>|>[\s\S]*?<\/xf>)/g) ?? [];
        const turned = [list[0] ?? "", ...list.slice(1).reverse()];
        return `${String(a)}${String(n)}${String(b)}${turned.join("")}</cellXfs>`;
      })
      .replace(/="true"/g, '="1"')
      .replace(/="false"/g, '="0"'),
  );
  const renumber = (n: string): string => (Number(n) === 0 ? "0" : String(last + 1 - Number(n)));
  eachSheet(pack, (xml) =>
    xml
      .replace(/<(c|row) [^>]*>/g, (tag) =>
        tag.replace(/ s="(\d+)"/, (_, n: string) => ` s="${renumber(n)}"`),
      )
      .replace(/<col [^>]*>/g, (tag) =>
        tag.replace(/ style="(\d+)"/, (_, n: string) => ` style="${renumber(n)}"`),
      ),
  );
  editPart(pack, "xl/theme/theme1.xml", (xml) =>
    xml
      .replace(/(<a:theme [^>]*?)name="[^"]*"/, '$1name="House colours"')
      .replace(/<a:srgbClr val="[0-9A-F]{6}"\/>/, () => '<a:srgbClr val="123456"/>'),
  );
}

export function calcPr(pack: Pack, attributes: string): void {
  editPart(pack, "xl/workbook.xml", (xml) => xml.replace(/<calcPr[^>]*\/>/, `<calcPr ${attributes}/>`));
}

/** Everything that any Excel save does. */
export function excelShape(pack: Pack): void {
  spillsAsText(pack);
  textShared(pack);
  longNumbers(pack);
  namesSorted(pack);
  stylesRenumbered(pack);
  officeAttributes(pack);
  calcChain(pack);
  excelProperties(pack);
}

/** A sheet of the user's own behind the others. */
export function addSheet(pack: Pack, name: string, rows: string): void {
  const number =
    Math.max(...sheetsOf(pack).map(({ path }) => Number(/(\d+)\.xml$/.exec(path)?.[1] ?? 0))) + 1;
  const id = addPart(pack, {
    path: `xl/worksheets/sheet${number}.xml`,
    content:
      `<worksheet xmlns="${MAIN}" xmlns:r="${OFFICE}"><dimension ref="A1:F20"/><sheetViews>` +
      '<sheetView workbookViewId="0"/></sheetViews><sheetFormatPr defaultRowHeight="15"/>' +
      `<sheetData>${rows}</sheetData><pageMargins left="0.7" right="0.7" top="0.75" bottom="0.75" header="0.3" ` +
      'footer="0.3"/></worksheet>',
    contentType: "application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml",
    owner: "xl/workbook.xml",
    type: `${OFFICE}/worksheet`,
  });
  editPart(pack, "xl/workbook.xml", (xml) =>
    xml.replace("</sheets>", `<sheet name="${name}" sheetId="${number + 100}" r:id="${id}"/></sheets>`),
  );
}
