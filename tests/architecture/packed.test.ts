/** What is shipped, as it is shipped: the packed tarball in an empty folder, with what an installer would put beside it. */
import { spawn, spawnSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";

const project = path.join(__dirname, "..", "..");
const empty = mkdtempSync(path.join(tmpdir(), "rigsheet-packed-"));
const modules = path.join(empty, "node_modules");
const home = path.join(modules, "rigsheet");

interface Locked {
  readonly dev?: boolean;
  readonly devOptional?: boolean;
}

beforeAll(() => {
  const packed = spawnSync("npm", ["pack", "--ignore-scripts", "--json", "--pack-destination", empty], {
    cwd: project,
    encoding: "utf8",
    shell: process.platform === "win32",
  });
  const [{ filename }] = JSON.parse(packed.stdout) as [{ filename: string }];
  mkdirSync(home, { recursive: true });
  const unpacked = spawnSync("tar", ["-xzf", path.join(empty, filename), "-C", home, "--strip-components=1"]);
  expect(unpacked.status).toBe(0);
  rmSync(path.join(empty, filename));
  // As the installer lays them out by the lock file. Optional ones stand here only where they fit the machine.
  const { packages } = JSON.parse(readFileSync(path.join(project, "package-lock.json"), "utf8")) as {
    packages: Record<string, Locked>;
  };
  for (const [where, { dev, devOptional }] of Object.entries(packages)) {
    if (where === "" || dev || devOptional) continue;
    const from = path.join(project, where);
    if (statSync(from, { throwIfNoEntry: false })) cpSync(from, path.join(empty, where), { recursive: true });
  }
}, 120_000);

afterAll(() => rmSync(empty, { recursive: true, force: true }));

const command = path.join(home, "dist", "rigsheet.js");
const rigsheet = (...words: string[]) =>
  spawnSync(process.execPath, [command, ...words], { cwd: empty, encoding: "utf8" });

const filesIn = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => path.relative(folder, path.join(entry.parentPath, entry.name)).split(path.sep).join("/"));

test("installs under 40 MB, without what only contributors use", () => {
  const bytes = filesIn(modules).reduce((sum, file) => sum + statSync(path.join(modules, file)).size, 0);
  expect(bytes).toBeLessThan(40e6);
  expect(bytes).toBeGreaterThan(5e6);
  const files = filesIn(home);
  expect(files).toContain("dist/rigsheet.js");
  expect(
    files.filter((file) => /bench|generate|\.built|\.test\.|^(?:src|tests|manifest)\//.test(file)),
  ).toEqual([]);
});

test("every line of the first example in the help works", async () => {
  const help = rigsheet("--help").stdout;
  const lines = /A first job.*\n((?: {2}rigsheet .*\n)+)/
    .exec(help)![1]!
    .trim()
    .split(/\s*\n\s*/);
  expect(lines.length).toBeGreaterThanOrEqual(3);
  for (const line of lines) {
    const [, name, ...words] = line.split(" ");
    if (name === "desk") continue;
    const { status, stdout, stderr } = rigsheet(name!, ...words);
    // The demonstration has two faults to find, which `price` tells by its exit code.
    expect({ line, status, stderr }).toEqual({ line, status: name === "price" ? 1 : 0, stderr: "" });
    expect(stdout).not.toBe("");
  }
  expect(lines.some((line) => line.startsWith("rigsheet desk "))).toBe(true);
  await deskOpens();
}, 120_000);

/** The page and all that it names come, from nothing but the installed folders. */
async function deskOpens(): Promise<void> {
  const server = spawn(
    process.execPath,
    [command, "desk", "job.xlsx", "--no-open", "--data", path.join(empty, "data")],
    { cwd: empty },
  );
  try {
    const address = await new Promise<string>((resolve, reject) => {
      let said = "";
      server.stdout.on("data", (part) => {
        said += part;
        const found = /http:\/\/127\.0\.0\.1:\d+\//.exec(said);
        if (found) resolve(found[0]);
      });
      server.stderr.on("data", (part) => (said += part));
      server.on("exit", () => reject(new Error(`The desk ended: ${said}`)));
    });
    const page = await (await fetch(address)).text();
    const named = [...page.matchAll(/(?:src|href)="(\/[^"]+)"/g)].map(([, url]) => url!);
    expect(named.length).toBeGreaterThan(7);
    const style = await (await fetch(new URL("library/css/font-awesome.css", address))).text();
    const fonts = [...style.matchAll(/url\('\.\.\/(fonts\/[^?']+woff2?)/g)].map(
      ([, url]) => `/library/${url!}`,
    );
    expect(fonts.length).toBeGreaterThan(0);
    for (const url of [...named, ...fonts, "/library/o_spreadsheet.xml", "/help/", "/help/notices.txt"]) {
      expect({ url, status: (await fetch(new URL(url, address))).status }).toEqual({ url, status: 200 });
    }
  } finally {
    server.kill();
  }
}

