/** The real server, killed as by a power cut of its process, at its start and in the middle of its work: again and again in one folder. */
import type { Change, OpenJob } from "../../../src/hosts/desk/protocol";
import { randomFrom } from "../../review/cleanJobs";
import {
  BUILD_MS,
  buildDesk,
  freePort,
  remove,
  startAndKill,
  startDesk,
  temporaryFolder,
  write,
  type Started,
} from "./desk";

/** `npm run prove` gives 300. */
const KILLS = Number(process.env.JOB_KILLS ?? 30);
/** A start takes about half a second. */
const LONGEST_MS = 1_200;

beforeAll(buildDesk, BUILD_MS);

test(
  `${KILLS} kills: every confirmed edit is there after the next start`,
  async () => {
    const folder = temporaryFolder();
    const random = randomFrom(2026);
    /** The marks of the changes, in order, that the server confirmed. */
    let confirmed: string[] = [];
    /** What was sent and not confirmed: it may be there or not. */
    let sent: string[] = [];
    let confirmedIn = 0;
    let next = 0;
    try {
      for (let kill = 0; kill < KILLS; kill++) {
        const port = String(await freePort());
        if (kill % 3 === 2) {
          await startAndKill(["--data", folder, "--port", port], random() * LONGEST_MS);
          continue;
        }
        const server: Started = await startDesk("--data", folder, "--port", port);
        const { address } = server;
        const job = (await (await fetch(new URL("job", address))).json()) as OpenJob;
        const found = marksOf(job);
        expect([confirmed, sent]).toContainEqual(found);
        expect(job.notices.filter((notice) => !/cut short/.test(notice))).toEqual([]);
        confirmed = found;
        let head = job.changes.at(-1)?.nextRevisionId ?? job.document?.revisionId ?? null;
        const stop = setTimeout(() => void server.kill(), random() * 400);
        try {
          for (;;) {
            const id = `r${next++}`;
            const isNew = head === null || random() < 0.08;
            const isSnapshot = !isNew && random() < 0.1;
            sent = isNew ? [id] : isSnapshot ? confirmed : [...confirmed, id];
            const answer =
              isNew || isSnapshot
                ? await write(
                    address,
                    "job",
                    "PUT",
                    JSON.stringify({
                      document: { revisionId: id, sheets: [{ marks: sent, room: "x".repeat(200_000) }] },
                      after: head,
                      replaces: isNew,
                    }),
                  )
                : await write(
                    address,
                    "changes",
                    "POST",
                    JSON.stringify([
                      {
                        type: "REMOTE_REVISION",
                        serverRevisionId: head!,
                        nextRevisionId: id,
                      } satisfies Change,
                    ]),
                  );
            expect(answer.status).toBe(200);
            await answer.json();
            confirmed = sent;
            confirmedIn++;
            head = id;
          }
        } catch (error) {
          // The connection broke: the server is gone.
          if (!/fetch failed|terminated|socket|other side closed/i.test(String((error as Error).message)))
            throw error;
        }
        clearTimeout(stop);
        await server.kill();
      }
      expect(confirmedIn).toBeGreaterThan(KILLS);
    } finally {
      remove(folder);
    }
  },
  KILLS * 10_000,
);

/** A snapshot holds the marks so far; each change is a mark. */
const marksOf = ({ document, changes }: OpenJob): string[] => [
  ...((document?.sheets[0] as { marks: string[] } | undefined)?.marks ?? []),
  ...changes.map(({ nextRevisionId }) => nextRevisionId),
];
