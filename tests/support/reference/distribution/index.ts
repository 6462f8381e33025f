/**
 * The distribution a second time, from the tables of a job to every column of its functions; of a sentence only that there is one. Written
 * from the examples of jobs as they are built, handbooks and standards; it shares no code with the product.
 *
 * What the examples leave open, and what is taken here:
 * - a port that is named goes before one that is handed out;
 * - level and slope are judged at the ends of the range and at the outlet's own bands, hot and cold;
 * - least in use counts "all off" only where the head unit then has volts;
 * - a splitter behind a plate counts in level, noise, volts and commands of its outlet.
 */
import { isFilled, type Row, type Value } from "../job";
import { bandsOf, receiverOf, tunersAt } from "./bands";
import { cableNamed } from "./cable";
import { OURS, type Limits } from "./circuit";
import { neededOf, type Needed } from "./counts";
import { deviceChecks, deviceLevels } from "./devices";
import { leastIsolation } from "./isolation";
import { corners } from "./levels";
import { dishesOf, feedersOf, isMiscounted } from "./dishes";
import { feedVolts, headChecks, headFigures } from "./heads";
import { levelsAt, noiseAt, outletChecks, outletVolts, type SlotNoise } from "./outlets";
import { decibelsOf } from "./sky";
import { metresOf, numberIn, settingsOf, straight, type Answer, type Tables } from "./tables";
import type { HeadUnit, Thing } from "./tree";
import {
  fedBackwards,
  isHigher,
  isLower,
  leastOf,
  outletsOf,
  SLIGHT,
  workedOut,
  type Worked,
} from "./worked";

/** A column of words or figures has a row for each row of its table; blanks are null. */
export interface Reference {
  readonly OUTLETPLACES: readonly (readonly Answer[])[];
  readonly OUTLETLEVELS: readonly (readonly Answer[])[];
  readonly OUTLETNOISE: readonly (readonly Answer[])[];
  readonly OUTLETVOLTS: readonly (readonly Answer[])[];
  readonly OUTLETCHECKS: readonly (readonly Answer[])[];
  readonly DEVICELEVELS: readonly (readonly Answer[])[];
  readonly DEVICECHECKS: readonly (readonly Answer[])[];
  readonly HEADVOLTS: readonly (readonly Answer[])[];
  readonly HEADCHECKS: readonly (readonly Answer[])[];
  readonly DISHCHECKS: readonly (readonly Answer[])[];
  readonly FEEDERCHECKS: readonly (readonly Answer[])[];
  readonly NEEDED: readonly Needed[];
}

function rowsFor(
  rows: readonly Row[],
  key: string,
  width: number,
  of: (row: Row, index: number) => readonly Answer[] | undefined,
): (readonly Answer[])[] {
  const blank = Array<Answer>(width).fill(null);
  return rows.map((row, index) => (isFilled(row, key) ? (of(row, index) ?? blank) : blank));
}

/** What comes out of its first output, at the end of its own cable. */
function levelsOfLead(tables: Tables, { kind, row }: HeadUnit): Answer[] {
  const settings = settingsOf(tables);
  const cable = cableNamed(tables, String(isFilled(row, "cable") ? row.cable : settings.cable));
  const output = straight(tables, numberIn(kind, "out_low"), numberIn(kind, "out_high"));
  return corners(tables).map(({ mhz, celsius }) => {
    const lost = isFilled(row, "length")
      ? cable!.loss(metresOf(tables, numberIn(row, "length")), mhz, celsius)
      : 0;
    return output(mhz) - lost;
  });
}

/** The two outlets of one of its outputs that are least apart. */
function leastApart({ tables, tree }: Worked, head: HeadUnit): Answer[] {
  const least = leastIsolation(tables, { ...tree, outlets: tree.outlets.filter((one) => one.head === head) });
  return least ? [least.decibels, least.outlets.map((name) => name.trim()).join(", ")] : [null, null];
}
const GOOD = new Set<Answer>(["ok", "not judged", null]);
/** A row with whether it has a sentence: where a word of it is none of the good ones, or something else is wrong. */
const withSentence = (row: readonly Answer[], words = row, isElse = false): Answer[] => [
  ...row,
  isElse || words.some((word) => !GOOD.has(word)) ? "said" : null,
];

