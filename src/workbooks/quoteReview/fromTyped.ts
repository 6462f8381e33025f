/** What the review of a quote begins with, where the quote is a typed list: its figures and lines, and what is asked about the rest. */
import type { Named } from "../../formula/build";
import type { JobInputs } from "../definition";
import { quoteReviewStart } from "./jobInputs";
import { review } from "./names";
import { NUMBER_KEYS, TEXT_KEYS, type NumberKey, type TypedLine, type TypedQuote } from "./typed/typedQuote";

type Row = Readonly<Record<string, number | string>>;

const FIELD: Readonly<Record<NumberKey, Named>> = { ...review, taxRate: review.rate_tax };
const LONGEST = 120;
const TAX_INSIDE = "Tax that is in the prices above, taken out";
const MOST_ROUNDING = 1;
/** Beyond these one question says how many more. */
const MOST_ASKED = 12;
const shortened = (text: string): string => (text.length > LONGEST ? `${text.slice(0, LONGEST - 1)}…` : text);

export function fromTyped(quote: TypedQuote): JobInputs {
  const { figures, words, until, linesAre, headPrice, cablePrice, rounding } = quote;
  const { net, tax, taxRate, total, price } = figures;
  const netOf = net ?? (total === undefined ? undefined : Number((total - (tax ?? 0)).toFixed(2)));
  const numbers = NUMBER_KEYS.flatMap((key) => {
    const value = figures[key];
    return value === undefined ? [] : [[FIELD[key].name, value] as const];
  });
  const whole = linesAre === "the whole price";
  return {
    fields: {
      ...quoteReviewStart.fields,
      ...Object.fromEntries(numbers),
      ...Object.fromEntries(
        TEXT_KEYS.flatMap((key) => (words[key] === undefined ? [] : [[review[key].name, words[key]]])),
      ),
      ...(until !== undefined && { [review.until.name]: until }),
      // All of it is taxed alike, unless it says otherwise; of several rates the one that all of it bears together.
      ...(tax !== undefined &&
        figures.taxed === undefined &&
        netOf !== undefined && { [review.taxed.name]: netOf }),
      ...(tax !== undefined && taxRate === undefined && netOf && { [review.rate_tax.name]: tax / netOf }),
      ...(!whole &&
        price === undefined &&
        net !== undefined &&
        figures.cost === undefined && { [review.price.name]: net }),
      // A total that was made round is off by as much.
      ...(rounding !== undefined &&
        Math.abs(rounding) < MOST_ROUNDING && {
          [review.tolerance.name]: Math.max(0.05, Math.abs(rounding)),
        }),
      [review.lines_are.name]: linesAre,
      ...(headPrice !== undefined && { [review.head_price.name]: headPrice }),
      ...(cablePrice !== undefined && { [review.cable_price.name]: cablePrice }),
    },
    blocks: {
      ...quoteReviewStart.blocks,
      lines: rowsOf(quote),
      asked: [...asked(quote), ...quoteReviewStart.blocks!.asked!],
    },
  };
}

/** Lines of work and options have no place among materials, nor options in a price. */
function rowsOf({ lines, linesAre, taxInside }: TypedQuote): Row[] {
  const taken = lines.filter(
    ({ optional, labour }) => !optional && !(labour && linesAre !== "the whole price"),
  );
  const seen = new Map<string, string | undefined>();
  const alike = ({ part, quantity, each, sum }: TypedLine): string =>
    JSON.stringify([part.toLowerCase(), quantity, each, sum]);
  for (const line of taken) if (!seen.has(alike(line))) seen.set(alike(line), line.section);
  const rows = taken.map((line): Row => {
    const { part, section, quantity, each, per = 1, discount = 0, sum } = line;
    // The same parts on two floors are no line that stands twice.
    const isElsewhere = section !== undefined && section !== seen.get(alike(line));
    return {
      part: isElsewhere ? `${part} (${section})` : part,
      // A minus that is at the sum as well shows there.
      ...(quantity !== undefined && {
        quantity: each !== undefined && each > 0 ? Math.abs(quantity) : quantity,
      }),
      // The price of one, less what comes off it.
      ...(each !== undefined && { each: Number(((each / per) * (1 - discount)).toPrecision(12)) }),
      ...(sum !== undefined && { sum }),
    };
  });
  return taxInside === undefined ? rows : [...rows, { part: TAX_INSIDE, sum: -taxInside }];
}

/** What could not be taken is asked, so that the sheet itself says what is missing in it. */
function asked({ remarks, lines }: TypedQuote): Row[] {
  const questions = [
    ...remarks.flatMap(({ line, text, why, kind }) =>
      kind === "words" ? [] : [`Line ${line}, “${shortened(text)}”: ${why}`],
    ),
    ...lines.flatMap(({ line, part, optional, sum }) =>
      optional
        ? [
            `Line ${line}, “${shortened(part)}”${sum === undefined ? "" : ` for ${sum}`}, is an option: is it left out of the price on purpose?`,
          ]
        : [],
    ),
  ];
  const shown = questions.slice(0, MOST_ASKED).map((question) => ({ question }));
  const left = questions.length - shown.length;
  if (left <= 0) return shown;
  const rest =
    left === 1
      ? "And 1 more line of the list was not taken: is it looked at?"
      : `And ${left} more lines of the list were not taken: are they looked at?`;
  return [...shown, { question: rest }];
}
