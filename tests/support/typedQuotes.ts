/** Somebody else's quotes as typed lists, thought up outside the project, and what is right and wrong in each. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { readQuoteFile } from "../../src/hosts/file/readQuoteFile";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { startFromTyped } from "../../src/review/ranges/quoteStart";
import { slipsIn } from "../../src/review/rules/quoteSlips";
import { layOut } from "../../src/workbooks/layOut";
import { namedValue } from "../../src/workbooks/named";
import { quoteReview } from "../../src/workbooks/quoteReview/definition";
import type { TypedLine, TypedQuote } from "../../src/workbooks/quoteReview/typed/typedQuote";
import { isoDate } from "../../src/workbooks/sheetDate";

type Figures = Readonly<Record<string, number | string | null>>;

export interface TypedCase {
  readonly id: string;
  readonly kind: string;
  readonly text: string;
  readonly mustRead: {
    readonly lines?: readonly Partial<Pick<TypedLine, "part" | "quantity" | "each" | "sum">>[];
    readonly figures?: Figures;
  };
  readonly mistakes: readonly { kind: string; at: string; says?: readonly (string | number)[] }[];
  readonly correctedTotal?: number | null;
  readonly mustTell?: readonly string[];
}

export const typedCases = JSON.parse(
  readFileSync(join(__dirname, "../fixtures/typedQuotes/typed.json"), "utf8"),
) as TypedCase[];

const CENT = 0.0051;
const TOTAL_WITHIN = 0.05;
const SHARE = 1e-6;

/** Without the signs that a clerk does not see. */
const plain = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[\s"“”.,;:|]+/g, " ")
    .trim();
const withoutGroups = (text: string): string =>
  text
    .replace(/[“”"]/g, "")
    .replace(/(\d),(?=\d{3})/g, "$1")
    .replace(/(\d)\.00\b/g, "$1")
    .replace(/(\.\d)0\b/g, "$1")
    .toLowerCase();
const near = (one: number | undefined, other: number): boolean =>
  one !== undefined && Math.abs(one - other) <= CENT;

/** How a finding names the figure that a case means. */
const AT: Readonly<Record<string, RegExp>> = {
  net: /price without tax/i,
  tax: /tax, sum|tax/i,
  total: /total/i,
  heads: /head unit/i,
  price: /selling price|margin/i,
  cost: /cost/i,
  labour: /labour/i,
  materials: /materials/i,
  margin: /margin/i,
};

/** @returns what is not as the case has it, a sentence each */
export async function missedIn(one: TypedCase): Promise<string[]> {
  const read = await readQuoteFile(new TextEncoder().encode(one.text));
  if (typeof read === "string") {
    const asked = (one.mustRead.lines ?? []).length + Object.keys(one.mustRead.figures ?? {}).length;
    return asked > 0 || one.mistakes.length > 0 ? [`refused: ${read}`] : [];
  }
  const book = recalculate(layOut(quoteReview, startFromTyped(read)));
  const told = [
    ...slipsIn(book).map(({ message, expected = "" }) => `${message} ${expected}`),
    ...read.remarks.flatMap(({ kind, text, why }) => (kind === "off" ? [`${text} ${why}`] : [])),
  ];
  const missed = [...linesMissed(one, read), ...figuresMissed(one, read)];
  for (const { kind, at, says = [] } of one.mistakes)
    if (!told.some((text) => isAt(text, at) && says.every((word) => holds(text, word))))
      missed.push(`not named: ${kind} at ${at}`);
  if (one.mistakes.length === 0 && told.length > 0) missed.push(`found in a clean one: ${told.join(" ")}`);
  const corrected = namedValue(book, "corrected_total");
  if (
    typeof one.correctedTotal === "number" &&
    !(typeof corrected === "number" && Math.abs(corrected - one.correctedTotal) <= TOTAL_WITHIN)
  )
    missed.push(`corrected total ${JSON.stringify(corrected)}, not ${one.correctedTotal}`);
  for (const text of one.mustTell ?? [])
    if (!read.remarks.some((remark) => isSame(remark.text, text))) missed.push(`not told: ${text}`);
  return missed;
}

const isAt = (text: string, at: string): boolean =>
  AT[at]?.test(text) ??
  plain(at)
    .split(" ")
    .every((word) => plain(text).includes(word));
const holds = (text: string, word: string | number): boolean =>
  withoutGroups(text).includes(withoutGroups(String(word)));
const isSame = (one: string, other: string): boolean =>
  plain(one).includes(plain(other)) || plain(other).includes(plain(one));

function linesMissed({ mustRead }: TypedCase, { lines }: TypedQuote): string[] {
  const left = [...lines];
  return (mustRead.lines ?? []).flatMap((wanted) => {
    const at = left.findIndex(
      (line) =>
        (wanted.part === undefined || isSame(line.part, wanted.part)) &&
        (["quantity", "each", "sum"] as const).every(
          (key) => typeof wanted[key] !== "number" || near(line[key], wanted[key]),
        ),
    );
    if (at < 0) return [`line not read: ${JSON.stringify(wanted)}`];
    left.splice(at, 1);
    return [];
  });
}

function figuresMissed({ mustRead }: TypedCase, { figures, words, until }: TypedQuote): string[] {
  return Object.entries(mustRead.figures ?? {}).flatMap(([key, wanted]) => {
    if (wanted === null) return [];
    const got = { ...figures, ...words, ...(until !== undefined && { until: isoDate(until) }) }[
      key as keyof typeof figures
    ] as number | string | undefined;
    const isRead =
      typeof wanted === "number"
        ? typeof got === "number" && near(got, wanted) && (wanted >= 1 || Math.abs(got - wanted) < SHARE)
        : typeof got === "string" && isSame(got, wanted);
    return isRead ? [] : [`figure not read: ${key} ${wanted}, got ${got}`];
  });
}
