/**
 * What the cells of a sheet are called and how they speak of themselves, before
 * any formula: columns and fields as objects with their label, hint, unit and
 * look. Formulas are built from these objects, and the names in the workbook
 * follow from them.
 */
import type { Named } from "../formula/build";
import type { Format, InputRule } from "./definition";

/** How a column or a field shows itself. */
export interface Shown {
  readonly unit?: string;
  /** In characters. */
  readonly width?: number;
  readonly format?: Format;
  /** Longer text goes on below in its cell: a row has room for so many lines. */
  readonly lines?: number;
  /** Boxed, so that a hand can write into it on paper. */
  readonly room?: true;
}

/** One of the columns that a formula spills sideways into. */
export interface AcrossWords {
  readonly head: string;
  readonly unit?: string;
  readonly width?: number;
  /** The group's where absent. */
  readonly format?: Format;
}

export interface ColumnWords extends Shown {
  readonly head: string;
  /** What a person may type; a column without it is calculated. */
  readonly input?: InputRule;
  readonly across?: Readonly<Record<string, AcrossWords>>;
}

/** A column that is filled. */
export const entry = <const Look extends Shown>(
  head: string,
  shown: Look,
  input: InputRule,
): Look & { readonly head: string; readonly input: InputRule } => ({ head, ...shown, input });

/** A column that is calculated. */
export const result = <const Look extends Shown>(
  head: string,
  shown: Look,
): Look & { readonly head: string } => ({ head, ...shown });

/** A calculated column whose formula spills sideways as well. */
export const results = <const Look extends Shown, const Across extends Readonly<Record<string, AcrossWords>>>(
  head: string,
  shown: Look,
  across: Across,
): Look & { readonly head: string; readonly across: Across } => ({ head, ...shown, across });

/** The head of one of the columns that a formula spills into; a group of unlike ones has none of its own. */
export const acrossHead = (group: string, head: string, between = ": "): string =>
  group === "" ? head : `${group}${between}${head}`;

type AcrossKeys<Words> = Words extends {
  readonly across: Readonly<Record<infer Key extends string, unknown>>;
}
  ? Key
  : never;
type KeysOf<Columns> = {
  [Key in keyof Columns & string]: Key | `${Key}_${AcrossKeys<Columns[Key]>}`;
}[keyof Columns & string];

/** One of the columns that a formula spills into, with both of its heads. */
export type NamedAcross = Named & { readonly words: { readonly head: string } };

/** A column as formulas, messages and the sheet see it. */
export type NamedColumn<Words = ColumnWords> = Named & {
  readonly key: string;
  readonly words: Words;
} & { readonly [Key in AcrossKeys<Words>]: NamedAcross };

/** What a block is made from; kept beside its columns, where no column's key can hide it. */
export const OF = Symbol("what it is made from");

export interface BlockWords<Columns> {
  readonly name: string;
  readonly columns: Columns;
  readonly groups: Readonly<Record<string, readonly [from: string, to: string]>>;
}

export type NamedBlock<Columns = Readonly<Record<string, ColumnWords>>, Groups extends string = never> = {
  readonly [Key in keyof Columns]: NamedColumn<Columns[Key]>;
} & {
  readonly [Group in Groups]: Named;
} & { readonly [OF]: BlockWords<Columns> };

/**
 * The columns of a block.
 *
 * @param name with which their names begin: `rooms` gives `rooms_run`
 * @param columns by key, in the order of the sheet
 * @param groups names for neighbouring columns together, from one to another
 */
export function block<
  const Columns extends Readonly<Record<string, ColumnWords>>,
  const Groups extends Readonly<Record<string, readonly [KeysOf<Columns>, KeysOf<Columns>]>> = Record<
    never,
    never
  >,
>(name: string, columns: Columns, groups: Groups = {} as Groups): NamedBlock<Columns, keyof Groups & string> {
  const named = Object.entries(columns).map(([key, words]): [string, NamedColumn] => [
    key,
    { name: `${name}_${key}`, key, words, ...acrossNames(`${name}_${key}`, words) },
  ]);
  return {
    ...Object.fromEntries(named),
    ...Object.fromEntries(Object.keys(groups).map((group) => [group, { name: `${name}_${group}` }])),
    [OF]: { name, columns, groups },
  } as unknown as NamedBlock<Columns, keyof Groups & string>;
}

const acrossNames = (name: string, { head, across = {} }: ColumnWords): Record<string, NamedAcross> =>
  Object.fromEntries(
    Object.entries(across).map(([key, words]) => [
      key,
      { name: `${name}_${key}`, words: { head: acrossHead(head, words.head, ", ") } },
    ]),
  );

export interface FieldWords extends Pick<Shown, "unit" | "format"> {
  readonly label: string;
  readonly note?: string;
  /** What a person may type; a field without it is calculated. */
  readonly input?: InputRule;
}

/** A labelled cell that is filled. */
export const asked = (
  label: string,
  shown: Pick<FieldWords, "unit" | "format" | "note">,
  input: InputRule,
): FieldWords & { readonly input: InputRule } => ({ label, ...shown, input });

/** A labelled cell that is calculated. */
export const told = (
  label: string,
  shown: Pick<FieldWords, "unit" | "format" | "note"> = {},
): FieldWords & {
  readonly input?: undefined;
} => ({ label, ...shown });

export type NamedField<Words = FieldWords> = Named & { readonly words: Words };

/**
 * Labelled cells, and names for several of them together.
 *
 * @param prefix with which their names begin: `site` gives `site_tax`
 */
export function fields<
  const Words extends Readonly<Record<string, FieldWords>>,
  const Together extends string = never,
>(
  prefix: string,
  words: Words,
  together: readonly Together[] = [],
): { readonly [Key in keyof Words]: NamedField<Words[Key]> } & { readonly [Key in Together]: Named } {
  return {
    ...Object.fromEntries(
      Object.entries(words).map(([key, one]) => [key, { name: `${prefix}_${key}`, words: one }]),
    ),
    ...Object.fromEntries(together.map((key) => [key, { name: `${prefix}_${key}` }])),
  } as ReturnType<typeof fields<Words, Together>>;
}
