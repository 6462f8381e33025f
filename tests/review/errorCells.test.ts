/** What is said of cells that show an error, of checks that do not pass, and of both by an earlier version's own places. */
import type { Finding } from "../../src/review/finding";
import { checksToday } from "../../src/review/rules/checksToday";
import { errorCells } from "../../src/review/rules/errorCells";
import { failingChecks } from "../../src/review/rules/failingChecks";
import type { Book, BookCell, BookName, BookResult, BookSheet } from "../../src/workbooks/book";
import { bookOf, emptySheet } from "../support/books";

interface Cells {
  readonly cells?: Readonly<Record<string, BookCell>>;
  readonly results?: Readonly<Record<string, BookResult>>;
}
const bookWith = (
  sheets: Readonly<Record<string, Cells>>,
  names: readonly [name: string, sheet: string, range: string][] = [],
): Book => ({
  ...bookOf(
    ...Object.entries(sheets).map(([name, { cells = {}, results = {} }]): BookSheet => ({
      ...emptySheet(name),
      cells: { ...cells },
      results: { ...results },
    })),
  ),
  names: names.map(([name, sheet, range]): BookName => ({ name, sheet, range })),
});
const NA: BookResult = { error: "#N/A" };
const REF: BookResult = { error: "#REF!" };

describe("cells that show an error", () => {
  const all = (...asked: Parameters<typeof bookWith>): Finding[] =>
    errorCells(bookWith(...asked), (sheet, { row, column }) => `${sheet} ${row}/${column}`);
  const said = (...asked: Parameters<typeof bookWith>): string[] =>
    all(...asked).map(({ message }) => message);
  const lost = (where: string) => `${where}: #REF!, a cell that the formula reads was removed.`;

  test("in the program's own words, and in a sentence of ours", () => {
    const sentence = 'Run of "a" is -3.';
    expect(
      all({ S: { results: { B2: REF, A1: 3, C9: { error: "#VALUE!", message: sentence } } } }),
    ).toStrictEqual([
      {
        weight: "wrong",
        place: { sheet: "S", cell: "B2" },
        message: lost("S 1/1"),
        remedy: "Take the removal back, or enter the formula again.",
      },
      {
        weight: "wrong",
        place: { sheet: "S", cell: "C9" },
        message: `S 8/2: #VALUE!, ${sentence}`,
        remedy: "Mend the input that the sentence names, in this row or on the sheet it reads.",
      },
    ]);
    // The sentence counts beside an error of ours alone.
    expect(all({ S: { results: { A1: { error: "#N/A", message: sentence } } } })[0]!.message).toBe(
      `S 0/0: #N/A, ${sentence}`,
    );
    expect(all({ S: { results: { A1: { error: "#NUM!", message: sentence } } } })).toMatchObject([
      {
        message: "S 0/0: #NUM!, the result is no number that a cell can hold.",
        remedy: "Check the inputs of its row.",
      },
    ]);
    expect(said({ S: {} })).toEqual([]);
  });
  test("of one column formula are one finding, in the order of rows; of two errors two", () => {
    const spilled: BookCell = { formula: "x", spill: { rows: 3, columns: 2 } };
    expect(all({ S: { cells: { B2: spilled }, results: { C4: REF, B3: REF, C3: REF } } })).toMatchObject([
      {
        place: { sheet: "S", cell: "B3" },
        message: "S 2/1 and 2 more on this sheet: #REF!, a cell that the formula reads was removed.",
      },
    ]);
    expect(said({ S: { cells: { B2: spilled }, results: { B2: REF, B3: NA } } })).toHaveLength(2);
    // To either side, above and below it is another's.
    for (const beside of ["A2", "D2", "B1", "B5"])
      expect(said({ S: { cells: { B2: spilled }, results: { C3: REF, [beside]: REF } } })).toHaveLength(2);
    expect(
      said({ S: { cells: { B2: { formula: "x" }, B3: { formula: "x" } }, results: { B2: REF, B3: REF } } }),
    ).toEqual([lost("S 1/1"), lost("S 2/1")]);
  });
  test("a sentence is one trouble wherever it shows; on a later sheet it follows", () => {
    const ours = { error: "#VALUE!", message: 'Unit "yd" is not known.' };
    expect(said({ S: { results: { A1: ours, C5: ours } } })).toEqual([
      `S 0/0 and 1 more on this sheet: #VALUE!, ${ours.message}`,
    ]);
    expect(all({ S: { results: { A1: ours } }, T: { results: { A1: ours, B7: ours } } })).toStrictEqual([
      expect.objectContaining({ place: { sheet: "S", cell: "A1" } }),
      {
        weight: "worth knowing",
        message: "2 more cells show errors that follow from those.",
        remedy: "Fix the others; these should then clear.",
      },
    ]);
    // The program's own words say nothing of the input.
    expect(said({ S: { results: { A1: REF } }, T: { results: { A1: REF } } })).toHaveLength(2);
  });
  test("what reads an error in its own row follows; what does not is a cause of its own", () => {
    const names: [string, string, string][] = [
      ["first", "S", "A2:A4"],
      ["second", "S", "B2:B4"],
    ];
    const side = (formula: string, results: Record<string, BookResult>) =>
      said(
        {
          S: {
            cells: {
              A2: { formula: "y", spill: { rows: 3, columns: 1 } },
              B2: { formula, spill: { rows: 3, columns: 1 } },
            },
            results,
          },
        },
        names,
      );
    const first = lost("S 1/0");
    expect(side("first*2", { A2: REF, B2: REF })).toEqual([
      first,
      "1 more cell shows an error that follows from those.",
    ]);
    expect(side("first*2", { A2: REF, B3: NA })).toEqual([
      first,
      "S 2/1: #N/A, something that the formula looks up was not found.",
    ]);
    // The same error of another row is handed on.
    expect(side("first*2", { A2: REF, B3: REF })).toEqual([
      first,
      "1 more cell shows an error that follows from those.",
    ]);
    expect(side("z*2", { A2: REF, B2: REF })).toEqual([first, lost("S 1/1")]);
    // Its own name says nothing of what it reads.
    expect(side("second*2", { A2: REF, B2: NA })).toHaveLength(2);
    const ours = (message: string) => ({ error: "#VALUE!", message });
    expect(side("first*2", { A2: REF, B2: ours('Run of "b" is -3.') })).toEqual([
      first,
      'S 1/1: #VALUE!, Run of "b" is -3.',
    ]);
    expect(side("first*2", { A2: REF, B2: ours('Run of "b" holds the error #REF!.') })).toHaveLength(2);
    expect(side("first*2", { A2: REF, B2: ours('Run of "b" holds the error #REF!.') })[1]).toMatch(
      /follows from those/,
    );
    expect(side("first*2", { A2: REF, B2: ours("Nothing is known.") })[1]).toMatch(/follows from those/);
  });
  test("what reads errors of another sheet, or of cells that do not lie beside it, follows in any row", () => {
    const follows = (sheet: string, cell: string, range = "A2:A4") =>
      said(
        {
          S: {
            results: { A2: REF },
            ...(sheet === "S" && {
              cells: { [cell]: { formula: "SUM(first)" } },
              results: { A2: REF, [cell]: NA },
            }),
          },
          T: sheet === "T" ? { cells: { [cell]: { formula: "SUM(first)" } }, results: { [cell]: NA } } : {},
        },
        [["first", "S", range]],
      );
    const told = [lost("S 1/0"), "1 more cell shows an error that follows from those."];
    expect([follows("T", "B9"), follows("S", "B9"), follows("S", "B2")]).toEqual([told, told, told]);
    // A name for cells without an error hands none on.
    expect(follows("T", "B9", "A3:A4")).toHaveLength(2);
  });
  test("what a check found is left to its line", () => {
    const of = (cell: string) =>
      said({ S: { results: { [cell]: REF } }, T: {} }, [["checks_result", "S", "D5:D9"]]);
    expect([of("C5"), of("C9")]).toEqual([[], []]);
    for (const beside of ["C4", "C10", "B5", "D5"]) expect(of(beside)).toHaveLength(1);
    expect(said({ S: {}, T: { results: { C5: REF } } }, [["checks_result", "S", "D5:D9"]])).toHaveLength(1);
  });
});

