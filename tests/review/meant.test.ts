/** What an office says it means is not told again; what is given twice is, wherever it stands. */
import { recalculate } from "../../src/hosts/headless/recalculate";
import type { Finding } from "../../src/review/finding";
import { NAMED_BY } from "../../src/review/withoutConsequences";
import { review } from "../../src/review/review";
import { rules as ruleList } from "../../src/review/ruleList";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { templates } from "../../src/workbooks/templates";
import { mendedGuestHouse, type Job } from "./cleanJobs";

const reviewOf = (change: (job: Job) => void): Finding[] => {
  const job = mendedGuestHouse();
  change(job);
  return review(recalculate(layOut(multiRoom, job)), recalculate);
};
const of = (findings: readonly Finding[], rule: string): string[] =>
  findings.filter((one) => one.rule === rule).map(({ message }) => message);

test("a margin under the floor is told, and no longer once Terms lists it with a reason", () => {
  const low = (job: Job): void => void (job.fields.site_margin = 0.022);
  expect(of(reviewOf(low), "margin under the floor")).toEqual(["The margin is 2.2 %."]);
  const listed = (why: string) => (job: Job) => {
    low(job);
    job.blocks.onpurpose = [...(job.blocks.onpurpose ?? []), { what: "Margin", why }];
  };
  expect(of(reviewOf(listed("agreed with the owner")), "margin under the floor")).toEqual([]);
  // Without a reason it is only a word.
  expect(of(reviewOf(listed("")), "margin under the floor")).toHaveLength(1);
});

test("the discount of Terms and another among the options are two", () => {
  const own = (job: Job): void => {
    job.fields.discount_share = 0.05;
    job.fields.discount_reason = "three houses ordered together";
  };
  expect(of(reviewOf(own), "discount given twice")).toEqual([]);
  const both = reviewOf((job) => {
    own(job);
    job.blocks.provisional!.push({ name: "discount for the season", sum: 100 });
  });
  expect(of(both, "discount given twice")).toEqual([
    expect.stringMatching(/^A second discount: discount for the season\. The first is 0\.05 under Discount/),
  ]);
});

test("what folds a failing check speaks of checks and rules that there are", () => {
  const checks = multiRoom.sheets
    .flatMap(({ parts }) => parts)
    .flatMap((part) => (part.kind === "checks" ? part.checks : []));
  const rules = ruleList.map(({ id }) => id);
  for (const { check, rule } of NAMED_BY) {
    const known = checks.some(({ id, entriesOf }) =>
      typeof check === "string" ? id === check : entriesOf === check.entriesOf,
    );
    expect(known ? "" : check).toBe("");
    expect(rules).toContain(rule);
  }
});

test("each check of a template has a name of its own", () => {
  for (const { definition } of templates) {
    const ids = definition.sheets
      .flatMap(({ parts }) => parts)
      .flatMap((part) => (part.kind === "checks" ? part.checks.map(({ id }) => id) : []));
    expect(ids.length).toBeGreaterThan(3);
    expect(ids.filter((id, at) => ids.indexOf(id) !== at)).toEqual([]);
  }
});
