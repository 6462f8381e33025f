/** Reviews kept with the jobs of the desk, and findings settled, for the command. */
import path from "node:path";
import { withJobsOf } from "../hosts/desk/server/jobsOfFolder";
import { usualDataFolder } from "../hosts/desk/server/options";
import { makeOwnFolder } from "../hosts/storage/ownFolder";
import type { Again } from "../review/again/knownAgain";
import { afterSettling } from "../review/again/told";
import { UsageTrouble, type Console } from "./console";
import type { ReviewedFile } from "./reviewFile";

/** A finding that may stay. */
export interface SettledAt {
  readonly at: string;
  readonly reason: string;
}

/**
 * @param text as `Rooms!H17=measured, the wing is long`
 * @throws UsageTrouble with a sentence
 */
export function settlingIn(text: string): SettledAt {
  const [, at, reason = ""] = /^(.+?![A-Za-z]{1,3}\d{1,7})=(.*)$/s.exec(text) ?? [];
  if (at === undefined || reason.trim() === "")
    throw new UsageTrouble(
      `--settle is "${text}"; give the cell and why it may stay, such as --settle "Rooms!H17=measured, the wing is long"`,
    );
  return { at: at.toLowerCase(), reason };
}

/**
 * @param data the desk's folder; the usual one where it is not named
 * @returns each with what was there before
 */
export async function keptReviews(
  reviewed: readonly ReviewedFile[],
  settlings: readonly SettledAt[],
  data: string | undefined,
  console: Console,
): Promise<ReviewedFile[]> {
  const folder = path.resolve(data ?? usualDataFolder());
  await makeOwnFolder(folder);
  return await withJobsOf(folder, console.err, async (jobs) => {
    const told: ReviewedFile[] = [];
    for (const one of reviewed) {
      if (!one.asked) {
        told.push(one);
        continue;
      }
      const kept = await jobs.review(one.asked);
      const now: Again[] = [...kept.now];
      for (const { at, reason } of settlings) {
        const index = one.findings.findIndex(
          ({ place }) => place && `${place.sheet}!${place.cell}`.toLowerCase() === at,
        );
        const found = now[index];
        if (!found)
          throw new UsageTrouble(
            `Nothing was found at ${at.toUpperCase()} that could be settled; all else is kept.`,
          );
        const settled = await jobs.settle({ id: kept.id, key: found.key, reason });
        now[index] = afterSettling(found, settled);
      }
      told.push({ ...one, kept: { ...kept, now } });
    }
    return told;
  });
}
