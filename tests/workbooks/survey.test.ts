/** What is understood of site surveys as people have them. */
import fc from "fast-check";
import { decodedText } from "../../src/hosts/file/decodedText";
import { FileTrouble } from "../../src/hosts/file/fileTrouble";
import { readSurveyFile } from "../../src/hosts/file/readSurveyFile";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { previewText, takenFor } from "../../src/workbooks/survey/preview";
import { mergeOutlets, type RoomsRow } from "../../src/workbooks/survey/merge";
import type { Survey } from "../../src/workbooks/survey/survey";
import { writingOf } from "../../src/workbooks/typed/writing";
import { bookOf, emptySheet } from "../support/books";
import { tries } from "../support/tries";

const read = (text: string, unit: "m" | "ft" = "m"): Promise<Survey> =>
  readSurveyFile(new TextEncoder().encode(text), { unit });
const runs = ({ rows }: Survey): unknown[] => rows.map(({ run }) => run);
const reasons = ({ troubles }: Survey): Record<number, string> =>
  Object.fromEntries(troubles.map(({ line, reason }) => [line, reason]));

const ONE = { outlet: "A-1", receiver: "receiver", run: 12.5 };

describe("the same survey, as different programs save it", () => {
  test.each([
    ["commas", "outlet,receiver,run\nA-1,receiver,12.5\n", "text, commas, UTF-8"],
    ["semicolons", "outlet;receiver;run\nA-1;receiver;12.5\n", "text, semicolons, UTF-8"],
    ["tabs", "outlet\treceiver\trun\nA-1\treceiver\t12.5\n", "text, tabs, UTF-8"],
    ["line ends of another system", "outlet,receiver,run\r\nA-1,receiver,12.5\r\n", "text, commas, UTF-8"],
    ["a byte-order mark", "\uFEFFoutlet,receiver,run\nA-1,receiver,12.5\n", "text, commas, UTF-8"],
    ["no line end at the end", "outlet,receiver,run\nA-1,receiver,12.5", "text, commas, UTF-8"],
    [
      "capitals, another order, blanks",
      " RUN ; Outlet ID ; Receiver Kind \n 12.5 ; A-1 ; receiver \n",
      "text, semicolons, UTF-8",
    ],
    [
      "a decimal comma among semicolons",
      "outlet;receiver;run\nA-1;receiver;12,5\n",
      "text, semicolons, UTF-8",
    ],
    ["trailing empty cells", "outlet,receiver,run,,\nA-1,receiver,12.5,,,,\n", "text, commas, UTF-8"],
  ])("%s", async (_, text, source) => {
    const survey = await read(text);
    expect(survey).toMatchObject({ source, rows: [ONE], troubles: [] });
  });

  test.each(["utf-16le", "utf-16be"] as const)("%s, with and without its mark", async (encoding) => {
    const bytes = (text: string): Uint8Array => {
      const little = Buffer.from(text, "utf16le");
      return encoding === "utf-16le" ? little : little.swap16();
    };
    const text = "outlet\treceiver\trun\tnote\nA-1\treceiver\t12.5\tKüche\n";
    for (const mark of ["\uFEFF", ""]) {
      const survey = await readSurveyFile(bytes(mark + text), { unit: "m" });
      expect(survey).toMatchObject({ source: "text, tabs, UTF-16", rows: [{ ...ONE, note: "Küche" }] });
    }
  });

  test("Windows-1252, where the bytes are no UTF-8", async () => {
    // 0xFC is ü and 0x80 is € in Windows-1252; neither stands alone in UTF-8.
    const bytes = Buffer.from("outlet;receiver;run;note\nA-1;receiver;12.5;K\xFCche, 5 \x80\n", "latin1");
    expect(await readSurveyFile(bytes, { unit: "m" })).toMatchObject({
      source: "text, semicolons, Windows-1252",
      rows: [{ ...ONE, note: "Küche, 5 €" }],
    });
  });

  test("a workbook: the first sheet with a head row that fits, numbers as numbers, rows as they are counted there", async () => {
    const book = bookOf(
      { ...emptySheet("Read me"), cells: { A1: { value: "outlet" } } },
      {
        ...emptySheet("Survey"),
        cells: {
          B2: { value: "Survey of an invented house" },
          B4: { value: "Outlet" },
          C4: { value: "Receiver" },
          D4: { value: "Run [ft]" },
          E4: { value: "Longest run (m)" },
          B6: { value: "A-1" },
          C6: { value: "receiver" },
          D6: { value: 100 },
          E6: { formula: "D6/2" },
          B7: { value: 7 },
          C7: { value: "receiver" },
          D7: { value: -3 },
        },
        results: { E6: 50 },
        rowCount: 7,
        columnCount: 5,
      },
    );
    const survey = await readSurveyFile(await writeXlsx(book), { unit: "m" });
    // 100 ft at 0.3048 m, the international foot.
    expect(survey).toMatchObject({
      source: 'sheet "Survey" of a workbook',
      rows: [{ outlet: "A-1", receiver: "receiver", run: 30.48, longest: 50 }],
      notes: ["1 line above the head row is passed over."],
    });
    expect(reasons(survey)[7]).toMatch(/^run: “-3” is -3 ft; here it must be from 0.1 to 2000 ft/);
  });

  test("one of our own workbooks: its Rooms sheet, with the line of units below the heads", async () => {
    const survey = await readSurveyFile(await writeXlsx(recalculate(layOut(multiRoom, guestHouse))), {
      unit: "m",
    });
    expect(survey.source).toBe('sheet "Rooms" of a workbook');
    expect(survey.troubles).toEqual([]);
    expect(survey.rows).toEqual(
      guestHouse.blocks!.rooms!.map((row) =>
        Object.fromEntries(Object.entries(row).filter(([, value]) => value !== "")),
      ),
    );
    expect(survey.notes.join(" ")).toMatch(/Line 4 holds units/);
  });
});

