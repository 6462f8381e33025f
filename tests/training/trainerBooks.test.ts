/** The marks of a group and the trainer's key as workbooks: marks that are made up, and by hand what must stand there. */
import { drawFor } from "../../src/training/drawNumbers";
import type { MarkedAnswer } from "../../src/training/markAnswers";
import type { GroupMarks, TraineeMarks } from "../../src/training/markGroup";
import { marksBook } from "../../src/training/marksBook";
import { trainingSets } from "../../src/training/sets/all";
import { sheetCode } from "../../src/training/sheetCode";
import { trainerKey } from "../../src/training/trainerKey";
import { address, parseAddress } from "../../src/formula/address";
import type { Book } from "../../src/workbooks/book";

const set = trainingSets.find(({ id }) => id === "cable")!;
const trainees = ["Ada", "Ben", "Cy"].map((name) => ({ name, occurrence: 1 }));
const exercises = { set, seed: 7, trainees };
const drawn = trainees.map((trainee) => drawFor(set, 7, trainee));

interface Read {
  readonly heads: readonly string[];
  readonly rows: readonly (readonly unknown[])[];
  /** How each column's cells show a number. */
  readonly formats: readonly (string | undefined)[];
}

/** The table of a sheet, whose first head is given. */
function table(book: Book, name: string, first: string): Read {
  const { cells } = book.sheets.find((one) => one.name === name)!;
  const places = Object.keys(cells);
  const { row, column } = parseAddress(places.filter((at) => cells[at]!.value === first).at(-1)!)!;
  const at = (down: number, right: number) => cells[address(row + down, column + right)];
  const count = Math.max(...places.map((one) => parseAddress(one)!.column)) - column + 1;
  const line = (down: number) => Array.from({ length: count }, (_, right) => at(down, right)?.value ?? "");
  const rows: unknown[][] = [];
  while (at(rows.length + 1, 0)?.value !== undefined) rows.push(line(rows.length + 1));
  return {
    heads: line(0).map(String),
    rows,
    formats: line(0).map((_, right) => book.looks[at(1, right)?.look ?? -1]?.format),
  };
}

/** Answers that nobody gave, one of each outcome and a blank one more. */
const OUTCOMES: readonly (readonly [
  MarkedAnswer["outcome"],
  number,
  number | string,
  Partial<MarkedAnswer>?,
])[] = [
  ["slip", 0, 250, { named: "feet taken for metres" }],
  ["carried over", 1, 35.123456789012, { carriedFrom: [1] }],
  ["slip", 0, 17, { named: "k0 left out", perhaps: true }],
  ["right", 2, 18.1],
  ["wrong", 0, 3],
  ["unclear", 0, "no idea", { named: "no plain number" }],
  ["blank", 0, ""],
];
const answers = OUTCOMES.map(([outcome, points, given, more], index): MarkedAnswer => ({
  key: set.questions[index]!.key,
  number: index + 1,
  given,
  right: index === 6 ? "ok" : 10 + index,
  outcome,
  points,
  carriedFrom: [],
  ...more,
}));
const blank = answers.map(({ key, number, right }): MarkedAnswer => ({
  ...{ key, number, right, given: "", outcome: "blank", points: 0, carriedFrom: [] },
}));
const marksOf = (at: number, given: readonly MarkedAnswer[], notes: string[]): TraineeMarks => ({
  label: `${at + 1} ${trainees[at]!.name}`,
  trainee: trainees[at]!,
  number: at + 1,
  file: `${trainees[at]!.name}.xlsx`,
  drawn: drawn[at]!,
  answers: given,
  points: given.reduce((sum, { points }) => sum + points, 0),
  outOf: 14,
  notes,
});
const pair = (byChance: number) => ({
  one: "1 Ada",
  other: "2 Ben",
  questions: [1, 3],
  values: [7.77, "low"],
  rightThere: 1,
  byChance,
});
const marks: GroupMarks = {
  exercises,
  marked: [marksOf(0, answers, ["a note"]), marksOf(1, answers, []), marksOf(2, blank, ["nothing answered"])],
  notMarked: [{ file: "x.xlsx", reason: "It is no workbook." }],
  shared: [pair(0.004), pair(1e-9)],
};

