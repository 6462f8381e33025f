/** The desk's folder: one desk for each, what earlier versions left in it, and starts that are refused. */
import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync, symlinkSync, utimesSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import path from "node:path";
import type { Start } from "../../../src/hosts/desk/protocol";
import { writeXlsx } from "../../../src/hosts/file/writeXlsx";
import { encoded } from "../../../src/jobs/record";
import { sampleBook } from "../../support/books";
import { askJson, BUILD_MS, buildDesk, freePort, refusedStart, sentenceOf } from "./desk";
import {
  change,
  document,
  edit,
  entry,
  filesIn,
  held,
  newId,
  ownDesk,
  put,
  secondStart,
  shelf,
} from "./ownDesk";

jest.setTimeout(60_000);
beforeAll(buildDesk, BUILD_MS);
const desk = ownDesk();

const startOf = (address: string): Promise<Start> => askJson(address, "start");
const book = sampleBook();
async function made(name: string, title = ""): Promise<string> {
  const file = path.join(desk.folder, name);
  writeFileSync(file, await writeXlsx({ ...book, title }));
  return file;
}

describe("what earlier versions kept", () => {
  const first = (revision: string, mark: string, more: object = {}): string =>
    JSON.stringify({
      rigsheet: 1,
      savedAt: "2026-11-02T08:00:00.000Z",
      document: document(revision, mark),
      ...more,
    });

  test("the first version's job is taken over once, and lies in a folder as it was", async () => {
    const [stored, journal] = [
      first("r1", "first"),
      `${JSON.stringify(change("r0", "r1"))}\n${JSON.stringify(change("r1", "r2"))}\n{"type":"REM`,
    ];
    writeFileSync(path.join(desk.folder, "job.json"), stored);
    writeFileSync(path.join(desk.folder, "job.changes.jsonl"), journal);
    for (let time = 0; time < 2; time++) {
      const { address, kill } = await desk.start();
      const { jobs, notices } = await shelf(address);
      expect(notices.filter((notice) => !/has ended/.test(notice))).toEqual([]);
      expect(jobs).toMatchObject([{ savedAt: "2026-11-02T08:00:00.000Z", state: "draft" }]);
      expect((await startOf(address)).open).toBe(jobs[0]!.id);
      expect(await held(address, jobs[0]!.id)).toMatchObject({
        document: document("r1", "first"),
        changes: [change("r1", "r2")],
      });
      await kill();
    }
    const before = readdirSync(path.join(desk.folder, "before")).sort();
    expect(before.map((name) => readFileSync(path.join(desk.folder, "before", name), "utf8"))).toEqual([
      journal,
      stored,
    ]);
  });

  test("an end between taking it over and moving it aside makes no second one, and none without its changes", async () => {
    const [stored, journal] = [first("r1", "first"), `${JSON.stringify(change("r1", "r2"))}\n`];
    const lies = (withJournal: boolean): void => {
      writeFileSync(path.join(desk.folder, "job.json"), stored);
      if (withJournal) writeFileSync(path.join(desk.folder, "job.changes.jsonl"), journal);
    };
    lies(true);
    await (await desk.start()).kill();
    // As it was left: with both files, and with the snapshot only, since the journal is moved first.
    for (const withJournal of [true, false]) {
      lies(withJournal);
      const { address, kill } = await desk.start();
      const { jobs } = await shelf(address);
      expect(jobs).toHaveLength(1);
      expect((await held(address, jobs[0]!.id)).changes).toEqual([change("r1", "r2")]);
      await kill();
    }
  });

  test("the first version's job of a file is a job of the shelf; the file is shown as it is, since more is not known", async () => {
    const file = await made("job.xlsx", "in the file");
    // By it the first version named a file's job.
    const name = `job-${createHash("sha256").update(file).digest("hex").slice(0, 12)}`;
    const own = first("o1", "no file's");
    writeFileSync(path.join(desk.folder, "job.json"), own);
    writeFileSync(
      path.join(desk.folder, `${name}.json`),
      first("r1", "of the file", { stamp: { size: 1, mtimeMs: 1 }, savedAt: "2026-11-03T08:00:00.000Z" }),
    );
    const { address } = await desk.start(file);
    const { given } = await startOf(address);
    expect(given).toMatchObject({ name: "job.xlsx", book: { title: "in the file" } });
    const { jobs, notices } = await shelf(address);
    expect(notices).toEqual([expect.stringMatching(/^job\.xlsx may have been changed.*under Jobs\.$/)]);
    const documents = await Promise.all(jobs.map(async ({ id }) => (await held(address, id)).document));
    expect(documents).toEqual(
      expect.arrayContaining([document("r1", "of the file"), document("o1", "no file's")]),
    );
    expect(documents).toHaveLength(2);
    expect(jobs.map((one) => one.file)).toEqual([undefined, undefined]);
  });

  test("a damaged one is kept aside and said, and the desk opens", async () => {
    const damaged = '{"rigsheet":1,"document":{"revis';
    writeFileSync(path.join(desk.folder, "job.json"), damaged);
    const { address, printed } = await desk.start();
    const { jobs, notices } = await shelf(address);
    expect(jobs).toEqual([]);
    expect(notices).toEqual([expect.stringMatching(/could not be read.*It is kept as .*damaged/)]);
    expect(printed).toContain(notices[0]);
    const [kept] = readdirSync(path.join(desk.folder, "damaged"));
    expect(readFileSync(path.join(desk.folder, "damaged", kept!), "utf8")).toBe(damaged);
  });

  test("the second version's jobs are jobs of the shelf, and the one that was open is", async () => {
    const [open, other] = [newId(), newId()];
    const base = (revision: string) => ({
      rigsheet: 2,
      document: document(revision, `second ${revision}`),
      savedAt: "2026-11-04T08:00:00.000Z",
      desk: "job",
    });
    const at = "2026-11-04T09:00:00.000Z";
    const log = (id: string, revision: string): void =>
      writeFileSync(
        path.join(desk.folder, `${id}.1.log`),
        Buffer.concat([
          encoded(0, { base: base(revision), entries: [] }),
          encoded(1, [{ at, changes: [change(revision, `${revision}+`)] }]),
        ]),
      );
    log(open, "a1");
    log(other, "b1");
    writeFileSync(
      path.join(desk.folder, "desk-job.1.log"),
      Buffer.concat([
        encoded(0, { base: { rigsheet: 2, job: other }, entries: [] }),
        encoded(1, [{ job: open }]),
      ]),
    );
    const { address } = await desk.start();
    expect((await startOf(address)).open).toBe(open);
    for (const [id, revision] of [
      [open, "a1"],
      [other, "b1"],
    ] as const) {
      expect(await entry(address, id)).toMatchObject({ savedAt: at, state: "draft", away: false });
      expect(await held(address, id)).toMatchObject({
        document: document(revision, `second ${revision}`),
        changes: [change(revision, `${revision}+`)],
      });
    }
    expect((await edit(address, open, change("a1+", "a2"))).status).toBe(200);
  });
});

