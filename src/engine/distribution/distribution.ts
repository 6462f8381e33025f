/**
 * A distribution as it is built, from dish to receiver: what travels on it and
 * has to be right together, worked out in one go.
 */
import type { Celsius, DecibelMicrovolts, Decibels, Megahertz } from "../quantity";
import { bandPlan, type BandPlan } from "./bandPlan";
import { commandVerdicts, type CommandVerdict } from "./commands";
import { countsOf, type Counts } from "./counts";
import { leastIsolation, type Isolation } from "./isolation";
import type { DistributionJob, Site } from "./job";
import {
  amplifierOutputs,
  outletLevel,
  outletLevels,
  type AmplifierOutput,
  type OutletLevels,
} from "./levels";
import { condition, lossesOf, type Condition, type Losses } from "./losses";
import { addedNoise, outletCarrierToNoise, type OutletCarrierToNoise } from "./outletNoise";
import { isUnseen, slotsSeen, type SlotSeen, type SlotUnseen } from "./sky";
import type { NetworkOptions } from "./supplyNetwork";
import { supplyNodes, type SupplyNodes } from "./supplyNodes";
import { PRODUCT_OPTIONS, supplyStates, type SupplyStates } from "./supplyStates";
import { buildTree, type Tree } from "./tree";
import { trunksOf, type Trunks } from "./trunks";

export interface SlotCarrierToNoise extends OutletCarrierToNoise {
  readonly slot: string;
}

export interface Distribution {
  readonly tree: Tree;
  readonly trunks: Trunks;
  readonly losses: Losses;
  readonly levels: OutletLevels;
  readonly amplifiers: readonly AmplifierOutput[];
  readonly isolation: readonly Isolation[];
  /** By head unit, and slot. */
  readonly seen: readonly (readonly (SlotSeen | SlotUnseen)[])[];
  readonly bands: BandPlan;
  /** By row of the outlets: at each of its user bands, when it is hot; not a number for a band without a plan. */
  readonly bandLevels: readonly (readonly DecibelMicrovolts[])[];
  /** The same when it is cold. */
  readonly bandLevelsCold: readonly (readonly DecibelMicrovolts[])[];
  /** By row of the outlets, and slot. */
  readonly carrierToNoise: readonly (readonly SlotCarrierToNoise[])[];
  readonly nodes: SupplyNodes;
  readonly supply: SupplyStates;
  readonly commands: readonly (CommandVerdict | null)[];
  readonly counts: Counts;
}

/** Of a receiver that a spare outlet may get (from memory). */
const USUAL_RECEIVER_NOISE: Decibels = 10;

/** @returns the condition of a frequency at a temperature, made once */
function conditionsAt(site: Site, temperature: Celsius): (frequency: Megahertz) => Condition {
  const made = new Map<Megahertz, Condition>();
  return (frequency) => {
    let one = made.get(frequency);
    if (!one) made.set(frequency, (one = condition(site, frequency, temperature)));
    return one;
  };
}

/**
 * @param job with all its parts looked up
 * @param options of the supply's solve, where an oracle is to be matched
 */
export function distributionOf(
  job: DistributionJob,
  options: NetworkOptions = PRODUCT_OPTIONS,
): Distribution {
  const trunks = trunksOf(job);
  const tree = buildTree(job);
  const losses = lossesOf(tree);
  const bands = bandPlan(tree, Math.max(0, ...job.slots.map(({ symbolRate }) => symbolRate ?? 0)));
  const seen = slotsSeen(job, trunks);
  const nodes = supplyNodes(tree, trunks);
  const supply = supplyStates(tree, losses, nodes, options);

  const at = conditionsAt(job.site, job.site.hot);
  const inTheCold = conditionsAt(job.site, job.site.cold);
  const ends = [at(job.site.low), at(job.site.high)];
  const own = bands.bands.map((some) => some.map(({ centre }) => (centre === null ? null : at(centre))));
  const atBands = (outlet: number, where: (frequency: number) => Condition): DecibelMicrovolts[] =>
    bands.bands[outlet]!.map(({ centre }) =>
      centre === null ? NaN : outletLevel(tree, losses, outlet, where(centre)),
    );
  return {
    tree,
    trunks,
    losses,
    levels: outletLevels(tree, losses),
    amplifiers: amplifierOutputs(tree, losses),
    isolation: leastIsolation(tree, losses),
    seen,
    bands,
    bandLevels: job.outlets.map((_, outlet) => atBands(outlet, at)),
    bandLevelsCold: job.outlets.map((_, outlet) => atBands(outlet, inTheCold)),
    carrierToNoise: job.outlets.map(({ receiver }, outlet) => {
      const point = tree.pointOfOutlet[outlet]!;
      if (point < 0 || losses.faults.has(point)) return [];
      const slots = seen[tree.row[tree.output[point]!]!]!;
      if (slots.every((one) => isUnseen(one) || !one.atOutput)) return [];
      // A spare outlet, or one of a kind without a band plan, is judged at the ends of the range.
      const known = own[outlet]!.filter((where) => where !== null);
      const asked = known.length > 0 ? known : ends;
      const noise = receiver?.noiseFigure ?? USUAL_RECEIVER_NOISE;
      const added = asked.map((where) => addedNoise(tree, losses, outlet, where, noise));
      return slots.flatMap((one) => {
        if (isUnseen(one)) return [];
        const found = outletCarrierToNoise(one, added);
        return found ? [{ slot: one.slot.name, ...found }] : [];
      });
    }),
    nodes,
    supply,
    commands: commandVerdicts(tree, supply),
    counts: countsOf(tree, trunks),
  };
}
