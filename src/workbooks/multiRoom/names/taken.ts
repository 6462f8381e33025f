import { anyText } from "../../asks";
import { block, entry } from "../../names";

/** What the job took from the firm's standards, row by row, as it was then: by it a later change in the job is told from one in the standards. */
export const taken = block("taken", {
  list: entry("List", { width: 20 }, anyText("The list of the standards, by its name in the workbook")),
  line: entry("Row", { width: 34 }, anyText("The row of that list, by its own name")),
  values: entry("As taken", { width: 80 }, anyText("Its values as they were taken")),
});
