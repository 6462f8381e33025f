/** What stands in a sheet's part around its cells, and in the parts that hang on it. */
import type {
  SavedCondition,
  SavedMargin,
  SavedNote,
  SavedPage,
  SavedRule,
  SavedSheet,
} from "../../workbooks/savedFile";
import { drawingsIn } from "./drawingFacts";
import { MAX_AROUND_CELLS, MAX_FACTS, MAX_FACT_TEXT } from "./limits";
import {
  attribute,
  elementsOf,
  firstOf,
  fromXml,
  isOff,
  isOn,
  numberOf,
  textOf,
  type Element,
} from "./markup";
import type { PackageParts } from "./packageParts";

/** A sheet's part without its cells. */
export interface AroundCells {
  readonly before: string;
  readonly behind: string;
}

export function aroundCells(xml: string): AroundCells {
  const cells = xml.search(/<(?:\w+:)?sheetData[\s/>]/);
  if (cells < 0) return { before: xml.slice(0, MAX_AROUND_CELLS), behind: "" };
  const end = xml.lastIndexOf("sheetData>");
  const behind = end > cells ? xml.slice(end + "sheetData>".length) : xml.slice(xml.indexOf(">", cells) + 1);
  return {
    before: xml.slice(0, Math.min(cells, MAX_AROUND_CELLS)),
    behind: behind.slice(0, MAX_AROUND_CELLS),
  };
}

/** The looks that conditional formats lay over cells, by their number. */
export interface LaidOver {
  readonly color?: string;
  readonly fill?: string;
  readonly format?: string;
}

export interface FactsAround {
  readonly parts: PackageParts;
  readonly laidOver: readonly LaidOver[];
  /** Names of who wrote in threads, by their number. */
  readonly persons: ReadonlyMap<string, string>;
}

export function sheetFacts(
  name: string,
  state: string | undefined,
  part: string,
  { before, behind }: AroundCells,
  { parts, laidOver, persons }: FactsAround,
): SavedSheet {
  const relationships = parts.relationshipsOf(part);
  const ofType = (type: string): string[] =>
    relationships.flatMap((one) => (one.type === type && !one.external ? [one.target] : []));
  const view = firstOf(before, "sheetView");
  const filter = firstOf(behind, "autoFilter");
  return {
    name,
    ...(state === "veryHidden" && { veryHidden: true as const }),
    ...(isOn(view, "tabSelected") && { chosen: true as const }),
    ...(isOn(view, "showFormulas") && { showsFormulas: true as const }),
    ...(isOff(view, "showZeros") && { zerosHidden: true as const }),
    ...(isOn(firstOf(before, "sheetFormatPr"), "zeroHeight") && { rowsHidden: true as const }),
    ...(filter && firstOf(filter.inside, "filterColumn") && { filtered: attribute(filter, "ref") ?? "" }),
    page: pageOf(before, behind),
    margins: marginsIn(behind),
    drawings: ofType("drawing")
      .flatMap((one) => drawingsIn(parts.text(one)))
      .concat(objectsIn(behind)),
    notes: [
      ...ofType("comments").flatMap((one) => notesIn(parts.text(one))),
      ...ofType("threadedComment").flatMap((one) => threadsIn(parts.text(one), persons)),
    ].slice(0, MAX_FACTS),
    hyperlinks: elementsOf(behind, "hyperlink")
      .slice(0, MAX_FACTS)
      .flatMap((link) => {
        const id = attribute(link, "id");
        const target = relationships.find((one) => one.id === id && one.external)?.target;
        return target === undefined ? [] : [{ cell: attribute(link, "ref") ?? "A1", target }];
      }),
    conditions: conditionsIn(behind, laidOver),
    marked: firstOf(behind, "conditionalFormatting") !== undefined,
    rules: rulesIn(behind),
    scenarios: elementsOf(behind, "scenario")
      .slice(0, MAX_FACTS)
      .map((one) => ({
        name: attribute(one, "name") ?? "",
        cell: (attribute(firstOf(one.inside, "inputCells") ?? one, "r") ?? "A1").replace(/\$/g, ""),
      })),
  };
}

/** ECMA-376 part 1, 18.3.1.63. */
const LETTER = 1;
const A4 = 9;

function pageOf(before: string, behind: string): SavedPage {
  const fits = isOn(firstOf(before, "pageSetUpPr"), "fitToPage");
  const setup = firstOf(behind, "pageSetup");
  const options = firstOf(behind, "printOptions");
  const scale = numberOf(setup, "scale");
  const paper = numberOf(setup, "paperSize");
  const first = isOn(setup, "useFirstPageNumber") ? numberOf(setup, "firstPageNumber") : undefined;
  const errorsAs = setup && attribute(setup, "errors");
  const notes = setup && attribute(setup, "cellComments");
  return {
    ...(fits && {
      fit: { wide: numberOf(setup, "fitToWidth") ?? 1, tall: numberOf(setup, "fitToHeight") ?? 1 },
    }),
    ...(!fits && scale !== undefined && { scale }),
    ...(paper !== undefined && paper !== LETTER && paper !== A4 && { otherPaper: paper }),
    ...(first !== undefined && { firstNumber: first }),
    ...(isOn(options, "headings") && { headings: true as const }),
    ...(isOn(options, "gridLines") && { gridLines: true as const }),
    ...(errorsAs !== undefined && errorsAs !== "displayed" && { errorsAs }),
    ...(notes !== undefined && notes !== "none" && { notesPrinted: true as const }),
    rowBreaks: elementsOf(firstOf(behind, "rowBreaks")?.inside ?? "", "brk")
      .slice(0, MAX_FACTS)
      .flatMap((one) => numberOf(one, "id") ?? []),
  };
}

