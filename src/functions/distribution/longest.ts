/** Levels once more with every length at its longest. */
import { outletLevel } from "../../engine/distribution/levels";
import { condition, lossesOf } from "../../engine/distribution/losses";
import type { Run } from "../../engine/distribution/parts";
import type { Tree } from "../../engine/distribution/tree";
import type { DecibelMicrovolts } from "../../engine/quantity";
import { perSolved } from "./perSolved";
import type { Solved } from "./solved";

/** By row of the outlets the least level when it is hottest, at both ends of the range and at its own bands. */
export const weakestAtLongest = perSolved(work);

function work({ found: { tree, bands }, job, settings, longest }: Solved): DecibelMicrovolts[] {
  const { site } = job;
  const longer = (run: Run | null, length?: number | null): Run | null =>
    run && { ...run, length: length ?? run.length * (1 + settings.tolerance) };
  const stretched: Tree = {
    ...tree,
    job: {
      ...job,
      headUnits: job.headUnits.map((row) => ({ ...row, run: longer(row.run) })),
      devices: job.devices.map((row) => ({ ...row, run: longer(row.run) })),
      outlets: job.outlets.map((row, outlet) => ({ ...row, run: longer(row.run, longest[outlet]) })),
    },
  };
  const losses = lossesOf(stretched);
  return job.outlets.map((_, outlet) => {
    const centres = bands.bands[outlet]!.flatMap(({ centre }) => centre ?? []);
    const frequencies = [site.low, site.high, ...centres];
    return Math.min(
      ...frequencies.map((frequency) =>
        outletLevel(stretched, losses, outlet, condition(site, frequency, site.hot)),
      ),
    );
  });
}