describe("the marks", () => {
  const made = (): Book => marksBook(marks);

  test("of each trainee: counted by outcome, with what to look at", () => {
    const { heads, rows, formats } = table(made(), "Marks", "No.");
    expect(heads).toEqual([
      ...["No.", "Trainee", "Marks", "Out of", "Share", "Right", "Carried over", "Known mistakes"],
      ...["Other wrong", "Blank or unclear", "To look at", "File"],
    ]);
    expect(rows).toEqual([
      [1, "Ada", 3, 14, 3 / 14, 1, 1, 2, 1, 2, "a note; shares answers: see Shared", "Ada.xlsx"],
      [2, "Ben", 3, 14, 3 / 14, 1, 1, 2, 1, 2, "shares answers: see Shared", "Ben.xlsx"],
      [3, "Cy", 0, 14, 0, 0, 0, 0, 0, 7, "nothing answered", "Cy.xlsx"],
    ]);
    expect(formats.map((one) => one?.includes("%") ?? false).indexOf(true)).toBe(4);
    for (const at of [0, 2, 3, 5, 6, 7, 8, 9]) expect(formats[at]).toBe("0");
  });

  test("of each answer, beside its key", () => {
    const { heads, rows, formats } = table(made(), "Answers", "No.");
    expect(heads).toEqual([
      ...["No.", "Trainee", "Question", "What", "Given", "Key", "Tolerance", "Unit"],
      ...["Marks", "Outcome", "Mistake", "Carried from"],
    ]);
    expect(rows).toHaveLength(21);
    const [metres, low, high, , , , verdict] = set.questions.map(({ heading }) => heading);
    expect(rows.slice(0, 3)).toEqual([
      [1, "Ada", 1, metres, 250, 10, 0.1, "m", 0, "slip", "feet taken for metres", ""],
      [1, "Ada", 2, low, 35.12345679, 11, 0.1, "dB", 1, "carried over", "", "1"],
      [1, "Ada", 3, high, 17, 12, 0.1, "dB", 0, "slip", "perhaps k0 left out", ""],
    ]);
    expect(rows[6]).toEqual([1, "Ada", 7, verdict, "", "ok", "", "", 0, "blank", "", ""]);
    for (const at of [0, 2, 8]) expect(formats[at]).toBe("0");
  });

  test("of each question: how the group did, the commonest mistake first", () => {
    const { heads, rows, formats } = table(made(), "Questions", "No.");
    expect(heads).toEqual([
      ...["No.", "Question", "Share of the marks", "Right", "Carried over", "Known mistakes", "Blank"],
      "Mistakes, the commonest first",
    ]);
    const headings = set.questions.map(({ heading }) => heading);
    // Of three trainees with two marks each.
    expect(rows).toEqual([
      [1, headings[0], 0, 0, 0, 2, 1, "feet taken for metres: 2"],
      [2, headings[1], 2 / 6, 0, 2, 0, 1, ""],
      [3, headings[2], 0, 0, 0, 2, 1, "perhaps k0 left out: 2"],
      [4, headings[3], 4 / 6, 2, 0, 0, 1, ""],
      [5, headings[4], 0, 0, 0, 0, 1, ""],
      [6, headings[5], 0, 0, 0, 0, 1, "no plain number: 2"],
      [7, headings[6], 0, 0, 0, 0, 3, ""],
    ]);
    expect(formats[2]).toContain("%");
    for (const at of [0, 3, 4, 5, 6]) expect(formats[at]).toBe("0");
    const mixed = [answers[0]!, { ...answers[0]!, named: "twice" }, { ...answers[0]!, named: "twice" }];
    const again = marksBook({
      ...marks,
      marked: mixed.map((one, at) => marksOf(at, [one, ...blank.slice(1)], [])),
    });
    expect(table(again, "Questions", "No.").rows[0]!.at(-1)).toBe("twice: 2; feet taken for metres: 1");
    const none = table(marksBook({ ...marks, marked: [] }), "Questions", "No.");
    expect(none.rows[0]).toEqual([1, headings[0], "", 0, 0, 0, 0, ""]);
  });

  test("shared answers, and what was not marked", () => {
    const { heads, rows, formats } = table(made(), "Shared", "Sheet");
    expect(heads).toEqual([
      ...["Sheet", "Shares with", "Questions", "Values"],
      ...["Right with the other's numbers", "So often by chance in this group"],
    ]);
    expect(rows).toEqual([
      ["1 Ada", "2 Ben", "1, 3", "7.77; low", 1, "1 in 250"],
      ["1 Ada", "2 Ben", "1, 3", "7.77; low", 1, "under 1 in a million"],
    ]);
    expect(formats[4]).toBe("0");
    const left = table(made(), "Not marked", "File or trainee");
    expect(left.heads).toEqual(["File or trainee", "Why"]);
    expect(left.rows).toEqual([["x.xlsx", "It is no workbook."]]);
  });

  test("each sheet says what it holds, also where it holds nothing", () => {
    const words = (of: Book) => JSON.stringify(of.sheets.map(({ cells }) => Object.values(cells)));
    expect(words(made())).toContain("A reason to ask, not a proof.");
    expect(words(made())).toContain("Files that could not be marked, and trainees without a sheet.");
    const empty = words(marksBook({ ...marks, shared: [], notMarked: [] }));
    expect(empty).toContain("No sheets were found that share wrong answers although their numbers differ.");
    expect(empty).toContain("Every file was marked, and every trainee has a sheet.");
  });
});

