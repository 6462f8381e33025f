import { plain } from "../../../src/engine/argumentNames";
import { faults, isFault, type Fault } from "../../../src/engine/faults";
import { runsOfCable } from "../../../src/engine/estimate/runsOfCable";

const list = (lengths: (number | null)[] | undefined, cables?: (string | null)[]) => ({
  name: "lengths",
  lengths,
  cables,
  cablesName: "cables",
});

/** The runs with their labels as they are read; a fault by its sentence alone. */
function gathered(...given: Parameters<typeof runsOfCable>): unknown {
  const runs = runsOfCable(...given);
  return isFault(runs)
    ? { code: runs.code, message: runs.message }
    : runs.map(({ label, length }) => ({ label: plain(label), length }));
}
const sentence = ({ code, message }: Fault): unknown => ({ code, message });

describe("the runs of one cable", () => {
  test("are gathered from all lists, whatever the case, without blanks and zeros", () => {
    expect(
      gathered(
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
    expect(gathered([list([10])], "RG-6")).toEqual(
      sentence(faults.missing("cables", "the cable of each run in lengths")),
    );
    expect(gathered([list([10], ["RG-6"])])).toEqual(
      sentence(faults.missing("cable", "the cable to count, one of those in cables")),
    );
    expect(runsOfCable([list([10, 20], ["RG-6"])], "RG-6")).toEqual(faults.shortColumn("cables", 1, 2));
    expect(gathered([list([10], [null])], "RG-6")).toEqual(
      sentence(faults.runWithoutCable("Run 1 of lengths", 10)),
    );
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

  test("count each cable of a bundle, one where nothing says how many", () => {
    const bundle = { ...list([18, 4, 21], ["drop", "drop", "drop"]), counts: [4, null, 0] };
    expect(gathered([bundle], "drop")).toEqual([
      ...Array.from({ length: 4 }, () => ({ label: "Run 1 of lengths", length: 18 })),
      { label: "Run 2 of lengths", length: 4 },
    ]);
    expect(runsOfCable([{ ...bundle, counts: [4] }], "drop")).toEqual(faults.shortColumn("counts", 1, 3));
    const bad = faults.notANumber("counts", "four", {});
    expect(runsOfCable([{ ...bundle, counts: [bad, 1, 1] }], "drop")).toMatchObject({
      message: `Row 1 of counts: ${bad.message}`,
    });
  });
});
