/** A survey into a job that is there, by the command. */
import { mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { readXlsx } from "../../src/hosts/file/readXlsx";
import type { Book } from "../../src/workbooks/book";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { namedColumn, namedValue } from "../../src/workbooks/named";
import { runCommand } from "../support/fakeConsole";

let folder: string;
const at = (name: string): string => path.join(folder, name);
const bookAt = async (name: string): Promise<Book> => readXlsx(new Uint8Array(await readFile(at(name))));
const outletsIn = (book: Book): unknown[] => namedColumn(book, "rooms_outlet").filter((name) => name);
const HEAD = "Room;Outlet;Device;Cable;Tape;Plate";

beforeEach(async () => {
  folder = await mkdtemp(path.join(tmpdir(), "rigsheet-survey-"));
  await runCommand(["new", "multi-room", "--demonstration", "--out", at("job.xlsx")]);
});
afterEach(() => rm(folder, { recursive: true }));

const survey = (...words: string[]) => runCommand(["survey", at("job.xlsx"), at("rooms.csv"), ...words]);

test("without --out it tells what would come of it, and what has to be said first", async () => {
  await writeFile(at("rooms.csv"), [HEAD, "12;N-1;receiver;indoor drop;12 - 14;single outlet"].join("\n"));
  const { code, out } = await survey();
  expect(code).toBe(1);
  expect(out).toMatch(/The head row lacks "run"\. It has "Room", "Outlet"/);
  const mapped = await survey("--map", "Tape=run (m)");
  expect(mapped).toMatchObject({ code: 0, err: "" });
  expect(mapped.out).toMatch(
    /1 outlet to add:\n {2}Room +Outlet +Receiver +Cable +Run \(m\) +Shortest run \(m\)/,
  );
  expect(mapped.out).toMatch(/12 +N-1 +receiver +indoor drop +13 +12 +14/);
  expect(await readdir(folder)).toEqual(["job.xlsx", "rooms.csv"]);
});

test("new outlets are added, those that are there brought up to date, the others stay; all else is as it was", async () => {
  const known = guestHouse.blocks!.rooms!.map(({ outlet }) => outlet);
  const lines = [
    HEAD,
    `;${String(known[0])};;;33,5;`,
    ...Array.from(
      { length: 40 },
      (_, index) => `${index};N-${index};receiver;Indoor Drop;ca. 12;single outlets`,
    ),
  ];
  await writeFile(at("rooms.csv"), lines.join("\n"));
  const made = await survey("--map", "E=run", "--out", at("new.xlsx"));
  expect(made).toMatchObject({ code: 0, err: "" });
  expect(made.out).toMatch(
    /: 40 outlets added to Rooms, 1 outlet changed; 23 outlets of Rooms not in the survey stay\.$/,
  );
  const [before, after] = [await bookAt("job.xlsx"), await bookAt("new.xlsx")];
  expect(outletsIn(after)).toEqual([...known, ...Array.from({ length: 40 }, (_, index) => `N-${index}`)]);
  const first = namedColumn(after, "rooms_outlet").indexOf(known[0]);
  expect(namedColumn(after, "rooms_run")[first]).toBe(33.5);
  expect(namedColumn(after, "rooms_receiver").slice(0, 24)).toEqual(
    namedColumn(before, "rooms_receiver").slice(0, 24),
  );
  const row = namedColumn(after, "rooms_outlet").indexOf("N-3");
  expect(["cable", "plate", "run"].map((key) => namedColumn(after, `rooms_${key}`)[row])).toEqual([
    "indoor drop",
    "single outlet",
    12,
  ]);
  expect(namedColumn(after, "cables_name")).toEqual(namedColumn(before, "cables_name"));
  expect(namedValue(after, "count_outlets")).toBe(64);
  // The same survey again changes nothing.
  const again = await runCommand([
    "survey",
    at("new.xlsx"),
    at("rooms.csv"),
    "--map",
    "E=run",
    "--out",
    at("x.xlsx"),
  ]);
  expect(again).toMatchObject({ code: 0 });
  expect(again.out).toMatch(/is as the survey has it already\. Nothing was written/);
});

test("--take-out takes out what the survey does not have", async () => {
  const [one, two] = guestHouse.blocks!.rooms!.map(({ outlet }) => String(outlet));
  await writeFile(at("rooms.csv"), [HEAD.replace("Tape", "Run"), `;${one};;;9;`, `;${two};;;9;`].join("\n"));
  const made = await survey("--take-out", "--out", at("new.xlsx"));
  expect(made.out).toMatch(/2 outlets changed, 22 outlets taken out\.$/);
  expect(outletsIn(await bookAt("new.xlsx"))).toEqual([one, two]);
});

test("a bad line is told with its outlet and what to do, and nothing is written without --keep-going", async () => {
  const lines = [
    HEAD.replace("Tape", "Run"),
    "1;N-1;receiver;indor drop;12;",
    "2;N-2;recorder 2 tuners;;tbd;",
    "3;N-3;;;9;",
  ];
  await writeFile(at("rooms.csv"), lines.join("\n"));
  const refused = await survey("--out", at("new.xlsx"));
  expect(refused.code).toBe(1);
  expect(refused.err).toMatch(
    /line 2 \(1, N-1\): cable: “indor drop” is not on the workbook's list\. Nearest: “indoor drop”/,
  );
  expect(refused.err).toMatch(/line 3 \(2, N-2\): run: “tbd” is no length yet/);
  expect(refused.err).toMatch(/Nothing was written: 2 lines are bad/);
  expect(await readdir(folder)).toEqual(["job.xlsx", "rooms.csv"]);
  const made = await survey("--keep-going", "--out", at("new.xlsx"));
  expect(made.code).toBe(1);
  expect(made.out).toMatch(/1 outlet added to Rooms.*2 bad lines left out/);
});

test.each([
  ["one word too few", ["survey", "job.xlsx"], /Name a workbook and a survey/],
  ["no such column", ["--map", "Wire=cable"], /no column “Wire” in the file/],
  ["no such meaning", ["--map", "Tape=wire"], /“wire” is nothing that a column can be/],
  ["no such sheet", ["--sheet", "Rooms"], /no sheet "Rooms" in the file/],
  ["no line", ["--head", "first"], /give the number of a line/],
])("%s", async (_, words, sentence) => {
  await writeFile(at("rooms.csv"), [HEAD, "1;N-1;receiver;;12;"].join("\n"));
  const made = words[0] === "survey" ? await runCommand(words) : await survey(...words);
  expect(made.code).toBe(2);
  expect(made.err).toMatch(sentence);
});
