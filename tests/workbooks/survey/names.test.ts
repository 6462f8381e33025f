/** Names of a survey: held against the workbook's lists, and those that stand for several outlets. */
import { matchName, nearestTo } from "../../../src/workbooks/survey/partNames";
import { countOf, severalIn } from "../../../src/workbooks/survey/several";

const CABLES = ["indoor drop", "outdoor drop", "armoured feeder"];

describe("a name of a list", () => {
  test.each([
    ["capitals and blanks", "cable", "  Indoor   DROP ", "indoor drop"],
    ["marks between the words", "cable", "indoor-drop", "indoor drop"],
    ["no blank", "cable", "indoordrop", "indoor drop"],
    ["a plural", "cable", "indoor drops", "indoor drop"],
    ["accents left out", "plate", "cafe outlet", "café outlet"],
    ["another order of the words", "cable", "drop, indoor", "indoor drop"],
    ["a word that only says what it is", "cable", "Cable indoor drop", "indoor drop"],
    ["the same, at the end", "cable", "indoor drop coax", "indoor drop"],
    ["and in another order", "cable", "drop cable (indoor)", "indoor drop"],
    ["of a plate", "plate", "single outlet wall plate", "single outlet"],
    ["of a receiver", "receiver", "receiver type", "receiver"],
  ])("%s", (_, key, text, name) => {
    const lists: Record<string, string[]> = {
      cable: CABLES,
      plate: ["single outlet", "café outlet"],
      receiver: ["receiver", "recorder"],
    };
    expect(matchName(key, text, lists[key]!)).toEqual({ name });
  });

  test("the very name goes before one that is like it", () => {
    expect(matchName("cable", "drops", ["drop", "Drops"])).toEqual({ name: "Drops" });
    expect(matchName("cable", "drop", ["drops", "drop"])).toEqual({ name: "drop" });
  });

  test("words of one list are not loose in another", () => {
    expect(matchName("plate", "indoor drop coax", ["indoor drop"])).toEqual({ nearest: ["indoor drop"] });
    expect(matchName("route", "wall duct", ["duct"])).toEqual({ nearest: expect.anything() });
  });

  test("where two of the list would do, both are offered and none is taken", () => {
    expect(matchName("cable", "drop indoor", ["indoor drops", "indoor-drop"])).toEqual({
      nearest: ["indoor drops", "indoor-drop"],
    });
  });

  test("words that are only loose, and marks alone, are no name", () => {
    expect(matchName("cable", "cable type", ["coax", "kabel"])).toEqual({ nearest: expect.anything() });
    expect(matchName("cable", "--", ["indoor drop"])).toEqual({ nearest: [] });
  });

  test("a short word's s, and a double one, is no plural", () => {
    expect(matchName("plate", "bus", ["bu"])).toEqual({ nearest: expect.anything() });
    expect(matchName("plate", "glass", ["glas"])).toEqual({ nearest: ["glas"] });
    expect(matchName("plate", "boxs", ["box"])).toEqual({ name: "box" });
  });

  test("a receiver that the sheets' functions know needs no list", () => {
    expect(matchName("receiver", "recorder, 4 tuners", ["receiver"])).toEqual({ name: "recorder, 4 tuners" });
    expect(matchName("cable", "recorder, 4 tuners", ["indoor drop"])).toEqual({ nearest: [] });
    // A user band for each tuner: at most 32 (EN 50607).
    expect(matchName("receiver", "recorder, 33 tuners", ["screen"])).toEqual({ nearest: [] });
  });

  test("each list is asked for itself", () => {
    expect(matchName("cable", "drop", ["drop"])).toEqual({ name: "drop" });
    expect(matchName("cable", "drop", ["pipe"])).toEqual({ nearest: [] });
    const list = ["single outlet"];
    expect(matchName("route", "single outlet plate", list)).toHaveProperty("nearest");
    expect(matchName("plate", "single outlet plate", list)).toEqual({ name: "single outlet" });
  });
});

describe("the nearest of a list", () => {
  test.each([
    ["a slip", "indor drop", ["indoor drop", "outdoor drop"]],
    ["a word that begins like it", "arm feeder", ["armoured feeder"]],
    ["letters left out", "armrd fdr", ["armoured feeder"]],
    ["nothing in common", "xyzzy", []],
    ["nothing", "", []],
  ])("%s: %s", (_, text, wanted) => {
    expect(nearestTo(text, CABLES)).toEqual(wanted);
  });

  test("three at most, the likest first, in the list's order where they are alike", () => {
    expect(nearestTo("plate", ["plates x", "plate a", "plate b", "plate c", "plate"])).toEqual([
      "plate",
      "plates x",
      "plate a",
    ]);
  });

  test("two of five letters alike are enough, one is not", () => {
    // By the edits from one to the other: three of five letters changed leaves 0.4, four leaves 0.2.
    expect(nearestTo("abxyz", ["abcde"])).toEqual(["abcde"]);
    expect(nearestTo("axyzw", ["abcde"])).toEqual([]);
    // A letter more or less is an edit as well: "abc" of "abcdefgh" is 3 of 8, but it begins like it.
    expect(nearestTo("abc", ["abcdefgh"])).toEqual(["abcdefgh"]);
    expect(nearestTo("a", ["abcdefgh"])).toEqual([]);
    expect(nearestTo("cab", ["abcdefgh"])).toEqual([]);
  });

  test("letters of a word in their order, from three on and from its first", () => {
    expect(nearestTo("rcv", ["receiver"])).toEqual(["receiver"]);
    expect(nearestTo("rvc", ["receiver"])).toEqual([]);
    expect(nearestTo("rv", ["receiver"])).toEqual([]);
    expect(nearestTo("cvr", ["receiver"])).toEqual([]);
    // A letter counts once.
    expect(nearestTo("rcc", ["receiver"])).toEqual([]);
  });

  test("a word of many counts for its share", () => {
    // One of two words: half.
    expect(nearestTo("zzzz drop", ["drop qqqqqqqqqqqq"])).toEqual(["drop qqqqqqqqqqqq"]);
    // One of three: a third.
    expect(nearestTo("zzzz drop", ["drop qqqqqqqqqqqq wwwwwwwwwwww"])).toEqual([]);
    expect(nearestTo("zzzz yyyy drop", ["drop"])).toEqual([]);
  });
});

