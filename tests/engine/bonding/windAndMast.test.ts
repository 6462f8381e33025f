import fc from "fast-check";
import { isFault } from "../../../src/engine/faults";
import { mastStress } from "../../../src/engine/bonding/mastStress";
import { windLoad } from "../../../src/engine/bonding/windLoad";
import { heldTo } from "../../support/heldTo";
import { basisOf, publishedCheck } from "../../support/published";
import { tries } from "../../support/tries";

const MM3_PER_IN3 = 25.4 ** 3;

const stress = (...args: Parameters<typeof mastStress>): number => {
  const found = mastStress(...args);
  if (isFault(found)) throw new Error(found.message);
  return found;
};

describe("wind on a dish against a published example", () => {
  const check = publishedCheck("dish-force");
  const held = heldTo({ what: "WINDLOAD", source: check.source, basis: basisOf(check), unit: "N" });
  const moment = heldTo({ what: "WINDLOAD × arm", source: check.source, basis: basisOf(check), unit: "N·m" });
  const { D_m, V_m_s, rho, Cd } = check.inputs as Record<string, number>;
  test("1.2 m in 42 m/s", () => {
    const force = windLoad(V_m_s!, D_m!, Cd, rho);
    held.row("force", force, check.expected.F_N as number, check.tolerance.F_N!);
    moment.row("moment at 3 m", force * 3, check.expected.M_Nm_at_3m as number, check.tolerance.M_Nm_at_3m!);
  });
});

describe("mast against the handbook's section modulus", () => {
  const check = publishedCheck("pipe-2in-sch40");
  const held = heldTo({ what: "MASTSTRESS", source: check.source, basis: basisOf(check), unit: "in³" });
  const { OD_mm, t_mm } = check.inputs as Record<string, number>;
  test("2 in schedule 40", () => {
    // 1 N on 1 m is 1000 N·mm, so Z = 1000/σ in mm³.
    const section = 1000 / stress(1, 1, OD_mm!, t_mm!) / MM3_PER_IN3;
    held.row("Z", section, check.expected.Z_in3 as number, check.tolerance.Z_in3!);
  });
});

describe("mast by hand", () => {
  const held = heldTo({
    what: "MASTSTRESS",
    source: "σ = M/Z worked by hand",
    basis: "derivation",
    unit: "MPa",
  });
  test("tubes and a solid bar", () => {
    // Z = π(50⁴ − 40⁴)/(32·50) = π·3690000/1600 = 7245.3 mm³; 100 N·m on it is 13.802 MPa.
    held.row("50 × 5", stress(100, 1, 50, 5), 13.802, 0.001);
    // 1 5/8 in tube of 16 gauge (41.275 × 1.65 mm), t/D = 0.04: Z = π/4·D²·t·(1 − 3·0.04 + 4·0.04²) = 1957 mm³;
    // 855 N·m on it is 437 MPa, beyond the yield of mild steel.
    held.row("41.275 × 1.65", stress(855, 1, 41.275, 1.65), 437, 0.5);
    // A solid bar: Z = π·D³/32 = 785.4 mm³ for 20 mm; 10 N on 2 m is 25.465 MPa.
    held.row("solid 20", stress(10, 2, 20, 10), 25.465, 0.001);
  });
});

describe("how they scale", () => {
  const positive = (max: number) => fc.double({ min: 0.1, max, noNaN: true });

  test("force with the square of speed and of diameter", () => {
    fc.assert(
      fc.property(positive(50), positive(3), (speed, diameter) => {
        expect(windLoad(2 * speed, diameter) / windLoad(speed, diameter)).toBeCloseTo(4, 9);
        expect(windLoad(speed, 2 * diameter) / windLoad(speed, diameter)).toBeCloseTo(4, 9);
      }),
      { numRuns: tries(100, 1000) },
    );
  });

  test("a thicker wall never bends more, and two sizes scale with the cube", () => {
    fc.assert(
      fc.property(
        positive(1000),
        positive(5),
        fc.double({ min: 10, max: 100, noNaN: true }),
        (force, arm, outside) => {
          expect(stress(force, arm, outside, outside / 8)).toBeLessThan(
            stress(force, arm, outside, outside / 16),
          );
          expect(stress(force, arm, outside, 1) / stress(force, arm, 2 * outside, 2)).toBeCloseTo(8, 9);
        },
      ),
      { numRuns: tries(100, 1000) },
    );
  });
});

describe("boundary", () => {
  test("no wind, no force; no force, no stress", () => {
    expect(windLoad(0, 1.2)).toBe(0);
    expect(stress(0, 1.2, 60, 4)).toBe(0);
  });

  test("a wall beyond half the diameter is refused", () => {
    expect(mastStress(100, 1, 50, 25.1)).toMatchObject({
      message:
        "wall_mm is 25.1 mm; it must be more than 0 and at most 25 mm. A wall is at most half the outside diameter.",
    });
  });
});
