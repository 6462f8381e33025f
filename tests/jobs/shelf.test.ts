/**
 * The shelf of jobs over a disk on which every call of every operation fails
 * once, each in its turn: what was confirmed is there after the next start, and
 * an operation that was not confirmed has happened wholly or not at all. What
 * must be there is told by a model of its own, which knows no files.
 */
import type { Change } from "../../src/jobs/content";
import { Shelf } from "../../src/jobs/shelf";
import { DiskStorage } from "../../src/hosts/storage/diskStorage";
import { randomFrom } from "../review/cleanJobs";
import { Dead, ModelDisk, type Fault } from "./modelDisk";
import { tries } from "../support/tries";

const FOLDER = "/jobs";

interface Known {
  /** The edits in it, in order, with the mark of its beginning. */
  readonly marks: readonly string[];
  readonly state: string;
  readonly away: boolean;
  /** The marks of each frozen state. */
  readonly revisions: readonly (readonly string[])[];
}
type World = Readonly<Record<string, Known>>;

const idOf = (letter: string): string => `job-00000000-0000-0000-0000-00000000000${letter}`;
const letterOf = (id: string): string => id.at(-1)!;
const headOf = (known: Known): string => known.marks.at(-1)!;

const change = (from: string, to: string): Change => ({
  type: "REMOTE_REVISION",
  serverRevisionId: from,
  nextRevisionId: to,
});
const documentOf = (marks: readonly string[]) => ({
  revisionId: marks.at(-1)!,
  sheets: [{ marks: marks.slice(0, -1) }],
});

const freeze = (known: Known): Known =>
  known.revisions.some((one) => one.at(-1) === headOf(known))
    ? known
    : { ...known, revisions: [...known.revisions, known.marks] };
const withJob = (world: World, letter: string, change: (known: Known) => Known): World => ({
  ...world,
  [letter]: change(world[letter]!),
});

interface Operation {
  readonly name: string;
  /** Whether it can be done at all. */
  readonly needs?: string;
  readonly on: (shelf: Shelf, world: World) => Promise<unknown>;
  readonly means: (world: World) => World;
}

const begin = (letter: string, mark: string): Operation => ({
  name: `new ${letter}`,
  on: (shelf) => shelf.create(idOf(letter), { document: documentOf([mark]), changes: [] }),
  means: (world) => ({ ...world, [letter]: { marks: [mark], state: "draft", away: false, revisions: [] } }),
});
const edit = (letter: string, mark: string): Operation => ({
  name: `edit ${letter} ${mark}`,
  needs: letter,
  on: (shelf, world) => shelf.append(idOf(letter), [change(headOf(world[letter]!), mark)]),
  means: (world) => withJob(world, letter, (known) => ({ ...known, marks: [...known.marks, mark] })),
});
const fold = (letter: string): Operation => ({
  name: `fold ${letter}`,
  needs: letter,
  on: (shelf, world) => shelf.fold(idOf(letter), documentOf(world[letter]!.marks), headOf(world[letter]!)),
  means: (world) => world,
});
const freezing = (letter: string): Operation => ({
  name: `freeze ${letter}`,
  needs: letter,
  on: (shelf) => shelf.freeze(idOf(letter), "tried"),
  means: (world) => withJob(world, letter, freeze),
});
const sent = (letter: string): Operation => ({
  name: `send ${letter}`,
  needs: letter,
  on: (shelf) => shelf.note(idOf(letter), { state: "sent" }),
  means: (world) =>
    withJob(world, letter, (known) => ({
      ...(known.state === "sent" ? known : freeze(known)),
      state: "sent",
    })),
});
const away = (letter: string, isAway: boolean): Operation => ({
  name: `${isAway ? "put away" : "bring back"} ${letter}`,
  needs: letter,
  on: (shelf) => shelf.note(idOf(letter), { away: isAway }),
  means: (world) => withJob(world, letter, (known) => ({ ...known, away: isAway })),
});
const restoring = (letter: string, number: number): Operation => ({
  name: `restore ${letter} ${number}`,
  needs: letter,
  on: (shelf) => shelf.restore(idOf(letter), number),
  means: (world) =>
    withJob(world, letter, (known) => ({ ...freeze(known), marks: known.revisions[number - 1]! })),
});
const copying = (letter: string, to: string, number?: number): Operation => ({
  name: `copy ${letter} to ${to}`,
  needs: letter,
  on: (shelf) => shelf.copy(idOf(letter), idOf(to), number),
  means: (world) => ({
    ...world,
    [to]: {
      marks: number === undefined ? world[letter]!.marks : world[letter]!.revisions[number - 1]!,
      state: "draft",
      away: false,
      revisions: [],
    },
  }),
});
const theirs = (letter: string, mark: string): Operation => ({
  name: `take the file's ${letter}`,
  needs: letter,
  on: (shelf, world) => shelf.takeTheirs(idOf(letter), documentOf([mark]), headOf(world[letter]!), "00"),
  means: (world) => withJob(world, letter, (known) => ({ ...freeze(known), marks: [mark] })),
});
const deleting = (letter: string): Operation => ({
  name: `delete ${letter}`,
  needs: letter,
  on: (shelf) => shelf.delete(idOf(letter)),
  means: ({ [letter]: _, ...rest }) => rest,
});
const START_AGAIN = "start again";