describe("checks that do not pass", () => {
  /** A line of a check on rows 2 and 3: what it looks at, its limit, what it found, its result and where to look. */
  const line = (
    row: number,
    [what, limit, figure, result, look]: readonly (BookResult | undefined)[],
    formula?: string,
  ): Cells => ({
    cells: { [`A${row}`]: { value: what as string }, [`C${row}`]: formula === undefined ? {} : { formula } },
    results: {
      ...(limit !== undefined && { [`B${row}`]: limit }),
      ...(figure !== undefined && { [`C${row}`]: figure }),
      ...(result !== undefined && { [`D${row}`]: result }),
      ...(look !== undefined && { [`E${row}`]: look }),
    },
  });
  const NAMES: [string, string, string][] = [["checks_result", "Checks", "D2:D3"]];
  const checked = (
    line: Cells,
    more: Record<string, Cells> = {},
    names: [string, string, string][] = [],
  ): Finding[] => failingChecks(bookWith({ Checks: line, ...more }, [...NAMES, ...names]));

  test("with what was found, its limit and where to look", () =>
    expect(checked(line(2, ["Outlets low", "None", 3.1234567, "look", "Rooms"]))).toStrictEqual([
      {
        weight: "wrong",
        place: { sheet: "Checks", cell: "D2" },
        cause: undefined,
        message: "Outlets low: 3.12346.",
        expected: "None.",
        remedy: "Look at Rooms.",
      },
    ]));
  test("a note is worth knowing, and its limit a wish; what could not be found out is an error", () => {
    expect(checked(line(3, ["Margin", "5 %", "4 %", "note", "Site"]))).toMatchObject([
      { weight: "worth knowing", place: { cell: "D3" }, message: "Margin: 4 %.", expected: undefined },
    ]);
    expect(checked(line(2, ["Outlets low", "None", NA, "error", "Rooms"]))).toMatchObject([
      { weight: "wrong", message: "Outlets low: could not be found out, it shows #N/A." },
    ]);
    expect(checked(line(2, ["Outlets low", REF, undefined, "look", undefined]))).toMatchObject([
      { message: "Outlets low: .", expected: "#REF!.", remedy: "Look at ." },
    ]);
  });
  test("that pass, or stand in no line: nothing", () => {
    expect(checked(line(2, ["Outlets low", "None", 0, "ok", "Rooms"]))).toEqual([]);
    expect(checked(line(4, ["Outlets low", "None", 3, "look", "Rooms"]))).toEqual([]);
    expect(failingChecks(bookWith({ Checks: line(2, ["x", 1, 2, "look", "y"]) }))).toEqual([]);
    expect(failingChecks(bookWith({}, NAMES))).toEqual([]);
  });
  const cause = (formula: string, results: Record<string, BookResult>) =>
    checked(line(2, ["Outlets low", "None", 1, "look", "Rooms"], formula), { Rooms: { results } }, [
      ["verdicts", "Rooms", "B2:C4"],
      ["lost", "Gone", "A1:A9"],
    ])[0]!.cause;
  test("the cause is the first cell that the check counts", () => {
    const rooms = (cell: string) => ({ sheet: "Rooms", cell });
    expect(cause('COUNTIF(verdicts,"low")', { B2: "good", C3: "low", B4: "low" })).toEqual(rooms("C3"));
    expect(cause('COUNTIF(verdicts,"low")', { B1: "low", D3: "low", C5: "low" })).toBeUndefined();
    expect(cause('COUNTIF(verdicts,"low")+COUNTIF(verdicts,"")', { B2: "", B3: 3, C4: "low" })).toEqual(
      rooms("C4"),
    );
    expect(cause("SUMPRODUCT(--ISERROR(verdicts))", { B2: "low", B3: NA })).toEqual(rooms("B3"));
    expect(cause("SUM(IFERROR(verdicts,1))", { B3: NA })).toEqual(rooms("B3"));
    expect(cause('COUNTIF(verdicts,"low")', { B2: NA, C4: "low" })).toEqual(rooms("C4"));
    expect(cause('COUNTIF(lost,"low")+COUNTIF(verdicts,"low")', { B2: "low" })).toEqual(rooms("B2"));
    expect(cause("1+1", { B2: "low" })).toBeUndefined();
  });

  describe("by today's template, of an earlier version", () => {
    const fresh = bookWith(
      {
        Checks: line(2, ["Outlets low", "None", 1, "look", "Rooms"], 'COUNTIF(verdicts,"low")'),
        Rooms: { results: { C4: "low" } },
      },
      [...NAMES, ["verdicts", "Rooms", "C3:C6"]],
    );
    const old = (what: string, result: string, verdicts = "F10:F13"): Book =>
      bookWith({ Old: { cells: { B8: { value: what } }, results: { E8: result } }, Plan: {} }, [
        ["checks_result", "Old", "E8:E9"],
        ["verdicts", "Plan", verdicts],
      ]);
    const FOUND = { expected: "None.", remedy: "Look at Rooms." };
    test("a check that it had, and that did not pass then", () =>
      expect(checksToday(fresh, old("Outlets low", "look"))).toStrictEqual([
        {
          ...FOUND,
          weight: "wrong",
          place: { sheet: "Old", cell: "E8" },
          cause: { sheet: "Plan", cell: "F11" },
          message: "Outlets low: 1.",
        },
      ]));
    test("one that passed then cannot be called wrong now", () =>
      expect(checksToday(fresh, old("Outlets low", "ok"))).toStrictEqual([
        {
          ...FOUND,
          weight: "doubtful",
          place: { sheet: "Old", cell: "E8" },
          cause: { sheet: "Plan", cell: "F11" },
          message: "By today's template: Outlets low: 1.",
        },
      ]));
    test("one that it did not have is told at its cause", () => {
      const since = {
        ...FOUND,
        weight: "doubtful",
        cause: undefined,
        message: "A check that the template has since: Outlets low: 1.",
      };
      expect(checksToday(fresh, old("Others", "look"))).toStrictEqual([
        { ...since, place: { sheet: "Plan", cell: "F11" } },
      ]);
      // The old list ends before that row, or is not there.
      expect(checksToday(fresh, old("Others", "look", "F10"))).toStrictEqual([
        { ...since, place: undefined },
      ]);
      expect(checksToday(fresh, bookWith({ Old: {} }))).toStrictEqual([{ ...since, place: undefined }]);
    });
    test("a note stays one", () => {
      const note = bookWith({ Checks: line(2, ["Margin", "5 %", 1, "note", "Site"]) }, NAMES);
      expect(checksToday(note, old("Margin", "ok"))).toMatchObject([
        { weight: "worth knowing", place: { cell: "E8" } },
      ]);
      expect(checksToday(note, old("Others", "ok"))).toMatchObject([{ weight: "worth knowing" }]);
    });
  });
});
