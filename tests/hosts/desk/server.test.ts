/** The desk's server as a process: who may ask it, what it keeps, what it says when it can't. */
import { chmodSync, existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { request } from "node:http";
import { createServer } from "node:net";
import { networkInterfaces } from "node:os";
import path from "node:path";
import type { Change, OpenJob } from "../../../src/hosts/desk/protocol";
import { JobStore } from "../../../src/hosts/desk/server/jobStore";
import { readXlsx } from "../../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../../src/hosts/file/writeXlsx";
import { realDisk } from "../../../src/hosts/storage/diskStorage";
import { encoded } from "../../../src/jobs/record";
import { sampleBook } from "../../support/books";
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

jest.setTimeout(60_000);
beforeAll(buildDesk, BUILD_MS);

const document = (revisionId: string, mark = "") => ({ revisionId, sheets: [{ mark }] });
const snapshot = (revisionId: string, after: string | null, replaces = false, mark = "", fromFile = false) =>
  JSON.stringify({ document: document(revisionId, mark), after, replaces, fromFile });
const change = (serverRevisionId: string, nextRevisionId: string): Change & { mark: string } => ({
  type: "REMOTE_REVISION",
  serverRevisionId,
  nextRevisionId,
  mark: `made ${nextRevisionId}`,
});
const jobOf = async (address: string): Promise<OpenJob> =>
  (await (await fetch(new URL("job", address))).json()) as OpenJob;

let folder: string;
const running: Started[] = [];

beforeEach(() => {
  folder = temporaryFolder();
});
afterEach(async () => {
  await Promise.all(running.splice(0).map((one) => one.kill()));
  remove(folder);
});

async function start(...args: string[]): Promise<Started> {
  const started = await startDesk("--data", folder, "--port", String(await freePort()), ...args);
  running.push(started);
  return started;
}

describe("who may ask", () => {
  /** `fetch` forbids setting the Host header, so this one goes by hand. */
  const statusWith = (address: string, headers: Record<string, string>): Promise<number> =>
    new Promise((resolve, reject) => {
      request(new URL("job", address), { headers }, (response) => {
        response.resume();
        resolve(response.statusCode ?? 0);
      })
        .on("error", reject)
        .end();
    });

  test("the printed address is the last line, and answers with the page under a strict policy", async () => {
    const { address, printed } = await start();
    expect(printed.trimEnd().split("\n").at(-1)).toBe(address);
    const page = await fetch(address);
    expect(page.status).toBe(200);
    const policy = page.headers.get("content-security-policy") ?? "";
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("connect-src 'self'");
    expect(policy).not.toContain("http:");
    expect(/script-src [^;]*'unsafe-inline'/.test(policy)).toBe(false);
    expect(page.headers.get("x-content-type-options")).toBe("nosniff");
    // The policy forbids inline scripts; the page must not need one.
    expect(await page.text()).not.toMatch(/<script(?![^>]*\bsrc=)/);
  });

  test("no other address of this machine answers", async () => {
    const { address } = await start();
    const { port } = new URL(address);
    const others = Object.values(networkInterfaces())
      .flatMap((list) => list ?? [])
      .filter(({ internal, family }) => !internal && family === "IPv4")
      .map((one) => one.address);
    // Every address of 127/8 is this machine on Linux; the server must not listen on all of them either.
    for (const other of [...others, ...(process.platform === "linux" ? ["127.0.0.2"] : [])]) {
      await expect(fetch(`http://${other}:${port}/`)).rejects.toThrow();
    }
  });

  test("a Host header of another name is refused, the loopback names are not", async () => {
    const { address } = await start();
    const { port } = new URL(address);
    expect(await statusWith(address, { Host: `rebound.example:${port}` })).toBe(403);
    expect(await statusWith(address, { Host: "127.0.0.1:1" })).toBe(403);
    expect(await statusWith(address, { Host: `127.0.0.1.example:${port}` })).toBe(403);
    expect(await statusWith(address, { Host: `localhost:${port}` })).toBe(200);
  });

  test("a writing request of another origin, or without the page's header, changes nothing", async () => {
    const { address } = await start();
    const body = snapshot("r1", null);
    const bare = await write(address, "job", "PUT", body, {});
    expect(bare.status).toBe(403);
    const foreign = { "x-rigsheet-desk": "1", Origin: "http://other.example" };
    expect((await write(address, "job", "PUT", body, foreign)).status).toBe(403);
    expect((await jobOf(address)).document).toBeUndefined();
  });

  test("an address with two strokes, or that is none, has its sentence, and the desk goes on", async () => {
    const { address } = await start();
    const { hostname, port } = new URL(address);
    const statusOf = (asked: string): Promise<number> =>
      new Promise((resolve, reject) => {
        request({ hostname, port, path: asked }, (response) => {
          response.resume();
          resolve(response.statusCode ?? 0);
        })
          .on("error", reject)
          .end();
      });
    for (const asked of ["//", "//elsewhere/job", "/%", "http://[", "*"])
      expect([asked, (await statusOf(asked)) < 500]).toEqual([asked, true]);
    expect(await statusOf("/job")).toBe(200);
  });

  test("only listed files are served", async () => {
    const { address } = await start();
    for (const url of ["package.json", "library/../package.json", "%2e%2e/package.json", "rigsheet.js"]) {
      expect((await fetch(new URL(url, address))).status).toBe(404);
    }
    for (const url of ["desk.js", "desk.css", "library/o_spreadsheet.js", "library/o_spreadsheet.xml"]) {
      expect((await fetch(new URL(url, address))).status).toBe(200);
    }
  });
});

describe("what is kept", () => {
  test("a snapshot and the changes after it survive kill -9, and nothing else is there at first", async () => {
    const first = await start();
    expect(await jobOf(first.address)).toMatchObject({ changes: [], notices: [] });
    await write(first.address, "job", "PUT", snapshot("r1", null, true, "whole"));
    await write(first.address, "changes", "POST", JSON.stringify([change("r1", "r2")]));
    await write(first.address, "changes", "POST", JSON.stringify([change("r2", "r3"), change("r3", "r4")]));
    await first.kill();

    const second = await start();
    const job = await jobOf(second.address);
    expect(job.document).toEqual(document("r1", "whole"));
    expect(job.changes).toEqual([change("r1", "r2"), change("r2", "r3"), change("r3", "r4")]);
  });

  test("a change sent twice is kept once; one that follows another state is refused", async () => {
    const { address } = await start();
    await write(address, "job", "PUT", snapshot("r1", null));
    for (let time = 0; time < 2; time++) {
      const answer = await write(address, "changes", "POST", JSON.stringify([change("r1", "r2")]));
      expect(answer.status).toBe(200);
    }
    const stale = await write(address, "changes", "POST", JSON.stringify([change("r1", "other")]));
    expect(stale.status).toBe(409);
    expect(await sentenceOf(stale)).toMatch(/another tab.*Reload/);
    expect((await write(address, "job", "PUT", snapshot("r9", "r1"))).status).toBe(409);
    expect((await jobOf(address)).changes).toEqual([change("r1", "r2")]);
  });

  /** The log of the open job, the only one there. */
  const jobLog = (): string =>
    path.join(
      folder,
      readdirSync(folder)
        .filter((name) => /^job-.*\.log$/.test(name))
        .sort()
        .at(-1)!,
    );

  test("a record cut short by a crash is left out and said, those before it stay", async () => {
    const first = await start();
    await write(first.address, "job", "PUT", snapshot("r1", null));
    await write(first.address, "changes", "POST", JSON.stringify([change("r1", "r2")]));
    await first.kill();
    writeFileSync(jobLog(), `${readFileSync(jobLog(), "utf8")}#2 70 00000000\n{"at":"`);
    const second = await start();
    const job = await jobOf(second.address);
    expect(job.changes).toEqual([change("r1", "r2")]);
    expect(job.notices).toEqual([expect.stringMatching(/cut short in its last 22 bytes.*kept as .*damaged/)]);
    // It goes on from there.
    await write(second.address, "changes", "POST", JSON.stringify([change("r2", "r3")]));
    await second.kill();
    const third = await start();
    expect(await jobOf(third.address)).toMatchObject({
      changes: [change("r1", "r2"), change("r2", "r3")],
      notices: [],
    });
  });

  test("a snapshot takes the place of the changes that it holds", async () => {
    const first = await start();
    await write(first.address, "job", "PUT", snapshot("r1", null));
    await write(first.address, "changes", "POST", JSON.stringify([change("r1", "r2"), change("r2", "r3")]));
    await write(first.address, "job", "PUT", snapshot("r3", "r3", false, "newer"));
    await write(first.address, "changes", "POST", JSON.stringify([change("r3", "r4")]));
    await first.kill();
    const second = await start();
    expect(await jobOf(second.address)).toMatchObject({
      document: document("r3", "newer"),
      changes: [change("r3", "r4")],
    });
  });

  test("what the first version of the store kept is taken over, and lies in a folder as it was", async () => {
    const [stored, journal] = [
      JSON.stringify({ rigsheet: 1, savedAt: "2026-11-02T08:00:00.000Z", document: document("r1", "first") }),
      `${JSON.stringify(change("r0", "r1"))}\n${JSON.stringify(change("r1", "r2"))}\n{"type":"REM`,
    ];
    writeFileSync(path.join(folder, "job.json"), stored);
    writeFileSync(path.join(folder, "job.changes.jsonl"), journal);
    for (let time = 0; time < 2; time++) {
      const { address, kill } = await start();
      expect(await jobOf(address)).toMatchObject({
        document: document("r1", "first"),
        changes: [change("r1", "r2")],
        notices: [],
      });
      await kill();
    }
    const kept = readdirSync(path.join(folder, "before")).sort();
    expect(kept.map((name) => readFileSync(path.join(folder, "before", name), "utf8"))).toEqual([
      journal,
      stored,
    ]);
  });

  test("a log of a newer version is refused with a sentence, and left as it is", async () => {
    const { address, kill } = await start();
    await write(address, "job", "PUT", snapshot("r1", null));
    await kill();
    const newer = encoded(0, { base: { rigsheet: 3, jobs: [] }, entries: [] });
    writeFileSync(path.join(folder, "desk-job.2.log"), newer);
    const { status, stderr } = refusedStart("--data", folder);
    expect(status).toBe(1);
    expect(stderr).toMatch(/^This data folder was written by a newer Rigsheet\./);
    expect(readFileSync(path.join(folder, "desk-job.2.log")).equals(newer)).toBe(true);
  });

  test("a damaged job is kept aside and said, and a fresh one opens", async () => {
    const { address, kill } = await start();
    await write(address, "job", "PUT", snapshot("r1", null));
    await kill();
    const damaged = readFileSync(jobLog()).fill(0, 10, 20);
    writeFileSync(jobLog(), damaged);
    const again = await start();
    const job = await jobOf(again.address);
    expect(job.document).toBeUndefined();
    expect(job.notices).toEqual([expect.stringMatching(/could not be read.*It is kept as .*damaged/)]);
    const [kept] = readdirSync(path.join(folder, "damaged"));
    expect(readFileSync(path.join(folder, "damaged", kept!)).equals(damaged)).toBe(true);
    expect((await write(again.address, "job", "PUT", snapshot("n1", null))).status).toBe(200);
  });

  test("a damaged autosave of the first version is kept aside and said, and a fresh job opens", async () => {
    writeFileSync(path.join(folder, "job.json"), '{"rigsheet":1,"document":{"revis');
    const { address, printed } = await start();
    const job = await jobOf(address);
    expect(job.document).toBeUndefined();
    expect(job.notices).toHaveLength(1);
    expect(job.notices[0]).toMatch(/could not be read.*It is kept as .*damaged/);
    expect(printed).toContain(job.notices[0]);
    const [kept] = readdirSync(path.join(folder, "damaged"));
    expect(readFileSync(path.join(folder, "damaged", kept!), "utf8")).toBe(
      '{"rigsheet":1,"document":{"revis',
    );
  });

  test("a job that is sent again, since the answer was lost, is the one that is open", async () => {
    const { address } = await start();
    await write(address, "job", "PUT", snapshot("r1", null, true, "first"));
    for (let time = 0; time < 2; time++) {
      const answer = await write(address, "job", "PUT", snapshot("n1", "r1", true, "second"));
      expect(answer.status).toBe(200);
    }
    await write(address, "changes", "POST", JSON.stringify([change("n1", "n2")]));
    expect(await jobOf(address)).toMatchObject({
      document: document("n1", "second"),
      changes: [change("n1", "n2")],
    });
  });

  test("another job in its place leaves the earlier one beside it", async () => {
    const { address } = await start();
    await write(address, "job", "PUT", snapshot("r1", null, true, "first"));
    const answer = await write(address, "job", "PUT", snapshot("n1", "r1", true, "second"));
    const { keptAs } = (await answer.json()) as { keptAs: string };
    expect(readFileSync(keptAs, "utf8")).toContain('"first"');
    // However many there come: none is thrown away.
    let after = "n1";
    for (let count = 0; count < 25; count++) {
      await write(address, "job", "PUT", snapshot(`m${count}`, after, true, `job ${count}`));
      after = `m${count}`;
    }
    expect(readFileSync(keptAs, "utf8")).toContain('"first"');
    expect((await jobOf(address)).document).toEqual(document("m24", "job 24"));
  });
});

describe("one owner", () => {
  test("a second start on the same job says where the first one is, and ends", async () => {
    const first = await start();
    const { status, stdout } = refusedStart("--data", folder, "--port", String(await freePort()));
    expect(status).toBe(0);
    expect(stdout).toBe(`This job is open in a desk that runs already. Its address:\n${first.address}\n`);
    await write(first.address, "job", "PUT", snapshot("r1", null));
    expect((await jobOf(first.address)).document).toEqual(document("r1"));
  });

  test("one that is stopped lets go; one that was killed is followed with a sentence", async () => {
    const first = await start();
    first.process.kill("SIGTERM");
    await new Promise((resolve) => first.process.once("exit", resolve));
    expect(readdirSync(folder).filter((name) => name.endsWith(".lock"))).toEqual([]);
    const second = await start();
    expect(second.printed).not.toMatch(/has ended/);
    await second.kill();
    expect((await start()).printed).toMatch(/^The desk that had this job open \(process \d+\) has ended/);
  });

  test("one that lost the job while it hung writes nothing any more", async () => {
    const first = await start();
    await write(first.address, "job", "PUT", snapshot("r1", null));
    const lock = path.join(folder, "job.lock");
    writeFileSync(lock, readFileSync(lock, "utf8").replace(/"key":"[^"]*"/, '"key":"another"'));
    const refused = await write(first.address, "changes", "POST", JSON.stringify([change("r1", "r2")]));
    expect(refused.status).toBe(409);
    expect(await sentenceOf(refused)).toMatch(/^another desk has this job now/);
    expect((await jobOf(first.address)).changes).toEqual([]);
  });
});

describe("a disk that takes nothing", () => {
  const full = (): never => {
    throw Object.assign(new Error("no space left"), { code: "ENOSPC" });
  };
  let isFull = false;
  const disk = {
    ...realDisk,
    open: (async (...words: Parameters<typeof realDisk.open>) =>
      isFull && words[1] !== "r" && words[1] !== "r+"
        ? full()
        : realDisk.open(...words)) as typeof realDisk.open,
  };
  const SAID = (): string =>
    `The disk that holds ${folder} is full. Nothing was changed; make room or save on another disk.`;
  afterEach(() => void (isFull = false));

  test.each(["a snapshot", "another job in its place", "a change"])(
    "%s is refused with the sentence, what was held stays, and goes on once there is room",
    async (what) => {
      const store = await JobStore.open(folder, "job", { disk });
      await store.put({ document: document("r1", "kept"), after: null, replaces: true, fromFile: false });
      const step = (): Promise<unknown> =>
        what === "a change"
          ? store.append([change("r1", "r2")])
          : store.put({
              document: document("r2"),
              after: "r1",
              replaces: what !== "a snapshot",
              fromFile: false,
            });
      isFull = true;
      await expect(step()).rejects.toThrow(SAID());
      await expect(step()).rejects.toThrow(SAID());
      expect(store.job?.document).toEqual(document("r1", "kept"));
      expect(store.head).toBe("r1");
      isFull = false;
      expect((await JobStore.open(folder, "job", { disk })).job?.document).toEqual(document("r1", "kept"));
      await step();
      expect((await JobStore.open(folder, "job")).head).toBe("r2");
    },
  );
});

describe("workbooks", () => {
  const book = sampleBook();

  test("a book goes out as .xlsx and comes back", async () => {
    const { address } = await start();
    const saved = await write(address, "save", "POST", JSON.stringify(book));
    const bytes = new Uint8Array(await saved.arrayBuffer());
    const names = (await readXlsx(bytes)).names.map(({ name }) => name).sort();
    expect(names).toEqual(book.names.map(({ name }) => name).sort());
    const opened = await write(address, "open", "POST", bytes);
    expect(
      ((await opened.json()) as { names: { name: string }[] }).names.map(({ name }) => name).sort(),
    ).toEqual(names);
  });

  test("a broken .xlsx is refused with a sentence", async () => {
    const { address } = await start();
    for (const bytes of [new Uint8Array(0), new TextEncoder().encode("not a workbook")]) {
      const answer = await write(address, "open", "POST", bytes);
      expect(answer.status).toBeGreaterThanOrEqual(400);
      expect(await sentenceOf(answer)).toMatch(/^The file .*\. [A-Z].*\.$/);
    }
  });

  test("a request larger than the desk takes is refused before it is read", async () => {
    const { address } = await start();
    const answer = await write(address, "open", "POST", new Uint8Array(65 * 1024 * 1024)).catch(
      () => undefined,
    );
    // The connection may be closed under the sender; either way nothing came of it.
    if (answer) expect(answer.status).toBe(413);
    expect((await fetch(address)).status).toBe(200);
  });

  test("a file given at the start is written back in place; a read-only one is left with a sentence", async () => {
    const file = path.join(folder, "job.xlsx");
    writeFileSync(file, await writeXlsx(book));
    const { address } = await start(file);
    const job = await jobOf(address);
    expect(job.file).toBe("job.xlsx");
    expect(job.book!.sheets.map(({ name }) => name)).toEqual(book.sheets.map(({ name }) => name));
    await write(address, "job", "PUT", snapshot("r1", null, true, "", true));
    const edited = { ...book, title: "edited" };
    expect((await write(address, "file", "PUT", JSON.stringify(edited))).status).toBe(200);
    const before = readFileSync(file);
    expect((await readXlsx(before)).title).toBe("edited");
    chmodSync(file, 0o444);
    const refused = await write(address, "file", "PUT", JSON.stringify(book));
    expect(refused.status).toBe(422);
    expect(await sentenceOf(refused)).toMatch(/job\.xlsx is read-only/);
    expect(readFileSync(file).equals(before)).toBe(true);
    chmodSync(file, 0o644);
  });

  test("a file that another program changed is shown as it is now; the autosave is kept", async () => {
    const file = path.join(folder, "job.xlsx");
    writeFileSync(file, await writeXlsx(book));
    const first = await start(file);
    await write(first.address, "job", "PUT", snapshot("r1", null, true, "autosaved", true));
    await first.kill();
    const same = await start(file);
    expect((await jobOf(same.address)).document).toEqual(document("r1", "autosaved"));
    await same.kill();
    writeFileSync(file, await writeXlsx({ ...book, title: "changed elsewhere" }));
    const changed = await start(file);
    const job = await jobOf(changed.address);
    expect(job.document).toBeUndefined();
    expect(job.book!.title).toBe("changed elsewhere");
    expect(job.notices[0]).toMatch(/changed by another program/);
    const [, kept] = /kept as (\S+)\.$/.exec(job.notices[0]!)!;
    expect(readFileSync(kept!, "utf8")).toContain('"autosaved"');
  });
});

describe("the file belongs to its job", () => {
  const book = sampleBook();
  const opened = async (): Promise<{ file: string; desk: Started }> => {
    const file = path.join(folder, "job.xlsx");
    writeFileSync(file, await writeXlsx(book));
    const desk = await start(file);
    await write(desk.address, "job", "PUT", snapshot("r1", null, true, "of the file", true));
    return { file, desk };
  };
  const titleIn = async (file: string): Promise<string> => (await readXlsx(readFileSync(file))).title;
  const save = (address: string, title: string, over = ""): Promise<Response> =>
    write(address, `file${over}`, "PUT", JSON.stringify({ ...book, title }));

  test("a job that is put in its place has no file, after a reload and after the next start of the desk", async () => {
    const { file, desk } = await opened();
    const before = readFileSync(file);
    expect((await jobOf(desk.address)).file).toBe("job.xlsx");
    await write(desk.address, "job", "PUT", snapshot("n1", "r1", true, "new"));
    expect((await jobOf(desk.address)).file).toBeUndefined();
    expect((await save(desk.address, "new")).status).toBe(409);
    expect(readFileSync(file).equals(before)).toBe(true);
    await desk.kill();
    // Whoever names the file means the file.
    const again = await jobOf((await start(file)).address);
    expect(again).toMatchObject({
      file: "job.xlsx",
      notices: [expect.stringMatching(/^job\.xlsx is open\..*kept as/)],
    });
    expect(again.document).toBeUndefined();
    expect(again.book!.sheets).toHaveLength(book.sheets.length);
  });

  test("a file that another program has written meanwhile is asked about; written over, theirs is kept", async () => {
    const { file, desk } = await opened();
    expect((await save(desk.address, "ours")).status).toBe(200);
    expect((await save(desk.address, "ours again")).status).toBe(200);
    writeFileSync(file, await writeXlsx({ ...book, title: "theirs" }));
    const asked = await save(desk.address, "ours at last");
    expect(asked.status).toBe(412);
    expect(await sentenceOf(asked)).toMatch(/^job\.xlsx has changed since it was opened or saved here/);
    expect(await titleIn(file)).toBe("theirs");
    const { keptAs } = (await (await save(desk.address, "ours at last", "?over")).json()) as {
      keptAs: string;
    };
    expect([await titleIn(file), await titleIn(keptAs)]).toEqual(["ours at last", "theirs"]);
    expect((await save(desk.address, "and on")).status).toBe(200);
  });

  test("a file that is gone is asked about, and made anew on a yes", async () => {
    const { file, desk } = await opened();
    remove(file);
    const asked = await save(desk.address, "ours");
    expect(asked.status).toBe(412);
    expect(await sentenceOf(asked)).toMatch(/^job\.xlsx is gone from its folder/);
    expect((await save(desk.address, "ours", "?over")).status).toBe(200);
    expect(await titleIn(file)).toBe("ours");
  });
});

describe("starts that are refused", () => {
  test("a port that is taken: a sentence, and 1", async () => {
    const port = await freePort();
    const other = createServer().listen(port, "127.0.0.1");
    await new Promise((resolve) => other.once("listening", resolve));
    const { status, stderr } = refusedStart("--data", folder, "--port", String(port));
    other.close();
    expect(status).toBe(1);
    expect(stderr.trim()).toBe(
      `Port ${port} is taken by another program. Give another one with --port, or stop that program.`,
    );
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

  test("a file that is not there, or is no workbook: a sentence, and 1", () => {
    const missing = path.join(folder, "missing.xlsx");
    expect(refusedStart("--data", folder, missing)).toMatchObject({
      status: 1,
      stderr: `There is no file ${missing}. Check the name, or start without a file.\n`,
    });
    const broken = path.join(folder, "broken.xlsx");
    writeFileSync(broken, "not a workbook");
    const { status, stderr } = refusedStart("--data", folder, broken);
    expect(status).toBe(1);
    expect(stderr).toMatch(/^The file is plain text, not an Excel workbook\./);
  });

  test("a data folder that can't be made: a sentence, and 1", () => {
    const file = path.join(folder, "file");
    writeFileSync(file, "");
    const { status, stderr } = refusedStart("--data", path.join(file, "inside"));
    expect(status).toBe(1);
    expect(stderr).toMatch(/^There is no folder .*\.\n$/);
    expect(existsSync(path.join(file, "inside"))).toBe(false);
  });

  (process.platform === "linux" ? test : test.skip)(
    "a data folder under a special file system: a sentence at once (Linux only: it needs /proc)",
    () => {
      const { status, stderr } = refusedStart("--data", "/proc/rigsheet/jobs");
      expect(status).toBe(1);
      expect(stderr).not.toMatch(/ENOENT|EISDIR|^\s+at /m);
      expect(stderr).toMatch(/^.* \/proc.*\.\n$/);
    },
  );

  test("--help prints every option and ends", () => {
    const { status, stdout } = refusedStart("--help");
    expect(status).toBe(0);
    for (const option of ["--no-open", "--port", "--data", "--help"]) expect(stdout).toContain(option);
  });
});
