import { f, type Formula, type Named } from "../../formula/build";
import type { SheetDefinition } from "../definition";
import { blockPart, fieldsPart, worked } from "../parts";
import { crew, labour, routes, routeWork, typeWork, work, workTogether } from "./names/labour";
import { count } from "./names/materials";
import { types } from "./names/roomTypes";
import { neededOf, piecesOf } from "./needed";

interface Minutes {
  readonly name: Named;
  readonly minutes: Named;
  readonly low: Named;
  readonly high: Named;
}

/** One end alone is no range: a blank is not 0. */
const isSure = ({ low, high }: Minutes): Formula => f`(${low}="")+(${high}="")>0`;

/** Three-point mean (PERT, from memory): (low + 4 likely + high) / 6. */
const expected = (of: Minutes): Formula =>
  f`IF(${of.name}="","",IF(${isSure(of)},${of.minutes},(${of.low}+4*${of.minutes}+${of.high})/6))`;

const variance = (of: Minutes, times: Named, difficulty: Formula): Formula =>
  f`IF(${of.name}="","",IF(${isSure(of)},0,(${times}*(${of.high}-${of.low})/6*${difficulty}/60*${crew.rate})^2))`;

/** Blank is normal conditions. */
const HOW_HARD = f`(${routes.difficulty}+(${routes.difficulty}=""))`;

/** A type without extra minutes is no line of work. */
const withWork = (formula: Formula): Formula =>
  f`IF((${types.name}="")+(${types.minutes}="")>0,"",${formula})`;

export const labourSheet: SheetDefinition = {
  name: "Labour",
  kind: "workings",
  intro: "Hours by kind of work and by route, from the labour units on Parts and what was counted.",
  print: { orientation: "portrait" },
  parts: [
    blockPart(work, {
      heading: "Work",
      prepared: 10,
      mirrors: labour,
      formulas: {
        name: f`IF(${labour.name}="","",${labour.name})`,
        quantity: f`IF(${labour.name}="","",${labour.per_outlet}*${count.outlets}+${labour.per_branch}*${count.branches}+${labour.per_head}*${count.heads}+${labour.fixed}+${work.pieces})`,
        minutes: expected(labour),
        hours: f`IF(${labour.name}="","",${work.quantity}*${work.minutes}*${labour.difficulty}/60)`,
        sum: f`IF(${labour.name}="","",${work.hours}*${crew.rate})`,
        variance: variance(labour, work.quantity, f`${labour.difficulty}`),
        pieces: f`IF(${labour.name}="","",${piecesOf(labour.piece)})`,
      },
    }),
    blockPart(routeWork, {
      heading: "Cables by route",
      prepared: 6,
      mirrors: routes,
      formulas: {
        name: f`IF(${routes.name}="","",${routes.name})`,
        length: neededOf("route", routes.name),
        minutes: expected(routes),
        hours: f`IF(${routes.name}="","",${routeWork.length}*${routeWork.minutes}*${HOW_HARD}/60)`,
        sum: f`IF(${routes.name}="","",${routeWork.hours}*${crew.rate})`,
        variance: variance(routes, routeWork.length, HOW_HARD),
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
        hours: withWork(f`${types.used}*${types.minutes}/60`),
        sum: withWork(f`${types.used}*${types.minutes}/60*${crew.rate}`),
      },
    }),
    fieldsPart("Together", [
      worked(workTogether.total_hours, f`SUM(${work.hours})+SUM(${routeWork.hours})+SUM(${typeWork.hours})`),
    ]),
  ],
};