describe("the key", () => {
  const made = (): Book => trainerKey(exercises);

  test("has the answers as asked", () => {
    const { heads, rows, formats } = table(made(), "Key", "Trainee");
    expect(heads.slice(0, 4)).toEqual([
      "Trainee",
      "Code of the sheet",
      "Of that name",
      "1 Length in metres, m",
    ]);
    expect(heads[9]).toBe("7 Verdict, word");
    const [ada] = drawn;
    const places = (value: unknown) => (typeof value === "number" ? Number(value.toFixed(1)) : value);
    expect(rows[0]).toEqual([
      ...["Ada", sheetCode(set, 7, trainees[0]!), 1],
      ...set.questions.map(({ key }) => places(ada!.key[key])),
    ]);
    expect(rows.map(([name]) => name)).toEqual(["Ada", "Ben", "Cy"]);
    expect(formats.slice(2)).toEqual(["0", ...Array.from({ length: 6 }, () => "0.0"), undefined]);
  });

  test("says what each question asks, uses and names", () => {
    const { heads, rows } = table(made(), "Questions", "No.");
    expect(heads).toEqual([
      ...["No.", "Question", "Asked", "Tolerance", "Uses"],
      "Mistakes that marking names, the common ones first",
    ]);
    const names = [
      "feet taken for metres; feet multiplied by 3.28 instead of divided; there and back counted twice",
      "and 6 that are met now and then",
    ];
    expect(rows[0]).toEqual([1, set.questions[0]!.task, "to 0.1 m", "0.1 m", "", names.join("; ")]);
    expect(rows[4]!.slice(2, 5)).toEqual(["to 0.1 dB", "0.1 dB", "2, 3"]);
    expect(rows[6]!.slice(2, 5)).toEqual(["from the list", "none", "6"]);
  });

  test("has every figure in full, and where each common mistake leads", () => {
    const { heads, rows } = table(made(), "In full", "No.");
    expect(heads).toEqual(["No.", "Trainee", "Question", "Key", "Unit", "Figures", "What mistakes give"]);
    expect(rows).toHaveLength(21);
    for (const [at, { numbers, key }] of drawn.entries()) {
      const { feet } = numbers as { readonly feet: number };
      const [no, name, question, metres, unit, figures, gives] = rows[7 * at]!;
      expect([no, name, question, unit]).toEqual([at + 1, trainees[at]!.name, 1, "m"]);
      expect(metres).toBeCloseTo(feet * 0.3048, 6);
      // More than eight digits nobody reads.
      for (const row of rows.slice(7 * at, 7 * at + 6))
        expect(row[3]).toBe(Number((row[3] as number).toPrecision(8)));
      expect(figures).toBe(`Length of the run ${feet} ft`);
      expect(String(gives).split("; ")).toEqual(
        expect.arrayContaining([
          `feet taken for metres: ${feet}`,
          `there and back counted twice: ${Number((2 * feet * 0.3048).toPrecision(8))}`,
        ]),
      );
      const last = rows[7 * at + 6]!;
      expect(last.slice(2, 6)).toEqual([7, key.verdict, "", "Minimum level 47 dBµV; Maximum level 77 dBµV"]);
    }
  });
});

test.each([
  ["key", () => trainerKey(exercises)],
  ["marks", () => marksBook(marks)],
])(
  "%s: words that are longer than their column is wide wrap, unless they run on over empty cells",
  (_, made) => {
    const book = made();
    const cut = book.sheets.flatMap(({ name, cells, columnWidths }) =>
      Object.entries(cells).flatMap(([at, { value, look }]) => {
        const { row, column } = parseAddress(at)!;
        if (typeof value !== "string" || cells[address(row, column + 1)] === undefined) return [];
        const fits = value.length <= columnWidths[column]!;
        return fits || book.looks[look ?? 0]?.wrap ? [] : [`${name} ${at}: ${value}`];
      }),
    );
    expect(cut).toEqual([]);
  },
);
