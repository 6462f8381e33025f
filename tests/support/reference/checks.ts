/**
 * The Checks sheet a second time: what each check finds, by its own words, and whether it passes. A wish that is not
 * met is a note and is not counted.
 */
import { conductorsOf, flagOf } from "./bonding";
import { quantityOf } from "./distribution/counts";
import { entriesOf, zerosNoted } from "./entries";
import { headRows } from "./headUnits";
import {
  field,
  figure,
  filledRows,
  isFilled,
  isSame,
  orNought,
  rowsOf,
  sum,
  type Cells,
  type Job,
  type Row,
  type Value,
} from "./job";
import { ordered } from "./buying";
import { crewFound, placeName } from "./labour";
import { cutsOf, isPart, startedOf } from "./materials";
import { priced } from "./price";
import { cableUsed, headNameOf, leastRun, levelsOf, mostRun, outletRows, weakestOf } from "./rooms";
import { outletsOf, unlikeTheirType } from "./roomTypes";
import { slotRows } from "./sightline";
import { slotName } from "./slotName";
import { answersOf } from "./tablesOf";

export interface Found {
  readonly found: number;
  readonly passes: boolean;
  readonly isWish?: true;
  /** What cannot be found out is no error but a fault. */
  readonly unknownIsLook?: true;
  /** The first row that is counted, where rows are. */
  readonly first?: Value;
}

type Judged = "OUTLETCHECKS" | "DEVICECHECKS" | "HEADCHECKS" | "DISHCHECKS" | "FEEDERCHECKS";

/** By the first two slots of each dish, so that one with more is a reason to say nothing. */
function slotsWithoutDish(job: Job): string[] {
  const dishes = filledRows(job, "dishes", "name");
  const names = slotRows(job).map(({ slot }) => String(slotName(slot)));
  const counts = answersOf(job).DISHCHECKS.map(([, count]) => Number(count ?? 0));
  if (dishes.length === 0 || counts.some((count) => count > 2)) return [];
  const received = dishes.flatMap(({ slots }) =>
    isFilled({ slots: slots ?? "" }, "slots")
      ? String(slots)
          .split(/[\s,;]+/)
          .slice(0, 2)
      : names.slice(0, 2),
  );
  return names.filter((name) => !received.some((one) => isSame(one, name)));
}

/** A column of a block that stands for another: whose rows name its rows. */
const MIRRORED: Readonly<Record<string, string>> = { sight: "slots", commission: "rooms" };
const ROW_NAME: Readonly<Record<string, string>> = {
  rooms: "outlet",
  heads: "id",
  slots: "slot",
  bonds: "where",
};
const nameOf = (row: Row): Value => row.outlet ?? row.id ?? row.name ?? row.where ?? "";
const names = (rows: readonly Row[]): Value[] => rows.map(nameOf);

/** Names of the rows whose value in the column is so. */
const counting =
  (job: Job, cells: Cells) =>
  (name: string, is: (value: Value) => boolean): Value[] => {
    const block = name.slice(0, name.indexOf("_"));
    const rows = rowsOf(job, MIRRORED[block] ?? block);
    const key = ROW_NAME[MIRRORED[block] ?? block]!;
    return (cells[name] as Value[]).flatMap((value, at) =>
      isFilled(rows[at] ?? {}, key) && is(value)
        ? [key === "slot" ? slotName(rows[at]!.slot) : rows[at]![key]!]
        : [],
    );
  };

/** Rows that are counted, by their names, or a count. */
const none = (counted: number | readonly Value[]): Found =>
  typeof counted === "number"
    ? { found: counted, passes: counted === 0 }
    : {
        found: counted.length,
        passes: counted.length === 0,
        ...(counted.length > 0 ? { first: counted[0]! } : {}),
      };
const wish = (counted: number | readonly Value[]): Found => ({ ...none(counted), isWish: true });

