import type { Check, WorkbookDefinition } from "./definition";

/** The check of a template that stands on the sheet in these words. */
export const checkWithWords = ({ sheets }: WorkbookDefinition, what: string): Check | undefined =>
  sheets
    .flatMap(({ parts }) => parts)
    .flatMap((part) => (part.kind === "checks" ? part.checks : []))
    .find((check) => check.what === what);
