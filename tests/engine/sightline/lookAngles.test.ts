import fc from "fast-check";
import { isFault } from "../../../src/engine/faults";
import { wrap180 } from "../../../src/engine/sightline/angles";
import { GSO_RADIUS_KM } from "../../../src/engine/sightline/constants";
import { elevation } from "../../../src/engine/sightline/elevation";
import { lookAngles, type LookAngles } from "../../../src/engine/sightline/lookAngles";
import { slantRange } from "../../../src/engine/sightline/slantRange";
import library from "../../fixtures/published/look-angles-satellitejs.json";
import { heldTo } from "../../support/heldTo";
import { publishedCheck, publishedChecks } from "../../support/published";
import { bySatelliteLibrary, type Sight } from "./satelliteLibrary";
import { tries } from "../../support/tries";

const angles = (...args: Parameters<typeof lookAngles>): LookAngles => {
  const found = lookAngles(...args);
  if (isFault(found)) throw new Error(found.message);
  return found;
};

/** Azimuths near north may straddle 360; compare them on the circle. */
const nearest = (azimuth: number, expected: number): number => expected + wrap180(azimuth - expected);

const held = (source: string, basis: Parameters<typeof heldTo>[0]["basis"]) => ({
  azimuth: heldTo({ what: "AZIMUTH", source, basis, unit: "deg" }),
  elevation: heldTo({ what: "ELEVATION", source, basis, unit: "deg" }),
  range: heldTo({ what: "SLANTRANGE", source, basis, unit: "km" }),
});

describe("against satellite.js 7.1.0 on WGS84, stored rows", () => {
  const to = held("satellite.js 7.1.0, stored rows", "reference library");
  test.each(library.cases.map((row) => [`${row.site} to ${row.sat_lon_deg}`, row] as const))(
    "%s",
    (label, row) => {
      const { azimuth_deg, elevation_deg, range_km } = row.wgs84;
      const sight = [row.lat_deg, row.lon_deg, row.sat_lon_deg, row.h_km * 1000] as const;
      if (row.azimuth_meaningful) {
        to.azimuth.row(label, nearest(angles(...sight).azimuth, azimuth_deg), azimuth_deg, 1e-5);
      } else {
        expect(isFault(lookAngles(...sight))).toBe(true);
      }
      to.elevation.row(label, elevation(...sight), elevation_deg, 1e-5);
      to.range.row(label, slantRange(...sight), range_km, 1e-3);
    },
  );
});

describe("against satellite.js 7.1.0 on WGS84, run beside ours", () => {
  const to = held("satellite.js 7.1.0, run live", "reference library");
  const sights: Sight[] = [];
  for (const latitude of [-89, -61.3, -34, -7, -0.2, 0.2, 18.5, 40, 50, 68, 81]) {
    for (const longitude of [-179.9, -105, -0.2, 13.5, 151, 180]) {
      for (const slot of [-180, -97, -15, 0, 13, 165]) {
        for (const height of [-400, 0, 4300]) sights.push({ latitude, longitude, slot, height });
      }
    }
  }
  test(`${sights.length} sights, the hidden ones too`, () => {
    const theirs = bySatelliteLibrary(sights, GSO_RADIUS_KM);
    expect(theirs).toHaveLength(sights.length);
    sights.forEach(({ latitude, longitude, slot, height }, index) => {
      const [azimuth, theirElevation, range] = theirs[index]!;
      const label = `${latitude},${longitude},${slot},${height}`;
      const ours = angles(latitude, longitude, slot, height);
      to.azimuth.row(label, nearest(ours.azimuth, azimuth), azimuth, 1e-6);
      to.elevation.row(label, ours.elevation, theirElevation, 1e-6);
      to.range.row(label, ours.range, range, 1e-4);
    });
  });
});

