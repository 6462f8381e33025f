import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { recalculated } from "./tools";

/** @returns the words that LibreOffice prints of an .xlsx, in their order on the pages (pdftotext of poppler) */
export async function paperWords(xlsx: Uint8Array): Promise<string[]> {
  const pdf = await recalculated(xlsx, { to: "pdf", recalculate: false });
  const folder = mkdtempSync(path.join(tmpdir(), "rigsheet-paper-"));
  try {
    const file = path.join(folder, "job.pdf");
    writeFileSync(file, pdf);
    const { stdout, status } = spawnSync("pdftotext", ["-layout", file, "-"], { encoding: "utf8" });
    if (status !== 0)
      throw new Error(
        "pdftotext is missing: install poppler's tools (Debian and Ubuntu: apt-get install poppler-utils)",
      );
    return stdout.split(/\s+/);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
