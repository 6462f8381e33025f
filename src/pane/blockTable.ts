/**
 * The part of a sheet around a cell as a table with heads, as it is read out: a block of rows by its definition, any
 * other part by the blank rows around it.
 */
import { address, columnLetters, isInside, parseAddress, parseRange, type Zone } from "../formula/address";
import { isBlank } from "../review/namedCells";
import { shownNumber } from "../review/numberFormat";
import { inputZone, isBookError, type Book, type BookResult, type BookSheet } from "../workbooks/book";
import type { Block, Column, Field, Fields, Format } from "../workbooks/definition";
import { numberFormatOf } from "../workbooks/looks";
import { DECIMALS_FIELD, withMoneyShown } from "../workbooks/moneyShown";
import { acrossHead } from "../workbooks/names";
import { namedValue } from "../workbooks/named";
import { placedBlocks, placeIn, type PlacedBlock } from "../workbooks/placedBlocks";
import { isoDate } from "../workbooks/sheetDate";
import { BESIDE_COLUMN } from "../workbooks/sheetWidths";
import { templateOf } from "../workbooks/templates";
import { dateAsWritten, WRITING_FIELD, writingOf, type ShownWriting } from "../workbooks/typed/writing";

export interface TableHead {
  readonly text: string;
  /** Empty where there is none. */
  readonly unit: string;
  /** All of its cells are there to be filled in. */
  readonly asked: boolean;
  /** Counted from 0. */
  readonly column: number;
}

export interface TableCell {
  readonly text: string;
  readonly asked: boolean;
}

export interface TableRow {
  /** Counted from 0. */
  readonly row: number;
  /** One for each head; the first names the row. */
  readonly cells: readonly TableCell[];
}

export interface BlockTable {
  readonly caption: string;
  readonly heads: readonly TableHead[];
  readonly rows: readonly TableRow[];
  /** Prepared rows behind them in which nothing stands. */
  readonly blankRows: number;
}

/** @returns a sentence where there is nothing to be read around the cell */
export function blockTable(book: Book, sheetName: string, at: string): BlockTable | string {
  const sheet = book.sheets.find(({ name }) => name === sheetName);
  const place = parseAddress(at);
  if (!sheet || !place) return `There is no cell ${at} on a sheet ${sheetName} any more.`;
  const definition = templateOf(book.template)?.definition;
  const reader = new Reader(book, sheet);
  const blocks = placedBlocks(definition, placeIn(book.names)).filter((one) => one.sheet === sheetName);
  const rows = reader.rowsAround(place.row);
  const block =
    blocks.find(({ zone }) => zone.top <= place.row && place.row <= zone.bottom) ??
    // Its heads, or what stands right above them.
    blocks.find(({ zone }) => rows?.includes(zone.top - 1) || rows?.includes(zone.top - 2));
  if (block) return reader.block(block);
  if (!rows)
    return `Nothing stands around ${sheetName} ${at}. Select a cell beside one that holds something.`;
  const fields = (definition?.sheets ?? [])
    .flatMap(({ parts }) => parts)
    .find(
      (part): part is Fields =>
        part.kind === "fields" && part.fields.some(({ name }) => rows.includes(reader.rowOf(name) ?? -1)),
    );
  return fields ? reader.fields(fields, rows) : reader.region(rows);
}

class Reader {
  private readonly writing: ShownWriting | undefined;
  private readonly lastColumn: number;
  /** Cells under a rule of the sheet itself, where the host reads them. */
  private readonly ruled: readonly Zone[];

  constructor(
    private readonly book: Book,
    private readonly sheet: BookSheet,
  ) {
    this.writing = writingOf(namedValue(book, WRITING_FIELD));
    const places = [...Object.keys(sheet.cells), ...Object.keys(sheet.results)].map(parseAddress);
    this.lastColumn = places.reduce((last, place) => Math.max(last, place?.column ?? 0), 0);
    this.ruled = sheet.validations.flatMap((rule) => inputZone(rule) ?? []);
  }

  block({ block, zone }: PlacedBlock): BlockTable {
    const columns = namingFirst(block)
      .flatMap(partsOf)
      .flatMap((part) => {
        const left = this.zoneOf(`${block.name}_${part.key}`)?.left;
        return left === undefined ? [] : [{ ...part, column: left }];
      });
    const rows = range(zone.top + 1, zone.bottom - 1).map((row) => ({
      row,
      cells: columns.map(({ column, format, asked }) => this.cell(row, column, asked, format)),
    }));
    const filled = rows.findLastIndex(({ cells }) => cells.some(({ text }) => text !== ""));
    return {
      caption: `${block.heading}, on ${this.sheet.name}`,
      heads: columns,
      rows: rows.slice(0, filled + 1),
      blankRows: rows.length - filled - 1,
    };
  }

  fields({ heading, fields, besideHeads = [], valueHeads }: Fields, rows: readonly number[]): BlockTable {
    const byRow = new Map<number | undefined, Field>(fields.map((field) => [this.rowOf(field.name), field]));
    const inside = rows.filter((row) => byRow.has(row));
    const usual = ["What", "Value", "Unit"];
    const heads = this.columnsOf(inside).map((column) => ({
      text: valueHeads?.[column - 1] ?? usual[column] ?? besideHeads[column - BESIDE_COLUMN] ?? "Beside it",
      unit: "",
      asked: false,
      column,
    }));
    return {
      caption: `${heading}, on ${this.sheet.name}`,
      heads,
      rows: inside.map((row) => ({
        row,
        cells: heads.map(({ column }) => {
          const field = byRow.get(row)!;
          return this.cell(row, column, column === 1 && field.input !== undefined, field.format);
        }),
      })),
      blankRows: 0,
    };
  }

