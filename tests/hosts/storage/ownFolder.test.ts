/** A folder of the user's own is on the disk, by its name too, before anything is kept in it. */
import { mkdtempSync, rmSync, statSync, writeFileSync } from "node:fs";
import { mkdir, open, stat } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { createWhole } from "../../../src/hosts/storage/createWhole";
import { makeOwnFolder } from "../../../src/hosts/storage/ownFolder";
import { ModelDisk, FAULTS } from "../../jobs/modelDisk";
import { randomFrom } from "../../review/cleanJobs";

let folder: string;
beforeEach(() => void (folder = mkdtempSync(path.join(tmpdir(), "rigsheet-own-"))));
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const DATA = "/home/own/jobs";
/** The folder is made, and something is put into it. */
const made = async ({ disk }: ModelDisk): Promise<boolean> =>
  makeOwnFolder(DATA, disk)
    .then(() => createWhole(`${DATA}/job`, Uint8Array.of(1), disk))
    .then(
      () => true,
      () => false,
    );

test("what is put into a new folder is there after a power cut, whatever call failed before", async () => {
  const random = randomFrom(1);
  const whole = new ModelDisk("/home");
  expect(await made(whole)).toBe(true);
  let confirmed = 0;
  for (let at = 0; at <= whole.calls; at++)
    for (const kind of FAULTS) {
      const disk = new ModelDisk("/home");
      disk.fault = { at, kind };
      if (!(await made(disk)) && (disk.isDead || !(await made(disk)))) continue;
      confirmed++;
      for (const left of disk.after(random)) expect(left.file(`${DATA}/job`)).toEqual(Uint8Array.of(1));
    }
  expect(confirmed).toBeGreaterThan(whole.calls);
});

test("one that was there is made sure too: a program may have been ended before it had done that", async () => {
  const disk = new ModelDisk("/home");
  await disk.disk.mkdir("/home/own", { mode: 0o700 });
  await makeOwnFolder("/home/own", disk.disk);
  for (const left of disk.after(randomFrom(1)))
    await expect(left.disk.stat("/home/own")).resolves.toBeDefined();
});

test("a disk that does not confirm it has a sentence", async () => {
  const failing = (async (...words: Parameters<typeof open>) => {
    const file = await open(...words);
    file.sync = () => Promise.reject(Object.assign(new Error("EIO"), { code: "EIO" }));
    return file;
  }) as typeof open;
  const own = path.join(folder, "own");
  await expect(makeOwnFolder(own, { mkdir, stat, open: failing })).rejects.toMatchObject({
    name: "FileTrouble",
    message: `The disk did not confirm the folder ${own} (EIO): after a power cut it may be gone, with all in it. Check the disk and try again.`,
  });
});

test("it is its owner's alone, of many that make it at once too, and a file in its way is named", async () => {
  const own = path.join(folder, "a", "own");
  await Promise.all(Array.from({ length: 10 }, () => makeOwnFolder(own)));
  if (process.platform !== "win32")
    for (const one of [own, path.dirname(own)]) expect(statSync(one).mode & 0o777).toBe(0o700);
  const file = path.join(folder, "file");
  writeFileSync(file, "");
  for (const one of [file, path.join(file, "b", "own")])
    await expect(makeOwnFolder(one)).rejects.toThrow(
      `${file} is a file, not a folder. Give a folder of your own with --data.`,
    );
});

const onLinux = process.platform === "linux" ? test : test.skip;
onLinux("a special folder of the system is refused with a sentence", async () => {
  await expect(makeOwnFolder("/proc/own/jobs")).rejects.toThrow(
    "No file can be made in /proc/own/jobs, a special folder of the system. Choose a folder of your own.",
  );
});
