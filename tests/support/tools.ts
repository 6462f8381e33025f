/**
 * Programs of the system that some tests need. Where one is missing its tests
 * are skipped under their names, with how to install it; in a build with
 * CI=true they fail instead, so that nothing is skipped unseen.
 */
import { execFile, execFileSync } from "node:child_process";
import { mkdir, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { basename, extname, join } from "node:path";
import { pathToFileURL } from "node:url";
import { promisify } from "node:util";

function found(candidates: readonly string[]): string | undefined {
  for (const candidate of candidates) {
    try {
      execFileSync(candidate, ["--version"], { stdio: "ignore", timeout: 30_000 });
      return candidate;
    } catch {
      // Not there, or not able to start: the next one.
    }
  }
  return undefined;
}

interface Tool {
  readonly name: string;
  readonly hint: string;
  readonly path: string | undefined;
}

const memo = <T>(make: () => T): (() => T) => {
  let made: { value: T } | undefined;
  return () => (made ??= { value: make() }).value;
};

/** The variable names another place of the program. */
const libreOffice = memo((): Tool => ({
  name: "LibreOffice",
  hint: "install LibreOffice Calc (Debian and Ubuntu: apt-get install libreoffice-calc), or set SOFFICE to its program",
  path: found([
    ...(process.env.SOFFICE ? [process.env.SOFFICE] : []),
    "soffice",
    "libreoffice",
    "/Applications/LibreOffice.app/Contents/MacOS/soffice",
    "C:\\Program Files\\LibreOffice\\program\\soffice.exe",
  ]),
}));

const chromium = memo((): Tool => ({
  name: "Chromium",
  hint: "install Chromium (Debian and Ubuntu: apt-get install chromium), or set CHROMIUM to its program",
  path: found([
    ...(process.env.CHROMIUM ? [process.env.CHROMIUM] : []),
    "chromium",
    "chromium-browser",
    "google-chrome",
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  ]),
}));

const LONG_MS = 120_000;

function withTool(tool: Tool, name: string, fn: (path: string) => Promise<void> | void): void {
  const { path } = tool;
  if (path !== undefined) test(name, async () => fn(path), LONG_MS);
  else if (process.env.CI === "true") {
    test(name, () => {
      throw new Error(`${tool.name} is missing: ${tool.hint}`);
    });
  } else test.skip(`${name} (needs ${tool.name}: ${tool.hint})`, () => undefined);
}

/** A test that needs LibreOffice. */
export const withLibreOffice = (name: string, fn: () => Promise<void> | void): void =>
  withTool(libreOffice(), name, fn);

/** A test that needs Chromium; it is given the path of the program. */
export const withChromium = (name: string, fn: (path: string) => Promise<void> | void): void =>
  withTool(chromium(), name, fn);

/** Always recalculate an .xlsx on loading; without it LibreOffice shows the values stored in the file. */
const RECALCULATE = `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>`;

/** For .csv: commas, double quotes, UTF-8, cells as they are shown rather than as they are stored. */
const FILTERS = {
  xlsx: "xlsx",
  csv: "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,true",
  pdf: "pdf",
} as const;

export interface Conversion {
  readonly to: keyof typeof FILTERS;
  /** Whether formulas are calculated anew on loading (the default) or shown as stored. */
  readonly recalculate?: boolean;
}

/**
 * Has LibreOffice load a workbook and save it in another kind, with a profile
 * of its own that is thrown away.
 * @param source the bytes of an .xlsx, or the path of a file
 * @returns the bytes of the converted file; a .csv is of the first sheet
 */
export async function recalculated(
  source: Uint8Array | string,
  { to, recalculate = true }: Conversion,
): Promise<Buffer> {
  const program = libreOffice().path;
  if (program === undefined) throw new Error(`LibreOffice is missing: ${libreOffice().hint}`);
  const folder = await mkdtemp(join(tmpdir(), "rigsheet-office-"));
  try {
    const profile = join(folder, "profile");
    if (recalculate) {
      await mkdir(join(profile, "user"), { recursive: true });
      await writeFile(join(profile, "user", "registrymodifications.xcu"), RECALCULATE);
    }
    const input = typeof source === "string" ? source : join(folder, "input.xlsx");
    if (typeof source !== "string") await writeFile(input, source);
    const out = join(folder, "out");
    await promisify(execFile)(
      program,
      [
        `-env:UserInstallation=${pathToFileURL(profile).href}`,
        "--headless",
        "--norestore",
        "--convert-to",
        FILTERS[to],
        "--outdir",
        out,
        input,
      ],
      { timeout: LONG_MS },
    );
    return await readFile(join(out, `${basename(input, extname(input))}.${to}`));
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
