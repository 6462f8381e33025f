import type { SheetDefinition } from "../definition";

export const labourSheet: SheetDefinition = {
  name: "Labour",
  kind: "workings",
  intro: "Hours by kind of work, from the labour units on Parts and what was counted.",
  print: { orientation: "portrait" },
  parts: [
    {
      kind: "block",
      name: "work",
      heading: "Work",
      prepared: 10,
      mirrors: "labour",
      columns: [
        { key: "name", head: "Work", width: 34, formula: 'IF(labour_name="","",labour_name)' },
        {
          key: "quantity",
          head: "How often",
          width: 20,
          format: "general",
          formula:
            'IF(labour_name="","",labour_per_outlet*count_outlets+labour_per_branch*count_branches+labour_per_head*count_heads+labour_fixed)',
        },
        {
          key: "minutes",
          head: "Expected minutes",
          unit: "min",
          width: 12,
          format: "one",
          // Three-point mean (PERT, from memory): (low + 4 likely + high) / 6. One end alone is no range: a blank is not 0.
          formula:
            'IF(labour_name="","",IF((labour_low="")+(labour_high="")>0,labour_minutes,(labour_low+4*labour_minutes+labour_high)/6))',
        },
        {
          key: "hours",
          head: "Hours",
          unit: "h",
          width: 12,
          format: "two",
          formula: 'IF(labour_name="","",work_quantity*work_minutes*labour_difficulty/60)',
        },
        {
          key: "sum",
          head: "Sum",
          unit: "money",
          width: 14,
          format: "money",
          formula: 'IF(labour_name="","",work_hours*labour_rate)',
        },
        {
          key: "variance",
          head: "Variance",
          unit: "money²",
          width: 12,
          format: "two",
          formula:
            'IF(labour_name="","",IF((labour_low="")+(labour_high="")>0,0,(work_quantity*(labour_high-labour_low)/6*labour_difficulty/60*labour_rate)^2))',
        },
      ],
    },
    {
      kind: "fields",
      heading: "Together",
      fields: [
        {
          name: "work_total_hours",
          label: "Crew hours",
          unit: "h",
          format: "two",
          formula: "SUM(work_hours)",
        },
      ],
    },
  ],
};
