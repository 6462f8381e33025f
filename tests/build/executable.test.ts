/**
 * The command as one file, made of the Node that runs the tests, so that
 * nothing is fetched; in an empty folder, with no program to be found. The
 * released one is made of another Node in the same way (`npm run prove`).
 */
import { spawn, spawnSync, type SpawnSyncReturns } from "node:child_process";
import {
  appendFileSync,
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
} from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { BUILD_MS, buildDesk } from "../hosts/desk/desk";
import { madeTwice } from "./madeTwice";

const project = path.join(__dirname, "../..");
const built = path.join(project, "dist", "rigsheet.js");
/** Node's own documents: what an executable can be made of holds this, and a 1 at its end once it was. */
const FUSE = "NODE_SEA_FUSE_fce680ab2cc467b6e072b8b5df1996b2";
const NOBODY = 65_534;

const why =
  process.platform !== "linux"
    ? "Linux"
    : readFileSync(process.execPath).includes(`${FUSE}:0`)
      ? undefined
      : "a Node that has a place for the files, as those from nodejs.org have";
const withIt = (name: string, fn: () => Promise<void> | void, ms = 60_000): void =>
  why === undefined ? test(name, async () => fn(), ms) : test.skip(`${name} (needs ${why})`, () => undefined);

const top = mkdtempSync(path.join(tmpdir(), "rigsheet-executable-"));
const folder = path.join(top, "Büro 1. Stock");
const program = path.join(folder, "Sat rechnen ä");
const home = path.join(top, "home");

let files: readonly string[] = [];

beforeAll(async () => {
  if (why !== undefined) return;
  buildDesk();
  files = (await madeTwice(top, "executables.mjs", "--this-node")).map((to) =>
    path.join(to, readdirSync(to)[0]!),
  );
  for (const one of [folder, home]) mkdirSync(one);
  cpSync(files[0]!, program);
}, BUILD_MS);

afterAll(() => rmSync(top, { recursive: true, force: true }));

interface Way {
  readonly cwd?: string;
  readonly input?: string;
  readonly env?: Readonly<Record<string, string>>;
  readonly uid?: number;
}
/** With nothing of this machine's surroundings: no PATH, so no Node to be found. */
const rigsheet = (
  words: readonly string[],
  { env, cwd = folder, ...way }: Way = {},
): SpawnSyncReturns<string> =>
  spawnSync(program, words, { cwd, encoding: "utf8", env: { HOME: home, ...env }, ...way });
const byNode = (words: readonly string[], { cwd = folder, input }: Way = {}): SpawnSyncReturns<string> =>
  spawnSync(process.execPath, [built, ...words], { cwd, encoding: "utf8", input });
const outcome = ({ status, stdout, stderr }: SpawnSyncReturns<string>) => ({ status, stdout, stderr });
const cache = path.join(home, ".cache", "rigsheet");
const unpacked = (): string => path.join(cache, readdirSync(cache)[0]!);

withIt("made twice it is the same to the byte, and names no place of this machine", () => {
  const [first, second] = files.map((file) => readFileSync(file));
  expect(first!.equals(second!)).toBe(true);
  expect(statSync(files[1]!).mode & 0o777).toBe(0o755);
  expect(first!.includes(`${FUSE}:1`)).toBe(true);
  expect(first!.includes(`${FUSE}:0`)).toBe(false);
  for (const place of [project, top, tmpdir() + path.sep]) {
    // Node itself may have been built in such a folder.
    const inNode = readFileSync(process.execPath).includes(place);
    expect({ place, inside: first!.includes(place) }).toEqual({ place, inside: inNode });
  }
});

withIt("each command says and does what it does under Node, with the same exit code", () => {
  const same = (...words: string[]) => {
    const [own, nodes] = [outcome(rigsheet(words)), outcome(byNode(words))];
    expect({ words, ...own }).toEqual({ words, ...nodes });
    return own;
  };
  expect(same("--version").stdout).toMatch(/^\d+\.\d+\.\d+\n$/);
  expect(same("--help").stdout).toContain("rigsheet desk [JOB.xlsx]");
  expect(rigsheet(["help", "cableloss"]).stdout).toContain("CABLELOSS");
  // Words that Node would take for its own.
  expect(same("-v").status).toBe(2);
  expect(same("--inspect").status).toBe(2);
  expect(same("price", "nowhere.xlsx").status).toBe(2);
  expect(rigsheet(["new", "multi-room", "--demonstration", "--out", "ein Job ü.xlsx"]).status).toBe(0);
  // Two faults are in the demonstration on purpose.
  expect(same("price", "ein Job ü.xlsx").status).toBe(1);
  expect(same("calc", "RIG.CASCADELOSS({2,4})").status).toBe(0);
  expect(rigsheet(["picture", "ein Job ü.xlsx", "--kind", "levels", "--out", "p.png"]).status).toBe(0);
  expect(readFileSync(path.join(folder, "p.png")).subarray(1, 4).toString()).toBe("PNG");
});

