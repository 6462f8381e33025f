/** A PNG of one grey pixel, put together by hand from the format (PNG, third edition, 5 and 11). */
import { crc32, deflateSync } from "node:zlib";

function chunk(name: string, data: Uint8Array): Buffer {
  const typed = Buffer.concat([Buffer.from(name, "latin1"), data]);
  const whole = Buffer.alloc(8 + typed.length);
  whole.writeUInt32BE(data.length, 0);
  typed.copy(whole, 4);
  whole.writeUInt32BE(crc32(typed), 4 + typed.length);
  return whole;
}

// Width 1, height 1, 8 bits, grey.
const head = Buffer.from([0, 0, 0, 1, 0, 0, 0, 1, 8, 0, 0, 0, 0]);
const signature = Buffer.from([137, 80, 78, 71, 13, 10, 26, 10]);

export const onePixel = new Uint8Array(
  Buffer.concat([
    signature,
    chunk("IHDR", head),
    chunk("IDAT", deflateSync(Buffer.from([0, 128]))),
    chunk("IEND", Buffer.alloc(0)),
  ]),
);
