/** The sheet of room types, and what a row of Rooms takes from its type. */
import { f, text, type Formula, type Named } from "../../formula/build";
import type { SheetDefinition } from "../definition";
import { blockPart } from "../parts";
import { countOf, keysOf } from "./nameKeys";
import { rooms } from "./names/rooms";
import { types } from "./names/roomTypes";

/** Says in a row of a type with a receiver that this outlet is a spare one. */
export const NO_RECEIVER = "none";

/** What a row may leave to its type, by the key that both lists have for it. */
export const BY_TYPE = [
  "receiver",
  "quantity",
  "cable",
  "run",
  "plate",
  "route",
  "split",
  "shortest",
  "longest",
  "kind",
] as const satisfies readonly (keyof typeof rooms & keyof typeof types)[];

/** What Site has where neither the row nor its type says anything; nothing where it has none. */
const usual = (of: Named): Formula => f`IF(${of}="","",${of})`;

/** Of its type; an error in a condition would spoil the whole column. */
const ofType = (column: Named, otherwise: Formula): Formula =>
  f`IF(IFERROR(INDEX(${column},${rooms.type_row})="",TRUE),${otherwise},INDEX(${column},${rooms.type_row}))`;

/** The row's own entry as it stands. */
export const asEntered = (column: Named): Formula => f`IF(${column}="","",${column})`;
/** The row's own entry, else its type's, else nothing or what Site has. */
export const orOfType = (key: (typeof BY_TYPE)[number], otherwise: Formula = text("")): Formula =>
  f`IF(${rooms[key]}<>"",${rooms[key]},${ofType(types[key], otherwise)})`;
/** In the row of an outlet. */
export const orUsual = (key: "cable" | "plate", of: Named): Formula =>
  f`IF(${rooms.outlet}="","",${orOfType(key, usual(of))})`;
/** True in a row that fills what its type says something of. */
export const isOwn = (key: (typeof BY_TYPE)[number]): Formula =>
  f`(${rooms[key]}<>"")*IFERROR(INDEX(${types[key]},${rooms.type_row})<>"",FALSE)`;

/** The heads of the row's own entries, by REPLACE because the grid's library joins a whole column where & stands before it. */
export const ownEntries = (): Formula =>
  f`IF(${rooms.type}="","",MID(${BY_TYPE.reduceRight<Formula>(
    (rest, key) =>
      f`REPLACE(${rest},1,0,IF(${isOwn(key)}>0,${text(`, ${rooms[key].words.head.toLowerCase()}`)},""))`,
    text(""),
  )},3,200))`;

export const roomTypesSheet: SheetDefinition = {
  name: "Room types",
  kind: "input",
  intro:
    "What many outlets have in common, once. A row of Rooms names its type; what it leaves blank is its type's, and what it fills is its own.",
  print: { orientation: "landscape", through: "own" },
  parts: [
    blockPart(types, {
      heading: "Types",
      prepared: 8,
      formulas: {
        used: f`IF(${types.name}="","",${countOf(rooms.type_key, types.name)})`,
        own: f`IF(${types.name}="","",${countOf(rooms.own_key, types.name)})`,
        fitting_pieces: f`IF(${types.name}="","",IF(${types.fitting}="",0,${types.used}*IF(${types.pieces}="",1,${types.pieces})))`,
        fitting_key: keysOf(types.fitting),
      },
    }),
  ],
};
