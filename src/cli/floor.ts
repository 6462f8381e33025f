import { FileTrouble } from "../hosts/file/fileTrouble";
import { readXlsx } from "../hosts/file/readXlsx";
import { saveAtomically } from "../hosts/file/saveAtomically";
import { writeJob } from "../hosts/file/writeJob";
import { recalculate } from "../hosts/headless/recalculate";
import { withEntries } from "../hosts/headless/withEntries";
import { entriesOf } from "../standards/entries";
import { copyFloor, floorsOf } from "../workbooks/floors/copyFloor";
import { floorsIn, inputsWithFloors, withCopy } from "../workbooks/floors/floorsOf";
import { multiRoom } from "../workbooks/multiRoom/definition";
import { EXIT, UsageTrouble, type Console } from "./console";
import { outFile } from "./copyJob";
import { fileBytes } from "./newJob";
import { readOptions } from "./options";

const FLOOR_HELP = `rigsheet floor JOB.xlsx --from FLOOR --to FLOOR[,FLOOR…] [--out NEW.xlsx]

Copies a floor: its outlets, and the devices that serve it alone, once more for
each new floor, with their names counted on: 2-01 becomes 3-01, S2 becomes S3.
What feeds the floor from elsewhere feeds the copy too, and is named.

      --from FLOOR     the floor, as the column Floor on Rooms has it
      --to FLOORS      the new floors, with commas between: 3rd,4th
  -o, --out NEW.xlsx   where to write; without it nothing is written, and only
                       what would be added is shown
      --force          replace NEW.xlsx if it exists

JOB.xlsx is read, never written.

Exit: 0 done, or shown; 1 done, and there is something to look at; 2 it can't be
done, and nothing was written.`;

export async function floor(words: readonly string[], console: Console): Promise<number> {
  const { values, positionals } = readOptions(
    words,
    {
      from: { type: "string" },
      to: { type: "string" },
      out: { type: "string", short: "o" },
      force: { type: "boolean", default: false },
      help: { type: "boolean", default: false },
    },
    "floor",
  );
  if (values.help) {
    console.out(FLOOR_HELP);
    return EXIT.ok;
  }
  const [path, more] = positionals;
  if (path === undefined || more !== undefined)
    throw new UsageTrouble("Name one workbook: rigsheet floor job.xlsx --from 2nd --to 3rd --out new.xlsx");
  const out = values.out === undefined ? undefined : outFile(values.out, path, "xlsx", values.force);
  const book = recalculate(await readXlsx(await fileBytes(path)));
  const inputs = inputsWithFloors(book);
  if (!inputs)
    throw new FileTrouble(`${path}: the workbook has no Rooms sheet of ours, so it has no floors.`);
  if (values.from === undefined || values.to === undefined)
    throw new UsageTrouble(
      `Say which floor is copied and where to: --from 2nd --to 3rd. The floors are: ${floorsOf(floorsIn(inputs)).join(", ") || "none"}.`,
    );
  const copy = copyFloor(floorsIn(inputs), values.from, values.to.split(","));
  if (copy.troubles.length > 0) throw new FileTrouble(`${path}: ${copy.troubles.join(" ")}`);
  for (const { what, old, now } of copy.renamed) console.out(`${what.padEnd(6)}  ${old} -> ${now}`);
  for (const note of copy.notes) console.err(note);
  if (out === undefined) console.out("This is a preview; nothing was written.");
  else {
    const written = withEntries(book, multiRoom, entriesOf(multiRoom, inputs, withCopy(inputs, copy)));
    if (typeof written === "string") throw new FileTrouble(`${path}: ${written}`);
    await saveAtomically(out, await writeJob(written));
    console.out(`${out}: ${copy.rooms.length} outlets and ${copy.devices.length} devices added.`);
  }
  return copy.notes.length > 0 ? EXIT.look : EXIT.ok;
}
