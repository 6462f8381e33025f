import fc from "fast-check";
import { isFault } from "../../../src/engine/faults";
import { cascadeLoss } from "../../../src/engine/signal/cascadeLoss";
import { splitterLoss } from "../../../src/engine/signal/splitterLoss";
import { tapThroughLoss } from "../../../src/engine/signal/tapThroughLoss";
import { heldTo } from "../../support/heldTo";
import { basisOf, publishedCheck, publishedChecks } from "../../support/published";
import { tries } from "../../support/tries";

describe("ideal splitters and taps", () => {
  const held = heldTo({ what: "SPLITLOSS", source: "10·log10(N)", basis: "derivation", unit: "dB" });
  test.each(publishedChecks("7-passives").filter(({ id }) => id.startsWith("ideal")))("$id", (check) => {
    held.row(check.id, splitterLoss(check.inputs.N as number, 0), check.expected.dB as number, 1e-4);
  });

  const taps = heldTo({
    what: "TAPTHROUGH",
    source: "what the branch takes is missing",
    basis: "derivation",
    unit: "dB",
  });
  test.each(publishedChecks("7-passives").filter(({ id }) => id.startsWith("tap")))("$id", (check) => {
    const { tap_dB } = check.inputs as { tap_dB: number };
    taps.row(check.id, tapThroughLoss(tap_dB, 0), check.expected.through_dB_ideal as number, 1e-4);
  });
});

describe("practical splitters below 1 GHz", () => {
  for (const [id, excess] of [
    ["practical-split-4", 1],
    ["practical-split-8", 1.5],
  ] as const) {
    const check = publishedCheck(id);
    const held = heldTo({ what: "SPLITLOSS", source: check.source, basis: basisOf(check), unit: "dB" });
    test(id, () => {
      for (const leg of check.expected.dB as number[]) {
        held.row(id, splitterLoss(check.inputs.N as number, excess), leg, check.tolerance.dB!);
      }
    });
  }

  const check = publishedCheck("practical-split-3");
  const held = heldTo({ what: "CASCADELOSS", source: check.source, basis: basisOf(check), unit: "dB" });
  test("an unequal 3-way is a 2-way whose one leg is split again", () => {
    const [near, far] = check.expected.dB as number[];
    held.row("near leg", cascadeLoss([2], [0.5]), near!, check.tolerance.dB!);
    held.row("far legs", cascadeLoss([2, 2], [0.5, 0.5]), far!, check.tolerance.dB!);
  });
});

describe("boundaries", () => {
  test("excess comes on top", () => {
    expect(tapThroughLoss(6, 1)).toBeCloseTo(2.2563, 4);
    expect(splitterLoss(4, 1)).toBeCloseTo(7.0206, 4);
  });
  test("one way is a wire", () => expect(splitterLoss(1, 0)).toBe(0));
  test("a tap of 60 dB takes a millionth: 10/ln 10·1e-6 dB", () =>
    expect(tapThroughLoss(60, 0)).toBeCloseTo(10e-6 / Math.LN10, 11));
  test("half to each side: a tap of 10·log10(2) dB is a 2-way splitter", () =>
    expect(tapThroughLoss(10 * Math.log10(2), 0)).toBeCloseTo(splitterLoss(2, 0), 12));
});

describe("properties", () => {
  const part = fc.tuple(fc.integer({ min: 1, max: 256 }), fc.double({ min: 0, max: 30, noNaN: true }));
  test("the order of a cascade does not matter", () => {
    const shuffled = fc
      .array(part, { minLength: 1, maxLength: 30 })
      .chain((parts) =>
        fc.tuple(
          fc.constant(parts),
          fc.shuffledSubarray(parts, { minLength: parts.length, maxLength: parts.length }),
        ),
      );
    fc.assert(
      fc.property(shuffled, ([parts, other]) => {
        const [a, b] = [parts, other].map((list) => {
          const sum = cascadeLoss(
            list.map(([n]) => n),
            list.map(([, e]) => e),
          );
          if (isFault(sum)) throw new Error(sum.message);
          return sum;
        });
        expect(Math.abs(a! - b!)).toBeLessThanOrEqual(1e-11 * Math.max(1, a!));
      }),
      { numRuns: tries(100, 1000) },
    );
  });

  test("a tap divides the power: branch and way through add to the input", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 60, noNaN: true }), (tap) => {
        expect(10 ** (-tap / 10) + 10 ** (-tapThroughLoss(tap, 0) / 10)).toBeCloseTo(1, 12);
      }),
      { numRuns: tries(100, 1000) },
    );
  });
});
