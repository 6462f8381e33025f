/**
 * `npm run release`: everything that is given to people, into dist/release. Two
 * runs on the same sources give the same bytes.
 *
 *     --no-executables   leaves out the executables, and fetches nothing
 *     --to FOLDER        puts it elsewhere
 *     --uncommitted      takes the sources as they are, although git knows of changes
 *     --as-built         takes what is built, instead of building from nothing
 */
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import path from "node:path";
import { build } from "./build.mjs";
import { makeExecutables } from "./executables.mjs";
import { fetchNodePrograms, NODE_PROGRAMS, nodeVersion } from "./executables/nodePrograms.mjs";
import { project, stop } from "./install.mjs";
import { neededPackages, packageFiles } from "./packedFiles.mjs";
import { tarGzOf, zipOf } from "./release/archives.mjs";
import { readMe } from "./release/readMe.mjs";
import { noticeOf, NOTICES_PARTED } from "./shipped.mjs";
import { writeStatic } from "./static.mjs";

const SUMS = "SHA256SUMS";
const dist = (...parts) => path.join(project, "dist", ...parts);
const { version } = JSON.parse(readFileSync(path.join(project, "package.json"), "utf8"));

const OPTIONS = ["--no-executables", "--to", "--uncommitted", "--as-built"];
const words = process.argv.slice(2);
const has = (option) => words.includes(option);
const target = path.resolve(has("--to") ? (words[words.indexOf("--to") + 1] ?? "") : dist("release"));

function stopIfImpossible() {
  const unknown = words.find((word, at) => !OPTIONS.includes(word) && words[at - 1] !== "--to");
  if (unknown !== undefined) stop(`There is no option ${unknown}; there are ${OPTIONS.join(", ")}.`);
  if (has("--to") && !words[words.indexOf("--to") + 1]) stop("--to is not followed by a folder; give one.");
  if (existsSync(target) && readdirSync(target).length > 0 && !existsSync(path.join(target, SUMS))) {
    stop(
      `${target} holds something else than a release. Name an empty folder, or one that is not there yet.`,
    );
  }
  const changed = spawnSync("git", ["status", "--porcelain"], { cwd: project, encoding: "utf8" });
  // A copy of the sources without git has nothing to compare with.
  if (changed.status === 0 && changed.stdout !== "" && !has("--uncommitted")) {
    stop(
      `${changed.stdout}These changes are in no commit, so nobody could make this release again. Commit them; or, to try it, npm run release -- --uncommitted`,
    );
  }
}

async function release() {
  const start = Date.now();
  const executables = !has("--no-executables");
  await (has("--as-built") ? build() : build({ clean: true }));
  if (!(await writeStatic())) stop("The desk without a server could not be made; see above.");
  if (executables) fetchNodePrograms();
  // Whole, or not there: it is made beside its place.
  mkdirSync(path.dirname(target), { recursive: true });
  const part = mkdtempSync(`${target}.part-`);
  try {
    const files = { ...texts(executables), ...forBrowsers() };
    const beside = pickedFrom(files, ["LICENCES.txt", "READ-ME.txt"]);
    files[`rigsheet-${version}.tgz`] = npmPackage();
    files[`rigsheet-${version}-addin.zip`] = zipOf(filesBelow(dist("addin"), `rigsheet-addin-${version}`));
    if (executables) Object.assign(files, await packedExecutables(part, beside));
    for (const [name, bytes] of Object.entries(files))
      writeFileSync(path.join(part, name), bytes, { mode: 0o644 });
    writeFileSync(path.join(part, SUMS), sumsOf(part));
    chmodSync(part, 0o755);
    rmSync(target, { recursive: true, force: true });
    renameSync(part, target);
  } finally {
    rmSync(part, { recursive: true, force: true });
  }
  list();
  console.log(`Made in ${((Date.now() - start) / 1000).toFixed(0)} s: ${target}`);
}

function texts(executables) {
  const words = [dist("generate.js"), "--changes", project];
  const changes = spawnSync(process.execPath, words, { encoding: "utf8" });
  if (changes.status !== 0) stop(`${changes.stderr}The notes of what changed could not be made; see above.`);
  return {
    "CHANGES.txt": changes.stdout,
    "LICENCES.txt": licences(executables),
    "READ-ME.txt": readMe(version, executables),
  };
}

/** Of all that is inside: ours, what the build took, what the package needs, and Node where it is inside. */
function licences(executables) {
  const notices = readFileSync(dist("NOTICES.txt"), "utf8").trim();
  const needed = neededPackages()
    .map((where) => where.replace(/^node_modules\//, ""))
    .filter((name) => !notices.includes(`\n${name} `));
  return `${[
    `Rigsheet ${version}\n\n${readFileSync(path.join(project, "LICENSE"), "utf8").trim()}`,
    notices,
    ...needed.map(noticeOf),
    ...(executables
      ? [
          `Node.js ${nodeVersion()}, inside the executables. They were put together with postject (MIT), of which nothing is inside.\n\n${readFileSync(NODE_PROGRAMS.licence, "utf8").trim()}`,
        ]
      : []),
  ].join(NOTICES_PARTED)}\n`;
}

const forBrowsers = () => ({
  [`rigsheet-${version}-static.zip`]: zipOf(filesBelow(dist("static"), `rigsheet-${version}`)),
  "rigsheet.html": readFileSync(dist("rigsheet.html")),
});

/** What `npm pack` makes, but for the rights and the packer, which differ between machines. */
const npmPackage = () =>
  tarGzOf(
    packageFiles().map((file) => ({
      name: `package/${file}`,
      bytes: readFileSync(path.join(project, file)),
      runs: file === "dist/rigsheet.js",
    })),
  );

const archiveOf = (name) => (name.endsWith(".exe") ? name.replace(/exe$/, "zip") : `${name}.tar.gz`);

/** Each in an archive that its system opens by itself, with what must be told beside it. */
async function packedExecutables(folder, beside) {
  const files = {};
  for (const name of await makeExecutables(folder)) {
    const bytes = readFileSync(path.join(folder, name));
    rmSync(path.join(folder, name));
    const top = name.replace(/\.exe$/, "");
    const archive = archiveOf(name);
    const inside = [
      { name: `${top}/${name}`, bytes, runs: true },
      ...Object.entries(beside).map(([one, text]) => ({ name: `${top}/${one}`, bytes: Buffer.from(text) })),
    ];
    files[archive] = archive.endsWith(".zip") ? zipOf(inside) : tarGzOf(inside);
  }
  return files;
}

const filesBelow = (folder, top) =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => {
      const file = path.join(entry.parentPath, entry.name);
      return {
        name: `${top}/${path.relative(folder, file).split(path.sep).join("/")}`,
        bytes: readFileSync(file),
      };
    });

const pickedFrom = (files, names) => Object.fromEntries(names.map((name) => [name, files[name]]));

/** As `sha256sum -c` reads it. */
const sumsOf = (folder) =>
  readdirSync(folder)
    .sort()
    .map(
      (name) =>
        `${createHash("sha256")
          .update(readFileSync(path.join(folder, name)))
          .digest("hex")}  ${name}\n`,
    )
    .join("");

function list() {
  for (const name of readdirSync(target).sort()) {
    const { size } = statSync(path.join(target, name));
    console.log(`${(size / 1e6).toFixed(2).padStart(8)} MB  ${name}`);
  }
  if (!existsSync(dist("static")))
    console.log("The desk without a server is not part of it: nothing makes it yet.");
}

stopIfImpossible();
await release();
