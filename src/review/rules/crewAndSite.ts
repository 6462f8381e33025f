import type { Book } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import type { SITE_UNITS } from "../../workbooks/multiRoom/names/crew";
import { namedValue } from "../../workbooks/named";
import { doubtfulWith, type Finding } from "../finding";
import { figure, filledCells, hasJob, isBlank, namedCells, plainWord } from "../namedCells";
import type { Rule } from "../rule";
import { rowsIn } from "../rowsIn";

const { crew, sites, sitesPriced, places, rooms, workTogether } = estimate;

/** Common practice, no source: the way there costs less than half of what the crew costs in a day. */
const MOST_OF_A_DAY = 0.5;
/** Common practice, no source: and more than half an hour of it. */
const LEAST_OF_A_DAY = 1 / 16;
/** Common practice, no source: what is paid for being there stays under the labour itself. */
const MOST_OF_LABOUR = 1;
/** A typed number of days that is so many times what the hours need. */
const FAR_TOO_MANY = 3;

/** The word of the list for what is paid each day. */
const EACH_DAY: (typeof SITE_UNITS)[number] = "day on site";

export const crewAndSite: Rule = {
  id: "crew and site costs",
  reason:
    "Days, travel, hire and difficulty multiply: one that is for the job where it is for each day, or for a floor that is called otherwise, is a day's pay or nothing.",
  example:
    "Travel once for the job where the crew comes eight days; a tower hired for 20 days of a job of 8.",
  find: ({ read, computed }) =>
    hasJob(read)
      ? [...days(read, computed), ...costs(read, computed), ...between(read), ...difficulties(read)]
      : [],
};

const say = doubtfulWith(
  "Compare with what was agreed for being on site; correct the cell, or say on Log why it is so.",
);

function days(read: Book, computed: Book): Finding[] {
  const [cell] = namedCells(read, crew.days.name);
  const needed = namedValue(computed, workTogether.days_needed.name);
  const typed = cell?.value;
  if (typeof typed !== "number" || typeof needed !== "number" || needed <= 0) return [];
  if (Math.ceil(typed) < needed)
    return [
      say(
        cell!.place,
        `${figure(typed)} days on site are typed; the hours need ${figure(needed)}.`,
        `${figure(needed)} days, as the hours count them: clear the cell, or plan longer days or a second crew.`,
        "What is paid by the day is priced for too few days.",
        { weight: "wrong", meant: needed },
      ),
    ];
  if (typed < FAR_TOO_MANY * needed) return [];
  return [
    say(
      cell!.place,
      `${figure(typed)} days on site are typed; the hours need ${figure(needed)}.`,
      `About ${figure(needed)}.`,
      "What is paid by the day is priced for too many days.",
      { usual: { low: needed, high: FAR_TOO_MANY * needed } },
    ),
  ];
}

function costs(read: Book, computed: Book): Finding[] {
  const onSite = Number(namedValue(computed, workTogether.days.name)) || 0;
  const rate = Number(namedValue(read, crew.rate.name)) || 0;
  const hours = Number(namedValue(read, crew.hours.name)) || 0;
  const labour = Number(namedValue(computed, workTogether.together.name)) || 0;
  const columns = {
    kind: sites.kind,
    per: sites.per,
    days: sites.days,
    cost: sites.cost,
    quantity: sites.quantity,
  };
  const sums = namedCells(computed, sitesPriced.sum.name);
  return rowsIn(read, sites.name, columns).flatMap(({ called, cell, number, word, index }): Finding[] => {
    const found: Finding[] = [];
    const [own, cost] = [number("days"), number("cost")];
    if (own !== undefined && onSite > 0 && own > onSite)
      found.push(
        say(
          cell("days")!.place,
          `${called} is paid for ${figure(own)} days, and the crew is on site for ${figure(onSite)}.`,
          `At most ${figure(onSite)} days, unless it is to stand longer.`,
          "Every day of it is charged.",
          { usual: { low: 1, high: onSite } },
        ),
      );
    const isForTheJob = (word("per") === "" || word("per") === "job") && own === undefined;
    if (word("kind") === "travel" && isForTheJob && onSite > 1 && (number("quantity") ?? 1) < onSite)
      found.push(
        say(
          cell("per")!.place,
          `${called} is paid once for the job, and the crew is on site for ${figure(onSite)} days.`,
          "a day on site, unless the crew stays there.",
          "All but the first day's way is given away.",
          { meant: EACH_DAY, isGuess: true },
        ),
      );
    const day = rate * hours;
    if (
      word("kind") === "travel" &&
      word("per") !== "job" &&
      cost !== undefined &&
      day > 0 &&
      cost > MOST_OF_A_DAY * day
    )
      found.push(
        say(
          cell("cost")!.place,
          `${called} costs ${figure(cost)} each, and a day of the crew ${figure(day)}.`,
          `Less than ${figure(MOST_OF_A_DAY * day)} (common practice, no source).`,
          "It is charged for every day or person.",
          { usual: { low: LEAST_OF_A_DAY * day, high: MOST_OF_A_DAY * day } },
        ),
      );
    const sum = sums[index]?.value;
    if (found.length === 0 && typeof sum === "number" && labour > 0 && sum > MOST_OF_LABOUR * labour)
      found.push(
        say(
          cell("cost")!.place,
          `${called} comes to ${sum.toFixed(2)}, all labour to ${labour.toFixed(2)}.`,
          "Less than the labour (common practice, no source).",
          "It is charged as it stands.",
        ),
      );
    return found;
  });
}

