import fc from "fast-check";
import { isFault } from "../../../src/engine/faults";
import { bondCheck, LOOK_CLOSER, NO_FLAG, type BondFinding } from "../../../src/engine/bonding/bondCheck";
import { BOND_RULES, type BondRule } from "../../../src/engine/bonding/constants";
import { heldTo } from "../../support/heldTo";
import { basisOf, publishedCheck } from "../../support/published";
import { tries } from "../../support/tries";

const rule = (kind: string): BondRule => {
  const found = BOND_RULES.find((one) => one.kind === kind);
  if (!found) throw new Error(`no kind ${kind}`);
  return found;
};

const check = (kind: string, size: number, length?: number): BondFinding => {
  const found = bondCheck(rule(kind), size, length);
  if (isFault(found)) throw new Error(found.message);
  return found;
};

/** Area of a solid wire by its gauge (ASTM B258): 0.127 mm · 92^((36 − n)/39) across. */
const awgArea = (gauge: number): number => (Math.PI / 4) * (0.127 * 92 ** ((36 - gauge) / 39)) ** 2;

describe("sizes against IEC/EN 60728-11, from works that quote it", () => {
  const published = publishedCheck("iec60728-11");
  const held = heldTo({
    what: "BONDCHECK",
    source: published.source,
    basis: basisOf(published),
    unit: "mm²",
  });
  test.each([
    ["mast earthing, copper", "earthing_conductor_Cu_mm2"],
    ["mast earthing, aluminium", "Al_mm2"],
    ["mast earthing, steel", "steel_mm2"],
    ["cable screen bond, unprotected", "bonding_Cu_unprotected_mm2"],
    ["cable screen bond, protected", "bonding_Cu_protected_mm2"],
  ])("%s", (kind, key) => held.row(kind, rule(kind).leastSize, published.expected[key] as number, 0));
});

describe("gauges of the NEC, in mm² by ASTM B258", () => {
  const published = publishedCheck("nec-810.21H");
  const held = heldTo({
    what: "BONDCHECK",
    source: published.source,
    basis: basisOf(published),
    unit: "mm²",
  });
  const rows: [string, number][] = [
    ["mast grounding, copper, NEC", published.expected.min_Cu_AWG as number],
    ["mast grounding, copper-clad steel or bronze, NEC", published.expected.min_CCS_or_bronze_AWG as number],
    ["mast grounding, aluminium, NEC", published.expected.min_Al_AWG as number],
    // NEC 800.100 as quoted: bonding conductor 14 AWG, electrodes bonded with 6 AWG.
    ["communications bond, one or two family", 14],
    ["communications bond, other building", 14],
    ["electrode bond, NEC", 6],
  ];
  test.each(rows)("%s", (kind, gauge) => {
    held.row(kind, rule(kind).leastSize, awgArea(gauge), 0.02);
    // A conductor of just that gauge is not flagged, one gauge thinner is.
    expect(check(kind, awgArea(gauge), 1).word).toBe(NO_FLAG);
    expect(check(kind, awgArea(gauge + 1), 1).word).toBe(LOOK_CLOSER);
  });
});

describe("length", () => {
  const published = publishedCheck("nec-800.100A4");
  const held = heldTo({ what: "BONDCHECK", source: published.source, basis: basisOf(published), unit: "m" });
  const kind = "communications bond, one or two family";
  const limit = (published.expected.max_ft as number) * 0.3048;

  test("20 ft for one- and two-family dwellings", () => held.row(kind, rule(kind).mostLength, limit, 1e-9));

  test("boundary", () => {
    expect(check(kind, 4, limit).word).toBe(NO_FLAG);
    expect(check(kind, 4, limit + 0.001)).toMatchObject({
      word: LOOK_CLOSER,
      clause: expect.stringMatching(/^length is beyond the clause's figure; NEC 800\.100\(A\)/),
    });
    expect(check(kind, 1, 30).clause).toMatch(/^size is below the clause's figure, length is beyond/);
  });

  test("is asked for where the clause limits it, and only there", () => {
    expect(bondCheck(rule(kind), 4, undefined)).toMatchObject({
      message: expect.stringMatching(/^length is missing/),
    });
    expect(check("communications bond, other building", 4).word).toBe(NO_FLAG);
    expect(check("mast earthing, copper", 16).word).toBe(NO_FLAG);
  });
});

test("a thicker or shorter conductor is never flagged where a thinner or longer one is not", () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...BOND_RULES),
      fc.double({ min: 0.1, max: 100, noNaN: true }),
      fc.double({ min: 0, max: 40, noNaN: true }),
      fc.double({ min: 1, max: 2, noNaN: true }),
      (one, size, length, factor) => {
        const before = bondCheck(one, size, length) as BondFinding;
        const better = bondCheck(one, size * factor, length / factor) as BondFinding;
        if (before.word === NO_FLAG) expect(better.word).toBe(NO_FLAG);
        expect(better.clause).toContain(one.clause);
      },
    ),
    { numRuns: tries(100, 1000) },
  );
});
