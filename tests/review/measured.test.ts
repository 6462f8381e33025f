/** The review of what a crew measured. */
import { recalculate } from "../../src/hosts/headless/recalculate";
import type { Finding } from "../../src/review/finding";
import { measured } from "../../src/review/rules/measured";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { parseRange } from "../../src/formula/address";
import { referencePrice, type Job } from "../support/referencePrice";
import { BELOW_V, suppliedBelow } from "../support/suppliedBelow";

const { levels } = referencePrice(suppliedBelow as unknown as Job);

function found(
  built: Readonly<Record<string, { low?: number; high?: number; volts?: number }>>,
  heads: Readonly<Record<string, number>> = {},
): { findings: Finding[]; at: (name: string, row: number) => { sheet: string; cell: string } } {
  const book = recalculate(
    layOut(multiRoom, {
      ...suppliedBelow,
      blocks: {
        ...suppliedBelow.blocks,
        rooms: suppliedBelow.blocks!.rooms!.map((row) => {
          const { low, high, volts } = built[String(row.outlet)] ?? {};
          return {
            ...row,
            ...(low !== undefined && { built_low: low }),
            ...(high !== undefined && { built_high: high }),
            ...(volts !== undefined && { built_volts: volts }),
          };
        }),
        heads: suppliedBelow.blocks!.heads!.map((row) =>
          heads[String(row.id)] === undefined ? row : { ...row, built_volts: heads[String(row.id)]! },
        ),
      },
    }),
  );
  return {
    findings: measured.find({ computed: book } as Parameters<typeof measured.find>[0]),
    at: (name, row) => {
      const { sheet, range } = book.names.find((one) => one.name === name)!;
      const { top, left } = parseRange(range)!;
      return { sheet, cell: `${letters(left)}${top + 1 + row}` };
    },
  };
}

const letters = (column: number): string =>
  column < 26
    ? String.fromCharCode(65 + column)
    : `${letters(Math.floor(column / 26) - 1)}${String.fromCharCode(65 + (column % 26))}`;

test("inside the range and the tolerance: nothing", () => {
  const [lowCold, , , highHot] = levels.get("G-01")!;
  const { findings } = found(
    { "G-01": { low: lowCold! + 2.9, high: highHot! - 2.9, volts: 23.1 } },
    { H1: 23.3 },
  );
  expect(findings).toEqual([]);
});

test("outside: the cell, how far, what was predicted, and where to look on", () => {
  const [lowCold, lowHot, , highHot] = levels.get("G-02")!;
  // G-02 is the second outlet of the demonstration; its rows begin below a thin one.
  const { findings, at } = found(
    { "G-02": { low: lowCold! + 3.6, high: highHot! - 12, volts: 0.2 } },
    { H1: 17.5 },
  );
  expect(findings.map(({ place }) => place)).toEqual([
    at("rooms_built_low", 2),
    at("rooms_built_high", 2),
    at("rooms_built_volts", 2),
    at("heads_built_volts", 1),
  ]);
  const [low, high, volts, head] = findings;
  expect(low!.message).toMatch(/^G-02 reads .* dBµV at the lowest frequency, 3\.6 dB over the prediction\.$/);
  expect(low!.expected).toBe(`${lowHot!.toFixed(1)} to ${lowCold!.toFixed(1)} dBµV, ± 3.`);
  expect(high!.message).toMatch(/12\.0 dB under the prediction/);
  expect(volts!.message).toBe("G-02 reads 0.2 V at the outlet, 23.8 V under the prediction.");
  expect(volts!.expected).toBe(`${BELOW_V.toFixed(1)} V, ± 1.`);
  expect(head!.message).toMatch(/^H1 reads 17\.5 V at the head unit, 6\.\d V under the prediction\.$/);
  for (const { weight, remedy } of findings) expect([weight, remedy.length > 20]).toEqual(["doubtful", true]);
});

test("volts are told where none should stand, below what passes no power", () => {
  // Below the annexe's tap.
  expect(found({ "A-03": { volts: 0 } }).findings).toEqual([]);
  const [told] = found({ "A-03": { volts: 22 } }).findings;
  expect(told!.message).toBe("A-03 reads 22 V at the outlet, 22.0 V over the prediction.");
});
