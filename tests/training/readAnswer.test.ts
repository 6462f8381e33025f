/** Numbers as people type them: what is read, by the rules of writing numbers. */
import { readAnswer } from "../../src/training/readAnswer";

describe("what people type", () => {
  const dB = { kind: "number", unit: "dB", decimals: 1 } as const;
  const money = { kind: "number", unit: "money", decimals: 2 } as const;
  const percent = { kind: "number", unit: "%", decimals: 1 } as const;

  test.each([
    [dB, 12.4, [12.4]],
    [dB, "12.4", [12.4]],
    [dB, "12,4", [12.4]],
    [dB, " 12,4 dB ", [12.4]],
    [dB, "12.4dB", [12.4]],
    [dB, "≈ 12.4", [12.4]],
    [dB, "−12.4", [-12.4]],
    [dB, ".5", [0.5]],
    [dB, "12·4", [12.4]],
    [dB, "1.24e1", [12.4]],
    [dB, "1,234", [1.234, 1234]],
    [dB, "1.234", [1.234]],
    [dB, "12,345", [12.345, 12_345]],
    // Digits of other scripts, and the bold and hollow ones that stand side by side in the standard.
    [dB, "١٢٫٤", [12.4]],
    [dB, "𝟏𝟐,𝟗", [12.9]],
    [dB, "𝟙𝟚.𝟛", [12.3]],
    [money, "1,234.50", [1234.5]],
    [money, "1.234,50 €", [1234.5]],
    [money, "1 234.50", [1234.5]],
    [money, "1'234.50", [1234.5]],
    [money, "1,234", [1.234, 1234]],
    [money, "1,234,567", [1234567]],
    [percent, 0.211, [0.211, 21.1]],
    [percent, "21,1 %", [21.1]],
  ])("%j of %j", (answer, typed, readings) => {
    const read = readAnswer(answer, typed);
    expect(read).toMatchObject({ kind: "number" });
    expect(read).not.toHaveProperty("unit");
    expect(read.kind === "number" && read.readings).toEqual(
      readings.map((one) => expect.closeTo(one, 9) as number),
    );
  });

  test.each(["12.4.1,2,3", "twelve", "12 or 13", "<b>12</b>", "=12+", "--12", "1,2.3.4"])(
    "%j is unclear",
    (typed) => {
      expect(readAnswer(dB, typed).kind).toBe("unclear");
    },
  );
});

