/** The estimate functions on the sheet. */
import fc from "fast-check";
import { call, describeGroup } from "../support/functionGroup";
import { tries } from "../support/tries";

describeGroup("Estimate");

const message = (text: string) => expect.objectContaining({ message: expect.stringContaining(text) });

describe("REELS", () => {
  test("a row for each cable, over three lists, with a blank row kept blank", () => {
    // By hand, reels of 100: thin 60, 60, 40 go on two; thick 70, 70 on two; no run of spare.
    expect(
      call(
        "REELS",
        [[60], [70], [null], [60]],
        [[100], [100], [null], [100]],
        0,
        0,
        [["thin"], ["thick"], [null], ["thin"]],
        [["Thin"], ["Thick"], [null], ["spare"]],
        [[40]],
        [["thin"]],
        [[70]],
        [["thick"]],
      ),
    ).toEqual([[2], [2], [""], [0]]);
  });

  test("a bad run spoils only the cables that it belongs to", () => {
    const packed = (cable: string) => call("REELS", [[60], [120]], 100, 0, 0, [["thin"], ["thick"]], cable);
    expect(packed("thin")).toBe(1);
    expect(packed("thick")).toEqual(message("Run 2 of lengths is 120"));
  });

  test("a share written as a number of per cent is refused", () => {
    expect(call("REELS", [[60]], 100, 0, 10)).toEqual(
      message("waste is 10; it must be from 0 to 1. Write 0.1 or 10%"),
    );
  });

  test("a bad length is named with its row", () => {
    expect(call("REELS", [[60], ["long"]], 100)).toEqual(message('Row 2 of lengths: lengths is "long"'));
  });
});

describe("SELLPRICE", () => {
  test("leaves the margin on the price", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 1e9, noNaN: true }),
        fc.double({ min: 0, max: 0.99, noNaN: true }),
        (cost, margin) => {
          const price = call("SELLPRICE", cost, margin) as number;
          expect((price - cost) / price).toBeCloseTo(margin, 9);
        },
      ),
      { numRuns: tries(100, 1000) },
    );
  });

  test("a margin of 20 gets the sentence that says how to write it", () => {
    expect(call("SELLPRICE", 80, 20)).toEqual(message("Write 0.2 or 20% for twenty per cent"));
    expect(call("SELLPRICE", 80, 1)).toEqual(message("from 0 to less than 1"));
  });
});

describe("ROUNDMONEY", () => {
  test("defaults to two decimals, half away from zero", () => {
    expect(call("ROUNDMONEY", [[1.005], [2.675], [-1.005], [null]])).toEqual([[1.01], [2.68], [-1.01], [""]]);
    expect(call("ROUNDMONEY", 2.345, null, "HALF EVEN")).toBe(2.34);
  });

  test("never a negative zero", () => {
    expect(Object.is(call("ROUNDMONEY", -0.001), 0)).toBe(true);
  });
});
