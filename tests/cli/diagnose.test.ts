/** `rigsheet diagnose`, on the demonstration with levels entered as a crew would. */
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { diagnoseJob } from "../../src/cli/diagnoseJob";
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { writeJob } from "../../src/hosts/file/writeJob";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { namedColumn, namedRows } from "../../src/workbooks/named";
import { address, parseRange } from "../../src/formula/address";

const demonstration = path.join(__dirname, "../../templates/multi-room-demonstration.xlsx");

async function diagnosed(file: string): Promise<{ code: number; out: string }> {
  const out: string[] = [];
  const code = await diagnoseJob([file], {
    out: (line) => void out.push(line),
    err: () => undefined,
    readInput: async () => "",
  });
  return { code, out: out.join("\n") };
}

test("nothing measured: a sentence", async () => {
  const { code, out } = await diagnosed(demonstration);
  expect(code).toBe(0);
  expect(out).toMatch(/nothing is measured yet/);
});

test("one outlet 4 dB down at the low end and 12 dB at the high end: the unrated splitter, named first", async () => {
  const book = recalculate(await readXlsx(await readFile(demonstration)));
  const outlets = namedColumn(book, "rooms_outlet");
  const culprit = outlets.findIndex((name) => name !== undefined && name !== "") + 3;
  for (const [end, lost] of [
    ["low", 4],
    ["high", 12],
  ] as const) {
    const { sheet, range } = book.names.find(({ name }) => name === `rooms_built_${end}`)!;
    const zone = parseRange(range)!;
    const cells = book.sheets.find(({ name }) => name === sheet)!.cells as Record<
      string,
      { value?: unknown }
    >;
    const cold = namedRows(book, `rooms_level_${end}_cold`);
    outlets.forEach((outlet, row) => {
      const level = cold[row]![0];
      if (!outlet || typeof level !== "number") return;
      const at = address(zone.top + row, zone.left);
      cells[at] = { ...cells[at], value: level - (row === culprit ? lost : 0) };
    });
  }
  const folder = await mkdtemp(path.join(tmpdir(), "rigsheet-diagnose-"));
  try {
    const file = path.join(folder, "job.xlsx");
    await writeFile(file, await writeJob(recalculate(book)));
    const { code, out } = await diagnosed(file);
    expect(code).toBe(1);
    expect(out.split("\n")[0]).toContain(`unrated splitter in the run, ${String(outlets[culprit])}`);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
});

test("two files are refused", async () => {
  await expect(
    diagnoseJob(["a.xlsx", "b.xlsx"], {
      out: () => undefined,
      err: () => undefined,
      readInput: async () => "",
    }),
  ).rejects.toThrow(/Name one workbook/);
});
