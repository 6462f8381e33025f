import { runCommand } from "../support/fakeConsole";

const calc = async (words: readonly string[], input?: string) => {
  const { code, out, err } = await runCommand(["calc", ...words], input);
  return {
    code,
    err,
    lines: out === "" ? [] : out.split("\n").map((line) => JSON.parse(line) as Record<string, unknown>),
  };
};

describe("rigsheet calc", () => {
  test("one JSON object a line, the formula as it was written", async () => {
    const { code, lines } = await calc(["RIG.AZIMUTH(35,-100,-90)", "RIG.CASCADELOSS({2,4})"]);
    expect(code).toBe(0);
    // Roddy, Satellite Communications, 4th ed., example 3.1: 162.9 deg.
    expect(lines[0]!.formula).toBe("RIG.AZIMUTH(35,-100,-90)");
    expect(lines[0]!.value).toBeCloseTo(162.9, 1);
    // 10·log10(2) + 10·log10(4).
    expect(lines[1]!.value).toBeCloseTo(3.0103 + 6.0206, 4);
  });

  test("a matrix is an array of rows", async () => {
    const { lines } = await calc(['RIG.TUNERCOUNT({"recorder, 2 tuners";"receiver"})']);
    // Common practice, no source: a two-tuner recorder counts as two.
    expect(lines).toEqual([
      { formula: 'RIG.TUNERCOUNT({"recorder, 2 tuners";"receiver"})', value: [[2], [1]] },
    ]);
  });

  test("an error has a code and a sentence, and the exit code says so", async () => {
    const { code, lines } = await calc(["RIG.AZIMUTH(91,0,0)", "1+1"]);
    expect(code).toBe(1);
    expect(lines[0]).toMatchObject({ error: "#VALUE!" });
    expect(lines[0]!.message).toMatch(/latitude is 91 deg; it must be from -90 to 90 deg/);
    expect(lines[1]).toEqual({ formula: "1+1", value: 2 });
  });

  test("an error inside a matrix stays in its place and counts", async () => {
    const { code, lines } = await calc(['RIG.SPLITLOSS({2;"x";4})']);
    expect(code).toBe(1);
    const [[first], [second], [third]] = lines[0]!.value as unknown[][] as [[number], [object], [number]];
    expect([first, third].map((value) => value.toFixed(2))).toEqual(["3.01", "6.02"]);
    expect(second).toMatchObject({ error: "#VALUE!", message: expect.stringMatching(/"x"/) as string });
  });

  test("formulas from standard input, a line each, blank lines passed over", async () => {
    const { code, lines } = await calc(["-"], "=1+1\r\n\r\nRIG.WINDOW(50,47,77)\n");
    expect(code).toBe(0);
    expect(lines.map(({ value }) => value)).toEqual([2, "ok"]);
  });

  test.each([
    ["an unknown function", "RIG.NOTHING(1)"],
    ["an unfinished formula", "SUM("],
    ["too few arguments", "RIG.AZIMUTH(1)"],
    ["a name that is not there", "rooms_run"],
    ["plain words", "how much is it"],
    ["too many arguments", "RIG.AZIMUTH(1,2,3,4,5,6)"],
    ["a huge number", 'RIG.CABLELOSS("series 6",1e308,1e308)'],
  ])("%s: an error with a sentence, no crash", async (_, formula) => {
    const { code, lines } = await calc([formula]);
    expect(code).toBe(1);
    expect(String(lines[0]!.message).length).toBeGreaterThan(10);
  });

  test("nothing to compute", async () => {
    expect(await runCommand(["calc"])).toMatchObject({
      code: 2,
      err: expect.stringMatching(/There is no formula/) as string,
    });
    expect(await runCommand(["calc", "-"], "\n\n")).toMatchObject({ code: 2 });
  });
});

describe("rigsheet", () => {
  test("--help teaches the commands; each has its own help", async () => {
    const top = await runCommand(["--help"]);
    expect(top.code).toBe(0);
    for (const name of ["calc", "new", "price"]) {
      expect(top.out).toContain(`rigsheet ${name}`);
      const { code, out } = await runCommand([name, "--help"]);
      expect(code).toBe(0);
      expect(out).toMatch(/Exit: 0/);
    }
    expect(top.out).toMatch(/certifies nothing/);
  });

  test.each([[["fly"]], [["price", "--fast", "x.xlsx"]], [["__proto__"]], [["new"]], [["constructor"]]])(
    "%j: a sentence and exit 2",
    async (words) => {
      const { code, err } = await runCommand(words);
      expect(code).toBe(2);
      expect(err).toMatch(/See: rigsheet/);
    },
  );
});
