/** The files of the desk's page as a folder or one file brings them. */
import { readFile } from "node:fs/promises";
import path from "node:path";
import { gzipSync } from "node:zlib";
import { assetsIn } from "../../hosts/desk/server/assets";
import { libraryFile } from "../../hosts/headless/libraryFile";
import { foldedFont } from "./foldedFont";
import { withIconsOf } from "./iconFont";
import { leanFont } from "./leanFont";

export type Files = Map<string, Uint8Array>;

/** Each by its name in its own folder. */
export interface DeskFiles {
  readonly page: Files;
  readonly help: Files;
  readonly parts: Files;
}

/** Formats that no browser which runs this page asks for. */
const OLD_FONT = /\.(?:woff|ttf)$/;
const ICON_FONT = "library/fonts/fontawesome-webfont.woff2";
const ICON_STYLE = "library/css/font-awesome.css";
const NAMES_ICONS = /^(?:desk\.js|library\/o_spreadsheet\.(?:js|xml))$/;
/** With each library that stays whole goes its licence. */
const LICENCES: readonly (readonly [name: string, packageName: string, file: string])[] = [
  ["library/o_spreadsheet.LICENSE.txt", "@odoo/o-spreadsheet", "LICENSE"],
  ["library/owl.LICENSE.txt", "@odoo/owl", "LICENSE"],
];
const PACKED: readonly (readonly [name: string, packageName: string, file: string])[] = [
  ["pictures/renderer.wasm", "@resvg/resvg-wasm", "index_bg.wasm"],
  ["pictures/regular.ttf", "dejavu-fonts-ttf", "ttf/DejaVuSans.ttf"],
  ["pictures/bold.ttf", "dejavu-fonts-ttf", "ttf/DejaVuSans-Bold.ttf"],
];

/** Where the format has the system that packed it (RFC 1952, 2.3.1), and its word for "unknown". */
const SYSTEM_AT = 9;
const NO_SYSTEM = 255;

/** Each block has a code of its own, and these parts are of many kinds: shorter ones than usual fit them better. */
const SHORT_BLOCKS = 6;

/** Whatever a server packs or not, it weighs this. Of the same bytes the same, on every system. */
export function packed(bytes: Uint8Array): Uint8Array {
  const whole = gzipSync(bytes, { level: 9, memLevel: SHORT_BLOCKS });
  whole[SYSTEM_AT] = NO_SYSTEM;
  return whole;
}

/** @param dist where the build put everything */
export async function deskFiles(dist: string): Promise<DeskFiles> {
  const page: Files = new Map();
  const help: Files = new Map();
  for (const [url, { file }] of assetsIn(path.join(dist, "desk"))) {
    const name = url.slice(1);
    if (OLD_FONT.test(name)) continue;
    // The server finds a page of the help without its ending too.
    if (name.startsWith("help/")) {
      if (path.extname(name) !== "") help.set(name.slice("help/".length), await readFile(file));
    } else page.set(name, await readFile(file));
  }
  page.set(ICON_FONT, await withIconsOf(page.get(ICON_FONT)!, text(page, ICON_STYLE), namingIcons(page)));
  for (const [name, packageName, file] of LICENCES)
    page.set(name, await readFile(libraryFile(packageName, file)));
  const parts: Files = new Map();
  for (const [name, packageName, file] of PACKED) {
    const bytes = await readFile(libraryFile(packageName, file));
    parts.set(name, packed(name.endsWith(".ttf") ? foldedFont(leanFont(bytes)) : bytes));
  }
  return { page, help, parts };
}

const text = (files: Files, name: string): string => new TextDecoder().decode(files.get(name)!);

const namingIcons = (files: Files): string[] =>
  [...files.keys()].filter((name) => NAMES_ICONS.test(name)).map((name) => text(files, name));
