/** The page's calls to the desk's server. */
import type { ShelfEntry } from "../../../jobs/catalogue";
import type { BringInReport } from "../../../jobs/broughtInWords";
import type { Change, RevisionNote } from "../../../jobs/content";
import type { AskedReview, Settling } from "../../../jobs/reviews";
import type { KeptReview } from "../../../review/again/keptReview";
import type { HeldJob } from "../../../jobs/shelf";
import type { Settled } from "../../../review/again/knownAgain";
import type { Book } from "../../../workbooks/book";
import type { ImportedTable } from "../../../workbooks/imported/table";
import type { CopyKind } from "../../file/copy/copyOf";
import {
  DESK_HEADER,
  KEY_HEADER,
  LEFT,
  OVER,
  PAGE_HEADER,
  type Changes,
  type Notes,
  type OpenedJob,
  type Refusal,
  type Saved,
  type ShelfList,
  type Snapshot,
  type Start,
  type TakeTheirs,
  type Theirs,
} from "../protocol";
import { deskKey, isOurs } from "./deskKey";
import { ServerTrouble } from "./deskTrouble";
import { thisPage } from "./thisPage";

/** What was sent may have gone nowhere: who answers now is looked at before anything is said to it. */
let isUnsure = false;

async function ask(url: string, init: RequestInit = {}): Promise<Response> {
  let response: Response;
  try {
    if (isUnsure && !(await isOurs())) throw new ServerTrouble(STRANGER, 0);
    response = await fetch(url, {
      ...init,
      headers: { [DESK_HEADER]: "1", [KEY_HEADER]: deskKey(), [PAGE_HEADER]: thisPage },
    });
    isUnsure = false;
  } catch (error) {
    isUnsure = true;
    if (error instanceof ServerTrouble) throw error;
    throw new ServerTrouble(
      "the local server does not answer. Start it again (npm start, or rigsheet desk); this page then goes on by itself",
      0,
    );
  }
  if (response.ok) return response;
  const refusal = (await response.json().catch(() => undefined)) as Refusal | undefined;
  throw new ServerTrouble(refusal?.sentence ?? `the server answered ${response.status}`, response.status);
}

const STRANGER =
  "another program answers at the address of this desk, and is told nothing. End that program, and start Rigsheet again";

/** The answer's shape is the server's promise: both sides come from one build. */
const askJson = async <T>(url: string, init?: RequestInit): Promise<T> =>
  (await (await ask(url, init)).json()) as T;

const sent = (method: string, body: unknown): RequestInit => ({ method, body: JSON.stringify(body) });

export const serverApi = {
  /** @param isNamed the page's address names a job: the file given at the start is none of its business */
  start: (isNamed: boolean) => askJson<Start>(`/start${isNamed ? "?named" : ""}`),
  jobs: () => askJson<ShelfList>("/jobs"),
  openJob: (id: string) => askJson<OpenedJob>(`/jobs/${id}`),
  /** The page is closed. */
  left: () => askJson<object>(`/${LEFT}`, { method: "POST", keepalive: true }),
  /** Without making it the one that is open. */
  held: (id: string) => askJson<HeldJob>(`/jobs/${id}?look`),
  putJob: (id: string, snapshot: Snapshot) => askJson<Saved>(`/jobs/${id}`, sent("PUT", snapshot)),
  deleteJob: (id: string) => askJson<object>(`/jobs/${id}`, { method: "DELETE" }),
  postChanges: (id: string, changes: Changes, keepalive: boolean) =>
    askJson<Saved>(`/jobs/${id}/changes`, { ...sent("POST", changes), keepalive }),
  /** @returns null where the job did not go through that revision lately */
  changesSince: async (id: string, revision: string) =>
    (
      await askJson<{ changes: readonly Change[] | null }>(
        `/jobs/${id}/changes?after=${encodeURIComponent(revision)}`,
      )
    ).changes,
  noteJob: (id: string, notes: Notes) => askJson<ShelfEntry>(`/jobs/${id}/notes`, sent("POST", notes)),
  freeze: (id: string, why: string) => askJson<RevisionNote>(`/jobs/${id}/revisions`, sent("POST", { why })),
  revision: (id: string, number: number) => askJson<HeldJob>(`/jobs/${id}/revisions/${number}`),
  restore: (id: string, number: number) =>
    askJson<HeldJob>(`/jobs/${id}/revisions/${number}/restore`, sent("POST", {})),
  /** @param to the new job's id */
  copyJob: (id: string, to: string, revision?: number) =>
    askJson<{ id: string }>(
      `/jobs/${id}/copies/${to}${revision === undefined ? "" : `?revision=${revision}`}`,
      sent("POST", {}),
    ),
  /**
   * Jobs in one file, readable or not, with all that belongs to them.
   * @param ids absent for all
   */
  exportJobs: async (ids: readonly string[] = []) =>
    (await ask(`/export?${ids.map((id) => `job=${id}`).join("&")}`)).blob(),
  /** Brings in the jobs of such a file. */
  bringIn: (file: Blob) => askJson<BringInReport>("/import", { method: "POST", body: file }),
  /** Keeps what a review found, and tells what of it was there before. */
  review: (asked: AskedReview) => askJson<KeptReview>("/reviews", sent("POST", asked)),
  /** @returns null where it is settled no more */
  settle: async (settling: Settling) =>
    (await askJson<{ settled: Settled | null }>("/reviews/settled", sent("POST", settling))).settled,
  theirs: (id: string) => askJson<Theirs>(`/jobs/${id}/file`),
  takeTheirs: (id: string, theirs: TakeTheirs) => askJson<Saved>(`/jobs/${id}/theirs`, sent("POST", theirs)),
  /**
   * @param after the revision of the job that the book shows
   * @param over what another program has written there meanwhile
   */
  saveFile: (id: string, book: Book, after: string, over: boolean) =>
    askJson<Saved>(
      `/jobs/${id}/file?after=${encodeURIComponent(after)}${over ? `&${OVER}` : ""}`,
      sent("PUT", book),
    ),
  openXlsx: (bytes: Blob) => askJson<Book>("/open", { method: "POST", body: bytes }),
  /** With what the file says beside its cells. */
  reviewXlsx: (bytes: Blob) => askJson<Book>("/open-for-review", { method: "POST", body: bytes }),
  /** Of a survey, or a price list. */
  readTables: (bytes: Blob) => askJson<readonly ImportedTable[]>("/tables", { method: "POST", body: bytes }),
  saveXlsx: async (book: Book) => (await ask("/save", sent("POST", book))).blob(),
  copyXlsx: async (book: Book, kind: CopyKind) => (await ask(`/copy/${kind}`, sent("POST", book))).blob(),
  /** The grid library's own, in XML. */
  gridTemplates: async () => (await ask("/library/o_spreadsheet.xml")).text(),
};
