import { estimate } from "../../workbooks/multiRoom/names";
import { namedValue } from "../../workbooks/named";
import type { Finding } from "../finding";
import { hasJob } from "../namedCells";
import { onPurpose } from "../onPurpose";
import { allowed, ENOUGH_QUOTES, FEWEST_QUOTES, keyOf, type Learned } from "../ranges/learned";
import { measuresIn, WHOLE, type Measure } from "../ranges/measures";
import type { ReviewOptions, Rule } from "../rule";

const METRES_PER_FOOT = 0.3048;

const learnedIn = ({ standards }: ReviewOptions): readonly Learned[] =>
  (standards?.learned ?? []).filter(({ quotes }) => quotes >= FEWEST_QUOTES);

export const unlikeAccepted: Rule = {
  id: "unlike accepted quotes",
  reason:
    "What a firm's accepted quotes had is the best measure of the next one; what lies far beside them is looked at.",
  example: "Ten minutes for a wall plate in all of twelve quotes, 100 in this one.",
  needs: {
    what: "standards that learned of accepted quotes",
    areThere: ({ options }) => learnedIn(options).length > 0,
  },
  find: ({ read, computed, definition, options }) => {
    const learned = learnedIn(options);
    if (learned.length === 0 || !definition || !hasJob(read)) return [];
    const ranges = new Map(learned.map((one) => [keyOf(one), one]));
    const meant = onPurpose(read);
    const inFeet = namedValue(read, estimate.site.unit.name) === "ft";
    const outside = measuresIn(computed, definition).flatMap((measure) => {
      const range = ranges.get(keyOf(measure));
      if (!range || (measure.of !== "" && meant(measure.of))) return [];
      const { low, high } = allowed(range);
      if (measure.name === WHOLE.outlets) return [];
      return measure.value < low || measure.value > high ? [{ measure, range }] : [];
    });
    const ofRows = bySize(outside.filter(({ measure }) => !isWhole(measure)));
    // What the job as a whole comes to follows from a row that is off.
    const told = ofRows.length > 0 ? ofRows : outside.filter(({ measure }) => isWhole(measure));
    return told.map(({ measure, range }) => unusual(measure, range, inFeet));
  },
};

interface Outside {
  readonly measure: Measure;
  readonly range: Learned;
}

const SIZES: Readonly<Record<string, string>> = {
  [estimate.cables.reel.name]: estimate.cables.price.name,
  [estimate.fittings.pack.name]: estimate.fittings.price.name,
};

/** Another reel or pack at its own price is none; at the usual price it is what is off, and not the price. */
function bySize(outside: readonly Outside[]): Outside[] {
  const priceOf = ({ measure }: Outside): Outside | undefined =>
    outside.find((one) => one.measure.name === SIZES[measure.name] && one.measure.of === measure.of);
  const sizes = outside.filter((one) => one.measure.name in SIZES && priceOf(one));
  const isUsualPrice = (size: Outside): boolean => {
    const { measure, range } = priceOf(size)!;
    const each = (measure.value * measure.times) / size.range.middle;
    const { low, high } = allowed(range);
    return each >= low && each <= high;
  };
  const offSizes = new Set(sizes.filter(isUsualPrice));
  const following = new Set([...offSizes].map(priceOf));
  return outside.filter((one) => (one.measure.name in SIZES ? offSizes.has(one) : !following.has(one)));
}

const isWhole = ({ name }: Measure): boolean => name.startsWith("job_");

function unusual(measure: Measure, range: Learned, inFeet: boolean): Finding {
  const { of, unit, times, place, value } = measure;
  const shown = (one: number): string =>
    unit === "share" || unit.startsWith("share of")
      ? `${Number((one * 100).toPrecision(3))} %`
      : inUnit(one, unit, inFeet);
  const name = of === "" ? range.what : `${range.what} of ${of}`;
  const usual =
    range.low === range.high
      ? shown(range.middle)
      : `${shown(range.low).replace(/ [^%].*$/, "")} to ${shown(range.high)}`;
  const isRow = !isWhole(measure);
  return {
    weight: isRow && range.quotes >= ENOUGH_QUOTES ? "doubtful" : "worth knowing",
    ...(place && { place }),
    message: isRow
      ? `${name} is ${shown(value)}; in ${range.quotes} accepted quotes it was ${usual}.`
      : `${range.what}: ${shown(value)}; in ${range.quotes} accepted ${of === "" ? "quotes" : of} it was ${usual}.`,
    expected: `About ${shown(range.middle)}${times === 1 || !isRow ? "" : `: ${Number((range.middle * times).toPrecision(4))} in this cell`} (learned from ${range.quotes} quotes).`,
    ...(isRow && { usual: { low: range.low * times, high: range.high * times } }),
    effect: isRow
      ? "The price or the prediction goes by it."
      : "The whole job is unlike them; nothing by itself is said to be wrong.",
    remedy:
      "Compare with the plan and the price list; or change the range on the sheet Ranges of the standards.",
  };
}

const CENTS = 2;

/** Money with its cents, as people write it. */
function inUnit(value: number, unit: string, inFeet: boolean): string {
  if (unit.endsWith(" per m")) {
    const each = inFeet ? value * METRES_PER_FOOT : value;
    return `${unit.startsWith("min") ? Number(each.toPrecision(3)) : decimals(each)} ${unit.replace(/ per m$/, "")} a ${inFeet ? "foot" : "metre"}`;
  }
  if (unit === "m")
    return inFeet
      ? `${Number((value / METRES_PER_FOOT).toPrecision(3))} ft`
      : `${Number(value.toPrecision(3))} m`;
  return `${Number(value.toPrecision(5))}${unit === "" ? "" : ` ${unit}`}`;
}

const decimals = (value: number): string =>
  value < 10 ** -CENTS ? String(Number(value.toPrecision(2))) : value.toFixed(CENTS);
