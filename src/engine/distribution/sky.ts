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
  /** Of a switch, over both ends of the feed's range, cold and hot; null without EIRP. */
  readonly input: { readonly least: DecibelMicrovolts; readonly most: DecibelMicrovolts } | null;
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

/** @returns by head unit what it sees of each of its slots; a fault where a slot is below the horizon or has no row */
export function slotsSeen(job: DistributionJob, trunks: Trunks): (SlotSeen | Fault)[][] {
  const sights = new Map(job.slots.map((slot) => [nameKey(slot.name), sightOf(job.site, slot)]));
  return job.headUnits.map((_, head) =>
    trunks.inlets[head]!.map((inlet) => {
      const sight = sights.get(nameKey(inlet.slot));
      if (sight) return isFault(sight) ? sight : seen(job, trunks, head, inlet, sight);
      const known = job.slots.map(({ name }) => name);
      return faults.slotUnknown(job.dishes[inlet.dish]!.name, inlet.slot, known);
    }),
  );
}

function sightOf(site: Site, slot: SlotRow): Sight | Fault {
  const look = lookAngles(site.latitude, site.longitude, slot.east, site.height);
  if (isFault(look)) return look;
  const { elevation, range } = look;
  if (elevation < 0) return faults.belowHorizon(slot.east, elevation);
  const rain =
    site.rain &&
    rainFade({
      latitude: site.latitude,
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
  if (slot.eirp === null || noiseFigure === null) return none;
  const losses = site.dishLoss + dish.offFocus;
  const link: Downlink = {
    eirp: slot.eirp,
    range,
    frequency: SKY_MHZ,
    diameter: dish.size,
    noise: CLEAR_SKY_K + noiseTemperature(noiseFigure),
    bandwidth: slot.symbolRate,
    losses,
    efficiency: EFFICIENCY,
  };
  const clear = linkCarrierToNoise(link);
  const gain = dishGain(dish.size, SKY_MHZ, EFFICIENCY);
  if (isFault(clear)) return clear;
  if (isFault(gain)) return gain;
  const fade = typeof rain === "number" ? rain : null;
  const rainy = (decibels: Decibels): Decibels =>
    linkCarrierToNoise({
      ...link,
      losses: losses + decibels,
      noise: link.noise + RAIN_K * (1 - 10 ** (-decibels / 10)),
    }) as Decibels;
  const atFeed: InWeather = { clear, rain: fade === null ? null : rainy(fade) };
  if (inlet.feeder < 0 || !dish.feed) return { ...found, atFeed, atOutput: atFeed, input: null };

  const carrier = slot.eirp - freeSpaceLoss(range, SKY_MHZ) - losses + gain + 30;
  const level = (convertLevel(carrier, "dBm", "dBµV") as number) + dish.feed.gain;
  const steps = stepsTo(job, trunks, inlet);
  const corners = [dish.feed.lowIf, dish.feed.highIf].flatMap((frequency) =>
    [site.cold, site.hot].map((temperature) =>
      steps.reduce<Decibels | Fault>((sum, loss) => {
        const own = loss(frequency, temperature);
        return isFault(sum) ? sum : isFault(own) ? own : sum + own;
      }, 0),
    ),
  );
  const broken = corners.find(isFault);
  if (broken) return broken;
  const fullLosses = corners as Decibels[];
  const input = { least: level - Math.max(...fullLosses), most: level - Math.min(...fullLosses) };

  const beyond = (weather: Decibels, lower: Decibels): Decibels => {
    const band = slot.symbolRate * 1e6;
    let signal: Signal = { level: level - lower, noise: 0 };
    for (const loss of steps)
      signal = afterLoss(signal, loss(dish.feed!.highIf, site.hot) as Decibels, site.hot + KELVIN);
    if (kind.noiseFigure !== null) signal = withNoise(signal, noiseTemperature(kind.noiseFigure));
    return together(weather, signal.noise > 0 ? carrierToNoise(signal, band) : Infinity);
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
