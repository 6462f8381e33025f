/** The figures of a computed job that are held to those of other jobs: by the metre and the piece, in metres, with their units. */
import type { Book } from "../../workbooks/book";
import type { WorkbookDefinition } from "../../workbooks/definition";
import { estimate } from "../../workbooks/multiRoom/names";
import { namedValue } from "../../workbooks/named";
import { SHARED_BLOCKS, SHARED_FIELDS } from "../../workbooks/standards/shared";
import type { FindingPlace } from "../finding";
import { inputsIn } from "../inputsIn";
import { filledCells, namedCells, plainWord } from "../namedCells";

export interface Measure {
  /** The input's name, or one of {@link WHOLE}. */
  readonly name: string;
  /** What it is, as its sheet calls it. */
  readonly what: string;
  /** The row; of a whole job the size of jobs that it is held to; "" for a field. */
  readonly of: string;
  /** Money carries its currency. */
  readonly unit: string;
  readonly value: number;
  /** Times a metre or a piece: what stands in the cell is the value times so many. */
  readonly times: number;
  readonly place?: FindingPlace;
}

const METRES_PER_FOOT = 0.3048;

/** Figures of a job as a whole. */
export const WHOLE = {
  price: "job_price_per_outlet",
  minutes: "job_minutes_per_outlet",
  labour: "job_labour_share",
  tuners: "job_tuners_per_outlet",
  cable: "job_cable_per_outlet",
  outlets: "job_outlets",
} as const;

const SHARED: ReadonlySet<string> = new Set([
  ...SHARED_FIELDS.map(({ name }) => name),
  ...SHARED_BLOCKS.flatMap(({ name, columns }) => columns.map(({ key }) => `${name}_${key}`)),
]);
/** Of no use to compare: settings, and figures that go with another one. */
const LEFT_OUT: ReadonlySet<string> = new Set([
  estimate.site.decimals.name,
  estimate.plans.band.name,
  estimate.plans.centre.name,
  estimate.plans.width.name,
  // A job's own wishes and doubts, and what goes with the likely minutes.
  estimate.site.run_tolerance.name,
  estimate.site.level_design.name,
  estimate.labour.low.name,
  estimate.labour.high.name,
  estimate.routes.low.name,
  estimate.routes.high.name,
]);

export function measuresIn(computed: Book, definition: WorkbookDefinition): Measure[] {
  const inFeet = namedValue(computed, estimate.site.unit.name) === "ft";
  const metre = inFeet ? METRES_PER_FOOT : 1;
  const currency = String(namedValue(computed, estimate.site.currency.name) ?? "").trim();
  const lengths = inputsIn(computed, definition).filter(
    ({ name }) => SHARED.has(name) && !LEFT_OUT.has(name),
  );
  const reels = namedCells(computed, estimate.cables.reel.name);
  const packs = namedCells(computed, estimate.fittings.pack.name);
  const numbers = lengths.flatMap(({ name, label, unit = "", input, block, cells }): Measure[] => {
    if (input.rule.kind !== "number") return [];
    return cells.flatMap(({ value, called, inRow, index, place }): Measure[] => {
      if (typeof value !== "number" || !inRow) return [];
      const say = (what: string, own: string, times: number): Measure[] =>
        times > 0
          ? [
              {
                name,
                what,
                of: block === undefined ? "" : called,
                unit: own,
                value: value / times,
                times,
                place,
              },
            ]
          : [];
      const size = (of: typeof reels): number => Number(of[index]?.value ?? 1) || 0;
      if (name === estimate.cables.price.name)
        return say("Price per m", `${currency} per m`, size(reels) * metre);
      if (name === estimate.fittings.price.name) return say("Price each", currency, size(packs));
      if (name === estimate.routes.minutes.name) return say("Minutes per m", "min per m", metre);
      if (unit === "m or ft") return say(label, "m", 1 / metre);
      return say(
        label,
        unit === "money" ? currency : name === estimate.crew.rate.name ? `${currency} per h` : unit,
        1,
      );
    });
  });
  return [...numbers, ...whole(computed, currency, metre)];
}

/** Jobs are of like size within a factor of four: a small one costs more an outlet. */
export function sizeOf(outlets: number): string {
  const step = Math.floor(Math.log(outlets) / Math.log(4));
  return `jobs of ${4 ** step} to ${4 ** (step + 1) - 1} outlets`;
}

function whole(computed: Book, currency: string, metre: number): Measure[] {
  const at = (name: string): number | undefined => {
    const value = namedValue(computed, name);
    return typeof value === "number" && value > 0 ? value : undefined;
  };
  const outlets = at(estimate.count.outlets.name);
  if (outlets === undefined) return [];
  const size = sizeOf(outlets);
  const [sell, hours, labour, direct, tuners] = [
    estimate.price.sell.name,
    estimate.workTogether.total_hours.name,
    estimate.price.labour.name,
    estimate.price.direct.name,
    estimate.headsNeeded.wanted.name,
  ].map(at);
  const metres = filledCells(computed, estimate.cablesBought.needed.name).reduce(
    (sum, { value }) => sum + (typeof value === "number" ? value * metre : 0),
    0,
  );
  const first =
    filledCells(computed, estimate.rooms.run.name)[0] ?? filledCells(computed, estimate.types.run.name)[0];
  const say = (
    name: string,
    what: string,
    of: string,
    unit: string,
    value: number | undefined,
    place?: FindingPlace,
  ): Measure[] =>
    value === undefined || !(value > 0)
      ? []
      : [{ name, what, of, unit, value, times: 1, ...(place && { place }) }];
  return [
    ...say(WHOLE.price, "Price an outlet, without tax", size, currency, sell && sell / outlets),
    ...say(WHOLE.minutes, "Minutes of labour an outlet", size, "min", hours && (hours * 60) / outlets),
    ...say(
      WHOLE.labour,
      "Labour's share of the direct cost",
      "",
      "share",
      labour && direct && labour / direct,
    ),
    ...say(WHOLE.tuners, "Tuners an outlet", "", "pieces", tuners && tuners / outlets, mostTuners(computed)),
    ...say(WHOLE.cable, "Cable an outlet", size, "m", metres / outlets, first?.place),
    ...say(WHOLE.outlets, "Outlets", "", "pieces", outlets),
  ];
}

/** Where the kind of receiver stands that has most of the tuners: in its type, where that says so. */
function mostTuners(computed: Book): FindingPlace | undefined {
  const tuners = namedCells(computed, estimate.receivers.tuners.name);
  const each = new Map(
    filledCells(computed, estimate.receivers.kind.name).map(({ value, index }) => [
      plainWord(value),
      Number(tuners[index]?.value ?? 1),
    ]),
  );
  const used = namedCells(computed, estimate.types.used.name);
  const cells = [
    ...filledCells(computed, estimate.types.receiver.name).map((cell) => ({
      cell,
      count: Number(used[cell.index]?.value ?? 0),
    })),
    ...filledCells(computed, estimate.rooms.receiver.name).map((cell) => ({ cell, count: 1 })),
  ];
  const sums = cells.map(({ cell, count }) => ({
    place: cell.place,
    sum: count * (each.get(plainWord(cell.value)) ?? 1),
  }));
  return sums.sort((a, b) => b.sum - a.sum)[0]?.place;
}
