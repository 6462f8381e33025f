/** What the readings show at one place, beside all others of its head unit, in one sentence. */
import type { Megahertz } from "../quantity";
import type { Reading } from "./evidence";

const mean = (values: readonly number[]): number =>
  values.reduce((total, value) => total + value, 0) / values.length;

const signed = (value: number): string => `${value < 0 ? "−" : "+"}${Math.abs(value).toFixed(1)} dB`;

/** The frequencies of the job's readings; equal where only one was measured. */
export interface Band {
  readonly low: Megahertz;
  readonly high: Megahertz;
}

const endOf = (frequency: Megahertz, { low, high }: Band): string =>
  low === high || (frequency !== low && frequency !== high)
    ? `${frequency} MHz`
    : `the ${frequency === low ? "lowest" : "highest"} frequency`;

/** Only of what was read. */
function levels(readings: readonly Reading[], band: Band): string {
  const frequencies = [...new Set(readings.flatMap((one) => one.frequencies))].sort((a, b) => a - b);
  const parts = frequencies.map((frequency) => {
    const here = readings.flatMap((one) => {
      const at = one.frequencies.indexOf(frequency);
      return at < 0
        ? []
        : [{ off: one.measured[at]! - one.predicted[at]!, silent: one.silent?.[at] ?? false }];
    });
    const heard = here.filter(({ silent }) => !silent);
    const end = endOf(frequency, band);
    if (heard.length === 0) return `no signal at ${end}`;
    const lost = here.length - heard.length;
    return `${signed(mean(heard.map(({ off }) => off)))} at ${end}${lost > 0 ? ` (${lost} without signal)` : ""}`;
  });
  return parts.length === 0 ? "no level read" : parts.join(" and ");
}

/**
 * @param readings of one head unit
 * @param at indexes of those that the cause touches
 * @param head its name
 * @param band of the job's readings
 */
export function evidenceInWords(
  readings: readonly Reading[],
  at: readonly number[],
  head: string,
  band: Band,
): string {
  const inside = new Set(at);
  // What was read at the head unit itself has volts only, and is told by itself.
  const isHead = ({ outlet }: Reading): boolean => outlet === head;
  const here = at.map((index) => readings[index]!).filter((one) => !isHead(one));
  const others = readings.filter((one, index) => !inside.has(index) && !isHead(one));
  const atHead = readings.find(isHead);
  const shown = here.length > 3 ? `${here.length} outlets` : here.map(({ outlet }) => outlet).join(", ");
  const volts = here.filter((one) => one.volts !== null && one.voltsPredicted !== null);
  const supply =
    volts.length === 0
      ? ""
      : `, ${mean(volts.map((one) => one.volts!)).toFixed(1)} V where ${mean(volts.map((one) => one.voltsPredicted!)).toFixed(1)} V was predicted`;
  // A swap's two halves cancel in a mean, so each is named.
  const own =
    here.length === 2
      ? here.map((one) => `${one.outlet} reads ${levels([one], band)}`).join("; ")
      : here.length === 0
        ? ""
        : `${shown}: ${levels(here, band)}`;
  const rest = others.length === 0 ? "" : `; other outlets of ${head}: ${levels(others, band)}`;
  const fed =
    atHead && atHead.volts !== null && atHead.voltsPredicted !== null
      ? `at ${head} itself ${atHead.volts.toFixed(1)} V where ${atHead.voltsPredicted.toFixed(1)} V was predicted`
      : "";
  if (own === "") return `${fed.charAt(0).toUpperCase()}${fed.slice(1)}${rest}.`;
  return `Measured less predicted, on average: ${own}${supply}${rest}${fed && `; ${fed}`}.`;
}

/** What the readings of several head units show of something above all of them, one after the other. */
export function evidenceAtHeads(
  heads: readonly { readonly head: string; readonly readings: readonly Reading[] }[],
  band: Band,
): string {
  const shown = heads.slice(0, MOST_HEADS).map(({ head, readings }) => {
    const outlets = readings.filter(({ outlet }) => outlet !== head);
    return `outlets of ${head}: ${outlets.length === 0 ? "no level read" : levels(outlets, band)}`;
  });
  const more = heads.length - shown.length;
  return `Measured less predicted, on average: ${shown.join("; ")}${more > 0 ? `; and ${more} more head units` : ""}.`;
}

/** A sentence is read, not a table. */
const MOST_HEADS = 4;
