import fc from "fast-check";
import { isFault } from "../../../src/engine/faults";
import { loadVolts } from "../../../src/engine/power/loadVolts";
import { longestRun } from "../../../src/engine/power/longestRun";
import { loopOhms } from "../../../src/engine/power/loopOhms";
import { wireOhms } from "../../../src/engine/power/wireOhms";
import { BUILT_IN_CABLES, builtInCable, type Cable } from "../../../src/engine/signal/cable";
import { heldTo } from "../../support/heldTo";
import { basisOf, publishedCheck, publishedChecks } from "../../support/published";
import { tries } from "../../support/tries";

const THOUSAND_FEET = 304.8;
/** 39 ohm per 1000 ft, as in the checks. */
const CHECKED: Cable = { name: "checked", loss: { k1: 1, k2: 0, k0: 0 }, loop: 39 / 3.048 };
const valueOf = (value: ReturnType<typeof loadVolts>): number => {
  if (isFault(value)) throw new Error(value.message);
  return value;
};

describe("wire", () => {
  for (const check of publishedChecks("6-dc").filter(({ inputs }) => "awg" in inputs)) {
    const held = heldTo({
      what: "WIREOHMS",
      source: check.source,
      basis: basisOf(check),
      unit: "ohm/1000 ft",
    });
    test(check.id, () => {
      const { awg, T_C, conductivity_percent_IACS = 100 } = check.inputs as Record<string, number>;
      held.row(
        check.id,
        wireOhms(awg!, THOUSAND_FEET, conductivity_percent_IACS, T_C!),
        check.expected.ohm_per_kft as number,
        check.tolerance.ohm_per_kft!,
      );
    });
  }
});

describe("built-in loop resistance", () => {
  const held = heldTo({
    what: "LOOPOHMS",
    source: "centre conductor and shield of drop cable",
    basis: "from memory",
    unit: "ohm/1000 ft",
  });
  test.each([
    // Centre conductor at 21 % or 100 % IACS by gauge, and the shield's figure beside it.
    ["series 59", 48.3 + 12, 0.1],
    ["series 59, copper", 10.15 + 12, 0.05],
    ["series 7", 19.1 + 6, 0.1],
    ["series 7, copper", 4.016 + 6, 0.05],
    ["series 6", 39, 1],
    ["series 6, copper", 15, 1],
    ["series 11", 16, 0.5],
    ["series 11, copper", 6.5, 0.3],
  ])("%s", (name, expected, limit) => {
    held.row(name, loopOhms(builtInCable(name)!, THOUSAND_FEET, 20), expected, limit);
  });
  test("copper-clad steel is the default, and always the greater", () => {
    for (const name of BUILT_IN_CABLES.filter((name) => !name.includes(","))) {
      const ohms = (variant: string): number => valueOf(loopOhms(builtInCable(name + variant)!, 100, 20));
      expect(ohms("")).toBe(ohms(", copper-clad steel"));
      expect(ohms("")).toBeGreaterThan(2 * ohms(", copper"));
    }
  });
});

describe("load voltage", () => {
  const check = publishedCheck("constant-power");
  const held = heldTo({ what: "LOADVOLTS", source: check.source, basis: basisOf(check), unit: "V" });
  const ohms = valueOf(loopOhms(CHECKED, 150 * 0.3048, 20));
  test("24 V, 6 W, 150 ft", () =>
    held.row(
      check.id,
      loadVolts(24, 6, ohms, "W"),
      check.expected.V_load as number,
      check.tolerance.V_load!,
    ));
  test("24 V, 0.25 A, 150 ft: 24 − 0.25·5.85", () =>
    held.row("constant current", loadVolts(24, 0.25, ohms, "A"), 22.5375, 1e-9));
  test(publishedCheck("constant-power-collapse").id, () =>
    expect(isFault(loadVolts(24, 12, valueOf(loopOhms(CHECKED, 400 * 0.3048, 20)), "W"))).toBe(true),
  );

  const runs = heldTo({
    what: "LONGESTRUN",
    source: "(Vs − Vmin)/(I·r) and (Vs − Vmin)·Vmin/(P·r) by hand",
    basis: "derivation",
    unit: "ft",
  });
  test("24 to 21 V", () => {
    runs.row("0.25 A", valueOf(longestRun(24, 21, 0.25, CHECKED, "A", 20)) / 0.3048, 307.7, 0.05);
    runs.row("6 W", valueOf(longestRun(24, 21, 6, CHECKED, "W", 20)) / 0.3048, 269.2, 0.05);
  });
});

