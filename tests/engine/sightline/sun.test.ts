/** The sun's place, and the seasons in which it stands behind a slot. */
import * as Astronomy from "astronomy-engine";
import fc from "fast-check";
import { isFault } from "../../../src/engine/faults";
import { wrap180 } from "../../../src/engine/sightline/angles";
import { apparentSun } from "../../../src/engine/sightline/apparentSun";
import { lookAngles } from "../../../src/engine/sightline/lookAngles";
import type { Aim } from "../../../src/engine/sightline/pairAim";
import { sunCheck, type SunSeason } from "../../../src/engine/sightline/sunCheck";
import { sunPosition } from "../../../src/engine/sightline/sunPosition";
import stored from "../../fixtures/published/sun-transit-2026.json";
import { heldTo } from "../../support/heldTo";
import { publishedChecks } from "../../support/published";
import { tries } from "../../support/tries";

const sun = (...args: Parameters<typeof sunPosition>): Aim => {
  const found = sunPosition(...args);
  if (isFault(found)) throw new Error(found.message);
  return found;
};
const seasons = (...args: Parameters<typeof sunCheck>): readonly SunSeason[] => {
  const found = sunCheck(...args);
  if (isFault(found)) throw new Error(found.message);
  return found;
};
const DAY_MS = 86_400_000;
const dayNumber = (instantMs: number): number => Math.floor(instantMs / DAY_MS);

describe("the sun's place against printed examples", () => {
  const to = heldTo({
    what: "SUNPOSITION",
    source: "Meeus 25.a; Reda and Andreas table A5.1",
    basis: "published",
    unit: "deg",
  });

  test("Meeus, example 25.a: 1992 October 13, 0 h dynamical time", () => {
    // Dynamical time less UTC is taken as 69.184 s by the function.
    const found = apparentSun(Date.UTC(1992, 9, 13) - 69_184);
    to.row("right ascension", found.rightAscension, 198.38083, 0.01);
    to.row("declination", found.declination, -7.78507, 0.01);
  });

  test("Reda and Andreas, table A5.1: 2003 October 17, 12:30:30 at seven hours west", () => {
    const found = sun(39.742476, -105.1786, new Date("2003-10-17T19:30:30Z"));
    to.row("azimuth", found.azimuth, 194.34024, 0.01);
    // Printed zenith angle 50.11162 with air; without it 50.12805 by astronomy-engine.
    to.row("elevation", found.elevation, 90 - 50.12805, 0.01);
  });
});

describe("the sun's place against astronomy-engine 2.1.19, run beside ours", () => {
  const source = "astronomy-engine 2.1.19, run live";
  const basis = "reference library";
  const away = heldTo({ what: "SUNPOSITION direction", source, basis, unit: "deg" });

  test("sites, seasons and hours from 1950 to 2100", () => {
    for (const [latitude, longitude] of [
      [40, -105],
      [-34, 151],
      [0, 0],
      [64, 179.9],
    ] as const) {
      const observer = new Astronomy.Observer(latitude, longitude, 0);
      for (const year of [1950, 1988, 2026, 2035, 2060, 2100]) {
        for (let day = 1; day < 365; day += 13.37) {
          const when = new Date(Date.UTC(year, 0, 1) + day * DAY_MS);
          const { ra, dec } = Astronomy.Equator(Astronomy.Body.Sun, when, observer, true, true);
          const theirs = Astronomy.Horizon(when, observer, ra, dec);
          const ours = sun(latitude, longitude, when);
          const east = wrap180(ours.azimuth - theirs.azimuth) * Math.cos((theirs.altitude * Math.PI) / 180);
          const residual = Math.hypot(east, ours.elevation - theirs.altitude);
          away.row(`${latitude},${longitude} ${when.toISOString()}`, residual, 0, 0.004);
        }
      }
    }
  });
});

