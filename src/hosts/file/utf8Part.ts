/**
 * A part of a workbook in UTF-8, whatever it was written in: XML may be UTF-16
 * as well (XML 1.0, 4.3.3), the library reads UTF-8 only, and what looks for
 * forbidden declarations looks at bytes. Any other encoding is refused.
 */
import { stop, troubles } from "./fileTrouble";

const DECLARATION = /^\uFEFF?<\?xml\s[^>]*?\bencoding\s*=\s*(?:"([^"]*)"|'([^']*)')/;
const DECLARED_BYTES = 200;
const READ = /^(?:utf-?8|utf-?16(?:le|be)?|us-ascii|ascii)$/i;

export function utf8Part(name: string, content: Uint8Array): Uint8Array {
  const wide = wideLabel(content);
  if (wide) {
    const xml = new TextDecoder(wide).decode(content);
    checkEncoding(name, xml);
    return new TextEncoder().encode(
      xml.replace(/^(<\?xml\s[^>]*?\bencoding\s*=\s*)(?:"[^"]*"|'[^']*')/, '$1"UTF-8"'),
    );
  }
  checkEncoding(
    name,
    new TextDecoder("latin1").decode(content.subarray(0, DECLARED_BYTES)).replace("ï»¿", ""),
  );
  return content;
}

function checkEncoding(name: string, xml: string): void {
  const found = DECLARATION.exec(xml);
  const encoding = found?.[1] ?? found?.[2];
  if (encoding !== undefined && !READ.test(encoding))
    stop(troubles.otherLetters(name, JSON.stringify(encoding.slice(0, 40))));
}

/** By the mark at its beginning, or by the zero byte beside its first "<". */
function wideLabel([first, second]: Uint8Array): "utf-16le" | "utf-16be" | undefined {
  if ((first === 0xff && second === 0xfe) || (first === 0x3c && second === 0)) return "utf-16le";
  if ((first === 0xfe && second === 0xff) || (first === 0 && second === 0x3c)) return "utf-16be";
  return undefined;
}
