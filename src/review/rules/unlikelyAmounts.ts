import type { Book } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import { namedValue } from "../../workbooks/named";
import type { Finding } from "../finding";
import { inputsIn } from "../inputsIn";
import { filledCells, figure, hasJob, namedCells, PRICED_BLOCKS } from "../namedCells";
import type { Reviewed, Rule } from "../rule";

interface Usual {
  readonly name: string;
  readonly least?: number;
  readonly most?: number;
  /** The bounds are lengths in metres. */
  readonly metres?: true;
  readonly because: string;
}

const PRACTICE = "(common practice, no source)";

/** What a figure usually is. A cell's own rule allows more; what lies outside is looked at before it goes out. */
const USUAL: readonly Usual[] = [
  {
    name: estimate.site.tax.name,
    most: 0.3,
    because: "no country's tax on such work is higher (from memory)",
  },
  { name: estimate.site.contingency.name, most: 0.25, because: PRACTICE },
  { name: estimate.site.overhead.name, most: 0.6, because: PRACTICE },
  { name: estimate.site.margin.name, most: 0.6, because: PRACTICE },
  { name: estimate.site.waste.name, most: 0.25, because: PRACTICE },
  { name: estimate.site.slack.name, most: 10, metres: true, because: PRACTICE },
  { name: estimate.rooms.quantity.name, most: 4, because: `receivers at one outlet ${PRACTICE}` },
  { name: estimate.labour.difficulty.name, least: 0.5, most: 3, because: PRACTICE },
  { name: estimate.cables.reel.name, least: 25, metres: true, because: PRACTICE },
  { name: estimate.supplies.amps.name, most: 10, because: PRACTICE },
  { name: estimate.routes.minutes.name, most: 30, because: `for one length ${PRACTICE}` },
  { name: estimate.routes.difficulty.name, least: 0.5, most: 3, because: PRACTICE },
  { name: estimate.slots.eirp.name, least: 35, most: 65, because: `for reception with a dish ${PRACTICE}` },
  { name: estimate.slots.symbol_rate.name, least: 1, most: 75, because: `for broadcasts ${PRACTICE}` },
  { name: estimate.site.dish_loss.name, most: 3, because: PRACTICE },
  { name: estimate.site.noise_margin.name, most: 5, because: PRACTICE },
];

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
      ? [...usual(reviewed), ...standard(reviewed), ...packs(reviewed), ...fractions(reviewed.read)]
      : [],
};

function usual({ read, definition }: Reviewed): Finding[] {
  const inFeet = namedValue(read, estimate.site.unit.name) === "ft";
  return inputsIn(read, definition).flatMap(({ name, label, cells, block, unit = "" }) => {
    const found = USUAL.find((one) => one.name === name);
    if (!found) return [];
    const scale = found.metres && inFeet ? FEET_PER_METRE : 1;
    const [least, most] = [(found.least ?? -Infinity) * scale, (found.most ?? Infinity) * scale];
    return cells.flatMap(({ value, place, called, inRow }): Finding[] => {
      // A negative one has broken its rule already.
      if (typeof value !== "number" || !inRow || value < 0 || (value >= least && value <= most)) return [];
      if (value === 0) return [];
      const shown = unit.startsWith("share") ? `${figure(value * 100)} %` : figure(value);
      const bound = value > most ? `at most ${bounded(most, unit)}` : `at least ${bounded(least, unit)}`;
      return [
        {
          weight: "doubtful",
          place,
          message: `${label}${block === undefined ? "" : ` of ${called}`} is ${shown}.`,
          expected: `Usually ${bound} ${found.because}.`,
          effect: "Price or prediction go by it.",
          remedy: "Look at the figure and its unit; say on Log why, if it is right.",
        },
      ];
    });
  });
}

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
