/**
 * Crew and Labour a second time, from the labels and hints of the sheets: hours by kind of work, by route and by type,
 * stretched where a floor or a room is harder; the fewest whole days that hold them; what being on site costs.
 */
import Decimal from "decimal.js";
import { quantityOf } from "./distribution/counts";
import {
  eachRow,
  field,
  figure,
  filledRows,
  isFilled,
  isSame,
  orNought,
  plain,
  rowsOf,
  sum,
  type Cells,
  type Job,
  type Row,
  type Value,
} from "./job";
import { often, pieces } from "./materials";
import { outletRows, plateUsed } from "./rooms";
import { outletsOf } from "./roomTypes";
import { answersOf } from "./tablesOf";

/** The difficulties of floors and rooms that say of which. */
const placed = (job: Job): Row[] =>
  rowsOf(job, "places").filter(
    (row) => typeof row.factor === "number" && (isFilled(row, "floor") || isFilled(row, "room")),
  );
/** The line that an outlet goes by: of its room on its floor, of its room wherever it is, of its floor. */
function placeOf(job: Job, outlet: Row): Row | undefined {
  const [floor, room] = [plain(outlet.floor), plain(outlet.room)];
  const lineOf = (ofFloor: string, ofRoom: string): Row | undefined =>
    placed(job).find((row) => plain(row.floor) === ofFloor && plain(row.room) === ofRoom);
  return lineOf(floor, room) ?? lineOf("", room) ?? lineOf(floor, "");
}
/** Where a place stands twice, of its first line. */
const outletsBy = (job: Job, { floor, room }: Row): number =>
  outletRows(job).filter((outlet) => {
    const place = placeOf(job, outlet);
    return place && plain(place.floor) === plain(floor) && plain(place.room) === plain(room);
  }).length;
const factorAt = (job: Job, outlet: Row): Decimal =>
  new Decimal(figure(placeOf(job, outlet) ?? { factor: 1 }, "factor"));
/** What an outlet's work takes more than elsewhere, as a share. */
const more = (job: Job, outlet: Row): Decimal => factorAt(job, outlet).minus(1);
const added = (values: readonly Decimal[]): Decimal => values.reduce((a, b) => a.plus(b), new Decimal(0));
/** Outlets whose row can be worked out. */
const soundOutlets = (job: Job): Row[] =>
  rowsOf(job, "rooms").filter(
    (row, at) => isFilled(row, "outlet") && answersOf(job).OUTLETCHECKS[at]?.[0] === "ok",
  );

const harderRun = (job: Job, row: Row): Decimal =>
  soundOutlets(job).includes(row) ? more(job, row).times(orNought(row, "run")) : new Decimal(0);
/** So many more at outlets, each counted by how much its place is harder. */
function harder(job: Job, of: (outlet: Row) => number): Decimal {
  return added(soundOutlets(job).map((row) => more(job, row).times(of(row))));
}
const harderPlaces = (job: Job) => ({
  outlets: added(outletRows(job).map((row) => more(job, row))),
  plates: harder(job, (row) => (plateUsed(job, row) === "" ? 0 : 1)),
  connectors: harder(job, (row) => (orNought(row, "run") === 0 ? 0 : 2)),
  leads: harder(
    job,
    (row) =>
      (isFilled(row, "receiver") ? (isFilled(row, "quantity") ? figure(row, "quantity") : 1) : 0) +
      (isFilled(row, "split") ? 1 : 0),
  ),
});

/** Three-point mean (o + 4m + p)/6 where a least and a most are given. */
const meanOf = (row: Row, key: string): Decimal => {
  const likely = new Decimal(figure(row, key));
  if (!isFilled(row, "low") || !isFilled(row, "high")) return likely;
  return likely.times(4).plus(figure(row, "low")).plus(figure(row, "high")).dividedBy(6);
};
/** Of a sum that has no range there is no doubt, whatever else is unknown of it. */
const squareOf = (row: Row, sum: Decimal): number =>
  isFilled(row, "low") && isFilled(row, "high") ? sum.toNumber() ** 2 : 0;
const spreadOf = (row: Row): number =>
  isFilled(row, "low") && isFilled(row, "high") ? (figure(row, "high") - figure(row, "low")) / 6 : 0;

const isRoute = (job: Job, work: Row): boolean => rowsOf(job, "routes").includes(work);
const difficultyOf = (work: Row): number => (isFilled(work, "difficulty") ? figure(work, "difficulty") : 1);
const floorsOf = (job: Job): number => quantityOf(answersOf(job).NEEDED, "work", "floor");
const lengthOf = (job: Job, route: Row): Decimal =>
  new Decimal(quantityOf(answersOf(job).NEEDED, "route", String(route.name)));

