/** Plays an outsider's price lists: the file is read as the hosts read it, and each line is held to what a buyer reads. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { readTables } from "../../../src/hosts/file/readTables";
import { compareOffers, type Comparison, type Offer } from "../../../src/workbooks/prices/compareOffers";
import type { ColumnKey } from "../../../src/workbooks/prices/headMeaning";
import {
  waits,
  type ListedPrice,
  type PriceAnswers,
  type PriceList,
} from "../../../src/workbooks/prices/list";
import { priceTables } from "../../../src/workbooks/prices/priceTable";
import { readPriceList } from "../../../src/workbooks/prices/readPriceList";
import { isoDate, sheetDate } from "../../../src/workbooks/sheetDate";

export interface WantedLine {
  readonly line: number;
  readonly article?: string;
  readonly description: string;
  readonly unit: string;
  readonly pack?: number;
  readonly price: number;
  readonly packPrice?: number;
  readonly validFrom?: string;
  readonly validTo?: string;
}

export interface Case {
  readonly file: string;
  readonly why: string;
  readonly currency: string;
  readonly supplier: string;
  readonly known: readonly {
    readonly part: string;
    readonly article?: string;
    readonly unit: string;
    readonly price: number;
    readonly dated?: string;
    readonly pack?: number;
  }[];
  readonly lines: readonly WantedLine[];
  readonly asks: readonly {
    readonly line: number;
    readonly about: string;
    readonly words: readonly string[];
    /** What the buyer is told; then the lines can be read. */
    readonly answer?: string;
  }[];
  readonly mayAsk?: readonly number[];
  readonly preview: {
    readonly new: readonly number[];
    readonly changed: readonly number[];
    readonly gone: readonly string[];
    readonly suspicious: readonly number[];
  };
  readonly heads: "sure" | "needs mapping";
  readonly mapping?: Readonly<Record<string, string>>;
}

export interface Played {
  readonly right: readonly number[];
  /** Wanted lines that are asked: by themselves, or by a question of the whole list. */
  readonly asked: readonly number[];
  /** Wanted lines that are passed over with a sentence, though a buyer would take them. */
  readonly left: readonly string[];
  /** Read otherwise, or read though it had to be asked: nobody would notice. */
  readonly wrong: readonly string[];
  /** What had to be asked and was. */
  readonly asksMet: number;
  readonly asksMissed: readonly string[];
  /** Asked, in a sentence without the words that were looked for. */
  readonly otherWords: readonly string[];
  readonly previewWrong: readonly string[];
  readonly list: PriceList;
}

const TODAY = sheetDate(2026, 11, 29);
const dateNumber = (iso: string): number => {
  const [year, month, day] = iso.split("-").map(Number);
  return sheetDate(year!, month!, day!);
};

export const casesIn = (folder: string, names: readonly string[]): Case[] =>
  names.map((name) => JSON.parse(readFileSync(path.join(folder, name), "utf8")) as Case);

const UNITS: Readonly<Record<string, string>> = {
  pc: "piece",
  set: "piece",
  pair: "piece",
};
/** Where the list names no unit, whoever merges it has that of the part. */
const sameUnit = (ours: string | undefined, wanted: string): boolean =>
  ours === undefined || (UNITS[ours ?? ""] ?? ours) === (UNITS[wanted] ?? wanted);

const offersOf = ({ known, supplier, currency }: Case): Offer[] =>
  known.map(({ part, article = "", unit, price, dated, pack }, row) => ({
    row,
    part,
    supplier,
    article,
    description: "",
    unit,
    perUnit: price,
    ...(pack !== undefined && { pack, perPack: price * pack }),
    currency,
    ...(dated !== undefined && { priced: dateNumber(dated) }),
    pinned: false,
  }));

/** In our words, what an outsider's mapping says of a column. */
const KEYS: Readonly<Record<string, ColumnKey | "">> = {
  article: "article",
  description: "description",
  unit: "unit",
  pack: "pack",
  price: "perUnit",
  packPrice: "perPack",
  priceUnit: "per",
  validFrom: "from",
  validTo: "until",
  currency: "currency",
  discount: "discount",
  unused: "",
};

/** The buyer's answers to what the list leaves open, where the case has them. */
function answersOf({ mapping = {}, currency, asks }: Case, list: PriceList): PriceAnswers {
  const asked = (id: string): boolean => list.questions.some((question) => question.id === id);
  const answer = (about: string): string | undefined => asks.find((ask) => ask.about === about)?.answer;
  const columns = new Map<number, ColumnKey | "">();
  for (const [head, key] of Object.entries(mapping)) {
    const at = list.columns.findIndex((column) => column.head === head);
    columns.set(at >= 0 ? at : head.charCodeAt(0) - 65, KEYS[key]!);
  }
  const tax = answer("net or gross");
  return {
    ...(asked("columns") && { columns }),
    ...(answer("currency") === currency && { currency }),
    ...(tax !== undefined && { tax: Number(/(\d+) % VAT/.exec(tax)![1]) / 100 }),
  };
}

/** @param answered whether the buyer has answered what the whole list asks */
export async function play(folder: string, one: Case, answered: boolean): Promise<Played> {
  const { tables, chosen, sheets } = priceTables(
    await readTables(new Uint8Array(readFileSync(path.join(folder, one.file)))),
  );
  const context = { currency: one.currency, today: TODAY, sheets };
  const first = readPriceList(tables[chosen]!, context);
  const list = answered ? readPriceList(tables[chosen]!, context, answersOf(one, first)) : first;
  const comparison = compareOffers(list, offersOf(one), one.supplier, one.currency);
  return { ...judged(one, list, comparison), previewWrong: previewWrong(one, comparison), list };
}