  /** A table without a definition: a heading, heads, rows, as far as they are there. */
  region(around: readonly number[]): BlockTable {
    const rows = [...around];
    const filledIn = (row: number): number[] =>
      range(0, this.lastColumn).filter((column) => !isBlank(this.valueAt(row, column)));
    const isHeading = rows.length > 1 && filledIn(rows[0]!).length === 1;
    const heading = isHeading ? this.cell(rows[0]!, filledIn(rows[0]!)[0]!, false).text : "";
    if (isHeading) rows.shift();
    const first = rows[0]!;
    const hasHeads =
      rows.length > 1 &&
      filledIn(first).length > 1 &&
      filledIn(first).every((column) => typeof this.valueAt(first, column) === "string");
    if (hasHeads) rows.shift();
    const heads = this.columnsOf([...(hasHeads ? [first] : []), ...rows]).map((column) => ({
      text: (hasHeads && this.cell(first, column, false).text) || columnWord(column),
      unit: "",
      asked: false,
      column,
    }));
    return {
      caption: heading === "" ? `Rows on ${this.sheet.name}` : `${heading}, on ${this.sheet.name}`,
      heads,
      rows: rows.map((row) => ({ row, cells: heads.map(({ column }) => this.cell(row, column, false)) })),
      blankRows: 0,
    };
  }

  /** The rows around one, up to blank ones; undefined where it and its neighbours are blank. */
  rowsAround(row: number): readonly number[] | undefined {
    const filled = new Set(
      [...Object.keys(this.sheet.cells), ...Object.keys(this.sheet.results)].flatMap((at) => {
        const place = parseAddress(at);
        return place && !isBlank(this.valueAt(place.row, place.column)) ? [place.row] : [];
      }),
    );
    const start = [row, row + 1, row - 1].find((one) => filled.has(one));
    if (start === undefined) return undefined;
    let top = start;
    let bottom = start;
    while (filled.has(top - 1)) top--;
    while (filled.has(bottom + 1)) bottom++;
    return range(top, bottom);
  }

  rowOf(name: string): number | undefined {
    return this.zoneOf(name)?.top;
  }

  private zoneOf(wanted: string): Zone | undefined {
    const found = this.book.names.find(({ name, sheet }) => name === wanted && sheet === this.sheet.name);
    return found && parseRange(found.range);
  }

  /** Those in which something stands. */
  private columnsOf(rows: readonly number[]): number[] {
    return range(0, this.lastColumn).filter((column) =>
      rows.some((row) => !isBlank(this.valueAt(row, column))),
    );
  }

  private valueAt(row: number, column: number): BookResult | undefined {
    const at = address(row, column);
    return this.sheet.results[at] ?? this.sheet.cells[at]?.value;
  }

  private cell(row: number, column: number, asked: boolean, format?: Format): TableCell {
    const look = this.sheet.cells[address(row, column)]?.look;
    const shown = look === undefined ? undefined : this.book.looks[look]?.format;
    return {
      text: textOf(this.valueAt(row, column), shown ?? this.formatOf(format), this.writing),
      asked: asked || this.ruled.some((zone) => isInside(zone, row, column)),
    };
  }

  /** Of a host that reads no looks: as the template has it. */
  private formatOf(format: Format | undefined): string | undefined {
    const usual = format && numberFormatOf(format);
    if (usual === undefined) return undefined;
    return withMoneyShown([{ format: usual }], namedValue(this.book, DECIMALS_FIELD))[0]!.format;
  }
}

interface ColumnPart {
  readonly key: string;
  readonly text: string;
  readonly unit: string;
  readonly format: Format;
  readonly asked: boolean;
}

/** A column, or each of those that one spills into. */
function partsOf({ key, head, unit = "", format = "text", input, across }: Column): ColumnPart[] {
  const asked = input !== undefined;
  if (!across) return [{ key, text: head, unit, format, asked }];
  return across.map((one) => ({
    key: `${key}_${one.key}`,
    text: acrossHead(head, one.head),
    unit: one.unit ?? unit,
    format: one.format ?? format,
    asked,
  }));
}

function namingFirst({ columns, rowName = columns[0]?.key }: Block): Column[] {
  const names = columns.filter(({ key }) => key === rowName);
  return [...names, ...columns.filter((column) => !names.includes(column))];
}

/** As its cell shows it; of an error its sentence, too. */
function textOf(
  value: BookResult | undefined,
  format: string | undefined,
  writing: ShownWriting | undefined,
): string {
  if (value === undefined) return "";
  if (isBookError(value)) return value.message ? `${value.error} ${value.message}` : value.error;
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  if (typeof value === "string") return value;
  const { text, kind } = shownNumber(format ?? "General", value);
  if (kind === "date") return dateAsWritten(isoDate(value), writing);
  return writing
    ? text.replace(/[.,]/g, (sign) => (sign === "." ? writing.decimal : writing.groupShown))
    : text;
}

const columnWord = (column: number): string => `Column ${columnLetters(column)}`;

const range = (first: number, last: number): number[] =>
  Array.from({ length: Math.max(0, last - first + 1) }, (_, index) => first + index);
