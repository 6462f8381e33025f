/** Answers of a distribution's functions: a row for each row of the table that they are about. */
import { isFault, type Fault } from "../../engine/faults";
import type { Outcome } from "../core/declare";
import type { Places } from "./jobOf";
import { solved, type Given, type Said, type Solved } from "./solved";
import { TABLE_NAMES, type TableName } from "./tables";

export type Answer = Outcome | null;

const TABLE_OF: Readonly<Record<keyof Places, TableName>> = {
  outlets: "outlets",
  devices: "devices",
  headUnits: "head_units",
  dishes: "dishes",
  feeders: "feeders",
};

/**
 * @param width of a row of answers
 * @param answer of one row of the list; shorter ones are filled up with blanks
 * @returns as many rows as the table has; a blank row for a blank one
 */
export function answersFor(
  list: keyof Places,
  width: number,
  given: Given,
  answer: (found: Solved, row: number) => readonly Answer[],
): Answer[][] | Fault {
  const found = solved(given);
  if (isFault(found)) return found;
  const rows = given[TABLE_NAMES.indexOf(TABLE_OF[list])]?.length ?? 1;
  const answers = Array.from({ length: rows }, () => Array<Answer>(width).fill(null));
  found?.places[list].forEach((place, row) =>
    answer(found, row).forEach((value, column) => (answers[place]![column] = value)),
  );
  return answers;
}

/** @returns a figure; blank where nothing was asked, or where nothing is left to tell */
export const figure = (value: number | null | undefined): number | null =>
  value !== null && value !== undefined && Number.isFinite(value) ? value : null;

const NOTHING: Said = { checks: new Set(), sentences: [] };

export const saidAt = ({ said }: Solved, list: keyof Solved["said"], row: number): Said =>
  said[list].get(row) ?? NOTHING;

export const inOne = ({ sentences }: Said): string => sentences.join(" ");

/** A bad row: its word, and blanks up to the sentences at the end. */
export const badRow = (before: number, width: number): Answer[] => [
  ...Array<Answer>(before).fill(null),
  "bad",
  ...Array<Answer>(width - before - 2).fill(null),
];
