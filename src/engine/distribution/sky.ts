/**
 * The carrier of each slot from its dish to the outputs of each head unit:
 * carrier to noise in a clear sky and at the availability wanted, and the
 * levels at the inputs of switches.
 *
 * The dish and its feed, or the head unit that is the feed, hear the sky at
 * 40 K and their own noise; rain takes its decibels from the carrier and adds
 * 275·(1 − 10^(−A/10)) K. Each feeder and the input of the switch itself add
 * noise, worked at the feed's highest frequency, when it is hot; a switch hands
 * on to the next as a passive part.
 *
 * Source: carrierToNoise.ts, rainFade.ts, signalAndNoise.ts; the rain's
 *   temperature of 275 K as ITU-R P.618 has it (from memory); 40 K of clear sky and
 *   efficiency 0.65: common practice, no source.
 * Accuracy: that of the EIRP; uplink noise and interference are left out.
 */
import { faults, isFault, type Fault } from "../faults";
import type {
  Celsius,
  DecibelMicrovolts,
  Decibels,
  Degrees,
  Kelvin,
  Kilometres,
  Megahertz,
} from "../quantity";
import { cableLoss } from "../signal/cableLoss";
import { carrierToNoise as linkCarrierToNoise, type Downlink } from "../signal/carrierToNoise";
import { convertLevel } from "../signal/convertLevel";
import { dishGain } from "../signal/dishGain";
import { freeSpaceLoss } from "../signal/freeSpaceLoss";
import { nameKey } from "../signal/nameKey";
import { noiseTemperature } from "../signal/noiseTemperature";
import { rainFade } from "../signal/rainFade";
import { lookAngles } from "../sightline/lookAngles";
import type { DistributionJob, Site, SlotRow } from "./job";
import { between, condition } from "./losses";
import { afterLoss, carrierToNoise, withNoise, type Signal } from "./signalAndNoise";
import type { Inlet, Trunks } from "./trunks";

/** In the middle of the band that slots are received in. */
export const SKY_MHZ: Megahertz = 11_700;
const EFFICIENCY = 0.65;
const CLEAR_SKY_K: Kelvin = 40;
const RAIN_K: Kelvin = 275;
/** Of circular polarisation, and of the middle between the two linear ones. */
const RAIN_TILT: Degrees = 45;
const KELVIN = 273.15;

export interface SlotSeen {
  readonly head: number;
  readonly slot: SlotRow;
  readonly dish: number;
  readonly elevation: Degrees;
  readonly range: Kilometres;
  /** At the availability wanted; null where only a clear sky is judged. */
  readonly rain: Decibels | Fault | null;
  /** At the feed; null where EIRP or noise figure are not given. */
  readonly atFeed: InWeather | null;
  /** At the head unit's outputs. */
  readonly atOutput: InWeather | null;
  /** Of a switch; null without EIRP. */
  readonly input: SwitchInput | null;
}

export interface SwitchInput {
  /** At the feed. */
  readonly level: DecibelMicrovolts;
  /** Over both ends of the feed's range, cold and hot. */
  readonly least: DecibelMicrovolts;
  readonly most: DecibelMicrovolts;
}

/** Carrier to noise. */
export interface InWeather {
  readonly clear: Decibels;
  /** At the availability wanted; null where only a clear sky is judged. */
  readonly rain: Decibels | null;
}

/** What a feeder, or a switch on the way to the next, loses. */
type StepLoss = (frequency: Megahertz, temperature: Celsius) => Decibels | Fault;

/** What the site has of a slot, whatever the dish. */
interface Sight {
  readonly slot: SlotRow;
  readonly elevation: Degrees;
  readonly range: Kilometres;
  readonly rain: Decibels | Fault | null;
}

/** A slot that a head unit can't see, or of which the site says too little. */
export interface SlotUnseen {
  readonly dish: number;
  readonly fault: Fault;
}

/** Whether carrier to noise is asked of a slot. */
export const isAsked = ({ eirp, symbolRate }: SlotRow): boolean => eirp !== null && symbolRate !== null;

/** @returns by head unit what it sees of each of its slots; one that is not asked at a site without a place is left out */
export function slotsSeen(job: DistributionJob, trunks: Trunks): (SlotSeen | SlotUnseen)[][] {
  const sights = new Map(job.slots.map((slot) => [nameKey(slot.name), sightOf(job.site, slot)]));
  return job.headUnits.map((_, head) =>
    trunks.inlets[head]!.flatMap((inlet): SlotSeen | SlotUnseen | never[] => {
      const { dish } = inlet;
      const sight = sights.get(nameKey(inlet.slot));
      if (sight === null) return [];
      if (sight === undefined) {
        const known = job.slots.map(({ name }) => name);
        return { dish, fault: faults.slotUnknown(job.dishes[dish]!.name, inlet.slot, known) };
      }
      const found = isFault(sight) ? sight : seen(job, trunks, head, inlet, sight);
      return isFault(found) ? { dish, fault: found } : found;
    }),
  );
}

export const isUnseen = (one: SlotSeen | SlotUnseen): one is SlotUnseen => "fault" in one;

