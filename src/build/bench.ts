/**
 * `npm run bench`: how long the work takes, as a ratio to a bare baseline of
 * the same run on the same machine. It prints; it never fails for being slow.
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { allFunctions } from "../functions/all";
import { parseAddress } from "../formula/address";
import type { Matrix } from "../functions/core/cells";
import { readXlsx } from "../hosts/file/readXlsx";
import { writeXlsx } from "../hosts/file/writeXlsx";
import { quietly } from "../hosts/headless/loadLibrary";
import { openModel, recalculate } from "../hosts/headless/recalculate";
import { drawFor } from "../training/drawNumbers";
import { GroupMarking } from "../training/markGroup";
import { marksBook } from "../training/marksBook";
import { trainingSetOf } from "../training/sets/all";
import { traineeSheet } from "../training/traineeSheet";
import type { Book } from "../workbooks/book";
import { layOut } from "../workbooks/layOut";
import { multiRoom } from "../workbooks/multiRoom/definition";
import { guestHouse } from "../workbooks/multiRoom/guestHouse";
import { estimate } from "../workbooks/multiRoom/names";
import { namedColumn, namedValue, placeOfName } from "../workbooks/named";
import { cuttingTimes } from "./benchCutting";
import { distributionTimes } from "./benchDistribution";
import { benchGrid, GRID_WITHOUT, measureWithout } from "./benchGrid";
import { jobTimes, shelfTimes } from "./benchJobs";
import { priceTimes } from "./benchPrices";
import { benchHostile, benchReview } from "./benchReview";
import { scaledJob } from "./scaledJob";
import { simulatedAnswers } from "./simulatedAnswers";

interface Line {
  readonly what: string;
  readonly ms: number;
  readonly baseline: string;
  readonly baselineMs: number;
  readonly budget?: string;
}

/** The bench's own word for its other process. */
const WRITE = "--write-book";
/** Of the bench in a browser: so many outlets, into this file. */
const WRITE_JOB = "--write-job";
const LENGTHS = Array.from({ length: 45 }, (_, index) => String(90 - 2 * index));
const lines: Line[] = [];
const now = (): number => performance.now();

/** The least of a few runs: the one that the machine disturbed least. */
async function timed(work: () => unknown, runs = 3): Promise<number> {
  let least = Infinity;
  for (let run = 0; run < runs; run++) {
    const start = now();
    await work();
    least = Math.min(least, now() - start);
  }
  return least;
}

const column = (rows: number, value: (row: number) => number | string): Matrix =>
  Array.from({ length: rows }, (_, row) => [value(row)]);

async function functions(rows: number): Promise<void> {
  const call = (name: string) => allFunctions.find((one) => one.name === name)!.call;
  const runs = column(rows, (row) => 5 + (row % 60));
  const lengths = Float64Array.from({ length: rows }, (_, row) => 5 + (row % 60));
  let sink = 0;
  const bareLoop = await timed(() => {
    for (const length of lengths) {
      for (const f of [950, 950, 2150, 2150])
        sink += (0.196464 * Math.sqrt(f) + 0.00020693 * f + 0.13583) * length * 0.0328;
    }
  });
  const loss = await timed(() =>
    call("CABLELOSS")([[["series 6"]], runs, [[950, 950, 2150, 2150]], [[-15, 55, -15, 55]]]),
  );
  lines.push({
    what: `CABLELOSS, ${rows} rows × 4 corners`,
    ms: loss,
    baseline: "bare loop of the arithmetic",
    baselineMs: bareLoop,
  });

  const ids = column(rows, (row) => `B${row}`);
  const from = column(rows, (row) => (row === 0 ? "" : `B${(row - 1) >> 1}`));
  const bareTree = await timed(() => {
    const sums = new Float64Array(rows);
    for (let row = 1; row < rows; row++) sums[row] = sums[(row - 1) >> 1]! + lengths[row]!;
    sink += sums[rows - 1]!;
  });
  const tree = await timed(() => call("TREELOSS")([ids, from, runs]));
  lines.push({
    what: `TREELOSS, ${rows} rows`,
    ms: tree,
    baseline: "bare loop over an array",
    baselineMs: bareTree,
  });

  const tuners = column(rows, (row) => 1 + (row % 4));
  const allot = await timed(() => call("ALLOT")([tuners, [[32]]]));
  const bareSort = await timed(() => [...lengths].sort((a, b) => b - a));
  lines.push({
    what: `ALLOT, ${rows} rows`,
    ms: allot,
    baseline: "sorting as many numbers",
    baselineMs: bareSort,
  });
  if (!Number.isFinite(sink)) throw new Error("the baselines did not run");
}

