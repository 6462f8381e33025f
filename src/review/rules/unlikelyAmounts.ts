import type { Book } from "../../workbooks/book";
import type { InputRule } from "../../workbooks/definition";
import { estimate } from "../../workbooks/multiRoom/names";
import { namedValue } from "../../workbooks/named";
import type { Finding } from "../finding";
import { inputsIn } from "../inputsIn";
import { filledCells, figure, hasJob, namedCells, PRICED_BLOCKS } from "../namedCells";
import { USUAL, USUAL_MINUTES } from "../ranges/usual";
import { rowsIn } from "../rowsIn";
import type { Reviewed, Rule } from "../rule";

/** EN 60728-1, from memory: the level at an outlet, as Site says beside the cells. */
const STANDARD = [
  { name: estimate.site.level_low.name, is: (value: number) => value < 47, expected: "47 dBµV or more" },
  { name: estimate.site.level_high.name, is: (value: number) => value > 77, expected: "77 dBµV or less" },
] as const;

const FEET_PER_METRE = 3.2808;
/** Parts in packs of one by the dozen, that make so much of the bill, were priced by the pack. */
const MANY_PIECES = 50;
const MUCH_OF_ALL = 0.25;

export const unlikelyAmounts: Rule = {
  id: "unlikely amount",
  reason:
    "A figure far beyond what is usual passes its cell's limits and moves the price or the prediction a long way.",
  example: "A tax of 100 %; ten receivers at one outlet; a least level under the standard's.",
  find: (reviewed) =>
    hasJob(reviewed.read)
      ? [
          ...usual(reviewed),
          ...minutes(reviewed.read),
          ...fixing(reviewed.read),
          ...standard(reviewed),
          ...packs(reviewed),
          ...unitsInPacks(reviewed.read),
          ...fractions(reviewed.read),
        ]
      : [],
};

function usual({ read, definition }: Reviewed): Finding[] {
  const inFeet = namedValue(read, estimate.site.unit.name) === "ft";
  return inputsIn(read, definition).flatMap(({ name, label, cells, block, input, unit = "" }) => {
    const found = USUAL.find((one) => one.name === name);
    if (!found) return [];
    const scale = !inFeet ? 1 : found.metres ? FEET_PER_METRE : found.eachMetre ? 1 / FEET_PER_METRE : 1;
    const [least, most] = [(found.least ?? -Infinity) * scale, (found.most ?? Infinity) * scale];
    return cells.flatMap(({ value, place, called, inRow }): Finding[] => {
      // A negative one has broken its rule already.
      if (typeof value !== "number" || !inRow || (value >= least && value <= most)) return [];
      if ((value === 0 && !found.zeroToo) || (value < 0 && !mayBeNegative(input))) return [];
      const shown = unit.startsWith("share") ? `${figure(value * 100)} %` : figure(value);
      const bound = value > most ? `at most ${bounded(most, unit)}` : `at least ${bounded(least, unit)}`;
      return [
        {
          weight: "doubtful",
          place,
          message: `${label}${block === undefined ? "" : ` of ${called}`} is ${shown}.`,
          expected: `Usually ${bound} ${found.because}.`,
          ...usualOf(found, { least, most }, input),
          effect: "Price or prediction go by it.",
          remedy: "Look at the figure and its unit; say on Log why, if it is right.",
        },
      ];
    });
  });
}

/** Lengths lie within a factor of fifty, and of what is counted there is one at least. */
const LONGEST_TO_SHORTEST = 50;

function usualOf(
  found: (typeof USUAL)[number],
  { least, most }: { readonly least: number; readonly most: number },
  { rule }: InputRule,
): Pick<Finding, "usual"> {
  if (found.most === undefined) return {};
  if (found.least !== undefined) return { usual: { low: least, high: most } };
  if (rule.kind === "number" && rule.integer) return { usual: { low: 1, high: most } };
  return found.metres ? { usual: { low: most / LONGEST_TO_SHORTEST, high: most } } : {};
}

/** A metre that has to be fixed takes the crew most of a minute; in a duct or on a tray it is laid. */
const LEAST_FIXED = 0.8;
const LAID = /duct|conduit|pipe|tray|trunking|blown/i;

const fixing = (read: Book): Finding[] => {
  const least = LEAST_FIXED / (namedValue(read, estimate.site.unit.name) === "ft" ? FEET_PER_METRE : 1);
  return rowsIn(read, estimate.routes.name, { minutes: estimate.routes.minutes }).flatMap(
    ({ called, cell, number }): Finding[] => {
      const each = number("minutes");
      if (!each || each >= least || LAID.test(called)) return [];
      return [
        {
          weight: "doubtful",
          place: cell("minutes")!.place,
          message: `${called} takes ${figure(each)} minutes for each length.`,
          expected: `Usually at least ${figure(Number(least.toPrecision(2)))} where a cable is fixed (common practice, no source): was it for a foot, or a point lost?`,
          effect: "Every cable of this route is charged so.",
          remedy:
            "Look at the figure and its unit: minutes of the whole crew, for a metre or a foot as Site says.",
        },
      ];
    },
  );
};

