import { mkdtemp, readFile, readdir, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { jobInputsOf } from "../../src/workbooks/jobInputsOf";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import type { JobSummary } from "../../src/workbooks/multiRoom/summarise";
import { runCommand } from "../support/fakeConsole";
import { referencePrice, type Job } from "../support/referencePrice";

const survey = path.join(__dirname, "../../templates/guest-house-survey.csv");
let folder: string;
const at = (name: string): string => path.join(folder, name);

beforeEach(async () => {
  folder = await mkdtemp(path.join(tmpdir(), "rigsheet-cli-"));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

describe("rigsheet new", () => {
  test("the demonstration's survey with its parts gives the demonstration's price", async () => {
    const made = await runCommand([
      "new",
      "multi-room",
      "--demonstration",
      "--rooms",
      survey,
      "--out",
      at("job.xlsx"),
    ]);
    expect(made).toMatchObject({ code: 0, err: "", out: expect.stringMatching(/24 outlets$/) as string });
    const priced = await runCommand(["price", at("job.xlsx"), "--json"]);
    expect(priced.code).toBe(1);
    const summary = JSON.parse(priced.out) as JobSummary;
    const reference = referencePrice(guestHouse as unknown as Job);
    expect(Number(summary.total).toFixed(2)).toBe(reference.total);
    // Five of two tuners, eighteen of one, and a spare outlet.
    expect(summary).toMatchObject({ outlets: 24, tuners: 28 });
  });

  test("without a survey: the empty template, whose checks ask for outlets", async () => {
    expect(await runCommand(["new", "multi-room", "--out", at("empty.xlsx")])).toMatchObject({ code: 0 });
    const { code, out } = await runCommand(["price", at("empty.xlsx")]);
    expect(code).toBe(1);
    expect(out).toMatch(/look: There are outlets to price: 0/);
    // Nothing is priced yet, which is no price of 0.
    expect(out).toMatch(/total -/);
  });

  test("an outlet fed from a name that is nowhere is said once, in the workbook's words", async () => {
    await writeFile(
      at("one.csv"),
      "outlet,receiver,fed from,cable,run,wall plate\nX-1,box,S1,indoor drop,10,single outlet\n",
    );
    await runCommand(["new", "multi-room", "--rooms", at("one.csv"), "--out", at("one.xlsx")]);
    const { code, out } = await runCommand(["price", at("one.xlsx")]);
    expect(code).toBe(1);
    expect(out).toMatch(/^1 outlet, 0 tuners, 0 head units$/m);
    expect(out).toMatch(/^ {2}X-1 +"X-1" names the wall plate "single outlet", which has no row\./m);
    expect(out).not.toMatch(/MATCH|dBµV "/);
  });

  test("--base takes all else from another workbook, and lengths in feet are converted", async () => {
    await runCommand(["new", "multi-room", "--demonstration", "--out", at("base.xlsx")]);
    await writeFile(
      at("feet.csv"),
      "Outlet;Receiver;Fed from;Cable;Run (ft);Wall plate\nX-1;receiver;G1;indoor drop;100;single outlet\n",
    );
    expect(
      await runCommand([
        "new",
        "multi-room",
        "--base",
        at("base.xlsx"),
        "--rooms",
        at("feet.csv"),
        "--out",
        at("job.xlsx"),
      ]),
    ).toMatchObject({ code: 0 });
    const inputs = jobInputsOf(multiRoom, await readXlsx(await readFile(at("job.xlsx"))));
    // 100 ft at 0.3048 m (international foot, exact).
    expect(inputs.blocks!.rooms).toEqual([
      {
        outlet: "X-1",
        receiver: "receiver",
        from: "G1",
        cable: "indoor drop",
        run: 30.48,
        plate: "single outlet",
      },
    ]);
    expect(inputs.blocks!.cables).toEqual(guestHouse.blocks!.cables);
  });

  const bad = [
    "floor,room,outlet,receiver,quantity,run (m)",
    "ground,1,A,receiver,1,10",
    "ground,2,B,receiver,1,-3",
    'ground,3,C,receiver,1,"1,234"',
    "ground,4,A,receiver,1,12",
    "ground,5,,receiver,1,12",
    "ground,6,F,receiver,1.5,12",
    "ground,7,G,receiver,1,12,extra",
    "ground,8,H,receiver,1,",
    "ground,9,I,receiver,1,20",
  ].join("\n");

  test("every bad line by its number and reason, and nothing written", async () => {
    await writeFile(at("bad.csv"), bad);
    const { code, err } = await runCommand([
      "new",
      "multi-room",
      "--rooms",
      at("bad.csv"),
      "--out",
      at("job.xlsx"),
    ]);
    expect(code).toBe(1);
    const reasons = Object.fromEntries(
      [...err.matchAll(/, line (\d+)(?: \([^)]*\))?: (.*)/g)].map((found) => [found[1], found[2]]),
    );
    expect(Object.keys(reasons)).toEqual(["3", "4", "5", "6", "7", "8", "9"]);
    expect(reasons["3"]).toMatch(/run: “-3” is -3 m; here it must be from 0\.1 to 2000 m/);
    expect(reasons["4"]).toMatch(/“1,234” can be 1234 or 1\.234/);
    expect(reasons["5"]).toMatch(/"A" stands on line 2/);
    expect(reasons["6"]).toMatch(/outlet is missing/);
    expect(reasons["7"]).toMatch(/how many: “1\.5” is not a whole number/);
    expect(reasons["8"]).toMatch(/7 cells where the head row has 6/);
    expect(reasons["9"]).toMatch(/run is missing/);
    expect(err).toMatch(/Nothing was written: 7 lines are bad/);
    expect(await readdir(folder)).toEqual(["bad.csv"]);
  });

  test("--keep-going writes the good lines and says what it left out", async () => {
    await writeFile(at("bad.csv"), bad);
    const made = await runCommand([
      "new",
      "multi-room",
      "--rooms",
      at("bad.csv"),
      "--keep-going",
      "--out",
      at("job.xlsx"),
    ]);
    expect(made).toMatchObject({
      code: 1,
      out: expect.stringMatching(/2 outlets, 7 bad lines left out/) as string,
    });
    const inputs = jobInputsOf(multiRoom, await readXlsx(await readFile(at("job.xlsx"))));
    expect(inputs.blocks!.rooms!.map(({ outlet }) => outlet)).toEqual(["A", "I"]);
  });

  test.each([
    ["an empty file", "", /empty/],
    ["only a head row", "outlet,receiver,run\n", /no outlet below/],
    ["no head row", "A,radio,10\n", /lacks "outlet", "run"\. It has "A", "radio", "10"/],
    ["a unit that is not known", "outlet,receiver,run (cubits)\nA,receiver,10\n", /unit that is not known/],
  ])("%s", async (_, content, sentence) => {
    await writeFile(at("survey.csv"), content);
    const { code, err } = await runCommand([
      "new",
      "multi-room",
      "--rooms",
      at("survey.csv"),
      "--keep-going",
      "--out",
      at("job.xlsx"),
    ]);
    expect(code).toBe(1);
    expect(err).toMatch(sentence);
    expect(await readdir(folder)).toEqual(["survey.csv"]);
  });

  test("--preview tells what was understood, needs no --out and writes nothing", async () => {
    await writeFile(
      at("survey.csv"),
      "Outlet;Receiver;Run (ft);Colour\nA;receiver;100;red\nB;receiver;;red\n",
    );
    const words = ["new", "multi-room", "--rooms", at("survey.csv"), "--preview"];
    const { code, out } = await runCommand([...words, "--out", at("job.xlsx")]);
    expect(code).toBe(1);
    expect(out).toMatch(/Colour +not used/);
    expect(out).toMatch(/run, in ft, converted to m/);
    expect(out).toMatch(/1 outlet:[^]*30\.48/);
    expect(out).toMatch(/line 3 \(B\): run is missing/);
    expect(await readdir(folder)).toEqual(["survey.csv"]);
    expect(await runCommand(words)).toMatchObject({ code: 1, out });
    await writeFile(at("survey.csv"), "Outlet;Receiver;Run\nA;receiver;100\n");
    expect(await runCommand(words)).toMatchObject({ code: 0 });
  });

  test("a survey in a workbook", async () => {
    await runCommand(["new", "multi-room", "--demonstration", "--out", at("first.xlsx")]);
    const made = await runCommand([
      "new",
      "multi-room",
      "--rooms",
      at("first.xlsx"),
      "--out",
      at("job.xlsx"),
    ]);
    expect(made).toMatchObject({ code: 0, out: expect.stringMatching(/24 outlets$/) as string });
    const inputs = jobInputsOf(multiRoom, await readXlsx(await readFile(at("job.xlsx"))));
    const filled = guestHouse.blocks!.rooms!.map((row) =>
      Object.fromEntries(Object.entries(row).filter(([, value]) => value !== "")),
    );
    expect(inputs.blocks!.rooms).toEqual(filled);
  });

  test("text that looks like a formula stays text", async () => {
    await writeFile(
      at("survey.csv"),
      'outlet,room,receiver,run,note\nA,"=1+1",receiver,10,"@SUM(A1)"\n-B,+49,receiver,10,\n',
    );
    await runCommand(["new", "multi-room", "--rooms", at("survey.csv"), "--out", at("job.xlsx")]);
    const inputs = jobInputsOf(multiRoom, await readXlsx(await readFile(at("job.xlsx"))));
    expect(inputs.blocks!.rooms).toMatchObject([
      { room: "=1+1", note: "@SUM(A1)" },
      { outlet: "-B", room: "+49" },
    ]);
  });

  test.each([
    ["no --out", ["new", "multi-room"], /There is no --out/],
    ["another ending", ["new", "multi-room", "--out", "job.xls"], /must end in \.xlsx/],
    ["an unknown template", ["new", "castle", "--out", "job.xlsx"], /no template "castle"/],
    [
      "a survey that is not there",
      ["new", "multi-room", "--rooms", "nowhere.csv", "--out", "never.xlsx"],
      /does not exist/,
    ],
    ["a folder for a survey", ["new", "multi-room", "--rooms", ".", "--out", "never.xlsx"], /is a folder/],
    ["a base that is no workbook", ["new", "multi-room", "--base", survey, "--out", "never.xlsx"], /./],
    [
      "two bases",
      ["new", "multi-room", "--base", "a.xlsx", "--demonstration", "--out", "never.xlsx"],
      /not both/,
    ],
    ["a preview of nothing", ["new", "multi-room", "--preview"], /Name it: --rooms/],
    [
      "a survey for another template",
      ["new", "single-drop", "--rooms", survey, "--out", "never.xlsx"],
      /Only the template multi-room/,
    ],
    ["a folder that is not there", ["new", "multi-room", "--out", "/nowhere/at/all/job.xlsx"], /nowhere/],
  ])("%s: a sentence and exit 2", async (_, words, sentence) => {
    const { code, err } = await runCommand(words);
    expect(code).toBe(2);
    expect(err).toMatch(sentence);
  });

  test("an existing file is left as it is unless --force is given", async () => {
    await writeFile(at("job.xlsx"), "precious");
    const refused = await runCommand(["new", "multi-room", "--out", at("job.xlsx")]);
    expect(refused).toMatchObject({
      code: 2,
      err: expect.stringMatching(/exists and was left as it is/) as string,
    });
    expect(await readFile(at("job.xlsx"), "utf8")).toBe("precious");
    expect(await runCommand(["new", "multi-room", "--force", "--out", at("job.xlsx")])).toMatchObject({
      code: 0,
    });
  });
});

describe("rigsheet price", () => {
  test("in words: outlets, worst margins, tuners and volts per head unit, checks and the total", async () => {
    const { code, out } = await runCommand([
      "price",
      path.join(__dirname, "../../templates/multi-room-demonstration.xlsx"),
    ]);
    expect(code).toBe(1);
    expect(out).toMatch(/24 outlets, 28 tuners, 3 head units/);
    expect(out).toMatch(/A-07 .* low/);
    expect(out).toMatch(/H3 .*8 of 8 user bands.*10\.5 V is the least {2}low/);
    const { total } = referencePrice(guestHouse as unknown as Job);
    expect(out).toContain(`total ${total}`);
  });

  test.each([
    ["no file", ["price"]],
    ["two files", ["price", "a.xlsx", "b.xlsx"]],
    ["a file that is not there", ["price", "nowhere.xlsx"]],
    ["a file of another kind", ["price", survey]],
  ])("%s: a sentence and exit 2", async (_, words) => {
    const { code, err } = await runCommand(words);
    expect(code).toBe(2);
    expect(err.length).toBeGreaterThan(20);
  });
});
