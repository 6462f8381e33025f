import type { Book } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import type { Finding, FindingPlace } from "../finding";
import { inputsIn, type Input } from "../inputsIn";
import { filledCells, figure, isBlank, namedCells, type NamedCell } from "../namedCells";
import type { Rule } from "../rule";

const number = (cells: readonly NamedCell[], index: number): number | undefined => {
  const value = cells[index]?.value;
  return typeof value === "number" ? value : undefined;
};

export const crossedFigures: Rule = {
  id: "figures that cross",
  reason: "Two figures in each other's place pass every limit of their own, and the job looks better for it.",
  example: "The coldest cable at 55 °C and the hottest at -15 °C; a shortest run longer than the run.",
  find: ({ read, definition }) => [
    ...fields(read, definition),
    ...ranges(read, {
      of: estimate.labour.minutes.name,
      least: estimate.labour.low.name,
      most: estimate.labour.high.name,
      named: estimate.labour.name.name,
    }),
    ...ranges(read, {
      of: estimate.routes.minutes.name,
      least: estimate.routes.low.name,
      most: estimate.routes.high.name,
      named: estimate.routes.name.name,
    }),
    ...ranges(read, {
      of: estimate.rooms.run.name,
      least: estimate.rooms.shortest.name,
      most: estimate.rooms.longest.name,
      named: estimate.rooms.outlet.name,
    }),
    ...ranges(read, {
      of: estimate.types.run.name,
      least: estimate.types.shortest.name,
      most: estimate.types.longest.name,
      named: estimate.types.name.name,
    }),
    ...losses(read),
  ],
};

/** Fields that the template holds one to another. */
function fields(read: Book, definition: Parameters<typeof inputsIn>[1]): Finding[] {
  const inputs = inputsIn(read, definition);
  return inputs.flatMap(({ label, input, cells, unit = "" }) => {
    const [cell] = cells;
    if (input.rule.kind !== "number" || typeof cell?.value !== "number") return [];
    const { value, place } = cell;
    const { atLeast, atMost } = input.rule;
    return [
      {
        bound: atLeast,
        crosses: (other: number) => (atLeast?.orEqual ? value < other : value <= other),
        side: "above",
      },
      {
        bound: atMost,
        crosses: (other: number) => (atMost?.orEqual ? value > other : value >= other),
        side: "below",
      },
    ].flatMap(({ bound, crosses, side }): Finding[] => {
      const other = bound && namedCells(read, bound.name)[0]?.value;
      if (!bound || typeof other !== "number" || !crosses(other)) return [];
      return [
        {
          weight: "wrong",
          place,
          message: `${label} is ${figure(value)}${unit && ` ${unit}`}, and ${bound.words} is ${figure(other)}.`,
          expected: `${side === "above" ? "Above" : "Below"} it: were the two typed in each other's cell?`,
          ...inEachOthersCell(
            place,
            value,
            inputs.find((one) => one.name === bound.name),
          ),
          effect: "What is predicted from them is wrong.",
          remedy: "Compare both with the site and the standard.",
        },
      ];
    });
  });
}

/** Undone by changing the two over, where the figure fits the other's cell. */
function inEachOthersCell(place: FindingPlace, value: number, other: Input | undefined): Partial<Finding> {
  const [cell] = other?.cells ?? [];
  const rule = other?.input.rule;
  if (!cell || rule?.kind !== "number" || typeof cell.value !== "number") return {};
  const { min = -Infinity, max = Infinity } = rule;
  // Two that are equal cross either way.
  return value < min || value > max || value === cell.value
    ? {}
    : {
        undoing: [
          { place, value: cell.value },
          { place: cell.place, value },
        ],
        isGuess: true,
      };
}

/** Common practice, no source: an estimate is seldom off by more than half. */
const MOST_OF_LIKELY = 1.5;
/** Common practice, no source: beyond so many times the likely figure a point is in the wrong place. */
const FAR_OVER_LIKELY = 5;

/** Of these a blank is the tolerance on Site. */
const RUNS = new Set<string>([estimate.rooms.run.name, estimate.types.run.name]);

interface Range {
  readonly of: string;
  readonly least: string;
  readonly most: string;
  readonly named: string;
}

