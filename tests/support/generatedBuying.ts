/** How a drawn job buys: packs, spares, suppliers, reels in stock, and runs cut at their longest. */
import type { Drawn, GeneratedJob, Row } from "./drawn";

const BY_THE_PIECE = ["passives", "units", "supplies", "plates", "feeds", "resistors"] as const;
const SHARES = [
  "site_spare_devices",
  "site_spare_heads",
  "site_spare_plates",
  "site_spare_fittings",
] as const;
const SUPPLIERS = ["Northern Wholesale", "south & sons", "NORTHERN WHOLESALE", "Östermann", "7"];

/** Three jobs in four say more than the least. */
export function buyingInto(job: GeneratedJob, draw: Drawn): void {
  if (draw.chance(0.25)) return;
  const { fields, blocks } = job;
  const rows = (list: string): Row[] => (blocks[list] ?? []).filter((row) => row.name !== undefined);
  for (const list of BY_THE_PIECE)
    for (const row of rows(list)) if (draw.chance(0.3)) row.pack = draw.pick([1, 2, 5, 10, 100]);
  for (const list of [...BY_THE_PIECE, "cables", "fittings"])
    for (const row of rows(list)) {
      if (draw.chance(0.4)) row.supplier = draw.pick(SUPPLIERS);
      if (draw.chance(0.3)) row.article = draw.pick(["N-100", "004120", "3-4", "12E3", "=1+1"]);
    }
  for (const share of SHARES) if (draw.chance(0.4)) fields[share] = draw.pick([0, 0.02, 0.05, 0.07, 1]);
  if (draw.chance(0.4)) fields.site_spare_runs = draw.pick([0, 0.05, 0.1]);
  if (draw.chance(0.3)) fields.site_spare_runs_least = draw.whole(0, 2);
  if (draw.chance(0.5)) fields.site_cut_at = draw.pick(["likely", "longest"]);
  if (draw.chance(0.4))
    blocks.rests = Array.from({ length: draw.whole(1, 4) }, () => ({
      cable: draw.pick(rows("cables")).name!,
      length: draw.between(5, 60, 1),
    }));
}
