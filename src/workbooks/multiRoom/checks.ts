import type { Block, Check } from "../definition";
import { checksSheet } from "../checksSheet";
import { belowOf } from "../layOut";
import { bonding } from "./bonding";
import { branches } from "./branches";
import { commissioning } from "./commissioning";
import { headUnits } from "./headUnits";
import { log } from "./log";
import { parts } from "./parts";
import { rooms } from "./rooms";
import { site } from "./site";
import { terms } from "./terms";

const pricedBlocks = ["cables", "passives", "units", "supplies", "plates", "fittings"];

/** Parts with no valid date or one before the quote's. */
const expired = pricedBlocks
  .map((block) => `SUMPRODUCT((${block}_name<>"")*(${block}_until<site_date))`)
  .join("+");
const unpriced = pricedBlocks.map((block) => `SUMPRODUCT((${block}_name<>"")*(${block}_price=""))`).join("+");

/** Cells filled at or below the closing row of a block: no sum sees the rows there. */
const overrun = [site, parts, branches, rooms, headUnits, bonding, terms, commissioning, log]
  .flatMap((sheet) => sheet.parts)
  .filter((part): part is Block => part.kind === "block" && part.columns[0]!.input !== undefined)
  .map((block) => `SUMPRODUCT(--(${belowOf(block)}<>""))`)
  .join("+");

const noneOf = "@=0";

