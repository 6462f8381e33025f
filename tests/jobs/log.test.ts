/** A log through every fault of a disk: what was confirmed is there, what was not is there whole or not at all. */
import { DiskStorage } from "../../src/hosts/storage/diskStorage";
import { Log, type Unreadable } from "../../src/jobs/log";
import { decoded, encoded } from "../../src/jobs/record";
import { isWrittenElsewhere } from "../../src/jobs/storage";
import { randomFrom } from "../review/cleanJobs";
import { Dead, FAULTS, ModelDisk, type FaultAt } from "./modelDisk";
import { tries } from "../support/tries";

type Step =
  | { readonly do: "begin"; readonly base: string }
  | { readonly do: "append"; readonly entries: readonly string[] }
  | { readonly do: "rebase"; readonly base: string }
  | { readonly do: "open again" };

interface State {
  readonly base: string;
  readonly entries: readonly string[];
}
const isText = (value: unknown): value is string => typeof value === "string";

async function opened(disk: ModelDisk): Promise<Log<string, string> | { unreadable: readonly Unreadable[] }> {
  return Log.open<string, string>(new DiskStorage("/jobs", disk.disk), "job", isText);
}

/** What the state would be after a step that is done. */
const done = (state: State | undefined, step: Step): State | undefined =>
  step.do === "begin" || step.do === "rebase"
    ? { base: step.base, entries: [] }
    : step.do === "append"
      ? { base: state!.base, entries: [...state!.entries, ...step.entries] }
      : state;

/** A disk on which something lay before, and what is known of that. */
interface Prepared {
  readonly files: Readonly<Record<string, Uint8Array>>;
  readonly state: State;
  /** Damaged segments, which must never be lost. */
  readonly damaged: readonly Uint8Array[];
}

/**
 * Runs the steps, faults among them; then the power goes, and each disk that can be left is looked at.
 * @returns the number of calls that were made, and of the disks that were looked at; and whether it ended before
 *   something was opened that the disk shows and has lost
 */
async function run(
  steps: readonly Step[],
  faults: readonly FaultAt[],
  random: () => number,
  prepared?: Prepared,
): Promise<{ calls: number; looked: number; pretended: boolean }> {
  let pretended = false;
  const disk = new ModelDisk("/jobs");
  for (const [name, bytes] of Object.entries(prepared?.files ?? {})) disk.put(`/jobs/${name}`, bytes);
  disk.faults = faults;
  const storage = new DiskStorage("/jobs", disk.disk);
  let log: Log<string, string> | undefined;
  let confirmed = prepared?.state;
  /** What may be there beside it: the steps since that failed, or were cut. */
  let possible: (State | undefined)[] = [];
  const of = { steps, faults };
  for (const step of steps) {
    if (!log && (step.do === "append" || step.do === "rebase")) continue;
    const wanted = done(confirmed, step);
    try {
      if (step.do === "begin") log = await Log.begin<string, string>(storage, "job", step.base);
      else if (step.do === "open again") {
        // Nobody can tell it from what is on the disk: the one thing that is not held against the log.
        if (disk.pretends) {
          pretended = true;
          break;
        }
        const again = await opened(disk);
        if (again instanceof Log) {
          expectOneOf(again.content, [confirmed, ...possible], of);
          confirmed = stateOf(again);
          possible = [];
          log = again;
        } else expectOneOf(undefined, [confirmed, ...possible], of);
      } else if (!log) continue;
      else if (step.do === "append") await log.append(step.entries);
      else await log!.rebase(step.base);
      if (step.do !== "open again") {
        confirmed = wanted;
        possible = [];
        expectOneOf(log!.content, [wanted], of);
      }
    } catch (error) {
      if (error instanceof Wrong) throw error;
      possible.push(wanted);
      if (error instanceof Dead || (error as Error).cause instanceof Dead) break;
      // What was confirmed stands as it was, for the one who goes on.
      if (log) expectOneOf(log.content, [confirmed], of);
    }
  }
  const { calls } = disk;
  if ([...disk.modes].some((mode) => (mode & 0o077) !== 0)) throw new Wrong("others may look into it");
  let looked = 0;
  for (const found of disk.after(random)) {
    looked++;
    expectKept(found, prepared, of);
    const again = await opened(found);
    expectOneOf(again instanceof Log ? again.content : undefined, [confirmed, ...possible], of);
    if (!(again instanceof Log)) continue;
    // It goes on from there, and that stays too.
    await again.append(["after"]);
    for (const later of found.after(random, 4)) {
      const last = await opened(later);
      expectOneOf(last instanceof Log ? last.content : undefined, [again.content], of);
      expectKept(later, prepared, of);
    }
  }
  if (log && !disk.isDead) {
    // Where only the disk failed, the very same program goes on once the disk is well.
    disk.faults = [];
    await log.append(["on"]);
    for (const found of disk.after(random, 4)) {
      const last = await opened(found);
      expectOneOf(last instanceof Log ? last.content : undefined, [log.content], of);
      expectKept(found, prepared, of);
    }
  }
  return { calls, looked, pretended };
}

