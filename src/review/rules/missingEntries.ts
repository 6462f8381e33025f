import type { Book } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import { conditionOf } from "../conditionOf";
import type { Finding } from "../finding";
import { inputsIn, type Input, type InputCell } from "../inputsIn";
import { filledCells, hasJob, isBlank, lookupWord, namedCells } from "../namedCells";
import type { Rule } from "../rule";
import { rowsIn } from "../rowsIn";

/** Columns that say what a row is, and not that it is meant: a floor typed ahead makes no outlet. */
const NOT_A_ROW = new Set([
  estimate.rooms.floor.name,
  estimate.rooms.room.name,
  estimate.rooms.kind.name,
  estimate.rooms.note.name,
]);
/** Told by rules of their own, which say more of them. */
const TOLD_ELSEWHERE =
  /^(?:heads_type|rooms_from|branches_(?:device|from)|(?:cables|passives|units|supplies|plates|feeds|resistors|fittings)_(?:price|until))$/;
/** A text of these alone says nothing. */
const NOTHING_SAID = /^[\s\-–—_.?/]*$/;

export const missingEntries: Rule = {
  id: "entry missing",
  reason:
    "A blank counts as zero or as nothing, so the price is too low or the page says nothing, without an error anywhere.",
  example: "No crew rate: all labour is free. No customer: the quote is for nobody.",
  find: (reviewed) => {
    const { read, computed, definition } = reviewed;
    if (!hasJob(read)) return [];
    const inputs = inputsIn(read, definition);
    const nameless = namelessRows(inputs, read);
    const found = inputs
      .filter(({ name, namesRows }) => !namesRows && !TOLD_ELSEWHERE.test(name))
      .flatMap((one) => {
        const asked = conditionOf(one.input.required, read, computed);
        return one.cells
          .filter((cell) => cell.inRow && isMissing(one, cell) && asked(cell.index))
          .map((cell) => missing(one, cell));
      });
    return [...nameless, ...found, ...receiversForgotten(read), ...offTheFocus(read)];
  },
};

/** The one name that cells ask of a list and that it has not. */
function wantedName(inputs: readonly Input[], read: Book, list: string): string | undefined {
  const listed = new Set(filledCells(read, list).map(({ value }) => lookupWord(value)));
  const wanted = new Set(
    inputs
      .filter(({ input }) => input.rule.kind === "named" && input.rule.name === list)
      .flatMap(({ cells }) =>
        cells.flatMap(({ value }) => (typeof value === "string" && value !== "" ? [value] : [])),
      ),
  );
  const unknown = [...wanted].filter((one) => !listed.has(lookupWord(one)));
  return unknown.length === 1 ? unknown[0] : undefined;
}

/** A blank receiver is a spare outlet; so many of nothing is a slip. */
function receiversForgotten(read: Book): Finding[] {
  const [receivers, outlets] = [estimate.rooms.receiver.name, estimate.rooms.outlet.name].map((name) =>
    namedCells(read, name),
  );
  return filledCells(read, estimate.rooms.quantity.name).flatMap(({ index, value }): Finding[] => {
    const [cell, outlet] = [receivers![index], outlets![index]];
    if (!cell || !isBlank(cell.value) || isBlank(outlet?.value) || value === 0) return [];
    return [
      {
        weight: "doubtful",
        place: cell.place,
        message: `${String(outlet?.value)} has ${String(value)} of a receiver that is not named.`,
        expected: "The kind of receiver; both blank for a spare outlet.",
        effect: "It gets no user band, and nothing of it is counted.",
        remedy: "Fill the cell, or clear “How many”.",
      },
    ];
  });
}

/** Common practice, no source: what a slot beside the focus loses, as the cell says. */
const OFF_FOCUS_DB = { low: 1, high: 2 } as const;

/** A dish of several slots without what those beside its focus lose. */
function offTheFocus(read: Book): Finding[] {
  const { dishes, slots } = estimate;
  const all = filledCells(read, slots.slot.name).length;
  return rowsIn(read, dishes.name, { slots: dishes.slots, off: dishes.off_focus }).flatMap(
    ({ called, cell, word }): Finding[] => {
      const count = word("slots") === "" ? all : word("slots").split(/[\s,;]+/).length;
      const off = cell("off");
      if (count < 2 || !off || !isBlank(off.value)) return [];
      return [
        {
          weight: "wrong",
          place: off.place,
          message: `${called} receives ${count} slots, and what those beside its focus lose is blank.`,
          expected: `Usually ${OFF_FOCUS_DB.low} to ${OFF_FOCUS_DB.high} dB (common practice, no source).`,
          usual: OFF_FOCUS_DB,
          effect: "Neither the dish nor what hangs on it can be worked out.",
          remedy: "Fill the cell.",
        },
      ];
    },
  );
}

const isMissing = ({ input }: Input, { value }: InputCell): boolean =>
  isBlank(value) || (input.rule.kind === "text" && typeof value === "string" && NOTHING_SAID.test(value));

const missing = ({ label, block, input, cells }: Input, { place, value, called }: InputCell): Finding => ({
  weight: "wrong",
  place,
  message: isBlank(value)
    ? `${label}${block === undefined || cells.length === 0 ? "" : ` of ${called}`} is blank.`
    : `${label} is “${String(value)}”.`,
  expected: `${input.what}${input.example ? `, such as ${input.example}` : ""}.`,
  effect: block === undefined ? "A blank counts as zero, and prints as nothing." : "A blank counts as zero.",
  remedy: "Fill the cell.",
});

/** Rows that are filled and have no name: no sum and no list sees them. */
function namelessRows(inputs: readonly Input[], read: Book): Finding[] {
  return inputs
    .filter(({ namesRows, block }) => namesRows && block !== undefined)
    .flatMap(({ block, label, cells, name }) => {
      const others = inputs.filter(
        (one) => one.block === block && one.name !== name && !NOT_A_ROW.has(one.name),
      );
      return cells.flatMap((cell, row): Finding[] => {
        if (!isBlank(cell.value) || !others.some((one) => !isBlank(one.cells[row]?.value))) return [];
        return [
          {
            weight: "wrong",
            place: cell.place,
            message: `This row is filled and has no name: ${label} is blank.`,
            expected: "A name of its own, or an empty row.",
            effect: "It is neither counted nor priced, and what names it elsewhere is not found.",
            remedy: "Fill the cell, or clear the row.",
            meant: wantedName(inputs, read, name),
          },
        ];
      });
    });
}
