/**
 * What a crew typed into the cell of a reading: a number, a number with its unit, that there was no signal, or
 * something that is no reading at all.
 *
 * Accuracy: nothing is guessed. A number with a decimal comma is read, because a level has no thousands; a unit
 *   other than the cell's own is handed on with its number, so that whoever asks can say so.
 */

export type TypedReading =
  | { readonly kind: "blank" }
  | { readonly kind: "value"; readonly value: number; readonly unit?: string }
  /** The meter found none: that is a reading. */
  | { readonly kind: "no signal" }
  /** Taken as not measured; `text` is what stands there. */
  | { readonly kind: "unread"; readonly text: string };

const BLANK: TypedReading = { kind: "blank" };

/** Words for no signal, without blanks, points and hyphens. */
const NO_SIGNAL = new Set([
  "nosignal",
  "nosig",
  "nolevel",
  "novolts",
  "nopower",
  "nolock",
  "none",
  "nothing",
  "dead",
  "nil",
]);

const UNITS = /^(dB[µuμ]V|dBmV|dBm|[µuμ]V|mV|V|dB|%)$/i;
const NUMBER = /^(<|≤|under|below)?([+-]?)(\d+(?:[.,]\d+)?)([^\d.,]*)$/i;

/**
 * @param cell a cell's value; an error as its words in `{ error }`
 * @returns what it says as a reading
 */
export function typedReading(
  cell: number | string | boolean | null | { readonly error: string },
): TypedReading {
  if (cell === null) return BLANK;
  if (typeof cell === "number") return { kind: "value", value: cell };
  if (typeof cell === "boolean") return { kind: "unread", text: cell ? "TRUE" : "FALSE" };
  if (typeof cell === "object") return { kind: "unread", text: cell.error };
  const text = cell.normalize("NFKC").trim();
  if (text === "") return BLANK;
  const packed = text.replace(/[\s\u00A0]/g, "").replaceAll("−", "-");
  if (NO_SIGNAL.has(packed.toLowerCase().replace(/[-.!]/g, ""))) return { kind: "no signal" };
  const found = NUMBER.exec(packed);
  const unit = found?.[4] ?? "";
  if (!found || (unit !== "" && !UNITS.test(unit))) return { kind: "unread", text };
  // Under what the meter can show there is no signal.
  if (found[1]) return { kind: "no signal" };
  const size = Number(found[3]!.replace(",", "."));
  const value = found[2] === "-" ? -size : size;
  return unit === ""
    ? { kind: "value", value }
    : { kind: "value", value, unit: unit.replace(/^dB[uμ]/i, "dBµ") };
}
