/**
 * The words in which a workbook is defined: sheets of fields, blocks, grids,
 * text and checks, as data. `layOut` turns a definition into a book; nothing
 * about a sheet is written anywhere else.
 */

import type { Formula, Named } from "../formula/build";

/** How a value is shown; `formats.ts` has the number format of each. */
export type Format =
  "text" | "integer" | "one" | "two" | "three" | "general" | "percent" | "money" | "date" | "degrees";

/** Another field, which the value must not pass. */
export interface Bound {
  readonly name: string;
  /** It in the prompt's words: "the hottest cable". */
  readonly words: string;
  /** The two may be equal. */
  readonly orEqual?: true;
}

/** What a person may type into an input cell, and how to ask for it; `entryChecks` holds what stands there to it. */
export interface InputRule {
  /** What to give, in a few words: shown when the cell is chosen. */
  readonly what: string;
  readonly example?: string;
  /** A filled row, or the sheet, cannot do without it; a formula says of which rows that is so. */
  readonly required?: true | Formula;
  /** A 0 asks for a reason on the list of zeros that are meant, or is only noted; without this it is a value as any. */
  readonly zero?: "reason" | "note";
  /** A formula for the rows in which a 0 matters: all of them where absent. */
  readonly zeroWhere?: Formula;
  readonly rule:
    | {
        readonly kind: "number";
        readonly min?: number;
        readonly max?: number;
        readonly integer?: boolean;
        readonly atLeast?: Bound;
        readonly atMost?: Bound;
        /** Words that say as much as a number: a meter that shows "no signal" was read. With `min` and `max`. */
        readonly orWords?: readonly string[];
      }
    | { readonly kind: "date" }
    | { readonly kind: "choice"; readonly choices: readonly string[] }
    | { readonly kind: "named"; readonly name: string }
    | { readonly kind: "text" }
    /** Degrees east or text such as 97W: no rule of a spreadsheet's own fits, so the function says. */
    | { readonly kind: "slot" };
}

export interface Column {
  readonly key: string;
  readonly head: string;
  readonly unit?: string;
  /** In characters. */
  readonly width?: number;
  readonly format?: Format;
  /** Present in an input column. */
  readonly input?: InputRule;
  /** Present in a calculated column: one formula over names, which spills down. */
  readonly formula?: Formula;
  /** Longer text goes on below in its cell: a row has room for so many lines. */
  readonly lines?: number;
  /** Boxed, so that a hand can write into it on paper. */
  readonly room?: true;
  /** For a formula that spills sideways as well: its columns, by key and head. */
  readonly across?: readonly {
    readonly key: string;
    readonly head: string;
    readonly unit?: string;
    /** In characters; the column's own where absent. */
    readonly width?: number;
    /** The column's own where absent. */
    readonly format?: Format;
  }[];
}

/** Rows that a person fills, with calculated columns beside them. */
export interface Block {
  readonly kind: "block";
  /** Names of its columns begin with this: `rooms` gives `rooms_run`. */
  readonly name: string;
  readonly heading: string;
  /** Rows made ready for filling. */
  readonly prepared: number;
  /** The rows of this block stand for the rows of that one: it grows with it. */
  readonly mirrors?: string;
  /** Key of the column that names the rows; the first where absent. */
  readonly rowName?: string;
  /** Filled cells of these columns stand out where the list of another block says something in the row's line of it. */
  readonly overLists?: {
    /** Key of the column that tells the line. */
    readonly line: string;
    readonly lists: readonly { readonly key: string; readonly list: string }[];
  };
  /** Written by the program and for it: nobody fills it, and nobody asks what changed in it. */
  readonly record?: true;
  /** Prints with its empty rows, for a hand to write into. */
  readonly byHand?: true;
  readonly columns: readonly Column[];
  /** Names for neighbouring columns together, from one key to another; `loss_low_cold` is a part of `loss`. */
  readonly groups?: readonly { readonly name: string; readonly from: string; readonly to: string }[];
}

/** One labelled cell. */
export interface Field {
  readonly name: string;
  readonly label: string;
  /** A formula for what stands in the label's place, where that depends on the job. */
  readonly labelFormula?: Formula;
  readonly unit?: string;
  readonly note?: string;
  readonly format?: Format;
  readonly input?: InputRule;
  readonly formula?: Formula;
  /** Fixed, in a field that is neither filled nor calculated. */
  readonly value?: number | string;
  /** The formula fills this many fields from here down. */
  readonly spillRows?: number;
  /** It fills this many cells to the right as well; 1 where absent. */
  readonly spillColumns?: number;
  /** How the cells beside the first show what they get; as the first where absent. */
  readonly spillFormats?: readonly Format[];
  /** Filled by the formula of a field above. */
  readonly spilled?: boolean;
  /** Stands out: a total. */
  readonly strong?: boolean;
  /** A verdict word. */
  readonly verdict?: boolean;
  /** Calculated cells to the right of the unit; named after the field and their key. */
  readonly beside?: readonly {
    readonly key: string;
    readonly format?: Format;
    readonly formula: Formula;
    readonly verdict?: boolean;
  }[];
}

export interface Fields {
  readonly kind: "fields";
  readonly heading: string;
  readonly fields: readonly Field[];
  /** A name for the values of all fields together, top to bottom. */
  readonly name?: string;
  /** Of the values, in characters, where they are longer than usual. */
  readonly valueWidth?: number;
  /** Heads of the cells beside the fields. */
  readonly besideHeads?: readonly string[];
  /** Heads of the values and of the cells that they spill into. */
  readonly valueHeads?: readonly string[];
}

