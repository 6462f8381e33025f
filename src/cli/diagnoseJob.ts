import { isFault } from "../engine/faults";
import { isMatrix, type Cell } from "../functions/core/cells";
import { diagnose } from "../functions/signal/diagnose";
import { FileTrouble } from "../hosts/file/fileTrouble";
import { readXlsx } from "../hosts/file/readXlsx";
import { recalculate } from "../hosts/headless/recalculate";
import { isBookError, type Book, type BookResult } from "../workbooks/book";
import { namedColumn, namedRows } from "../workbooks/named";
import { EXIT, UsageTrouble, type Console } from "./console";
import { fileBytes } from "./newJob";
import { readOptions } from "./options";

export const DIAGNOSE_HELP = `rigsheet diagnose JOB.xlsx

Ranks likely causes of the levels that the crew entered on Rooms (its last two
columns) against the predicted ones, over all readings of the job together. The
template has no column for measured volts, so causes that only volts tell apart
stay mixed. Probabilities are of a stated model; none is certain. The file is
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
  const rows = suspectsOf(recalculate(book));
  for (const [cause, where, probability, evidence, next] of rows) {
    const share =
      typeof probability === "number" && probability > 0 ? `${Math.round(100 * probability)} %  ` : "";
    console.out(`${share}${cause as string}${where ? `, ${where as string}` : ""}`);
    console.out(`      ${evidence as string}\n      Next: ${next as string}`);
  }
  console.out("Nothing here is certain: measure again before taking anything apart.");
  return String(rows[0]![0]).startsWith("nothing ") ? EXIT.ok : EXIT.look;
}

function suspectsOf(book: Book): readonly (readonly Cell[])[] {
  const column = (name: string): Cell[] => namedColumn(book, name).map(plain);
  const rows = column("rooms_outlet").flatMap((outlet, row) => (outlet === null ? [] : [row]));
  if (rows.length === 0) throw new FileTrouble("The workbook has no outlets. Fill the sheet Rooms first.");
  const of = (name: string): Cell[] => {
    const cells = column(name);
    return rows.map((row) => cells[row] ?? null);
  };
  /** The middle of what is predicted cold and hot. */
  const middle = (end: string): Cell[] => {
    const hot = of(`rooms_level_${end}_hot`);
    return of(`rooms_level_${end}_cold`).map((cold, row) => {
      const other = hot[row]!;
      return typeof cold === "number" && typeof other === "number" ? (cold + other) / 2 : cold;
    });
  };
  const beside = (left: Cell[], right: Cell[]): Cell[][] => left.map((cell, row) => [cell, right[row]!]);
  const down = (cells: Cell[]): Cell[][] => cells.map((cell) => [cell]);
  const [corners] = namedRows(book, "corner_frequency");
  const answer = diagnose.call([
    down(of("rooms_outlet")),
    down(of("rooms_from")),
    beside(middle("low"), middle("high")),
    beside(of("rooms_built_low"), of("rooms_built_high")),
    [[plain(corners?.[0]), plain(corners?.[2])]],
    null,
    null,
    down(column("branches_id")),
    down(column("branches_from")),
  ]);
  if (isMatrix(answer)) return answer;
  throw new FileTrouble(isFault(answer) ? answer.message : String(answer));
}

const plain = (result: BookResult | undefined): Cell =>
  result === undefined || result === "" || isBookError(result) ? null : result;
