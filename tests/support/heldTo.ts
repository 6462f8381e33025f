/**
 * Holds answers to values from outside. Every row names what it stands for;
 * the worst residual of the group is printed in its physical unit, and a
 * residual above the written limit fails the row's test.
 */
import { appendFileSync } from "node:fs";

export type Basis =
  /** Printed in a standard, handbook or paper that was seen. */
  | "published"
  /** Computed by a library that is not ours. */
  | "reference library"
  /** Worked out by hand from the equation. */
  | "derivation"
  /** Remembered, not seen. */
  | "from memory"
  /** What the trade does; no source. */
  | "common practice, no source";

export interface Held {
  /** Sheet function or engine function that is held. */
  readonly what: string;
  readonly source: string;
  readonly basis: Basis;
  readonly unit: string;
  /** A documented example; it counts beside other checks only where its value is a new one. */
  readonly example?: boolean;
}

/** Different expected values that the ledger keeps of a group. */
const MOST_VALUES = 100;

/** One group of rows against one source. Call `row` inside a test; the summary prints after the last. */
export function heldTo(held: Held): {
  row: (label: string, actual: unknown, expected: number, limit: number) => void;
  /** For words, and for counts that allow no difference. */
  same: (label: string, actual: unknown, expected: string | number) => void;
} {
  const rows: { label: string; residual: number; limit: number; expected: string | number }[] = [];
  afterAll(() => {
    if (rows.length === 0) return;
    const share = ({ residual, limit }: { residual: number; limit: number }) =>
      residual === 0 ? 0 : residual / limit;
    const worst = rows.reduce((a, b) => (share(b) > share(a) ? b : a));
    const summary = {
      ...held,
      rows: rows.length,
      worst: worst.residual,
      limit: worst.limit,
      at: worst.label,
      values: [...new Set(rows.map(({ expected }) => expected))].slice(0, MOST_VALUES),
    };
    process.stdout.write(
      `  ${held.what}: ${rows.length} rows against ${held.source}; worst ${worst.residual.toExponential(2)} ${held.unit} (limit ${worst.limit}) at ${worst.label}\n`,
    );
    const ledger = process.env.RIGSHEET_CHECKS_LEDGER;
    if (ledger) appendFileSync(ledger, `${JSON.stringify(summary)}\n`);
  });
  return {
    row: (label, actual, expected, limit) => {
      if (typeof actual !== "number")
        throw new Error(`${label}: expected about ${expected} ${held.unit}, got ${JSON.stringify(actual)}`);
      const residual = Math.abs(actual - expected);
      rows.push({ label, residual, limit, expected });
      if (!(residual <= limit)) {
        throw new Error(
          `${held.what}, ${label}: ${actual} ${held.unit} where ${held.source} has ${expected} (limit ${limit})`,
        );
      }
    },
    same: (label, actual, expected) => {
      rows.push({ label, residual: 0, limit: 0, expected });
      if (actual !== expected) {
        throw new Error(
          `${held.what}, ${label}: ${JSON.stringify(actual)} where ${held.source} has ${expected}`,
        );
      }
    },
  };
}
