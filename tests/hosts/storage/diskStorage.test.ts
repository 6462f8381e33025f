/** The disk's stand of the storage on a real disk: what two do at once, and what a disk answers. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, symlinkSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { DiskStorage, realDisk, type StorageDisk } from "../../../src/hosts/storage/diskStorage";

let folder: string;
beforeEach(() => void (folder = mkdtempSync(path.join(tmpdir(), "rigsheet-storage-"))));
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const failing = (code: string): NodeJS.ErrnoException => Object.assign(new Error(code), { code });
const refusing = (code: string) => () => Promise.reject(failing(code));
const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
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
