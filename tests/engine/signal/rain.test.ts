import fc from "fast-check";
import { isFault, type Fault } from "../../../src/engine/faults";
import { printedRainFade, type RainPath } from "../../../src/engine/signal/printedRainFade";
import { rainFade } from "../../../src/engine/signal/rainFade";
import { rainPower, rainSpecific } from "../../../src/engine/signal/rainSpecific";
import itu from "../../fixtures/published/itu-p618-validation.json";
import { heldTo } from "../../support/heldTo";
import { basisOf, publishedCheck, publishedChecks } from "../../support/published";
import { tries } from "../../support/tries";

describe("P.838-3", () => {
  for (const check of publishedChecks("10-rain").filter(({ id }) => id.startsWith("p838"))) {
    const held = heldTo({
      what: "RAINSPECIFIC",
      source: check.source,
      basis: basisOf(check),
      unit: "(relative)",
    });
    const given = check.inputs as Record<string, number>;
    const expected = check.expected as Record<string, number>;
    const relative = (label: string, actual: number, value: number): void =>
      held.row(`${check.id} ${label}`, actual / value, 1, check.tolerance.rel!);

    test(check.id, () => {
      if (expected.gamma_dB_per_km !== undefined) {
        const { f_GHz, R_mm_h, elevation_deg, tau_deg } = given;
        const { k, alpha } = rainPower(f_GHz!, elevation_deg!, tau_deg!);
        relative("k", k, expected.k!);
        relative("alpha", alpha, expected.alpha!);
        relative("gamma", rainSpecific(f_GHz!, R_mm_h!, elevation_deg!, tau_deg!), expected.gamma_dB_per_km);
      } else {
        // On a level path a tilt of 0 or 90 leaves one polarisation alone.
        const horizontal = rainPower(given.f_GHz!, 0, 0);
        const vertical = rainPower(given.f_GHz!, 0, 90);
        relative("kH", horizontal.k, expected.kH!);
        relative("alphaH", horizontal.alpha, expected.alphaH!);
        relative("kV", vertical.k, expected.kV!);
        relative("alphaV", vertical.alpha, expected.alphaV!);
      }
    });
  }
});

describe("P.618, every row of ITU Study Group 3's examples at hand", () => {
  const held = heldTo({
    what: "RAINFADE",
    source: "ITU-R Study Group 3 validation examples, P.618-13",
    basis: "published",
    unit: "dB",
  });
  test.each(itu.rows.map((row, i) => [i, row] as const))("row %d", (i, row) => {
    const fade = printedRainFade({
      latitude: row.lat_deg,
      elevation: row.el_deg,
      frequency: row.f_GHz,
      rain: row.R001_mm_h,
      percent: row.p_percent,
      rainHeight: row.hR_km,
      siteHeight: row.hs_km,
      tilt: row.tau_deg,
    });
    held.row(`row ${i}`, fade.decibels, row.A_rain_dB, 1e-6);
  });

  const more = heldTo({
    what: "RAINFADE",
    source: "ITU-R Study Group 3 validation examples, P.618-13, rain height rounded to 1 mm",
    basis: "published",
    unit: "dB",
  });
  test.each(publishedChecks("10-rain").filter(({ id }) => id.startsWith("p618")))("$id", (check) => {
    const given = check.inputs as Record<string, number>;
    const fade = printedRainFade({
      latitude: given.lat_deg!,
      elevation: given.elevation_deg!,
      frequency: given.f_GHz!,
      rain: given.R001_mm_h!,
      percent: given.p_percent!,
      rainHeight: given.hR_km!,
      siteHeight: given.hs_km!,
      tilt: given.tau_deg!,
    });
    more.row(check.id, fade.decibels, check.expected.A_rain_dB as number, check.tolerance.A_rain_dB!);
  });
});