const STEPS: readonly (Operation | typeof START_AGAIN)[] = [
  begin("a", "A"),
  edit("a", "a1"),
  freezing("a"),
  edit("a", "a2"),
  fold("a"),
  edit("a", "a3"),
  sent("a"),
  begin("b", "B"),
  edit("b", "b1"),
  START_AGAIN,
  edit("a", "a4"),
  restoring("a", 1),
  edit("a", "a5"),
  copying("a", "c", 2),
  edit("c", "c1"),
  away("b", true),
  START_AGAIN,
  away("b", false),
  edit("b", "b2"),
  theirs("a", "T"),
  edit("a", "a6"),
  away("b", true),
  deleting("b"),
  edit("c", "c2"),
];

const open = (disk: ModelDisk): Promise<Shelf> => Shelf.open(new DiskStorage(FOLDER, disk.disk));

/** What a shelf shows, read as its user would: every job, every revision of it. */
async function seen(shelf: Shelf): Promise<World> {
  const world: Record<string, Known> = {};
  for (const { id, trouble } of shelf.list()) {
    // One that could not be read for a moment is read when it is asked for.
    expect(trouble?.kept ?? []).toEqual([]);
    const { document, changes, notes } = await shelf.held(id);
    const revisions = [];
    for (const { number } of notes.revisions) revisions.push(marksOf(await shelf.revision(id, number)));
    world[letterOf(id)] = {
      marks: marksOf({ document, changes }),
      state: notes.state,
      away: notes.away,
      revisions,
    };
  }
  return world;
}

const marksOf = ({
  document,
  changes,
}: {
  readonly document: { readonly revisionId: string; readonly sheets: readonly unknown[] };
  readonly changes: readonly Change[];
}): string[] => [
  ...(document.sheets[0] as { marks: string[] }).marks,
  document.revisionId,
  ...changes.map(({ nextRevisionId }) => nextRevisionId),
];

/** What a job may be as well, after a step that was not confirmed; undefined where it may be absent. */
type Maybe = Record<string, (Known | undefined)[]>;

/** An operation of two committed steps (freeze, then put in place) may stop between them: both halves are whole. */
const between = (operation: Operation, known: Known | undefined): Known[] =>
  known && /^(?:restore|take)/.test(operation.name) ? [freeze(known)] : [];

/** The jobs that an operation writes; a copy only reads what it copies, and what is frozen already is not frozen again. */
const touchedBy = ({ name, needs }: Operation, before: World, after: World): string[] =>
  [...new Set([...Object.keys(before), ...Object.keys(after)])].filter(
    (letter) =>
      before[letter] !== after[letter] || (letter === needs && /^(?:fold|send|put away|bring)/.test(name)),
  );

/** @returns the calls of each step; the names of steps at which something was lost */
async function run(
  steps: readonly (Operation | typeof START_AGAIN)[],
  fault: { at: number; kind: Fault } | undefined,
  random: () => number,
): Promise<{ calls: number; perStep: Map<string, number> }> {
  const disk = new ModelDisk(FOLDER);
  disk.fault = fault;
  const perStep = new Map<string, number>();
  let confirmed: World = {};
  let maybe: Maybe = {};
  let shelf = await open(disk).catch(() => undefined);
  for (const step of steps) {
    const before = disk.calls;
    try {
      if (!shelf || step === START_AGAIN) {
        shelf = await open(disk);
        confirmed = await settled(shelf, confirmed, maybe, String(step));
        maybe = {};
      }
      if (step === START_AGAIN) continue;
      if (step.needs !== undefined && !confirmed[step.needs]) continue;
      if (/^restore|^copy/.test(step.name) && (confirmed[step.needs!]?.revisions.length ?? 0) < 2) continue;
      const wanted = step.means(confirmed);
      const touched = touchedBy(step, confirmed, wanted);
      for (const letter of touched)
        maybe[letter] = [...(maybe[letter] ?? []), wanted[letter], ...between(step, confirmed[letter])];
      await step.on(shelf, confirmed);
      confirmed = wanted;
      for (const letter of touched) delete maybe[letter];
    } catch (error) {
      if (isDead(error)) break;
      if ((error as Error).constructor.name === "JestAssertionError") throw error;
      if (step === START_AGAIN) shelf = undefined;
      // Not confirmed, and the program goes on: what it then shows is what it has.
      else if (shelf) confirmed = await settled(shelf, confirmed, maybe, step.name);
    } finally {
      const name = step === START_AGAIN ? step : step.name.replace(/ .$| . .*$/, "");
      perStep.set(name, (perStep.get(name) ?? 0) + disk.calls - before);
    }
  }
  for (const found of disk.after(random, 4)) await settled(await open(found), confirmed, maybe, "the end");
  return { calls: disk.calls, perStep };
}

