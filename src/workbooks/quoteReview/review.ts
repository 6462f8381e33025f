import { chain, f, text, type Formula, type Named } from "../../formula/build";
import { checks } from "../checkNames";
import type { Block, Field, Fields, Format, SheetDefinition } from "../definition";
import { askedBeside, blockPart, fieldsPart, worked } from "../parts";
import { writingField } from "../typed/writingField";
import { LINES_ARE } from "./typed/typedQuote";
import { beside, corrected, lines, questions, ranges, ratio, ratioNames, review } from "./names";

type Figure = Parameters<typeof askedBeside>[0];

/** How the three cells beside a figure differ from the usual ones. */
interface Otherwise {
  readonly off?: Formula;
  readonly offFormat?: Format;
  readonly word?: Formula;
}

/** The lines make the price by themselves: a quote as its customer has it, without costs. */
const IS_WHOLE = f`${review.lines_are}=${text(LINES_ARE[0])}`;
const ARE_MATERIALS = f`${review.lines_are}=${text(LINES_ARE[1])}`;
/** The word for a figure that is blank: costs and a net are not missed in what a customer gets. */
const NOT_GIVEN = f`IF(${IS_WHOLE},"","missing")`;

/** A figure of the quote that can be worked again: what that gives, how far it is off, and a word. */
function again(figure: Figure, formula: Formula, otherwise: Otherwise = {}): Field {
  const { unit, format } = figure.words;
  const less = f`${figure}-${beside(figure).again}`;
  const {
    off = f`IF(${figure}="","",${less})`,
    offFormat = unit === "money" ? "money" : "two",
    word = f`IF(${figure}="",${NOT_GIVEN},IF(ABS(${less})<=${review.tolerance},"ok","look"))`,
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
const labour = beside(review.labour);
const net = beside(review.net);
const tax = beside(review.tax);
const total = beside(review.total);
/** What the lines come to as quoted; one without a sum as worked out. */
const QUOTED = f`SUM(${lines.sum})+SUMPRODUCT((${lines.sum}="")*IFERROR(${lines.again}*1,0))`;
const AS_QUOTED = f`(${QUOTED}+${review.extras})`;

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
      // Lines that are a sample may come to less, never to more; of a whole price some are no materials.
      word: f`IF(${review.materials}="",${NOT_GIVEN},IF(${IS_WHOLE},"",IF((${materials.off}>=-${review.tolerance})*((${materials.off}<=${review.tolerance})+(1-(${ARE_MATERIALS}))>0),"ok",IF(${ARE_MATERIALS},IF(ABS(${review.materials}-SUM(${lines.sum}))<=${review.tolerance},"ok","look"),"look"))))`,
    }),
    review.hours,
    review.rate,
    again(review.labour, f`${review.hours}*${review.rate}`, {
      // Without hours or a rate there is nothing to work it out from.
      word: f`IF((${review.labour}="")+${IS_WHOLE}*((${review.hours}="")+(${review.rate}="")>0)>0,${NOT_GIVEN},IF(ABS(${review.labour}-${labour.again})<=${review.tolerance},"ok","look"))`,
    }),
    review.contingency,
    review.overhead,
    again(
      review.cost,
      f`(${review.materials}+${review.labour})*(1+${review.contingency})*(1+${review.overhead})`,
    ),
    review.margin,
    again(review.price, f`RIG.SELLPRICE(${review.cost},${review.margin})`),
    review.extras,
    again(review.net, f`IF(${IS_WHOLE},SUM(${lines.again}),${review.price})+${review.extras}`, {
      // A line that is wrong shows at the line: the net may be the sum of what stands there.
      word: f`IF(${review.net}="",${NOT_GIVEN},IF(ABS(${review.net}-${net.again})<=${review.tolerance},"ok",IF(${IS_WHOLE},IF(MIN(ABS(${review.net}-${AS_QUOTED}),ABS(${review.net}-${AS_QUOTED}-${corrected.twice}),ABS(${review.net}-${net.again}-${corrected.twice}))<=${review.tolerance},"ok","look"),"look")))`,
    }),
    review.taxed,
    review.rate_tax,
    again(review.tax, f`RIG.ROUNDMONEY(${review.taxed},2,"half away",${review.rate_tax})`),
    again(review.total, f`IF((${review.net}="")*${IS_WHOLE},${net.again},${review.net})+${review.tax}`, {
      word: f`IF(${review.total}="","missing",IF(ABS(${review.total}-${total.again})<=${review.tolerance},"ok",IF((${review.net}="")*${IS_WHOLE}>0,IF(MIN(ABS(${review.total}-${review.tax}-${AS_QUOTED}),ABS(${review.total}-${review.tax}-${AS_QUOTED}-${corrected.twice}),ABS(${review.total}-${review.tax}-${net.again}-${corrected.twice}))<=${review.tolerance},"ok","look"),"look")))`,
    }),
    // The commonest slip of all: cost · (1 + margin) is less than cost / (1 - margin).
    worked(
      review.slip,
      f`IF((${review.price}="")+(${review.cost}="")+(${review.margin}=0)>0,"not known",IF(ABS(${review.price}-${review.cost}*(1+${review.margin}))<=${review.tolerance},"look","ok"))`,
      { verdict: true },
    ),
  ],
  { besideHeads: ["worked again", "off by", "word"] },
);

