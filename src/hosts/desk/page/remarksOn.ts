/** What is said above the list of jobs where a browser keeps them. */
import type { ShelfEntry } from "../../../jobs/catalogue";
import type { Remark } from "./offline";
import type { OpenJob } from "./openJob";
import { isDue, putOff, reminderOf } from "./reminder";
import { stand } from "./stand";

const RESCUE =
  "This page was opened from a file. What that forbids: no use as an installed program, no link to a single job, and no storage of its own; what this browser keeps of it is a rescue that other pages from files can read or clear. Save each job as a file, or export all, before you close it.";

/** @param changed is called when another should be said */
export function remarksOn(entries: readonly ShelfEntry[], job: OpenJob, changed: () => void): Remark[] {
  if (stand === "server") return [];
  if (job.unkept !== undefined)
    return [
      {
        text: `Nothing is kept here once this window is closed: ${job.unkept}. Save what you make as a file.`,
        actions: [],
      },
    ];
  const remarks: Remark[] = stand === "file" ? [{ text: RESCUE, actions: [] }] : [];
  const reminder = reminderOf(entries);
  const now = Date.now();
  // What may be cleared at any time is always said.
  if (reminder !== undefined && (stand === "file" || isDue(now, store)))
    remarks.push({
      text: reminder,
      actions:
        stand === "file"
          ? []
          : [
              {
                label: "Not today",
                act: () => {
                  putOff(now, store);
                  changed();
                },
              },
            ],
    });
  return remarks;
}

/** One that is refused forgets. */
const store = {
  getItem: (name: string): string | null => {
    try {
      return localStorage.getItem(name);
    } catch {
      return null;
    }
  },
  setItem: (name: string, value: string): void => {
    try {
      localStorage.setItem(name, value);
    } catch {
      // Said again at the next visit.
    }
  },
};
