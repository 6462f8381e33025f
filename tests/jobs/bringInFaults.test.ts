/**
 * Bringing jobs in over a disk on which every file call fails once, each in its
 * turn: whatever was there stays, no job is half, and doing it again completes it.
 */
import { bringIn, exportOf } from "../../src/hosts/file/jobsArchive";
import type { BringInReport } from "../../src/jobs/broughtInWords";
import type { Shelf } from "../../src/jobs/shelf";
import { randomFrom } from "../review/cleanJobs";
import { tries } from "../support/tries";
import { FAULTS, ModelDisk, type Fault } from "./modelDisk";
import { documentOf, fold, FOLDER, idOf, lineOf, newShelf, openOn, seenOn, type } from "./onShelf";

const LETTERS = ["a", "b", "c", "d", "e", "f"];

/**
 * The shelf that it is brought onto, and the file. In the file: a, edited and
 * frozen, is not here; b went on there; c went on here; d on both sides; e is
 * damaged in the file, and not here; f is damaged here.
 */
async function setUp(): Promise<{ disk: ModelDisk; archive: Uint8Array }> {
  const { shelf: there, disk: thereDisk } = await newShelf();
  for (const letter of LETTERS) {
    await there.create(
      idOf(letter),
      { document: documentOf(letter), changes: [] },
      { line: lineOf(letter, 1) },
    );
    await type(there, letter, `${letter}1`);
    await there.freeze(idOf(letter), "offer");
  }
  const { shelf: here, disk } = await newShelf();
  await bringIn(here, await exportOf(there, ["b", "c", "d", "f"].map(idOf)));
  await type(there, "a", "a2");
  await there.note(idOf("a"), { state: "sent" });
  await type(there, "b", "b2");
  await fold(there, "b");
  await there.freeze(idOf("b"), "second offer");
  await type(here, "c", "c2");
  await type(here, "d", "here");
  await type(there, "d", "there");
  await there.freeze(idOf("d"), "theirs");
  harm(thereDisk, `${idOf("e")}.1.log`);
  harm(disk, `${idOf("f")}.1.log`);
  const again = await openOn(thereDisk);
  await again.held(idOf("e")).catch(() => undefined);
  const hereAgain = await openOn(disk);
  await hereAgain.held(idOf("f")).catch(() => undefined);
  return { disk: settled(disk), archive: await exportOf(again) };
}

function harm(disk: ModelDisk, part: string): void {
  const path = disk.paths.find((one) => one.includes(part))!;
  disk.put(
    path,
    disk.file(path)!.map((byte, index) => (index === 60 ? byte ^ 1 : byte)),
  );
}

/** A disk with the same files, all of them safe. */
function settled(disk: ModelDisk): ModelDisk {
  const fresh = new ModelDisk(FOLDER);
  void fresh.disk.mkdir(`${FOLDER}/damaged`, { mode: 0o700 });
  for (const path of disk.paths) fresh.put(path, disk.file(path)!);
  return fresh;
}

/** What a shelf shows, without what is drawn by lot or by the clock: a frozen state's key and time. */
const seenAs = async (shelf: Shelf): Promise<Record<string, string>> =>
  Object.fromEntries(
    Object.entries(await seenOn(shelf)).map(([id, job]) => [
      id,
      JSON.stringify(job, (name, value: unknown) => (name === "key" || name === "at" ? "" : value)),
    ]),
  );

const unread = ({ jobs }: BringInReport): string[] =>
  jobs.filter(({ outcome }) => outcome === "not read").map(({ id }) => id.at(-1)!);

test("without a fault: every way that there is", async () => {
  const { disk, archive } = await setUp();
  const shelf = await openOn(disk);
  const report = await bringIn(shelf, archive);
  expect(report.jobs.map(({ id, outcome }) => `${id.at(-1)} ${outcome}`)).toEqual([
    "a brought in",
    "b theirs is newer",
    "c ours is newer",
    "d beside",
    "e as it is",
    "f brought in",
  ]);
});

test.each<Fault>([...FAULTS])(
  "file calls %s once, each in its turn: nothing that was there is lost, no job is half, and again it is completed",
  async (kind) => {
    const random = randomFrom(14);
    const { disk: first, archive } = await setUp();
    const before = await seenAs(await openOn(settled(first)));
    const done = await openOn(settled(first));
    await bringIn(done, archive);
    const after = await seenAs(done);

    /** Each job is as it was, or as it becomes; the frozen one of both kept, and nothing else is there. */
    const mustBeWhole = async (shelf: Shelf, at: string): Promise<void> => {
      for (const [id, job] of Object.entries(await seenAs(shelf)))
        if (job !== before[id] && job !== after[id] && !isOnItsWay(job))
          expect({ at, id, job }).toEqual({ at, id, job: after[id] });
      const found = new Set(shelf.list().map(({ id }) => id));
      for (const id of Object.keys(before))
        expect({ at, id, isThere: found.has(id) }).toEqual({ at, id, isThere: true });
    };

    let calls = 0;
    for (let at = 0; ; at += tries(3, 1)) {
      const disk = settled(first);
      const shelf = await openOn(disk);
      const from = disk.calls;
      disk.fault = { at: from + at, kind };
      await bringIn(shelf, archive).catch(() => undefined);
      calls = disk.calls - from;
      disk.fault = undefined;
      if (at >= calls) break;
      if (!disk.isDead) {
        await mustBeWhole(shelf, `${kind} at ${at}`);
        expect(unread(await bringIn(shelf, archive))).toEqual([]);
        mustBe(after, await seenAs(shelf), `${kind} at ${at}, again`);
      }
      for (const found of disk.after(random, 3)) {
        await mustBeWhole(await openOn(settled(found)), `after the power went, ${kind} at ${at}`);
        const again = await openOn(found);
        expect(unread(await bringIn(again, archive))).toEqual([]);
        mustBe(after, await seenAs(again), `after the power went, ${kind} at ${at}, again`);
      }
    }
    expect(calls).toBeGreaterThan(50);
  },
  300_000,
);

function mustBe(wanted: Record<string, string>, found: Record<string, string>, at: string): void {
  for (const id of new Set([...Object.keys(wanted), ...Object.keys(found)]))
    if (wanted[id] !== found[id]) expect({ at, id, job: found[id] }).toEqual({ at, id, job: wanted[id] });
}

/** One that can't be read is listed before its parts are put down: it can't be read then either. */
const isOnItsWay = (job: string): boolean => job.startsWith('{"unreadable"');
