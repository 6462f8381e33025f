/** An orbital slot as our functions know it: `97W`, `13.5E`. */
import { asFigures } from "./plainText";
import { readNumeral } from "./readNumeral";
import type { Reading, TypedContext } from "./reading";
import { sentences } from "./sentences";

const EAST = "E|east|ost|est|este";
const WEST = "W|west|ouest|oeste|ovest";
const BEHIND = new RegExp(`^(\\d[\\d.,]*) ?°? ?(${EAST}|${WEST}|O)$`, "i");
const BEFORE = new RegExp(`^(${EAST}|${WEST}|O) ?(\\d[\\d.,]*)°?$`, "i");
const IS_EAST = new RegExp(`^(?:${EAST})$`, "i");
const FARTHEST = 180;

export function readSlot(text: string, context: TypedContext): Reading<string> {
  const refused = { refused: sentences.notSlot(text) };
  const plain = asFigures(text);
  const behind = BEHIND.exec(plain);
  const before = BEFORE.exec(plain);
  const figures = behind?.[1] ?? before?.[2];
  const word = behind?.[2] ?? before?.[1];
  if (figures === undefined || word === undefined) return refused;
  const numeral = readNumeral(figures, { context });
  // No slot has thousands of degrees.
  const degrees = numeral && ("value" in numeral ? numeral.value : numeral.decimal);
  const letter = /^o$/i.test(word) ? context.writing?.o : IS_EAST.test(word) ? "E" : "W";
  if (degrees === undefined || degrees > FARTHEST || letter === undefined) return refused;
  return { value: `${degrees}${letter}` };
}
