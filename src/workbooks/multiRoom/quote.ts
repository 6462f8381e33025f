import { chain, f, text, type Formula, type Named } from "../../formula/build";
import { checks } from "../checkNames";
import type { Block, Field, SheetDefinition } from "../definition";
import { DRAFT_WORDS } from "../draft";
import { blockPart, fieldsPart, worked } from "../parts";
import { countOf } from "./nameKeys";
import { branches } from "./names/branches";
import { dishes, feeders } from "./names/dishes";
import { heads, headsNeeded } from "./names/headUnits";
import { count } from "./names/materials";
import { optionsPriced, price, taxesPriced } from "./names/price";
import {
  quote,
  assumptionsQuoted,
  exclusionsQuoted,
  letterheadQuoted,
  optionsQuoted,
  taxesQuoted,
} from "./names/quote";
import { rooms } from "./names/rooms";
import { site, slots, taxes } from "./names/site";
import { assumptions, discount, exclusions, letterhead, made, onpurpose, options } from "./names/terms";

/** What stands where a sum is not known: the customer sees no code of an error. */
const OPEN = text("open");

/** What is shown as it was worked out. */
type Shown = Parameters<typeof worked>[0];
type More = Parameters<typeof worked>[2];

/** A total. */
const sum = (field: Shown, formula: Formula, more: More = {}): Field =>
  worked(field, f`IFERROR(${formula},${OPEN})`, more);

/** A line that is left empty for nothing. */
const line = (field: Shown, of: Named | Formula, more: More = {}): Field =>
  worked(field, f`IFERROR(IF(${of}=0,"",${of}),${OPEN})`, more);

/** Neither word nor label where there is none. */
const unlessEmpty = (field: Shown, label: string = field.words.label): More => ({
  labelFormula: f`IF(${field}="","",${text(label)})`,
});

/** In a row of its own, where no sum beside it cuts a long one. */
const reason = (field: Shown, formula: Formula): Field => worked(field, formula, unlessEmpty(field));

/** A blank stays a blank: of itself a formula would show it as 0, or as a day of 1899. */
const repeated = (field: Shown, of: Named): Field => worked(field, f`IF(TRIM(${of})="","",${of})`);

/** Of a class in which nothing is, nothing is said. */
const ofClass = (what: Named): Formula =>
  f`IF((${taxes.name}="")+IFERROR(${taxesPriced.amount}=0,FALSE)>0,"",IFERROR(${what},${OPEN}))`;

/** An option that can't be priced yet has no sum. */
const whereQuoted = (what: Named): Formula =>
  f`IF((${options.name}="")+(${options.quantity}="")+(${options.each}="")*(${countOf(made.key, options.name)}=0)>0,"",IFERROR(${what},${OPEN}))`;

/** A list of Terms as it prints; "none" in its first row where nothing is listed. */
const listed = (
  shown: typeof assumptionsQuoted | typeof exclusionsQuoted,
  of: typeof assumptions | typeof exclusions,
  heading: string,
): Block =>
  blockPart(shown, {
    heading,
    prepared: 4,
    mirrors: of,
    formulas: {
      text: f`IF(${of.text}="",IF((ROW(${of.text})=MIN(ROW(${of.text}))+1)*(SUMPRODUCT(--(${of.text}<>""))=0),"none",""),${of.text})`,
    },
  });

/** How many there are of something, after a comma; nothing of none. */
const counted = (what: string, of: Named | Formula): Formula =>
  f`IFERROR(IF(${of}=0,"",${text(`, ${what}: `)}&${of}),"")`;

/** What is quoted, as one formula. */
export const SCOPE = f`MID(${chain("&", [
  counted("outlets", count.outlets),
  counted("tuners", headsNeeded.wanted),
  counted("head units", count.heads),
  counted("orbital slots", f`SUMPRODUCT(--(${slots.slot}<>""))`),
])},3,200)`;

/** Number and revision, of which either may be missing, as one formula. */
export const NUMBER = f`TRIM(${site.quote})&IF(${site.revision}="","",IF(TRIM(${site.quote})="","",", ")&"revision "&${site.revision})`;

/** Without a rate of tax no sum with tax is known. */
const taxed = (of: Named | Formula): Formula => f`IF(${site.tax}="",${OPEN},${of})`;

/** Where nothing is priced there is no sum to show. */
const priced = (of: Named | Formula): Formula => f`IF(${price.before}=0,"",${of})`;

