import { existsSync } from "node:fs";
import { stat } from "node:fs/promises";
import path from "node:path";
import { withJobsOf } from "../hosts/desk/server/jobsOfFolder";
import { usualDataFolder } from "../hosts/desk/server/options";
import { FileTrouble, troubles } from "../hosts/file/fileTrouble";
import { MAX_JOBS_FILE_BYTES } from "../hosts/file/limits";
import { saveAtomically } from "../hosts/file/saveAtomically";
import { makeOwnFolder } from "../hosts/storage/ownFolder";
import { broughtInWords } from "../jobs/broughtInWords";
import { EXIT, UsageTrouble, type Console } from "./console";
import { fileBytes } from "./newJob";
import { readOptions } from "./options";
import { plain } from "./plain";

const JOBS_HELP = `rigsheet jobs --export FILE.zip [--force] [--data DIR]
rigsheet jobs --bring-in FILE.zip [--data DIR]

All jobs of a desk in one file, with their frozen revisions, states and changes;
and such a file, of this desk, another one or a browser, brought in. Nothing
that is there is lost: of a job that is there already the later state is taken,
and the earlier one kept as a revision; one that was changed on both sides
stands beside. A desk that runs on the folder may go on.

  --force      replace FILE.zip if it exists
  --data DIR   the desk's folder (usually the user's own; in a clone .rigsheet)

Exit: 0 done; 1 some could not be brought in; 2 no such file or folder.`;

export async function jobsCommand(words: readonly string[], console: Console): Promise<number> {
  const { values, positionals } = readOptions(
    words,
    {
      export: { type: "string" },
      "bring-in": { type: "string" },
      data: { type: "string" },
      force: { type: "boolean", default: false },
      help: { type: "boolean", default: false },
    },
    "jobs",
  );
  if (values.help) {
    console.out(JOBS_HELP);
    return EXIT.ok;
  }
  const { export: to, "bring-in": from } = values;
  if (positionals.length > 0 || (to === undefined) === (from === undefined))
    throw new UsageTrouble("Say one of --export FILE.zip and --bring-in FILE.zip. See: rigsheet jobs --help");
  const data = path.resolve(values.data ?? usualDataFolder());
  if (to !== undefined) {
    if (!(await isFolder(data)))
      throw new UsageTrouble(`There is no folder ${data}. Name that of the desk with --data.`);
    if (existsSync(to) && !values.force)
      throw new UsageTrouble(
        `${to} exists and was left as it is. Choose another name, or add --force to replace it.`,
      );
    const bytes = await withJobsOf(data, console.err, (jobs) => jobs.export());
    await saveAtomically(to, bytes);
    console.out(to);
    return EXIT.ok;
  }
  const file = await fileBytes(from!, MAX_JOBS_FILE_BYTES, troubles.jobsTooLarge);
  await makeOwnFolder(data);
  const report = await withJobsOf(data, console.err, (jobs) => jobs.bringIn(file)).catch((error: unknown) => {
    throw error instanceof FileTrouble
      ? new FileTrouble(`${from}: ${error.message}`, { cause: error })
      : error;
  });
  console.out(plain(broughtInWords(report)));
  return report.jobs.some(({ outcome }) => outcome === "not read") ? EXIT.look : EXIT.ok;
}

const isFolder = (folder: string): Promise<boolean> =>
  stat(folder).then(
    (found) => found.isDirectory(),
    () => false,
  );
