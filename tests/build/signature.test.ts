/** A Windows program made here by hand, with and without a signature; places after Microsoft's "PE Format". */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";

const script = path.join(__dirname, "../../src/build/executables/withoutSignature.mjs");
const folder = mkdtempSync(path.join(tmpdir(), "rigsheet-signature-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function without(bytes: Buffer): Buffer | string {
  const [from, to] = ["from", "to"].map((name) => path.join(folder, name));
  writeFileSync(from!, bytes);
  const code = `import { readFileSync, writeFileSync } from "node:fs";
    import { withoutSignature } from ${JSON.stringify(script)};
    writeFileSync(${JSON.stringify(to)}, withoutSignature(readFileSync(${JSON.stringify(from)})));`;
  const { status, stderr } = spawnSync(process.execPath, ["--input-type=module", "-e", code], {
    encoding: "utf8",
  });
  return status === 0 ? readFileSync(to!) : stderr;
}

/** The header at 0x80: its mark 4, the file header 20, so the optional header stands at 0x98. */
const HEADER = 0x80;
const OPTIONAL = 0x98;
/** 64 bytes into it; the directories begin 112 bytes into it, 8 bytes each, and that of certificates is the fifth. */
const CHECKSUM = 0xd8;
const CERTIFICATES = 0x128;
const SIGNATURE_AT = 0x200;

function program({ signature = 0, more = 0, magic = 0x20b } = {}): Buffer {
  const bytes = Buffer.alloc(SIGNATURE_AT + signature + more, 0x55);
  bytes.write("MZ", 0, "latin1");
  bytes.writeUInt32LE(HEADER, 0x3c);
  bytes.write("PE\0\0", HEADER, "latin1");
  bytes.writeUInt16LE(magic, OPTIONAL);
  bytes.writeUInt32LE(signature === 0 ? 0 : SIGNATURE_AT, CERTIFICATES);
  bytes.writeUInt32LE(signature, CERTIFICATES + 4);
  return bytes;
}

test("the signature goes, with what points at it and the sum; nothing else does", () => {
  const signed = program({ signature: 0x40 });
  const expected = signed.subarray(0, SIGNATURE_AT);
  expected.fill(0, CERTIFICATES, CERTIFICATES + 8);
  expected.fill(0, CHECKSUM, CHECKSUM + 4);
  expect(without(program({ signature: 0x40 }))).toEqual(expected);
});

test.each<[string, Buffer]>([
  ["one that is not signed", program()],
  ["a program of Linux", Buffer.from("\x7fELF and so on")],
  ["a program of 32 bits", program({ signature: 0x40, magic: 0x10b })],
])("%s stays as it is", (_what, bytes) => expect(without(bytes)).toEqual(bytes));

test("a signature that something follows is not cut off with it", () => {
  expect(without(program({ signature: 0x40, more: 8 }))).toMatch(
    /The signature of the Windows program does not stand at its end\./,
  );
});