describe("the head row", () => {
  test("stands within the first 20 lines; what is above it is passed over and told", async () => {
    const title = "Site survey,,\nby a demonstrator,,\n\n";
    const survey = await read(`${title}outlet,receiver,run\nA-1,receiver,12.5\nA-2,receiver,x\n`);
    expect(survey.rows).toEqual([ONE]);
    expect(survey.notes[0]).toBe("2 lines above the head row are passed over.");
    expect(Object.keys(reasons(survey))).toEqual(["6"]);
  });

  test("on line 21 it is too far down, on line 20 it is not", async () => {
    const below = (lines: number): string =>
      `${"word\n".repeat(lines)}outlet,receiver,run\nA-1,receiver,12.5\n`;
    expect((await read(below(19))).rows).toHaveLength(1);
    expect(reasons(await read(below(20)))[1]).toMatch(/The head row lacks "outlet", "run"/);
  });

  test("tells which columns it uses, which not, and in which unit", async () => {
    const survey = await read(
      "Outlet;Receiver;Length ft;Paint;Longest run (m);Room type\nA-1;receiver;10;blue;5;flat\n",
    );
    expect(survey.columns.map((one) => [one.head, takenFor(one, "m")])).toEqual([
      ["Outlet", "outlet"],
      ["Receiver", "receiver"],
      ["Length ft", "run, in ft, converted to m"],
      ["Paint", "not used"],
      ["Longest run (m)", "longest run, in m"],
      ["Room type", "price group"],
    ]);
    expect(survey.rows).toEqual([
      { outlet: "A-1", receiver: "receiver", run: 3.048, longest: 5, kind: "flat" },
    ]);
  });

  test.each([
    ["run (ft)", "m", 3.048],
    ["run [feet]", "m", 3.048],
    ["Run_ft", "m", 3.048],
    ["run, ft", "m", 3.048],
    ["length in feet", "m", 3.048],
    ["run (')", "m", 3.048],
    ["run (m)", "m", 10],
    ["run", "m", 10],
    ["run", "ft", 10],
    ["run (metres)", "ft", 32.808399],
    ["Cable length (m)", "ft", 32.808399],
    ["run (m or ft)", "ft", 10],
  ] as const)("%s into %s", async (head, unit, wanted) => {
    expect(runs(await read(`outlet;receiver;${head}\nA;receiver;10\n`, unit))).toEqual([wanted]);
  });

  test("a line of units below it counts, where the head names none", async () => {
    expect(runs(await read("outlet;receiver;run\n;;ft\nA;receiver;10\n"))).toEqual([3.048]);
    expect(runs(await read("outlet;receiver;run (m)\n;;ft\nA;receiver;10\n"))).toEqual([10]);
  });

  test("two columns of one meaning: the first is used, the second is not", async () => {
    const survey = await read("outlet,id,receiver,run\nA,B,receiver,1\n");
    expect(survey.rows[0]!.outlet).toBe("A");
    expect(survey.columns.map((one) => [one.head, takenFor(one, "m")])[1]).toEqual(["id", "not used"]);
  });
});

