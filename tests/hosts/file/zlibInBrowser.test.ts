/** What stands in for Node's zlib in the browser answers as Node's does, and refuses what Node's refuses. */
import * as node from "node:zlib";
import { deflateSync } from "fflate";
import * as ours from "../../../src/hosts/file/zlibInBrowser";

/** Text as in a sheet, bytes of no pattern, one byte and none. */
const CONTENTS: readonly Uint8Array[] = [
  new TextEncoder().encode('<c r="A1" t="n"><v>12.5</v></c>'.repeat(5000)),
  Uint8Array.from({ length: 70_000 }, (_, index) => (index * 2_654_435_761) >>> 24),
  Uint8Array.of(7),
  new Uint8Array(0),
];

test.each(CONTENTS.map((content) => [content.length, content] as const))("%d bytes", (length, content) => {
  expect(ours.crc32(content)).toBe(node.crc32(content));
  const room = { maxOutputLength: Math.max(1, length) };
  // By the packer that writes our files, and by another.
  for (const packed of [deflateSync(content), node.deflateRawSync(content)]) {
    expect(Buffer.from(ours.inflateRawSync(packed, room)).equals(content)).toBe(true);
    expect(node.inflateRawSync(packed, room).equals(content)).toBe(true);
  }
});

test.each([
  ["packed", node.deflateRawSync(CONTENTS[0]!)],
  ["stored", node.deflateRawSync(CONTENTS[1]!, { level: 0 })],
])("a part that unpacks to more than it declares is refused: %s", (_, packed) => {
  for (const maxOutputLength of [1, 1000, CONTENTS[1]!.length - 1]) {
    expect(() => node.inflateRawSync(packed, { maxOutputLength })).toThrow();
    expect(() => ours.inflateRawSync(packed, { maxOutputLength })).toThrow();
  }
});

test("a part that is cut short is refused", () => {
  const packed = node.deflateRawSync(CONTENTS[0]!);
  for (const { inflateRawSync } of [node, ours]) {
    expect(() => inflateRawSync(packed.subarray(0, -4), { maxOutputLength: 1_000_000 })).toThrow();
  }
});
