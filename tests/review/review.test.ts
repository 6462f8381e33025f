/** The review against one known mistake at a time, and against clean jobs. */
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { recalculate } from "../../src/hosts/headless/recalculate";
import type { Finding } from "../../src/review/finding";
import { priceListOf } from "../../src/review/priceListOf";
import { review } from "../../src/review/review";
import { rules } from "../../src/review/ruleList";
import type { Book } from "../../src/workbooks/book";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { templateOf, templates } from "../../src/workbooks/templates";
import { blockOf, cleanJob, mendedGuestHouse, randomFrom, type Job } from "./cleanJobs";
import { mutations } from "./mutants";
import { tries } from "../support/tries";

const MUTANTS = tries(mutations.length, mutations.length, 500);
const CLEAN = tries(2, 6, 200);
const NEEDED = 0.98;
const LONG_MS = 3_600_000;

const computedJob = (job: Job): Book => recalculate(layOut(multiRoom, job));
const copyOf = (book: Book): Book => JSON.parse(JSON.stringify(book)) as Book;
const short = ({ rule, place }: Finding): string => `${rule} ${place?.sheet}!${place?.cell}`;
const told = (book: Book): string[] => review(book, anew(book)).map(short);

/** Computing a book that was just computed gives the same again, so it is not done twice. */
const anew =
  (known: Book | undefined) =>
  (book: Book): Book =>
    book === known ? book : recalculate(book);

test("each rule has a name of its own, a reason and an example", () => {
  expect(new Set(rules.map(({ id }) => id)).size).toBe(rules.length);
  for (const { reason, example } of rules)
    expect(Math.min(reason.length, example.length)).toBeGreaterThan(20);
});

test(
  `${MUTANTS} mutants of ${mutations.length} kinds: the right rule names the right cell for 98 in 100`,
  () => {
    expect(mutations.length).toBeGreaterThanOrEqual(25);
    const bases = [mendedGuestHouse(), blockOf(1), cleanJob(3), cleanJob(8)].map(computedJob);
    const random = randomFrom(20261125);
    const table = new Map(mutations.map(({ kind }) => [kind, { made: 0, found: 0, beside: 0 }]));
    const missed: string[] = [];
    for (let index = 0; index < MUTANTS; index++) {
      const { kind, apply, stored, fits, toPriceList } = mutations[index % mutations.length]!;
      const fitting = bases.filter((book) => fits?.(book) ?? true);
      const base = fitting[Math.floor(random() * fitting.length)]!;
      const mutant = copyOf(base);
      const { rule, cell } = apply(mutant, random);
      const computed = stored ? mutant : recalculate(mutant);
      const prices = toPriceList ? priceListOf(base) : undefined;
      const findings = review(computed, anew(stored ? undefined : computed), prices && { prices });
      const right = findings.filter(
        (one) => one.rule === rule && one.place?.sheet === cell.sheet && one.place.cell === cell.cell,
      );
      const line = table.get(kind)!;
      line.made += 1;
      line.beside += findings.length - right.length;
      if (right.length > 0) line.found += 1;
      else missed.push(`${kind} ${cell.sheet}!${cell.cell}: ${findings.map(short).join("; ").slice(0, 300)}`);
    }
    const lines = [...table].map(
      ([kind, { made, found, beside }]) =>
        `${kind.padEnd(42)} ${String(found).padStart(4)} of ${String(made).padEnd(4)} ${(beside / Math.max(1, made)).toFixed(1).padStart(5)} more`,
    );
    const found = [...table.values()].reduce((sum, one) => sum + one.found, 0);
    const sum = `named by the right rule in the right cell: ${found} of ${MUTANTS}`;
    process.stdout.write(`${[...lines, ...missed.map((one) => `missed: ${one}`), sum].join("\n")}\n`);
    expect(found / MUTANTS).toBeGreaterThanOrEqual(NEEDED);
  },
  LONG_MS,
);

test(
  `${CLEAN} clean jobs of other sizes and settings: nothing is found`,
  () => {
    for (let seed = 101; seed <= 100 + CLEAN; seed++)
      expect({ seed, told: told(computedJob(cleanJob(seed))) }).toEqual({ seed, told: [] });
  },
  LONG_MS,
);

test("the demonstration: exactly what is wrong in it on purpose", () => {
  const told = review(recalculate(layOut(multiRoom, guestHouse)), recalculate);
  expect(told.filter(({ weight }) => weight === "wrong").map(({ message }) => message)).toEqual([
    expect.stringMatching(/^A-07 has too little level/),
    expect.stringMatching(/^H3 has too few volts/),
  ]);
  // 15 dB is the limit between channels at one outlet; between outlets it is a wish.
  expect(told.filter(({ message }) => message.startsWith("Largest level difference between"))).toEqual([
    expect.objectContaining({ weight: "worth knowing" }),
  ]);
  expect(told.filter(({ weight }) => weight === "doubtful")).toEqual([]);
});

describe("the templates themselves", () => {
  test.each(templates.map((one) => [one.id, one] as const))("%s, empty: one line says so", (_, template) => {
    expect(told(recalculate(template.empty()))).toEqual(["nothing filled in undefined!undefined"]);
  });

  test.each(["single-drop", "alignment-card"])("%s, demonstration: nothing is found", (id) => {
    expect(told(recalculate(templateOf(id)!.demonstration()))).toEqual([]);
  });

  test("an empty one with a formula typed over is no longer only empty", () => {
    const book = recalculate(templateOf("single-drop")!.empty());
    const { sheet, range } = book.names.find(({ name }) => name === "about_template")!;
    book.sheets.find(({ name }) => name === sheet)!.cells[range] = { value: 1 };
    expect(told(book)).toContain(`formula typed over ${sheet}!${range}`);
  });
});

test("a clean job through its .xlsx: nothing is found, and a price changed from the list is", async () => {
  const book = await readXlsx(await writeXlsx(computedJob(mendedGuestHouse())));
  expect(told(book)).toEqual([]);
  const list = priceListOf(book);
  const changed = { ...list, plates: { ...list.plates, "single outlet": 7.4 } };
  expect(review(book, recalculate, { prices: list })).toEqual([]);
  expect(review(book, recalculate, { prices: changed })).toEqual([
    expect.objectContaining({ rule: "price missing, expired or changed", expected: "7.4" }),
  ]);
});

test("a formula typed over says what it does to the price", () => {
  const book = computedJob(mendedGuestHouse());
  const total = Number(
    book.sheets.find(({ name }) => name === "Quote")!.results[placeOf(book, "quote_total")],
  );
  book.sheets.find(({ name }) => name === "Quote")!.cells[placeOf(book, "quote_total")] = { value: 1 };
  const finding = review(recalculate(book), recalculate).find(({ rule }) => rule === "formula typed over")!;
  expect(finding.effect).toBe(
    `The total is 1.00; with all of the template's formulas it is ${total.toFixed(2)}.`,
  );
});

const placeOf = (book: Book, name: string): string => book.names.find((one) => one.name === name)!.range;