/** A likely figure between a least and a most. */
function ranges(read: Book, { of, least, most, named }: Range): Finding[] {
  const [likely, low, high] = [of, least, most].map((name) => namedCells(read, name)) as [
    NamedCell[],
    NamedCell[],
    NamedCell[],
  ];
  return filledCells(read, named).flatMap(({ index, value }): Finding[] => {
    const [is, from, to] = [number(likely, index), number(low, index), number(high, index)];
    const blanks = [low[index], high[index]].filter((cell) => cell && isBlank(cell.value));
    const say = (
      cell: NamedCell,
      message: string,
      expected: string,
      more: Partial<Finding> = {},
    ): Finding[] => [
      {
        weight: "wrong",
        place: cell.place,
        message: `${String(value)}: ${message}`,
        expected,
        effect: "The price and its range go by these figures.",
        remedy: "Compare with the survey; correct the one that is off.",
        ...more,
      },
    ];
    if (blanks.length === 1 && !RUNS.has(of))
      return say(blanks[0]!, "of the least and the most one is blank.", "Both, or neither.");
    // Of a least and a most that cross the one that the likely figure belies is off.
    if (from !== undefined && to !== undefined && from > to && is !== undefined && is >= from && is > to)
      return say(
        high[index]!,
        `the most is ${figure(to)}, under the least of ${figure(from)} and the likely ${figure(is)}.`,
        "The most of the three.",
        { usual: { low: is, high: is * MOST_OF_LIKELY } },
      );
    if (from !== undefined && to !== undefined && from > to)
      return say(
        low[index]!,
        `the least is ${figure(from)} and the most ${figure(to)}.`,
        "The least first.",
        is === undefined || (is >= to && is <= from)
          ? {
              undoing: [
                { place: low[index]!.place, value: to },
                { place: high[index]!.place, value: from },
              ],
            }
          : {},
      );
    if (is === undefined) return [];
    const usual = from !== undefined && to !== undefined ? { usual: { low: from, high: to } } : {};
    if (from !== undefined && is < from)
      return say(
        likely[index]!,
        `${figure(is)} is under its least of ${figure(from)}.`,
        "Between the two.",
        usual,
      );
    if (to !== undefined && is > to)
      return say(
        likely[index]!,
        `${figure(is)} is over its most of ${figure(to)}.`,
        "Between the two.",
        usual,
      );
    if (to !== undefined && is > 0 && to > FAR_OVER_LIKELY * is)
      return say(
        high[index]!,
        `the most is ${figure(to)}, ${figure(to / is)} times the likely ${figure(is)}.`,
        `Seldom more than ${figure(is * MOST_OF_LIKELY)}: is the point in its place?`,
        { weight: "doubtful", usual: { low: is, high: is * MOST_OF_LIKELY } },
      );
    return [];
  });
}

/** Ten times the logarithm of the ways: a passive splitter can't lose less. */
const leastLoss = (ways: number): number => 10 * Math.log10(ways);
/** Makers round down. */
const ROUNDING_DB = 0.3;
/** A meter's and a maker's tolerance. */
const SAME_DB = 0.05;

/** Losses that no device has, or that stand in each other's place. */
function losses(read: Book): Finding[] {
  const of = (name: string): readonly NamedCell[] => namedCells(read, name);
  const [kinds, ways] = [of(estimate.passives.kind.name), of(estimate.passives.ways.name)];
  const [portLow, portHigh, throughLow] = ["port_low", "port_high", "through_low"].map((key) =>
    of(`passives_${key}`),
  ) as [readonly NamedCell[], readonly NamedCell[], readonly NamedCell[]];
  const passives = filledCells(read, estimate.passives.name.name).flatMap(({ index, value }): Finding[] => {
    const name = String(value);
    const [low, high, through] = [number(portLow, index), number(portHigh, index), number(throughLow, index)];
    const count = number(ways, index);
    if (low === undefined || high === undefined) return [];
    const isSplitter = String(kinds[index]?.value ?? "").toLowerCase() === "splitter";
    if (
      isSplitter &&
      count !== undefined &&
      count > 1 &&
      Math.min(low, high) < leastLoss(count) - ROUNDING_DB
    ) {
      const cell = (low < leastLoss(count) - ROUNDING_DB ? portLow : portHigh)[index]!;
      return [
        {
          weight: "wrong",
          place: cell.place,
          message: `${name} is said to lose ${figure(Math.min(low, high))} dB to a port.`,
          expected: `More than ${leastLoss(count).toFixed(1)} dB: that much is lost by parting power into ${figure(count)}.`,
          effect: "Every outlet behind it seems to get too much.",
          remedy: "Take the figure from the maker's sheet for this number of ways.",
        },
      ];
    }
    if (!isSplitter && through !== undefined && through > low)
      return [
        {
          weight: "doubtful",
          place: portLow[index]!.place,
          message: `${name} is said to lose ${figure(low)} dB to a port and ${figure(through)} dB through.`,
          expected: "A tap loses more to its port than through.",
          effect: "Its outlets seem to get too much, and all behind it too little.",
          remedy: "Were the two typed in each other's columns? Compare with the maker's sheet.",
        },
      ];
    return low > high + SAME_DB ? [ends(name, portLow[index]!, low, high)] : [];
  });
  const [lossLow, lossHigh] = [of(estimate.plates.loss_low.name), of(estimate.plates.loss_high.name)];
  const plates = filledCells(read, estimate.plates.name.name).flatMap(({ index, value }): Finding[] => {
    const [low, high] = [number(lossLow, index), number(lossHigh, index)];
    if (low === undefined || high === undefined || low <= high + SAME_DB) return [];
    return [ends(String(value), lossLow[index]!, low, high)];
  });
  return [...passives, ...plates];
}

const ends = (name: string, { place }: NamedCell, low: number, high: number): Finding => ({
  weight: "doubtful",
  place,
  message: `${name} is said to lose ${figure(low)} dB at the lowest frequency and ${figure(high)} dB at the highest.`,
  expected: "More at the highest frequency, as devices of this kind do (common practice, no source).",
  effect: "The far outlets' level at the highest frequency is predicted too high.",
  remedy: "Were the two typed in each other's columns? Compare with the maker's sheet.",
});
