/** How safe the jobs are in this browser, and that it is asked to keep them. */
import type { Stand } from "./stand";

/** A browser may ask its user, and takes as long as that takes. */
const PATIENCE_MS = 300;

let asked = false;

/** After the first real work: then a browser that asks its user is asking about something. */
export function askToPersist(): void {
  if (asked) return;
  asked = true;
  void navigator.storage?.persist?.().catch(() => undefined);
}

/** @returns undefined where the browser does not tell */
async function isPersisted(): Promise<boolean | undefined> {
  const later = new Promise<undefined>((resolve) => setTimeout(() => resolve(undefined), PATIENCE_MS));
  return Promise.race([navigator.storage?.persisted?.().catch(() => undefined), later]);
}

/** Follows "All of it lies in". */
export async function placeInWords(
  stand: Exclude<Stand, "server">,
  unkept: string | undefined,
): Promise<string> {
  if (unkept !== undefined) return "this window only, and ends with it: save what is to stay as a file.";
  if (stand === "file")
    return "this browser, where other pages opened from files may read it or clear it: the place of a job is a file. Save it, or export all.";
  const where = `this browser only, for ${location.host}.`;
  return (await isPersisted())
    ? `${where} The browser has promised to keep it; clearing this site's data, or a private window's end, still takes it away. Export all now and then.`
    : `${where} The browser has not promised to keep it: it may throw it away when its disk runs short, when this page was not opened for weeks, or when a private window closes. Export all now and then.`;
}
