import type { Book } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import { namedValue } from "../../workbooks/named";
import type { Finding } from "../finding";
import { filledCells, figure, hasJob, isBlank, namedCells, plainWord } from "../namedCells";
import { onPurpose } from "../onPurpose";
import type { Rule } from "../rule";

const RUNNING = "running cables";
/** What every job of this kind takes, by a word in the work's name. Common practice, no source. */
const ALWAYS = [
  { words: /cable|run\b|wire|pull/i, what: RUNNING, needs: estimate.rooms.outlet.name },
  {
    words: /dish|antenna|reflector|mount|align/i,
    what: "mounting and aligning the dish",
    needs: estimate.rooms.outlet.name,
  },
  { words: /bond|earth|ground/i, what: "bonding or earthing", needs: estimate.bonds.where.name },
] as const;
/** Common practice, no source: nobody works longer than a day at one outlet, splitter or head unit. */
const LONGEST_MINUTES = 480;
/** Nor is work listed that takes less on the whole job. */
const SHORTEST_MINUTES = 5;
/** Work that is to run a cable, not to end or to mark it. */
const RUNS_CABLE = /\b(?:run|pull|lay)\b/i;
/** But of these a job may have few, and each takes a minute. */
const QUICK: ReadonlySet<string> = new Set(["connector", "end resistor", "receiver lead"]);
/** From so many outlets on their number is no accident. */
const FEWEST_OUTLETS = 5;

