/** The disk's stand of the storage on a real disk: what two do at once, and what a disk answers. */
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { Log } from "../../../src/jobs/log";
import { DiskStorage, realDisk, type StorageDisk } from "../../../src/hosts/storage/diskStorage";

let folder: string;
beforeEach(() => void (folder = mkdtempSync(path.join(tmpdir(), "rigsheet-storage-"))));
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const failing = (code: string): NodeJS.ErrnoException => Object.assign(new Error(code), { code });
const refusing = (code: string) => () => Promise.reject(failing(code));
const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const textOf = (found: Uint8Array | undefined): string | undefined =>
  found && new TextDecoder().decode(found);
const onDisk = (name: string): string => readFileSync(path.join(folder, name), "utf8");

describe("a new thing", () => {
  test("of twenty that make one of the same name at once exactly one does, and it is that one's", async () => {
    for (let round = 0; round < 20; round++) {
      const name = `job ${round}`;
      const made = await Promise.allSettled(
        Array.from({ length: 20 }, async (_, which) => {
          await new DiskStorage(folder).create(name, bytes(`of ${which}`));
          return `of ${which}`;
        }),
      );
      const first = made.filter(({ status }) => status === "fulfilled");
      expect(first).toEqual([{ status: "fulfilled", value: onDisk(name) }]);
      for (const one of made)
        if (one.status === "rejected")
          expect(String(one.reason)).toBe(
            `WrittenElsewhere: ${path.join(folder, name)} is there already: another program has written it. ` +
              "It is left as it is; start Rigsheet again to see what is there.",
          );
    }
    expect(readdirSync(folder)).toHaveLength(20);
  });

  test("is its owner's alone, and leaves nothing beside it", async () => {
    await new DiskStorage(folder).create("job", bytes("one"));
    expect(readdirSync(folder)).toEqual(["job"]);
    if (process.platform !== "win32") expect(statSync(path.join(folder, "job")).mode & 0o777).toBe(0o600);
  });

  test("is not put in the place of a link that leads nowhere", async () => {
    symlinkSync("nowhere", path.join(folder, "job"));
    await expect(new DiskStorage(folder).create("job", bytes("one"))).rejects.toThrow("is there already");
    expect(readdirSync(folder)).toEqual(["job"]);
  });

  test.each(["EPERM", "EACCES", "ENOTSUP", "ENOSYS"])(
    "is made, and refused where there is one, on a disk without second names (%s)",
    async (code) => {
      const storage = new DiskStorage(folder, { ...realDisk, link: refusing(code) });
      await storage.create("job", bytes("one"));
      await expect(storage.create("job", bytes("two"))).rejects.toThrow("is there already");
      expect([readdirSync(folder), onDisk("job")]).toEqual([["job"], "one"]);
    },
  );

  test("a network that loses the answer and asks again is not told that it is there already", async () => {
    const link: StorageDisk["link"] = async (...names) => {
      await realDisk.link(...names);
      throw failing("EEXIST");
    };
    await new DiskStorage(folder, { ...realDisk, link }).create("job", bytes("one"));
    expect([readdirSync(folder), onDisk("job")]).toEqual([["job"], "one"]);
  });
});

/** A disk on which one verb of open files answers with an error, before it does its work or after. */
function failingAt(
  verb: "readFile" | "sync" | "writeFile",
  code: string,
  when: "before" | "after" = "before",
): StorageDisk {
  const open = (async (...words: Parameters<typeof realDisk.open>) => {
    const file = await realDisk.open(...words);
    if ((await file.stat()).isDirectory()) return file;
    const real = file[verb].bind(file) as (...given: unknown[]) => Promise<never>;
    file[verb] = async (...given: unknown[]) => {
      if (when === "after") await real(...given);
      throw failing(code);
    };
    return file;
  }) as StorageDisk["open"];
  return { ...realDisk, open };
}
/** A disk on which nothing can be opened to be written. */
const notToWrite = (code: string): StorageDisk => ({
  ...realDisk,
  open: (async (...words: Parameters<typeof realDisk.open>) =>
    words[1] === "r" ? realDisk.open(...words) : Promise.reject(failing(code))) as StorageDisk["open"],
});
const said = (work: Promise<unknown>): Promise<string> =>
  work.then(
    () => "nothing",
    (error: Error) => `${error.name}: ${error.message}`,
  );

