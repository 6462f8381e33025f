/**
 * One record of a log: a head line with sequence, length and checksum, the
 * payload, a line end. The checksum covers the sequence and the length too, so
 * that a record is never read in another's place.
 *
 *     #12 57 9f3c01aa
 *     {…57 bytes of UTF-8…}
 */
import { checksum } from "./checksum";

export interface Tail {
  /** Where the first byte stands that is part of no record. */
  readonly at: number;
  readonly length: number;
  /**
   * The bytes could be the beginning of one record whose write was cut short,
   * the rest of it missing, or empty because its length reached the disk before
   * it. Otherwise something changed them: or power went while their sectors were
   * written out of order, which looks the same.
   */
  readonly cutShort: boolean;
}

export interface Records {
  readonly payloads: readonly unknown[];
  /** What follows them and could not be read; absent where all could. */
  readonly tail?: Tail;
}

const NEWLINE = 0x0a;
/** A head is shorter than this, whatever the record. */
const LONGEST_HEAD = 40;
const HEAD = /^#(\d{1,15}) (\d{1,10}) ([0-9a-f]{8})$/;
/** What may follow the sequence in the beginning of a head. */
const HEAD_SO_FAR = /^[1-9]\d{0,9}(?: [0-9a-f]{0,8})?$/;
/** No disk writes a smaller part by itself. */
const SECTOR = 512;
/** Below it is what JSON writes only escaped. */
const FIRST_SIGN = 0x20;

const encoder = new TextEncoder();
const decoder = new TextDecoder("utf-8", { fatal: true });

/** @param sequence of the record in its log, from 0 */
export function encoded(sequence: number, payload: unknown): Uint8Array {
  const body = encoder.encode(JSON.stringify(payload));
  const head = encoder.encode(`#${sequence} ${body.length} ${sumOf(sequence, body)}\n`);
  const bytes = new Uint8Array(head.length + body.length + 1);
  bytes.set(head);
  bytes.set(body, head.length);
  bytes[bytes.length - 1] = NEWLINE;
  return bytes;
}

/** Reads as far as it can be read: nothing after a record that is not whole is believed. */
export function decoded(bytes: Uint8Array): Records {
  const payloads: unknown[] = [];
  for (let at = 0; at < bytes.length;) {
    const one = recordAt(bytes, at, payloads.length);
    if (typeof one === "string")
      return { payloads, tail: { at, length: bytes.length - at, cutShort: one === "cut short" } };
    payloads.push(one.payload);
    at = one.end;
  }
  return { payloads };
}

function recordAt(
  bytes: Uint8Array,
  at: number,
  sequence: number,
): { payload: unknown; end: number } | "cut short" | "changed" {
  const lineEnd = bytes.subarray(at, at + LONGEST_HEAD).indexOf(NEWLINE);
  const head = lineEnd < 0 ? null : HEAD.exec(latin1(bytes.subarray(at, at + lineEnd)));
  if (!head || Number(head[1]) !== sequence) return cutOrChanged(bytes, at, sequence);
  const from = at + lineEnd + 1;
  const to = from + Number(head[2]);
  const body = bytes.subarray(from, to);
  if (bytes[to] !== NEWLINE || head[3] !== sumOf(sequence, body)) return cutOrChanged(bytes, at, sequence);
  try {
    return { payload: JSON.parse(decoder.decode(body)), end: to + 1 };
  } catch {
    return "changed";
  }
}

/** Whether a writer could have written what stands from here to the end, and not come further. */
function cutOrChanged(bytes: Uint8Array, at: number, sequence: number): "cut short" | "changed" {
  const rest = bytes.subarray(at, startOfNothing(bytes, at));
  const lineEnd = rest.subarray(0, LONGEST_HEAD).indexOf(NEWLINE);
  if (lineEnd < 0)
    return rest.length < LONGEST_HEAD && isHeadSoFar(latin1(rest), sequence) ? "cut short" : "changed";
  const head = HEAD.exec(latin1(rest.subarray(0, lineEnd)));
  if (!head || Number(head[1]) !== sequence) return "changed";
  const body = rest.subarray(lineEnd + 1);
  const length = Number(head[2]);
  // A line end within it belongs to a record that is longer than its head says.
  if (body.length > length || !isTextSoFar(body)) return "changed";
  return body.length < length || head[3] === sumOf(sequence, body) ? "cut short" : "changed";
}

/** Where the sectors begin that hold nothing up to the end. */
function startOfNothing(bytes: Uint8Array, at: number): number {
  let end = bytes.length;
  while (end > at && bytes[end - 1] === 0) end--;
  const start = end === at ? at : Math.ceil(end / SECTOR) * SECTOR;
  return Math.min(start, bytes.length);
}

function isHeadSoFar(text: string, sequence: number): boolean {
  const start = `#${sequence} `;
  return text.length <= start.length
    ? start.startsWith(text)
    : text.startsWith(start) && HEAD_SO_FAR.test(text.slice(start.length));
}

function isTextSoFar(body: Uint8Array): boolean {
  if (body.some((byte) => byte < FIRST_SIGN)) return false;
  try {
    new TextDecoder("utf-8", { fatal: true }).decode(body, { stream: true });
    return true;
  } catch {
    return false;
  }
}

const latin1 = (bytes: Uint8Array): string => String.fromCharCode(...bytes);

function sumOf(sequence: number, body: Uint8Array): string {
  const facts = encoder.encode(`${sequence} ${body.length} `);
  const all = new Uint8Array(facts.length + body.length);
  all.set(facts);
  all.set(body, facts.length);
  return checksum(all).toString(16).padStart(8, "0");
}
