/** What was understood of a survey, and what a person chose of it. */
import type { ColumnChoices, MappedColumn } from "../imported/columns";
import type { Writing } from "../typed/writing";
import type { SurveyLists } from "./partNames";

export interface SurveyTrouble {
  readonly line: number;
  readonly reason: string;
  /** The room and the outlet of the line, where it names them. */
  readonly who?: string;
  /** The line as corrections name it; absent where none would help. */
  readonly id?: string;
  /** The columns that it is about, by their keys. */
  readonly keys?: readonly string[];
  /** It was left out by its own words, and can be taken in. */
  readonly isLeftOut?: boolean;
  /** A sum that does not fit keeps no outlet back. */
  readonly isTotal?: boolean;
}

/** A name that is on none of the workbook's lists, with those of the list that are nearest. */
export interface UnknownName {
  readonly key: string;
  readonly text: string;
  readonly lines: readonly number[];
  readonly nearest: readonly string[];
}

export type SurveyRow = Readonly<Record<string, number | string>>;

export interface Survey {
  readonly source: string;
  /** The sheets of a workbook, where it has several with anything on them. */
  readonly sheets: readonly string[];
  readonly sheet?: string;
  readonly columns: readonly MappedColumn[];
  /** What has to be chosen before any line can be trusted, in a sentence. */
  readonly unsure?: string;
  /** Rows for the Rooms block, by column key. */
  readonly rows: readonly SurveyRow[];
  /** The line of each row. */
  readonly lines: readonly number[];
  readonly troubles: readonly SurveyTrouble[];
  readonly unknown: readonly UnknownName[];
  /** The texts of a line's cells by the keys of their columns, for those in trouble. */
  readonly texts: Readonly<Record<string, Readonly<Record<string, string>>>>;
  /** What a person should know of how the file was read. */
  readonly notes: readonly string[];
}

export interface SurveySetting {
  /** Of the workbook's lengths. */
  readonly unit: "m" | "ft";
  /** How the workbook's people write numbers, where they have chosen. */
  readonly writing?: Writing;
  readonly lists?: SurveyLists;
}

/** What a person chose in the preview; none of it is written into the file. */
export interface SurveyChoices {
  readonly sheet?: string;
  /** The line of the heads, counted from 1. */
  readonly head?: number;
  readonly columns?: ColumnChoices;
  /** Cells put right, by line and key: `12:run`. */
  readonly cells?: Readonly<Record<string, string>>;
  /** Lines that are left out. */
  readonly leftOut?: readonly string[];
  /** Lines that a word strikes out, or that are hidden, and are taken in all the same. */
  readonly takenIn?: readonly string[];
  /** The columns are right as they were guessed. */
  readonly confirmed?: boolean;
  /** Names put right wherever they stand, by key and text: `cable:indor drop`. */
  readonly names?: Readonly<Record<string, string>>;
}

export const cellId = (id: string, key: string): string => `${id}:${key}`;
export const nameId = (key: string, text: string): string => `${key}:${text.trim().toLowerCase()}`;

export const inWords = (count: number, what: string): string => `${count} ${what}${count === 1 ? "" : "s"}`;

const MOST_LISTED = 6;

/** "Line 4", "Lines 4, 7". */
export const linesInWords = (lines: readonly number[]): string =>
  `${lines.length === 1 ? "Line" : "Lines"} ${lines.slice(0, MOST_LISTED).join(", ")}${lines.length > MOST_LISTED ? ", …" : ""}`;
