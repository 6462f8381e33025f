/** Whether two releases of the same sources are the same: made in another zone, language and mask of rights. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { project } from "../install.mjs";

const SURROUNDINGS = [
  { mask: 0o022, env: { TZ: "UTC", LANG: "C" } },
  { mask: 0o077, env: { TZ: "Pacific/Auckland", LANG: "de_DE.UTF-8" } },
];

/** @param words for `npm run release`; @returns whether both were made and no file differs */
export function isSameTwice(...words) {
  const top = mkdtempSync(path.join(tmpdir(), "rigsheet-twice-"));
  try {
    const folders = SURROUNDINGS.map(({ mask, env }, at) => {
      const to = path.join(top, String(at));
      const before = process.umask(mask);
      const script = path.join(project, "src", "build", "release.mjs");
      const { status } = spawnSync(process.execPath, [script, "--uncommitted", "--to", to, ...words], {
        stdio: "inherit",
        env: { ...process.env, ...env },
      });
      process.umask(before);
      return status === 0 ? to : undefined;
    });
    if (folders.includes(undefined)) return false;
    const [first, second] = folders.map((folder) =>
      readdirSync(folder)
        .sort()
        .map((name) => [name, readFileSync(path.join(folder, name))]),
    );
    const others = first.filter(
      ([name, bytes], at) => name !== second[at]?.[0] || !bytes.equals(second[at][1]),
    );
    const same = others.length === 0 && first.length === second.length;
    console.log(
      same
        ? `Both releases are the same: ${first.length} files, to the byte.`
        : `The releases differ: ${others.map(([name]) => name).join(", ") || "one has more files"}`,
    );
    return same;
  } finally {
    rmSync(top, { recursive: true, force: true });
  }
}
