/** Every input of a template with its cells in a workbook, each with the name of its row. */
import type { Book, BookResult } from "../workbooks/book";
import type { Column, InputRule, WorkbookDefinition } from "../workbooks/definition";
import { remembered } from "../workbooks/remembered";
import { todaysWord } from "../workbooks/todaysWords";
import { isBlank, namedCells, type NamedCell } from "./namedCells";

export interface InputCell extends NamedCell {
  /** The value of the row's name; the label of a field. */
  readonly called: string;
  /** The row has a name; always so for a field. */
  readonly inRow: boolean;
}

export interface Input {
  readonly name: string;
  readonly label: string;
  readonly unit?: string;
  readonly input: InputRule;
  /** The block's name; absent for a field. */
  readonly block?: string;
  readonly sheet: string;
  /** It names the rows of its block. */
  readonly namesRows: boolean;
  /** In a block without its two thin rows. */
  readonly cells: readonly InputCell[];
}

/** @returns only inputs whose name the workbook has */
export const inputsIn = (book: Book, definition: WorkbookDefinition | undefined): readonly Input[] =>
  remembered(book, `inputs of ${definition?.id} ${definition?.version}`, () => inputsOf(book, definition));

function inputsOf(book: Book, definition: WorkbookDefinition | undefined): Input[] {
  const isEarlier = book.templateVersion !== definition?.version;
  return (definition?.sheets ?? []).flatMap(({ name: sheet, parts }) =>
    parts.flatMap((part): Input[] => {
      if (part.kind === "fields")
        return part.fields.flatMap(({ name, label, unit, input }) => {
          const [cell] = input ? namedCells(book, name) : [];
          return input && cell
            ? [
                {
                  name,
                  label,
                  unit,
                  input,
                  sheet,
                  namesRows: false,
                  cells: [{ ...cell, called: label, inRow: true }],
                },
              ]
            : [];
        });
      if (part.kind !== "block") return [];
      const inputs = part.columns.filter((one): one is Column & { input: InputRule } => !!one.input);
      const key = (inputs.find((one) => one.key === (part.rowName ?? "outlet")) ?? inputs[0])?.key;
      const rows = namedCells(book, `${part.name}_${key}`);
      return inputs.map(({ key: own, head, unit, input }): Input => {
        const name = `${part.name}_${own}`;
        const cells = namedCells(book, name).slice(1, -1);
        return {
          name,
          label: head,
          unit,
          input,
          sheet,
          block: part.name,
          namesRows: own === key,
          cells: cells.map((cell) => {
            const row = rows[cell.index]?.value;
            const value = isEarlier ? todaysWord(name, cell.value) : cell.value;
            return { ...cell, value, called: wordOf(row), inRow: !isBlank(row) };
          }),
        };
      });
    }),
  );
}

const wordOf = (value: BookResult | undefined): string => (isBlank(value) ? "" : String(value).trim());
