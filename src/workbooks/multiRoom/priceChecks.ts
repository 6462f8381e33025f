/** Checks of prices, their dates, and the work that is priced. */
import type { Check } from "../definition";

export const PRICED_BLOCKS = ["cables", "passives", "units", "supplies", "plates", "fittings"] as const;

/** One count over all lists of parts, and the first of each that is counted. */
const ofParts = (bad: (block: string) => string): Pick<Check, "found" | "places"> => {
  const counted = PRICED_BLOCKS.map((block) => `(${block}_name<>"")*(${bad(block)})>0`);
  return {
    found: counted.map((one) => `SUMPRODUCT(--(${one}))`).join("+"),
    places: PRICED_BLOCKS.map(
      (block, index) => `IFERROR("; "&INDEX(${block}_name,MATCH(1,(${counted[index]})*1,0)),"")`,
    ).join("&"),
  };
};

const noneOf = "@=0";
/** Counted by nothing. */
const uncounted = (block: string): string =>
  `(${block}_name<>"")*(${block}_per_outlet+${block}_per_branch+${block}_per_head+${block}_fixed=0)`;

export const priceChecks: readonly Check[] = [
  {
    what: "Prices without a date, or past it on the day of the quote",
    limit: "none",
    ...ofParts((block) => `${block}_until<site_date`),
    passes: noneOf,
    where: "Parts, valid until",
  },
  {
    what: "Prices of a day after the quote's",
    limit: "none",
    ...ofParts((block) => `(${block}_priced<>"")*(${block}_priced>site_date)`),
    passes: noneOf,
    where: "Parts, priced on",
  },
  {
    what: "Prices that run out while the quote still holds",
    limit: "a wish, not a rule: who bears the difference?",
    ...ofParts((block) => `(${block}_until>=site_date)*(${block}_until<site_until)`),
    passes: noneOf,
    where: "Parts, valid until",
    advice: true,
  },
  {
    what: "Days that the quote still holds on its own date",
    limit: "1 or more",
    found: "site_until-site_date",
    passes: "@>=1",
    where: "Site, date of the quote, quote valid until",
  },
  {
    what: "Hours of labour in the price",
    limit: "more than 0, or listed on Terms as 0 on purpose",
    found: 'work_total_hours+ISTEXT(INDEX(onpurpose_why,MATCH("labour",onpurpose_what,0)))',
    format: "two",
    passes: "IFERROR(@>0,FALSE)",
    where: "Parts, labour units",
  },
  {
    what: "Labour whose minutes are not between a least and a most, both given or neither",
    limit: "none",
    found: {
      of: "labour_name",
      bad: '((labour_low<>"")<>(labour_high<>""))+(labour_low<>"")*(labour_high<>"")*((labour_low>labour_minutes)+(labour_high<labour_minutes)>0)',
    },
    passes: noneOf,
    where: "Parts, labour units",
  },
  {
    what: "Work and fittings that nothing counts",
    limit: "a wish, not a rule: they cost nothing in this job",
    found: `SUMPRODUCT(--(${uncounted("labour")}>0))+SUMPRODUCT(--(${uncounted("fittings")}>0))`,
    passes: noneOf,
    where: "Parts, per outlet to for the job",
    places: ["labour", "fittings"]
      .map((block) => `IFERROR("; "&INDEX(${block}_name,MATCH(1,${uncounted(block)},0)),"")`)
      .join("&"),
    advice: true,
  },
];
