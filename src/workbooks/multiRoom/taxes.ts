/** Classes of tax: what is in each, and which rate a line of the quote bears. */
import { chain, f, type Formula, type Named } from "../../formula/build";
import { sought, sumOf } from "./nameKeys";
import { site, taxClass, taxes } from "./names/site";
import { options, provisional } from "./names/terms";

type Line = keyof typeof taxClass;
const EACH_LINE = Object.keys(taxClass) as readonly Line[];

/** The usual rate, where that is charged on what is no labour. */
export const USUAL_ON_MATERIALS = f`${site.tax}*(${site.tax_on}<>"labour only")`;
const usualOn = (line: Line): Formula =>
  line === "labour" ? f`${site.tax}*(${site.tax_on}<>"materials only")` : USUAL_ON_MATERIALS;

/** The rate of each line of the quote: of its class, else the usual one where that is charged on it. */
export const ON_LINES = Object.fromEntries(
  EACH_LINE.map((line) => [
    line,
    f`IF(${taxClass[line]}="",${usualOn(line)},IFERROR(INDEX(${taxes.rate},MATCH(${taxClass[line]},${taxes.name},0)),0))`,
  ]),
) as Readonly<Record<Line, Formula>>;

/** What rows with a class of their own have in each class. */
export const OWN_CLASSES = f`${sumOf(provisional.sum, provisional.tax_key, taxes.name)}+${sumOf(options.chosen_sum, options.tax_key, taxes.name)}`;

/** @returns what of the price is in each class */
export const inClasses = (lines: Readonly<Record<Line, Named | Formula>>): Formula =>
  f`${chain(
    "+",
    EACH_LINE.map((line) => f`${lines[line]}*(${taxClass[line]}=${taxes.name})`),
  )}+${OWN_CLASSES}`;

/** How many classes are named and not listed. */
export const CLASSES_UNKNOWN = chain("+", [
  ...EACH_LINE.map((line) => f`(${taxClass[line]}<>"")*(COUNTIF(${taxes.key},${sought(taxClass[line])})=0)`),
  ...[options, provisional].map(
    ({ tax, tax_key }) => f`SUMPRODUCT((${tax}<>"")*ISERROR(MATCH(${tax_key},${taxes.key},0)))`,
  ),
]);
