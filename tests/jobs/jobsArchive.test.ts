/**
 * Jobs in one file and back onto a shelf: all of it, byte for byte where it can
 * be, and what becomes of jobs that are there already. Which of two states is
 * the later one is worked out by hand beside each case.
 */
import { unzipSync } from "fflate";
import { bringIn, exportOf } from "../../src/hosts/file/jobsArchive";
import { JOBS_LIST } from "../../src/hosts/file/jobsFile";
import { entriesOf, packed, storedPart, unpacked } from "../../src/hosts/file/archive";
import type { BringInReport } from "../../src/jobs/broughtInWords";
import { broughtInWords } from "../../src/jobs/broughtInWords";
import type { Shelf } from "../../src/jobs/shelf";
import { fnv1a } from "../../src/jobs/trail";
import { randomFrom } from "../review/cleanJobs";
import type { ModelDisk } from "./modelDisk";
import {
  bytesOn,
  documentOf,
  fold,
  FOLDER,
  idOf,
  lineOf,
  newShelf,
  openOn,
  seenOn,
  threeJobs,
  type,
  type SeenJob,
} from "./onShelf";
import { tries } from "../support/tries";

const outcomes = ({ jobs }: BringInReport): Record<string, string> =>
  Object.fromEntries(jobs.map(({ id, outcome }) => [id.at(-1)!, outcome]));

/** The steps that a job went through, as far as it still holds them, and those of each revision. */
async function stepsOf(shelf: Shelf, id: string): Promise<{ now: string; revisions: string[] }> {
  const { document, changes, notes } = await shelf.held(id);
  const steps = (one: { document: { revisionId: string }; changes: readonly { nextRevisionId: string }[] }) =>
    [one.document.revisionId, ...one.changes.map(({ nextRevisionId }) => nextRevisionId)].join(" ");
  const revisions = [];
  for (const { number, why } of notes.revisions)
    revisions.push(`${number} ${why}: ${steps(await shelf.revision(id, number))}`);
  return { now: steps({ document, changes }), revisions };
}

/** The same job on two shelves, at the state that both have. */
async function twoShelves(...steps: string[]): Promise<{ here: Shelf; there: Shelf; disk: ModelDisk }> {
  const { shelf: there } = await newShelf();
  await there.create(idOf("a"), { document: documentOf("A"), changes: [] }, { line: lineOf("Inn", 1) });
  await type(there, "a", ...steps);
  const { shelf: here, disk } = await newShelf();
  await bringIn(here, await exportOf(there));
  return { here, there, disk };
}

const over = async (from: Shelf, to: Shelf): Promise<BringInReport> => bringIn(to, await exportOf(from));

test("the codes are FNV-1a of 64 bits (its authors' own vectors, from memory)", () => {
  expect(fnv1a("")).toBe("cbf29ce484222325");
  expect(fnv1a("a")).toBe("af63dc4c8601ec8c");
  expect(fnv1a("foobar")).toBe("85944171f73967e8");
});

test("onto an empty shelf: every job with all that belongs to it, its logs byte for byte", async () => {
  const { shelf, disk } = await threeJobs();
  const archive = await exportOf(shelf);
  const { shelf: other, disk: otherDisk } = await newShelf();
  const report = await bringIn(other, archive);
  expect(outcomes(report)).toEqual({ a: "brought in", b: "brought in", c: "brought in" });
  expect(broughtInWords(report)).toBe("3 jobs brought in.");
  const [mine, theirs] = [await seenOn(shelf), await seenOn(other)];
  // The path of a file of the first machine alone is dropped.
  const c = mine[idOf("c")] as SeenJob;
  expect(c.notes).toMatchObject({ file: { name: "lodge.xlsx", path: "/home/someone/lodge.xlsx" } });
  expect(theirs).toEqual({
    ...mine,
    [idOf("c")]: { ...c, notes: { ...c.notes, file: { name: "lodge.xlsx", mark: "00" } } },
  });
  expect(JSON.stringify(bytesOn(otherDisk))).not.toContain(
    Buffer.from("/home/someone").toString("base64").slice(0, 12),
  );
  // Each part of the export lies on the disk as it was, the one without its path excepted.
  const [before, after] = [bytesOn(disk), bytesOn(otherDisk)];
  const parts = Object.keys(unzipSync(archive)).filter(
    (name) => name !== JOBS_LIST && !name.startsWith(idOf("c")),
  );
  expect(parts).toHaveLength(4);
  for (const name of parts)
    expect([name, after[`${FOLDER}/${name}`]]).toEqual([name, before[`${FOLDER}/${name}`]]);
  // Read anew it is the same, and so is what it exports.
  const again = await openOn(otherDisk);
  expect(await seenOn(again)).toEqual(theirs);
  const ids = [idOf("a"), idOf("b")];
  expect(await exportOf(again, ids)).toEqual(await exportOf(shelf, ids));
  // And can be edited.
  await type(again, "a", "a3");
  expect((await stepsOf(again, idOf("a"))).now).toBe("A a1 a2 a3");
});

