/**
 * The text of a file in one of the encodings that spreadsheet programs write.
 * A byte-order mark decides (Unicode standard, 23.8); without one the text is
 * UTF-16 where every other byte is zero, UTF-8 where it is valid UTF-8, and
 * else Windows-1252, in which any byte is a letter, unless that gives signs
 * within words: those are letters of Windows-1250, in which Poles, Czechs,
 * Slovaks and Hungarians write.
 */
export interface DecodedText {
  readonly text: string;
  readonly encoding: "UTF-8" | "UTF-16" | "Windows-1250" | "Windows-1252";
}

const LOOKED_AT_BYTES = 512;

/** @returns undefined for what is no text */
export function decodedText(bytes: Uint8Array): DecodedText | undefined {
  const wide = wideLabel(bytes);
  if (wide) return plain(new TextDecoder(wide).decode(bytes), "UTF-16");
  try {
    return plain(new TextDecoder("utf-8", { fatal: true }).decode(bytes), "UTF-8");
  } catch {
    const western = windows1252(bytes);
    return SIGNS_WITHIN_WORDS.test(western)
      ? plain(new TextDecoder("windows-1250").decode(bytes), "Windows-1250")
      : plain(western, "Windows-1252");
  }
}

/** ł, ą, ż and ľ of Windows-1250 where Windows-1252 has ³, ¹, ¿ and ¾: a cubic metre and a note's number are no words. */
const SIGNS_WITHIN_WORDS = /[a-z][³¹¿¾][a-z]|\bz³(?![a-z])/i;

/**
 * The letters of 0x80 to 0x9F (WHATWG Encoding, index windows-1252; five codes stand for themselves).
 * Node 20 decodes them as Latin-1 has them.
 */
const FROM_80 = "€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ";

const windows1252 = (bytes: Uint8Array): string =>
  new TextDecoder("windows-1252")
    .decode(bytes)
    .replace(/[\u0080-\u009f]/g, (letter) => FROM_80[letter.charCodeAt(0) - 0x80]!);

const plain = (text: string, encoding: DecodedText["encoding"]): DecodedText | undefined =>
  text.includes("\u0000") ? undefined : { text, encoding };

function wideLabel(bytes: Uint8Array): "utf-16le" | "utf-16be" | undefined {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return "utf-16le";
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return "utf-16be";
  const pairs = Math.floor(Math.min(bytes.length, LOOKED_AT_BYTES) / 2);
  let even = 0;
  let odd = 0;
  for (let pair = 0; pair < pairs; pair++) {
    if (bytes[2 * pair] === 0) even++;
    if (bytes[2 * pair + 1] === 0) odd++;
  }
  // Letters beyond Latin have no zero byte, so most pairs is enough; both sides zero is no text.
  if (pairs > 0 && odd > pairs / 2 && even === 0) return "utf-16le";
  return pairs > 0 && even > pairs / 2 && odd === 0 ? "utf-16be" : undefined;
}
