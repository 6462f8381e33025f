import fc from "fast-check";
import { isFault } from "../../../src/engine/faults";
import { convertLevel, LEVEL_UNITS, type LevelUnit } from "../../../src/engine/signal/convertLevel";
import { levelVerdict } from "../../../src/engine/signal/levelVerdict";
import { heldTo } from "../../support/heldTo";
import { publishedChecks } from "../../support/published";
import { tries } from "../../support/tries";

const converted = (value: number, from: LevelUnit, to: LevelUnit): number => {
  const found = convertLevel(value, from, to);
  if (isFault(found)) throw new Error(found.message);
  return found;
};

describe("levels across 75 Ω", () => {
  const held = heldTo({ what: "LEVEL", source: "P = V²/R", basis: "derivation", unit: "dB" });
  test.each(publishedChecks("8-levels").filter(({ id }) => id.startsWith("dBuV")))("$id", (check) => {
    const { dBuV } = check.inputs as { dBuV: number };
    const { dBmV, dBm } = check.expected as { dBmV: number; dBm: number };
    held.row(`${check.id} in dBm`, converted(dBuV, "dBµV", "dBm"), dBm, 0.001);
    held.row(`${check.id} in dBmV`, converted(dBuV, "dBuV", "dBmV"), dBmV, 1e-9);
    held.row(`${check.id} from dBm`, converted(dBm, "dBm", "dBµV"), dBuV, 0.001);
  });
  test("1 mW in 75 Ω is √0.075 V", () => {
    expect(converted(0, "dBm", "µV")).toBeCloseTo(Math.sqrt(0.075) * 1e6, 6);
  });
  test("a voltage of 0 or less is refused", () => {
    for (const volts of [0, -0, -5]) expect(isFault(convertLevel(volts, "uV", "dBm"))).toBe(true);
  });
});

test("every unit round trips through every other", () => {
  const unit = fc.constantFrom(...LEVEL_UNITS);
  const dBuV = fc.double({ min: -100, max: 200, noNaN: true });
  fc.assert(
    fc.property(dBuV, unit, unit, (level, from, to) => {
      const value = converted(level, "dBµV", from);
      const back = converted(converted(value, from, to), to, from);
      expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-11 * Math.max(100, Math.abs(value)));
    }),
    { numRuns: tries(100, 1000) },
  );
});

describe("the window at an outlet, 47 to 77 dBµV (EN 60728-1)", () => {
  test.each([
    [46.99, "low"],
    [47, "ok"],
    [77, "ok"],
    [47 - 1e-12, "ok"],
    [77 + 1e-12, "ok"],
    [77.01, "high"],
    [-1e308, "low"],
    [1e308, "high"],
  ])("%d dBµV is %s", (level, verdict) => expect(levelVerdict(level, 47, 77)).toBe(verdict));
  test("a window of one level", () => expect(levelVerdict(60, 60, 60)).toBe("ok"));
  test("an upside-down window", () => expect(isFault(levelVerdict(60, 77, 47))).toBe(true));
});