describe("one owner", () => {
  test("a second start says where the first one is, by whichever name the folder is called, and ends", async () => {
    const first = await desk.start();
    const names = [
      desk.folder,
      `${desk.folder}/`,
      `${desk.folder}//./`,
      path.relative(process.cwd(), desk.folder),
      path.join(desk.folder, "..", path.basename(desk.folder)),
    ];
    if (process.platform !== "win32") {
      symlinkSync(desk.folder, path.join(desk.folder, "link"));
      names.push(path.join(desk.folder, "link"), `${path.join(desk.folder, "link", "link")}/`);
    }
    for (const name of names) {
      const { status, stdout } = await secondStart("--data", name, "--port", String(await freePort()));
      expect([name, status, stdout]).toEqual([
        name,
        0,
        `A desk runs on this folder already. Its address:\n${first.address}\n`,
      ]);
    }
    const id = newId();
    expect((await put(first.address, id, "r1")).status).toBe(200);
    expect((await held(first.address, id)).document).toEqual(document("r1"));
  });

  test("a second start with a file makes the desk that runs give that file, by its whole path", async () => {
    const { address } = await desk.start();
    expect((await startOf(address)).given).toBeUndefined();
    const one = await made("one.xlsx", "one");
    const other = await made("other.xlsx", "other");
    for (const [file, title] of [
      [one, "one"],
      [path.relative(process.cwd(), other), "other"],
      [one, "one"],
    ] as const) {
      const { status, stdout } = await secondStart("--data", desk.folder, file);
      expect([status, stdout]).toEqual([0, expect.stringContaining(address)]);
      expect((await startOf(address)).given).toMatchObject({ name: path.basename(file), book: { title } });
    }
    const id = newId();
    await put(address, id, "r1", { given: (await startOf(address)).given!.number });
    expect((await entry(address, id))!.file).toMatchObject({ name: "one.xlsx", path: one });
  });

  test("one that is stopped lets go; one that was killed is followed with a sentence", async () => {
    const first = await desk.start();
    first.process.kill("SIGTERM");
    await new Promise((resolve) => first.process.once("exit", resolve));
    expect(readdirSync(desk.folder).filter((name) => name.endsWith(".lock"))).toEqual([]);
    const second = await desk.start();
    expect(second.printed).not.toMatch(/has ended/);
    await second.kill();
    expect((await desk.start()).printed).toMatch(/^The desk that had .* open \(process \d+\) has ended/);
  });

  test("a lock of which nothing can be read, and which gives no sign, is taken over", async () => {
    const lock = path.join(desk.folder, "desk.lock");
    writeFileSync(lock, "");
    utimesSync(lock, 1_000_000, 1_000_000);
    const { address } = await desk.start();
    expect((await put(address, newId(), "r1")).status).toBe(200);
  });

  test("one that lost the jobs while it hung writes nothing any more", async () => {
    const { address } = await desk.start();
    const id = newId();
    await put(address, id, "r1");
    const lock = path.join(desk.folder, "desk.lock");
    writeFileSync(lock, readFileSync(lock, "utf8").replace(/"key":"[^"]*"/, '"key":"another"'));
    const before = filesIn(desk.folder).map((file) => readFileSync(file, "utf8"));
    for (const refused of [
      await edit(address, id, change("r1", "r2")),
      await put(address, id, "r5", { after: "r1" }),
      await put(address, newId(), "n1"),
    ]) {
      expect(refused.status).toBe(423);
      expect(await sentenceOf(refused)).toMatch(/^another desk has these jobs now/);
    }
    expect(await held(address, id)).toMatchObject({ document: document("r1"), changes: [] });
    expect(filesIn(desk.folder).map((file) => readFileSync(file, "utf8"))).toEqual(before);
  });
});

describe("starts that are refused", () => {
  test("a port that is taken: a sentence, and 1, and the folder is free again", async () => {
    const port = await freePort();
    const other = createServer().listen(port, "127.0.0.1");
    await new Promise((resolve) => other.once("listening", resolve));
    const { status, stderr } = refusedStart("--data", desk.folder, "--port", String(port));
    other.close();
    expect(status).toBe(1);
    expect(stderr.trim()).toBe(
      `Port ${port} is taken by another program. Give another one with --port, or stop that program.`,
    );
    expect(existsSync(path.join(desk.folder, "desk.lock"))).toBe(false);
  });

  test.each([
    [["--colour"], "There is no option --colour. See: rigsheet desk --help"],
    [["--port", "70000"], '--port is "70000"; give a whole number from 1 to 65535.'],
    [["--port"], "--port is not followed by a number; give a whole number from 1 to 65535."],
    [["--data"], "--data is not followed by a folder; give one, for example --data jobs."],
    [["a.xlsx", "b.xlsx"], "Two files are given, a.xlsx and b.xlsx; give one."],
  ])("options %j: a sentence, and 2", (args, sentence) => {
    const { status, stderr } = refusedStart(...args);
    expect(status).toBe(2);
    expect(stderr.trim()).toBe(sentence);
  });

  test("a data folder that can't be made, or is a file: a sentence, and 1", () => {
    const file = path.join(desk.folder, "file");
    writeFileSync(file, "");
    const { status, stderr } = refusedStart("--data", path.join(file, "inside"));
    expect(status).toBe(1);
    expect(stderr).toContain(`${file} is a file, not a folder. Give a folder of your own with --data.\n`);
    expect(existsSync(path.join(file, "inside"))).toBe(false);
    expect(refusedStart("--data", file)).toMatchObject({
      status: 1,
      stderr: `${file} is a file, not a folder. Give a folder of your own with --data.\n`,
    });
  });

  (process.platform === "linux" ? test : test.skip)(
    "a data folder under a special file system: a sentence at once (Linux only: it needs /proc, /sys and /dev/full)",
    () => {
      for (const folder of [
        "/proc/rigsheet/jobs",
        "/proc",
        "/proc/self",
        "/sys",
        "/sys/rigsheet",
        "/dev/full",
        "/dev/null",
      ]) {
        const { status, stderr } = refusedStart("--data", folder);
        expect([folder, status]).toEqual([folder, 1]);
        expect(stderr).not.toMatch(/ENOENT|EISDIR|EACCES|EPERM|^\s+at /m);
        expect(stderr).toMatch(/^[^\n]*\/(proc|sys|dev)[^\n]*\.\n$/);
      }
    },
  );

  test("--help prints every option and ends", () => {
    const { status, stdout } = refusedStart("--help");
    expect(status).toBe(0);
    for (const option of ["--no-open", "--port", "--data", "--help"]) expect(stdout).toContain(option);
  });
});