describe("what stands around the number", () => {
  const number = (unit: string, more: object = {}) =>
    ({ kind: "number", unit, decimals: 1, ...more }) as const;
  const count = (unit: string) => number(unit, { exact: true });
  const readings = (unit: string, typed: unknown, more: object = {}) => {
    const read = readAnswer(number(unit, more), typed);
    return read.kind === "number" && read.unit === undefined ? read.readings : read;
  };

  test.each([
    ["deg", ["30 °", "30°", "30 deg", "30 deg.", "30 degree", "30 degrees", "30 Degrees"]],
    ["m", ["30 m", "30m", "30 metre", "30 metres", "30 meter", "30 METERS"]],
    ["dB", ["30 db", "30 DB", "30 decibel", "30 decibels"]],
    // The Greek letter and the sign for a millionth are two letters that look alike.
    ["dBµV", ["30 dB\u00b5V", "30 dB\u03bcV", "30 dbuv"]],
    ["ohm", ["30 ohm", "30 Ohms", "30 Ω", "30 \u2126"]],
    ["V", ["30 V", "30 v", "30 volt", "30 volts"]],
    ["A", ["30 a", "30 amp", "30 amps", "30 ampere", "30 amperes"]],
    ["%", ["30 %", "30%", "30 percent", "30 per cent"]],
    ["hours", ["30 hours", "30 h", "30 hour"]],
    ["money", ["30 money", "€30", "$ 30.00", "30 €", "30€"]],
  ])("a number in %s with its unit", (unit, all) => {
    for (const typed of all) expect([typed, readings(unit, typed)]).toEqual([typed, [30]]);
  });

  test("remarks that change nothing, alone and behind the unit", () => {
    for (const typed of [
      ...[
        "30 dB rounded",
        "30 approx",
        "30 approx.",
        "30 dB about",
        "30 roughly",
        "about 30 dB",
        "approx. 30",
      ],
      ...["ca. 30", "circa 30 dB", "~30", "= 30", "answer: 30", "Answer 3: 30", "loss of the run: 30 dB"],
      ...["30 dB (rounded)", "30 rounded from 30.04", "30 ± 0.1", "30 ± 0.1 dB", "30 dB ?", "30!", "30 dB."],
      ...["'30'", '"30 dB"', "“30”", "12 + 18 = 30", "15 -> 30 dB", "15 → 30", "15 ⇒ 30", "30.", "+30"],
    ])
      expect([typed, readings("dB", typed)]).toEqual([typed, [30]]);
    for (const typed of ["30 N", "30° NE", "30 deg sw", "30 degrees rounded"])
      expect([typed, readings("deg", typed)]).toEqual([typed, [30]]);
    for (const typed of ["minus 30", "-30", "- 30 dB", "–30", "﹣30", "－30", "Minus 30 dB"])
      expect([typed, readings("dB", typed)]).toEqual([typed, [-30]]);
  });

  test("what may turn the meaning round is the trainer's, word for word", () => {
    for (const [typed, behind] of [
      ["30 dB more or less", "dB more or less"],
      ["30 dB or so", "dB or so"],
      ["30 apples", "apples"],
      ["30 dB rounded wrong", "dB rounded wrong"],
      [`30 ${"x".repeat(40)}`, "x".repeat(30)],
    ] as const) {
      expect(readAnswer(number("dB"), typed)).toEqual({
        kind: "unclear",
        text: typed,
        why: `what stands behind the number is not understood: "${behind}"`,
      });
    }
    for (const typed of ["30 to 31", "30-31", "30 (2 places)", "between 30 and 31", "minus thirty"]) {
      expect(readAnswer(number("dB"), typed)).toEqual({
        kind: "unclear",
        text: typed,
        why: "no plain number",
      });
    }
  });

  test("money is a sign or the word, right behind the number", () => {
    for (const typed of ["30 apples €", "30 pocket money", "30 moneybags"])
      expect([typed, readAnswer(number("money"), typed).kind]).toEqual([typed, "unclear"]);
  });

  test("another unit is told, as it was written", () => {
    for (const unit of ["ft", "feet", "FT", "cm", "km", "in"])
      expect(readAnswer(number("m"), `30 ${unit}`)).toEqual({ kind: "number", readings: [30], unit });
    expect(readAnswer(number("V"), "30 mV")).toMatchObject({ unit: "mV" });
    expect(readAnswer(number("dBµV"), "30 dBmV")).toMatchObject({ unit: "dBmV" });
    expect(readAnswer(number("ohm"), "30 kOhm")).toMatchObject({ unit: "kOhm" });
    expect(readAnswer(number("deg"), "0.5 rad")).toMatchObject({ unit: "rad" });
  });

  test("a count may say of what; a measured number may not, nor a count that is no count", () => {
    for (const typed of ["3 head units", "3 Drop cable", "3 rows", "3 (boxes)"])
      expect(readAnswer(count("head units"), typed)).toEqual({ kind: "number", readings: [3] });
    for (const typed of ["3 or so", "3 not sure", "3 more", "3 if full", "3pcs"])
      expect(readAnswer(count("head units"), typed).kind).toBe("unclear");
    expect(readAnswer(number("dB"), "3 head units").kind).toBe("unclear");
  });

  test("a row may be called one, where a row is asked for", () => {
    for (const typed of ["row 7", "Row 7", "no. 7", "No 7", "number 7", " row  7 ", "7"])
      expect([typed, readAnswer(count("row"), typed)]).toEqual([typed, { kind: "number", readings: [7] }]);
    expect(readAnswer(number("dB"), "row 7").kind).toBe("unclear");
    expect(readAnswer(count("row"), "row seven").kind).toBe("unclear");
  });

  test("marks between digits: thousands, decimals, or neither", () => {
    expect(readings("money", "1.234")).toEqual([1.234, 1234]);
    expect(readings("money", "1.234 €")).toEqual([1.234, 1234]);
    expect(readings("money", "€ 1.234")).toEqual([1.234, 1234]);
    expect(readings("money", "12,34")).toEqual([12.34]);
    expect(readings("money", "1234,567")).toEqual([1234.567]);
    expect(readings("money", "1,234,567.8")).toEqual([1_234_567.8]);
    expect(readings("money", "1.234.567,8")).toEqual([1_234_567.8]);
    expect(readings("money", "1.234.567")).toEqual([1_234_567]);
    expect(readings("money", "12,345,678")).toEqual([12_345_678]);
    expect(readings("money", "123.456.789")).toEqual([123_456_789]);
    expect(readings("money", "12 345 678")).toEqual([12_345_678]);
    expect(readings("money", "1’234,5")).toEqual([1234.5]);
    expect(readings("m", "1\u202f234,5 m")).toEqual([1234.5]);
    expect(readings("m", "1\u00a0234")).toEqual([1234]);
    expect(readings("m", "1234")).toEqual([1234]);
    expect(readings("m", "1．5")).toEqual([1.5]);
    expect(readings("m", ",5")).toEqual([0.5]);
    expect(readings("m", "1.5e2")).toEqual([150]);
    expect(readings("m", "1,5e-1")).toEqual([0.15]);
    for (const typed of ["12 34", "1 2345", "1,,2", "1.23.456", "1,234.5.6", "1.234,5,6", "12,", "1.2,3.4"])
      expect([typed, readAnswer(number("m"), typed).kind]).toEqual([typed, "unclear"]);
  });
});