test("the same jobs give the same bytes, and the same file brought in twice gives no doubles", async () => {
  const { shelf, disk } = await threeJobs();
  const archive = await exportOf(shelf);
  expect(await exportOf(await openOn(disk))).toEqual(archive);
  const { shelf: other, disk: otherDisk } = await newShelf();
  await bringIn(other, archive);
  const before = bytesOn(otherDisk);
  expect(outcomes(await bringIn(other, archive))).toEqual({
    a: "there already",
    b: "there already",
    c: "there already",
  });
  const changed = Object.entries(bytesOn(otherDisk)).filter(([name, bytes]) => before[name] !== bytes);
  expect(changed.map(([name]) => name).filter((name) => !name.includes("catalogue"))).toEqual([]);
});

test("one job by itself; one that is not here is refused with a sentence", async () => {
  const { shelf } = await threeJobs();
  const { shelf: other } = await newShelf();
  expect(outcomes(await bringIn(other, await exportOf(shelf, [idOf("b")])))).toEqual({ b: "brought in" });
  await expect(exportOf(shelf, [idOf("f")])).rejects.toThrow("There is no such job here any more.");
});

test("deleted here since: it is brought back", async () => {
  const { shelf } = await threeJobs();
  const archive = await exportOf(shelf);
  const before = await seenOn(shelf);
  await shelf.delete(idOf("c"));
  expect(outcomes(await bringIn(shelf, archive))).toMatchObject({ c: "brought in" });
  const c = before[idOf("c")] as SeenJob;
  expect(await seenOn(shelf)).toEqual({
    ...before,
    [idOf("c")]: { ...c, notes: { ...c.notes, file: { name: "lodge.xlsx", mark: "00" } } },
  });
});