describe("boundary and no solution", () => {
  test("no load and no resistance leave the supply", () => {
    expect(loadVolts(24, 0, 10, "A")).toBe(24);
    expect(loadVolts(24, 6, 0, "W")).toBe(24);
  });
  test("the very edge: the whole supply lost, or half of it at constant power", () => {
    expect(loadVolts(24, 2, 12, "A")).toBe(0);
    expect(loadVolts(24, 12, 12, "W")).toBe(12);
    expect(isFault(loadVolts(24, 2.001, 12, "A"))).toBe(true);
    expect(isFault(loadVolts(24, 12.001, 12, "W"))).toBe(true);
  });
  test("a least voltage equal to the supply allows no cable; above it is a fault", () => {
    expect(longestRun(24, 24, 1, CHECKED, "A", 20)).toBe(0);
    expect(isFault(longestRun(24, 24.01, 1, CHECKED, "A", 20))).toBe(true);
  });
  test("constant power below half the supply: the run ends where the load collapses", () => {
    const least = valueOf(longestRun(24, 5, 6, CHECKED, "W", 20));
    expect(least).toBe(longestRun(24, 12, 6, CHECKED, "W", 20));
    expect(loadVolts(24, 6, valueOf(loopOhms(CHECKED, least, 20)), "W")).toBeCloseTo(12, 4);
    expect(isFault(loadVolts(24, 6, valueOf(loopOhms(CHECKED, least * 1.001, 20)), "W"))).toBe(true);
  });
});

describe(`common practice, no source: ${publishedCheck("head-unit-21V").id}`, () => {
  const { V_min, meter_V, inserter_needed } = publishedCheck("head-unit-21V").expected as Record<
    string,
    number
  >;
  test("a hand meter alone cannot feed the head unit over any length", () => {
    expect(isFault(longestRun(meter_V!, V_min!, 0.25, CHECKED, "A", 20))).toBe(inserter_needed);
  });
});

describe("properties", () => {
  const supply = fc.double({ min: 5, max: 60, noNaN: true });
  const kind = fc.constantFrom("A", "W" as const);
  const celsius = fc.double({ min: -60, max: 90, noNaN: true });
  const often = { numRuns: tries(100, 1000) };

  test("the load's own law holds at the voltage found", () => {
    fc.assert(
      fc.property(
        supply,
        fc.double({ min: 0, max: 5, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        kind,
        (vs, load, ohms, kind) => {
          const volts = loadVolts(vs, load, ohms, kind);
          if (isFault(volts)) {
            expect(kind === "A" ? load * ohms > vs : 4 * load * ohms > vs * vs).toBe(true);
            return;
          }
          const current = kind === "A" ? load : load / volts;
          expect(Math.abs(vs - current * ohms - volts)).toBeLessThanOrEqual(1e-6);
          if (kind === "W") expect(volts).toBeGreaterThanOrEqual(vs / 2);
        },
      ),
      often,
    );
  });

  test("the longest run fed back leaves the least voltage", () => {
    const name = fc.constantFrom(...BUILT_IN_CABLES);
    const fraction = fc.double({ min: 0.51, max: 0.999, noNaN: true });
    const load = fc.double({ min: 0.01, max: 50, noNaN: true });
    fc.assert(
      fc.property(supply, fraction, load, name, kind, celsius, (vs, part, load, name, kind, t) => {
        const cable = builtInCable(name)!;
        const metres = valueOf(longestRun(vs, vs * part, load, cable, kind, t));
        const left = valueOf(loadVolts(vs, load, valueOf(loopOhms(cable, metres, t)), kind));
        expect(Math.abs(left - vs * part)).toBeLessThanOrEqual(1e-9 * vs);
      }),
      often,
    );
  });

  test("at the longest run of a constant power there still is an operating point, whatever the rounding", () => {
    const low = fc.double({ min: 0.01, max: 0.5, noNaN: true });
    fc.assert(
      fc.property(
        supply,
        low,
        fc.double({ min: 0.01, max: 50, noNaN: true }),
        celsius,
        (vs, part, watts, t) => {
          const metres = valueOf(longestRun(vs, vs * part, watts, CHECKED, "W", t));
          const left = valueOf(loadVolts(vs, watts, valueOf(loopOhms(CHECKED, metres, t)), "W"));
          expect(Math.abs(left - vs / 2)).toBeLessThanOrEqual(1e-5 * vs);
        },
      ),
      often,
    );
  });

  test("a hotter cable never has less resistance, and resistance is additive in length", () => {
    const metres = fc.double({ min: 0, max: 10_000, noNaN: true });
    fc.assert(
      fc.property(metres, metres, celsius, celsius, (a, b, t1, t2) => {
        const ohms = (length: number, t: number): number => valueOf(loopOhms(CHECKED, length, t));
        expect(ohms(a, Math.max(t1, t2))).toBeGreaterThanOrEqual(ohms(a, Math.min(t1, t2)));
        expect(Math.abs(ohms(a + b, t1) - ohms(a, t1) - ohms(b, t1))).toBeLessThanOrEqual(1e-9);
      }),
      often,
    );
  });
});
