/** A tiny ZIP writer that can lie; it shares nothing with the file host. */
import { crc32, deflateRawSync } from "node:zlib";

export interface Entry {
  readonly name: string;
  readonly content: string | Uint8Array;
  /** What the directory says instead of the truth. */
  readonly size?: number;
  readonly flags?: number;
}

export function zip(entries: readonly Entry[]): Buffer {
  const local: Buffer[] = [];
  const directory: Buffer[] = [];
  let offset = 0;
  for (const { name, content, size, flags = 0 } of entries) {
    const plain = Buffer.from(content as Uint8Array);
    const packed = deflateRawSync(plain);
    const title = Buffer.from(name, "utf8");
    const shared = Buffer.alloc(26);
    [20, flags, 8, 0, 0x21].forEach((value, index) => shared.writeUInt16LE(value, index * 2));
    shared.writeUInt32LE(crc32(plain), 10);
    shared.writeUInt32LE(packed.length, 14);
    shared.writeUInt32LE(size ?? plain.length, 18);
    shared.writeUInt16LE(title.length, 22);
    local.push(Buffer.from("PK\x03\x04", "latin1"), shared, title, packed);
    const tail = Buffer.alloc(16);
    tail.writeUInt32LE(offset, 12);
    directory.push(Buffer.from("PK\x01\x02\x14\x00", "latin1"), shared, tail.subarray(2), title);
    offset += 30 + title.length + packed.length;
  }
  const list = Buffer.concat(directory);
  const end = Buffer.alloc(22);
  end.write("PK\x05\x06", "latin1");
  end.writeUInt16LE(entries.length, 8);
  end.writeUInt16LE(entries.length, 10);
  end.writeUInt32LE(list.length, 12);
  end.writeUInt32LE(offset, 16);
  return Buffer.concat([...local, list, end]);
}