/** So often, or so long, but for what each day takes. */
const besideDays = (job: Job, work: Row): Decimal =>
  isRoute(job, work)
    ? lengthOf(job, work)
    : often(job, work).plus(new Decimal(orNought(work, "per_floor")).times(floorsOf(job)));
/** Where days are not known only work by the day is not either. */
const byDay = (job: Job, work: Row): Decimal =>
  isFilled(work, "per_day") ? daysOf(job).times(figure(work, "per_day")) : new Decimal(0);
const amountOf = (job: Job, work: Row): Decimal =>
  isRoute(job, work) ? besideDays(job, work) : besideDays(job, work).plus(byDay(job, work));
function addedByPlaces(job: Job, work: Row): Decimal {
  if (isRoute(job, work))
    return added(
      outletRows(job)
        .filter((row) => isSame(isFilled(row, "route") ? row.route : job.fields.site_usual_route, work.name))
        .map((row) => harderRun(job, row)),
    );
  const { outlets, plates, connectors, leads } = harderPlaces(job);
  const byPiece = {
    "wall plate": plates,
    "outlet to measure": outlets,
    connector: connectors,
    "receiver lead": leads,
  };
  return outlets
    .times(orNought(work, "per_outlet"))
    .plus(byPiece[plain(work.piece) as keyof typeof byPiece] ?? 0);
}
const inHours = (work: Row, times: Decimal): Decimal =>
  times.times(meanOf(work, "minutes")).times(difficultyOf(work)).dividedBy(60);
const hoursOf = (job: Job, work: Row): Decimal =>
  inHours(work, amountOf(job, work).plus(addedByPlaces(job, work)));
const otherHours = (job: Job, work: Row): Decimal =>
  inHours(work, besideDays(job, work).plus(addedByPlaces(job, work)));
const eachDay = (work: Row): Decimal => inHours(work, new Decimal(orNought(work, "per_day")));
/** Work per job, per floor and per day. */
const settledHours = (job: Job, work: Row): Decimal =>
  inHours(
    work,
    added([
      new Decimal(orNought(work, "fixed")),
      new Decimal(orNought(work, "per_floor")).times(floorsOf(job)),
      byDay(job, work),
      new Decimal(plain(work.piece) === "floor" ? pieces(job, work.piece) : 0),
    ]),
  );
export const labourOf = (job: Job, work: Row): Decimal => hoursOf(job, work).times(field(job, "labour_rate"));

const typeHours = (job: Job, type: Row): Decimal =>
  added(
    outletsOf(job, type)
      .filter((row) => isFilled(row, "outlet"))
      .map((row) => factorAt(job, row)),
  )
    .times(orNought(type, "minutes"))
    .dividedBy(60);
export const typeLabourOf = (job: Job, type: Row): Decimal =>
  typeHours(job, type).times(field(job, "labour_rate"));

const together = (job: Job, of: (work: Row) => Decimal): Decimal =>
  added(["labour", "routes"].flatMap((block) => filledRows(job, block, "name").map(of)));
const byTypes = (job: Job): Decimal =>
  added(filledRows(job, "types", "name").map((type) => typeHours(job, type)));
const ofEachDay = (job: Job): Decimal => added(filledRows(job, "labour", "name").map(eachDay));
const besideEachDay = (job: Job): Decimal =>
  together(job, (work) => otherHours(job, work)).plus(byTypes(job));

/** A day less is too few: tried one after another, to a millionth of a day. */
function daysNeeded(job: Job): number {
  const left = new Decimal(field(job, "crew_hours")).minus(ofEachDay(job));
  const hours = besideEachDay(job);
  if (!left.greaterThan(0) || hours.isNaN()) return NaN;
  const days = hours.dividedBy(left).minus("0.0000005");
  let count = 0;
  while (days.greaterThan(count)) count++;
  return count;
}
function daysOf(job: Job): Decimal {
  if (isFilled(job.fields, "crew_days")) return new Decimal(field(job, "crew_days"));
  return new Decimal(isFilled(job.fields, "crew_hours") ? daysNeeded(job) : 0);
}

