/** A job's file that is damaged, cut short, of a newer version, gone or another thing: a sentence on its line, kept as it is, and the other jobs open. */
import {
  existsSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from "node:fs";
import path from "node:path";
import { encoded } from "../../../src/jobs/record";
import { ask, BUILD_MS, buildDesk, sentenceOf } from "./desk";
import { change, document, edit, entry, filesIn, held, logOf, ownDesk, post, put, shelf } from "./ownDesk";
import { JOBS_LIST } from "../../../src/hosts/file/jobsFile";
import { unzipSync } from "fflate";
import { exported, othersAreWhole, threeJobs } from "./threeJobs";

jest.setTimeout(60_000);
beforeAll(buildDesk, BUILD_MS);
const desk = ownDesk();

describe("one job's file", () => {
  test.each<[string, (bytes: Buffer) => Buffer]>([
    ["of 0 bytes", () => Buffer.alloc(0)],
    ["all zeros", (bytes) => Buffer.alloc(bytes.length)],
    ["cut short in its first record", (bytes) => bytes.subarray(0, 60)],
    ["without its head", (bytes) => bytes.subarray(5)],
    ["of something else", () => Buffer.from("not a log\n")],
  ])("%s: said on its line, kept as it is, and offered; so at the next start", async (_, harm) => {
    const ids = await threeJobs(desk);
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
    const ids = await threeJobs(desk);
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
    const ids = await threeJobs(desk);
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
    const ids = await threeJobs(desk);
    const file = logOf(desk.folder, ids.harmed);
    const kept = path.join(desk.folder, "elsewhere");
    renameSync(file, kept);
    mkdirSync(file);
    writeFileSync(path.join(file, "inside"), "theirs");
    const { address, kill } = await desk.start();
    const refused = await ask(address, `jobs/${ids.harmed}`);
    expect(refused.status).toBe(422);
    expect(await sentenceOf(refused)).toMatch(/^The file of this job is gone from its place\.$| is a folder/);
    expect((await edit(address, ids.harmed, change("r2", "r3"))).status).toBe(422);
    // Nothing of it can be had: the export names it, and says why.
    const none = unzipSync(
      new Uint8Array(await (await ask(address, `export?job=${ids.harmed}`)).arrayBuffer()),
    );
    expect(Object.keys(none)).toEqual([JOBS_LIST]);
    expect(JSON.parse(Buffer.from(none[JOBS_LIST]!).toString())).toMatchObject({
      jobs: [{ id: ids.harmed, parts: [], unreadable: { sentence: expect.stringMatching(/\.$/) as string } }],
    });
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
    const ids = await threeJobs(desk);
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
    const ids = await threeJobs(desk);
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
