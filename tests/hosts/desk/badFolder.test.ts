/** A data folder that is damaged, of a newer version, elsewhere or gone: a sentence, nothing confirmed is lost, the other jobs open, and the list still has every job. */
import {
  existsSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from "node:fs";
import path from "node:path";
import { unzipSync } from "fflate";
import type { Start } from "../../../src/hosts/desk/protocol";
import { encoded } from "../../../src/jobs/record";
import {
  ask,
  askJson,
  BUILD_MS,
  buildDesk,
  freePort,
  refusedStart,
  sentenceOf,
  startDesk,
  write,
} from "./desk";
import {
  change,
  document,
  edit,
  entry,
  filesIn,
  held,
  lineOf,
  logOf,
  newId,
  ownDesk,
  post,
  put,
  shelf,
} from "./ownDesk";

jest.setTimeout(60_000);
beforeAll(buildDesk, BUILD_MS);
const desk = ownDesk();

const notOnWindows = process.platform === "win32" ? test.skip : test;

/** Three jobs, put down by a desk that was killed then: the one that the test harms, one that was sent, one more that is open. */
async function threeJobs(): Promise<{ harmed: string; sent: string; open: string }> {
  const { address, kill } = await desk.start();
  const [harmed, sent, open] = [newId(), newId(), newId()];
  for (const [id, name] of [
    [harmed, "Hill Lane"],
    [sent, "Mill Road"],
    [open, "Kiln Yard"],
  ] as const) {
    await put(address, id, "r1", { mark: name, line: lineOf(name) });
    await edit(address, id, change("r1", "r2"));
  }
  await post(address, `jobs/${sent}/notes`, { state: "sent" });
  await kill();
  return { harmed, sent, open };
}

/** The two that nothing was done to, whole; and the list has all three. */
async function othersAreWhole(
  address: string,
  { harmed, sent, open }: Awaited<ReturnType<typeof threeJobs>>,
) {
  expect((await shelf(address)).jobs.map(({ id }) => id).sort()).toEqual([harmed, sent, open].sort());
  for (const [id, mark] of [
    [sent, "Mill Road"],
    [open, "Kiln Yard"],
  ] as const)
    expect(await held(address, id)).toMatchObject({
      document: document("r1", mark),
      changes: [change("r1", "r2")],
    });
  expect(await askJson(address, `jobs/${sent}/revisions/1`)).toMatchObject({
    note: { why: "sent", head: "r2" },
  });
  expect((await askJson<Start>(address, "start")).open).toBe(open);
  expect((await edit(address, open, change("r2", "r3"))).status).toBe(200);
  expect((await put(address, newId(), "n1")).status).toBe(200);
}

/** What is handed out of a job as it is. */
async function exported(address: string, id: string): Promise<Buffer[]> {
  const answer = await ask(address, `jobs/${id}/export`);
  expect(answer.status).toBe(200);
  return Object.values(unzipSync(new Uint8Array(await answer.arrayBuffer()))).map((one) => Buffer.from(one));
}

describe("one job's file", () => {
  test.each<[string, (bytes: Buffer) => Buffer]>([
    ["of 0 bytes", () => Buffer.alloc(0)],
    ["all zeros", (bytes) => Buffer.alloc(bytes.length)],
    ["cut short in its first record", (bytes) => bytes.subarray(0, 60)],
    ["without its head", (bytes) => bytes.subarray(5)],
    ["of something else", () => Buffer.from("not a log\n")],
  ])("%s: said on its line, kept as it is, and offered; so at the next start", async (_, harm) => {
    const ids = await threeJobs();
    const file = logOf(desk.folder, ids.harmed);
    const bytes = harm(readFileSync(file));
    writeFileSync(file, bytes);
    const { address, kill } = await desk.start();
    const refused = await ask(address, `jobs/${ids.harmed}`);
    expect(refused.status).toBe(422);
    expect(await sentenceOf(refused)).toMatch(/^This job can't be read: its file is damaged\./);
    expect(await exported(address, ids.harmed)).toEqual([bytes]);
    await othersAreWhole(address, ids);
    await kill();
    const again = await desk.start();
    expect(await entry(again.address, ids.harmed)).toMatchObject({
      line: { name: "Hill Lane" },
      trouble: { kept: [expect.stringMatching(/^damaged\//)] },
    });
    expect(await exported(again.address, ids.harmed)).toEqual([bytes]);
    // It is put away and brought back like any other.
    for (const away of [true, false]) {
      expect((await post(again.address, `jobs/${ids.harmed}/notes`, { away })).status).toBe(200);
      expect((await entry(again.address, ids.harmed))!.away).toBe(away);
    }
  });

  test("cut short in its last record: what was before is there, the tail is kept and said", async () => {
    const ids = await threeJobs();
    const file = logOf(desk.folder, ids.harmed);
    const whole = readFileSync(file);
    truncateSync(file, whole.length - 7);
    const { address } = await desk.start();
    expect(await held(address, ids.harmed)).toMatchObject({
      document: document("r1", "Hill Lane"),
      changes: [],
    });
    expect((await shelf(address)).notices).toEqual([
      expect.stringMatching(/^What was saved last of Hill Lane was cut short.*kept as damaged/),
    ]);
    await othersAreWhole(address, ids);
  });

  test("damaged where nothing can be put aside: it stays where it is, and is said", async () => {
    const ids = await threeJobs();
    const file = logOf(desk.folder, ids.harmed);
    writeFileSync(file, "not a log\n");
    writeFileSync(path.join(desk.folder, "damaged"), "a file of this name");
    for (let time = 0; time < 2; time++) {
      const { address, kill } = await desk.start();
      expect(await entry(address, ids.harmed)).toMatchObject({ trouble: { kept: [path.basename(file)] } });
      expect(await exported(address, ids.harmed)).toContainEqual(Buffer.from("not a log\n"));
      if (time === 0) await othersAreWhole(address, ids);
      await kill();
    }
    expect(readFileSync(file, "utf8")).toBe("not a log\n");
  });

  test("replaced by a folder, or gone: said on its line; put back, it is the job that it was", async () => {
    const ids = await threeJobs();
    const file = logOf(desk.folder, ids.harmed);
    const kept = path.join(desk.folder, "elsewhere");
    renameSync(file, kept);
    mkdirSync(file);
    writeFileSync(path.join(file, "inside"), "theirs");
    const { address, kill } = await desk.start();
    const refused = await ask(address, `jobs/${ids.harmed}`);
    expect([refused.status, await sentenceOf(refused)]).toEqual([
      422,
      "The file of this job is gone from its place.",
    ]);
    expect((await edit(address, ids.harmed, change("r2", "r3"))).status).toBe(422);
    expect((await ask(address, `jobs/${ids.harmed}/export`)).status).toBe(404);
    await othersAreWhole(address, ids);
    expect(readFileSync(path.join(file, "inside"), "utf8")).toBe("theirs");
    await kill();
    rmSync(file, { recursive: true });
    renameSync(kept, file);
    const again = await desk.start();
    expect(await held(again.address, ids.harmed)).toMatchObject({
      document: document("r1", "Hill Lane"),
      changes: [change("r1", "r2")],
    });
    expect((await entry(again.address, ids.harmed))!.trouble).toBeUndefined();
  });

  test("of a newer version: a line that says so, and its file stays byte for byte", async () => {
    const ids = await threeJobs();
    const file = logOf(desk.folder, ids.harmed);
    const newer = Buffer.from(encoded(0, { base: { rigsheet: 99, tree: [] }, entries: [] }));
    writeFileSync(file, newer);
    const { address } = await desk.start();
    const refused = await ask(address, `jobs/${ids.harmed}`);
    expect([refused.status, await sentenceOf(refused)]).toEqual([
      422,
      "This was written by a newer Rigsheet. Start that one; nothing here was changed.",
    ]);
    expect((await edit(address, ids.harmed, change("r2", "r3"))).status).toBe(422);
    expect((await put(address, ids.harmed, "r1")).status).toBe(422);
    expect(await exported(address, ids.harmed)).toEqual([newer]);
    await othersAreWhole(address, ids);
    expect(readFileSync(file).equals(newer)).toBe(true);
    expect(existsSync(path.join(desk.folder, "damaged"))).toBe(false);
  });

  test("a frozen state that is damaged: its own sentence; the job and its other states are not touched", async () => {
    const ids = await threeJobs();
    const revision = filesIn(desk.folder).find((file) =>
      path.basename(file).startsWith(`revision-${ids.sent}`),
    )!;
    const bytes = readFileSync(revision);
    writeFileSync(revision, bytes.fill(0, 30, 40));
    const { address } = await desk.start();
    const refused = await ask(address, `jobs/${ids.sent}/revisions/1`);
    expect(refused.status).toBe(422);
    expect(await sentenceOf(refused)).toMatch(
      /^Revision 1 can't be read: .* kept as damaged.*The job itself is not/,
    );
    expect((await post(address, `jobs/${ids.sent}/revisions/1/restore`, {})).status).toBe(422);
    expect(await held(address, ids.sent)).toMatchObject({
      document: document("r1", "Mill Road"),
      changes: [change("r1", "r2")],
    });
    expect(
      filesIn(path.join(desk.folder, "damaged")).map((file) => readFileSync(file).equals(bytes)),
    ).toEqual([true]);
  });
});

describe("the list of all jobs, which is drawn from them", () => {
  test.each<[string, (file: string) => void]>([
    ["gone", (file) => rmSync(file)],
    ["of 0 bytes", (file) => writeFileSync(file, "")],
    ["all zeros", (file) => writeFileSync(file, Buffer.alloc(500))],
    [
      "replaced by a folder",
      (file) => {
        rmSync(file);
        mkdirSync(file);
      },
    ],
  ])("%s: it is drawn anew, with every job and all that is told of it", async (_, harm) => {
    const ids = await threeJobs();
    for (const file of filesIn(desk.folder))
      if (/^catalogue\.\d+\.log$/.test(path.basename(file))) harm(file);
    for (let time = 0; time < 2; time++) {
      const { address, kill } = await desk.start();
      expect(await entry(address, ids.sent)).toMatchObject({
        state: "sent",
        line: { name: "Mill Road" },
        revisions: [{ number: 1 }],
      });
      expect((await entry(address, ids.harmed))!.trouble).toBeUndefined();
      expect((await shelf(address)).jobs).toHaveLength(3);
      await kill();
    }
  });

  test("of a newer version: the desk does not start, says why, and changes nothing", async () => {
    await threeJobs();
    rmSync(path.join(desk.folder, "desk.lock"));
    writeFileSync(
      path.join(desk.folder, "catalogue.99.log"),
      encoded(0, { base: { rigsheet: 99, lines: [] }, entries: [] }),
    );
    const all = (): [string, string][] =>
      filesIn(desk.folder).map((file) => [file, readFileSync(file, "hex")]);
    const before = all();
    expect(refusedStart("--data", desk.folder)).toMatchObject({
      status: 1,
      stderr: "This was written by a newer Rigsheet. Start that one; nothing here was changed.\n",
    });
    expect(all()).toEqual(before);
  });
});

describe("the folder", () => {
  notOnWindows(
    "a link to one is that one; one that leads nowhere has its sentence (not on Windows, where a link needs rights)",
    async () => {
      const real = path.join(desk.folder, "real");
      mkdirSync(real, { mode: 0o700 });
      const link = path.join(desk.folder, "link");
      symlinkSync(real, link);
      const first = await startDesk("--data", link, "--port", String(await freePort()));
      const id = newId();
      try {
        await put(first.address, id, "r1");
        await edit(first.address, id, change("r1", "r2"));
      } finally {
        await first.kill();
      }
      const second = await startDesk("--data", real, "--port", String(await freePort()));
      try {
        expect((await held(second.address, id)).changes).toEqual([change("r1", "r2")]);
      } finally {
        await second.kill();
      }
      const nowhere = path.join(desk.folder, "nowhere");
      symlinkSync(path.join(desk.folder, "gone"), nowhere);
      const { status, stderr } = refusedStart("--data", nowhere);
      expect([status, stderr]).toEqual([1, expect.stringMatching(/^[^\n]+ [^\n]*\.\n$/)]);
      expect(stderr).not.toMatch(/ENOENT|EEXIST|could not be saved/);
    },
  );

  test("moved away while the desk runs: every write says so, the list stays; back again, all goes on", async () => {
    const ids = await threeJobs();
    const { address } = await desk.start();
    await held(address, ids.open);
    const away = `${desk.folder}-away`;
    renameSync(desk.folder, away);
    try {
      const sentence = `There is no folder ${desk.folder}. Make it, or save elsewhere.`;
      for (const refused of [
        await edit(address, ids.open, change("r2", "lost")),
        await put(address, newId(), "n1"),
        await post(address, `jobs/${ids.sent}/notes`, { state: "done" }),
        await post(address, `jobs/${ids.open}/revisions`, { why: "x" }),
        // Not read before.
        await ask(address, `jobs/${ids.harmed}`),
      ])
        expect([refused.status, await sentenceOf(refused)]).toEqual([422, sentence]);
      expect((await shelf(address)).jobs).toHaveLength(3);
      expect((await held(address, ids.open)).changes).toEqual([change("r1", "r2")]);
    } finally {
      renameSync(away, desk.folder);
    }
    await othersAreWhole(address, ids);
    expect((await held(address, ids.harmed)).changes).toEqual([change("r1", "r2")]);
  });

  test("empty while the desk runs, as a disk that was unmounted leaves it: sentences, and all is there once it is back", async () => {
    const ids = await threeJobs();
    const { address } = await desk.start();
    const away = `${desk.folder}-away`;
    renameSync(desk.folder, away);
    mkdirSync(desk.folder);
    try {
      for (const refused of [
        await ask(address, `jobs/${ids.harmed}`),
        await edit(address, ids.open, change("r2", "lost")),
        await put(address, newId(), "n1"),
      ]) {
        expect(refused.status).toBeGreaterThanOrEqual(400);
        expect(await sentenceOf(refused)).toMatch(/\S/);
      }
      expect((await shelf(address)).jobs).toHaveLength(3);
      expect(filesIn(desk.folder)).toEqual([]);
    } finally {
      rmSync(desk.folder, { recursive: true });
      renameSync(away, desk.folder);
    }
    expect((await held(address, ids.harmed)).changes).toEqual([change("r1", "r2")]);
    expect((await entry(address, ids.harmed))!.trouble).toBeUndefined();
    await othersAreWhole(address, ids);
  });

  test("a key that can't be kept holds until the desk ends", async () => {
    mkdirSync(path.join(desk.folder, "desk.key"));
    const { address } = await desk.start();
    expect((await put(address, newId(), "r1")).status).toBe(200);
    expect((await write(address, "save", "POST", "null")).status).toBe(400);
  });
});
