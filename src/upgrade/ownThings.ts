/**
 * What a person put into an older workbook beside its inputs: sheets and cells
 * of their own, formulas and values over calculated ones, inputs that the
 * template has no more, notes, names, hidden rows and columns. The template's
 * own words are known by their ink, its own formulas by the record of versions.
 */
import { address, columnLetters, isInside, parseAddress, parseRange, type Zone } from "../formula/address";
import { blankBook } from "../review/blankBook";
import { inputZone, type Book, type BookCell, type BookSheet } from "../workbooks/book";
import { calculatedNames } from "../workbooks/calculatedNames";
import type { WorkbookDefinition } from "../workbooks/definition";
import { formulaMark } from "../workbooks/formulaMark";
import { INPUT_FILL, LOOKS } from "../workbooks/looks";
import { GIVEN_UP, isGivenUp } from "../workbooks/multiRoom/givenUp";
import { todaysName, todaysSheet } from "../workbooks/renamedNames";
import { inputsOf } from "../workbooks/typed/inputsOf";
import { versionFormulas } from "../workbooks/versionFormulas";
import type { NotCarried } from "./notCarried";
import { shownValue } from "./shownValue";

/** The note that the file writer leaves on a cell of a copy begins so. */
const FROZEN = /(^|\n)Frozen: /;
const INKS: ReadonlySet<string | undefined> = new Set([LOOKS.title.color, LOOKS.intro.color]);

interface Named {
  readonly name: string;
  readonly zone: Zone;
  readonly kind: "input" | "other" | "gone" | "below";
}

/** What an input that went says without a loss: the usual, nothing, or what the row's own line tells. */
const NOTHING_LOST: ReadonlySet<unknown> = new Set(["this job", "a receiver", 0]);

/**
 * @param old the workbook as it was read, with the values that its formulas come to
 * @param told the cells of which it was said already what becomes of them
 */
export function ownThings(
  old: Book,
  definition: WorkbookDefinition,
  told: readonly Pick<NotCarried, "sheet" | "cell">[],
): NotCarried[] {
  const isTold = new Set(told.map(({ sheet, cell }) => `${sheet}!${cell}`));
  const today = new Set(blankBook(definition).names.map(({ name }) => name));
  const version = versionFormulas(old.template, old.templateVersion);
  const isKnown = (name: string): boolean => today.has(name) || (version?.has(name) ?? false);
  const now = new Set(calculatedNames(definition).map(({ name }) => name));
  const isCalculated = (name: string): boolean =>
    version ? (version.get(name)?.size ?? 0) > 0 : now.has(name);
  const homes = new Set(old.names.filter(({ name }) => isKnown(name)).map(({ sheet }) => sheet));
  const usual = new Set(definition.sheets.map(({ name }) => name));
  // Without any of our ink nothing tells the template's words from a person's.
  const hasInk = old.sheets.some(({ cells }) => Object.values(cells).some(({ look }) => isInk(old, look)));
  return [
    ...old.sheets.flatMap((sheet) => {
      if (!homes.has(sheet.name) && !usual.has(sheet.name)) return ownSheet(sheet);
      return [
        ...(usual.has(todaysSheet(sheet.name)) ? [] : [renamedSheet(sheet)]),
        ...ownCells(old, sheet, definition, { isKnown, isCalculated, today, hasInk, isTold }),
        ...hiddenParts(sheet),
      ];
    }),
    ...(hasInk ? [] : [NO_INK]),
    ...old.names
      .filter(({ name }) => !isKnown(name))
      .map(({ name, sheet, range }): NotCarried => ({
        sheet,
        value: `the name ${name} for ${range}`,
        why: "Today's template has no such name. Define it again if it is still wanted.",
      })),
  ];
}

const NO_INK: NotCarried = {
  sheet: "",
  value: "cells outside the inputs",
  why: "The file has lost its colours, so what you put beside the inputs can't be told from the template's own words. Look through the old workbook for it.",
};

function ownSheet({ name, cells }: BookSheet): NotCarried[] {
  const filled = Object.values(cells).filter(
    ({ value, formula }) => value !== undefined || formula !== undefined,
  );
  const what = filled.length === 1 ? "1 filled cell" : `${filled.length} filled cells`;
  return [
    {
      sheet: name,
      value: what,
      why: "A sheet of your own. Copy it over in your spreadsheet program, and look at its formulas: the template's cells may lie elsewhere now.",
    },
  ];
}

const renamedSheet = ({ name }: BookSheet): NotCarried => ({
  sheet: name,
  value: "the sheet's name",
  why: "Its inputs were carried over; the sheet has the template's own name again.",
});

function hiddenParts({ name, hidden, hiddenRows = [], hiddenColumns = [] }: BookSheet): NotCarried[] {
  const said = (value: string): NotCarried => ({
    sheet: name,
    value,
    why: "It was hidden, and shows in the new workbook. What stands in it was carried over as all else.",
  });
  return [
    ...(hidden ? [said("the sheet")] : []),
    ...(hiddenColumns.length > 0 ? [said(`columns ${hiddenColumns.map(columnLetters).join(", ")}`)] : []),
    ...(hiddenRows.length > 0 ? [said(`rows ${hiddenRows.map((row) => row + 1).join(", ")}`)] : []),
  ];
}

