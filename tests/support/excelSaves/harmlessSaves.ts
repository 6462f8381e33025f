/** Saves that change nothing a person would care about: the review must find what it finds in the untouched file. */
import type { ExcelSave } from "./excelSave";
import {
  type Pack,
  addPart,
  defaultType,
  eachSheet,
  editCells,
  editPart,
  namesOf,
  openPack,
  parseArea,
  relate,
  refOf,
  savePack,
  sheetPath,
  sheetsOf,
} from "./parts";
import {
  absoluteTargets,
  addSheet,
  attributesReordered,
  calcChain,
  calcPr,
  excelProperties,
  excelShape,
  longNumbers,
  namesSorted,
  officeAttributes,
  spillsAsText,
  stylesRenumbered,
  textShared,
} from "./shape";

const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const TYPES = "application/vnd.openxmlformats-officedocument.spreadsheetml";

const harmless = (id: string, what: string, source: string, change: (pack: Pack) => void): ExcelSave => ({
  id,
  what,
  source,
  harmless: true,
  figures: "right",
  transform(bytes) {
    const pack = openPack(bytes);
    change(pack);
    return savePack(pack);
  },
});

/** Text between the quotes of a formula stays; names outside them go through `edit`. */
export function editNames(formula: string, edit: (name: string, before: string) => string): string {
  return formula
    .split(/("(?:[^"]|"")*")/)
    .map((piece, i) =>
      i % 2 === 1
        ? piece
        : piece.replace(/(?<![\w.!'])[A-Za-z_][\w.]*(?![\w.]*[(!'])/g, (name: string, at: number) =>
            edit(name, piece.slice(0, at)),
          ),
    )
    .join("");
}