describe("boundary", () => {
  const path: RainPath = {
    latitude: 40,
    elevation: 40,
    frequency: 12.5,
    rain: 40,
    percent: 0.01,
    rainHeight: 3,
    siteHeight: 0,
    tilt: 45,
  };
  test("above the rain, or without it, nothing fades", () => {
    expect(rainFade({ ...path, siteHeight: 3 })).toBe(0);
    expect(rainFade({ ...path, siteHeight: 4 })).toBe(0);
    expect(rainFade({ ...path, rain: 0 })).toBe(0);
  });
  test("the zenith is no singular point", () => {
    const near = rainFade({ ...path, elevation: 89.9999999 });
    expect(rainFade({ ...path, elevation: 90 })).toBeCloseTo(near as number, 3);
  });
  test("circular polarisation is that of neither tilt nor elevation", () => {
    expect(rainSpecific(12, 30, 10, 45)).toBeCloseTo(rainSpecific(12, 30, 80, 45), 12);
    expect(rainSpecific(12, 30, 40, 45)).toBeCloseTo(rainSpecific(12, 30, 40, -45), 12);
  });

  test("more rain never fades less, and a rarer case never less than a commoner one", () => {
    const rain = fc.double({ min: 1, max: 150, noNaN: true });
    const percent = fc.double({ min: 0.001, max: 5, noNaN: true });
    fc.assert(
      fc.property(
        rain,
        rain,
        percent,
        percent,
        fc.double({ min: 10, max: 30, noNaN: true }),
        (r1, r2, p1, p2, frequency) => {
          const fade = (r: number, p: number): number =>
            rainFade({ ...path, frequency, rain: r, percent: p }) as number;
          expect(fade(Math.max(r1, r2), p1)).toBeGreaterThanOrEqual(fade(Math.min(r1, r2), p1) - 1e-12);
          expect(fade(r1, Math.min(p1, p2))).toBeGreaterThanOrEqual(fade(r1, Math.max(p1, p2)) - 1e-12);
        },
      ),
      { numRuns: tries(100, 1000) },
    );
  });
});

test("the function gives what the method prints, but where its curve has turned", () => {
  let turned = 0;
  for (const row of itu.rows) {
    const path: RainPath = {
      latitude: row.lat_deg,
      elevation: row.el_deg,
      frequency: row.f_GHz,
      rain: row.R001_mm_h,
      percent: row.p_percent,
      rainHeight: row.hR_km,
      siteHeight: row.hs_km,
      tilt: row.tau_deg,
    };
    const printed = printedRainFade(path);
    if (printed.turned) {
      turned++;
      // It has: the commoner case has the greater fade.
      expect(printedRainFade({ ...path, percent: row.p_percent * 1.1 }).decibels).toBeGreaterThan(
        printed.decibels,
      );
      expect(rainFade(path)).toMatchObject({ kind: "fault" });
    } else expect(rainFade(path)).toBe(printed.decibels);
  }
  expect(turned).toBeLessThanOrEqual(1);
});

describe("a rarer part of the year never fades less, or is refused", () => {
  // A hot wet place near the equator, dish low: the fade is large and the scaling turns.
  const equator: RainPath = {
    latitude: 3,
    elevation: 20,
    frequency: 20,
    rain: 95,
    percent: 0.01,
    rainHeight: 4.958,
    siteHeight: 0,
    tilt: 45,
  };

  test("at the equator the method turns: refused from there on, with the rarest part that it reaches", () => {
    const refused = rainFade({ ...equator, percent: 0.001 });
    expect(refused).toMatchObject({
      message: expect.stringMatching(/percent is 0\.001 %; .* from [\d.]+ to 5 %/),
    });
    const least = Number(/from ([\d.]+) to/.exec((refused as Fault).message)![1]);
    expect(least).toBeGreaterThan(0.001);
    const at = rainFade({ ...equator, percent: least });
    expect(typeof at).toBe("number");
    // Just above the turn the curve is flat.
    expect(at as number).toBeGreaterThan(rainFade({ ...equator, percent: 2 * least }) as number);
    expect(rainFade({ ...equator, percent: least * 0.9 })).toMatchObject({ kind: "fault" });
  });

  test("everywhere that the recommendation covers", () => {
    const paths = fc.record({
      latitude: fc.double({ min: -60, max: 60, noNaN: true }),
      elevation: fc.double({ min: 5, max: 90, noNaN: true }),
      frequency: fc.double({ min: 1, max: 55, noNaN: true }),
      rain: fc.double({ min: 1, max: 200, noNaN: true }),
      rainHeight: fc.double({ min: 0.5, max: 6, noNaN: true }),
    });
    let refused = 0;
    fc.assert(
      fc.property(paths, (one) => {
        let last = -Infinity;
        // From the commonest to the rarest; once refused, always refused.
        for (let step = 0; step <= 60; step++) {
          const percent = 5 * (0.001 / 5) ** (step / 60);
          const fade = rainFade({ ...equator, ...one, percent: Math.max(0.001, percent) });
          if (isFault(fade)) {
            refused++;
            last = Infinity;
            continue;
          }
          expect(fade).toBeGreaterThanOrEqual(last - 1e-12);
          last = fade;
        }
      }),
      // One that is refused from somewhere on is always among them; most draws are not.
      { numRuns: tries(50, 500), examples: [[equator]] },
    );
    expect(refused).toBeGreaterThan(0);
  });
});

test("the published check on the 0.01 % rate belongs to the same sites as the rows above", () => {
  const rate = publishedCheck("p837-51.5").expected.R001_mm_h;
  expect(itu.rows.some(({ lat_deg, R001_mm_h }) => lat_deg === 51.5 && R001_mm_h === rate)).toBe(true);
});
