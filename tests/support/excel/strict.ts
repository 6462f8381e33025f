/** The rules of Office's objects that every part of the stand-in keeps. */

/** An error as Office throws it: a code besides the message. */
export const officeError = (code: string, message: string): Error & { code: string } =>
  Object.assign(new Error(message), { name: "RichApi.Error", code });

/** What was asked of Excel since the page was loaded. */
export const asked = {
  /** How often, by object and member as the stand-in names them. */
  members: new Map<string, number>(),
  /** Of each request that waited for `context.sync()`: its calls and settings, and their arguments' size as JSON, in bytes. */
  requests: [] as { calls: number; bytes: number }[],
  waiting: { calls: 0, bytes: 0 },
  /** The latest of them. */
  last: "",
};

function note(name: string, key: string, ...given: unknown[]): void {
  const member = `${name}.${key}`;
  asked.last = member;
  asked.members.set(member, (asked.members.get(member) ?? 0) + 1);
  if (member === "context.sync") {
    asked.requests.push(asked.waiting);
    asked.waiting = { calls: 0, bytes: 0 };
    return;
  }
  asked.waiting.calls += 1;
  for (const one of given) if (isData(one)) asked.waiting.bytes += JSON.stringify(one)?.length ?? 0;
}

/** Objects of Office's own among the arguments go as references. */
const isData = (one: unknown): boolean =>
  typeof one !== "object" || one === null
    ? typeof one !== "function"
    : Array.isArray(one) || (Object.getPrototypeOf(one) === Object.prototype && !proxies.has(one));

const proxies = new WeakSet<object>();

/** Only members that the stand-in knows may be read or set, so that nothing is accepted unseen. */
export function strict<T extends object>(name: string, target: T): T {
  const missing = (key: string): never => {
    throw new Error(`${name}.${key} is not known to the stand-in`);
  };
  const proxy = new Proxy(target, {
    get(inside, key) {
      if (typeof key === "symbol" || key === "then") return undefined;
      if (!(key in inside)) return missing(key);
      const value: unknown = Reflect.get(inside, key, inside);
      if (typeof value !== "function") return value;
      // What is made with "new".
      if (/^[A-Z]/.test(key)) return value.bind(inside) as unknown;
      return (...given: unknown[]): unknown => {
        note(name, key, ...given);
        return value.apply(inside, given) as unknown;
      };
    },
    set(inside, key, value) {
      if (typeof key === "symbol" || !(key in inside)) return missing(String(key));
      note(name, key, value);
      return Reflect.set(inside, key, value, inside);
    },
  });
  proxies.add(proxy);
  return proxy;
}

/** Work waits for `context.sync()`, in order; the first error ends the batch and drops the rest. */
export interface Queue {
  /** A promise among what the work gives is waited for. */
  later(work: () => unknown): void;
  /** What Excel answers for a property that was loaded. */
  answered?(value: unknown): void;
}

/** Properties can be read once they were loaded and synced, as they were then. */
export abstract class Loadable {
  protected readonly loaded = new Map<string, unknown>();

  constructor(protected readonly queue: Queue) {}

  /** The value of a property as the workbook stands; throws for one that can't be loaded. */
  protected abstract fetch(name: string): unknown;

  load(names: string | readonly string[]): void {
    const list = typeof names === "string" ? names.split(",") : names;
    this.queue.later(() => {
      for (const name of list) {
        const value = this.fetch(name.trim());
        this.queue.answered?.(value);
        this.loaded.set(name.trim(), value);
      }
    });
  }

  protected read<T>(name: string): T {
    if (!this.loaded.has(name)) {
      throw officeError(
        "PropertyNotLoaded",
        `The property '${name}' is not available. Load it and call context.sync() before reading it.`,
      );
    }
    return this.loaded.get(name) as T;
  }
}
