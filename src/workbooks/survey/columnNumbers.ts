/**
 * Reads the numbers of one column of a survey. A decimal comma is understood
 * only where it can mean nothing else: the cells are not parted by commas (or
 * every cell of the column has one), no cell of the column has a decimal point,
 * and it is not followed by three digits, which could be thousands.
 */
import { faults, type Fault } from "../../engine/faults";

const PLAIN = /^[+-]?(?:\d+\.?\d*|\.\d+)$/;
const COMMA = /^[+-]?\d+,\d+$/;
const MAYBE_THOUSANDS = /^[+-]?[1-9]\d{0,2}[,.]\d{3}$/;

export interface ColumnNumbers {
  /** A number, a fault, or the text as it is, for the reader of the column to refuse. */
  read(cell: string | number): number | string | Fault;
  /** A cell with a decimal comma that is read as a point; undefined where there is none. */
  readonly comma: string | undefined;
}

/**
 * @param name of the column, for a sentence
 * @param cells of the whole column
 * @param parted the file's cells are parted by commas
 */
export function columnNumbers(
  name: string,
  cells: readonly (string | number)[],
  parted: boolean,
): ColumnNumbers {
  const texts = cells.filter((cell): cell is string => typeof cell === "string" && cell !== "");
  const commas = texts.filter((text) => COMMA.test(text));
  const points = texts.some((text) => PLAIN.test(text) && text.includes("."));
  const all = commas.length === texts.length;
  const understood = commas.length > 0 && !points && (!parted || all);
  const ambiguous = (text: string): boolean =>
    MAYBE_THOUSANDS.test(text) && (text.includes(",") || (commas.length > 0 && points));
  return {
    comma: understood ? commas.find((text) => !ambiguous(text)) : undefined,
    read: (cell) => {
      if (typeof cell === "number") return cell;
      if (ambiguous(cell)) {
        return faults.ambiguousNumber(name, cell, [cell.replace(",", "."), cell.replace(/[,.]/, "")]);
      }
      if (PLAIN.test(cell)) return Number(cell);
      return understood && COMMA.test(cell) ? Number(cell.replace(",", ".")) : cell;
    },
  };
}
