/**
 * How large a picture file is, from its own head.
 *
 * Source: PNG, third edition, 11.2.1 (IHDR); ITU-T T.81, B.2.2 (frame header).
 */

const PNG_WIDTH_AT = 16;
const PNG_HEIGHT_AT = 20;
/** Start of frame, all kinds; three codes between them are something else. */
const isFrame = (code: number): boolean =>
  code >= 0xc0 && code <= 0xcf && code !== 0xc4 && code !== 0xc8 && code !== 0xcc;

/** @returns pixels; undefined where the file does not say */
export function imageSize(
  bytes: Uint8Array,
  format: "png" | "jpeg",
): { readonly width: number; readonly height: number } | undefined {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  try {
    if (format === "png") return positive(view.getUint32(PNG_WIDTH_AT), view.getUint32(PNG_HEIGHT_AT));
    for (let at = 2; ;) {
      if (view.getUint8(at) !== 0xff) return undefined;
      const code = view.getUint8(at + 1);
      if (isFrame(code)) return positive(view.getUint16(at + 7), view.getUint16(at + 5));
      at += 2 + view.getUint16(at + 2);
    }
  } catch (error) {
    // Cut off before it says.
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

const positive = (width: number, height: number): { width: number; height: number } | undefined =>
  width > 0 && height > 0 ? { width, height } : undefined;
