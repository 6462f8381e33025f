/**
 * Jobs as an estimator types them, each with what is wrong and what must be said, or with nothing wrong and nothing to
 * be said.
 *
 * Source: tests/fixtures/distribution/outsiderCases.json: invented by somebody who had seen neither code nor tests,
 * figures worked by hand from the equations. Made for this project, ours. Where we judge otherwise, the reason stands
 * in outsiderCasesJudged.json.
 */
import { play, type OutsiderCase } from "../support/outsiderCases";
import fixture from "../fixtures/distribution/outsiderCases.json";
import judgements from "../fixtures/distribution/outsiderCasesJudged.json";

interface Judgement {
  readonly reason: string;
  readonly missing?: readonly string[];
  /** How each begins. */
  readonly extra?: readonly string[];
}

const cases = fixture as unknown as readonly OutsiderCase[];
const judged = judgements as Readonly<Record<string, Judgement>>;

test.each(cases.map((one) => [one.id, one] as const))("%s", (id, one) => {
  const { missing = [], extra = [] } = judged[id] ?? {};
  const played = play(one);
  expect(played).toEqual({
    missing,
    extra: extra.map((words) => expect.stringContaining(words) as unknown),
    wrong: [],
  });
});

test("each judgement is of a case", () => {
  const known = new Set(cases.map(({ id }) => id));
  expect(Object.keys(judged).filter((id) => !known.has(id))).toEqual([]);
});
