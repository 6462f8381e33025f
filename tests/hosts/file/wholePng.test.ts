/** A PNG that is whole, damaged, cut, or larger than it says; the pictures are put together here, chunk by chunk. */
import { crc32, deflateSync } from "node:zlib";
import { isWholePng } from "../../../src/hosts/file/wholePng";

const chunk = (kind: string, data: Uint8Array): Buffer => {
  const named = Buffer.concat([Buffer.from(kind, "latin1"), data]);
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  sum.writeUInt32BE(crc32(named));
  return Buffer.concat([length, named, sum]);
};

interface Kind {
  readonly width: number;
  readonly height: number;
  readonly depth: number;
  readonly colour: number;
  readonly interlaced?: boolean;
}

const SIGNATURE = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);

function png({ width, height, depth, colour, interlaced = false }: Kind, data: Uint8Array): Buffer {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([depth, colour, 0, 0, interlaced ? 1 : 0], 8);
  return Buffer.concat([
    SIGNATURE,
    chunk("IHDR", head),
    ...(colour === 3 ? [chunk("PLTE", Buffer.from([0, 0, 0, 255, 255, 255]))] : []),
    chunk("IDAT", data),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}

/** PNG specification, 8.2: the pass in which a pixel of an 8 by 8 block is sent. */
const ADAM7 = [
  "16462646",
  "77777777",
  "56565656",
  "77777777",
  "36463646",
  "77777777",
  "56565656",
  "77777777",
];

/** Counted pixel by pixel: each row of a pass that has any begins with a byte of its own. */
function unpackedLength({ width, height, depth, colour, interlaced }: Kind): number {
  const bits = depth * { 0: 1, 2: 3, 3: 1, 4: 2, 6: 4 }[colour]!;
  const rows = new Map<string, number>();
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const row = `${interlaced ? ADAM7[y % 8]![x % 8] : ""} ${y}`;
      rows.set(row, (rows.get(row) ?? 0) + bits);
    }
  return [...rows.values()].reduce((sum, pixels) => sum + 1 + Math.ceil(pixels / 8), 0);
}

const KINDS: readonly Kind[] = [
  { width: 7, height: 5, depth: 8, colour: 6 },
  { width: 13, height: 3, depth: 1, colour: 3 },
  { width: 9, height: 9, depth: 16, colour: 0 },
  { width: 4, height: 4, depth: 8, colour: 2 },
  { width: 6, height: 2, depth: 8, colour: 4 },
  ...[1, 3, 5, 8, 17].map((side): Kind => ({
    width: side,
    height: 20 - side,
    depth: 4,
    colour: 0,
    interlaced: true,
  })),
];

test.each(KINDS.map((kind) => [JSON.stringify(kind), kind] as const))("%s", (_, kind) => {
  const length = unpackedLength(kind);
  const whole = png(kind, deflateSync(Buffer.alloc(length)));
  expect(isWholePng(whole)).toBe(true);
  expect(isWholePng(png(kind, deflateSync(Buffer.alloc(length - 1))))).toBe(false);
  expect(isWholePng(png(kind, deflateSync(Buffer.alloc(length + 1))))).toBe(false);
  for (let cut = 1; cut < whole.length; cut += 5) expect(isWholePng(whole.subarray(0, -cut))).toBe(false);
  // Any byte behind the signature is under a checksum.
  for (let at = SIGNATURE.length + 4; at < whole.length - 12; at += 3) {
    const damaged = Buffer.from(whole);
    damaged[at]! ^= 0x10;
    expect(isWholePng(damaged)).toBe(false);
  }
});

test("data with a right checksum that does not unpack", () => {
  expect(isWholePng(png(KINDS[0]!, Buffer.from([0x78, 0x9c, 1, 2, 3, 4, 5, 6])))).toBe(false);
});

test("a small file that unpacks to very much is not unpacked", () => {
  const bomb = png({ width: 4, height: 4, depth: 8, colour: 6 }, deflateSync(Buffer.alloc(20_000_000)));
  expect(bomb.length).toBeLessThan(100_000);
  expect(isWholePng(bomb)).toBe(false);
});
