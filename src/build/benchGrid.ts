/** What each part of the grid library that we replace is worth: opening and editing a job with it and without. */
import { spawnSync } from "node:child_process";
import type { Part } from "../hosts/grid/gridContract";
import { toDocument } from "../hosts/grid/toDocument";
import { loadLibrary, quietly } from "../hosts/headless/loadLibrary";
import { parseAddress } from "../formula/address";
import { layOut } from "../workbooks/layOut";
import { multiRoom } from "../workbooks/multiRoom/definition";
import { guestHouse } from "../workbooks/multiRoom/guestHouse";
import { placeOfName } from "../workbooks/named";
import { scaledJob } from "./scaledJob";

/** The bench's own word for a process that measures one of them. */
export const GRID_WITHOUT = "--grid-without";
/** Those that are there for speed in computing; without the others figures or work would be wrong, or drawing slow. */
const FOR_SPEED: readonly Part[] = [
  "keptSpills",
  "columnCriteria",
  "columnOperators",
  "styledColors",
  "knownNames",
];

/** Of this process's own work: a machine that does much else disturbs it less. */
const cpuMs = (): number => process.cpuUsage().user / 1000;

interface Times {
  readonly openMs: number;
  readonly editMs: number;
}

/** The least of them counts; of short ones more are needed to find it. */
const runsFor = (outlets: number): number => (outlets < 1_000 ? 40 : 6);

/** In a process of its own, since a library that was taught stays so. @param part "" for none */
export function measureWithout(part: string, outlets: number): void {
  const library = loadLibrary(part === "" ? [] : [part as Part]);
  const book = layOut(multiRoom, scaledJob(guestHouse, outlets));
  const times = quietly((): Times => {
    const start = cpuMs();
    const model = new library.Model(toDocument(book));
    const openMs = cpuMs() - start;
    const { sheet, at } = placeOfName(book, "rooms_run")!;
    const { row, column: col } = parseAddress(at)!;
    const sheetId = model.getters.getSheetIdByName(sheet)!;
    let editMs = Infinity;
    for (let run = 0; run < runsFor(outlets); run++) {
      const before = cpuMs();
      model.dispatch("UPDATE_CELL", { sheetId, row, col, content: String(20 + run) });
      editMs = Math.min(editMs, cpuMs() - before);
    }
    return { openMs, editMs };
  });
  process.stdout.write(JSON.stringify(times));
}

export function benchGrid(): void {
  for (const outlets of [240, 10_000]) {
    const measured = (part: string): Times => {
      const { stdout } = spawnSync(
        process.execPath,
        [process.argv[1]!, GRID_WITHOUT, part, String(outlets)],
        { encoding: "utf8" },
      );
      return JSON.parse(stdout) as Times;
    };
    const all = measured("");
    const words = ({ openMs, editMs }: Times): string =>
      `CPU for opening ${openMs.toFixed(0)} ms (${(openMs / all.openMs).toFixed(2)} ×), an edit ${editMs.toFixed(0)} ms (${(editMs / all.editMs).toFixed(2)} ×)`;
    process.stdout.write(`${outlets} outlets, all parts: ${words(all)}\n`);
    for (const part of FOR_SPEED)
      process.stdout.write(`${outlets} outlets, without ${part}: ${words(measured(part))}\n`);
  }
}
