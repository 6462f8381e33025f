import { chain, f, type Formula, type Named } from "../../formula/build";
import type { SheetDefinition } from "../definition";
import { askedBeside, blockPart, fieldsPart } from "../parts";
import { BY_RATES } from "./byRates";
import { countOf, keyOfAll, keysOf, sought, sumOf } from "./nameKeys";
import { crew } from "./names/crew";
import { cables, feeds, fittings, passives, plates, resistors, supplies, units } from "./names/parts";
import { price } from "./names/price";
import {
  assumptions,
  discount,
  exclusions,
  letterhead,
  made,
  onpurpose,
  options,
  provisional,
} from "./names/terms";
import { PROPOSAL_TERMS } from "./proposalTerms";
import { roundedNatively } from "./roundedNatively";

/** What one piece of each list costs, or one metre or foot of a cable. */
const COSTS: readonly (readonly [name: Named, cost: Named | Formula])[] = [
  [cables.name, cables.each],
  ...[passives, units, supplies, plates, feeds, resistors].map(({ name, price }) => [name, price] as const),
  [fittings.name, f`${fittings.price}/${fittings.pack}`],
];

/** Nothing of a part that no list has. */
const costOnParts = COSTS.reduceRight<Formula>(
  (otherwise, [name, cost]) => f`IFERROR(INDEX(${cost},MATCH(${made.part},${name},0)),${otherwise})`,
  f`""`,
);

export const termsSheet: SheetDefinition = {
  name: "Terms",
  kind: "input",
  intro: "Options, provisional sums, assumptions and exclusions: lists of their own that print on the quote.",
  print: { orientation: "landscape" },
  parts: [
    blockPart(options, {
      heading: "Options and alternates, at their selling price",
      prepared: 5,
      others: {
        // What is made of nothing below needs its price.
        each: { required: f`(${countOf(made.key, options.name)}=0)` },
        // Nothing but what stands in another's place makes a quote cheaper.
        instead: { required: f`(${options.each}<0)` },
      },
      formulas: {
        // As it prints on the quote.
        sum: f`IF(${options.name}="","",${roundedNatively(f`${options.quantity}*(${options.each}+IF(IFERROR(${options.made}=0,FALSE),0,${options.made}*IFERROR(${price.factor},${BY_RATES})))`)})`,
        chosen_sum: f`IF(${options.name}="","",IF(${options.chosen}="yes",${options.sum},0))`,
        // What lacks a cost leaves no price, and no host adds it up as nothing.
        made: f`IF(${options.name}="","",IF(COUNTIFS(${made.key},${sought(options.name)},${made.lacks},1)>0,NA(),${sumOf(made.cost, made.key, options.name)}))`,
        tax_key: keysOf(options.tax),
        instead_key: keysOf(options.instead),
        pair_key: f`IF(${options.instead}="","",${keyOfAll(options.instead, options.tax)})`,
      },
    }),
    blockPart(made, {
      heading: "What options and alternates are made of: at cost, sold at the rates of the job",
      prepared: 6,
      formulas: {
        one: f`IF(${made.option}="","",IF(${made.each}="",${costOnParts},${made.each}))`,
        // Neither so many nor so long, no cost, or a word where a number belongs: a sum would pass it over.
        lacks: f`IF(${made.option}="","",((${made.quantity}="")*(${made.hours}="")+(${made.quantity}<>"")*(${made.one}="")+${chain(
          "+",
          [made.quantity, made.hours, made.each].map((one) => f`(${one}<>"")*(1-ISNUMBER(${one}))`),
        )}>0)*1)`,
        // Hosts differ in what an empty text times a number is.
        cost: f`IF(${made.option}="","",IF(${made.lacks}=1,0,IF(${made.quantity}="",0,${made.quantity}*${made.one})+${made.hours}*${crew.rate}))`,
        key: keysOf(made.option),
      },
    }),
    blockPart(provisional, {
      heading: "Provisional sums, at their selling price",
      prepared: 4,
      formulas: { tax_key: keysOf(provisional.tax) },
    }),
    fieldsPart("Discount on the price without tax: a sum or a share", [
      discount.sum,
      discount.share,
      askedBeside(discount.reason, {
        required: f`((${discount.sum}<>"")+(${discount.share}<>"")>0)`,
      }),
    ]),
    blockPart(assumptions, {
      heading: "Assumptions",
      prepared: 5,
      formulas: {},
    }),
    blockPart(exclusions, {
      heading: "Exclusions",
      prepared: 6,
      formulas: {},
    }),
    blockPart(letterhead, {
      heading: "Letterhead, as it stands at the foot of the quote",
      prepared: 4,
      formulas: {},
    }),
    blockPart(onpurpose, {
      heading: "Free, or 0 on purpose: for the office",
      prepared: 4,
      formulas: {},
    }),
    ...PROPOSAL_TERMS,
  ],
};
