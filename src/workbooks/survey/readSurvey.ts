/**
 * Understands a site survey: a table of outlets, one a line, mostly with a head row. It tells what it understood, so
 * that a person can look, and change it, before anything is written. Each bad line is reported by its number and
 * reason; none is repaired but by a person.
 */
import { takenTwice, withChoices, type MappedColumn } from "../imported/columns";
import { textOf, type ImportedLine, type ImportedTable } from "../imported/table";
import { widthTrouble, withDecimalComma } from "./brokenLines";
import { chooseTable, type FoundTable } from "./chooseTable";
import { columnReader, type ColumnReader } from "./columnReader";
import { guessColumns, unitSaid, type Head, type Layout } from "./layout";
import { pairsOnLines } from "./sideBySide";
import { lineKind } from "./lineKinds";
import {
  factorBetween,
  FIGURES,
  FURTHER,
  LENGTHS,
  MEANINGS,
  nameOf,
  NEEDED,
  unitSpelled,
  type LengthUnit,
} from "./meanings";
import { idOf, readLine, type LineContext, type LineReason } from "./readLine";
import {
  inWords,
  type Survey,
  type SurveyChoices,
  type SurveyRow,
  type SurveySetting,
  type SurveyTrouble,
  type UnknownName,
} from "./survey";
import { LONG_RUN, notesOf, type ReadOutlet } from "./surveyNotes";
import { Totals } from "./totals";

/**
 * @param tables the ways in which the file can be parted, or its sheets; empty lines are passed over
 * @param choices what a person chose in the preview
 */
export function readSurvey(
  tables: readonly ImportedTable[],
  setting: SurveySetting,
  choices: SurveyChoices = {},
): Survey {
  const found = chooseTable(tables, choices);
  const { table, filled, head } = found;
  const sheets = tables.flatMap(({ sheet, lines }) =>
    sheet === undefined || lines.length === 0 ? [] : [sheet],
  );
  const base: Survey = {
    source: table.source,
    sheets: sheets.length > 1 ? sheets : [],
    ...(table.sheet !== undefined && { sheet: table.sheet }),
    columns: [],
    rows: [],
    lines: [],
    troubles: [],
    unknown: [],
    texts: {},
    notes: [],
  };
  const refused = (line: number, reason: string): Survey => ({ ...base, troubles: [{ line, reason }] });
  if (filled.length === 0)
    return refused(1, "The file is empty. Give a head row and a line for each outlet.");
  const body = filled.slice(head.index < 0 ? 0 : head.index + head.rows + (head.units ? 1 : 0));
  const lists = setting.lists ?? {};
  const guess = guessColumns(table, head, body, lists);
  const chosen = withChoices(guess.columns, choices.columns ?? {}, MEANINGS);
  const isTouched = choices.confirmed === true || Object.keys(choices.columns ?? {}).length > 0;
  const said = unitSaid([...filled.slice(0, Math.max(0, head.index)), ...filled.slice(-3)]);
  const columns = chosen.map((one) =>
    one.key !== undefined && LENGTHS.has(one.key) && one.unit === undefined
      ? { ...one, unit: said ?? setting.unit }
      : one,
  );
  const line = filled[head.index]?.line ?? filled[0]!.line;
  const unreadable = twiceTaken(columns) ?? unknownUnit(columns) ?? lacking(columns, head, filled);
  const unsure = unreadable ?? (isTouched ? undefined : guess.unsure);
  if (unreadable !== undefined)
    return { ...base, columns, unsure: unreadable, troubles: [{ line, reason: unreadable }] };
  if (body.length === 0)
    return { ...base, columns, troubles: [{ line, reason: "There is a head row and no outlet below it." }] };
  const unnamed = chosen.find(({ key, unit }) => key === "run" && unit === undefined);
  return read(
    { ...base, columns },
    { found, body: pairsOnLines(body, columns), setting, choices, unsure, line, unnamed, said },
  );
}

interface Task {
  readonly found: FoundTable;
  readonly body: readonly ImportedLine[];
  readonly setting: SurveySetting;
  readonly choices: SurveyChoices;
  readonly unsure: string | undefined;
  readonly line: number;
  /** The column of the runs, where neither its head nor a person says its unit. */
  readonly unnamed: MappedColumn | undefined;
  /** The unit that the file says in words. */
  readonly said: LengthUnit | undefined;
}

