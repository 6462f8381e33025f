/** Reads the Parts sheet's cable table, once for a whole call. */
import { faults, isFault, type Fault } from "../../engine/faults";
import type { CableBook } from "../../engine/signal/cable";
import { cableBook, type CableRow, type Figure } from "../../engine/signal/cableBook";
import { isBlank, type Cell, type Matrix } from "../core/cells";
import { number, optional, table, text, type WholeParameter } from "../core/parameters";

const COLUMNS = ["name", "like", "k1", "k2", "k0", "loop resistance"] as const;
/** Far beyond any real cable, so that a slip of units is refused. */
const GREATEST_COEFFICIENT = 1000;
const GREATEST_LOOP_OHMS = 10_000;

const name = text({ name: "cables", help: "", wanted: "a cable's name" });

function figure(cell: Cell, what: string, cable: string): Figure {
  if (isBlank(cell)) return null;
  const isLoop = what === "loop resistance";
  return number({
    name: `${what} of cable "${cable}"`,
    help: "",
    min: isLoop ? 0 : -GREATEST_COEFFICIENT,
    max: isLoop ? GREATEST_LOOP_OHMS : GREATEST_COEFFICIENT,
    aboveMin: isLoop,
    unit: isLoop ? "ohm per 100 m" : undefined,
  }).read(cell);
}

/** A row without a name cannot be named by a job, so it is passed over. */
function readRow(row: readonly Cell[]): CableRow[] {
  const [nameCell, like, k1, k2, k0, loop] = row as [Cell, Cell, Cell, Cell, Cell, Cell];
  const named = isBlank(nameCell) ? null : name.read(nameCell);
  if (named === null || isFault(named)) return [];
  return [
    {
      name: named,
      like: isBlank(like) ? null : name.read(like),
      k1: figure(k1, "k1", named),
      k2: figure(k2, "k2", named),
      k0: figure(k0, "k0", named),
      loop: figure(loop, "loop resistance", named),
    },
  ];
}

function readCables(matrix: Matrix): CableBook | Fault {
  const columns = matrix[0]!.length;
  if (columns !== COLUMNS.length) {
    return faults.badShape("cables", matrix.length, columns, `six columns: ${COLUMNS.join(", ")}`);
  }
  return cableBook(matrix.flatMap(readRow));
}

const described = table({
  name: "cables",
  help: "The Parts sheet's cable table, six columns: name, like (a built-in type), k1, k2, k0 (dB per 100 m at 20 °C, f in MHz), loop ohms per 100 m at 20 °C. A name in it counts before a built-in type.",
  wanted: "the cable table of the Parts sheet, six columns",
});

export const cables: WholeParameter<CableBook | undefined> = optional({
  ...described,
  readWhole: readCables,
});
