/** Every template, empty and with its demonstration. */
import { alignmentCard, alignmentCardExample, alignmentCardStart } from "./alignmentCard/definition";
import type { Book } from "./book";
import type { JobInputs, WorkbookDefinition } from "./definition";
import { layOut } from "./layOut";
import { apartmentBlock } from "./multiRoom/apartmentBlock";
import { multiRoom } from "./multiRoom/definition";
import { guestHouse } from "./multiRoom/guestHouse";
import { hostel } from "./multiRoom/hostel";
import { startingPoint } from "./multiRoom/startingPoint";
import { quoteReview } from "./quoteReview/definition";
import { quoteReviewExample, quoteReviewStart } from "./quoteReview/jobInputs";
import { standardsWorkbook } from "./standards/definition";
import { standardsExample } from "./standards/demonstration";
import { standardsStart } from "./standards/start";
import { singleDrop, singleDropExample, singleDropStart } from "./singleDrop/definition";

export interface Template {
  readonly id: string;
  readonly title: string;
  readonly definition: WorkbookDefinition;
  /** Starts from figures of standards and common practice: no job and no prices. */
  readonly empty: () => Book;
  /** What the empty one holds. */
  readonly start: JobInputs;
  /** An invented job. */
  readonly demonstration: () => Book;
  /** Further invented jobs, by the name of their file. */
  readonly more: readonly { readonly id: string; readonly title: string; readonly book: () => Book }[];
}

interface Example {
  readonly id: string;
  readonly title: string;
  readonly inputs: JobInputs;
}

const template = (
  definition: WorkbookDefinition,
  start: JobInputs,
  example: JobInputs,
  more: readonly Example[] = [],
): Template => ({
  id: definition.id,
  title: definition.title,
  definition,
  empty: () => layOut(definition, start),
  start,
  demonstration: () => layOut(definition, example),
  more: more.map(({ id, title, inputs }) => ({ id, title, book: () => layOut(definition, inputs) })),
});

export const templates: readonly Template[] = [
  template(multiRoom, startingPoint, guestHouse, [
    { id: "apartment-block", title: "Apartment block, 240 outlets", inputs: apartmentBlock },
    { id: "hostel", title: "Hostel, 40 outlets of four room types", inputs: hostel },
  ]),
  template(standardsWorkbook, standardsStart, standardsExample),
  template(singleDrop, singleDropStart, singleDropExample),
  template(alignmentCard, alignmentCardStart, alignmentCardExample),
  template(quoteReview, quoteReviewStart, quoteReviewExample),
];

/** Invented jobs of the main template, each to begin with. */
export const demonstrations: readonly { readonly title: string; readonly book: () => Book }[] = [
  { title: "Guest house, 24 outlets", book: templates[0]!.demonstration },
  ...templates[0]!.more,
];

/** The template that a workbook says it was made from. */
export const templateOf = (id: string): Template | undefined => templates.find((one) => one.id === id);