const isDead = (error: unknown): boolean => error instanceof Dead || (error as Error).cause instanceof Dead;

async function settled(shelf: Shelf, confirmed: World, maybe: Maybe, at: string): Promise<World> {
  const found = await seen(shelf);
  for (const letter of new Set([...Object.keys(found), ...Object.keys(confirmed), ...Object.keys(maybe)])) {
    const may = [confirmed[letter], ...(maybe[letter] ?? [])].map((one) => JSON.stringify(one));
    if (!may.includes(JSON.stringify(found[letter])))
      expect({ at, letter, found: found[letter] }).toEqual({ at, letter, found: confirmed[letter] });
  }
  return found;
}

test("without a fault every operation does what the model says", async () => {
  const { perStep } = await run(STEPS, undefined, randomFrom(1));
  // So many file calls, each of which fails once below.
  for (const [name, calls] of perStep) expect([name, calls > 0]).toEqual([name, true]);
});

test.each<Fault>(["dies", "is full", "fails", "writes half"])(
  "every file call of every operation %s once: nothing confirmed is lost, nothing is half",
  async (kind) => {
    const random = randomFrom(13);
    const { calls } = await run(STEPS, undefined, random);
    for (let at = 0; at < calls; at++) await run(STEPS, { at, kind }, random);
  },
  300_000,
);

const RUNS = tries(30, 100, 1000);
test(
  `${RUNS} runs of operations in any order, with a fault anywhere`,
  async () => {
    const random = randomFrom(2026);
    const pick = <T>(from: readonly T[]): T => from[Math.floor(random() * from.length)]!;
    for (let time = 0; time < RUNS; time++) {
      let next = 0;
      const steps = Array.from({ length: 25 }, (): Operation | typeof START_AGAIN => {
        const letter = pick(["a", "b"]);
        return pick([
          () => edit(letter, `${letter}${next++}`),
          () => edit(letter, `${letter}${next++}`),
          () => fold(letter),
          () => freezing(letter),
          () => sent(letter),
          () => away(letter, random() < 0.5),
          () => restoring(letter, 1),
          () => theirs(letter, `${letter}T${next++}`),
          () => START_AGAIN as typeof START_AGAIN,
        ])();
      });
      const script = [begin("a", "A"), begin("b", "B"), ...steps];
      const { calls } = await run(script, undefined, random);
      const kind = pick<Fault>(["dies", "is full", "fails", "writes half"]);
      await run(script, { at: Math.floor(random() * calls), kind }, random);
    }
  },
  RUNS * 3_000,
);

test("a damaged job's frozen states can still be looked at, copied and exported", async () => {
  const disk = new ModelDisk(FOLDER);
  const before = await open(disk);
  await before.create(idOf("a"), { document: documentOf(["A"]), changes: [] });
  await before.freeze(idOf("a"), "sent");
  const log = disk.paths.find((one) => one.endsWith(`${idOf("a")}.1.log`))!;
  disk.put(
    log,
    disk.file(log)!.map((byte, index) => (index === 60 ? byte ^ 1 : byte)),
  );
  const shelf = await open(disk);
  // The list needs no job's content; a damage of the same length is seen when the job is opened.
  await expect(shelf.held(idOf("a"))).rejects.toThrow(/its file is damaged/);
  expect(shelf.list()).toMatchObject([
    { id: idOf("a"), trouble: { kept: [expect.stringContaining("damaged/")] } },
  ]);
  expect(marksOf(await shelf.revision(idOf("a"), 1))).toEqual(["A"]);
  await shelf.copy(idOf("a"), idOf("b"), 1);
  expect(marksOf(await shelf.held(idOf("b")))).toEqual(["A"]);
  expect(
    (await shelf.carried(idOf("a"))).parts.map(({ name }) => name.replace(/\..*|-[^-]*$/, "")),
  ).toHaveLength(2);
});

test("a new job whose answer was lost, sent again with what was typed since", async () => {
  const shelf = await open(new ModelDisk(FOLDER));
  const content = { document: documentOf(["A"]), changes: [] };
  await shelf.create(idOf("a"), content);
  await shelf.create(idOf("a"), { ...content, changes: [change("A", "a1")] });
  expect(marksOf(await shelf.held(idOf("a")))).toEqual(["A", "a1"]);
  await expect(shelf.create(idOf("a"), { document: documentOf(["B"]), changes: [] })).rejects.toThrow();
});
