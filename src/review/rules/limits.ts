import { isBookError, type Book, type BookResult } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import type { Finding, FindingPlace } from "../finding";
import { filledCells, namedCells, plainWord } from "../namedCells";
import type { Rule } from "../rule";

const COLUMNS = [
  {
    verdict: estimate.rooms.check.low.name,
    bad: "low",
    of: estimate.rooms.weakest.name,
    named: estimate.rooms.outlet.name,
    what: "too little level",
    unit: "dBµV",
    limit: estimate.site.level_low.name,
    remedy: "Shorten the run, take a better cable, or a splitter that loses less.",
  },
  {
    verdict: estimate.rooms.check.high.name,
    bad: "high",
    of: estimate.rooms.strongest.name,
    named: estimate.rooms.outlet.name,
    what: "too much level",
    unit: "dBµV",
    limit: estimate.site.level_high.name,
    remedy: "Take a tap or an outlet that loses more.",
  },
  {
    verdict: estimate.heads.power.name,
    bad: "low",
    of: estimate.heads.volts.name,
    named: estimate.heads.id.name,
    what: "too few volts",
    unit: "V",
    limit: estimate.heads.least.name,
    remedy: "Take a cable with less resistance, a supply with more volts, or move it nearer.",
  },
  {
    verdict: estimate.heads.capacity.name,
    bad: "high",
    of: estimate.heads.tuners.name,
    named: estimate.heads.id.name,
    what: "more tuners than user bands",
    unit: "tuners",
    limit: estimate.heads.bands.name,
    remedy: "Add a head unit or take one with more user bands.",
  },
] as const;

/** A hundredth tells a level or a voltage from its limit. */
const inShort = (value: number): string => String(Number(value.toFixed(2)));

/** The supply of a head unit, where its own volts are already too few. */
function tooWeak(read: Book, head: number): FindingPlace | undefined {
  const supply = namedCells(read, estimate.heads.supply.name)[head];
  const of = (list: string, column: string, name: BookResult | undefined): BookResult | undefined => {
    const row = filledCells(read, list).find(({ value }) => plainWord(value) === plainWord(name));
    return row && namedCells(read, column)[row.index]?.value;
  };
  const volts = of(estimate.supplies.name.name, estimate.supplies.volts.name, supply?.value);
  const least = of(
    estimate.units.name.name,
    estimate.units.least.name,
    namedCells(read, estimate.heads.type.name)[head]?.value,
  );
  return typeof volts === "number" && typeof least === "number" && volts < least ? supply?.place : undefined;
}

export const limits: Rule = {
  id: "outside limits",
  reason: "An outlet without level, or a head unit without volts or user bands, does not work.",
  example: "Outlet A-07 gets 42 dBµV where 47 is the least.",
  find: ({ read, computed }) =>
    COLUMNS.flatMap(({ verdict, bad, of, named, what, unit, limit, remedy }) => {
      const figures = namedCells(computed, of);
      const names = namedCells(computed, named);
      const bounds = namedCells(computed, limit);
      return filledCells(computed, verdict).flatMap(({ place, index, value }): Finding[] => {
        const found = figures[index]?.value;
        const bound = (bounds[index] ?? bounds[0])?.value;
        // A supply below the least leaves no window, so its verdict is an error; the figures tell all the same.
        const none = isBookError(value) && isBookError(found) && unit === "V";
        const beyond =
          isBookError(value) &&
          typeof found === "number" &&
          typeof bound === "number" &&
          (bad === "low" ? found < bound : found > bound);
        if (value !== bad && !none && !beyond) return [];
        return [
          {
            weight: "wrong",
            place,
            cause: unit === "V" ? tooWeak(read, index) : undefined,
            message: `${String(names[index]?.value ?? "")} has ${what}: ${typeof found === "number" ? `${inShort(found)} ${unit}` : "no point at which it could run"}.`,
            expected: `${bad === "low" ? "At least" : "At most"} ${String(bound)} ${unit}.`,
            effect: "It will not work as quoted.",
            remedy,
          },
        ];
      });
    }),
};