export const workNeeded: Rule = {
  id: "work lacking or counted twice",
  reason: "Work that nothing counts is given away; a count of all outlets for each outlet multiplies it.",
  example: "“Run and terminate a cable” counted for nothing; 24 times for each of 24 outlets.",
  find: ({ read, computed }) => {
    if (!hasJob(read)) return [];
    const works = filledCells(read, estimate.labour.name.name);
    const quantities = namedCells(computed, estimate.work.quantity.name);
    const counted = works.filter(({ index }) => quantities[index]?.value !== 0);
    const place = namedCells(read, estimate.labour.name.name)[1]?.place;
    const findings: Finding[] = [];
    if (counted.length === 0 && place && !onPurpose(read)("labour")) {
      findings.push({
        weight: "wrong",
        place,
        message: works.length === 0 ? "No work is listed." : "Nothing counts any of the work that is listed.",
        expected: "Each kind of work with how often it is done.",
        effect: "All labour is free.",
        remedy: "Fill the labour units on Parts, or list labour on Terms as 0 on purpose.",
      });
      return findings;
    }
    // A list in another language has none of these words, and is left alone.
    const speaks = works.some(({ value }) => ALWAYS.some(({ words }) => words.test(String(value))));
    const isByRoute = filledCells(computed, estimate.routeWork.hours.name).some(
      ({ value }) => Number(value) > 0,
    );
    for (const { words, what, needs } of speaks ? ALWAYS : []) {
      if (filledCells(read, needs).length === 0 || counted.some(({ value }) => words.test(String(value))))
        continue;
      if (what === RUNNING && isByRoute) continue;
      const row = works.find(({ value }) => words.test(String(value)));
      const count = row && namedCells(read, estimate.labour.per_outlet.name)[row.index]?.place;
      findings.push({
        weight: "doubtful",
        place: count ?? place,
        message: row ? `Nothing counts “${String(row.value)}”.` : `No work is named for ${what}.`,
        expected: `Work for ${what}, unless others do it.`,
        effect: "The price holds nothing for it.",
        remedy: "Enter how often it is done, or say under Exclusions who does it.",
      });
    }
    return [...findings, ...(isByRoute ? [...runTwice(), ...withoutRoute(read)] : []), ...amounts()];

    /** Running a cable is in the minutes of its route. */
    function runTwice(): Finding[] {
      const each = namedCells(read, estimate.labour.per_outlet.name);
      return counted.flatMap(({ value, index }) => {
        const cell = each[index];
        return cell && Number(cell.value) > 0 && RUNS_CABLE.test(String(value))
          ? [
              doubtful(
                cell.place,
                `${String(value)} is counted for each outlet, and cables are counted by their routes too.`,
                "One of the two.",
                "Running a cable is priced twice.",
              ),
            ]
          : [];
      });
    }

    function amounts(): Finding[] {
      const outlets = namedValue(computed, estimate.count.outlets.name);
      const isAllOutlets = (often: number): boolean => often >= FEWEST_OUTLETS && often === outlets;
      const [minutes, difficulty, fixed, perOutlet, hours] = [
        estimate.labour.minutes.name,
        estimate.labour.difficulty.name,
        estimate.labour.fixed.name,
        estimate.labour.per_outlet.name,
      ]
        .map((name) => namedCells(read, name))
        .concat([namedCells(computed, estimate.work.hours.name)]);
      const pieces = namedCells(read, estimate.labour.piece.name);
      const number = (cells: typeof minutes, index: number): number =>
        Number(cells?.[index]?.value ?? 0) || 0;
      return works.flatMap(({ value, index }): Finding[] => {
        const each = number(minutes, index) * (number(difficulty, index) || 1);
        const all = number(hours, index) * 60;
        const found: Finding[] = [];
        for (const key of ["per_outlet", "per_branch", "per_head"] as const) {
          const cell = namedCells(read, `labour_${key}`)[index];
          const often = Number(cell?.value ?? 0) || 0;
          const isTooLong = often > 1 && often * each > LONGEST_MINUTES;
          if (!cell || !(isTooLong || (key === "per_outlet" && isAllOutlets(often)))) continue;
          found.push(
            doubtful(
              cell.place,
              `${String(value)} is counted ${figure(often)} times for each: ${figure(Number(((often * each) / 60).toFixed(1)))} hours.`,
              "How often for one; usually once.",
              "All of it is multiplied.",
            ),
          );
        }
        const once = number(fixed, index);
        if (isAllOutlets(once) && number(perOutlet, index) > 0)
          found.push(
            doubtful(
              fixed![index]!.place,
              `${String(value)} is counted for each outlet and ${figure(once)} times for the job, as many as there are outlets.`,
              "One of the two.",
              "It is priced twice.",
            ),
          );
        if (all > 0 && all < SHORTEST_MINUTES && !QUICK.has(plainWord(pieces[index]?.value)))
          found.push(
            doubtful(
              minutes![index]!.place,
              `${String(value)} takes ${figure(Number(all.toFixed(1)))} minutes on the whole job.`,
              `${figure(number(minutes, index) * 60)}, if ${figure(number(minutes, index))} hours were meant.`,
              "Nearly nothing is charged for it.",
            ),
          );
        return found;
      });
    }
  },
};

/** Cables whose running nothing counts, beside others that have a route. */
function withoutRoute(read: Book): Finding[] {
  const { site, rooms, branches, heads, feeders } = estimate;
  const usual = namedCells(read, site.usual_route.name)[0];
  if (!usual || !isBlank(usual.value)) return [];
  const without = (
    [
      [rooms.run.name, rooms.route.name],
      [branches.length.name, branches.route.name],
      [heads.length.name, heads.route.name],
      [feeders.length.name, feeders.route.name],
    ] as const
  ).flatMap(([length, route]) => {
    const routes = namedCells(read, route);
    return filledCells(read, length).filter(({ index }) => isBlank(routes[index]?.value));
  });
  if (without.length === 0) return [];
  return [
    doubtful(
      usual.place,
      `${without.length} ${without.length === 1 ? "cable has" : "cables have"} no route, and others have.`,
      "A route in each row, or the usual one here.",
      "Nothing is charged for running them.",
    ),
  ];
}

const doubtful = (place: Finding["place"], message: string, expected: string, effect: string): Finding => ({
  weight: "doubtful",
  place,
  message,
  expected,
  effect,
  remedy: "Look at the minutes and counts of this kind of work.",
});
