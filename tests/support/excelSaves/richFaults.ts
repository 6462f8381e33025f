/**
 * Errors without a literal of their own in files: `t="e" vm="n"`, `<v>#VALUE!</v>`, the kind in xl/richData.
 * The form is O in excel.md ("seen by others, confirmed in Excel by others"); names of parts and keys from memory.
 */
import { type Pack, addPart, editCells, editPart, sheetsOf, textOf } from "./parts";

export const ERROR_TYPE: Record<string, number> = {
  "#SPILL!": 8,
  "#CONNECT!": 9,
  "#BLOCKED!": 10,
  "#UNKNOWN!": 11,
  "#FIELD!": 12,
  "#CALC!": 13,
  "#BUSY!": 14,
};
export const isRich = (code: string): boolean => code in ERROR_TYPE;

const RICH = "http://schemas.microsoft.com/office/spreadsheetml/2017/richdata";
const REL = "http://schemas.microsoft.com/office/2017/06/relationships";

/** Stores the faults ("Rooms!P6" to "#BUSY!") whose cells are there already, `<v>` still holding the code itself. */
export function storeFaults(pack: Pack, faults: Map<string, string>): void {
  if (pack.files.has("xl/richData/rdrichvalue.xml")) throw new Error("rich data already there");
  const order = [...new Set(faults.values())];
  for (const { name, path } of sheetsOf(pack))
    editPart(pack, path, (xml) =>
      editCells(xml, (cell) => {
        const code = faults.get(`${name}!${cell.ref}`);
        if (code === undefined) return undefined;
        cell.attributes.set("t", "e");
        cell.attributes.set("vm", String(order.indexOf(code) + 1));
        cell.value = "#VALUE!";
        return cell;
      }),
    );
  const values = order.map((code) =>
    code === "#SPILL!"
      ? '<rv s="1"><v>0</v><v>8</v><v>1</v><v>1</v></rv>'
      : `<rv s="0"><v>${ERROR_TYPE[code]}</v><v>0</v></rv>`,
  );
  addPart(pack, {
    path: "xl/richData/rdrichvalue.xml",
    content: `<rvData xmlns="${RICH}" count="${values.length}">${values.join("")}</rvData>`,
    contentType: "application/vnd.ms-excel.rdrichvalue+xml",
    owner: "xl/workbook.xml",
    type: `${REL}/rdRichValue`,
  });
  addPart(pack, {
    path: "xl/richData/rdrichvaluestructure.xml",
    content:
      `<rvStructures xmlns="${RICH}" count="2"><s t="_error"><k n="errorType" t="i"/><k n="propagated" t="b"/></s>` +
      '<s t="_error"><k n="colOffset" t="i"/><k n="errorType" t="i"/><k n="rwOffset" t="i"/>' +
      '<k n="subType" t="i"/></s></rvStructures>',
    contentType: "application/vnd.ms-excel.rdrichvaluestructure+xml",
    owner: "xl/workbook.xml",
    type: `${REL}/rdRichValueStructure`,
  });
  addPart(pack, {
    path: "xl/richData/rdRichValueTypes.xml",
    content:
      '<rvTypesInfo xmlns="http://schemas.microsoft.com/office/spreadsheetml/2017/richdata2"><global><keyFlags>' +
      '<key name="_Self"><flag name="ExcludeFromFile" value="1"/><flag name="ExcludeFromCalcComparison" value="1"/>' +
      "</key></keyFlags></global></rvTypesInfo>",
    contentType: "application/vnd.ms-excel.rdrichvaluetypes+xml",
    owner: "xl/workbook.xml",
    type: `${REL}/rdRichValueTypes`,
  });
  editPart(pack, "xl/metadata.xml", (xml) => richMetadata(xml, order.length));
  textOf(pack, "xl/metadata.xml");
}

function richMetadata(xml: string, count: number): string {
  const type =
    '<metadataType name="XLRICHVALUE" minSupportedVersion="120000" copy="1" pasteAll="1" pasteValues="1" merge="1" ' +
    'splitFirst="1" rowColShift="1" clearFormats="1" clearComments="1" assign="1" coerce="1"/>';
  const types = Number(/<metadataTypes count="(\d+)"/.exec(xml)?.[1] ?? "0");
  const bk = (i: number): string =>
    `<bk><extLst><ext uri="{3e2802c4-a4d2-4d8b-9148-e3be6c30e623}"><xlrd:rvb i="${i}"/></ext></extLst></bk>`;
  const future = Array.from({ length: count }, (_, i) => bk(i)).join("");
  const values = Array.from({ length: count }, (_, i) => `<bk><rc t="${types + 1}" v="${i}"/></bk>`).join("");
  return xml
    .replace(/<metadata /, `<metadata xmlns:xlrd="${RICH}" `)
    .replace(/<metadataTypes count="\d+">/, `<metadataTypes count="${types + 1}">`)
    .replace("</metadataTypes>", `${type}</metadataTypes>`)
    .replace(
      /(<futureMetadata[\s\S]*<\/futureMetadata>)/,
      `$1<futureMetadata name="XLRICHVALUE" count="${count}">${future}</futureMetadata>`,
    )
    .replace("</metadata>", `<valueMetadata count="${count}">${values}</valueMetadata></metadata>`);
}
