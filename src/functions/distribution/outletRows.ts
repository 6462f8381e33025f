/** The rows of the outlets, whose rarer columns stand in a second table beside the first. */
import { faults, type Fault } from "../../engine/faults";
import { isBlank, type Cell } from "../core/cells";
import { OUTLET_DETAILS, OUTLETS } from "./columns";
import type { Tables } from "./partTables";
import { readTable, tooWide, type ReadRow } from "./rows";

const COLUMNS = { ...OUTLETS, ...OUTLET_DETAILS };
export type OutletTyped = ReadRow<typeof COLUMNS>;

export function outletRows({ outlets = [], outlet_details: details = [] }: Tables): OutletTyped[] | Fault {
  const misshapen =
    tooWide("outlets", outlets, OUTLETS) ?? tooWide("outlet_details", details, OUTLET_DETAILS);
  if (misshapen) return misshapen;
  const beyond = details.slice(outlets.length).some((row) => row.some((cell) => !isBlank(cell)));
  if (beyond) return faults.shortColumn("outlets", outlets.length, details.length);
  const width = Object.keys(OUTLETS).length;
  const joined = outlets.map((row, index): Cell[] => {
    const padded: Cell[] = Array.from({ length: width }, (_, column) => row[column] ?? null);
    return [...padded, ...(details[index] ?? [])];
  });
  const most = Math.max(0, ...joined.map((row) => row.length));
  return readTable(
    "outlets",
    joined.map((row) => [...row, ...Array<null>(most - row.length).fill(null)]),
    COLUMNS,
  );
}