interface Known {
  readonly isKnown: (name: string) => boolean;
  /** In the workbook's own version; in today's where that is not kept. */
  readonly isCalculated: (name: string) => boolean;
  readonly today: ReadonlySet<string>;
  readonly hasInk: boolean;
  readonly isTold: ReadonlySet<string>;
}

function ownCells(old: Book, sheet: BookSheet, definition: WorkbookDefinition, known: Known): NotCarried[] {
  const inputs = inputsOf(definition);
  const rules = sheet.validations.flatMap((one) => inputZone(one) ?? []);
  const names = old.names.flatMap(({ name, sheet: on, range }): Named[] => {
    const zone = on === sheet.name && known.isKnown(name) ? parseRange(range) : undefined;
    if (!zone) return [];
    const kind = inputs.has(name)
      ? "input"
      : name.endsWith("_below")
        ? "below"
        : known.today.has(name) || todaysName(name) !== undefined
          ? "other"
          : "gone";
    return [{ name, zone, kind }];
  });
  const version = versionFormulas(old.template, old.templateVersion);
  return Object.entries(sheet.cells).flatMap(([at, cell]): NotCarried[] => {
    const { row, column } = parseAddress(at)!;
    const around = names.filter(({ zone }) => isInside(zone, row, column));
    const input = around.find(({ kind }) => kind === "input");
    const isFilled = input !== undefined && isBetween(input.zone, row);
    const frozen = cell.note !== undefined && FROZEN.test(cell.note);
    if (frozen) return [];
    if (known.isTold.has(`${sheet.name}!${at}`) && !isFilled) return [];
    const why = isFilled
      ? undefined
      : reasonFor(old, sheet, cell, { row, column, at, around, rules, version, known });
    return [
      ...(why === undefined
        ? []
        : [{ sheet: sheet.name, cell: at, value: shownValue(cell, sheet.results[at]), why }]),
      ...(isFilled || cell.note === undefined
        ? []
        : [
            {
              sheet: sheet.name,
              cell: at,
              value: `the note ${shownValue({ value: cell.note }, undefined)}`,
              why: "A note of your own on a cell that is no input.",
            },
          ]),
    ];
  });
}

interface Where {
  readonly row: number;
  readonly column: number;
  readonly at: string;
  readonly around: readonly Named[];
  readonly rules: readonly Zone[];
  readonly version: ReturnType<typeof versionFormulas>;
  readonly known: Known;
}

/** @returns why what stands in a cell that is no input of today's is not carried over; undefined for the template's own */
function reasonFor(old: Book, sheet: BookSheet, cell: BookCell, where: Where): string | undefined {
  const { formula, value } = cell;
  if (formula === undefined && (value === undefined || value === "")) return undefined;
  const { row, column, around, rules, known } = where;
  const wasInput = rules.some((zone) => isInside(zone, row, column)) || isInputLook(old, cell.look);
  const gone = around.find(({ kind }) => kind === "gone");
  if (formula !== undefined && isTheVersions(around, where, formula)) return undefined;
  if (gone && isGivenUp(gone.name))
    return NOTHING_LOST.has(value)
      ? undefined
      : `“${headOf(sheet, gone.zone, row)}” is no input any more. ${GIVEN_UP[gone.name]}`;
  if (gone && wasInput)
    return `“${headOf(sheet, gone.zone, row)}” is no input of today's template any more, so this has no place. See what has taken its place.`;
  if (around.some(({ name }) => known.isCalculated(name))) {
    const what =
      formula === undefined
        ? "A value typed over a calculated cell"
        : "A formula of your own in a calculated cell";
    return gone
      ? `${what}, which today's template has no more.`
      : `${what}: the template's own formula stands there again.`;
  }
  if (around.some(({ kind }) => kind === "other" || kind === "gone")) {
    if (formula !== undefined) return "A formula of your own where the template has a word or a figure.";
    return wasInput ? "It was an input; today's template works it out by itself." : undefined;
  }
  if (around.some(({ kind }) => kind === "below" || kind === "input"))
    return "It stands in or under the row that closes a block, where nothing counted it. Add a row inside the block and enter it there.";
  if (wasInput)
    return "No name of the workbook leads to this cell any more, so it is not known what it stands for.";
  // Words and formulas in the template's ink are its own.
  if (!known.hasInk || isInk(old, cell.look)) return undefined;
  return "It stands outside the inputs. Enter it again where it belongs, if it is still wanted.";
}

const isInk = ({ looks }: Book, look: number | undefined): boolean =>
  look !== undefined && INKS.has(looks[look]?.color) && !isInputLook({ looks } as Book, look);

const isInputLook = ({ looks }: Pick<Book, "looks">, look: number | undefined): boolean =>
  look !== undefined && looks[look]?.fill === INPUT_FILL;

/** A formula of a name, as some template of that version had it. */
function isTheVersions(around: readonly Named[], { version }: Where, formula: string): boolean {
  if (!version) return true;
  const mark = formulaMark(formula);
  return around.some(({ name }) => version.get(name)?.has(mark) ?? false);
}

/** Rows of a column lie between its two thin ones; a field is its own. */
const isBetween = ({ top, bottom }: Zone, row: number): boolean =>
  top === bottom || (top < row && row < bottom);

/** A block's heads stand two rows above its thin row; a field's label to its left. */
function headOf({ cells }: BookSheet, { top, left, bottom }: Zone, row: number): string {
  const at = top === bottom ? address(row, Math.max(0, left - 1)) : address(Math.max(0, top - 2), left);
  return String(cells[at]?.value ?? "this cell");
}