const LISTS: readonly (readonly [string, string])[] = [
  ...["cables", "passives", "units", "supplies", "plates", "feeds", "resistors", "fittings"].map(
    (block) => [block, "name"] as const,
  ),
  ...["labour", "routes", "kinds", "dishes", "types", "taxes"].map((block) => [block, "name"] as const),
  ["receivers", "kind"],
  ["branches", "id"],
  ["heads", "id"],
  ["options", "name"],
  ["provisional", "name"],
];
/** Lists in which names are looked up; that of work and fittings is not one. */
const LOOKED_UP: readonly (readonly [string, string])[] = [
  ...LISTS.filter(([block]) => !["labour", "options", "provisional", "routes"].includes(block)),
  ["rooms", "outlet"],
  ["options", "name"],
  ["options", "tax"],
  ["options", "instead"],
  ["provisional", "tax"],
  ["made", "option"],
  ["rooms", "floor"],
  ["rooms", "room"],
  ["places", "floor"],
  ["places", "room"],
  ["rests", "cable"],
];
const PRICED = ["cables", "passives", "units", "supplies", "plates", "feeds", "resistors", "fittings"];

/** Rows whose name stands in a row above. */
const twice = (rows: readonly Row[], key: string): Row[] =>
  rows.filter((row, at) => rows.slice(0, at).some((above) => isSame(above[key], row[key])));

/** What is needed by the names in the rows, against the pieces that the distribution has. */
function countedApart(job: Job, cells: Cells): number {
  const bought = (block: string): number =>
    sum((cells[`${block}_bought_needed`] as readonly Value[]).map(Number));
  const pieces = (...words: string[]): number =>
    sum(words.map((word) => quantityOf(answersOf(job).NEEDED, "work", word)));
  return sum(
    [
      bought("units") - pieces("head unit on a dish", "switch"),
      bought("passives") - pieces("splitter", "tap", "amplifier", "equaliser", "attenuator", "filter"),
      bought("supplies") - pieces("supply"),
      bought("plates") - pieces("wall plate"),
    ].map(Math.abs),
  );
}

