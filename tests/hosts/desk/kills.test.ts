/** The real server, killed as by a power cut of its process, at its start and in the middle of its work: again and again in one folder of several jobs. */
import type { JobState } from "../../../src/jobs/content";
import type { HeldJob } from "../../../src/jobs/shelf";
import type { ShelfList } from "../../../src/hosts/desk/protocol";
import { randomFrom } from "../../review/cleanJobs";
import {
  askJson,
  BUILD_MS,
  buildDesk,
  freePort,
  remove,
  startAndKill,
  startDesk,
  temporaryFolder,
  write,
} from "./desk";
import { newId } from "./ownDesk";
import { tries } from "../../support/tries";

/** `npm run prove` gives 300. */
const KILLS = tries(15, 30, 300);
/** A start takes about half a second. */
const LONGEST_MS = 1_200;
const MOST_JOBS = 8;
/** As much as a small workbook, so that a write takes a while. */
const ROOM = "x".repeat(100_000);
const STATES: readonly JobState[] = ["draft", "checked", "sent", "accepted", "done"];

/** A job as it must be found: its content by the marks that were made in it, in order. */
interface Kept {
  readonly marks: readonly string[];
  readonly state: JobState;
  readonly away: boolean;
  /** Of each frozen state, the marks. */
  readonly revisions: readonly (readonly string[])[];
}
type Jobs = ReadonlyMap<string, Kept>;

/** A step with what may be found where its answer never came: nothing of it, all of it, or what it does first. */
interface Step {
  readonly kind: string;
  readonly id: string;
  readonly after: Kept | undefined;
  /** Each of these is whole, and all of its job's edits are in it. */
  readonly between?: Kept;
  readonly send: (address: string) => Promise<Response>;
}

const headOf = ({ marks }: Kept): string => marks.at(-1)!;
const frozen = (job: Kept): Kept =>
  job.revisions.some((one) => one.at(-1) === headOf(job))
    ? job
    : { ...job, revisions: [...job.revisions, job.marks] };

class Mix {
  private next = 0;

  constructor(private readonly random: () => number) {}

  private one<T>(of: readonly T[]): T {
    return of[Math.floor(this.random() * of.length)]!;
  }

  step(jobs: Jobs): Step {
    const mark = `r${this.next++}`;
    if (jobs.size === 0 || (jobs.size < MOST_JOBS && this.random() < 0.06)) {
      const id = newId();
      const after: Kept = { marks: [mark], state: "draft", away: false, revisions: [] };
      return { kind: "new", id, after, send: sends(`jobs/${id}`, "PUT", whole(after, null)) };
    }
    const [id, job] = this.one([...jobs]);
    const luck = this.random();
    const at = `jobs/${id}`;
    if (luck < 0.5) return edits(id, job, mark);
    if (luck < 0.6) {
      const after = { ...job, marks: [...job.marks, mark] };
      return { kind: "fold", id, after, send: sends(at, "PUT", whole(after, headOf(job))) };
    }
    if (luck < 0.7)
      return {
        kind: "freeze",
        id,
        after: frozen(job),
        send: sends(`${at}/revisions`, "POST", { why: mark }),
      };
    if (luck < 0.8) {
      const state = this.one(STATES);
      const isFrozen = state !== job.state && (state === "sent" || state === "accepted");
      const after = { ...(isFrozen ? frozen(job) : job), state };
      return { kind: "state", id, after, send: sends(`${at}/notes`, "POST", { state }) };
    }
    if (luck < 0.88) {
      const away = !job.away;
      return { kind: "away", id, after: { ...job, away }, send: sends(`${at}/notes`, "POST", { away }) };
    }
    if (luck < 0.95 && job.revisions.length > 0) {
      const index = Math.floor(this.random() * job.revisions.length);
      const between = frozen(job);
      const after = { ...between, marks: job.revisions[index]! };
      return {
        kind: "restore",
        id,
        after,
        between,
        send: sends(`${at}/revisions/${index + 1}/restore`, "POST", {}),
      };
    }
    if (luck < 0.98 && jobs.size < MOST_JOBS) {
      const to = newId();
      const after: Kept = { marks: job.marks, state: "draft", away: false, revisions: [] };
      return { kind: "copy", id: to, after, send: sends(`${at}/copies/${to}`, "POST", {}) };
    }
    if (job.away && jobs.size > 2)
      return { kind: "delete", id, after: undefined, send: sends(at, "DELETE", {}) };
    return edits(id, job, mark);
  }
}

const sends =
  (url: string, method: string, body: unknown) =>
  (address: string): Promise<Response> =>
    write(address, url, method, JSON.stringify(body));

