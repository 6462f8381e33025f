import { chain, f, type Formula } from "../../formula/build";
import { checks } from "../checkNames";
import type { Block, Field, Fields, Format, SheetDefinition } from "../definition";
import { askedBeside, blockPart, fieldsPart, worked } from "../parts";
import { writingField } from "../typed/writingField";
import { beside, lines, questions, ranges, ratio, ratioNames, review } from "./names";

type Figure = Parameters<typeof askedBeside>[0];

/** How the three cells beside a figure differ from the usual ones. */
interface Otherwise {
  readonly off?: Formula;
  readonly offFormat?: Format;
  readonly word?: Formula;
}

/** A figure of the quote that can be worked again: what that gives, how far it is off, and a word. */
function again(figure: Figure, formula: Formula, otherwise: Otherwise = {}): Field {
  const { unit, format } = figure.words;
  const less = f`${figure}-${beside(figure).again}`;
  const {
    off = f`IF(${figure}="","",${less})`,
    offFormat = unit === "money" ? "money" : "two",
    word = f`IF(${figure}="","missing",IF(ABS(${less})<=${review.tolerance},"ok","look"))`,
  } = otherwise;
  return {
    ...askedBeside(figure, {}),
    beside: [
      { key: "again", format, formula },
      { key: "off", format: offFormat, formula: off },
      { key: "word", formula: word, verdict: true },
    ],
  };
}

const heads = beside(review.heads);
const materials = beside(review.materials);

const figures: Fields = fieldsPart(
  "Figures as the quote has them",
  [
    review.tolerance,
    review.outlets,
    review.tuners,
    review.bands,
    again(
      review.heads,
      f`IF((${review.tuners}="")+(${review.bands}="")>0,"",RIG.HEADUNITS(${review.tuners},${review.bands}))`,
      {
        offFormat: "general",
        word: f`IF((${review.heads}="")+(${heads.again}="")>0,"missing",IF(${review.heads}>=${heads.again},"ok","look"))`,
      },
    ),
    review.cable,
    again(review.materials, f`SUM(${lines.again})`, {
      // The lines below are a sample, so they may come to less, never to more.
      word: f`IF(${review.materials}="","missing",IF(${materials.off}>=-${review.tolerance},"ok","look"))`,
    }),
    review.hours,
    review.rate,
    again(review.labour, f`${review.hours}*${review.rate}`),
    review.contingency,
    review.overhead,
    again(
      review.cost,
      f`(${review.materials}+${review.labour})*(1+${review.contingency})*(1+${review.overhead})`,
    ),
    review.margin,
    again(review.price, f`RIG.SELLPRICE(${review.cost},${review.margin})`),
    review.extras,
    again(review.net, f`${review.price}+${review.extras}`),
    review.taxed,
    review.rate_tax,
    again(review.tax, f`RIG.ROUNDMONEY(${review.taxed},2,"half away",${review.rate_tax})`),
    again(review.total, f`${review.net}+${review.tax}`),
    // The commonest slip of all: cost · (1 + margin) is less than cost / (1 - margin).
    worked(
      review.slip,
      f`IF((${review.price}="")+(${review.cost}="")+(${review.margin}=0)>0,"not known",IF(ABS(${review.price}-${review.cost}*(1+${review.margin}))<=${review.tolerance},"look","ok"))`,
      { verdict: true },
    ),
  ],
  { besideHeads: ["worked again", "off by", "word"] },
);

const looked: Block = blockPart(lines, {
  heading: "Lines looked at: the dearest ones",
  prepared: 6,
  formulas: {
    again: f`IF(${lines.part}="","",${lines.quantity}*${lines.each})`,
    word: f`IF(${lines.part}="","",IF((${lines.quantity}="")+(${lines.each}="")+(${lines.sum}="")>0,"missing",IF(IFERROR(ABS(${lines.sum}-${lines.again})>${review.tolerance},TRUE),"look","ok")))`,
  },
});

/** Figures with a word beside them; lines, ranges and questions are columns of words. */
const words = figures.fields.flatMap((field) =>
  field.beside ? [beside({ name: field.name, words: field }).word] : [],
);
export const SUMS_THAT_DIFFER = chain("+", [
  ...words.map((word) => f`(IFERROR(${word}="look",TRUE))`),
  f`(${review.slip}="look")`,
]);
export const FIGURES_MISSING = chain(
  "+",
  words.map((word) => f`(IFERROR(${word}="missing",FALSE))`),
);

export const reviewSheet: SheetDefinition = {
  name: "Review",
  kind: "print",
  intro: "Two minutes over somebody else's quote.",
  print: { orientation: "portrait", onePage: true },
  parts: [
    fieldsPart("The quote and its review", [
      review.job,
      review.quote,
      review.by,
      review.until,
      review.reviewer,
      review.date,
      // A note would make a column of its own, and the page too wide to read.
      { ...writingField, note: undefined },
    ]),
    figures,
    looked,
    blockPart(ranges, {
      heading: "Ratios against your own ranges",
      prepared: 8,
      formulas: {
        value: f`IF(${ranges.ratio}="","",INDEX(${ratio.values},MATCH(${ranges.ratio},${ratioNames},0)))`,
        word: f`IF(${ranges.ratio}="","",IF((${ranges.low}="")+(${ranges.high}="")>0,"no range",IF(IFERROR((${ranges.value}<${ranges.low})+(${ranges.value}>${ranges.high}),1)>0,"look","ok")))`,
      },
    }),
    blockPart(questions, {
      heading: "Questions before it goes out",
      prepared: 10,
      formulas: {
        word: f`IF(${questions.question}="","",IF((${questions.answer}="yes")+(${questions.answer}="not applicable")>0,"ok","look"))`,
      },
    }),
    fieldsPart("Verdict", [
      worked(
        review.verdict,
        f`IF(${checks.failed}=0,"ok: all is settled","look: not before the above is settled")`,
        { strong: true },
      ),
      review.remark,
    ]),
  ],
};