describe("seasons against astronomy-engine and satellite.js, stored", () => {
  const source = "astronomy-engine 2.1.19 and satellite.js 7.1.0, stored";
  const basis = "reference library";
  const held = (what: string, unit: string) => heldTo({ what: `SUNCHECK ${what}`, source, basis, unit });
  const to = {
    peak: held("peak", "s"),
    least: held("least separation", "deg"),
    first: held("first day", "d"),
    last: held("last day", "d"),
    seconds: held("outage", "s"),
  };

  const rows = stored.cases.flatMap((site) =>
    site.seasons.flatMap((season, index) =>
      season.by_dish.map((dish) => ({
        label: `${site.site} ${season.season} ${dish.diameter_m} m`,
        site,
        season,
        index,
        dish,
      })),
    ),
  );
  test.each(rows.map((row) => [row.label, row] as const))("%s", (label, { site, season, index, dish }) => {
    const ours = seasons(
      site.lat_deg,
      site.lon_deg,
      site.sat_lon_deg,
      site.year,
      dish.diameter_m,
      dish.f_GHz * 1000,
      site.h_km * 1000,
    )[index]!;
    to.peak.row(label, ours.peakMs / 1000, Date.parse(season.peak_utc) / 1000, 30);
    to.least.row(label, ours.leastSeparation, season.min_separation_deg, 0.005);
    to.first.row(label, dayNumber(ours.firstMs), dayNumber(Date.parse(dish.first)), 1);
    to.last.row(label, dayNumber(ours.lastMs), dayNumber(Date.parse(dish.last)), 1);
    to.seconds.row(label, ours.seconds, dish.peak_duration_s, 20);
  });

  test.each(
    publishedChecks("3-sun")
      .filter(({ expected }) => expected.peak_utc !== undefined)
      .map((row) => [row.id, row] as const),
  )("%s", (id, { inputs, expected, tolerance }) => {
    const ours = seasons(
      inputs.lat_deg as number,
      inputs.lon_deg as number,
      inputs.sat_lon_deg as number,
      inputs.year as number,
      inputs.dish_m as number,
      (inputs.f_GHz as number) * 1000,
      (inputs.h_km as number) * 1000,
    )[id.endsWith("spring") ? 0 : 1]!;
    const time = (key: string): number => Date.parse(expected[key] as string);
    to.peak.row(id, ours.peakMs / 1000, time("peak_utc") / 1000, tolerance.peak_utc_s!);
    to.least.row(
      id,
      ours.leastSeparation,
      expected.min_separation_deg as number,
      tolerance.min_separation_deg!,
    );
    to.first.row(id, dayNumber(ours.firstMs), dayNumber(time("first")), 1);
    to.last.row(id, dayNumber(ours.lastMs), dayNumber(time("last")), 1);
    to.seconds.row(id, ours.seconds, expected.peak_duration_s as number, tolerance.peak_duration_s!);
  });
});

describe("seasons against astronomy-engine, run beside ours at the peak", () => {
  const to = heldTo({
    what: "SUNCHECK least separation",
    source: "astronomy-engine 2.1.19 at the instant found",
    basis: "reference library",
    unit: "deg",
  });
  const rad = Math.PI / 180;
  test.each([
    ["64 N, in 1960", 64, 20, 10, 1960],
    ["68 S, in 2099", -68, 170, -175, 2099],
    ["on the date line, midnight transits, in 2033", 20, 5, 5.5, 2033],
    ["just off the point under the slot", 0.5, -60, -60.5, 2026],
  ])("%s", (label, latitude, longitude, slot, year) => {
    const observer = new Astronomy.Observer(latitude, longitude, 0);
    const target = lookAngles(latitude, longitude, slot);
    if (isFault(target)) throw new Error(target.message);
    const theirs = (instantMs: number): number => {
      const when = new Date(instantMs);
      const { ra, dec } = Astronomy.Equator(Astronomy.Body.Sun, when, observer, true, true);
      const { azimuth, altitude } = Astronomy.Horizon(when, observer, ra, dec);
      const cosine =
        Math.sin(altitude * rad) * Math.sin(target.elevation * rad) +
        Math.cos(altitude * rad) *
          Math.cos(target.elevation * rad) *
          Math.cos((azimuth - target.azimuth) * rad);
      return Math.acos(Math.min(1, cosine)) / rad;
    };
    const found = seasons(latitude, longitude, slot, year, 0.75, 12_450);
    expect(found).toHaveLength(2);
    for (const { peakMs, leastSeparation } of found) {
      to.row(`${label}, ${new Date(peakMs).toISOString()}`, leastSeparation, theirs(peakMs), 0.006);
      // A minute to either side the sun is farther off, and so it is a day to either side, give or take two like days.
      for (const other of [peakMs - 60_000, peakMs + 60_000, peakMs - DAY_MS, peakMs + DAY_MS]) {
        expect(theirs(other)).toBeGreaterThan(theirs(peakMs) - 0.006);
      }
    }
  });
});

