/** rigsheet review: exit codes, folders, one broken file among good ones, JSON, the page, the rules. */
import { execFileSync } from "node:child_process";
import { mkdir, mkdtemp, readFile, readdir, rm, stat, symlink, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { run } from "../../src/cli/run";
import { MAX_ENTRIES, MAX_NAMES, MAX_STYLES } from "../../src/hosts/file/limits";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { WEIGHTS } from "../../src/review/finding";
import { rules } from "../../src/review/ruleList";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { mendedGuestHouse } from "../review/cleanJobs";
import { runCommand } from "../support/fakeConsole";

const MARKUP = '<script>alert(1)</script><img src=x onerror="alert(2)">';
let folder: string;
const at = (...name: string[]): string => path.join(folder, ...name);
const review = (...words: string[]) => runCommand(["review", ...words]);

beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), "rigsheet-review-"));
  const good = mendedGuestHouse();
  const bad = mendedGuestHouse();
  bad.fields.site_margin = 0.02;
  bad.blocks.rooms![3]!.from = MARKUP;
  bad.blocks.rooms![4]!.from = "\u001b[31mred";
  await mkdir(at("many", "below"), { recursive: true });
  await writeFile(at("good.xlsx"), await writeXlsx(recalculate(layOut(multiRoom, good))));
  await writeFile(at("many", "below", "bad.xlsx"), await writeXlsx(recalculate(layOut(multiRoom, bad))));
  const bytes = await readFile(at("good.xlsx"));
  await writeFile(at("many", "a-broken.xlsx"), bytes.subarray(0, 700));
  await writeFile(at("many", "good.xlsx"), bytes);
  await writeFile(at("many", "~$good.xlsx"), "lock");
  await writeFile(at("many", "notes.txt"), "no workbook");
});
afterAll(() => rm(folder, { recursive: true, force: true }));

interface Line {
  readonly path: string;
  readonly unreadable?: string;
  readonly findings: readonly Record<string, unknown>[];
}
const linesOf = (out: string): Line[] => out.split("\n").map((line) => JSON.parse(line) as Line);

test("a clean workbook: nothing found, exit 0, and the file is as it was", async () => {
  const before = [await readFile(at("good.xlsx")), (await stat(at("good.xlsx"))).mtimeMs];
  const { code, out, err } = await review(at("good.xlsx"));
  expect({ code, out, err }).toEqual({
    code: 0,
    out: `${at("good.xlsx")}: nothing found\n  Not looked for: unlike the firm's standards (without a firm's standards), unlike accepted quotes (without standards that learned of accepted quotes).`,
    err: "",
  });
  expect([await readFile(at("good.xlsx")), (await stat(at("good.xlsx"))).mtimeMs]).toEqual(before);
});

test("notes alone: exit 0, and the summary says that there is nothing to put right", async () => {
  const job = mendedGuestHouse();
  // A part that nothing needs is worth knowing and no more.
  job.blocks.fittings!.push({ ...job.blocks.fittings![2]!, name: "spare" });
  for (const key of ["per_outlet", "per_branch", "per_head", "piece"])
    delete job.blocks.fittings!.at(-1)![key];
  await writeFile(at("noted.xlsx"), await writeXlsx(recalculate(layOut(multiRoom, job))));
  const { code, out } = await review(at("noted.xlsx"));
  await rm(at("noted.xlsx"));
  expect(out).toMatch(/noted\.xlsx: \d+ worth knowing \(nothing to put right\)\n/);
  expect(out).not.toMatch(/^ {2}(?:wrong|doubtful):/m);
  expect(code).toBe(0);
});

test("a pipe, a device, a folder and a link in a circle named as files: refused at once, with a sentence each", async () => {
  const named = { pipe: at("pipe.xlsx"), circle: at("circle.xlsx"), device: at("device.xlsx") };
  execFileSync("mkfifo", [named.pipe]);
  await symlink("circle.xlsx", named.circle);
  await symlink("/dev/zero", named.device);
  const { code, out } = await review(...Object.values(named));
  await Promise.all(Object.values(named).map((file) => rm(file)));
  expect(code).toBe(2);
  expect(out.split("\n")).toEqual([
    expect.stringMatching(/pipe\.xlsx: cannot be read\. .* it is a pipe, not a file\./),
    expect.stringMatching(/circle\.xlsx: cannot be read\. .* its links lead round in a circle\./),
    expect.stringMatching(/device\.xlsx: cannot be read\. .* it is a device, not a file\./),
  ]);
  expect((await runCommand(["price", folder])).err).toMatch(/it is a folder\./);
});

