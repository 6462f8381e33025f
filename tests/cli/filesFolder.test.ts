/** Where an executable's files lie: whole or not at all, whoever starts it at the same time and whatever was there. */
import { fork, type ChildProcess } from "node:child_process";
import {
  appendFileSync,
  chmodSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { hashOf, type Carried } from "../../src/cli/executable/carried";
import { filesFolder, usualPlaces, type Places } from "../../src/cli/executable/filesFolder";
import { wordsFor } from "../../src/cli/executable/wordsFor";

const CONTENT: Readonly<Record<string, string>> = {
  "dist/rigsheet.js": "the command",
  "dist/library/@some/one.js": "a library",
  "templates/empty.xlsx": "",
};

const carriedOf = (content: Readonly<Record<string, string>>): Carried => {
  const files = Object.entries(content).map(([name, text]) => ({
    path: name,
    size: Buffer.byteLength(text),
    sha256: hashOf(text),
  }));
  return {
    id: hashOf(JSON.stringify(files)).slice(0, 16),
    files,
    bytesOf: (name) => Buffer.from(content[name]!),
  };
};
const carried = carriedOf(CONTENT);

let top: string;
let places: Places & { cache: string };
beforeEach(() => {
  top = mkdtempSync(path.join(tmpdir(), "rigsheet-files-"));
  places = { cache: path.join(top, "cache", "rigsheet"), temporary: path.join(top, "temporary") };
  mkdirSync(places.temporary);
});
afterEach(() => rmSync(top, { recursive: true, force: true }));

const found = (what = carried, where: Places = places) => {
  const one = filesFolder(what, where);
  if ("trouble" in one) throw new Error(one.trouble);
  for (const { path: name, sha256 } of what.files)
    expect(hashOf(readFileSync(path.join(one.folder, name)))).toBe(sha256);
  return one;
};
const usual = () => path.join(places.cache, carried.id);

test("the first start puts them there for the user alone, the next ones find them", () => {
  expect(found()).toEqual({ folder: usual(), kept: true });
  for (const one of [places.cache, usual(), path.join(usual(), "dist", "library")])
    expect(statSync(one).mode & 0o777).toBe(0o700);
  expect(statSync(path.join(usual(), "dist", "rigsheet.js")).mode & 0o777).toBe(0o600);
  const { ino } = statSync(usual());
  expect(found().folder).toBe(usual());
  expect(statSync(usual()).ino).toBe(ino);
  expect(readdirSync(places.cache)).toEqual([carried.id]);
});

describe("what was changed since is noticed, and is not run", () => {
  const command = () => path.join(usual(), "dist", "rigsheet.js");
  test.each<[string, () => void]>([
    ["a file of another length", () => appendFileSync(command(), "!")],
    ["a file of the same length", () => writeFileSync(command(), "thE command")],
    ["a file that is gone", () => rmSync(command())],
    ["an empty file", () => writeFileSync(command(), "")],
    ["a folder that is gone", () => rmSync(path.join(usual(), "dist"), { recursive: true })],
    ["a file more", () => writeFileSync(path.join(usual(), "dist", "package.json"), "{}")],
    [
      "a file in the folder's place",
      () => (rmSync(usual(), { recursive: true }), writeFileSync(usual(), "x")),
    ],
    ["a link in the folder's place", () => (rmSync(usual(), { recursive: true }), symlinkSync(top, usual()))],
    ["a folder that others may write into", () => chmodSync(usual(), 0o777)],
  ])("%s", (_what, spoil) => {
    found();
    spoil();
    const one = found();
    expect(one).toEqual({ folder: `${usual()}-2`, kept: true });
    // What runs from the first one is left alone, and the next start finds the second.
    expect(lstatSync(usual())).toBeDefined();
    expect(found().folder).toBe(one.folder);
  });

  test("again and again: the files go into a folder for this run", () => {
    for (let start = 0; start < 5; start++)
      writeFileSync(path.join(found().folder, "dist", "rigsheet.js"), "changed");
    const one = found();
    expect(one.kept).toBe(false);
    expect(path.dirname(one.folder)).toBe(places.temporary);
  });
});

test("a start that is cut off leaves nothing that another takes for whole", () => {
  let written = 0;
  const cutOff: Carried = {
    ...carried,
    bytesOf: (name) => {
      if (++written > 2) throw Object.assign(new Error("ENOSPC"), { code: "ENOSPC" });
      return carried.bytesOf(name);
    },
  };
  filesFolder(cutOff, places);
  expect(readdirSync(places.cache)).toEqual([]);
  expect(readdirSync(places.temporary)).toEqual([]);
  expect(found().folder).toBe(usual());
});

test("of twelve starts at once each gets a whole folder, and one is left", async () => {
  const script = path.join(top, "start.cjs");
  // The sources are TypeScript: what runs is this file's own way of loading them, in processes of their own.
  writeFileSync(
    script,
    `const ts = require(${JSON.stringify(require.resolve("typescript"))}), fs = require("fs");
     require.extensions[".ts"] = (module, file) => module._compile(ts.transpileModule(fs.readFileSync(file, "utf8"),
       { compilerOptions: { module: "commonjs", target: "es2022", esModuleInterop: true } }).outputText, file);
     const { filesFolder } = require(${JSON.stringify(path.join(__dirname, "../../src/cli/executable/filesFolder.ts"))});
     process.once("message", ({ carried, content, places, at }) => {
       while (Date.now() < at);
       const one = filesFolder({ ...carried, bytesOf: (name) => Buffer.from(content[name]) }, places);
       const whole = carried.files.every(({ path, size }) => fs.statSync(one.folder + "/" + path).size === size);
       process.send({ ...one, whole }, () => process.exit());
     });
     process.send("ready");`,
  );
  const content = {
    ...CONTENT,
    ...Object.fromEntries(Array.from({ length: 40 }, (_, n) => [`n/${n}`, "x".repeat(n * 500)])),
  };
  const many = carriedOf(content);
  const children = Array.from({ length: 12 }, () => fork(script));
  const message = (child: ChildProcess) => new Promise<unknown>((resolve) => child.once("message", resolve));
  await Promise.all(children.map(message));
  const at = Date.now() + 200;
  const answers = children.map(message);
  for (const child of children) child.send({ carried: many, content, places, at });
  for (const answer of await Promise.all(answers))
    expect(answer).toEqual({ folder: path.join(places.cache, many.id), kept: true, whole: true });
  expect(readdirSync(places.cache)).toEqual([many.id]);
}, 60_000);

test("what older versions and cut off starts left goes when it has not been used for long; nothing else does", () => {
  const older = found(carriedOf({ "dist/rigsheet.js": "an older command" })).folder;
  const recent = found(carriedOf({ "dist/rigsheet.js": "a recent command" })).folder;
  const part = path.join(places.cache, "part-of-a-start");
  const somebodys = path.join(places.cache, "somebody's own");
  for (const one of [part, somebodys]) mkdirSync(one);
  const ago = (days: number) => new Date(Date.now() - days * 86_400_000);
  utimesSync(older, ago(31), ago(31));
  utimesSync(recent, ago(29), ago(29));
  utimesSync(part, ago(2), ago(2));
  utimesSync(somebodys, ago(400), ago(400));
  found();
  expect(readdirSync(places.cache).sort()).toEqual(
    [recent, somebodys, usual()].map((one) => path.basename(one)).sort(),
  );
  // A start counts as use.
  utimesSync(usual(), ago(31), ago(31));
  found();
  found(carriedOf({ "dist/rigsheet.js": "a newer command" }));
  expect(readdirSync(places.cache)).toContain(carried.id);
});

describe("where the user's cache can't be had, a folder for this run is", () => {
  test.each<[string, () => string | undefined]>([
    ["there is none", () => undefined],
    [
      "it is a file",
      () => (mkdirSync(path.dirname(places.cache)), writeFileSync(places.cache, ""), places.cache),
    ],
    [
      "it lies below a file",
      () => (writeFileSync(path.join(top, "file"), ""), path.join(top, "file", "rigsheet")),
    ],
    [
      "others may write into it",
      () => (mkdirSync(places.cache, { recursive: true }), chmodSync(places.cache, 0o777), places.cache),
    ],
    [
      "it is a link",
      () => (
        mkdirSync(path.dirname(places.cache)),
        symlinkSync(places.temporary, places.cache),
        places.cache
      ),
    ],
  ])("%s", (_why, cacheOf) => {
    const cache = cacheOf();
    const one = found(carried, { ...places, cache });
    expect(one.kept).toBe(false);
    expect(path.dirname(one.folder)).toBe(places.temporary);
    expect(statSync(one.folder).mode & 0o777).toBe(0o700);
  });
});

test("with no place at all a sentence says which were tried, why not, and what to do", () => {
  writeFileSync(path.join(top, "file"), "");
  const none = { cache: path.join(top, "file", "rigsheet"), temporary: path.join(top, "none") };
  expect(filesFolder(carried, none)).toEqual({
    trouble: `Rigsheet unpacks its files before it starts, 1 MB, and found no place for them: ${none.cache} (it is a file, or below one); ${none.temporary} (there is no such folder). Make room there, or name a folder of your own in TMPDIR, and start it again.`,
  });
  const full: Carried = {
    ...carried,
    bytesOf: () => {
      throw Object.assign(new Error("ENOSPC"), { code: "ENOSPC" });
    },
  };
  expect(filesFolder(full, places)).toEqual({
    trouble: expect.stringContaining(
      `${places.cache} (the disk is full); ${places.temporary} (the disk is full). Make room there`,
    ) as string,
  });
  expect([...readdirSync(places.cache), ...readdirSync(places.temporary)]).toEqual([]);
});

test("the cache is where systems keep one; a path that is not whole counts as none", () => {
  const cacheFor = (platform: NodeJS.Platform, env: NodeJS.ProcessEnv, home: string) =>
    usualPlaces(platform, env, home).cache;
  // XDG Base Directory Specification 0.8: $XDG_CACHE_HOME, else ~/.cache; relative paths are to be ignored.
  expect(cacheFor("linux", {}, "/home/own")).toBe("/home/own/.cache/rigsheet");
  expect(cacheFor("linux", { XDG_CACHE_HOME: "/elsewhere" }, "/home/own")).toBe("/elsewhere/rigsheet");
  expect(cacheFor("linux", { XDG_CACHE_HOME: "elsewhere" }, "/home/own")).toBe("/home/own/.cache/rigsheet");
  expect(cacheFor("linux", {}, "")).toBeUndefined();
  expect(cacheFor("win32", { LOCALAPPDATA: "/local" }, "/own")).toBe("/local/Rigsheet program");
  expect(cacheFor("win32", {}, "/own")).toBe("/own/AppData/Local/Rigsheet program");
});

test("opened without a word, or by a workbook dropped on it, it opens the desk; every other word is the command's", () => {
  expect(wordsFor([])).toEqual(["desk"]);
  expect(wordsFor(["My job.XLSX"])).toEqual(["desk", "My job.XLSX"]);
  for (const words of [["--help"], ["price", "job.xlsx"], ["job.csv"], ["a.xlsx", "b.xlsx"]])
    expect(wordsFor(words)).toBe(words);
});