/** A lowest and a highest cost to either side of the cost. */
const between = (read: Book): Finding[] =>
  rowsIn(read, sites.name, { cost: sites.cost, low: sites.low, high: sites.high }).flatMap(
    ({ called, cell, number }): Finding[] => {
      const [cost, low, high] = [number("cost"), number("low"), number("high")];
      const wrong = (
        key: "cost" | "low" | "high",
        message: string,
        expected: string,
        meant: Pick<Finding, "meant" | "isGuess"> = {},
      ): Finding[] => [
        say(
          cell(key)!.place,
          `${called}: ${message}`,
          expected,
          "The price and its range go by these figures.",
          {
            weight: "wrong",
            ...meant,
            ...(key === "cost" && low !== undefined && high !== undefined && { usual: { low, high } }),
          },
        ),
      ];
      if ((low === undefined) !== (high === undefined))
        return wrong(
          low === undefined ? "low" : "high",
          "of lowest and highest cost one is blank.",
          "Both, or neither.",
        );
      if (low === undefined || high === undefined || cost === undefined) return [];
      if (low > high) {
        // Of the three the one that is out of order with both others; most likely a decimal point slipped.
        const isHigh = cost >= low;
        const meant = isHigh ? high * 10 : low / 10;
        return wrong(
          isHigh ? "high" : "low",
          `the lowest cost is ${figure(low)} and the highest ${figure(high)}.`,
          "The lowest first.",
          (isHigh ? meant >= cost : meant <= cost) ? { meant, isGuess: true } : {},
        );
      }
      if (cost < low || cost > high)
        return wrong(
          "cost",
          `it costs ${figure(cost)}, and from ${figure(low)} to ${figure(high)}.`,
          "Between the two.",
        );
      return [];
    },
  );

/** Difficulties of a floor or room that no outlet has, or that stands twice. */
function difficulties(read: Book): Finding[] {
  const [floors, inRooms] = [rooms.floor, rooms.room].map(({ name }) => filledCells(read, name));
  const known = (cells: typeof floors) =>
    new Map(cells!.map(({ value }) => [plainWord(value), String(value)]));
  const [floor, room] = [known(floors), known(inRooms)];
  const rows = namedCells(read, places.factor.name).flatMap(({ index }) => {
    const at = (name: string) => namedCells(read, name)[index];
    const [of, within] = [at(places.floor.name), at(places.room.name)];
    return isBlank(of?.value) && isBlank(within?.value) ? [] : [{ of: of!, within: within! }];
  });
  const seen = new Map<string, string>();
  return rows.flatMap(({ of, within }): Finding[] => {
    const place = isBlank(of.value) ? within : of;
    const lost = [
      ...(isBlank(of.value) || floor.has(plainWord(of.value))
        ? []
        : [{ cell: of, among: floor, what: "floor", at: "on" }]),
      ...(isBlank(within.value) || room.has(plainWord(within.value))
        ? []
        : [{ cell: within, among: room, what: "room", at: "in" }]),
    ][0];
    if (lost) {
      const alike = [...lost.among].find(
        ([word]) => letters(word) === letters(plainWord(lost.cell.value)),
      )?.[1];
      return [
        say(
          lost.cell.place,
          `No outlet is ${lost.at} a ${lost.what} called “${String(lost.cell.value)}”.`,
          alike === undefined ? `A ${lost.what} as Rooms names it.` : `“${alike}”, as Rooms names it.`,
          "Its difficulty stretches nothing.",
          { weight: "wrong", ...(alike !== undefined && { meant: alike }) },
        ),
      ];
    }
    const key = JSON.stringify([plainWord(of.value), plainWord(within.value)]);
    const first = seen.get(key);
    seen.set(key, first ?? place.place.cell);
    if (first === undefined) return [];
    return [
      say(
        place.place,
        `The difficulty of ${String(place.value)} stands in ${first} already.`,
        "Each place once, with one factor.",
        "The first is taken.",
        { weight: "wrong" },
      ),
    ];
  });
}

const letters = (word: string): string => word.replace(/[^\p{L}\p{N}]+/gu, "");
