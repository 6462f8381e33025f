/**
 * The inputs of an older workbook, as today's template takes them: by the names
 * of their cells and columns, wherever these lie now. What today's rules refuse
 * is left out and listed.
 */
import { inputsIn, type Input, type InputCell } from "../review/inputsIn";
import { isBlank, lookupWord, namedCells } from "../review/namedCells";
import { ruleBroken } from "../review/ruleBroken";
import { isBookError, type Book } from "../workbooks/book";
import type { JobInputs } from "../workbooks/definition";
import { currentInputs } from "../workbooks/currentInputs";
import type { Template } from "../workbooks/templates";
import type { NotCarried, StandsElsewhere } from "./notCarried";
import { shownValue } from "./shownValue";

export interface CarriedNote {
  readonly name: string;
  /** Counted from the top of the name. */
  readonly index: number;
  readonly note: string;
}

export interface CarriedInputs {
  readonly inputs: JobInputs;
  /** How many cells hold something that was carried over. */
  readonly count: number;
  readonly notes: readonly CarriedNote[];
  /** What today's template asks for and the old one had no cell for: the names that begin with a usual figure. */
  readonly begun: readonly string[];
  readonly notCarried: readonly NotCarried[];
  readonly elsewhere: readonly StandsElsewhere[];
}

/** @param old the workbook, with the values that its formulas come to */
export function carriedInputs(old: Book, template: Template): CarriedInputs {
  const { inputs, begun, rearranged } = currentInputs(template, old);
  const moved = new Set(rearranged.map(({ name, index }) => `${name} ${index}`));
  const fields = { ...inputs.fields };
  const blocks = Object.fromEntries(
    Object.entries(inputs.blocks ?? {}).map(([name, rows]) => [name, rows.map((row) => ({ ...row }))]),
  );
  const notCarried: NotCarried[] = [];
  const notes: CarriedNote[] = [];
  let count = 0;
  for (const input of inputsIn(old, template.definition)) {
    for (const cell of input.cells) {
      const { sheet, cell: at } = cell.place;
      const own = old.sheets.find(({ name }) => name === sheet)!.cells[at];
      const refused = refusalOf(old, input, cell);
      const value = shownValue(own, cell.value);
      if (own?.note !== undefined) notes.push({ name: input.name, index: cell.index, note: own.note });
      if (refused !== undefined) {
        if (input.block === undefined) delete fields[input.name];
        else delete blocks[input.block]?.[cell.index - 1]?.[input.name.slice(input.block.length + 1)];
        notCarried.push({ sheet, cell: at, value, why: refused });
        continue;
      }
      if (own?.formula !== undefined) notCarried.push({ sheet, cell: at, value, ...formulaOfOwn(cell) });
      if (!isBlank(cell.value) && !moved.has(`${input.name} ${cell.index}`)) count++;
    }
  }
  const elsewhere: StandsElsewhere[] = [];
  for (const { name, index, became, lost } of rearranged) {
    const { place, value: is } = namedCells(old, name)[index]!;
    const own = old.sheets.find((sheet) => sheet.name === place.sheet)!.cells[place.cell];
    const value = shownValue(own, is);
    if (lost) notCarried.push({ ...place, value, why: became });
    else elsewhere.push({ ...place, value, became });
  }
  return { inputs: { fields, blocks }, count, notes, begun, notCarried, elsewhere };
}

/** @returns why today's template does not take what stands there; undefined where it does, or nothing does */
function refusalOf(old: Book, { input, label }: Input, { value }: InputCell): string | undefined {
  if (isBlank(value)) return undefined;
  if (isBookError(value))
    return `${label}: an error can't be carried over. Enter the value itself. ${input.what}.`;
  const { rule } = input;
  const isWord = typeof value === "boolean";
  // What is text in a cell of words stays; a name that stands in no list is told by the Checks.
  const isHeld = rule.kind === "number" || rule.kind === "date" || rule.kind === "choice";
  const broken =
    isWord || (rule.kind === "number" && typeof value === "string" && !isWordOf(rule.orWords, value))
      ? { expected: isWord && !isHeld ? "A text." : "A number." }
      : isHeld
        ? ruleBroken(old, rule, value)
        : undefined;
  return (
    broken &&
    `${label}: this version's entry rule refuses it. It takes: ${lowered(broken.expected)} Enter it anew.`
  );
}

const isWordOf = (words: readonly string[] = [], value: string): boolean =>
  words.some((one) => lookupWord(one) === lookupWord(value));

const lowered = (text: string): string => text.slice(0, 1).toLowerCase() + text.slice(1);

const formulaOfOwn = ({ value }: InputCell): Pick<NotCarried, "why" | "valueCarried"> =>
  isBlank(value)
    ? {
        why: "A formula of your own in an input cell, which shows nothing. Enter it again if it is still wanted.",
      }
    : {
        why: `A formula of your own in an input cell. What it shows, ${shownValue(undefined, value)}, was carried over; the formula was not.`,
        valueCarried: true,
      };
