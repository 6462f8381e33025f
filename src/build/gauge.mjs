/**
 * `npm run gauge -- FOLDER`: how many of a seeded sample of small changes to
 * src/FOLDER its tests catch, and which they don't. `--seed 2` draws another
 * sample, `--size 50` a smaller one. What was found out before is kept, and only
 * mutants whose lines or tests have changed are tried again.
 */
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { fetchPackages } from "./fetchPackages.mjs";
import { install, project, stop } from "./install.mjs";

const required = createRequire(import.meta.url);
const { folders, GENERATED } = required("./gauge/folders.cjs");
const { figures, foundIn, told } = required("./gauge/report.cjs");
const { placeOf, runsInTests, sample } = required("./gauge/sample.cjs");

/** Below the project's packages, whose jest it runs, and thrown away with them. */
const PLACE = path.join(project, "node_modules", ".cache", "rigsheet-gauge");
const HERE = path.join(project, "src", "build", "gauge");
const SIZE = 200;

function asked(words) {
  const numbers = { "--seed": 1, "--size": SIZE };
  const rest = [...words];
  for (const name of Object.keys(numbers)) {
    const at = rest.indexOf(name);
    if (at < 0) continue;
    const [, value] = rest.splice(at, 2);
    if (!/^[1-9]\d{0,5}$/.test(value ?? "")) {
      stop(`${name} takes a whole number from 1 to 999999, and got ${value ?? "nothing"}.`);
    }
    numbers[name] = Number(value);
  }
  const [folder, ...more] = rest;
  if (!folders.includes(folder) || more.length > 0) {
    stop(`npm run gauge -- FOLDER [--seed 1] [--size ${SIZE}]; the folder is one of ${folders.join(", ")}.`);
  }
  return { folder, seed: numbers["--seed"], size: numbers["--size"] };
}

function fetchTester() {
  const isThere = fetchPackages(HERE, PLACE, "Fetching the mutation tester (once; some 65 MB)…", {
    files: ["plugin.mjs"],
  });
  if (!isThere) {
    stop(
      "The mutation tester could not be fetched; npm's own words are above. Check the network, then run this again.",
    );
  }
}

const tester = (name) => import(pathToFileURL(createRequire(path.join(PLACE, "x.js")).resolve(name)).href);

/** @returns the text of each source of a folder */
function sourcesOf(folder) {
  const names = readdirSync(path.join(project, "src", folder), { recursive: true }).map(
    (name) => `src/${folder}/${name.split(path.sep).join("/")}`,
  );
  const wanted = names.filter((name) => name.endsWith(".ts") && !GENERATED.includes(name)).sort();
  return new Map(wanted.map((name) => [name, readFileSync(path.join(project, name), "utf8")]));
}

async function mutantsIn(sources) {
  const { Instrumenter } = await tester("@stryker-mutator/instrumenter");
  const quiet = { debug() {}, info() {}, warn() {}, isDebugEnabled: () => false };
  const { mutants } = await new Instrumenter(quiet).instrument(
    [...sources].map(([name, content]) => ({ name, content, mutate: true })),
    { plugins: null, excludedMutations: [], ignorers: [] },
  );
  return mutants
    .filter(({ status }) => status === undefined)
    .map(({ fileName, mutatorName, replacement, location }) => ({
      file: fileName,
      mutator: mutatorName,
      replacement,
      location,
    }));
}

/** Those outside the sample were not judged: another sample may hold them. */
function keepJudgedOnly(incremental) {
  if (!existsSync(incremental)) return;
  const kept = JSON.parse(readFileSync(incremental, "utf8"));
  for (const file of Object.values(kept.files)) {
    file.mutants = file.mutants.filter(({ status }) => !["RuntimeError", "Ignored"].includes(status));
  }
  writeFileSync(incremental, JSON.stringify(kept));
}

/** A folder within a folder, as the name of a file. */
const nameOf = (folder) => folder.replaceAll("/", "-");

/** Survivors that can't be told from the source, each with the reason. */
function judgedIn(folder) {
  const file = path.join(HERE, "judged", `${nameOf(folder)}.json`);
  return existsSync(file) ? JSON.parse(readFileSync(file, "utf8")) : [];
}

/** As the tester reads them: lines from 1, columns from 0. */
const rangeOf = ({ file, location: { start, end } }) =>
  `${file}:${start.line + 1}:${start.column}-${end.line + 1}:${end.column}`;

const { folder, seed, size } = asked(process.argv.slice(2));
install();
fetchTester();
const sources = sourcesOf(folder);
const all = await mutantsIn(sources);
const inTests = all.filter((one) => runsInTests(one, sources.get(one.file)));
const drawn = sample(inTests, sources, seed, size);
console.log(
  `src/${folder}: ${all.length} mutants, ${inTests.length} of them not only while a file is loaded; ${drawn.length} drawn with seed ${seed}.`,
);

const inPlace = (name) => path.join(PLACE, name);
const incremental = inPlace(`${nameOf(folder)}.json`);
const run = inPlace("run.json");
const progress = inPlace("progress.txt");
writeFileSync(
  run,
  JSON.stringify({
    sample: drawn.map(placeOf),
    project,
    filesOfTests: inPlace("filesOfTests.json"),
    progress,
  }),
);
rmSync(progress, { force: true });
keepJudgedOnly(incremental);
process.env.RIGSHEET_GAUGE_RUN = run;
process.env.RIGSHEET_GAUGE_FOLDER = folder;
process.chdir(project);

const { Stryker } = await tester("@stryker-mutator/core");
const found = await new Stryker({
  // Only what is in the sample, and what stands inside of it: changes that are there slow every test down.
  mutate: drawn.map(rangeOf),
  plugins: [inPlace("plugin.mjs")],
  testRunner: "file-by-file",
  jest: {
    projectType: "custom",
    configFile: "src/build/gauge/jest.config.cjs",
    enableFindRelatedTests: false,
  },
  coverageAnalysis: "perTest",
  ignoreStatic: true,
  incremental: true,
  incrementalFile: incremental,
  concurrency: 1,
  ignorePatterns: ["dist", "templates"],
  tempDirName: "dist/gauge",
  reporters: [],
  timeoutMS: 20_000,
  dryRunTimeoutMinutes: 20,
  allowConsoleColors: false,
  fileLogLevel: "off",
  logLevel: "info",
  // The tests' types are stripped, and some tests read sources.
  disableTypeChecks: false,
  warnings: false,
})
  .runMutationTest()
  // Its own words stand above: mostly a test that fails before anything is changed.
  .catch(() => stop("Nothing was measured; the reason is above. Mend what fails, then run this again."));
for (const line of told(folder, figures(foundIn(found, drawn, sources, project), judgedIn(folder)))) {
  console.log(line);
}
