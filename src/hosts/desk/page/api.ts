/** The page's calls to the desk's server. */
import type { Book } from "../../../workbooks/book";
import type { CopyKind } from "../../file/copy/copyOf";
import type { Survey } from "../../../workbooks/survey/readSurvey";
import {
  DESK_HEADER,
  OVER,
  type Change,
  type OpenJob,
  type Refusal,
  type Saved,
  type Snapshot,
} from "../protocol";

/** The server's sentence, or ours when it does not answer. */
export class ServerTrouble extends Error {
  constructor(
    sentence: string,
    /** HTTP status; 0 when there was no answer. */
    readonly status: number,
  ) {
    super(sentence);
  }
}

async function ask(url: string, init: RequestInit = {}): Promise<Response> {
  let response: Response;
  try {
    response = await fetch(url, { ...init, headers: { [DESK_HEADER]: "1" } });
  } catch {
    throw new ServerTrouble(
      "the local server does not answer. Start it again with npm start; this page then goes on by itself",
      0,
    );
  }
  if (response.ok) return response;
  const refusal = (await response.json().catch(() => undefined)) as Refusal | undefined;
  throw new ServerTrouble(refusal?.sentence ?? `the server answered ${response.status}`, response.status);
}

/** The answer's shape is the server's promise: both sides come from one build. */
const askJson = async <T>(url: string, init?: RequestInit): Promise<T> =>
  (await (await ask(url, init)).json()) as T;

export const api = {
  job: () => askJson<OpenJob>("/job"),
  putJob: (snapshot: Snapshot) => askJson<Saved>("/job", { method: "PUT", body: JSON.stringify(snapshot) }),
  postChanges: (changes: readonly Change[], keepalive: boolean) =>
    askJson<Saved>("/changes", { method: "POST", body: JSON.stringify(changes), keepalive }),
  openXlsx: (bytes: Blob) => askJson<Book>("/open", { method: "POST", body: bytes }),
  readSurvey: (bytes: Blob, unit: "m" | "ft", writing?: string) =>
    askJson<Survey>(`/survey/${unit}${writing ? `?writing=${encodeURIComponent(writing)}` : ""}`, {
      method: "POST",
      body: bytes,
    }),
  saveXlsx: async (book: Book) => (await ask("/save", { method: "POST", body: JSON.stringify(book) })).blob(),
  copyXlsx: async (book: Book, kind: CopyKind) =>
    (await ask(`/copy/${kind}`, { method: "POST", body: JSON.stringify(book) })).blob(),
  /** @param over what another program has written there meanwhile */
  saveFile: (book: Book, over: boolean) =>
    askJson<Saved>(`/file${over ? `?${OVER}` : ""}`, { method: "PUT", body: JSON.stringify(book) }),
  text: async (url: string) => (await ask(url)).text(),
};
