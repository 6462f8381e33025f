/** What stands under a finding, in a few lines: the weightiest in full, the rest as a count. */
import { WEIGHTS, type Finding } from "./finding";

const MOST = 3;

export function leadsToInWords(findings: readonly Finding[]): string[] {
  const sorted = [...findings].sort((a, b) => WEIGHTS.indexOf(a.weight) - WEIGHTS.indexOf(b.weight));
  const told = sorted
    .slice(0, MOST)
    .map(({ message, place }) => (place ? `${place.sheet}!${place.cell}: ${message}` : message));
  const more = findings.length - told.length;
  return [
    ...told,
    ...(more > 0 ? [`${more} more ${more === 1 ? "line" : "lines"} of errors, checks and limits.`] : []),
  ];
}
