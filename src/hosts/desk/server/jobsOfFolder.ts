/** The jobs of a data folder for a command: by the desk that has them, where one runs, else as their owner. */
import type { BringInReport } from "../../../jobs/broughtInWords";
import type { AskedReview, Settling } from "../../../jobs/reviews";
import type { KeptReview } from "../../../review/again/keptReview";
import type { Settled } from "../../../review/again/knownAgain";
import { Refusal as JobRefusal } from "../../../jobs/refusal";
import { FileTrouble } from "../../file/fileTrouble";
import { bringIn, exportOf } from "../../file/jobsArchive";
import { DESK_HEADER, KEY, KEY_HEADER, type Refusal } from "../protocol";
import { openShelf, ownerOf, releaseAtTheEnd } from "./ownedShelf";

export interface JobsOfFolder {
  export(): Promise<Uint8Array>;
  bringIn(file: Uint8Array): Promise<BringInReport>;
  review(asked: AskedReview): Promise<KeptReview>;
  settle(settling: Settling): Promise<Settled | undefined>;
}

/**
 * @param data the folder, there already
 * @param say takes what the user is told while it waits
 * @throws FileTrouble with a sentence where they can't be had
 */
export async function withJobsOf<T>(
  data: string,
  say: (line: string) => void,
  work: (jobs: JobsOfFolder) => Promise<T>,
): Promise<T> {
  const owner = await ownerOf(data, say);
  if ("address" in owner) return work(jobsAt(owner.address));
  releaseAtTheEnd(owner);
  try {
    const shelf = await openShelf(data, owner);
    for (const notice of shelf.notices.splice(0)) say(notice);
    return await work({
      export: () => exportOf(shelf),
      bringIn: (file) => bringIn(shelf, file),
      review: (asked) => shelf.review(asked),
      settle: (settling) => shelf.settle(settling),
    });
  } catch (error) {
    throw error instanceof JobRefusal ? new FileTrouble(error.message, { cause: error }) : error;
  } finally {
    owner.release();
  }
}

function jobsAt(address: string): JobsOfFolder {
  const headers = { [DESK_HEADER]: "1", [KEY_HEADER]: new URL(address).searchParams.get(KEY) ?? "" };
  const ask = async (url: string, init: RequestInit = {}): Promise<Response> => {
    const answer = await fetch(new URL(url, address), { ...init, headers }).catch((error: unknown) => {
      throw new FileTrouble("The desk that has these jobs does not answer. Try again, or end it first.", {
        cause: error,
      });
    });
    if (!answer.ok) throw new FileTrouble(((await answer.json()) as Refusal).sentence);
    return answer;
  };
  const askJson = async <T>(url: string, body: unknown): Promise<T> =>
    (await (await ask(url, { method: "POST", body: JSON.stringify(body) })).json()) as T;
  return {
    review: (asked) => askJson("/reviews", asked),
    settle: async (settling) =>
      (await askJson<{ settled: Settled | null }>("/reviews/settled", settling)).settled ?? undefined,
    export: async () => new Uint8Array(await (await ask("/export")).arrayBuffer()),
    bringIn: async (file) =>
      (await (
        await ask("/import", { method: "POST", body: file as Uint8Array<ArrayBuffer> })
      ).json()) as BringInReport,
  };
}
