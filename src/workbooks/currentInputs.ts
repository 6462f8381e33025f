/** What a workbook of an earlier version fills in of today's template. */
import type { Book } from "./book";
import type { JobInputs, WorkbookDefinition } from "./definition";
import { jobInputsOf } from "./jobInputsOf";
import type { Rearranged } from "./multiRoom/asOneTree";
import type { Template } from "./templates";
import { todaysInputs } from "./todaysInputs";

export interface CurrentInputs {
  readonly inputs: JobInputs;
  /** The fields and blocks that the old workbook had no place for, with the figures that a new one starts from. */
  readonly begun: readonly string[];
  /** What stands elsewhere now, or nowhere. */
  readonly rearranged: readonly Rearranged[];
}

/** @param old a workbook of the template; what its version did not ask for begins as in a new workbook */
export function currentInputs({ definition, empty }: Template, old: Book): CurrentInputs {
  const start = jobInputsOf(definition, empty());
  const { inputs: carried, rearranged } = todaysInputs(definition, old);
  const had = new Set(old.names.map(({ name }) => name));
  const required = requiredFields(definition);
  // What may stay blank says something by that: as the older workbook did.
  const fields = Object.entries(start.fields ?? {}).filter(([name]) => !had.has(name) && required.has(name));
  const blocks = Object.entries(start.blocks ?? {}).filter(
    ([block]) => !old.names.some(({ name }) => name.startsWith(`${block}_`)),
  );
  return {
    inputs: {
      fields: { ...carried.fields, ...Object.fromEntries(fields) },
      blocks: { ...carried.blocks, ...Object.fromEntries(blocks) },
    },
    begun: [...fields, ...blocks].map(([name]) => name),
    rearranged,
  };
}

const requiredFields = ({ sheets }: WorkbookDefinition): ReadonlySet<string> =>
  new Set(
    sheets
      .flatMap(({ parts }) => parts)
      .flatMap((part) => (part.kind === "fields" ? part.fields : []))
      .flatMap(({ name, input }) => (input?.required ? [name] : [])),
  );
