/** A comparison as lines of text. */
import type { Change } from "./change";
import type { Comparison } from "./compareJobs";
import { moreInWords, movesInWords } from "./movesInWords";

const CENTS = 100;

/** Cents as money with two decimals, by whole numbers alone. */
export function money(cents: number, signed = false): string {
  const whole = Math.abs(cents);
  const text = `${Math.floor(whole / CENTS)}.${String(whole % CENTS).padStart(2, "0")}`;
  return `${cents < 0 ? "-" : signed && cents > 0 ? "+" : ""}${text}`;
}

const KINDS: Readonly<Record<Change["kind"], string>> = {
  field: "changed",
  changed: "changed",
  added: "added",
  removed: "removed",
  renamed: "renamed",
  formula: "formula changed",
};

export const kindOf = ({ kind }: Change): string => KINDS[kind];

export const howMany = ({ length }: readonly Change[]): string =>
  length === 1 ? "1 change" : `${length} changes`;

export const ORDER =
  "Applied one after another to the older job: new names, then fields, then rows added and changed in the order of the sheets, then rows removed. Another order could split it differently; the total is the same.";

/** Text of a file must not steer the terminal that shows it. */
// eslint-disable-next-line no-control-regex -- control characters are what is looked for
const plain = (text: string): string => text.replace(/[\x00-\x1f\x7f-\x9f]+/g, " ");

export function inWords(comparison: Comparison): string {
  const { changes, steps, notes, olderCents, newerCents, differenceCents, currency } = comparison;
  const priced = differenceCents !== null && olderCents !== null && newerCents !== null;
  const lines = [
    changes.length === 0 ? "No input and no formula has changed." : `${howMany(changes)}:`,
    ...changes.flatMap((change) => [
      `  ${change.sheet}, ${change.part}: ${change.row} ${kindOf(change)}`,
      ...change.cells.map(
        ({ label, before, after }) => `      ${label}: ${before ?? "(blank)"} -> ${after ?? "(blank)"}`,
      ),
    ]),
    "",
    ...(priced
      ? [
          `Total ${money(olderCents)} -> ${money(newerCents)} ${currency}, difference ${money(differenceCents, true)}`,
          ...steps.map(({ what, cents }) => `  ${money(cents, true).padStart(12)}  ${what}`),
          ...(steps.length > 0
            ? [
                `  ${money(
                  steps.reduce((sum, { cents }) => sum + cents, 0),
                  true,
                ).padStart(12)}  together`,
                ORDER,
              ]
            : []),
        ]
      : []),
    ...movesInWords(comparison.moves).flatMap(({ heading, rows, more }) => [
      "",
      `${heading}:`,
      ...rows.map(([what, before, after]) => `  ${what}: ${before} -> ${after}`),
      ...(more > 0 ? [`  ${moreInWords(more)}`] : []),
    ]),
    ...(notes.length > 0 ? ["", ...notes] : []),
  ];
  return lines.map(plain).join("\n").trimEnd();
}
