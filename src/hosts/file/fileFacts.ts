/** What a file says beside its cells, for the review: see savedFile.ts. Read once, and within the sizes of limits.ts. */
import type { SavedFile, SavedLink, SavedName } from "../../workbooks/savedFile";
import { TEMPLATE, TEMPLATE_VERSION } from "./documentProperties";
import { MAX_FACTS, MAX_FACT_TEXT } from "./limits";
import { attribute, elementsOf, firstOf, fromXml, isOn, numberOf, type Element } from "./markup";
import type { PackageParts } from "./packageParts";
import { sheetFacts, type AroundCells, type LaidOver } from "./sheetFacts";

const WORKBOOK = "xl/workbook.xml";
const MACROS = /ms-excel\.(?:sheet|template|addin)\.macroEnabled/i;

/**
 * @param around the parts of the sheets without their cells, by their names in small letters
 */
export function fileFacts(parts: PackageParts, around: ReadonlyMap<string, AroundCells>): SavedFile {
  const workbook = parts.text(WORKBOOK);
  const relationships = parts.relationshipsOf(WORKBOOK);
  const sheets = elementsOf(firstOf(workbook, "sheets")?.inside ?? "", "sheet").slice(0, MAX_FACTS);
  const sheetNames = sheets.map((one) => attribute(one, "name") ?? "");
  const common = {
    parts,
    laidOver: laidOverIn(parts.text("xl/styles.xml")),
    persons: new Map(
      parts.names
        .filter((name) => /^xl\/persons\/[^/]+\.xml$/i.test(name))
        .flatMap((name) => elementsOf(parts.text(name), "person"))
        .map((one) => [attribute(one, "id") ?? "", attribute(one, "displayName") ?? ""]),
    ),
  };
  const app = parts.text("docProps/app.xml");
  const application = fromXml(firstOf(app, "Application")?.inside ?? "");
  const type = elementsOf(parts.text("[Content_Types].xml"), "Override").find(
    (one) => attribute(one, "PartName")?.toLowerCase() === `/${WORKBOOK}`,
  );
  const users = parts.names.filter((name) => /^xl\/revisions\/[^/]+\.xml$/i.test(name));
  return {
    ...(application !== "" && { application }),
    ...(type && MACROS.test(attribute(type, "ContentType") ?? "") && { macros: true as const }),
    ...(isOn(firstOf(workbook, "workbookPr"), "date1904") && { dates1904: true as const }),
    names: namesIn(workbook, sheetNames),
    links: [...linksIn(workbook, parts), ...connectionsIn(parts)],
    properties: [
      ...propertiesIn(parts.text("docProps/core.xml"), CORE),
      ...propertiesIn(app, APP),
      ...ownIn(parts),
    ],
    ...(users.length > 0 && { trackedBy: trackedBy(parts, users) }),
    sheets: sheets.flatMap((one, index) => {
      const id = attribute(one, "id");
      const part = relationships.find((relationship) => relationship.id === id)?.target;
      const found = part === undefined ? undefined : around.get(part.toLowerCase());
      return found ? [sheetFacts(sheetNames[index]!, attribute(one, "state"), part!, found, common)] : [];
    }),
  };
}

const namesIn = (workbook: string, sheets: readonly string[]): SavedName[] =>
  elementsOf(firstOf(workbook, "definedNames")?.inside ?? "", "definedName").map((one) => {
    const sheet = sheets[numberOf(one, "localSheetId") ?? -1];
    return {
      name: attribute(one, "name") ?? "",
      text: fromXml(one.inside).trim(),
      ...(sheet !== undefined && { sheet }),
      ...(isOn(one, "hidden") && { hidden: true as const }),
    };
  });

