/** Slots, obstacles and sun as the site sees them: where they belong, nothing invented between them. */
import { offsetFrom, slotsInSight, type SlotsInSight } from "../../src/pictures/slotsInSight";
import { slotsPicture } from "../../src/pictures/slotsPicture";
import { recalculate } from "../../src/hosts/headless/recalculate";
import type { Book } from "../../src/workbooks/book";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { namedColumn } from "../../src/workbooks/named";
import { sheetDate } from "../../src/workbooks/sheetDate";
import angles from "../fixtures/published/look-angles-satellitejs.json";
import transits from "../fixtures/published/sun-transit-2026.json";
import { bookOf, emptySheet } from "../support/books";
import { heldTo } from "../support/heldTo";
import { computed, innerGroups, textsIn, type Row } from "../support/pictureJobs";

const at = (
  latitude: number,
  longitude: number,
  height: number,
  slots: readonly Row[],
  date = sheetDate(2026, 1, 1),
) =>
  computed({
    fields: { site_latitude: latitude, site_longitude: longitude, site_height: height, site_date: date },
    blocks: { slots },
  });
const sightAt = (...args: Parameters<typeof at>): SlotsInSight => slotsInSight(at(...args))!;

/** The belt needs no more than the site's three figures. */
function onlySite(latitude: number, longitude: number, height: number): Book {
  const fields = { site_latitude: latitude, site_longitude: longitude, site_height: height };
  const entries = Object.entries(fields);
  const cells = Object.fromEntries(entries.map(([, value], row) => [`A${row + 1}`, { value }]));
  const names = entries.map(([name], row) => ({ name, sheet: "Site", range: `A${row + 1}` }));
  return { ...bookOf({ ...emptySheet("Site"), cells }), names };
}

interface Spot {
  readonly x: number;
  readonly y: number;
}

function fromSegment(spot: Spot, from: Spot, to: Spot): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const along = ((spot.x - from.x) * dx + (spot.y - from.y) * dy) / (dx * dx + dy * dy);
  const share = Math.min(1, Math.max(0, along));
  return Math.hypot(spot.x - from.x - share * dx, spot.y - from.y - share * dy);
}

describe("held to libraries that are not ours", () => {
  const belt = heldTo({
    what: "slotsInSight belt",
    source: "satellite.js 7.1.0",
    basis: "reference library",
    unit: "deg",
  });
  test("every slot above the horizon lies on the curve, to a fraction of its line's width", () => {
    for (const { site, lat_deg, lon_deg, h_km, sat_lon_deg, wgs84, azimuth_meaningful } of angles.cases) {
      if (!azimuth_meaningful || wgs84.elevation_deg < 1) continue;
      const { belt: points, middle } = slotsInSight(onlySite(lat_deg, lon_deg, h_km * 1000))!;
      const slot = { x: offsetFrom(middle, wgs84.azimuth_deg), y: wgs84.elevation_deg };
      const onChart = points.map(({ azimuth, elevation }) => ({
        x: offsetFrom(middle, azimuth),
        y: elevation,
      }));
      const distances = onChart.slice(1).map((to, index) => fromSegment(slot, onChart[index]!, to));
      belt.row(`${site} ${sat_lon_deg}`, Math.min(...distances), 0, 0.03);
    }
  });

  const sun = heldTo({
    what: "slotsInSight sun pass",
    source: "astronomy-engine 2.1.19 and satellite.js 7.1.0",
    basis: "reference library",
    unit: "s",
  });
  test.each(transits.cases.filter(({ lat_deg }) => lat_deg !== 0))(
    "the next sun check seen from $site",
    (one) => {
      const slots = [{ slot: one.sat_lon_deg, service: "", obstacle: 5 }];
      const [spring, autumn] = one.seasons.map(({ peak_utc }) => Date.parse(peak_utc));
      const on = (date: number) => sightAt(one.lat_deg, one.lon_deg, one.h_km * 1000, slots, date).slots[0]!;
      const winter = on(sheetDate(2026, 1, 1));
      sun.row(`${one.site}, spring`, winter.sun!.peakMs / 1000, spring! / 1000, 60);
      sun.row(
        `${one.site}, autumn, asked in summer`,
        on(sheetDate(2026, 6, 1)).sun!.peakMs / 1000,
        autumn! / 1000,
        60,
      );
      // In December it is next year's spring.
      const next = new Date(on(sheetDate(2026, 12, 1)).sun!.peakMs).toISOString().slice(0, 7);
      expect(next).toBe(`2027-${one.seasons[0]!.peak_utc.slice(5, 7)}`);
      // Half an hour each way, and the middle behind the slot.
      const { track } = winter.sun!;
      expect(track).toHaveLength(31);
      const middle = track[15]!;
      expect(Math.abs(middle.azimuth - one.sat_az_deg)).toBeLessThan(0.5);
      expect(Math.abs(middle.elevation - one.sat_el_deg)).toBeLessThan(0.3);
    },
  );
});

