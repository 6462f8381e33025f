/** The firm's standards among the jobs: those of the latest date first, for that is the firm's at a time. */
import { HostTrouble, type StandardsHere } from "../../../pane/host";
import { firmsStandards } from "../../../standards/firmsStandards";
import type { JobInputs } from "../../../workbooks/definition";
import { labelInWords } from "../../../workbooks/jobLabel";
import { api } from "./api";
import { bookOf } from "./comparing";

/** Standards that are put away are the firm's no more. */
export async function standardsHere(): Promise<StandardsHere[]> {
  const { jobs } = await api.jobs();
  return jobs
    .filter(({ line, away, trouble }) => line?.standards && !away && !trouble)
    .sort((a, b) => `${b.line!.date} ${b.savedAt}`.localeCompare(`${a.line!.date} ${a.savedAt}`))
    .map(({ id, line }) => ({
      label: `${labelInWords(line!)}${line!.date ? `, ${line!.date}` : ""}`,
      read: async () => bookOf(await api.held(id)),
    }));
}

/** @throws HostTrouble where they can't be used */
export async function inputsOfFirm({ label, read }: StandardsHere): Promise<JobInputs> {
  const found = firmsStandards(await read(), label);
  if (typeof found === "string") throw new HostTrouble(found);
  return found.inputs;
}
