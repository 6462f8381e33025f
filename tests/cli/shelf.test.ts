/** A folder of workbooks, listed: whatever lies in it. */
import { copyFileSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { runCommand } from "../support/fakeConsole";
import { referencePrice, type Job } from "../support/referencePrice";

const templates = path.join(__dirname, "..", "..", "templates");
let folder: string;

beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), "rigsheet-shelf-"));
  mkdirSync(path.join(folder, "older"));
  copyFileSync(path.join(templates, "multi-room-demonstration.xlsx"), path.join(folder, "b.xlsx"));
  const fields = {
    ...guestHouse.fields,
    site_job: "Lodge at the lake",
    site_quote: "L-7",
    site_revision: 3,
    site_customer: "Someone\u001b[31m invented",
  };
  const lodge = recalculate(layOut(multiRoom, { ...guestHouse, fields }));
  writeFileSync(path.join(folder, "older", "a.xlsx"), await writeXlsx(lodge));
  copyFileSync(path.join(templates, "multi-room.xlsx"), path.join(folder, "empty.xlsx"));
  writeFileSync(path.join(folder, "broken.xlsx"), "no workbook");
  writeFileSync(path.join(folder, "notes.txt"), "no workbook either");
  writeFileSync(path.join(folder, "~$b.xlsx"), "a lock file");
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test("each is a line with what it is, for whom and what it comes to; a broken one is a line too", async () => {
  const { total } = referencePrice(guestHouse as unknown as Job);
  const { code, out, err } = await runCommand(["shelf", folder]);
  const lines = out.split("\n");
  expect(lines).toHaveLength(4);
  expect(lines.some((line) => /^Multi-room estimate .*empty\.xlsx$/.test(line))).toBe(true);
  expect(lines.some((line) => /broken\.xlsx: cannot be read\. The file is plain text/.test(line))).toBe(true);
  expect(out).toContain(
    `D-24, revision 1, Guest house, 24 outlets (demonstration) | Invented customer (demonstration) | 2026-11-02 | ${total} demonstration money | 2 checks need attention | ${path.join(folder, "b.xlsx")}`,
  );
  expect(out).toContain("L-7, revision 3, Lodge at the lake | Someone [31m invented | ");
  // eslint-disable-next-line no-control-regex -- control characters are what is looked for
  expect(out).not.toMatch(/\u001b/);
  expect({ code, err }).toEqual({ code: 1, err: "4 of 4 workbooks" });
});

test("--find: all the words, in the line or the file's name", async () => {
  expect(await runCommand(["shelf", folder, "--find", "lake LODGE"])).toMatchObject({
    out: expect.stringMatching(/^L-7, [^\n]*$/) as string,
    err: "1 of 4 workbooks",
  });
  // As on the desk: accents, hyphens and how a sum is written do not count.
  const sum = (await runCommand(["shelf", folder, "--find", "b.xlsx"])).out.match(/\d+\.\d\d/)![0];
  for (const words of ["lödge at-the-lake", "l–7 lake", `b.xlsx ${sum.replace(".", ",")}`])
    expect((await runCommand(["shelf", folder, "--find", words])).err).toBe("1 of 4 workbooks");
  expect((await runCommand(["shelf", folder, "--find", "b.xlsx"])).code).toBe(0);
  expect(await runCommand(["shelf", folder, "--find", "castle"])).toMatchObject({
    code: 0,
    out: "",
    err: "0 of 4 workbooks",
  });
});

test("--json: one object a line", async () => {
  const { out } = await runCommand(["shelf", folder, "--find", "lodge", "--json"]);
  expect(JSON.parse(out)).toMatchObject({
    file: path.join(folder, "older", "a.xlsx"),
    line: { number: "L-7", revision: "3", name: "Lodge at the lake", date: "2026-11-02" },
  });
});

test("no such folder, none in it, one too many: a sentence and exit 2", async () => {
  const without = mkdtempSync(path.join(tmpdir(), "rigsheet-shelf-"));
  for (const [words, message] of [
    [[path.join(folder, "none")], /^There is no folder .*none\. Name one/],
    [[without], /^There is no \.xlsx in /],
    [[folder, folder], /^Name one folder/],
    [["--all"], /Unknown option '--all'.*See: rigsheet shelf --help/],
  ] as const) {
    const { code, err } = await runCommand(["shelf", ...words]);
    expect(code).toBe(2);
    expect(err).toMatch(message);
  }
  rmSync(without, { recursive: true });
});
