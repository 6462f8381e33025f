/**
 * Classes of tax, options that are made of parts and hours, alternates, and other currencies' decimals, put into a
 * drawn job. Drawn apart, so that a seed's job is the same as before but for them.
 */
import type { Drawn, GeneratedJob, Row } from "./drawn";
import { withGaps } from "./drawn";

const CLASSES = ["reduced", "zero", "07", "exempt"] as const;

export function moneyInto(job: GeneratedJob, draw: Drawn): void {
  const { blocks, fields } = job;
  if (draw.chance(0.3)) fields.site_decimals = draw.pick([0, 2, 3]);
  const taxes: Row[] = draw
    .shuffled([...CLASSES])
    .slice(0, draw.whole(0, 3))
    .map((name) => ({
      name,
      rate: name === "zero" || name === "exempt" ? 0 : draw.pick([0.07, 0.055, 0.1]),
    }));
  const taxed = (share: number): Row =>
    taxes.length > 0 && draw.chance(share) ? { tax: draw.pick(taxes).name! } : {};
  for (const line of ["reception", "cable", "fittings", "labour", "sites"])
    if (taxes.length > 0 && draw.chance(0.4)) fields[`tax_class_${line}`] = draw.pick(taxes).name!;
  if (taxes.length > 0) blocks.taxes = withGaps(draw, taxes);
  for (const row of [...(blocks.options ?? []), ...(blocks.provisional ?? [])])
    if (row.name !== undefined) Object.assign(row, taxed(0.4));
  const options = (blocks.options ?? []).filter(({ name }) => name !== undefined);
  const parts = [...blocks.cables!, ...blocks.passives!, ...blocks.fittings!, ...blocks.plates!].filter(
    ({ name }) => name !== undefined,
  );
  const made: Row[] = [];
  for (const option of options) {
    if (draw.chance(0.3)) option.instead = draw.pick(["outlets", "the cheaper cable"]);
    if (!draw.chance(0.5)) continue;
    if (draw.chance(0.6)) delete option.each;
    for (let rows = draw.whole(1, 3); rows > 0; rows--)
      made.push({
        option: option.name!,
        part: draw.chance(0.8) ? draw.pick(parts).name! : "priced here",
        ...(draw.chance(0.8)
          ? {
              quantity: draw.pick([1, 2, 12, -1]),
              ...(draw.chance(0.4) ? { each: draw.between(1, 40, 2) } : {}),
            }
          : { hours: draw.pick([0.5, 1.5, -0.25]) }),
      });
  }
  if (made.length > 0) blocks.made = withGaps(draw, made);
}
