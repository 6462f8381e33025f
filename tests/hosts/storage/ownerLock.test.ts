/** One owner of a job, whoever comes, goes, hangs or dies. */
import { mkdtempSync, readdirSync, rmSync, utimesSync, writeFileSync } from "node:fs";
import { hostname, tmpdir } from "node:os";
import path from "node:path";
import {
  takeOwnership,
  type Other,
  type Owner,
  type Surroundings,
} from "../../../src/hosts/storage/ownerLock";

let folder: string;
beforeEach(() => void (folder = mkdtempSync(path.join(tmpdir(), "rigsheet-lock-"))));
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const around = (more: Partial<Surroundings> = {}): Surroundings => ({
  now: Date.now,
  isAlive: () => true,
  answers: async () => false,
  patienceMs: 400,
  ...more,
});
const file = (): string => path.join(folder, "job.lock");
const left = (holder: object | string, ageMs = 0): void => {
  writeFileSync(file(), typeof holder === "string" ? holder : JSON.stringify(holder));
  const time = new Date(Date.now() - ageMs);
  utimesSync(file(), time, time);
};
const someone = { key: "theirs", pid: 4242, host: hostname(), address: "http://127.0.0.1:9/" };
const isOwner = (one: Owner | Other): one is Owner => "key" in one;

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
  ["of this computer, whose number another program may have by now", someone],
  ["of another computer", { ...someone, host: "elsewhere" }],
  ["that nobody can read", '{"key":'],
])("one without a sign for long %s is followed", async (_what, holder) => {
  left(holder, 60_000);
  expect(isOwner(await takeOwnership(folder, "job", around()))).toBe(true);
});

test.each([
  ["this", someone, /^Another Rigsheet \(process 4242\) has this job open and does not answer\. Wait/],
  [
    "another",
    { ...someone, host: "elsewhere" },
    /^This job is open on the computer elsewhere\. Close it there/,
  ],
])(
  "one of %s computer that lives and does not answer is left in peace, with a sentence",
  async (_of, holder, says) => {
    left(holder);
    const alive = around({ isAlive: () => holder.host === hostname() });
    await expect(takeOwnership(folder, "job", alive)).rejects.toThrow(says);
    expect(readdirSync(folder)).toEqual(["job.lock"]);
  },
);

test("one that was taken for gone knows that the job is no longer its own, and lets the other's lock be", async () => {
  const first = (await takeOwnership(folder, "job", around())) as Owner;
  const hungFor = new Date(Date.now() - 60_000);
  utimesSync(file(), hungFor, hungFor);
  const second = (await takeOwnership(folder, "job", around())) as Owner;
  expect([first.isMine(), second.isMine()]).toEqual([false, true]);
  first.release();
  expect(second.isMine()).toBe(true);
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
