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
    [fullName(name), ...wrapped(summary, "  ")],
    caution ? ["Caution", ...wrapped(caution, "  ")] : [],
    ["Answers", ...tasks.flatMap((task) => wrapped(task, "  - "))],
    [
      "Syntax",
      ...wrapped(`=${syntaxOf(one)}`, "  "),
      ...wrapped(parameters.length > 0 ? columnsInWords(one) : "", "  "),
    ],
    parameters.length > 0 ? ["Arguments", ...parameters.flatMap(argumentLines)] : [],
    [
      "Result",
      ...wrapped(`${result.help}${result.unit ? ` Unit: ${result.unit}.` : ""}`, "  "),
      ...(result.columns ?? []).flatMap((column) => wrapped(column, "  - ")),
    ],
    ["Equation", ...wrapped(equation, "  ")],
    ["Source", ...wrapped(source, "  ")],
    ["Accuracy", ...wrapped(accuracy, "  ")],
    [
      "Errors",
      ...(one.faultsWhen ?? []).flatMap((when) => wrapped(when, "  - ")),
      ...faultFacts(one).flatMap(({ when, code, message }) => wrapped(`${when}: ${code} ${message}`, "  - ")),
      ...(parameters.length > 0 ? COMMON_FAULTS : COMMON_FAULTS.slice(-1)).flatMap((when) =>
        wrapped(when, "  - "),
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
  return [...wrapped(`${name}: ${help}`, "  - "), ...wrapped(facts, "    ")];
}

function exampleLines(one: SheetFunction, example: SheetFunction["examples"][number]): string[] {
  const { formula, ours, theirs, tolerance, source } = executed(one, example);
  const shown = (rows: readonly (readonly string[])[]) => rows.map((row) => row.join(" | ")).join("; ");
  return [
    ...wrapped(`=${formula}`, "  - "),
    ...wrapped(`gives ${shown(ours)}`, "    "),
    ...wrapped(`the source has ${shown(theirs)} (${tolerance}): ${source}`, "    "),
  ];
}

/** The text in lines; the first begins with `lead`, the others are set in as far. */
function wrapped(text: string, lead: string): string[] {
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
