/** Estimates of version 4 whose supplies stood where today's sheets have no cell: what becomes of each. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { filledCells, namedCells } from "../../src/review/namedCells";
import { upgrade, type Upgrade } from "../../src/upgrade/upgrade";
import { inWords } from "../../src/upgrade/words";
import type { Book } from "../../src/workbooks/book";
import { namedColumn } from "../../src/workbooks/named";

const LONG_MS = 120_000;
const HIGHER = "supply for the higher voltage";

const file = path.join(__dirname, "../fixtures/earlier/multi-room-demonstration-455bc4c.xlsx");
const read = (): Promise<Book> => readXlsx(readFileSync(file));

/** Puts something into the row of a name's cell that reads so; nothing clears it. */
function set(book: Book, row: { name: string; is: string }, name: string, value?: number | string): string {
  const { index } = filledCells(book, row.name).find((cell) => cell.value === row.is)!;
  const { sheet, cell } = namedCells(book, name)[index]!.place;
  const { cells, results } = book.sheets.find((one) => one.name === sheet)!;
  const { look } = cells[cell] ?? {};
  cells[cell] = { ...(look !== undefined && { look }), ...(value !== undefined && { value }) };
  delete results[cell];
  return `${sheet} ${cell}`;
}

const head = (is: string): { name: string; is: string } => ({ name: "heads_id", is });
const upgraded = (book: Book): Upgrade => upgrade(book, recalculate) as Upgrade;
const at = (list: readonly { sheet: string; cell?: string }[], place: string) =>
  list.find(({ sheet, cell }) => `${sheet} ${cell}` === place);
const inRow = (book: Book, row: { name: string; is: string }, name: string): unknown =>
  namedColumn(book, name)[namedColumn(book, row.name).indexOf(row.is)];

test(
  "what receivers feed needs no supply: its cell is blank, their row among the supplies is given up, and nothing is lost",
  async () => {
    const made = upgraded(await read());
    expect(made.notCarried).toEqual([]);
    expect(filledCells(made.book, "heads_supply")).toEqual([]);
    expect(namedColumn(made.book, "supplies_name").filter((name) => name)).toEqual([HIGHER]);
    expect(made.elsewhere.map(({ value }) => value)).toEqual([
      "“G-08”",
      "“receiver, 13 V”",
      "“F-09”",
      "“receiver, 13 V”",
      "“A-06”",
      "“receiver, 13 V”",
      "“receiver, 13 V”",
    ]);
    expect(inWords(made).elsewhere[1]).toBe(
      "Head units C8: “receiver, 13 V”. The receivers feed H1, so its supply is blank.",
    );
  },
  LONG_MS,
);

test(
  "a supply at a branch's free port is an inserter there, at the same volts; what stands on the receivers now is told",
  async () => {
    const old = await read();
    set(old, head("H2"), "heads_supply", HIGHER);
    const place = set(old, head("H2"), "heads_at", "U2");
    // The older formulas add the loop resistance of the path up; the circuit is solved anew after.
    const before = inRow(recalculate(old), head("H2"), "heads_volts");
    const made = upgraded(old);
    expect(made.notCarried).toEqual([]);
    expect(at(made.elsewhere, place)).toMatchObject({ value: "“U2”" });
    const device = { name: "branches_id", is: "P1" };
    expect(["branches_from", "branches_device"].map((name) => inRow(made.book, device, name))).toEqual([
      "U2",
      HIGHER,
    ]);
    expect(inRow(made.book, head("H2"), "heads_supply")).toBeUndefined();
    expect(before).toBeGreaterThan(20);
    expect(inRow(made.book, head("H2"), "heads_fed_off")).toBeCloseTo(Number(before), 2);
    // U1 feeds six outlets and U2 three, and no device between blocks power.
    expect(inWords(made).checks).toContainEqual(
      expect.stringMatching(/^Receivers at whose connector more volts stand than they bear: 9 .*fails now$/),
    );
  },
  LONG_MS,
);

test(
  "where no port is free, and where a supply was shared, it is listed with what to do",
  async () => {
    const old = await read();
    set(old, head("H1"), "heads_supply", HIGHER);
    const full = set(old, head("H1"), "heads_at", "G1");
    set(old, head("H3"), "heads_supply", HIGHER);
    set(old, head("H3"), "heads_at");
    const lead = set(old, head("H3"), "heads_common", 0.8);
    set(old, head("H2"), "heads_supply");
    set(old, head("H2"), "heads_at");
    const shared = set(old, head("H2"), "heads_shares", "H3");
    const made = upgraded(old);
    expect(made.notCarried).toHaveLength(3);
    expect(at(made.notCarried, full)).toMatchObject({
      why: expect.stringMatching(/fed H1 from G1, where no port is free/) as unknown,
    });
    expect(at(made.notCarried, lead)).toMatchObject({
      why: expect.stringMatching(/H3's shared lead has no cell/) as unknown,
    });
    expect(at(made.notCarried, shared)).toMatchObject({
      why: expect.stringMatching(/H2 shared the supply of H3.*choose one for H2/) as unknown,
    });
    expect(["H1", "H2", "H3"].map((id) => inRow(made.book, head(id), "heads_supply"))).toEqual([
      undefined,
      undefined,
      HIGHER,
    ]);
  },
  LONG_MS,
);

test(
  "a receiver with figures of its own is listed, for those have another place",
  async () => {
    const old = await read();
    const row = { name: "supplies_name", is: "receiver, 13 V" };
    set(old, row, "supplies_volts", 14);
    const { notCarried } = upgraded(old);
    expect(notCarried).toEqual([
      expect.objectContaining({ sheet: "Parts", why: expect.stringMatching(/14 V and 0\.4 A/) as unknown }),
    ]);
  },
  LONG_MS,
);
