/** What a computed multi-room estimate comes to, in figures. */
import type { Named } from "../../formula/build";
import type { Book, BookResult } from "../book";
import { checkLines, type CheckLine } from "../checkLines";
import { checks as checkNames } from "../checkNames";
import { namedColumn, namedValue } from "../named";
import { figureOf as figure, wordsOf as words, type Figure } from "../shownFigure";
import { estimate } from "./names";

export interface JobSummary {
  readonly job: string;
  readonly outlets: Figure;
  readonly tuners: Figure;
  /** The outlets with the least margin over the least level, weakest first; errors before all. */
  readonly worst: readonly {
    outlet: string;
    room: string;
    weakest: Figure;
    margin: Figure;
    verdict: string;
    /** What is wrong, in sentences; empty where nothing is. */
    trouble: string;
  }[];
  readonly headUnits: readonly {
    id: string;
    tuners: Figure;
    bands: Figure;
    volts: Figure;
    least: Figure;
    verdict: string;
    trouble: string;
  }[];
  readonly checks: readonly CheckLine[];
  readonly net: Figure;
  readonly tax: Figure;
  readonly total: Figure;
  readonly currency: string;
  readonly verdict: string;
}

const WORST_SHOWN = 5;

/** @param book a computed book of the multi-room template */
export function summarise(book: Book): JobSummary {
  return {
    job: words(namedValue(book, estimate.site.job.name)),
    outlets: figure(namedValue(book, estimate.count.outlets.name)),
    tuners: figure(namedValue(book, estimate.headsNeeded.wanted.name)),
    worst: worstOutlets(book),
    headUnits: filledRows(book, estimate.heads.id.name).map(([row, id]) => {
      const at = ({ name }: Named): BookResult | undefined => namedColumn(book, name)[row];
      const { fed, least, verdict, check } = estimate.heads;
      return {
        id: words(id),
        tuners: figure(at(fed.tuners)),
        bands: figure(at(fed.bands)),
        volts: figure(at(fed.least)),
        least: figure(at(least)),
        verdict: words(at(verdict)),
        trouble: words(at(check.trouble)),
      };
    }),
    checks: checkLines(book),
    net: figure(namedValue(book, estimate.quote.net.name)),
    tax: figure(namedValue(book, estimate.quote.tax.name)),
    total: figure(namedValue(book, estimate.quote.total.name)),
    currency: words(namedValue(book, estimate.site.currency.name)),
    verdict: words(namedValue(book, checkNames.verdict.name)),
  };
}

function worstOutlets(book: Book): JobSummary["worst"] {
  const [room, weakest, margin, verdict] = (["room", "weakest", "margin", "verdict"] as const).map((column) =>
    namedColumn(book, estimate.rooms[column].name),
  );
  const trouble = namedColumn(book, estimate.rooms.check.trouble.name);
  const outlets = filledRows(book, estimate.rooms.outlet.name).map(([row, outlet]) => ({
    outlet: words(outlet),
    room: words(room![row]),
    weakest: figure(weakest![row]),
    margin: figure(margin![row]),
    verdict: words(verdict![row]),
    trouble: words(trouble[row]),
  }));
  const rank = (value: Figure): number => (typeof value === "number" ? value : -Infinity);
  return outlets.sort((a, b) => rank(a.margin) - rank(b.margin)).slice(0, WORST_SHOWN);
}

/** The rows of a named column that hold something, with their place in it. */
const filledRows = (book: Book, name: string): [number, BookResult][] =>
  namedColumn(book, name).flatMap((value, row): [number, BookResult][] =>
    value === undefined || value === "" ? [] : [[row, value]],
  );
