/** `rigsheet help`. */
import { existsSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { allFunctions } from "../../src/functions/all";
import { runCommand } from "../support/fakeConsole";

const rigsheet = (...words: string[]) => runCommand(words);

test("a function's help, with or without its namespace, in any case", async () => {
  const { code, out } = await rigsheet("help", "AZIMUTH");
  expect(code).toBe(0);
  expect(out).toMatch(/^RIG\.AZIMUTH\n/);
  expect(out).toContain("latitude is 91 deg; it must be from -90 to 90");
  expect((await rigsheet("help", "rig.azimuth")).out).toBe(out);
});

test("words find functions, one a line", async () => {
  const { code, out } = await rigsheet("help", "far", "bedroom");
  expect(code).toBe(0);
  expect(out).toMatch(/^RIG\.WINDOW /m);
  expect((await rigsheet("help", "rig")).out.trim().split("\n")).toHaveLength(allFunctions.length);
});

test("no words: what the command can do; unknown words: a sentence", async () => {
  expect((await rigsheet("help")).out).toContain("rigsheet help FUNCTION");
  expect((await rigsheet("help", "--help")).out).toContain("--pages FOLDER");
  const { code, err } = await rigsheet("help", "horoscope");
  expect(code).toBe(2);
  expect(err).toContain('No function answers to "horoscope"');
});

describe("the pages as files", () => {
  let folder: string;
  beforeEach(() => {
    folder = mkdtempSync(path.join(tmpdir(), "rigsheet-help-"));
  });
  afterEach(() => rmSync(folder, { recursive: true }));

  test("are written into a folder that need not exist", async () => {
    const target = path.join(folder, "a", "b");
    const { code, out } = await rigsheet("help", "--pages", target);
    expect(code).toBe(0);
    const others = ["index.html", "model-limits.html", "in-excel.html", "help.css", "search.js"];
    const written = readdirSync(target, { recursive: true, withFileTypes: true }).filter((one) =>
      one.isFile(),
    );
    expect(out).toContain(`${written.length} files in `);
    // A page for each function, and with them those of the sheets and their pictures.
    expect(written.length).toBeGreaterThan(allFunctions.length + others.length);
    expect(readFileSync(path.join(target, "azimuth.html"), "utf8")).toContain("<h1>RIG.AZIMUTH</h1>");
    for (const name of others) expect(existsSync(path.join(target, name))).toBe(true);
  });

  test("a folder that can't be made is a sentence", async () => {
    writeFileSync(path.join(folder, "file"), "");
    const { code, err } = await rigsheet("help", "--pages", path.join(folder, "file", "help"));
    expect(code).toBe(2);
    expect(err).toContain("can't be written");
  });
});
