import { f, type Formula, type Named } from "../../formula/build";
import type { SheetDefinition } from "../definition";
import { blockPart, fieldsPart, worked } from "../parts";
import { peaking, peakingHelp, peaksBlock } from "../peaking";
import { aimed, align, alignment } from "./names/alignment";
import { dishes } from "./names/dishes";
import { aims, compass, sight } from "./names/sightline";
import { site, slots } from "./names/site";

/** Of the record of peaking. */
export const LINES_OF_A_DISH = 4;

/** Of a dish with one slot there is no tilt, of one without a known slot no aim. */
const found = (of: Named): Formula => f`IF(${of}="","",${of})`;
const ofEachDish = (formula: Formula): Formula => f`IF(${aims.dish}="","",${formula})`;
const ofEachSlot = (formula: Formula): Formula => f`IF(${slots.slot}="","",${formula})`;

export const alignmentSheet: SheetDefinition = {
  name: "Alignment",
  kind: "print",
  intro:
    "For the crew at the dish, on safe footing. Beam elevation and rim angle are different things: mind which one the mount's scale shows.",
  print: { orientation: "landscape" },
  parts: [
    blockPart(align, {
      heading: "Each slot",
      prepared: 4,
      mirrors: slots,
      formulas: {
        slot: ofEachSlot(f`${slots.slot}`),
        azimuth: ofEachSlot(f`${sight.angles.azimuth}`),
        compass: ofEachSlot(f`${sight.compass}`),
        elevation: ofEachSlot(f`${sight.angles.elevation}`),
        face: ofEachSlot(f`IF(${site.offset}="","",${sight.angles.elevation}-${site.offset})`),
        skew: ofEachSlot(f`${sight.skew}`),
      },
    }),
    fieldsPart("Compass", [
      worked(alignment.date, f`IF(${site.date}="","",${site.date})`),
      worked(alignment.declination, f`${compass.declination}`),
    ]),
    blockPart(aimed, {
      heading: "Each dish, for the first two of its slots",
      prepared: 4,
      mirrors: dishes,
      formulas: {
        dish: ofEachDish(f`${aims.dish}`),
        a: ofEachDish(f`${aims.a}`),
        b: ofEachDish(f`${aims.b}`),
        azimuth: found(aims.to.azimuth),
        compass: ofEachDish(
          f`IF((${aims.to.azimuth}="")+(${alignment.declination}="")>0,"",${aims.to.azimuth}-${alignment.declination}+360*(${aims.to.azimuth}<${alignment.declination})-360*(${aims.to.azimuth}-${alignment.declination}>=360))`,
        ),
        elevation: found(aims.to.elevation),
        face: ofEachDish(
          f`IF((${site.offset}="")+(${aims.to.elevation}="")>0,"",${aims.to.elevation}-${site.offset})`,
        ),
        tilt: found(aims.tilt),
      },
    }),
    {
      kind: "text",
      heading: "How to read it",
      lines: [
        "Beam elevation is above the horizon: for a mount whose scale includes the dish's offset, as most do. Rim angle is for a level laid on the rim: the beam elevation less the offset angle on Site.",
        "Tilt turns the dish about the boresight; 0 is no tilt. A mount's scale may begin elsewhere: go by its own mark for no tilt.",
        "Four lines of the record below belong to each dish, in the order of Dishes.",
      ],
    },
    fieldsPart("Peaking", [
      worked(peaking.elevation, f`IF(INDEX(${aims.to.elevation},2)="","",INDEX(${aims.to.elevation},2))`),
    ]),
    peaksBlock(4 * LINES_OF_A_DISH, site.dish, site.downlink),
    peakingHelp,
  ],
};
