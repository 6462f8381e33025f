/** Every sheet of the multi-room estimate a second time; see each file for what its figures are worked out from. */
import { branchesSheet, partsSheet } from "./branches";
import { bondingSheet } from "./bonding";
import { commissioningSheet } from "./commissioning";
import { headUnitsSheet } from "./headUnits";
import { labourSheet, materialsSheet } from "./materials";
import type { Cells, Job } from "./job";
import { priceSheet, quoteSheet, termsSheet } from "./price";
import { roomsSheet } from "./rooms";
import { alignmentSheet, sightlineSheet, siteSheet } from "./sightline";

export const TOLERANCES: Readonly<Record<string, number>> = {
  // magvar rounds to 0.01 deg.
  ...Object.fromEntries(
    ["sight_compass", "sight_declination", "align_compass", "align_declination", "align_aim_compass"].map((name) => [name, 0.011]),
  ),
};

export function reference(job: Job): Cells {
  const cells: Cells = {
    ...siteSheet(job),
    ...sightlineSheet(job),
    ...partsSheet(job),
    ...branchesSheet(job),
    ...roomsSheet(job),
    ...headUnitsSheet(job),
    ...bondingSheet(job),
    ...materialsSheet(job),
    ...labourSheet(job),
    ...termsSheet(job),
    ...alignmentSheet(job),
    ...commissioningSheet(job),
  };
  return { ...cells, ...priceSheet(job, cells), ...quoteSheet(job, cells) };
}
