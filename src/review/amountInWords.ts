/** What a finding moves, and what the job should come to, in sentences. */
import { differ, type Amount, type Finding } from "./finding";

export interface Headline {
  /** As the file shows it; absent where it is no number. */
  readonly quoted?: number;
  /** With everything undone of which it is known, or said, what was meant. */
  readonly shouldBe?: number;
  /** Between which it lies, where for some only the usual is known. */
  readonly between?: readonly [number, number];
  /** How many findings there are of which nobody knows what they move. */
  readonly unknown: number;
  readonly sentence: string;
}

const MOST_REASONS = 3;
const MONEY = new Intl.NumberFormat("en-US", { minimumFractionDigits: 2, maximumFractionDigits: 2 });
const money = (sum: number): string => MONEY.format(sum);

/** @returns "" where it moves nothing */
export function amountInWords({ before, after, isAbout }: Amount): string {
  const about = isAbout ? "about " : "";
  const told: string[] = [];
  if (differ(before.total, after.total)) {
    const less = before.total! < after.total!;
    const by = money(Math.abs(after.total! - before.total!));
    told.push(`The total of ${money(before.total!)} is ${about}${by} too ${less ? "low" : "high"}.`);
  } else if (before.total === undefined && after.total !== undefined)
    told.push(`There is no total; without this it is ${about}${money(after.total)}.`);
  if (differ(before.margin, after.margin))
    told.push(`The margin is ${money(before.margin!)}; it should be ${about}${money(after.margin!)}.`);
  return [
    ...told,
    ...counted(before.outlets, after.outlets, ["outlet is", "outlets are"], "not good"),
    ...counted(before.volts, after.volts, ["head unit is", "head units are"], "short of volts"),
  ].join(" ");
}

const counted = (
  before: number | undefined,
  after: number | undefined,
  [one, more]: readonly [string, string],
  bad: string,
): string[] =>
  before === undefined || after === undefined || before === after
    ? []
    : [`${before} ${before === 1 ? one : more} ${bad}; without this ${after} would be.`];

interface Told {
  readonly quoted: number | undefined;
  readonly shouldBe: number | undefined;
  /** With the lowest and with the highest of what would be usual; none where what was meant is known of all. */
  readonly ends: readonly number[];
  /** The dearest first. */
  readonly told: readonly Finding[];
}

export function headlineOf({ quoted, shouldBe, ends, told }: Told): Headline {
  const unknown = told.filter(({ amount }) => amount === undefined).length;
  const known = {
    ...(quoted !== undefined && { quoted }),
    ...(shouldBe !== undefined && { shouldBe }),
    unknown,
  };
  const left =
    unknown === 0
      ? ""
      : ` What ${unknown === 1 ? "one finding" : `${unknown} findings`} would move is not known.`;
  const start = quoted === undefined ? "There is no total" : `Quoted ${money(quoted)}`;
  if (shouldBe === undefined || (quoted !== undefined && !differ(quoted, shouldBe)))
    return {
      ...known,
      sentence:
        quoted === undefined
          ? `${start}, and what it should be is not known.`
          : told.length === 0
            ? `${start}: nothing was found that would move it.`
            : `${start}: nothing that was found is known to move it.${left}`,
    };
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  const isUnsure = ends.length > 0 && differ(low, high);
  const reasons = told
    .filter(({ amount }) => amount && amount.before.total !== amount.after.total)
    .slice(0, MOST_REASONS)
    .map(
      ({ place, message }) => `${place ? `${place.sheet} ${place.cell}: ` : ""}${message.replace(/\.$/, "")}`,
    );
  return {
    ...known,
    ...(isUnsure && { between: [low, high] as const }),
    sentence: `${start}; ${quoted === undefined ? "it " : ""}should be about ${money(shouldBe)}${
      isUnsure ? `, between ${money(low)} and ${money(high)}` : ""
    }${reasons.length > 0 ? `, because ${reasons.join("; ")}` : ""}.${left}`,
  };
}
