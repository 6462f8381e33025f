/** The sight line as sheet functions: their examples, columns, blanks and bad input. */
import { isFault } from "../../src/engine/faults";
import { allFunctions } from "../../src/functions/all";
import type { Argument, Cell, Matrix } from "../../src/functions/core/cells";

const functions = allFunctions.filter(({ group }) => group === "Sightline");

function call(name: string, ...args: Argument[]): Cell | Matrix {
  const found = functions.find((one) => one.name === name);
  if (!found) throw new Error(`no function ${name}`);
  return found.call(args);
}

const sentence = (value: Cell | Matrix): string => {
  const cell = Array.isArray(value) ? (value as Matrix)[0]![0] : value;
  if (!isFault(cell)) throw new Error(`a fault was expected, not ${JSON.stringify(value)}`);
  return cell.message;
};

/** Name and arguments of `RIG.NAME(1,"text")`. */
function parsed(formula: string): { name: string; args: Cell[] } {
  const [, name, inside] = /^RIG\.([A-Z0-9]+)\((.*)\)$/.exec(formula) ?? [];
  if (!name || inside === undefined) throw new Error(`not a formula: ${formula}`);
  const args = inside.match(/"[^"]*"|[^,]+/g) ?? [];
  return { name, args: args.map((arg) => (arg.startsWith('"') ? arg.slice(1, -1) : Number(arg))) };
}

describe("documented examples", () => {
  const examples = functions.flatMap((one) => one.examples.map((example) => ({ one, example })));

  test("every function has one", () => {
    expect(functions.filter(({ examples }) => examples.length === 0)).toEqual([]);
  });

  test.each(examples.map((row) => [row.example.formula, row] as const))("%s", (formula, { one, example }) => {
    const { name, args } = parsed(formula);
    expect(name).toBe(one.name);
    const result = one.call(args);
    const rows = (value: unknown): unknown[][] => (Array.isArray(value) ? value : [[value]]);
    const expected = rows(example.result);
    const actual = rows(result);
    expect(actual.map((row) => row.length)).toEqual(expected.map((row) => row.length));
    expected.forEach((row, i) =>
      row.forEach((value, j) => {
        const got = actual[i]![j];
        if (typeof value !== "number") return expect(got).toBe(value);
        expect(typeof got).toBe("number");
        expect(Math.abs((got as number) - value)).toBeLessThanOrEqual(example.tolerance ?? 0);
      }),
    );
  });
});

describe("declarations", () => {
  const names = new Set(functions.map(({ name }) => name));

  test.each(functions.map((one) => [one.name, one] as const))("%s is complete", (_name, one) => {
    for (const text of [one.summary, one.equation, one.source, one.accuracy, one.result.help]) {
      expect(text.length).toBeGreaterThan(10);
    }
    expect(one.tasks.length).toBeGreaterThan(0);
    if (one.result.shape === "row" || one.result.shape === "table") {
      expect(one.result.columns?.length).toBeGreaterThan(1);
    }
  });

  test("see-also names within the group exist", () => {
    const own = functions.flatMap(({ seeAlso }) => seeAlso).filter((name) => !names.has(name));
    const elsewhere = new Set(allFunctions.map(({ name }) => name));
    expect(own.filter((name) => !elsewhere.has(name))).toEqual([]);
  });
});

