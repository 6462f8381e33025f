/** Readings as they were typed, beside what was predicted for them. */
import type { DecibelMicrovolts, Megahertz, Volts } from "../quantity";
import type { TypedReading } from "./typedReading";

export interface TypedOutlet {
  readonly outlet: string;
  readonly head: string;
  readonly frequencies: readonly Megahertz[];
  readonly levels: readonly TypedReading[];
  /** Null where nothing was predicted. */
  readonly predicted: readonly (DecibelMicrovolts | null)[];
  readonly volts: TypedReading;
  readonly voltsPredicted: Volts | null;
}

export interface TypedHead {
  readonly head: string;
  readonly volts: TypedReading;
  readonly voltsPredicted: Volts | null;
}

/** A question about readings that can't be what they are taken for. */
export interface Doubt {
  /** What to look at: an outlet, a head unit, or all of them. */
  readonly where: string;
  readonly message: string;
  readonly next: string;
}

/** A level that is a number in dBµV, or is taken for one. */
export interface Level {
  readonly outlet: TypedOutlet;
  readonly column: number;
  readonly value: number;
  readonly predicted: DecibelMicrovolts;
}

export const levelsOf = (outlets: readonly TypedOutlet[]): Level[] =>
  outlets.flatMap((outlet) =>
    outlet.levels.flatMap((level, column) => {
      const predicted = outlet.predicted[column] ?? null;
      return level.kind === "value" && predicted !== null
        ? [{ outlet, column, value: level.value, predicted }]
        : [];
    }),
  );

/** In words: the lowest, the highest, or the frequency of a column between them. */
export function columnInWords({ frequencies }: TypedOutlet, column: number): string {
  if (frequencies.length === 2) return column === 0 ? "lowest frequency" : "highest frequency";
  return `${frequencies[column]} MHz`;
}

export const ASK = "Look at the crew's note or measure it again, and enter it; until then it is left out.";
