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
}

/** One group of rows against one source. Call `row` inside a test; the summary prints after the last. */
export function heldTo(held: Held): {
  row: (label: string, actual: unknown, expected: number, limit: number) => void;
} {
  const rows: { label: string; residual: number; limit: number }[] = [];
  afterAll(() => {
    if (rows.length === 0) return;
    const worst = rows.reduce((a, b) => (b.residual / b.limit > a.residual / a.limit ? b : a));
    const summary = {
      ...held,
      rows: rows.length,
      worst: worst.residual,
      limit: worst.limit,
      at: worst.label,
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
      rows.push({ label, residual, limit });
      if (!(residual <= limit)) {
        throw new Error(
          `${held.what}, ${label}: ${actual} ${held.unit} where ${held.source} has ${expected} (limit ${limit})`,
        );
      }
    },
  };
}
