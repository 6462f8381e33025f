/** Aim, tilt and separation of two slots. */
import fc from "fast-check";
import { isFault } from "../../../src/engine/faults";
import { acosDeg, cosDeg, sinDeg, wrap180, wrap360 } from "../../../src/engine/sightline/angles";
import { elevation } from "../../../src/engine/sightline/elevation";
import { lookAngles } from "../../../src/engine/sightline/lookAngles";
import { pairAim, type Aim } from "../../../src/engine/sightline/pairAim";
import { pairTilt } from "../../../src/engine/sightline/pairTilt";
import { polarisationSkew } from "../../../src/engine/sightline/polarisationSkew";
import { separation } from "../../../src/engine/sightline/separation";
import { heldTo } from "../../support/heldTo";
import { publishedChecks } from "../../support/published";
import { tries } from "../../support/tries";

type Args = Parameters<typeof pairAim>;
function sure<T>(found: T): Exclude<T, { kind: "fault" }> {
  if (isFault(found)) throw new Error(found.message);
  return found as Exclude<T, { kind: "fault" }>;
}
const aim = (...args: Args): Aim => sure(pairAim(...args));
const tilt = (...args: Args): number => sure(pairTilt(...args)) as number;
const apart = (...args: Args): number => sure(separation(...args)) as number;

/** The topic's own form: left and right by azimuth, sines of elevations, no vectors. */
function tiltBySines(latitude: number, longitude: number, a: number, b: number): number {
  const [one, two] = [a, b].map((slot) => sure(lookAngles(latitude, longitude, slot)));
  const γ = acosDeg(
    sinDeg(one!.elevation) * sinDeg(two!.elevation) +
      cosDeg(one!.elevation) * cosDeg(two!.elevation) * cosDeg(one!.azimuth - two!.azimuth),
  );
  const [left, right] = wrap180(one!.azimuth - two!.azimuth) < 0 ? [one!, two!] : [two!, one!];
  const sinAim = (sinDeg(one!.elevation) + sinDeg(two!.elevation)) / (2 * cosDeg(γ / 2));
  const sine =
    (sinDeg(left.elevation) - sinDeg(right.elevation)) / (2 * sinDeg(γ / 2) * Math.sqrt(1 - sinAim ** 2));
  return 90 - acosDeg(sine);
}

describe("against the derivation worked apart from this project", () => {
  const held = (what: string) =>
    heldTo({ what, source: "derivation on WGS84, worked apart", basis: "derivation", unit: "deg" });
  const to = {
    tilt: held("PAIRTILT"),
    azimuth: held("PAIRAIM azimuth"),
    elevation: held("PAIRAIM elevation"),
    apart: held("SEPARATION"),
  };
  test.each(publishedChecks("1d-multi-slot-tilt").map((row) => [row.id, row] as const))(
    "%s",
    (id, { inputs, expected, tolerance }) => {
      const args = ["lat_deg", "lon_deg", "sat_lon1_deg", "sat_lon2_deg"].map(
        (key) => inputs[key] as number,
      ) as unknown as [number, number, number, number];
      const ours = aim(...args);
      const limit = (key: string) => [expected[key] as number, tolerance[key]!] as const;
      to.tilt.row(id, tilt(...args), ...limit("tilt_deg"));
      to.azimuth.row(id, ours.azimuth, ...limit("bisector_azimuth_deg"));
      to.elevation.row(id, ours.elevation, ...limit("bisector_elevation_deg"));
      to.apart.row(id, apart(...args), ...limit("topocentric_separation_deg"));
    },
  );
});

describe("18 deg of orbit as seen from three places", () => {
  const to = heldTo({
    what: "SEPARATION",
    source: "three-sides form, rounded figures",
    basis: "derivation",
    unit: "deg",
  });
  test.each([
    ["on the equator, in the middle", 0, 0, 21.19, 0.01],
    ["40 N, in the middle", 40, 0, 20.2, 0.06],
  ])("%s", (label, latitude, longitude, expected, limit) => {
    to.row(label, apart(latitude, longitude, -9, 9), expected, limit);
  });
});

