/** A grid library in which a member has another name, under the command and under the desk as they are built. */
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { spawnSync } from "node:child_process";
import { tmpdir } from "node:os";
import path from "node:path";
import { BUILD_MS, buildDesk } from "../desk/desk";
import { builtFolder, DIST } from "../desk/builtFolder";
import { closeBrowsers, mostlyInChromium } from "../desk/bothBrowsers";
import { serveFolder } from "../desk/folderServer";

beforeAll(buildDesk, BUILD_MS);
afterAll(closeBrowsers);

const renamed = (source: string, member: string): string =>
  source.replaceAll(new RegExp(`(?<![\\w$])${member}(?![\\w$])`, "g"), `${member}2`);

describe("the command", () => {
  /** @returns what `rigsheet new` and `rigsheet price` say beside a library without the member */
  function priced(member: string): { status: number | null; out: string; err: string } {
    const folder = mkdtempSync(path.join(tmpdir(), "rigsheet-other-grid-"));
    try {
      cpSync(DIST, path.join(folder, "dist"), {
        recursive: true,
        filter: (file) => !/static|executables|release|rigsheet\.html/.test(path.relative(DIST, file)),
      });
      cpSync(path.join(DIST, "..", "package.json"), path.join(folder, "package.json"));
      symlinkSync(path.join(DIST, "..", "node_modules"), path.join(folder, "node_modules"), "junction");
      const library = path.join(
        folder,
        "dist",
        "library",
        "@odoo",
        "o-spreadsheet",
        "dist",
        "o_spreadsheet.cjs",
      );
      writeFileSync(library, renamed(readFileSync(library, "utf8"), member));
      const rigsheet = (...words: string[]) =>
        spawnSync(process.execPath, [path.join(folder, "dist", "rigsheet.js"), ...words], {
          encoding: "utf8",
          cwd: folder,
        });
      const made = rigsheet("new", "multi-room", "--demonstration", "--out", "job.xlsx");
      if (made.status !== 0) return { status: made.status, out: made.stdout, err: made.stderr };
      const { status, stdout, stderr } = rigsheet("price", "job.xlsx");
      return { status, out: stdout, err: stderr };
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  }
  let whole: ReturnType<typeof priced>;
  beforeAll(() => {
    whole = priced("noMemberHasThisName");
  }, BUILD_MS);

  // 1: the demonstration has two things to look at.
  test("as it is: a price, and nothing said", () => {
    expect(whole).toEqual({ status: 1, out: expect.stringMatching(/\d/), err: "" });
  });
  test("slower without it: the same price, and a sentence", () => {
    const { status, out, err } = priced("spreadValues");
    expect({ status, out }).toEqual({ status: 1, out: whole.out });
    expect(err).toMatch(/no “spreadValues”.*takes longer/);
  });
  test("wrong without it: no price, a sentence and no stack", () => {
    const { status, out, err } = priced("computeAndSave");
    expect({ status, out }).toEqual({ status: 2, out: "" });
    expect(err).toMatch(/^This grid library has no “computeAndSave”.*nothing is shown or computed/);
    expect(err).not.toMatch(/ at .*:\d+:\d+/);
  });
});

for (const [member, said, opens] of [
  ["spreadValues", /no “spreadValues”.*takes longer/, true],
  ["computeAndSave", /no “computeAndSave”.*nothing is shown or computed/, false],
  ["stopEdition", /no “stopEdition”.*nothing is shown or computed/, false],
  ["confirmEdition", /no “confirmEdition”.*“Add rows”/, true],
] as const)
  mostlyInChromium(
    `the desk without ${member}: said${opens ? ", and the job opens" : ", and no job is shown"}`,
    async ({ page: newPage }) => {
      const files = new Map(await builtFolder());
      const name = [...files.keys()].find((file) => /o_spreadsheet[^/]*\.js$/.test(file))!;
      files.set(name, Buffer.from(renamed(Buffer.from(files.get(name)!).toString("utf8"), member)));
      const server = await serveFolder(files);
      try {
        const page = await newPage();
        await page.goto(server.address);
        await page.locator(".desk-notice p", { hasText: said }).waitFor({ timeout: 60_000 });
        expect(await page.locator(".desk-figure", { hasText: "Total" }).count()).toBe(opens ? 1 : 0);
      } finally {
        await server.stop();
      }
    },
  );
