/** The review against one known mistake at a time, and against clean jobs. */
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { priceListOf } from "../../src/review/priceListOf";
import { review } from "../../src/review/review";
import { rules } from "../../src/review/ruleList";
import type { Book } from "../../src/workbooks/book";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { blockOf, cleanJob, mendedGuestHouse, randomFrom, type Job } from "./cleanJobs";
import { mutations } from "./mutants";

/** The full counts take many minutes; these run unless the variable REVIEW_MUTANTS or REVIEW_CLEAN asks for more. */
const MUTANTS = Number(process.env.REVIEW_MUTANTS ?? mutations.length);
const CLEAN = Number(process.env.REVIEW_CLEAN ?? 8);
const LONG_MS = 3_600_000;

const computedJob = (job: Job): Book => recalculate(layOut(multiRoom, job));
const copyOf = (book: Book): Book => JSON.parse(JSON.stringify(book)) as Book;
const told = (book: Book): string[] =>
  review(book, recalculate).map(({ rule, place }) => `${rule} ${place?.sheet}!${place?.cell}`);

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
    const table = new Map(mutations.map(({ kind }) => [kind, { made: 0, found: 0 }]));
    const missed: string[] = [];
    for (let index = 0; index < MUTANTS; index++) {
      const { kind, apply, stored } = mutations[index % mutations.length]!;
      const mutant = copyOf(bases[Math.floor(random() * bases.length)]!);
      const { rule, or, cell } = apply(mutant, random);
      const findings = review(stored ? mutant : recalculate(mutant), recalculate);
      const found = findings.some(
        (one) =>
          (one.rule === rule || one.rule === or) &&
          (!cell || (one.place?.sheet === cell.sheet && one.place.cell === cell.cell)),
      );
      const line = table.get(kind)!;
      line.made += 1;
      if (found) line.found += 1;
      else
        missed.push(
          `${kind} ${cell?.sheet}!${cell?.cell}: ${findings
            .map((one) => `${one.rule} ${one.place?.cell}`)
            .join("; ")
            .slice(0, 300)}`,
        );
    }
    const lines = [...table].map(
      ([kind, { made, found }]) => `${kind.padEnd(34)} ${String(found).padStart(4)} of ${made}`,
    );
    process.stdout.write(`${[...lines, ...missed].join("\n")}\n`);
    const found = [...table.values()].reduce((sum, one) => sum + one.found, 0);
    expect(found / MUTANTS).toBeGreaterThanOrEqual(0.98);
  },
  LONG_MS,
);

test(
  `${CLEAN} clean jobs of other sizes and settings: nothing is found`,
  () => {
    for (let seed = 100; seed < 100 + CLEAN; seed++)
      expect({ seed, told: told(computedJob(cleanJob(seed))) }).toEqual({ seed, told: [] });
  },
  LONG_MS,
);

test("the demonstration: exactly what is wrong in it on purpose", () => {
  const told = review(recalculate(layOut(multiRoom, guestHouse)), recalculate);
  expect(told.filter(({ weight }) => weight === "wrong").map(({ says }) => says)).toEqual([
    expect.stringMatching(/^A-07 has too little level/),
    expect.stringMatching(/^H3 has too few volts/),
    expect.stringMatching(/^Greatest difference between outlets/),
  ]);
  expect(told.filter(({ weight }) => weight === "doubtful")).toEqual([]);
});

test("a clean job through its .xlsx: nothing is found, and a price changed from the list is", async () => {
  const book = await readXlsx(await writeXlsx(computedJob(mendedGuestHouse())));
  expect(told(book)).toEqual([]);
  const list = priceListOf(book);
  const changed = { ...list, plates: { ...list.plates, "single outlet": 7.4 } };
  expect(review(book, recalculate, { prices: list })).toEqual([]);
  expect(review(book, recalculate, { prices: changed })).toEqual([
    expect.objectContaining({ rule: "price missing, expired or changed", should: "7.4" }),
  ]);
});

test("a formula typed over says what it does to the price", () => {
  const book = computedJob(mendedGuestHouse());
  const total = Number(
    book.sheets.find(({ name }) => name === "Quote")!.results[placeOf(book, "quote_total")],
  );
  book.sheets.find(({ name }) => name === "Quote")!.cells[placeOf(book, "quote_total")] = { value: 1 };
  const finding = review(recalculate(book), recalculate).find(({ rule }) => rule === "changed formula")!;
  expect(finding.effect).toBe(
    `The total is 1.00; with all of the template's formulas it is ${total.toFixed(2)}.`,
  );
});

const placeOf = (book: Book, name: string): string => book.names.find((one) => one.name === name)!.range;