/** As it is now: a log's own grows. */
const stateOf = ({ content }: Log<string, string>): State => ({
  base: content.base,
  entries: [...content.entries],
});

/** Each damaged segment lies somewhere, as it was. */
function expectKept(disk: ModelDisk, prepared: Prepared | undefined, of: object): void {
  const all = disk.paths.map((path) => Buffer.from(disk.file(path)!));
  for (const damaged of prepared?.damaged ?? [])
    if (!all.some((bytes) => bytes.equals(damaged)))
      throw new Wrong(
        `a damaged segment is lost after ${JSON.stringify(of)}; there is ${disk.paths.join(", ")}`,
      );
}

/** Must end the run, where a failed step only goes into what is possible. */
class Wrong extends Error {}

function expectOneOf(found: State | undefined, allowed: readonly (State | undefined)[], of: object): void {
  const plain = (state: State | undefined): string => JSON.stringify(state ?? null);
  if (!allowed.some((one) => plain(one) === plain(found)))
    throw new Wrong(
      `${plain(found)} is none of ${allowed.map(plain).join(" | ")} after ${JSON.stringify(of)}`,
    );
}

const OPERATIONS: Readonly<Record<string, readonly Step[]>> = {
  begin: [{ do: "begin", base: "a" }],
  append: [
    { do: "begin", base: "a" },
    { do: "append", entries: ["1", "2"] },
    { do: "append", entries: ["3"] },
  ],
  rebase: [
    { do: "begin", base: "a" },
    { do: "append", entries: ["1"] },
    { do: "rebase", base: "b" },
    { do: "append", entries: ["2"] },
    { do: "rebase", base: "c" },
    { do: "append", entries: ["3"] },
  ],
  "open again": [
    { do: "begin", base: "a" },
    { do: "append", entries: ["1"] },
    { do: "open again" },
    { do: "append", entries: ["2"] },
    { do: "open again" },
  ],
  "move aside": [
    { do: "open again" },
    { do: "append", entries: ["2"] },
    { do: "open again" },
    { do: "append", entries: ["3"] },
    { do: "rebase", base: "b" },
  ],
};
/** A segment whose second entry something has changed, and a later one of which nothing can be read. */
const DAMAGED: Prepared = (() => {
  const cut = Buffer.concat([
    encoded(0, { base: "a", entries: [] }),
    encoded(1, ["1"]),
    encoded(2, ["lost"]),
  ]);
  cut[cut.length - 4]! ^= 1;
  const unread = Buffer.from("nothing that was ever written");
  return {
    files: { "job.1.log": cut, "job.2.log": unread },
    state: { base: "a", entries: ["1"] },
    damaged: [cut, unread],
  };
})();
const preparedFor = (name: string): Prepared | undefined => (name === "move aside" ? DAMAGED : undefined);
/** All of the long runs; a sample without. */
const RUNS = tries(30, 100, 1000);
/** One of so many pairs of faults; no divisor of the numbers of calls and kinds, so that no kind is left out. */
const EVERY = RUNS < 1000 ? 31 : 1;