test("findings: exit 1, in words with their cells, and no file's text steers the terminal", async () => {
  const { code, out } = await review(at("many", "below", "bad.xlsx"));
  expect(code).toBe(1);
  expect(out).toMatch(/bad\.xlsx: \d+ wrong, \d+ doubtful/);
  expect(out).toMatch(/doubtful: Site![A-Z]+\d+ \(margin under the floor\)\n +The margin is 2 %\./);
  expect(out).not.toContain("\u001b");
});

test("a folder with one broken file: exit 2, the others are reviewed all the same", async () => {
  const { code, out } = await review(at("many"), "--json");
  expect(code).toBe(2);
  const lines = linesOf(out);
  expect(lines.map((line) => path.relative(at("many"), line.path))).toEqual([
    "a-broken.xlsx",
    path.join("below", "bad.xlsx"),
    "good.xlsx",
  ]);
  expect(lines[0]).toEqual({
    path: at("many", "a-broken.xlsx"),
    findings: [],
    unreadable: expect.stringContaining("cut short"),
  });
  expect(lines[1]!.findings.length).toBeGreaterThan(1);
  expect(lines[2]).toMatchObject({
    facts: { job: expect.stringContaining("Guest house, 24 outlets (demonstration)") },
    findings: [],
  });
});

test("each finding as JSON has its rule, weight, place, what it says and the way out", async () => {
  const [{ findings }] = linesOf((await review(at("many", "below", "bad.xlsx"), "--json")).out) as [Line];
  const known = new Set(rules.map(({ id }) => id));
  for (const finding of findings) {
    expect(known.has(String(finding.rule))).toBe(true);
    expect(WEIGHTS).toContain(finding.weight);
    expect(finding.message).toMatch(/\S/);
    expect(finding.remedy).toMatch(/\.$/);
  }
  expect(findings).toContainEqual(
    expect.objectContaining({
      rule: "feeding",
      weight: "wrong",
      place: { sheet: "Rooms", cell: expect.stringMatching(/^[A-Z]+\d+$/) },
      expected: "A device, head unit or outlet of this workbook.",
      effect: expect.stringMatching(/level/),
    }),
  );
});

test("the page: one file, no script, no markup of the workbooks, replaced when it exists", async () => {
  await writeFile(at("report.html"), "old");
  const { code, err } = await review(at("many"), "--html", at("report.html"));
  expect(code).toBe(2);
  expect(err).toBe(`The report is in ${at("report.html")}`);
  const page = await readFile(at("report.html"), "utf8");
  expect(page).toContain("&lt;script&gt;alert(1)&lt;/script&gt;");
  expect(page).not.toMatch(/<(?:script|img|link|iframe)|<[^>]*\s(?:src|on\w+)=|https?:/i);
  expect(page).toMatch(
    /<html lang="en">[\s\S]*<title>Review of 3 workbooks<\/title>[\s\S]*<main>[\s\S]*<h1>/,
  );
  expect(await readdir(folder)).toEqual(["good.xlsx", "many", "report.html"]);
});

test("how far it is goes to whoever watches, and is wiped at the end", async () => {
  const told: string[] = [];
  const out: string[] = [];
  await run(["review", at("many")], {
    out: (line) => void out.push(line),
    err: () => undefined,
    progress: (text) => void told.push(text),
    readInput: async () => "",
  });
  expect(told).toEqual(["1 of 3 reviewed", "2 of 3 reviewed", "3 of 3 reviewed", ""]);
  expect(out.join("\n")).not.toContain("reviewed");
});

test("--rules lists every rule with its reason and an example; --help has the caps", async () => {
  const { code, out } = await review("--rules");
  expect(code).toBe(0);
  for (const { id, reason, example } of rules)
    expect(out).toContain(`${id}\n  ${reason}\n  Example: ${example}`);
  for (const help of [await review("--help"), await runCommand(["--help"])]) {
    expect(help.code).toBe(0);
    for (const cap of ["64 MiB", "512 MiB", String(MAX_ENTRIES), String(MAX_NAMES), String(MAX_STYLES)])
      expect(help.out).toContain(cap);
  }
});

test("the list of another workbook and a floor of one's own are held to", async () => {
  const job = mendedGuestHouse();
  job.blocks.plates![0]!.price = 6.9;
  await writeFile(at("list.xlsx"), await writeXlsx(recalculate(layOut(multiRoom, job))));
  const { code, out } = await review(at("good.xlsx"), "--prices", at("list.xlsx"), "--margin-floor", "0.25");
  await rm(at("list.xlsx"));
  expect(code).toBe(1);
  expect(out).toMatch(/single outlet is priced at 6\.4, the list says 6\.9\./);
  expect(out).toMatch(/The margin is 22 %\.\n +Should be: 25 % or more\./);
});

