/** What the office said to itself, in lists that are printed for the customer. */
import type { Book } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import type { Finding } from "../finding";
import { filledCells } from "../namedCells";
import type { Rule } from "../rule";

const { assumptions, exclusions, options, provisional, letterhead, discount, site } = estimate;

const PRINTED = [
  assumptions.text,
  exclusions.text,
  options.name,
  provisional.name,
  letterhead.line,
  discount.reason,
];

/** Common practice, no source: marks and words with which people leave a question for a colleague. */
const REMARKS: readonly RegExp[] = [
  /\?\?|!!|\bx{3,}\b/i,
  /\b(?:todo|fixme)\b/i,
  /\b(?:ask|check with|call|tell|remind)\s+(?:(?:the|my|our)\s+)?(?:boss|chief|office|[A-Z]\p{L}+)\b.*(?:\?|\bbefore\b|\bwhether\b|\bif\b)/u,
  /\bbefore (?:sending|it goes out|this goes out)\b/i,
  /\b(?:do not|don't) (?:send|print|show)\b|\bnot for the customer\b|\binternal(?: use)? only\b/i,
];

/** Where the quote names the customer and the job a word that stands for another is not one of them. */
const NAMES = [site.customer, site.job, site.place];
const PLACEHOLDER = /^(?:x+|\.+|name|customer|n\/a)$|\b(?:tbc|tbd|tba|ask \p{Lu}\p{L}+)\b/iu;

export const officeRemarks: Rule = {
  id: "remark to a colleague on the quote",
  reason:
    "Assumptions, exclusions, options and sums are printed: what the office asks itself there the customer reads.",
  example: "“ask Pat whether 58 an hour is enough here???” among the assumptions.",
  find: ({ read }) => [...placeholders(read), ...remarks(read)],
};

const placeholders = (read: Book): Finding[] =>
  NAMES.flatMap(({ name, words }) =>
    filledCells(read, name).flatMap(({ place, value }): Finding[] =>
      PLACEHOLDER.test(String(value).trim())
        ? [
            {
              weight: "doubtful",
              place,
              message: `${words.label} is “${String(value)}”.`,
              expected: "The name that the customer reads on the quote.",
              effect: "It is printed on the quote.",
              remedy: "Enter it.",
            },
          ]
        : [],
    ),
  );

const remarks = (read: Book): Finding[] =>
  PRINTED.flatMap(({ name }) => filledCells(read, name)).flatMap(({ place, value }): Finding[] =>
    typeof value === "string" && REMARKS.some((one) => one.test(value))
      ? [
          {
            weight: "doubtful",
            place,
            message: `“${value}” reads like a remark to a colleague.`,
            expected: "What the customer may read.",
            effect: "It is printed on the quote.",
            remedy: "Settle the question and clear the line, or put it on Log.",
          },
        ]
      : [],
  );
