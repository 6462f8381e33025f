/** What the review makes of the outsider's cases (tests/fixtures/quotes): what it names, where, and whom it blames. */
import { recalculate } from "../../src/hosts/headless/recalculate";
import type { Finding, FindingPlace } from "../../src/review/finding";
import { namedCells } from "../../src/review/namedCells";
import { review } from "../../src/review/review";
import { parseAddress } from "../../src/formula/address";
import type { Book } from "../../src/workbooks/book";
import { todaysName } from "../../src/workbooks/renamedNames";
import {
  after,
  computedBase,
  formulaPlace,
  hasItsCells,
  mistakeCases,
  type Cause,
  type MistakeCase,
  type QuoteCase,
} from "../support/quoteCases";

/** `cell`: the cause's own cell or row is named; `other`: only something else is; `silent`: nothing is. */
export type Outcome = "cell" | "other" | "silent";

export interface Scored {
  readonly outcome: Outcome;
  /** Findings at cells that the outsider says are innocent. */
  readonly blamed: readonly string[];
  readonly told: readonly string[];
}

/** What a careful clerk could see and the review has to name, alone or with Checks. */
export const reviewCases: readonly MistakeCase[] = mistakeCases.filter(
  (one) => one.fair && one.mustBeNamedBy !== "checks" && hasItsCells(one),
);

const key = ({ sheet, cell }: FindingPlace): string => `${sheet}!${cell}`;
const rowOf = (place: FindingPlace): string => `${place.sheet}!${parseAddress(place.cell)!.row}`;
const told = ({ weight, rule, place, message }: Finding): string =>
  `${weight}, ${rule}, ${place ? key(place) : "-"}: ${message}`;
const isHeavy = ({ weight }: Finding): boolean => weight !== "worth knowing";

const reviewed = (book: Book): Finding[] => review(book, (one) => (one === book ? one : recalculate(one)));

const ofBase = new Map<Book, ReadonlySet<string>>();
/** What the review says before the mistake is none of the case's. */
function toldBefore(one: QuoteCase): ReadonlySet<string> {
  const base = computedBase(one);
  let known = ofBase.get(base);
  if (!known) ofBase.set(base, (known = new Set(reviewed(base).map(told))));
  return known;
}

/** The findings that a case brings about. */
export function brought(one: QuoteCase): { readonly book: Book; readonly findings: readonly Finding[] } {
  const book = recalculate(after(one).book);
  const before = toldBefore(one);
  return { book, findings: reviewed(book).filter((finding) => !before.has(told(finding))) };
}

export function scored(one: MistakeCase): Scored {
  const { book, findings } = brought(one);
  const causes = (Array.isArray(one.cause) ? (one.cause as Cause[]) : [one.cause as Cause]).flatMap((cause) =>
    placesOf(book, one, cause),
  );
  const cells = new Set(causes.map(key));
  const rows = new Set(causes.filter(({ inRow }) => inRow).map(rowOf));
  const counted = findings.filter((finding) => one.severity === "note" || isHeavy(finding));
  const names = ({ place, cause }: Finding): boolean =>
    [place, cause].some((at) => at !== undefined && (cells.has(key(at)) || rows.has(rowOf(at))));
  const innocent = new Set(
    one.symptomsNotToBlame
      .flatMap((name) => namedCells(book, todaysName(name) ?? name).map(({ place }) => key(place)))
      .filter((cell) => !cells.has(cell)),
  );
  const typedOver = new Set(
    one.edits.flatMap(({ formulaCell }) => (formulaCell ? [key(formulaPlace(book, formulaCell))] : [])),
  );
  return {
    outcome: counted.some(names) ? "cell" : counted.length > 0 ? "other" : "silent",
    blamed: findings
      .filter(isHeavy)
      .filter(({ place }) => place && innocent.has(key(place)) && !typedOver.has(key(place)))
      .map(told),
    told: findings.map(told),
  };
}

interface CausePlace extends FindingPlace {
  /** A row of a block: whichever of its cells is named leads to it. */
  readonly inRow: boolean;
}

function placesOf(book: Book, one: MistakeCase, { name, row, cell }: Cause): CausePlace[] {
  if (name.includes("!")) return [{ ...formulaPlace(book, name), inRow: false }];
  const cells = namedCells(book, name.replace(/^<(\w+)>$/, "$1"));
  if (cells.length === 1) return [{ ...cells[0]!.place, inRow: false }];
  // Of a row that was deleted no cell is left; its block is named.
  if (row === null) return cells.map(({ place }) => ({ ...place, inRow: false }));
  const index =
    typeof row === "number"
      ? row
      : (one.edits.find((edit) => edit.column === name && edit.row === row)?.index ??
        one.edits.find((edit) => edit.row === row)?.index ??
        indexOf(book, name, row) ??
        Number(/\d+$/.exec(cell ?? "")?.[0]));
  const found = cells[index];
  return found ? [{ ...found.place, inRow: true }] : [];
}

function indexOf(book: Book, name: string, row: string | undefined): number | undefined {
  const block = name.split("_")[0]!;
  for (const own of ["outlet", "id", "name"]) {
    const found = namedCells(book, `${block}_${own}`).find(({ value }) => String(value) === row);
    if (found) return found.index;
  }
  return undefined;
}
