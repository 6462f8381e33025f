import { call, f, type Formula, type Named } from "../../formula/build";
import type { SheetDefinition } from "../definition";
import { askedBeside, blockPart, bound, fieldsPart, gridPart, worked } from "../parts";
import { writingField } from "../typed/writingField";
import { CORNER_HEADS } from "./corners";
import { keysOf } from "./nameKeys";
import { commissioningLimits, corner, rests, settings, site, slots, taxClass, taxes } from "./names/site";

/** The one end of two figures whichever way they stand: swapped, they never look better. Text where one is blank. */
const between = (end: "MIN" | "MAX", one: Named, other: Named): Formula =>
  f`IF((${one}="")+(${other}="")>0,"not given",${call(end, one, other)})`;

/** Between channels at one outlet, in dB: EN 60728-1, from memory. */
export const GREATEST_SLOPE = 15;
/** dB for pointing, ageing and surface: common practice, no source. */
const USUAL_DISH_LOSS = 0.8;
/** dB over an ideal receiver; 1 to 3 is common practice, no source. */
const USUAL_NOISE_MARGIN = 2;

/** In the order in which the functions take them. */
const SETTINGS_AS_GIVEN = [
  [settings.latitude, site.latitude],
  [settings.longitude, site.longitude],
  [settings.height, site.height],
  [settings.dish, site.dish],
  [settings.unit, site.unit],
  [settings.low, site.low],
  [settings.high, site.high],
  [settings.cold, site.cold],
  [settings.hot, site.hot],
  [settings.level_low, site.level_low],
  [settings.level_high, site.level_high],
  [settings.run_tolerance, site.run_tolerance],
  [settings.usual_cable, site.usual_cable],
  [settings.usual_plate, site.usual_plate],
  [settings.usual_route, site.usual_route],
  [settings.closes, site.closes],
  [settings.availability, site.availability],
  [settings.rain_rate, site.rain_rate],
  [settings.rain_height, site.rain_height],
] as const;

/** What follows is asked of a job and of the firm's standards alike. */
export const usualParts = fieldsPart("Usual parts, of every row that names none", [
  site.usual_cable,
  site.usual_plate,
  site.usual_route,
  site.closes,
]);

export const cablesAndLevels = fieldsPart("Cables and levels", [
  site.unit,
  site.slack,
  site.waste,
  site.run_tolerance,
  site.cut_at,
  askedBeside(site.low, { atMost: bound(site.high, "the highest frequency") }),
  askedBeside(site.high, { atLeast: bound(site.low, "the lowest frequency") }),
  askedBeside(site.cold, { atMost: bound(site.hot, "the hottest cable") }),
  askedBeside(site.hot, { atLeast: bound(site.cold, "the coldest cable") }),
  askedBeside(site.level_low, { atMost: bound(site.level_high, "the maximum level") }),
  askedBeside(site.level_high, { atLeast: bound(site.level_low, "the minimum level") }),
  askedBeside(site.level_design, {
    atLeast: bound(site.level_low, "the minimum level", { orEqual: true }),
  }),
]);

export const spares = fieldsPart("Spares", [
  site.spare_devices,
  site.spare_heads,
  site.spare_plates,
  site.spare_fittings,
  site.spare_runs,
  site.spare_runs_least,
]);

export const measuring = fieldsPart("Measured against predicted", [
  commissioningLimits.tolerance,
  commissioningLimits.volts_tolerance,
  commissioningLimits.meter,
]);

export const MONEY = [
  site.currency,
  site.decimals,
  site.contingency,
  site.overhead,
  site.margin,
  site.tax,
  site.tax_on,
  site.rounding,
] as const;

/** Of a job and of the standards. */
export const taxParts = [
  blockPart(taxes, {
    heading: "Tax classes, of what is taxed at another rate",
    prepared: 3,
    formulas: { key: keysOf(taxes.name) },
  }),
  fieldsPart("Tax class of each line of the quote, where it is not the usual tax", [
    taxClass.reception,
    taxClass.cable,
    taxClass.fittings,
    taxClass.labour,
    taxClass.sites,
  ]),
];

export const siteSheet: SheetDefinition = {
  name: "Site",
  kind: "input",
  intro: "The job, the place, the orbital slots, and the figures that every other sheet goes by.",
  print: { orientation: "landscape" },
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
    fieldsPart("Carrier to noise", [
      site.availability,
      site.rain_rate,
      site.rain_height,
      site.dish_loss,
      site.noise_margin,
    ]),
    usualParts,
    cablesAndLevels,
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
    spares,
    blockPart(rests, { heading: "Reels in stock", prepared: 4, formulas: { key: keysOf(rests.cable) } }),
    measuring,
    fieldsPart("Money", MONEY),
    ...taxParts,
    fieldsPart(
      "Figures that the distribution goes by, with what a blank means",
      [
        ...SETTINGS_AS_GIVEN.map(([setting, given]) => worked(setting, f`IF(${given}="","",${given})`)),
        worked(settings.dish_loss, f`IF(${site.dish_loss}="",${USUAL_DISH_LOSS},${site.dish_loss})`),
        worked(
          settings.noise_margin,
          f`IF(${site.noise_margin}="",${USUAL_NOISE_MARGIN},${site.noise_margin})`,
        ),
        worked(settings.slope, f`${GREATEST_SLOPE}`),
      ],
      { together: settings.values },
    ),
    fieldsPart("Firm's standards that the job drew on", [
      site.standards,
      site.standards_edition,
      site.standards_date,
    ]),
  ],
};
