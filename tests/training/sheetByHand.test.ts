/** A trainee's sheet of plain questions: what stands on it, and what is found out about it when it comes back. */
import { address, parseAddress } from "../../src/formula/address";
import { answerName, givenName, SHEET_TRAINEE } from "../../src/training/answerName";
import { GroupMarking } from "../../src/training/markGroup";
import {
  answerIn,
  besideAnswer,
  changedFigures,
  codeOf,
  isAnsweredByOurFunction,
  nameIn,
  typedOver,
} from "../../src/training/readSheet";
import { readKey } from "../../src/training/readKey";
import { sheetCode } from "../../src/training/sheetCode";
import { traineeSheet } from "../../src/training/traineeSheet";
import { trainerKey } from "../../src/training/trainerKey";
import { trainingSets } from "../../src/training/sets/all";
import type { Book, BookCell, BookResult } from "../../src/workbooks/book";
import { placeOfName } from "../../src/workbooks/named";
import { choice, count, number, question, setOf } from "./madeUpSet";

const ADA = { name: "Ada", occurrence: 1 };
/** The worked example is drawn first, with n = 5; everybody else has n = 1. */
const exampleFirst = (id: string) => {
  let drawn = 0;
  return { id, draw: () => ({ n: drawn++ === 0 ? 5 : 1 }) };
};
const set = setOf(
  [
    question("a", ({ n }) => 1000 * n!, {
      given: ({ n }) => [
        { label: "Length", value: 60.5 + n!, unit: "m" },
        { label: "Cable", value: "drop" },
      ],
      answer: number("V", 2),
      example: () => [
        { symbol: "L", meaning: "length", value: 1 / 3, unit: "m", line: "", source: "" },
        { symbol: "k", meaning: "kind", value: "twelve chars", unit: "", line: "", source: "" },
        { symbol: "w", meaning: "word", value: "thirteen char", unit: "dB", line: "1 + 1", source: "" },
      ],
    }),
    question("b", ({ n }) => 2000 * n!, { answer: count("boxes") }),
    question("c", ({ n }) => 3000 * n!, { answer: number("", 0) }),
    question("d", ({ n }) => 4000 * n!),
    question("w", () => "ok", { answer: choice("low", "ok") }),
  ],
  {
    ...exampleFirst("five"),
    cautions: ["Mind the step."],
    paper: () => ({
      heading: "The paper",
      lines: ["A line."],
      columns: [{ head: "Row", format: "integer" }],
      rows: [[11], [12]],
    }),
  },
);
const handedOut = (): Book => traineeSheet(set, 1, ADA);
const at = (book: Book, name: string): string => placeOfName(book, name)!.at;
const near = (where: string, down: number, right: number): string => {
  const { row, column } = parseAddress(where)!;
  return address(row + down, column + right);
};

/** The sheet with cells changed; what a formula came to stands with the results. */
function changed(
  cells: Readonly<Record<string, Partial<BookCell>>>,
  results: Readonly<Record<string, BookResult>> = {},
  book = handedOut(),
): Book {
  const [one, ...more] = book.sheets;
  const all: Record<string, BookCell> = { ...one!.cells };
  for (const [where, cell] of Object.entries(cells)) all[where] = { ...all[where], ...cell };
  return { ...book, sheets: [{ ...one!, cells: all, results: { ...one!.results, ...results } }, ...more] };
}