describe("single checks of topic 1", () => {
  // Over the sites of the stored rows the sphere lies within 0.03 deg and 15 km of the ellipsoid.
  const SPHERE_DEG = 0.03;
  const SPHERE_KM = 15;
  const to = held("printed examples on a sphere", "published");
  const toLibrary = held("satellite.js 7.1.0, single checks", "reference library");
  const rows = publishedChecks("1-look-angles").filter(({ inputs }) => inputs.lon_deg !== undefined);

  test.each(rows.map((row) => [row.id, row] as const))("%s", (id, { inputs, expected, tolerance }) => {
    const onSphere = String(inputs.earth).startsWith("sphere");
    const ours = angles(
      inputs.lat_deg as number,
      inputs.lon_deg as number,
      inputs.sat_lon_deg as number,
      ((inputs.h_km as number | undefined) ?? 0) * 1000,
    );
    const by = onSphere ? to : toLibrary;
    const more = { deg: onSphere ? SPHERE_DEG : 0, km: onSphere ? SPHERE_KM : 0 };
    let held = 0;
    const hold = (key: string, row: (typeof to)["azimuth"], value: number, extra: number): void => {
      if (expected[key] === undefined) return;
      row.row(id, value, expected[key] as number, tolerance[key]! + extra);
      held += 1;
    };
    hold("azimuth_deg", by.azimuth, ours.azimuth, more.deg);
    hold("elevation_deg", by.elevation, ours.elevation, more.deg);
    hold("range_km", by.range, ours.range, more.km);
    expect(held).toBeGreaterThanOrEqual(2);
  });

  test("Roddy 3.1 and 3.2: 35 N, 100 W to 90 W", () => {
    const ours = angles(35, -100, -90);
    to.azimuth.row("Roddy 3.1", ours.azimuth, 162.9, 0.05 + SPHERE_DEG);
    to.elevation.row("Roddy 3.2", ours.elevation, 48, 0.5);
    to.range.row("Roddy 3.2", ours.range, 37_215, 1 + SPHERE_KM);
  });

  test("Roddy 3.3: the arc's declination at the meridian of 49 N is printed as 7 deg", () => {
    const row = publishedCheck("roddy-3.3-polar-mount-declination-tilt");
    // At the meridian the arc stands this far below the celestial equator, which stands at 90 - latitude.
    const latitude = row.inputs.lat_deg as number;
    to.elevation.row(
      "Roddy 3.3",
      90 - latitude - angles(latitude, 0, 0).elevation,
      row.expected.tilt_deg as number,
      row.tolerance.tilt_deg!,
    );
  });

  test("the companion code's 164.55 for Roddy 3.1 is wrong: degrees used as radians", () => {
    expect(Math.abs(angles(35, -100, -90).azimuth - 164.55)).toBeGreaterThan(1.5);
  });

  test("the elevation 18.86 printed for 20 S, 30 W to 30 E is wrong; its own numbers give 19.84", () => {
    const ours = angles(-20, -30, 30).elevation;
    expect(Math.abs(ours - 18.86)).toBeGreaterThan(0.9);
    to.elevation.row("corrected southern example", ours, 19.84, 0.01 + SPHERE_DEG);
  });
});

