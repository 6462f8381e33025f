/** Three jobs, of which a test harms one: what must be found of the other two. */
import { unzipSync } from "fflate";
import { JOBS_LIST } from "../../../src/hosts/file/jobsFile";
import type { Start } from "../../../src/hosts/desk/protocol";
import { ask, askJson } from "./desk";
import { change, document, edit, held, lineOf, newId, post, put, shelf, type OwnDesk } from "./ownDesk";

export interface ThreeJobs {
  readonly harmed: string;
  readonly sent: string;
  readonly open: string;
}

/** Three jobs, put down by a desk that was killed then: the one that the test harms, one that was sent, one more that is open. */
export async function threeJobs(desk: OwnDesk): Promise<ThreeJobs> {
  const { address, kill } = await desk.start();
  const [harmed, sent, open] = [newId(), newId(), newId()];
  for (const [id, name] of [
    [harmed, "Hill Lane"],
    [sent, "Mill Road"],
    [open, "Kiln Yard"],
  ] as const) {
    await put(address, id, "r1", { mark: name, line: lineOf(name) });
    await edit(address, id, change("r1", "r2"));
  }
  await post(address, `jobs/${sent}/notes`, { state: "sent" });
  await kill();
  return { harmed, sent, open };
}

/** The two that nothing was done to, whole; and the list has all three. */
export async function othersAreWhole(address: string, { harmed, sent, open }: ThreeJobs): Promise<void> {
  expect((await shelf(address)).jobs.map(({ id }) => id).sort()).toEqual([harmed, sent, open].sort());
  for (const [id, mark] of [
    [sent, "Mill Road"],
    [open, "Kiln Yard"],
  ] as const)
    expect(await held(address, id)).toMatchObject({
      document: document("r1", mark),
      changes: [change("r1", "r2")],
    });
  expect(await askJson(address, `jobs/${sent}/revisions/1`)).toMatchObject({
    note: { why: "sent", head: "r2" },
  });
  expect((await askJson<Start>(address, "start")).open).toBe(open);
  expect((await edit(address, open, change("r2", "r3"))).status).toBe(200);
  expect((await put(address, newId(), "n1")).status).toBe(200);
}

/** What is handed out of a job as it is. */
export async function exported(address: string, id: string): Promise<Buffer[]> {
  const answer = await ask(address, `export?job=${id}`);
  expect(answer.status).toBe(200);
  return Object.entries(unzipSync(new Uint8Array(await answer.arrayBuffer()))).flatMap(([name, one]) =>
    name === JOBS_LIST ? [] : [Buffer.from(one)],
  );
}
