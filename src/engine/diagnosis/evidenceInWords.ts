/** What the readings show at one place, beside all others of its head unit, in one sentence. */
import type { Reading } from "./evidence";

const mean = (values: readonly number[]): number =>
  values.reduce((total, value) => total + value, 0) / values.length;

const off = (readings: readonly Reading[], end: 0 | -1): number[] =>
  readings.flatMap(({ measured, predicted }) =>
    measured.length === 0 ? [] : [measured.at(end)! - predicted.at(end)!],
  );

const signed = (value: number): string => `${value < 0 ? "−" : "+"}${Math.abs(value).toFixed(1)} dB`;

function levels(readings: readonly Reading[]): string {
  const low = off(readings, 0);
  if (low.length === 0) return "no level read";
  return `${signed(mean(low))} at the low end and ${signed(mean(off(readings, -1)))} at the high end`;
}

/**
 * @param readings of one head unit
 * @param at indexes of those that the cause touches
 * @param head its name
 */
export function evidenceInWords(readings: readonly Reading[], at: readonly number[], head: string): string {
  const inside = new Set(at);
  const here = at.map((index) => readings[index]!);
  const others = readings.filter((_, index) => !inside.has(index));
  const shown = here.length > 3 ? `${here.length} outlets` : here.map(({ outlet }) => outlet).join(", ");
  const volts = here.filter((one) => one.volts !== null && one.voltsPredicted !== null);
  const supply =
    volts.length === 0
      ? ""
      : `, ${mean(volts.map((one) => one.volts!)).toFixed(1)} V where ${mean(volts.map((one) => one.voltsPredicted!)).toFixed(1)} V was predicted`;
  // A swap's two halves cancel in a mean, so each is named.
  const own =
    here.length === 2
      ? here.map((one) => `${one.outlet} reads ${levels([one])}`).join("; ")
      : `${shown}: ${levels(here)}`;
  const rest = others.length === 0 ? "" : `; other outlets of ${head}: ${levels(others)}`;
  return `Measured less predicted, on average: ${own}${supply}${rest}.`;
}
