import type { Field, SheetDefinition } from "../definition";

/** Each ratio: its label is what Review offers. */
const RATIOS: readonly (readonly [name: string, label: string, unit: string, of: string, by: string])[] = [
  ["per_outlet", "price per outlet", "money", "review_price", "review_outlets"],
  ["cable_each", "cable per outlet", "m or ft", "review_cable", "review_outlets"],
  ["hours_each", "crew hours per outlet", "h", "review_hours", "review_outlets"],
  ["tuners_each", "tuners per outlet", "", "review_tuners", "review_outlets"],
  ["tuners_head", "tuners per head unit", "", "review_tuners", "review_heads"],
  [
    "materials",
    "materials, share of direct cost",
    "share",
    "review_materials",
    "(review_materials+review_labour)",
  ],
  ["margin", "margin that the price has", "share", "(review_price-review_cost)", "review_price"],
  ["extras", "provisional sums and options, share of the net", "share", "review_extras", "review_net"],
];

export const ratios: SheetDefinition = {
  name: "Ratios",
  kind: "workings",
  intro: "What Review holds against your ranges.",
  print: { orientation: "portrait" },
  parts: [
    {
      kind: "fields",
      heading: "Ratios",
      name: "ratio_values",
      fields: RATIOS.map(([name, label, unit, of, by]): Field => ({
        name: `ratio_${name}`,
        label,
        unit,
        format: "two",
        formula: `IF(${by}=0,"",${of}/${by})`,
      })),
    },
    {
      kind: "words",
      heading: "Their names, as Review offers them",
      name: "ratio_names",
      words: RATIOS.map(([, label]) => label),
    },
  ],
};
