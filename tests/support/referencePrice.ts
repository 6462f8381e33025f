/**
 * What a multi-room job comes to, for tests that ask nothing else: levels, volts and money by the reference program,
 * which shares no code with the product.
 */
import { filledRows, type Job } from "./reference/job";
import { priced } from "./reference/price";
import { levelsOf, outletRows } from "./reference/rooms";
import { answersOf } from "./reference/tablesOf";

export type { Job };

export interface Reference {
  /** By outlet: low cold, low hot, high cold, high hot. */
  readonly levels: ReadonlyMap<string, readonly number[]>;
  /** By head unit: the least in use. */
  readonly volts: ReadonlyMap<string, number>;
  readonly net: string;
  readonly tax: string;
  readonly total: string;
}

export function referencePrice(job: Job): Reference {
  const { net, tax, total } = priced(job);
  const heads = job.blocks.heads ?? [];
  const { HEADVOLTS } = answersOf(job);
  return {
    levels: new Map(outletRows(job).map((room) => [String(room.outlet), levelsOf(job, room)])),
    volts: new Map(
      filledRows(job, "heads", "id").map((head) => [
        String(head.id),
        Number(HEADVOLTS[heads.indexOf(head)]![LEAST]),
      ]),
    ),
    net: net.toFixed(2),
    tax: tax.toFixed(2),
    total: total.toFixed(2),
  };
}

/** The column of the least volts in use. */
const LEAST = 4;
