/**
 * Archives whose bytes come from their files alone: names in one order, one
 * date, rights that we set, and a packer that is the same on every machine
 * (Node's own may pack otherwise on another processor).
 *
 * A file is { name, bytes, runs }: its path in the archive, and whether it is a program.
 */
import { gzipSync, zipSync } from "fflate";

/** The one that npm gives all files in its packages. */
const DATE = new Date(Date.UTC(1985, 9, 26, 8, 15));
const LEVEL = 6;
const MODE = { program: 0o755, other: 0o644 };
const IN_UNIX = 3;
const PLAIN_FILE = 0o100000;

const inOrder = (files) => [...files].sort((a, b) => (a.name < b.name ? -1 : 1));
const modeOf = ({ runs }) => (runs ? MODE.program : MODE.other);

/** @returns a .zip, which Windows opens by itself */
export function zipOf(files) {
  // A zip has the local time of nowhere; read from the date as local, so written as local.
  const mtime = new Date(
    DATE.getUTCFullYear(),
    DATE.getUTCMonth(),
    DATE.getUTCDate(),
    DATE.getUTCHours(),
    DATE.getUTCMinutes(),
  );
  return zipSync(
    Object.fromEntries(
      inOrder(files).map((file) => [
        file.name,
        [file.bytes, { level: LEVEL, mtime, os: IN_UNIX, attrs: ((PLAIN_FILE | modeOf(file)) << 16) >>> 0 }],
      ]),
    ),
  );
}

/** @returns a .tar.gz, which keeps a program's right to run; npm's packages are of this kind */
export function tarGzOf(files) {
  const parts = inOrder(files).flatMap((file) => [
    headerOf(file),
    file.bytes,
    blank(-file.bytes.length & (BLOCK - 1)),
  ]);
  return gzipSync(Buffer.concat([...parts, blank(2 * BLOCK)]), { level: LEVEL, mtime: 0 });
}

const BLOCK = 512;
const blank = (length) => Buffer.alloc(length);

/** As POSIX.1-1988 has it ("ustar"): name, mode, owners, size, date, sum, kind, mark. */
function headerOf(file) {
  const header = blank(BLOCK);
  const octal = (value, at, length) =>
    header.write(value.toString(8).padStart(length - 1, "0"), at, "latin1");
  const [name, prefix] = parted(file.name);
  header.write(name, 0);
  octal(modeOf(file), 100, 8);
  octal(0, 108, 8);
  octal(0, 116, 8);
  octal(file.bytes.length, 124, 12);
  octal(DATE.getTime() / 1000, 136, 12);
  header.write(" ".repeat(8), 148);
  header.write("0", 156);
  header.write("ustar\u000000", 257, "latin1");
  header.write(prefix, 345);
  const sum = header.reduce((total, byte) => total + byte, 0);
  header.write(`${sum.toString(8).padStart(6, "0")}\0 `, 148, "latin1");
  return header;
}

const MOST_NAME = 100;
const MOST_PREFIX = 155;

/** A long path is parted at a stroke. */
function parted(name) {
  if (Buffer.byteLength(name) <= MOST_NAME) return [name, ""];
  for (let at = name.indexOf("/"); at > 0; at = name.indexOf("/", at + 1)) {
    const [prefix, rest] = [name.slice(0, at), name.slice(at + 1)];
    if (Buffer.byteLength(rest) <= MOST_NAME && Buffer.byteLength(prefix) <= MOST_PREFIX)
      return [rest, prefix];
  }
  throw new Error(`The path ${name} is too long for an archive; shorten it.`);
}
