import type { Block, Field, SheetDefinition } from "../definition";
import { roundedNatively } from "./roundedNatively";

/** What stands where a sum is not known: the customer sees no code of an error. */
const OPEN = "open";

/** A total. */
const sum = (name: string, label: string, formula: string, more: Partial<Field> = {}): Field => ({
  name,
  label,
  format: "money",
  formula: `IFERROR(${formula},"${OPEN}")`,
  ...more,
});

/** A line that is left empty for nothing. */
const line = (name: string, label: string, of: string): Field => ({
  name,
  label,
  format: "money",
  formula: `IFERROR(IF(${of}=0,"",${of}),"${OPEN}")`,
});

/** In a row of its own, where no sum beside it cuts a long one; neither word nor label where there is none. */
const reason = (name: string, label: string, formula: string): Field => ({
  name,
  label,
  labelFormula: `IF(${name}="","","${label}")`,
  formula,
});

/** A blank stays a blank: of itself a formula would show it as 0, or as a day of 1899. */
const told = (name: string, label: string, of: string, more: Partial<Field> = {}): Field => ({
  name,
  label,
  formula: `IF(TRIM(${of})="","",${of})`,
  ...more,
});

/** A list of Terms as it prints; "none" in its first row where nothing is listed. */
const listed = (name: string, of: string, heading: string, head: string): Block => ({
  kind: "block",
  name,
  heading,
  prepared: 4,
  mirrors: of,
  columns: [
    {
      key: "text",
      head,
      width: 40,
      formula: `IF(${of}_text="",IF((ROW(${of}_text)=MIN(ROW(${of}_text))+1)*(SUMPRODUCT(--(${of}_text<>""))=0),"none",""),${of}_text)`,
    },
  ],
});

/** How many there are of something, after a comma; nothing of none. */
const counted = (what: string, count: string): string =>
  `IFERROR(IF(${count}=0,"",", ${what}: "&${count}),"")`;

/** What is quoted, as one formula. */
export const SCOPE = `MID(${[
  counted("outlets", "count_outlets"),
  counted("tuners", "heads_wanted"),
  counted("head units", "count_heads"),
  counted("orbital slots", 'SUMPRODUCT(--(slots_slot<>""))'),
].join("&")},3,200)`;

/** Number and revision, of which either may be missing, as one formula. */
export const NUMBER =
  'TRIM(site_quote)&IF(site_revision="","",IF(TRIM(site_quote)="","",", ")&"revision "&site_revision)';

/** Without a rate of tax no sum with tax is known. */
const taxed = (formula: string): string => `IF(site_tax="","${OPEN}",${formula})`;

/** Where nothing is priced there is no sum to show. */
const of = (formula: string): string => `IF(price_before=0,"",${formula})`;

export const quote: SheetDefinition = {
  name: "Quote",
  kind: "print",
  intro: "Planned, priced and checked row by row; the sums are rounded once, as printed here.",
  print: { orientation: "portrait", onePage: true },
  parts: [
    {
      kind: "fields",
      heading: "Quotation",
      fields: [
        {
          name: "quote_draft",
          label: "Draft",
          labelFormula: 'IF(quote_draft="","","Draft: not to be sent")',
          // Of what was entered only: a quote may go out with an outlet that is known to be weak.
          formula: `IF(IFERROR(SUM(checks_entries)+ISERROR(price_total),1)=0,"","Entries are missing or wrong: see Checks")`,
          strong: true,
        },
        told("quote_job", "Job", "site_job"),
        told("quote_customer", "For", "site_customer"),
        told("quote_place", "At", "site_place"),
        {
          name: "quote_number",
          label: "Number and revision",
          formula: NUMBER,
        },
        told("quote_date", "Date", "site_date", { format: "date" }),
        told("quote_until", "Valid until", "site_until", { format: "date" }),
        told("quote_by", "Prepared by", "site_prepared_by"),
        { name: "quote_scope", label: "Scope", formula: SCOPE },
      ],
    },
    {
      kind: "fields",
      heading: "Price",
      fields: [
        line("quote_reception", "Head units and power supplies", "INDEX(price_lines,1)"),
        line("quote_cable", "Cable, splitters and taps", "price_line_cable"),
        line("quote_fittings", "Outlets, fittings and sundries", "price_line_outlets"),
        line("quote_labour", "Labour", "price_line_labour"),
        line("quote_provisional", "Provisional sums", "price_line_provisional"),
        line("quote_options", "Options chosen", "price_line_options"),
        {
          ...line("quote_discount", "Discount", "-price_discount"),
          labelFormula: 'IF(quote_discount="","","Discount")',
        },
        reason(
          "quote_discount_reason",
          "Reason for the discount",
          'IF(quote_discount="","",TRIM(discount_reason))',
        ),
        sum("quote_net", "Price without tax", of("price_net"), { strong: true }),
        sum("quote_tax", "Tax", of(taxed("price_tax"))),
        reason(
          "quote_tax_reason",
          "Reason for no tax",
          'IF(site_tax=0,IF(site_tax="","",IFERROR(TRIM(INDEX(onpurpose_why,MATCH("Tax",onpurpose_what,0))),"")),"")',
        ),
        sum("quote_total", "Total", of(taxed("price_total")), { strong: true }),
        told("quote_currency", "All sums in", "site_currency"),
        sum(
          "quote_expected",
          "Expected total, as lengths and hours may turn out",
          of(taxed(roundedNatively("price_expected"))),
        ),
        {
          name: "quote_range",
          label: "Its range, about 19 in 20",
          format: "text",
          formula: `IFERROR(${of(taxed('ROUND(price_low,0)&" to "&ROUND(price_high,0)'))},"${OPEN}")`,
        },
      ],
    },
    {
      kind: "block",
      name: "quoteoptions",
      heading: "Options",
      prepared: 4,
      mirrors: "options",
      columns: [
        { key: "name", head: "Option", width: 40, formula: 'IF(options_name="","",options_name)' },
        {
          key: "sum",
          head: "Price without tax",
          width: 38,
          format: "money",
          formula: 'IF((options_name="")+(options_quantity="")+(options_each="")>0,"",options_sum)',
        },
        {
          key: "word",
          head: "In the total",
          width: 14,
          formula:
            'IF(options_name="","",IF(options_chosen="yes","yes",IF(options_chosen="no","no","open")))',
        },
      ],
    },
    listed("quoteassumptions", "assumptions", "Assumptions", "Assumed"),
    listed("quoteexclusions", "exclusions", "Exclusions", "Not included"),
    {
      kind: "text",
      heading: "Terms and safety",
      lines: [
        "Each sum is rounded to two decimals once, and the total is the sum of what is printed.",
        "The price holds until the date above, for the outlets, lengths and parts counted here.",
        "Roof and ladder work, overhead lines, lightning, mains and bonding are planned on site",
        "before work starts. Bonding and earthing follow the local code and are decided by",
        "licensed practice. This page certifies nothing.",
      ],
    },
  ],
};