describe("bad input in any place gives a value or a sentence, never an exception", () => {
  const BAD: Argument[] = [
    null,
    "",
    "  ",
    "text",
    "12",
    "1,5",
    true,
    false,
    NaN,
    Infinity,
    -Infinity,
    -0,
    1e308,
    -1e308,
    5e-324,
    [],
    [[]],
    [[null], [1]],
    [
      [1, 2],
      [3, 4],
    ],
    { kind: "fault", code: "#N/A", message: "a fault from another cell" },
  ];
  const cells = (value: Cell | Matrix): Cell[] =>
    Array.isArray(value) ? (value as Matrix).flat() : [value as Cell];

  test.each(functions.map((one) => [one.name, one] as const))("%s", (_name, one) => {
    const { args } = parsed(one.examples[0]!.formula);
    for (let place = 0; place < one.parameters.length; place += 1) {
      for (const bad of BAD) {
        const given: Argument[] = Array.from({ length: one.parameters.length }, (_, i) => args[i] ?? null);
        given[place] = bad;
        for (const cell of cells(one.call(given))) {
          if (isFault(cell)) {
            expect(cell.message).toMatch(/^[^\n]{10,}$/);
            expect(cell.message).not.toMatch(/failed inside|undefined|\[object/);
          } else {
            expect(["number", "string"]).toContain(typeof cell);
            if (typeof cell === "number") expect(Number.isFinite(cell)).toBe(true);
          }
        }
      }
    }
  });
});

describe("columns", () => {
  test("a column of slots against one site, with a blank row and a bad one", () => {
    const result = call("ELEVATION", 35, -100, [[-90], [null], ["97W"], ["97X"]]) as Matrix;
    expect(result).toHaveLength(4);
    expect(result[0]![0]).toBeCloseTo(48, 0);
    expect(result[1]![0]).toBe("");
    expect(typeof result[2]![0]).toBe("number");
    expect(isFault(result[3]![0])).toBe(true);
  });

  test("sites down and slots across make a table", () => {
    const result = call("AZIMUTH", [[35], [45]], [[-100], [-90]], [[-90, -97]]) as Matrix;
    expect(result.map((row) => row.length)).toEqual([2, 2]);
    expect(result[0]![0]).toBe(call("AZIMUTH", 35, -100, -90));
    expect(result[1]![1]).toBe(call("AZIMUTH", 45, -90, -97));
  });

  test("look angles spill a row for each site", () => {
    const result = call("LOOKANGLES", [[35], [45]], [[-100], [-90]], "97W") as Matrix;
    expect(result.map((row) => row.length)).toEqual([3, 3]);
  });
});

describe("sentences", () => {
  test("latitude 91 is refused, not wrapped", () => {
    expect(sentence(call("AZIMUTH", 91, 0, 0))).toBe(
      "latitude is 91 deg; it must be from -90 to 90 deg. North is positive, south negative.",
    );
    expect(sentence(call("ELEVATION", 0, 180.5, 0))).toMatch(/^longitude is 180.5 deg; .*-180 to 180 deg/);
  });

  test("a slot of 181 or 97N is no slot", () => {
    for (const slot of [181, "97N", "200W", "W97", true]) {
      expect(sentence(call("SLANTRANGE", 0, 0, slot))).toMatch(/is not an orbital slot/);
    }
  });

  test("under the slot only the azimuth is a fault", () => {
    const [row] = call("LOOKANGLES", 0, -78.5, -78.5) as Matrix;
    expect(sentence(row![0]!)).toMatch(/straight under the slot/);
    expect(row![1]).toBeCloseTo(90, 9);
    expect(row![2]).toBeCloseTo(35_786.03, 2);
  });

  test("a date past the magnetic model names the valid dates", () => {
    for (const name of ["DECLINATION", "COMPASS"]) {
      const slot = name === "COMPASS" ? [-97] : [];
      expect(sentence(call(name, 40, -75, ...slot, 2030))).toMatch(/2025-01-01 to 2029-11-12/);
      expect(sentence(call(name, 40, -75, ...slot, "2024-12-31"))).toMatch(/2025-01-01 to 2029-11-12/);
    }
  });

  test("a date cell, ISO text and a decimal year mean the same day", () => {
    // Sheet date 46023 is 2026-01-01.
    const [cell, text, year] = [46023, "2026-01-01", 2026].map((date) => call("DECLINATION", 40, -75, date));
    expect(typeof cell).toBe("number");
    expect(text).toBe(cell);
    expect(year).toBe(cell);
  });
});

describe("tables and choices", () => {
  test("the sun check gives two seasons as text that a sheet reads as dates again", () => {
    const rows = call("SUNCHECK", -34, 25, 19, 2026, 0.75, 12450, 30) as Matrix;
    expect(rows).toHaveLength(2);
    for (const row of rows) {
      expect(row).toHaveLength(5);
      expect(row[0]).toMatch(/^2026-\d\d-\d\dT\d\d:\d\dZ$/);
      const [place] = call("SUNPOSITION", -34, 25, row[0]!) as Matrix;
      const [slot] = call("LOOKANGLES", -34, 25, 19, 30) as Matrix;
      // Half a minute of rounding is 0.125 deg, besides the least separation; in azimuth more at this height.
      expect(Math.abs((place![1] as number) - (slot![1] as number))).toBeLessThan(0.3);
      expect(Math.abs((place![0] as number) - (slot![0] as number))).toBeLessThan(0.5);
    }
  });

  test("its defaults are 0.75 m and 12450 MHz at sea level", () => {
    expect(call("SUNCHECK", 40, -75, -97, 2026)).toEqual(
      call("SUNCHECK", 40, -75, -97, 2026, 0.75, 12450, 0),
    );
  });

  test("the sun check takes one site at a time, and a whole year", () => {
    expect(sentence(call("SUNCHECK", [[40], [41]], -75, -97, 2026))).toMatch(/must be a single value/);
    expect(sentence(call("SUNCHECK", 40, -75, -97, 2026.5))).toMatch(/whole number from 1950 to 2100/);
    expect(sentence(call("SUNCHECK", 50, 0, 120, 2026))).toMatch(/elevation of -/);
  });

  test("the plane is V unless named, in any case of letters", () => {
    expect(call("POLSKEW", 40, -75, -97)).toBe(call("POLSKEW", 40, -75, -97, "v"));
    expect(call("POLSKEW", 40, -75, -97, "H")).not.toBe(call("POLSKEW", 40, -75, -97));
    expect(sentence(call("POLSKEW", 40, -75, -97, "X"))).toMatch(/one of "V", "H", "simple"/);
  });

  test("a fault in a row of two cells fills both, and spares the neighbours", () => {
    const rows = call("PAIRAIM", [[40], [50]], [[0], [0]], 10, [[20], [120]]) as Matrix;
    expect(rows[0]!.every((cell) => typeof cell === "number")).toBe(true);
    expect(rows[1]!.every(isFault)).toBe(true);
  });

  test("a ray of 90 deg and a negative distance are refused", () => {
    expect(sentence(call("RAYHEIGHT", 90, 10))).toMatch(/^elevation is 90 deg; .*89.9 deg/);
    expect(sentence(call("RAYHEIGHT", 40, -1))).toMatch(/^distance is -1; /);
  });

  test("a year before 1950 has no sun position", () => {
    expect(sentence(call("SUNPOSITION", 0, 0, "1949-06-01"))).toMatch(/1950 to 2100/);
  });
});
