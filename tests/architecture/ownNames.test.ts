/** Names that were given up stay gone, and no example stands on a known operator's slot or in a real city. */
import { readdirSync, readFileSync, statSync } from "node:fs";
import path from "node:path";
import { allFunctions } from "../../src/functions/all";
import { runCommand } from "../support/fakeConsole";

const project = path.join(__dirname, "../..");
const filesIn = (place: string): string[] =>
  statSync(place).isDirectory()
    ? readdirSync(place).flatMap((name) => filesIn(path.join(place, name)))
    : [place];

/** A slot as people write it; not the 1E of 1E-9, nor 12 W of power. */
const SLOT = /(?<![\w.%])(\d{1,3}(?:\.\d+)?)[EW](?![\w.+-]*\d|\w)/g;
/** Our examples; the others serve the tests of reading, the last the six jobs by which the distribution is specified. */
const NEUTRAL = ["97W", "113W", "13E", "19E", "13.5E", "0W", "180W", "77W"];

test("every slot written as text is one of our examples", () => {
  const texts = ["src", "tests", "templates", "README.md", "DEVELOPERS.md", "manifest/README.md"]
    .flatMap((place) => filesIn(path.join(project, place)))
    .filter((file) => /\.(ts|md|csv)$/.test(file) && file !== __filename);
  expect(texts.length).toBeGreaterThan(500);
  const others = texts.flatMap((file) =>
    [...readFileSync(file, "utf8").matchAll(SLOT)]
      .filter(([slot, degrees]) => Number(degrees) <= 180 && !NEUTRAL.includes(slot))
      .map(([slot]) => `${path.relative(project, file)}: ${slot}`),
  );
  expect(others).toEqual([]);
});

test("every documented example from a site is at a round place, or a book's", () => {
  const examples = allFunctions
    .filter(({ parameters }) => parameters[0]?.name === "latitude" && parameters[1]?.name === "longitude")
    .flatMap(({ examples }) => examples);
  expect(examples.length).toBeGreaterThan(12);
  const elsewhere = examples.filter(({ formula, source }) => {
    const place = formula.split(/[(,]/).slice(1, 3).map(Number);
    return !/table A5\.1/.test(source) && !place.every((degrees) => Number.isInteger(2 * degrees));
  });
  expect(elsewhere).toEqual([]);
});

test("stored rows of reference libraries are at round places with numbers for names", () => {
  for (const name of ["look-angles-satellitejs.json", "sun-transit-2026.json"]) {
    const text = readFileSync(path.join(project, "tests/fixtures/published", name), "utf8");
    const { cases } = JSON.parse(text) as {
      cases: { site: string; lat_deg: number; lon_deg: number; sat_lon_deg: number }[];
    };
    for (const { site, lat_deg, lon_deg, sat_lon_deg } of cases) {
      expect(site).toMatch(/^site \d+/);
      expect([lat_deg, lon_deg, sat_lon_deg].every(Number.isInteger)).toBe(true);
    }
  }
});

test("names given up before the first release: no function, command or option answers to them", async () => {
  expect(allFunctions.map(({ name }) => name)).toContain("CASCADELOSS");
  expect(allFunctions.map(({ name }) => name)).not.toContain("CASCADE");
  expect(await runCommand(["drill"])).toMatchObject({
    code: 2,
    err: 'There is no command "drill". See: rigsheet --help',
  });
  expect((await runCommand(["exercises", "--help"])).code).toBe(0);
  const { code, err } = await runCommand(["picture", "job.xlsx", "--kind", "sky", "--out", "x.svg"]);
  expect({ code, err }).toEqual({
    code: 2,
    err: expect.stringContaining("the pictures are: diagram, levels, slots") as string,
  });
});