describe("hard cases", () => {
  test("before the March and after the September equinox in the north, reversed in the south", () => {
    const [march, september] = seasons(50, 0, 0, 2026, 0.75, 12_450);
    expect(march!.peakMs).toBeLessThan(Date.parse("2026-03-20"));
    expect(september!.peakMs).toBeGreaterThan(Date.parse("2026-09-23"));
    const [south, spring] = seasons(-50, 0, 0, 2026, 0.75, 12_450);
    expect(south!.peakMs).toBeGreaterThan(Date.parse("2026-03-20"));
    expect(spring!.peakMs).toBeLessThan(Date.parse("2026-09-23"));
  });

  test("a slot below the horizon has no season, and the sentence says so", () => {
    expect(sunCheck(50, 0, 120, 2026, 0.75, 12_450)).toMatchObject({
      code: "#N/A",
      message: expect.stringMatching(/elevation of -\d/),
    });
  });

  test("a small dish at a low frequency still has two bounded seasons", () => {
    for (const { firstMs, lastMs, peakMs, seconds } of seasons(60, 0, 0, 2026, 0.3, 3000)) {
      // Half beamwidth 11.7 deg: about a month to either side of the peak, at 0.39 deg a day.
      expect((peakMs - firstMs) / DAY_MS).toBeGreaterThan(25);
      expect((lastMs - peakMs) / DAY_MS).toBeGreaterThan(25);
      expect((lastMs - firstMs) / DAY_MS).toBeLessThan(75);
      expect(seconds).toBeLessThan(2.2 * 4 * 60 * 12);
    }
  });

  test("years outside the sun's model are refused", () => {
    expect(sunPosition(0, 0, new Date("1949-12-31T23:59:59Z"))).toMatchObject({
      message: expect.stringMatching(/^utc's year is 1949; it must be from 1950 to 2100/),
    });
    expect(isFault(sunPosition(0, 0, new Date("2101-01-01")))).toBe(true);
    expect(isFault(sunPosition(0, 0, new Date("2100-12-31T23:59:59Z")))).toBe(false);
  });
});

describe("properties", () => {
  const latitude = fc.double({ min: -65, max: 65, noNaN: true });
  const longitude = fc.double({ min: -180, max: 180, noNaN: true });

  test("the sun stays a place in the sky, and the date line is no seam, 1,000 runs", () => {
    fc.assert(
      fc.property(
        latitude,
        fc.date({ min: new Date("1950-01-01"), max: new Date("2100-12-31"), noInvalidDate: true }),
        (φ, when) => {
          const east = sun(φ, 180, when);
          const west = sun(φ, -180, when);
          expect(wrap180(east.azimuth - west.azimuth)).toBeCloseTo(0, 7);
          expect(east.elevation).toBeCloseTo(west.elevation, 8);
          expect(Math.abs(east.elevation)).toBeLessThanOrEqual(90);
        },
      ),
      { numRuns: tries(100, 1000) },
    );
  });

  test("a smaller dish never has a shorter season or a shorter outage, 30 runs", () => {
    fc.assert(
      fc.property(
        latitude,
        longitude,
        fc.double({ min: -50, max: 50, noNaN: true }),
        fc.integer({ min: 1950, max: 2100 }),
        (φ, λ, d, year) => {
          const slot = wrap180(λ + d);
          const small = sunCheck(φ, λ, slot, year, 0.6, 12_450);
          const large = sunCheck(φ, λ, slot, year, 1.2, 12_450);
          if (isFault(small) || isFault(large)) return isFault(small) && isFault(large);
          return small.every(
            (one, index) =>
              one.firstMs <= large[index]!.firstMs &&
              one.lastMs >= large[index]!.lastMs &&
              one.seconds > large[index]!.seconds &&
              one.leastSeparation < 0.25,
          );
        },
      ),
      { numRuns: 30 },
    );
  });
});
