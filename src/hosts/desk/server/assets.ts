/** The files that the desk serves: these and no others. */
import { readdirSync } from "node:fs";
import path from "node:path";
import { libraryFile } from "../../headless/libraryFile";
import { PDF_SCRIPTS } from "../../../pane/loadPdf";
import { NOTICES_PAGE } from "../protocol";

export interface Asset {
  readonly file: string;
  readonly type: string;
}

const PAGE = "text/html; charset=utf-8";
const SCRIPT = "text/javascript; charset=utf-8";
const STYLE = "text/css; charset=utf-8";
const TEXT = "text/plain; charset=utf-8";

/** Served as they came, unmodified, so that each can be replaced by another version. */
const LIBRARIES: readonly (readonly [url: string, packageName: string, file: string, type: string])[] = [
  ["/library/owl.js", "@odoo/owl", "dist/owl.iife.min.js", SCRIPT],
  ["/library/chart.js", "chart.js", "dist/chart.umd.min.js", SCRIPT],
  ["/library/o_spreadsheet.js", "@odoo/o-spreadsheet", "dist/o_spreadsheet.min.iife.js", SCRIPT],
  ["/library/o_spreadsheet.xml", "@odoo/o-spreadsheet", "dist/o_spreadsheet.xml", "application/xml"],
  ["/library/o_spreadsheet.css", "@odoo/o-spreadsheet", "dist/o_spreadsheet.css", STYLE],
  ["/library/bootstrap.css", "bootstrap", "dist/css/bootstrap.min.css", STYLE],
  ["/library/css/font-awesome.css", "font-awesome", "css/font-awesome.min.css", STYLE],
  [
    "/library/fonts/fontawesome-webfont.woff2",
    "font-awesome",
    "fonts/fontawesome-webfont.woff2",
    "font/woff2",
  ],
  ["/library/fonts/fontawesome-webfont.woff", "font-awesome", "fonts/fontawesome-webfont.woff", "font/woff"],
  ["/library/fonts/fontawesome-webfont.ttf", "font-awesome", "fonts/fontawesome-webfont.ttf", "font/ttf"],
];

/** Scripts that a page adds when somebody prints. */
export const LOADED_LATER: readonly string[] = PDF_SCRIPTS;

/** @param folder where the build put the page's own files */
export function assetsIn(folder: string): ReadonlyMap<string, Asset> {
  return new Map<string, Asset>([
    ["/desk.js", { file: path.join(folder, "desk.js"), type: SCRIPT }],
    ...LOADED_LATER.map((name): [string, Asset] => [
      `/${name}`,
      { file: path.join(folder, name), type: SCRIPT },
    ]),
    ["/pane.css", { file: path.join(folder, "pane.css"), type: STYLE }],
    [`/help/${NOTICES_PAGE}`, { file: path.join(folder, "..", "NOTICES.txt"), type: TEXT }],
    ["/desk.css", { file: path.join(folder, "desk.css"), type: STYLE }],
    ...helpIn(path.join(folder, "..", "help")),
    ...LIBRARIES.map(([url, packageName, file, type]): [string, Asset] => [
      url,
      { file: libraryFile(packageName, file), type },
    ]),
  ]);
}

const HELP_TYPES: Readonly<Record<string, string>> = { ".html": PAGE, ".css": STYLE, ".js": SCRIPT };

/** The help as the build wrote it; `/help/` is its index, and a page is found without its ending too. */
function helpIn(folder: string): [string, Asset][] {
  return readdirSync(folder).flatMap((name) => {
    const type = HELP_TYPES[path.extname(name)];
    if (!type) return [];
    const asset = { file: path.join(folder, name), type };
    const short = name === "index.html" ? "" : path.basename(name, ".html");
    return [`/help/${name}`, ...(type === PAGE ? [`/help/${short}`] : [])].map((url): [string, Asset] => [
      url,
      asset,
    ]);
  });
}
