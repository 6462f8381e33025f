import fc from "fast-check";
import { faults, isFault } from "../../../src/engine/faults";
import { userBands } from "../../../src/engine/tuners/userBands";
import { publishedCheck } from "../../support/published";
import { tries } from "../../support/tries";

/** The limit of EN 50607, from the check file and not from our constant. */
const LIMIT = publishedCheck("en50607-limits").expected.max_user_bands_per_output as number;

const bandsIn = (text: string): number[] => {
  const [first, last] = text.split("-").map(Number);
  return Array.from({ length: (last ?? first!) - first! + 1 }, (_, index) => first! + index);
};

describe("user bands in row order", () => {
  test("each band of a head unit is handed out once, from 1 without a gap, and each row gets its number", () => {
    const row = fc.tuple(fc.constantFrom("1", "2", "loft"), fc.integer({ min: 0, max: 4 }));
    fc.assert(
      fc.property(fc.array(row, { maxLength: 40 }), (rows) => {
        const answers = userBands(
          rows.map(([unit]) => unit),
          rows.map(([, tuners]) => tuners),
        ) as unknown[];
        for (const unit of ["1", "2", "loft"]) {
          const handed = rows.flatMap(([at, tuners], index) => {
            const answer = answers[index];
            if (at !== unit || tuners === 0) return [];
            if (isFault(answer)) return [];
            const bands = bandsIn(answer as string);
            expect(bands).toHaveLength(tuners);
            return bands;
          });
          expect(handed).toEqual(handed.map((_, index) => index + 1));
          expect(handed.length).toBeLessThanOrEqual(LIMIT);
        }
      }),
      { numRuns: tries(100, 1000) },
    );
  });

  test("boundary: the last band is 32, and the row that runs over is named and takes none", () => {
    expect(userBands(["1", "1"], [LIMIT - 1, 1])).toEqual([`1-${LIMIT - 1}`, `${LIMIT}`]);
    const answers = userBands(["1", "1", "1"], [LIMIT - 1, 2, 1]) as unknown[];
    expect(answers[1]).toMatchObject({
      message:
        "Head unit 1 would need 33 user bands up to this row; one output has at most 32 (EN 50607). Move this row to another head unit.",
    });
    expect(answers[2]).toBe(`${LIMIT}`);
  });

  test("a head unit's name is compared without case", () => {
    expect(userBands(["Loft", "loft"], [1, 2])).toEqual(["1", "2-3"]);
  });

  test("blank rows, rows without a tuner, and rows with something missing", () => {
    const bad = faults.errorCell("tuners", "#REF!");
    expect(userBands([null, "1", null, "none", "1", "1"], [null, 0, 0, 0, bad, 1])).toEqual([
      null,
      "none",
      "none",
      "none",
      bad,
      "1",
    ]);
    expect(userBands([null, "none", "1", bad], [1, 1, null, 1])).toMatchObject([
      { message: expect.stringMatching(/^head_units is missing/) },
      { message: expect.stringMatching(/^head_units is missing/) },
      { message: expect.stringMatching(/^tuners is missing/) },
      bad,
    ]);
  });

  test("lists of two lengths are refused", () => {
    expect(userBands(["1"], [1, 2])).toEqual(faults.shortColumn("tuners", 2, 1));
  });
});