/** `@` before names of one cell in array formulas: Excel keeps it as _xlfn.SINGLE. */
function singleAroundSingles(pack: Pack): void {
  const names = namesOf(pack);
  eachSheet(pack, (xml) =>
    editCells(xml, (cell) => {
      if (cell.formula?.attributes.get("t") !== "array" || !cell.attributes.has("cm")) return undefined;
      const text = editNames(cell.formula.text, (name, before) => {
        const place = names.get(name.toLowerCase());
        const one = place && place.area.r1 === place.area.r2 && place.area.c1 === place.area.c2;
        return one && !/SINGLE\($/.test(before) ? `_xlfn.SINGLE(${name})` : name;
      });
      if (text === cell.formula.text) return undefined;
      cell.formula.text = text;
      return cell;
    }),
  );
}

/** Neighbouring plain cells with the same text of names only: the first holds the formula, the others its number. */
function sharedFormulas(pack: Pack): void {
  eachSheet(pack, (xml) => {
    const plain = new Map<string, string>();
    editCells(xml, (cell) => {
      if (
        cell.formula !== undefined &&
        cell.formula.attributes.size === 0 &&
        !/[$!]?[A-Z]+\d/.test(cell.formula.text)
      )
        plain.set(cell.ref, cell.formula.text);
      return undefined;
    });
    const groups: string[][] = [];
    for (const [ref, text] of plain) {
      const { r1, c1 } = parseArea(ref);
      const group = groups.find((g) => g.includes(refOf(r1, c1 - 1)) || g.includes(refOf(r1 - 1, c1)));
      if (group !== undefined && plain.get(group[0] ?? "") === text) group.push(ref);
      else groups.push([ref]);
    }
    const shared = groups.filter((g) => g.length > 1);
    return editCells(xml, (cell) => {
      const si = shared.findIndex((g) => g.includes(cell.ref));
      const group = shared[si];
      if (group === undefined || cell.formula === undefined) return undefined;
      const head = group[0] === cell.ref;
      const all = group.map(parseArea);
      const ref = `${refOf(Math.min(...all.map((a) => a.r1)), Math.min(...all.map((a) => a.c1)))}:${refOf(
        Math.max(...all.map((a) => a.r2)),
        Math.max(...all.map((a) => a.c2)),
      )}`;
      cell.formula = {
        attributes: new Map([
          ["t", "shared"],
          ...(head ? [["ref", ref] as [string, string]] : []),
          ["si", String(si)],
        ]),
        text: head ? cell.formula.text : "",
      };
      return cell;
    });
  });
}

function richRuns(pack: Pack): void {
  textShared(pack);
  let n = 0;
  editPart(pack, "xl/sharedStrings.xml", (xml) =>
    xml.replace(/<si><t>([^<&]{8,})<\/t><\/si>/g, (whole, text: string) =>
      n++ % 3 > 0
        ? whole
        : `<si><r><t xml:space="preserve">${text.slice(0, 4)}</t></r><r><rPr><b/><sz val="10"/><rFont val="Calibri"/>` +
          `</rPr><t xml:space="preserve">${text.slice(4)}</t></r><phoneticPr fontId="0" type="noConversion"/></si>`,
    ),
  );
}

function emptyRows(pack: Pack): void {
  eachSheet(pack, (xml) => {
    const last = Math.max(0, ...[...xml.matchAll(/<row r="(\d+)"/g)].map((m) => Number(m[1])));
    const rows = [1, 2, 3, 40].map(
      (n) =>
        `<row r="${last + n}" s="5" customFormat="1"><c r="A${last + n}" s="5"/><c r="H${last + n}" s="7"/></row>`,
    );
    return xml.replace("</sheetData>", `${rows.join("")}</sheetData>`);
  });
}

const view = (pack: Pack, edit: (tag: string, index: number) => string): void => {
  let index = 0;
  eachSheet(pack, (xml) => xml.replace(/<sheetView [^>]*>/, (tag) => edit(tag, index++)));
};

function selection(pack: Pack): void {
  view(pack, (tag, i) => (i === 5 ? tag.replace(/>$/, ' tabSelected="1">') : tag));
  eachSheet(pack, (xml) =>
    xml.replace(/topLeftCell="([A-Z]+)(\d+)"([^>]*\/>)/, (_, column: string, row: string, rest: string) => {
      const pane = /activePane="(\w+)"/.exec(rest)?.[1] ?? "bottomLeft";
      const below = `${column}${Number(row) + 3}`;
      return `topLeftCell="${below}"${rest}<selection pane="${pane}" activeCell="${below}" sqref="${below}"/>`;
    }),
  );
  editPart(pack, "xl/workbook.xml", (xml) =>
    xml.replace(
      /<workbookView [^>]*\/>/,
      '<workbookView xWindow="-120" yWindow="-120" windowWidth="29040" ' +
        'windowHeight="15840" tabRatio="812" firstSheet="3" activeTab="5"/>',
    ),
  );
}

function webExtension(pack: Pack): void {
  const path = "xl/webextensions";
  addPart(pack, {
    path: `${path}/taskpanes.xml`,
    content:
      '<wetp:taskpanes xmlns:wetp="http://schemas.microsoft.com/office/webextensions/taskpanes/2010/11">' +
      '<wetp:taskpane dockstate="right" visibility="1" width="350" row="4"><wetp:webextensionref ' +
      `xmlns:r="${OFFICE}" r:id="rId1"/></wetp:taskpane></wetp:taskpanes>`,
    contentType: "application/vnd.ms-office.webextensiontaskpanes+xml",
    owner: "",
    type: "http://schemas.microsoft.com/office/2011/relationships/webextensiontaskpanes",
  });
  addPart(pack, {
    path: `${path}/webextension1.xml`,
    content:
      '<we:webextension xmlns:we="http://schemas.microsoft.com/office/webextensions/webextension/2010/11" ' +
      'id="{5A1C3C8E-7A5B-4A0A-9C51-0D7D3B8E1F22}"><we:reference id="c2b8d8b4-5a0e-4a61-8a0d-93a4e5a1c001" ' +
      'version="1.0.0.0" store="EXCatalog" storeType="EXCatalog"/><we:alternateReferences/><we:properties>' +
      '<we:property name="Office.AutoShowTaskpaneWithDocument" value="true"/></we:properties><we:bindings/>' +
      `<we:snapshot xmlns:r="${OFFICE}"/></we:webextension>`,
    contentType: "application/vnd.ms-office.webextension+xml",
    owner: `${path}/taskpanes.xml`,
    type: "http://schemas.microsoft.com/office/2011/relationships/webextension",
  });
}

function printers(pack: Pack): void {
  defaultType(pack, "bin", `${TYPES}.printerSettings`);
  sheetsOf(pack).forEach(({ path }, i) => {
    const part = `xl/printerSettings/printerSettings${i + 1}.bin`;
    pack.files.set(
      part,
      new Uint8Array(220).map((_, k) => (k * 7 + i) % 256),
    );
    const id = relate(pack, path, `${OFFICE}/printerSettings`, part.replace("xl/", "../"));
    editPart(pack, path, (xml) => xml.replace(/<pageSetup ([^>]*?)\/>/, `<pageSetup $1 r:id="${id}"/>`));
  });
}

function comment(pack: Pack): void {
  const path = sheetPath(pack, "Rooms");
  defaultType(pack, "vml", "application/vnd.openxmlformats-officedocument.vmlDrawing");
  addPart(pack, {
    path: "xl/comments1.xml",
    content:
      '<comments xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><authors><author>office</author>' +
      '</authors><commentList><comment ref="H8" authorId="0" shapeId="0"><text><t>measured twice</t></text></comment>' +
      "</commentList></comments>",
    contentType: `${TYPES}.comments+xml`,
    owner: path,
    type: `${OFFICE}/comments`,
  });
  pack.files.set(
    "xl/drawings/vmlDrawing1.vml",
    '<xml xmlns:v="urn:schemas-microsoft-com:vml" xmlns:o="urn:schemas-microsoft-com:office:office" ' +
      'xmlns:x="urn:schemas-microsoft-com:office:excel"><v:shapetype id="_x0000_t202" coordsize="21600,21600" ' +
      'o:spt="202" path="m,l,21600r21600,l21600,xe"/><v:shape id="_x0000_s1025" type="#_x0000_t202" ' +
      'style="position:absolute;visibility:hidden"><x:ClientData ObjectType="Note"><x:Row>7</x:Row>' +
      "<x:Column>7</x:Column></x:ClientData></v:shape></xml>",
  );
  const id = relate(pack, path, `${OFFICE}/vmlDrawing`, "/xl/drawings/vmlDrawing1.vml");
  editPart(pack, path, (xml) => xml.replace("</worksheet>", `<legacyDrawing r:id="${id}"/></worksheet>`));
}

const text = (ref: string, value: string): string =>
  `<c r="${ref}" t="inlineStr"><is><t>${value}</t></is></c>`;
const formula = (ref: string, f: string, v: string, type = "", array = ""): string =>
  array === ""
    ? `<c r="${ref}"${type}><f>${f}</f><v>${v}</v></c>`
    : `<c r="${ref}"${type} cm="1"><f t="array" ref="${array}">${f}</f><v>${v}</v></c>`;

/** A page of the user's own that reads the job, in the prefixes in which Excel stores newer functions. */
function ownSheet(pack: Pack): void {
  addSheet(
    pack,
    "My notes",
    `<row r="1">${text("A1", "asked of the office")}</row>` +
      `<row r="2">${formula("A2", '_xlfn.TEXTJOIN(", ",TRUE,"annexe","first floor")', "annexe, first floor", ' t="str"')}</row>` +
      `<row r="3">${formula("A3", "_xlfn.ANCHORARRAY(A5)", "1", "", "A3")}</row>` +
      `<row r="4">${formula("A4", "_xlfn.CONCAT(1,2)", "12", ' t="str"')}</row>` +
      `<row r="5">${formula("A5", "_xlfn.SEQUENCE(1)", "1", "", "A5")}</row>` +
      `<row r="6">${formula("A6", '_xlfn.IFS(A5=1,"yes",TRUE,"no")', "yes", ' t="str"')}</row>` +
      `<row r="7">${formula("A7", "_xlfn._xlws.FILTER(A5:A5,A5:A5&gt;0)", "1", "", "A7")}</row>` +
      `<row r="8">${formula("A8", '_xlfn.XLOOKUP("yes",A6:A6,A5:A5)', "1")}</row>`,
  );
}

function booleans(pack: Pack): void {
  addSheet(
    pack,
    "My notes",
    `<row r="1">${text("A1", "duct is free")}<c r="B1" t="b"><v>1</v></c></row>` +
      `<row r="2">${text("A2", "key at hand")}<c r="B2" t="b"><v>0</v></c></row>` +
      `<row r="3">${text("A3", "both")}${formula("B3", "AND(B1,B2)", "0", ' t="b"')}</row>`,
  );
}

export const HARMLESS_SAVES: readonly ExcelSave[] = [
  harmless(
    "spill-str",
    'Opened and saved: text that formulas spilled became t="str"',
    "excel.md 6, M",
    spillsAsText,
  ),
  harmless(
    "text-shared",
    "Opened and saved: every constant text went to sharedStrings.xml",
    "excel.md 6, M",
    textShared,
  ),
  harmless(
    "rich-runs",
    "Somebody made part of some labels bold: shared strings of several runs, with phonetic settings",
    "from memory",
    richRuns,
  ),
  harmless(
    "implied-at",
    "Plain formulas shown as =@INDEX(…) were looked at, confirmed with Enter and saved: the @ is left out again",
    "excel.md 2, D and O",
    excelProperties,
  ),
  harmless(
    "single-of-one",
    "Formulas were entered with @ before names of one cell: _xlfn.SINGLE(name), which changes nothing",
    "excel.md 2, O",
    singleAroundSingles,
  ),
  harmless(
    "newer-prefixes",
    "The user added a sheet of his own with TEXTJOIN, IFS, XLOOKUP, FILTER, SEQUENCE: _xlfn. and _xlfn._xlws.",
    "excel.md 2, O; own sheet from memory",
    ownSheet,
  ),
  harmless(
    "calls-as-stored",
    "Opened with the add-in and saved: each call stands as _xldudf_RIG_NAME( in the file",
    "excel.md 2, O",
    (pack) => {
      eachSheet(pack, (xml) =>
        editCells(xml, (cell) => {
          if (cell.formula === undefined || !/(?<![\w.])RIG\./.test(cell.formula.text)) return undefined;
          cell.formula.text = cell.formula.text.replace(/(?<![\w.])RIG\.(\w+)\(/g, "_xldudf_RIG_$1(");
          return cell;
        }),
      );
      excelProperties(pack);
    },
  ),
  harmless("calc-chain", "Saved: calcChain.xml is there", "excel.md 6, M", calcChain),
  harmless(
    "shared-formulas",
    'Equal neighbours were filled to the right: t="shared"',
    "from memory",
    sharedFormulas,
  ),
  harmless(
    "attribute-order",
    "Attributes in another order (r last, Id first)",
    "from memory",
    attributesReordered,
  ),
  harmless(
    "office-attributes",
    "x14ac:dyDescent, spans, xr:uid, fileVersion, workbookPr, revisionPtr, calcFeatures",
    "from memory",
    officeAttributes,
  ),
  harmless(
    "excel-properties",
    "docProps as Excel writes them, another last author",
    "from memory",
    excelProperties,
  ),
  harmless("absolute-targets", "Relationships with absolute targets", "from memory", absoluteTargets),
  harmless(
    "booleans",
    'TRUE and FALSE typed and computed on a sheet of the user\'s own: t="b"',
    "from memory",
    booleans,
  ),
  harmless(
    "seventeen-digits",
    "Numbers with 17 digits, the small ones in E notation",
    "excel.md 6, M",
    longNumbers,
  ),
  harmless(
    "styles-renumbered",
    "Theme and colours changed; styles renumbered, formats escaped (yyyy\\-mm\\-dd)",
    "excel.md 6, M",
    stylesRenumbered,
  ),
  harmless(
    "names-sorted",
    "Defined names sorted, sheet names without quotes where none are needed",
    "excel.md 6, M",
    namesSorted,
  ),
  harmless("empty-rows", "A format was painted over empty rows below the blocks", "from memory", emptyRows),
  harmless(
    "selection",
    "Another sheet and cell selected, window moved, sheets scrolled",
    "from memory",
    selection,
  ),
  harmless("zoomed", "Sheets zoomed to 85 %, grid lines hidden on some", "from memory", (pack) => {
    view(pack, (tag, i) =>
      tag.replace(/>$/, `${i % 2 === 0 ? ' showGridLines="0"' : ""} zoomScale="85" zoomScaleNormal="85">`),
    );
  }),
  harmless(
    "columns-hidden",
    "Columns of the Rooms sheet were hidden or made wider",
    "from memory",
    (pack) => {
      editPart(pack, sheetPath(pack, "Rooms"), (xml) =>
        xml.replace(/<col ([^>]*?)width="[\d.]+"([^>]*)\/>/g, '<col $1width="14.7109375"$2 hidden="1"/>'),
      );
    },
  ),
  harmless(
    "calc-id",
    "Saved by a newer Excel: calcId raised, fullCalcOnLoad set for the next opening",
    "excel.md 6, M",
    (pack) => {
      calcPr(pack, 'calcId="191301" fullCalcOnLoad="1"');
    },
  ),
  harmless(
    "manual-mode-right",
    "Another workbook had set this Excel to manual calculation; nothing was changed, all values are right",
    "from memory (the mode is taken from the first workbook opened)",
    (pack) => {
      calcPr(pack, 'calcId="191029" calcMode="manual"');
    },
  ),
  harmless(
    "web-extension",
    "The pane was set to open with this workbook: web extension parts",
    "excel.md 1, D; parts from memory",
    webExtension,
  ),
  harmless("printer-settings", "Printed: printer settings on every sheet", "from memory", printers),
  harmless(
    "comment",
    "A note was put on a cell of Rooms (Excel web may have lost others)",
    "excel.md 3, I; parts from memory",
    comment,
  ),
  harmless("date1904-off", 'workbookPr says date1904="0"', "from memory", (pack) => {
    editPart(pack, "xl/workbook.xml", (xml) =>
      xml.replace("<bookViews>", '<workbookPr date1904="0"/><bookViews>'),
    );
  }),
  {
    ...harmless(
      "zip-order",
      "Parts in another order in the zip, stored without compression",
      "from memory",
      () => undefined,
    ),
    transform(bytes) {
      const pack = openPack(bytes);
      const turned = [...pack.files].reverse();
      const types = turned.filter(([path]) => path === "[Content_Types].xml");
      return savePack({ files: new Map([...types, ...turned]) }, 0);
    },
  },
  harmless(
    "all-habits",
    "Opened with the add-in, nothing changed, saved: all of Excel's habits at once",
    "excel.md 2 and 6",
    (pack) => {
      excelShape(pack);
      singleAroundSingles(pack);
      selection(pack);
      webExtension(pack);
      printers(pack);
      absoluteTargets(pack);
    },
  ),
  harmless(
    "missing-untouched",
    "Opened without the add-in (or in Protected View) and saved before anything computed: all results stand, calls as " +
      "_xldudf_…; nothing in the file tells it from one saved with the add-in",
    "excel.md 1 and 6, I and M",
    excelShape,
  ),
];
