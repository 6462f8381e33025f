/** What a workbook of any version fills in of today's template, where and as today's has it. */
import type { Book } from "./book";
import type { JobInputs, WorkbookDefinition } from "./definition";
import { jobInputsOf } from "./jobInputsOf";
import { asOneTree, type Rearranged } from "./multiRoom/asOneTree";
import { inTodaysWords } from "./todaysWords";

export interface TodaysInputs {
  readonly inputs: JobInputs;
  /** What has another place since, or none. */
  readonly rearranged: readonly Rearranged[];
}

export const todaysInputs = (definition: WorkbookDefinition, book: Book): TodaysInputs =>
  asOneTree(book, inTodaysWords(jobInputsOf(definition, book)));
