/** What a spreadsheet's own errors mean, and the way out, where the cell brings no sentence with it. */

export interface ErrorWords {
  readonly says: string;
  readonly wayOut: string;
}

const WORDS: Readonly<Record<string, ErrorWords>> = {
  "#NAME?": {
    says: "a name or a function in the formula is not known here.",
    wayOut: "Use Re-enter in this pane; if it stays, look at the spelling in the formula.",
  },
  "#SPILL!": {
    says: "something stands where the results belong.",
    wayOut: "Clear what was typed below or beside this cell.",
  },
  "#REF!": {
    says: "a cell that the formula reads was removed.",
    wayOut: "Take the removal back, or enter the formula again.",
  },
  "#DIV/0!": {
    says: "the formula divides by zero.",
    wayOut: "Fill the cells that it reads; a blank counts as zero.",
  },
  "#N/A": {
    says: "something that the formula looks up was not found.",
    wayOut: "Compare the spelling with the list in which it is looked up.",
  },
  "#BAD_EXPR": { says: "the formula cannot be read.", wayOut: "Enter the formula again as it should be." },
  "#NUM!": { says: "the result is no number that a cell can hold.", wayOut: "Check the inputs of its row." },
};

const OTHER: ErrorWords = {
  says: "an input that it reads is of the wrong kind.",
  wayOut: "Check the inputs of its row: text where a number belongs, or another error.",
};

export const errorWords = (error: string): ErrorWords => WORDS[error] ?? OTHER;
