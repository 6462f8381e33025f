/**
 * The quote review a second time: each figure worked again from the figures typed above it, by its label and hint;
 * ratios as a division of the two that they name. A blank counts as 0 where figures are multiplied or added.
 */
import DecimalJs from "decimal.js";
import { isBookError, type Book, type BookResult } from "../../../../src/workbooks/book";
import { questions, ratio } from "../../../../src/workbooks/quoteReview/names";
import { quoteReview } from "../../../../src/workbooks/quoteReview/definition";
import {
  field,
  figure,
  isFilled,
  orNought,
  plain,
  rowsOf,
  sum,
  type Cells,
  type Expected,
  type Job,
  type Row,
  type Value,
} from "../job";
import { checkCells, failedOf, none, type Found } from "./checks";

const isFault = (value: Value): boolean => typeof value === "number" && Number.isNaN(value);

interface Again {
  readonly again: Value;
  readonly off: Expected;
  readonly word: Expected;
}

const oneOf = (value: Value): Expected => ({
  about: `an error or ${value}`,
  holds: (got) => got === value || isBookError(got as BookResult),
});

/** The words of each ratio, as Review and Ratios have them. */
const ratiosOf = (job: Job): readonly (readonly [string, Value])[] => {
  const of = (name: string): number => orNought(job.fields, `review_${name}`);
  const has = (name: string): boolean => isFilled(job.fields, `review_${name}`);
  /** A figure that is not told makes no ratio. */
  const each = (a: number, by: number, ...told: readonly string[]): Value =>
    by === 0 || !told.some(has) ? "" : a / by;
  return [
    [
      ratio.per_outlet.words.label,
      each(has("price") ? of("price") : of("net"), of("outlets"), "price", "net"),
    ],
    [ratio.cable_each.words.label, each(of("cable"), of("outlets"), "cable")],
    [ratio.hours_each.words.label, each(of("hours"), of("outlets"), "hours")],
    [ratio.tuners_each.words.label, each(of("tuners"), of("outlets"), "tuners")],
    [ratio.tuners_head.words.label, each(of("tuners"), of("heads"), "tuners")],
    [ratio.materials.words.label, each(of("materials"), of("materials") + of("labour"), "materials")],
    [ratio.margin.words.label, each(of("price") - of("cost"), of("price"), "cost")],
    [ratio.extras.words.label, each(of("extras"), of("net"), "extras")],
    [ratio.cable_price.words.label, has("cable_price") ? of("cable_price") : ""],
  ];
};

function figuresOf(job: Job, linesAgain: readonly Value[]): Readonly<Record<string, Again>> {
  const of = (name: string): number => orNought(job.fields, `review_${name}`);
  const has = (name: string): boolean => isFilled(job.fields, `review_${name}`);
  const tolerance = of("tolerance");
  const held = (name: string, again: number | ""): Again => {
    if (!has(name)) return { again, off: "", word: "missing" };
    // Excel takes no empty text for a number, this desk takes it for 0.
    if (again === "") return { again, off: oneOf(of(name)), word: oneOf("look") };
    const off = of(name) - again;
    if (Number.isNaN(off)) return { again, off, word: NaN };
    return { again, off, word: Math.abs(off) <= tolerance ? "ok" : "look" };
  };
  const heads = ((): Again => {
    const isFit = Number.isInteger(of("bands")) && of("bands") >= 1 && of("bands") <= 32;
    const needed = isFit ? Math.ceil(of("tuners") / of("bands")) : NaN;
    const again = has("tuners") && has("bands") ? needed : "";
    if (Number.isNaN(again)) return { again, off: has("heads") ? NaN : "", word: NaN };
    if (!has("heads") || again === "")
      return { again, off: has("heads") ? oneOf(of("heads")) : "", word: "missing" };
    return { again, off: of("heads") - again, word: of("heads") >= again ? "ok" : "look" };
  })();
  const materials = ((): Again => {
    const again = sum(linesAgain.map((value) => (value === "" ? 0 : Number(value))));
    const off = of("materials") - again;
    if (!has("materials")) return { again, off: "", word: "missing" };
    if (Number.isNaN(off)) return { again, off, word: NaN };
    return { again, off, word: off >= -tolerance ? "ok" : "look" };
  })();
  // Without both there is nothing to work out; without one of them that is told.
  const isPriced = has("cost") || has("margin") ? NaN : "";
  const price = has("cost") && has("margin") && of("margin") < 1 ? of("cost") / (1 - of("margin")) : isPriced;
  const noTax = has("taxed") ? NaN : "";
  const tax =
    has("taxed") && !Number.isNaN(of("taxed")) && !Number.isNaN(of("rate_tax"))
      ? new DecimalJs(of("taxed"))
          // Without a rate the argument is left out, and that is once.
          .times(has("rate_tax") ? of("rate_tax") : 1)
          .toDecimalPlaces(2, DecimalJs.ROUND_HALF_UP)
          .toNumber()
      : noTax;
  return {
    heads,
    materials,
    labour: held("labour", of("hours") * of("rate")),
    cost: held("cost", (of("materials") + of("labour")) * (1 + of("contingency")) * (1 + of("overhead"))),
    price: held("price", price),
    net: held("net", of("price") + of("extras")),
    tax: held("tax", tax),
    total: held("total", of("net") + of("tax")),
  };
}

