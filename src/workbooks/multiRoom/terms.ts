import { f } from "../../formula/build";
import type { SheetDefinition } from "../definition";
import { askedBeside, blockPart, fieldsPart } from "../parts";
import {
  assumptions,
  discount,
  exclusions,
  letterhead,
  onpurpose,
  options,
  provisional,
} from "./names/terms";
import { roundedNatively } from "./roundedNatively";

export const termsSheet: SheetDefinition = {
  name: "Terms",
  kind: "input",
  intro: "Options, provisional sums, assumptions and exclusions: lists of their own that print on the quote.",
  print: { orientation: "landscape" },
  parts: [
    blockPart(options, {
      heading: "Options, at their selling price",
      prepared: 5,
      formulas: {
        // As it prints on the quote.
        sum: f`IF(${options.name}="","",${roundedNatively(f`${options.quantity}*${options.each}`)})`,
        chosen_sum: f`IF(${options.name}="","",${options.sum}*(${options.chosen}="yes"))`,
      },
    }),
    blockPart(provisional, {
      heading: "Provisional sums, at their selling price",
      prepared: 4,
      formulas: {},
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
  ],
};
