import { f, type Formula, type Named } from "../../formula/build";
import type { SheetDefinition } from "../definition";
import { fieldsPart, worked } from "../parts";
import { ratio, ratioNames, review } from "./names";

const each = (of: Named | Formula, by: Named | Formula): Formula => f`IF(${by}=0,"",${of}/${by})`;

/** Each ratio: its label is what Review offers. */
const RATIOS = [
  worked(ratio.per_outlet, each(review.price, review.outlets)),
  worked(ratio.cable_each, each(review.cable, review.outlets)),
  worked(ratio.hours_each, each(review.hours, review.outlets)),
  worked(ratio.tuners_each, each(review.tuners, review.outlets)),
  worked(ratio.tuners_head, each(review.tuners, review.heads)),
  worked(ratio.materials, each(review.materials, f`(${review.materials}+${review.labour})`)),
  worked(ratio.margin, each(f`(${review.price}-${review.cost})`, review.price)),
  worked(ratio.extras, each(review.extras, review.net)),
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