describe("there and here", () => {
  test("edited there only, folded or not: taken, and what was here is a revision", async () => {
    for (const isFolded of [false, true]) {
      const { here, there } = await twoShelves("a1");
      // There: A a1 a2 a3. Here: A a1, which is a state that it passed.
      await type(there, "a", "a2", "a3");
      if (isFolded) await fold(there, "a");
      await there.note(idOf("a"), { state: "checked" });
      const report = await over(there, here);
      expect(outcomes(report)).toEqual({ a: "theirs is newer" });
      expect(broughtInWords(report)).toBe("1 job newer than here and taken, what was here is a revision.");
      expect(await stepsOf(here, idOf("a"))).toEqual({
        now: isFolded ? "a3" : "A a1 a2 a3",
        revisions: ["1 before a newer one was brought in: A a1"],
      });
      const { savedAt, notes } = await here.held(idOf("a"));
      expect({ savedAt, state: notes.state }).toEqual({
        savedAt: (await there.held(idOf("a"))).savedAt,
        state: "checked",
      });
      // Back there it is known: nothing but that revision is new.
      expect(outcomes(await over(here, there))).toEqual({ a: "there already" });
      expect((await stepsOf(there, idOf("a"))).revisions).toEqual([
        "1 before a newer one was brought in: A a1",
      ]);
    }
  });

  test("edited here only, folded or not: kept", async () => {
    for (const isFolded of [false, true]) {
      const { here, there } = await twoShelves("a1");
      await type(here, "a", "a2");
      if (isFolded) await fold(here, "a");
      expect(outcomes(await over(there, here))).toEqual({ a: "ours is newer" });
      expect(await stepsOf(here, idOf("a"))).toEqual({ now: isFolded ? "a2" : "A a1 a2", revisions: [] });
    }
  });

  test("an earlier state restored here: that is newer than what was exported before", async () => {
    const { here, there } = await twoShelves("a1");
    await here.freeze(idOf("a"), "offer");
    await type(here, "a", "a2");
    const archive = await exportOf(here);
    await here.restore(idOf("a"), 1);
    expect(outcomes(await bringIn(here, archive))).toEqual({ a: "ours is newer" });
    expect((await stepsOf(here, idOf("a"))).now).toBe("A a1");
    // There: A a1. The restored state has the same content, and went farther.
    expect(outcomes(await over(here, there))).toEqual({ a: "theirs is newer" });
    expect((await stepsOf(there, idOf("a"))).revisions).toHaveLength(2);
  });

  test("put away or sent on one side only goes along; on the other side it stays", async () => {
    const { here, there } = await twoShelves("a1");
    await there.note(idOf("a"), { away: true });
    expect(outcomes(await over(there, here))).toEqual({ a: "theirs is newer" });
    expect((await here.held(idOf("a"))).notes).toMatchObject({ away: true, revisions: [] });
    await here.note(idOf("a"), { away: false });
    expect(outcomes(await over(there, here))).toEqual({ a: "ours is newer" });
    expect((await here.held(idOf("a"))).notes.away).toBe(false);
  });

  test("edited on both sides: both stay, the other beside, once for each of its states", async () => {
    const { here, there } = await twoShelves("a1");
    await type(here, "a", "h1");
    await type(there, "a", "t1");
    await there.freeze(idOf("a"), "offer");
    const report = await over(there, here);
    expect(broughtInWords(report)).toBe("1 job changed on both sides: it stands beside.");
    const { beside } = report.jobs[0]!;
    expect(await stepsOf(here, idOf("a"))).toEqual({ now: "A a1 h1", revisions: [] });
    expect(await stepsOf(here, beside!)).toEqual({ now: "A a1 t1", revisions: ["1 offer: A a1 t1"] });
    expect((await here.held(beside!)).notes.conflictOf).toEqual({ job: idOf("a"), after: "a1" });
    expect((await over(there, here)).jobs).toMatchObject([{ outcome: "there already", beside }]);
    // It went on there: so does what stands beside.
    await type(there, "a", "t2");
    expect((await over(there, here)).jobs).toMatchObject([{ outcome: "theirs is newer", beside }]);
    expect((await stepsOf(here, beside!)).now).toBe("A a1 t1 t2");
    expect(here.list()).toHaveLength(2);
    // And it went on here: that is another once more.
    await here.append(beside!, [{ type: "REMOTE_REVISION", serverRevisionId: "t2", nextRevisionId: "b1" }]);
    await type(there, "a", "t3");
    expect((await over(there, here)).jobs).toMatchObject([{ outcome: "beside" }]);
    expect(here.list()).toHaveLength(3);
    expect((await stepsOf(here, beside!)).now).toBe("A a1 t1 t2 b1");
  });

  test("frozen differently on both sides, each its revision 1: both stay, none is altered", async () => {
    const { here, there } = await twoShelves("a1");
    await here.freeze(idOf("a"), "here");
    await there.freeze(idOf("a"), "there");
    const report = await over(there, here);
    expect(report.jobs).toMatchObject([
      { outcome: "there already", remarks: ["Its revision 1 is revision 2 here."] },
    ]);
    const { revisions } = await stepsOf(here, idOf("a"));
    expect(revisions).toEqual(["1 here: A a1", "2 there: A a1"]);
    // Back and forth once more, nothing is doubled.
    await over(here, there);
    await over(there, here);
    expect((await stepsOf(there, idOf("a"))).revisions).toEqual(["1 there: A a1", "2 here: A a1"]);
    expect((await stepsOf(here, idOf("a"))).revisions).toEqual(revisions);
  });

  test("clocks decide nothing: what is older there stays older, whatever its date", async () => {
    const { here, there } = await twoShelves("a1");
    jest.useFakeTimers({
      now: new Date("2099-01-01"),
      doNotFake: ["setImmediate", "nextTick", "setTimeout"],
    });
    try {
      await there.create(idOf("b"), { document: documentOf("B"), changes: [] });
      await over(there, here);
    } finally {
      jest.useRealTimers();
    }
    await type(here, "b", "b1");
    expect(outcomes(await over(there, here))).toEqual({ a: "there already", b: "ours is newer" });
  });
});

