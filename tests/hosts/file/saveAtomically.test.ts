/** A saved file is the old one or the new one, whole; every trouble has its sentence. */
import {
  chmod,
  chown,
  link,
  lstat,
  mkdir,
  mkdtemp,
  readdir,
  readFile,
  rm,
  stat,
  symlink,
  utimes,
  writeFile,
} from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import {
  realDisk,
  saveAtomically,
  sentenceFor,
  sentenceForReading,
  sweepParts,
  type Disk,
} from "../../../src/hosts/file/saveAtomically";

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

onPosix("permissions are kept whatever the process's own mask takes away", async () => {
  const path = join(folder, "job.xlsx");
  await writeFile(path, "old");
  await chmod(path, 0o664);
  const mask = process.umask(0o022);
  try {
    await saveAtomically(path, NEW);
  } finally {
    process.umask(mask);
  }
  expect((await stat(path)).mode & 0o777).toBe(0o664);
});

onPosix("a file with two names keeps both, with the new content", async () => {
  await writeFile(join(folder, "job.xlsx"), "an older and longer content");
  await link(join(folder, "job.xlsx"), join(folder, "other.xlsx"));
  await saveAtomically(join(folder, "job.xlsx"), NEW);
  for (const name of ["job.xlsx", "other.xlsx"])
    expect(new Uint8Array(await readFile(join(folder, name)))).toEqual(NEW);
  expect((await stat(join(folder, "job.xlsx"))).nlink).toBe(2);
  expect((await readdir(folder)).sort()).toEqual(["job.xlsx", "other.xlsx"]);
});

onPosix(
  "a file with two names that fills the disk is told to be damaged, and all of it is kept beside",
  async () => {
    const path = join(folder, "job.xlsx");
    await writeFile(path, "old");
    await link(path, join(folder, "other.xlsx"));
    const full: Disk = {
      ...realDisk,
      open: async (...args) => {
        const file = await realDisk.open(...args);
        if (args[1] === "r+")
          file.writeFile = () =>
            Promise.reject(Object.assign(new Error("no space left"), { code: "ENOSPC" }));
        return file;
      },
    };
    await expect(saveAtomically(path, NEW, { disk: full })).rejects.toThrow("All of it is kept as");
    const kept = (await readdir(folder)).find((name) => name.endsWith(".part"))!;
    expect(new Uint8Array(await readFile(join(folder, kept)))).toEqual(NEW);
  },
);

const asRoot = process.getuid?.() === 0 ? test : test.skip;
asRoot("another owner's file stays that owner's", async () => {
  const path = join(folder, "job.xlsx");
  await writeFile(path, "old");
  await chown(path, 12345, 23456);
  await saveAtomically(path, NEW);
  const { uid, gid } = await stat(path);
  expect([uid, gid]).toEqual([12345, 23456]);
});

onPosix("a link to a file that is not there makes that file, and stays a link", async () => {
  await symlink("later.xlsx", join(folder, "link.xlsx"));
  await saveAtomically(join(folder, "link.xlsx"), NEW);
  expect(new Uint8Array(await readFile(join(folder, "later.xlsx")))).toEqual(NEW);
  expect((await lstat(join(folder, "link.xlsx"))).isSymbolicLink()).toBe(true);
});

onPosix("links in a circle, a device and a pipe have their sentences", async () => {
  await symlink("b.xlsx", join(folder, "a.xlsx"));
  await symlink("a.xlsx", join(folder, "b.xlsx"));
  await expect(saveAtomically(join(folder, "a.xlsx"), NEW)).rejects.toThrow("lead round in a circle");
  await expect(saveAtomically("/dev/null", NEW)).rejects.toThrow("is no plain file");
});