/** A lump sum has neither quantity nor price. */
function lineWord(row: Row, again: Value, tolerance: number): Value {
  const isHalf = isFilled(row, "quantity") !== isFilled(row, "each");
  if (isHalf || !isFilled(row, "sum")) return "missing";
  return Math.abs(figure(row, "sum") - Number(again)) <= tolerance ? "ok" : "look";
}

const inCents = (value: number): number =>
  new DecimalJs(value).toDecimalPlaces(2, DecimalJs.ROUND_HALF_UP).toNumber();
const FIGURE_OR_ERROR: Expected = {
  about: "a figure or an error",
  holds: (got) => typeof got === "number" || got === "" || isBookError(got as BookResult),
};

/** Of a job whose lines are a part of the materials: what is corrected in them goes through cost and margin into the price. */
function correctedOf(
  job: Job,
  figures: Readonly<Record<string, Again>>,
  linesAgain: readonly Value[],
  lineWords: readonly Value[],
): Cells {
  const has = (name: string): boolean => isFilled(job.fields, `review_${name}`);
  const of = (name: string): number => orNought(job.fields, `review_${name}`);
  const names = "lines twice heads net tax total off".split(" ");
  // What follows from a word in a figure's place is an error, in whichever of them.
  if (["cost", "tax", "materials"].some((name) => Number.isNaN(of(name))))
    return Object.fromEntries(names.map((name) => [`corrected_${name}`, FIGURE_OR_ERROR]));
  const rows = rowsOf(job, "lines");
  const sumOver = (word: string, value: (at: number) => number): number =>
    lineWords.reduce<number>((all, one, at) => all + (one === word ? value(at) || 0 : 0), 0);
  const lines = sumOver("look", (at) => inCents(Number(linesAgain[at]) - orNought(rows[at]!, "sum")));
  const twice = 0 - sumOver("twice", (at) => Number(linesAgain[at]));
  const needed = figures.heads!.again;
  const heads =
    typeof needed === "number" && !Number.isNaN(needed)
      ? Math.max(0, needed - of("heads")) * of("head_price")
      : 0;
  const delta = lines + twice + heads;
  const labour = of("hours") * of("rate") || of("labour");
  const cost = (of("materials") + delta + labour) * (1 + of("contingency")) * (1 + of("overhead"));
  const price = !has("materials")
    ? of("price") + delta
    : has("margin")
      ? cost / (1 - of("margin"))
      : of("cost") === 0
        ? of("price") + delta
        : (of("price") * cost) / of("cost");
  const isRight = ["materials", "labour", "cost", "price", "net"].every(
    (name) => figures[name]!.word === "ok",
  );
  const net = delta === 0 && isRight ? of("net") : inCents(price + of("extras"));
  const base = has("taxed") ? of("taxed") + net - (has("net") ? of("net") : net) : net;
  const isTaxRight = net === of("net") && figures.tax!.word === "ok";
  const tax = !has("rate_tax") || isTaxRight ? of("tax") : inCents(base * of("rate_tax"));
  return {
    corrected_lines: lines,
    corrected_twice: twice,
    corrected_heads: heads,
    corrected_net: net,
    corrected_tax: tax,
    corrected_total: net + tax,
    corrected_off: has("total") ? net + tax - of("total") : "",
  };
}

/**
 * @param isByWords "Ratios outside your own ranges, or not found": each is counted once. The template counts a ratio
 * that it does not know twice where a range stands beside it, and shows an error instead of the sums that differ where
 * price, cost or margin is no number: both are its mistakes.
 */