describe("words that cannot be used: a sentence and exit 2", () => {
  test.each<[string, string[], RegExp]>([
    ["nothing named", [], /Name a workbook or a folder/],
    ["a report that is no page", ["good.xlsx", "--html", "good.xlsx"], /must end in \.html/],
    ["a floor that is no share", ["good.xlsx", "--margin-floor", "15"], /share from 0 to less than 1/],
    ["an unknown option", ["good.xlsx", "--price"], /--price/],
    ["a folder without workbooks", ["none"], /There is no \.xlsx/],
  ])("%s", async (_, words, sentence) => {
    await mkdir(at("none"), { recursive: true });
    const { code, err } = await review(
      ...words.map((word) => (word.startsWith("--") || /^\d/.test(word) ? word : at(word))),
    );
    await rm(at("none"), { recursive: true });
    expect(code).toBe(2);
    expect(err).toMatch(sentence);
  });

  test("a file that is not there", async () => {
    const { code, out } = await review(at("gone.xlsx"));
    expect(code).toBe(2);
    expect(out).toMatch(/gone\.xlsx: cannot be read\. .*does not exist/);
  });
});

describe("kept with the desk's jobs", () => {
  const keep = (file: string, ...words: string[]) => review(at(file), "--data", at("kept"), ...words);
  const write = async (
    file: string,
    change: (job: ReturnType<typeof mendedGuestHouse>) => void,
  ): Promise<void> => {
    const job = mendedGuestHouse();
    change(job);
    await writeFile(at(file), await writeXlsx(recalculate(layOut(multiRoom, job))));
  };
  const run = (job: ReturnType<typeof mendedGuestHouse>, outlet: string, metres: number): void => {
    job.blocks.rooms!.find((row) => row.outlet === outlet)!.run = metres;
  };

  test("settled in one review, told apart in the next, and nothing of it in the workbook", async () => {
    await write("anna.xlsx", (job) => run(job, "F-04", -14));
    const bytes = await readFile(at("anna.xlsx"));
    const first = await keep("anna.xlsx", "--keep");
    expect(first.code).toBe(1);
    expect(first.out).not.toMatch(/new, |Reviewed before/);
    const settled = await keep("anna.xlsx", "--settle", "rooms!h17=as the customer wants it");
    expect(settled.out).toMatch(/, 1 settled/);
    expect(settled.out).toMatch(/Reviewed before: \d{4}-\d\d-\d\d, anna\.xlsx/);
    expect(settled.out).toMatch(/settled \d{4}-\d\d-\d\d: Rooms!H17: as the customer wants it/);
    expect(await readFile(at("anna.xlsx"))).toEqual(bytes);

    await write("anna r2.xlsx", (job) => {
      run(job, "F-04", -14);
      run(job, "A-03", -12);
      job.fields.site_revision = 2;
    });
    const next = await keep("anna r2.xlsx", "--keep", "--json");
    const { kept, findings } = JSON.parse(next.out) as {
      kept: { now: { state: string }[] };
      findings: { place?: { cell: string } }[];
    };
    const stateOf = (cell: string): string =>
      kept.now[findings.findIndex(({ place }) => place?.cell === cell)]!.state;
    expect(stateOf("H17")).toBe("settled");
    expect(stateOf("H25")).toBe("new");
    expect(next.out).not.toContain('"asked"');
  });

  test.each([
    ["Rooms!H17", /give the cell and why it may stay/],
    ["Rooms!H17=   ", /give the cell and why it may stay/],
    ["H17=why", /give the cell and why it may stay/],
    ["Rooms!ZZ9=why", /Nothing was found at ROOMS!ZZ9/],
    [`Rooms!H17=${"x".repeat(2001)}`, /2001 characters; up to 2000/],
  ])("--settle %s", async (settling, sentence) => {
    await write("anna.xlsx", (job) => run(job, "F-04", -14));
    const { code, err } = await keep("anna.xlsx", "--settle", settling);
    expect([code, err]).toEqual([2, expect.stringMatching(sentence)]);
  });

  test("of several workbooks nothing is settled", async () => {
    const { code, err } = await review(at("many"), "--settle", "Rooms!H17=why");
    expect([code, err]).toEqual([2, expect.stringMatching(/name that one/)]);
  });
});
