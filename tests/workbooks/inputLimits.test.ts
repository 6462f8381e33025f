/** What a sheet lets a person type, the functions that it is handed to take: FACETILT once stopped at 45° where Site took 60. */
import { allFunctions } from "../../src/functions/all";
import { callIn } from "../../src/formula/callIn";
import { templates } from "../../src/workbooks/templates";
import type { InputRule, Part } from "../../src/workbooks/definition";

/** The rules of a template's inputs by their names. */
function rulesOf(parts: readonly Part[]): Map<string, InputRule["rule"]> {
  const rules = new Map<string, InputRule["rule"]>();
  for (const part of parts) {
    if (part.kind === "fields") {
      for (const { name, input } of part.fields) if (input) rules.set(name, input.rule);
    } else if (part.kind === "block") {
      for (const { key, input } of part.columns) if (input) rules.set(`${part.name}_${key}`, input.rule);
    }
  }
  return rules;
}

describe.each(templates.map((template) => [template.id, template] as const))("%s", (_, template) => {
  const book = template.empty();
  const rules = rulesOf(template.definition.sheets.flatMap(({ parts }) => parts));

  test("every limit of an input lies within that of the argument which it is handed to", () => {
    const beyond: string[] = [];
    let held = 0;
    for (const { cells } of book.sheets) {
      for (const { formula } of Object.values(cells)) {
        const call = formula === undefined ? undefined : callIn(formula);
        if (!call) continue;
        const { name, parameters } = allFunctions.find((one) => one.name === call.name)!;
        call.args.forEach((written, index) => {
          const rule = rules.get(written);
          const limits = parameters[index]?.limits;
          if (rule?.kind !== "number" || !limits) return;
          held++;
          const short = (has: number | undefined, takes: number | undefined, sign: 1 | -1): boolean =>
            takes !== undefined && (has === undefined || sign * (has - takes) > 0);
          if (short(rule.min, limits.min, -1) || short(rule.max, limits.max, 1))
            beyond.push(
              `${written} ${rule.min ?? ""} to ${rule.max ?? ""}: ${name} takes ${parameters[index]!.name} ${limits.min ?? ""} to ${limits.max ?? ""}`,
            );
        });
      }
    }
    expect([...new Set(beyond)]).toEqual([]);
    if (template.id === "multi-room") expect(held).toBeGreaterThan(20);
  });
});
