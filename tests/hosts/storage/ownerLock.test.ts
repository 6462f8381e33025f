/** One owner of a job, whoever comes, goes, hangs or dies, and whatever clocks say. */
import fs, {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { hostname, tmpdir } from "node:os";
import path from "node:path";
import {
  takeOwnership,
  usualSurroundings,
  type Other,
  type Owner,
  type Surroundings,
} from "../../../src/hosts/storage/ownerLock";
import { thisPlace } from "../../../src/hosts/storage/thisPlace";

let folder: string;
beforeEach(() => void (folder = mkdtempSync(path.join(tmpdir(), "rigsheet-lock-"))));
afterEach(() => {
  jest.restoreAllMocks();
  rmSync(folder, { recursive: true, force: true });
});

const around = (more: Partial<Surroundings> = {}): Surroundings => ({
  now: () => performance.now(),
  isAlive: () => true,
  answers: async () => false,
  patienceMs: 400,
  ...more,
});
/** Time that passes only while one waits, and what happens meanwhile. */
function waiting(meanwhile: (atMs: number) => void = () => undefined) {
  let passed = 0;
  return {
    now: () => passed,
    pause: async (ms: number) => {
      passed += ms;
      meanwhile(passed);
    },
    get passed() {
      return passed;
    },
  };
}
const file = (): string => path.join(folder, "job.lock");
const setTime = (name: string, ageMs: number): void => {
  const time = new Date(Date.now() - ageMs);
  utimesSync(name, time, time);
};
const left = (holder: object | string, ageMs = 0): void => {
  writeFileSync(file(), typeof holder === "string" ? holder : JSON.stringify(holder));
  setTime(file(), ageMs);
};
const someone = {
  key: "theirs",
  pid: 4242,
  host: hostname(),
  place: thisPlace(),
  address: "http://127.0.0.1:9/",
};
const far = { ...someone, host: "elsewhere", place: "another" };
const isOwner = (one: Owner | Other): one is Owner => "key" in one;
/** A sign each 5 s, as a holder gives it that lives. */
function beating(holder: object): (atMs: number) => void {
  let count = 0;
  return (at) => {
    if (at < (count + 1) * 5_000) return;
    left({ ...holder, beat: ++count }, 3_600_000);
  };
}

test("the first has it, without a word; once it let go, the next has it", async () => {
  const first = await takeOwnership(folder, "job", around());
  expect(isOwner(first) && first.isMine() && first.notice).toBeUndefined();
  (first as Owner).release();
  expect(readdirSync(folder)).toEqual([]);
  expect(isOwner(await takeOwnership(folder, "job", around()))).toBe(true);
});

test("one that answers is named by its address, however old its last sign is", async () => {
  left(someone, 3_600_000);
  const asked: string[][] = [];
  const found = await takeOwnership(
    folder,
    "job",
    around({ answers: async (address, key) => asked.push([address, key]) > 0 }),
  );
  expect(found).toEqual({ address: someone.address });
  expect(asked).toEqual([[someone.address, "theirs"]]);
});

test("one whose process is gone is followed, with a sentence", async () => {
  left(someone);
  const found = await takeOwnership(folder, "job", around({ isAlive: () => false }));
  expect(isOwner(found) && found.notice).toMatch(
    /^The desk that had this job open \(process 4242\) has ended/,
  );
  expect(isOwner(found) && found.isMine()).toBe(true);
});

test.each([
  ["of this computer, whose number another program has by now", someone, /process 4242\) has given no sign/],
  ["of another computer", far, /process 4242 on the computer elsewhere\) has given no sign/],
  ["of a container with this one's name", { ...someone, place: "container" }, /has given no sign for 30 s/],
  ["of an earlier version", { ...someone, place: undefined }, /has given no sign for 30 s/],
  ["that nobody can read", '{"key":', undefined],
  ["that was never written", "", undefined],
])("one %s that gives no sign for 30 s is followed then, not sooner", async (_what, holder, message) => {
  // Whatever the file's time says: it may be another computer's clock.
  for (const age of [0, 3_600_000, -3_600_000]) {
    left(holder, age);
    const time = waiting();
    const told: string[] = [];
    const found = await takeOwnership(
      folder,
      "job",
      around({
        ...time,
        isAlive: () => holder === someone,
        patienceMs: 8_000,
        waiting: (sentence) => void told.push(sentence),
      }),
    );
    expect(isOwner(found) && found.isMine()).toBe(true);
    if (message) expect((found as Owner).notice).toMatch(message);
    expect(time.passed).toBeGreaterThanOrEqual(30_000);
    expect(time.passed).toBeLessThan(31_000);
    expect(told).toEqual([expect.stringMatching(/Waiting up to 30 s for a sign of it/)]);
    (found as Owner).release();
    expect(readdirSync(folder)).toEqual([]);
  }
});

