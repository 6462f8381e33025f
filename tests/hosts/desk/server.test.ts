/** The desk's server as a process: who may ask it, what it keeps through a crash. */
import { appendFileSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { request } from "node:http";
import { networkInterfaces } from "node:os";
import path from "node:path";
import { exported } from "./threeJobs";
import { DESK_HEADER, type Start } from "../../../src/hosts/desk/protocol";
import { ask, askJson, BUILD_MS, buildDesk, keyOf, sentenceOf, write } from "./desk";
import {
  change,
  document,
  edit,
  entry,
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

describe("who may ask", () => {
  /** `fetch` forbids setting the Host header and mends an address, so this one goes by hand. */
  const statusOf = (address: string, asked: string, headers: Record<string, string> = {}): Promise<number> =>
    new Promise((resolve, reject) => {
      const { hostname, port } = new URL(address);
      request({ hostname, port, path: asked, headers: { ...keyOf(address), ...headers } }, (response) => {
        response.resume();
        resolve(response.statusCode ?? 0);
      })
        .on("error", reject)
        .end();
    });

  test("the printed address is the last line, and answers with the page under a strict policy", async () => {
    const { address, printed } = await desk.start();
    expect(printed.trimEnd().split("\n").at(-1)).toBe(address);
    const page = await ask(address, "/");
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
    const { port } = new URL((await desk.start()).address);
    const others = Object.values(networkInterfaces())
      .flatMap((list) => list ?? [])
      .filter(({ internal, family }) => !internal && family === "IPv4")
      .map((one) => one.address);
    // Every address of 127/8 is this machine on Linux; the server must not listen on all of them either.
    for (const other of [...others, ...(process.platform === "linux" ? ["127.0.0.2"] : [])]) {
      await expect(fetch(`http://${other}:${port}/`)).rejects.toThrow();
    }
  });

  test("a Host header of another name is refused even with the key, the loopback names are not", async () => {
    const { address } = await desk.start();
    const { port } = new URL(address);
    expect(await statusOf(address, "/jobs", { Host: `rebound.example:${port}` })).toBe(403);
    expect(await statusOf(address, "/jobs", { Host: "127.0.0.1:1" })).toBe(403);
    expect(await statusOf(address, "/jobs", { Host: `127.0.0.1.example:${port}` })).toBe(403);
    expect(await statusOf(address, "/jobs", { Host: `localhost:${port}` })).toBe(200);
  });

  test("a writing request of another origin, or without the page's header, changes nothing", async () => {
    const { address } = await desk.start();
    const body = JSON.stringify({ document: document("r1"), after: null });
    const url = `jobs/${newId()}`;
    expect((await write(address, url, "PUT", body, {})).status).toBe(403);
    const foreign = { [DESK_HEADER]: "1", Origin: "http://other.example" };
    expect((await write(address, url, "PUT", body, foreign)).status).toBe(403);
    expect((await shelf(address)).jobs).toEqual([]);
  });

  test("an address with two strokes, or that is none, has its sentence, and the desk goes on", async () => {
    const { address } = await desk.start();
    for (const asked of ["//", "//elsewhere/job", "/%", "http://[", "*", "/jobs/%", "/jobs//"])
      expect([asked, (await statusOf(address, asked)) < 500]).toEqual([asked, true]);
    expect(await statusOf(address, "/jobs")).toBe(200);
  });

  test("only listed files are served", async () => {
    const { address } = await desk.start();
    for (const url of [
      "package.json",
      "library/../package.json",
      "%2e%2e/package.json",
      "rigsheet.js",
      "desk.key",
    ]) {
      expect((await ask(address, url)).status).toBe(404);
    }
    for (const url of ["desk.js", "desk.css", "library/o_spreadsheet.js", "library/o_spreadsheet.xml"]) {
      expect((await ask(address, url)).status).toBe(200);
    }
  });
});

describe("what is kept", () => {
  test("jobs and the changes after them survive kill -9, and nothing is there at first", async () => {
    const first = await desk.start();
    expect(await askJson<Start>(first.address, "start")).toEqual({
      shelf: expect.stringMatching(/^[\da-f]{16}$/),
    });
    expect(await shelf(first.address)).toEqual({ jobs: [], notices: [], place: desk.folder });
    const [one, other] = [newId(), newId()];
    await put(first.address, one, "r1", { mark: "whole" });
    await edit(first.address, one, change("r1", "r2"));
    await put(first.address, other, "o1");
    await edit(first.address, one, change("r2", "r3"), change("r3", "r4"));
    await first.kill();

    const { address } = await desk.start();
    const job = await held(address, one);
    expect(job.document).toEqual(document("r1", "whole"));
    expect(job.changes).toEqual([change("r1", "r2"), change("r2", "r3"), change("r3", "r4")]);
    expect((await held(address, other)).document).toEqual(document("o1"));
    // The one that was put down last is the one that was open.
    expect((await askJson<Start>(address, "start")).open).toBe(other);
  });

  test("a job's state, its place among what was put away and its revisions survive kill -9", async () => {
    const first = await desk.start();
    const [id, copy] = [newId(), newId()];
    await put(first.address, id, "r1", { mark: "first", line: lineOf("Hill Lane") });
    await edit(first.address, id, change("r1", "r2"));
    await post(first.address, `jobs/${id}/notes`, { state: "sent" });
    await edit(first.address, id, change("r2", "r3"));
    await post(first.address, `jobs/${id}/revisions`, { why: "before the roof" });
    expect((await post(first.address, `jobs/${id}/revisions/1/restore`, {})).status).toBe(200);
    expect((await post(first.address, `jobs/${id}/copies/${copy}?revision=2`, {})).status).toBe(200);
    await post(first.address, `jobs/${copy}/notes`, { away: true });
    await first.kill();

    const { address } = await desk.start();
    expect(await entry(address, id)).toMatchObject({
      state: "sent",
      away: false,
      line: { name: "Hill Lane" },
      revisions: [
        { number: 1, why: "sent", head: "r2" },
        { number: 2, why: "before the roof", head: "r3" },
      ],
    });
    expect(await held(address, id)).toMatchObject({
      document: document("r1", "first"),
      changes: [change("r1", "r2")],
    });
    expect(await askJson(address, `jobs/${id}/revisions/2`)).toMatchObject({
      changes: [change("r1", "r2"), change("r2", "r3")],
      note: { number: 2 },
    });
    expect(await entry(address, copy)).toMatchObject({ state: "draft", away: true, revisions: [] });
    expect((await held(address, copy)).changes).toEqual([change("r1", "r2"), change("r2", "r3")]);
  });

  test("a change sent twice is kept once; one that follows another state is refused", async () => {
    const { address } = await desk.start();
    const id = newId();
    for (let time = 0; time < 2; time++) expect((await put(address, id, "r1")).status).toBe(200);
    for (let time = 0; time < 2; time++)
      expect((await edit(address, id, change("r1", "r2"))).status).toBe(200);
    const stale = await edit(address, id, change("r1", "other"));
    expect(stale.status).toBe(409);
    expect(await sentenceOf(stale)).toMatch(/this job was changed in another window/);
    expect((await put(address, id, "r9", { after: "r1" })).status).toBe(409);
    expect((await put(address, id, "n1")).status).toBe(409);
    expect((await held(address, id)).changes).toEqual([change("r1", "r2")]);
    expect(await askJson(address, `jobs/${id}/changes?after=r1`)).toEqual({ changes: [change("r1", "r2")] });
    expect(await askJson(address, `jobs/${id}/changes?after=never`)).toEqual({ changes: null });
  });

  test("a record cut short by a crash is left out and said, those before it stay", async () => {
    const first = await desk.start();
    const id = newId();
    await put(first.address, id, "r1");
    await edit(first.address, id, change("r1", "r2"));
    await first.kill();
    appendFileSync(logOf(desk.folder, id), `#2 70 00000000\n{"at":"`);
    const second = await desk.start();
    expect((await held(second.address, id)).changes).toEqual([change("r1", "r2")]);
    const { notices } = await shelf(second.address);
    expect(notices).toEqual([expect.stringMatching(/cut short in its last 22 bytes.*kept as .*damaged/)]);
    expect(second.printed).toContain(notices[0]);
    // It goes on from there, and is said once.
    await edit(second.address, id, change("r2", "r3"));
    expect((await shelf(second.address)).notices).toEqual([]);
    await second.kill();
    const third = await desk.start();
    expect((await held(third.address, id)).changes).toEqual([change("r1", "r2"), change("r2", "r3")]);
    expect((await shelf(third.address)).notices).toEqual([]);
  });

  test("a snapshot takes the place of the changes that it holds", async () => {
    const first = await desk.start();
    const id = newId();
    await put(first.address, id, "r1");
    await edit(first.address, id, change("r1", "r2"), change("r2", "r3"));
    // The answer to the first time may have been lost.
    for (let time = 0; time < 2; time++)
      expect((await put(first.address, id, "r3", { after: "r3", mark: "newer" })).status).toBe(200);
    await edit(first.address, id, change("r3", "r4"));
    await first.kill();
    const { address } = await desk.start();
    expect(await held(address, id)).toMatchObject({
      document: document("r3", "newer"),
      changes: [change("r3", "r4")],
    });
  });

  test("a damaged job is kept aside, said, offered as it is, and the others open", async () => {
    const first = await desk.start();
    const [id, other] = [newId(), newId()];
    await put(first.address, id, "r1", { line: lineOf("Hill Lane") });
    await put(first.address, other, "o1");
    await first.kill();
    const damaged = readFileSync(logOf(desk.folder, id)).fill(0, 10, 20);
    writeFileSync(logOf(desk.folder, id), damaged);
    // The list was drawn before: the damage is found when the job is opened.
    const { address } = await desk.start();
    const refused = await ask(address, `jobs/${id}`);
    expect(refused.status).toBe(422);
    expect(await sentenceOf(refused)).toMatch(
      /^This job can't be read: its file is damaged\. .*export it as it is/,
    );
    expect(await entry(address, id)).toMatchObject({
      line: { name: "Hill Lane" },
      trouble: { kept: [expect.stringMatching(/^damaged\//)] },
    });
    const [kept] = readdirSync(path.join(desk.folder, "damaged"));
    expect(readFileSync(path.join(desk.folder, "damaged", kept!)).equals(damaged)).toBe(true);
    expect((await askJson<Start>(address, "start")).open).toBe(other);
    expect((await held(address, other)).document).toEqual(document("o1"));
    expect((await exported(address, id)).map((bytes) => bytes.equals(damaged))).toEqual([true]);
    // Only its owner takes it away: first put away, then deleted.
    expect((await write(address, `jobs/${id}`, "DELETE", "")).status).toBe(409);
    await post(address, `jobs/${id}/notes`, { away: true });
    expect((await write(address, `jobs/${id}`, "DELETE", "")).status).toBe(200);
    expect((await shelf(address)).jobs.map((one) => one.id)).toEqual([other]);
  });

  test("many jobs beside one another: none is thrown away, and a deleted one stays deleted", async () => {
    const first = await desk.start();
    const ids = Array.from({ length: 25 }, newId);
    for (const [index, id] of ids.entries())
      await put(first.address, id, `m${index}`, { mark: `job ${index}` });
    await post(first.address, `jobs/${ids[0]}/notes`, { away: true });
    expect((await write(first.address, `jobs/${ids[0]}`, "DELETE", "")).status).toBe(200);
    await first.kill();
    const { address } = await desk.start();
    expect((await shelf(address)).jobs.map(({ id }) => id).sort()).toEqual(ids.slice(1).sort());
    for (const [index, id] of ids.entries())
      if (index > 0)
        expect((await held(address, id)).document).toEqual(document(`m${index}`, `job ${index}`));
    expect(readdirSync(desk.folder).filter((name) => name.includes(ids[0]!))).toEqual([]);
  });
});