/** How often a site cost is paid. */
function siteTimes(job: Job, row: Row): Decimal {
  const daily = row.per === "day on site" || row.per === "person and day";
  const days = isFilled(row, "days")
    ? new Decimal(figure(row, "days"))
    : daily
      ? daysOf(job)
      : new Decimal(1);
  const each =
    row.per === "floor"
      ? floorsOf(job)
      : row.per === "person and day"
        ? orNought(job.fields, "crew_size")
        : 1;
  return days.times(each).times(isFilled(row, "quantity") ? figure(row, "quantity") : 1);
}
export const siteCostOf = (job: Job, row: Row): Decimal => siteTimes(job, row).times(meanOf(row, "cost"));

/** What all labour has in common, as two deviations that have nothing in common with each other. */
export function commonDeviations(job: Job): { readonly speed: number; readonly difficulty: number } {
  const all = together(job, (work) => hoursOf(job, work)).plus(byTypes(job));
  const settled = added(filledRows(job, "labour", "name").map((work) => settledHours(job, work)));
  const of = (share: string, hours: Decimal): number =>
    hours.times(field(job, "labour_rate")).times(orNought(job.fields, share)).dividedBy(3).toNumber();
  return { speed: of("crew_speed", all), difficulty: of("crew_difficulty", all.minus(settled)) };
}

/** What the checks find of the crew. */
export function crewFound(job: Job) {
  const rate = isFilled(job.fields, "crew_hours") ? field(job, "crew_hours") : undefined;
  const hours = together(job, (work) => hoursOf(job, work)).plus(byTypes(job));
  const over =
    rate !== undefined && isFilled(job.fields, "crew_days")
      ? Decimal.max(0, hours.minus(daysOf(job).times(rate)))
      : new Decimal(0);
  const sites = filledRows(job, "sites", "name");
  const places = rowsOf(job, "places").filter((row) => isFilled(row, "factor"));
  return {
    hoursOver: over.toNumber(),
    daysApart: `${job.fields.crew_days ?? ""} typed, ${rate === undefined ? "" : daysNeeded(job)} needed`,
    daysUsedUp: rate !== undefined && ofEachDay(job).greaterThanOrEqualTo(rate) ? 1 : 0,
    outOfRange: sites.filter((row) => {
      if (isFilled(row, "low") !== isFilled(row, "high")) return true;
      return (
        isFilled(row, "low") &&
        !(figure(row, "low") <= figure(row, "cost") && figure(row, "cost") <= figure(row, "high"))
      );
    }),
    ofNoDay: sites.filter(
      (row) =>
        !isFilled(row, "days") &&
        ["day on site", "person and day"].includes(String(row.per)) &&
        daysOf(job).isZero(),
    ),
    hiredLonger: sites
      .filter(
        (row) =>
          isFilled(row, "days") && daysOf(job).greaterThan(0) && daysOf(job).lessThan(figure(row, "days")),
      )
      .map((row): Value => `${row.name}, ${row.days} of ${daysOf(job).toString()}`),
    placesForNobody: places.filter((row) => !placed(job).includes(row) || outletsBy(job, row) === 0),
    placesTwice: placed(job).filter((row) =>
      placed(job).some(
        (other) =>
          other !== row && plain(other.floor) === plain(row.floor) && plain(other.room) === plain(row.room),
      ),
    ),
  };
}

export const placeName = ({ floor, room }: Row): string =>
  [floor, room].filter((part) => (part ?? "") !== "").join(", ") || "no place";
const keyOfPlace = (row: Row): string => `_${row.floor ?? ""}_${row.room ?? ""}`;

export function crewSheet(job: Job): Cells {
  const rows = rowsOf(job, "places");
  const ofPlaced = (of: (row: Row) => Value): Value[] =>
    rows.map((row) => (placed(job).includes(row) ? of(row) : ""));
  return {
    places_outlets: ofPlaced((row) => outletsBy(job, row)),
    places_place: rows.map((row) => (isFilled(row, "factor") ? placeName(row) : "")),
    places_key: ofPlaced(keyOfPlace),
  };
}

/** Of Rooms the columns that the work goes by. */
export function placeColumns(job: Job): Cells {
  const rows = rowsOf(job, "rooms");
  const column = (of: (row: Row) => Value): Value[] => eachRow<Value>(rows, "outlet", of, "");
  const routeOf = (row: Row): Value =>
    isFilled(row, "route") ? row.route! : (job.fields.site_usual_route ?? "");
  return {
    rooms_difficulty: column((row) => factorAt(job, row).toNumber()),
    rooms_harder: column((row) => harderRun(job, row).toNumber()),
    rooms_route_key: column((row) => (routeOf(row) === "" ? "" : `_${routeOf(row)}`)),
    rooms_where_key: column((row) => {
      const place = placeOf(job, row);
      if (!place) return "";
      // In the letters of the outlet's own row.
      return `_${isFilled(place, "floor") ? row.floor! : ""}_${isFilled(place, "room") ? row.room! : ""}`;
    }),
  };
}

