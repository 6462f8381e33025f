import { f, type Formula, type Named } from "../../formula/build";
import type { SheetDefinition } from "../definition";
import { fieldsPart, worked } from "../parts";
import { ratio, ratioNames, review } from "./names";

/** A figure that the quote does not tell makes no ratio. */
const each = (of: Named | Formula, by: Named | Formula, told: Named | Formula = of): Formula =>
  f`IF((${told}="")+(${by}=0)>0,"",${of}/${by})`;

/** Each ratio: its label is what Review offers. */
const RATIOS = [
  worked(
    ratio.per_outlet,
    each(
      f`IF(${review.price}="",${review.net},${review.price})`,
      review.outlets,
      f`${review.price}&${review.net}`,
    ),
  ),
  worked(ratio.cable_each, each(review.cable, review.outlets)),
  worked(ratio.hours_each, each(review.hours, review.outlets)),
  worked(ratio.tuners_each, each(review.tuners, review.outlets)),
  worked(ratio.tuners_head, each(review.tuners, review.heads)),
  worked(ratio.materials, each(review.materials, f`(${review.materials}+${review.labour})`)),
  worked(ratio.margin, each(f`(${review.price}-${review.cost})`, review.price, review.cost)),
  worked(ratio.extras, each(review.extras, review.net)),
  worked(ratio.cable_price, f`IF(${review.cable_price}="","",${review.cable_price})`),
];

export const ratiosSheet: SheetDefinition = {
  name: "Ratios",
  kind: "workings",
  intro: "What Review holds against your ranges.",
  print: { orientation: "portrait" },
  parts: [
    fieldsPart("Ratios", RATIOS, { together: ratio.values }),
    {
      kind: "words",
      heading: "Their names, as Review offers them",
      name: ratioNames.name,
      words: RATIOS.map(({ label }) => label),
    },
  ],
};
