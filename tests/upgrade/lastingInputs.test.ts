/** An input's name is a lasting id: it is an input in every later version, or stands among those given up. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { closedInputs, INPUT_RECORD, type InputRecord } from "../../src/build/closedInputs";
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { namedCells } from "../../src/review/namedCells";
import { inputZone } from "../../src/workbooks/book";
import { isInside, parseAddress } from "../../src/formula/address";
import { GIVEN_UP, isGivenUp } from "../../src/workbooks/multiRoom/givenUp";
import { templates } from "../../src/workbooks/templates";
import { inputsOf } from "../../src/workbooks/typed/inputsOf";
import { VERSIONS } from "../../src/workbooks/versions";

const kept = JSON.parse(readFileSync(path.join(__dirname, "../..", INPUT_RECORD), "utf8")) as InputRecord;

test.each(templates.map(({ id, definition }) => [id, definition] as const))(
  "%s: every input of every closed version is one today, or given up with what became of it",
  (id, definition) => {
    const today = inputsOf(definition);
    const before = VERSIONS[id as keyof typeof VERSIONS].slice(0, -1).map(({ version }) => version);
    // One that is still in its first version has none yet.
    const closed = kept[id] ?? {};
    expect(Object.keys(closed)).toEqual(expect.arrayContaining(before));
    for (const names of Object.values(closed)) {
      expect(names.length).toBeGreaterThan(10);
      expect(names.filter((name) => !today.has(name) && !isGivenUp(name))).toEqual([]);
    }
  },
);

test("no input takes the name of one that was given up, and each of these was one", () => {
  const had = new Set(Object.values(kept["multi-room"]!).flat());
  const today = inputsOf(templates[0]!.definition);
  expect(templates[0]!.id).toBe("multi-room");
  for (const name of Object.keys(GIVEN_UP))
    expect([name, had.has(name), today.has(name)]).toEqual([name, true, false]);
});

test("the list tells what the workbooks of a version let people fill in", async () => {
  const file = path.join(__dirname, "../fixtures/earlier/multi-room-demonstration-455bc4c.xlsx");
  const book = await readXlsx(readFileSync(file));
  const names = kept["multi-room"]![book.templateVersion]!;
  for (const name of names) {
    const cells = namedCells(book, name);
    const { sheet, cell } = cells[cells.length > 1 ? 1 : 0]!.place;
    const { row, column } = parseAddress(cell)!;
    const rules = book.sheets
      .find((one) => one.name === sheet)!
      .validations.flatMap((one) => inputZone(one) ?? []);
    expect([name, rules.some((zone) => isInside(zone, row, column))]).toEqual([name, true]);
  }
});

test("closing today's versions adds their inputs and leaves the others", () => {
  const closed = closedInputs(kept, true);
  for (const { id, definition } of templates) {
    expect(closed[id]).toMatchObject({ ...kept[id], [definition.version]: expect.any(Array) as unknown });
    expect(closed[id]![definition.version]!.length).toBeGreaterThan(10);
  }
  expect(closedInputs(kept, false)).toBe(kept);
});