const list: readonly Check[] = [
  {
    what: "There are outlets to price",
    limit: "1 or more",
    found: "count_outlets",
    passes: "@>0",
    where: "Rooms",
  },
  {
    what: "Cells filled at or below the closing row of a block",
    limit: "none: rows there are not counted; add rows and move them up",
    found: overrun,
    passes: noneOf,
    where: "The ends of the blocks that you fill",
  },
  {
    what: "Rows of outlets, branches or head units that are filled and without a name",
    limit: "none: they are not counted",
    found:
      'SUMPRODUCT((rooms_outlet="")*((rooms_run<>"")+(rooms_receiver<>"")+(rooms_from<>"")+(rooms_cable<>"")>0))+SUMPRODUCT((branches_id="")*((branches_device<>"")+(branches_length<>"")+(branches_cable<>"")>0))+SUMPRODUCT((heads_id="")*((heads_type<>"")+(heads_length<>"")+(heads_cable<>"")>0))',
    passes: noneOf,
    where: "Rooms, Branches, Head units: their first columns",
  },
  {
    what: "Outlets that nothing feeds",
    limit: "none",
    found: 'SUMPRODUCT((rooms_outlet<>"")*(1-ISTEXT(rooms_head)))',
    passes: noneOf,
    where: "Rooms, fed from",
  },
  {
    what: "Outlets with the name of another",
    limit: "none",
    // By first places rather than by counting, which would compare every outlet with every other.
    found:
      'SUMPRODUCT((rooms_outlet<>"")*(IFERROR(MATCH(rooms_outlet,rooms_outlet,0),0)<>ROW(rooms_outlet)-MIN(ROW(rooms_outlet))+1))',
    passes: noneOf,
    where: "Rooms, outlet",
  },
  {
    what: "Outlets counted from the head units, less those on Rooms",
    limit: "0",
    found: 'SUMPRODUCT((heads_id<>"")*COUNTIF(rooms_head,heads_id))-count_outlets',
    passes: noneOf,
    where: "Rooms, Head units",
  },
  {
    what: "Outlets whose level could not be found",
    limit: "none",
    found: "SUMPRODUCT(--ISERROR(rooms_verdict))",
    passes: noneOf,
    where: "Rooms, verdict",
  },
  {
    what: "Outlets with too little level at their weakest",
    limit: "none under the least level",
    found: 'COUNTIF(rooms_fits_enough,"low")',
    passes: noneOf,
    where: "Rooms, at its weakest",
  },
  {
    what: "Outlets with too much level at their strongest",
    limit: "none over the greatest level",
    found: 'COUNTIF(rooms_fits_bearable,"high")',
    passes: noneOf,
    where: "Rooms, at its strongest",
  },
  {
    what: "Greatest difference between outlets, hot, high end",
    limit: "15 dB (EN 60728-1, from memory)",
    found: "MAX(rooms_level_high_hot)-MIN(rooms_level_high_hot)",
    format: "one",
    passes: "@<=15",
    where: "Rooms, verdict",
  },
  {
    what: "Outlets under the design floor",
    limit: "a wish, not a rule",
    found: 'COUNTIF(rooms_weakest,"<"&site_level_design)',
    passes: noneOf,
    where: "Rooms, weakest",
    advice: true,
  },
  {
    what: "Outlets with too little level if every length is as long as it may be",
    limit: "a wish, not a rule",
    found: 'COUNTIF(rooms_within,"low")',
    passes: noneOf,
    where: "Rooms, then",
    advice: true,
  },
  {
    what: "Runs that are not between their shortest and their longest",
    limit: "none",
    found:
      'SUMPRODUCT((rooms_longest<>"")*(rooms_longest<rooms_run))+SUMPRODUCT((rooms_shortest<>"")*(rooms_shortest>rooms_run))',
    passes: noneOf,
    where: "Rooms, shortest run, longest run",
  },
  {
    what: "Labour whose minutes are not between a least and a most, both given or neither",
    limit: "none",
    found:
      'SUMPRODUCT((labour_name<>"")*((labour_low<>"")<>(labour_high<>"")))+SUMPRODUCT((labour_low<>"")*(labour_high<>"")*((labour_low>labour_minutes)+(labour_high<labour_minutes)>0))',
    passes: noneOf,
    where: "Parts, labour units",
  },
  {
    what: "Splitters and taps that feed more than they have ports",
    limit: "none",
    found: 'SUMPRODUCT((branches_id<>"")*IFERROR(branches_fed>branches_ways,1))',
    passes: noneOf,
    where: "Branches, feeds",
  },
  {
    // Each would get the full level, as if a splitter cost nothing.
    what: "Head units whose one cable is said to feed two things or more",
    limit: "none: a splitter parts it; a second output is a head unit of its own",
    found: 'SUMPRODUCT((heads_id<>"")*(COUNTIF(branches_from,heads_id)+COUNTIF(rooms_from,heads_id)>1))',
    passes: noneOf,
    where: "Branches and Rooms, fed from",
  },
  {
    what: "Head units with more tuners than user bands",
    limit: "none",
    found: 'COUNTIF(heads_capacity,"high")+SUMPRODUCT(--ISERROR(heads_capacity))',
    passes: noneOf,
    where: "Head units, tuners",
  },
  {
    what: "Rows of Rooms without a user band",
    limit: "none",
    found: "SUMPRODUCT(--ISERROR(rooms_bands))",
    passes: noneOf,
    where: "Rooms, user bands",
  },
  {
    what: "Head units short of volts, or whose volts could not be found",
    limit: "none",
    found: 'COUNTIF(heads_power,"low")+SUMPRODUCT(--ISERROR(heads_power))',
    passes: noneOf,
    where: "Head units, volts",
  },
  {
    what: "Supplies whose path holds a splitter or tap that passes no power",
    limit: "none",
    found: 'SUMPRODUCT((heads_id<>"")*IFERROR(heads_stops>0,1))',
    passes: noneOf,
    where: "Head units, stopped by",
  },
  {
    what: "Head units that draw more than their supply gives",
    limit: "none",
    found: 'SUMPRODUCT((heads_id<>"")*IFERROR(heads_together>heads_amps,1))',
    passes: noneOf,
    where: "Head units, current of all that it feeds",
  },
  {
    what: "Head units that share a supply and name one of their own as well",
    limit: "none",
    found: 'SUMPRODUCT((heads_shares<>"")*(heads_supply<>""))',
    passes: noneOf,
    where: "Head units, shares the supply of",
  },
  {
    what: "Slots that the beam does not clear",
    limit: "none",
    found: 'COUNTIF(sight_verdict,"low")+SUMPRODUCT(--ISERROR(sight_verdict))',
    passes: noneOf,
    where: "Sightline",
  },
  {
    what: "There are slots to look at",
    limit: "1 or more",
    found: 'SUMPRODUCT(--(slots_slot<>""))',
    passes: "@>0",
    where: "Site",
  },
  {
    what: "Rows of Site with a service or obstacle and no slot",
    limit: "none",
    found: 'SUMPRODUCT((slots_slot="")*((slots_service<>"")+(slots_obstacle<>"")>0))',
    passes: noneOf,
    where: "Site, orbital slots",
  },
  {
    what: "Cables in use without the length of their reel",
    limit: "none",
    found: 'SUMPRODUCT((cables_name<>"")*(cables_reel=""))',
    passes: noneOf,
    where: "Parts, reel",
  },
  { what: "Parts without a price", limit: "none", found: unpriced, passes: noneOf, where: "Parts" },
  {
    // Each of the three multiplies: a blank one makes the work free without an error anywhere.
    what: "Kinds of work without minutes, a difficulty or the crew rate",
    limit: "none: they are priced at 0.00",
    found: 'SUMPRODUCT((labour_name<>"")*((labour_minutes="")+(labour_difficulty="")+(labour_rate="")>0))',
    passes: noneOf,
    where: "Parts: labour units, crew rate",
  },
  {
    what: "Prices without a date, or past it on the day of the quote",
    limit: "none",
    found: expired,
    passes: noneOf,
    where: "Parts, valid until",
  },
  {
    what: "Days that the quote still holds on its own date",
    limit: "1 or more",
    found: "site_until-site_date",
    passes: "@>=1",
    where: "Site",
  },
  {
    what: "Cost added a second way, less the first",
    limit: "0.00",
    found: "SUM(price_sections)*(1+site_contingency)*(1+site_overhead)-price_cost",
    format: "two",
    passes: "ABS(@)<0.005",
    where: "Price",
  },
  {
    what: "Price of the quote less the price before rounding",
    limit: "3 cents: half a cent a line",
    found: "quote_net-price_sell-SUM(provisional_sum)-SUM(options_chosen_sum)",
    format: "two",
    passes: "ABS(@)<=0.03",
    where: "Quote, Price",
  },
  {
    what: "Total of the quote less its lines and tax",
    limit: "0.00",
    found:
      "quote_total-quote_reception-quote_cable-quote_fittings-quote_labour-quote_provisional-quote_options-quote_tax",
    format: "two",
    passes: "ABS(@)<0.005",
    where: "Quote",
  },
  {
    what: "Measured outlets off their prediction",
    limit: "a wish, not a rule: see Diagnosis",
    found: 'COUNTIF(commission_verdict,"look")',
    passes: noneOf,
    where: "Commissioning, verdict",
    advice: true,
  },
  {
    what: "Conductors to look at, or that could not be looked up",
    limit: "a wish, not a rule: the local code decides",
    found: 'COUNTIF(bonds_flag_word,"look closer")+SUMPRODUCT(--ISERROR(bonds_flag_word))',
    passes: noneOf,
    where: "Bonding",
    advice: true,
  },
  {
    what: "Conductors listed on Bonding",
    limit: "1 or more",
    found: 'SUMPRODUCT(--(bonds_where<>""))',
    passes: "@>0",
    where: "Bonding",
    advice: true,
  },
];

export const checks = checksSheet(list, { onePage: true });