describe("what stands on it", () => {
  const cellsOf = (book: Book) => book.sheets[0]!.cells;
  const rowOf = (book: Book, where: string, from: number, count_: number) =>
    Array.from({ length: count_ }, (_, right) => cellsOf(book)[near(where, 0, from + right)]?.value ?? "");
  const found = (book: Book, value: unknown) =>
    Object.keys(cellsOf(book)).filter((where) => cellsOf(book)[where]!.value === value);

  test("each figure with its label and unit, named by question and place", () => {
    const book = handedOut();
    expect(rowOf(book, at(book, givenName("a", 0)), -1, 3)).toEqual(["Length", 61.5, "\u00a0m"]);
    expect(rowOf(book, at(book, givenName("a", 1)), -1, 3)).toEqual(["Cable", "drop", ""]);
    expect(found(book, "1  Heading of a")).toHaveLength(1);
    expect(found(book, "5  Heading of w")).toHaveLength(1);
  });
  test("each answer cell with what is asked, its unit and its rule", () => {
    const book = handedOut();
    const beside = (key: string) =>
      [-1, 1].map((right) => rowOf(book, at(book, answerName(key)), right, 1)[0]);
    expect(beside("a")).toEqual(["Answer 1, to 0.01 V", "\u00a0V"]);
    expect(beside("b")).toEqual(["Answer 2, exactly", "\u00a0boxes"]);
    expect(beside("c")).toEqual(["Answer 3, to a whole", ""]);
    expect(beside("w")).toEqual(["Answer 5, from the list", ""]);
    const rules = book.sheets[0]!.validations;
    const any = { kind: "number", min: -1e9, max: 1e9 };
    expect(rules.map(({ rule }) => rule)).toEqual([
      ...[any, any, any, any].map((rule) => expect.objectContaining(rule) as object),
      { kind: "choice", choices: ["low", "ok"] },
    ]);
    const prompts = rules.map(({ prompt }) => prompt!);
    expect(prompts[0]).toContain("Your answer, to 0.01 V. Within 0.01 of the key counts as right");
    expect(prompts[1]).toContain("Your answer, exactly. It must be exact");
    expect(prompts[2]).toContain("Your answer, to a whole. Within 1 of the key counts as right");
    expect(prompts[4]).toContain("One of the list");
    const formats = rules.map(({ range }) => book.looks[cellsOf(book)[range]!.look!]?.format);
    // A word must stay text, a number shows as it is typed.
    expect(formats[4]).toBe("@");
    for (const format of formats.slice(0, 4)) expect(format ?? "General").toBe("General");
  });
  test("the worked example: seven digits, long words behind their meaning, the answer as asked", () => {
    const book = handedOut();
    const [heading] = found(book, "Worked example to 1, other numbers");
    const rows = [2, 3, 4, 5].map((down) => rowOf(book, near(heading!, down, 0), 0, 5));
    expect(rows).toEqual([
      ["L", "length", 0.3333333, "\u00a0m", ""],
      ["k", "kind", "twelve chars", "", ""],
      ["w", "word: thirteen char", "", "\u00a0dB", "1 + 1"],
      ["", "answer, to 0.01 V", "5000.00", "\u00a0V", ""],
    ]);
    const [last] = found(book, "Worked example to 5, other numbers");
    expect(rowOf(book, near(last!, 3, 0), 0, 5)).toEqual(["", "answer, from the list", "ok", "", ""]);
  });
  test("the head: whose it is, how to fill it, cautions; the paper twice, the second for the examples", () => {
    const book = handedOut();
    const words = Object.values(cellsOf(book)).map(({ value }) => String(value ?? ""));
    expect(cellsOf(book)[at(book, SHEET_TRAINEE)]!.value).toBe("Ada");
    expect(words).toContain(sheetCode(set, 1, ADA));
    expect(words).toContain("Made up. For a test.");
    expect(words.join(" ")).toContain("Caution: Mind the step.");
    expect(words.join(" ")).toContain("rounded as asked");
    expect(words.join(" ")).toContain("correctly carried forward, is penalised once");
    expect(found(book, "The paper")).toHaveLength(1);
    expect(found(book, "The survey and the quote of the worked examples (demonstration)")).toHaveLength(1);
    for (const value of ["A line.", "Row", 11, 12]) expect(found(book, value)).toHaveLength(2);
    expect([book.title, book.template]).toEqual(["Made up", "training-sheet"]);
  });
  test("how many are open: blanks and what was filled in", () => {
    // It stands in the head and in the fields.
    const said = (answers: Readonly<Record<string, number | string>>) => [
      ...new Set(Object.values(traineeSheet(set, 1, ADA, answers).sheets[0]!.results)),
    ];
    expect(said({})).toEqual(["5 still to answer"]);
    expect(said({ a: 0, w: "", b: 2 })).toEqual(["3 still to answer"]);
    expect(said({ a: 1, b: 2, c: 3, d: 4, w: "ok" })).toEqual(["all answers given"]);
  });
});

