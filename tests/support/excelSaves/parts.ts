/** The parts of a workbook as text, and its cells as records. Plain string work on the XML, nothing else. */
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";

export const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
export const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\r\n';

export interface Pack {
  /** Path in the zip to text, or bytes for what is no XML. The order is the zip's order. */
  files: Map<string, string | Uint8Array>;
}

export interface Cell {
  ref: string;
  /** Attributes other than r, in their order: s, t, cm, vm. */
  attributes: Map<string, string>;
  /** The `<f …>` attributes, unescaped formula text. */
  formula?: { attributes: Map<string, string>; text: string };
  /** Text of `<v>`, unescaped. */
  value?: string;
  /** The inner XML of `<is>`. */
  inline?: string;
}

export interface Area {
  r1: number;
  c1: number;
  r2: number;
  c2: number;
}

export const escapeText = (text: string): string =>
  text.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;");

export const unescapeText = (text: string): string =>
  text
    .replace(/&#x([0-9a-fA-F]+);/g, (_, code: string) => String.fromCodePoint(parseInt(code, 16)))
    .replace(/&#(\d+);/g, (_, code: string) => String.fromCodePoint(Number(code)))
    .replace(/&quot;/g, '"')
    .replace(/&apos;/g, "'")
    .replace(/&lt;/g, "<")
    .replace(/&gt;/g, ">")
    .replace(/&amp;/g, "&");

export function openPack(bytes: Uint8Array): Pack {
  const files = new Map<string, string | Uint8Array>();
  for (const [path, data] of Object.entries(unzipSync(bytes)))
    files.set(path, /\.(xml|rels|vml)$/i.test(path) ? strFromU8(data) : data);
  return { files };
}

export function savePack(pack: Pack, level: 0 | 6 = 6): Uint8Array {
  const entries: Record<string, Uint8Array> = {};
  for (const [path, data] of pack.files) entries[path] = typeof data === "string" ? strToU8(data) : data;
  return zipSync(entries, { level, mtime: new Date(Date.UTC(1980, 0, 2, 12)) });
}

export function textOf(pack: Pack, path: string): string {
  const data = pack.files.get(path);
  if (typeof data !== "string") throw new Error(`no XML part ${path}`);
  return data;
}

export function editPart(pack: Pack, path: string, edit: (xml: string) => string): void {
  pack.files.set(path, edit(textOf(pack, path)));
}

/** Adds a part, its content type, and a relationship from `owner` ("" for the package). Returns the rId. */
export function addPart(
  pack: Pack,
  part: { path: string; content: string | Uint8Array; contentType?: string; owner?: string; type?: string },
): string {
  const { path, content, contentType, owner, type } = part;
  pack.files.set(
    path,
    typeof content === "string" && !content.startsWith("<?xml") ? HEAD + content : content,
  );
  if (contentType !== undefined)
    editPart(pack, "[Content_Types].xml", (xml) =>
      xml.replace("</Types>", `<Override PartName="/${path}" ContentType="${contentType}"/></Types>`),
    );
  return owner === undefined || type === undefined ? "" : relate(pack, owner, type, `/${path}`);
}

export function relate(pack: Pack, owner: string, type: string, target: string, external = false): string {
  const rels = relsOf(owner);
  if (!pack.files.has(rels))
    pack.files.set(
      rels,
      `${HEAD}<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"></Relationships>`,
    );
  const taken = [...textOf(pack, rels).matchAll(/Id="rId(\d+)"/g)].map((match) => Number(match[1]));
  const id = `rId${Math.max(0, ...taken) + 1}`;
  const mode = external ? ' TargetMode="External"' : "";
  editPart(pack, rels, (xml) =>
    xml
      .replace(/<Relationships([^>]*)\/>/, "<Relationships$1></Relationships>")
      .replace(
        "</Relationships>",
        `<Relationship Id="${id}" Type="${type}" Target="${target}"${mode}/></Relationships>`,
      ),
  );
  return id;
}

function relsOf(owner: string): string {
  const slash = owner.lastIndexOf("/");
  return `${owner.slice(0, slash + 1)}_rels/${owner.slice(slash + 1)}.rels`;
}

export function defaultType(pack: Pack, extension: string, contentType: string): void {
  editPart(pack, "[Content_Types].xml", (xml) =>
    xml.includes(`Extension="${extension}"`)
      ? xml
      : xml.replace(/(<Types[^>]*>)/, `$1<Default Extension="${extension}" ContentType="${contentType}"/>`),
  );
}

/** Sheet names and paths, in the workbook's order. */
export function sheetsOf(pack: Pack): { name: string; path: string }[] {
  const targets = new Map<string, string>();
  for (const tag of textOf(pack, "xl/_rels/workbook.xml.rels").match(/<Relationship [^>]*>/g) ?? []) {
    const a = readAttributes(tag);
    targets.set(a.get("Id") ?? "", (a.get("Target") ?? "").replace(/^\/xl\//, ""));
  }
  const list = /<sheets>([\s\S]*?)<\/sheets>/.exec(textOf(pack, "xl/workbook.xml"));
  return (list?.[1]?.match(/<sheet [^>]*>/g) ?? []).map((tag) => {
    const a = readAttributes(tag);
    return { name: unescapeText(a.get("name") ?? ""), path: `xl/${targets.get(a.get("r:id") ?? "") ?? ""}` };
  });
}

export function sheetPath(pack: Pack, name: string): string {
  const sheet = sheetsOf(pack).find((one) => one.name === name);
  if (sheet === undefined) throw new Error(`no sheet ${name}`);
  return sheet.path;
}

export function readAttributes(tag: string): Map<string, string> {
  const found = new Map<string, string>();
  for (const match of tag.matchAll(/([\w:]+)="([^"]*)"/g)) found.set(match[1] ?? "", match[2] ?? "");
  return found;
}

const CELL = /<c ([^>]*?)(?:\/>|>([\s\S]*?)<\/c>)/g;

export function parseCell(attributeText: string, body: string | undefined): Cell {
  const attributes = readAttributes(attributeText);
  const ref = attributes.get("r") ?? "";
  attributes.delete("r");
  const cell: Cell = { ref, attributes };
  const f = /<f(?:\s([^>]*?))?(?:\/>|>([\s\S]*?)<\/f>)/.exec(body ?? "");
  if (f !== null) cell.formula = { attributes: readAttributes(f[1] ?? ""), text: unescapeText(f[2] ?? "") };
  const v = /<v(?:\s[^>]*)?(?:\/>|>([\s\S]*?)<\/v>)/.exec(body ?? "");
  if (v !== null) cell.value = unescapeText(v[1] ?? "");
  const is = /<is>([\s\S]*?)<\/is>/.exec(body ?? "");
  if (is !== null) cell.inline = is[1] ?? "";
  return cell;
}

const list = (attributes: Map<string, string>): string =>
  [...attributes].map(([name, value]) => ` ${name}="${value}"`).join("");

export function writeCell(cell: Cell): string {
  const start = `<c r="${cell.ref}"${list(cell.attributes)}`;
  const space = cell.value !== undefined && /^\s|\s$|\n/.test(cell.value) ? ' xml:space="preserve"' : "";
  const f =
    cell.formula === undefined
      ? ""
      : `<f${list(cell.formula.attributes)}>${escapeText(cell.formula.text)}</f>`.replace("></f>", "/>");
  const v = cell.value === undefined ? "" : `<v${space}>${escapeText(cell.value)}</v>`;
  const is = cell.inline === undefined ? "" : `<is>${cell.inline}</is>`;
  return f + v + is === "" ? `${start}/>` : `${start}>${f}${v}${is}</c>`;
}

/** Runs over all cells of a sheet's XML; what `edit` returns is written, nothing returned leaves the text as it is. */
export function editCells(xml: string, edit: (cell: Cell) => Cell | undefined): string {
  const start = xml.indexOf("<sheetData");
  const end = xml.indexOf("</sheetData>");
  if (start < 0 || end < 0) return xml;
  const data = xml.slice(start, end).replace(CELL, (whole, a: string, body: string | undefined) => {
    const edited = edit(parseCell(a, body));
    return edited === undefined ? whole : writeCell(edited);
  });
  return xml.slice(0, start) + data + xml.slice(end);
}

export function eachSheet(pack: Pack, edit: (xml: string, name: string, path: string) => string): void {
  for (const { name, path } of sheetsOf(pack)) editPart(pack, path, (xml) => edit(xml, name, path));
}

/** Puts cells into a sheet: an existing cell keeps its style, a missing one is put into its row (added if need be). */
export function putCell(xml: string, ref: string, make: (old: Cell) => Cell): string {
  let done = false;
  const edited = editCells(xml, (cell) => {
    if (cell.ref !== ref) return undefined;
    done = true;
    return make(cell);
  });
  if (done) return edited;
  const at = parseRef(ref);
  const text = writeCell(make({ ref, attributes: new Map() }));
  const row = new RegExp(`<row r="${at.r}"([^>]*?)(/>|>([\\s\\S]*?)</row>)`);
  const found = row.exec(xml);
  if (found === null) throw new Error(`no row for ${ref}`);
  const cells = (found[3] ?? "").match(/<c [^>]*?(?:\/>|>[\s\S]*?<\/c>)/g) ?? [];
  const index = cells.findIndex((one) => parseRef(/r="([A-Z]+\d+)"/.exec(one)?.[1] ?? "A1").c > at.c);
  cells.splice(index < 0 ? cells.length : index, 0, text);
  return xml.replace(row, () => `<row r="${at.r}"${found[1] ?? ""}>${cells.join("")}</row>`);
}

export function columnName(column: number): string {
  let name = "";
  for (let n = column; n > 0; n = Math.floor((n - 1) / 26))
    name = String.fromCharCode(65 + ((n - 1) % 26)) + name;
  return name;
}

export const refOf = (r: number, c: number): string => `${columnName(c)}${r}`;

export function parseRef(ref: string): { r: number; c: number } {
  const match = /^\$?([A-Z]+)\$?(\d+)$/.exec(ref);
  if (match === null) throw new Error(`no cell ${ref}`);
  let c = 0;
  for (const letter of match[1] ?? "") c = c * 26 + letter.charCodeAt(0) - 64;
  return { r: Number(match[2]), c };
}

export function parseArea(text: string): Area {
  const [from, to] = text.split(":");
  const a = parseRef(from ?? "");
  const b = to === undefined ? a : parseRef(to);
  return { r1: a.r, c1: a.c, r2: b.r, c2: b.c };
}

export const areaText = (a: Area): string =>
  a.r1 === a.r2 && a.c1 === a.c2 ? refOf(a.r1, a.c1) : `${refOf(a.r1, a.c1)}:${refOf(a.r2, a.c2)}`;

/** Plain text of each shared string. */
export function sharedStrings(pack: Pack): string[] {
  return (textOf(pack, "xl/sharedStrings.xml").match(/<si>[\s\S]*?<\/si>|<si\/>/g) ?? []).map(inlineText);
}

export function inlineText(xml: string): string {
  const runs = xml.replace(/<rPh[\s\S]*?<\/rPh>/g, "").match(/<t(?:\s[^>]*)?>[\s\S]*?<\/t>/g) ?? [];
  return unescapeText(runs.map((run) => run.replace(/^<t[^>]*>|<\/t>$/g, "")).join(""));
}

/** Places of defined names that are one area: name to sheet and area. */
export function namesOf(pack: Pack): Map<string, { sheet: string; area: Area } | null> {
  const names = new Map<string, { sheet: string; area: Area } | null>();
  const all = /<definedName ([^>]*)>([^<]*)<\/definedName>/g;
  for (const match of textOf(pack, "xl/workbook.xml").matchAll(all)) {
    const a = readAttributes(match[1] ?? "");
    if (a.has("localSheetId")) continue;
    const place = /^(?:'((?:[^']|'')+)'|([^'!]+))!(\$?[A-Z]+\$?\d+(?::\$?[A-Z]+\$?\d+)?)$/.exec(
      unescapeText(match[2] ?? ""),
    );
    const sheet = (place?.[1] ?? place?.[2] ?? "").replace(/''/g, "'");
    names.set(
      (a.get("name") ?? "").toLowerCase(),
      place === null ? null : { sheet, area: parseArea(place[3] ?? "") },
    );
  }
  return names;
}
