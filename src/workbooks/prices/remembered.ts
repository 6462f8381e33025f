/**
 * How a supplier's list is read, as a line of text in the supplier's row: `article = Art. no.; price per pack = Box;
 * decimals = ,`. A person can read it, change it and clear it.
 */
import { columnLetters } from "../../formula/address";
import { LONGEST_TEXT } from "../typed/typedKind";
import { COLUMN_KEYS, COLUMN_NAMES, type ColumnKey } from "./headMeaning";
import type { PriceAnswers, PriceList } from "./list";
import { headName, type PriceColumn } from "./priceColumns";

const NAMES: ReadonlyMap<string, ColumnKey> = new Map(
  COLUMN_KEYS.map((key) => [COLUMN_NAMES[key].toLowerCase(), key]),
);
/** None is called as a column is. */
const ANSWERS = ["prices in", "decimals", "days", "prices for", "tax", "less", "surcharge", "sheet"] as const;

export function rememberedText(columns: PriceList["columns"], answers: PriceAnswers): string {
  const said = (named: (column: PriceColumn) => string): string =>
    [
      ...columns.flatMap((column) =>
        column.key ? [`${COLUMN_NAMES[column.key].toLowerCase()} = ${named(column)}`] : [],
      ),
      ...answersInWords(answers),
    ].join("; ");
  const byHead = said(({ head, index }) =>
    head === "" || /[;=]/.test(head) || repeated(columns, head) ? columnLetters(index) : head,
  );
  // A cell takes so much; letters say the same in less.
  return byHead.length <= LONGEST_TEXT
    ? byHead
    : said(({ index }) => columnLetters(index)).slice(0, LONGEST_TEXT);
}

const repeated = (columns: PriceList["columns"], head: string): boolean =>
  columns.filter((column) => headName(column.head) === headName(head)).length > 1;

function answersInWords(answers: PriceAnswers): string[] {
  const values: Readonly<Record<(typeof ANSWERS)[number], string | number | undefined>> = {
    "prices in": answers.currency,
    decimals: answers.decimal,
    days: answers.order === undefined ? undefined : answers.order === "dmy" ? "first" : "second",
    "prices for": answers.basis,
    tax: answers.tax,
    less: answers.discount,
    surcharge: answers.surcharge,
    sheet: answers.sheet?.replace(/[;=]/g, " "),
  };
  return ANSWERS.flatMap((name) => (values[name] === undefined ? [] : [`${name} = ${values[name]}`]));
}

export interface Remembered {
  readonly answers: PriceAnswers;
  /** Heads that it names and this list does not have. */
  readonly missing: readonly string[];
}

/** @param columns as they were found in the list */
export function rememberedAnswers(text: string, columns: readonly PriceColumn[]): Remembered {
  const chosen = new Map<number, ColumnKey | "">();
  const missing: string[] = [];
  const values = new Map<string, string>();
  for (const part of text.split(";")) {
    const at = part.indexOf("=");
    if (at < 0) continue;
    const [name, value] = [part.slice(0, at).trim().toLowerCase(), part.slice(at + 1).trim()];
    const key = NAMES.get(name);
    if (!key) {
      values.set(name, value);
      continue;
    }
    const column =
      columns.find(({ head }) => headName(head) === headName(value)) ??
      columns.find(({ index }) => columnLetters(index) === value.toUpperCase());
    if (column) chosen.set(column.index, key);
    else missing.push(value);
  }
  // Where all is there, what is not named was not used.
  if (missing.length === 0 && chosen.size > 0)
    for (const { index } of columns) if (!chosen.has(index)) chosen.set(index, "");
  return { answers: { ...(chosen.size > 0 && { columns: chosen }), ...valuesRead(values) }, missing };
}

function valuesRead(values: ReadonlyMap<string, string>): PriceAnswers {
  const share = (name: string): number | undefined => {
    const value = Number(values.get(name) ?? "");
    return values.has(name) && value >= 0 && value < 1 ? value : undefined;
  };
  const [decimal, days, basis] = [values.get("decimals"), values.get("days"), values.get("prices for")];
  const [currency, sheet] = [values.get("prices in"), values.get("sheet")];
  const [tax, discount] = [share("tax"), share("less")];
  return {
    ...(currency && { currency }),
    ...((decimal === "." || decimal === ",") && { decimal }),
    ...((days === "first" || days === "second") && { order: days === "first" ? "dmy" : "mdy" }),
    ...((basis === "unit" || basis === "pack") && { basis }),
    ...(tax !== undefined && { tax }),
    ...(discount !== undefined && { discount }),
    ...(values.get("surcharge") === "none" && { surcharge: "none" as const }),
    ...(sheet && { sheet }),
  };
}