describe("hard cases", () => {
  test("straight under the slot: no azimuth, and a sentence that says so", () => {
    expect(lookAngles(0, -97, -97, 2800)).toMatchObject({
      code: "#VALUE!",
      message: expect.stringMatching(/straight under the slot.*zenith/),
    });
    expect(elevation(0, -97, -97)).toBeCloseTo(90, 9);
    expect(slantRange(0, -97, -97)).toBeCloseTo(GSO_RADIUS_KM - 6378.137, 6);
  });

  test("a step away from it there is one", () => {
    expect(angles(1e-6, 0, 0).azimuth).toBeCloseTo(180, 6);
    expect(angles(0, -1e-6, 0).azimuth).toBeCloseTo(90, 6);
  });

  test("date line: 180 and -180 are one meridian, of the site and of the slot", () => {
    expect(angles(20, 180, -170).azimuth).toBeCloseTo(angles(20, -180, -170).azimuth, 9);
    expect(angles(20, 170, 180).azimuth).toBeCloseTo(angles(20, 170, -180).azimuth, 9);
    // The slot lies east of the site, though its number is smaller.
    expect(angles(-18, 178, -175).azimuth).toBeLessThan(90);
  });

  test.each([
    ["north, slot to the east", 40, 10, 90, 180],
    ["north, slot to the west", 40, -10, 180, 270],
    ["south, slot to the east", -40, 10, 0, 90],
    ["south, slot to the west", -40, -10, 270, 360],
  ])("quadrants: %s", (_label, latitude, slot, from, to) => {
    const { azimuth } = angles(latitude, 0, slot);
    expect(azimuth).toBeGreaterThan(from);
    expect(azimuth).toBeLessThan(to);
  });

  test("visibility ends at a central angle of 81.3 deg (Roddy, ch. 3)", () => {
    expect(elevation(0, 0, 81.2)).toBeGreaterThan(0);
    expect(elevation(0, 0, 81.4)).toBeLessThan(0);
    expect(elevation(81.2, 0, 0)).toBeGreaterThan(-0.2);
    expect(elevation(0, 0, (Math.acos(6378.137 / GSO_RADIUS_KM) * 180) / Math.PI)).toBeCloseTo(0, 9);
  });

  test("at the poles no slot is seen, and there is a figure nevertheless", () => {
    expect(elevation(90, 0, 0)).toBeLessThan(-8);
    expect(elevation(-90, 77, 0)).toBeLessThan(-8);
  });
});

describe("properties, 1,000 runs each", () => {
  const latitude = fc.double({ min: -89, max: 89, noNaN: true });
  const longitude = fc.double({ min: -180, max: 180, noNaN: true });
  const gap = fc.double({ min: 0.01, max: 179, noNaN: true });
  const height = fc.double({ min: -500, max: 9000, noNaN: true });
  const often = { numRuns: tries(100, 1000) };
  const same = (a: number, b: number): boolean => Math.abs(wrap180(a - b)) < 1e-8;

  test("a slot as far to the west mirrors the azimuth and keeps elevation and range", () => {
    fc.assert(
      fc.property(latitude, longitude, gap, height, (φ, λ, d, h) => {
        const east = angles(φ, λ, λ + d, h);
        const west = angles(φ, λ, λ - d, h);
        expect(same(east.azimuth, 360 - west.azimuth)).toBe(true);
        expect(east.elevation).toBeCloseTo(west.elevation, 8);
        expect(east.range).toBeCloseTo(west.range, 5);
      }),
      often,
    );
  });

  test("a site as far to the south turns the azimuth over and keeps the rest", () => {
    fc.assert(
      fc.property(latitude, longitude, gap, height, (φ, λ, d, h) => {
        const north = angles(φ, λ, λ + d, h);
        const south = angles(-φ, λ, λ + d, h);
        expect(same(south.azimuth, 180 - north.azimuth)).toBe(true);
        expect(south.elevation).toBeCloseTo(north.elevation, 8);
        expect(south.range).toBeCloseTo(north.range, 5);
      }),
      often,
    );
  });

  test("only the difference of the longitudes counts, across the date line too", () => {
    fc.assert(
      fc.property(latitude, longitude, gap, longitude, (φ, λ, d, turn) => {
        const here = angles(φ, λ, λ + d);
        const there = angles(φ, wrap180(λ + turn), wrap180(λ + d + turn));
        expect(same(here.azimuth, there.azimuth)).toBe(true);
        expect(here.elevation).toBeCloseTo(there.elevation, 8);
      }),
      often,
    );
  });

  test("elevation and range alone are those of the look angles, and nothing throws", () => {
    fc.assert(
      fc.property(latitude, longitude, longitude, height, (φ, λ, slot, h) => {
        const all = lookAngles(φ, λ, slot, h);
        if (isFault(all)) return;
        expect(elevation(φ, λ, slot, h)).toBeCloseTo(all.elevation, 10);
        expect(slantRange(φ, λ, slot, h)).toBeCloseTo(all.range, 8);
        expect(all.azimuth).toBeGreaterThanOrEqual(0);
        expect(all.azimuth).toBeLessThan(360);
      }),
      often,
    );
  });
});
