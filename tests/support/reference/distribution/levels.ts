/** Levels in dBµV and carrier to noise along the steps from a head unit's output. A head unit levels its output. */
import { numberIn, settingsOf, straight, type Tables } from "./tables";
import { decibelsOf } from "./sky";
import { ofAmplifier, ofLoss, type SlotAt } from "./dishes";
import { stepsToReceiver, type Step, type Thing } from "./tree";

export interface At {
  readonly mhz: number;
  readonly celsius: number;
}

/** Low cold, low hot, high cold, high hot. */
export function corners(tables: Tables): At[] {
  const settings = settingsOf(tables);
  const temperatures = [numberIn(settings, "cold"), numberIn(settings, "hot")];
  return [numberIn(settings, "low"), numberIn(settings, "high")].flatMap((mhz) =>
    temperatures.map((celsius) => ({ mhz, celsius })),
  );
}
export const hot = (tables: Tables, mhz: number): At => ({
  mhz,
  celsius: numberIn(settingsOf(tables), "hot"),
});

const outOfHead = (tables: Tables, thing: Thing, mhz: number): number =>
  straight(tables, numberIn(thing.head.kind, "out_low"), numberIn(thing.head.kind, "out_high"))(mhz);

/** @returns dBµV behind those steps */
export const levelBehind = (
  tables: Tables,
  thing: Thing,
  steps: readonly Step[],
  { mhz, celsius }: At,
  isLongest = false,
): number =>
  steps.reduce((level, { loss }) => level - loss(mhz, celsius, isLongest), outOfHead(tables, thing, mhz));

/** @returns dB at an outlet's receiver for one of its head unit's slots, clear or in rain, at the worst frequency */
export function carrierToNoise(
  tables: Tables,
  outlet: Thing,
  { sky }: SlotAt,
  atOutput: number,
  frequencies: readonly number[],
  receiverFigure: number,
): number {
  const rate = sky!.symbolRate;
  const { celsius } = hot(tables, 0);
  const ratios = frequencies.map((mhz) => {
    let level = outOfHead(tables, outlet, mhz);
    let ratio = atOutput;
    for (const { loss, noiseFigure } of stepsToReceiver(outlet)) {
      const lost = loss(mhz, celsius, false);
      if (noiseFigure !== undefined) ratio += ofAmplifier(noiseFigure, level, rate);
      level -= lost;
      if (noiseFigure === undefined) ratio += ofLoss(lost, level, celsius, rate);
    }
    return ratio + ofAmplifier(receiverFigure, level, rate);
  });
  return -decibelsOf(Math.max(...ratios));
}
