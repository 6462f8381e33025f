import { estimate } from "../multiRoom/names";
import { drop } from "../singleDrop/names";
import type { TypedContext } from "./reading";
import { WRITING_FIELD, writingOf } from "./writing";

/** The fields that name the unit of a workbook's lengths, of the templates that have one. */
const LENGTH_FIELDS = [estimate.site.unit.name, drop.unit.name] as const;
const CURRENCY_FIELD = estimate.site.currency.name;

/** @param valueOf what stands in a named field of the workbook; undefined where there is none */
export function contextOf(valueOf: (name: string) => unknown): TypedContext {
  const writing = writingOf(valueOf(WRITING_FIELD));
  const currency = valueOf(CURRENCY_FIELD);
  const lengths = LENGTH_FIELDS.map(valueOf).find((unit) => unit === "m" || unit === "ft");
  return {
    ...(writing && { writing }),
    ...(typeof currency === "string" && currency !== "" && { currency }),
    ...(lengths !== undefined && { lengths: lengths as "m" | "ft" }),
  };
}
