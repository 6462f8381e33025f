import fc from "fast-check";
import { model } from "geomagnetism";
import { magneticField as oracle } from "magvar";
import { isFault } from "../../../src/engine/faults";
import { wrap180, wrap360 } from "../../../src/engine/sightline/angles";
import { compassBearing } from "../../../src/engine/sightline/compassBearing";
import {
  COMPASS_BLACKOUT_NT,
  COMPASS_CAUTION_NT,
  MAGNETIC_MODEL_FIRST_DAY,
  MAGNETIC_MODEL_LAST_DAY,
} from "../../../src/engine/sightline/constants";
import { lookAngles } from "../../../src/engine/sightline/lookAngles";
import { magneticField, type MagneticField } from "../../../src/engine/sightline/magneticField";
import wmm from "../../fixtures/published/wmm2025-test-values.json";
import { heldTo } from "../../support/heldTo";
import { publishedChecks } from "../../support/published";
import { tries } from "../../support/tries";

const field = (...args: Parameters<typeof magneticField>): MagneticField => {
  const found = magneticField(...args);
  if (isFault(found)) throw new Error(found.message);
  return found;
};

/** A decimal year as an instant, by the true length of its year. */
const instant = (decimalYear: number): Date => {
  const year = Math.floor(decimalYear);
  const start = Date.UTC(year, 0, 1);
  return new Date(start + (decimalYear - year) * (Date.UTC(year + 1, 0, 1) - start));
};
const day = (text: string): Date => new Date(`${text}T00:00:00Z`);

describe("against the published test values of WMM2025", () => {
  const held = (source: string, unit: string, what = "DECLINATION") =>
    heldTo({ what, source, basis: "published", unit });
  const table6 = held("WMM2025 report, table 6", "deg");
  const rows100 = held("WMM2025_TestValues.txt", "deg");
  const strength = held("WMM2025 test values", "nT", "horizontal field");
  const single = held("WMM2025 single checks", "deg");

  // Printed to 0.01 deg: half of that, and a hair for the last binary digit.
  const PRINTED_DEG = 0.005001;

  test.each(wmm.table6.map((row) => [JSON.stringify(row), row] as const))("table 6: %s", (label, row) => {
    const ours = field(row.lat_deg, row.lon_deg, instant(row.decimal_year), row.alt_km * 1000);
    table6.row(label, ours.declination, row.decl_deg, PRINTED_DEG);
    strength.row(label, ours.horizontal, Math.hypot(row.X, row.Y), 0.1);
  });

  test.each(
    wmm.rows100.map(
      (row) => [`${row.decimal_year} ${row.alt_km} km ${row.lat_deg} ${row.lon_deg}`, row] as const,
    ),
  )("100 rows: %s", (label, row) => {
    const ours = field(row.lat_deg, row.lon_deg, instant(row.decimal_year), row.alt_km * 1000);
    rows100.row(label, ours.declination, row.decl_deg, PRINTED_DEG);
    // The package counts every year as 365 days.
    strength.row(label, ours.horizontal, row.H, 0.3);
  });

  test.each(
    publishedChecks("2-magnetic-declination")
      .filter(({ expected }) => expected.declination_deg !== undefined)
      .map((row) => [row.id, row] as const),
  )("%s", (id, { inputs, expected, tolerance }) => {
    const when = inputs.date ? day(String(inputs.date)) : instant(inputs.decimal_year as number);
    const ours = field(
      inputs.lat_deg as number,
      inputs.lon_deg as number,
      when,
      (inputs.alt_km as number) * 1000,
    );
    single.row(id, ours.declination, expected.declination_deg as number, tolerance.declination_deg!);
  });
});

describe("against magvar 2.2.0, run beside ours", () => {
  const source = "magvar 2.2.0, run live";
  const basis = "reference library";
  const declination = heldTo({ what: "DECLINATION", source, basis, unit: "deg" });
  const strength = heldTo({ what: "horizontal field", source, basis, unit: "nT" });
  test("sites, dates and heights of the field work", () => {
    for (const latitude of [-60, -34, 0, 26, 40, 50, 61, 70]) {
      for (const longitude of [-180, -150, -105, -75, -0.2, 28, 151, 180]) {
        for (const date of ["2025-01-01", "2026-07-04", "2027-12-31", "2028-12-31", "2029-11-12"]) {
          for (const height of [-400, 0, 1609, 9000]) {
            const label = `${latitude},${longitude},${date},${height}`;
            const ours = field(latitude, longitude, day(date), height);
            const theirs = oracle(latitude, longitude, height / 1000, day(date));
            // Theirs is rounded to 0.01 deg and 0.1 nT.
            const error = wrap180(ours.declination - theirs.declination);
            declination.row(label, theirs.declination + error, theirs.declination, 0.006);
            strength.row(label, ours.horizontal, theirs.h, 0.3);
          }
        }
      }
    }
  });
});