export function checksOf(job: Job, cells: Cells): Record<string, Found> {
  const counted = counting(job, cells);
  const inColumn = (
    block: string,
    key: string,
    table: Judged,
    at: number,
    words: readonly string[],
  ): Value[] =>
    rowsOf(job, block).flatMap((row, index) =>
      isFilled(row, key) && words.includes(String(answersOf(job)[table][index]?.[at])) ? [row[key]!] : [],
    );
  /** Rows of which a column of the functions says one of these words. */
  const said = (block: string, key: string, table: Judged, at: number, ...words: string[]): Found =>
    none(inColumn(block, key, table, at, words));
  const outletsSaid = (at: number, word: string): Found => said("rooms", "outlet", "OUTLETCHECKS", at, word);
  const ports = (word: string): Found =>
    none([
      ...inColumn("rooms", "outlet", "OUTLETCHECKS", 8, [word]),
      ...inColumn("branches", "id", "DEVICECHECKS", 6, [word]),
    ]);
  const rooms = outletRows(job);
  const heads = headRows(job);
  const passives = filledRows(job, "passives", "name");
  const plates = filledRows(job, "plates", "name");
  const parts = PRICED.flatMap((block) => filledRows(job, block, "name"));
  const labour = filledRows(job, "labour", "name");
  const [date, until] = [field(job, "site_date"), field(job, "site_until")];
  const p = priced(job);
  const hot = rooms.map((row) => levelsOf(job, row)[3]!).filter((level) => !Number.isNaN(level));
  const apart = hot.length > 0 ? Math.max(...hot) - Math.min(...hot) : 0;
  const loses = (low: Value | undefined, high: Value | undefined): boolean => Number(high) < Number(low);
  /** Without a price there is nothing to compare. */
  const crew = crewFound(job);
  const nought = p.total.isNaN() ? NaN : 0;
  const noughtOfCost = p.direct.isNaN() ? NaN : 0;
  const isDiscounted = isFilled(job.fields, "discount_sum") || isFilled(job.fields, "discount_share");
  const mixed =
    (isFilled(job.fields, "discount_sum") && isFilled(job.fields, "discount_share") ? 1 : 0) +
    (p.discount.greaterThan(p.before) ? 1 : 0) +
    (!isDiscounted && isFilled(job.fields, "discount_reason") ? 1 : 0);
  // What is entered at its selling price earns nothing here.
  const left = Number(cells.price_profit) - p.discount.toNumber();
  return {
    ...Object.fromEntries(Object.entries(entriesOf(job, cells)).map(([what, count]) => [what, none(count)])),
    "There are outlets to price": { found: rooms.length, passes: rooms.length >= 1 },
    "Cells filled at or below the closing row of a block": none(0),
    "Dishes that cannot be worked out": said("dishes", "name", "DISHCHECKS", 4, "bad"),
    "Feeders that cannot be worked out": said("feeders", "from", "FEEDERCHECKS", 1, "bad"),
    "Head units that cannot be worked out": said("heads", "id", "HEADCHECKS", 0, "bad"),
    "Devices that nothing feeds, or that cannot be worked out": said(
      "branches",
      "id",
      "DEVICECHECKS",
      2,
      "bad",
    ),
    "Outlets that nothing feeds, or that cannot be worked out": outletsSaid(0, "bad"),
    "Outlets with the name of another": none(names(twice(rooms, "outlet"))),
    "Names that stand twice on one list": none(
      sum(LISTS.map(([block, key]) => twice(filledRows(job, block, key), key).length)),
    ),
    "Names with *, ? or ~": none(
      sum(
        LOOKED_UP.map(
          ([block, key]) =>
            filledRows(job, block, key).filter((row) => /[*?~]/.test(String(row[key]))).length,
        ),
      ),
    ),
    "Outlet count cross-check, head units against Rooms: difference": none(
      rooms.filter((row) => headNameOf(job, row) !== "").length - rooms.length,
    ),
    "Outlets too weak": outletsSaid(1, "low"),
    "Outlets too strong": outletsSaid(1, "high"),
    "Outlets whose levels lie more than 15 dB apart over the range": outletsSaid(2, "steep"),
    "Outlets with too little carrier to noise, in clear sky or at the availability wanted": outletsSaid(
      3,
      "low",
    ),
    "Slots without EIRP, symbol rate or modulation: carrier to noise is not judged": wish(
      slotRows(job)
        .filter((row) => !["eirp", "symbol_rate", "modulation"].every((key) => isFilled(row, key)))
        .map(({ slot }) => slotName(slot)),
    ),
    "Outlets whose carrier to noise is not judged": wish(
      slotRows(job).some((row) => ["eirp", "symbol_rate", "modulation"].every((key) => isFilled(row, key)))
        ? rowsOf(job, "rooms").flatMap((row, index) => {
            const [said, , , noise] = answersOf(job).OUTLETCHECKS[index] ?? [];
            return isFilled(row, "outlet") && said === "ok" && (noise ?? "") === "" ? [row.outlet!] : [];
          })
        : [],
    ),
    "Outlets whose receiver cannot command its head unit": outletsSaid(4, "dead"),
    "Kinds of head unit in use that do not say how they are commanded": wish(
      names(
        filledRows(job, "units", "name").filter(
          (unit) =>
            heads.some(({ type }) => isSame(type, unit.name)) &&
            (!isFilled(unit, "standard") ||
              (unit.standard === "maker's own" &&
                !isFilled(unit, "pass_block") &&
                inColumn("rooms", "outlet", "OUTLETCHECKS", 4, ["not judged"]).length > 0)),
        ),
      ),
    ),
    "Receivers at whose connector more volts stand than they bear": outletsSaid(7, "high"),
    "Outlets with more receivers than connectors": outletsSaid(6, "too many"),
    "Through ports that nothing closes": ports("left open"),
    "End resistors that do not block power where volts stand": ports("passes power"),
    "Largest level difference between outlets, hot, highest frequency": {
      found: apart,
      passes: apart <= 15,
      isWish: true,
    },
    "Outlets below the design floor": wish(
      names(rooms.filter((row) => weakestOf(job, row) < field(job, "site_level_design"))),
    ),
    "Outlets too weak at longest lengths": wish(counted("rooms_stretched_check", (value) => value === "low")),
    "Minimum and maximum level outside 47 to 77 dBµV": none(
      (field(job, "site_level_low") < 47 ? 1 : 0) + (field(job, "site_level_high") > 77 ? 1 : 0),
    ),
    "Splitters with less loss than an ideal split: 10·log10 of their ways": none(
      names(
        passives.filter(
          ({ kind, ways, port_low: low, port_high: high }) =>
            kind === "splitter" && Math.min(Number(low), Number(high)) < 10 * Math.log10(Number(ways)) - 0.01,
        ),
      ),
    ),
    "Devices and outlets that lose less at the highest frequency, and taps whose line loses more than a port":
      wish(
        passives.filter((row) => loses(row.port_low, row.port_high)).length +
          plates.filter((row) => loses(row.loss_low, row.loss_high)).length +
          passives.filter(
            ({ kind, ...row }) =>
              kind === "tap" &&
              (Number(row.through_low) > Number(row.port_low) ||
                Number(row.through_high) > Number(row.port_high)),
          ).length,
      ),
    "Runs that are not between their shortest and their longest": none(
      names(
        rooms.filter(
          (row) => leastRun(job, row) > orNought(row, "run") || mostRun(job, row) < orNought(row, "run"),
        ),
      ),
    ),
    "Outlets in rooms that have another number of them than their type says": none(unlikeTheirType(job)),
    "Room types that no outlet has": wish(
      names(filledRows(job, "types", "name").filter((type) => outletsOf(job, type).length === 0)),
    ),
    "Outlets without the user bands that they need": outletsSaid(5, "bad"),
    "Head units short of volts, with all receivers off, one on alone, or all on": said(
      "heads",
      "id",
      "HEADCHECKS",
      1,
      "low",
    ),
    "Head units whose feed on the dish gets too few volts": said("heads", "id", "HEADCHECKS", 4, "low"),
    "Amplifiers short of volts": said("branches", "id", "DEVICECHECKS", 3, "low"),
    "Supplies at head units that give more than their maximum current": said(
      "heads",
      "id",
      "HEADCHECKS",
      2,
      "high",
    ),
    "Devices and inserters with more than their maximum current": said(
      "branches",
      "id",
      "DEVICECHECKS",
      4,
      "high",
    ),
    "Amplifiers with more output than their limit for the carriers that they carry": said(
      "branches",
      "id",
      "DEVICECHECKS",
      5,
      "high",
    ),
    "Switches with a level at their inputs outside their limits": said(
      "heads",
      "id",
      "HEADCHECKS",
      3,
      "low",
      "high",
    ),
    "Supplies and inserters that feed nothing": none([
      ...inColumn("heads", "id", "HEADCHECKS", 5, ["unused"]),
      ...inColumn("branches", "id", "DEVICECHECKS", 4, ["unused"]),
    ]),
    "Slots of Site that no dish on Dishes receives": none(slotsWithoutDish(job)),
    "Slots that the beam does not clear": none(
      counted("sight_verdict", (value) => value !== "ok").filter(
        (slot) =>
          Number(
            (cells.sight_own as Value[])[
              rowsOf(job, "slots").findIndex((row) => slotName(row.slot) === slot)
            ],
          ) === 0,
      ),
    ),
    "Dishes whose beam does not clear their own obstacle": none(
      (cells.aims_dish as Value[]).filter(
        (_, at) => (cells.aims_verdict as Value[])[at] === "low" && (cells.aims_given as Value[])[at] === 1,
      ),
    ),
    "There are orbital slots": { found: slotRows(job).length, passes: slotRows(job).length >= 1 },
    "Prices without an expiry date, or expired on the day of the quote": none(
      parts.filter((row) => !isFilled(row, "until") || figure(row, "until") < date).length,
    ),
    "Prices dated after the quote": none(
      parts.filter((row) => isFilled(row, "priced") && figure(row, "priced") > date).length,
    ),
    "Prices that expire while the quote is valid": wish(
      parts.filter(
        (row) => isFilled(row, "until") && figure(row, "until") >= date && figure(row, "until") < until,
      ).length,
    ),
    // Its own day is not counted: taken from the formula.
    "Validity from quote date, days": { found: until - date, passes: until - date >= 1 },
    "Hours of labour in the price": {
      unknownIsLook: true,
      found: Number(cells.work_total_hours),
      passes: Number(cells.work_total_hours) > 0,
    },
    "Labour whose minutes are not between shortest and longest, both given or neither": none(
      names(
        [...labour, ...filledRows(job, "routes", "name")].filter((row) => {
          if (!isFilled(row, "low") && !isFilled(row, "high")) return false;
          if (!isFilled(row, "low") || !isFilled(row, "high")) return true;
          return !(
            figure(row, "low") <= figure(row, "minutes") && figure(row, "minutes") <= figure(row, "high")
          );
        }),
      ),
    ),
    "Cables without a route: laying them takes no time in the price": wish(
      isFilled(job.fields, "site_usual_route") || filledRows(job, "routes", "name").length === 0
        ? 0
        : [
            ...filledRows(job, "feeders", "to"),
            ...filledRows(job, "heads", "id"),
            ...filledRows(job, "branches", "id"),
            ...filledRows(job, "rooms", "outlet"),
          ].filter((row) => orNought(row, "length") + orNought(row, "run") !== 0 && !isFilled(row, "route"))
            .length,
    ),
    "Work and fittings that nothing counts": wish(
      [...labour, ...filledRows(job, "fittings", "name")].filter(
        (row) =>
          ["per_outlet", "per_branch", "per_head", "fixed", "per_floor", "per_day"].every(
            (key) => orNought(row, key) === 0,
          ) &&
          !isFilled(row, "piece") &&
          !(
            isPart(row) && filledRows(job, "types", "name").some(({ fitting }) => isSame(fitting, row.name))
          ) &&
          !filledRows(job, "dishes", "name").some(({ part }) => isPart(row) && isSame(part, row.name)),
      ).length,
    ),
    "Hours that do not fit into the days typed": {
      found: crew.hoursOver,
      first: crew.daysApart,
      passes: crew.hoursOver <= orNought(job.fields, "crew_hours") / 1_000_000,
    },
    "Days of which their own work leaves nothing for all else": none(crew.daysUsedUp),
    "Site costs that are not between lowest and highest, both given or neither": none(names(crew.outOfRange)),
    "Site costs for more days than the crew is on site": wish(crew.hiredLonger),
    "Site costs by the day where there are no days on site": wish(names(crew.ofNoDay)),
    "Difficulties of floors and rooms that no outlet goes by": none(crew.placesForNobody.map(placeName)),
    "Difficulties of one floor or room that stands twice": none(crew.placesTwice.map(placeName)),
    "Runs that the cutting plan cannot take: longer than their reel, or without length, cable or reel":
      notPlanned(job),
    "Reels to buy that the cutting plan has no line for": none(0),
    "Parts to buy that the order list has no line for": none(Math.max(0, ordered(job).length - ORDER_LINES)),
    "Parts to buy that name no supplier": wish(
      ordered(job).flatMap(({ part }) => (isFilled(part, "supplier") ? [] : [part.name!])),
    ),
    "Discounts that are both a sum and a share, more than the price, or a reason without one": none(mixed),
    "Selling price after the discount, less its cost": {
      // 1 stands for no discount: taken from the formula.
      found: isDiscounted ? left : 1,
      passes: !isDiscounted || left > 0,
      isWish: true,
    },
    "Parts of options and alternates that are not on Parts and have no cost": none(
      rowsOf(job, "made").flatMap((row, at) =>
        isFilled(row, "option") && isFilled(row, "quantity") && (cells.made_one as Value[])[at] === ""
          ? [row.option!]
          : [],
      ),
    ),
    "Alternates chosen for the same thing": none(
      filledRows(job, "options", "name")
        .filter(
          ({ instead, chosen }, _, all) =>
            chosen === "yes" &&
            all.filter((other) => other.chosen === "yes" && isSame(other.instead, instead)).length > 1,
        )
        .map(({ instead }) => instead!),
    ),
    "Cost cross-check: difference": none(noughtOfCost),
    "Margin cross-check: difference": none(noughtOfCost),
    "Rounding cross-check: difference": {
      found: roundedAway(job, cells),
      passes: Math.abs(roundedAway(job, cells)) <= 3 / 10 ** Number(cells.price_decimals),
    },
    "Total cross-check: difference": none(nought),
    "Tax cross-check: difference": {
      found: p.tax.minus(p.taxes.exactly).toNumber(),
      passes: true,
    },
    "Count cross-check of outlets, devices, head units, supplies and wall plates: difference": none(
      countedApart(job, cells),
    ),
    "Corners of the prediction that differ from the frequencies and temperatures above them": none(0),
    "Cells of the quote that differ from the sheet they come from": none(0),
    "Assumptions and exclusions on the quote: lists that are empty": wish(
      ["assumptions", "exclusions"].filter((block) => filledRows(job, block, "text").length === 0).length,
    ),
    "Figures of 0 without a reason": wish(zerosNoted(job)),
    "Measured outlets off their prediction": wish(counted("commission_verdict", (value) => value === "look")),
    "Conductors that need attention, or could not be looked up": wish(
      names(filledRows(job, "bonds", "where").filter((row) => flagOf(job, row)[0] !== "no flag")),
    ),
    "Conductors listed on Bonding": {
      found: filledRows(job, "bonds", "where").length,
      passes: filledRows(job, "bonds", "where").length >= 1,
      isWish: true,
    },
    "Dishes without a conductor on Bonding": wish(
      conductorsOf(job).flatMap(({ dish, conductors }) => (conductors === 0 ? [dish] : [])),
    ),
    // Where the workbook is computed, they do.
    "Rigsheet's functions answer here, and blank cells reach them as blanks": { found: 0, passes: true },
  };
}

