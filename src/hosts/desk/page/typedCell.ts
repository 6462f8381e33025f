/**
 * What a text that was typed, or pasted from outside, becomes in its cell: the seam between the reader of typed
 * values, which knows no grid, and the grid, which takes contents as text.
 */
import type { WorkbookDefinition } from "../../../workbooks/definition";
import type { TypedContext } from "../../../workbooks/typed/reading";
import { contextOf } from "../../../workbooks/typed/contextOf";
import { inputsOf, settledKind } from "../../../workbooks/typed/inputsOf";
import { sentenceInSigns } from "../../../workbooks/typed/jotted";
import { readTyped } from "../../../workbooks/typed/readTyped";
import { LONGEST_TEXT, type TypedKind } from "../../../workbooks/typed/typedKind";
import { WRITING_FIELD, writingOf, type ShownWriting } from "../../../workbooks/typed/writing";
import { isoDate } from "../../../workbooks/sheetDate";
import { templateOf } from "../../../workbooks/templates";
import type { BookFacts } from "../../grid/bookFacts";
import type { GridModel } from "../../grid/library";
import { contentOf } from "../../grid/toDocument";
import { validationAt } from "./cellLine";
import type { GridPosition } from "./libraryTypes";

/** What the cell gets, as the grid's `UPDATE_CELL` takes it; or a sentence that says what to type. */
export type TypedContent =
  | {
      readonly content: string;
      /** It is none of the names that the cell offers, which may be added to their list afterwards. */
      readonly unlisted?: boolean;
    }
  | { readonly refused: string };

/**
 * @param place an input cell, or any other
 * @param text as it was typed; a formula (`=12+3`) in a cell of figures is a formula
 * @returns undefined where nothing says what the cell asks for, and for such a formula: the grid's own way holds
 */
export function typedContent(model: GridModel, place: GridPosition, text: string): TypedContent | undefined {
  const kind = askedAt(model, place);
  if (!kind || (text.startsWith("=") && !isName(kind))) return undefined;
  const context = contextIn(model);
  const reading = readTyped(text, kind, context);
  if ("refused" in reading)
    return kind.kind === "number"
      ? { refused: sentenceInSigns(reading.refused, context.writing?.decimal ?? ".") }
      : reading;
  const { value } = reading;
  if (kind.kind === "date" && typeof value === "number") return { content: isoDate(value) };
  const unlisted = kind.kind === "choice" && typeof value === "string" && !kind.choices.includes(value);
  return { content: contentOf({ value }) ?? "", ...(unlisted && { unlisted }) };
}

/** Whether the cell holds text, whatever is typed. */
export const isName = (kind: TypedKind): boolean => kind.kind === "text" || kind.kind === "choice";

/** What the cell asks for; undefined for one that nobody is asked to fill. */
export function askedAt(model: GridModel, place: GridPosition): TypedKind | undefined {
  const { getters } = model;
  const { template } = (getters as GridModel["getters"] & { getBookFacts(): BookFacts }).getBookFacts();
  if (template === "") return undefined;
  const definition = templateOf(template)?.definition;
  return (definition && inDefinition(model, definition, place)) ?? underRule(model, place);
}

function inDefinition(
  model: GridModel,
  definition: WorkbookDefinition,
  place: GridPosition,
): TypedKind | undefined {
  const { getters } = model;
  const inputs = inputsOf(definition);
  for (const { name, range } of getters.getNamedRanges()) {
    const { top, bottom, left, right } = range.zone;
    const input =
      range.sheetId === place.sheetId && left <= place.col && place.col <= right && inputs.get(name);
    // The first and the last row of a block are its thin ones.
    const [first, last] = top === bottom ? [top, bottom] : [top + 1, bottom - 1];
    if (!input || place.row < first || place.row > last) continue;
    const unit = input.unitIn === undefined ? undefined : getters.getNamedRange(input.unitIn)?.range;
    const load = unit && getters.getEvaluatedCell({ ...place, col: unit.zone.left }).value;
    return settledKind(input.kind, (list) => wordsIn(model, list), load);
  }
  return undefined;
}

/** A workbook of ours without a template of its own, such as a sheet of exercises, says it by its rules alone. */
function underRule(model: GridModel, place: GridPosition): TypedKind | undefined {
  const rule = validationAt(model, place)?.rule;
  switch (rule?.kind) {
    case "number":
      return { ...rule, quantity: "plain" };
    case "date":
      return { kind: "date", min: rule.min ?? -Infinity, max: rule.max ?? Infinity };
    case "text":
      return { kind: "text", maxLength: rule.maxLength ?? LONGEST_TEXT };
    case "choice":
    case "named":
      return settledKind(rule, (list) => wordsIn(model, list));
    default:
      return undefined;
  }
}

/** The words of a named list. */
function wordsIn({ getters }: GridModel, name: string): string[] {
  const range = getters.getNamedRange(name)?.range;
  if (!range) return [];
  const { top, bottom, left } = range.zone;
  const words: string[] = [];
  for (let row = top; row <= bottom; row++) {
    const { value } = getters.getEvaluatedCell({ sheetId: range.sheetId, row, col: left });
    if (typeof value === "string" && value !== "") words.push(value);
  }
  return words;
}

/** How the open workbook writes numbers and dates, and in which money and unit it counts. */
export const contextIn = (model: Pick<GridModel, "getters">): TypedContext =>
  contextOf((name) => namedValue(model, name));

/** How its figures are shown; undefined where nobody has chosen. */
export const writingIn = (model: GridModel): ShownWriting | undefined =>
  writingOf(namedValue(model, WRITING_FIELD));

function namedValue({ getters }: Pick<GridModel, "getters">, name: string): unknown {
  const range = getters.getNamedRange(name)?.range;
  if (!range) return undefined;
  const { sheetId, zone } = range;
  return getters.getEvaluatedCell({ sheetId, row: zone.top, col: zone.left }).value;
}
