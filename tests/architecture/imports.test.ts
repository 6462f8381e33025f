/**
 * Imports go one way: a file may import from its own layer and from layers
 * above it in this list, and from the packages that its layer is allowed.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import ts from "typescript";
import { sourceFiles } from "../support/sourceFiles";

const source = path.join(__dirname, "../../src");

/** First what everything may use; last what nothing imports. */
const LAYERS = [
  "version",
  "formula",
  "engine",
  "functions",
  "workbooks",
  "help",
  "pictures",
  "review",
  "compare",
  "upgrade",
  "standards",
  "proposal",
  "training",
  "jobs",
  "hosts/pdf",
  "hosts/grid",
  "hosts/headless",
  "hosts/file",
  "hosts/storage",
  "pane",
  "hosts/desk",
  "hosts/excel",
  "build",
  "cli",
];

/** Packages from outside that a layer may import; Node's own count as `node`. */
const PACKAGES: Readonly<Record<string, readonly string[]>> = {
  formula: ["@borgar/fx"],
  engine: ["geomagnetism"],
  functions: [],
  help: [],
  workbooks: [],
  pictures: ["d3-scale", "d3-shape"],
  review: [],
  compare: [],
  upgrade: [],
  standards: [],
  training: [],
  jobs: [],
  proposal: [],
  "hosts/pdf": ["fontkit", "pdfkit", "svg-to-pdfkit"],
  "hosts/storage": ["idb", "node"],
  "hosts/grid": ["@odoo/o-spreadsheet"],
  "hosts/headless": ["@odoo/o-spreadsheet", "@resvg/resvg-wasm", "fflate", "node"],
  "hosts/file": ["fflate", "hucre", "node"],
  "hosts/desk": ["@odoo/o-spreadsheet", "@odoo/owl", "fflate", "node"],
  "hosts/excel": ["@microsoft/office-js-helpers", "fflate"],
  pane: ["@microsoft/office-js-helpers"],
  cli: ["node", "piscina"],
  build: ["hucre", "node", "subset-font"],
};

const layerOf = (file: string): string | undefined => {
  const inside = path.relative(source, file).split(path.sep).join("/");
  return LAYERS.find((layer) => inside === `${layer}.ts` || inside.startsWith(`${layer}/`));
};

const importsOf = (file: string): string[] =>
  ts.preProcessFile(readFileSync(file, "utf8")).importedFiles.map(({ fileName }) => fileName);

const all = sourceFiles(source);

test("every source file belongs to a layer", () => {
  expect(all.length).toBeGreaterThan(100);
  expect(
    all.filter((file) => layerOf(file) === undefined).map((file) => path.relative(source, file)),
  ).toEqual([]);
});

test("imports go one way through the layers", () => {
  const wrong = all.flatMap((file) => {
    const from = layerOf(file)!;
    return importsOf(file)
      .filter((target) => target.startsWith("."))
      .map((target) => layerOf(`${path.resolve(path.dirname(file), target)}.ts`) ?? target)
      .filter((to) => !LAYERS.includes(to) || LAYERS.indexOf(to) > LAYERS.indexOf(from))
      .map((to) => `${path.relative(source, file)} imports from ${to}`);
  });
  expect(wrong).toEqual([]);
});

test("a layer imports only the packages that it may", () => {
  const wrong = all.flatMap((file) => {
    const allowed = PACKAGES[layerOf(file)!] ?? [];
    return importsOf(file)
      .filter((target) => !target.startsWith("."))
      .map((target) => (target.startsWith("node:") ? "node" : target))
      .filter((target) => !allowed.some((one) => target === one || target.startsWith(`${one}/`)))
      .map((target) => `${path.relative(source, file)} imports ${target}`);
  });
  expect(wrong).toEqual([]);
});

test("no file imports itself by way of others", () => {
  const known = new Set(all);
  const next = new Map(
    all.map((file) => [
      file,
      importsOf(file)
        .filter((target) => target.startsWith("."))
        .map((target) => `${path.resolve(path.dirname(file), target)}.ts`)
        .filter((target) => known.has(target)),
    ]),
  );
  const state = new Map<string, "open" | "done">();
  const rings: string[] = [];
  const visit = (file: string, trail: string[]): void => {
    if (state.get(file) === "done") return;
    if (state.get(file) === "open") {
      rings.push(
        [...trail.slice(trail.indexOf(file)), file].map((one) => path.relative(source, one)).join(" -> "),
      );
      return;
    }
    state.set(file, "open");
    for (const target of next.get(file)!) visit(target, [...trail, file]);
    state.set(file, "done");
  };
  for (const file of all) visit(file, []);
  // A type-only ring between a declaration and its dispatcher is how the two name each other's shapes.
  expect(rings.filter((ring) => !/functions\/core\//.test(ring))).toEqual([]);
});
