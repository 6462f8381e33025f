/** Turns what is kept of a job into a model of the grid library. */
import * as library from "@odoo/o-spreadsheet";
import { headOf, type Change, type JobContent } from "../../../jobs/content";
import { DOCUMENT_VERSION, type GridModel } from "../../grid/library";
import { uuid } from "./uuid";

/** What a model sends its changes to, and hears those of others from. */
export interface Transport {
  sendMessage(message: Change): Promise<void>;
  onNewMessage(id: string, listener: (message: Change) => void): void;
  leave(id: string): void;
}

/** For a model that is only looked at. */
export const NOWHERE: Transport = {
  sendMessage: async () => undefined,
  onNewMessage: () => undefined,
  leave: () => undefined,
};

export interface Replayed {
  readonly model: GridModel;
  /** So many of the last changes could not be shown. */
  readonly lost: number;
}

/**
 * @throws Error with a sentence where the document can't be shown at all
 */
export function replayed(content: JobContent, transport: Transport): Replayed {
  const { document, changes } = content;
  if (isNewer((document as { version?: unknown }).version))
    throw new Error(
      "It was made with a newer Rigsheet than this one. Open it with that one; it is kept as it is, and can be exported under Jobs.",
    );
  const whole = modelOf(content, transport);
  if (whole) return { model: whole, lost: 0 };
  // The most that can be shown: a change that can't be takes all after it along.
  let shown = 0;
  for (let most = changes.length; most - shown > 1;) {
    const middle = (shown + most) >> 1;
    if (modelOf({ document, changes: changes.slice(0, middle) }, NOWHERE)) shown = middle;
    else most = middle;
  }
  const model = modelOf({ document, changes: changes.slice(0, shown) }, transport);
  if (model) return { model, lost: changes.length - shown };
  throw new Error(
    "It can't be shown: its content is damaged. It is kept as it is, and can be exported under Jobs.",
  );
}

function modelOf(content: JobContent, transport: Transport): GridModel | undefined {
  try {
    const model = new library.Model(
      content.document,
      {
        // Changes of an earlier visit are replayed only when they come from another client.
        client: { id: uuid(), name: "desk" },
        transportService: transport as never,
      },
      content.changes as never,
    );
    return revisionOf(model) === headOf(content) ? model : undefined;
  } catch {
    return undefined;
  }
}

const revisionOf = (model: GridModel): string =>
  (model as unknown as { session: { getRevisionId(): string } }).session.getRevisionId();

/** Versions are numbers between points, and in earlier years one number. */
function isNewer(version: unknown): boolean {
  if (typeof version !== "string") return false;
  const [theirs, ours] = [version, DOCUMENT_VERSION].map((one) => one.split(".").map(Number));
  for (let part = 0; part < Math.max(theirs!.length, ours!.length); part++) {
    const difference = (theirs![part] ?? 0) - (ours![part] ?? 0);
    if (difference !== 0) return difference > 0;
  }
  return false;
}