function read(
  base: Survey,
  { found, body, setting, choices, unsure, line: headLine, unnamed, said }: Task,
): Survey {
  const { head } = found;
  const { columns } = base;
  const layout = layoutOf(columns, head);
  const kinds = body.map((line) => ({ line, as: lineKind(line, layout) }));
  const outlets = kinds
    .filter(({ as, line }) => as.kind === "outlet" && !line.hidden)
    .map(({ line }) => line);
  const readers = readersFor(columns, outlets, setting);
  const outletColumn = layout.columns.get("outlet");
  const context: LineContext = {
    layout,
    furthers: columns.flatMap(({ key, column }) => (key === FURTHER ? [column] : [])),
    readers,
    lists: setting.lists ?? {},
    choices,
    names: outletColumn === undefined ? [] : outlets.map(({ cells }) => textOf(cells[outletColumn])),
    above: new Map(),
  };
  const totals = new Totals();
  const troubles: SurveyTrouble[] = unsure === undefined ? [] : [{ line: headLine, reason: unsure }];
  const notes: string[] = [];
  const read: ReadOutlet[] = [];
  const texts: Record<string, Record<string, string>> = {};
  const seen = new Map<string, number>();
  const leftOut = new Set(choices.leftOut);
  const takenIn = new Set(choices.takenIn);
  const passed: number[] = [];
  const words: string[] = [];
  let sums = 0;
  let floor = floorAbove(found, columns);
  const roomNames = outletColumn === undefined ? namesByRoom(outlets, layout) : undefined;
  for (const { line, as } of kinds) {
    const id = idOf(line);
    if (line.hidden && !takenIn.has(id)) {
      if (as.kind === "outlet" && !leftOut.has(id))
        troubles.push({
          line: line.line,
          id,
          isLeftOut: true,
          reason: "The row is hidden in its sheet, so it is left out.",
        });
      continue;
    }
    if (as.kind === "repeated") passed.push(line.line);
    else if (as.kind === "words") words.push(`line ${line.line} (“${shortened(as.words)}”)`);
    else if (as.kind === "floor") floor = as.floor;
    else if (as.kind === "total") {
      sums++;
      const checked = totals.check(
        line,
        as.name,
        layout.columns,
        readers.get("run") ?? readers.get("longest")!,
        setting.unit,
      );
      if ("trouble" in checked) {
        if (!leftOut.has(id)) troubles.push({ line: line.line, reason: checked.trouble, id, isTotal: true });
      } else if (checked.note) notes.push(checked.note);
    } else {
      const mended = withDecimalComma(line, head, found.table.source, layout, context.lists);
      const one = readLine(mended ?? line, context);
      if (mended)
        notes.push(
          `Line ${line.line}: “${one.texts.run}” is read as one number, since the line has one cell too many.`,
        );
      const { rows, reasons, length } = one;
      const [row] = rows as [Record<string, number | string>];
      const name = roomNames?.get(id);
      if (name !== undefined) row.outlet = name;
      floor = row.floor === undefined ? floor : String(row.floor);
      const isStruck = as.kind === "struck" && !takenIn.has(id);
      for (const each of rows) {
        if (floor !== undefined) each.floor = floor;
        totals.add({
          length,
          floor,
          quantity: Number(each.quantity ?? 1),
          ...((isStruck || leftOut.has(id)) && { struck: true }),
        });
      }
      if (leftOut.has(id)) continue;
      if (isStruck) {
        const reason = `The line says “${shortened(as.word)}”: it is left out.`;
        troubles.push({ line: line.line, id, isLeftOut: true, reason });
        continue;
      }
      if (line.line === found.table.open)
        reasons.push({
          key: undefined,
          reason:
            'The line begins a cell with a quotation mark (") that is never closed; it is taken as a plain sign.',
        });
      const tooWide = widthTrouble(mended ?? line, head, found.table.source, layout);
      if (typeof tooWide === "string") reasons.push({ key: undefined, reason: tooWide });
      else if (tooWide)
        for (const each of rows)
          each.note = [each.note, ...tooWide].filter((text) => text !== undefined && text !== "").join(", ");
      for (const each of rows) {
        const outlet = String(each.outlet ?? "").toLowerCase();
        const before = seen.get(outlet);
        if (outlet && before !== undefined)
          reasons.push({
            key: "outlet",
            reason: `The outlet "${each.outlet}" stands on line ${before} already. Give each outlet a name of its own.`,
          });
        if (outlet && before === undefined) seen.set(outlet, line.line);
      }
      if (reasons.length > 0) {
        const keys = [...new Set(reasons.flatMap(({ key }) => (key === undefined ? [] : [key])))];
        const who = [row.room, row.outlet].filter((name) => name !== undefined).join(", ");
        const reason = reasons.map(reasonInWords).join(" ");
        troubles.push({ line: line.line, reason, ...(who !== "" && { who }), id, keys });
        texts[id] = one.texts;
      }
      for (const each of rows)
        read.push({
          line,
          id,
          row: each,
          length,
          isGood: reasons.length === 0,
          unknown: one.unknown,
          texts: one.texts,
        });
      if (rows.length > 1 && reasons.length === 0)
        notes.push(
          `Line ${line.line} stands for ${rows.length} outlets, as its names and its quantity say: each has the line's run.`,
        );
    }
  }
  const odd = outOfProportion(read, setting.unit);
  for (const { line, id, row } of odd) {
    troubles.push({
      line: line.line,
      id,
      keys: ["run"],
      reason: `run: ${row.run} ${setting.unit} is many times the other runs, and the cell names no unit. Write it with its unit.`,
    });
    texts[id] = read.find((one) => one.id === id)!.texts;
  }
  const good = read.filter((one) => one.isGood && !odd.includes(one));
  return {
    ...base,
    ...(unsure !== undefined && { unsure }),
    rows: good.map(({ row }): SurveyRow => row),
    lines: good.map(({ line }) => line.line),
    troubles: troubles.sort((a, b) => a.line - b.line),
    unknown: unknownIn(read),
    texts,
    notes: [
      head.index > 0
        ? `${inWords(head.index, "line")} above the head row ${head.index === 1 ? "is" : "are"} passed over.`
        : "",
      head.units ? `Line ${head.units.line} holds units.` : "",
      said !== undefined && unnamed !== undefined
        ? `Lengths are taken in ${said}, as the file says in words.`
        : "",
      ...[...readers].map(([key, { comma }]) =>
        comma === undefined
          ? ""
          : `The decimal commas of "${nameOf(key).toLowerCase()}" are read as points: ${comma} is ${comma.replace(",", ".")}.`,
      ),
      ...notesOf(good, {
        layout,
        setting,
        outlets,
        head,
        unnamed: said === undefined ? unnamed : undefined,
        lists: setting.lists ?? {},
      }),
      passed.length > 0 ? passedOver(passed.length, "the heads again, or a page's foot") : "",
      words.length > 0
        ? `Passed over as words: ${words.slice(0, 5).join(", ")}${words.length > 5 ? ", …" : ""}.`
        : "",
      sums > 0 ? passedOver(sums, "a sum, held against the runs above it") : "",
      ...notes,
      leftOut.size > 0 ? `${inWords(leftOut.size, "line")} left out, as you chose.` : "",
    ].filter((note) => note !== ""),
  };
}

