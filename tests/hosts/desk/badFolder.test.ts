/** A data folder that is damaged, of a newer version, elsewhere or gone: a sentence, nothing confirmed is lost, and the list still has every job. */
import { mkdirSync, readFileSync, renameSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import path from "node:path";
import { encoded } from "../../../src/jobs/record";
import { ask, BUILD_MS, buildDesk, freePort, refusedStart, sentenceOf, startDesk, write } from "./desk";
import { change, edit, entry, filesIn, held, newId, ownDesk, post, put, shelf } from "./ownDesk";
import { othersAreWhole, threeJobs } from "./threeJobs";

jest.setTimeout(60_000);
beforeAll(buildDesk, BUILD_MS);
const desk = ownDesk();

const notOnWindows = process.platform === "win32" ? test.skip : test;

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
    const ids = await threeJobs(desk);
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
    await threeJobs(desk);
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
      expect(stderr).not.toMatch(/ENOENT|^\s+at /m);
      expect(stderr).toContain(nowhere);
    },
  );

  test("moved away while the desk runs: every write says so, the list stays; back again, all goes on", async () => {
    const ids = await threeJobs(desk);
    const { address } = await desk.start();
    for (const id of [ids.open, ids.sent]) await held(address, id);
    const away = `${desk.folder}-away`;
    renameSync(desk.folder, away);
    try {
      const sentence = `There is no folder ${desk.folder}. Make it, or save elsewhere.`;
      for (const refused of [
        await edit(address, ids.open, change("r2", "lost")),
        await put(address, newId(), "n1"),
        await post(address, `jobs/${ids.sent}/notes`, { state: "done" }),
        await post(address, `jobs/${ids.open}/revisions`, { why: "x" }),
      ])
        expect([refused.status, await sentenceOf(refused)]).toEqual([422, sentence]);
      // Not read before.
      const refused = await ask(address, `jobs/${ids.harmed}`);
      expect(refused.status).toBe(422);
      expect(await sentenceOf(refused)).toMatch(/^There is no folder|is not there any more/);
      expect((await shelf(address)).jobs).toHaveLength(3);
      expect((await held(address, ids.open)).changes).toEqual([change("r1", "r2")]);
    } finally {
      renameSync(away, desk.folder);
    }
    await othersAreWhole(address, ids);
    expect((await held(address, ids.harmed)).changes).toEqual([change("r1", "r2")]);
  });

  test("empty while the desk runs, as a disk that was unmounted leaves it: sentences, and all is there once it is back", async () => {
    const ids = await threeJobs(desk);
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
        expect(await sentenceOf(refused)).toMatch(/gone from|not there any more/);
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
