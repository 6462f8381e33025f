/** The one-line diagram in words: how much there is, and each part that fails with its figure. */
import { spanText } from "./itemLines";
import type { Item } from "./items";

/** A description is listened to: beyond these the rest is counted. */
const MOST_NAMED = 8;

const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

export function describeDistribution(items: readonly Item[]): string {
  const [dishes, heads, devices, outlets] = (["dish", "head", "device", "outlet"] as const).map((wanted) =>
    items.filter(({ kind }) => kind === wanted),
  ) as [Item[], Item[], Item[], Item[]];
  const all = [...dishes, ...heads, ...devices, ...outlets].filter(({ troubles }) => troubles.length > 0);
  // What is known to fail comes before what only could not be computed, which may be its consequence.
  const failing = [...all.filter((one) => !isUnknown(one)), ...all.filter(isUnknown)];
  const named = failing.slice(0, MOST_NAMED).map(inWords);
  const more = failing.length - named.length;
  const verdict =
    failing.length === 0
      ? "Nothing fails."
      : `Failing, each marked by a word and a heavy dashed line: ${named.join("; ")}${more > 0 ? `; and ${more} more` : ""}.`;
  return `${[
    ...(dishes.length > 0 ? [counted(dishes.length, "dish", "dishes")] : []),
    counted(heads.length, "head unit", "head units"),
    counted(devices.length, "device", "devices"),
    counted(outlets.length, "outlet", "outlets"),
  ].join(", ")}, from left to right, with predicted levels and volts. ${verdict}`;
}

const isUnknown = ({ troubles }: Item): boolean => troubles.every((word) => word.endsWith("unknown"));

function inWords(item: Item): string {
  const words = item.troubles.join(", ");
  switch (item.kind) {
    case "dish":
      return `dish ${item.name} ${words}`;
    case "head":
      return `head unit ${item.name} ${words} (${item.volts}; ${item.tuners})`;
    case "device":
      return `${item.shape ?? "device"} ${item.name} ${words}`;
    default:
      return `outlet ${item.name} ${words}, ${item.levels ? `${spanText(item.levels).replace("–", " to ")} dBµV` : "level unknown"}`;
  }
}
