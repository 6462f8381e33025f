import { f, text, type Formula, type Named } from "../../formula/build";
import type { SheetDefinition } from "../definition";
import { blockPart, fieldsPart, worked } from "../parts";
import { sumOf } from "./nameKeys";
import { crew, sites } from "./names/crew";
import { labour, routes, routeWork, sitesPriced, typeWork, work, workTogether } from "./names/labour";
import { count } from "./names/materials";
import { rooms } from "./names/rooms";
import { types } from "./names/roomTypes";
import { neededOf, piecesOf } from "./needed";

/** Minutes or costs that may have a lowest and a highest beside them. */
interface Doubtful {
  readonly name: Named;
  readonly low: Named;
  readonly high: Named;
}

/** One end alone is no range: a blank is not 0. */
const isSure = ({ low, high }: Doubtful): Formula => f`(${low}="")+(${high}="")>0`;

/** Three-point mean (PERT, from memory): (low + 4 likely + high) / 6. */
const expected = (of: Doubtful, likely: Named): Formula =>
  f`IF(${of.name}="","",IF(${isSure(of)},${likely},(${of.low}+4*${likely}+${of.high})/6))`;

/** Of the same three points: ((high - low) / 6)², of a sum of so many. */
const variance = (of: Doubtful, sum: (spread: Formula) => Formula): Formula =>
  f`IF(${of.name}="","",IF(${isSure(of)},0,(${sum(f`(${of.high}-${of.low})/6`)})^2))`;

/** Blank is normal conditions. */
const HOW_HARD = f`(${routes.difficulty}+(${routes.difficulty}=""))`;

/** A type without extra minutes is no line of work. */
const withWork = (formula: Formula): Formula =>
  f`IF((${types.name}="")+(${types.minutes}="")>0,"",${formula})`;

const FLOORS = piecesOf(text("floor"));
const ofWork = (formula: Formula): Formula => f`IF(${labour.name}="","",${formula})`;
/** Days that cannot be counted are of no matter to other work. */
const BY_DAY = f`IF(${labour.per_day}="",0,${labour.per_day}*${workTogether.days})`;
/** Its minutes and its own difficulty, in hours for each. */
const HOURS_EACH = f`${work.minutes}*${labour.difficulty}/60`;
/** What each day takes for itself leaves so much of it for all else. */
const LEFT_OF_A_DAY = f`${crew.hours}-${workTogether.day_hours}`;

/** What is so at an outlet, times by how much its place is harder; of a row that is not sound nothing is counted. */
const addedBy = (ofOutlet: Formula): Formula =>
  f`SUMPRODUCT(IFERROR((${rooms.difficulty}-1)*(${rooms.check.row}="ok")*(${ofOutlet}),0))`;
const RECEIVERS = f`(${rooms.receiver_used}<>"")*IF(${rooms.quantity_used}="",1,${rooms.quantity_used})`;

/** What "for each" says of a site cost, once. */
const UNITS = f`IF(${sites.per}="floor",${FLOORS},IF(${sites.per}="person and day",${crew.size},1))`;
/** Paid by the crew's days, unless it has days of its own. */
export const DAILY = f`(${sites.per}="day on site")+(${sites.per}="person and day")`;
const ofSites = (formula: Formula): Formula => f`IF(${sites.name}="","",${formula})`;

/** As the shortest and the longest: a share to either side is the range, a third of it the standard deviation. */
const deviation = (share: Named, hours: Formula): Formula => f`${share}/3*${crew.rate}*(${hours})`;

