/** What a check counts and the words for where it is, as formulas. */
import type { Check, CountedRows } from "./definition";

/** Rows that are named; of more, their count stands beside. */
const NAMED = 3;
/** What two lines of the column hold, less the name of the sheet. */
const LONGEST = 76;

export const foundOf = ({ found }: Check): string =>
  typeof found === "string" ? found : `SUMPRODUCT(--(${counted(found)}))`;

/** A formula for the places, each after "; "; undefined for a check that cannot say them. */
export function placesOf({ found, places }: Check): string | undefined {
  if (places !== undefined || typeof found === "string") return places;
  const { of } = found;
  const place = `IF(${counted(found)},ROW(${of})-MIN(ROW(${of}))+1,"")`;
  return Array.from(
    { length: NAMED },
    (_, index) => `IFERROR("; "&INDEX(${of},SMALL(${place},${index + 1})),"")`,
  ).join("&");
}

const counted = ({ of, bad }: CountedRows): string => `(${of}<>"")*(${bad})>0`;

/** The sheet alone while the check passes; else the places too. */
export const placesShown = (where: string, result: string, places: string): string =>
  `"${where}"&IF(${result}="ok","",IFERROR(": "&MID(${places},3,${LONGEST}),""))`;
