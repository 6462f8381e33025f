/** A disk that takes nothing, or nothing any more, and a clock that jumps: a sentence, and nothing confirmed is lost. */
import { spawnSync } from "node:child_process";
import { chmodSync, mkdirSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import { DiskStorage, realDisk, type StorageDisk } from "../../../src/hosts/storage/diskStorage";
import { Shelf } from "../../../src/jobs/shelf";
import {
  BUILD_MS,
  buildDesk,
  freePort,
  refusedStart,
  remove,
  sentenceOf,
  startDesk,
  temporaryFolder,
  write,
  type Started,
} from "./desk";
import { change, document, edit, entry, held, lineOf, newId, post, put, shelf } from "./ownDesk";

jest.setTimeout(60_000);

let folder: string;
beforeEach(() => void (folder = temporaryFolder()));
afterEach(() => remove(folder));

const failing = (code: string): never => {
  throw Object.assign(new Error(code), { code });
};

/** The real disk, which takes nothing while it has a code. */
function badDisk(): { code: string | undefined; readonly disk: StorageDisk } {
  const bad: { code: string | undefined; disk: StorageDisk } = {
    code: undefined,
    disk: {
      ...realDisk,
      open: (async (...words: Parameters<typeof realDisk.open>) =>
        bad.code !== undefined && words[1] !== "r" && words[1] !== "r+"
          ? failing(bad.code)
          : realDisk.open(...words)) as typeof realDisk.open,
    },
  };
  return bad;
}

describe.each([
  [
    "ENOSPC",
    (at: string) =>
      `The disk that holds ${at} is full. Nothing was changed; make room or save on another disk.`,
  ],
  ["EROFS", (at: string) => `The disk that holds ${at} is read-only. Save on another disk.`],
  ["EACCES", (at: string) => `Nothing can be written in ${at}. Choose a folder of your own.`],
] as const)("a disk that answers %s to every write", (code, said) => {
  const [id, other] = [newId(), newId()];
  const steps: Readonly<Record<string, (on: Shelf) => Promise<unknown>>> = {
    "an edit": (on) => on.append(id, [change("r2", "r3")]),
    "a snapshot": (on) => on.fold(id, document("r2"), "r2"),
    "a new job": (on) => on.create(newId(), { document: document("n1"), changes: [] }),
    "a copy": (on) => on.copy(id, newId()),
    "a state": (on) => on.note(id, { state: "done" }),
    "a state that freezes": (on) => on.note(id, { state: "accepted" }),
    "putting away": (on) => on.note(id, { away: true }),
    freezing: (on) => on.freeze(id, "by hand"),
    restoring: (on) => on.restore(id, 1),
    "taking the file's": (on) => on.takeTheirs(id, document("t1"), "r2", "0"),
  };

  test.each(Object.keys(steps))(
    "%s is refused with the sentence, what was held stays, and it is done once it can be",
    async (name) => {
      const bad = badDisk();
      const on = await Shelf.open(new DiskStorage(folder, bad.disk));
      await on.create(id, { document: document("r1", "kept"), changes: [] }, { line: lineOf("Hill Lane") });
      await on.freeze(id, "first");
      await on.append(id, [change("r1", "r2")]);
      await on.create(other, { document: document("o1", "other"), changes: [] });
      const before = JSON.stringify([await on.held(id), await on.held(other), on.list().length]);
      const now = async (from: Shelf): Promise<string> =>
        JSON.stringify([await from.held(id), await from.held(other), from.list().length]);
      bad.code = code;
      for (let time = 0; time < 2; time++) await expect(steps[name]!(on)).rejects.toThrow(said(folder));
      expect(await now(on)).toBe(before);
      bad.code = undefined;
      // As another start finds it.
      expect(await now(await Shelf.open(new DiskStorage(folder)))).toBe(before);
      await steps[name]!(on);
      expect(await now(on)).not.toBe(before);
      expect(await now(await Shelf.open(new DiskStorage(folder)))).toBe(await now(on));
    },
  );
});

test("a disk that can't be written when it is opened shows its jobs all the same", async () => {
  const bad = badDisk();
  const id = newId();
  const on = await Shelf.open(new DiskStorage(folder, bad.disk));
  await on.create(id, { document: document("r1", "kept"), changes: [] });
  for (const code of ["ENOSPC", "EROFS"]) {
    bad.code = code;
    const again = await Shelf.open(new DiskStorage(folder, bad.disk));
    expect(again.list().map((one) => one.id)).toEqual([id]);
    expect((await again.open(id)).document).toEqual(document("r1", "kept"));
  }
});

test("a list of all jobs that can't be read is drawn anew, and does not keep the jobs from opening", async () => {
  const id = newId();
  const first = await Shelf.open(new DiskStorage(folder));
  await first.create(id, { document: document("r1", "kept"), changes: [] }, { line: lineOf("Hill Lane") });
  await first.note(id, { state: "sent" });
  const disk: StorageDisk = {
    ...realDisk,
    open: (async (...words: Parameters<typeof realDisk.open>) =>
      String(words[0]).endsWith("catalogue.1.log")
        ? failing("EIO")
        : realDisk.open(...words)) as typeof realDisk.open,
  };
  for (let time = 0; time < 2; time++) {
    const again = await Shelf.open(new DiskStorage(folder, disk));
    expect(again.list()).toMatchObject([{ id, state: "sent", line: { name: "Hill Lane" } }]);
    expect(again.lastOpen).toBe(id);
    expect((await again.open(id)).document).toEqual(document("r1", "kept"));
  }
});

/** A clock of the day before, of the epoch, and one that stands still. */
describe("a clock that jumps", () => {
  const START = Date.parse("2026-11-28T12:00:00.000Z");
  beforeEach(() =>
    jest.useFakeTimers({
      now: START,
      doNotFake: [
        "hrtime",
        "nextTick",
        "performance",
        "queueMicrotask",
        "setImmediate",
        "clearImmediate",
        "setInterval",
        "clearInterval",
        "setTimeout",
        "clearTimeout",
      ],
    }),
  );
  afterEach(() => jest.useRealTimers());

  test.each([
    ["back a day", -86_400_000],
    ["back to the epoch", -START],
    ["ahead a century", 100 * 365 * 86_400_000],
    ["nowhere: it stands still", 0],
  ])(
    "%s: every edit, revision and state is there, in its order, and the job that was open is",
    async (_, by) => {
      const on = await Shelf.open(new DiskStorage(folder));
      const [id, other] = [newId(), newId()];
      await on.create(other, { document: document("o1"), changes: [] });
      await on.create(id, { document: document("r1"), changes: [] }, { line: lineOf("before") });
      await on.freeze(id, "first");
      await on.append(id, [change("r1", "r2")]);
      jest.setSystemTime(START + by);
      await on.append(id, [change("r2", "r3")], lineOf("after"));
      expect(on.list().find((one) => one.id === id)!.line!.name).toBe("after");
      await on.note(id, { state: "sent" });
      await on.fold(id, document("r3", "folded"), "r3");
      await on.append(id, [change("r3", "r4")]);
      await on.freeze(id, "last");
      await on.open(id);
      for (let time = 0; time < 2; time++) {
        const again = await Shelf.open(new DiskStorage(folder));
        expect([again.notices, again.lastOpen]).toEqual([[], id]);
        const { changes, notes } = await again.held(id);
        expect(changes).toEqual([change("r3", "r4")]);
        expect(notes).toMatchObject({
          state: "sent",
          line: { name: "after" },
          revisions: [
            { number: 1, head: "r1" },
            { number: 2, head: "r3", why: "sent" },
            { number: 3, head: "r4" },
          ],
        });
        const heads = [1, 2, 3].map(async (number) => (await again.revision(id, number)).note!.head);
        expect(await Promise.all(heads)).toEqual(["r1", "r3", "r4"]);
      }
      const restored = await on.restore(id, 1);
      expect(restored).toMatchObject({ document: document("r1"), changes: [] });
    },
  );

  test("freezing that fails between its two writes, and is tried again, is done once", async () => {
    const bad = badDisk();
    const on = await Shelf.open(new DiskStorage(folder, bad.disk));
    const id = newId();
    await on.create(id, { document: document("r1"), changes: [] });
    // What is frozen is put down; that the job tells of it fails.
    const real = bad.disk.open;
    Object.assign(bad.disk, {
      open: (...words: Parameters<typeof realDisk.open>) =>
        typeof words[1] === "number"
          ? Promise.reject(Object.assign(new Error("full"), { code: "ENOSPC" }))
          : real(...words),
    });
    await expect(on.freeze(id, "once")).rejects.toThrow(/is full/);
    Object.assign(bad.disk, { open: real });
    expect((await on.held(id)).notes.revisions).toEqual([]);
    expect((await on.freeze(id, "once more")).number).toBe(1);
    expect((await on.revision(id, 1)).document).toEqual(document("r1"));
  });
});

/** Needs the right to mount one: run as root on Linux; elsewhere the disks above stand for it. */
const mount = (at: string, options: string): boolean => {
  mkdirSync(at, { recursive: true });
  return spawnSync("mount", ["-t", "tmpfs", "-o", options, "tmpfs", at]).status === 0;
};
const canMount = ((): boolean => {
  if (process.platform !== "linux" || process.getuid?.() !== 0) return false;
  const at = temporaryFolder();
  const could = mount(at, "size=64k");
  if (could) spawnSync("umount", [at]);
  remove(at);
  return could;
})();

(canMount ? describe : describe.skip)("a real small disk (needs the right to mount one)", () => {
  beforeAll(buildDesk, BUILD_MS);
  let disk: string;
  let running: Started | undefined;
  const start = async (): Promise<Started> =>
    (running = await startDesk("--data", path.join(disk, "jobs"), "--port", String(await freePort())));
  beforeEach(() => {
    disk = path.join(folder, "disk");
    expect(mount(disk, "size=2m,mode=700")).toBe(true);
  });
  afterEach(async () => {
    await running?.kill();
    running = undefined;
    expect(spawnSync("umount", ["-l", disk]).status).toBe(0);
  });

  test("is full: what does not fit is refused with a sentence, what was confirmed stays through a kill, and there is room again", async () => {
    const { address, kill } = await start();
    const first = newId();
    await put(address, first, "r1", { line: lineOf("Hill Lane") });
    await edit(address, first, change("r1", "r2"));
    const kept = [first];
    const large = "x".repeat(150_000);
    let refused: Response | undefined;
    for (let count = 0; count < 40 && !refused; count++) {
      const id = newId();
      const answer = await put(address, id, "m1", { mark: large });
      if (answer.ok) kept.push(id);
      else refused = answer;
    }
    expect(kept.length).toBeGreaterThan(5);
    expect([refused?.status, await sentenceOf(refused!)]).toEqual([
      422,
      `The disk that holds ${path.join(disk, "jobs")} is full. Nothing was changed; make room or save on another disk.`,
    ]);
    // Now to the last byte.
    expect(() => writeFileSync(path.join(disk, "filler"), Buffer.alloc(4_000_000))).toThrow(/ENOSPC/);
    const edits = await edit(address, first, { ...change("r2", "r3"), type: large });
    expect(edits.status).toBe(422);
    expect((await held(address, first)).changes).toEqual([change("r1", "r2")]);
    expect((await shelf(address)).jobs.map(({ id }) => id).sort()).toEqual([...kept].sort());
    await kill();
    // On a full disk it starts, or says why not.
    const tried = await start().catch((error: unknown) => String(error));
    if (typeof tried === "string") expect(tried).toMatch(/ is full\./);
    else {
      expect((await shelf(tried.address)).jobs.map(({ id }) => id).sort()).toEqual([...kept].sort());
      await tried.kill();
    }
    rmSync(path.join(disk, "filler"));
    const again = await start();
    expect((await shelf(again.address)).jobs.map(({ id }) => id).sort()).toEqual([...kept].sort());
    expect((await held(again.address, first)).changes).toEqual([change("r1", "r2")]);
    for (const id of kept.slice(1))
      expect((await held(again.address, id)).document).toEqual(document("m1", large));
    expect(spawnSync("mount", ["-o", "remount,size=8m", disk]).status).toBe(0);
    await post(again.address, `jobs/${kept[1]}/notes`, { away: true });
    expect((await write(again.address, `jobs/${kept[1]}`, "DELETE", "")).status).toBe(200);
    expect((await edit(again.address, first, change("r2", "r3"))).status).toBe(200);
  });

  test("is read-only: a start says so; under a desk that runs, it can still be looked at, and goes on later", async () => {
    const { address, kill } = await start();
    const id = newId();
    await put(address, id, "r1", { line: lineOf("Hill Lane") });
    await edit(address, id, change("r1", "r2"));
    const remount = (how: string): void =>
      expect(spawnSync("mount", ["-o", `remount,${how}`, disk]).status).toBe(0);
    remount("ro");
    const said = `The disk that holds ${path.join(disk, "jobs")} is read-only. Save on another disk.`;
    for (const refused of [
      await edit(address, id, change("r2", "r3")),
      await put(address, newId(), "n1"),
      await post(address, `jobs/${id}/notes`, { state: "sent" }),
    ])
      expect([refused.status, await sentenceOf(refused)]).toEqual([422, said]);
    expect((await held(address, id)).changes).toEqual([change("r1", "r2")]);
    expect(await entry(address, id)).toMatchObject({ state: "draft", line: { name: "Hill Lane" } });
    remount("rw");
    expect((await edit(address, id, change("r2", "r3"))).status).toBe(200);
    await kill();
    remount("ro");
    const { status, stderr } = refusedStart("--data", path.join(disk, "jobs"));
    expect([status, stderr]).toEqual([1, `${said}\n`]);
    expect(refusedStart("--data", path.join(disk, "made")).stderr).toBe(
      `The disk that holds ${disk} is read-only. Save on another disk.\n`,
    );
    remount("rw");
    expect((await held((await start()).address, id)).changes).toEqual([
      change("r1", "r2"),
      change("r2", "r3"),
    ]);
  });
});

/** Root may write whatever the bits say. */
(process.platform === "win32" || process.getuid?.() === 0 ? test.skip : test)(
  "a folder without the right to write: a sentence, and 1 (not as root, whom no bits bind)",
  () => {
    chmodSync(folder, 0o500);
    const { status, stderr } = refusedStart("--data", folder);
    chmodSync(folder, 0o700);
    expect([status, stderr]).toEqual([
      1,
      `Nothing can be written in ${folder}. Choose a folder of your own.\n`,
    ]);
  },
);
