/**
 * How the mutation tester runs jest here: the sample only, and one test file
 * after the other until one fails. By itself it loads every test file for every
 * mutant.
 *
 * Copied beside the tester's packages before it runs, so it uses nothing else of
 * the project.
 */
import { appendFileSync, existsSync, readFileSync, writeFileSync } from "node:fs";
import { commonTokens, declareFactoryPlugin, PluginKind } from "@stryker-mutator/api/plugin";
import { strykerPlugins as runners } from "@stryker-mutator/jest-runner";

/** Written by whoever starts the run: the sample's names, and a file for what the first run tells. */
const { sample, project, filesOfTests, progress } = JSON.parse(
  readFileSync(process.env.RIGSHEET_GAUGE_RUN, "utf8"),
);
const chosen = new Set(sample);

const isChosen = (mutant) => chosen.has(nameOf(mutant));

function nameOf({ fileName, mutatorName, replacement, location: { start, end } }) {
  const file = fileName.slice(project.length + 1).replaceAll("\\", "/");
  return [file, start.line, start.column, end.line, end.column, mutatorName, replacement].join("|");
}

const [{ factory: jestFactory }] = runners;

/** Test files that are run by themselves. */
const ALONE = 3;

class FileByFile {
  #jest;
  #files;

  constructor(jest) {
    this.#jest = jest;
  }

  init() {
    return this.#jest.init();
  }

  capabilities() {
    return this.#jest.capabilities();
  }

  /** A crashed runner is followed by a new one, which must know too where each test stands. */
  async dryRun(options) {
    const result = await this.#jest.dryRun(options);
    const files = {};
    for (const { id, fileName, timeSpentMs } of result.tests ?? []) {
      files[id] ??= [];
      files[id].push({ fileName, timeSpentMs });
    }
    writeFileSync(filesOfTests, JSON.stringify(files));
    return result;
  }

  async mutantRun(options) {
    // Stands within one of the sample, or in its place; counts neither way.
    if (!isChosen(options.activeMutant)) return { status: "error", errorMessage: "not in the sample" };
    const judges = this.#nearestFirst(options);
    // Loading takes longer than most tests: a few by themselves, where most are caught, then the rest at once.
    const turns = [...judges.slice(0, ALONE).map((one) => [one]), judges.slice(ALONE)];
    let result = { status: "survived", nrOfTests: 0 };
    for (const turn of turns.filter(({ length }) => length > 0)) {
      this.#jest.jestConfig = { ...this.#jest.jestConfig, testMatch: turn.map(({ file }) => file) };
      const found = await this.#jest.mutantRun({
        ...options,
        testFilter: turn.flatMap(({ tests }) => tests),
      });
      result = { ...found, nrOfTests: (found.nrOfTests ?? 0) + result.nrOfTests };
      if (found.status !== "survived") break;
    }
    appendFileSync(progress, `${result.status} ${nameOf(options.activeMutant)}\n`);
    return result;
  }

  /** @returns the files of the tests asked for: those of the mutated file's own folder, then the quickest */
  #nearestFirst({ testFilter = [], activeMutant: { fileName } }) {
    this.#files ??= existsSync(filesOfTests) ? JSON.parse(readFileSync(filesOfTests, "utf8")) : {};
    const found = new Map();
    for (const id of testFilter) {
      for (const { fileName: file, timeSpentMs } of this.#files[id] ?? []) {
        const entry = found.get(file) ?? { file, tests: [], time: 0 };
        entry.tests.push(id);
        entry.time += timeSpentMs;
        found.set(file, entry);
      }
    }
    const own = fileName
      .slice(project.length + "/src".length, fileName.lastIndexOf("/") + 1)
      .replaceAll("\\", "/");
    const isFar = ({ file }) => (file.replaceAll("\\", "/").includes(`/tests${own}`) ? 0 : 1);
    return [...found.values()].sort((a, b) => isFar(a) - isFar(b) || a.time - b.time);
  }
}

function fileByFile(injector) {
  return new FileByFile(jestFactory(injector));
}
fileByFile.inject = [commonTokens.injector];

export { strykerValidationSchema } from "@stryker-mutator/jest-runner";

export const strykerPlugins = [declareFactoryPlugin(PluginKind.TestRunner, "file-by-file", fileByFile)];