function sightOf(site: Site, slot: SlotRow): Sight | Fault | null {
  const { latitude, longitude } = site;
  for (const place of [latitude, longitude]) if (isFault(place)) return isAsked(slot) ? place : null;
  const look = lookAngles(latitude as Degrees, longitude as Degrees, slot.east, site.height);
  if (isFault(look)) return look;
  const { elevation, range } = look;
  if (elevation < 0) return faults.belowHorizon(slot.east, elevation);
  const rain =
    !site.rain || isFault(site.rain)
      ? site.rain
      : rainFade({
          latitude: latitude as Degrees,
          elevation,
          frequency: SKY_MHZ / 1000,
          rain: site.rain.rate,
          percent: 100 - site.rain.availability,
          rainHeight: site.rain.height,
          siteHeight: site.height / 1000,
          tilt: RAIN_TILT,
        });
  return { slot, elevation, range, rain };
}

function seen(
  job: DistributionJob,
  trunks: Trunks,
  head: number,
  inlet: Inlet,
  { slot, elevation, range, rain }: Sight,
): SlotSeen | Fault {
  const { site } = job;
  const found = { head, slot, dish: inlet.dish, elevation, range, rain };
  const dish = job.dishes[inlet.dish]!;
  const { kind } = job.headUnits[head]!;
  const noiseFigure = kind.sits === "on the dish" ? kind.noiseFigure : (dish.feed?.noiseFigure ?? null);
  const none = { ...found, atFeed: null, atOutput: null, input: null };
  const { eirp, symbolRate } = slot;
  if (eirp === null || dish.size === null || noiseFigure === null) return none;
  const losses = site.dishLoss + dish.offFocus;
  const gain = dishGain(dish.size, SKY_MHZ, EFFICIENCY);
  if (isFault(gain)) return gain;
  const input = inputOf(job, trunks, inlet, eirp - freeSpaceLoss(range, SKY_MHZ) - losses + gain);
  if (isFault(input)) return input;
  if (symbolRate === null) return { ...none, input };
  const link: Downlink = {
    eirp,
    range,
    frequency: SKY_MHZ,
    diameter: dish.size,
    noise: CLEAR_SKY_K + noiseTemperature(noiseFigure),
    bandwidth: symbolRate,
    losses,
    efficiency: EFFICIENCY,
  };
  const clear = linkCarrierToNoise(link);
  if (isFault(clear)) return clear;
  const fade = typeof rain === "number" ? rain : null;
  const rainy = (decibels: Decibels): Decibels =>
    linkCarrierToNoise({
      ...link,
      losses: losses + decibels,
      noise: link.noise + RAIN_K * (1 - 10 ** (-decibels / 10)),
    }) as Decibels;
  const atFeed: InWeather = { clear, rain: fade === null ? null : rainy(fade) };
  if (!input) return { ...found, atFeed, atOutput: atFeed, input };
  // A switch whose noise is not stated: what its outputs have is not known.
  if (kind.noiseFigure === null) return { ...found, atFeed, atOutput: null, input };
  const added = noiseTemperature(kind.noiseFigure);
  const steps = stepsTo(job, trunks, inlet);
  const beyond = (weather: Decibels, lower: Decibels): Decibels => {
    let signal: Signal = { level: input.level - lower, noise: 0 };
    for (const loss of steps)
      signal = afterLoss(signal, loss(dish.feed!.highIf, site.hot) as Decibels, site.hot + KELVIN);
    return together(weather, carrierToNoise(withNoise(signal, added), symbolRate * 1e6));
  };
  return {
    ...found,
    atFeed,
    input,
    atOutput: {
      clear: beyond(atFeed.clear, 0),
      rain: atFeed.rain === null ? null : beyond(atFeed.rain, fade!),
    },
  };
}

/**
 * @param carrier at the dish, dBW
 * @returns the levels at a switch's input over both ends of the feed's range, cold and hot; null where no feeder comes
 */
function inputOf(
  job: DistributionJob,
  trunks: Trunks,
  inlet: Inlet,
  carrier: Decibels,
): SwitchInput | Fault | null {
  const { feed } = job.dishes[inlet.dish]!;
  if (inlet.feeder < 0 || !feed) return null;
  const level = (convertLevel(carrier + 30, "dBm", "dBµV") as number) + feed.gain;
  const steps = stepsTo(job, trunks, inlet);
  const corners = [feed.lowIf, feed.highIf].flatMap((frequency) =>
    [job.site.cold, job.site.hot].map((temperature) =>
      steps.reduce<Decibels | Fault>((sum, loss) => {
        const own = loss(frequency, temperature);
        return isFault(sum) ? sum : isFault(own) ? own : sum + own;
      }, 0),
    ),
  );
  const broken = corners.find(isFault);
  if (broken) return broken;
  const losses = corners as Decibels[];
  return { level, least: level - Math.max(...losses), most: level - Math.min(...losses) };
}

/** @returns the ratio of one carrier to the noise of both: 1/(C/N) = Σ 1/(C/N)ᵢ */
export const together = (one: Decibels, other: Decibels): Decibels =>
  -10 * Math.log10(10 ** (-one / 10) + 10 ** (-other / 10));

/** Feeders and switches from the dish to a head unit's input. */
function stepsTo(job: DistributionJob, trunks: Trunks, { feeder, above, slot, dish }: Inlet): StepLoss[] {
  const { run } = job.feeders[feeder]!;
  const along: StepLoss = (frequency, temperature) =>
    isFault(run.cable) ? run.cable : cableLoss(run.cable, run.length, frequency, temperature);
  if (above < 0) return [along];
  const before = trunks.inlets[above]!.find((inlet) => inlet.slot === slot && inlet.dish === dish)!;
  const { onward } = job.headUnits[above]!.kind;
  const passed: StepLoss = (frequency, temperature) =>
    between(onward!, condition(job.site, frequency, temperature));
  return [...stepsTo(job, trunks, before), passed, along];
}
