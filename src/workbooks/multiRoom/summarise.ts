/** What a computed multi-room estimate comes to, in figures. */
import { parseRange } from "../../formula/address";
import type { Named } from "../../formula/build";
import { isBookError, type Book, type BookResult } from "../book";
import { checks as checkNames } from "../checkNames";
import { namedColumn, namedRows, namedValue } from "../named";
import { estimate } from "./names";

/** A figure, or the sentence of the error in its place. */
export type Figure = number | string | null;

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
  }[];
  readonly headUnits: readonly {
    id: string;
    tuners: Figure;
    bands: Figure;
    capacity: string;
    volts: Figure;
    least: Figure;
    power: string;
  }[];
  readonly checks: readonly { what: string; found: Figure; result: string; where: string }[];
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
      const { tuners, bands, capacity, volts, least, power } = estimate.heads;
      return {
        id: words(id),
        tuners: figure(at(tuners)),
        bands: figure(at(bands)),
        capacity: words(at(capacity)),
        volts: figure(at(volts)),
        least: figure(at(least)),
        power: words(at(power)),
      };
    }),
    checks: checksOf(book),
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
  const outlets = filledRows(book, estimate.rooms.outlet.name).map(([row, outlet]) => ({
    outlet: words(outlet),
    room: words(room![row]),
    weakest: figure(weakest![row]),
    margin: figure(margin![row]),
    verdict: words(verdict![row]),
  }));
  const rank = (value: Figure): number => (typeof value === "number" ? value : -Infinity);
  return outlets.sort((a, b) => rank(a.margin) - rank(b.margin)).slice(0, WORST_SHOWN);
}

/** The rows of a named column that hold something, with their place in it. */
const filledRows = (book: Book, name: string): [number, BookResult][] =>
  namedColumn(book, name).flatMap((value, row): [number, BookResult][] =>
    value === undefined || value === "" ? [] : [[row, value]],
  );

/** The check lines lie beside the named column of their results. */
function checksOf(book: Book): JobSummary["checks"] {
  const named = book.names.find(({ name }) => name === checkNames.result.name);
  const zone = named && parseRange(named.range);
  if (!named || !zone) return [];
  const left: Book = {
    ...book,
    names: [{ ...named, name: "lines", range: `A${zone.top + 1}:E${zone.bottom + 1}` }],
  };
  return namedRows(left, "lines").map(([what, , found, result, where]) => ({
    what: words(what),
    found: figure(found),
    result: words(result),
    where: words(where),
  }));
}

function figure(result: BookResult | undefined): Figure {
  if (typeof result === "number") return result;
  if (result === undefined || result === "") return null;
  return words(result);
}

function words(result: BookResult | undefined): string {
  if (result === undefined) return "";
  return isBookError(result) ? (result.message ?? result.error) : String(result);
}
