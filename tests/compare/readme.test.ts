/** What the README prints of a comparison is what the command prints, and its parts add up. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { compareJobs } from "../../src/compare/compareJobs";
import { inWords } from "../../src/compare/words";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { referencePrice, type Job } from "../support/referencePrice";
import { secondRevision } from "../support/secondRevision";

const readme = readFileSync(path.join(__dirname, "../../README.md"), "utf8");
const shown = /^Total \S+ -> [\s\S]*?together$/m.exec(readme)?.[0].split("\n") ?? [];
const cents = (text: string): number => Math.round(Number(text) * 100);

test("two revisions of the demonstration, as the README shows them", () => {
  const comparison = compareJobs(
    multiRoom,
    layOut(multiRoom, guestHouse),
    layOut(multiRoom, secondRevision()),
    recalculate,
  );
  const printed = inWords(comparison).split("\n");
  process.stdout.write(`${printed.join("\n")}\n`);
  expect(shown.length).toBeGreaterThan(5);
  for (const line of shown) expect(printed).toContain(line);
});

test("the parts that the README shows add up to the difference of the reference prices, to the cent", () => {
  const sums = shown.slice(1).map((line) => cents(line.trim().split(/\s+/)[0]!));
  const together = sums.pop();
  expect(sums.reduce((sum, one) => sum + one, 0)).toBe(together);
  const total = (job: unknown): number => cents(String(referencePrice(job as Job).total));
  expect(together).toBe(total(secondRevision()) - total(guestHouse));
});
