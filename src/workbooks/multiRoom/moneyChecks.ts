/** The price worked a second way, the discount, and the customer's page against what it is made from. */
import { chain, f, text, type Formula, type Named } from "../../formula/build";
import { lookAt, NONE_FOUND as none, SOME_FOUND as some } from "../checkPlaces";
import type { CheckWords } from "../definition";
import { routeWork, sitesPriced, typeWork, work } from "./names/labour";
import {
  cablesBought,
  feedsBought,
  fittingsBought,
  passivesBought,
  platesBought,
  resistorsBought,
  suppliesBought,
  unitsBought,
  count,
} from "./names/materials";
import { branches } from "./names/branches";
import { heads } from "./names/headUnits";
import { rooms } from "./names/rooms";
import type { PIECES } from "./names/pieces";
import { price } from "./names/price";
import { quote } from "./names/quote";
import { corner, site, taxes } from "./names/site";
import { assumptions, discount, exclusions, made, options, provisional } from "./names/terms";
import { piecesOf } from "./needed";
import { ON_LINES, OWN_CLASSES, USUAL_ON_MATERIALS } from "./taxes";
import { sought } from "./nameKeys";
import { NUMBER, SCOPE } from "./quote";

const sumsOf = (of: readonly Named[]): Formula =>
  chain(
    "+",
    of.map((one) => f`SUM(${one})`),
  );

/** The quote shows nothing for 0; a text in a sum would be an error in Excel. */
const printed = (amount: Named): Formula => f`IF(${amount}="",0,${amount})`;

const BOUGHT = [
  unitsBought,
  suppliesBought,
  cablesBought,
  passivesBought,
  platesBought,
  feedsBought,
  resistorsBought,
  fittingsBought,
  work,
  routeWork,
  typeWork,
  sitesPriced,
];
/** Rows with a name, and their number on Materials, which somebody may have typed over. */
const COUNTED_AGAIN = [
  [rooms.outlet, count.outlets],
  [branches.id, count.branches],
  [heads.id, count.heads],
] as const;
/** What is needed by the names in the rows, and the pieces of the distribution that it becomes. */
const COUNTED_TWICE = [
  [unitsBought, ["head unit on a dish", "switch"]],
  [passivesBought, ["splitter", "tap", "amplifier", "equaliser", "attenuator", "filter"]],
  [suppliesBought, ["supply"]],
  [platesBought, ["wall plate"]],
] as const satisfies readonly (readonly [{ readonly quantity: Named }, readonly (typeof PIECES)[number][]])[];
/** A line that is empty is none. */
const lines = sumsOf([
  quote.reception,
  quote.cable,
  quote.fittings,
  quote.labour,
  quote.sites,
  quote.provisional,
  quote.options,
  quote.discount,
]);

/** Line by line, none of it rounded. */
const TAX_OF_LINES = f`${chain(
  "+",
  ([quote.reception, quote.cable, quote.fittings, quote.labour, quote.sites] as const).map(
    (line, at) => f`${printed(line)}*${Object.values(ON_LINES)[at]!}`,
  ),
)}+(${printed(quote.provisional)}+${printed(quote.options)}-SUMPRODUCT(IFERROR(${OWN_CLASSES},0)))*${USUAL_ON_MATERIALS}+SUMPRODUCT(IFERROR((${OWN_CLASSES})*${taxes.rate},0))`;

/** Cells of the Quote and what they are made from. */
const MIRRORED = [
  [quote.job, site.job],
  [quote.customer, site.customer],
  [quote.place, site.place],
  [quote.date, site.date],
  [quote.until, site.until],
  [quote.by, site.prepared_by],
  [quote.currency, site.currency],
] as const;
/** Cells of the Quote that are put together from several: each typed over stands for what is not priced. */
const PUT_TOGETHER = [
  [quote.number, NUMBER],
  [quote.scope, SCOPE],
] as const;
const DIFFERS = [
  ...MIRRORED.map(([shown, of]) => ({ shown, differs: f`(${shown}<>${of})*(TRIM(${of})<>"")` })),
  ...PUT_TOGETHER.map(([shown, of]) => ({ shown, differs: f`(${shown}<>${of})*1` })),
];