/** In the order of the workbook, by which formulas number them. */
function linksIn(workbook: string, parts: PackageParts): SavedLink[] {
  const relationships = parts.relationshipsOf(WORKBOOK);
  return elementsOf(firstOf(workbook, "externalReferences")?.inside ?? "", "externalReference")
    .slice(0, MAX_FACTS)
    .flatMap((one, index): SavedLink[] => {
      const part = relationships.find(({ id }) => id === attribute(one, "id"))?.target;
      if (part === undefined) return [];
      const xml = parts.text(part);
      const number = index + 1;
      const dde = firstOf(xml, "ddeLink");
      if (dde) {
        const target = [attribute(dde, "ddeService"), attribute(dde, "ddeTopic")].filter(Boolean).join(", ");
        return [{ kind: "DDE", target, number }];
      }
      const [to] = parts.relationshipsOf(part).filter(({ external }) => external);
      const target = readable(to?.target ?? "");
      return [{ kind: firstOf(xml, "oleLink") ? "OLE" : "workbook", target, number }];
    });
}

function readable(address: string): string {
  try {
    return decodeURIComponent(address).slice(0, MAX_FACT_TEXT);
  } catch {
    return address.slice(0, MAX_FACT_TEXT);
  }
}

const connectionsIn = (parts: PackageParts): SavedLink[] =>
  elementsOf(parts.text("xl/connections.xml"), "connection")
    .slice(0, MAX_FACTS)
    .map((one) => {
      const database = firstOf(one.inside, "dbPr");
      const stored = (database && attribute(database, "connection")) ?? "";
      return {
        kind: "connection",
        target: attribute(one, "name") ?? "",
        ...((isOn(one, "savePassword") || /\b(?:pwd|password)=[^;]/i.test(stored)) && {
          password: true as const,
        }),
      };
    });

const CORE = ["title", "subject", "creator", "keywords", "description", "lastModifiedBy", "category"];
const APP = ["Company", "Manager", "HyperlinkBase"];

const propertiesIn = (xml: string, tags: readonly string[]): SavedFile["properties"] =>
  tags.flatMap((name) => {
    const text = fromXml(firstOf(xml, name)?.inside ?? "")
      .trim()
      .slice(0, MAX_FACT_TEXT);
    return text === "" ? [] : [{ name, text }];
  });

const ownIn = (parts: PackageParts): SavedFile["properties"] =>
  elementsOf(parts.text("docProps/custom.xml"), "property")
    .slice(0, MAX_FACTS)
    .flatMap((one) => {
      const name = attribute(one, "name") ?? "";
      if (name === TEMPLATE || name === TEMPLATE_VERSION) return [];
      const text = fromXml(one.inside.replace(/<[^<>]*>/g, ""))
        .trim()
        .slice(0, MAX_FACT_TEXT);
      return [{ name, text, own: true as const }];
    });

const trackedBy = (parts: PackageParts, names: readonly string[]): string[] => [
  ...new Set(
    names
      .flatMap((name) => {
        const xml = parts.text(name);
        return [
          ...elementsOf(xml, "header").map((one) => attribute(one, "userName")),
          ...elementsOf(xml, "userInfo").map((one) => attribute(one, "name")),
        ];
      })
      .filter((name): name is string => !!name),
  ),
];

function laidOverIn(styles: string): LaidOver[] {
  return elementsOf(firstOf(styles, "dxfs")?.inside ?? "", "dxf").map(({ inside }): LaidOver => {
    const color = colorOf(firstOf(firstOf(inside, "font")?.inside ?? "", "color"));
    const filled = firstOf(inside, "fill")?.inside ?? "";
    const fill = colorOf(firstOf(filled, "bgColor") ?? firstOf(filled, "fgColor"));
    const number = firstOf(inside, "numFmt");
    const format = number && attribute(number, "formatCode");
    return { ...(color && { color }), ...(fill && { fill }), ...(format && { format }) };
  });
}

/** The two of a theme that are the same in nearly all: paper and ink. */
const THEME: Readonly<Record<number, string>> = { 0: "FFFFFF", 1: "000000" };

function colorOf(color: Element | undefined): string | undefined {
  if (!color) return undefined;
  const rgb = attribute(color, "rgb");
  return rgb !== undefined ? rgb.slice(-6).toUpperCase() : THEME[numberOf(color, "theme") ?? -1];
}