describe("what is read from it", () => {
  test("figures that were changed, as they stand now", () => {
    const book = handedOut();
    const length = at(book, givenName("a", 0));
    const of = (cells: Parameters<typeof changed>[0], results?: Parameters<typeof changed>[1]) =>
      changedFigures(set, { numbers: { n: 1 }, key: {} }, changed(cells, results));
    expect(of({})).toBeUndefined();
    expect(of({ [length]: { value: 62 } })).toBe(
      'Its figures were changed: "Length" of question 1 is 62, handed out was 61.5.',
    );
    // A number that was made text is another thing.
    expect(of({ [length]: { value: "61.5" } })).toMatch(/ is 61\.5, handed out was 61\.5\.$/);
    expect(of({ [length]: { formula: "Gone!A1" } }, { [length]: { error: "#REF!" } })).toMatch(/ is #REF!, /);
    expect(of({ [length]: { value: "x".repeat(60) } })).toMatch(/ is x{40}, handed out/);
    expect(of({ [at(book, givenName("a", 1))]: { value: "trunk" } })).toBe(
      'Its figures were changed: "Cable" of question 1 is trunk, handed out was drop.',
    );
    expect(of({ [length]: { formula: "60+1.5" } }, { [length]: 61.5 })).toBeUndefined();
  });
  test("an answer with its formula, note and format; the computed value counts", () => {
    const where = at(handedOut(), answerName("a"));
    const of = (cell: Partial<BookCell>, results?: Parameters<typeof changed>[1]) =>
      answerIn(changed({ [where]: cell }, results))("a");
    expect(of({})).toEqual({ format: "General" });
    expect(of({ value: 3 })).toEqual({ value: 3, format: "General" });
    expect(of({ formula: "1+2", note: "so" }, { [where]: 3 })).toEqual({
      ...{ value: 3, formula: "1+2", note: "so", format: "General" },
    });
    expect(of({ value: "x", look: 999 })).toEqual({ value: "x", format: "General" });
    const book = changed({ [where]: { value: 3, look: handedOut().looks.length } });
    expect(answerIn({ ...book, looks: [...book.looks, { format: "0.0%" }] })("a")).toEqual({
      value: 3,
      format: "0.0%",
    });
    expect(answerIn({ ...handedOut(), names: [] })("a")).toEqual({ format: "General" });
  });
  test("whether a function of ours gave it", () => {
    const where = at(handedOut(), answerName("a"));
    const of = (formula: string) =>
      isAnsweredByOurFunction(changed({ [where]: { formula } }, { [where]: 3 }), "a");
    expect(of("2*RIG.SPLITLOSS(2)")).toBe(true);
    expect(of("2*SUM(2)")).toBe(false);
    expect(isAnsweredByOurFunction(handedOut(), "a")).toBe(false);
  });
  test("what stands beside an empty answer, but not what was handed out there", () => {
    const where = at(handedOut(), answerName("b"));
    const of = (cells: Parameters<typeof changed>[0]) => besideAnswer(changed(cells), handedOut(), "b");
    expect(of({})).toBeUndefined();
    expect(of({ [near(where, 0, 1)]: { value: "12 boxes" } })).toBe(`${near(where, 0, 1)} holds 12 boxes`);
    expect(of({ [near(where, 0, 2)]: { value: "x".repeat(50) } })).toBe(
      `${near(where, 0, 2)} holds ${"x".repeat(40)}`,
    );
    expect(of({ [near(where, 0, 2)]: { value: "" } })).toBeUndefined();
    expect(of({ [near(where, 0, -1)]: { value: 12 } })).toBeUndefined();
    expect(of({ [near(where, 1, 1)]: { value: 12 } })).toBeUndefined();
    // A row above it moves all down, and what was handed out is still known.
    const book = handedOut();
    const cells = Object.fromEntries(
      Object.entries(book.sheets[0]!.cells).map(([one, cell]) => [near(one, 1, 0), cell]),
    );
    const names = book.names.map((one) => ({ ...one, range: near(one.range.split(":")[0]!, 1, 0) }));
    const down: Book = { ...book, names, sheets: [{ ...book.sheets[0]!, cells }] };
    expect(besideAnswer(down, book, "b")).toBeUndefined();
    expect(besideAnswer({ ...book, names: [] }, book, "b")).toBeUndefined();
    expect(besideAnswer({ ...book, sheets: [] }, book, "b")).toBeUndefined();
    expect(besideAnswer(book, { ...book, names: [] }, "b")).toBeUndefined();
  });
  test("what was typed over on an empty sheet", () => {
    const book = handedOut();
    const where = near(at(book, givenName("a", 0)), 0, -1);
    expect(typedOver(book, book)).toBeUndefined();
    expect(typedOver(changed({ [where]: { value: 41.5 } }), book)).toBe(
      `${where} holds 41.5, which was not handed out so`,
    );
    expect(typedOver(changed({ [where]: { value: "x".repeat(50) } }), book)).toBe(
      `${where} holds ${"x".repeat(40)}, which was not handed out so`,
    );
    // A new cell is none that was typed over, and one that was emptied holds nothing.
    expect(typedOver(changed({ Z99: { value: 3 } }), book)).toBeUndefined();
    const without: Record<string, BookCell> = { ...book.sheets[0]!.cells };
    delete without[where];
    expect(typedOver({ ...book, sheets: [{ ...book.sheets[0]!, cells: without }] }, book)).toBeUndefined();
    expect(typedOver({ ...book, sheets: [] }, book)).toBeUndefined();
    // The count of open answers is a formula.
    const counts = Object.keys(book.sheets[0]!.cells).find((one) => book.sheets[0]!.cells[one]!.formula)!;
    expect(typedOver(changed({ [counts]: { value: 3 } }), book)).toBeUndefined();
  });
  test("the name, without the blanks around it, and the code", () => {
    const where = at(handedOut(), SHEET_TRAINEE);
    expect(nameIn(changed({ [where]: { value: "  Zoe " } }))).toBe("Zoe");
    expect(nameIn({ ...handedOut(), names: [] })).toBe("");
    expect(codeOf(handedOut())).toEqual({ code: sheetCode(set, 1, ADA) });
    const gone = { ...handedOut(), names: handedOut().names.filter(({ name }) => name === SHEET_TRAINEE) };
    expect(codeOf(gone)).toEqual({
      trouble: 'Its code is gone; the name in it is "Ada". Mark it by hand with the key.',
    });
    expect(codeOf(changed({ [where]: { value: "n".repeat(60) } }, {}, gone))).toMatchObject({
      trouble: expect.stringContaining(`"${"n".repeat(40)}"`) as string,
    });
  });
});

describe("answers that are one question off", () => {
  const six = setOf(
    ["a", "b", "c", "d", "e", "f"].map((key, index) => question(key, ({ n }) => 1000 * n! * (index + 1))),
    exampleFirst("six"),
  );
  const notes = (typed: Readonly<Record<string, number | string>>): readonly string[] => {
    const group = new GroupMarking({ set: six, seed: 1, trainees: [ADA] });
    group.add("1-Ada.xlsx", traineeSheet(six, 1, ADA, typed));
    return group.done().marked[0]!.notes;
  };
  const OFF = "the answers seem to be one question off";
  test("three that are, and more than half of all", () => {
    expect(notes({ a: 2000, b: 3000, c: 4000 })).toEqual([OFF]);
    expect(notes({ b: 1000, c: 2000, d: 3000 })).toEqual([OFF]);
    expect(notes({ a: 2000, b: 3000, c: 4000, d: 4000, e: 5000 })).toEqual([OFF]);
    // Within the tolerance of 0.1.
    expect(notes({ a: 2000.1, b: 2999.9, c: 4000 })).toEqual([OFF]);
    // Words are no numbers.
    expect(notes({ a: 2000, b: 3000, c: 4000, d: "so", e: "so", f: "so" })).toContain(OFF);
  });
  test("two are too few, half of them are too few, and two ways are none", () => {
    expect(notes({ a: 2000, b: 3000 })).toEqual([]);
    expect(notes({ a: 2000, b: 3000, c: 4000, d: 1, e: 1, f: 1 })).toEqual([]);
    expect(notes({ a: 2000, b: 3000, d: 3000, e: 4000 })).toEqual([]);
    expect(notes({ a: 2000.2, b: 3000.2, c: 4000.2 })).toEqual([]);
  });
  test("answers that are right are not off, though the next ones are the same", () => {
    const same = setOf(
      ["a", "b", "c", "d"].map((key) => question(key, ({ n }) => 1000 * n!)),
      exampleFirst("same"),
    );
    const group = new GroupMarking({ set: same, seed: 1, trainees: [ADA] });
    group.add("1-Ada.xlsx", traineeSheet(same, 1, ADA, { a: 1000, b: 1000, c: 1000, d: 1000 }));
    expect(group.done().marked[0]!.notes).toEqual([]);
  });
});

describe("an empty sheet on which something was typed elsewhere", () => {
  const notes = (book: Book) => {
    const group = new GroupMarking({ set, seed: 1, trainees: [ADA] });
    group.add("1-Ada.xlsx", book);
    return group.done().marked[0]!.notes;
  };
  const label = (): string => near(at(handedOut(), givenName("a", 0)), 0, -1);
  test("over what was handed out", () => {
    expect(notes(changed({ [label()]: { value: 41.5 } }))).toEqual([
      "nothing answered",
      `${label()} holds 41.5, which was not handed out so`,
    ]);
  });
  test("beside an answer cell: that is told, and the other is not", () => {
    const beside = near(at(handedOut(), answerName("b")), 0, 2);
    expect(notes(changed({ [label()]: { value: 41.5 }, [beside]: { value: 12 } }))).toEqual([
      "nothing answered",
      `2 is empty, but ${beside} holds 12`,
    ]);
  });
  test("with one answer given, only what stands beside an empty one is told", () => {
    const answered = { [at(handedOut(), answerName("a"))]: { value: 1000 } };
    expect(notes(changed({ ...answered, [label()]: { value: 41.5 } }))).toEqual([]);
  });
  test("what is unclear is told with its question, before what stands beside", () => {
    const beside = near(at(handedOut(), answerName("b")), 0, 2);
    const unclear = { [at(handedOut(), answerName("a"))]: { value: "no idea" } };
    expect(notes(changed({ ...unclear, [beside]: { value: 12 } }))).toEqual([
      '1: "no idea": no plain number',
      `2 is empty, but ${beside} holds 12`,
    ]);
  });
});

describe("a key that is not one to mark by", () => {
  const cable = trainingSets.find(({ id }) => id === "cable")!;
  const book = (): Book =>
    trainerKey({ set: cable, seed: 7, trainees: [ADA, { name: "Ben", occurrence: 1 }] });
  const withCell = (name: string, value: string): Book =>
    changed({ [at(book(), name)]: { value } }, {}, book());
  test("another workbook, another version, another set", () => {
    expect(readKey(handedOut())).toBe("It is no trainer's key of Rigsheet's.");
    expect(readKey({ ...book(), templateVersion: "1" })).toMatch(
      /^The key is of version 1 of the exercises; this is version \d+\. Mark with the Rigsheet that made it\.$/,
    );
    expect(readKey({ ...book(), templateVersion: "" })).toMatch(/^The key is of version unknown /);
    expect(readKey(withCell("key_set", "z".repeat(50)))).toBe(
      `The key names the set "${"z".repeat(40)}", which is not known here.`,
    );
  });
  test("a seed that is none", () => {
    for (const seed of ["", "-1", "1.5", "seven", "9007199254740993"]) {
      const read = readKey(withCell("key_seed", seed));
      // An empty cell counts as 0, with which no code agrees.
      expect(read).toMatch(
        seed === "" ? /^The key was changed: trainee 1 / : /^The key's seed is no whole number/,
      );
    }
  });
  test("names that were changed, each told by its row", () => {
    expect(readKey(book())).toMatchObject({ seed: 7, trainees: [ADA, { name: "Ben" }] });
    const { cells } = book().sheets[0]!;
    const ben = Object.keys(cells).find((where) => cells[where]!.value === "Ben")!;
    const second = changed({ [ben]: { value: "Zoe" } }, {}, book());
    expect(readKey(second)).toMatch(
      /^The key was changed: trainee 2 does not have the code that belongs to that name\./,
    );
    expect(readKey({ ...book(), names: book().names.filter(({ name }) => name !== "key_trainee") })).toBe(
      "The key names no trainee.",
    );
  });
});
