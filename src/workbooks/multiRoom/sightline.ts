import { f, text, type Formula, type Named } from "../../formula/build";
import type { SheetDefinition } from "../definition";
import { blockPart, fieldsPart, spilledInto, worked } from "../parts";
import { slotFormulas } from "../slotColumns";
import { keysOf, sumOf } from "./nameKeys";
import { dishes } from "./names/dishes";
import { aims, compass, pair, sight, sun } from "./names/sightline";
import { site, slots } from "./names/site";
import { lesser } from "./rowFormulas";

/** The sun behind one slot, in its two seasons of the year. */
const sunBehind = (slot: Named): Formula =>
  f`IF(${slot}="","",RIG.SUNCHECK(${site.latitude},${site.longitude},${slot},YEAR(${site.date}),${site.dish},,${site.height}))`;

/** The sum over the dishes that have a slot among their first two. */
const overDishes = (sum: Named): Formula =>
  f`${sumOf(sum, aims.a_key, slots.slot)}+${sumOf(sum, aims.b_key, slots.slot)}`;
/** A figure of the slot that a dish has, from a column beside the slots. */
const ofSlot = (slot: Named, figure: Named): Formula => f`INDEX(${figure},MATCH(${slot},${slots.slot},0))`;
/** How far the beam to a slot passes over what stands before this dish. */
const over = (slot: Named): Formula =>
  f`${ofSlot(slot, sight.angles.elevation)}-IF(${dishes.obstacle}="",${ofSlot(slot, slots.obstacle)},${dishes.obstacle})`;
const ofDish = (formula: Formula): Formula => f`IF(${aims.dish}="","",${formula})`;
const ofPair = (formula: Formula): Formula => f`IF(${aims.b}="","",${formula})`;

/** Up to the first blank. */
const firstWord = (words: Formula): Formula => f`IFERROR(LEFT(${words},FIND(" ",${words})-1),${words})`;
const slotsOfDish = f`TRIM(SUBSTITUTE(${dishes.slots},","," "))`;
/** The one dish where Dishes has no row: in the first row of data, below the thin one. */
const THE_DISH = "dish";
const dishName = f`IF(${dishes.name}="",IF((SUMPRODUCT(--(${dishes.name}<>""))=0)*(ROW(${dishes.name})=MIN(ROW(${dishes.name}))+1),IF(${pair.a}="","",${text(THE_DISH)}),""),${dishes.name})`;

const TWO_SEASONS = {
  spillRows: 2,
  spillColumns: 5,
  spillFormats: ["two", "text", "text", "integer"],
} as const;

export const sightlineSheet: SheetDefinition = {
  name: "Sightline",
  kind: "workings",
  intro: "Where each dish points, and whether the beam clears what stands in front of it.",
  print: { orientation: "landscape" },
  parts: [
    blockPart(sight, {
      heading: "Slots from this site",
      prepared: 4,
      mirrors: slots,
      formulas: {
        slot: f`IF(${slots.slot}="","",${slots.slot})`,
        ...slotFormulas(slots.slot, site),
        // The mean where several dishes that have the slot give one of their own: each is judged by its own further down.
        obstacle: f`IF(${slots.slot}="","",IF(${sight.own}=0,${slots.obstacle},(${overDishes(dishes.obstacle)})/${sight.own}))`,
        clearance: f`IF(${slots.slot}="","",${sight.angles.elevation}-${sight.obstacle})`,
        // The spreadsheet's own comparison does: a call of ours is spared. Within 1e-9 it counts as equal.
        verdict: f`IF(${sight.clearance}="","",IF(ROUND(${sight.clearance}-${site.clearance},9)<0,"low","ok"))`,
        own: f`IF(${slots.slot}="","",${overDishes(aims.given)})`,
      },
    }),
    fieldsPart("Compass", [
      worked(
        compass.declination,
        f`IF(${pair.a}="","",INDEX(${sight.angles.azimuth},2)-INDEX(${sight.compass},2)-360*ROUND((INDEX(${sight.angles.azimuth},2)-INDEX(${sight.compass},2))/360,0))`,
      ),
    ]),
    blockPart(aims, {
      heading: "Each dish, for the first two of its slots",
      prepared: 4,
      mirrors: dishes,
      formulas: {
        dish: dishName,
        a: ofDish(f`IF(${dishes.slots}="",${pair.a},${firstWord(slotsOfDish)})`),
        b: ofDish(f`IF(${dishes.slots}="",${pair.b},${firstWord(f`${aims.further}`)})`),
        // Side by side with the middle of two stands the direction of one alone.
        to: ofDish(
          f`IF(${aims.b}="",IFERROR(INDEX(${sight.angles},MATCH(${aims.a},${slots.slot},0),{1,2}),""),RIG.PAIRAIM(${site.latitude},${site.longitude},${aims.a},${aims.b},${site.height}))`,
        ),
        tilt: ofPair(f`RIG.PAIRTILT(${site.latitude},${site.longitude},${aims.a},${aims.b},${site.height})`),
        separation: ofPair(
          f`RIG.SEPARATION(${site.latitude},${site.longitude},${aims.a},${aims.b},${site.height})`,
        ),
        clearance: f`IF(${aims.a}="","",IFERROR(IF(${aims.b}="",${over(aims.a)},${lesser(over(aims.a), over(aims.b))}),""))`,
        verdict: f`IF(${aims.clearance}="","",IF(ROUND(${aims.clearance}-${site.clearance},9)<0,"low","ok"))`,
        further: ofDish(f`IFERROR(MID(${slotsOfDish},FIND(" ",${slotsOfDish})+1,200),"")`),
        given: ofDish(f`IF(${dishes.obstacle}="",0,1)`),
        a_key: keysOf(aims.a),
        b_key: keysOf(aims.b),
      },
    }),
    fieldsPart("Slots of the sun check", [
      worked(pair.a, f`IF(INDEX(${slots.slot},2)="","",INDEX(${slots.slot},2))`),
      worked(pair.b, f`IF(INDEX(${slots.slot},3)="","",INDEX(${slots.slot},3))`),
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
