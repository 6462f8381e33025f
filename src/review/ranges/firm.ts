/** What a firm's standards say of a job's inputs, for the review: of a workbook that was given with it, or as the job took them. */
import type { Book } from "../../workbooks/book";
import type { JobInputs } from "../../workbooks/definition";
import { estimate } from "../../workbooks/multiRoom/names";
import { namedValue } from "../../workbooks/named";
import { OF } from "../../workbooks/names";
import { ranges } from "../../workbooks/standards/names";
import { keyed, type Row } from "../../workbooks/standards/rows";
import { SHARED_BLOCKS, SHARED_FIELDS } from "../../workbooks/standards/shared";
import { filledCells, namedCells } from "../namedCells";
import { learnedRows, type Learned } from "./learned";

/** Plain, so that a worker can be handed it. */
export interface FirmSays {
  /** As a sentence names them. */
  readonly called: string;
  readonly fields: Readonly<Record<string, number | string>>;
  /** Of each list its rows, by what they are known by. */
  readonly rows: Readonly<Record<string, Readonly<Record<string, Row>>>>;
  /** Of the accepted quotes that they learned from. */
  readonly learned: readonly Learned[];
}

/** @param inputs of the firm's workbook */
export function firmSays({ fields = {}, blocks = {} }: JobInputs, called: string): FirmSays {
  return {
    called,
    fields: Object.fromEntries(
      SHARED_FIELDS.flatMap(({ name }) => (fields[name] === undefined ? [] : [[name, fields[name]]])),
    ),
    rows: Object.fromEntries(
      SHARED_BLOCKS.map((block) => [
        block.name,
        Object.fromEntries(keyed(block, blocks[block.name]).map(([key, row]) => [key, row])),
      ]),
    ),
    learned: learnedRows(blocks[ranges[OF].name] ?? []),
  };
}

/** @returns undefined for a job that has not drawn on any standards */
export function takenFrom(read: Book): FirmSays | undefined {
  const lists = filledCells(read, estimate.taken.list.name);
  if (lists.length === 0) return undefined;
  const [lines, values] = [estimate.taken.line, estimate.taken.values].map(({ name }) =>
    namedCells(read, name),
  );
  const fields: Record<string, number | string> = {};
  // Names out of a file: none of them is one of the language's own.
  const rows = Object.create(null) as Record<string, Record<string, Row>>;
  for (const { value: list, index } of lists) {
    const [line, row] = [String(lines![index]?.value ?? ""), rowOf(values![index]?.value)];
    if (line === "" || !row) continue;
    if (list === "fields") {
      if (row["value"] !== undefined) fields[line] = row["value"];
    } else (rows[String(list)] ??= Object.create(null) as Record<string, Row>)[line] = row;
  }
  const firm = String(namedValue(read, estimate.site.standards.name) ?? "the firm");
  const edition = String(namedValue(read, estimate.site.standards_edition.name) ?? "");
  return { called: `${firm}${edition === "" ? "" : `, edition ${edition}`}`, fields, rows, learned: [] };
}

/** What cannot be read is as if it had not been taken. */
function rowOf(text: unknown): Row | undefined {
  try {
    const row: unknown = JSON.parse(String(text));
    return typeof row === "object" && row !== null ? (row as Row) : undefined;
  } catch {
    return undefined;
  }
}
