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
  /** The bytes could be the beginning of one record whose write was cut short; otherwise something changed them. */
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
  if (lineEnd < 0) return bytes.length - at < LONGEST_HEAD ? "cut short" : "changed";
  const head = HEAD.exec(String.fromCharCode(...bytes.subarray(at, at + lineEnd)));
  if (!head || Number(head[1]) !== sequence) return "changed";
  const from = at + lineEnd + 1;
  const to = from + Number(head[2]);
  if (to + 1 > bytes.length) return "cut short";
  const body = bytes.subarray(from, to);
  if (bytes[to] !== NEWLINE || head[3] !== sumOf(sequence, body)) return "changed";
  try {
    return { payload: JSON.parse(decoder.decode(body)), end: to + 1 };
  } catch {
    return "changed";
  }
}

function sumOf(sequence: number, body: Uint8Array): string {
  const facts = encoder.encode(`${sequence} ${body.length} `);
  const all = new Uint8Array(facts.length + body.length);
  all.set(facts);
  all.set(body, facts.length);
  return checksum(all).toString(16).padStart(8, "0");
}
