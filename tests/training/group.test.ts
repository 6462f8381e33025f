/** A group's sheets as they come back: whose they are, what is worth a look, which of several counts. By the rules stated. */
import { parseAddress, address } from "../../src/formula/address";
import { answerName, givenName, SHEET_CODE, SHEET_TRAINEE } from "../../src/training/answerName";
import { drawFor, TRAINING_VERSION, type Trainee } from "../../src/training/drawNumbers";
import { GroupMarking } from "../../src/training/markGroup";
import { marksBook } from "../../src/training/marksBook";
import { trainingSets } from "../../src/training/sets/all";
import { sheetFileName } from "../../src/training/sheetFileName";
import { traineeSheet } from "../../src/training/traineeSheet";
import { trainerKey } from "../../src/training/trainerKey";
import type { Book, BookCell } from "../../src/workbooks/book";
import { namedRows, placeOfName } from "../../src/workbooks/named";

const set = trainingSets.find(({ id }) => id === "cable")!;
const SEED = 7;
const NAMES = ["Ada North", "Ben South", "Cy West"];
const trainees: Trainee[] = NAMES.map((name) => ({ name, occurrence: 1 }));
const [ADA, BEN] = trainees as [Trainee, Trainee, Trainee];
const OUT_OF = 2 * set.questions.length;

/** A sheet as it was handed out, with cells changed by name. */
function sheet(trainee: Trainee, cells: Readonly<Record<string, Partial<BookCell>>> = {}, seed = SEED): Book {
  const book = traineeSheet(set, seed, trainee);
  const changed = new Map(
    Object.entries(cells).map(([name, cell]) => [placeOfName(book, name)!.at, cell] as const),
  );
  return {
    ...book,
    sheets: book.sheets.map((one, at) =>
      at > 0
        ? one
        : {
            ...one,
            cells: {
              ...one.cells,
              ...Object.fromEntries(
                [...changed].map(([where, cell]) => [where, { ...one.cells[where], ...cell }]),
              ),
            },
          },
    ),
  };
}
const key = (trainee: Trainee) => drawFor(set, SEED, trainee).key;
const right = (trainee: Trainee) =>
  Object.fromEntries(Object.entries(key(trainee)).map(([name, value]) => [answerName(name), { value }]));
const fileOf = (at: number): string => sheetFileName(trainees[at]!, at + 1, trainees.length);
const FIRST = set.questions[0]!.key;

function marked(...files: readonly (readonly [file: string, read: Book | string])[]) {
  const group = new GroupMarking({ set, seed: SEED, trainees });
  for (const [file, read] of files) group.add(file, read);
  return group.done();
}
const one = (book: Book, file = fileOf(0)) => marked([file, book]).marked[0]!;
const reason = (read: Book | string): string => {
  const found = marked(["x.xlsx", read]);
  expect(found.marked).toEqual([]);
  return found.notMarked.find(({ file }) => file === "x.xlsx")!.reason;
};

describe("a sheet that can be marked", () => {
  test("all right: all marks and nothing to look at; the others are missing, each by name", () => {
    const found = marked([fileOf(0), sheet(ADA, right(ADA))]);
    expect(found.marked).toHaveLength(1);
    expect(found.marked[0]).toMatchObject({
      label: "1 Ada North",
      trainee: ADA,
      number: 1,
      file: fileOf(0),
      points: OUT_OF,
      outOf: OUT_OF,
      notes: [],
    });
    expect(found.notMarked).toEqual([
      { file: "(2 Ben South)", reason: "No sheet of this trainee was marked. None came back." },
      { file: "(3 Cy West)", reason: "No sheet of this trainee was marked. None came back." },
    ]);
    expect(found.shared).toEqual([]);
  });
  test("sheets stand in the order of the list, however they come in", () => {
    const found = marked(
      ...[2, 0, 1].map((at) => [fileOf(at), sheet(trainees[at]!, right(trainees[at]!))] as const),
    );
    expect(found.marked.map(({ number }) => number)).toEqual([1, 2, 3]);
    expect(found.notMarked).toEqual([]);
  });
  test("one answer wrong and one left out", () => {
    const [a, b] = set.questions.map((question) => answerName(question.key));
    const left = { ...right(ADA), [a!]: { value: 9999 }, [b!]: {} };
    const found = one(sheet(ADA, left));
    expect(found.answers.slice(0, 2).map(({ outcome, points }) => [outcome, points])).toEqual([
      ["wrong", 0],
      ["blank", 0],
    ]);
    expect(found.notes).toEqual([]);
    expect(found.points).toBeLessThanOrEqual(OUT_OF - 4);
  });
});

