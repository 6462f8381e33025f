/**
 * Who may ask the desk's server. It listens on the loopback address only, but
 * any page in the same browser can reach that address: a foreign name that
 * resolves to it is refused by its Host header, and a foreign page's writing
 * request by its Origin and by a header that it can't add unasked.
 */
import { createHmac, randomBytes } from "node:crypto";
import type { IncomingMessage, ServerResponse } from "node:http";
import { DESK_HEADER, KEY_HEADER } from "../protocol";

const LOOPBACK_HOSTS = new Set(["127.0.0.1", "localhost", "[::1]"]);

function isLoopback(host: string | undefined, port: number): boolean {
  const found = /^(.+?)(?::(\d+))?$/.exec(host ?? "");
  return found !== null && LOOPBACK_HOSTS.has(found[1]!.toLowerCase()) && (found[2] ?? "80") === String(port);
}

/** @returns the sentence of a refusal, or undefined when the request may pass */
export function refusalOf(request: IncomingMessage, port: number): string | undefined {
  if (!isLoopback(request.headers.host, port)) {
    return "This server answers only under the loopback address. Open the address that it printed.";
  }
  const { origin } = request.headers;
  if (origin !== undefined && !isLoopback(/^http:\/\/(.*)$/.exec(origin)?.[1], port)) {
    return "Another page asked for this; only the workbook's own page may.";
  }
  const reads = request.method === "GET" || request.method === "HEAD";
  if (!reads && request.headers[DESK_HEADER] === undefined) {
    return "Only the workbook's own page may change the job.";
  }
  return undefined;
}

/**
 * Whether whoever asks brings the key. A header, and no cookie: a browser hands
 * cookies to every port of an address, and another account may listen there.
 */
export const hasKey = ({ headers }: IncomingMessage, key: string): boolean => headers[KEY_HEADER] === key;

const TOKEN_BYTES = 24;
export const newToken = (): string => randomBytes(TOKEN_BYTES).toString("base64url");

/** Words that open the desk once: an address that is handed to a browser can be read by others on some systems. */
export class OnceTokens {
  private readonly open = new Set<string>();

  make(): string {
    const token = newToken();
    this.open.add(token);
    return token;
  }

  /** @returns whether it was good; from here on it is not */
  take(token: string): boolean {
    return this.open.delete(token);
  }
}

/**
 * What a desk answers to whoever asks whether it lives: it can be worked out
 * only with the key, and is another for each asking. Whoever heard an answer
 * and listens at the desk's port later can't pass for it.
 */
export const signOfLife = (key: string, name: string, asked: string): string =>
  createHmac("sha256", key).update(`${name} ${asked}`).digest("hex");

// The grid library compiles its templates with `new Function`, hence
// 'unsafe-eval', and sets sizes as style attributes, hence 'unsafe-inline' for
// styles. No script of ours is inline, and nothing may come from elsewhere.
const POLICY = [
  "default-src 'none'",
  "script-src 'self' 'unsafe-eval'",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join("; ");

export function setGuardHeaders(response: ServerResponse): void {
  response.setHeader("Content-Security-Policy", POLICY);
  response.setHeader("X-Content-Type-Options", "nosniff");
  response.setHeader("Referrer-Policy", "no-referrer");
  response.setHeader("Cross-Origin-Opener-Policy", "same-origin");
  response.setHeader("Cross-Origin-Resource-Policy", "same-origin");
  response.setHeader("Cache-Control", "no-store");
}
