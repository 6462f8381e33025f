import { f, type Formula } from "../../formula/build";
import type { SheetDefinition } from "../definition";
import { blockPart, fieldsPart, worked } from "../parts";
import { peaking, peakingHelp, peaksBlock } from "../peaking";
import { align, alignment } from "./names/alignment";
import { compass, pair, sight } from "./names/sightline";
import { site, slots } from "./names/site";

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
    fieldsPart("One dish for the first two slots", [
      worked(alignment.aim_azimuth, f`IF(${pair.b}="","",INDEX(${pair.aim},1,1))`),
      worked(
        alignment.aim_compass,
        f`IF(${pair.b}="","",${alignment.aim_azimuth}-${alignment.declination}+360*(${alignment.aim_azimuth}<${alignment.declination})-360*(${alignment.aim_azimuth}-${alignment.declination}>=360))`,
      ),
      worked(alignment.aim_elevation, f`IF(${pair.b}="","",INDEX(${pair.aim},1,2))`),
      worked(
        alignment.aim_face,
        f`IF(${pair.b}="","",IF(${site.offset}="","",${alignment.aim_elevation}-${site.offset}))`,
      ),
      worked(alignment.tilt, f`IF(${pair.b}="","",${pair.tilt})`),
    ]),
    fieldsPart("Peaking", [
      worked(
        peaking.elevation,
        f`IF(${pair.a}="","",IF(${pair.b}="",INDEX(${sight.angles.elevation},2),${alignment.aim_elevation}))`,
      ),
    ]),
    peaksBlock(8, site.dish, site.downlink),
    peakingHelp,
  ],
};
