/** New names and moved rows cost nothing and take a line; what is built otherwise is told before and after. */
import { compareJobs, type Comparison } from "../../src/compare/compareJobs";
import { checksMoved } from "../../src/compare/designMoves";
import { movesInWords } from "../../src/compare/movesInWords";
import { renamesIn } from "../../src/compare/renames";
import { inWords } from "../../src/compare/words";
import { recalculate } from "../../src/hosts/headless/recalculate";
import type { CheckLine } from "../../src/workbooks/checkLines";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { mendedGuestHouse, type Job } from "../review/cleanJobs";

const changed = (change: (job: Job) => void): Job => {
  const job = mendedGuestHouse();
  change(job);
  return job;
};
const compared = (change: (job: Job) => void): Comparison =>
  compareJobs(
    multiRoom,
    layOut(multiRoom, mendedGuestHouse()),
    layOut(multiRoom, changed(change)),
    recalculate,
  );
const renames = (change: (job: Job) => void): string[] =>
  renamesIn(multiRoom, mendedGuestHouse(), changed(change)).map(
    ({ block, column, before, after, columns, fields }) =>
      `${block}_${column.key} ${before} > ${after}, ${columns.length + fields.length} places`,
  );
const rowOf = (job: Job, block: string, key: string, name: string) =>
  job.blocks[block]!.find((row) => row[key] === name)!;

test("a device under another name, with all that it feeds, is one line that costs nothing", () => {
  const { changes, steps, differenceCents } = compared((job) => {
    rowOf(job, "branches", "id", "G1").id = "K1";
    for (const row of [...job.blocks.rooms!, ...job.blocks.branches!]) if (row.from === "G1") row.from = "K1";
  });
  expect(changes).toMatchObject([{ kind: "renamed", row: "G1", cells: [{ before: "G1", after: "K1" }] }]);
  expect(steps.map(({ cents }) => cents)).toEqual([0]);
  expect(differenceCents).toBe(0);
});

test("a name that is left behind somewhere is no rename of that place", () => {
  expect(
    renames((job) => {
      rowOf(job, "branches", "id", "G1").id = "K1";
      job.blocks.rooms!.filter(({ from }) => from === "G1")[0]!.from = "K1";
    }),
  ).toEqual(["branches_id G1 > K1, 1 places"]);
});

test("a part that is renamed and dearer is a new name and a new price; another part in its place is neither", () => {
  const { changes } = compared((job) => {
    const part = rowOf(job, "plates", "name", "single outlet");
    part.name = "single outlet, white";
    part.price = 6.9;
    job.fields.site_usual_plate = "single outlet, white";
  });
  expect(changes.map(({ kind, row }) => [kind, row])).toEqual([
    ["renamed", "single outlet"],
    ["changed", "single outlet, white"],
  ]);
  expect(renames((job) => (job.fields.site_usual_plate = "outlet with radio"))).toEqual([]);
});

test("a floor is renamed where all of its rows are; one row of nine is an outlet elsewhere", () => {
  const floor = (job: Job) => job.blocks.rooms!.filter(({ floor: on }) => on === "first");
  expect(renames((job) => floor(job).forEach((row) => (row.floor = "upper")))).toEqual([
    "rooms_floor first > upper, 1 places",
  ]);
  expect(renames((job) => (floor(job)[0]!.floor = "upper"))).toEqual([]);
  // Onto a floor that there was already.
  expect(renames((job) => floor(job).forEach((row) => (row.floor = "ground")))).toEqual([]);
});

test("rows in another order are a note", () => {
  const { changes, notes } = compared((job) => job.blocks.branches!.reverse());
  expect(changes).toEqual([]);
  expect(notes.join()).toContain("Rows moved, which costs nothing by itself: Distribution");
});

test("a run of 20 m more: its outlet's level before and after, and no other", () => {
  const comparison = compared((job) => (rowOf(job, "rooms", "outlet", "G-05").run = 34));
  const { levels, volts, bands, checks } = comparison.moves;
  expect(levels.map(({ outlet }) => outlet)).toEqual(["G-05"]);
  // 0.34 dB a metre at the highest frequency, hot, as an outsider read it off the sheets.
  const { before, after } = levels[0]!.level as { before: number; after: number };
  expect(after - before).toBeCloseTo(-20 * 0.34, 1);
  expect([volts, bands, checks]).toEqual([[], [], []]);
  expect(inWords(comparison)).toContain("Outlets: level at the worst corner:\n  G-05: ");
});

const line = (what: string, found: number, result: string): CheckLine => ({
  what,
  found,
  result,
  where: "Rooms",
});

test("checks: those that fail now stand first, those that fail as before are not told", () => {
  const moved = checksMoved(
    [
      line("a", 0, "ok"),
      line("b", 2, "look"),
      line("c", 3, "look"),
      line("d", 1, "note"),
      line("e", 1, "look"),
    ],
    [
      line("a", 1, "look"),
      line("b", 0, "ok"),
      line("c", 3, "look"),
      line("d", 2, "note"),
      line("e", 4, "look"),
    ],
  );
  expect(moved.map(({ what }) => what)).toEqual(["e", "a", "b"]);
});

test("a long list is cut, with how many are left", () => {
  const levels = Array.from({ length: 15 }, (_, index) => ({
    outlet: `o${index}`,
    level: { before: 60, after: 50 },
    verdict: { before: "ok", after: "ok" },
  }));
  const [list] = movesInWords({ levels, volts: [], bands: [], checks: [] });
  expect(list!.rows).toHaveLength(12);
  expect(list!.more).toBe(3);
});
