/**
 * Bonding a second time. Least sizes and greatest lengths: IEC/EN 60728-11 and NEC 810.21, 800.100 as works quote them;
 * AWG to mm² by ASTM B258 (17 AWG 1.04, 14 AWG 2.08, 10 AWG 5.26, 8 AWG 8.37, 6 AWG 13.3). Of the clause's text only
 * the standard and whether size or length is blamed is compared.
 */
import { metres } from "./cables";
import {
  eachRow,
  figure,
  filledRows,
  isFilled,
  isSame,
  rowsOf,
  type Cells,
  type Expected,
  type Job,
  type Row,
  type Value,
} from "./job";
import { keyOf } from "./keys";

const LIMITS: Readonly<Record<string, { clause: RegExp; mm2: number; metres?: number }>> = {
  "mast earthing, copper": { clause: /60728-11/, mm2: 16 },
  "mast earthing, aluminium": { clause: /60728-11/, mm2: 25 },
  "mast earthing, steel": { clause: /60728-11/, mm2: 50 },
  "cable screen bond, protected": { clause: /60728-11/, mm2: 2.5 },
  "cable screen bond, unprotected": { clause: /60728-11/, mm2: 4 },
  "mast grounding, copper, NEC": { clause: /810\.21/, mm2: 5.26 },
  "mast grounding, copper-clad steel or bronze, NEC": { clause: /810\.21/, mm2: 1.04 },
  "mast grounding, aluminium, NEC": { clause: /810\.21/, mm2: 8.37 },
  "electrode bond, NEC": { clause: /810\.21/, mm2: 13.3 },
  "communications bond, one or two family": { clause: /800\.100/, mm2: 2.08, metres: 6.096 },
  "communications bond, other building": { clause: /800\.100/, mm2: 2.08 },
};

export function flagOf(job: Job, row: Row): [Expected, Expected] {
  const limit = LIMITS[String(row.kind ?? "")];
  const size = figure(row, "size");
  if (!limit || Number.isNaN(size)) return [NaN, NaN];
  if (limit.metres !== undefined && !isFilled(row, "length")) return [NaN, NaN];
  const isThin = size < limit.mm2;
  const isLong = limit.metres !== undefined && metres(job, figure(row, "length")) > limit.metres;
  const blamed = new RegExp(
    `^${isThin ? "(?=.*size is below)" : "(?!.*size is below)"}.*${limit.clause.source}`,
    "s",
  );
  return [isThin || isLong ? "look closer" : "no flag", blamed];
}

/** Of the rows of Dishes, or of the one dish of Site: how many conductors are listed for each. */
export function conductorsOf(job: Job): { readonly dish: Value; readonly conductors: number }[] {
  const bonds = filledRows(job, "bonds", "where");
  const dishes = filledRows(job, "dishes", "name").map((row) => row.name!);
  const slots = filledRows(job, "slots", "slot").length;
  const all = dishes.length > 0 ? dishes : slots > 0 ? ["dish"] : [];
  return all.map((dish) => ({
    dish,
    conductors: bonds.filter((row) => (isFilled(row, "dish") ? isSame(row.dish, dish) : dishes.length <= 1))
      .length,
  }));
}

export function bondingSheet(job: Job): Cells {
  const found = conductorsOf(job);
  const rows = rowsOf(job, "dishes").some((row) => isFilled(row, "name"))
    ? rowsOf(job, "dishes")
    : found.map(() => ({ name: "dish" }));
  let at = 0;
  const each = rows.map((row) => (isFilled(row, "name") ? found[at++] : undefined));
  return {
    bonds_flag: eachRow<Expected[]>(rowsOf(job, "bonds"), "where", (row) => flagOf(job, row), ["", ""]),
    bonds_dish_key: rowsOf(job, "bonds").map((row) => keyOf(row.dish)),
    bonded_dish: each.map((one) => one?.dish ?? ""),
    bonded_conductors: each.map((one) => one?.conductors ?? ""),
    bonded_verdict: each.map((one) => (one ? (one.conductors === 0 ? "look" : "ok") : "")),
  };
}
