import { call, f, text, type Formula, type Named } from "../../formula/build";
import { TABLES } from "./jobTables";
import { pieces, pieceWords } from "./names/pieces";

/** What is counted: lengths by route, or pieces of work. */
type Kind = "route" | "work";

/** @returns how many of each name the distribution takes; 0 of a blank, or of what it has not */
export const neededOf = (kind: Kind, names: Named): Formula =>
  call("RIG.HOWMANY", text(kind), names, ...TABLES);

/** @returns how many of each piece of work there are; 0 of a blank */
export const piecesOf = (words: Named | Formula): Formula =>
  f`IFERROR(INDEX(${pieces.all},MATCH(${words},${pieceWords},0)),0)`;
