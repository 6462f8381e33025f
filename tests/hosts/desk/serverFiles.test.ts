/** The workbooks that a desk is given, the jobs that go with them, and Save into the right one only. */
import {
  chmodSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import path from "node:path";
import type { Start, Theirs } from "../../../src/hosts/desk/protocol";
import { DiskStorage } from "../../../src/hosts/storage/diskStorage";
import { readXlsx } from "../../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../../src/hosts/file/writeXlsx";
import { Shelf } from "../../../src/jobs/shelf";
import { createHash } from "node:crypto";
import { sampleBook } from "../../support/books";
import { ask, askJson, BUILD_MS, buildDesk, refusedStart, sentenceOf, write, type Started } from "./desk";
import {
  change,
  document,
  edit,
  entry,
  held,
  newId,
  ownDesk,
  post,
  put,
  secondStart,
  shelf,
} from "./ownDesk";

jest.setTimeout(60_000);
beforeAll(buildDesk, BUILD_MS);
const desk = ownDesk();

const book = sampleBook();
const titleIn = async (file: string): Promise<string> => (await readXlsx(readFileSync(file))).title;
const save = (address: string, id: string, title: string, over = ""): Promise<Response> =>
  write(address, `jobs/${id}/file${over}`, "PUT", JSON.stringify({ ...book, title }));
const startOf = (address: string): Promise<Start> => askJson(address, "start");

async function made(name: string, title = ""): Promise<string> {
  const file = path.join(desk.folder, name);
  mkdirSync(path.dirname(file), { recursive: true });
  writeFileSync(file, await writeXlsx({ ...book, title }));
  return file;
}

/** A desk started with a file, and the job that a page makes of it. */
async function opened(
  name = "job.xlsx",
): Promise<{ file: string; id: string; started: Started; address: string }> {
  const file = await made(name, "original");
  const started = await desk.start(file);
  const { address } = started;
  const { given } = await startOf(address);
  expect(given).toMatchObject({ name: path.basename(name), book: { title: "original" } });
  const id = newId();
  expect((await put(address, id, "r1", { mark: "of the file", given: given!.number })).status).toBe(200);
  return { file, id, started, address };
}

describe("a file given at the start", () => {
  test("is written back in place; a read-only one is left with a sentence", async () => {
    const { file, id, address } = await opened();
    expect((await save(address, id, "edited")).status).toBe(200);
    const before = readFileSync(file);
    expect(await titleIn(file)).toBe("edited");
    chmodSync(file, 0o444);
    const refused = await save(address, id, "not this");
    expect(refused.status).toBe(422);
    expect(await sentenceOf(refused)).toMatch(/job\.xlsx is read-only/);
    expect(readFileSync(file).equals(before)).toBe(true);
    chmodSync(file, 0o644);
    // What was refused is not asked about afterwards.
    expect((await save(address, id, "and now")).status).toBe(200);
  });

  test("is known by its job after a restart; copied with a new time it is the same file", async () => {
    const { file, id, started } = await opened();
    await edit(started.address, id, change("r1", "r2"));
    await started.kill();
    const later = new Date(Date.now() + 3_600_000);
    utimesSync(file, later, later);
    const { address } = await desk.start(file);
    expect((await startOf(address)).given).toEqual({ number: expect.any(Number), name: "job.xlsx", job: id });
    expect((await shelf(address)).notices.join()).not.toMatch(/changed/);
    expect((await held(address, id)).changes).toEqual([change("r1", "r2")]);
    expect((await save(address, id, "on")).status).toBe(200);
  });

  test("that another program changed is shown as it is now, and the job stays on the shelf without it", async () => {
    const { file, id, started } = await opened();
    await started.kill();
    writeFileSync(file, await writeXlsx({ ...book, title: "changed elsewhere" }));
    const { address } = await desk.start(file);
    const { given } = await startOf(address);
    expect(given).toMatchObject({ name: "job.xlsx", book: { title: "changed elsewhere" } });
    expect(given!.job).toBeUndefined();
    expect((await shelf(address)).notices).toEqual([
      expect.stringMatching(/^job\.xlsx was changed by another program.*under Jobs\.$/),
    ]);
    expect(await held(address, id)).toMatchObject({ document: document("r1", "of the file") });
    expect((await entry(address, id))!.file).toBeUndefined();
    // Its Save does not reach the file that it has nothing to do with any more.
    expect((await save(address, id, "the old job")).status).toBe(409);
    expect(await titleIn(file)).toBe("changed elsewhere");
  });

  test("whose bytes changed within the same length and time is changed all the same", async () => {
    const { file, id, address } = await opened();
    // A whole second: what is set and what is found are then the same to every file system.
    const mtime = new Date("2026-11-02T08:00:00.000Z");
    utimesSync(file, mtime, mtime);
    expect((await save(address, id, "as it was")).status).toBe(200);
    utimesSync(file, mtime, mtime);
    const bytes = readFileSync(file);
    bytes[bytes.length - 1] = bytes.at(-1)! ^ 1;
    writeFileSync(file, bytes);
    utimesSync(file, mtime, mtime);
    expect(statSync(file).mtimeMs).toBe(mtime.getTime());
    const asked = await save(address, id, "ours");
    expect(asked.status).toBe(412);
    expect(readFileSync(file).equals(bytes)).toBe(true);
  });

  test("that is not there, or is no workbook: a sentence, and 1, and so for a desk that runs", async () => {
    const missing = path.join(desk.folder, "missing.xlsx");
    const broken = path.join(desk.folder, "broken.xlsx");
    writeFileSync(broken, "not a workbook");
    const refusals = (): void => {
      expect(refusedStart("--data", desk.folder, missing)).toMatchObject({
        status: 1,
        stderr: `There is no file ${missing}. Check the name, or start without a file.\n`,
      });
      const { status, stderr } = refusedStart("--data", desk.folder, broken);
      expect(status).toBe(1);
      expect(stderr).toMatch(/^The file is plain text, not an Excel workbook\./);
      expect(refusedStart("--data", desk.folder, desk.folder).stderr).toBe(
        `${desk.folder} is a folder. Give the name of a file in it.\n`,
      );
    };
    refusals();
    const { address } = await desk.start();
    refusals();
    await secondStart("--help");
    expect((await startOf(address)).given).toBeUndefined();
  });

  test("that is gone once the desk runs: the desk starts without it and says so", async () => {
    const file = await made("job.xlsx");
    const { address } = await desk.start(file);
    rmSync(file);
    expect((await startOf(address)).given).toBeUndefined();
    expect((await shelf(address)).notices).toEqual([
      `There is no file ${file}. Check the name, or start without a file.`,
    ]);
  });

  test("its number is not that of another file in the next desk: a page of before can't tie its job to it", async () => {
    const first = await desk.start(await made("first.xlsx", "first"));
    const { number } = (await startOf(first.address)).given!;
    await first.kill();
    const second = await made("second.xlsx", "second");
    const { address } = await desk.start(second);
    expect((await startOf(address)).given!.number).not.toBe(number);
    const late = await put(address, newId(), "r1", { mark: "of the first", given: number });
    expect([late.status, await sentenceOf(late)]).toEqual([404, "This desk was not started with that file."]);
    expect(await titleIn(second)).toBe("second");
  });
});

describe("Save", () => {
  test("a file that another program has written meanwhile is asked about; written over, theirs is kept", async () => {
    const { file, id, address } = await opened();
    expect((await save(address, id, "ours")).status).toBe(200);
    expect((await save(address, id, "ours again")).status).toBe(200);
    writeFileSync(file, await writeXlsx({ ...book, title: "theirs" }));
    const asked = await save(address, id, "ours at last");
    expect(asked.status).toBe(412);
    expect(await sentenceOf(asked)).toMatch(/^job\.xlsx has changed since it was opened or saved here/);
    expect(await titleIn(file)).toBe("theirs");
    const { keptAs } = (await (await save(address, id, "ours at last", "?over")).json()) as {
      keptAs: string;
    };
    expect([await titleIn(file), await titleIn(keptAs)]).toEqual(["ours at last", "theirs"]);
    expect((await save(address, id, "and on")).status).toBe(200);
  });

  test("theirs can be looked at and taken: what was here is frozen first, and Save goes on from theirs", async () => {
    const { file, id, address } = await opened();
    await edit(address, id, change("r1", "r2"));
    writeFileSync(file, await writeXlsx({ ...book, title: "theirs" }));
    const theirs = await askJson<Theirs>(address, `jobs/${id}/file`);
    expect(theirs.book.title).toBe("theirs");
    expect(theirs.mark).toBe(createHash("sha256").update(readFileSync(file)).digest("hex"));
    const take = (after: string): Promise<Response> =>
      post(address, `jobs/${id}/theirs`, { document: document("t1", "theirs"), after, mark: theirs.mark });
    expect((await take("r1")).status).toBe(409);
    expect((await take("r2")).status).toBe(200);
    // The answer may have been lost.
    expect((await take("r2")).status).toBe(200);
    expect(await held(address, id)).toMatchObject({ document: document("t1", "theirs"), changes: [] });
    expect(await askJson(address, `jobs/${id}/revisions/1`)).toMatchObject({
      document: document("r1", "of the file"),
      changes: [change("r1", "r2")],
    });
    expect((await save(address, id, "after theirs")).status).toBe(200);
  });

  test("a kill between the file and the note of it is no change by another program", async () => {
    const { file, id, started } = await opened();
    await started.kill();
    // As the save leaves it: said before it is done, done, and then the end.
    const bytes = await writeXlsx({ ...book, title: "saved, not noted" });
    const saving = createHash("sha256").update(bytes).digest("hex");
    const kept = await Shelf.open(new DiskStorage(desk.folder));
    await kept.note(id, { file: { ...(await kept.held(id)).notes.file!, saving } });
    writeFileSync(file, bytes);
    const { address } = await desk.start(file);
    expect((await startOf(address)).given).toMatchObject({ job: id });
    expect((await shelf(address)).notices.join()).not.toMatch(/changed/);
    expect((await save(address, id, "and on")).status).toBe(200);
    expect(await titleIn(file)).toBe("and on");
  });

  test("a kill before the file was written leaves it as it was, and that is no change either", async () => {
    const { file, id, started } = await opened();
    await started.kill();
    const kept = await Shelf.open(new DiskStorage(desk.folder));
    await kept.note(id, { file: { ...(await kept.held(id)).notes.file!, saving: "0".repeat(64) } });
    const { address } = await desk.start();
    expect((await save(address, id, "and on")).status).toBe(200);
    expect(await titleIn(file)).toBe("and on");
  });

  test("of two files and two jobs, the Save of one leaves the other byte for byte", async () => {
    const { file, id, address } = await opened("a/job.xlsx");
    const second = await made("b/job.xlsx", "the other");
    expect((await secondStart("--data", desk.folder, second)).status).toBe(0);
    const { given } = await startOf(address);
    expect(given).toMatchObject({ name: "job.xlsx", book: { title: "the other" } });
    const other = newId();
    await put(address, other, "o1", { given: given!.number });
    const [first, before] = [readFileSync(file), readFileSync(second)];
    expect((await save(address, id, "first")).status).toBe(200);
    expect(readFileSync(second).equals(before)).toBe(true);
    expect(readFileSync(file).equals(first)).toBe(false);
    const saved = readFileSync(file);
    expect((await save(address, other, "second")).status).toBe(200);
    expect(readFileSync(file).equals(saved)).toBe(true);
    expect(await titleIn(second)).toBe("second");
    // A new job has none, and writes into neither.
    const fresh = newId();
    await put(address, fresh, "n1");
    const none = await save(address, fresh, "nowhere");
    expect([none.status, await sentenceOf(none)]).toEqual([
      409,
      "This job belongs to no file; use Save to download the workbook.",
    ]);
    // Nor does one that has let go of its file, or a copy, or one whose file the browser holds.
    await post(address, `jobs/${id}/notes`, { file: null });
    const copy = newId();
    await post(address, `jobs/${other}/copies/${copy}`, {});
    await post(address, `jobs/${fresh}/notes`, { file: { name: "job.xlsx", mark: "", path: file } });
    for (const one of [id, copy, fresh]) expect((await save(address, one, "nowhere")).status).toBe(409);
    expect(readFileSync(file).equals(saved)).toBe(true);
  });
});

describe("a file that is another thing now", () => {
  test("gone or renamed: asked about, made anew on a yes, and the renamed one stays", async () => {
    const { file, id, address } = await opened();
    renameSync(file, `${file}.renamed.xlsx`);
    const asked = await save(address, id, "ours");
    expect(asked.status).toBe(410);
    expect(await sentenceOf(asked)).toMatch(/^job\.xlsx is gone from its folder, or has another name/);
    const look = await ask(address, `jobs/${id}/file`);
    expect([look.status, await sentenceOf(look)]).toEqual([
      422,
      `There is no file ${file}. Check the name, or start without a file.`,
    ]);
    expect((await save(address, id, "ours", "?over")).status).toBe(200);
    expect([await titleIn(file), await titleIn(`${file}.renamed.xlsx`)]).toEqual(["ours", "original"]);
  });

  test("a folder, or in a folder that is gone: sentences, and the job stays as it is", async () => {
    const { file, id, address } = await opened("in/job.xlsx");
    rmSync(file);
    mkdirSync(file);
    writeFileSync(path.join(file, "inside"), "theirs");
    expect((await save(address, id, "ours")).status).toBe(410);
    const refused = await save(address, id, "ours", "?over");
    expect([refused.status, await sentenceOf(refused)]).toEqual([
      422,
      `${file} is a folder. Give the name of a file in it.`,
    ]);
    expect(readFileSync(path.join(file, "inside"), "utf8")).toBe("theirs");
    expect((await ask(address, `jobs/${id}/file`)).status).toBe(422);
    rmSync(path.dirname(file), { recursive: true });
    expect((await save(address, id, "ours")).status).toBe(410);
    const nowhere = await save(address, id, "ours", "?over");
    expect([nowhere.status, await sentenceOf(nowhere)]).toEqual([
      422,
      `There is no folder ${path.dirname(file)}. Make it, or save elsewhere.`,
    ]);
    expect(await held(address, id)).toMatchObject({ document: document("r1", "of the file") });
  });

  test("a workbook no more: theirs has its sentence, and is kept when it is written over", async () => {
    const { file, id, address } = await opened();
    writeFileSync(file, "not a workbook");
    const look = await ask(address, `jobs/${id}/file`);
    expect(look.status).toBe(422);
    expect(await sentenceOf(look)).toMatch(/^The file is plain text/);
    expect((await save(address, id, "ours")).status).toBe(412);
    const { keptAs } = (await (await save(address, id, "ours", "?over")).json()) as { keptAs: string };
    expect(readFileSync(keptAs, "utf8")).toBe("not a workbook");
  });

  (process.platform === "win32" ? test.skip : test)(
    "a link (not on Windows, where one needs rights): what it leads to is written, and it stays a link",
    async () => {
      const target = await made("away/target.xlsx", "original");
      const link = path.join(desk.folder, "link.xlsx");
      symlinkSync(target, link);
      const { address } = await desk.start(link);
      const { given } = await startOf(address);
      const id = newId();
      await put(address, id, "r1", { given: given!.number });
      expect((await save(address, id, "through")).status).toBe(200);
      expect(await titleIn(target)).toBe("through");
      expect(readFileSync(link).equals(readFileSync(target))).toBe(true);
    },
  );
});
