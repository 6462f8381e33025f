/**
 * Writes src/functions/all.ts: the list of every sheet function, found by
 * reading the folders, so that adding a function is adding one file.
 */
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";

const folder = path.join(path.dirname(fileURLToPath(import.meta.url)), "..", "functions");
const GROUPS = ["sightline", "signal", "power", "tuners", "distribution", "bonding", "estimate", "about"];

/** Every declaration's constant and the module that it is in. */
function declarations() {
  return GROUPS.flatMap((group) => {
    let files = [];
    try {
      files = readdirSync(path.join(folder, group)).filter((file) => file.endsWith(".ts"));
    } catch {
      return [];
    }
    return files.sort().flatMap((file) => {
      const text = readFileSync(path.join(folder, group, file), "utf8");
      const names = [...text.matchAll(/^export const (\w+) = declare\(/gm)].map((match) => match[1]);
      return names.map((name) => ({ name, from: `./${group}/${file.slice(0, -3)}` }));
    });
  });
}

/** The sheet functions' names: the constants, in capitals. */
export const functionNames = () => declarations().map(({ name }) => name.toUpperCase());

export function listFunctions() {
  const found = declarations();
  return [
    "// Generated from the folders beside this file by `npm run generate`; do not edit.",
    'import type { SheetFunction } from "./core/declare";',
    ...found.map(({ name, from }) => `import { ${name} } from "${from}";`),
    "",
    "/** Every sheet function, by group and then by name. */",
    "export const allFunctions: readonly SheetFunction[] = [",
    ...found.map(({ name }) => `  ${name},`),
    "];",
    "",
  ].join("\n");
}

/** Leaves a list that is right as it is: what reads the sources meanwhile never finds it half written. */
export function writeFunctionList() {
  const file = path.join(folder, "all.ts");
  const list = listFunctions();
  if (!existsSync(file) || readFileSync(file, "utf8") !== list) writeFileSync(file, list);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) writeFunctionList();
