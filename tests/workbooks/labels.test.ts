/** Where a check, or a sentence of the review, names a column or a field, it uses the label that this has on its sheet. */
import { readFileSync } from "node:fs";
import path from "node:path";
import type { Part, WorkbookDefinition } from "../../src/workbooks/definition";
import { acrossHead } from "../../src/workbooks/names";
import { estimate } from "../../src/workbooks/multiRoom/names";
import { layOut } from "../../src/workbooks/layOut";
import { parseAddress } from "../../src/formula/address";
import { textWidth } from "../../src/pictures/textWidth";
import { templates } from "../../src/workbooks/templates";
import { sourceFiles } from "../support/sourceFiles";

type Column = Extract<Part, { kind: "block" }>["columns"][number];
/** As a column stands on its sheet: several beside one another have a head each. */
const headsOf = ({ head, across }: Column, between?: string): string[] =>
  across ? across.map((one) => acrossHead(head, one.head, between)) : [head];

const plain = (text: string): string => text.toLowerCase();

function labelsOf(part: Part): string[] {
  switch (part.kind) {
    case "block":
      // A check names the group before what stands below it.
      return [part.heading, ...part.columns.flatMap((column) => [column.head, ...headsOf(column, ", ")])];
    case "answer":
      return [part.heading, ...part.columns.map(({ head }) => head)];
    case "fields":
      return [part.heading, ...part.fields.map(({ label }) => label)];
    case "grid":
      return [part.heading, ...part.rows.map(({ label }) => label)];
    default:
      return [part.heading];
  }
}

const labelsIn = ({ sheets }: WorkbookDefinition): string[] =>
  sheets.flatMap(({ name, parts }) => [name, ...parts.flatMap(labelsOf)]).map(plain);

/** What is left of a place when the longest labels at its beginning are taken away; a part of a heading will do. */
function unknownIn(where: string, labels: readonly string[]): string {
  let rest = plain(where);
  while (rest !== "") {
    const found = labels
      .filter((label) => rest === label || rest.startsWith(`${label}, `))
      .sort((a, b) => b.length - a.length)[0];
    if (found === undefined) return rest;
    rest = rest.slice(found.length + 2);
  }
  return "";
}

/** Places that are no single column or field. */
const IN_WORDS = new Set([
  "The ends of the blocks that you fill",
  "Parts, Dishes, Head units, Distribution, and where their names stand",
  "Site, the four corners",
  "Review, figures",
  "Review, lines",
  "Review, ratios",
  "Review, questions",
  "Review, the ends of the blocks",
  "Card, peaking: hover the error",
  "Materials, counted",
]);

test.each(templates.map(({ id, definition }) => [id, definition] as const))(
  "%s: every check says where to look in words that stand there",
  (_, definition) => {
    const labels = labelsIn(definition);
    const wheres = definition.sheets
      .flatMap(({ parts }) => parts)
      .flatMap((part) => (part.kind === "checks" ? part.checks : []))
      .map(({ where }) => where);
    expect(wheres.length).toBeGreaterThan(2);
    expect(wheres.filter((where) => !IN_WORDS.has(where) && unknownIn(where, labels) !== "")).toEqual([]);
  },
);

test("a place that is no label is seen", () => {
  expect(unknownIn("Rooms, fed by", labelsIn(templates[0]!.definition))).toBe("fed by");
});

test("labels that the review quotes are the sheets'", () => {
  const labels = new Set(templates.flatMap(({ definition }) => labelsIn(definition)));
  const quoted = sourceFiles(path.join(__dirname, "../../src/review/rules")).flatMap((file) =>
    [...readFileSync(file, "utf8").matchAll(/“([a-z][^”$\d]*)”/g)].map(([, words]) => words!),
  );
  expect(quoted).toContain("fed from");
  expect(quoted.filter((words) => !labels.has(plain(words)))).toEqual([]);
});

test("one thing has one label on every sheet", () => {
  const { quote, site, price, heads, units, branches, feeders, passives, plates, rooms, kinds, kindsPriced } =
    estimate;
  expect(quote.customer.words.label).toBe(site.customer.words.label);
  expect(quote.place.words.label).toBe(site.place.words.label);
  expect(quote.currency.words.label).toBe(site.currency.words.label);
  expect(quote.net.words.label).toBe(price.net.words.label);
  expect(heads.least.words.head).toBe(units.least.words.head);
  expect(plates.power.words.head).toBe(passives.power.words.head);
  for (const one of [branches.route, heads.route, feeders.route])
    expect(one.words.head).toBe(rooms.route.words.head);
  for (const one of [kinds.name, kindsPriced.name]) expect(one.words.head).toBe(rooms.kind.words.head);
});

test("no label stands twice in one block", () => {
  for (const { definition } of templates)
    for (const { name, parts } of definition.sheets)
      for (const part of parts)
        if (part.kind === "block") {
          const heads = part.columns.flatMap((column) => headsOf(column));
          expect([name, heads.filter((head, at) => heads.indexOf(head) !== at)]).toEqual([name, []]);
        }
});

test("a chosen cell is titled by its label, as much of it as Excel shows", () => {
  for (const { definition } of templates)
    for (const { validations } of layOut(definition).sheets)
      for (const { promptTitle } of validations) {
        expect(promptTitle).toMatch(/^[A-Z√]/);
        expect(promptTitle!.length).toBeLessThanOrEqual(32);
      }
});

/** Of the grid on the screen, in pixels: a character of a column's width, the column's edges, and the size of letters. */
const [CHARACTER, EDGES, LETTERS] = [7, 5, 13];

test("no column is narrower than the longest word of its head", () => {
  const broken = templates.flatMap(({ id, definition }) =>
    layOut(definition).sheets.flatMap(({ name, cells, columnWidths }) =>
      definition.sheets
        .find((sheet) => sheet.name === name)!
        .parts.flatMap((part) =>
          part.kind === "block" ? part.columns.flatMap((column) => headsOf(column)) : [],
        )
        .flatMap((head) => {
          const at = Object.entries(cells).find(([, { value }]) => value === head)![0];
          const room = columnWidths[parseAddress(at)!.column]! * CHARACTER + EDGES;
          const words = head.split(" ").filter((word) => textWidth(word, LETTERS, true) > room);
          return words.map((word) => `${id}, ${name}, ${head}: ${word}`);
        }),
    ),
  );
  expect(broken).toEqual([]);
});