describe("what is worth a look", () => {
  test("nothing answered", () => {
    expect(one(sheet(ADA))).toMatchObject({ points: 0, notes: ["nothing answered"] });
  });
  test("another name in it", () => {
    expect(one(sheet(ADA, { ...right(ADA), [SHEET_TRAINEE]: { value: " Zoe " } })).notes).toEqual([
      'the name in it is "Zoe"',
    ]);
    const long = "n".repeat(80);
    expect(one(sheet(ADA, { ...right(ADA), [SHEET_TRAINEE]: { value: long } })).notes).toEqual([
      `the name in it is "${"n".repeat(60)}"`,
    ]);
  });
  test("the file of another's name, in whatever folder", () => {
    for (const file of [fileOf(1), `handed/in/${fileOf(1)}`, `handed\\in\\${fileOf(1)}`]) {
      expect(one(sheet(ADA, right(ADA)), file).notes).toEqual(["the file is named as that of 2 Ben South"]);
    }
    expect(one(sheet(ADA, right(ADA)), "anything.xlsx").notes).toEqual([]);
  });
  test("a formula of ours in an answer cell", () => {
    const found = one(
      sheet(ADA, {
        ...right(ADA),
        [answerName(FIRST)]: { value: key(ADA)[FIRST]!, formula: "RIG.SPLITLOSS(2)" },
      }),
    );
    expect(found.notes).toEqual(["answered by a formula of Rigsheet's: 1"]);
    expect(
      one(sheet(ADA, { ...right(ADA), [answerName(FIRST)]: { value: key(ADA)[FIRST]!, formula: "1+1" } }))
        .notes,
    ).toEqual([]);
  });
  test("an answer that stands beside its cell", () => {
    const given: Record<string, Partial<BookCell>> = right(ADA);
    delete given[answerName(FIRST)];
    const book = sheet(ADA, given);
    const { row, column } = parseAddress(placeOfName(book, answerName(FIRST))!.at)!;
    const where = (right: number) => address(row, column + right);
    const beside = (right: number) => {
      const cells = book.sheets[0]!.cells as Record<string, BookCell>;
      return one({
        ...book,
        sheets: [
          {
            ...book.sheets[0]!,
            cells: { ...cells, [where(right)]: { ...cells[where(right)], value: 41.5 } },
          },
          ...book.sheets.slice(1),
        ],
      }).notes;
    };
    expect(beside(2)).toEqual([`1 is empty, but ${where(2)} holds 41.5`]);
    expect(beside(7)).toEqual([`1 is empty, but ${where(7)} holds 41.5`]);
    expect(beside(8)).toEqual([]);
  });
  test("the answers one question off", () => {
    const off = (step: number) =>
      Object.fromEntries(
        set.questions.flatMap(({ key: name }, at) => {
          const value = key(ADA)[set.questions[at + step]?.key ?? ""];
          return typeof value === "number" ? [[answerName(name), { value }]] : [];
        }),
      );
    expect(one(sheet(ADA, off(1))).notes).toContain("the answers seem to be one question off");
    expect(one(sheet(ADA, off(-1))).notes).toContain("the answers seem to be one question off");
    expect(one(sheet(ADA, off(2))).notes).not.toContain("the answers seem to be one question off");
  });
});

