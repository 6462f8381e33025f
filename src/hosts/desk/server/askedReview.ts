/** What a page sends of a review, looked through before it is kept. */
import { MOST_NOTED, type AskedReview, type Settling } from "../../../jobs/reviews";
import { LONGEST_NOTED, type Noted } from "../../../review/again/noted";
import { WEIGHTS } from "../../../review/finding";
import { Refused } from "./requestBody";

const LONGEST_NAME = 300;
const MOST_EACH = 100;
const MOST_ROWS = 50_000;

/** @throws Refused for what is none */
export function askedReviewOf(value: unknown): AskedReview {
  const { job, review, noted, rows } = objectOf(value);
  if (!Array.isArray(noted) || noted.length > MOST_NOTED)
    throw new Refused(400, `These are no findings, or more than ${MOST_NOTED}.`);
  const { marks, ...names } = objectOf(job);
  const { file, version, quoted, shouldBe } = objectOf(review);
  return {
    job: {
      number: textOf(names.number, LONGEST_NAME),
      name: textOf(names.name, LONGEST_NAME),
      customer: textOf(names.customer, LONGEST_NAME),
      marks: textsOf(marks),
    },
    review: {
      file: textOf(file, LONGEST_NAME),
      version: textOf(version, LONGEST_NAME),
      ...(isNumber(quoted) && { quoted }),
      ...(isNumber(shouldBe) && { shouldBe }),
    },
    noted: noted.map(notedOf),
    rows: textsOf(rows, MOST_ROWS),
  };
}

/** @throws Refused for what is none */
export function settlingOf(value: unknown): Settling {
  const { id, key, reason } = objectOf(value);
  if (typeof id !== "string" || !isNumber(key)) throw new Refused(400, "This settles no finding.");
  return { id, key, ...(typeof reason === "string" && { reason }) };
}

function notedOf(value: unknown): Noted {
  const { rules, weight, place, subject, row, held, isComputed, message } = objectOf(value);
  const known = WEIGHTS.find((one) => one === weight);
  if (!known) throw new Refused(400, "This is no finding.");
  const { sheet, cell } = place === undefined ? {} : objectOf(place);
  return {
    rules: textsOf(rules),
    weight: known,
    ...(place !== undefined && {
      place: { sheet: textOf(sheet, LONGEST_NAME), cell: textOf(cell, LONGEST_NAME) },
    }),
    subject: textOf(subject, LONGEST_NOTED),
    ...(row !== undefined && { row: textOf(row, LONGEST_NAME) }),
    held: isNumber(held) ? held : textOf(held, LONGEST_NOTED),
    ...(isComputed === true && { isComputed }),
    message: textOf(message, LONGEST_NOTED),
  };
}

const objectOf = (value: unknown): Record<string, unknown> =>
  typeof value === "object" && value !== null ? (value as Record<string, unknown>) : {};
const textOf = (value: unknown, longest: number): string =>
  typeof value === "string" ? value.slice(0, longest) : "";
const textsOf = (value: unknown, most = MOST_EACH): string[] =>
  Array.isArray(value) ? value.slice(0, most).map((one) => textOf(one, LONGEST_NAME)) : [];
const isNumber = (value: unknown): value is number => typeof value === "number" && Number.isFinite(value);
