/**
 * How many random or seeded cases a test tries. A person waits for `npm test`,
 * so it tries few; RIGSHEET_RUNS set to "many" tries more, `npm run prove` sets it to
 * "most".
 */
const NAMES = ["few", "many", "most"] as const;
const asked = process.env.RIGSHEET_RUNS ?? "few";
const level = NAMES.findIndex((one) => one === asked);
if (level < 0) throw new Error(`RIGSHEET_RUNS is "${asked}"; it takes ${NAMES.join(", ")}.`);

/** Everything is tried, in browsers and cases as in numbers. */
export const isMost = asked === "most";

export const tries = (few: number, many: number, most = many): number => [few, many, most][level]!;

/**
 * Cases of a set of which each takes seconds: every so-manieth in the run of few, which must end within the hour on two
 * cores; all of them otherwise.
 */
export const sampled = <T>(cases: readonly T[], every: number): readonly T[] =>
  level > 0 ? cases : cases.filter((_, index) => index % every === 0);