describe("numbers", () => {
  const semicolons = (...cells: string[]): Promise<Survey> =>
    read(`outlet;receiver;run\n${cells.map((cell, index) => `A${index};receiver;${cell}`).join("\n")}\n`);
  const commas = (...cells: string[]): Promise<Survey> =>
    read(`outlet,receiver,run\n${cells.map((cell, index) => `A${index},receiver,"${cell}"`).join("\n")}\n`);

  test("a decimal comma among semicolons is a point, and the preview says so", async () => {
    const survey = await semicolons("1,5", "12", "0,75", "0,500");
    expect(runs(survey)).toEqual([1.5, 12, 0.75, 0.5]);
    expect(survey.notes[0]).toBe('The decimal commas of "run" are read as points: 1,5 is 1.5.');
  });

  // A cell in quotes is one cell whatever parts the others: 1,5 can be nothing else.
  test("among commas, in a cell of its own, as well", async () => {
    expect(runs(await commas("1,5", "12,0"))).toEqual([1.5, 12]);
    expect(runs(await commas("1,5", "12"))).toEqual([1.5, 12]);
  });

  test("1,500 can be two numbers and is refused, wherever it stands", async () => {
    for (const survey of [await semicolons("1,500", "2,5"), await commas("1,500", "2,5")]) {
      expect(runs(survey)).toEqual([2.5]);
      expect(reasons(survey)[2]).toMatch(/“1,500” can be 1500 or 1\.5\. Type 1500 or 1\.5\./);
    }
  });

  test("where the workbook's people write decimals with a comma, it is one and a half", async () => {
    const file = new TextEncoder().encode("outlet;receiver;run (m)\nA;receiver;1,500\nB;receiver;1.500\n");
    const survey = await readSurveyFile(file, { unit: "m", writing: writingOf("German")! });
    expect(runs(survey)).toEqual([1.5]);
    expect(reasons(survey)[3]).toMatch(/“1\.500” can be 1500 or 1,5\./);
  });

  test("points and commas in one column: what is unmistakable is read, and 1.500 is not", async () => {
    const survey = await semicolons("1,5", "2.5", "1.500", "3");
    expect(runs(survey)).toEqual([1.5, 2.5, 3]);
    expect(reasons(survey)[4]).toMatch(/can be 1500 or 1\.5/);
  });

  test("with points alone 1.500 is one and a half", async () => {
    expect(runs(await semicolons("1.500", "2.5"))).toEqual([1.5, 2.5]);
  });

  test("a unit in the cell is read, and goes before the head's", async () => {
    expect(runs(await semicolons("12 m", "950 cm", "10 ft", "41' 6\"", "1.234,5"))).toEqual([
      12, 9.5, 3.048, 12.6492, 1234.5,
    ]);
  });

  test.each([
    "12 kg",
    "1,2,3",
    "one",
    "1e3",
    "0x10",
    "∞",
    "NaN",
    "--1",
    "=1+1",
    "#REF!",
    "15 00",
    "-3",
    "2001",
    "1e999",
  ])("%s is refused with its line and a reason", async (cell) => {
    const survey = await semicolons("10", cell);
    expect(runs(survey)).toEqual([10]);
    expect(reasons(survey)[3]!.length).toBeGreaterThan(20);
  });

  test("a quantity with a decimal comma is judged as the number it is", async () => {
    const survey = await read("outlet;receiver;quantity;run\nA;receiver;1,5;10\nB;receiver;2,0;10\n");
    expect(survey.rows.map(({ quantity }) => quantity)).toEqual([2]);
    expect(reasons(survey)[2]).toMatch(/^how many: “1,5” is not a whole number/);
  });
});

