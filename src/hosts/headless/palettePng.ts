/**
 * A PNG of few colours (PNG specification, 3rd edition, clauses 5 and 11):
 * drawings have a few dozen shades, and a byte a pixel packs far smaller than
 * four. The packer is the same on every machine, unlike the system's own.
 */
import { zlibSync } from "fflate";
import { checksum } from "../../jobs/checksum";
import { joined } from "../../jobs/joined";

const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
const MOST_COLOURS = 256;
const BIT_DEPTH = 8;
const INDEXED = 3;

/**
 * @param pixels red, green, blue and alpha of each pixel, row by row; the alpha must be full
 * @returns the file, or `undefined` when there are too many colours
 */
export function palettePng(pixels: Uint8Array, width: number, height: number): Uint8Array | undefined {
  const colours = new Map<number, number>();
  // Each row begins with its filter: none.
  const rows = new Uint8Array(height * (width + 1));
  const view = new DataView(pixels.buffer, pixels.byteOffset, pixels.byteLength);
  for (let row = 0, pixel = 0, at = 0; row < height; row++) {
    at += 1;
    for (let column = 0; column < width; column++, pixel += 4, at += 1) {
      const colour = view.getUint32(pixel);
      let index = colours.get(colour);
      if (index === undefined) {
        index = colours.size;
        if (index === MOST_COLOURS || (colour & 0xff) !== 0xff) return undefined;
        colours.set(colour, index);
      }
      rows[at] = index;
    }
  }
  const head = new Uint8Array(13);
  const headView = new DataView(head.buffer);
  headView.setUint32(0, width);
  headView.setUint32(4, height);
  head[8] = BIT_DEPTH;
  head[9] = INDEXED;
  const palette = Uint8Array.from(
    [...colours.keys()].flatMap((colour) => [colour >>> 24, (colour >>> 16) & 0xff, (colour >>> 8) & 0xff]),
  );
  return joined([
    Uint8Array.from(SIGNATURE),
    chunk("IHDR", head),
    chunk("PLTE", palette),
    chunk("IDAT", zlibSync(rows, { level: 6 })),
    chunk("IEND", new Uint8Array()),
  ]);
}

/** Length, kind, content and checksum of kind and content. */
function chunk(kind: string, content: Uint8Array): Uint8Array {
  const bytes = new Uint8Array(12 + content.length);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, content.length);
  bytes.set(new TextEncoder().encode(kind), 4);
  bytes.set(content, 8);
  view.setUint32(8 + content.length, checksum(bytes.subarray(4, 8 + content.length)));
  return bytes;
}