describe("dates outside the model", () => {
  test.each([
    ["the day before its epoch, which the package extrapolates back to", "2024-12-31", "2024-12-31"],
    ["a date that the package answers from an older model", "2020-06-01", "2020-06-01"],
    ["long before every model", "1900-01-01", "1900-01-01"],
    ["the last day, of which the package answers three hours", "2029-11-13", "2029-11-13"],
    ["a date at which the package throws", "2029-11-14", "2029-11-14"],
    ["the model's own end", "2030-01-01", "2030-01-01"],
    ["far ahead", "9999-12-31", "9999-12-31"],
  ])("%s: %s", (_label, date, shown) => {
    expect(magneticField(40, -75, day(date))).toMatchObject({
      kind: "fault",
      code: "#N/A",
      message: `date is ${shown}; the magnetic model WMM2025 holds from 2025-01-01 to 2029-11-12. Give a date within that span, or take the declination from a current chart.`,
    });
    expect(compassBearing(40, -75, -97, day(date))).toMatchObject({ code: "#N/A" });
  });

  test("the package does throw where we say so", () => {
    expect(() => model(day("2029-11-14"))).toThrow(/only valid/);
  });

  test("first and last instant are answered, by the model named WMM-2025", () => {
    for (const when of [day(MAGNETIC_MODEL_FIRST_DAY), new Date(`${MAGNETIC_MODEL_LAST_DAY}T23:59:59Z`)]) {
      expect(isFault(magneticField(40, -75, when))).toBe(false);
      expect(model(when).name).toBe("WMM-2025");
    }
  });
});

describe("compass", () => {
  const when = day("2026-07-04");

  const to = heldTo({
    what: "COMPASS",
    source: "satellite.js 7.1.0 azimuth less the online WMM calculator's declination",
    basis: "derivation",
    unit: "deg",
  });

  test("bearing = azimuth less declination, by figures from outside of both", () => {
    to.row(
      "the calculator's place, slot at 180",
      compassBearing(-33.8688, 151.2093, 180, when, 30),
      44.626363 - 12.82083,
      0.01,
    );
  });

  test("under the slot there is no bearing", () => {
    expect(compassBearing(0, 10, 10, when)).toMatchObject({
      message: expect.stringMatching(/straight under/),
    });
  });

  test("in the blackout zone around the north magnetic pole there is a fault that says why", () => {
    const [latitude, longitude] = [85.6, 140];
    expect(oracle(latitude, longitude, 0, when).h).toBeLessThan(COMPASS_BLACKOUT_NT);
    expect(compassBearing(latitude, longitude, 140, when)).toMatchObject({
      code: "#N/A",
      message: expect.stringMatching(/^The horizontal magnetic field at this site is \d+ nT; .*2000 nT/),
    });
    expect(isFault(magneticField(latitude, longitude, when))).toBe(false);
  });

  test("in the caution zone there is still an answer", () => {
    const [latitude, longitude] = [74.7, -94.9];
    const { h } = oracle(latitude, longitude, 0, when);
    expect(h).toBeGreaterThan(COMPASS_BLACKOUT_NT);
    expect(h).toBeLessThan(COMPASS_CAUTION_NT);
    expect(typeof compassBearing(latitude, longitude, -97, when)).toBe("number");
  });

  test("bearing and declination add up to the azimuth, 1,000 runs", () => {
    const span = {
      min: day(MAGNETIC_MODEL_FIRST_DAY),
      max: day(MAGNETIC_MODEL_LAST_DAY),
      noInvalidDate: true,
    };
    fc.assert(
      fc.property(
        fc.double({ min: -60, max: 60, noNaN: true }),
        fc.double({ min: -180, max: 180, noNaN: true }),
        fc.double({ min: -180, max: 180, noNaN: true }),
        fc.date(span),
        (latitude, longitude, slot, date) => {
          const angles = lookAngles(latitude, longitude, slot);
          const bearing = compassBearing(latitude, longitude, slot, date);
          if (isFault(angles) || isFault(bearing)) return isFault(angles) && isFault(bearing);
          const sum = bearing + field(latitude, longitude, date).declination;
          return bearing >= 0 && bearing < 360 && Math.abs(wrap180(wrap360(sum) - angles.azimuth)) < 1e-9;
        },
      ),
      { numRuns: tries(100, 1000) },
    );
  });

  test("the date line is no seam for the field", () => {
    const east = field(40, 180, when);
    const west = field(40, -180, when);
    expect(east.declination).toBeCloseTo(west.declination, 9);
  });
});