withIt("what is piped in is read, and what comes out can be piped on", () => {
  const lines = "RIG.CASCADELOSS({2,4})\nRIG.CABLELOSS(1)\n";
  const own = outcome(rigsheet(["calc", "-"], { input: lines }));
  expect(own).toEqual(outcome(byNode(["calc", "-"], { input: lines })));
  expect(own.stdout.trim().split("\n")).toHaveLength(2);
  expect(own.status).toBe(1);
  const shell = spawnSync("/bin/sh", ["-c", `"$0" --help | { read line; echo "$line"; }`, program], {
    encoding: "utf8",
    env: { HOME: home },
  });
  expect({ out: shell.stdout, err: shell.stderr }).toEqual({
    out: expect.stringMatching(/^rigsheet: plans and prices.*\n$/) as string,
    err: "",
  });
});

withIt("many workbooks are reviewed on worker threads", () => {
  mkdirSync(path.join(folder, "many"));
  // More than the few that are reviewed without workers.
  for (let copy = 1; copy <= 6; copy++)
    cpSync(
      path.join(project, "templates", "single-drop-demonstration.xlsx"),
      path.join(folder, "many", `${copy}.xlsx`),
    );
  const reviewed = rigsheet(["review", "many"]);
  expect({ status: reviewed.status, stderr: reviewed.stderr }).toEqual({ status: 0, stderr: "" });
  expect(reviewed.stdout.match(/nothing found/g)).toHaveLength(6);
});

withIt("the desk serves its page and all that it names, opened without a word too", async () => {
  for (const words of [["desk", "--no-open"], []]) {
    const child = spawn(program, words, {
      cwd: folder,
      env: { HOME: home, XDG_DATA_HOME: path.join(top, `data${words.length}`) },
    });
    try {
      const address = await new Promise<string>((resolve, reject) => {
        let said = "";
        const hear = (part: Buffer): void => {
          said += part.toString();
          const found = /^(http:\/\/127\.0\.0\.1:\d+\/\?key=[\w-]+)$/m.exec(said)?.[1];
          if (found) resolve(found);
        };
        child.stdout.on("data", hear);
        child.stderr.on("data", hear);
        child.on("exit", () => reject(new Error(`The desk ended: ${said}`)));
      });
      const page = await (await fetch(address)).text();
      const named = [...page.matchAll(/(?:src|href)="(\/[^"]+)"/g)].map(([, url]) => url!);
      expect(named.length).toBeGreaterThan(7);
      for (const url of [...named, "/library/o_spreadsheet.xml", "/help/"])
        expect({ url, status: (await fetch(new URL(url, address))).status }).toEqual({ url, status: 200 });
    } finally {
      const ended = new Promise((resolve) => child.once("exit", resolve));
      child.kill();
      await ended;
    }
  }
});

withIt("files that were damaged since are unpacked anew, and the damaged ones are not run", () => {
  expect(rigsheet(["--version"]).status).toBe(0);
  const before = readdirSync(cache);
  appendFileSync(path.join(unpacked(), "dist", "rigsheet.js"), "\nprocess.exit(77);\n");
  expect(rigsheet(["--version"]).status).toBe(0);
  expect(readdirSync(cache).length).toBe(before.length + 1);
});

withIt("where nothing can be kept it runs from a folder that it takes away again", () => {
  const temporary = path.join(top, "temporary");
  mkdirSync(temporary);
  const ended = rigsheet(["--version"], { env: { XDG_CACHE_HOME: "/dev/null", TMPDIR: temporary } });
  expect({ status: ended.status, stderr: ended.stderr }).toEqual({ status: 0, stderr: "" });
  expect(readdirSync(temporary)).toEqual([]);
});

withIt("with no place at all: a sentence and exit code 1", () => {
  const nowhere = { XDG_CACHE_HOME: "/dev/null", TMPDIR: path.join(top, "none") };
  const { status, stdout, stderr } = rigsheet(["--version"], { env: nowhere });
  expect({ status, stdout }).toEqual({ status: 1, stdout: "" });
  expect(stderr).toMatch(
    /^Rigsheet unpacks its files before it starts, \d+ MB, and found no place for them: .*TMPDIR, and start it again\.\n$/,
  );
});

withIt(
  "in a folder that may only be read, by somebody who may write nowhere but in the temporary folder",
  () => {
    const readOnly = path.join(top, "read only");
    const temporary = path.join(top, "everybody's");
    for (const one of [readOnly, temporary]) mkdirSync(one);
    chmodSync(top, 0o755);
    chmodSync(folder, 0o755);
    chmodSync(temporary, 0o1777);
    chmodSync(readOnly, 0o555);
    // Only the system's administrator can be somebody else, and may write everywhere himself.
    const asNobody = process.getuid!() === 0 ? { uid: NOBODY } : {};
    const way = { cwd: readOnly, env: { HOME: readOnly, TMPDIR: temporary }, ...asNobody };
    const { status, stdout, stderr } = rigsheet(["calc", "RIG.CASCADELOSS({2,4})"], way);
    expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
    // A splitter of two ways and then one of four, ideal: 10·lg 8, worked by hand from lg 2 = 0.30103.
    expect((JSON.parse(stdout) as { value: number }).value).toBeCloseTo(9.0309, 4);
    expect(existsSync(path.join(readOnly, ".cache"))).toBe(false);
    expect(readdirSync(temporary)).toEqual([]);
  },
);
