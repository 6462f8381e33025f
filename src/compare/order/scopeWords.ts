/** What the lines of a change order have in common. */
import type { JobInputs } from "../../workbooks/definition";
import type { InputChange, Value } from "../change";
import { listed } from "../inputChanges";
import type { UsedValues } from "./usedValues";

export interface Scope {
  readonly changes: readonly InputChange[];
  readonly what: string;
  readonly details: string;
  /** Nothing that is bought is otherwise, so it needs no price of its own. */
  readonly isFree?: true;
  /** Something is only called otherwise: that it has another price must be said. */
  readonly isName?: true;
}

export interface Around {
  readonly older: JobInputs;
  readonly newer: JobInputs;
  readonly before: UsedValues;
  readonly after: UsedValues;
  readonly money: (value: number) => string;
}

export const word = (value: Value | undefined): string => (value === undefined ? "" : String(value));
/** `b instead of a`, or what of the two there is. */
export const instead = (before: Value | undefined, after: Value | undefined): string =>
  after === undefined
    ? `no ${word(before)}`
    : before === undefined
      ? word(after)
      : `${after} instead of ${before}`;

export const ended = (kind: InputChange["kind"]): string =>
  kind === "added" ? "added" : kind === "removed" ? "omitted" : "changed";

export const percent = (share: number): string => `${Number((share * 100).toPrecision(12))} %`;

const MOST_LISTED = 12;

/** Names of outlets or the like, cut where there are many. */
export const namesListed = (names: readonly string[]): string => listed(names, MOST_LISTED);
