/** The desk's store through every fault of a disk: the job that is open, and what was confirmed in it, is what the next start shows. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import type { Change } from "../../../src/hosts/desk/protocol";
import { JobStore } from "../../../src/hosts/desk/server/jobStore";
import { Dead, ModelDisk, type Fault } from "../../jobs/modelDisk";
import { randomFrom } from "../../review/cleanJobs";

let folder: string;
beforeAll(() => void (folder = mkdtempSync(path.join(tmpdir(), "rigsheet-store-"))));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

type Step = { readonly do: "new" | "fold" | "edit"; readonly id: string } | { readonly do: "start again" };
const STEPS: readonly Step[] = [
  { do: "new", id: "A" },
  { do: "edit", id: "A1" },
  { do: "new", id: "B" },
  // Where B was refused, this goes into A, and A is what must be found.
  { do: "edit", id: "x2" },
  { do: "fold", id: "F" },
  { do: "edit", id: "x3" },
  { do: "start again" },
  { do: "edit", id: "x4" },
  { do: "new", id: "C" },
  { do: "edit", id: "x5" },
];

/** The document and the changes since, by their marks. */
const marksOf = (store: JobStore): string =>
  [
    store.job?.document.revisionId,
    ...(store.job?.changes ?? []).map(({ nextRevisionId }) => nextRevisionId),
  ].join(" ");

const change = (from: string, to: string): Change => ({
  type: "REMOTE_REVISION",
  serverRevisionId: from,
  nextRevisionId: to,
});

async function run(fault: { at: number; kind: Fault } | undefined, random: () => number): Promise<number> {
  const disk = new ModelDisk(folder);
  disk.fault = fault;
  const open = (on: ModelDisk): Promise<JobStore> => JobStore.open(folder, "job", { disk: on.disk });
  let store = await open(disk).catch(() => undefined);
  let confirmed = store ? marksOf(store) : "";
  let possible: string[] = [];
  for (const step of STEPS) {
    let wanted = confirmed;
    try {
      if (step.do === "start again" || !store) {
        store = await open(disk);
        const found = marksOf(store);
        expect([confirmed, ...possible]).toContain(found);
        confirmed = found;
        possible = [];
        if (step.do === "start again") continue;
      }
      const head: string | null = store.head;
      if (step.do === "edit") {
        if (head === null) continue;
        wanted = `${confirmed} ${step.id}`;
        await store.append([change(head, step.id)]);
      } else {
        wanted = step.id;
        const document = { revisionId: step.id, sheets: [] };
        await store.put({ document, after: head, replaces: step.do === "new", fromFile: false });
      }
      confirmed = wanted;
      possible = [];
      expect(marksOf(store)).toBe(confirmed);
    } catch (error) {
      if ((error as Error).constructor.name === "JestAssertionError") throw error;
      possible.push(wanted);
      if (error instanceof Dead || (error as Error).cause instanceof Dead) break;
    }
  }
  for (const found of disk.after(random, 12))
    expect([confirmed, ...possible]).toContain(marksOf(await open(found)));
  return disk.calls;
}

test.each<Fault>(["dies", "is full", "fails", "writes half"])(
  "every file call %s once: the right job is open, with all that was confirmed",
  async (kind) => {
    const random = randomFrom(7);
    const calls = await run(undefined, random);
    expect(calls).toBeGreaterThan(60);
    for (let at = 0; at < calls; at++) await run({ at, kind }, random);
  },
  120_000,
);

test("a job whose place could not be noted is put down once, however often the page asks", async () => {
  const disk = new ModelDisk(folder);
  const store = await JobStore.open(folder, "job", { disk: disk.disk });
  const put = (id: string, after: string | null): Promise<unknown> =>
    store.put({ document: { revisionId: id, sheets: [] }, after, replaces: true, fromFile: false });
  await put("A", null);
  const real = disk.disk.open;
  let refused = 0;
  Object.assign(disk.disk, {
    open: (...words: Parameters<typeof real>) => {
      if (!String(words[0]).includes("desk-") || words[1] === "r") return real(...words);
      refused++;
      return Promise.reject(Object.assign(new Error("full"), { code: "ENOSPC" }));
    },
  });
  for (let time = 0; time < 5; time++) await expect(put("B", "A")).rejects.toThrow(/is full/);
  expect(refused).toBeGreaterThanOrEqual(5);
  expect(disk.paths.filter((one) => /job-[^/]*\.log$/.test(one) && !one.includes("desk-"))).toHaveLength(2);
  Object.assign(disk.disk, { open: real });
  await put("B", "A");
  expect((await JobStore.open(folder, "job", { disk: disk.disk })).head).toBe("B");
});

test("a damaged log of the desk: the job that was changed last is shown, and it is said", async () => {
  const disk = new ModelDisk(folder);
  const store = await JobStore.open(folder, "job", { disk: disk.disk });
  for (const [id, after] of [
    ["A", null],
    ["B", "A"],
  ] as const)
    await store.put({ document: { revisionId: id, sheets: [] }, after, replaces: true, fromFile: false });
  // Another time than A's, which has a thousandth of a second.
  await new Promise((resolve) => setTimeout(resolve, 5));
  await store.append([change("B", "B1")]);
  const log = disk.paths.find((one) => one.includes("desk-job"))!;
  disk.put(
    log,
    disk.file(log)!.map((byte, index) => (index === 60 ? byte ^ 1 : byte)),
  );
  const again = await JobStore.open(folder, "job", { disk: disk.disk });
  expect(marksOf(again)).toBe("B B1");
  expect(again.notices).toEqual([
    expect.stringMatching(/^Which job was open here last could not be read.*No job is lost/),
  ]);
  await again.append([change("B1", "B2")]);
  const later = await JobStore.open(folder, "job", { disk: disk.disk });
  expect([marksOf(later), later.notices]).toEqual(["B B1 B2", []]);
});
