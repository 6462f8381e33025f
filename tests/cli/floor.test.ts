/** rigsheet floor: a workbook with a floor copied, as its user would do it. */
import { mkdtempSync } from "node:fs";
import { readFile, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { layOut } from "../../src/workbooks/layOut";
import { apartmentBlock } from "../../src/workbooks/multiRoom/apartmentBlock";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { namedColumn, namedValue } from "../../src/workbooks/named";
import { runCommand } from "../support/fakeConsole";

const folder = mkdtempSync(join(tmpdir(), "rigsheet-floor-"));
const path = join(folder, "block.xlsx");
const ON_THREE = (row: { floor?: string | number; to?: string | number; id?: string | number }): boolean =>
  ["floor 1", "floor 2", "floor 3"].includes(String(row.floor)) ||
  /^[RH]0[123]/.test(String(row.id ?? row.to));

/** Three floors of the block, so that the fourth is to come. */
beforeAll(async () => {
  const { blocks = {} } = apartmentBlock;
  const book = layOut(multiRoom, {
    ...apartmentBlock,
    blocks: {
      ...blocks,
      // Of a type each, with a run of their own.
      types: [{ name: "flat", receiver: "receiver", kind: "flat" }],
      rooms: blocks.rooms!.filter(ON_THREE).map(({ floor, room, outlet, from, run }) => ({
        ...{ floor: floor!, room: room!, outlet: outlet!, from: from!, run: run! },
        type: "flat",
      })),
      branches: blocks.branches!.filter(ON_THREE),
      heads: blocks.heads!.filter(ON_THREE),
      feeders: blocks.feeders!.filter(ON_THREE),
    },
  });
  await writeFile(path, await writeXlsx(recalculate(book)));
});

test("a preview tells the new names and what else is fed, and writes nothing", async () => {
  const { code, out, err } = await runCommand(["floor", path, "--from", "floor 3", "--to", "floor 4"]);
  expect(code).toBe(1);
  expect(out).toContain("device  R03-1 -> R04-1");
  expect(out).toContain("outlet  03-12-2 -> 04-12-2");
  expect(out.split("\n").at(-1)).toBe("This is a preview; nothing was written.");
  expect(err).toMatch(/H03 feeds the new floor as well: 4 more cables hang on it/);
});

test("the copy stands below, with types and own runs as they were, and rows where none were left", async () => {
  const to = join(folder, "four.xlsx");
  const { code, out } = await runCommand([
    "floor",
    path,
    "--from",
    "floor 3",
    "--to",
    "floor 4",
    "--out",
    to,
  ]);
  expect(code).toBe(1);
  expect(out.split("\n").at(-1)).toBe(`${to}: 24 outlets and 4 devices added.`);
  const [before, after] = await Promise.all([path, to].map(async (one) => readXlsx(await readFile(one))));
  const column = (name: string, of = after!): unknown[] =>
    namedColumn(of, name).filter((value) => (value ?? "") !== "");
  expect(column("rooms_outlet")).toHaveLength(96);
  expect(column("branches_id")).toHaveLength(16);
  const floors = column("rooms_floor").lastIndexOf("floor 4") - column("rooms_floor").indexOf("floor 4");
  expect(floors).toBe(23);
  for (const key of ["type", "run"])
    expect(column(`rooms_${key}`).slice(72)).toEqual(column(`rooms_${key}`, before).slice(48));
  expect(column("rooms_from").slice(72, 74)).toEqual(["R04-1", "R04-1"]);
  // Computed anew: 24 more outlets are in the price.
  expect(namedValue(after!, "count_outlets")).toBe(96);
  expect(Number(namedValue(after!, "price_total"))).toBeGreaterThan(
    Number(namedValue(before!, "price_total")),
  );
});

test.each([
  [
    ["--from", "floor 9", "--to", "floor 10"],
    /There is no floor "floor 9" on Rooms to copy\. The floors are: floor 1, floor 2, floor 3\./,
  ],
  [
    ["--from", "floor 2", "--to", "floor 3"],
    /"R03-1", which R02-1 would get, is there already.*nothing was copied/,
  ],
  [["--from", "floor 2"], /Say which floor is copied and where to/],
  [["--from", "floor 3", "--to", " , "], /Say to which floor it is copied/],
])("%j is refused in a sentence", async (words, sentence) => {
  const { code, err } = await runCommand(["floor", path, ...words]);
  expect(code).toBe(2);
  expect(err).toMatch(sentence);
});