function marginsIn(behind: string): SavedMargin[] {
  const all = firstOf(behind, "headerFooter");
  if (!all) return [];
  const margins: SavedMargin[] = [];
  for (const pages of ["odd", "even", "first"] as const) {
    // The others are kept in a file even where they are not in use.
    if (pages === "even" && !isOn(all, "differentOddEven")) continue;
    if (pages === "first" && !isOn(all, "differentFirst")) continue;
    for (const [at, tag] of [
      ["header", `${pages}Header`],
      ["footer", `${pages}Footer`],
    ] as const) {
      const text = fromXml(firstOf(all.inside, tag)?.inside ?? "").slice(0, MAX_FACT_TEXT);
      if (text !== "") margins.push({ at, pages, text });
    }
  }
  return margins;
}

/** Other documents that lie in the sheet. */
const objectsIn = (behind: string): SavedSheet["drawings"] =>
  elementsOf(firstOf(behind, "oleObjects")?.inside ?? "", "oleObject")
    .slice(0, MAX_FACTS)
    .map((one) => {
      const from = firstOf(one.inside, "from");
      const row = Number(firstOf(from?.inside ?? "", "row")?.inside ?? 0) || 0;
      const column = Number(firstOf(from?.inside ?? "", "col")?.inside ?? 0) || 0;
      return {
        kind: "object" as const,
        name: attribute(one, "progId") ?? "",
        text: "",
        top: row,
        left: column,
        bottom: row,
        right: column,
      };
    });

function notesIn(xml: string): SavedNote[] {
  const authors = elementsOf(firstOf(xml, "authors")?.inside ?? "", "author").map(({ inside }) =>
    fromXml(inside),
  );
  return elementsOf(xml, "comment")
    .slice(0, MAX_FACTS)
    .flatMap((one) => {
      const author = authors[numberOf(one, "authorId") ?? -1] ?? "";
      // What is a thread stands in a part of its own; this is what older programs show of it.
      if (author.startsWith("tc=")) return [];
      const text = textOf(firstOf(one.inside, "text")?.inside ?? "", "t").slice(0, MAX_FACT_TEXT);
      return [{ cell: attribute(one, "ref") ?? "A1", text, author }];
    });
}

const threadsIn = (xml: string, persons: FactsAround["persons"]): SavedNote[] =>
  elementsOf(xml, "threadedComment")
    .slice(0, MAX_FACTS)
    .map((one) => ({
      cell: attribute(one, "ref") ?? "A1",
      text: textOf(one.inside, "text").slice(0, MAX_FACT_TEXT),
      author: persons.get(attribute(one, "personId") ?? "") ?? "",
      thread: true,
    }));

/** Marks of ours are equal to a text; what else there is has been made by somebody. */
function conditionsIn(behind: string, laidOver: readonly LaidOver[]): SavedCondition[] {
  const found: SavedCondition[] = [];
  for (const area of elementsOf(behind, "conditionalFormatting")) {
    const ranges = rangesOf(area);
    for (const rule of elementsOf(area.inside, "cfRule")) {
      const kind = attribute(rule, "type") ?? "";
      const operator = attribute(rule, "operator");
      const formulas = elementsOf(rule.inside, "formula").map(({ inside }) => fromXml(inside));
      if (kind === "cellIs" && operator === "equal" && formulas[0]?.startsWith('"')) continue;
      if (found.length === MAX_FACTS) return found;
      found.push({
        ranges,
        kind,
        ...(operator && { operator }),
        formulas,
        ...laidOver[numberOf(rule, "dxfId") ?? -1],
      });
    }
  }
  return found;
}

const rulesIn = (behind: string): SavedRule[] =>
  elementsOf(behind, "dataValidation")
    .slice(0, MAX_FACTS)
    .map((one) => ({
      ranges: rangesOf(one),
      formulas: ["formula1", "formula2"].flatMap((tag) => {
        const formula = firstOf(one.inside, tag);
        return formula ? [fromXml(formula.inside)] : [];
      }),
      ...(!isOn(one, "showErrorMessage") && { silent: true as const }),
    }));

const rangesOf = (element: Element): string[] =>
  (attribute(element, "sqref") ?? "").split(/\s+/, MAX_FACTS).filter((range) => range !== "");
