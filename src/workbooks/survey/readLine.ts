/** One line of a survey as a row of Rooms, or why it is none. */
import { textOf, type ImportedCell, type ImportedLine } from "../imported/table";
import type { Reading } from "../typed/reading";
import { readTyped } from "../typed/readTyped";
import { LONGEST_TEXT } from "../typed/typedKind";
import { rounded } from "../typed/units";
import type { ColumnReader } from "./columnReader";
import type { Layout } from "./layout";
import { readLength, type LengthRead } from "./lengthCell";
import { FIGURES, FURTHER, LENGTHS, nameOf, OUTLETS } from "./meanings";
import { matchName, type SurveyLists } from "./partNames";
import { countOf, severalIn } from "./several";
import { cellId, nameId, type SurveyChoices } from "./survey";

export interface LineContext {
  readonly layout: Layout;
  readonly furthers: readonly number[];
  readonly readers: ReadonlyMap<string, ColumnReader>;
  readonly lists: SurveyLists;
  readonly choices: SurveyChoices;
  /** All outlet names of the file, to tell a range of names from a name. */
  readonly names: readonly string[];
  /** The cell above in each column, for "ditto". */
  readonly above: Map<number, ImportedCell>;
}

export interface LineReason {
  readonly key: string | undefined;
  readonly reason: string;
}

export interface ReadLine {
  /** One for each outlet of the line: mostly one. */
  readonly rows: Record<string, number | string>[];
  readonly reasons: LineReason[];
  readonly length: LengthRead | undefined;
  readonly texts: Record<string, string>;
  /** Names that no list has: key, text as it stands, and the nearest. */
  readonly unknown: { readonly key: string; readonly text: string; readonly nearest: readonly string[] }[];
}

export const idOf = ({ line, part }: ImportedLine): string =>
  part === undefined ? String(line) : `${line}/${part}`;