describe("cells of a spreadsheet", () => {
  const dB = { kind: "number", unit: "dB", decimals: 1 } as const;
  const percent = { kind: "number", unit: "%", decimals: 1 } as const;

  test("a share is shown as percent by its format; without one both are meant", () => {
    const of = (value: number, format?: string) => {
      const read = readAnswer(percent, format === undefined ? value : { value, format });
      return read.kind === "number" ? read.readings : read.kind;
    };
    expect(of(0.25, "0.0%")).toEqual([25]);
    expect(of(25, "0.0%")).toEqual([2500]);
    expect(of(25, "0.0")).toEqual([25]);
    expect(of(0.25, "General")).toEqual([0.25]);
    expect(of(0.25)).toEqual([0.25, 25]);
    expect(of(1)).toEqual([1, 100]);
    expect(of(-1)).toEqual([-1, -100]);
    expect(of(1.5)).toEqual([1.5]);
    expect(of(-1.5)).toEqual([-1.5]);
    expect(readAnswer(percent, "0.25")).toEqual({ kind: "number", readings: [0.25, 25] });
    expect(readAnswer(dB, { value: 0.25, format: "0.0%" })).toEqual({ kind: "number", readings: [0.25] });
  });

  test("a date or a time that the program made of what was typed", () => {
    // Day 45,658 of the sheet's calendar is 1 January 2025, so day 45,672 the 15th and 45,689 the 1st of February.
    for (const [value, format, shown, meant] of [
      [45_672, "yyyy-mm-dd", "2025-01-15", "15.1 or 1.15"],
      [45_689, "d mmm", "2025-02-01", "1.2 or 2.1"],
      [45_672.75, '[Red]"on" dd/mm', "2025-01-15", "15.1 or 1.15"],
      [0.5, "hh:mm", "12:00", "12"],
      [12.5 / 24, "h:mm", "12:30", "12.5"],
      // 5 minutes are 0.08 of an hour.
      [(5 + 5 / 60) / 24, "[h]:mm", "5:05", "5.08"],
    ] as const) {
      expect(readAnswer(dB, { value, format })).toEqual({
        kind: "unclear",
        text: shown,
        why: `the program made a date or a time of what was typed, perhaps of ${meant}`,
      });
    }
    for (const format of ["General", "0.0", '0.0 "days"', "[Red]0.0", "0.0\\d", "GENERAL"])
      expect(readAnswer(dB, { value: 12.5, format })).toEqual({ kind: "number", readings: [12.5] });
  });

  test("an empty cell is blank, unless a formula or a note stands there", () => {
    for (const raw of [undefined, null, "", "  ", {}, { format: "General" }, { value: " " }, { note: "  " }])
      expect(readAnswer(dB, raw)).toEqual({ kind: "blank" });
    expect(readAnswer(dB, { formula: "B4*B5" })).toEqual({
      kind: "unclear",
      text: "=B4*B5",
      why: "a formula without its result: open the sheet in a spreadsheet program and save it once",
    });
    expect(readAnswer(dB, { formula: "1+".repeat(40) })).toMatchObject({ text: `=${"1+".repeat(29)}1` });
    expect(readAnswer(dB, { note: "see below" })).toEqual({
      kind: "unclear",
      text: "see below",
      why: "the cell is empty, and a note hangs on it",
    });
    expect(readAnswer(dB, { note: "n".repeat(80) })).toMatchObject({ text: "n".repeat(60) });
    // With an answer in the cell a note is nobody's business.
    expect(readAnswer(dB, { value: 3, note: "see below", formula: "1+2" })).toEqual({
      kind: "number",
      readings: [3],
    });
  });

  test("words for nothing are blank", () => {
    for (const typed of [
      ...["?", "-", "–", "...", "_", "/", "n/a", "NA", "N/A.", "none", "Nothing", " ? "],
      ...["don't know", "don’t know", "dont know", "I don't know.", "I do not know", "dunno", "no answer"],
    ])
      expect([typed, readAnswer(dB, typed)]).toEqual([typed, { kind: "blank" }]);
    expect(readAnswer({ kind: "choice", choices: ["low"] }, "?")).toEqual({ kind: "blank" });
  });

  test("errors: of the reckoning, of what is lost, and others", () => {
    for (const error of ["#NUM!", "#DIV/0!", "#N/A", "#NULL!"]) {
      for (const raw of [error, ` ${error} `, { error }, { value: { error } }])
        expect(readAnswer(dB, raw)).toEqual({ kind: "error", text: error });
    }
    for (const error of ["#REF!", "#NAME?", "#VALUE!"]) {
      for (const raw of [error, { error }]) {
        expect(readAnswer(dB, raw)).toEqual({
          kind: "unclear",
          text: error,
          why: `the cell holds the error ${error}: what its formula pointed at is gone`,
        });
      }
    }
    expect(readAnswer(dB, { error: "#BUSY!" })).toEqual({ kind: "unclear", text: "#BUSY!", why: "an error" });
    expect(readAnswer(dB, "#BUSY!")).toMatchObject({ kind: "unclear", why: "no plain number" });
    expect(readAnswer(dB, true)).toEqual({ kind: "unclear", text: "true", why: "a truth value" });
    expect(readAnswer(dB, { value: false })).toEqual({
      kind: "unclear",
      text: "false",
      why: "a truth value",
    });
  });
});

