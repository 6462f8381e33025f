import { FileTrouble } from "../hosts/file/fileTrouble";
import { readXlsx } from "../hosts/file/readXlsx";
import { recalculate } from "../hosts/headless/recalculate";
import { diagnosisOf } from "../workbooks/multiRoom/diagnosisOf";
import { EXIT, UsageTrouble, type Console } from "./console";
import { fileBytes } from "./newJob";
import { readOptions } from "./options";

const DIAGNOSE_HELP = `rigsheet diagnose JOB.xlsx

Recalculates a workbook and tells what its sheet Diagnosis says: likely causes of
the levels and volts that the crew entered on Rooms (its last three columns),
over all readings of the job together, each with its evidence and the next
measurement. The model, with its chances, stands on the sheet Causes and may be
changed there. Probabilities are of that model; none is certain. The file is
read, never written.

Exit: 0 nothing stands out or nothing is measured; 1 there is something to look
at; 2 the file could not be used.`;

export async function diagnoseJob(words: readonly string[], console: Console): Promise<number> {
  const { values, positionals } = readOptions(
    words,
    { help: { type: "boolean", default: false } },
    "diagnose",
  );
  if (values.help) {
    console.out(DIAGNOSE_HELP);
    return EXIT.ok;
  }
  const [path, more] = positionals;
  if (path === undefined || more !== undefined) {
    throw new UsageTrouble("Name one workbook: rigsheet diagnose job.xlsx. See: rigsheet diagnose --help");
  }
  const book = await readXlsx(await fileBytes(path));
  if (book.template !== "multi-room") {
    throw new FileTrouble(
      `${path} was not made from the multi-room template, so it has no levels to compare.`,
    );
  }
  const found = diagnosisOf(recalculate(book));
  if (!found) {
    throw new FileTrouble(
      `${path} has no sheet Diagnosis, so it was made from an earlier template. Make it anew: rigsheet new --help`,
    );
  }
  if (found.outlets === 0) throw new FileTrouble("The workbook has no outlets. Fill the sheet Rooms first.");
  if (found.trouble !== undefined) throw new FileTrouble(found.trouble);
  for (const { cause, where, probability, evidence, next } of found.causes) {
    const share = probability > 0 ? `${Math.round(100 * probability)} %  ` : "";
    console.out(`${share}${cause}${where ? `, ${where}` : ""}`);
    console.out(`      ${evidence}\n      Next: ${next}`);
  }
  console.out(`${found.measured.length} of ${found.outlets} outlets have a measured value.`);
  console.out("Nothing here is certain: measure again before taking anything apart.");
  return found.causes[0]!.cause.startsWith("nothing ") ? EXIT.ok : EXIT.look;
}
