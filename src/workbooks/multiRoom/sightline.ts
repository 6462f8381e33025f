import { f, type Formula, type Named } from "../../formula/build";
import type { SheetDefinition } from "../definition";
import { blockPart, fieldsPart, spilledInto, worked } from "../parts";
import { slotFormulas } from "../slotColumns";
import { compass, pair, sight, sun } from "./names/sightline";
import { site, slots } from "./names/site";

/** The sun behind one slot, in its two seasons of the year. */
const sunBehind = (slot: Named): Formula =>
  f`IF(${slot}="","",RIG.SUNCHECK(${site.latitude},${site.longitude},${slot},YEAR(${site.date}),${site.dish},,${site.height}))`;
const TWO_SEASONS = {
  spillRows: 2,
  spillColumns: 5,
  spillFormats: ["two", "text", "text", "integer"],
} as const;

export const sightlineSheet: SheetDefinition = {
  name: "Sightline",
  kind: "workings",
  intro: "Where the dish points for each slot, and whether the beam clears what stands in front of it.",
  print: { orientation: "landscape" },
  parts: [
    blockPart(sight, {
      heading: "Slots from this site",
      prepared: 4,
      mirrors: slots,
      formulas: {
        slot: f`IF(${slots.slot}="","",${slots.slot})`,
        ...slotFormulas(slots.slot, site),
        clearance: f`IF(${slots.slot}="","",${sight.angles.elevation}-${slots.obstacle})`,
        // The spreadsheet's own comparison does: a call of ours is spared. Within 1e-9 it counts as equal.
        verdict: f`IF(${sight.clearance}="","",IF(ROUND(${sight.clearance}-${site.clearance},9)<0,"low","ok"))`,
      },
    }),
    fieldsPart("Compass", [
      worked(
        compass.declination,
        f`IF(${pair.a}="","",INDEX(${sight.angles.azimuth},2)-INDEX(${sight.compass},2)-360*ROUND((INDEX(${sight.angles.azimuth},2)-INDEX(${sight.compass},2))/360,0))`,
      ),
    ]),
    fieldsPart("One dish for the first two slots", [
      worked(pair.a, f`IF(INDEX(${slots.slot},2)="","",INDEX(${slots.slot},2))`),
      worked(pair.b, f`IF(INDEX(${slots.slot},3)="","",INDEX(${slots.slot},3))`),
      worked(
        pair.aim,
        f`IF(${pair.b}="","",RIG.PAIRAIM(${site.latitude},${site.longitude},${pair.a},${pair.b},${site.height}))`,
        { spillRows: 1, spillColumns: 2 },
      ),
      worked(
        pair.tilt,
        f`IF(${pair.b}="","",RIG.PAIRTILT(${site.latitude},${site.longitude},${pair.a},${pair.b},${site.height}))`,
      ),
      worked(
        pair.separation,
        f`IF(${pair.b}="","",RIG.SEPARATION(${site.latitude},${site.longitude},${pair.a},${pair.b},${site.height}))`,
      ),
    ]),
    fieldsPart(
      "Sun check",
      [
        worked(sun.a, sunBehind(pair.a), TWO_SEASONS),
        spilledInto(sun.a_autumn),
        worked(sun.b, sunBehind(pair.b), TWO_SEASONS),
        spilledInto(sun.b_autumn),
      ],
      {
        valueHeads: ["Peak, UTC", "Minimum separation, deg", "First day", "Last day", "Seconds of outage"],
      },
    ),
    {
      kind: "text",
      heading: "Caution",
      lines: [
        "Elevation here is the beam elevation. Many mounts' scales already include the dish's offset angle: read the mount's own drawing before you set it.",
        "Look for the slots from the place where the dish will stand, on safe footing: falls, overhead lines and weather come first; local rules and licensed practice decide.",
        "At the minute of a sun check's peak the shadow of an obstacle falls on the dish exactly as the slot would see it.",
        "Never look at the sun through anything; watch the shadow.",
      ],
    },
  ],
};
