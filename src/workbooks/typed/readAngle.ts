/** A latitude or a longitude: signed degrees, degrees with their point of the compass, degrees and minutes. */
import { asFigures } from "./plainText";
import { readNumeral } from "./readNumeral";
import type { Reading, TypedContext } from "./reading";
import { sentences } from "./sentences";
import type { NumberKind } from "./typedKind";
import { rounded, storedUnit } from "./units";
import { withinLimits } from "./withinLimits";

const POINT = "[NSEWO]|north|south|east|west|nord|süd|sud|ost|ouest|oeste|ovest";
const BEFORE = new RegExp(`^(${POINT}) ?(?=\\d)`, "i");
const BEHIND = new RegExp(` ?(${POINT})$`, "i");
const SEXAGESIMAL = /^(\d+)° ?(\d+(?:[.,]\d+)?)'(?: ?(\d+(?:[.,]\d+)?)")?$/;

export function readAngle(text: string, kind: NumberKind, context: TypedContext): Reading<number> {
  const notTaken = { refused: sentences.notTaken(text, kind, undefined) };
  const plain = asFigures(text);
  const named = BEFORE.exec(plain) ?? BEHIND.exec(plain);
  const rest = plain.replace(named?.[0] ?? "", "").trim();
  const direction = named ? directionOf(named[1]!, context) : "";
  const axis = kind.quantity === "latitude" ? "NS" : "EW";
  // A minus and a point of the compass say it twice, and not always the same.
  if (direction === undefined || (direction && (!axis.includes(direction) || /^[+-]/.test(rest))))
    return notTaken;
  const degrees = sexagesimal(rest) ?? decimalDegrees(rest, context);
  if (degrees === undefined) return notTaken;
  const signed = direction === axis[1] ? 0 - degrees : degrees;
  return withinLimits(text, signed, kind, storedUnit(kind, context.lengths));
}

/** @returns undefined for `O`, which is east to some and west to others, where the document does not tell */
function directionOf(word: string, { writing }: TypedContext): string | undefined {
  const plain = word.toLowerCase();
  if (plain === "o") return writing?.o;
  if (plain === "ost") return "E";
  if (/^(?:ouest|oeste|ovest)$/.test(plain)) return "W";
  return plain[0]!.toUpperCase();
}

function sexagesimal(text: string): number | undefined {
  const found = SEXAGESIMAL.exec(text);
  if (!found) return undefined;
  const [degrees, minutes, seconds = 0] = found
    .slice(1)
    .map((part) => (part === undefined ? undefined : Number(part.replace(",", "."))));
  return minutes! < 60 && seconds < 60 ? rounded(degrees! + minutes! / 60 + seconds / 3600) : undefined;
}

function decimalDegrees(text: string, context: TypedContext): number | undefined {
  const numeral = readNumeral(text.replace(/ ?(?:°|deg|degrees?)$/i, ""), { context });
  if (!numeral) return undefined;
  // 47 376 degrees do not exist.
  return "value" in numeral ? numeral.value : numeral.decimal;
}
