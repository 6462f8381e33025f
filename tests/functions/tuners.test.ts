/** The tuner functions on the sheet. */
import { call, describeGroup } from "../support/functionGroup";

describeGroup("Tuners");

const message = (text: string) => expect.objectContaining({ message: expect.stringContaining(text) });

describe("TUNERCOUNT", () => {
  test("a two-tuner recorder counts as two, a receiver as one (common practice, no source)", () => {
    expect(call("TUNERCOUNT", [["recorder, 2 tuners"], ["receiver"]])).toEqual([[2], [1]]);
  });

  test("quantities, blank rows and bad rows stay in their rows", () => {
    expect(
      call(
        "TUNERCOUNT",
        [["receiver"], ["recorder, 4 tuners"], [null], ["toaster"]],
        [[3], [2], [null], [1]],
      ),
    ).toEqual([[3], [8], [""], [message('receivers is "toaster", a kind with no tuner count')]]);
  });

  test("the catalogue counts first, and its blank and bad rows spoil nothing else", () => {
    const catalogue = [
      ["Lounge set", 4],
      [null, null],
      ["receiver", 2],
      ["half", null],
      ["text", "many"],
      ["double", 1],
      ["double", 3],
      [null, 7],
    ];
    const kinds = ["lounge set", "receiver", "half", "text", "double"].map((kind) => [kind]);
    expect(call("TUNERCOUNT", kinds, null, catalogue)).toEqual([
      [4],
      [2],
      [message("Row 4 of catalogue: tuners in catalogue is missing")],
      [message('Row 5 of catalogue: tuners in catalogue is "many", which is not a number')],
      [message('catalogue lists "double" twice, with 1 and with 3 tuners')],
    ]);
    expect(call("TUNERCOUNT", "receiver", 1, [["receiver"]])).toEqual(
      message("catalogue is 1 rows by 1 columns"),
    );
  });
});

describe("ALLOT and USERBANDS in line", () => {
  test("rooms go from counting to bands, with blank rows kept blank", () => {
    // By hand: room 1 has 5 tuners in two rows, room 2 has 4, room 3 has 3; 5 + 3 fill eight.
    const tuners = [[4], [1], [4], [""], [3], [0]];
    const units = call("ALLOT", tuners, 8, [["1"], ["1"], ["2"], [""], ["3"], ["4"]]);
    expect(units).toEqual([[1], [1], [2], [""], [1], ["none"]]);
    expect(call("USERBANDS", units, tuners)).toEqual([["1-4"], ["5"], ["1-4"], [""], ["6-8"], ["none"]]);
  });

  test("a list that lies in a row is answered in a row", () => {
    expect(call("ALLOT", [[5, 4, 3]], 8)).toEqual([[1, 2, 1]]);
  });

  test("capacity is one value", () => {
    expect(call("ALLOT", [[1], [1]], [[8], [8]])).toEqual(message("capacity is 2 rows by 1 columns"));
    expect(call("ALLOT", [[1], [1]], 33)).toEqual(message("it must be a whole number from 1 to 32 tuners"));
  });
});

describe("HEADUNITS", () => {
  test("by hand, down a column", () => {
    expect(call("HEADUNITS", [[0], [8], [9], [null]], 8)).toEqual([[0], [1], [2], [""]]);
  });

  test("a part of a tuner is refused", () => {
    expect(call("HEADUNITS", 1.5, 8)).toEqual(message("Count whole tuners"));
  });
});
