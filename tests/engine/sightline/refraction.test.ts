import fc from "fast-check";
import { refraction } from "../../../src/engine/sightline/refraction";
import { heldTo } from "../../support/heldTo";
import { publishedChecks } from "../../support/published";
import { tries } from "../../support/tries";

describe("refraction", () => {
  const exact = heldTo({
    what: "REFRACTION",
    source: "ITU-R P.834 as implemented in a public flight-dynamics library",
    basis: "published",
    unit: "deg",
  });
  const optical = heldTo({
    what: "REFRACTION",
    source: "Thomas and Joseph, APL Technical Digest 17(3) 1996, optical table",
    basis: "published",
    unit: "arcmin",
  });

  test.each(publishedChecks("1b-refraction").map((row) => [row.id, row] as const))(
    "%s",
    (id, { inputs, expected, tolerance }) => {
      const height = (inputs.height_km as number) * 1000;
      if (expected.refraction_deg !== undefined) {
        const ours = refraction(inputs.true_elevation_deg as number, height);
        exact.row(id, ours, expected.refraction_deg as number, tolerance.refraction_deg!);
      } else {
        const ours = refraction(inputs.elevation_deg as number, height) * 60;
        optical.row(id, ours, expected.refraction_arcmin as number, tolerance.refraction_arcmin!);
      }
    },
  );

  test("below 0.1 deg from 10 deg of elevation upwards, at any height", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 90, noNaN: true }),
        fc.double({ min: 0, max: 9000, noNaN: true }),
        (elevation, height) => {
          const lift = refraction(elevation, height);
          return lift > 0 && lift < 0.1;
        },
      ),
      { numRuns: tries(100, 1000) },
    );
  });

  test("falls with elevation and with height", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 89, noNaN: true }),
        fc.double({ min: 0, max: 8000, noNaN: true }),
        (elevation, height) =>
          refraction(elevation + 1, height) < refraction(elevation, height) &&
          refraction(elevation, height + 500) < refraction(elevation, height),
      ),
      { numRuns: tries(100, 1000) },
    );
  });
});
