/** The workbooks into which a price list can go. */
import type { WorkbookDefinition } from "../definition";
import { multiRoom } from "../multiRoom/definition";
import { standardsWorkbook } from "../standards/definition";

export interface TakesPrices {
  readonly definition: WorkbookDefinition;
  /** Offers of several suppliers; a job has one price for each part. */
  readonly hasOffers: boolean;
}

export function takesPrices(template: string | undefined): TakesPrices | undefined {
  if (template === standardsWorkbook.id) return { definition: standardsWorkbook, hasOffers: true };
  return template === multiRoom.id ? { definition: multiRoom, hasOffers: false } : undefined;
}
