/** The desk as people start it: a process of its own, on a port of its own, with a data folder of its own. */
import { spawn, spawnSync, type ChildProcess } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { createServer, type AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import path from "node:path";
import { DESK_HEADER, KEY, KEY_HEADER } from "../../../src/hosts/desk/protocol";

const project = path.join(__dirname, "..", "..", "..");
const START = path.join(project, "src", "build", "start.mjs");
export const BUILD_MS = 180_000;

/** Built once for all, so that the processes below start at once. */
export function buildDesk(): void {
  const built = spawnSync(process.execPath, [path.join(project, "src", "build", "build.mjs")], {
    encoding: "utf8",
  });
  if (built.status !== 0) throw new Error(built.stdout + built.stderr);
}

export function freePort(): Promise<number> {
  return new Promise((resolve) => {
    const server = createServer();
    server.listen(0, "127.0.0.1", () => {
      const { port } = server.address() as AddressInfo;
      server.close(() => resolve(port));
    });
  });
}

export interface Started {
  readonly process: ChildProcess;
  /** With its key, as it is printed. */
  readonly address: string;
  /** Everything printed up to the address. */
  readonly printed: string;
  /** Ends the process as a crash would. */
  kill(): Promise<void>;
}

export function startDesk(...args: string[]): Promise<Started> {
  const child = spawn(process.execPath, [START, "--no-open", ...args], { stdio: ["ignore", "pipe", "pipe"] });
  return new Promise((resolve, reject) => {
    let printed = "";
    child.stdout.on("data", (part: Buffer) => {
      printed += part.toString();
      const address = /^(http:\/\/127\.0\.0\.1:\d+\/\?key=[\w-]+)\n$/m.exec(printed)?.[1];
      if (address) resolve({ process: child, address, printed, kill: () => killed(child) });
    });
    child.stderr.on("data", (part: Buffer) => (printed += part.toString()));
    child.on("exit", (code) => reject(new Error(`ended with ${code}: ${printed}`)));
  });
}

/** Starts it and kills it soon after, wherever it is by then. */
export async function startAndKill(args: readonly string[], afterMs: number): Promise<void> {
  const child = spawn(process.execPath, [START, "--no-open", ...args], { stdio: "ignore" });
  await new Promise((resolve) => setTimeout(resolve, afterMs));
  await killed(child);
}

function killed(child: ChildProcess): Promise<void> {
  return new Promise((resolve) => {
    if (child.exitCode !== null || child.signalCode !== null) return resolve();
    child.on("exit", () => resolve());
    child.kill("SIGKILL");
  });
}

/** Runs it to its end: for starts that are refused. */
export const refusedStart = (...args: string[]) =>
  spawnSync(process.execPath, [START, "--no-open", ...args], { encoding: "utf8", timeout: 60_000 });

export const temporaryFolder = (): string => mkdtempSync(path.join(tmpdir(), "rigsheet-desk-"));
export const remove = (folder: string): void => rmSync(folder, { recursive: true, force: true });

/** The key, as a program that is no browser brings it. */
export const keyOf = (address: string): Record<string, string> => ({
  [KEY_HEADER]: new URL(address).searchParams.get(KEY) ?? "",
});

export const ask = (address: string, url: string): Promise<Response> =>
  fetch(new URL(url, address), { headers: keyOf(address) });

export const askJson = async <T>(address: string, url: string): Promise<T> =>
  (await (await ask(address, url)).json()) as T;

export const write = (
  address: string,
  url: string,
  method: string,
  body: string | Uint8Array<ArrayBuffer>,
  headers: Record<string, string> = { [DESK_HEADER]: "1" },
): Promise<Response> =>
  fetch(new URL(url, address), { method, body, headers: { ...keyOf(address), ...headers } });

export const sentenceOf = async (response: Response): Promise<string> =>
  ((await response.json()) as { sentence: string }).sentence;
