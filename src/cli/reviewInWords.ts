/** A review as the command prints it. */
import type { KeptReview } from "../review/again/keptReview";
import { dayOf, openIn, settledIn, wordOf, type Told } from "../review/again/told";
import { WEIGHTS, type Finding } from "../review/finding";
import { leftOutInWords, notLookedInWords } from "../review/facts";
import { likeliest } from "../review/mends";
import { leadsToInWords } from "../review/leadsToInWords";
import type { PageFile } from "../review/reviewPage";

/** @returns a review's lines, as the command prints them */
export function reviewInWords(reviewed: PageFile): string[] {
  const { path: file, unreadable, findings, headline, facts, kept } = reviewed;
  if (unreadable !== undefined) return [`${file}: cannot be read. ${unreadable}`];
  const notLooked = facts && notLookedInWords(facts);
  if (findings.length === 0)
    return [`${file}: nothing found`, ...(notLooked === undefined ? [] : [`  ${notLooked}`])];
  const open = openIn(reviewed);
  const settled = settledIn(reviewed);
  const counts = [
    ...WEIGHTS.map(
      (weight) => [open.filter(({ finding }) => finding.weight === weight).length, weight] as const,
    ),
    [settled.length, "settled"] as const,
  ].flatMap(([count, word]) => (count > 0 ? [`${count} ${word}`] : []));
  const noted = open.some(({ finding }) => asksForALook(finding)) ? "" : " (nothing to put right)";
  return [
    `${file}: ${counts.join(", ")}${noted}`,
    ...[headline?.sentence, facts && leftOutInWords(facts), notLooked].flatMap((line) =>
      line ? [`  ${line}`] : [],
    ),
    ...(kept?.earlier ? [`  Reviewed before: ${dayOf(kept.earlier.at)}, ${kept.earlier.file}`] : []),
    ...open.flatMap((one) => findingInWords(one, kept)),
    ...settled.map(
      ({ finding, settled: { reason, at } }) =>
        `  settled ${dayOf(at)}: ${placeInWords(finding)}: ${reason.replace(/\s+/g, " ")}`,
    ),
    ...(kept?.gone ?? []).map((one) => `  gone: ${placeInWords(one)}: ${one.message}`),
  ];
}

/** Whether it is more than worth knowing. */
export const asksForALook = ({ weight }: Finding): boolean => weight !== "worth knowing";

const placeInWords = ({ place }: Pick<Finding, "place">): string =>
  place ? `${place.sheet}!${place.cell}` : "whole workbook";

function findingInWords(told: Told, kept: KeptReview | undefined): string[] {
  const { weight, cause, message, expected, effect, remedy, rule, leadsTo = [], mends = [] } = told.finding;
  const word = wordOf(told, kept);
  return [
    `  ${word === undefined ? "" : `${word}, `}${weight}: ${placeInWords(told.finding)} (${rule})`,
    `    ${message}`,
    ...(cause === undefined ? [] : [`    First at: ${cause.sheet}!${cause.cell}`]),
    ...(expected === undefined ? [] : [`    Should be: ${expected}`]),
    ...(effect === undefined ? [] : [`    Effect: ${effect}`]),
    ...leadsToInWords(leadsTo).map((line) => `    Because of it: ${line}`),
    `    ${remedy}`,
    ...likeliest(mends).map(
      ({ place, what, does }) => `    Mend at ${place.sheet}!${place.cell}, ${what}: ${does}.`,
    ),
  ];
}
