/** Checks of prices, their dates, and the work that is priced. */
import { chain, f, text, type Formula } from "../../formula/build";
import { countedInAll, firstBad, inLists, lookAt, NONE_FOUND as none } from "../checkPlaces";
import type { Check, CheckWords } from "../definition";
import { countOf } from "./nameKeys";
import { NO_SUPPLIER } from "../../engine/estimate/orderLines";
import { branches } from "./names/branches";
import { cutplan } from "./names/cuttingPlan";
import { dishes, feeders } from "./names/dishes";
import { heads } from "./names/headUnits";
import { labour, routes, workTogether } from "./names/labour";
import { cables, feeds, fittings, passives, plates, resistors, supplies, units } from "./names/parts";
import { cablesBought } from "./names/materials";
import { orders } from "./names/orderList";
import { rooms } from "./names/rooms";
import { types } from "./names/roomTypes";
import { site } from "./names/site";
import { BOUGHT, LINES } from "./orderList";
import { onpurpose } from "./names/terms";

/** The lists of Parts that carry prices. */
export const PRICED = [cables, passives, units, supplies, plates, feeds, resistors, fittings] as const;

/** One count over all lists of parts, and the first of each that is counted. */
export const ofParts = (bad: (of: (typeof PRICED)[number]) => Formula): Pick<Check, "found" | "places"> =>
  inLists(PRICED.map((of) => ({ of: of.name, bad: f`(${of.name}<>"")*(${bad(of)})>0` })));

/** Minutes that are not between the shortest and the longest, or only one of these. */
const outOfRange = (of: typeof labour | typeof routes): Formula =>
  f`(${of.name}<>"")*(((${of.low}<>"")<>(${of.high}<>""))+(${of.low}<>"")*(${of.high}<>"")*((${of.low}>${of.minutes})+(${of.high}<${of.minutes})>0))>0`;

/** The lists whose rows are cables. */
const ROUTED = [
  { name: feeders.to, length: feeders.length, route: feeders.route },
  { name: heads.id, length: heads.length, route: heads.route },
  { name: branches.id, length: branches.length, route: branches.route },
  { name: rooms.outlet, length: rooms.run_used, route: rooms.route_used },
] as const;

/** Where Parts have routes: whoever counts work otherwise needs none. */
const withoutRoute = ({ name, length, route }: (typeof ROUTED)[number]): Formula =>
  f`IFERROR((${name}<>"")*(${length}<>"")*(${length}<>0)*(${route}="")*(${site.usual_route}="")*(COUNTIF(${routes.name},"?*")>0)>0,FALSE)`;

/** Counted by nothing. */
const uncounted = (of: typeof labour | typeof fittings): Formula =>
  f`(${of.name}<>"")*(${of.per_outlet}+${of.per_branch}+${of.per_head}+${of.fixed}${of === labour ? f`+${labour.per_floor}+${labour.per_day}` : f``}=0)*(${of.piece}="")${of === fittings ? f`*(${countOf(dishes.part_key, fittings.name)}=0)*(${countOf(types.fitting_key, fittings.name)}=0)` : f``}`;