const reasonInWords = ({ key, reason }: LineReason): string =>
  key === undefined || / is missing\.|^The (?:outlet|line) /.test(reason)
    ? reason
    : `${nameOf(key).toLowerCase()}: ${reason}`;

/** A run beyond any drop, in a column of common ones, is in another unit than they are. */
function outOfProportion(read: readonly ReadOutlet[], unit: "m" | "ft"): ReadOutlet[] {
  const runs = read.flatMap(({ length }) => (length ? [length.run] : [])).sort((a, b) => a - b);
  const middle = runs[Math.floor(runs.length / 2)] ?? 0;
  const most = LONG_RUN * factorBetween("m", unit);
  return runs.length < 3 || middle > most / 2
    ? []
    : read.filter(
        ({ isGood, length, texts }) =>
          isGood &&
          length &&
          length.run > most &&
          length.run > 10 * middle &&
          /^\d{3,5}$/.test(texts.run ?? ""),
      );
}

const passedOver = (count: number, what: string): string =>
  `${inWords(count, "line")} with ${what}, ${count === 1 ? "is" : "are"} passed over.`;

const shortened = (text: string): string => (text.length > 60 ? `${text.slice(0, 59)}…` : text);

function layoutOf(columns: readonly MappedColumn[], head: Head): Layout {
  const places = new Map<string, number>();
  for (const { key, column } of columns) if (key !== undefined && !places.has(key)) places.set(key, column);
  return {
    head,
    columns: places,
    notes: columns.flatMap(({ key, column }) => (key === "note" ? [column] : [])),
  };
}

