/**
 * The requirement set with which each member of Excel's programming interface
 * came, as Microsoft's published types say it ("[Api set: ExcelApi 1.9]").
 *
 * Source: the package @types/office-js.
 */
import { readFileSync } from "node:fs";
import ts from "typescript";

/** What the stand-in calls an object, and what Office does. */
const CLASSES: Readonly<Record<string, string>> = {
  workbook: "Workbook",
  worksheets: "WorksheetCollection",
  Worksheet: "Worksheet",
  "Range.worksheet": "Worksheet",
  WorksheetProtection: "WorksheetProtection",
  WorkbookProtection: "WorkbookProtection",
  autoFilter: "AutoFilter",
  freezePanes: "WorksheetFreezePanes",
  pageLayout: "PageLayout",
  foot: "HeaderFooter",
  notes: "NoteCollection",
  names: "NamedItemCollection",
  NamedItem: "NamedItem",
  properties: "DocumentProperties",
  custom: "CustomPropertyCollection",
  CustomProperty: "CustomProperty",
  application: "Application",
  Range: "Range",
  RangeAreas: "RangeAreas",
  format: "RangeFormat",
  font: "RangeFont",
  fill: "RangeFill",
  protection: "FormatProtection",
  borders: "RangeBorderCollection",
  border: "RangeBorder",
  dataValidation: "DataValidation",
  conditionalFormats: "ConditionalFormatCollection",
  ConditionalFormat: "ConditionalFormat",
  cellValue: "CellValueConditionalFormat",
};
/** Of Office's common interface or its way of working, which no set of ExcelApi holds. */
const COMMON =
  /^(?:Excel\.run|context|Office|requirements|document|settings|ui|actions|addin|File|CustomFunctions|onSelectionChanged|EventHandlerResult)\b/;
/** Members of Office's base class. */
const BASE = ["load", "isNullObject"];
/** What the stand-in's own parts ask of each other. */
const OWN = ["Range.resolved"];

let known: Map<string, string> | undefined;

/** @returns by `Class.member` its set, such as 1.9; the later one where a class came later than a member says */
function setsOfMembers(): Map<string, string> {
  if (known) return known;
  const file = require.resolve("@types/office-js/index.d.ts");
  const source = ts.createSourceFile(file, readFileSync(file, "utf8"), ts.ScriptTarget.ES2022, true);
  const setOf = (node: ts.Node): string | undefined =>
    ts
      .getJSDocCommentsAndTags(node)
      .map((one) => /\[Api set: ExcelApi (\d+\.\d+)/.exec(one.getText())?.[1])
      .find(Boolean);
  const found = new Map<string, string>();
  const visit = (node: ts.Node): void => {
    if (ts.isModuleDeclaration(node) && node.name.getText() !== "Excel") return;
    if (ts.isFunctionDeclaration(node) && node.name) {
      const set = setOf(node);
      if (set) found.set(`Excel.${node.name.text}`, set);
    }
    if (!ts.isClassDeclaration(node) || !node.name) return ts.forEachChild(node, visit);
    const ofClass = setOf(node) ?? "1.1";
    for (const member of node.members) {
      const key = `${node.name.text}.${member.name?.getText()}`;
      const own = setOf(member) ?? ofClass;
      if (!found.has(key))
        found.set(key, Number(own.split(".")[1]) > Number(ofClass.split(".")[1]) ? own : ofClass);
    }
  };
  ts.forEachChild(source, visit);
  return (known = found);
}

/** @returns a member of ExcelApi as its types name it, such as Range.insert; undefined for one that no set of it holds */
export function memberOfExcel(asked: string): string | undefined {
  if (COMMON.test(asked) || OWN.includes(asked)) return undefined;
  const [, object, member] = /^(.*)\.(\w+)$/.exec(asked)!;
  if (BASE.includes(member!)) return undefined;
  const name = object!.startsWith("borders ") ? "RangeBorder" : (CLASSES[object!] ?? object!);
  return `${name}.${member}`;
}

/** @returns the set of a member as the stand-in names it; undefined where no set of ExcelApi holds it; “unknown” for one that Excel does not have */
export function setOfMember(asked: string): string | undefined {
  const member = memberOfExcel(asked);
  return member === undefined ? undefined : (setsOfMembers().get(member) ?? "unknown");
}