describe.each(Object.entries(OPERATIONS))("%s", (name, steps) => {
  test.each(FAULTS)("every file call of it %s: nothing confirmed is lost, nothing is half", async (kind) => {
    const random = randomFrom(1);
    const { calls } = await run(steps, [], random, preparedFor(name));
    let looked = 0;
    for (let at = 0; at < calls; at++) {
      const found = await run(steps, [{ at, kind }], random, preparedFor(name));
      looked += found.looked;
      expect(found.pretended).toBe(false);
    }
    expect(calls).toBeGreaterThan(5);
    expect(looked).toBeGreaterThan(calls / 2);
  });

  test("every two file calls of it fail", async () => {
    const random = randomFrom(2);
    const { calls } = await run(steps, [], random, preparedFor(name));
    let pairs = 0;
    // After the first fault other calls are made than without it.
    for (const first of FAULTS.filter((kind) => kind !== "dies"))
      for (let at = 0; at < calls; at++) {
        const one = { at, kind: first };
        const { calls: then } = await run(steps, [one], random, preparedFor(name));
        for (const kind of FAULTS)
          for (let second = at + 1; second < then; second++, pairs++)
            if (pairs % EVERY === 0) await run(steps, [one, { at: second, kind }], random, preparedFor(name));
      }
    expect(pairs).toBeGreaterThan(calls * calls);
  }, 1_800_000);
});

test("random runs of all operations, with faults at random", async () => {
  for (let seed = 0; seed < RUNS; seed++) {
    const random = randomFrom(1000 + seed);
    const steps: Step[] = [{ do: "begin", base: "a" }];
    let next = 0;
    for (let count = 3 + Math.floor(random() * 10); count > 0; count--) {
      const kind = random();
      steps.push(
        kind < 0.6
          ? {
              do: "append",
              entries: Array.from({ length: 1 + Math.floor(random() * 3) }, () => String(next++)),
            }
          : kind < 0.8
            ? { do: "rebase", base: `base ${next++}` }
            : { do: "open again" },
      );
    }
    const { calls } = await run(steps, [], random);
    const some = (): FaultAt => ({
      at: Math.floor(random() * calls),
      kind: FAULTS[Math.floor(random() * FAULTS.length)]!,
    });
    await run(steps, [some()], random);
    await run(steps, [some(), some(), some()], random);
  }
}, 300_000);

test("two that have one log open: the second to write is refused for good, and hides nothing of the first's", async () => {
  const disk = new ModelDisk("/jobs");
  const storage = (): DiskStorage => new DiskStorage("/jobs", disk.disk);
  await (await Log.begin<string, string>(storage(), "job", "a")).append(["1"]);
  const [first, second] = [await opened(disk), await opened(disk)] as Log<string, string>[];
  await first!.append(["first"]);
  for (const write of [
    () => second!.append(["second"]),
    () => second!.rebase("b"),
    () => second!.append(["2"]),
  ])
    expect(isWrittenElsewhere(await write().catch((error: unknown) => error))).toBe(true);
  await first!.append(["more"]);
  const found = (await opened(disk)) as Log<string, string>;
  expect(found.content).toEqual({ base: "a", entries: ["1", "first", "more"] });
  expect(second!.content).toEqual({ base: "a", entries: ["1"] });
  await found.append(["on"]);
});