test.each([
  [
    "this computer",
    someone,
    /^Another Rigsheet \(process 4242\) has this job open and does not answer\. Wait/,
  ],
  ["another computer", far, /^This job is open on the computer elsewhere\. Close it there/],
  [
    "a container with this one's name, whose processes are not seen from here",
    { ...someone, place: "container" },
    /^Another Rigsheet/,
  ],
])(
  "one of %s that gives signs and does not answer is left in peace, with a sentence",
  async (_of, holder, message) => {
    left(holder, 3_600_000);
    const time = waiting(beating(holder));
    const refused = takeOwnership(
      folder,
      "job",
      around({ ...time, isAlive: () => holder === someone, patienceMs: 8_000 }),
    );
    await expect(refused).rejects.toThrow(message);
    expect(time.passed).toBeLessThan(10_000);
    expect(readdirSync(folder)).toEqual(["job.lock"]);
    expect(JSON.parse(readFileSync(file(), "utf8"))).toMatchObject({ key: "theirs" });
  },
);

test("a clock that jumps an hour, forward or back, makes no two owners and keeps nobody waiting", async () => {
  for (const jump of [3_600_000, -3_600_000]) {
    const jumping = (alive: (at: number) => void) => {
      const time = waiting(alive);
      return {
        time,
        around: around({
          pause: time.pause,
          patienceMs: 8_000,
          now: () => time.passed + (time.passed > 3_000 ? jump : 0),
        }),
      };
    };
    left(far);
    const living = jumping(beating(far));
    await expect(takeOwnership(folder, "job", living.around)).rejects.toThrow("is open on the computer");
    left(far);
    const silent = jumping(() => undefined);
    const found = (await takeOwnership(folder, "job", silent.around)) as Owner;
    expect(found.isMine()).toBe(true);
    expect(silent.time.passed).toBeGreaterThan(27_000);
    expect(silent.time.passed).toBeLessThan(31_000);
    found.release();
  }
});

test("the usual surroundings have a clock that nobody sets, and know what lives", async () => {
  jest.spyOn(Date, "now").mockReturnValue(0);
  const usual = usualSurroundings(async () => false);
  const before = usual.now();
  await new Promise((resolve) => setTimeout(resolve, 20));
  expect(usual.now() - before).toBeGreaterThan(10);
  expect([usual.isAlive(process.pid), usual.isAlive(2 ** 30)]).toEqual([true, false]);
});

test("one that follows another of many, and does not answer yet, has all the time to", async () => {
  left(far);
  const homes = new Set<string>();
  const time = waiting((at) => {
    // Another was quicker by a moment, and takes a while to start.
    if (at === 30_000) left({ ...someone, key: "quicker" });
    if (at === 33_000) homes.add("quicker");
  });
  const answers = async (_address: string, key: string) => homes.has(key);
  expect(await takeOwnership(folder, "job", around({ ...time, answers, patienceMs: 8_000 }))).toEqual({
    address: someone.address,
  });
});

test("one that ended in the middle of following another does not keep the job for good", async () => {
  left(someone);
  writeFileSync(`${file()}.theirs`, "");
  setTime(`${file()}.theirs`, -3_600_000);
  const time = waiting();
  const found = await takeOwnership(folder, "job", around({ ...time, isAlive: () => false }));
  expect(isOwner(found) && found.isMine()).toBe(true);
  expect(time.passed).toBeLessThan(31_000);
  expect(readdirSync(folder)).toEqual(["job.lock"]);
});

test("a lock that can't be read is a sentence, not a right to follow", async () => {
  mkdirSync(file());
  const time = waiting();
  await expect(takeOwnership(folder, "job", around({ ...time, patienceMs: 8_000 }))).rejects.toMatchObject({
    name: "FileTrouble",
    message: `${file()} is a folder, where a file is kept otherwise. Move it elsewhere and try again.`,
  });
});

test("what can't be read for a moment is not lost; what is another's, or gone, is", async () => {
  const mine = (await takeOwnership(folder, "job", around())) as Owner;
  for (const code of ["EMFILE", "EIO", "ESTALE", "EACCES"]) {
    const failing = jest.spyOn(fs, "readFileSync").mockImplementation(() => {
      throw Object.assign(new Error(code), { code });
    });
    expect(mine.isMine()).toBe(true);
    failing.mockRestore();
  }
  const own = readFileSync(file());
  rmSync(file());
  expect(mine.isMine()).toBe(false);
  jest.spyOn(fs, "readFileSync").mockImplementationOnce(() => {
    throw Object.assign(new Error("EIO"), { code: "EIO" });
  });
  expect(mine.isMine()).toBe(false);
  // A folder on the network was away, and is back.
  writeFileSync(file(), own);
  expect(mine.isMine()).toBe(true);
  left(someone);
  expect(mine.isMine()).toBe(false);
});