describe("what cannot be marked", () => {
  const book = sheet(ADA, right(ADA));
  test("what could not be read, and what is no sheet", () => {
    expect(reason("It is no workbook.")).toBe("It is no workbook.");
    expect(reason({ ...book, template: "multi-room" })).toBe("It is no trainee's sheet of Rigsheet's.");
    expect(reason({ ...book, templateVersion: "0" })).toMatch(
      new RegExp(`^It was made by version 0 of the exercises, .* this is version ${TRAINING_VERSION}\\.`),
    );
    expect(reason({ ...book, templateVersion: "" })).toMatch(/^It was made by version unknown/);
  });
  test("without its code", () => {
    expect(reason(sheet(ADA, { [SHEET_CODE]: { value: "" } }))).toBe(
      'Its code is gone; the name in it is "Ada North". Mark it by hand with the key.',
    );
    expect(reason(sheet(ADA, { [SHEET_CODE]: { value: 12 } }))).toMatch(/^Its code is gone/);
  });
  test("with a code that the key does not know", () => {
    expect(reason(sheet(ADA, {}, 8))).toMatch(
      /^Its code [0-9A-F]{10} is none of this key's, though "Ada North" is on its list: it was made with another seed\.$/,
    );
    expect(reason(sheet({ name: "Zoe East", occurrence: 1 }))).toMatch(
      /^Its code [0-9A-F]{10} is none of this key's, and "Zoe East" is not on its list\.$/,
    );
    const other = trainingSets.find(({ id }) => id === "splitters")!;
    expect(reason(traineeSheet(other, SEED, ADA))).toBe(
      `It is a sheet of "${other.title}"; the key is of "${set.title}".`,
    );
    // A program that saves it may drop the title.
    expect(reason({ ...sheet(ADA, {}, 8), title: "" })).toMatch(/it was made with another seed\.$/);
  });
  test("with other figures, or without an answer cell", () => {
    const { label, value } = set.questions[0]!.given(drawFor(set, SEED, ADA).numbers as never)[0]!;
    expect(reason(sheet(ADA, { [givenName(FIRST, 0)]: { value: 1.25 } }))).toBe(
      `Its figures were changed: "${label}" of question 1 is 1.25, handed out was ${value}.`,
    );
    expect(
      reason({ ...book, names: book.names.filter(({ name }) => name !== answerName(set.questions[1]!.key)) }),
    ).toBe("The answer cell of question 2 is gone.");
    expect(reason({ ...book, names: book.names.filter(({ name }) => name !== givenName(FIRST, 0)) })).toMatch(
      /of question 1 is nothing, handed out was/,
    );
  });
  test("an answer's name that points to a sheet which is gone is an empty answer", () => {
    const lost = book.names.map((name) =>
      name.name === answerName(FIRST) ? { ...name, sheet: "Gone" } : name,
    );
    const filled = sheet(ADA, right(ADA));
    expect(one({ ...filled, names: lost }).answers[0]).toMatchObject({ outcome: "blank", points: 0 });
  });
  test("a trainee whose file could not be read is told of by that file", () => {
    expect(marked([`in/${fileOf(1)}`, "It is no workbook."]).notMarked).toEqual([
      { file: `in/${fileOf(1)}`, reason: "It is no workbook." },
      { file: "(1 Ada North)", reason: "No sheet of this trainee was marked. None came back." },
      {
        file: "(2 Ben South)",
        reason: `No sheet of this trainee was marked. in/${fileOf(1)} bears this name.`,
      },
      { file: "(3 Cy West)", reason: "No sheet of this trainee was marked. None came back." },
    ]);
  });
});