/** Changes one byte of a file's first record. */
function harm(disk: ModelDisk, part: string): void {
  const path = disk.paths.find((one) => one.includes(part))!;
  disk.put(
    path,
    disk.file(path)!.map((byte, index) => (index === 60 ? byte ^ 1 : byte)),
  );
}

describe("what can't be read", () => {
  async function withDamaged(): Promise<{ shelf: Shelf; disk: ModelDisk }> {
    const { shelf, disk } = await threeJobs();
    await shelf.held(idOf("a"));
    harm(disk, `${idOf("a")}.1.log`);
    const again = await openOn(disk);
    await again.held(idOf("a")).catch(() => undefined);
    return { shelf: again, disk };
  }

  test("a damaged job goes along as it is, stands on the other shelf so, and goes along again", async () => {
    const { shelf } = await withDamaged();
    const { shelf: other, disk } = await newShelf();
    const report = await over(shelf, other);
    expect(outcomes(report)).toEqual({ a: "as it is", b: "brought in", c: "brought in" });
    expect(broughtInWords(report)).toMatch(
      /^2 jobs brought in, 1 that can't be read brought in as it is\. “N-Möwe, revision 1, Möwe”: .* file is damaged/,
    );
    const entry = other.list().find(({ id }) => id === idOf("a"))!;
    expect(entry).toMatchObject({
      line: { name: "Möwe" },
      trouble: { kept: [expect.stringContaining("damaged/")] },
    });
    expect(outcomes(await over(shelf, other))).toMatchObject({ a: "there already" });
    const again = await openOn(disk);
    const bytes = (parts: readonly { bytes: Uint8Array }[]) =>
      parts.map((one) => Buffer.from(one.bytes).toString());
    expect(bytes((await again.carried(idOf("a"))).parts)).toEqual(
      bytes((await shelf.carried(idOf("a"))).parts),
    );
  });

  test("damaged here, whole in the file: whole again, with its own frozen states; what was damaged is kept", async () => {
    const { shelf, disk } = await threeJobs();
    const archive = await exportOf(shelf);
    const before = await seenOn(shelf);
    await type(shelf, "b", "b4");
    await shelf.freeze(idOf("b"), "later");
    for (const path of disk.paths.filter((one) => one.startsWith(`${FOLDER}/${idOf("b")}`))) harm(disk, path);
    const again = await openOn(disk);
    await again.held(idOf("b")).catch(() => undefined);
    const report = await bringIn(again, archive);
    expect(outcomes(report)).toMatchObject({ b: "brought in" });
    expect(report.jobs[1]!.remarks.join(" ")).toMatch(
      /is whole again\. What was damaged is kept as damaged\//,
    );
    const { content, revisions } = (await seenOn(again))[idOf("b")] as SeenJob;
    const was = before[idOf("b")] as SeenJob;
    expect(content).toEqual(was.content);
    expect(revisions.slice(0, 2)).toEqual(was.revisions);
    // Frozen after the export, and sound on this disk.
    expect(revisions[2]).toMatchObject({ note: { number: 3, why: "later" } });
  });

  test("a damaged frozen state here is mended by the file", async () => {
    const { shelf, disk } = await threeJobs();
    const archive = await exportOf(shelf);
    harm(disk, `revision-${idOf("b")}-1-`);
    await expect(shelf.revision(idOf("b"), 1)).rejects.toThrow(/can't be read/);
    expect(outcomes(await bringIn(shelf, archive))).toMatchObject({ b: "there already" });
    expect((await stepsOf(shelf, idOf("b"))).revisions[0]).toBe("1 offer: B b1");
  });

  test("whole here, damaged in the file: what is here stays", async () => {
    const { shelf } = await withDamaged();
    const { shelf: sound } = await threeJobs();
    const before = await seenOn(sound);
    const report = await over(shelf, sound);
    expect(report.jobs[0]).toMatchObject({
      outcome: "not read",
      remarks: ["It was not brought in: it is damaged in the file. What is here stays."],
    });
    expect((await seenOn(sound))[idOf("a")]).toEqual(before[idOf("a")]);
  });
});

/** The export with its list, or one part, changed by hand. */
function changed(archive: Uint8Array, change: (name: string, text: string) => string): Uint8Array {
  const parts = entriesOf(archive).map((entry) => ({
    name: entry.name,
    text: Buffer.from(unpacked(archive, entry)).toString(),
  }));
  const made = parts.map(({ name, text }) => ({ name, bytes: Buffer.from(change(name, text)) }));
  const list = JSON.parse(made.find(({ name }) => name === JOBS_LIST)!.bytes.toString()) as {
    jobs: { parts: { name: string; size: number; crc: number }[] }[];
  };
  // As one would who wants it believed.
  for (const part of list.jobs.flatMap((job) => job.parts)) {
    const found = made.find(({ name }) => name === part.name);
    if (found) Object.assign(part, { size: found.bytes.length, crc: storedPart("", found.bytes).crc });
  }
  return packed(
    made.map(({ name, bytes }) =>
      storedPart(name, name === JOBS_LIST ? Buffer.from(JSON.stringify(list)) : bytes),
    ),
  );
}
const listChanged = (archive: Uint8Array, change: (list: Record<string, unknown>) => void): Uint8Array =>
  changed(archive, (name, text) => {
    if (name !== JOBS_LIST) return text;
    const list = JSON.parse(text) as Record<string, unknown>;
    change(list);
    return JSON.stringify(list);
  });

describe("files that are made to harm, or by another version", () => {
  test("of a later version: refused by a sentence, nothing is changed", async () => {
    const { shelf } = await threeJobs();
    const { shelf: other, disk } = await newShelf();
    const before = bytesOn(disk);
    const newer = listChanged(await exportOf(shelf), (list) => (list.version = 2));
    await expect(bringIn(other, newer)).rejects.toThrow(
      "The file was made by a newer Rigsheet (version 2 of the export; this one reads 1). Bring it in with that one; nothing here was changed.",
    );
    expect(bytesOn(disk)).toEqual(before);
  });

  test("names that lead elsewhere, jobs that are listed twice", async () => {
    const { shelf } = await threeJobs();
    const archive = await exportOf(shelf);
    const named = (name: string) =>
      listChanged(archive, (list) => {
        (list.jobs as { parts: { name: string }[] }[])[0]!.parts[0]!.name = name;
      });
    for (const name of [
      "../../escaped.1.log",
      `damaged/../${idOf("a")}.1.log`,
      `${idOf("b")}.1.log`,
      `${idOf("a")}.1.log/../../x`,
      "__proto__",
    ]) {
      const { shelf: other, disk } = await newShelf();
      const before = bytesOn(disk);
      await expect(bringIn(other, named(name))).rejects.toThrow(/its list of jobs is damaged/);
      expect(bytesOn(disk)).toEqual(before);
    }
    const twice = listChanged(archive, (list) => {
      const [first] = list.jobs as { id: string; parts: unknown[] }[];
      list.jobs = [...(list.jobs as unknown[]), { ...first, parts: [] }];
    });
    const { shelf: other } = await newShelf();
    const report = await bringIn(other, twice);
    expect(outcomes(report)).toEqual({ a: "not read", b: "brought in", c: "brought in" });
    expect(report.jobs[0]!.remarks).toEqual([
      "It was not brought in: it is listed in the file twice, and not alike.",
    ]);
  });

  const record = (text: string, change: (base: Record<string, never>) => void): string => {
    const [, body] = text.split("\n");
    const first = JSON.parse(body!) as { base: Record<string, never> };
    change(first.base);
    const bytes = Buffer.from(JSON.stringify(first));
    const facts = Buffer.concat([Buffer.from(`0 ${bytes.length} `), bytes]);
    const sum = storedPart("", facts).crc.toString(16).padStart(8, "0");
    return `#0 ${bytes.length} ${sum}\n${bytes.toString()}\n`;
  };

  test("a job whose notes name a place, whose changes do not follow, that says it is deleted, or of a later version", async () => {
    const { shelf } = await newShelf();
    await shelf.create(idOf("a"), { document: documentOf("A"), changes: [] });
    await shelf.freeze(idOf("a"), "offer");
    await fold(shelf, "a");
    const archive = await exportOf(shelf);
    const of = (change: (base: Record<string, never>) => void) =>
      changed(archive, (name, text) => (name.startsWith(idOf("a")) ? record(text, change) : text));
    const cases: [string, Uint8Array][] = [
      [
        "not as Rigsheet writes",
        of((base) =>
          Object.assign((base.notes as unknown as { revisions: object[] }).revisions[0]!, { key: "../../x" }),
        ),
      ],
      ["not as Rigsheet writes", of((base) => Object.assign(base.notes!, { state: "paid" }))],
      [
        "not as Rigsheet writes",
        of((base) =>
          Object.assign(base, { changes: [{ type: "x", serverRevisionId: "other", nextRevisionId: "y" }] }),
        ),
      ],
      ["not as Rigsheet writes", of((base) => Object.assign(base, { savedAt: 7 }))],
      ["written by a newer Rigsheet", of((base) => Object.assign(base, { rigsheet: 99 }))],
    ];
    for (const [why, file] of cases)
      // Marked as damaged it is believed no more.
      for (const bytes of [
        file,
        listChanged(file, (list) => {
          const unreadable = {
            state: "draft",
            away: false,
            revisions: [],
            savedAt: "",
            sentence: "It can't be read.",
          };
          for (const job of list.jobs as object[]) Object.assign(job, { unreadable });
        }),
      ]) {
        const { shelf: other } = await newShelf();
        const report = await bringIn(other, bytes);
        expect(report.jobs).toMatchObject([{ outcome: "not read", remarks: [expect.stringContaining(why)] }]);
        expect(other.list()).toEqual([]);
      }
  });

  test("a frozen state under the same key that is another: ours is not altered, theirs stands behind it", async () => {
    const { shelf } = await threeJobs();
    const { shelf: other } = await newShelf();
    const archive = await exportOf(shelf);
    await bringIn(other, archive);
    const forged = changed(archive, (name, text) =>
      name.startsWith(`revision-${idOf("b")}-1-`)
        ? record(text, (base) => Object.assign(base, { document: documentOf("forged"), changes: [] }))
        : text,
    );
    for (let time = 0; time < 2; time++) {
      await bringIn(other, forged);
      expect((await stepsOf(other, idOf("b"))).revisions).toEqual([
        "1 offer: B b1",
        "2 sent: B b1 b2",
        "3 offer: forged",
      ]);
    }
  });
});

const RUNS = tries(20, 60, 1000);
test(
  `${RUNS} random shelves, exported and brought in to an empty one: everything equal`,
  async () => {
    const random = randomFrom(14);
    const pick = <T>(from: readonly T[]): T => from[Math.floor(random() * from.length)]!;
    for (let time = 0; time < RUNS; time++) {
      const { shelf } = await newShelf();
      const letters = ["a", "b", "c", "d"].slice(0, 1 + Math.floor(random() * 4));
      for (const letter of letters)
        await shelf.create(
          idOf(letter),
          { document: documentOf(letter), changes: [] },
          { line: lineOf(letter, random()) },
        );
      for (let step = 0; step < 25; step++) {
        const letter = pick(letters);
        const { notes } = await shelf.held(idOf(letter));
        await pick([
          () => type(shelf, letter, `${letter}${step}`),
          () => type(shelf, letter, `${letter}${step}`),
          () => fold(shelf, letter),
          () => shelf.freeze(idOf(letter), pick(["offer", "Ørsted & Söhne", "…"])),
          () => shelf.note(idOf(letter), { state: pick(["draft", "checked", "sent", "accepted", "done"]) }),
          () => shelf.note(idOf(letter), { away: random() < 0.5 }),
          async () =>
            void (
              notes.revisions.length > 0 && (await shelf.restore(idOf(letter), pick(notes.revisions).number))
            ),
        ])();
      }
      const archive = await exportOf(shelf);
      const { shelf: other, disk } = await newShelf();
      await bringIn(other, archive);
      const seen = await seenOn(shelf);
      expect(await seenOn(other)).toEqual(seen);
      expect(await exportOf(other)).toEqual(archive);
      expect(await seenOn(await openOn(disk))).toEqual(seen);
      expect((await bringIn(other, archive)).jobs.every(({ outcome }) => outcome === "there already")).toBe(
        true,
      );
    }
  },
  RUNS * 2_000,
);