/** Every column of every function. */
export function referenceOf(tables: Tables, limits: Limits = OURS): Reference {
  const worked = workedOut(tables, limits);
  const { tree, bands } = worked;
  const outletAt = (row: Row): Thing | undefined => tree.outlets.find((thing) => thing.row === row);
  const deviceAt = (row: Row): Thing | undefined => tree.devices.find((thing) => thing.row === row);
  const headAt = (row: Row): HeadUnit | undefined => tree.heads.find((head) => head.row === row);
  const orBlank = (value: number | undefined): Answer => value ?? null;
  const joined = (values: readonly Value[]): Answer => (values.length === 0 ? null : values.join(", "));

  const onOutlets = (width: number, of: (outlet: Thing) => Answer[]): (readonly Answer[])[] =>
    rowsFor(tables.outlets, "outlet", width, (row) => {
      const outlet = outletAt(row);
      return outlet && of(outlet);
    });
  const feeds = feedVolts(worked);
  return {
    OUTLETPLACES: onOutlets(6, (outlet) => {
      const own = bands.get(outlet)?.bands ?? [];
      return [
        outlet.head.name,
        outlet.output,
        outlet.port,
        joined(own.map(({ band }) => band)) ?? "none",
        joined(own.flatMap(({ mhz }) => mhz ?? [])),
        tunersAt(tables, outlet.row),
      ];
    }),
    OUTLETLEVELS: onOutlets(6, (outlet) => {
      const { corners: four, ownHot, longest } = levelsAt(worked, outlet);
      return [...four, ownHot.length > 0 ? Math.min(...ownHot) : null, longest];
    }),
    OUTLETNOISE: onOutlets(4, (outlet) => {
      const over = ({ clear, inRain, needed }: SlotNoise): number =>
        Math.min(clear, inRain ?? Infinity) - needed;
      const worst = leastOf(noiseAt(worked, outlet), over);
      return worst
        ? [worst.slot, worst.clear, orBlank(worst.inRain), worst.needed]
        : [null, null, null, null];
    }),
    OUTLETVOLTS: onOutlets(5, (outlet) => {
      const { head, commanding, standing, gives, fromSupplies } = outletVolts(worked, outlet);
      return [orBlank(head), orBlank(commanding), standing, orBlank(gives), fromSupplies];
    }),
    OUTLETCHECKS: rowsFor(tables.outlets, "outlet", 10, (row) => {
      const outlet = outletAt(row);
      if (!outlet) return withSentence(["bad", ...Array<null>(8).fill(null)]);
      const said = outletChecks(worked, outlet);
      const words = [
        "ok",
        said.level,
        said.slope,
        said.noise,
        said.commands?.word ?? null,
        said.bands,
        said.connectors,
        said.applied,
        said.openPort,
      ];
      // No column has a word for a receiver that gives more than it can.
      const isOdd = fedBackwards(worked, outlet.head).length > 0;
      const most = isOdd ? Infinity : (receiverOf(tables, row)?.amps ?? Infinity);
      return withSentence(words, words, isHigher(outletVolts(worked, outlet).gives ?? 0, most, SLIGHT));
    }),
    DEVICELEVELS: rowsFor(tables.devices, "device", 10, (row) => {
      const device = deviceAt(row);
      return device && deviceLevels(worked, device);
    }),
    DEVICECHECKS: rowsFor(tables.devices, "device", 8, (row) => {
      const device = deviceAt(row);
      const words = device ? deviceChecks(worked, device) : [null, null, "bad", ...Array<null>(4).fill(null)];
      return withSentence(words, words.slice(2));
    }),
    HEADVOLTS: rowsFor(tables.head_units, "head", 15, (row) => {
      const head = headAt(row);
      if (!head) return undefined;
      const figures = headFigures(worked, head);
      return [
        figures.off,
        orBlank(figures.leastAlone),
        figures.leastIs ?? null,
        figures.allOn,
        orBlank(figures.leastInUse),
        orBlank(figures.ampsAtLeast),
        orBlank(figures.supplyAmps),
        outletsOf(worked, head).reduce((sum, outlet) => sum + tunersAt(tables, outlet.row), 0),
        bandsOf(tables, head).length * head.outputs.length,
        ...levelsOfLead(tables, head),
        ...leastApart(worked, head),
      ];
    }),
    HEADCHECKS: rowsFor(tables.head_units, "head", 7, (row) => {
      const head = headAt(row);
      const words = head ? headChecks(worked, head) : ["bad", ...Array<null>(5).fill(null)];
      // Of a feed with too little the sentence stands at its dish.
      return withSentence(
        words,
        words.filter((_, place) => place !== 4),
      );
    }),
    DISHCHECKS: isNoDish(tables)
      ? [Array<null>(6).fill(null)]
      : rowsFor(tables.dishes, "dish", 6, (row) => {
          const dish = dishesOf(tables).find((one) => one.row === row)!;
          const clear = [...worked.slots.values()].flatMap((slots) =>
            slots.flatMap(({ sky, dish: from }) =>
              sky && from === dish.name ? [-decibelsOf(sky.clear)] : [],
            ),
          );
          const mine = feeds.filter((feed) => feed.dish === dish.name);
          const volts = mine.map((feed) => feed.volts);
          const words = [
            dish.slots.join(" "),
            dish.slots.length,
            clear.length > 0 ? Math.min(...clear) : null,
            volts.length > 0 ? Math.min(...volts) : null,
            dish.isBad ? "bad" : "ok",
          ];
          return withSentence(
            words,
            words.slice(4),
            mine.some((feed) => isLower(feed.volts, feed.least, SLIGHT)),
          );
        }),
    FEEDERCHECKS: rowsFor(tables.feeders, "to", 3, (row) => {
      const feeder = feedersOf(tables).find((one) => one.row === row);
      const words = feeder ? [feeder.cables, isMiscounted(tables, feeder) ? "bad" : "ok"] : [0, "bad"];
      return withSentence(words, words.slice(1));
    }),
    NEEDED: neededOf(tables, tree),
  };
}

const isNoDish = (tables: Tables): boolean => tables.dishes.every((row) => !isFilled(row, "dish"));