const firstLike = (of: Named): Formula => f`IFERROR(MATCH(${of},${of},0),0)`;
/** What a line is told from others by, in one number: the first rows with its part, its quantity and what it comes to. */
const LIKE = f`${firstLike(lines.part)}*100000000+${firstLike(lines.quantity)}*10000+${firstLike(lines.again)}`;
const IS_TWICE = f`MATCH(${LIKE},${LIKE},0)<>ROW(${lines.part})-MIN(ROW(${lines.part}))+1`;

const looked: Block = blockPart(lines, {
  heading: "Lines looked at",
  prepared: 6,
  formulas: {
    // A lump sum has neither quantity nor price.
    again: f`IF(${lines.part}="","",IF((${lines.quantity}="")+(${lines.each}="")>0,IF(${lines.sum}="",0,${lines.sum}),${lines.quantity}*${lines.each}))`,
    word: f`IF(${lines.part}="","",IF(${IS_TWICE},"twice",IF((${lines.sum}="")+((${lines.quantity}="")<>(${lines.each}=""))>0,IF(${IS_WHOLE}*((${lines.sum}<>"")+((${lines.quantity}<>"")*(${lines.each}<>""))>0),"ok","missing"),IF(IFERROR(ABS(${lines.sum}-${lines.again})>${review.tolerance},TRUE),"look","ok"))))`,
  },
});

/** Each figure as quoted where it holds and nothing that it follows from was corrected. */
const DELTA = f`${corrected.lines}+${corrected.twice}+${corrected.heads}`;
const allOk = (of: readonly Named[]): Formula =>
  chain(
    "*",
    of.map((word) => f`(IFERROR(${word}="ok",FALSE))`),
  );
const LABOUR = f`IF(${review.hours}*${review.rate}=0,${review.labour},${review.hours}*${review.rate})`;
const MATERIALS = f`IF(${ARE_MATERIALS},SUM(${lines.again})+${corrected.twice}+${corrected.heads},${review.materials}+${DELTA})`;
const COST = f`(${MATERIALS}+${LABOUR})*(1+${review.contingency})*(1+${review.overhead})`;
/** The most that a selling price is worked out of: what is typed beside any sense must not name a function's argument. */
const MOST_COST = 1e12;
const MOST_MARGIN = 0.99;
/** Without the costs the price goes as what was corrected; without a margin as its cost. */
const PRICE = f`IF((${review.materials}="")*(1-(${ARE_MATERIALS}))>0,${review.price}+${DELTA},IF(${review.margin}="",IF(${review.cost}=0,${review.price}+${DELTA},${review.price}*(${COST})/${review.cost}),RIG.SELLPRICE(MIN(MAX(${COST},0),${MOST_COST}),MIN(MAX(${review.margin},0),${MOST_MARGIN}))))`;
const BUILT_OK = allOk([
  materials.word,
  labour.word,
  beside(review.cost).word,
  beside(review.price).word,
  net.word,
]);

const correction = fieldsPart("The corrected total", [
  review.lines_are,
  review.head_price,
  review.cable_price,
  worked(
    corrected.lines,
    f`SUMPRODUCT((${lines.word}="look")*IFERROR(ROUND(${lines.again}-${lines.sum},2),0))`,
  ),
  worked(corrected.twice, f`-SUMIF(${lines.word},"twice",${lines.again})`),
  worked(corrected.heads, f`IFERROR(MAX(0,${heads.again}-${review.heads})*${review.head_price},0)`),
  worked(
    corrected.net,
    f`IF(${IS_WHOLE},RIG.ROUNDMONEY(${AS_QUOTED}+${DELTA},2),IF((${DELTA}=0)*${BUILT_OK}>0,${review.net},RIG.ROUNDMONEY(${PRICE}+${review.extras},2)))`,
  ),
  worked(
    corrected.tax,
    f`IF((${review.rate_tax}="")+(${corrected.net}=${review.net})*(${tax.word}="ok")>0,IF(${review.tax}="",0,${review.tax}),RIG.ROUNDMONEY(IF(${review.taxed}="",${corrected.net},${review.taxed}+${corrected.net}-IF(${review.net}="",${corrected.net},${review.net})),2,"half away",${review.rate_tax}))`,
  ),
  worked(corrected.total, f`${corrected.net}+${corrected.tax}`, { strong: true }),
  worked(corrected.off, f`IF(${review.total}="","",${corrected.total}-${review.total})`),
]);

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
    correction,
    blockPart(ranges, {
      heading: "Ratios against your own ranges",
      prepared: 8,
      formulas: {
        value: f`IF(${ranges.ratio}="","",INDEX(${ratio.values},MATCH(${ranges.ratio},${ratioNames},0)))`,
        word: f`IF(${ranges.ratio}="","",IF((${ranges.low}="")+(${ranges.high}="")>0,"no range",IF(IFERROR(${ranges.value}="",FALSE),"not known",IF(IFERROR((${ranges.value}<${ranges.low})+(${ranges.value}>${ranges.high}),1)>0,"look","ok"))))`,
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
