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
