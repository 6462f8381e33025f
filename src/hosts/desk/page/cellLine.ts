/** The line under the bar: what the selected cell wants, or what is wrong with it. */
import { parseRange, type Zone } from "../../../formula/address";
import { inputZone, type BookValidation } from "../../../workbooks/book";
import { sentenceInSigns } from "../../../workbooks/typed/jotted";
import type { BookFacts } from "../../grid/bookFacts";
import type { SheetFacts } from "../../grid/factRanges";
import type { GridModel } from "../../grid/library";
import type { GridPosition } from "./libraryTypes";

export interface CellWords {
  readonly kind: "error" | "prompt" | "none";
  readonly text: string;
}

export function wordsFor(model: GridModel, place: GridPosition): CellWords {
  const { message } = model.getters.getEvaluatedCell(place) as { message?: string };
  if (message) return { kind: "error", text: message };
  const validation = validationAt(model, place);
  if (!validation) return { kind: "none", text: "" };
  const { promptTitle, prompt = "" } = validation;
  // Not the label twice, where the prompt begins with it.
  const title = promptTitle && !prompt.startsWith(promptTitle) ? promptTitle : "";
  const text = [title, prompt].filter(Boolean).join(": ");
  const { decimalSeparator } = model.getters.getLocale();
  return {
    kind: "prompt",
    text: validation.rule.kind === "number" ? sentenceInSigns(text, decimalSeparator) : text,
  };
}

/**
 * The workbook's own words when a value is refused, where the library has only the bare rule; none where the
 * desk has done, or said, what is needed in the library's place.
 */
export function refusalFor(model: GridModel, place: GridPosition, text: string): string | undefined {
  const { getters } = model as {
    getters: GridModel["getters"] & { isGuardedSheet?(sheetId: string): boolean };
  };
  if (text.startsWith("Cannot sort") && getters.isGuardedSheet?.(place.sheetId)) return undefined;
  if (!text.includes("violates the data validation rule")) return text;
  const refusal = ruleInWords(model, place);
  return refusal ? `Not taken. ${refusal}` : text;
}

/** What the rule of a cell takes, in the workbook's own words; undefined where it has none. */
export function ruleInWords(model: GridModel, place: GridPosition): string | undefined {
  const { refusal, rule } = validationAt(model, place) ?? {};
  return refusal && rule?.kind === "number"
    ? sentenceInSigns(refusal, model.getters.getLocale().decimalSeparator)
    : refusal;
}

interface Placed {
  readonly zone: Zone;
  readonly validation: BookValidation;
}
/** The rules of a sheet and where they hold, put together once for each state of its facts. */
const placed = new WeakMap<SheetFacts, readonly Placed[]>();

/**
 * The rule of an input cell; a cell that is no input has none. The thin rows of a block, into which its rules
 * reach so that they stretch with it, hold no inputs.
 */
export function validationAt(
  { getters }: Pick<GridModel, "getters">,
  place: GridPosition,
): BookValidation | undefined {
  const { template, sheets } = (
    getters as GridModel["getters"] & { getBookFacts(): BookFacts }
  ).getBookFacts();
  const facts = sheets[place.sheetId];
  if (!facts) return undefined;
  let rules = placed.get(facts);
  if (!rules) {
    rules = facts.validations.flatMap((validation) => {
      const zone = template === "" ? parseRange(validation.range) : inputZone(validation);
      return zone ? [{ zone, validation }] : [];
    });
    placed.set(facts, rules);
  }
  return rules.find(
    ({ zone }) =>
      zone.top <= place.row && place.row <= zone.bottom && zone.left <= place.col && place.col <= zone.right,
  )?.validation;
}
