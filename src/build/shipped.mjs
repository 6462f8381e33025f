/**
 * What the package ships of others: files of libraries that stay whole and can
 * be replaced, and the notices of all that is bundled.
 */
import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import { project } from "./install.mjs";

/** Of each package the files that are used; with it go what says its version and its licence. */
const WHOLE = {
  "@odoo/o-spreadsheet": [
    "dist/o_spreadsheet.cjs",
    "dist/o_spreadsheet.min.iife.js",
    "dist/o_spreadsheet.xml",
    "dist/o_spreadsheet.css",
  ],
  "@odoo/owl": ["dist/owl.cjs.js", "dist/owl.iife.min.js"],
  "chart.js": ["dist/chart.umd.min.js"],
  bootstrap: ["dist/css/bootstrap.min.css"],
  "font-awesome": [
    "css/font-awesome.min.css",
    "fonts/fontawesome-webfont.woff2",
    "fonts/fontawesome-webfont.woff",
    "fonts/fontawesome-webfont.ttf",
  ],
  "@resvg/resvg-wasm": ["index.js", "index_bg.wasm"],
  "dejavu-fonts-ttf": ["ttf/DejaVuSans.ttf", "ttf/DejaVuSans-Bold.ttf"],
};

/** Fonts that ours are made of (printFonts.ts). */
const MADE_FROM = { "@expo-google-fonts/source-sans-3": "rigsheet-sans" };

/** Licences whose text some packages name without bringing it. */
const TEXTS = ["MPL-2.0", "OFL-1.1"];

const LICENCE_FILE = /^(?:licen[cs]e|copying|notice)(?:[._-]|$)/i;

const installed = (name) => path.join(project, "node_modules", name);
const factsOf = (name) => JSON.parse(readFileSync(path.join(installed(name), "package.json"), "utf8"));
const licenceFiles = (name) => readdirSync(installed(name)).filter((file) => LICENCE_FILE.test(file));

/** Copies the libraries that stay whole to `dist/library`. */
export function copyLibraries() {
  const library = path.join(project, "dist", "library");
  rmSync(library, { recursive: true, force: true });
  for (const [name, files] of Object.entries(WHOLE)) {
    for (const file of [...files, "package.json", ...licenceFiles(name)]) {
      const to = path.join(library, name, file);
      mkdirSync(path.dirname(to), { recursive: true });
      cpSync(path.join(installed(name), file), to);
    }
  }
  cpSync(path.join(project, "src", "build", "grid.cjs"), path.join(library, "grid.cjs"));
}

/** @returns the packages of which a build took modules */
function bundledIn(stats) {
  const names = new Set();
  const look = (module) => {
    const inside = /^.*[\\/]node_modules[\\/]((?:@[^\\/]+[\\/])?[^\\/]+)[\\/]/.exec(module.resource ?? "");
    if (inside) names.add(inside[1].replace("\\", "/"));
    for (const part of module.modules ?? []) look(part);
  };
  for (const { compilation } of stats.stats) for (const module of compilation.modules) look(module);
  return [...names];
}

export const NOTICES_PARTED = `\n\n${"=".repeat(78)}\n\n`;

/** Who made an installed package, and under which licence. */
export function noticeOf(name) {
  const { version, license, repository, author } = factsOf(name);
  const home = typeof repository === "string" ? repository : repository?.url;
  const texts = licenceFiles(name).map((file) => readFileSync(path.join(installed(name), file), "utf8"));
  const maker = typeof author === "string" ? author : author?.name;
  const whole =
    name in WHOLE
      ? `Shipped unmodified in library/${name}, where another version can take its place.`
      : name in MADE_FROM
        ? `The fonts of library/${MADE_FROM[name]} are made from its: fewer characters, no hinting, another name.`
        : "";
  const named = TEXTS.filter((id) => texts.length === 0 && license.includes(id));
  const body = [...texts, ...named.map((id) => `The text of ${id} stands at the end.`)];
  return [
    `${name} ${version}: ${license}`,
    [maker && `By ${maker}.`, home && `Source: ${home.replace(/^git\+|\.git$/g, "")}`, whole]
      .filter(Boolean)
      .join("\n"),
    ...body.map((text) => text.trim()),
  ].join("\n\n");
}

/** Writes who made what is bundled or shipped whole, and under which licence. */
export function writeNotices(stats) {
  const names = [...new Set([...Object.keys(WHOLE), ...Object.keys(MADE_FROM), ...bundledIn(stats)])].sort();
  const notices = names.map(noticeOf);
  const texts = TEXTS.map((id) =>
    readFileSync(path.join(project, "src", "build", "licences", `${id}.txt`), "utf8").trim(),
  );
  const head = "Rigsheet contains, or comes with, the work of others. Each part keeps its own licence.";
  const file = path.join(project, "dist", "NOTICES.txt");
  writeFileSync(file, `${[head, ...notices, ...texts].join(NOTICES_PARTED)}\n`);
  // Served by itself, without the rest.
  cpSync(file, path.join(project, "dist", "addin", "NOTICES.txt"));
}
