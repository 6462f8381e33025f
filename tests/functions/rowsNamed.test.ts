/** Faults that name the row, and arguments left out: by hand. */
import type { Argument, Matrix } from "../../src/functions/core/cells";
import { call, sentence } from "../support/functionGroup";

describe("a sum names the row of what is no amount", () => {
  test.each([
    [[[[1], ["x"], [3]]], /^Row 2 of amounts: /],
    [[[["x"], [1]]], /^Row 1 of amounts: /],
    [[[[1], [null], [""], [1e16]]], /^Row 4 of amounts: /],
    [["x"], /^amounts is "x", which is not a number/],
    [[], /^amounts is missing\. Enter the amounts to add up\./],
  ] as [Argument[], RegExp][])("%j", (args, words) => {
    expect(sentence(call("ADDMONEY", ...args))).toMatch(words);
  });
  test("blank entries are passed over, the limits themselves are taken", () => {
    expect(call("ADDMONEY", [[1], [null], [" "], [2]])).toEqual([[3]]);
    expect(call("ADDMONEY", 1e15)).toEqual([[1e15]]);
    expect(call("ADDMONEY", -1e15)).toEqual([[-1e15]]);
  });
});

describe("a bonding conductor's length", () => {
  // NEC 800.100(A)(4), from works that quote it: 20 ft in one- and two-family dwellings; 14 AWG is 2.08 mm².
  const BOND = "communications bond, one or two family";
  const word = (...args: Argument[]) => (call("BONDCHECK", ...args) as Matrix)[0]![0];
  test("is asked for by the clause that limits it, and by no other", () => {
    expect(sentence(call("BONDCHECK", BOND, 4))).toMatch(/^length is missing\. Enter the conductor's length/);
    expect(sentence(call("BONDCHECK", BOND, 4, null, "ft"))).toMatch(/^length is missing/);
    expect(word("mast earthing, copper", 16)).toBe("no flag");
    expect(word("mast earthing, copper", 16, 100, "ft")).toBe("no flag");
  });
  test("is held to 20 ft, in feet and in metres", () => {
    expect([20, 20.1].map((feet) => word(BOND, 4, feet, "ft"))).toEqual(["no flag", "look closer"]);
    // 20 ft are 6.096 m.
    expect([6.09, 6.1].map((metres) => word(BOND, 4, metres, "m"))).toEqual(["no flag", "look closer"]);
  });
});

describe("a catalogue of receivers", () => {
  const count = (kind: string, quantity: number, table: Matrix) => call("TUNERCOUNT", kind, quantity, table);
  test("comes before the built-in kinds, whatever the blanks and case; rows without a kind are skipped", () => {
    expect(
      count("BAR  set", 2, [
        ["bar set", 3],
        [null, 9],
        [" ", 8],
      ]),
    ).toBe(6);
    expect(count("receiver", 2, [["Receiver", 2]])).toBe(4);
    expect(count("receiver", 2, [["other", 2]])).toBe(2);
    expect(count("12", 2, [[12, 4]])).toBe(8);
    expect(
      count("bar", 2, [
        ["bar", 3],
        ["Bar", 3],
      ]),
    ).toBe(6);
  });
  test.each([
    [
      "three columns",
      "bar",
      [["bar", 3, 1]],
      /^catalogue is 1 rows by 3 columns; it must be two columns: kind and tuners\./,
    ],
    ["one column", "bar", [["bar"]], /^catalogue is 1 rows by 1 columns/],
    [
      "twice with other figures",
      "bar",
      [
        ["bar", 3],
        ["BAR", 4],
      ],
      /^catalogue lists "bar" twice, with 3 and with 4 tuners/,
    ],
    [
      "no figure",
      "bar",
      [
        ["x", 1],
        ["bar", ""],
      ],
      /^Row 2 of catalogue: tuners in catalogue is missing\. Enter a number\./,
    ],
    ["33 tuners", "bar", [["bar", 33]], /^Row 1 of catalogue: tuners in catalogue is 33 tuners/],
    ["half a tuner", "bar", [["bar", 1.5]], /^Row 1 of catalogue: tuners in catalogue is 1\.5 tuners/],
    [
      "a fault and a figure",
      "bar",
      [
        ["bar", "x"],
        ["bar", 2],
      ],
      /^Row 1 of catalogue: /,
    ],
  ] as [string, string, Matrix, RegExp][])("%s spoils that kind", (_, kind, table, words) => {
    expect(sentence(count(kind, 1, table))).toMatch(words);
  });
  test("and no other kind", () => {
    expect(count("receiver", 3, [["bar", 33]])).toBe(3);
    expect(count("bar", 1, [["bar", 32]])).toBe(32);
    expect(count("bar", 1, [["bar", 0]])).toBe(0);
  });
});

test("a tree whose lists differ in length names the short one", () => {
  const ids = [["a"], ["b"]];
  for (const name of ["TREELOSS", "TREEROOT"]) {
    const losses = name === "TREELOSS" ? [[[1], [2]]] : [];
    expect(sentence(call(name, ids, [["H1"]], ...losses, [["H1"]]))).toBe(
      "fed_from has 1 entries where the other columns have 2. Give columns of one length.",
    );
    expect(sentence(call(name, [["a"]], [["H1"], ["H1"]], ...losses, [["H1"]]))).toMatch(
      /^ids has 1 entries where the other columns have 2/,
    );
  }
});