const mayBeNegative = ({ rule }: InputRule): boolean => rule.kind === "number" && (rule.min ?? 0) < 0;

/** Work on one piece of the distribution, whatever it is called. */
const minutes = (read: Book): Finding[] =>
  rowsIn(read, estimate.labour.name, estimate.labour).flatMap(({ called, cell, number, word }): Finding[] => {
    const piece = word("piece") as keyof typeof USUAL_MINUTES;
    const [least, most] = USUAL_MINUTES[piece] ?? [];
    const each = number("minutes");
    if (least === undefined || most === undefined || !each || (each >= least && each <= most)) return [];
    return [
      {
        weight: "doubtful",
        place: cell("minutes")!.place,
        message: `${called} takes ${figure(each)} minutes for each ${piece}.`,
        expected: `Usually ${figure(least)} to ${figure(most)} minutes (common practice, no source).`,
        usual: { low: least, high: most },
        effect: "All of them are charged so.",
        remedy:
          "Look at the figure and its unit: minutes, of the whole crew; say on Log why, if it is right.",
      },
    ];
  });

const bounded = (value: number, unit: string): string =>
  unit.startsWith("share") ? `${figure(value * 100)} %` : figure(Number(value.toPrecision(3)));

const standard = ({ read }: Reviewed): Finding[] =>
  STANDARD.flatMap(({ name, is, expected }) =>
    filledCells(read, name).flatMap(({ place, value }): Finding[] =>
      typeof value === "number" && is(value)
        ? [
            {
              weight: "wrong",
              place,
              message: `The limit that all outlets are held to is ${figure(value)} dBµV.`,
              expected: `${expected} (EN 60728-1, from memory).`,
              effect: "Outlets pass that the standard fails.",
              remedy: "Enter the standard's limit, or a stricter one.",
            },
          ]
        : [],
    ),
  );

/** What is bought of each list of Parts. */
const BOUGHT = PRICED_BLOCKS.map((block) => estimate[`${block}Bought`]);

function packs({ read, computed }: Reviewed): Finding[] {
  const sums = BOUGHT.flatMap(({ sum }) => filledCells(computed, sum.name).map(({ value }) => value));
  const all = sums.reduce<number>((sum, value) => sum + (typeof value === "number" ? value : 0), 0);
  const [pack, needed, sum] = [
    estimate.fittings.pack.name,
    estimate.fittingsBought.needed.name,
    estimate.fittingsBought.sum.name,
  ].map((name, index) => namedCells(index === 0 ? read : computed, name));
  return filledCells(read, estimate.fittings.name.name).flatMap(({ value, index }): Finding[] => {
    const [count, cost] = [Number(needed?.[index]?.value ?? 0), Number(sum?.[index]?.value ?? 0)];
    if (pack?.[index]?.value !== 1 || count < MANY_PIECES || !(cost > MUCH_OF_ALL * all)) return [];
    return [
      {
        weight: "doubtful",
        place: pack[index]!.place,
        message: `${figure(count)} pieces of ${String(value)} in packs of 1 come to ${cost.toFixed(2)}, ${((100 * cost) / all).toFixed(0)} % of all materials.`,
        expected: "The number of pieces for which the price is.",
        effect: "Each piece is priced as a pack.",
        remedy: "Look up how many are in a pack.",
      },
    ];
  });
}

/** What costs so much a piece is not sold by the pack. */
const DEAR = 50;

/** Head units in packs: most likely another figure of theirs that slid over. */
const unitsInPacks = (read: Book): Finding[] =>
  rowsIn(read, estimate.units.name, { pack: estimate.units.pack, price: estimate.units.price }).flatMap(
    ({ called, cell, number }): Finding[] => {
      const pack = number("pack");
      if (pack === undefined || pack <= 1 || !(Number(number("price")) >= DEAR)) return [];
      return [
        {
          weight: "doubtful",
          place: cell("pack")!.place,
          message: `${called} is said to come in packs of ${figure(pack)}.`,
          expected: "Blank: head units are sold one by one (common practice, no source).",
          undoing: [{ place: cell("pack")!.place }],
          effect: "More are bought than are needed.",
          remedy: "Clear it, unless the supplier sells them so.",
        },
      ];
    },
  );

const fractions = (read: Book): Finding[] =>
  filledCells(read, estimate.options.quantity.name).flatMap(({ place, value }): Finding[] =>
    typeof value === "number" && !Number.isInteger(value)
      ? [
          {
            weight: "worth knowing",
            place,
            message: `An option is counted ${figure(value)} times.`,
            remedy: "Enter a whole number if pieces are meant.",
          },
        ]
      : [],
  );