describe("files that are no survey", () => {
  const bytes = (...values: number[]): Uint8Array => new Uint8Array(values);
  test.each([
    ["a picture", bytes(0x89, 0x50, 0x4e, 0x47, 0, 0, 0, 13, 0, 0), /neither text nor a workbook/],
    ["an old workbook", bytes(0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1), /old Excel workbook/],
    ["half an archive", bytes(0x50, 0x4b, 3, 4, 1, 2, 3), /cut short|damaged/],
    ["too large", new Uint8Array(20 * 1024 * 1024 + 1), /a survey or price list has at most 20 MiB/],
  ])("%s: a sentence", async (_, file, sentence) => {
    await expect(readSurveyFile(file, { unit: "m" })).rejects.toThrow(FileTrouble);
    await expect(readSurveyFile(file, { unit: "m" })).rejects.toThrow(sentence);
  });

  test("an empty file, and one of blanks", async () => {
    for (const text of ["", "\n\n", "\n , \n", "\uFEFF"])
      expect(reasons(await read(text))[1]).toMatch(/The file is empty/);
  });

  test("any bytes: an understanding or a sentence, never another exception", async () => {
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 200 }), async (file) => {
        try {
          const { rows } = await readSurveyFile(file, { unit: "m" });
          expect(Array.isArray(rows)).toBe(true);
        } catch (error) {
          expect(error).toBeInstanceOf(FileTrouble);
        }
      }),
      { numRuns: tries(50, 500) },
    );
  });

  test("any cells: every line is a row or a trouble", async () => {
    const cell = fc
      .string({ maxLength: 8 })
      .map((text) => text.replace(/[\p{Cc}"]/gu, ""))
      .filter((text) => text.trim() !== "");
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.tuple(cell, cell, cell), { minLength: 1, maxLength: 20 }),
        async (lines) => {
          const survey = await read(
            `outlet\treceiver\trun\n${lines.map((line) => line.join("\t")).join("\n")}\n`,
          );
          expect(survey.rows.length + survey.troubles.length).toBe(lines.length);
          for (const { run } of survey.rows) expect(Number.isFinite(run)).toBe(true);
        },
      ),
      { numRuns: tries(50, 500) },
    );
  });

  test("decoding: nothing with a zero in it is text", () => {
    expect(decodedText(new Uint8Array([65, 0, 0, 66, 67]))).toBeUndefined();
    expect(decodedText(new Uint8Array([0xff, 0xfe, 0, 0, 65, 0]))).toBeUndefined();
  });
});

test("the preview in words: source, columns, first rows, notes, bad lines", async () => {
  const lines = Array.from({ length: 12 }, (_, index) => `A-${index};receiver;${index},5`).join("\n");
  const survey = await read(`outlet;receiver;run (ft)\n${lines}\nbad;receiver;-1\n`);
  const rooms: RoomsRow[] = [
    { offset: 1, cells: { outlet: "A-1", receiver: "receiver", run: 0.5 } },
    { offset: 2, cells: { outlet: "Z-1", run: 3 } },
  ];
  const text = previewText(survey, "m", mergeOutlets(survey.rows, rooms));
  expect(text).toContain("Read as text, semicolons, UTF-8.");
  expect(text).toMatch(/run \(ft\) {2}run, in ft, converted to m/);
  expect(text).toMatch(
    /11 outlets to add:\n {2}Outlet {2}Receiver {2}Run \(m\)\n {2}A-0 {5}receiver {2}0\.1524\n/,
  );
  expect(text).toContain("and 1 outlet more");
  // 1.5 ft at 0.3048 m.
  expect(text).toMatch(/1 outlet that changes:\n {2}A-1: run: 0\.5 → 0\.4572\n/);
  expect(text).toMatch(/not in the survey:\n {2}Z-1\n/);
  expect(text).toMatch(/Bad lines:\n {2}line 14 \(bad\): run: “-1” is -1 ft/);
  expect(text).toMatch(/nothing was written\.$/);
});

test.each([
  [
    "a mark for the same as above",
    'outlet;receiver;run\nA-1;receiver;12.5\nA-2;";8\nA-3;receiver;9\n',
    [12.5, 8, 9],
    [],
  ],
  [
    "after a cell with a line end and a doubled mark that is closed",
    'outlet,receiver,run,note\nA-1,receiver,12.5,"by the ""old""\ndoor"\nA-2,receiver,8,"left\nA-3,receiver,9,\n',
    [12.5, 9],
    [4],
  ],
])("a quotation mark that is never closed takes no lines with it: %s", async (_, text, lengths, asked) => {
  const survey = await read(text);
  expect(runs(survey)).toEqual(lengths);
  expect(survey.rows.map(({ receiver }) => receiver)).toEqual(lengths.map(() => "receiver"));
  expect(survey.troubles.map(({ line }) => line)).toEqual(asked);
});

test("quotation marks that are closed, or stand inside a cell, are no trouble", async () => {
  const survey = await read(
    'outlet,receiver,run,note\nA-1,receiver,12.5,"a ""b"""\nA-2,receiver,8,5" pipe\nA-3,receiver,9,""\n',
  );
  expect(survey.troubles).toEqual([]);
  expect(runs(survey)).toEqual([12.5, 8, 9]);
});
