/**
 * Cells that show an error, one finding for each column formula and sentence. An
 * error that only repeats one in a cell that the formula reads is counted, not
 * listed: it goes with its cause. What a check found is left to its check line.
 */
import { address, parseAddress, parseRange, type Place, type Zone } from "../../formula/address";
import { namesIn } from "../../formula/namesIn";
import { isBookError, type Book, type BookError, type BookSheet } from "../../workbooks/book";
import { checks } from "../../workbooks/checkNames";
import type { Finding } from "../finding";
import type { LabelAt } from "../labels";
import { sentencesOn, type SentenceAt } from "../sentenceOf";
import { withoutPlaces } from "../sheetWords";
import { errorWords } from "./errorWords";

interface ErrorCell extends Place {
  readonly at: string;
  readonly error: BookError;
}

interface NamedErrors {
  readonly sheet: string;
  readonly zone: Zone;
  readonly cells: readonly ErrorCell[];
}

export function errorCells(book: Book, labelAt: LabelAt): Finding[] {
  const errors = new Map(book.sheets.map((sheet) => [sheet.name, errorsOn(book, sheet)]));
  const named = namedErrors(book, errors);
  const inCheck = checkFigures(book);
  const findings: Finding[] = [];
  let followers = 0;
  /** Sentences of ours that a sheet before has told: what reads the same input on another one says the same. */
  const told = new Set<string>();
  for (const sheet of book.sheets) {
    const groups = new Map<string, ErrorCell[]>();
    for (const cell of errors.get(sheet.name)!) {
      if (inCheck(sheet.name, cell)) continue;
      const source = sourceOf(sheet, cell);
      if (source && !namesItsInput(cell) && follows(book, source, sheet.name, cell, named)) {
        followers += 1;
        continue;
      }
      // A sentence of ours names its input, so it is one trouble in whichever columns and rows it shows.
      const { message } = cell.error;
      const key =
        message === undefined ? `${source?.at ?? cell.at} ${cell.error.error}` : withoutPlaces(message);
      groups.set(key, [...(groups.get(key) ?? []), cell]);
    }
    for (const [key, group] of groups) {
      const isOurs = group[0]!.error.message !== undefined;
      if (isOurs && told.has(key)) followers += group.length;
      else findings.push(findingOf(sheet.name, group, labelAt));
      if (isOurs) told.add(key);
    }
  }
  if (followers > 0 && findings.length > 0) {
    findings.push({
      weight: "worth knowing",
      message: `${followers} more ${followers === 1 ? "cell shows an error that follows" : "cells show errors that follow"} from those.`,
      remedy: "Fix the others; these should then clear.",
    });
  }
  return findings;
}

/** What each check found stands beside the column of the results. */
function checkFigures(book: Book): (sheet: string, place: Place) => boolean {
  const named = book.names.find(({ name }) => name === checks.result.name);
  const zone = named && parseRange(named.range);
  if (!zone) return () => false;
  const found = { ...zone, left: zone.left - 1, right: zone.right - 1 };
  return (sheet, { row, column }) => sheet === named.sheet && inside(found, row, column);
}

function errorsOn(book: Book, sheet: BookSheet): ErrorCell[] {
  const sentenceAt = sentencesOn(book, sheet.name);
  return Object.entries(sheet.results)
    .flatMap(([at, error]) => {
      const place = isBookError(error) ? parseAddress(at) : undefined;
      return isBookError(error) && place ? [withSentence(sheet, { ...place, at, error }, sentenceAt)] : [];
    })
    .sort((a, b) => a.row - b.row || a.column - b.column);
}

const inWords = ({ error }: ErrorCell): string => error.message ?? error.error;

function findingOf(sheet: string, group: readonly ErrorCell[], labelAt: LabelAt): Finding {
  const first = group[0]!;
  const { error, message } = first.error;
  const words = errorWords(error);
  const ours = message !== undefined && (error === "#VALUE!" || error === "#N/A");
  const count = group.length === 1 ? "" : ` and ${group.length - 1} more on this sheet`;
  return {
    weight: "wrong",
    place: { sheet, cell: first.at },
    message: `${labelAt(sheet, first)}${count}: ${error}, ${ours ? message : words.message}`,
    remedy: ours
      ? "Mend the input that the sentence names, in this row or on the sheet it reads."
      : words.remedy,
  };
}

interface Source {
  readonly at: string;
  readonly formula: string;
  readonly zone: Zone;
}

function withSentence(sheet: BookSheet, cell: ErrorCell, sentenceAt: SentenceAt): ErrorCell {
  const source = cell.error.message === undefined ? sourceOf(sheet, cell) : undefined;
  if (!source) return cell;
  const offset = { row: cell.row - source.zone.top, column: cell.column - source.zone.left };
  const message = sentenceAt(source.formula, offset);
  return message === undefined ? cell : { ...cell, error: { ...cell.error, message } };
}

const sources = new WeakMap<BookSheet, Source[]>();

/** The formula that fills a cell: its own, or one that spills over it. */
function sourceOf(sheet: BookSheet, { row, column }: Place): Source | undefined {
  let all = sources.get(sheet);
  if (!all) {
    all = Object.entries(sheet.cells).flatMap(([at, { formula, spill }]) => {
      const place = formula === undefined ? undefined : parseAddress(at);
      if (formula === undefined || !place) return [];
      const { rows, columns } = spill ?? { rows: 1, columns: 1 };
      const zone = {
        top: place.row,
        left: place.column,
        bottom: place.row + rows - 1,
        right: place.column + columns - 1,
      };
      return [{ at, formula, zone }];
    });
    sources.set(sheet, all);
  }
  return all.find(
    ({ zone }) => zone.top <= row && row <= zone.bottom && zone.left <= column && column <= zone.right,
  );
}

function namedErrors(
  book: Book,
  errors: ReadonlyMap<string, readonly ErrorCell[]>,
): ReadonlyMap<string, NamedErrors> {
  return new Map(
    book.names.flatMap(({ name, sheet, range }): [string, NamedErrors][] => {
      const zone = parseRange(range);
      if (!zone) return [];
      const cells = (errors.get(sheet) ?? []).filter(({ row, column }) => inside(zone, row, column));
      return cells.length > 0 ? [[name, { sheet, zone, cells }]] : [];
    }),
  );
}

/** A sentence of ours that names an input is a cause of its own, whatever else its formula reads; one of an error is not. */
const namesItsInput = ({ error: { message } }: ErrorCell): boolean =>
  message !== undefined && /"/.test(message) && !/ holds the error #/.test(message);

const inside = (zone: Zone, row: number, column: number): boolean =>
  zone.top <= row && row <= zone.bottom && zone.left <= column && column <= zone.right;

/**
 * Whether the formula reads this error: in its own row where the columns lie
 * side by side, else anywhere. The same sentence in another row of a column
 * beside it is the same error, handed on by a formula that reads the whole column.
 */
function follows(
  book: Book,
  { formula, zone, at }: Source,
  sheet: string,
  cell: ErrorCell,
  named: ReadonlyMap<string, NamedErrors>,
): boolean {
  return namesIn(book, formula).some(({ name }) => {
    const read = named.get(name);
    // A name for the formula's own cells says nothing of what it reads.
    if (!read || (read.sheet === sheet && at === address(read.zone.top, read.zone.left))) return false;
    const sideBySide = read.sheet === sheet && read.zone.top === zone.top && read.zone.bottom === zone.bottom;
    if (!sideBySide) return true;
    return read.cells.some((one) => one.row === cell.row || inWords(one) === inWords(cell));
  });
}
