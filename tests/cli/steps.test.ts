/** `rigsheet steps`: what is filled and what is missing, as the command tells it. */
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { runCommand } from "../support/fakeConsole";

const TEMPLATES = path.join(__dirname, "..", "..", "templates");

test("the demonstration has all that it needs, and says what is wrong in it on purpose", async () => {
  const { code, out } = await runCommand(["steps", path.join(TEMPLATES, "multi-room-demonstration.xlsx")]);
  expect(code).toBe(0);
  expect(out).toContain("Site: done");
  expect(out).toMatch(/Rooms: done, 1 to look at\n {2}look {5}Rooms!H29 {2}Outlets too weak: 1\./);
  expect(out).not.toContain("missing");
});

test("the empty template misses the customer, at its cell", async () => {
  const { code, out } = await runCommand(["steps", path.join(TEMPLATES, "multi-room.xlsx")]);
  expect(code).toBe(1);
  expect(out).toMatch(/^Site: not begun: \d+ missing/m);
  expect(out).toContain("  missing  Site!B6  Customer is blank.");
  const { out: data } = await runCommand(["steps", path.join(TEMPLATES, "multi-room.xlsx"), "--json"]);
  const [site] = JSON.parse(data) as { sheet: string; open: { place: object }[] }[];
  expect(site!.open.map(({ place }) => place)).toContainEqual({ sheet: "Site", cell: "B6" });
});

test("a workbook of somebody else, and wrong words: a sentence, exit 2", async () => {
  const folder = await mkdtemp(path.join(tmpdir(), "rigsheet-steps-"));
  const file = path.join(folder, "other.xlsx");
  await writeFile(file, await writeXlsx(recalculate({ ...layOut(multiRoom, {}), template: "", names: [] })));
  for (const [words, sentence] of [
    [["steps", file], /other\.xlsx has no steps of filling/],
    [["steps"], /^Name one workbook: rigsheet steps job\.xlsx/],
    [["steps", file, file], /^Name one workbook/],
    [["steps", path.join(TEMPLATES, "nowhere.xlsx")], /nowhere\.xlsx/],
  ] as const) {
    const { code, err } = await runCommand([...words]);
    expect([code, err]).toEqual([2, expect.stringMatching(sentence)]);
  }
  await rm(folder, { recursive: true });
});
