/**
 * Programs of the system that some tests need. Where one is missing its tests
 * are skipped under their names, with how to install it; in a build with
 * CI=true they fail instead, so that nothing is skipped unseen.
 */
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { readFile } from "node:fs/promises";
import path from "node:path";
import {
  convertedBy,
  firstThatStarts,
  libreOffice,
  type Conversion,
  type SystemProgram,
} from "./libreOffice";

const memo = <T>(make: () => T): (() => T) => {
  let made: { value: T } | undefined;
  return () => (made ??= { value: make() }).value;
};

/** For a program that says its version by another word. */
const whichStarts = (program: string, word: string): string | undefined =>
  spawnSync(program, [word], { stdio: "ignore" }).status === 0 ? program : undefined;

const chromium = memo((): SystemProgram => ({
  name: "Chromium",
  hint: "install Chromium (Debian and Ubuntu: apt-get install chromium), or set CHROMIUM to its program",
  path: firstThatStarts([
    ...(process.env.CHROMIUM ? [process.env.CHROMIUM] : []),
    "chromium",
    "chromium-browser",
    "google-chrome",
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  ]),
}));

const firefox = memo((): SystemProgram => ({
  name: "Firefox",
  hint: "install Firefox (Debian: apt-get install firefox-esr), or set FIREFOX to its program",
  path: firstThatStarts([
    ...(process.env.FIREFOX ? [process.env.FIREFOX] : []),
    "firefox-esr",
    "firefox",
    "/Applications/Firefox.app/Contents/MacOS/firefox",
  ]),
}));

const poppler = memo((): SystemProgram => ({
  name: "poppler's tools",
  hint: "install them (Debian and Ubuntu: apt-get install poppler-utils)",
  path: whichStarts("pdftotext", "-v"),
}));

const xmllint = memo((): SystemProgram => ({
  name: "xmllint",
  hint: "install libxml2's tools (Debian and Ubuntu: apt-get install libxml2-utils)",
  path: firstThatStarts(["xmllint"]),
}));

const python = memo((): SystemProgram => ({
  name: "Python 3",
  hint: "install Python 3 (Debian and Ubuntu: apt-get install python3)",
  path: firstThatStarts(["python3"]),
}));

/** Of the packages that `npm test` fetches each into a place of its own. */
const fetched = (place: string, ...names: string[]): string =>
  path.join(__dirname, "..", "..", "node_modules", ".cache", place, "node_modules", ...names);

const VALIDATOR = fetched("rigsheet-validator", "@xarsh", "ooxml-validator-linux-x64", "ooxml-validator");
const OFFICE_JS = fetched("rigsheet-office-js", "@microsoft", "office-js", "dist");
/** A package of its own, which `npm test` fetches. */
const validator = memo((): SystemProgram => ({
  name: "the Open XML SDK's validator",
  hint: "`npm test` fetches it on Linux on x64, which is what it is made for",
  path: existsSync(VALIDATOR) ? VALIDATOR : undefined,
}));

const officeJs = memo((): SystemProgram => ({
  name: "Microsoft's office.js",
  hint: "`npm test` fetches it",
  path: existsSync(OFFICE_JS) ? OFFICE_JS : undefined,
}));

const gnumeric = memo((): SystemProgram => ({
  name: "Gnumeric",
  hint: "install Gnumeric (Debian and Ubuntu: apt-get install gnumeric)",
  path: firstThatStarts(["ssconvert"]),
}));

const LONG_MS = 300_000;

const ngspice = memo((): SystemProgram => ({
  name: "ngspice",
  hint: "install ngspice (Debian and Ubuntu: apt-get install ngspice)",
  path: firstThatStarts(["ngspice"]),
}));

function withTool(
  tool: SystemProgram,
  name: string,
  fn: (path: string) => Promise<void> | void,
  ms = LONG_MS,
): void {
  const { path } = tool;
  if (path !== undefined) test(name, async () => fn(path), ms);
  else if (process.env.CI === "true") {
    test(name, () => {
      throw new Error(`${tool.name} is missing: ${tool.hint}`);
    });
  } else test.skip(`${name} (needs ${tool.name}: ${tool.hint})`, () => undefined);
}

/** A test that needs LibreOffice. */
export const withLibreOffice = (name: string, fn: () => Promise<void> | void): void =>
  withTool(libreOffice(), name, fn);

/**
 * A test that needs Chromium; it is given the path of the program.
 * @param ms that it may take
 */
export const withChromium = (name: string, fn: (path: string) => Promise<void> | void, ms?: number): void =>
  withTool(chromium(), name, fn, ms);

/** A test that needs Firefox; parameters as for {@link withChromium}. */
export const withFirefox = (name: string, fn: (path: string) => Promise<void> | void, ms?: number): void =>
  withTool(firefox(), name, fn, ms);

/** A test that needs poppler's tools. */
export const withPoppler = (name: string, fn: () => Promise<void> | void): void =>
  withTool(poppler(), name, fn);

/** @param declare declares the test where poppler's tools are there, with all else that it needs */
export function alsoWithPoppler(name: string, declare: () => void): void {
  if (poppler().path === undefined) withPoppler(name, () => undefined);
  else declare();
}

/** A test that needs xmllint; it is given the path of the program. */
export const withXmllint = (name: string, fn: (path: string) => Promise<void> | void): void =>
  withTool(xmllint(), name, fn);

/** A test that needs Microsoft's Open XML SDK; it is given the path of its program. */
export const withValidator = (name: string, fn: (path: string) => Promise<void> | void): void =>
  withTool(validator(), name, fn);

/** A test that needs Microsoft's office.js and Chromium; it is given the folder of the one and the path of the other. */
export const withOfficeJs = (
  name: string,
  fn: (folder: string, program: string) => Promise<void> | void,
): void =>
  withTool(officeJs().path === undefined ? officeJs() : chromium(), name, (program) =>
    fn(OFFICE_JS, program),
  );

/** A test that needs Gnumeric; it is given the path of its converter. */
export const withGnumeric = (name: string, fn: (path: string) => Promise<void> | void): void =>
  withTool(gnumeric(), name, fn);

/** A test that needs ngspice; it is given the path of the program. */
export const withNgspice = (name: string, fn: (path: string) => Promise<void> | void): void =>
  withTool(ngspice(), name, fn);

/** A test that needs Python, for what an outsider has written in it; it is given the path of the program. */
export const withPython = (name: string, fn: (path: string) => Promise<void> | void): void =>
  withTool(python(), name, fn);

/**
 * @param source the bytes of an .xlsx, or the path of one
 * @param conversion formulas are calculated anew on loading unless it says otherwise
 * @returns the bytes of what LibreOffice makes of it; a .csv is of the first sheet
 */
export async function recalculated(
  source: Uint8Array | string,
  { to, recalculate = true }: Pick<Conversion, "to"> & Partial<Conversion>,
): Promise<Buffer> {
  const { path, hint } = libreOffice();
  if (path === undefined) throw new Error(`LibreOffice is missing: ${hint}`);
  return convertedBy(path, typeof source === "string" ? await readFile(source) : source, { to, recalculate });
}