/** A floor's heading may stand above the heads, too. */
function floorAbove({ filled, head }: FoundTable, columns: readonly MappedColumn[]): string | undefined {
  const above = filled[head.index - 1];
  const as = above && lineKind(above, layoutOf(columns, head));
  return as?.kind === "floor" && !columns.some(({ key }) => key === "floor") ? as.floor : undefined;
}

function readersFor(
  columns: readonly MappedColumn[],
  outlets: readonly ImportedLine[],
  { unit, writing }: SurveySetting,
): Map<string, ColumnReader> {
  const readers = new Map<string, ColumnReader>();
  for (const { key, column, unit: own } of columns) {
    if (key === undefined || !FIGURES.has(key) || readers.has(key)) continue;
    const cells = outlets.map(({ cells }) => cells[column] ?? "");
    const named = own === undefined ? undefined : unitSpelled(own);
    readers.set(
      key,
      columnReader(key, cells, { ...(named && { own: named }), into: unit, ...(writing && { writing }) }),
    );
  }
  return readers;
}

/** Outlets without a name are called after their rooms, numbered where a room has several. */
function namesByRoom(outlets: readonly ImportedLine[], { columns }: Layout): Map<string, string> {
  const rooms = outlets.map(({ cells }) => textOf(cells[columns.get("room")!]));
  const counted = new Map<string, number>();
  const names = new Map<string, string>();
  for (const [index, line] of outlets.entries()) {
    const room = rooms[index]!;
    if (room === "") continue;
    const several = rooms.filter((one) => one.toLowerCase() === room.toLowerCase()).length > 1;
    const count = (counted.get(room.toLowerCase()) ?? 0) + 1;
    counted.set(room.toLowerCase(), count);
    names.set(idOf(line), several ? `${room}-${count}` : room);
  }
  return names;
}

function unknownIn(read: readonly ReadOutlet[]): UnknownName[] {
  const found = new Map<string, UnknownName & { lines: number[] }>();
  for (const { line, unknown } of read)
    for (const { key, text, nearest } of unknown) {
      const at = `${key}:${text.toLowerCase()}`;
      const one = found.get(at) ?? { key, text, nearest, lines: [] };
      one.lines.push(line.line);
      found.set(at, one);
    }
  return [...found.values()];
}

/** Outlets next to each other on a line have a column of runs for each. */
function twiceTaken(columns: readonly MappedColumn[]): string | undefined {
  const count = (key: string): number => columns.filter((one) => one.key === key).length;
  const paired = count("outlet") === count("run");
  return takenTwice(
    columns,
    paired ? MEANINGS.filter(({ key }) => key !== "outlet" && key !== "run") : MEANINGS,
  );
}

function unknownUnit(columns: readonly MappedColumn[]): string | undefined {
  const odd = columns.find(
    ({ key, unit }) => key !== undefined && LENGTHS.has(key) && unit !== undefined && !unitSpelled(unit),
  );
  return (
    odd &&
    `The column "${odd.head}" names a unit that is not known. Write "${nameOf(odd.key!).toLowerCase()} (m)" or "${nameOf(odd.key!).toLowerCase()} (ft)", or choose its unit.`
  );
}

function lacking(
  columns: readonly MappedColumn[],
  head: Head,
  filled: readonly ImportedLine[],
): string | undefined {
  const has = (key: string): boolean => columns.some((one) => one.key === key);
  const missing = NEEDED.filter(
    (key) =>
      !has(key) &&
      !(key === "outlet" && has("room")) &&
      !(key === "run" && has("shortest") && has("longest")),
  );
  if (missing.length === 0) return undefined;
  const texts = head.index < 0 ? filled[0]!.cells.map(textOf) : head.texts;
  const shown = texts.map((text) => `"${text}"`);
  return `The head row lacks ${missing.map((key) => `"${key}"`).join(", ")}. It has ${shown.slice(0, 12).join(", ")}${shown.length > 12 ? ", …" : ""}. Say what each column is.`;
}