describe("the demonstration", () => {
  const book = computed();
  const { svg, description } = slotsPicture(book);

  test("circles stand at the workbook's own azimuth and elevation, read off the axes", () => {
    const text = (words: string): { x: number; y: number } => {
      const [, x, y] = new RegExp(`<text x="([\\d.]+)" y="([\\d.]+)"[^>]*>${words}</text>`).exec(svg)!;
      return { x: Number(x), y: Number(y) };
    };
    const perAzimuth = (text("220").x - text("140").x) / 80;
    const perElevation = (text("40").y - text("10").y) / 30;
    const circles = [...svg.matchAll(/<circle cx="([\d.]+)" cy="([\d.]+)"/g)];
    const filled = (name: string) => namedColumn(book, name).filter((value) => typeof value === "number");
    const azimuths = filled("sight_angles_azimuth");
    const elevations = filled("sight_angles_elevation");
    expect(circles).toHaveLength(2);
    circles.forEach(([, cx, cy], index) => {
      expect(140 + (Number(cx) - text("140").x) / perAzimuth).toBeCloseTo(Number(azimuths[index]), 1);
      // A tick's text stands 4 pixels under its line.
      expect(10 + (Number(cy) - (text("10").y - 4)) / perElevation).toBeCloseTo(Number(elevations[index]), 1);
    });
  });

  test("the table and the description have every figure", () => {
    const texts = textsIn(svg);
    const slot = texts.indexOf("97W", texts.indexOf("slot"));
    expect(texts.slice(slot, slot + 8)).toEqual([
      "97W",
      "main programmes",
      "178.0°",
      "174.5°",
      "44.3°",
      "22.0°",
      "22.3°",
      "clear",
    ]);
    expect(texts[slot + 8]).toMatch(/^2027-03-\d\d, \d\d:\d\d to \d\d:\d\d \(\d\d:\d\d\)$/);
    expect(description).toMatch(
      /97W at true azimuth 178\.0, elevation 44\.3 degrees, obstacle up to 22\.0, 22\.3 over it, clear, next sun check peaks 2027-03-\d\d at \d\d:\d\d UTC/,
    );
    expect(description).toContain("113W");
  });

  test("a bar for each obstacle given, and nothing dashed heavily while all is clear", () => {
    expect(svg.match(/<rect[^>]*width="14"/g)).toHaveLength(2);
    expect(svg).not.toContain('stroke-width="2.5"');
    expect(description).toContain("Only the obstacles given are drawn");
  });

  test("says never to look at the sun", () => {
    expect(textsIn(svg).join(" ")).toContain("Never look at the sun");
  });
});

describe("what can be wrong", () => {
  const here = [39.5, -98.25, 420] as const;
  test("an obstacle in the way: the word beside the slot, a dashed bar, the word in the description", () => {
    const { svg, description } = slotsPicture(at(...here, [{ slot: "97W", service: "", obstacle: 43 }]));
    expect(textsIn(svg)).toContain("97W low");
    expect(innerGroups(svg).some((inside) => /<rect[^>]*stroke-dasharray/.test(inside))).toBe(true);
    expect(description).toContain("marked low");
  });

  test("a slot below the horizon is in the table, not in the chart", () => {
    const { svg, description } = slotsPicture(at(...here, [{ slot: "19E", service: "", obstacle: 5 }]));
    expect(textsIn(svg)).toContain("below the horizon");
    expect(svg).not.toContain("<circle");
    expect(description).toContain("19E, obstacle up to 5.0, marked below the horizon");
  });

  test("no obstacle given: no bar", () => {
    const { svg, description } = slotsPicture(at(...here, [{ slot: "97W", service: "", obstacle: "" }]));
    expect(svg).not.toMatch(/<rect[^>]*width="14"/);
    expect(description).toContain("no obstacle given");
  });

  test("a slot that is none, no date, no slots: drawn without what is missing", () => {
    const strange = slotsPicture(at(...here, [{ slot: "97 West", service: "<b>", obstacle: 5 }]));
    expect(textsIn(strange.svg)).toContain("unknown");
    expect(textsIn(strange.svg)).toContain("<b>");
    const undated = slotsPicture(computed({ fields: { site_date: "" } }));
    expect(textsIn(undated.svg)).toContain("none in reach");
    expect(slotsPicture(at(...here, [])).description).toMatch(/no slot is named on Site yet/);
  });

  test("no position: nothing to draw", () => {
    expect(slotsPicture(recalculate(layOut(multiRoom)))).toMatchObject({ empty: true });
  });
});

describe("elsewhere on Earth", () => {
  const increasing = ({ belt, middle }: SlotsInSight): boolean =>
    belt.every(
      (one, index) =>
        index === 0 || offsetFrom(middle, one.azimuth) > offsetFrom(middle, belt[index - 1]!.azimuth),
    );

  test("north of the equator the belt runs from east over south to west", () => {
    const inSight = sightAt(52, 5, 0, []);
    expect(inSight.middle).toBe(180);
    expect(increasing(inSight)).toBe(true);
  });
  test("south of it the belt stands in the north, east at the right", () => {
    const inSight = sightAt(-34, 25, 0, [{ slot: "19E", service: "", obstacle: 5 }]);
    expect(inSight.middle).toBe(0);
    expect(
      inSight.belt.every(
        (one, index) =>
          index === 0 || offsetFrom(0, one.azimuth) < offsetFrom(0, inSight.belt[index - 1]!.azimuth),
      ),
    ).toBe(true);
    const { svg } = slotsPicture(at(-34, 25, 0, [{ slot: "19E", service: "", obstacle: 5 }]));
    expect(textsIn(svg)).toContain("N 0");
    expect(svg).not.toContain("NaN");
  });
  test("on the equator under a slot, near the pole and beyond it", () => {
    const under = slotsPicture(at(0, -97, 2800, [{ slot: -97, service: "", obstacle: 5 }]));
    expect(under.svg).not.toContain("NaN");
    expect(slotsPicture(at(88, 0, 0, [])).description).toMatch(
      /No geostationary slot stands above the horizon/,
    );
    expect(slotsPicture(at(80, 179, 0, [{ slot: "180W", service: "", obstacle: 0 }])).svg).not.toContain(
      "NaN",
    );
  });
});
