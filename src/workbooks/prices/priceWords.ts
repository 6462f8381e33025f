/** What a price list brings, in words, for a person to look at before anything is written: in every host the same. */
import { isoDate } from "../sheetDate";
import type { ChangeKind, ComparedLine } from "./compareOffers";
import { COLUMN_NAMES } from "./headMeaning";
import type { ListedPrice } from "./list";
import { nearestParts } from "./nearestParts";
import type { PriceBook } from "./priceBook";
import type { PricesFound } from "./pricesOf";

/** A line of the list as sentences name it. */
export const lineName = ({ line, article, description }: ListedPrice): string =>
  `line ${line}${article === "" ? (description === "" ? "" : `, ${description.slice(0, 40)}`) : `, ${article}`}`;

export const percentOf = (share: number): string =>
  `${share > 0 ? "+" : share < 0 ? "−" : ""}${Math.abs(share * 100).toFixed(1)} %`;

/** "0.39 per m, 100 m for 39". */
export function priceInWords({ perUnit, perPack, unit, pack }: ListedPrice): string {
  const one = unit === "pc" || unit === undefined ? "each" : `per ${unit}`;
  const whole =
    perPack !== undefined && pack !== undefined && pack !== 1
      ? `${pack}${unit === "m" || unit === "ft" ? ` ${unit}` : ""} for ${perPack}`
      : "";
  return [perUnit === undefined ? "" : `${perUnit} ${one}`, whole].filter((words) => words !== "").join(", ");
}

export const holdsInWords = ({ from, until }: ListedPrice): string =>
  [from === undefined ? "" : `from ${isoDate(from)}`, until === undefined ? "" : `until ${isoDate(until)}`]
    .filter((words) => words !== "")
    .join(" ");

export interface WordedLine {
  readonly line: number;
  readonly kind: ChangeKind;
  readonly name: string;
  readonly description: string;
  readonly part: string;
  readonly price: string;
  /** "0.38 → 0.39, +2.6 %". */
  readonly change: string;
  readonly said: string;
  readonly taken: boolean;
  /** A person may take it or leave it. */
  readonly open: boolean;
}

export function lineInWords(one: ComparedLine): WordedLine {
  const { listed, kind, offers, before, now, share, said = "", taken } = one;
  const rounded = (value: number): number => Number(value.toPrecision(6));
  return {
    line: listed.line,
    kind,
    name: listed.article === "" ? `line ${listed.line}` : listed.article,
    description: listed.description,
    part: offers.map(({ part }) => part).join(", "),
    price: priceInWords(listed),
    change:
      before === undefined || now === undefined || share === undefined
        ? ""
        : kind === "same"
          ? "as before"
          : `${rounded(before)} → ${rounded(now)}, ${percentOf(share)}`,
    said: [said, listed.note ?? ""].filter((words) => words !== "").join(" "),
    taken,
    open: kind === "changed" || kind === "suspicious" || kind === "unit" || kind === "same" || kind === "new",
  };
}

/** In the order in which a person looks at them. */
export const KINDS: readonly (readonly [ChangeKind, string])[] = [
  ["suspicious", "five times dearer or cheaper, or more"],
  ["unit", "in another unit"],
  ["changed", "changed"],
  ["new", "new"],
  ["asked", "asked, and left out until they are answered"],
  ["currency", "in another currency, and refused"],
  ["same", "as before"],
  ["left", "passed over"],
];

export const linesOf = ({ comparison }: PricesFound, kind: ChangeKind): ComparedLine[] =>
  comparison.lines.filter((line) => line.kind === kind);

const plural = (count: number, what: string): string => `${count} ${what}${count === 1 ? "" : "s"}`;

/** "21 lines: 3 changed, 12 new, 1 passed over". */
export function summaryOf(found: PricesFound): string {
  const { lines, gone, ended } = found.comparison;
  const counts = KINDS.flatMap(([kind, words]) => {
    const count = linesOf(found, kind).length;
    return count === 0 ? [] : [`${count} ${words}`];
  });
  const missing = [
    ...(gone.length > 0 ? [`${plural(gone.length, "offer")} not in the list any more`] : []),
    ...(ended.length > 0 ? [`${plural(ended.length, "offer")} without a price`] : []),
  ];
  return `${plural(lines.length, "line")} with a price: ${[...counts, ...missing].join("; ") || "none"}.`;
}

/** Most lines of one kind that are shown. */
const SHOWN = 40;

/** As the command prints it. */
export function previewText(found: PricesFound, book: PriceBook, supplier: string): string {
  const { list, comparison, notes } = found;
  const section = (head: string, lines: readonly string[]): string[] =>
    lines.length === 0
      ? []
      : [
          "",
          head,
          ...lines.slice(0, SHOWN).map((line) => `  ${line}`),
          ...(lines.length > SHOWN ? [`  and ${lines.length - SHOWN} more`] : []),
        ];
  const names = book.parts.map(({ name }) => name);
  const worded = (one: ComparedLine, index: number): string => {
    const { part, price, change, said } = lineInWords(one);
    const near = one.kind === "new" && index < SHOWN ? nearestParts(one.listed.description, names) : [];
    const name = `${lineName(one.listed)}${part ? ` (${part})` : one.listed.article ? ` ${one.listed.description}` : ""}`;
    const told = [
      change || price,
      said,
      near.length > 0 ? `Nearest: ${near.map((other) => `“${other}”`).join(", ")}.` : "",
    ];
    return `${name}: ${told
      .filter((words) => words !== "")
      .join(". ")
      .replace(/\.\. /g, ". ")}`;
  };
  return [
    `${supplier}: read as ${list.source}. ${summaryOf(found)}`,
    ...section("Asked of the whole list; nothing is taken before it is answered:", questionsOf(found, false)),
    ...section("Asked of some of its lines:", questionsOf(found, true)),
    ...section(
      "Columns:",
      list.columns.map(({ head, key }) => `${head || "(no head)"}: ${key ? COLUMN_NAMES[key] : "not used"}`),
    ),
    ...section("Notes:", [...notes, ...list.notes]),
    ...KINDS.filter(([kind]) => kind !== "same").flatMap(([kind, words]) => {
      const lines = linesOf(found, kind);
      return section(`${plural(lines.length, "line")} ${words}:`, lines.slice(0, SHOWN + 1).map(worded));
    }),
    ...section(
      "Not in the list any more; they stay unless you end them:",
      comparison.gone.map(({ offer }) => `“${offer.part}”${offer.article ? `, ${offer.article}` : ""}`),
    ),
    ...section(
      "In the list without a price; they stay unless you end them:",
      comparison.ended.map(({ offer, said }) => `“${offer.part}”: ${said}`),
    ),
  ].join("\n");
}

export const questionsOf = ({ list }: PricesFound, ofLines: boolean): string[] =>
  list.questions
    .filter((question) => (question.ofLines ?? false) === ofLines)
    .map(({ sentence }) => sentence);
