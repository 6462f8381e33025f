/**
 * The demonstration as Excel would have saved it, in 52 states of an office:
 * where Excel only writes it otherwise, the review finds exactly what it finds
 * in the clean file; where something happened to it, that is named once, and
 * no old figure beside it. The cases were made by someone who had not seen the
 * code (tests/support/excelSaves/README.md says from what).
 */
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { writeJob } from "../../src/hosts/file/writeJob";
import { recalculate } from "../../src/hosts/headless/recalculate";
import type { Finding } from "../../src/review/finding";
import { review } from "../../src/review/review";
import { isBookError } from "../../src/workbooks/book";
import { namedRows, namedValue } from "../../src/workbooks/named";
import { templates } from "../../src/workbooks/templates";
import { EXCEL_SAVES } from "../support/excelSaves/excelSaves";
import { sampled } from "../support/tries";

const LONG_MS = 120_000;

let bytes: Uint8Array;
let clean: readonly string[];
beforeAll(async () => {
  bytes = await writeJob(recalculate(templates.find(({ id }) => id === "multi-room")!.demonstration()));
  clean = (await reviewed(bytes)).map(inWords);
}, LONG_MS);

const reviewed = async (file: Uint8Array): Promise<Finding[]> => review(await readXlsx(file), recalculate);
const inWords = ({ weight, rule, message, place }: Finding): string =>
  [weight, rule, place && `${place.sheet}!${place.cell}`, message].join(" | ");

/** What the review may say more of a file in which nothing is wrong. */
const SAID_OF_HARMLESS: Readonly<Record<string, readonly RegExp[]>> = {
  // Its maker hides every column of Rooms, which is worth a look.
  "columns-hidden": [/94 columns are hidden/],
  // Its figures are right; the next change would not be computed.
  "manual-mode-right": [/Calculation is set to manual/],
};

/** How each state is named, and what else follows from what was done to the file. */
const NAMED: Readonly<Record<string, readonly [RegExp, ...RegExp[]]>> = {
  "missing-recalculated": [/program without our functions/],
  // With one input changed one more outlet lies below the floor.
  "missing-one-input": [/program without our functions/, /Outlets below the design floor: 2/],
  "not-associated": [/knew our functions but had not loaded them/],
  "busy-three": [/while our functions were still computing/],
  "busy-dependants-wait": [/while our functions were still computing/],
  "getting-data": [/while our functions were still computing/],
  connect: [/could not reach our functions/],
  blocked: [/refuses our functions/],
  // The levels that stood there are gone from the sentence.
  "spill-blocked": [
    /later was typed over it/,
    /something stands where the results belong/,
    /A-07 has too little level\.$/,
  ],
  "clash-link": [/bound to another add-in's file/],
  "clash-link-recalculated": [/bound to another add-in's file/],
  "clash-path": [/bound to another add-in's file/],
  "blanks-as-zero": [/hands blank cells to our functions as 0/],
  "manual-input-changed": [/set to calculate by hand/],
  // An outlet's cable is longer since, so its level and the differences are others.
  "calculation-stopped": [
    /before Excel had finished calculating/,
    /too little level: 39\.77/,
    /too much difference between the ends of the range: 16\.32/,
    /too few volts: 9\.55/,
    /level difference between outlets.*25\.5781/,
  ],
  "single-cuts-runs": [/has an @ in its formula/],
  "single-cuts-outlets": [/has an @ in its formula/],
  "array-shrunk": [/calculated in its first row only/],
  "precision-as-displayed": [/figures as displayed/],
  "sheet-renamed": [/was renamed to Rooms and flats/, /A-07 has too little level/],
  "name-lost": [/The name site_clearance .* is missing: a name that the formulas use is gone/],
  "iteration-on": [/set to calculate in circles/],
};

/** The line that counts what follows has another number wherever more, or less, is found. */
const COUNTS = /more lines? of errors, checks (?:and|or) limits follow/;

test("the clean file has its known findings and no old value", () => {
  expect(clean.length).toBeGreaterThan(0);
  expect(clean.filter((one) => one.includes("stale value"))).toEqual([]);
});

test.each(
  sampled(
    EXCEL_SAVES.filter(({ harmless }) => harmless),
    2,
  ).map((one) => [one.id, one] as const),
)(
  "harmless, %s: exactly what the clean file gives",
  async (id, { transform }) => {
    const found = (await reviewed(transform(bytes))).map(inWords);
    const more = found.filter((one) => !clean.includes(one));
    const allowed = SAID_OF_HARMLESS[id] ?? [];
    expect(more.filter((one) => !allowed.some((words) => words.test(one)))).toEqual([]);
    expect(clean.filter((one) => !found.includes(one))).toEqual([]);
  },
  LONG_MS,
);

test("every state has its name", () => {
  expect(EXCEL_SAVES.flatMap(({ id, harmless }) => (harmless ? [] : [id])).sort()).toEqual(
    Object.keys(NAMED).sort(),
  );
});

test.each(
  sampled(
    EXCEL_SAVES.filter(({ harmless }) => !harmless),
    2,
  ).map((one) => [one.id, one] as const),
)(
  "%s: named once, and nothing else beside it",
  async (id, { transform }) => {
    const found = (await reviewed(transform(bytes))).map(inWords);
    const [name, ...others] = NAMED[id]!;
    const more = found.filter((one) => !clean.includes(one));
    expect(found.filter((one) => name.test(one))).toHaveLength(1);
    expect(
      more.filter((one) => !name.test(one) && !COUNTS.test(one) && !others.some((words) => words.test(one))),
    ).toEqual([]);
  },
  LONG_MS,
);

test("without our functions no check passes, the head says why, and no cost is made of blanks", async () => {
  const { transform } = EXCEL_SAVES.find(({ id }) => id === "missing-recalculated")!;
  // Recalculated natively by the cases' own engine, as Excel would.
  const book = await readXlsx(transform(bytes));
  const results = namedRows(book, "checks_result").flat();
  expect(results.length).toBeGreaterThan(60);
  expect(new Set(results)).toEqual(new Set(["error"]));
  for (const { name, results: shown } of book.sheets)
    expect([name, shown.D1]).toEqual([
      name,
      "Functions do not answer: press Rigsheet pane (Home). Inputs are safe, results are not.",
    ]);
  for (const name of ["price_cable", "price_fittings", "price_labour", "price_direct", "price_cost"])
    expect([name, isBookError(namedValue(book, name))]).toEqual([name, true]);
  expect(namedValue(book, "quote_total")).toBe("open");
});

test("where blanks are read as 0, no check passes and the head says why", async () => {
  const { transform } = EXCEL_SAVES.find(({ id }) => id === "blanks-as-zero")!;
  const book = await readXlsx(transform(bytes));
  expect(new Set(namedRows(book, "checks_result").flat())).toEqual(new Set(["error"]));
  expect(namedValue(book, "checks_verdict")).toBe(
    "This program reads blanks as 0: do not trust levels and volts. See About.",
  );
});
