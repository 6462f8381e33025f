import { call, f, type Formula, type Named } from "../../formula/build";
import type { SheetDefinition } from "../definition";
import { askedBeside, blockPart, bound, fieldsPart, gridPart } from "../parts";
import { writingField } from "../typed/writingField";
import { CORNER_HEADS } from "./corners";
import { commissioningLimits, corner, site, slots } from "./names/site";

/** The one end of two figures whichever way they stand: swapped, they never look better. Text where one is blank. */
const between = (end: "MIN" | "MAX", one: Named, other: Named): Formula =>
  f`IF((${one}="")+(${other}="")>0,"not given",${call(end, one, other)})`;

export const siteSheet: SheetDefinition = {
  name: "Site",
  kind: "input",
  intro: "The job, the place, the orbital slots, and the figures that every other sheet goes by.",
  print: { orientation: "portrait" },
  parts: [
    fieldsPart(
      "Job",
      [
        site.job,
        site.customer,
        site.place,
        site.prepared_by,
        site.quote,
        site.revision,
        site.date,
        site.until,
        writingField,
      ],
      { valueWidth: 38 },
    ),
    fieldsPart("Place", [site.latitude, site.longitude, site.height, site.clearance]),
    fieldsPart("Dish", [site.dish, site.offset, site.downlink]),
    blockPart(slots, {
      heading: "Orbital slots wanted",
      prepared: 4,
      formulas: {},
    }),
    fieldsPart("Cables and levels", [
      site.unit,
      site.slack,
      site.waste,
      site.run_tolerance,
      askedBeside(site.low, { atMost: bound(site.high, "the highest frequency") }),
      askedBeside(site.high, { atLeast: bound(site.low, "the lowest frequency") }),
      askedBeside(site.cold, { atMost: bound(site.hot, "the hottest cable") }),
      askedBeside(site.hot, { atLeast: bound(site.cold, "the coldest cable") }),
      askedBeside(site.level_low, { atMost: bound(site.level_high, "the maximum level") }),
      askedBeside(site.level_high, { atLeast: bound(site.level_low, "the minimum level") }),
      askedBeside(site.level_design, {
        atLeast: bound(site.level_low, "the minimum level", { orEqual: true }),
      }),
    ]),
    gridPart("The four corners of every prediction", CORNER_HEADS, [
      [
        corner.frequency,
        (["MIN", "MIN", "MAX", "MAX"] as const).map((end) => between(end, site.low, site.high)),
      ],
      [
        corner.temperature,
        (["MIN", "MAX", "MIN", "MAX"] as const).map((end) => between(end, site.cold, site.hot)),
      ],
    ]),
    fieldsPart("Measured against predicted", [
      commissioningLimits.tolerance,
      commissioningLimits.volts_tolerance,
      commissioningLimits.meter,
    ]),
    fieldsPart("Money", [
      site.currency,
      site.contingency,
      site.overhead,
      site.margin,
      site.tax,
      site.tax_on,
      site.rounding,
    ]),
  ],
};
