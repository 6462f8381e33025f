/** What is typed goes to a server that loses requests, loses answers, refuses and hangs: in order, once, and nothing is said that is not so. */
import type { Change, JobDocument } from "../../../src/jobs/content";
import { Autosave, type SavingState } from "../../../src/hosts/desk/page/autosave";
import type { WaitingRoom } from "../../../src/hosts/desk/page/waiting";
import { randomFrom } from "../../review/cleanJobs";
import { tries } from "../../support/tries";

// The desk with a server: which of the two a page is stands in the page, and here is none.
jest.mock("../../../src/hosts/desk/page/stand", () => ({ stand: "server", keeper: "the local server" }));
jest.mock("../../../src/hosts/desk/page/inPageApi", () => ({}));
jest.mock("../../../src/hosts/desk/page/deskKey", () => ({
  deskKey: () => "key",
  isOurs: async () => true,
}));

const ID = "job-00000000-0000-0000-0000-000000000001";
const LINE = { number: "", revision: "", name: "", customer: "", date: "", currency: "", verdict: "" };

type Fault = "none" | "request lost" | "answer lost" | "refused" | "hangs";

/** A server as the protocol says, which shares nothing with ours but the words. */
class Server {
  marks: string[] | undefined;
  fault: () => Fault = () => "none";

  readonly fetch = async (
    url: string,
    { method, body }: { method: string; body: string },
  ): Promise<Response> => {
    const fault = this.fault();
    if (fault === "hangs") await new Promise((resolve) => setTimeout(resolve, 9_000));
    if (fault === "request lost") throw new TypeError("fetch failed");
    if (fault === "refused") return answer(422, { sentence: "The disk is full." });
    const status = this.take(method, url, JSON.parse(body) as never);
    if (fault === "answer lost") throw new TypeError("fetch failed");
    return status === 200
      ? answer(200, { savedAt: "2026-11-28T07:00:00.000Z" })
      : answer(status, { sentence: "no" });
  };

  private take(
    method: string,
    url: string,
    body: { after?: string | null; document?: JobDocument & { marks: string[] }; changes?: Change[] },
  ): number {
    if (method === "PUT") {
      const { after, document, changes = [] } = body;
      if (after === null) this.marks ??= [document!.revisionId, ...changes.map((one) => one.nextRevisionId)];
      else if (this.marks?.at(-1) !== after && this.marks?.at(-1) !== document!.revisionId) return 409;
      return 200;
    }
    expect(url).toBe(`/jobs/${ID}/changes`);
    if (!this.marks) return 404;
    for (const { serverRevisionId, nextRevisionId } of body.changes!) {
      if (this.marks.includes(nextRevisionId)) continue;
      if (this.marks.at(-1) !== serverRevisionId) return 409;
      this.marks.push(nextRevisionId);
    }
    return 200;
  }
}

const answer = (status: number, body: object): Response =>
  ({ ok: status === 200, status, json: async () => body }) as Response;

/** What waits in the browser, which may be full for a while. */
class Room {
  kept: string[] | undefined;
  isFull: () => boolean = () => false;
  readonly room = {
    begin: async (_base: object, changes: readonly Change[]) => {
      if (this.isFull()) return undefined;
      this.kept = changes.map((one) => one.nextRevisionId);
      return {
        add: async (more: readonly Change[]) => {
          if (this.isFull()) return false;
          this.kept!.push(...more.map((one) => one.nextRevisionId));
          return true;
        },
        drop: async () => void (this.kept = undefined),
      };
    },
  } as unknown as WaitingRoom;
}

const RUNS = tries(30, 100, 1000);
const FAULTS: readonly Fault[] = ["none", "request lost", "answer lost", "refused", "hangs"];

beforeEach(() => void jest.useFakeTimers());
afterEach(() => void jest.useRealTimers());

test(`${RUNS} times 25 edits through faults of server and browser`, async () => {
  const random = randomFrom(25);
  let faulty = 0;
  for (let run = 0; run < RUNS; run++) {
    const server = new Server();
    const room = new Room();
    Object.assign(globalThis, { fetch: server.fetch });
    const states: SavingState[] = [];
    const typed: string[] = ["start"];
    const badness = random() * 0.8;
    server.fault = () => {
      const fault = random() < badness ? FAULTS[Math.floor(random() * FAULTS.length)]! : "none";
      if (fault !== "none") faulty++;
      return fault;
    };
    room.isFull = () => random() < badness / 2;
    const document = (): JobDocument => ({ revisionId: typed.at(-1)!, sheets: [] });
    const autosave: Autosave = new Autosave(
      {
        id: ID,
        shelf: "s",
        room: room.room,
        report: (state) => {
          states.push(state);
          // Said to be saved: all that was typed is at the server.
          if (state.kind === "saved") expect(server.marks).toEqual(typed);
          // Said to be kept: it waits in the browser, whole, or is at the server.
          if (state.kind === "failed" && state.kept !== undefined)
            expect([...new Set([...(server.marks ?? []), "start", ...room.kept!])]).toEqual(
              expect.arrayContaining(typed.slice(0, -1)),
            );
        },
        exportDocument: document,
        line: () => LINE,
        edited: () => undefined,
        lost: () => {
          throw new Error("lost, though nobody else has it");
        },
      },
      { document: document(), changes: [] },
      null,
    );
    void autosave.create();
    for (let edit = 0; edit < 25; edit++) {
      const next = `e${edit}`;
      const message = { type: "REMOTE_REVISION", serverRevisionId: typed.at(-1)!, nextRevisionId: next };
      typed.push(next);
      void autosave.transport.sendMessage(message);
      await jest.advanceTimersByTimeAsync(random() < 0.5 ? 0 : random() * 4_000);
    }
    server.fault = () => "none";
    room.isFull = () => false;
    await jest.advanceTimersByTimeAsync(30_000);
    expect(server.marks).toEqual(typed);
    expect([autosave.unsaved, room.kept, states.at(-1)!.kind]).toEqual([false, undefined, "saved"]);
    autosave.stop();
  }
  expect(faulty).toBeGreaterThan(RUNS);
});

test("a server that does not answer at all: after some seconds it is said, and what was typed is kept", async () => {
  const server = new Server();
  const room = new Room();
  Object.assign(globalThis, { fetch: () => new Promise(() => undefined) });
  const states: SavingState[] = [];
  const autosave = new Autosave(
    {
      id: ID,
      shelf: "s",
      room: room.room,
      report: (state) => void states.push(state),
      exportDocument: () => ({ revisionId: "start", sheets: [] }),
      line: () => LINE,
      edited: () => undefined,
      lost: () => undefined,
    },
    { document: { revisionId: "start", sheets: [] }, changes: [] },
    "start",
  );
  void autosave.transport.sendMessage({ type: "x", serverRevisionId: "start", nextRevisionId: "e0" });
  await jest.advanceTimersByTimeAsync(6_000);
  expect(states.at(-1)).toEqual({
    kind: "failed",
    sentence: "the local server has not answered for some seconds",
    kept: 1,
  });
  expect(room.kept).toEqual(["e0"]);
  expect(server.marks).toBeUndefined();
  autosave.stop();
});
