/** Readings of a crew, for the jobs that are drawn from a seed. */
import { withGaps, type Drawn, type GeneratedJob } from "./drawn";
import { levelsOf } from "./reference/rooms";

/** Readings at some outlets: near the prediction, off it, none at all, and blank ones. */
export function measure(draw: Drawn, job: GeneratedJob): void {
  const near = (value: number, most: number): number =>
    Number((value + draw.between(-most, most, 1)).toFixed(1));
  for (const row of job.blocks.rooms!) {
    if (row.outlet === undefined || draw.chance(0.4)) continue;
    const levels = levelsOf(job, row);
    const spread = draw.pick([1, 1, 4, 25]);
    const reading = (level: number): number | string =>
      draw.chance(0.07) ? "no signal" : Math.max(0, near(level, spread));
    if (draw.chance(0.8)) row.built_low = reading(levels[0]!);
    if (draw.chance(0.8)) row.built_high = reading(levels[2]!);
    if (draw.chance(0.5)) row.built_volts = Math.max(0, near(draw.pick([0, 13]), draw.pick([0.5, 3])));
  }
  for (const row of job.blocks.heads!)
    if (row.id !== undefined && draw.chance(0.2)) row.built_volts = draw.between(9, 14, 1);
}

/** Readings a step to either side of a dish. */
export function peak(draw: Drawn, job: GeneratedJob): void {
  job.blocks.peaks = withGaps(
    draw,
    Array.from({ length: draw.whole(1, 4) }, (_, nth) => {
      const here = draw.between(55, 70, 1);
      return {
        what: `dish ${nth}`,
        axis: draw.pick(["azimuth", "elevation", "tilt"]),
        kind: draw.chance(0.9) ? "dB" : "percent",
        step: draw.pick([0.5, 1, 0.7]),
        here,
        plus: Number((here - draw.between(-1, 5, 1)).toFixed(1)),
        minus: Number((here - draw.between(-1, 5, 1)).toFixed(1)),
      };
    }),
  );
}
