/** A length as people write it, without the words that only say that it is one, or that it is an estimate. */
import { asFigures } from "../typed/plainText";

export interface BareLength {
  readonly text: string;
  /** "ca.", "~", or a question mark behind it. */
  readonly approximate: boolean;
}

const WORD =
  "ca|circa|cca|zirka|approx(?:imately|imate)?|appr|app|about|abt|around|roughly|say|etwa|ungef(?:ä|ae|a)hr|ungef|rund|env|environ|aprox(?:imadamente)?|unos|est(?:imated|imate)?|gesch(?:ätzt)?|c";
const BEFORE = new RegExp(`^(?:(?:${WORD})\\.? ?:? ?(?=\\d)|[~≈∼?] ?|\\+/- ?(?=\\d)|± ?(?=\\d))`, "i");
const AFTER = new RegExp(`(?: ?\\((?:${WORD})\\.?\\)| (?:${WORD})\\.?| ?\\(?\\?+\\)?| ?[~≈∼])$`, "i");
/** "mtrs", "lfm" (of the length of a run), and a unit that is said twice. */
const METRES = /(\d) ?(?:mtrs?|mts?|lfdm|lfm|lm|ml|meters?|metres?|m\.)\.?(?=$|[^\p{L}])/giu;

/** Behind a figure of a survey that is no word that was not finished. */
const INCHES = /(\d) ?in\.?$/i;

export function bareLength(written: string): BareLength {
  let text = asFigures(written);
  let approximate = false;
  for (const pattern of [BEFORE, BEFORE, AFTER, AFTER]) {
    const next = text.replace(pattern, "").trim();
    if (next !== text && /\d/.test(next)) {
      approximate = true;
      text = next;
    }
  }
  return { text: text.replace(METRES, "$1 m").replace(INCHES, '$1"'), approximate };
}
