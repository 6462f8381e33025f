/**
 * A web server for the static folder, under a sub-path, from memory. It can be
 * told bad habits; the list of habits was made by someone who had not seen the
 * code (as a server in Python, of which this is a translation).
 */
import { createHash } from "node:crypto";
import { createServer, type IncomingMessage, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import path from "node:path";
import type { Files } from "../../../src/build/static/deskFiles";

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript",
  ".css": "text/css",
  ".webmanifest": "application/manifest+json",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".xml": "text/xml",
  ".txt": "text/plain",
  ".woff2": "font/woff2",
};
const LOGIN = "<!doctype html><title>Sign in</title><h1>Guest network</h1>";

export interface Habits {
  /** Scripts and styles as plain text; with `nosniff` a browser then refuses them. */
  readonly types?: "text" | "octet" | "none" | "latin1";
  readonly nosniff?: boolean;
  /** Every unknown path, and those named, answer 200 with the folder's page. */
  readonly fallback?: readonly string[];
  /** Everything is a guest network's page. */
  readonly portal?: "page" | "redirect";
  readonly cache?: "forever" | "never";
  /** Each second answer stops half-way. */
  readonly cut?: boolean;
  readonly missing?: RegExp;
  /** A sub-path without its stroke at the end is answered as if it had one. */
  readonly noSlash?: boolean;
  /** A policy of the server's own. */
  readonly policy?: string;
  /** Each third answer is 500. */
  readonly failing?: boolean;
  readonly delayMs?: number;
}

export interface FolderServer {
  readonly address: string;
  /** Paths asked for, in order. */
  readonly asked: string[];
  /** Files that were sent, as often as they were; not those of which a browser had the same already. */
  readonly sent: string[];
  files: Files;
  habits: Habits;
  /** No answer any more, as with no network; the address stays its own. */
  stop(): Promise<void>;
  start(): Promise<void>;
}

/** @param under the sub-path, with a stroke at both ends */
export async function serveFolder(files: Files, under = "/tools/rigsheet/"): Promise<FolderServer> {
  let count = 0;
  let port = 0;
  const asked: string[] = [];
  const sent: string[] = [];
  const http = createServer((request, response) => {
    const { pathname } = new URL(request.url ?? "/", "http://x");
    asked.push(pathname);
    count++;
    setTimeout(() => answer(decodeURIComponent(pathname), request, response), served.habits.delayMs ?? 0);
  });
  const send = (response: ServerResponse, status: number, body: string | Uint8Array, type?: string): void => {
    const { types, nosniff, cache, cut, failing, policy } = served.habits;
    const fails = failing && count % 3 === 0;
    response.statusCode = fails ? 500 : status;
    if (type && types !== "none") response.setHeader("Content-Type", type);
    if (nosniff) response.setHeader("X-Content-Type-Options", "nosniff");
    if (cache === "forever") response.setHeader("Cache-Control", "public, max-age=31536000, immutable");
    if (policy) response.setHeader("Content-Security-Policy", policy);
    if (cache === "never") response.setHeader("Cache-Control", "no-store");
    const bytes = Buffer.from(fails ? "error" : body);
    response.setHeader("Content-Length", bytes.length);
    if (cut && count % 2 === 0) {
      response.write(bytes.subarray(0, bytes.length >> 1), () => response.destroy());
      return;
    }
    response.end(bytes);
  };
  const answer = (pathname: string, request: IncomingMessage, response: ServerResponse): void => {
    const { portal, fallback, missing, types, noSlash } = served.habits;
    if (portal === "redirect" && pathname !== "/login") {
      response.setHeader("Location", "/login");
      return send(response, 302, "");
    }
    if (portal) return send(response, 200, LOGIN, "text/html");
    if (`${pathname}/` === under && noSlash)
      return send(response, 200, served.files.get("index.html")!, TYPES[".html"]);
    if (`${pathname}/` === under) {
      response.setHeader("Location", under);
      return send(response, 301, "");
    }
    if (!pathname.startsWith(under)) return send(response, 404, "outside the sub-path", "text/plain");
    const asked = pathname.slice(under.length);
    const name = asked === "" || asked.endsWith("/") ? `${asked}index.html` : asked;
    const bytes = missing?.test(name) ? undefined : served.files.get(name);
    if (fallback && (!bytes || fallback.some((one) => name.endsWith(one))))
      return send(response, 200, served.files.get("index.html")!, TYPES[".html"]);
    if (!bytes) return send(response, 404, "not found", "text/plain");
    // As all common servers do.
    const tag = `"${createHash("sha256").update(bytes).digest("hex")}"`;
    response.setHeader("ETag", tag);
    if (request.headers["if-none-match"] === tag) {
      response.statusCode = 304;
      response.end();
      return;
    }
    sent.push(name);
    const extension = path.extname(name);
    const right = TYPES[extension] ?? "application/octet-stream";
    const type =
      extension === ".html"
        ? types === "latin1"
          ? "text/html; charset=iso-8859-1"
          : right
        : types === "text"
          ? "text/plain"
          : types === "octet"
            ? "application/octet-stream"
            : types === "latin1" && right.startsWith("text/")
              ? `${right}; charset=iso-8859-1`
              : right;
    send(response, 200, bytes, type);
  };
  const served: FolderServer = {
    get address() {
      return `http://127.0.0.1:${port}${under}`;
    },
    asked,
    sent,
    files,
    habits: {},
    start: () =>
      new Promise((resolve) =>
        http.listen(port, "127.0.0.1", () => {
          ({ port } = http.address() as AddressInfo);
          resolve();
        }),
      ),
    stop: () =>
      new Promise((resolve) => {
        http.close(() => resolve());
        http.closeAllConnections();
      }),
  };
  await served.start();
  return served;
}
