/**
 * The executables that are released, made of the Node programs that are fetched
 * for them, so only in `npm run prove`. The one for Windows is looked at as a
 * file, and run under Wine where that is installed: a trial, no proof.
 */
import { execFileSync, spawnSync } from "node:child_process";
import { closeSync, mkdtempSync, openSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { firstThatStarts } from "../support/libreOffice";
import { RIGSHEET_VERSION } from "../../src/version";

const project = path.join(__dirname, "../..");
const FUSE = "NODE_SEA_FUSE_fce680ab2cc467b6e072b8b5df1996b2";
const why = process.env.RIGSHEET_EXECUTABLES === undefined ? "npm run prove" : undefined;
const withThem = (name: string, needs: string | undefined, fn: () => void): void =>
  needs === undefined ? test(name, fn, 180_000) : test.skip(`${name} (needs ${needs})`, () => undefined);

const folder = mkdtempSync(path.join(tmpdir(), "rigsheet-both-"));
const linux = path.join(folder, `rigsheet-${RIGSHEET_VERSION}-linux-x64`);
const windows = path.join(folder, `rigsheet-${RIGSHEET_VERSION}-win-x64.exe`);
beforeAll(() => {
  if (why !== undefined) return;
  const script = path.join(project, "src/build/executables.mjs");
  execFileSync(process.execPath, [script, "--to", folder], { stdio: "inherit" });
}, 600_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** What it says, run as `[program, …words]` in the folder; into a file, because Wine's pipes are none that Node takes. */
const said = ([program, ...before]: readonly string[], ...words: string[]) => {
  const file = path.join(folder, "said");
  const [out, err] = [openSync(file, "w"), openSync(`${file} of trouble`, "w")];
  const { status } = spawnSync(program!, [...before, ...words], {
    cwd: folder,
    stdio: ["ignore", out, err],
    env: { HOME: folder, WINEPREFIX: path.join(folder, "wine"), WINEDEBUG: "-all", PATH: process.env.PATH },
  });
  for (const one of [out, err]) closeSync(one);
  return { status, stdout: readFileSync(file, "utf8").replaceAll("\r\n", "\n") };
};

function runsAs(program: readonly string[]): void {
  expect(said(program, "--version")).toEqual({ status: 0, stdout: `${RIGSHEET_VERSION}\n` });
  const job = `job of ${program.length}.xlsx`;
  expect(said(program, "new", "multi-room", "--demonstration", "--out", job).status).toBe(0);
  // Two faults are in the demonstration on purpose; its total is the one of the README.
  const priced = said(program, "price", job);
  expect(priced.status).toBe(1);
  expect(priced.stdout).toContain("total 7095.37 demonstration money");
  const templates = readdirSync(path.join(project, "templates")).filter((name) =>
    /-demonstration\.xlsx$/.test(name),
  );
  const six = [...templates, ...templates].slice(0, 6).map((name) => path.join(project, "templates", name));
  expect(said(program, "review", ...six).stdout).not.toContain("broke off");
}

withThem("the one for Linux does its work", why, () => runsAs([linux]));

withThem("the one for Windows is a program for it, with the files in it and without a signature", why, () => {
  const bytes = readFileSync(windows);
  // Places after Microsoft's "PE Format".
  const header = bytes.readUInt32LE(0x3c);
  expect([bytes.toString("latin1", 0, 2), bytes.toString("latin1", header, header + 4)]).toEqual([
    "MZ",
    "PE\0\0",
  ]);
  // A processor of the x64 family.
  expect(bytes.readUInt16LE(header + 4)).toBe(0x8664);
  const optional = header + 24;
  const directory = (at: number) => [0, 4].map((more) => bytes.readUInt32LE(optional + 112 + at * 8 + more));
  expect(directory(4)).toEqual([0, 0]);
  expect(bytes.includes(`${FUSE}:1`)).toBe(true);
  // The resources: the third directory, in the section whose addresses hold it.
  const [resources, size] = directory(2) as [number, number];
  const sections = optional + bytes.readUInt16LE(header + 20);
  const places = Array.from({ length: bytes.readUInt16LE(header + 6) }, (_, at) => {
    const section = sections + at * 40;
    return {
      address: bytes.readUInt32LE(section + 12),
      length: bytes.readUInt32LE(section + 16),
      offset: bytes.readUInt32LE(section + 20),
    };
  });
  const place = places.find(({ address, length }) => resources >= address && resources < address + length)!;
  const inside = bytes.subarray(place.offset + resources - place.address).subarray(0, size);
  expect(inside.includes(Buffer.from("NODE_SEA_BLOB", "utf16le"))).toBe(true);
  expect(inside.includes(readFileSync(path.join(project, "dist", "rigsheet.js")))).toBe(true);
});

const wine = why === undefined ? firstThatStarts(["wine64", "wine", "/usr/lib/wine/wine64"]) : undefined;
const noWine = wine === undefined ? "Wine (Debian and Ubuntu: apt-get install wine64)" : undefined;
withThem("the one for Windows does its work under Wine", why ?? noWine, () => {
  const system = {
    cwd: folder,
    env: { ...process.env, HOME: folder, WINEPREFIX: path.join(folder, "wine"), WINEDEBUG: "-all" },
  };
  // Node asks for a current Windows.
  spawnSync(wine!, ["winecfg", "-v", "win10"], { ...system, stdio: "ignore" });
  runsAs([wine!, windows]);
});