describe("a folder or a disk that is not as it should be: a sentence, and what was confirmed stays", () => {
  const real = (): DiskStorage => new DiskStorage(folder);
  const at = (name: string): string => path.join(folder, name);
  beforeEach(() => real().create("job.1.log", bytes("one")));
  const verbs = (storage: DiskStorage): Record<string, () => Promise<unknown>> => ({
    list: () => storage.list(),
    read: () => storage.read("job.1.log"),
    create: () => storage.create("job.2.log", bytes("two")),
    append: () => storage.append("job.1.log", bytes("!")),
    "move aside": () => storage.moveAside("job.1.log", "damaged/job.1.log"),
  });

  test.each([
    ["EROFS", `FileTrouble: The disk that holds FOLDER is read-only. Save on another disk.`],
    ["EACCES", `FileTrouble: Nothing can be written in FOLDER. Choose a folder of your own.`],
  ])("only to be read (%s): all is listed and read, nothing written", async (code, sentence) => {
    const storage = new DiskStorage(folder, notToWrite(code));
    expect(await storage.list()).toEqual(["job.1.log"]);
    expect(textOf(await storage.read("job.1.log"))).toBe("one");
    for (const verb of ["create", "append"])
      expect(await said(verbs(storage)[verb]!())).toBe(sentence.replace("FOLDER", folder));
    expect([readdirSync(folder), onDisk("job.1.log")]).toEqual([["job.1.log"], "one"]);
  });

  test("full: nothing is changed, and what is there is read", async () => {
    const storage = new DiskStorage(folder, failingAt("writeFile", "ENOSPC"));
    for (const verb of ["create", "append"])
      expect(await said(verbs(storage)[verb]!())).toBe(
        `FileTrouble: The disk that holds ${folder} is full. Nothing was changed; make room or save on another disk.`,
      );
    expect(readdirSync(folder)).toEqual(["job.1.log"]);
    expect(textOf(await storage.read("job.1.log"))).toBe("one");
  });

  test("a folder that goes away, as one on a network does: told as gone, not as empty; back, all is there", async () => {
    renameSync(folder, `${folder}-away`);
    for (const verb of Object.values(verbs(real())))
      expect(await said(verb())).toBe(
        `FileTrouble: ${folder} is not there any more. If it lies on a network or on a disk that can be taken out, connect that again; then try again.`,
      );
    renameSync(`${folder}-away`, folder);
    expect(textOf(await real().read("job.1.log"))).toBe("one");
    expect(await real().read("nothing")).toBeUndefined();
  });

  test.each(["ESTALE", "EIO", "ENOTCONN"])(
    "a network that answers %s: a sentence of reading for reading",
    async (code) => {
      const down = { ...realDisk, open: refusing(code), readdir: refusing(code) } as unknown as StorageDisk;
      const { list, read, create, append } = verbs(new DiskStorage(folder, down));
      const again = `If it lies on a network or on a disk that can be taken out, connect that again; else check the disk. Then try again.`;
      expect(await said(list!())).toBe(`FileTrouble: ${folder} can't be read (${code}). ${again}`);
      expect(await said(read!())).toBe(`FileTrouble: ${at("job.1.log")} can't be read (${code}). ${again}`);
      expect(await said(create!())).toBe(
        `FileTrouble: ${at("job.2.log")} could not be saved (${code}). Nothing was changed.`,
      );
      expect(await said(append!())).toBe(
        `FileTrouble: ${at("job.1.log")} could not be saved (${code}). Nothing was changed.`,
      );
      for (const verb of ["sync", "readFile"] as const)
        expect(await said(verbs(new DiskStorage(folder, failingAt(verb, code))).read!())).toBe(
          `FileTrouble: ${at("job.1.log")} can't be read (${code}). ${again}`,
        );
    },
  );

  test("a folder replaced by a file", async () => {
    rmSync(folder, { recursive: true });
    writeFileSync(folder, "a file");
    for (const verb of Object.values(verbs(real())))
      expect(await said(verb())).toBe(
        `FileTrouble: ${folder} is a file, not a folder. Move it elsewhere, or give another folder.`,
      );
    expect(readFileSync(folder, "utf8")).toBe("a file");
  });

  test("a file replaced by a folder: it is listed, so that nothing older is taken for it, and named", async () => {
    await real().create("job.2.log", bytes("two"));
    renameSync(at("job.2.log"), at("kept"));
    mkdirSync(at("job.2.log"));
    expect((await real().list()).sort()).toEqual(["job.1.log", "job.2.log", "kept"]);
    const log = Log.open<string, string>(real(), "job", (base): base is string => typeof base === "string");
    expect(await said(log)).toBe(
      `FileTrouble: ${at("job.2.log")} is a folder, where a file is kept otherwise. Move it elsewhere and try again.`,
    );
    expect(await said(real().append("job.2.log", bytes("!")))).toMatch(
      /job\.2\.log is a folder, where a file is kept/,
    );
    expect(await said(real().create("job.2.log", bytes("!")))).toMatch(/is there already/);
    expect([onDisk("job.1.log"), onDisk("kept")]).toEqual(["one", "two"]);
  });

  test("a folder of its own is not listed, and one where things moved aside go may be a file", async () => {
    mkdirSync(at("replaced"));
    expect(await real().list()).toEqual(["job.1.log"]);
    writeFileSync(at("damaged"), "a file");
    expect(await said(real().moveAside("job.1.log", "damaged/job.1.log"))).toBe(
      `FileTrouble: ${at("damaged")} is a file, not a folder. Move it elsewhere, or give another folder.`,
    );
    expect(onDisk("job.1.log")).toBe("one");
  });

  test("a link to a folder, and a link to a file in it, are as good as what they lead to", async () => {
    const linked = `${folder}-link`;
    symlinkSync(folder, linked, "dir");
    try {
      const storage = new DiskStorage(linked);
      await storage.create("job.2.log", bytes("two"));
      await storage.append("job.2.log", bytes("!"));
      symlinkSync(at("job.2.log"), at("job.3.log"));
      expect((await storage.list()).sort()).toEqual(["job.1.log", "job.2.log", "job.3.log"]);
      expect(textOf(await storage.read("job.3.log"))).toBe("two!");
      await storage.moveAside("job.2.log", "damaged/job.2.log");
      expect(onDisk("damaged/job.2.log")).toBe("two!");
    } finally {
      rmSync(linked);
    }
  });

  const onLinux = process.platform === "linux" ? test : test.skip;
  onLinux("a special folder of the system, and a device, are no place for a job", async () => {
    expect(await said(new DiskStorage("/proc").create("job.1.log", bytes("one")))).toBe(
      "FileTrouble: No file can be made in /proc, a special folder of the system. Choose a folder of your own.",
    );
    symlinkSync("/dev/null", at("job.2.log"));
    expect(await said(real().read("job.2.log"))).toMatch(/job\.2\.log is no plain file/);
    expect(await said(real().append("job.2.log", bytes("one")))).toMatch(/job\.2\.log is no plain file/);
  });

  test.each(["EIO", "ENOSPC"])("what was added and then failed (%s) is taken back", async (code) => {
    const after = new DiskStorage(folder, failingAt("writeFile", code, "after"));
    expect(await said(after.append("job.1.log", bytes("!")))).toMatch(
      code === "EIO"
        ? /job\.1\.log could not be saved \(EIO\)\. Nothing was changed\.$/
        : /is full\. Nothing was changed;/,
    );
    expect(onDisk("job.1.log")).toBe("one");
  });

  test("what was written, and then not confirmed, is not told as unchanged", async () => {
    const unsynced = new DiskStorage(folder, failingAt("sync", "EIO"));
    expect(await said(unsynced.append("job.1.log", bytes("!")))).toBe(
      `FileTrouble: The disk failed (EIO) while something was added to ${at("job.1.log")}: what was last done may be there after the next start, or not. Check the disk and do it again.`,
    );
    rmSync(at("job.1.log"));
    await real().create("job.1.log", bytes("one"));
    const half: StorageDisk = { ...realDisk, open: folderFails };
    expect(await said(new DiskStorage(folder, half).create("job.2.log", bytes("two")))).toBe(
      `FileTrouble: ${at("job.2.log")} was written, but the disk did not confirm it (EIO): after a power cut it may be as it was before. Check the disk and save again.`,
    );
    expect(onDisk("job.2.log")).toBe("two");
    const link = async (): Promise<void> => Promise.reject(failing("EIO"));
    expect(
      await said(new DiskStorage(folder, { ...realDisk, link }).create("job.3.log", bytes("three"))),
    ).toBe(
      `FileTrouble: The disk failed (EIO) while ${at("job.3.log")} was being replaced: it is the old one or the new one, whole. Check the disk and save again.`,
    );
  });
});

/** A disk that takes files, and does not confirm their names. */
const folderFails = (async (...words: Parameters<typeof realDisk.open>) => {
  const file = await realDisk.open(...words);
  if ((await file.stat()).isDirectory()) file.sync = refusing("EIO");
  return file;
}) as StorageDisk["open"];
