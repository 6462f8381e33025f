/** Checks of the crew's days, of what being on site costs, and of where work is harder. */
import { f } from "../../formula/build";
import { countedInAll, lookAt, NONE_FOUND as none } from "../checkPlaces";
import type { CheckWords } from "../definition";
import { ofCalculated } from "./designChecks";
import { DAILY } from "./labourSheet";
import { countOfOwn } from "./nameKeys";
import { crew, places, sites } from "./names/crew";
import { workTogether } from "./names/labour";

/** Hired for more days of its own than the crew is there. */
const HIRED_LONGER = f`IFERROR((${sites.name}<>"")*(${sites.days}<>"")*(${workTogether.days}>0)*(${sites.days}>${workTogether.days})>0,FALSE)`;
const FIRST_HIRED = f`MATCH(1,${HIRED_LONGER}*1,0)`;

export const crewChecks = {
  "days too few": {
    what: "Hours that do not fit into the days typed",
    limit: "none: more days, or longer ones",
    found: f`IF((${crew.days}="")+(${crew.hours}="")>0,0,MAX(0,${workTogether.total_hours}-${crew.days}*${crew.hours}))`,
    format: "two",
    // A millionth of a day is none, as where days are counted.
    passes: (found) => f`${found}<=${crew.hours}/1000000`,
    where: lookAt("Crew", crew.days),
    places: f`"; "&${crew.days}&" typed, "&${workTogether.days_needed}&" needed"`,
  },
  "nothing left of a day": {
    what: "Days of which their own work leaves nothing for all else",
    limit: "none: longer days, or less work per day on site on Parts",
    found: f`(${crew.hours}<>"")*(${workTogether.day_hours}>=${crew.hours})`,
    passes: none,
    where: lookAt("Crew", crew.hours),
  },
  "site costs out of range": {
    what: "Site costs that are not between lowest and highest, both given or neither",
    limit: "none",
    found: {
      of: sites.name,
      bad: f`((${sites.low}<>"")<>(${sites.high}<>""))+(${sites.low}<>"")*(${sites.high}<>"")*((${sites.low}>${sites.cost})+(${sites.high}<${sites.cost})>0)>0`,
    },
    passes: none,
    where: lookAt("Crew", sites.low, sites.high),
  },
  "hire longer than the job": {
    what: "Site costs for more days than the crew is on site",
    limit: "advisory: is it to stand that long?",
    found: countedInAll([HIRED_LONGER]),
    passes: none,
    where: lookAt("Crew", sites.days),
    places: f`IFERROR("; "&INDEX(${sites.name},${FIRST_HIRED})&", "&INDEX(${sites.days},${FIRST_HIRED})&" of "&${workTogether.days},"")`,
    advice: true,
  },
  "costs of no day": {
    what: "Site costs by the day where there are no days on site",
    limit: "advisory: they cost nothing until there are hours, or days typed",
    found: {
      of: sites.name,
      bad: f`IFERROR((${DAILY})*(${sites.days}="")*(${workTogether.days}=0)>0,FALSE)`,
    },
    passes: none,
    where: lookAt("Crew", crew.hours, crew.days),
    advice: true,
  },
  "places without outlets": {
    what: "Difficulties of floors and rooms that no outlet goes by",
    limit: "none: is it named as on Rooms?",
    ...ofCalculated(
      places.place,
      f`IFERROR((${places.place}<>"")*((${places.key}="")+(${places.outlets}=0)>0)>0,FALSE)`,
    ),
    passes: none,
    where: lookAt("Crew", places.outlets),
  },
  "places twice": {
    what: "Difficulties of one floor or room that stands twice",
    limit: "none: the first would count",
    ...ofCalculated(places.place, f`IFERROR((${places.key}<>"")*(${countOfOwn(places.key)}>1)>0,FALSE)`),
    passes: none,
    where: lookAt("Crew", places.factor),
  },
} satisfies Readonly<Record<string, CheckWords>>;
