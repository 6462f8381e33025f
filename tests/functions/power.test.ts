/** The power functions on the sheet. */
import fc from "fast-check";
import { call, describeGroup, sentence } from "../support/functionGroup";
import { tries } from "../support/tries";

describeGroup("Power");

describe("columns and faults", () => {
  test("one bad row does not spoil its neighbours", () => {
    const result = call("LOADVOLTS", 24, [[0.25], ["a"], [""], [0.5]], [[4], [4], [""], [4]]) as unknown[][];
    expect(result[0]![0]).toBe(23);
    expect(sentence([result[1]!] as never)).toBe(
      'load is "a", which is not a number. Enter a number from 0 to 1000.',
    );
    expect(result[2]![0]).toBe("");
    expect(result[3]![0]).toBe(22);
  });

  test("a load that cannot be fed says so", () => {
    expect(sentence(call("LOADVOLTS", 24, 12, 15.6, "W"))).toBe(
      "There is no operating point: 24 V through 15.6 ohm cannot feed a load of 12 W. Shorten the run, take a cable of lower resistance, or raise the supply.",
    );
    expect(sentence(call("VOLTDROP", 24, 3, 10))).toContain("cannot feed a load of 3 A");
  });

  test("the loop resistance comes from the cable table when the name is in it", () => {
    const table = [
      ["House cable", "", 0.7, 0, 0.3, 10],
      ["No loop", "", 0.7, 0, 0.3, ""],
      ["Borrowed", "series 11, copper", "", "", "", ""],
    ];
    expect(call("LOOPOHMS", "house  CABLE", 200, 20, "m", table)).toBe(20);
    expect(sentence(call("LOOPOHMS", "no loop", 200, 20, "m", table))).toContain(
      'The cable "No loop" has no loop resistance in the cable table',
    );
    expect(call("LOOPOHMS", "borrowed", 200, 20, "m", table)).toBe(
      call("LOOPOHMS", "series 11, copper", 200),
    );
  });

  test("hot copper: 10 ohm at 20 °C are 11.965 ohm at 70 °C (10·(1 + 0.00393·50), by hand)", () => {
    const table = [["a", "", 0.7, 0, 0.3, 10]];
    expect(call("LOOPOHMS", "a", 100, 70, "m", table)).toBeCloseTo(11.965, 12);
  });

  test("LONGESTRUN answers in the unit asked for", () => {
    const metres = call("LONGESTRUN", 24, 21, 0.25, "series 6") as number;
    const feet = call("LONGESTRUN", 24, 21, 0.25, "series 6", "A", 20, "ft") as number;
    expect(feet * 0.3048).toBeCloseTo(metres, 9);
    expect(sentence(call("LONGESTRUN", 20, 21, 0.25, "series 6"))).toBe(
      "least_volts is 21 V, above supply, which is 20 V. Give the lower value first.",
    );
    expect(sentence(call("LONGESTRUN", 24, 21, 0, "series 6"))).toContain(
      "load is 0; it must be more than 0",
    );
  });
});

test("LOADVOLTS and VOLTDROP add to the supply", () => {
  const volts = fc.double({ min: 5, max: 60, noNaN: true });
  const ohms = fc.double({ min: 0, max: 10, noNaN: true });
  fc.assert(
    fc.property(
      volts,
      fc.double({ min: 0, max: 0.4, noNaN: true }),
      ohms,
      fc.constantFrom("A", "W"),
      (...args) => {
        const sum = (call("LOADVOLTS", ...args) as number) + (call("VOLTDROP", ...args) as number);
        expect(Math.abs(sum - args[0])).toBeLessThanOrEqual(1e-12 * args[0]);
      },
    ),
    { numRuns: tries(100, 1000) },
  );
});