describe("hard cases", () => {
  test("the middle straight overhead has no azimuth and no tilt, but a separation", () => {
    for (const found of [pairAim(0, 0, -9, 9), pairTilt(0, 0, -9, 9)]) {
      expect(found).toMatchObject({ code: "#VALUE!", message: expect.stringMatching(/straight overhead/) });
    }
    expect(apart(0, 0, -9, 9)).toBeGreaterThan(18);
  });

  test("one slot overhead is no obstacle to the pair", () => {
    expect(aim(0, 0, 0, 20).azimuth).toBeCloseTo(90, 9);
    expect(tilt(0, 0, 0, 20)).toBe(-90);
  });

  test("one slot twice: an aim, no separation, and no tilt", () => {
    const one = sure(lookAngles(40, 0, 10));
    expect(aim(40, 0, 10, 10).azimuth).toBeCloseTo(one.azimuth, 9);
    expect(apart(40, 0, 10, 10)).toBe(0);
    expect(pairTilt(40, 0, 10, 10)).toMatchObject({
      message: expect.stringMatching(/^Both slots stand at 10/),
    });
    expect(pairTilt(40, 170, 180, -180)).toMatchObject({ message: expect.stringMatching(/^Both slots/) });
  });

  test("a slot below the horizon is named", () => {
    for (const found of [pairAim(50, 0, 10, 120), pairTilt(50, 0, 120, 10), separation(50, 0, 10, 120)]) {
      expect(found).toMatchObject({ code: "#N/A", message: expect.stringMatching(/^The slot at 120 deg/) });
    }
  });

  test("on the equator the line stands upright, with the sign of a site just north", () => {
    expect(tilt(0, 50, 10, 30)).toBe(90);
    expect(tilt(0, -50, -10, -30)).toBe(-90);
    // Across the date line: both slots to the east of the site, then both to the west.
    expect(tilt(0, 150, 170, -175)).toBe(-90);
    expect(tilt(0, -155, 170, -175)).toBe(90);
    expect(tilt(1e-4, 50, 10, 30)).toBeGreaterThan(89.9);
    expect(tilt(1e-4, -50, -10, -30)).toBeLessThan(-89.9);
  });

  test("quadrants: a pair to the west of a northern site leans clockwise", () => {
    expect(tilt(40, 0, -20, -40)).toBeGreaterThan(0);
    expect(tilt(40, 0, 20, 40)).toBeLessThan(0);
    expect(tilt(-40, 0, -20, -40)).toBeLessThan(0);
    expect(tilt(-40, 0, 20, 40)).toBeGreaterThan(0);
    expect(tilt(40, 0, -10, 10)).toBeCloseTo(0, 9);
  });

  test("the aim is neither the look angle to the middle longitude nor the mean of the azimuths", () => {
    const { azimuth } = aim(26, -80, -97, -113);
    const [one, middle, two] = [-97, -105, -113].map((slot) => sure(lookAngles(26, -80, slot)));
    expect(Math.abs(azimuth - middle!.azimuth)).toBeGreaterThan(0.1);
    expect(Math.abs(azimuth - (one!.azimuth + two!.azimuth) / 2)).toBeGreaterThan(1);
  });
});

