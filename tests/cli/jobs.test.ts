/** The jobs of a desk's folder into a file and out of one, with a desk running on it and without. */
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { bringIn } from "../../src/hosts/file/jobsArchive";
import { DiskStorage } from "../../src/hosts/storage/diskStorage";
import { Shelf } from "../../src/jobs/shelf";
import { BUILD_MS, buildDesk } from "../hosts/desk/desk";
import { change, edit, held, newId, ownDesk, post, put, shelf } from "../hosts/desk/ownDesk";
import { newShelf } from "../jobs/onShelf";
import { runCommand } from "../support/fakeConsole";

jest.setTimeout(60_000);
beforeAll(buildDesk, BUILD_MS);
const desk = ownDesk();

test("out of a folder and into an empty one; the same file again; both with a desk that runs", async () => {
  const { address, kill } = await desk.start();
  const [one, two] = [newId(), newId()];
  await put(address, one, "r1");
  await edit(address, one, change("r1", "r2"));
  await post(address, `jobs/${one}/notes`, { state: "sent" });
  await put(address, two, "s1");
  const before = [await held(address, one), await held(address, two)];

  const [running, ended] = ["running.zip", "ended.zip"].map((name) => path.join(desk.folder, name));
  expect(await runCommand(["jobs", "--export", running!, "--data", desk.folder])).toEqual({
    code: 0,
    out: running,
    err: "",
  });
  await kill();
  expect((await runCommand(["jobs", "--export", ended!, "--data", desk.folder])).code).toBe(0);
  // The desk that runs gives the same file.
  expect(readFileSync(ended!).equals(readFileSync(running!))).toBe(true);
  expect(await runCommand(["jobs", "--export", ended!, "--data", desk.folder])).toMatchObject({
    code: 2,
    err: expect.stringContaining("exists and was left as it is") as string,
  });

  const other = path.join(desk.folder, "other");
  const bring = (): ReturnType<typeof runCommand> =>
    runCommand(["jobs", "--bring-in", ended!, "--data", other]);
  expect(await bring()).toMatchObject({ code: 0, out: "2 jobs brought in." });
  expect(existsSync(path.join(other, "desk.lock"))).toBe(false);
  expect(await bring()).toMatchObject({ code: 0, out: "2 jobs there already." });
  const there = await Shelf.open(new DiskStorage(other));
  expect([await there.held(one), await there.held(two)]).toEqual(before);
  // Into a desk that runs.
  const again = await desk.start();
  await post(again.address, `jobs/${two}/notes`, { away: true });
  await (await fetch(again.address)).text();
  expect(await runCommand(["jobs", "--bring-in", ended!, "--data", desk.folder])).toMatchObject({
    code: 0,
    out: "1 job there already, 1 newer here and kept.",
  });
  expect((await shelf(again.address)).jobs).toHaveLength(2);
  // A file of the command is one like any other.
  const { shelf: elsewhere } = await newShelf();
  expect((await bringIn(elsewhere, readFileSync(ended!))).jobs).toHaveLength(2);
});

test("what can't be used: a sentence each, nothing is made", async () => {
  const file = path.join(desk.folder, "letter.zip");
  writeFileSync(file, "Dear customer, the quote follows.");
  const none = path.join(desk.folder, "none");
  for (const [words, message] of [
    [
      ["--bring-in", file, "--data", desk.folder],
      /letter\.zip: The file is a text table \(CSV\), not an export/,
    ],
    [["--bring-in", path.join(desk.folder, "absent.zip"), "--data", none], /absent\.zip/],
    [["--export", path.join(desk.folder, "out.zip"), "--data", none], /There is no folder .*none/],
    [["--export", "a.zip", "--bring-in", "b.zip"], /Say one of/],
    [[], /Say one of/],
    [["--exprt", "a.zip"], /rigsheet jobs --help/],
  ] as [string[], RegExp][]) {
    const { code, err } = await runCommand(["jobs", ...words]);
    expect([words, code, err]).toEqual([words, 2, expect.stringMatching(message)]);
  }
  expect(existsSync(none)).toBe(false);
  expect(existsSync(path.join(desk.folder, "out.zip"))).toBe(false);
  expect((await runCommand(["jobs", "--help"])).out).toContain("--bring-in FILE.zip");
});
