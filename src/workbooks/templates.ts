/** Every template, empty and with its demonstration. */
import type { Book } from "./book";
import type { Filling, WorkbookDefinition } from "./definition";
import { layOut } from "./layOut";
import { multiRoom } from "./multiRoom/definition";
import { guestHouse } from "./multiRoom/guestHouse";
import { startingPoint } from "./multiRoom/startingPoint";

export interface Template {
  readonly id: string;
  readonly title: string;
  readonly definition: WorkbookDefinition;
  /** Starts from figures of standards and common practice: no job and no prices. */
  readonly empty: () => Book;
  /** An invented job. */
  readonly demonstration: () => Book;
}

const template = (definition: WorkbookDefinition, start: Filling, example: Filling): Template => ({
  id: definition.id,
  title: definition.title,
  definition,
  empty: () => layOut(definition, start),
  demonstration: () => layOut(definition, example),
});

export const templates: readonly Template[] = [template(multiRoom, startingPoint, guestHouse)];

/** The template that a workbook says it was made from. */
export const templateOf = (id: string): Template | undefined => templates.find((one) => one.id === id);
