/** The bonding and mounting functions on the sheet. */
import { allFunctions } from "../../src/functions/all";
import { call, describeGroup, sentence } from "../support/functionGroup";

describeGroup("Bonding and mounting");

test("every function of the group carries its caution", () => {
  const group = allFunctions.filter((one) => one.group === "Bonding and mounting");
  for (const { caution } of group) expect(caution).toMatch(/defer to the local/i);
});

test("BONDCHECK takes feet, keeps blank rows blank, and one bad row to itself", () => {
  const kind = "communications bond, one or two family";
  const rows = call(
    "BONDCHECK",
    [[kind], [kind], [null], ["mast earthing, Copper"], ["string"]],
    [[2.1], [2.1], [null], [10], [1]],
    [[20], [20.1], [null], [null], [null]],
    "ft",
  ) as unknown[][];
  expect(rows.map(([word]) => word).slice(0, 4)).toEqual(["no flag", "look closer", "", "look closer"]);
  expect(rows[4]![0]).toMatchObject({ message: expect.stringContaining('kind is "string"') });
});

test("a conductor without the length that its clause limits is asked for it", () => {
  expect(sentence(call("BONDCHECK", "communications bond, one or two family", 4))).toContain(
    "length is missing",
  );
});

test("a wind speed in miles an hour or a diameter in centimetres is refused", () => {
  expect(sentence(call("WINDLOAD", 120, 1.2))).toContain("100 mph are 44.7");
  expect(sentence(call("WINDLOAD", 42, 120))).toContain("not centimetres");
});

test("the force goes on into the mast, down a column", () => {
  // By hand: 712.2 N × 1.2 m ÷ 9193 mm³ (handbook, from memory) = 93 MPa.
  const force = call("WINDLOAD", [[45], [0]], 0.75) as number[][];
  const stress = call("MASTSTRESS", force, 1.2, 60.325, 3.912) as number[][];
  expect(Math.abs(stress[0]![0]! - 93)).toBeLessThan(0.3);
  expect(stress[1]![0]).toBe(0);
});