describe("a sheet that came back more than once", () => {
  const whole = sheet(ADA, right(ADA));
  const told = (found: ReturnType<typeof marked>) =>
    found.notMarked.filter(({ file }) => !file.startsWith("("));
  test("with the same answers: one is marked", () => {
    const found = marked(["a.xlsx", whole], ["b.xlsx", whole]);
    expect(found.marked.map(({ file }) => file)).toEqual(["a.xlsx"]);
    expect(told(found)).toEqual([
      {
        file: "b.xlsx",
        reason: "The sheet of 1 Ada North once more, with the same answers; a.xlsx was marked.",
      },
    ]);
  });
  test("once empty: the filled one is marked", () => {
    const found = marked(["a.xlsx", sheet(ADA)], ["b.xlsx", whole]);
    expect(found.marked.map(({ file, points }) => [file, points])).toEqual([["b.xlsx", OUT_OF]]);
    expect(told(found)).toEqual([
      { file: "a.xlsx", reason: "The sheet of 1 Ada North once more, with no answers; b.xlsx was marked." },
    ]);
  });
  test("with other answers: none is, and the questions are named", () => {
    const [first, second] = set.questions.map((question) => answerName(question.key));
    const other = (...names: string[]) =>
      sheet(ADA, { ...right(ADA), ...Object.fromEntries(names.map((name) => [name, { value: 1 }])) });
    const found = marked(["a.xlsx", whole], ["b.xlsx", other(first!)]);
    expect(found.marked).toEqual([]);
    expect(told(found)).toEqual([
      {
        file: "a.xlsx",
        reason:
          "The sheet of 1 Ada North came back more than once, also as b.xlsx; the answers differ in question 1. None was marked: leave the one that counts in the folder and mark again.",
      },
      {
        file: "b.xlsx",
        reason:
          "The sheet of 1 Ada North came back more than once, also as a.xlsx; the answers differ in question 1. None was marked: leave the one that counts in the folder and mark again.",
      },
    ]);
    expect(found.notMarked.find(({ file }) => file === "(1 Ada North)")!.reason).toMatch(
      /several came back, and they differ\.$/,
    );
    expect(told(marked(["a.xlsx", whole], ["b.xlsx", other(first!, second!)]))[0]!.reason).toContain(
      "differ in questions 1, 2.",
    );
  });
  test("a copy with another name in it says so", () => {
    const copy = sheet(ADA, { ...right(ADA), [SHEET_TRAINEE]: { value: "Zoe" } });
    expect(told(marked(["a.xlsx", whole], ["b.xlsx", copy]))[0]!.reason).toMatch(
      /was marked\. The name in it is "Zoe"\.$/,
    );
  });
});

describe("the workbooks for the trainer", () => {
  const words = (book: Book): string[] =>
    book.sheets.flatMap(({ cells }) =>
      Object.values(cells).flatMap(({ value }) => (value === undefined ? [] : [String(value)])),
    );
  test("the key has each trainee's name, code and answers, as asked", () => {
    const book = trainerKey({ set, seed: SEED, trainees });
    expect(
      namedRows(book, "key_trainee")
        .flat()
        .filter((cell) => typeof cell === "string" && cell !== "Trainee"),
    ).toEqual(expect.arrayContaining(NAMES));
    const known = words(book);
    for (const trainee of trainees) {
      for (const { key: name, answer } of set.questions) {
        const value = key(trainee)[name]!;
        // The answer to its places by the language's own rounding to decimals.
        const shown =
          answer.kind === "number"
            ? String(Number((value as number).toFixed(answer.decimals)))
            : String(value);
        expect(known).toContain(shown);
      }
    }
    for (const question of set.questions) expect(known).toContain(question.task);
    expect(known).toEqual(
      expect.arrayContaining([String(SEED), set.id, set.title, "Tolerance", "Unit", "Figures"]),
    );
  });
  test("the marks have each trainee's, and what was not marked", () => {
    const found = marked([fileOf(0), sheet(ADA, right(ADA))], [fileOf(1), sheet(BEN)]);
    const known = words(marksBook(found));
    expect(known).toEqual(
      expect.arrayContaining([
        "Ada North",
        "Ben South",
        String(OUT_OF),
        "0",
        "nothing answered",
        "(3 Cy West)",
      ]),
    );
    expect(known).toContain("No sheet of this trainee was marked. None came back.");
  });
});