export const labourSheet: SheetDefinition = {
  name: "Labour",
  kind: "workings",
  intro:
    "Hours by kind of work and by route, from the labour units on Parts and what was counted; days, and what being on site costs.",
  print: { orientation: "portrait", through: "pieces" },
  parts: [
    blockPart(work, {
      heading: "Work",
      prepared: 10,
      mirrors: labour,
      formulas: {
        name: ofWork(f`${labour.name}`),
        quantity: ofWork(f`${work.beside}+${BY_DAY}`),
        minutes: expected(labour, labour.minutes),
        hours: ofWork(f`(${work.quantity}+${work.places})*${HOURS_EACH}`),
        sum: ofWork(f`${work.hours}*${crew.rate}`),
        variance: variance(
          labour,
          (spread) => f`(${work.quantity}+${work.places})*${spread}*${labour.difficulty}/60*${crew.rate}`,
        ),
        pieces: ofWork(piecesOf(labour.piece)),
        places: ofWork(
          f`(${labour.per_outlet}+(${labour.piece}="outlet to measure"))*${workTogether.harder_outlets}+(${labour.piece}="wall plate")*${workTogether.harder_plates}+(${labour.piece}="connector")*${workTogether.harder_connectors}+(${labour.piece}="receiver lead")*${workTogether.harder_leads}`,
        ),
        beside: ofWork(
          f`${labour.per_outlet}*${count.outlets}+${labour.per_branch}*${count.branches}+${labour.per_head}*${count.heads}+${labour.fixed}+${labour.per_floor}*${FLOORS}+${work.pieces}`,
        ),
        other: ofWork(f`(${work.beside}+${work.places})*${HOURS_EACH}`),
        each_day: ofWork(f`${labour.per_day}*${HOURS_EACH}`),
        settled: ofWork(
          f`(${labour.fixed}+${labour.per_floor}*${FLOORS}+${BY_DAY}+(${labour.piece}="floor")*${work.pieces})*${HOURS_EACH}`,
        ),
      },
    }),
    blockPart(routeWork, {
      heading: "Cables by route",
      prepared: 6,
      mirrors: routes,
      formulas: {
        name: f`IF(${routes.name}="","",${routes.name})`,
        length: neededOf("route", routes.name),
        minutes: expected(routes, routes.minutes),
        hours: f`IF(${routes.name}="","",(${routeWork.length}+${routeWork.places})*${routeWork.minutes}*${HOW_HARD}/60)`,
        sum: f`IF(${routes.name}="","",${routeWork.hours}*${crew.rate})`,
        variance: variance(
          routes,
          (spread) => f`(${routeWork.length}+${routeWork.places})*${spread}*${HOW_HARD}/60*${crew.rate}`,
        ),
        places: f`IF(${routes.name}="","",${sumOf(rooms.harder, rooms.route_key, routes.name)})`,
      },
    }),
    blockPart(typeWork, {
      heading: "Extra work of room types",
      prepared: 8,
      mirrors: types,
      formulas: {
        name: withWork(f`${types.name}`),
        quantity: withWork(f`${types.used}`),
        minutes: withWork(f`${types.minutes}`),
        // Each outlet by the difficulty of its place: in normal conditions as many as there are.
        hours: withWork(f`${sumOf(rooms.difficulty, rooms.type_key, types.name)}*${types.minutes}/60`),
        sum: withWork(f`${typeWork.hours}*${crew.rate}`),
      },
    }),
    blockPart(sitesPriced, {
      heading: "Travel, access and permits",
      prepared: 8,
      mirrors: sites,
      formulas: {
        name: ofSites(f`${sites.name}`),
        times: ofSites(
          f`IF(${sites.quantity}="",1,${sites.quantity})*${UNITS}*IF(${sites.days}="",IF(${DAILY}>0,${workTogether.days},1),${sites.days})`,
        ),
        cost: expected(sites, sites.cost),
        sum: ofSites(f`${sitesPriced.times}*${sitesPriced.cost}`),
        variance: variance(sites, (spread) => f`${sitesPriced.times}*${spread}`),
      },
    }),
    fieldsPart("Together", [
      worked(workTogether.total_hours, f`SUM(${work.hours})+SUM(${routeWork.hours})+SUM(${typeWork.hours})`),
      worked(workTogether.person_hours, f`IF(${crew.size}="","",${workTogether.total_hours}*${crew.size})`),
      worked(workTogether.together, f`SUM(${work.sum})+SUM(${routeWork.sum})+SUM(${typeWork.sum})`),
      worked(workTogether.sites, f`SUM(${sitesPriced.sum})`),
      worked(
        workTogether.deviation,
        // Of each line its own, which averages out, and what all lines have in common, which does not.
        f`SQRT(SUM(${work.variance})+SUM(${routeWork.variance})+${workTogether.speed_deviation}^2+${workTogether.difficulty_deviation}^2)`,
      ),
    ]),
    fieldsPart("Days on site", [
      worked(workTogether.other_hours, f`SUM(${work.other})+SUM(${routeWork.hours})+SUM(${typeWork.hours})`),
      worked(workTogether.day_hours, f`SUM(${work.each_day})`),
      worked(
        workTogether.days_needed,
        // Each day as long as it is for all else: nothing goes in a circle. Three days and rounding noise are three.
        f`IF(${crew.hours}="","",IF(${LEFT_OF_A_DAY}>0,ROUNDUP(ROUND(${workTogether.other_hours}/(${LEFT_OF_A_DAY}),6),0),NA()))`,
      ),
      worked(
        workTogether.days,
        f`IF(${crew.days}="",IF(${crew.hours}="",0,${workTogether.days_needed}),${crew.days})`,
      ),
    ]),
    fieldsPart("Doubt that all labour has in common, as standard deviations of its cost", [
      worked(workTogether.speed_deviation, deviation(crew.speed, f`${workTogether.total_hours}`)),
      worked(
        workTogether.difficulty_deviation,
        deviation(crew.difficulty, f`${workTogether.total_hours}-SUM(${work.settled})`),
      ),
    ]),
    fieldsPart("Added by the difficulty of places, as work counts them", [
      worked(workTogether.harder_outlets, f`SUM(${rooms.difficulty})-${count.outlets}`),
      worked(workTogether.harder_plates, addedBy(f`${rooms.plate_used}<>""`)),
      worked(workTogether.harder_connectors, addedBy(f`2*(${rooms.run_used}<>"")*(${rooms.run_used}<>0)`)),
      worked(workTogether.harder_leads, addedBy(f`${RECEIVERS}+(${rooms.split_used}<>"")`)),
    ]),
  ],
};
