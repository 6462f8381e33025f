import { faults } from "../../../src/engine/faults";
import { runsOfCable } from "../../../src/engine/estimate/runsOfCable";

const list = (lengths: (number | null)[] | undefined, cables?: (string | null)[]) => ({
  name: "lengths",
  lengths,
  cables,
  cablesName: "cables",
});

describe("the runs of one cable", () => {
  test("are gathered from all lists, whatever the case, without blanks and zeros", () => {
    expect(
      runsOfCable(
        [
          list([10, 20, null, 0, 30], ["RG-6", "rg-11", null, null, "rg-6"]),
          { ...list([40], ["RG-6"]), name: "more_lengths" },
          list(undefined),
        ],
        "Rg-6",
      ),
    ).toEqual([
      { label: "Run 1 of lengths", length: 10 },
      { label: "Run 5 of lengths", length: 30 },
      { label: "Run 1 of more_lengths", length: 40 },
    ]);
  });

  test("without a cable are all runs", () => {
    expect(runsOfCable([list([10, 20])])).toHaveLength(2);
  });

  test("give a fault that names what is missing", () => {
    expect(runsOfCable([list([10])], "RG-6")).toEqual(
      faults.missing("cables", "the cable of each run in lengths"),
    );
    expect(runsOfCable([list([10], ["RG-6"])])).toEqual(
      faults.missing("cable", "the cable to count, one of those in cables"),
    );
    expect(runsOfCable([list([10, 20], ["RG-6"])], "RG-6")).toEqual(faults.shortColumn("cables", 1, 2));
    expect(runsOfCable([list([10], [null])], "RG-6")).toEqual(faults.runWithoutCable("Run 1 of lengths", 10));
  });

  test("give the fault of a bad entry with its row", () => {
    const bad = faults.notANumber("lengths", "ten", {});
    expect(runsOfCable([{ ...list([10]), lengths: [10, bad] }])).toMatchObject({
      message: `Row 2 of lengths: ${bad.message}`,
    });
    expect(runsOfCable([{ ...list([10]), cables: [bad] }], "RG-6")).toMatchObject({
      message: `Row 1 of cables: ${bad.message}`,
    });
  });
});
