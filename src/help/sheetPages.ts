/** A help page for each sheet of the main template: what it is for, what to give, and how it looks. */
import type { Book } from "../workbooks/book";
import type { Asked } from "../workbooks/typed/typedKind";
import type { Block, Check, Fields, Part, SheetDefinition } from "../workbooks/definition";
import { validationOf } from "../workbooks/inputValidation";
import { groupOf, SHEET_GROUPS } from "../workbooks/sheetGroups";
import { templates } from "../workbooks/templates";
import { pageOfSheet } from "./facts";
import { framed, SHEETS_PAGE, wideTable } from "./frame";
import { html, type Html } from "./html";
import { sheetPicture } from "./sheetPicture";

/** @returns the pages by name, with the one that lists them */
export function sheetPages(): [string, string][] {
  const [{ definition, demonstration }] = templates as [(typeof templates)[number]];
  const book = demonstration();
  // In the order of work, as the groups have them.
  const sheets = SHEET_GROUPS.flatMap((group) => definition.sheets.filter((one) => groupOf(one) === group));
  const checks = definition.sheets
    .flatMap(({ parts }) => parts)
    .flatMap((part) => (part.kind === "checks" ? part.checks : []));
  return [
    [SHEETS_PAGE, listOf(sheets)],
    ...sheets.map((sheet, at): [string, string] => [
      pageOfSheet(sheet.name),
      pageFor(sheet, sheets[at - 1], sheets[at + 1], checks, book),
    ]),
  ];
}

const linkTo = ({ name }: SheetDefinition): Html => html`<a href="${pageOfSheet(name)}">${name}</a>`;

const listOf = (sheets: readonly SheetDefinition[]): string =>
  framed({
    title: "Sheets",
    body: html`<h1>The sheets of the multi-room estimate</h1>
      <p class="lead">In the order of work. Boxed cells are yours to fill; all else is worked out.</p>
      ${SHEET_GROUPS.map(
        (group) =>
          html`<h2>${group}</h2>
            <dl>
              ${sheets
                .filter((one) => groupOf(one) === group)
                .map(
                  (one) =>
                    html`<dt>${linkTo(one)}</dt>
                      <dd>${one.intro}</dd> `,
                )}
            </dl> `,
      )}`,
  });

function pageFor(
  sheet: SheetDefinition,
  before: SheetDefinition | undefined,
  after: SheetDefinition | undefined,
  checks: readonly Check[],
  book: Book,
): string {
  const { name, intro, parts } = sheet;
  const drawn = book.sheets.find((one) => one.name === name);
  const own = checks.filter(({ where, entriesOf }) => !entriesOf && where.split(", ")[0] === name);
  return framed({
    title: name,
    body: html`<h1>${name}</h1>
      <p class="lead">${intro}</p>
      <ul class="links">
        ${before && html`<li>Before it: ${linkTo(before)}</li>`}
        ${after && html`<li>After it: ${linkTo(after)}</li>`}
        <li><a href="${SHEETS_PAGE}">All sheets</a></li>
      </ul>
      ${
        drawn &&
        html`<figure>
          <div class="wide" role="region" aria-label="Picture of ${name}" tabindex="0">
            ${sheetPicture(book, drawn)}
          </div>
          <figcaption>
            How it begins, for an invented guest house. Boxed: yours to fill. Grey: worked out.
          </figcaption>
        </figure>`
      }
      ${parts.map(partOf)}
      ${
        own.length > 0
          ? html`<h2>Checks that lead here</h2>
              ${wideTable(
                `Checks that lead to ${name}`,
                ["Check", "Passes with"],
                own.map(({ what, limit }) => [what, limit]),
              )}`
          : undefined
      }`,
  });
}

function partOf(part: Part): Html | undefined {
  if (part.kind === "fields") return filled(part.heading, askedIn(part), workedOutIn(part));
  if (part.kind === "block") return filled(part.heading, columnsOf(part), calculatedIn(part));
  if (part.kind === "text")
    return html`<h2>${part.heading}</h2>
      ${part.lines.map((line) => html`<p>${line}</p> `)}`;
  return undefined;
}

type Named = readonly [label: string, asked: Asked];

const askedIn = ({ fields }: Fields): Named[] =>
  fields.filter(({ input }) => input).map((one) => [one.label, one]);
const workedOutIn = ({ fields }: Fields): string[] =>
  fields.filter(({ input, formula }) => !input && formula).map(({ label }) => label);
const columnsOf = ({ columns }: Block): Named[] =>
  columns.filter(({ input }) => input).map((one) => [one.head, one]);
const calculatedIn = ({ columns }: Block): string[] =>
  columns.filter(({ formula }) => formula).map(({ head }) => head);

/** What to give stands in the words that the cell itself has. */
function filled(heading: string, asked: readonly Named[], workedOut: readonly string[]): Html | undefined {
  if (asked.length + workedOut.length === 0) return undefined;
  return html`<h2>${heading}</h2>
    ${
      asked.length > 0
        ? wideTable(
            heading,
            ["To fill", "What it wants"],
            asked.map(([label, one]) => [label, wanted(label, one)]),
          )
        : undefined
    }
    ${workedOut.length > 0 ? html`<p>Worked out: ${workedOut.join("; ")}.</p>` : undefined}`;
}

function wanted(label: string, one: Asked): string {
  const { prompt } = validationOf(label, one, "A1");
  const { required } = one.input!;
  return required === true
    ? `${prompt} Needed.`
    : `${prompt}${required === undefined ? "" : " Needed in some rows."}`;
}
