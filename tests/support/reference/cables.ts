/**
 * Loss and loop resistance of a job's cables.
 *
 * (k1·√f + k2·f + k0) per 100 m at 20 °C, 0.198 % more for each °C (help page of CABLELOSS; the built-in types from
 * tests/fixtures/published/coax-attenuation.json, per 100 ft). Loop: ohms per 100 m at 20 °C, 0.393 % more for each °C.
 * The maker's figures, where they are filled in, go before those of the type.
 */
import { cableLoss, loopOhms } from "../cablePhysics";
import { field, figure, isFilled, named, rowsOf, word, type Job, type Row, type Value } from "./job";

const M_PER_FT = 0.3048;
const KNOWN_TYPE = /^series (59|6|7|11)(, copper|, copper-clad steel)?$/;

export const metres = (job: Job, length: number): number =>
  word(job, "site_unit") === "ft" ? length * M_PER_FT : length;

/** Low end cold, low end hot, high end cold, high end hot. */
export const cornerOf = (job: Job, corner: number): { mhz: number; celsius: number } => ({
  mhz: field(job, corner < 2 ? "site_low" : "site_high"),
  celsius: field(job, corner % 2 === 0 ? "site_cold" : "site_hot"),
});

const typeOf = (cable: Row): string | undefined =>
  KNOWN_TYPE.test(String(cable.like ?? "")) ? String(cable.like) : undefined;

export const cableOf = (job: Job, name: Value | undefined): Row | undefined =>
  named(rowsOf(job, "cables"), "name", name);

export function lossOf(job: Job, name: Value | undefined, length: number, corner: number): number {
  const cable = cableOf(job, name);
  if (!cable) return NaN;
  const { mhz, celsius } = cornerOf(job, corner);
  if (isFilled(cable, "k1"))
    return (
      ((figure(cable, "k1") * Math.sqrt(mhz) + figure(cable, "k2") * mhz + figure(cable, "k0")) *
        metres(job, length) *
        (1 + 0.00198 * (celsius - 20))) /
      100
    );
  const like = typeOf(cable);
  return like ? cableLoss(like, metres(job, length), mhz, celsius) : NaN;
}

/** At the hottest cable. */
export function ohmsOf(job: Job, name: Value | undefined, length: number): number {
  const cable = cableOf(job, name);
  const hot = field(job, "site_hot");
  if (!cable) return NaN;
  if (isFilled(cable, "loop"))
    return (figure(cable, "loop") * metres(job, length) * (1 + 0.00393 * (hot - 20))) / 100;
  const like = typeOf(cable);
  return like ? loopOhms(like, metres(job, length), hot) : NaN;
}

/** Price of a metre or foot, whole reels apart. */
export const priceEach = (job: Job, name: Value | undefined): number => {
  const cable = cableOf(job, name);
  return figure(cable, "price") / figure(cable, "reel");
};

/** Deviation of three points is a sixth of their span (Malcolm and others, 1959): its square, in money. */
export const varianceOf = (least: number, most: number, each: number): number =>
  (((most - least) / 6) * each) ** 2;
