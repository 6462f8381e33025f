/** What a spreadsheet's own errors mean, and how to fix it, where the cell brings no sentence with it. */

export interface ErrorWords {
  readonly message: string;
  readonly remedy: string;
}

const WORDS: Readonly<Record<string, ErrorWords>> = {
  "#NAME?": {
    message: "a name or a function in the formula is not known here.",
    remedy: "Use Repair formulas in this pane; if it stays, look at the spelling in the formula.",
  },
  "#SPILL!": {
    message: "something stands where the results belong.",
    remedy: "Clear what was typed below or beside this cell.",
  },
  "#REF!": {
    message: "a cell that the formula reads was removed.",
    remedy: "Take the removal back, or enter the formula again.",
  },
  "#DIV/0!": {
    message: "the formula divides by zero.",
    remedy: "Fill the cells that it reads; a blank counts as zero.",
  },
  "#N/A": {
    message: "something that the formula looks up was not found.",
    remedy: "Compare the spelling with the list in which it is looked up.",
  },
  "#BAD_EXPR": { message: "the formula cannot be read.", remedy: "Enter the formula again as it should be." },
  "#NUM!": {
    message: "the result is no number that a cell can hold.",
    remedy: "Check the inputs of its row.",
  },
};

const OTHER: ErrorWords = {
  message: "an input that it reads is of the wrong kind.",
  remedy: "Check the inputs of its row: text where a number belongs, or another error.",
};

export const errorWords = (error: string): ErrorWords => WORDS[error] ?? OTHER;