/** A document holds the marks so far; each change is a mark. */
const whole = (job: Kept, after: string | null) => ({
  document: { revisionId: headOf(job), sheets: [{ marks: job.marks, room: ROOM }] },
  after,
});

const edits = (id: string, job: Kept, mark: string): Step => ({
  kind: "edit",
  id,
  after: { ...job, marks: [...job.marks, mark] },
  send: sends(`jobs/${id}/changes`, "POST", {
    changes: [{ type: "REMOTE_REVISION", serverRevisionId: headOf(job), nextRevisionId: mark }],
  }),
});

const marksOf = ({ document, changes }: Pick<HeldJob, "document" | "changes">): string[] => [
  ...(document.sheets[0] as { marks: string[] }).marks,
  ...changes.map(({ nextRevisionId }) => nextRevisionId),
];

/** Everything that a desk has, read through what it answers. */
async function found(address: string): Promise<{ jobs: Map<string, Kept>; notices: string[] }> {
  const first = await askJson<ShelfList>(address, "jobs");
  const jobs = new Map<string, Kept>();
  for (const { id, trouble, state, away, revisions } of first.jobs) {
    expect(trouble).toBeUndefined();
    const job = await askJson<HeldJob>(address, `jobs/${id}?look`);
    // The list and the job tell the same.
    expect(job.notes).toMatchObject({ state, away, revisions });
    const all: string[][] = [];
    for (const { number } of revisions) {
      expect(number).toBe(all.length + 1);
      all.push(marksOf(await askJson<HeldJob>(address, `jobs/${id}/revisions/${number}`)));
    }
    jobs.set(id, { marks: marksOf(job), state, away, revisions: all });
  }
  return { jobs, notices: [...first.notices, ...(await askJson<ShelfList>(address, "jobs")).notices] };
}

beforeAll(buildDesk, BUILD_MS);

test(
  `${KILLS} kills: every confirmed thing of every job is there after the next start, and nothing half`,
  async () => {
    const folder = temporaryFolder();
    const random = randomFrom(2026);
    const mix = new Mix(random);
    const confirmed = new Map<string, Kept>();
    /** What was sent and not confirmed. */
    let open: Step | undefined;
    const counts: Record<string, number> = {};
    let inTheMiddle = 0;
    try {
      for (let kill = 0; kill < KILLS; kill++) {
        const port = String(await freePort());
        if (kill % 3 === 2) {
          await startAndKill(["--data", folder, "--port", port], random() * LONGEST_MS);
          continue;
        }
        const server = await startDesk("--data", folder, "--port", port);
        const { address } = server;
        const { jobs, notices } = await found(address);
        expect(notices.filter((notice) => !/cut short/.test(notice))).toEqual([]);
        for (const id of new Set([...confirmed.keys(), ...jobs.keys(), ...(open ? [open.id] : [])])) {
          const ways = [confirmed.get(id)];
          if (open?.id === id) ways.push(open.after, ...(open.between ? [open.between] : []));
          const now = jobs.get(id);
          expect(ways).toContainEqual(now);
          if (now) confirmed.set(id, now);
          else confirmed.delete(id);
        }
        open = undefined;
        const stop = setTimeout(() => void server.kill(), random() * 400);
        try {
          for (;;) {
            const step = mix.step(confirmed);
            open = step;
            const answer = await step.send(address);
            const told = await answer.text();
            expect([step.kind, answer.status, answer.ok ? "" : told]).toEqual([step.kind, 200, ""]);
            if (step.after) confirmed.set(step.id, step.after);
            else confirmed.delete(step.id);
            open = undefined;
            counts[step.kind] = (counts[step.kind] ?? 0) + 1;
          }
        } catch (error) {
          // The connection broke: the server is gone.
          if (!/fetch failed|terminated|socket|other side closed/i.test(String((error as Error).message)))
            throw error;
          if (open) inTheMiddle++;
        }
        clearTimeout(stop);
        await server.kill();
      }
      console.info(
        `${KILLS} kills, ${inTheMiddle} with a step under way; confirmed: ${JSON.stringify(counts)}`,
      );
      expect(Object.values(counts).reduce((sum, count) => sum + count, 0)).toBeGreaterThan(KILLS);
      // With fewer kills than usual a rare step may not come.
      if (KILLS >= 30)
        expect(Object.keys(counts).sort()).toEqual([
          "away",
          "copy",
          "delete",
          "edit",
          "fold",
          "freeze",
          "new",
          "restore",
          "state",
        ]);
    } finally {
      remove(folder);
    }
  },
  KILLS * 15_000,
);
