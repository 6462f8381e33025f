/**
 * Functions that can give cells and not only values: what they give may be joined
 * with other cells, `A1:INDEX(B1:B9,3)`. Excel's list, from memory.
 */
export const REFERENCE_FUNCTIONS: ReadonlySet<string> = new Set(
  "ANCHORARRAY CHOOSE DROP IF IFS INDEX INDIRECT LAMBDA LET OFFSET REDUCE SINGLE SWITCH TAKE TRIMRANGE XLOOKUP".split(
    " ",
  ),
);
