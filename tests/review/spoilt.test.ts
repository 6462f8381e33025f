/**
 * Mistakes of an office's life in saved workbooks, thought up by somebody who had seen neither rules nor tests
 * (tests/fixtures/spoilt/README.md): each is named in its cell, with what it moves; none of the innocent is blamed.
 * Some of each workbook run; all do with RIGSHEET_RUNS=most.
 */
import { writeFileSync } from "node:fs";
import { trials } from "../../src/hosts/headless/recalculate";
import { standardsExample } from "../../src/workbooks/standards/demonstration";
import { firmSays } from "../../src/review/ranges/firm";
import type { Finding } from "../../src/review/finding";
import { sumsOf } from "../../src/review/measures";
import { reviewInFull } from "../../src/review/reviewInFull";
import {
  baseBook,
  isMoved,
  outcomeOf,
  spoilt,
  spoiltCases,
  type SpoiltCase,
  type SpoiltPlace,
} from "../support/spoilt";
import { isMost } from "../support/tries";
import { ACCUSED, AMOUNTS_NOT_KNOWN, CLOSING_NOT_KNOWN, CLOSING_NOT_NAMED, NOT_NAMED } from "./spoiltWeaker";

const LONG_MS = 3_600_000;
const EVERY = 48;
/** A share of what the mistake moves. */
const AMOUNT_WITHIN = 0.01;
/** Where every outcome is written to, to be read by a person. */
const { SPOILT_OUT } = process.env;
/** Runs these alone, by their ids: `SPOILT=N1-005,N2-031`. */
const only = process.env.SPOILT?.split(",");

/** The demonstration's, in the money of the jobs: the cases were judged with them at hand. */
const FIRM = firmSays(
  { ...standardsExample, fields: { ...standardsExample.fields, site_currency: "demonstration money" } },
  "Invented firm (demonstration)",
);

const SETS = [
  { file: "mistakes.json", fewest: 250, notNamed: NOT_NAMED, notKnown: AMOUNTS_NOT_KNOWN },
  {
    file: "closing.json",
    fewest: 400,
    notNamed: CLOSING_NOT_NAMED,
    notKnown: CLOSING_NOT_KNOWN,
  },
].map((set) => {
  const cases = spoiltCases(set.file);
  const all = cases.filter(({ clean }) => !clean);
  const some = cases.filter(({ id }, index) => (only ? only.includes(id) : isMost || index % EVERY === 0));
  return {
    ...set,
    all,
    chosen: some.filter(({ fair, clean }) => !clean && (fair || SPOILT_OUT !== undefined)),
    clean: some.filter(({ clean }) => clean),
  };
});

const isAccused = (finding: Finding, { sheet, cell }: SpoiltPlace): boolean =>
  finding.weight !== "worth knowing" && finding.place?.sheet === sheet && finding.place.cell === cell;

interface Told {
  readonly id: string;
  readonly outcomes: readonly string[];
  readonly blamed: readonly string[];
  /** Right within a hundredth of what it moves; undefined where nothing moves. */
  readonly isAmountRight?: boolean;
  readonly said: readonly string[];
}

async function told(one: SpoiltCase): Promise<Told> {
  const { findings, headline } = reviewInFull(await spoilt(one), trials, { standards: FIRM });
  const lists = one.combination ? (one.cause as SpoiltPlace[][]) : [one.cause as SpoiltPlace[]];
  const outcomes = lists.map((causes) => outcomeOf(findings, causes));
  const right = one.rightTotal === undefined ? sumsOf(baseBook(one.book)).total! : one.rightTotal;
  const { quoted, shouldBe } = headline ?? {};
  const moves = right !== null && (quoted === undefined || Math.abs(quoted - right) >= 0.005);
  return {
    id: one.id,
    outcomes,
    blamed: one.innocent
      .filter((at) => findings.some((finding) => isAccused(finding, at)))
      .map(({ sheet, cell }) => `${sheet}!${cell}`),
    ...(moves && {
      isAmountRight:
        shouldBe !== undefined &&
        Math.abs(shouldBe - right) <= AMOUNT_WITHIN * Math.max(Math.abs((quoted ?? 0) - right), 1),
    }),
    said: [
      headline?.sentence ?? "",
      ...findings.map(({ weight, rule, place, message, effect = "" }) =>
        [weight, rule, place ? `${place.sheet}!${place.cell}` : "-", message, effect].join(" | "),
      ),
    ],
  };
}

describe.each(SETS)("$file", ({ all, chosen, clean, fewest, notNamed, notKnown, file }) => {
  test("the cases are those that were written, and still mistakes", () => {
    expect(all.length).toBeGreaterThan(fewest);
    expect(all.filter(isMoved).map(({ id }) => id)).toEqual([]);
    const ids = new Set(all.map(({ id }) => id));
    expect([...Object.keys(notNamed), ...notKnown].filter((id) => !ids.has(id))).toEqual([]);
  });

  test(
    `${chosen.length} spoilt workbooks: named in the cell, with what it moves, and nobody innocent`,
    async () => {
      const results: Told[] = [];
      for (const one of chosen) results.push(await told(one));
      if (SPOILT_OUT !== undefined) writeFileSync(`${SPOILT_OUT}.${file}`, JSON.stringify(results, null, 1));
      const whole = ({ outcomes }: Told): boolean => outcomes.every((one) => one === "cell");
      const moving = results.filter(({ isAmountRight }) => isAmountRight !== undefined);
      process.stdout.write(
        `of ${results.length} spoilt workbooks ${results.filter(whole).length} named in the cell; of ${moving.length} totals that moved ${moving.filter(({ isAmountRight }) => isAmountRight).length} put right within 1 %\n`,
      );
      expect(
        results.flatMap((one) => (whole(one) || one.id in notNamed ? [] : [[one.id, one.outcomes]])),
      ).toEqual([]);
      expect(results.flatMap(({ id, blamed }) => (blamed.length > 0 ? [[id, blamed]] : []))).toEqual([]);
      expect(
        moving.flatMap(({ id, isAmountRight }) => (isAmountRight || notKnown.includes(id) ? [] : [id])),
      ).toEqual([]);
    },
    LONG_MS,
  );

  if (clean.length > 0)
    test(
      `of ${clean.length} jobs that only look unusual nothing is said to be wrong or doubtful`,
      async () => {
        const accused: (readonly [id: string, told: readonly string[]])[] = [];
        for (const one of clean) {
          const { findings } = reviewInFull(await spoilt(one), trials, { standards: FIRM });
          const told = findings.filter(({ weight }) => weight !== "worth knowing");
          if (told.length > 0) accused.push([one.id, told.map(({ message }) => message)]);
        }
        expect(accused.filter(([id]) => !(id in ACCUSED))).toEqual([]);
      },
      LONG_MS,
    );
});
