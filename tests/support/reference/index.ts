/**
 * Every sheet of the multi-room estimate a second time; see each file for what its figures are worked out from: labels,
 * hints and units of the sheets, help pages of the functions, handbooks, arithmetic. It shares no code with the product
 * but the reading of a finished workbook and the bounds of its input cells.
 *
 * What the words do not tell was taken from the formula, after the two had differed:
 * - commission_at_… has 99 for no line; what is bad of a row is told by a sentence, which is held to be one.
 * - commission_verdict waits for both ends; EQUALDROPS and SUNCHECK go by their own reading error and frequency.
 * - A repeated name counts once less than it stands; the days of a quote without its own; 1 stands for "no discount";
 *   of work that nothing counts only rows without any figure; unknown stops and currents count as found.
 */
import { parseRange } from "../../../src/formula/address";
import type { Book } from "../../../src/workbooks/book";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { bondingSheet } from "./bonding";
import { checksOf, wordOf, type Found } from "./checks";
import { cuttingPlanSheet, orderListSheet } from "./buying";
import { commissioningSheet } from "./commissioning";
import { headUnitsSheet } from "./headUnits";
import { diagnosed } from "./diagnosis";
import { dishesSheet, distributionSheet, partsSheet } from "./distributionSheets";
import { field, sum, verdictOf, word, type Cells, type Job } from "./job";
import { crewSheet, labourSheet, placeColumns } from "./labour";
import { materialsSheet } from "./materials";
import { priceSheet, quoteSheet, termsSheet } from "./price";
import { roomsSheet } from "./rooms";
import { roomTypesSheet } from "./roomTypes";
import { alignmentSheet, sightlineSheet, siteSheet } from "./sightline";

export const TOLERANCES: Readonly<Record<string, number>> = {
  // Two solves of a circuit differ by so many volts or amperes.
  ...Object.fromEntries(
    [
      "heads_fed",
      "branches_check",
      "rooms_volts",
      "dishes_seen",
      "commission_volts_due",
      "commission_volts_off",
    ].map((name) => [name, 0.002]),
  ),
  // magvar rounds to 0.01 deg.
  ...Object.fromEntries(
    ["sight_compass", "sight_declination", "align_compass", "align_declination", "aimed_compass"].map(
      (name) => [name, 0.011],
    ),
  ),
};

/** What the sheets of figures must hold, but for the quote. */
function figuresOf(job: Job, book: Book): Cells {
  const cells: Cells = {
    ...siteSheet(job),
    ...sightlineSheet(job),
    ...partsSheet(job),
    ...dishesSheet(job),
    ...headUnitsSheet(job),
    ...distributionSheet(job),
    ...roomTypesSheet(job),
    ...roomsSheet(job),
    ...placeColumns(job),
    ...bondingSheet(job),
    ...crewSheet(job),
    ...materialsSheet(job),
    ...cuttingPlanSheet(job, book),
    ...orderListSheet(job),
    ...labourSheet(job),
    ...termsSheet(job),
    ...alignmentSheet(job),
    ...commissioningSheet(job),
  };
  return { ...cells, ...priceSheet(job, cells) };
}

/** @param book tells where things stand, and what Diagnosis answers */
export function reference(job: Job, book: Book): Cells {
  const figures = figuresOf(job, book);
  const checks = checksOf(job, figures);
  const entries = Object.entries(checks).filter(([what]) =>
    /^Entries missing|cannot be worked out$/.test(what),
  );
  return {
    ...figures,
    ...quoteSheet(job, sum(entries.map(([, { found }]) => found))),
    ...checksSheet(job, checks, book),
    ...diagnosed(job, figures, book),
  };
}

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");

function checksSheet(job: Job, checks: Readonly<Record<string, Found>>, book: Book): Cells {
  const sheet = book.sheets.find(({ name }) => name === "Checks")!;
  const zone = parseRange(book.names.find(({ name }) => name === "checks_result")!.range)!;
  const defined = multiRoom.sheets.flatMap(({ parts }) =>
    parts.flatMap((part) => (part.kind === "checks" ? part.checks : [])),
  );
  const cells: Cells = {};
  let failed = 0;
  for (let row = zone.top + 1; row <= zone.bottom + 1; row++) {
    const what = String(sheet.cells[`A${row}`]?.value);
    const one = checks[what];
    if (!one) throw new Error(`the reference knows no check "${what}"`);
    if (["look", "error"].includes(wordOf(one))) failed++;
    cells[`Checks!C${row}`] = one.found;
    cells[`Checks!D${row}`] = wordOf(one);
    const where = defined.find((check) => check.what === what)!.where;
    if (sheet.cells[`E${row}`]?.formula !== undefined)
      cells[`Checks!E${row}`] = one.passes
        ? where
        : one.first === undefined
          ? new RegExp(`^${escaped(where)}: .`)
          : new RegExp(`^${escaped(where)}: ${escaped(String(one.first))}(;|$)`);
  }
  const verdict = verdictOf(failed);
  return {
    ...cells,
    checks_failed: failed,
    checks_verdict: verdict,
    ...Object.fromEntries(book.sheets.map(({ name }) => [`${name}!D1`, verdict])),
    about_by: word(job, "site_prepared_by"),
    about_date: field(job, "site_date"),
    about_template: /^multi-room estimate, version \d+/,
    about_functions: /^\d+\.\d+\.\d+$/,
    about_state: "ok",
  };
}