/** What the order list has room for. */
const ORDER_LINES = 60;

/** Runs without length, cable or reel, and those that no reel holds. */
function notPlanned(job: Job): Found {
  const cables = filledRows(job, "cables", "name");
  const isKnown = (row: Row): boolean => cables.some(({ name }) => isSame(name, cableUsed(job, row)));
  const loose = [
    ...outletRows(job).filter((row) => !isFilled(row, "run") || (figure(row, "run") !== 0 && !isKnown(row))),
    ...["branches", "heads"].flatMap((block) =>
      filledRows(job, block, "id").filter((row) => orNought(row, "length") !== 0 && !isKnown(row)),
    ),
  ];
  const tooLong = cables.flatMap((cable) => {
    const most = Math.max(figure(cable, "reel"), ...startedOf(job, cable));
    return cutsOf(job, cable).filter(({ cut }) => cut > most * (1 + 1e-8));
  });
  return none(loose.length + tooLong.length);
}

/** What rounding the lines has added, before a discount. */
function roundedAway(job: Job, cells: Cells): number {
  const p = priced(job);
  const exact = Number(cells.price_sell) + p.sums.at(-1)!.toNumber() + p.options.toNumber();
  return p.before.toNumber() - exact;
}

export const wordOf = ({ found, passes, isWish, unknownIsLook }: Found): string =>
  Number.isNaN(found) && !unknownIsLook ? "error" : passes ? "ok" : isWish ? "note" : "look";