describe("a small log that something else has changed", () => {
  const pieces = [{ base: "a", entries: [] }, ["1"], ["2", "ü"], ["3"]];
  const whole = Buffer.concat(pieces.map((piece, sequence) => encoded(sequence, piece)));
  const ends = pieces.map(
    (_, index) =>
      Buffer.concat(pieces.slice(0, index + 1).map((piece, sequence) => encoded(sequence, piece))).length,
  );
  const before = (at: number): number => ends.filter((end) => end <= at).length;

  test("every truncation: the records before it are read, the rest is said", () => {
    for (let length = 0; length < whole.length; length++) {
      const { payloads, tail } = decoded(whole.subarray(0, length));
      expect(payloads).toEqual(pieces.slice(0, before(length)));
      // Cut between two records it is a whole, shorter log.
      const isBetween = length === 0 || ends.includes(length);
      expect(tail?.cutShort).toBe(isBetween ? undefined : true);
      expect(tail?.at).toBe(isBetween ? undefined : [0, ...ends][before(length)]);
    }
  });

  test("every change of one bit: found, the records before it are read", () => {
    for (let bit = 0; bit < whole.length * 8; bit++) {
      const changed = Uint8Array.from(whole);
      changed[bit >> 3]! ^= 1 << (bit & 7);
      const { payloads, tail } = decoded(changed);
      expect(payloads).toEqual(pieces.slice(0, before(bit >> 3)));
      // Nothing is missing, so nothing was cut.
      expect(tail?.cutShort).toBe(false);
    }
  });

  test.each([
    ["a length that is damaged", (text: string) => text.replace(/^#1 \d+/m, "#1 9999")],
    ["a length that is damaged, in the last record", (text: string) => text.replace(/^#3 \d+/m, "#3 9999")],
    ["a head of the wrong number", (text: string) => text.replace(/^#3 /m, "#4 ")],
    ["something short behind it", (text: string) => `${text}hello`],
    ["megabytes behind it", (text: string) => text + "x".repeat(3_000_000)],
    ["a number behind it", (text: string) => `${text}#5`],
    ["a line behind it that is no head", (text: string) => `${text}#4 x`],
    ["a head, and what no record holds", (text: string) => `${text}#4 90 0123abcd\n["a\tb"`],
    ["a head, and half a letter in the middle", (text: string) => `${text}#4 90 0123abcd\n["\u00c3("`],
    ["a whole text without its line end, and another sum", (text: string) => `${text}#4 5 00000000\n["4"]`],
    ["one empty byte", (text: string) => text.replace("#2 ", "#2\0")],
  ])("%s: told as changed, not as cut short", (_what, change) => {
    const { tail } = decoded(Buffer.from(change(whole.toString("latin1")), "latin1"));
    expect(tail?.cutShort).toBe(false);
  });

  test("a record whose length reached the disk before it: cut short, wherever the empty sectors begin", () => {
    const long = encoded(4, ["x".repeat(3000)]);
    const all = Buffer.concat([whole, long]);
    for (let from = whole.length; from < all.length; from = Math.floor(from / 512 + 1) * 512) {
      const { payloads, tail } = decoded(Buffer.from(all).fill(0, from));
      expect(payloads).toEqual(pieces);
      expect(tail).toEqual({ at: whole.length, length: long.length, cutShort: true });
    }
    // With something behind them they are told as changed: nobody knows how that came.
    const hole = Buffer.from(all).fill(0, whole.length, 1024);
    expect(decoded(hole)).toMatchObject({ payloads: pieces, tail: { cutShort: false } });
  });

  test("opened: what can be read is there, what can't is kept aside as it was", async () => {
    for (let at = 0; at < whole.length; at += 3) {
      const disk = new ModelDisk("/jobs");
      const changed = Uint8Array.from(whole);
      changed[at]! ^= 0x10;
      disk.put("/jobs/job.1.log", changed);
      const log = await opened(disk);
      expect(log.unreadable).toHaveLength(1);
      expect(disk.file(`/jobs/${log.unreadable[0]!.keptAs}`)).toEqual(changed);
      const readable = pieces.slice(1, before(at)).flat();
      if (log instanceof Log) expect(log.content).toEqual({ base: "a", entries: readable });
      else expect(before(at)).toBe(0);
    }
  });
});