const DITTO =
  /^(?:"|''|“|”|〃|″|- ?["”'〃] ?-|-''-|do\.?|dto\.?|dito|ditto|idem|id\.|same|same as above|as above|as before|wie oben|s\. ?o\.|s\. ?a\.|w\. ?o\.|siehe oben|comme ci-dessus|igual|ídem|lo mismo|↓)$/i;
const NOTHING = /^(?:[-‒–—]+|none|no|nil|n\/a|n\.a\.|kein[e]?|aucun[e]?|ninguno|empty|blank|spare)$/i;
const UNDECIDED = /^(?:t\.?b\.?[dac]\.?|\?+|unknown|unbekannt|open|offen|xx+|to be .*)$/i;
/** Names that a list of the workbook has. */
const LISTED = ["receiver", "from", "cable", "plate", "route", "split", "kind"] as const;
const isListed = (key: string): key is (typeof LISTED)[number] => (LISTED as readonly string[]).includes(key);
/** What a blank says of its own; a mark for "the same" is no name and no remark. */
const NOT_DITTOED = new Set(["outlet"]);

export function readLine(line: ImportedLine, context: LineContext): ReadLine {
  const { layout, readers, choices } = context;
  const id = idOf(line);
  const row: Record<string, number | string> = {};
  const texts: Record<string, string> = {};
  const reasons: LineReason[] = [];
  const unknown: ReadLine["unknown"] = [];
  const refuse = (key: string | undefined, reason: string): void => void reasons.push({ key, reason });
  const cells = new Map<string, ImportedCell>();
  for (const [key, column] of layout.columns) {
    const corrected = choices.cells?.[cellId(id, key)];
    const own = corrected ?? line.cells[column] ?? "";
    const isDitto = DITTO.test(textOf(own)) && !NOT_DITTOED.has(key);
    const cell = isDitto ? (context.above.get(column) ?? "") : own;
    if (isDitto && textOf(cell) === "")
      refuse(key, `“${textOf(own)}” stands for the line above, which has nothing here.`);
    if (textOf(cell) !== "") context.above.set(column, cell);
    cells.set(key, cell);
    texts[key] = textOf(cell);
  }

  for (const [key, cell] of cells) {
    if (key === "run" || key === FURTHER || key === "shortest" || key === "longest") continue;
    if (FIGURES.has(key)) take(key, readCount(key, cell, readers.get(key)!));
    else if (key !== "note") take(key, isListed(key) ? listed(key, cell) : nameIn(cell));
  }
  const remarks = layout.notes.map((column) =>
    column === layout.columns.get("note") ? cells.get("note") : line.cells[column],
  );
  take(
    "note",
    nameIn(
      remarks
        .map((cell) => textOf(cell))
        .filter((text) => text !== "")
        .join("; "),
    ),
  );

  const length = readRun();
  if (length) {
    row.run = length.run;
    if (length.shortest !== undefined) row.shortest = length.shortest;
    if (length.longest !== undefined) row.longest = length.longest;
  }
  if (row.quantity === 0 && row.receiver !== undefined)
    refuse(
      "quantity",
      `0 of “${row.receiver}” are none. Enter how many, or leave the receiver out for a spare outlet.`,
    );
  const rows = outletsOfLine();
  missing("outlet", "a name of its own");
  missing("run", "its length");
  return { rows, reasons, length, texts, unknown };

  /** A line for several outlets is one where its names are as many as it counts; else it is asked about. */
  function outletsOfLine(): Record<string, number | string>[] {
    const count = (row[OUTLETS] ?? row.quantity) as number | undefined;
    const isCountOfOutlets = row[OUTLETS] !== undefined;
    delete row[OUTLETS];
    if (row.outlet !== undefined) row.outlet = withoutWord(String(row.outlet), context.names);
    const name = String(row.outlet ?? "");
    const several = severalIn(name, context.names, count);
    if (several?.names && several.names.length === count) {
      const rooms = severalIn(String(row.room ?? ""), [], count)?.names;
      return several.names.map((outlet, index) => ({
        ...row,
        outlet,
        ...(rooms?.length === count && { room: rooms[index]! }),
        ...(!isCountOfOutlets && { quantity: 1 }),
      }));
    }
    if (several)
      refuse(
        "outlet",
        `“${name}” stands for ${several.words}${count === undefined ? "" : `, and the line counts ${count}`}. Write a line for each, with a name and a run of its own.`,
      );
    else if (isCountOfOutlets && count !== undefined && count > 1)
      refuse(
        OUTLETS,
        `The line stands for ${count} outlets. Write a line for each, with a name and a run of its own.`,
      );
    return [row];
  }

  function take(key: string, reading: Reading<number | string | undefined>): void {
    if ("refused" in reading) refuse(key, reading.refused);
    else if (reading.value !== undefined) row[key] = reading.value;
  }

  function missing(key: string, what: string): void {
    const isAsked =
      layout.columns.has(key) && row[key] === undefined && !reasons.some((one) => one.key === key);
    if (isAsked) refuse(key, `${nameOf(key).toLowerCase()} is missing. Enter ${what}.`);
  }

  function listed(key: (typeof LISTED)[number], cell: ImportedCell): Reading<string | undefined> {
    const read = nameIn(cell) as Reading<string | undefined>;
    if ("refused" in read || read.value === undefined) return read;
    const text = read.value;
    if (NOTHING.test(text)) return { value: undefined };
    const chosen = choices.names?.[nameId(key, text)];
    if (chosen !== undefined) return { value: chosen };
    const names = context.lists[key] ?? [];
    if (names.length === 0) return { value: text };
    const found = matchName(key, text, names);
    if ("name" in found) return { value: found.name };
    const counted = key === "receiver" ? countedName(text, names) : undefined;
    if (
      counted &&
      (row.quantity === undefined || row.quantity === counted.quantity) &&
      !cells.get("quantity")
    ) {
      row.quantity = counted.quantity;
      return { value: counted.name };
    }
    if (UNDECIDED.test(text))
      return { refused: `“${text}” is not decided yet. Enter one of the workbook's, or leave it blank.` };
    if (key === "from" || context.lists.open?.includes(key)) return { value: text };
    unknown.push({ key, text, nearest: found.nearest });
    return {
      refused: `“${text}” is not on the workbook's list${
        found.nearest.length > 0 ? `. Nearest: ${found.nearest.map((one) => `“${one}”`).join(", ")}` : ""
      }. Choose one, or keep it as it is.`,
    };
  }

  /** "12 m indoor drop" names the cable as well, where no column does. */
  function withoutCable(cell: ImportedCell | undefined): ImportedCell | undefined {
    const [, figures, words] =
      /^(.*\d ?(?:m|ft|'|"|metres?|meters?|feet)?)\s+(\p{L}.*)$/u.exec(textOf(cell)) ?? [];
    if (figures === undefined || words === undefined || layout.columns.has("cable")) return cell;
    const found = matchName("cable", words, context.lists.cable ?? []);
    if (!("name" in found)) return cell;
    row.cable = found.name;
    return figures;
  }

  function readRun(): LengthRead | undefined {
    const read = (key: string, cell: ImportedCell | undefined): LengthRead | undefined => {
      const reading = readLength(cell ?? "", readers.get(key)!);
      if ("refused" in reading) {
        refuse(key, reading.refused);
        return undefined;
      }
      return reading.value;
    };
    const run = layout.columns.has("run") ? read("run", withoutCable(cells.get("run"))) : undefined;
    const ends = (["shortest", "longest"] as const).map((key) =>
      layout.columns.has(key) ? read(key, cells.get(key))?.run : undefined,
    );
    let found = run;
    for (const [index, column] of context.furthers.entries()) {
      const cell = index === 0 ? cells.get(FURTHER) : line.cells[column];
      const further = read(FURTHER, cell);
      if (found && further) found = added(found, further);
      else if (found && textOf(cell) === "")
        refuse(FURTHER, `its further part (“${layout.head.texts[column] ?? ""}”) is blank. Enter it, or 0.`);
    }
    const [shortest, longest] = ends;
    if (!found && !layout.columns.has("run") && shortest !== undefined && longest !== undefined)
      found = { run: rounded((shortest + longest) / 2) };
    if (!found) return undefined;
    const whole = {
      ...found,
      ...(shortest !== undefined && { shortest }),
      ...(longest !== undefined && { longest }),
    };
    if ((whole.shortest ?? 0) > whole.run || (whole.longest ?? Infinity) < whole.run)
      refuse(
        "run",
        `${whole.run} does not lie between its shortest (${whole.shortest ?? "none"}) and its longest (${whole.longest ?? "none"}).`,
      );
    return whole;
  }
}

function added(one: LengthRead, other: LengthRead): LengthRead {
  const isRange = one.shortest !== undefined || other.shortest !== undefined;
  return {
    run: rounded(one.run + other.run),
    ...(isRange && {
      shortest: rounded((one.shortest ?? one.run) + (other.shortest ?? other.run)),
      longest: rounded((one.longest ?? one.run) + (other.longest ?? other.run)),
    }),
    ...((one.approximate || other.approximate) && { approximate: true }),
  };
}

const OUTLET_WORD = /^(?:outlet|point|socket|dose|prise|presa|toma) (?=\S*\d)/i;

/** "outlet G1" is G1 where most names have the word. */
function withoutWord(name: string, names: readonly string[]): string {
  const worded = countOf(names, OUTLET_WORD);
  return worded >= 2 && worded > countOf(names, /./) / 2 ? name.replace(OUTLET_WORD, "") : name;
}

/** "2 receivers", "2x receiver". */
function countedName(text: string, names: readonly string[]): { quantity: number; name: string } | undefined {
  const [, count, rest] = /^(\d{1,2}) ?(?:x|×|pcs\.?|no\.?|off)? ?(\p{L}.*)$/iu.exec(text) ?? [];
  if (count === undefined || rest === undefined) return undefined;
  const found = matchName("receiver", rest, names);
  return "name" in found ? { quantity: Number(count), name: found.name } : undefined;
}

function readCount(key: string, cell: ImportedCell, reader: ColumnReader): Reading<number | undefined> {
  const text = textOf(cell);
  if (/^[-‒–—]+$/.test(text)) return { value: undefined };
  if (LENGTHS.has(key) || typeof cell !== "string") return reader.read(cell);
  return reader.read(text.replace(/^[x×] ?(?=\d)/i, "").replace(/(\d) ?(?:[x×]|no\.?|nos\.?)$/i, "$1"));
}

function nameIn(cell: ImportedCell): Reading<number | string | undefined> {
  if (typeof cell === "object" && cell.shown === undefined)
    return {
      refused:
        "the file holds a date here, into which a workbook program turns names such as 3-16. Type the name itself as text",
    };
  return readTyped(textOf(cell), { kind: "text", maxLength: LONGEST_TEXT });
}
