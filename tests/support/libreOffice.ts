/** The system's LibreOffice, a second engine and a second printer to hold ours to. */
import { execFile, execFileSync } from "node:child_process";
import { mkdir, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { promisify } from "node:util";

/** A program of the system that may be missing. */
export interface SystemProgram {
  readonly name: string;
  /** How to get it, to follow "install". */
  readonly hint: string;
  readonly path: string | undefined;
}

/** @returns the first of the programs that starts and tells its version */
export function firstThatStarts(candidates: readonly string[]): string | undefined {
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

let found: SystemProgram | undefined;

/** Looked for once. The variable SOFFICE names another place of the program, and then only that is tried. */
export const libreOffice = (): SystemProgram =>
  (found ??= {
    name: "LibreOffice",
    hint: "install LibreOffice Calc (Debian and Ubuntu: apt-get install libreoffice-calc), or set SOFFICE to its program",
    path: firstThatStarts(
      process.env.SOFFICE
        ? [process.env.SOFFICE]
        : [
            "soffice",
            "libreoffice",
            "/Applications/LibreOffice.app/Contents/MacOS/soffice",
            "C:\\Program Files\\LibreOffice\\program\\soffice.exe",
          ],
    ),
  });

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
  /** Calculate every formula anew on loading, rather than show what is stored. */
  readonly recalculate: boolean;
}

/** Two minutes, for workbooks of thousands of rows. */
const LONGEST_MS = 120_000;

/**
 * Has LibreOffice load a workbook and save it in another kind, with a profile
 * of its own that is thrown away, so that an open LibreOffice is not disturbed.
 * @param program LibreOffice's path
 * @param source the bytes of an .xlsx
 * @returns the bytes of the converted file; a .csv is of the first sheet
 */
export async function convertedBy(
  program: string,
  source: Uint8Array,
  { to, recalculate }: Conversion,
): Promise<Buffer> {
  const folder = await mkdtemp(join(tmpdir(), "rigsheet-office-"));
  try {
    const profile = join(folder, "profile");
    if (recalculate) {
      await mkdir(join(profile, "user"), { recursive: true });
      await writeFile(join(profile, "user", "registrymodifications.xcu"), RECALCULATE);
    }
    const input = join(folder, "input.xlsx");
    await writeFile(input, source);
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
      { timeout: LONGEST_MS },
    );
    // It ends without complaint when it could not convert: then the file is not there.
    return await readFile(join(out, `input.${to}`));
  } catch (error) {
    const { killed, code } = error as { killed?: boolean; code?: unknown };
    const detail = killed ? "it took longer than two minutes" : `it says ${String(code)}`;
    throw new Error(`LibreOffice could not convert the workbook (${detail})`, { cause: error });
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