export const priceChecks = {
  "prices expired": {
    what: "Prices without an expiry date, or expired on the day of the quote",
    limit: "none",
    ...ofParts((of) => f`${of.until}<${site.date}`),
    passes: none,
    where: lookAt("Parts", cables.until),
  },
  "prices of the future": {
    what: "Prices dated after the quote",
    limit: "none",
    ...ofParts((of) => f`(${of.priced}<>"")*(${of.priced}>${site.date})`),
    passes: none,
    where: lookAt("Parts", cables.priced),
  },
  "prices run out": {
    what: "Prices that expire while the quote is valid",
    limit: "advisory: who bears the difference?",
    ...ofParts((of) => f`(${of.until}>=${site.date})*(${of.until}<${site.until})`),
    passes: none,
    where: lookAt("Parts", cables.until),
    advice: true,
  },
  "days of validity": {
    what: "Validity from quote date, days",
    limit: "1 or more",
    found: f`${site.until}-${site.date}`,
    passes: (found) => f`${found}>=1`,
    where: lookAt("Site", site.date, site.until),
  },
  "hours of labour": {
    what: "Hours of labour in the price",
    limit: "more than 0, or listed on Terms as 0 on purpose",
    found: f`${workTogether.total_hours}+ISTEXT(INDEX(${onpurpose.why},MATCH("labour",${onpurpose.what},0)))`,
    format: "two",
    passes: (found) => f`IFERROR(${found}>0,FALSE)`,
    where: "Parts, labour units",
  },
  "minutes out of range": {
    what: "Labour whose minutes are not between shortest and longest, both given or neither",
    limit: "none",
    ...inLists([labour, routes].map((of) => ({ of: of.name, bad: outOfRange(of) }))),
    passes: none,
    where: "Parts, routes, labour units",
  },
  "cables without route": {
    what: "Cables without a route: laying them takes no time in the price",
    limit: "advisory: name a route in the row, or a usual one on Site",
    ...inLists(ROUTED.map((of) => ({ of: of.name, bad: withoutRoute(of) }))),
    passes: none,
    where: lookAt("Site", site.usual_route),
    advice: true,
  },
  "work uncounted": {
    what: "Work and fittings that nothing counts",
    limit: "advisory: they cost nothing in this job",
    found: countedInAll([labour, fittings].map((of) => f`${uncounted(of)}>0`)),
    passes: none,
    where: lookAt(
      "Parts",
      labour.per_outlet,
      labour.per_branch,
      labour.per_head,
      labour.fixed,
      labour.per_floor,
      labour.per_day,
      labour.piece,
    ),
    places: chain(
      "&",
      [labour, fittings].map((of) => f`IFERROR("; "&INDEX(${of.name},MATCH(1,${uncounted(of)},0)),"")`),
    ),
    advice: true,
  },
  "runs not planned": {
    what: "Runs that the cutting plan cannot take: longer than their reel, or without length, cable or reel",
    limit: "none: a run is not joined; a longer reel, or two runs on purpose",
    found: f`COUNTIF(${cutplan.plan.from},"not planned")`,
    passes: none,
    where: lookAt("Cutting plan", cutplan.plan.cuts),
    places: firstBad(cutplan.plan.cuts, f`IFERROR(${cutplan.plan.from}="not planned",FALSE)`),
  },
  "reels not shown": {
    what: "Reels to buy that the cutting plan has no line for",
    limit: "none: add rows to Rooms, the plan grows with them",
    found: f`IFERROR(SUM(${cablesBought.quantity})-SUM(IFERROR((${cutplan.plan.from}="new")*ISNUMBER(${cutplan.plan.used}),0)),0)`,
    passes: none,
    where: "Cutting plan",
  },
  "orders not shown": {
    what: "Parts to buy that the order list has no line for",
    limit: `none: it has ${LINES} lines`,
    found: f`${countedInAll(BOUGHT.map(([bought]) => f`IFERROR((${bought.quantity}<>"")*(${bought.quantity}>0),${bought.name}<>"")`))}-SUM(IFERROR((${orders.part}<>"")*1,0))`,
    passes: none,
    where: "Order list",
  },
  "parts without supplier": {
    what: "Parts to buy that name no supplier",
    limit: "advisory: name who quoted the price, on Parts",
    found: f`COUNTIF(${orders.supplier},${text(NO_SUPPLIER)})`,
    passes: none,
    where: lookAt("Order list", orders.supplier),
    places: firstBad(orders.part, f`IFERROR(${orders.supplier}=${text(NO_SUPPLIER)},FALSE)`),
    advice: true,
  },
} satisfies Readonly<Record<string, CheckWords>>;
