/** The parts of a sheet from the names of their cells and the formulas that go with them. */
import type { Formula, Named } from "../formula/build";
import type { Answer, Block, Bound, Column, Field, Fields, Grid, InputRule } from "./definition";
import {
  OF,
  type BlockWords,
  type ColumnWords,
  type FieldWords,
  type NamedColumn,
  type NamedField,
} from "./names";

/** What an input asks of other cells: when it must be filled, what it must not pass. */
export interface BesideOthers {
  readonly required?: Formula;
  readonly zeroWhere?: Formula;
  readonly atLeast?: Bound;
  readonly atMost?: Bound;
}

type Filled<Columns> = {
  [Key in keyof Columns]: Columns[Key] extends { readonly input: InputRule } ? Key : never;
}[keyof Columns];

/** A formula for each column that is calculated, none for one that is filled. */
export type FormulasOf<Columns> = Readonly<Record<Exclude<keyof Columns, Filled<Columns>>, Formula>>;

export interface BlockPart<Columns> extends Omit<
  Block,
  "kind" | "name" | "columns" | "groups" | "mirrors" | "rowName" | "overLists"
> {
  readonly mirrors?: { readonly [OF]: { readonly name: string } };
  readonly overLists?: {
    readonly line: NamedColumn;
    readonly lists: readonly (readonly [column: NamedColumn, list: NamedColumn])[];
  };
  readonly rowName?: NamedColumn;
  readonly formulas: FormulasOf<Columns>;
  readonly others?: { readonly [Key in Filled<Columns>]?: BesideOthers };
}

export function blockPart<Columns extends Readonly<Record<string, ColumnWords>>>(
  of: { readonly [OF]: BlockWords<Columns> },
  { mirrors, rowName, overLists, formulas, others = {}, ...part }: BlockPart<Columns>,
): Block {
  const { name, columns, groups } = of[OF];
  const formulaOf: Readonly<Record<string, Formula | undefined>> = formulas;
  const othersOf: Readonly<Record<string, BesideOthers | undefined>> = others;
  const together = Object.entries(groups);
  return {
    kind: "block",
    name,
    ...part,
    ...(mirrors && { mirrors: mirrors[OF].name }),
    ...(rowName && { rowName: rowName.key }),
    ...(overLists && {
      overLists: {
        line: overLists.line.key,
        lists: overLists.lists.map(([{ key }, { name: list }]) => ({ key, list })),
      },
    }),
    columns: Object.entries(columns).map(([key, { input, across, ...words }]): Column => ({
      key,
      ...words,
      ...(input && { input: besideOthers(input, othersOf[key]) }),
      ...(formulaOf[key] !== undefined && { formula: formulaOf[key] }),
      ...(across && { across: Object.entries(across).map(([end, one]) => ({ key: end, ...one })) }),
    })),
    ...(together.length > 0 && {
      groups: together.map(([group, [from, to]]) => ({ name: `${name}_${group}`, from, to })),
    }),
  };
}

/** An input with what it asks of other cells; bounds are for numbers only. */
function besideOthers(input: InputRule, { atLeast, atMost, ...more }: BesideOthers = {}): InputRule {
  const { rule } = input;
  if (rule.kind !== "number") return { ...input, ...more };
  return { ...input, ...more, rule: { ...rule, ...(atLeast && { atLeast }), ...(atMost && { atMost }) } };
}

/** The field that a value must not pass, with its words for the prompt. */
export const bound = (of: Named, words: string, more: Pick<Bound, "orEqual"> = {}): Bound => ({
  name: of.name,
  words,
  ...more,
});

type Asked = NamedField<FieldWords & { readonly input: InputRule }>;

/** A field whose entry depends on others. */
export const askedBeside = ({ name, words }: Asked, others: BesideOthers): Field => ({
  name,
  ...words,
  input: besideOthers(words.input, others),
});

/** A calculated field. */
export const worked = (
  { name, words: { input: _none, ...words } }: NamedField<FieldWords & { readonly input?: undefined }>,
  formula: Formula,
  more: Partial<Omit<Field, "name" | "label" | "input" | "formula">> = {},
): Field => ({ name, ...words, ...more, formula });

/** A field that nobody fills and no formula. */
export const leftBlank = ({ name, words: { input: _none, ...words } }: NamedField): Field => ({
  name,
  ...words,
});

/** A field that the formula of one above fills. */
export const spilledInto = ({ name, words: { input: _none, ...words } }: NamedField): Field => ({
  name,
  ...words,
  spilled: true,
});

/** @param of in the order of the sheet; a field that is filled stands by itself */
export const fieldsPart = (
  heading: string,
  of: readonly (Asked | Field)[],
  {
    together,
    ...more
  }: Partial<Omit<Fields, "kind" | "heading" | "fields" | "name">> & { readonly together?: Named } = {},
): Fields => ({
  kind: "fields",
  heading,
  ...(together && { name: together.name }),
  ...more,
  fields: of.map((one): Field => ("words" in one ? { name: one.name, ...one.words } : one)),
});

export const gridPart = (
  heading: string,
  heads: readonly string[],
  rows: readonly (readonly [row: NamedField, formulas: readonly Formula[]])[],
): Grid => ({
  kind: "grid",
  heading,
  heads,
  rows: rows.map(([{ name, words }, formulas]) => ({
    name,
    label: words.label,
    unit: words.unit ?? "",
    format: words.format ?? "text",
    formulas,
  })),
});

export function answerPart(
  of: { readonly [OF]: BlockWords<Readonly<Record<string, ColumnWords & { readonly width: number }>>> },
  part: Pick<Answer, "heading" | "rows" | "lines"> & { readonly formula: Formula },
): Answer {
  const { name, columns } = of[OF];
  return {
    kind: "answer",
    name,
    ...part,
    columns: Object.entries(columns).map(([key, { head, unit, width, format }]) => ({
      key,
      head,
      unit,
      width,
      format,
    })),
  };
}