describe("properties over visible pairs, 1,000 runs each", () => {
  const latitude = fc.double({ min: 1, max: 70, noNaN: true });
  const longitude = fc.double({ min: -180, max: 180, noNaN: true });
  const off = fc.double({ min: -60, max: 60, noNaN: true });
  const gap = fc.double({ min: 0.5, max: 40, noNaN: true });
  const often = { numRuns: tries(100, 1000) };
  const visible = (φ: number, d: number): boolean => elevation(φ, 0, d) > 0.1;
  const pair = (φ: number, d: number, g: number): void => fc.pre(visible(φ, d) && visible(φ, d + g));

  test("the order of the slots does not matter", () => {
    fc.assert(
      fc.property(latitude, longitude, off, gap, (φ, λ, d, g) => {
        pair(φ, d, g);
        expect(tilt(φ, λ, λ + d + g, λ + d)).toBeCloseTo(tilt(φ, λ, λ + d, λ + d + g), 9);
        expect(apart(φ, λ, λ + d + g, λ + d)).toBeCloseTo(apart(φ, λ, λ + d, λ + d + g), 9);
      }),
      often,
    );
  });

  test("mirrored east to west, and north to south, the tilt turns over", () => {
    fc.assert(
      fc.property(latitude, longitude, off, gap, (φ, λ, d, g) => {
        pair(φ, d, g);
        const here = tilt(φ, λ, λ + d, λ + d + g);
        const there = aim(φ, λ, λ + d, λ + d + g);
        expect(tilt(φ, λ, λ - d, λ - d - g)).toBeCloseTo(-here, 7);
        expect(tilt(-φ, λ, λ + d, λ + d + g)).toBeCloseTo(-here, 7);
        const mirrored = aim(φ, λ, λ - d, λ - d - g);
        expect(wrap180(mirrored.azimuth + there.azimuth)).toBeCloseTo(0, 7);
        expect(mirrored.elevation).toBeCloseTo(there.elevation, 8);
      }),
      often,
    );
  });

  test("turned round the Earth, across the date line, nothing changes", () => {
    fc.assert(
      fc.property(latitude, longitude, off, gap, longitude, (φ, λ, d, g, turn) => {
        pair(φ, d, g);
        const moved = [φ, wrap180(λ + turn), wrap180(λ + d + turn), wrap180(λ + d + g + turn)] as const;
        expect(tilt(...moved)).toBeCloseTo(tilt(φ, λ, λ + d, λ + d + g), 7);
        expect(apart(...moved)).toBeCloseTo(apart(φ, λ, λ + d, λ + d + g), 8);
      }),
      often,
    );
  });

  test("the tilt is that of the sines of the elevations", () => {
    fc.assert(
      fc.property(latitude, off, gap, (φ, d, g) => {
        pair(φ, d, g);
        // Its asin loses digits near a quarter turn.
        expect(tilt(φ, 0, d, d + g)).toBeCloseTo(tiltBySines(φ, 0, d, d + g), 3);
      }),
      often,
    );
  });

  test("the aim is equally far from both slots, and both make up the separation", () => {
    fc.assert(
      fc.property(latitude, off, gap, (φ, d, g) => {
        pair(φ, d, g);
        const middle = aim(φ, 0, d, d + g);
        const [one, two] = [d, d + g].map((slot) => {
          const { azimuth, elevation: up } = sure(lookAngles(φ, 0, slot));
          return acosDeg(
            sinDeg(up) * sinDeg(middle.elevation) +
              cosDeg(up) * cosDeg(middle.elevation) * cosDeg(wrap360(azimuth - middle.azimuth)),
          );
        });
        expect(one).toBeCloseTo(two!, 5);
        expect(one! + two!).toBeCloseTo(apart(φ, 0, d, d + g), 5);
      }),
      often,
    );
  });

  test("the separation exceeds the difference of the slots", () => {
    fc.assert(
      fc.property(latitude, off, gap, (φ, d, g) => {
        pair(φ, d, g);
        // From a visible site the arc looks 1.0 to 1.18 times as wide.
        expect(apart(φ, 0, d, d + g) / g).toBeGreaterThan(0.98);
        expect(apart(φ, 0, d, d + g) / g).toBeLessThan(1.19);
      }),
      often,
    );
  });

  test("for a narrow pair the tilt is the H skew of the middle slot", () => {
    fc.assert(
      fc.property(latitude, off, (φ, d) => {
        pair(φ, d, 0.01);
        fc.pre(φ > 5 || Math.abs(d) > 5);
        expect(tilt(φ, 0, d, d + 0.01)).toBeCloseTo(sure(polarisationSkew(φ, 0, d + 0.005, "H")), 3);
      }),
      often,
    );
  });
});