/** A small table of single-cell formulas with a name for each row. */
export interface Grid {
  readonly kind: "grid";
  readonly heading: string;
  readonly heads: readonly string[];
  readonly rows: readonly {
    readonly name: string;
    readonly label: string;
    readonly unit: string;
    readonly format: Format;
    readonly formulas: readonly Formula[];
  }[];
}

/** One formula that answers with a table of its own size: it spills below the heads. */
export interface Answer {
  readonly kind: "answer";
  /** Names the whole table; each column is this and its key. */
  readonly name: string;
  readonly heading: string;
  readonly formula: Formula;
  /** As many as the answer can have. */
  readonly rows: number;
  /** Lines of text that a row has room for. */
  readonly lines: number;
  readonly columns: readonly {
    readonly key: string;
    readonly head: string;
    readonly unit?: string;
    readonly width: number;
    readonly format?: Format;
  }[];
}

export interface Text {
  readonly kind: "text";
  readonly heading: string;
  readonly lines: readonly string[];
}

/** Words that an input cell elsewhere offers. */
export interface Words {
  readonly kind: "words";
  readonly heading: string;
  /** Names the words together. */
  readonly name: string;
  readonly words: readonly string[];
}

/** Rows that a check counts and names. */
export interface CountedRows {
  /** The column that names the rows. */
  readonly of: Named;
  /** A formula over the rows, true or more than 0 where one is counted, and never an error. */
  readonly bad: Formula;
}

/** What a check looks at and says. */
export interface CheckWords {
  readonly what: string;
  /** The limit in words. */
  readonly limit: string;
  /** A formula for what was found, or the rows that are counted. */
  readonly found: Formula | CountedRows;
  readonly format?: Format;
  /** A formula of the cell of what was found, true when the check passes. */
  readonly passes: (found: Formula) => Formula;
  /** Sheet to look at. */
  readonly where: string;
  /** A formula for the places themselves, each after "; ", where rows do not say them. */
  readonly places?: Formula;
  /** A wish rather than a rule: shown as a note and not counted. */
  readonly advice?: boolean;
  /** The sheet whose entries it looks at, where it looks at nothing that follows from them. */
  readonly entriesOf?: string;
}

export interface Check extends CheckWords {
  /** What it is known by, whatever it says. */
  readonly id: string;
}

export interface Checks {
  readonly kind: "checks";
  readonly heading: string;
  readonly checks: readonly Check[];
}

/** A fixed table: its cells are figures and words, neither filled nor calculated. */
export interface Table {
  readonly kind: "table";
  readonly heading: string;
  /** Lines under the heading. */
  readonly lines?: readonly string[];
  readonly columns: readonly {
    readonly head: string;
    /** In characters; left to the sheet's other parts where absent. */
    readonly width?: number;
    readonly format?: Format;
    /** Longer text goes on below in its cell. */
    readonly wrap?: boolean;
    /** Names the column's cells together. */
    readonly name?: string;
  }[];
  readonly rows: readonly (readonly (number | string)[])[];
  /** Rows that stand out, counted from the first: sums. */
  readonly strongRows?: readonly number[];
  /** Its blank cells are boxed, with room for a hand to write into. */
  readonly byHand?: true;
}

/** A question with its figures, a cell for the answer and hints; beside it a worked example. */
export interface Exercise {
  readonly kind: "exercise";
  readonly heading: string;
  readonly task: string;
  readonly given: readonly {
    readonly name: string;
    readonly label: string;
    readonly value: number | string;
    readonly unit: string;
  }[];
  readonly answer: {
    readonly name: string;
    readonly label: string;
    readonly unit: string;
    readonly format: Format;
    readonly input: InputRule;
  };
  readonly hints: readonly string[];
  readonly example: {
    readonly heading: string;
    /** Symbol, meaning, value, unit, line of arithmetic. */
    readonly rows: readonly (readonly [string, string, number | string, string, string])[];
  };
}

export type Part = Block | Fields | Grid | Answer | Text | Words | Checks | Table | Exercise;

export interface SheetDefinition {
  readonly name: string;
  readonly kind: "about" | "input" | "parts" | "workings" | "checks" | "print";
  /** What the sheet is for, in a sentence under its title. */
  /** Words of its verdicts that need attention, beside the usual ones. */
  readonly alerts?: readonly string[];
  readonly intro: string;
  readonly parts: readonly Part[];
  readonly frozenColumns?: number;
  readonly print: {
    readonly orientation: "portrait" | "landscape";
    /** Key of the last column of the sheet's first block that prints, or of one of a group; what is right of it stays on the screen. */
    readonly through?: string;
    /** Its block's heads stand on every page; else only the sheet's title does. */
    readonly repeatHeads?: boolean;
    /** All of it on one page. */
    readonly onePage?: boolean;
  };
}

export interface WorkbookDefinition {
  readonly id: string;
  readonly title: string;
  readonly version: string;
  readonly sheets: readonly SheetDefinition[];
}

/** What a person fills in: fields by name; for each block its rows, by column key. */
export interface JobInputs {
  readonly fields?: Readonly<Record<string, number | string>>;
  readonly blocks?: Readonly<Record<string, readonly Readonly<Record<string, number | string>>[]>>;
}