export function labourSheet(job: Job): Cells {
  const sheet = (block: string, into: string, amount: string): Cells => {
    const rows = rowsOf(job, block);
    const column = (of: (row: Row) => Decimal): Value[] =>
      eachRow<Value>(rows, "name", (row) => of(row).toNumber(), "");
    const times = (row: Row): Decimal => amountOf(job, row).plus(addedByPlaces(job, row));
    return {
      [`${into}_name`]: eachRow<Value>(rows, "name", (row) => row.name!, ""),
      [`${into}_${amount}`]: column((row) => amountOf(job, row)),
      [`${into}_minutes`]: column((row) => meanOf(row, "minutes")),
      [`${into}_hours`]: column((row) => hoursOf(job, row)),
      [`${into}_sum`]: column((row) => labourOf(job, row)),
      [`${into}_variance`]: eachRow<Value>(
        rows,
        "name",
        (row) =>
          squareOf(
            row,
            times(row)
              .times(spreadOf(row))
              .times(difficultyOf(row))
              .dividedBy(60)
              .times(field(job, "labour_rate")),
          ),
        "",
      ),
      [`${into}_places`]: column((row) => addedByPlaces(job, row)),
    };
  };
  const ofWork = (of: (row: Row) => Value): Value[] => eachRow<Value>(rowsOf(job, "labour"), "name", of, "");
  const types = (of: (row: Row) => Value): Value[] =>
    eachRow<Value>(rowsOf(job, "types"), "name", (row) => (isFilled(row, "minutes") ? of(row) : ""), "");
  const sites = (of: (row: Row) => Value): Value[] => eachRow<Value>(rowsOf(job, "sites"), "name", of, "");
  const hours = together(job, (work) => hoursOf(job, work)).plus(byTypes(job));
  const { speed, difficulty } = commonDeviations(job);
  const { outlets, plates, connectors, leads } = harderPlaces(job);
  const hasHours = isFilled(job.fields, "crew_hours");
  const lines = {
    ...sheet("labour", "work", "quantity"),
    ...sheet("routes", "route_work", "length"),
  };
  const owned = (into: string): number[] =>
    (lines[`${into}_variance`] as Value[]).filter((value) => value !== "").map(Number);
  return {
    ...lines,
    work_pieces: ofWork((row) => pieces(job, row.piece)),
    work_beside: ofWork((row) => besideDays(job, row).toNumber()),
    work_other: ofWork((row) => otherHours(job, row).toNumber()),
    work_each_day: ofWork((row) => eachDay(row).toNumber()),
    work_settled: ofWork((row) => settledHours(job, row).toNumber()),
    type_work_name: types((row) => row.name!),
    type_work_quantity: types((row) => outletsOf(job, row).length),
    type_work_minutes: types((row) => figure(row, "minutes")),
    type_work_hours: types((row) => typeHours(job, row).toNumber()),
    type_work_sum: types((row) => typeLabourOf(job, row).toNumber()),
    sites_priced_name: sites((row) => row.name!),
    sites_priced_times: sites((row) => siteTimes(job, row).toNumber()),
    sites_priced_cost: sites((row) => meanOf(row, "cost").toNumber()),
    sites_priced_sum: sites((row) => siteCostOf(job, row).toNumber()),
    sites_priced_variance: sites((row) => squareOf(row, siteTimes(job, row).times(spreadOf(row)))),
    work_total_hours: hours.toNumber(),
    work_person_hours: isFilled(job.fields, "crew_size")
      ? hours.times(field(job, "crew_size")).toNumber()
      : "",
    work_together: hours.times(field(job, "labour_rate")).toNumber(),
    work_sites: sum(filledRows(job, "sites", "name").map((row) => siteCostOf(job, row).toNumber())),
    work_deviation: Math.sqrt(sum([...owned("work"), ...owned("route_work")]) + speed ** 2 + difficulty ** 2),
    work_other_hours: besideEachDay(job).toNumber(),
    work_day_hours: ofEachDay(job).toNumber(),
    work_days_needed: hasHours ? daysNeeded(job) : "",
    work_days: daysOf(job).toNumber(),
    work_speed_deviation: speed,
    work_difficulty_deviation: difficulty,
    work_harder_outlets: outlets.toNumber(),
    work_harder_plates: plates.toNumber(),
    work_harder_connectors: connectors.toNumber(),
    work_harder_leads: leads.toNumber(),
  };
}
