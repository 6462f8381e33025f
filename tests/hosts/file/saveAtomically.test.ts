/** A saved file is the old one or the new one, whole; every trouble has its sentence. */
import { chmod, mkdir, mkdtemp, readdir, readFile, rm, stat, symlink, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { realDisk, saveAtomically, sentenceFor, type Disk } from "../../../src/hosts/file/saveAtomically";

const NEW = Uint8Array.from([1, 2, 3]);
let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "rigsheet-save-"));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

test("a new file is written, and nothing else is left in the folder", async () => {
  await saveAtomically(join(folder, "job.xlsx"), NEW);
  expect(await readdir(folder)).toEqual(["job.xlsx"]);
  expect(new Uint8Array(await readFile(join(folder, "job.xlsx")))).toEqual(NEW);
});

test("an existing file is replaced and keeps its permissions", async () => {
  const path = join(folder, "job.xlsx");
  await writeFile(path, "old");
  await chmod(path, 0o640);
  await saveAtomically(path, NEW);
  expect(new Uint8Array(await readFile(path))).toEqual(NEW);
  if (process.platform !== "win32") expect((await stat(path)).mode & 0o777).toBe(0o640);
});

const onPosix = process.platform === "win32" ? test.skip : test;

onPosix("a link keeps pointing at the file, which is replaced", async () => {
  await writeFile(join(folder, "real.xlsx"), "old");
  await symlink("real.xlsx", join(folder, "link.xlsx"));
  await saveAtomically(join(folder, "link.xlsx"), NEW);
  expect(new Uint8Array(await readFile(join(folder, "real.xlsx")))).toEqual(NEW);
  expect((await readdir(folder)).sort()).toEqual(["link.xlsx", "real.xlsx"]);
});

describe("troubles", () => {
  test("no such folder", async () => {
    await expect(saveAtomically(join(folder, "none", "job.xlsx"), NEW)).rejects.toMatchObject({
      name: "FileTrouble",
      message: `There is no folder ${join(folder, "none")}. Make it, or save elsewhere.`,
    });
  });

  test("a folder of that name", async () => {
    await mkdir(join(folder, "job.xlsx"));
    await expect(saveAtomically(join(folder, "job.xlsx"), NEW)).rejects.toThrow("is a folder");
  });

  test("a read-only file is refused and left as it was, whoever asks", async () => {
    const path = join(folder, "job.xlsx");
    await writeFile(path, "old");
    await chmod(path, 0o444);
    await expect(saveAtomically(path, NEW)).rejects.toThrow("is read-only");
    expect(await readFile(path, "utf8")).toBe("old");
  });

  test("a disk that fills up while writing leaves the old file and no rest of the new", async () => {
    const path = join(folder, "job.xlsx");
    await writeFile(path, "old");
    const full: Disk = {
      ...realDisk,
      open: async (...args) => {
        const file = await realDisk.open(...args);
        file.writeFile = () => Promise.reject(Object.assign(new Error("no space left"), { code: "ENOSPC" }));
        return file;
      },
    };
    await expect(saveAtomically(path, NEW, full)).rejects.toThrow(`The disk that holds ${folder} is full`);
    expect(await readFile(path, "utf8")).toBe("old");
    expect(await readdir(folder)).toEqual(["job.xlsx"]);
  });

  test("a file that can't be renamed over leaves the old file and no rest of the new", async () => {
    const path = join(folder, "job.xlsx");
    await writeFile(path, "old");
    const busy: Disk = {
      ...realDisk,
      rename: () => Promise.reject(Object.assign(new Error("busy"), { code: "EBUSY" })),
    };
    await expect(saveAtomically(path, NEW, busy)).rejects.toThrow("is open in another program");
    expect(await readdir(folder)).toEqual(["job.xlsx"]);
  });

  test.each([
    ["ENOENT", "There is no folder"],
    ["EACCES", "Nothing can be written in"],
    ["EPERM", "Nothing can be written in"],
    ["EROFS", "is read-only. Save on another disk"],
    ["ENOSPC", "is full. Nothing was changed"],
    ["EISDIR", "is a folder"],
    ["EBUSY", "open in another program"],
    ["ENAMETOOLONG", "too long"],
    ["EIO", "could not be saved (EIO)"],
  ])("the system's %s", (code, sentence) => {
    const path = join(folder, "job.xlsx");
    expect(sentenceFor(Object.assign(new Error(code), { code }), path)).toContain(sentence);
  });
});