export const moneyChecks = {
  "discount twice": {
    what: "Discounts that are both a sum and a share, more than the price, or a reason without one",
    limit: "none: one of the two, with its reason",
    found: f`(${discount.sum}<>"")*(${discount.share}<>"")+IFERROR((${price.discount}>${price.before})*(${price.discount}>0),0)+(TRIM(${discount.reason})<>"")*(${discount.sum}="")*(${discount.share}="")`,
    passes: none,
    where: lookAt("Terms", discount.sum, discount.share),
  },
  "price after discount": {
    what: "Selling price after the discount, less its cost",
    limit: "advisory: more than 0.00 where there is a discount",
    found: f`IF(SUM(${price.discount})=0,1,${price.sell}-${price.discount}-${price.cost})`,
    format: "two",
    passes: some,
    where: lookAt("Terms", discount.sum, discount.share),
    advice: true,
  },
  "options without a cost": {
    what: "Parts of options and alternates that are not on Parts and have no cost",
    limit: "none",
    found: { of: made.option, bad: f`IFERROR(${made.lacks}=1,FALSE)` },
    passes: none,
    where: lookAt("Terms", made.part, made.each),
  },
  "alternates together": {
    what: "Alternates chosen for the same thing",
    limit: "none: one stands in its place",
    found: {
      of: options.instead,
      bad: f`IFERROR((${options.chosen}="yes")*(${options.instead}<>"")*(COUNTIFS(${options.instead_key},${sought(options.instead)},${options.chosen},"yes")>1)>0,FALSE)`,
    },
    passes: none,
    where: lookAt("Terms", options.instead, options.chosen),
  },
  "cost added again": {
    what: "Cost cross-check: difference",
    limit: "0.00",
    found: f`(${sumsOf(BOUGHT.map(({ sum }) => sum))})*(1+${site.contingency})*(1+${site.overhead})-${price.cost}`,
    format: "two",
    passes: (found) => f`ABS(${found})<0.005`,
    where: "Price",
  },
  "cost by margin": {
    what: "Margin cross-check: difference",
    limit: "0.00",
    found: f`${price.sell}*(1-${site.margin})-${price.cost}`,
    format: "two",
    passes: (found) => f`ABS(${found})<0.005`,
    where: lookAt("Price", price.sell),
  },
  "rounding of the price": {
    what: "Rounding cross-check: difference",
    limit: "3 cents: half a cent a line",
    found: f`${printed(quote.net)}-${price.sell}-SUM(${provisional.sum})-SUM(${options.chosen_sum})+${price.discount}`,
    format: "two",
    passes: (found) => f`ABS(${found})<=3/10^${price.decimals}`,
    where: "Quote, Price",
  },
  "total of the quote": {
    what: "Total cross-check: difference",
    limit: "0.00",
    found: f`${printed(quote.total)}-(${lines})-${printed(quote.tax)}`,
    format: "two",
    passes: (found) => f`ABS(${found})<0.005`,
    where: "Quote",
  },
  "tax of the quote": {
    what: "Tax cross-check: difference",
    limit: "less than a cent, and one for each tax class",
    found: f`${printed(quote.tax)}-IF(${price.before}=0,1,${price.net}/${price.before})*(${TAX_OF_LINES})`,
    format: "two",
    passes: (found) => f`ABS(${found})<(1+SUMPRODUCT(--(${taxes.name}<>"")))/10^${price.decimals}`,
    where: lookAt("Quote, Price", price.tax),
  },
  "counted again": {
    what: "Count cross-check of outlets, devices, head units, supplies and wall plates: difference",
    limit: "0",
    found: chain("+", [
      ...COUNTED_AGAIN.map(([names, counted]) => f`ABS(SUMPRODUCT(--(${names}<>""))-${counted})`),
      ...COUNTED_TWICE.map(
        ([bought, words]) =>
          f`ABS(SUM(${bought.needed})-${chain(
            "+",
            words.map((word) => piecesOf(text(word))),
          )})`,
      ),
    ]),
    passes: none,
    where: "Materials, counted",
  },
  corners: {
    what: "Corners of the prediction that differ from the frequencies and temperatures above them",
    limit: "none",
    found: f`SUMPRODUCT(--(${corner.frequency}<>MIN(${site.low},${site.high}))*{1,1,0,0})+SUMPRODUCT(--(${corner.frequency}<>MAX(${site.low},${site.high}))*{0,0,1,1})+SUMPRODUCT(--(${corner.temperature}<>MIN(${site.cold},${site.hot}))*{1,0,1,0})+SUMPRODUCT(--(${corner.temperature}<>MAX(${site.cold},${site.hot}))*{0,1,0,1})`,
    passes: none,
    where: "Site, the four corners",
  },
  "quote typed over": {
    what: "Cells of the quote that differ from the sheet they come from",
    limit: "none",
    found: chain(
      "+",
      DIFFERS.map(({ differs }) => differs),
    ),
    passes: none,
    where: "Quote",
    places: chain(
      "&",
      DIFFERS.map(({ shown, differs }) => f`IF(${differs},${text(`; ${shown.words.label}`)},"")`),
    ),
  },
  "terms empty": {
    what: "Assumptions and exclusions on the quote: lists that are empty",
    limit: "advisory: the quote says none",
    found: f`(SUMPRODUCT(--(${assumptions.text}<>""))=0)+(SUMPRODUCT(--(${exclusions.text}<>""))=0)`,
    passes: none,
    where: "Terms",
    places: f`IF(SUMPRODUCT(--(${assumptions.text}<>""))=0,"; Assumptions","")&IF(SUMPRODUCT(--(${exclusions.text}<>""))=0,"; Exclusions","")`,
    advice: true,
  },
} satisfies Readonly<Record<string, CheckWords>>;