describe("what an owner does while it has the job", () => {
  beforeEach(() => void jest.useFakeTimers({ doNotFake: ["setTimeout", "performance", "Date", "nextTick"] }));
  afterEach(() => void jest.useRealTimers());
  const seconds = async (count: number): Promise<void> => {
    for (let beats = count / 5; beats > 0; beats--) {
      jest.advanceTimersByTime(5_000);
      await new Promise((resolve) => setTimeout(resolve, 15));
    }
  };

  test("it gives signs, and keeps its address in them", async () => {
    const mine = (await takeOwnership(folder, "job", around())) as Owner;
    const beat = (): unknown => JSON.parse(readFileSync(file(), "utf8"));
    await seconds(5);
    expect(beat()).toMatchObject({ key: mine.key, beat: 1 });
    await mine.tell("http://127.0.0.1:9000/");
    await seconds(10);
    expect(beat()).toMatchObject({ key: mine.key, beat: 3, address: "http://127.0.0.1:9000/" });
    mine.release();
  });

  test("one that was followed leaves the other's lock as it is: no sign, no address, not taken away", async () => {
    const first = (await takeOwnership(folder, "job", around())) as Owner;
    const second = (await takeOwnership(folder, "job", around({ isAlive: () => false }))) as Owner;
    await second.tell("http://127.0.0.1:9002/");
    // Its own signs end here, so that each one seen is the other's.
    const own = readFileSync(file());
    second.release();
    writeFileSync(file(), own);
    const { mtimeMs } = statSync(file());
    await seconds(10);
    await expect(first.tell("http://127.0.0.1:9001/")).rejects.toThrow(
      "Another desk has taken this job over",
    );
    first.release();
    expect(readFileSync(file())).toEqual(own);
    expect(statSync(file()).mtimeMs).toBe(mtimeMs);
  });

  test("it takes away what others that ended left beside the lock, not what is new, and nothing else", async () => {
    const old = [`${file()}.theirs`, `${file()}.${"0".repeat(8)}.part`];
    const others = [path.join(folder, "job.1.log"), path.join(folder, "job2.lock.theirs")];
    for (const name of [...old, ...others]) writeFileSync(name, "");
    // A clock that is ahead on another computer.
    for (const name of old) setTime(name, -3_600_000);
    const mine = (await takeOwnership(folder, "job", around())) as Owner;
    await seconds(25);
    expect(readdirSync(folder)).toHaveLength(5);
    const fresh = `${file()}.fresh`;
    writeFileSync(fresh, "");
    await seconds(15);
    expect(readdirSync(folder).sort()).toEqual([
      "job.1.log",
      "job.lock",
      "job.lock.fresh",
      "job2.lock.theirs",
    ]);
    mine.release();
  });
});

test("one that was taken for gone knows that the job is no longer its own, and lets the other's lock be", async () => {
  const first = (await takeOwnership(folder, "job", around())) as Owner;
  // It hangs: while the other waits, it gives no sign.
  const second = (await takeOwnership(folder, "job", around(waiting()))) as Owner;
  expect([first.isMine(), second.isMine()]).toEqual([false, true]);
  first.release();
  expect(second.isMine()).toBe(true);
});

test("one that comes back while it is being followed lets the follower have it", async () => {
  const first = (await takeOwnership(folder, "job", around())) as Owner;
  writeFileSync(`${file()}.${first.key}`, "");
  first.release();
  expect(readdirSync(folder)).toContain("job.lock");
});

test.each(["a free job", "one that was left"])(
  "of twenty that come at once for %s exactly one has it",
  async (what) => {
    for (let round = 0; round < 10; round++) {
      if (what !== "a free job") left(someone);
      const homes = new Set<string>();
      const found = await Promise.all(
        Array.from({ length: 20 }, async (_, index) => {
          const one = await takeOwnership(
            folder,
            "job",
            around({
              patienceMs: 5_000,
              isAlive: (pid) => pid !== 4242,
              answers: async (address) => homes.has(address),
            }),
          );
          if (!isOwner(one)) return one;
          const address = `http://127.0.0.1:${9000 + index}/`;
          homes.add(address);
          await one.tell(address);
          return one;
        }),
      );
      const owners = found.filter(isOwner);
      expect(owners).toHaveLength(1);
      expect(owners[0]!.isMine()).toBe(true);
      expect(new Set(found.flatMap((one) => ("address" in one ? [one.address] : [])))).toEqual(homes);
      owners[0]!.release();
      expect(readdirSync(folder)).toEqual([]);
    }
  },
);
