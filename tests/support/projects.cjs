/**
 * Which tests need what, found by what they import: a test of pure parts runs
 * anywhere and at once, others want the calculation engine, what is built in
 * dist/, LibreOffice or a browser. A file belongs to the dearest that it needs.
 */
const { existsSync, readdirSync, readFileSync } = require("node:fs");
const path = require("node:path");

const tests = path.join(__dirname, "..");
const IMPORTED =
  /(?:\bfrom|\bimport|\bimport\(|\brequire\(|\brequire\.resolve\(|\bjest\.mock\()\s*"([^"]+)"/g;

/** Dearest first; each tells by a test's own text, or by that of a helper in tests/ which it imports. */
const NEEDS = [
  ["browser", (text) => /from "playwright-core"/.test(text)],
  ["office", (text) => /\b(?:withLibreOffice|recalculated|convertedBy)\(/.test(text)],
  ["built", (text) => /"node:child_process"/.test(text)],
  ["engine", (text) => /\/src\/(?:hosts|cli|build)\//.test(text)],
];
/** Define what the others call. */
const DEFINE = ["tools.ts", "libreOffice.ts"].map((name) => path.join(__dirname, name));

/** @returns the test files of each project, "pure" for the rest */
function testsByNeed() {
  const texts = new Map();
  const textOf = (file) => {
    if (!texts.has(file)) texts.set(file, readFileSync(file, "utf8"));
    return texts.get(file);
  };
  const helpersOf = (file) =>
    [...textOf(file).matchAll(IMPORTED)]
      .filter(([, target]) => target.startsWith("."))
      .flatMap(([, target]) => {
        const found = path.resolve(path.dirname(file), target);
        return [found, `${found}.ts`, `${found}.mjs`, `${found}.cjs`, path.join(found, "index.ts")];
      })
      .filter((one) => /\.(?:ts|mjs|cjs)$/.test(one) && one.startsWith(tests + path.sep) && existsSync(one));
  const withHelpers = (file, known = new Set()) => {
    if (known.has(file)) return known;
    known.add(file);
    for (const helper of helpersOf(file)) withHelpers(helper, known);
    return known;
  };
  const found = { pure: [], engine: [], built: [], office: [], browser: [] };
  for (const name of readdirSync(tests, { recursive: true }).sort()) {
    if (!name.endsWith(".test.ts")) continue;
    const file = path.join(tests, name);
    const read = [...withHelpers(file)].filter((one) => !DEFINE.includes(one)).map(textOf);
    const [need] = NEEDS.find(([, isNeeded]) => read.some(isNeeded)) ?? ["pure"];
    found[need].push(file);
  }
  return found;
}

module.exports = { testsByNeed };
