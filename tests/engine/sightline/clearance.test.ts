/** Ray height, setback, offset dish and peaking. */
import fc from "fast-check";
import { faceTilt } from "../../../src/engine/sightline/faceTilt";
import { offsetAngle } from "../../../src/engine/sightline/offsetAngle";
import { peakOffset } from "../../../src/engine/sightline/peakOffset";
import { rayHeight } from "../../../src/engine/sightline/rayHeight";
import { setback } from "../../../src/engine/sightline/setback";
import { heldTo } from "../../support/heldTo";
import { publishedCheck, publishedChecks } from "../../support/published";
import { tries } from "../../support/tries";

const often = { numRuns: tries(100, 1000) };

describe("clearance", () => {
  const to = heldTo({
    what: "SETBACK and RAYHEIGHT",
    source: "geometry by hand",
    basis: "derivation",
    unit: "m",
  });

  test("published checks", () => {
    const back = publishedCheck("setback");
    to.row(
      back.id,
      setback(40, back.inputs.obstacle_h_m as number, back.inputs.dish_h_m as number),
      back.expected.min_distance_m as number,
      back.tolerance.min_distance_m!,
    );
    const high = publishedCheck("height-at-distance");
    to.row(
      high.id,
      rayHeight(40, high.inputs.distance_m as number, high.inputs.dish_h_m as number),
      high.expected.ray_height_m as number,
      high.tolerance.ray_height_m!,
    );
  });

  test("45 deg and a margin of 15: tan 30 = 1/√3", () => {
    to.row("ray", rayHeight(45, 30, 0, 15), 30 / Math.sqrt(3), 1e-12);
    to.row("setback", setback(45, 10, 0, 15), 10 * Math.sqrt(3), 1e-12);
  });

  test("boundary: an obstacle no higher than the dish needs no room", () => {
    expect(setback(30, 2, 2)).toBe(0);
    expect(setback(30, -5, 2)).toBe(0);
  });

  test("no solution: a margin that eats the elevation, and a ray on the ground", () => {
    const sentence = /^margin_deg is 5 deg; it must be less than the elevation of 5 deg/;
    expect(setback(5, 10, 0, 5)).toMatchObject({ message: expect.stringMatching(sentence) });
    expect(rayHeight(5, 10, 0, 5)).toMatchObject({ message: expect.stringMatching(sentence) });
    expect(setback(0, 10)).toMatchObject({ code: "#VALUE!" });
  });

  test("at the setback the ray just touches the obstacle", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 89, noNaN: true }),
        fc.double({ min: 0, max: 4, noNaN: true }),
        fc.double({ min: -3, max: 30, noNaN: true }),
        fc.double({ min: 0.1, max: 100, noNaN: true }),
        (elevation, margin, dish, above) => {
          const distance = setback(elevation, dish + above, dish, margin) as number;
          expect(rayHeight(elevation, distance, dish, margin)).toBeCloseTo(dish + above, 8);
        },
      ),
      often,
    );
  });

  test("feet in, feet out: the unit is the user's", () => {
    fc.assert(
      fc.property(fc.double({ min: 5, max: 80, noNaN: true }), (elevation) => {
        const metres = setback(elevation, 6, 2) as number;
        expect(setback(elevation, 6 / 0.3048, 2 / 0.3048)).toBeCloseTo(metres / 0.3048, 8);
      }),
      often,
    );
  });
});

