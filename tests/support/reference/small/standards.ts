/**
 * The firm's standards a second time: of the offers of a part the pinned one, else the cheapest that holds on the date
 * of the edition, compared by the price of one; each by the labels, hints and conventions of the sheets.
 */
import { parseRange } from "../../../../src/formula/address";
import type { Book } from "../../../../src/workbooks/book";
import { standardsWorkbook } from "../../../../src/workbooks/standards/definition";
import { entriesOf, zerosNoted } from "../entries";
import {
  eachRow,
  field,
  figure,
  filledRows,
  isFilled,
  isSame,
  rowsOf,
  verdictOf,
  type Cells,
  type Job,
  type Row,
  type Value,
} from "../job";
import { keyOf } from "../keys";

const PRICED = ["cables", "passives", "units", "supplies", "plates", "feeds", "resistors", "fittings"];

interface Offer {
  readonly row: Row;
  readonly one: Value;
  readonly amount: Value;
  readonly now: Value;
  readonly fits: boolean;
  readonly holds: boolean;
}

/** Of the lists in their order the first that has the part. */
function partOf(job: Job, name: Value): { list: string; part: Row } | undefined {
  for (const list of PRICED) {
    const part = rowsOf(job, list).find((row) => isSame(row.name, name));
    if (part) return { list, part };
  }
  return undefined;
}

function offerOf(job: Job, row: Row): Offer {
  const found = partOf(job, row.part!);
  const pack = isFilled(row, "pack") ? figure(row, "pack") : 1;
  const priceOfOne = isFilled(row, "pack_price") ? figure(row, "pack_price") / pack : figure(row, "each");
  const one = Number.isFinite(priceOfOne) ? Number(priceOfOne.toFixed(6)) : "";
  const packed = { cables: "reel", fittings: "pack" }[found?.list ?? ""];
  const amount = !found ? "" : packed ? (isFilled(found.part, packed) ? found.part[packed]! : 0) : 1;
  const isCable = found?.list === "cables";
  const isInMoney = !isFilled(row, "currency") || isSame(row.currency, job.fields.site_currency);
  const isByUnit =
    !isFilled(row, "unit") || (isCable ? isSame(row.unit, job.fields.site_unit) : row.unit === "piece");
  return {
    row,
    one,
    amount,
    now: !found ? "" : isFilled(found.part, "price") ? found.part.price! : 0,
    fits: one !== "" && one > 0 && found !== undefined && isInMoney && isByUnit,
    holds: isFilled(row, "until") && figure(row, "until") >= field(job, "standards_date"),
  };
}

export function standardsReference(job: Job, book: Book): Cells {
  const rows = rowsOf(job, "offers");
  const offers = rows.map((row) => (isFilled(row, "part") ? offerOf(job, row) : undefined));
  const ofPart = ({ row }: Offer): Offer[] =>
    offers.filter((one): one is Offer => one !== undefined && isSame(one.row.part, row.part));
  const stands = (offer: Offer): boolean => {
    if (!offer.fits) return false;
    const pinned = ofPart(offer).some((one) => one.fits && one.row.pinned === "yes");
    return pinned ? offer.row.pinned === "yes" : offer.holds;
  };
  const inUse = (of: Offer): Offer | undefined => {
    const all = ofPart(of).filter(stands);
    const least = Math.min(...all.map(({ one }) => Number(one)));
    return all.find(({ one }) => one === least);
  };
  const each = <T extends Value>(of: (offer: Offer) => T): Value[] =>
    eachRow<Value>(rows, "part", (_, index) => of(offers[index]!), "");
  const wordOf = (offer: Offer): string => {
    if (inUse(offer) === offer) return "in use";
    if (!offer.fits) return "look";
    return offer.holds ? "not used" : "expired";
  };
  const cells: Cells = {
    cables_each: eachRow<Value>(
      rowsOf(job, "cables"),
      "name",
      (row) => {
        const price = isFilled(row, "price") ? figure(row, "price") : 0;
        const each = price / (isFilled(row, "reel") ? figure(row, "reel") : 0);
        return Number.isFinite(each) ? each : NaN;
      },
      "",
    ),
    offers_word: each(wordOf),
    offers_dearer: each((offer) => {
      const used = inUse(offer);
      return used && used !== offer && offer.fits ? Number(offer.one) / Number(used.one) - 1 : "";
    }),
    offers_price: each((offer) => (inUse(offer) === offer ? Number(offer.one) * Number(offer.amount) : "")),
    offers_now: each(({ now }) => now),
    offers_one: each(({ one }) => one),
    offers_amount: each(({ amount }) => amount),
    offers_fits: each(({ fits }) => Number(fits)),
    offers_stands: each((offer) => Number(stands(offer))),
    offers_leads: each((offer) => {
      const least = Math.min(
        ...ofPart(offer)
          .filter(stands)
          .map(({ one }) => Number(one)),
      );
      return Number(stands(offer) && offer.one === least);
    }),
    taxes_key: rowsOf(job, "taxes").map(({ name }) => keyOf(name)),
    offers_key: rows.map(({ part }) => keyOf(part)),
  };
  return { ...cells, ...checksSheet(job, book, cells, offers, wordOf) };
}

const HALF_A_CENT = 0.005;

interface Found {
  readonly found: number;
  readonly isWish?: true;
}

