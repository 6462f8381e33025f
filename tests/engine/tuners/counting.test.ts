import fc from "fast-check";
import { faults } from "../../../src/engine/faults";
import { MOST_USER_BANDS, MOST_USER_BANDS_BASIC } from "../../../src/engine/tuners/constants";
import { headUnits } from "../../../src/engine/tuners/headUnits";
import { tunersOfKind } from "../../../src/engine/tuners/tunersOfKind";
import { basisOf, publishedCheck } from "../../support/published";
import { heldTo } from "../../support/heldTo";
import { tries } from "../../support/tries";

describe("limits against their standards", () => {
  for (const [id, limit] of [
    ["en50494-limits", MOST_USER_BANDS_BASIC],
    ["en50607-limits", MOST_USER_BANDS],
  ] as const) {
    const check = publishedCheck(id);
    const held = heldTo({ what: "user bands", source: check.source, basis: basisOf(check), unit: "bands" });
    test(id, () => held.row(id, limit, check.expected.max_user_bands_per_output as number, 0));
  }
});

describe("tuners of a kind", () => {
  const practice = publishedCheck("tuners-8");
  const held = heldTo({
    what: "TUNERCOUNT",
    source: practice.source,
    basis: basisOf(practice),
    unit: "tuners",
  });
  test("a two-tuner recorder counts as two", () =>
    held.row(
      "recorder",
      tunersOfKind("recorder, 2 tuners"),
      practice.expected.two_tuner_recorder_counts as number,
      0,
    ));

  test("the number in the words is the number of tuners", () => {
    fc.assert(
      fc.property(fc.constantFrom("receiver", "Recorder"), fc.integer({ min: 1, max: 32 }), (word, count) => {
        expect(tunersOfKind(`${word},  ${count} tuner${count === 1 ? "" : "s"} `)).toBe(count);
      }),
    );
  });

  test("the catalogue counts first", () => {
    const own = new Map([
      ["receiver", 3],
      ["lounge set", 4],
    ]);
    expect(tunersOfKind("Receiver", own)).toBe(3);
    expect(tunersOfKind("Lounge  Set", own)).toBe(4);
    const bad = faults.missing("tuners", "a number");
    expect(tunersOfKind("x", new Map([["x", bad]]))).toBe(bad);
  });

  test.each(["recorder", "recorder, 0 tuners", "recorder, 33 tuners", "", "tuner"])(
    "%j is refused with the known kinds",
    (kind) => {
      const own = new Map([["lounge set", 4]]);
      const answer = tunersOfKind(kind, own) as { message: string };
      expect(answer.message).toContain(
        '"receiver", "recorder, 2 tuners", "recorder, 4 tuners", "lounge set"',
      );
    },
  );
});

describe("least number of head units", () => {
  test("by hand", () => {
    expect([0, 1, 8, 9, 16, 17].map((tuners) => headUnits(tuners, 8))).toEqual([0, 1, 1, 2, 2, 3]);
  });

  test("enough, and one fewer is not enough; more tuners never need fewer", () => {
    const tuners = fc.integer({ min: 0, max: 100_000 });
    fc.assert(
      fc.property(tuners, tuners, fc.integer({ min: 1, max: 32 }), (a, b, capacity) => {
        const units = headUnits(a, capacity);
        expect(units * capacity).toBeGreaterThanOrEqual(a);
        expect((units - 1) * capacity).toBeLessThan(Math.max(a, 1));
        if (a <= b) expect(units).toBeLessThanOrEqual(headUnits(b, capacity));
        if (capacity > 1) expect(units).toBeLessThanOrEqual(headUnits(a, capacity - 1));
      }),
      { numRuns: tries(100, 1000) },
    );
  });
});
