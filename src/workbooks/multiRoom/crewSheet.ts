/** The sheet of the crew: its day, what being on site costs, and where work is harder; worked out on Labour. */
import { chain, f, text, type Formula } from "../../formula/build";
import type { SheetDefinition } from "../definition";
import { askedBeside, blockPart, fieldsPart } from "../parts";
import { countOfKeys, keyOfAll } from "./nameKeys";
import { crew, places, sites } from "./names/crew";
import { labour } from "./names/labour";
import { rooms } from "./names/rooms";

/** Of the site costs those for each of one of these. */
const forEach = (...units: readonly string[]): Formula =>
  f`(${sites.name}<>"")*(${chain(
    "+",
    units.map((unit) => f`(${sites.per}=${text(unit)})`),
  )})`;

/** Something is paid by the day, and nobody said how many days there are. */
const DAYS_ARE_ASKED = f`((${crew.days}="")*(SUM(${labour.per_day})+SUMPRODUCT(${forEach("day on site", "person and day")}*(${sites.days}="")))>0)`;

export const commonDoubt = fieldsPart("Doubt that all labour has in common", [crew.speed, crew.difficulty]);

export const siteCosts = blockPart(sites, {
  heading: "Travel, access and permits",
  prepared: 8,
  formulas: {},
});

/** What a crew has in every job; how long it is on site, a job says. */
export const CREW = [
  crew.rate,
  askedBeside(crew.size, { required: f`(SUMPRODUCT(${forEach("person and day")})>0)` }),
  crew.hours,
] as const;

const [rate, size] = CREW;

/** A difficulty without a place, or that is none, is that of no place. */
const NOWHERE = f`(${places.floor}="")*(${places.room}="")+(1-ISNUMBER(${places.factor}))>0`;

export const crewSheet: SheetDefinition = {
  name: "Crew",
  kind: "input",
  intro: "Who does the work and for how long a day, what being on site costs, and where it is harder.",
  print: { orientation: "landscape" },
  parts: [
    fieldsPart("Crew and days", [
      rate,
      size,
      askedBeside(crew.hours, { required: DAYS_ARE_ASKED }),
      crew.days,
    ]),
    commonDoubt,
    siteCosts,
    blockPart(places, {
      heading: "Difficulty of floors and rooms",
      prepared: 8,
      rowName: places.factor,
      formulas: {
        outlets: f`IF(${places.key}="","",${countOfKeys(rooms.where_key, places.key)})`,
        place: f`IF(${places.factor}="","",IF(${places.room}="",IF(${places.floor}="","no place",${places.floor}),IF(${places.floor}="",${places.room},REPLACE(${places.room},1,0,REPLACE(", ",1,0,${places.floor})))))`,
        key: f`IF(${NOWHERE},"",${keyOfAll(places.room, places.floor)})`,
      },
    }),
  ],
};
