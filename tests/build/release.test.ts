/**
 * A release without its executables, from what is built; the whole one, from
 * nothing, is made twice and compared by `npm run prove`.
 */
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { gunzipSync } from "node:zlib";
import { unzipSync } from "fflate";
import { RIGSHEET_VERSION } from "../../src/version";
import { BUILD_MS, buildDesk } from "../hosts/desk/desk";
import { madeTwice } from "./madeTwice";

const project = path.join(__dirname, "../..");
const top = mkdtempSync(path.join(tmpdir(), "rigsheet-release-"));
const QUICK = ["--as-built", "--no-executables", "--uncommitted"];
const named = (rest: string): string => `rigsheet-${RIGSHEET_VERSION}${rest}`;

let folders: string[] = [];
beforeAll(async () => {
  buildDesk();
  folders = await madeTwice(top, "release.mjs", ...QUICK);
}, BUILD_MS);
afterAll(() => rmSync(top, { recursive: true, force: true }));

const read = (name: string): Buffer => readFileSync(path.join(folders[0]!, name));

test("it holds what its sums name, and another run in other surroundings makes the same to the byte", () => {
  const names = readdirSync(folders[0]!).sort();
  expect(names).toEqual(
    [
      "CHANGES.txt",
      "LICENCES.txt",
      "READ-ME.txt",
      "SHA256SUMS",
      named("-addin.zip"),
      named("-static.zip"),
      named(".tgz"),
      "rigsheet.html",
    ].sort(),
  );
  const sums = names
    .filter((name) => name !== "SHA256SUMS")
    .map((name) => `${createHash("sha256").update(read(name)).digest("hex")}  ${name}\n`);
  expect(read("SHA256SUMS").toString()).toBe(sums.join(""));
  expect(readdirSync(folders[1]!).sort()).toEqual(names);
  for (const name of names)
    expect({ name, same: read(name).equals(readFileSync(path.join(folders[1]!, name))) }).toEqual({
      name,
      same: true,
    });
});

test("the package is the one that npm packs, and the system's own tar reads it", () => {
  const packed = spawnSync("npm", ["pack", "--ignore-scripts", "--json", "--pack-destination", top], {
    cwd: project,
    encoding: "utf8",
    shell: process.platform === "win32",
  });
  const [{ filename }] = JSON.parse(packed.stdout) as [{ filename: string }];
  const unpackedBy = (archive: string, to: string): Map<string, string> => {
    mkdirSync(path.join(top, to));
    expect(spawnSync("tar", ["-xzf", archive, "-C", path.join(top, to)]).status).toBe(0);
    return new Map(
      readdirSync(path.join(top, to), { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile())
        .map((entry): [string, string] => {
          const file = path.join(entry.parentPath, entry.name);
          return [
            path.relative(path.join(top, to), file),
            createHash("sha256").update(readFileSync(file)).digest("hex"),
          ];
        })
        .sort(),
    );
  };
  const ours = unpackedBy(path.join(folders[0]!, named(".tgz")), "ours");
  expect(ours).toEqual(unpackedBy(path.join(top, filename), "npm's"));
  expect([...ours.keys()]).toContain("package/dist/rigsheet.js");
  expect(
    [...ours.keys()].filter((name) => /dist\/(?:release|static|executable|rigsheet\.html)/.test(name)),
  ).toEqual([]);
});

test("the archives hold the folders that were built, and name no place of this machine", () => {
  for (const [name, folder, inside] of [
    [named("-addin.zip"), "addin", `rigsheet-addin-${RIGSHEET_VERSION}`],
    [named("-static.zip"), "static", named("")],
  ] as const) {
    const files = unzipSync(read(name));
    const built = readdirSync(path.join(project, "dist", folder), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => path.relative(path.join(project, "dist"), path.join(entry.parentPath, entry.name)));
    expect(Object.keys(files).sort()).toEqual(built.map((file) => file.replace(folder, inside)).sort());
    for (const [file, bytes] of Object.entries(files)) {
      expect(Buffer.from(bytes).includes(project) && file).toBe(false);
    }
  }
  expect(gunzipSync(read(named(".tgz"))).includes(project)).toBe(false);
  expect(read("rigsheet.html").includes(project)).toBe(false);
});

test("the licences are those of all that is inside, our own first", () => {
  const text = read("LICENCES.txt").toString();
  expect(text).toMatch(new RegExp(`^Rigsheet ${RIGSHEET_VERSION.replaceAll(".", "\\.")}\n\nMIT License`));
  const needed = Object.keys(
    (JSON.parse(readFileSync(path.join(project, "package.json"), "utf8")) as { dependencies: object })
      .dependencies,
  );
  for (const name of [...needed, "@odoo/o-spreadsheet", "hucre", "dejavu-fonts-ttf"])
    expect(text).toMatch(new RegExp(`^${name} \\d[\\d.]*: \\S`, "m"));
  expect(text).toContain("GNU LESSER GENERAL PUBLIC LICENSE");
});

describe("a release that can't be made is refused with a sentence, before anything is done", () => {
  const refused = (words: readonly string[]) => {
    const { status, stderr, stdout } = spawnSync(
      process.execPath,
      [path.join(project, "src/build/release.mjs"), ...words],
      { encoding: "utf8" },
    );
    expect({ status, stdout }).toEqual({ status: 1, stdout: "" });
    return stderr;
  };

  test("an option that there is not, or a folder that is not named", () => {
    expect(refused(["--quick"])).toMatch(/^There is no option --quick; there are .*--to.*\.\n$/);
    expect(refused(["--to"])).toBe("--to is not followed by a folder; give one.\n");
  });

  test("a folder with something else in it, which stays", () => {
    const somebodys = path.join(top, "somebody's");
    mkdirSync(somebodys);
    writeFileSync(path.join(somebodys, "job.xlsx"), "");
    expect(refused([...QUICK, "--to", somebodys])).toContain("holds something else than a release");
    expect(readdirSync(somebodys)).toEqual(["job.xlsx"]);
  });
});
