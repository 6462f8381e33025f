import fc from "fast-check";
import { isFault } from "../../../src/engine/faults";
import { wrap180 } from "../../../src/engine/sightline/angles";
import { elevation } from "../../../src/engine/sightline/elevation";
import { polarisationSkew } from "../../../src/engine/sightline/polarisationSkew";
import { heldTo } from "../../support/heldTo";
import { publishedChecks } from "../../support/published";
import { tries } from "../../support/tries";

const often = { numRuns: tries(100, 1000) };
const skew = (...args: Parameters<typeof polarisationSkew>): number => {
  const found = polarisationSkew(...args);
  if (isFault(found)) throw new Error(found.message);
  return found;
};

describe("against figures from outside", () => {
  const roddy = heldTo({
    what: "POLSKEW",
    source: "Roddy 4th ed., example 5.1 (sphere)",
    basis: "published",
    unit: "deg",
  });
  const simple = heldTo({
    what: "POLSKEW simple",
    source: "Kurek 1991 handbook formula",
    basis: "published",
    unit: "deg",
  });
  const vector = heldTo({
    what: "POLSKEW V and H",
    source: "vector method of Roddy ch. 5 on WGS84",
    basis: "derivation",
    unit: "deg",
  });

  test.each(publishedChecks("1c-polarisation-skew").map((row) => [row.id, row] as const))(
    "%s",
    (id, { inputs, expected, tolerance }) => {
      const site = [
        inputs.lat_deg as number,
        inputs.lon_deg as number,
        inputs.sat_lon_deg as number,
      ] as const;
      if (expected.abs_angle_deg !== undefined) {
        roddy.row(
          id,
          Math.abs(skew(...site, "V")),
          expected.abs_angle_deg as number,
          tolerance.abs_angle_deg!,
        );
        return;
      }
      simple.row(id, skew(...site, "simple"), expected.simple_formula_deg as number, tolerance.each!);
      vector.row(`${id} V`, skew(...site, "V"), expected.exact_V_deg as number, tolerance.each!);
      vector.row(`${id} H`, skew(...site, "H"), expected.exact_H_deg as number, tolerance.each!);
    },
  );
});

describe("hard cases", () => {
  test("quadrants: + for a site east of the slot in the north, reversed in the south", () => {
    for (const plane of ["V", "H", "simple"] as const) {
      expect(skew(40, 10, 0, plane)).toBeGreaterThan(0);
      expect(skew(40, -10, 0, plane)).toBeLessThan(0);
      expect(skew(-40, 10, 0, plane)).toBeLessThan(0);
      expect(skew(-40, -10, 0, plane)).toBeGreaterThan(0);
    }
  });

  test("on the meridian of the slot there is none", () => {
    for (const plane of ["V", "H", "simple"] as const) expect(skew(40, 10, 10, plane)).toBeCloseTo(0, 9);
  });

  test("on the equator a quarter turn, to the side of a site just north of it", () => {
    for (const plane of ["V", "H", "simple"] as const) {
      expect(skew(0, 10, 0, plane)).toBe(90);
      expect(skew(0, -10, 0, plane)).toBe(-90);
      expect(skew(1e-4, 10, 0, plane)).toBeGreaterThan(89.9);
      expect(skew(-1e-4, 10, 0, plane)).toBeLessThan(-89.9);
    }
  });

  test("under the slot and below the horizon: sentences", () => {
    expect(polarisationSkew(0, 10, 10)).toMatchObject({ message: expect.stringMatching(/straight under/) });
    expect(polarisationSkew(0, 10, 10, "simple")).toMatchObject({ code: "#VALUE!" });
    expect(polarisationSkew(40, 10, 150)).toMatchObject({
      code: "#N/A",
      message: expect.stringMatching(
        /150 deg east stands at an elevation of -\d+(\.\d)? deg; it must be 0 deg/,
      ),
    });
  });
});

describe("properties over visible slots, 1,000 runs each", () => {
  const latitude = fc.double({ min: 0.5, max: 70, noNaN: true });
  const longitude = fc.double({ min: -180, max: 180, noNaN: true });
  const gap = fc.double({ min: -60, max: 60, noNaN: true });
  const plane = fc.constantFrom("V", "H", "simple" as const);
  const visible = (φ: number, λ: number, d: number): boolean => elevation(φ, λ, λ + d) > 0.1;

  test("east and west mirror, north and south mirror, and the date line is no seam", () => {
    fc.assert(
      fc.property(latitude, longitude, gap, plane, longitude, (φ, λ, d, p, turn) => {
        fc.pre(visible(φ, λ, d));
        const here = skew(φ, λ, λ + d, p);
        expect(skew(φ, λ, λ - d, p)).toBeCloseTo(-here, 8);
        expect(skew(-φ, λ, λ + d, p)).toBeCloseTo(-here, 8);
        expect(skew(φ, wrap180(λ + turn), wrap180(λ + d + turn), p)).toBeCloseTo(here, 8);
      }),
      often,
    );
  });

  test("the simple formula lies between exact H and exact V at usual latitudes", () => {
    // On WGS84 the geodetic latitude moves all three a little: allow 0.1 deg.
    fc.assert(
      fc.property(
        fc.double({ min: 15, max: 60, noNaN: true }),
        fc.double({ min: -40, max: 40, noNaN: true }),
        (φ, d) => {
          fc.pre(visible(φ, 0, d));
          const [v, h, s] = (["V", "H", "simple"] as const).map((p) => skew(φ, 0, d, p));
          expect(s!).toBeGreaterThanOrEqual(Math.min(v!, h!) - 0.1);
          expect(s!).toBeLessThanOrEqual(Math.max(v!, h!) + 0.1);
        },
      ),
      often,
    );
  });
});