function judged(one: Case, list: PriceList, { lines }: Comparison): Omit<Played, "previewWrong" | "list"> {
  const byLine = new Map<number, ListedPrice>(list.lines.map((line) => [line.line, line]));
  const compared = new Map(lines.map((line) => [line.listed.line, line]));
  const questions = list.questions.map(({ sentence }) => sentence);
  const mayAsk = new Set(one.mayAsk ?? []);
  const right: number[] = [];
  const asked: number[] = [];
  const left: string[] = [];
  const wrong: string[] = [];
  const doubted = ({ line }: ListedPrice): boolean =>
    ["asked", "currency", "unit"].includes(compared.get(line)!.kind) || waits(list.questions);
  for (const wanted of one.lines) {
    const ours = byLine.get(wanted.line);
    if (!ours) left.push(`line ${wanted.line}: not read as a price`);
    else if (ours.left !== undefined && !mayAsk.has(ours.line))
      left.push(`line ${wanted.line}: ${ours.left}`);
    else if (doubted(ours) || ours.left !== undefined) asked.push(wanted.line);
    else {
      const off = differences(ours, wanted);
      if (off.length > 0) wrong.push(`line ${wanted.line}: ${off.join(", ")}`);
      else right.push(wanted.line);
    }
  }
  const wantedLines = new Set(one.lines.map(({ line }) => line));
  for (const ours of list.lines) {
    if (wantedLines.has(ours.line) || ours.left !== undefined || doubted(ours)) continue;
    wrong.push(`line ${ours.line}: taken at ${ours.perUnit ?? ours.perPack}, and a buyer takes none`);
  }
  let asksMet = 0;
  const asksMissed: string[] = [];
  const otherWords: string[] = [];
  for (const { line, about, words } of one.asks) {
    const ours = byLine.get(line);
    const said =
      line === 0
        ? questions.join(" ") ||
          lines
            .map(({ said }) => said ?? "")
            .join(" ")
            .trim()
        : [compared.get(line)?.said ?? "", ours?.note ?? "", ...questions].join(" ").trim();
    if (said === "") {
      asksMissed.push(`line ${line} (${about}: ${words.join(", ")})`);
      continue;
    }
    asksMet++;
    // The hosts name the line's article in front of what is asked.
    const plain = `${ours?.article ?? ""} ${said}`.toLowerCase();
    if (!words.every((word) => says(plain, word)))
      otherWords.push(`line ${line} (${words.join(", ")}): ${said}`);
  }
  return { right, asked, left, wrong, asksMet, asksMissed, otherWords };
}

/** Figures by their value, dates by their day. */
function says(plain: string, word: string): boolean {
  if (plain.includes(word.toLowerCase())) return true;
  const day = /^(\d\d)\.(\d\d)\.(\d{4})$/.exec(word);
  if (day) return plain.includes(`${day[3]}-${day[2]}-${day[1]}`);
  const figure = Number(word.replace(",", "."));
  return (plain.match(/\d+(?:\.\d+)?/g) ?? []).some((one) => Number(one) === figure);
}

function differences(ours: ListedPrice, wanted: WantedLine): string[] {
  const off: string[] = [];
  const near = (one: number | undefined, other: number | undefined, within: number): boolean =>
    other === undefined || (one !== undefined && Math.abs(one - other) <= within);
  if (!near(ours.perUnit, wanted.price, 1.5e-6)) off.push(`price ${ours.perUnit}, not ${wanted.price}`);
  if (!near(ours.perPack, wanted.packPrice, 0.0051))
    off.push(`pack price ${ours.perPack}, not ${wanted.packPrice}`);
  if (!near(ours.pack, wanted.pack, 0)) off.push(`pack ${ours.pack}, not ${wanted.pack}`);
  if (!sameUnit(ours.unit, wanted.unit)) off.push(`unit ${ours.unit}, not ${wanted.unit}`);
  if (wanted.article !== undefined && ours.article !== wanted.article)
    off.push(`article ${ours.article}, not ${wanted.article}`);
  const dates = [
    ["from", ours.from, wanted.validFrom],
    ["until", ours.until, wanted.validTo],
  ] as const;
  for (const [which, our, other] of dates)
    if (other !== undefined && (our === undefined || isoDate(our) !== other))
      off.push(`${which} ${our === undefined ? "none" : isoDate(our)}, not ${other}`);
  return off;
}

function previewWrong(one: Case, { lines, gone }: Comparison): string[] {
  const off: string[] = [];
  const may = new Set([...(one.mayAsk ?? []), ...one.asks.map(({ line }) => line)]);
  const of = (...kinds: string[]): number[] =>
    lines.filter(({ kind }) => kinds.includes(kind)).map(({ listed }) => listed.line);
  const compare = (what: string, ours: readonly number[], wanted: readonly number[]): void => {
    const not = ours.filter((line) => !wanted.includes(line) && !may.has(line));
    const lost = wanted.filter((line) => !ours.includes(line) && !may.has(line));
    if (not.length > 0) off.push(`${what} and should not: ${not.join(", ")}`);
    if (lost.length > 0) off.push(`not ${what}: ${lost.join(", ")}`);
  };
  compare("new", of("new"), one.preview.new);
  compare(
    "changed",
    of("changed"),
    one.preview.changed.filter((line) => !one.preview.suspicious.includes(line)),
  );
  compare("suspicious", of("suspicious"), one.preview.suspicious);
  const ours = gone.map(({ offer }) => offer.part).sort();
  const wanted = [...one.preview.gone].sort();
  if (ours.join("|") !== wanted.join("|")) off.push(`gone ${ours.join("|")}, not ${wanted.join("|")}`);
  return off;
}