test("what a save that was killed left behind is swept away, what is being written is not", async () => {
  const old = `.job.xlsx.${"0".repeat(8)}-0000-0000-0000-${"0".repeat(12)}.part`;
  const fresh = old.replace("00000000", "11111111");
  for (const name of [old, fresh, ".job.xlsx.mine.part", "job.xlsx"])
    await writeFile(join(folder, name), "x");
  const hourAgo = new Date(Date.now() - 3_600_000);
  for (const name of [old, ".job.xlsx.mine.part"]) await utimes(join(folder, name), hourAgo, hourAgo);
  await sweepParts(folder);
  expect((await readdir(folder)).sort()).toEqual([".job.xlsx.mine.part", fresh, "job.xlsx"].sort());
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
    await expect(saveAtomically(path, NEW, { disk: full })).rejects.toThrow(
      `The disk that holds ${folder} is full`,
    );
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
    await expect(saveAtomically(path, NEW, { disk: busy })).rejects.toThrow("is open in another program");
    expect(await readdir(folder)).toEqual(["job.xlsx"]);
  });

  const failing = (code: string) => () => Promise.reject(Object.assign(new Error(code), { code }));

  test("a disk that fails once the new file is in place is not told as unchanged", async () => {
    const path = join(folder, "job.xlsx");
    await writeFile(path, "old");
    const disk: Disk = {
      ...realDisk,
      open: async (...args) => {
        const file = await realDisk.open(...args);
        if (args[0] === folder) file.sync = failing("EIO");
        return file;
      },
    };
    await expect(saveAtomically(path, NEW, { disk })).rejects.toThrow(
      `${path} was written, but the disk did not confirm it (EIO): after a power cut it may be as it was before. Check the disk and save again.`,
    );
    expect(new Uint8Array(await readFile(path))).toEqual(NEW);
    expect(await readdir(folder)).toEqual(["job.xlsx"]);
  });

  test("a disk that fails at the renaming has done it or not", async () => {
    const path = join(folder, "job.xlsx");
    for (const isDone of [true, false]) {
      await writeFile(path, "old");
      const rename: Disk["rename"] = async (...names) => {
        if (isDone) await realDisk.rename(...names);
        await failing("EIO")();
      };
      await expect(saveAtomically(path, NEW, { disk: { ...realDisk, rename } })).rejects.toThrow(
        `The disk failed (EIO) while ${path} was being replaced: it is the old one or the new one, whole. Check the disk and save again.`,
      );
      expect(await readdir(folder)).toEqual(["job.xlsx"]);
    }
  });

  onPosix("a file with two names that is saved, and whose copy can't be taken away, is saved", async () => {
    const path = join(folder, "job.xlsx");
    await writeFile(path, "old");
    await link(path, join(folder, "other.xlsx"));
    await saveAtomically(path, NEW, { disk: { ...realDisk, rm: failing("EIO") } });
    expect(new Uint8Array(await readFile(join(folder, "other.xlsx")))).toEqual(NEW);
  });

  test("a file that can't be looked at is not taken for one that is not there", async () => {
    const path = join(folder, "job.xlsx");
    await writeFile(path, "old");
    await chmod(path, 0o444);
    const disk: Disk = { ...realDisk, stat: failing("EIO") as Disk["stat"] };
    await expect(saveAtomically(path, NEW, { disk })).rejects.toThrow(
      "could not be saved (EIO). Nothing was changed.",
    );
    expect(await readFile(path, "utf8")).toBe("old");
  });

  test.each([
    ["ENOENT", "is not there any more"],
    ["ENOTDIR", "is a file, not a folder"],
    ["EISDIR", "is a folder, where a file is kept"],
    ["EACCES", "may not be read by you"],
    ["EMFILE", "too many files are open"],
    ["ESTALE", "can't be read (ESTALE)"],
    ["EIO", "can't be read (EIO)"],
  ])("the system's %s on reading: no word of saving", (code, sentence) => {
    const said = sentenceForReading(Object.assign(new Error(code), { code }), join("data", "job.xlsx"));
    expect(said).toContain(sentence);
    expect(said).not.toMatch(/sav(e|ed|ing)\b|changed/);
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
