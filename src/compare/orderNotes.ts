/** Rows that stand in another order, or at another place: that changes nothing, and takes a line. */
import type { JobInputs, WorkbookDefinition } from "../workbooks/definition";
import { rowKey } from "../workbooks/rowKey";
import { renamed, renamesIn } from "./renames";

/** @returns none where the rows that both have stand in the same order */
export function orderNotes(
  definition: WorkbookDefinition,
  olderAsNamed: JobInputs,
  newer: JobInputs,
): string[] {
  const older = renamesIn(definition, olderAsNamed, newer).reduce(renamed, olderAsNamed);
  const moved = definition.sheets.flatMap(({ name, parts }) =>
    parts.flatMap((part) => {
      if (part.kind !== "block" || part.record) return [];
      const key = rowKey(part.columns.filter(({ input }) => input));
      const namesOf = ({ blocks }: JobInputs): string[] =>
        (blocks?.[part.name] ?? []).flatMap((row) =>
          key === undefined || row[key] === undefined ? [] : [String(row[key])],
        );
      const [before, after] = [namesOf(older), namesOf(newer)];
      const both = (names: readonly string[], other: ReadonlySet<string>): string =>
        JSON.stringify(names.filter((one) => other.has(one)));
      return both(before, new Set(after)) === both(after, new Set(before))
        ? []
        : [`${name}, ${part.heading}`];
    }),
  );
  return moved.length === 0
    ? []
    : [`Rows moved, which costs nothing by itself: ${moved.join("; ")}. They are matched by their names.`];
}