/** Writes in a process of its own, whose memory then tells what writing takes, the book and Node included. */
function writtenApart(computed: Book, runs: number): { ms: number; bytes: Uint8Array; megabytes: number } {
  const folder = mkdtempSync(path.join(tmpdir(), "rigsheet-bench-"));
  try {
    const [book, file] = [path.join(folder, "book.json"), path.join(folder, "job.xlsx")];
    writeFileSync(book, JSON.stringify(computed));
    const { stdout } = spawnSync(process.execPath, [process.argv[1]!, WRITE, book, file, String(runs)], {
      encoding: "utf8",
    });
    return { ...(JSON.parse(stdout) as { ms: number; megabytes: number }), bytes: readFileSync(file) };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** The other process of `writtenApart`. */
async function write([book, file, runs]: string[]): Promise<void> {
  const computed = JSON.parse(readFileSync(book!, "utf8")) as Book;
  const ms = await timed(async () => writeFileSync(file!, await writeXlsx(computed)), Number(runs));
  process.stdout.write(JSON.stringify({ ms, megabytes: process.resourceUsage().maxRSS / 1024 }));
}

/** The first filled cell of a name, as the grid library places it. */
function cellOf(book: Book, getters: ReturnType<typeof openModel>["getters"], { name }: { name: string }) {
  const { sheet, at } = placeOfName(book, name)!;
  const { row, column: col } = parseAddress(at)!;
  return { sheetId: getters.getSheetIdByName(sheet)!, row, col };
}

/**
 * The other process of the bench in a browser: it learns which cell is edited, and two lengths for it with
 * different totals. Cable is bought in reels, so that few lengths make one more or one less.
 */
async function writeJob(outlets: number, file: string): Promise<void> {
  const book = recalculate(layOut(multiRoom, scaledJob(guestHouse, outlets)));
  writeFileSync(file, await writeXlsx(book));
  const { getters, dispatch } = openModel(book);
  const { sheet, at } = placeOfName(book, estimate.rooms.run.name)!;
  const place = cellOf(book, getters, estimate.rooms.run);
  const total = () => getters.getEvaluatedCell(cellOf(book, getters, estimate.quote.total)).value;
  const [first, before] = [getters.getEvaluatedCell(place).value, total()];
  const other = LENGTHS.find((length) => {
    quietly(() => dispatch("UPDATE_CELL", { ...place, content: length }));
    return typeof total() === "number" && total() !== before;
  });
  if (other === undefined) throw new Error("no length changes the total");
  process.stdout.write(JSON.stringify({ sheet, cell: at, lengths: [other, String(first)] }));
}

async function workbook(outlets: number, runs: number): Promise<void> {
  const inputs = scaledJob(guestHouse, outlets);
  const laid = layOut(multiRoom, inputs);
  const json = await timed(() => JSON.parse(JSON.stringify(laid)), runs);
  const against = "the book as JSON and back";
  lines.push({
    what: `lay out, ${outlets} outlets`,
    ms: await timed(() => layOut(multiRoom, inputs), runs),
    baseline: against,
    baselineMs: json,
  });
  lines.push({
    what: `load and compute, ${outlets} outlets`,
    ms: await timed(() => openModel(laid), runs),
    baseline: against,
    baselineMs: json,
  });
  const computed = recalculate(laid);
  if (namedValue(computed, "count_outlets") !== outlets) throw new Error("the job was not computed");
  const model = openModel(laid);
  const run = cellOf(computed, model.getters, estimate.rooms.run);
  const weakest = cellOf(computed, model.getters, estimate.rooms.weakest);
  // An edit to the value that stands there already is refused and costs nothing, so start beyond them all.
  let length = 100;
  const { debug } = console;
  console.debug = () => undefined;
  const edit = await timed(() => {
    model.dispatch("UPDATE_CELL", { ...run, content: String(++length) });
    model.getters.getEvaluatedCell(weakest);
  }, runs);
  console.debug = debug;
  lines.push({
    what: `one edit, ${outlets} outlets`,
    ms: edit,
    baseline: against,
    baselineMs: json,
    budget: outlets > 1000 ? "500 ms with repaint" : "50 ms with repaint",
  });
  const { ms: written, bytes, megabytes } = writtenApart(computed, runs);
  lines.push({
    what: `write .xlsx, ${outlets} outlets, ${(bytes.length / 1024).toFixed(0)} KB, ${megabytes.toFixed(0)} MB`,
    ms: written,
    baseline: against,
    baselineMs: json,
    budget: outlets > 1000 ? "3 s, 500 MB" : undefined,
  });
  lines.push({
    what: `read .xlsx, ${outlets} outlets`,
    ms: await timed(() => readXlsx(bytes), runs),
    baseline: against,
    baselineMs: json,
  });
}

/** The scaled job with four types of room, all but a tenth of the runs left to them; beside it the job row by row. */
async function byTypes(outlets: number): Promise<void> {
  const inputs = scaledJob(guestHouse, outlets);
  const { rooms = [], ...blocks } = inputs.blocks!;
  const types = rooms.slice(0, 4).map(({ receiver, quantity, cable, run, plate, kind }, index) => ({
    name: `type ${index + 1}`,
    ...Object.fromEntries(
      Object.entries({ receiver, quantity, cable, run, plate, kind }).filter(
        (entry): entry is [string, number | string] => entry[1] !== undefined,
      ),
    ),
  }));
  const typed = rooms.map(({ floor, room, outlet, from, run }, index) => ({
    ...Object.fromEntries(
      Object.entries({ floor, room, outlet, from }).filter(
        (entry): entry is [string, number | string] => entry[1] !== undefined,
      ),
    ),
    type: types[index % types.length]!.name,
    ...(index % 10 === 0 && { run: run! }),
  }));
  const laid = layOut(multiRoom, { ...inputs, blocks: { ...blocks, types, rooms: typed } });
  const rowByRow = layOut(multiRoom, inputs);
  const used = namedColumn(recalculate(laid), estimate.rooms.run_used.name);
  if (used.filter((run) => typeof run === "number").length !== outlets)
    throw new Error("a type was not taken");
  lines.push({
    what: `load and compute, ${outlets} outlets of four types`,
    ms: await timed(() => openModel(laid), 1),
    baseline: "the same, row by row",
    baselineMs: await timed(() => openModel(rowByRow), 1),
  });
}

function command(): void {
  const here = path.join(process.argv[1]!, "..", "..");
  const start = (words: string[]): number => {
    const begun = now();
    spawnSync(process.execPath, words, { stdio: "ignore" });
    return now() - begun;
  };
  const node = Math.min(start(["-e", "0"]), start(["-e", "0"]));
  const demonstration = path.join(here, "templates", "multi-room-demonstration.xlsx");
  const price = [path.join(here, "dist", "rigsheet.js"), "price", demonstration];
  lines.push({
    what: "rigsheet price, 24 outlets, Node's start included",
    ms: Math.min(start(price), start(price)),
    baseline: "starting Node",
    baselineMs: node,
    budget: "1 s",
  });
}

/** Every trainee makes one known slip and goes on from there. */
async function marking(trainees: number): Promise<void> {
  const set = trainingSetOf("supply")!;
  const exercises = {
    set,
    seed: 2026,
    trainees: Array.from({ length: trainees }, (_, index) => ({ name: `Trainee ${index}`, occurrence: 1 })),
  };
  const files: Uint8Array[] = [];
  for (const [index, trainee] of exercises.trainees.entries()) {
    const answers = simulatedAnswers(set, drawFor(set, exercises.seed, trainee), index);
    files.push(await writeXlsx(traineeSheet(set, exercises.seed, trainee, answers)));
  }
  let marked = 0;
  const ms = await timed(async () => {
    const marks = new GroupMarking(exercises);
    for (const [index, bytes] of files.entries()) marks.add(`${index}.xlsx`, await readXlsx(bytes));
    const done = marks.done();
    await writeXlsx(marksBook(done));
    marked = done.marked.filter(({ points, outOf }) => points > 0 && points < outOf).length;
  }, 2);
  if (marked !== trainees) throw new Error(`only ${marked} of ${trainees} sheets were marked`);
  lines.push({
    what: `mark ${trainees} sheets, marks written`,
    ms,
    baseline: "just reading the files",
    baselineMs: await timed(async () => {
      for (const bytes of files) await readXlsx(bytes);
    }, 2),
    budget: "20 s",
  });
}

async function jobs(): Promise<void> {
  const { appendMs, bareAppendMs, openMs, bareReadMs } = await jobTimes();
  lines.push({
    what: "a step added to a job's log, on the disk",
    ms: appendMs,
    baseline: "the same bytes to the end of a file, synced",
    baselineMs: bareAppendMs,
  });
  lines.push({
    what: "a job of 12 MB and 1,000 steps opened",
    ms: openMs,
    baseline: "just reading the file",
    baselineMs: bareReadMs,
  });
  const { drawnMs, startMs, listMs, bareStatMs } = await shelfTimes();
  const baseline = "just asking for the size of each file";
  lines.push(
    { what: "2,000 jobs, seen for the first time", ms: drawnMs, baseline, baselineMs: bareStatMs },
    { what: "2,000 jobs, at every later start", ms: startMs, baseline, baselineMs: bareStatMs },
    { what: "the list of 2,000 jobs handed to the page", ms: listMs, baseline, baselineMs: bareStatMs },
  );
}

async function distribution(headUnits: number): Promise<void> {
  const { engineMs, bareMs, outlets } = await distributionTimes(headUnits, timed);
  lines.push({
    what: `a distribution of ${outlets} outlets, all of it`,
    ms: engineMs,
    baseline: "levels, noise and supply on plain arrays",
    baselineMs: bareMs,
    budget: "3 ×",
  });
}

async function cutting(runs: number): Promise<void> {
  const { ms, bareMs } = await cuttingTimes(runs, timed);
  lines.push({
    what: `a cutting plan of ${runs} runs`,
    ms,
    baseline: "putting them in order",
    baselineMs: bareMs,
    budget: runs > 1000 ? "1 s" : "20 ms",
  });
}

async function prices(count: number): Promise<void> {
  const { ms, bareMs, changed } = await priceTimes(count, timed);
  lines.push({
    what: `a price list of ${count} lines read and compared, ${changed} changed`,
    ms,
    baseline: "just parting its cells",
    baselineMs: bareMs,
    budget: "5 s",
  });
}

/** In this order; those that take minutes run only when they are named: `npm run bench -- review`. */
const PARTS: readonly { readonly name: string; readonly run: () => unknown; readonly onlyNamed?: true }[] = [
  { name: "functions", run: () => functions(10_000) },
  { name: "distribution", run: () => distribution(8) },
  { name: "distribution", run: () => distribution(80) },
  { name: "distribution", run: () => distribution(320) },
  { name: "workbook", run: () => workbook(24, 3) },
  { name: "workbook", run: () => workbook(240, 3) },
  { name: "workbook", run: () => workbook(10_000, 1) },
  { name: "types", run: () => byTypes(240) },
  { name: "types", run: () => byTypes(10_000) },
  { name: "cutting", run: () => cutting(240) },
  { name: "cutting", run: () => cutting(10_000) },
  { name: "prices", run: () => prices(50_000) },
  { name: "training", run: () => marking(200) },
  { name: "jobs", run: jobs },
  { name: "command", run: command },
  { name: "review", run: benchReview, onlyNamed: true },
  { name: "hostile", run: benchHostile, onlyNamed: true },
  { name: "grid", run: benchGrid, onlyNamed: true },
];

async function main(): Promise<void> {
  const named = process.argv.slice(2);
  if (named[0] === WRITE) return write(named.slice(1));
  if (named[0] === WRITE_JOB) return writeJob(Number(named[1]), named[2]!);
  if (named[0] === GRID_WITHOUT) return measureWithout(named[1]!, Number(named[2]));
  const unknown = named.filter((one) => !PARTS.some(({ name }) => name === one));
  if (unknown.length > 0) {
    const known = [...new Set(PARTS.map(({ name }) => name))].join(", ");
    process.stderr.write(`There is no part ${unknown.join(", ")}; there are ${known}.\n`);
    process.exitCode = 2;
    return;
  }
  for (const { name, run, onlyNamed } of PARTS)
    if (named.includes(name) || (named.length === 0 && !onlyNamed)) await run();
  const width = Math.max(...lines.map(({ what }) => what.length));
  for (const { what, ms, baseline, baselineMs, budget } of lines) {
    const ratio = (ms / Math.max(baselineMs, 0.01)).toFixed(1);
    process.stdout.write(
      `${what.padEnd(width)} ${ms.toFixed(1).padStart(9)} ms  ${ratio.padStart(8)} × ${baseline} (${baselineMs.toFixed(2)} ms)${budget ? `  budget ${budget}` : ""}\n`,
    );
  }
  process.stdout.write(
    `greatest memory of this run: ${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MB\n`,
  );
}

void main();
