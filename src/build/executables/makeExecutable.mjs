/**
 * Makes a single executable in Node's own way: a blob of our first script and
 * of all files is made by Node, and put into a copy of the Node program.
 */
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { chmodSync, cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import path from "node:path";
import { project, stop } from "../install.mjs";
import { neededFiles, packageFiles } from "../packedFiles.mjs";
import { withoutSignature } from "./withoutSignature.mjs";

/** What Node looks for in itself; the last character becomes 1 where a blob was put in. */
export const FUSE = "NODE_SEA_FUSE_fce680ab2cc467b6e072b8b5df1996b2";
const BLOB = "NODE_SEA_BLOB";

/**
 * The blob with all files. It fits every Node program of the same version,
 * whatever its system: no snapshot and no compiled code is in it.
 *
 * @param node the program that makes it
 */
export function makeBlob(node) {
  const folder = mkdtempSync(path.join(tmpdir(), "rigsheet-blob-"));
  try {
    const files = [...packageFiles(), ...neededFiles()];
    const list = files.map((file) => {
      const bytes = readFileSync(path.join(project, file));
      return { path: file, size: bytes.length, sha256: createHash("sha256").update(bytes).digest("hex") };
    });
    writeFileSync(path.join(folder, "files.json"), JSON.stringify(list));
    // Its path stands in the blob, so it is one without a folder.
    cpSync(path.join(project, "dist", "executable.js"), path.join(folder, "executable.js"));
    const configuration = {
      main: "executable.js",
      output: "blob",
      disableExperimentalSEAWarning: true,
      useSnapshot: false,
      useCodeCache: false,
      assets: {
        "files.json": "files.json",
        ...Object.fromEntries(files.map((file) => [file, path.join(project, file)])),
      },
    };
    writeFileSync(path.join(folder, "sea.json"), JSON.stringify(configuration));
    const made = spawnSync(node, ["--experimental-sea-config", "sea.json"], {
      cwd: folder,
      encoding: "utf8",
    });
    if (made.status !== 0) {
      stop(`${made.stderr ?? made.error}\n${node} could not make the executables' blob; see above.`);
    }
    return readFileSync(path.join(folder, "blob"));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/**
 * @param node the program that is copied
 * @param blob made by a Node of the same version
 * @param to the executable
 */
export async function makeExecutable({ node, blob, to }) {
  // The maker's signature would be wrong afterwards, which looks worse than none.
  writeFileSync(to, withoutSignature(readFileSync(node)));
  chmodSync(to, 0o755);
  await withoutItsNotes(async () => {
    const { inject } = createRequire(import.meta.url)("postject");
    await inject(to, BLOB, blob, { sentinelFuse: FUSE });
  });
}

/** The injector's library notes that it can't share the names of Node's own notes, which harms nothing. */
const NOTE = /^warning: Can't find string offset for section name '\.note/;

async function withoutItsNotes(work) {
  const { warn } = console;
  console.warn = (...words) => void (NOTE.test(words[0]) || warn.call(console, ...words));
  try {
    await work();
  } finally {
    console.warn = warn;
  }
}

/** Whether a Node program can be made into an executable: some systems' own lack the place for it. */
export const canBecomeExecutable = (node) => readFileSync(node).includes(`${FUSE}:0`);
