/**
 * Rows of a sheet that hold nothing but plain values and styled blanks: all but
 * a few of a big job's. The library takes about ten microseconds and a dozen
 * objects for a cell, three times what a job of 10,000 outlets may take, so
 * these rows are written here: in the library's sheet a row of placeholders
 * stands for each run of them, and patchedOutput puts the run in its place.
 * What is not plain (formulas, notes, errors, control characters) stays the
 * library's, and so do the styles: placeholders tell which number each look got.
 *
 * Standard: ECMA-376 part 1, 18.3.1.73 (row), 18.3.1.4 (c), 18.3.1.53 (is). What a
 * formula fills is stored as Excel does, as the result of one (`t="str"`).
 */
import type { CellStyle, WriteSheet } from "hucre/xlsx";
import type { BookValue } from "../../workbooks/book";
import { MARKER } from "./storedText";

type WrittenCells = NonNullable<WriteSheet["cells"]>;

export interface PlainRow {
  /** 0-based. */
  readonly row: number;
  /** In points. */
  readonly height: number | undefined;
  /** Of the cells that hold something, from the left, without dollar signs; the lists beside it are as long. */
  readonly addresses: readonly string[];
  /** Blank where undefined; text as it is stored. */
  readonly contents: readonly (BookValue | undefined)[];
  /** Indices of the styles. */
  readonly looks: readonly (number | undefined)[];
  /** Whether it is text that the formula of another cell fills the cell with. */
  readonly filled: readonly boolean[];
}

/** Rows one below the other, with nothing of the library's between them. */
type Run = PlainRow[];

const PLACEHOLDER = `<c [^>]*?(?: s="(\\d+)")?><is><r><t>${MARKER}(rows|look)(\\d+)</t></r></is></c>`;
const PLACEHOLDERS = new RegExp(`<row [^>]*>(?:${PLACEHOLDER})+</row>`, "g");
const EACH_PLACEHOLDER = new RegExp(PLACEHOLDER, "g");

export class FastRowWriter {
  readonly #runs: Run[] = [];
  #open = false;

  /** The library writes the next row. */
  close(): void {
    this.#open = false;
  }

  /** Rows come from the top down. */
  add(row: PlainRow): void {
    if (this.#open) this.#runs.at(-1)!.push(row);
    else this.#runs.push([row]);
    this.#open = true;
  }

  get empty(): boolean {
    return this.#runs.length === 0;
  }

  /** @param styles cell styles, by their index */
  placeholders(styles: readonly CellStyle[], cells: WrittenCells): void {
    const looks = new Set<number | undefined>();
    for (const list of new Set(this.#runs.flatMap((run) => run.map((row) => row.looks))))
      for (const look of list) looks.add(look);
    this.#runs.forEach((run, index) => {
      const { row } = run[0]!;
      cells.set(`${row},0`, { value: null, richText: [{ text: `${MARKER}rows${index}` }] });
      if (index > 0) return;
      let column = 1;
      for (const look of looks) {
        if (look === undefined) continue;
        const richText = [{ text: `${MARKER}look${look}` }];
        cells.set(`${row},${column++}`, { value: null, richText, style: styles[look]! });
      }
    });
  }

  /**
   * @param xml the sheet as the library wrote it, with the placeholders
   * @returns the sheet with the rows in their places, in pieces
   */
  *placedIn(xml: string): Generator<string> {
    const styles: string[] = [];
    let copied = 0;
    for (const found of xml.matchAll(PLACEHOLDERS)) {
      yield xml.slice(copied, found.index);
      copied = found.index + found[0].length;
      let run: Run = [];
      for (const [, style, kind, number] of found[0].matchAll(EACH_PLACEHOLDER)) {
        if (kind === "rows") run = this.#runs[Number(number)]!;
        else styles[Number(number)] = style === undefined ? "" : ` s="${style}"`;
      }
      for (const row of run) yield this.#rowXml(row, styles);
    }
    yield xml.slice(copied);
  }

  #rowXml({ row, height, addresses, contents, looks, filled }: PlainRow, styles: readonly string[]): string {
    let xml = `<row r="${row + 1}"${height === undefined ? "" : ` ht="${height}" customHeight="1"${height === 0 ? ' hidden="1"' : ""}`}>`;
    for (let index = 0; index < addresses.length; index++) {
      const look = looks[index];
      const start = `<c r="${addresses[index]}"`;
      const styled = look === undefined ? start : start + styles[look]!;
      if (filled[index]) xml += `${styled} t="str"><v>${escaped(contents[index] as string)}</v></c>`;
      else if (look !== undefined || contents[index] !== undefined) xml += cellXml(styled, contents[index]);
    }
    return xml + "</row>";
  }
}

function cellXml(start: string, content: BookValue | undefined): string {
  if (content === undefined) return `${start}/>`;
  if (typeof content === "number") return `${start}><v>${content}</v></c>`;
  if (typeof content === "boolean") return `${start} t="b"><v>${content ? 1 : 0}</v></c>`;
  const kept = /^\s|\s$/.test(content) ? ' xml:space="preserve"' : "";
  return `${start} t="inlineStr"><is><t${kept}>${escaped(content)}</t></is></c>`;
}

const escaped = (text: string): string =>
  text.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;");