export function quoteReviewReference(job: Job, book: Book, isByWords: boolean): Cells {
  const lines = rowsOf(job, "lines");
  const tolerance = orNought(job.fields, "review_tolerance");
  const linesAgain = lines.map((row) => {
    if (!isFilled(row, "part")) return "";
    const isLump = !isFilled(row, "quantity") || !isFilled(row, "each");
    return isLump ? orNought(row, "sum") : orNought(row, "quantity") * orNought(row, "each");
  });
  const isLike = (one: number, other: number): boolean =>
    plain(lines[one]!.part) === plain(lines[other]!.part) &&
    plain(lines[one]!.quantity) === plain(lines[other]!.quantity) &&
    Object.is(linesAgain[one], linesAgain[other]);
  const isTwice = (at: number): boolean => lines.slice(0, at).some((_, before) => isLike(before, at));
  const lineWords = lines.map((row, at) => {
    if (!isFilled(row, "part")) return "";
    return isTwice(at) ? "twice" : lineWord(row, linesAgain[at]!, tolerance);
  });
  const figures = figuresOf(job, linesAgain);
  const of = (name: string): number => orNought(job.fields, `review_${name}`);
  const markedUp = of("price") - of("cost") * (1 + of("margin"));
  const isKnown =
    isFilled(job.fields, "review_price") && isFilled(job.fields, "review_cost") && of("margin") !== 0;
  const markup = Math.abs(markedUp) <= tolerance ? "look" : "ok";
  const slip: Value = isKnown ? (Number.isNaN(markedUp) ? NaN : markup) : "not known";

  const markedUpCount = isFault(slip) ? NaN : Number(slip === "look");

  const ratios = ratiosOf(job);
  const ranges = rowsOf(job, "ranges");
  const values = ranges.map((row): Value => {
    if (!isFilled(row, "ratio")) return "";
    return ratios.find(([label]) => plain(label) === plain(row.ratio))?.[1] ?? NaN;
  });
  const rangeWords = ranges.map((row, at): Value => {
    if (!isFilled(row, "ratio")) return "";
    if (!isFilled(row, "low") || !isFilled(row, "high")) return "no range";
    const value = values[at]!;
    if (value === "") return "not known";
    // What was not found is as good as outside.
    if (typeof value !== "number") return "look";
    return value >= figure(row, "low") && value <= figure(row, "high") ? "ok" : "look";
  });
  const asked = rowsOf(job, "asked");
  // Whatever may be answered but no.
  const { rule } = questions.answer.words.input!;
  const settled = new Set(rule.kind === "choice" ? rule.choices.filter((one) => one !== "no") : []);
  const answers = asked.map((row): Value => {
    if (!isFilled(row, "question")) return "";
    return settled.has(plain(row.answer)) ? "ok" : "look";
  });
  // One that is an error or asks for a look counts as asking for one.
  const words = Object.values(figures).map(({ word }): Value => (typeof word === "object" ? "look" : word));
  const count = (list: readonly Value[], is: (value: Value) => boolean): number => list.filter(is).length;
  const days = field(job, "review_until") - field(job, "review_date");
  const daysLeft = [job.fields.review_until, job.fields.review_date].some((one) => typeof one === "string")
    ? NaN
    : Number.isNaN(days)
      ? of("until") - of("date")
      : days;
  const checks: Record<string, Found> = {
    "figures missing": none(count(words, (one) => one === "missing")),
    "sums that differ": none(
      count(words, (one) => one === "look" || isFault(one)) +
        (isByWords ? Number(isFault(slip) || slip === "look") : markedUpCount),
    ),
    "lines that differ": none(count(lineWords, (one) => one === "look" || one === "missing" || isFault(one))),
    "lines twice": none(count(lineWords, (one) => one === "twice")),
    "ratios out of range": none(
      count(rangeWords, (one) => one === "look") +
        values.filter((one, at) => isFault(one) && !(isByWords && rangeWords[at] === "look")).length,
    ),
    "ratios without a range": { ...none(count(rangeWords, (one) => one === "no range")), isWish: true },
    "questions open": none(count(answers, (one) => one === "look")),
    "days of validity": { found: daysLeft, passes: daysLeft >= 1 },
    "reviewer named": {
      found: Number(isFilled(job.fields, "review_reviewer")),
      passes: isFilled(job.fields, "review_reviewer"),
    },
    "rows below a block": none(0),
  };
  return {
    ...Object.fromEntries(
      Object.entries(figures).flatMap(([name, { again, off, word }]) => [
        [`review_${name}_again`, again],
        [`review_${name}_off`, off],
        [`review_${name}_word`, word],
      ]),
    ),
    review_slip: slip,
    ...correctedOf(job, figures, linesAgain, lineWords),
    lines_again: linesAgain,
    lines_word: lineWords,
    ranges_value: values,
    ranges_word: rangeWords,
    asked_word: answers,
    ratio_values: ratios.map(([, value]) => value),
    review_verdict: failedOf(checks) === 0 ? /^ok: / : /^look: /,
    ...checkCells(quoteReview, book, checks),
  };
}