function checksOf(
  job: Job,
  cells: Cells,
  offers: readonly (Offer | undefined)[],
  wordOf: (offer: Offer) => string,
): Readonly<Record<string, Found>> {
  const all = offers.filter((one): one is Offer => one !== undefined);
  const date = field(job, "standards_date");
  const parts = PRICED.flatMap((list) => filledRows(job, list, "name"));
  const count = (of: readonly unknown[]): Found => ({ found: of.length });
  const offersThat = (is: (offer: Offer) => boolean): Found => count(all.filter(is));
  const listed = [
    ...[...PRICED, "labour", "routes", "suppliers"].map((list) =>
      filledRows(job, list, "name").map((row) => row.name!),
    ),
    filledRows(job, "receivers", "kind").map((row) => row.kind!),
  ];
  const twice = (names: readonly Value[]): Value[] =>
    names.filter((name, at) => names.slice(0, at).some((above) => isSame(above, name)));
  const inTwo = PRICED.flatMap((list, at) =>
    filledRows(job, list, "name").filter(({ name }) =>
      PRICED.slice(at + 1).some((later) => rowsOf(job, later).some((row) => isSame(row.name, name))),
    ),
  );
  const isInMoney = ({ row }: Offer): boolean =>
    !isFilled(row, "currency") || isSame(row.currency, job.fields.site_currency);
  const isByUnit = (offer: Offer): boolean => {
    const { unit } = offer.row;
    if ((unit ?? "") === "") return true;
    return partOf(job, offer.row.part!)?.list === "cables"
      ? isSame(unit, job.fields.site_unit)
      : unit === "piece";
  };
  const isOutOfRange = ({ minutes, low, high }: Row): boolean => {
    const given = [low, high].filter((end) => (end ?? "") !== "");
    return given.length === 1 || (given.length === 2 && (low! > minutes! || high! < minutes!));
  };
  return {
    ...Object.fromEntries(
      Object.entries(entriesOf(job, cells, standardsWorkbook)).map(([what, found]) => [what, { found }]),
    ),
    "Cells filled at or below the closing row of a block": { found: 0 },
    "Names that stand twice in one list: jobs take the first": count(listed.flatMap(twice)),
    "Names with *, ? or ~": count(listed.flat().filter((name) => /[*?~]/.test(String(name)))),
    "Parts that stand in two lists: offers go to the first": count(inTwo),
    "Prices that do not hold on the date of the edition": count(
      parts.filter((row) => (isFilled(row, "until") ? figure(row, "until") : 0) < date),
    ),
    "Prices dated after the edition": count(parts.filter((row) => figure(row, "priced") > date)),
    "Parts whose price is not that of the offer in use": offersThat(
      (offer) =>
        wordOf(offer) === "in use" &&
        Math.abs(Number(offer.one) * Number(offer.amount) - Number(offer.now)) > HALF_A_CENT,
    ),
    "Offers in use that do not hold on the date of the edition": offersThat(
      (offer) => wordOf(offer) === "in use" && !offer.holds,
    ),
    "Offers of a part that is not on Parts": offersThat(({ amount }) => amount === ""),
    "Offers in another currency than that of the standards": offersThat((offer) => !isInMoney(offer)),
    "Offers by another unit than Parts has: cables by the unit of length, all else by the piece": offersThat(
      (offer) => offer.amount !== "" && !isByUnit(offer),
    ),
    "Offers without a price of a unit or of a pack": offersThat(({ one }) => one === ""),
    "Offers whose pack does not cost its units": offersThat(({ row }) => {
      if (!isFilled(row, "each") || !isFilled(row, "pack_price")) return false;
      const pack = isFilled(row, "pack") ? figure(row, "pack") : 1;
      const given = isFilled(row, "pack") ? pack : 0;
      return Math.abs(figure(row, "each") * pack - figure(row, "pack_price")) > HALF_A_CENT * (1 + given);
    }),
    "Offers pinned that are not in use: two of one part, or not comparable": offersThat(
      (offer) => offer.row.pinned === "yes" && wordOf(offer) !== "in use",
    ),
    "Labour whose minutes are not between shortest and longest, both given or neither": count(
      ["labour", "routes"].flatMap((list) => filledRows(job, list, "name").filter(isOutOfRange)),
    ),
    "Assumptions and exclusions: lists that are empty": {
      ...count(["assumptions", "exclusions"].filter((list) => filledRows(job, list, "text").length === 0)),
      isWish: true,
    },
    "Figures of 0 without a reason": { found: zerosNoted(job, standardsWorkbook), isWish: true },
    "Rigsheet's functions answer here, and blank cells reach them as blanks": { found: 0 },
  };
}

function checksSheet(
  job: Job,
  book: Book,
  figures: Cells,
  offers: readonly (Offer | undefined)[],
  wordOf: (offer: Offer) => string,
): Cells {
  const checks = checksOf(job, figures, offers, wordOf);
  const sheet = book.sheets.find(({ name }) => name === "Checks")!;
  const zone = parseRange(book.names.find(({ name }) => name === "checks_result")!.range)!;
  const cells: Cells = {};
  let failed = 0;
  for (let row = zone.top + 1; row <= zone.bottom + 1; row++) {
    const what = String(sheet.cells[`A${row}`]?.value);
    const one = checks[what];
    if (!one) throw new Error(`the reference knows no check "${what}"`);
    if (one.found > 0 && !one.isWish) failed++;
    cells[`Checks!C${row}`] = one.found;
    cells[`Checks!D${row}`] = one.found === 0 ? "ok" : one.isWish ? "note" : "look";
    // Where it is: the sheet alone while there is nothing, else the first places behind it.
    if (sheet.cells[`E${row}`]?.formula !== undefined)
      cells[`Checks!E${row}`] = one.found === 0 ? /^[^:]+$/ : /^[^:]+: ./;
  }
  const verdict = verdictOf(failed);
  return {
    ...cells,
    checks_failed: failed,
    checks_verdict: verdict,
    ...Object.fromEntries(book.sheets.map(({ name }) => [`${name}!D1`, verdict])),
    about_template: /^firm's standards, version \d+$/,
    about_functions: /^\d+\.\d+\.\d+$/,
    about_state: "ok",
  };
}