/** Rows that cannot be worked out: what they would cost is missing from the price. */
const BAD_ROWS = chain(
  "+",
  [dishes.seen.row, feeders.check.row, heads.check.row, branches.check.row, rooms.check.row].map(
    (row) => f`COUNTIF(${row},"bad")`,
  ),
);

/** As it is broken into lines on the sheet. */
export const TERMS = [
  "Each sum is rounded once, where it is printed, and the total is the sum of what is printed.",
  "The price holds until the date above, for the outlets, lengths and parts counted here.",
];
export const SAFETY = [
  "Roof and ladder work, overhead lines, lightning, mains and bonding are planned on site",
  "before work starts. Bonding and earthing follow the local code and are decided by",
  "licensed practice. This quotation is not a safety certificate.",
];

export const quoteSheet: SheetDefinition = {
  name: "Quote",
  kind: "print",
  intro: "The price of the work described here, with what it assumes and what it leaves out.",
  print: { orientation: "portrait", onePage: true },
  parts: [
    fieldsPart("Quotation", [
      // Of what was entered only: a quote may go out with an outlet that is known to be weak.
      worked(
        quote.draft,
        f`IF(IFERROR(SUM(${checks.entries})+${BAD_ROWS}+ISERROR(${price.total}),1)=0,"","Entries are missing or wrong: see Checks")`,
        { ...unlessEmpty(quote.draft, DRAFT_WORDS), strong: true },
      ),
      repeated(quote.job, site.job),
      repeated(quote.customer, site.customer),
      repeated(quote.place, site.place),
      worked(quote.number, NUMBER),
      repeated(quote.date, site.date),
      repeated(quote.until, site.until),
      repeated(quote.by, site.prepared_by),
      worked(quote.scope, SCOPE),
    ]),
    fieldsPart("Price", [
      line(quote.reception, f`INDEX(${price.lines},1)`),
      line(quote.cable, price.line_cable),
      line(quote.fittings, price.line_fittings),
      line(quote.labour, price.line_labour),
      line(quote.sites, price.line_sites, unlessEmpty(quote.sites)),
      line(quote.provisional, price.line_provisional),
      line(quote.options, price.line_options),
      line(quote.discount, f`-${price.discount}`, unlessEmpty(quote.discount)),
      reason(quote.discount_reason, f`IF(${quote.discount}="","",TRIM(${discount.reason}))`),
      sum(quote.net, priced(price.net), { strong: true }),
      sum(quote.tax, priced(taxed(price.tax))),
      line(quote.tax_usual, f`IF(${price.of_class}=0,0,${price.tax_usual})`, unlessEmpty(quote.tax_usual)),
      reason(
        quote.tax_reason,
        f`IF(${site.tax}=0,IF(${site.tax}="","",IFERROR(TRIM(INDEX(${onpurpose.why},MATCH(${text(site.tax.words.label)},${onpurpose.what},0))),"")),"")`,
      ),
      sum(quote.total, priced(taxed(price.total)), { strong: true }),
      repeated(quote.currency, site.currency),
    ]),
    blockPart(taxesQuoted, {
      heading: "Tax at other rates",
      prepared: 3,
      mirrors: taxes,
      formulas: {
        name: ofClass(taxes.name),
        taxable: ofClass(taxesPriced.taxable),
        rate: ofClass(taxes.rate),
        tax: ofClass(taxesPriced.tax),
      },
    }),
    blockPart(optionsQuoted, {
      heading: "Options and alternates",
      prepared: 4,
      mirrors: options,
      formulas: {
        name: f`IF(${options.name}="","",IF(${options.instead}="",${options.name},REPLACE(REPLACE(${options.instead},1,0,", instead of "),1,0,${options.name})))`,
        sum: whereQuoted(options.sum),
        total: whereQuoted(optionsPriced.total),
        word: f`IF(${options.name}="","",IF(${options.chosen}="yes","yes",IF(${options.chosen}="no","no","open")))`,
      },
    }),
    listed(assumptionsQuoted, assumptions, "Assumptions"),
    listed(exclusionsQuoted, exclusions, "Exclusions"),
    {
      kind: "text",
      heading: "Terms and safety",
      lines: [...TERMS, ...SAFETY],
    },
    blockPart(letterheadQuoted, {
      heading: "From",
      prepared: 4,
      mirrors: letterhead,
      formulas: { line: f`IF(${letterhead.line}="","",${letterhead.line})` },
    }),
  ],
};
