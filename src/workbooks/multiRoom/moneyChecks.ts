/** The price worked a second way, the discount, and the customer's page against what it is made from. */
import type { Check } from "../definition";
import { NUMBER, SCOPE } from "./quote";

const BOUGHT = ["buyunits", "buysupplies", "buycables", "buypassives", "buyplates", "buyfittings", "work"];
const LINES = ["reception", "cable", "fittings", "labour", "provisional", "options", "discount"];
/** A line that is empty is none. */
const lines = LINES.map((line) => `SUM(quote_${line})`).join("+");

/** Cells of the Quote and what they are made from. */
const MIRRORED = [
  ["quote_job", "site_job", "Job"],
  ["quote_customer", "site_customer", "For"],
  ["quote_place", "site_place", "At"],
  ["quote_date", "site_date", "Date"],
  ["quote_until", "site_until", "Valid until"],
  ["quote_by", "site_prepared_by", "Prepared by"],
  ["quote_currency", "site_currency", "All sums in"],
] as const;
/** Cells of the Quote that are put together from several: each typed over stands for what is not priced. */
const PUT_TOGETHER = [
  ["quote_number", NUMBER, "Number and revision"],
  ["quote_scope", SCOPE, "Scope"],
] as const;
const DIFFERS = [
  ...MIRRORED.map(([shown, of, label]) => ({ label, differs: `(${shown}<>${of})*(TRIM(${of})<>"")` })),
  ...PUT_TOGETHER.map(([shown, of, label]) => ({ label, differs: `(${shown}<>${of})*1` })),
];

export const moneyChecks: readonly Check[] = [
  {
    what: "Discounts that are both a sum and a share, more than the price, or a reason without one",
    limit: "none: one of the two, with its reason",
    found: `(discount_sum<>"")*(discount_share<>"")+IFERROR((price_discount>price_before)*(price_discount>0),0)+(TRIM(discount_reason)<>"")*(discount_sum="")*(discount_share="")`,
    passes: "@=0",
    where: "Terms, discount as a sum, discount as a share",
  },
  {
    what: "Price after the discount, less the cost of it",
    limit: "a wish, not a rule: more than 0.00 where there is a discount",
    found: "IF(SUM(price_discount)=0,1,price_sell-price_discount-price_cost)",
    format: "two",
    passes: "@>0",
    where: "Terms, discount as a sum, discount as a share",
    advice: true,
  },
  {
    what: "Cost added a second way, less the first",
    limit: "0.00",
    found: `(${BOUGHT.map((block) => `SUM(${block}_sum)`).join("+")})*(1+site_contingency)*(1+site_overhead)-price_cost`,
    format: "two",
    passes: "ABS(@)<0.005",
    where: "Price",
  },
  {
    what: "Cost in the price, by the margin on Site, less the cost",
    limit: "0.00",
    found: "price_sell*(1-site_margin)-price_cost",
    format: "two",
    passes: "ABS(@)<0.005",
    where: "Price, price of it",
  },
  {
    what: "Price of the quote less the price before rounding",
    limit: "3 cents: half a cent a line",
    found: "quote_net-price_sell-SUM(provisional_sum)-SUM(options_chosen_sum)+price_discount",
    format: "two",
    passes: "ABS(@)<=0.03",
    where: "Quote, Price",
  },
  {
    what: "Total of the quote less its lines and tax",
    limit: "0.00",
    found: `quote_total-(${lines})-quote_tax`,
    format: "two",
    passes: "ABS(@)<0.005",
    where: "Quote",
  },
  {
    what: "Tax of the quote less the rate on Site of its taxable lines",
    limit: "less than a cent",
    found:
      'quote_tax-site_tax*((quote_net-SUM(quote_labour)*IF(price_before=0,1,price_net/price_before))*(site_tax_on<>"labour only")+SUM(quote_labour)*IF(price_before=0,1,price_net/price_before)*(site_tax_on<>"materials only"))',
    format: "two",
    passes: "ABS(@)<0.01",
    where: "Quote, Price, tax",
  },
  {
    what: "Outlets, splitters and head units counted a second way, less the first",
    limit: "0",
    found:
      'ABS(SUMPRODUCT(--(rooms_outlet<>""))-count_outlets)+ABS(SUMPRODUCT(--(branches_id<>""))-count_branches)+ABS(SUMPRODUCT(--(heads_id<>""))-count_heads)',
    passes: "@=0",
    where: "Materials, counted",
  },
  {
    what: "Corners of the prediction that are not the ends of the band and the temperatures above them",
    limit: "none",
    found:
      "SUMPRODUCT(--(corner_frequency<>MIN(site_low,site_high))*{1,1,0,0})+SUMPRODUCT(--(corner_frequency<>MAX(site_low,site_high))*{0,0,1,1})+SUMPRODUCT(--(corner_temperature<>MIN(site_cold,site_hot))*{1,0,1,0})+SUMPRODUCT(--(corner_temperature<>MAX(site_cold,site_hot))*{0,1,0,1})",
    passes: "@=0",
    where: "Site, the four corners",
  },
  {
    what: "Cells of the quote that say something else than the sheet they come from",
    limit: "none",
    found: DIFFERS.map(({ differs }) => differs).join("+"),
    passes: "@=0",
    where: "Quote",
    places: DIFFERS.map(({ differs, label }) => `IF(${differs},"; ${label}","")`).join("&"),
  },
  {
    what: "Assumptions and exclusions on the quote: lists that are empty",
    limit: "a wish, not a rule: the quote says none",
    found: '(SUMPRODUCT(--(assumptions_text<>""))=0)+(SUMPRODUCT(--(exclusions_text<>""))=0)',
    passes: "@=0",
    where: "Terms",
    places:
      'IF(SUMPRODUCT(--(assumptions_text<>""))=0,"; Assumptions","")&IF(SUMPRODUCT(--(exclusions_text<>""))=0,"; Exclusions","")',
    advice: true,
  },
];
