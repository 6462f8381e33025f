/** Books for tests of the hosts. */
import { columnLetters } from "../../src/formula/address";
import type { Book, BookSheet, Look } from "../../src/workbooks/book";

export const emptySheet = (name: string): BookSheet => ({
  name,
  cells: {},
  results: {},
  rowCount: 1,
  columnCount: 1,
  columnWidths: {},
  rowHeights: {},
  frozenRows: 0,
  frozenColumns: 0,
  validations: [],
  marks: [],
  protected: false,
});

export const bookOf = (...sheets: BookSheet[]): Book => ({
  template: "",
  templateVersion: "",
  title: "",
  looks: [],
  sheets,
  names: [],
});

/** A computed book of one sheet, S: one column a name, from row 1 on; what is undefined is a blank cell. */
export function columns(
  values: Readonly<Record<string, readonly (BookSheet["results"][string] | undefined)[]>>,
): Book {
  const results: Record<string, BookSheet["results"][string]> = {};
  const names = Object.entries(values).map(([name, column], at) => {
    const letters = columnLetters(at);
    column.forEach((value, row) => {
      if (value !== undefined) results[`${letters}${row + 1}`] = value;
    });
    return { name, sheet: "S", range: `${letters}1:${letters}${column.length}` };
  });
  return { ...bookOf({ ...emptySheet("S"), results }), names };
}

/**
 * A small job with one of everything that a sheet can hold: inputs with
 * validations, a column formula of ours, native formulas over it, marks,
 * notes, names, protection and print set-up. Its numbers are invented.
 */
export function sampleBook(): Book {
  // In the order in which a reader meets them.
  const looks: Look[] = [
    {
      bold: true,
      size: 14,
      color: "1F3864",
      fill: "DDE6F0",
      align: "center",
      vertical: "middle",
      wrap: true,
    },
    {
      fill: "FFF8DC",
      edges: { top: "thin", right: "thin", bottom: "medium", left: "thin" },
      format: "0.0",
      locked: false,
    },
    { locked: false, format: "0.00" },
    { format: "yyyy-mm-dd", locked: false },
    { bold: true, italic: true, color: "9C0006", fill: "FFC7CE" },
  ];
  const rooms: BookSheet = {
    ...emptySheet("Rooms & runs"),
    cells: {
      A1: { value: "Room", look: 0, note: "One row an outlet.\n Keep the last row. " },
      B1: { value: "Run, m", look: 0 },
      C1: { value: "Loss, dB", look: 0 },
      D1: { value: "Verdict", look: 0 },
      A2: { value: "=Lobby", look: 1 },
      A3: { value: "101", look: 1 },
      A4: { look: 1 },
      B2: { value: 12.5, look: 1 },
      B3: { value: 30, look: 1 },
      B4: { look: 1 },
      C2: { formula: 'RIG.CABLELOSS(A2:A4,runs,"RIG.X(")', spill: { rows: 3, columns: 1 }, look: 2 },
      C3: { look: 2 },
      C4: { look: 2 },
      C5: { formula: "SUM(C2:C4)", look: 2 },
      D2: { formula: 'IF(C2>5,"high","ok")' },
      D5: { formula: 'COUNTIF(D2:D4,"ok")' },
      B6: { formula: "RIG.LONGEST(B5)", look: 2 },
      B7: { formula: "B6*2", look: 2 },
      A8: { value: 46_000.25, look: 3 },
    },
    results: {
      C2: 2.5,
      C3: 6,
      C4: "",
      C5: 8.5,
      D2: "ok",
      D5: 1,
      B6: { error: "#VALUE!" },
      B7: { error: "#VALUE!" },
    },
    rowCount: 8,
    columnCount: 4,
    columnWidths: { 0: 18, 1: 9.5, 3: 12 },
    rowHeights: { 0: 30 },
    frozenRows: 1,
    frozenColumns: 1,
    validations: [
      {
        range: "B2:B4",
        rule: { kind: "number", min: 0.5, max: 150 },
        promptTitle: "Run",
        prompt: "Length of the run in metres,\nfor example 12.5",
        refusal: "Give 0.5 to 150 m.",
      },
      { range: "F2:F4", rule: { kind: "number", min: 1, integer: true }, warnOnly: true },
      { range: "G2", rule: { kind: "number" } },
      { range: "A8", rule: { kind: "date", min: 36_526, max: 73_050 } },
      { range: "D2:D4", rule: { kind: "choice", choices: ["ok", 'low "cold"', "high"] } },
      { range: "A2:A4", rule: { kind: "named", name: "kinds" } },
      { range: "H2:H4", rule: { kind: "text", maxLength: 40 } },
    ],
    marks: [
      { range: "D2:D4", words: ["low", "high"], look: 4 },
      { range: "D5", words: ['say "no"'], look: 4 },
    ],
    protected: true,
    print: {
      orientation: "landscape",
      paper: "a4",
      area: "A1:D8",
      repeatFrom: 1,
      repeatTo: 1,
      footLeft: "Smith & Sons",
      footRight: "2026-07-04 rev 3",
    },
    tabColor: "1F3864",
  };
  const parts: BookSheet = {
    ...emptySheet("Parts"),
    cells: { A1: { value: "lobby" }, A2: { value: "room" } },
    rowCount: 2,
    tabColor: "548235",
    hidden: true,
  };
  return {
    template: "estimate",
    templateVersion: "1.2.0",
    title: "Guest house & annexe (demonstration)",
    looks,
    sheets: [rooms, parts],
    names: [
      { name: "runs", sheet: "Rooms & runs", range: "B2:B4" },
      { name: "kinds", sheet: "Parts", range: "A1:A2" },
      { name: "total", sheet: "Rooms & runs", range: "C5" },
    ],
  };
}
