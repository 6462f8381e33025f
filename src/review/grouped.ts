/** The same said of many cells of one column, once: at the first, with how many more there are. */
import type { Finding, Undoing } from "./finding";

export function grouped(findings: readonly Finding[]): Finding[] {
  const groups = new Map<string, Finding[]>();
  for (const [index, one] of findings.entries()) {
    const { rule, place, message, expected, weight } = one;
    const key = place
      ? JSON.stringify([rule, weight, place.sheet, place.cell.replace(/\d+$/, ""), message, expected])
      : String(index);
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups.values()].map(([first, ...more]) => {
    if (more.length === 0) return first!;
    const cells = more.length === 1 ? `and in ${more[0]!.place!.cell}` : `and in ${more.length} more cells`;
    return {
      ...first!,
      message: first!.message.replace(/\.?$/, `, here ${cells} of this column.`),
      ...undoingAll([first!, ...more]),
    };
  });
}

/** Only where it is known of each how it is undone. */
function undoingAll(findings: readonly Finding[]): Pick<Finding, "undoing"> {
  const all = findings.map(undoingOf);
  return all.every((one) => one !== undefined) ? { undoing: all.flat() } : {};
}

/** @returns the cells to change so that a finding is undone; undefined where nobody knows what was meant */
export function undoingOf({ undoing, meant, place }: Finding): readonly Undoing[] | undefined {
  return undoing ?? (meant !== undefined && place ? [{ place, value: meant }] : undefined);
}