describe("a name that stands for several outlets", () => {
  const OTHERS = ["K-1", "K-2", "K-3"];
  const namesOf = (name: string, quantity?: number, names = [name, "A", "B", "C"]): unknown =>
    severalIn(name, names, quantity)?.names;

  test.each<[string, string[]]>([
    ["A1, A2", ["A1", "A2"]],
    ["A1; A2; A3", ["A1", "A2", "A3"]],
    ["A1 & A2", ["A1", "A2"]],
    ["A1+A2", ["A1", "A2"]],
    ["A1/A2", ["A1", "A2"]],
    ["A1 and A2", ["A1", "A2"]],
    ["A1 und A2", ["A1", "A2"]],
    ["A1 et A2", ["A1", "A2"]],
    ["G-01 to G-04", ["G-01", "G-02", "G-03", "G-04"]],
    ["G-01 bis G-03", ["G-01", "G-02", "G-03"]],
    ["101 – 104", ["101", "102", "103", "104"]],
    ["101…103", ["101", "102", "103"]],
    ["101..103", ["101", "102", "103"]],
    ["101-104", ["101", "102", "103", "104"]],
    ["G01-G03", ["G01", "G02", "G03"]],
    ["G01-03", ["G01", "G02", "G03"]],
    // As many digits as they are written with.
    ["08 to 11", ["08", "09", "10", "11"]],
    ["8 to 11", ["8", "9", "10", "11"]],
    ["A8 to A11", ["A8", "A9", "A10", "A11"]],
    ["1 to 2", ["1", "2"]],
  ])("%s", (name, names) => {
    expect(severalIn(name, [name, "A", "B", "C"], undefined)).toEqual({
      names,
      words: `${names.length} outlets`,
    });
  });

  test.each([
    ["3 outlets", "3 outlets"],
    ["3 points", "3 outlets"],
    ["12 Dosen", "12 outlets"],
    ["4x", "4 outlets"],
    ["2 off", "2 outlets"],
    ["1 outlet", "1 outlets"],
    ["101 ff.", "more outlets than it names"],
    ["101 etc", "more outlets than it names"],
    ["101…", "more outlets than it names"],
    ["101 ...", "more outlets than it names"],
  ])("%s: no names", (name, words) => {
    expect(severalIn(name, OTHERS, undefined)).toEqual({ words });
  });

  test.each([
    ["a name", "A-1"],
    ["figures with a hyphen", "1-02"],
    ["figures that go down", "104-101"],
    ["the same twice", "A1 to A1"],
    ["ends of two kinds", "A1 to B4"],
    ["a single one of its kind", "1x"],
    ["a stroke between figures", "12/4"],
    ["words without a figure", "bar & grill"],
    ["one digit each", "1-4"],
    ["another number of digits", "98-102"],
    ["figures before the number", "A1-01-04"],
    ["marks that no name has", "A1, (A2)"],
  ])("%s: %s is one outlet", (_, name) => {
    expect(namesOf(name)).toBeUndefined();
  });

  test("two hundred at most", () => {
    expect(namesOf("1 to 200")).toHaveLength(200);
    expect(namesOf("1 to 201")).toBeUndefined();
  });

  test("where others of the file are written so, it is one name", () => {
    expect(namesOf("101-104", undefined, ["101-104", "101-105", "K"])).toBeUndefined();
    expect(namesOf("101-104", undefined, ["101-104", "A", "B"])).toHaveLength(4);
    // Half of the others are enough; a third is not.
    expect(namesOf("101-104", undefined, ["101-104", "102-3", "A", "B"])).toHaveLength(4);
    expect(namesOf("101-104", undefined, ["101-104", "102-3", "A"])).toBeUndefined();
    expect(namesOf("A1, A2", undefined, ["A1, A2", "B1, B2", "C"])).toBeUndefined();
    expect(namesOf("A1, A2", undefined, ["A1, A2"])).toHaveLength(2);
    // A word between the ends is never a part of a name.
    expect(namesOf("101 to 104", undefined, ["101 to 104", "105 to 108"])).toHaveLength(4);
  });

  test("the line's quantity says that as many are meant", () => {
    expect(namesOf("A1, A2", 2, ["A1, A2", "B1, B2", "C"])).toHaveLength(2);
    expect(namesOf("A1, A2", 3, ["A1, A2", "B1, B2", "C"])).toBeUndefined();
    expect(namesOf("101-104", 4, ["101-104", "101-105", "K"])).toHaveLength(4);
    expect(namesOf("101-104", 3, ["101-104", "101-105", "K"])).toBeUndefined();
    expect(namesOf("12/4", 2)).toEqual(["12", "4"]);
    expect(namesOf("12/4", 4)).toBeUndefined();
  });

  test("names are counted once for each list and pattern", () => {
    const names = ["a1", "b", "a2"];
    expect([countOf(names, /^a/), countOf(names, /^b/), countOf(names, /^c/), countOf(names, /^a/)]).toEqual([
      2, 1, 0, 2,
    ]);
    expect(countOf(["a"], /^a/)).toBe(1);
  });
});