describe("a word of a list", () => {
  const verdict = { kind: "choice", choices: ["low", "ok", "high"] } as const;
  const kinds = { kind: "choice", choices: ["sum is not quantity x price", "tax on the cost"] } as const;
  const word = (of: typeof verdict | typeof kinds, typed: unknown) => {
    const read = readAnswer(of, typed);
    return read.kind === "word" ? read.word : read.kind;
  };
  test("whatever its case, quotation marks, blanks and full stop", () => {
    for (const typed of [
      "OK",
      " ok ",
      "“ok”",
      "'ok'",
      '"OK".',
      "ok!",
      "ok.",
      "okay",
      "O.K.",
      "all right",
      "Ok?",
    ])
      expect([typed, word(verdict, typed)]).toEqual([typed, "ok"]);
    for (const typed of ["It is low", "it's low", "is low", "too low", "its low.", "Low!"])
      expect([typed, word(verdict, typed)]).toEqual([typed, "low"]);
  });
  test("a reason behind it takes nothing away", () => {
    for (const typed of [
      "ok (within limits)",
      "ok, 62 lies between",
      "ok; see 6",
      "ok: 62",
      "it is ok, I think",
    ])
      expect([typed, word(verdict, typed)]).toEqual([typed, "ok"]);
  });
  test("one sign for times", () => {
    for (const typed of [
      "Sum is not quantity × price",
      "sum is not quantity * price",
      "sum is not quantity*price",
      "sum  is not quantity x price.",
    ])
      expect([typed, word(kinds, typed)]).toEqual([typed, "sum is not quantity x price"]);
  });
  test("what is none of the list, or a number", () => {
    for (const typed of ["not ok", "lowish", "low or high", "(ok) low", "is it"]) {
      expect(readAnswer(verdict, typed)).toEqual({
        kind: "unclear",
        text: typed,
        why: "not one of the list",
      });
    }
    expect(readAnswer(verdict, 62)).toEqual({
      kind: "unclear",
      text: "62",
      why: "a number where a word is asked",
    });
  });
});