test("what stands on workers, fonts and the drawing library works too", () => {
  const job = path.join(home, "templates", "multi-room-demonstration.xlsx");
  const calc = rigsheet("calc", "RIG.CASCADELOSS({2,4})");
  // A splitter of two ways and then one of four, ideal: 10·lg 8, worked by hand from lg 2 = 0.30103.
  expect((JSON.parse(calc.stdout) as { value: number }).value).toBeCloseTo(9.0309, 4);
  const drawn = rigsheet("picture", job, "--kind", "levels", "--out", "picture.png");
  expect({ status: drawn.status, stderr: drawn.stderr }).toEqual({ status: 0, stderr: "" });
  expect(readFileSync(path.join(empty, "picture.png")).subarray(1, 4).toString()).toBe("PNG");
  mkdirSync(path.join(empty, "many"));
  // More than the few that are reviewed without workers.
  for (let copy = 1; copy <= 6; copy++) {
    cpSync(
      path.join(home, "templates", "single-drop-demonstration.xlsx"),
      path.join(empty, "many", `${copy}.xlsx`),
    );
  }
  const reviewed = rigsheet("review", "many");
  expect({ status: reviewed.status, stderr: reviewed.stderr }).toEqual({ status: 0, stderr: "" });
  expect(reviewed.stdout.match(/nothing found/g)).toHaveLength(6);
}, 120_000);

test("the add-in is written for an office's address, without a build", () => {
  const written = rigsheet("addin", "--address", "https://addins.example.com/rigsheet", "--out", "office");
  expect({ status: written.status, stderr: written.stderr }).toEqual({ status: 0, stderr: "" });
  const folder = path.join(empty, "office");
  // All that was built for it, no more, though the package has the help and what writes PDF beside the desk only.
  expect(filesIn(folder).sort()).toEqual(filesIn(path.join(project, "dist", "addin")).sort());
  const same = (name: string): boolean =>
    readFileSync(path.join(folder, name)).equals(readFileSync(path.join(project, "dist", "addin", name)));
  expect(["pdf.js", "pdfType.js", "help/index.html", "taskpane.js"].filter((name) => !same(name))).toEqual(
    [],
  );
  expect(readFileSync(path.join(folder, "manifest.xml"), "utf8")).toContain(
    "<AppDomain>https://addins.example.com</AppDomain>",
  );
});

describe("notices", () => {
  const notices = () => readFileSync(path.join(home, "dist", "NOTICES.txt"), "utf8");
  const headOf = (name: string) => new RegExp(`^${name.replace(/[/.]/g, "\\$&")} \\d[\\d.]*: \\S`, "m");

  test("every package whose code is in a bundle is named, with its licence", () => {
    // The bundles of Node's side are not minified: each module is headed by its path.
    const inBundles = new Set(
      ["rigsheet.js", "reviewWorker.js", "calcWorker.js"].flatMap((file) =>
        [
          ...readFileSync(path.join(home, "dist", file), "utf8").matchAll(
            /^.{0,20}\.\/node_modules\/((?:@[^/\n]+\/)?[^/\n]+)\//gm,
          ),
        ].map(([, name]) => name!),
      ),
    );
    expect([...inBundles]).toEqual(expect.arrayContaining(["hucre", "d3-scale"]));
    expect([...inBundles].filter((name) => !headOf(name).test(notices()))).toEqual([]);
    // In the pane's bundle, minified.
    expect(notices()).toMatch(headOf("fflate"));
    expect(notices()).toMatch(headOf("@microsoft/office-js-helpers"));
  });

  test("every library that is shipped whole brings its licence or finds it at the end", () => {
    const library = path.join(home, "dist", "library");
    const whole = filesIn(library)
      .filter((file) => file.endsWith("/package.json"))
      .map((file) => path.dirname(file));
    expect(whole).toEqual(expect.arrayContaining(["@odoo/o-spreadsheet", "@odoo/owl", "bootstrap"]));
    for (const name of whole) {
      expect(notices()).toMatch(headOf(name));
      const part = notices().split(headOf(name))[1]!.split("=".repeat(78))[0]!;
      expect({ name, text: part.length > 500 || /The text of \S+ stands at the end/.test(part) }).toEqual({
        name,
        text: true,
      });
    }
    expect(notices()).toContain("GNU LESSER GENERAL PUBLIC LICENSE");
    expect(notices()).toContain("GNU GENERAL PUBLIC LICENSE");
    expect(notices()).toContain("Mozilla Public License Version 2.0");
    expect(notices()).toContain("SIL OPEN FONT LICENSE");
  });

  test("the add-in's folder, which is served by itself, has them too", () => {
    expect(readFileSync(path.join(home, "dist", "addin", "NOTICES.txt"), "utf8")).toBe(notices());
  });
});
