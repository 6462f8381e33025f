/** What is in a pack or on a reel: the cell of its own, else what the description says; doubts are told. */
import { type ImportedCell, textOf } from "../imported/table";
import { readFigure, type ColumnStyle } from "./listNumbers";
import { plainWords } from "./plainWords";
import { basisOf, packInWords, saleUnit, type Basis, type SaleUnit } from "./saleUnits";

export interface FoundPack {
  readonly quantity?: number;
  readonly unit?: SaleUnit;
  /** The cell names a pack or a reel and no number. */
  readonly word?: SaleUnit;
  readonly doubt?: string;
}

const LOOSE =
  /^(?:-+|–|loose|lose|einzeln|single|singly|each|ea|bulk|vrac|al'?unite|suelto|los|per stuk|st|stk|pc|pcs|1er)$/;
const TIMES = /^(\d+) ?[x×*] ?(\d+)(?: ?([a-z'.]+))?$/;

export function packInCell(cell: ImportedCell | undefined, style: ColumnStyle): FoundPack {
  if (cell === undefined || cell === "") return {};
  const text = textOf(cell);
  const of = (quantity: number, unit?: SaleUnit): FoundPack =>
    quantity > 0 && Number.isFinite(quantity)
      ? { quantity, ...(unit && { unit }) }
      : { doubt: `A pack of ${text} can't be. Give how many are in one, or leave the line out.` };
  if (typeof cell === "object" && cell.shown !== undefined) return of(cell.number);
  const plain = plainWords(text);
  if (plain === "") return {};
  if (LOOSE.test(plain)) return of(1);
  if (/\d/.test(plain) && /^[-+]?[\d.,' ]+$/.test(plain)) {
    const read = readFigure(text, style);
    if (read && "value" in read && Number.isInteger(read.value)) return of(read.value);
    if (read && "value" in read)
      return {
        doubt: `A pack of ${text} can't be: there are no parts of a piece. Put the right number into the list.`,
      };
    // A pack of a part of a piece is none; and the reading as thousands is the only one left.
    if (read && !Number.isInteger(read.decimal)) return of(read.grouped);
    if (read)
      return {
        doubt: `A pack of “${text}” can be ${read.grouped} or ${read.decimal}. Say which sign stands before decimals.`,
      };
  }
  const times = TIMES.exec(plain);
  if (times) {
    const [one, other] = [Number(times[1]), Number(times[2])];
    const unit = times[3] === undefined ? undefined : saleUnit(times[3]);
    if (one === 1) return of(other, unit);
    return {
      doubt: `“${text}” can be a pack of ${other} or of ${one * other}. Put the number alone into the list, or leave the line out.`,
    };
  }
  const basis = basisOf(text);
  if (basis && (basis.quantity > 1 || /\d/.test(plain))) {
    const inside = basis.unit === "pack" || basis.unit === "reel" ? undefined : basis.unit;
    return of(basis.quantity, inside);
  }
  const words = packInWords(text);
  if (words) return of(words.quantity, words.unit);
  const word = saleUnit(text);
  if (word === "pack" || word === "reel") return { word };
  if (word) return { quantity: 1, unit: word };
  return { doubt: `“${text}” can't be read as what is in a pack. Put a number there, such as 100.` };
}

export const packInDescription = (text: string): Basis | undefined =>
  /\d/.test(text) ? packInWords(text) : undefined;
