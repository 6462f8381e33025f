import fc from "fast-check";
import { tuningWord } from "../../../src/engine/tuners/tuningWord";
import { heldTo } from "../../support/heldTo";
import { basisOf, publishedCheck } from "../../support/published";
import { tries } from "../../support/tries";

describe("tuning words against the published formulas", () => {
  const old = publishedCheck("en50494-T-1950-2042");
  const heldOld = heldTo({ what: "TUNINGWORD", source: old.source, basis: basisOf(old), unit: "steps" });
  test("EN 50494", () => {
    const { F_IF_MHz, F_UB_MHz } = old.inputs as Record<string, number>;
    heldOld.row("1950 on 2042", tuningWord(F_IF_MHz!, F_UB_MHz!, "EN 50494"), old.expected.T as number, 0);
    // By hand: (1102 + 1210)/4 − 350 and (1580 + 1420)/4 − 350.
    heldOld.row("1102 on 1210", tuningWord(1102, 1210, "EN 50494"), 228, 0);
    heldOld.row("1580 on 1420", tuningWord(1580, 1420, "EN 50494"), 400, 0);
  });

  const late = publishedCheck("en50607-T");
  const heldLate = heldTo({ what: "TUNINGWORD", source: late.source, basis: basisOf(late), unit: "steps" });
  test("EN 50607, with and without the band's frequency", () => {
    const { F_IF_MHz } = late.inputs as Record<string, number>;
    heldLate.row("1580", tuningWord(F_IF_MHz!, undefined, "EN 50607"), late.expected.T as number, 0);
    heldLate.row("1580 on 1210", tuningWord(F_IF_MHz!, 1210, "EN 50607"), late.expected.T as number, 0);
  });
});

describe("tuning words", () => {
  test("tune back to within half a step", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 950, max: 2147 }),
        fc.integer({ min: 950, max: 2150 }),
        (wanted, band) => {
          const steps = tuningWord(wanted, band, "EN 50494") as number;
          expect(Math.abs(4 * (steps + 350) - band - wanted)).toBeLessThanOrEqual(2);
          expect((tuningWord(wanted, band, "EN 50607") as number) + 100).toBe(wanted);
        },
      ),
      { numRuns: tries(100, 1000) },
    );
  });

  test("boundary: what the bits can't hold is refused", () => {
    // By hand: 11 bits end at 2047, so 2147 MHz is the last; T of EN 50494 is 0 at a sum of 1400 MHz.
    expect(tuningWord(2147, undefined, "EN 50607")).toBe(2047);
    expect(tuningWord(2148, undefined, "EN 50607")).toMatchObject({
      message:
        "The tuning word would be 2048, and EN 50607 has 11 bits for it: 0 to 2047. Check the frequencies, in MHz, and the standard.",
    });
    expect(tuningWord(450, 950, "EN 50494")).toBe(0);
    expect(tuningWord(440, 950, "EN 50494")).toMatchObject({ message: expect.stringContaining("10 bits") });
  });

  test("EN 50494 needs the frequency of the user band", () => {
    expect(tuningWord(1580, undefined, "EN 50494")).toMatchObject({
      message: expect.stringMatching(/^band_frequency is missing/),
    });
  });
});
