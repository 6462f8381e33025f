/** Every input of a template, by the name of its cell or column: what may be typed there. */
import type { WorkbookDefinition } from "../definition";
import { EITHER_LOAD, typedKind, type TypedKind } from "./typedKind";

export interface NamedInput {
  readonly kind: TypedKind;
  /** Names the column that says, row by row, in which unit this one is. */
  readonly unitIn?: string;
}

const known = new WeakMap<WorkbookDefinition, ReadonlyMap<string, NamedInput>>();

export function inputsOf(definition: WorkbookDefinition): ReadonlyMap<string, NamedInput> {
  const before = known.get(definition);
  if (before) return before;
  const inputs = new Map<string, NamedInput>();
  for (const part of definition.sheets.flatMap(({ parts }) => parts)) {
    if (part.kind === "fields") {
      for (const field of part.fields) {
        const kind = typedKind(field);
        if (kind) inputs.set(field.name, { kind });
      }
    }
    if (part.kind === "exercise") {
      const { name, input, unit, format } = part.answer;
      inputs.set(name, { kind: typedKind({ input, unit, format })! });
    }
    if (part.kind !== "block") continue;
    const units = part.columns.find(
      ({ input }) => input?.rule.kind === "choice" && isLoad(input.rule.choices),
    );
    for (const column of part.columns) {
      const kind = typedKind(column);
      const either = column.unit === EITHER_LOAD && units !== undefined;
      if (kind)
        inputs.set(`${part.name}_${column.key}`, {
          kind,
          ...(either && { unitIn: `${part.name}_${units.key}` }),
        });
    }
  }
  known.set(definition, inputs);
  return inputs;
}

const isLoad = (choices: readonly string[]): boolean => choices.join() === "A,W";

/**
 * A kind with what only the workbook knows: the words of a list that stands elsewhere, the unit that the row names.
 * @param wordsOf the texts of a named column
 * @param load what stands in the row's own column of units
 */
export function settledKind(
  kind: TypedKind,
  wordsOf: (name: string) => readonly string[],
  load?: unknown,
): TypedKind {
  if (kind.kind === "named") return { kind: "choice", choices: wordsOf(kind.name), open: true };
  if (kind.kind !== "number" || kind.unit !== EITHER_LOAD) return kind;
  if (load === "A") return { ...kind, quantity: "current", unit: "A" };
  return load === "W" ? { ...kind, quantity: "power", unit: "W" } : kind;
}
