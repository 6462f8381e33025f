/** The help of one function as plain text, for the command line. */
import type { SheetFunction } from "../functions/core/declare";
import {
  argumentFacts,
  columnsInWords,
  COMMON_FAULTS,
  executed,
  faultFacts,
  fullName,
  syntaxOf,
} from "./facts";

const WIDTH = 80;

/** @returns lines of at most 80 characters where words allow */
export function helpText(one: SheetFunction): string {
  const { name, summary, tasks, parameters, result, equation, source, accuracy, seeAlso, caution } = one;
  const parts = [
    [fullName(name), ...folded(summary, "  ")],
    caution ? ["Caution", ...folded(caution, "  ")] : [],
    ["Answers", ...tasks.flatMap((task) => folded(task, "  - "))],
    [
      "Syntax",
      ...folded(`=${syntaxOf(one)}`, "  "),
      ...folded(parameters.length > 0 ? columnsInWords(one) : "", "  "),
    ],
    parameters.length > 0 ? ["Arguments", ...parameters.flatMap(argumentLines)] : [],
    [
      "Result",
      ...folded(`${result.help}${result.unit ? ` Unit: ${result.unit}.` : ""}`, "  "),
      ...(result.columns ?? []).flatMap((column) => folded(column, "  - ")),
    ],
    ["Equation", ...folded(equation, "  ")],
    ["Source", ...folded(source, "  ")],
    ["Accuracy", ...folded(accuracy, "  ")],
    [
      "Errors",
      ...(one.faultsWhen ?? []).flatMap((when) => folded(when, "  - ")),
      ...faultFacts(one).flatMap(({ when, code, says }) => folded(`${when}: ${code} ${says}`, "  - ")),
      ...(parameters.length > 0 ? COMMON_FAULTS : COMMON_FAULTS.slice(-1)).flatMap((when) =>
        folded(when, "  - "),
      ),
    ],
    ["Examples", ...one.examples.flatMap((example) => exampleLines(one, example))],
    seeAlso.length > 0 ? ["See also", `  ${seeAlso.map(fullName).join(", ")}`] : [],
  ];
  return parts
    .filter((part) => part.length > 0)
    .map((part) => part.join("\n"))
    .join("\n\n");
}

function argumentLines(parameter: SheetFunction["parameters"][number]): string[] {
  const { name, help, takes, unit, allowed, whenLeftOut } = argumentFacts(parameter);
  const omitted = parameter.defaultValue === undefined ? whenLeftOut : `${whenLeftOut} when left out`;
  const facts = [takes, unit, allowed, omitted].filter((fact) => fact !== "").join("; ");
  return [...folded(`${name}: ${help}`, "  - "), ...folded(facts, "    ")];
}

function exampleLines(one: SheetFunction, example: SheetFunction["examples"][number]): string[] {
  const { formula, ours, theirs, tolerance, source } = executed(one, example);
  const shown = (rows: readonly (readonly string[])[]) => rows.map((row) => row.join(" | ")).join("; ");
  return [
    ...folded(`=${formula}`, "  - "),
    ...folded(`gives ${shown(ours)}`, "    "),
    ...folded(`the source has ${shown(theirs)} (${tolerance}): ${source}`, "    "),
  ];
}

/** The text in lines; the first begins with `lead`, the others are set in as far. */
function folded(text: string, lead: string): string[] {
  const lines: string[] = [];
  let line = lead;
  for (const word of text.split(/\s+/).filter(Boolean)) {
    if (line.trim() !== "" && line !== lead && line.length + 1 + word.length > WIDTH) {
      lines.push(line);
      line = " ".repeat(lead.length);
    }
    line += line.length === lead.length ? word : ` ${word}`;
  }
  return line.length > lead.length ? [...lines, line] : lines;
}
