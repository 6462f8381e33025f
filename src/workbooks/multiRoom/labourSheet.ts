import { f } from "../../formula/build";
import type { SheetDefinition } from "../definition";
import { blockPart, fieldsPart, worked } from "../parts";
import { crew, labour, work, workTogether } from "./names/labour";
import { count } from "./names/materials";

export const labourSheet: SheetDefinition = {
  name: "Labour",
  kind: "workings",
  intro: "Hours by kind of work, from the labour units on Parts and what was counted.",
  print: { orientation: "portrait" },
  parts: [
    blockPart(work, {
      heading: "Work",
      prepared: 10,
      mirrors: labour,
      formulas: {
        name: f`IF(${labour.name}="","",${labour.name})`,
        quantity: f`IF(${labour.name}="","",${labour.per_outlet}*${count.outlets}+${labour.per_branch}*${count.branches}+${labour.per_head}*${count.heads}+${labour.fixed})`,
        // Three-point mean (PERT, from memory): (low + 4 likely + high) / 6. One end alone is no range: a blank is not 0.
        minutes: f`IF(${labour.name}="","",IF((${labour.low}="")+(${labour.high}="")>0,${labour.minutes},(${labour.low}+4*${labour.minutes}+${labour.high})/6))`,
        hours: f`IF(${labour.name}="","",${work.quantity}*${work.minutes}*${labour.difficulty}/60)`,
        sum: f`IF(${labour.name}="","",${work.hours}*${crew.rate})`,
        variance: f`IF(${labour.name}="","",IF((${labour.low}="")+(${labour.high}="")>0,0,(${work.quantity}*(${labour.high}-${labour.low})/6*${labour.difficulty}/60*${crew.rate})^2))`,
      },
    }),
    fieldsPart("Together", [worked(workTogether.total_hours, f`SUM(${work.hours})`)]),
  ],
};
