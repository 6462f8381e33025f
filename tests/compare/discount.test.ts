/** A discount is a cause of its own in a comparison, and the parts add up to the difference of the reference prices. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { recalculate } from "../../src/hosts/headless/recalculate";
import type { JobInputs } from "../../src/workbooks/definition";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { runCommand } from "../support/fakeConsole";
import { referencePrice, type Job } from "../support/referencePrice";

const folder = mkdtempSync(path.join(tmpdir(), "discount-"));
afterAll(() => rmSync(folder, { recursive: true }));

const withFields = (fields: JobInputs["fields"]): JobInputs => ({
  ...guestHouse,
  fields: { ...guestHouse.fields, ...fields },
});
const BY_SHARE = withFields({
  site_revision: 2,
  site_margin: 0.25,
  discount_share: 0.05,
  discount_reason: "three houses ordered together (demonstration)",
});
const BY_SUM = withFields({ discount_sum: 250, discount_reason: "an old customer (demonstration)" });

const centsOf = (job: JobInputs): number =>
  Math.round(Number(referencePrice(job as unknown as Job).total) * 100);

async function compared(
  older: JobInputs,
  newer: JobInputs,
): Promise<{ parts: [string, number][]; together: number }> {
  const files = [older, newer].map((_, index) => path.join(folder, `${index}.xlsx`));
  for (const [index, job] of [older, newer].entries())
    writeFileSync(files[index]!, await writeXlsx(recalculate(layOut(multiRoom, job))));
  const { out } = await runCommand(["compare", ...files]);
  // "       -368.18  Terms, Discount on the price without tax: a sum or a share: Discount as a share changed"
  const parts = [...out.matchAll(/^ +([+-]?\d+\.\d\d) {2}(.+)$/gm)].map(([, sum, what]): [string, number] => [
    what!,
    Math.round(Number(sum) * 100),
  ]);
  return { parts: parts.slice(0, -1), together: parts.at(-1)![1] };
}

/** Each discount alone, by the reference: what it takes off the total of the job without it. */
const off = (job: JobInputs): number => {
  const fields = Object.fromEntries(
    Object.entries(job.fields!).filter(([name]) => !/^discount_(?:sum|share)$/.test(name)),
  );
  return centsOf(job) - centsOf({ ...job, fields });
};

test.each<[string, JobInputs, JobInputs, [RegExp, number][]]>([
  ["none, then a share", guestHouse, BY_SHARE, [[/Discount as a share changed$/, off(BY_SHARE)]]],
  ["none, then a sum", guestHouse, BY_SUM, [[/Discount as a sum changed$/, off(BY_SUM)]]],
  ["a sum, then none", BY_SUM, guestHouse, [[/Discount as a sum changed$/, -off(BY_SUM)]]],
  [
    "a sum, then a share: the one is taken back, and the other given",
    BY_SUM,
    BY_SHARE,
    [
      [/Discount as a sum changed$/, -off(withFields({ site_margin: 0.25, discount_sum: 250 }))],
      [/Discount as a share changed$/, off(BY_SHARE)],
    ],
  ],
  [
    // Margin first, under the share: then the share is taken back at the old margin.
    "a share, then a sum",
    BY_SHARE,
    BY_SUM,
    [
      [/Discount as a share changed$/, -off(withFields({ discount_share: 0.05 }))],
      [/Discount as a sum changed$/, off(BY_SUM)],
    ],
  ],
])("%s", async (_, older, newer, causes) => {
  const { parts, together } = await compared(older, newer);
  expect(together).toBe(centsOf(newer) - centsOf(older));
  expect(parts.reduce((sum, [, cents]) => sum + cents, 0)).toBe(together);
  for (const [what, cents] of causes) {
    const found = parts.filter(([one]) => what.test(one));
    expect(found.map(([, sum]) => sum)).toEqual([cents]);
  }
});

test("by hand: 250 off a price taxed at 20 % is 300 off the total", () => {
  expect(guestHouse.fields!.site_tax).toBe(0.2);
  expect(guestHouse.fields!.site_tax_on).toBe("materials and labour");
  expect(off(BY_SUM)).toBe(-30_000);
});
