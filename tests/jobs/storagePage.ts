/** In a page: a log on the browser's storage, with a fault at each of the database's calls. */
import { BrowserStorage } from "../../src/hosts/storage/browserStorage";
import { Log } from "../../src/jobs/log";

type Kind = "aborts" | "is full" | "throws";
interface State {
  readonly base: string;
  readonly entries: readonly string[];
}

const isText = (value: unknown): value is string => typeof value === "string";
const text = (state: State | undefined): string => JSON.stringify(state ?? null);

let calls = 0;
let fault: { at: number; kind: Kind } | undefined;

/** Before each call that writes, or begins to. */
function step(transaction: IDBTransaction | undefined): void {
  if (calls++ !== fault?.at) return;
  if (fault.kind === "throws" || !transaction) throw new DOMException("by the test", "UnknownError");
  if (fault.kind === "is full") throw new DOMException("by the test", "QuotaExceededError");
  // The call is made, and is taken back with all of its transaction.
  queueMicrotask(() => transaction.abort());
}

for (const verb of ["add", "put", "delete"] as const) {
  const real = IDBObjectStore.prototype[verb] as (...words: unknown[]) => IDBRequest;
  IDBObjectStore.prototype[verb] = function (this: IDBObjectStore, ...words: unknown[]) {
    step(this.transaction);
    return real.apply(this, words);
  } as never;
}
const begin = IDBDatabase.prototype.transaction;
IDBDatabase.prototype.transaction = function (this: IDBDatabase, ...words: Parameters<typeof begin>) {
  step(undefined);
  return begin.apply(this, words);
};

type Step = ["append", ...string[]] | ["rebase", string] | ["open again"];
const STEPS: readonly Step[] = [
  ["append", "1", "2"],
  ["rebase", "b"],
  ["append", "3"],
  ["open again"],
  ["append", "4"],
  ["rebase", "c"],
  ["append", "5"],
];

/** @returns the calls made, and what was lost or half */
async function run(turn: string): Promise<{ calls: number; wrong: string[] }> {
  const wrong: string[] = [];
  const storage = await BrowserStorage.open(turn);
  const open = async (on: BrowserStorage): Promise<Log<string, string> | undefined> => {
    const found = await Log.open<string, string>(on, "job", isText);
    return found instanceof Log ? found : undefined;
  };
  calls = 0;
  let log: Log<string, string> | undefined;
  let confirmed: State | undefined;
  let possible: (State | undefined)[] = [];
  const check = (what: string, found: State | undefined): void => {
    if (![confirmed, ...possible].some((one) => text(one) === text(found)))
      wrong.push(
        `${turn}, ${what}: ${text(found)} is none of ${[confirmed, ...possible].map(text).join(" | ")}`,
      );
  };
  const tried = async (wanted: State | undefined, work: () => Promise<void>): Promise<void> => {
    try {
      await work();
      confirmed = wanted;
      possible = [];
    } catch {
      possible.push(wanted);
    }
  };
  await tried({ base: "a", entries: [] }, async () => {
    log = await Log.begin<string, string>(storage, "job", "a");
  });
  for (const [what, ...words] of STEPS) {
    if (what === "open again") {
      try {
        log = await open(storage);
      } catch {
        continue;
      }
      check("opened again", log?.content);
      confirmed = log?.content && { base: log.content.base, entries: [...log.content.entries] };
      possible = [];
      continue;
    }
    if (!log) continue;
    const now = log;
    const wanted =
      what === "append"
        ? { base: confirmed!.base, entries: [...confirmed!.entries, ...words] }
        : { base: words[0]!, entries: [] };
    await tried(wanted, () => (what === "append" ? now.append(words) : now.rebase(words[0]!)));
    if (text(now.content) !== text(confirmed))
      wrong.push(`${turn}: held ${text(now.content)}, not ${text(confirmed)}`);
  }
  const made = calls;
  fault = undefined;
  storage.close();
  const later = await BrowserStorage.open(turn);
  check("at the end", (await open(later))?.content);
  later.close();
  indexedDB.deleteDatabase(turn);
  return { calls: made, wrong };
}

async function everyFault(): Promise<{ runs: number; calls: number; wrong: string[] }> {
  const { calls: all, wrong } = await run("whole");
  let runs = 1;
  for (const kind of ["aborts", "is full", "throws"] as const) {
    for (let at = 0; at < all; at++) {
      fault = { at, kind };
      wrong.push(...(await run(`${kind} at ${at}`)).wrong);
      runs++;
    }
  }
  return { runs, calls: all, wrong };
}

Object.assign(window, { everyFault, BrowserStorage, Log });