describe("offset dish", () => {
  const angle = heldTo({
    what: "OFFSETANGLE",
    source: "Wade, microwave antenna book, ch. 5",
    basis: "published",
    unit: "deg",
  });
  const tilt = heldTo({
    what: "FACETILT",
    source: "published table for an offset of 22 deg",
    basis: "published",
    unit: "deg",
  });

  test("worked value of the book", () => {
    const { id, inputs, expected, tolerance } = publishedCheck("offset-angle");
    angle.row(
      id,
      offsetAngle(inputs.width_m as number, inputs.height_m as number),
      expected.offset_deg as number,
      tolerance.offset_deg!,
    );
  });

  test.each(
    publishedChecks("4-clearance")
      .filter(({ inputs }) => inputs.beam_elevation_deg !== undefined)
      .map((row) => [row.id, row] as const),
  )("%s", (id, { inputs, expected, tolerance }) => {
    const key = "face_tilt_back_from_vertical_deg";
    tilt.row(
      id,
      faceTilt(inputs.beam_elevation_deg as number, inputs.offset_deg as number),
      expected[key] as number,
      tolerance[key]!,
    );
  });

  test.each([
    [25, 3],
    [40, 18],
    [63, 41],
    [70, 48],
  ])("further rows of the same table: %d gives %d", (elevation, expected) => {
    tilt.row(`${elevation}`, faceTilt(elevation, 22), expected, 0.01);
  });

  test("boundary: a round rim has none; a rim wider than tall is refused", () => {
    expect(offsetAngle(0.6, 0.6)).toBe(0);
    expect(offsetAngle(0.7, 0.6)).toMatchObject({
      message:
        "width is 0.7; it must be more than 0 and at most 0.6. The rim of an offset dish is taller than wide: width and height are perhaps exchanged.",
    });
  });

  test("a low slot makes the rim lean forward", () => {
    expect(faceTilt(10, 22)).toBe(-12);
  });
});

describe("peaking by equal drops", () => {
  const to = heldTo({
    what: "PEAKOFFSET",
    source: "main lobe 12 (θ/θ3)², worked forwards",
    basis: "derivation",
    unit: "deg",
  });

  test("beamwidth 2.247, offset 0.3, a degree to either side: drops 0.9507 and 3.8027", () => {
    to.row("0.3", peakOffset(0.9507, 3.8027, 1), 0.3, 1e-4);
    to.row("-0.3", peakOffset(3.8027, 0.9507, 1), -0.3, 1e-4);
  });

  test("on the peak both drops are alike", () => {
    expect(peakOffset(2, 2, 1)).toBe(0);
  });

  test("no solution: a dip, or flat readings", () => {
    expect(peakOffset(-1, 0.5, 1)).toMatchObject({ message: expect.stringMatching(/add up to -0.5 dB/) });
    expect(peakOffset(0, 0, 1)).toMatchObject({ message: expect.stringMatching(/add up to 0 dB/) });
  });

  test("boundary: a step of 0.8 beamwidths is taken, a wider one refused", () => {
    const sum = 24 * 0.8 ** 2;
    expect(peakOffset(sum / 2, sum / 2 - 0.001, 1)).toBeCloseTo(0, 3);
    expect(peakOffset(sum / 2, sum / 2 + 0.001, 1)).toMatchObject({
      message: expect.stringMatching(/15\.36 dB or less\. Turn by a smaller step/),
    });
  });

  test("finds any offset of any lobe, whatever the beamwidth", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 6, noNaN: true }),
        fc.double({ min: -0.5, max: 0.5, noNaN: true }),
        fc.double({ min: 0.2, max: 0.75, noNaN: true }),
        (beamwidth, offsetPart, stepPart) => {
          const offset = offsetPart * beamwidth;
          const step = stepPart * beamwidth;
          const loss = (angle: number): number => 12 * ((angle - offset) / beamwidth) ** 2;
          const found = peakOffset(loss(step) - loss(0), loss(-step) - loss(0), step);
          expect(found).toBeCloseTo(offset, 8);
        },
      ),
      often,
    );
  });

  test("drops exchanged, sign exchanged", () => {
    const drop = fc.double({ min: 0.1, max: 7, noNaN: true });
    fc.assert(
      fc.property(drop, drop, (plus, minus) => {
        expect((peakOffset(plus, minus, 1) as number) + (peakOffset(minus, plus, 1) as number)).toBe(0);
      }),
      often,
    );
  });
});
