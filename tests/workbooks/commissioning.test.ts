/** The multi-room template's Alignment, Commissioning, Diagnosis and Causes, filled as a crew would. */
import { CAUSES } from "../../src/engine/diagnosis/causes";
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { isBookError, type Book } from "../../src/workbooks/book";
import type { JobInputs } from "../../src/workbooks/definition";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { diagnosisOf } from "../../src/workbooks/multiRoom/diagnosisOf";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { namedColumn, namedRows, namedValue } from "../../src/workbooks/named";
import { referencePrice, type Job } from "../support/referencePrice";
import { BELOW_V, suppliedBelow } from "../support/suppliedBelow";
import { recalculated, withLibreOffice } from "../support/tools";

const rooms = guestHouse.blocks!.rooms!;
/** Levels of a program of the tests' own: low cold, low hot, high cold, high hot. */
const { levels } = referencePrice(suppliedBelow as unknown as Job);
const middle = (outlet: string): [number, number] => {
  const [lowCold, lowHot, highCold, highHot] = levels.get(outlet)!;
  return [(lowCold! + lowHot!) / 2, (highCold! + highHot!) / 2];
};

interface Built {
  readonly low?: number;
  readonly high?: number;
  readonly volts?: number;
}

/** The guest house, supplied from below so that volts are predicted too, with readings: as predicted, plus what a test says of an outlet. */
function measured(
  off: (outlet: string, row: Readonly<Record<string, number | string>>) => Built | undefined,
  more: JobInputs["blocks"] = {},
): Book {
  const inputs: JobInputs = {
    ...suppliedBelow,
    blocks: {
      ...suppliedBelow.blocks,
      ...more,
      rooms: rooms.map((row) => {
        const built = off(String(row.outlet), row);
        if (!built) return row;
        const [low, high] = middle(String(row.outlet));
        return {
          ...row,
          built_low: low + (built.low ?? 0),
          built_high: high + (built.high ?? 0),
          ...(built.volts !== undefined && { built_volts: built.volts }),
        };
      }),
    },
  };
  return recalculate(layOut(multiRoom, inputs));
}

const at = (book: Book, column: string, outlet: string) =>
  namedColumn(book, column)[namedColumn(book, "rooms_outlet").indexOf(outlet)];

test("nothing measured: the sheet says so, and every outlet waits", () => {
  const book = recalculate(layOut(multiRoom, guestHouse));
  expect(namedValue(book, "diagnosis_cause")).toBe("nothing is measured yet");
  expect(new Set(namedColumn(book, "commission_verdict").filter((word) => word !== ""))).toEqual(
    new Set(["to measure"]),
  );
  expect(diagnosisOf(book)).toMatchObject({ outlets: 24, measured: [] });
});

test("volts predicted at an outlet: the supply's, and none below a device that passes no power", () => {
  const book = recalculate(layOut(multiRoom, suppliedBelow));
  expect(at(book, "commission_volts_due", "G-01")).toBe(BELOW_V);
  expect(at(book, "commission_volts_due", "F-09")).toBe(BELOW_V);
  expect(at(book, "commission_volts_due", "A-01")).toBe(0);
  expect(at(book, "commission_volts_due", "A-05")).toBe(0);
  // Behind the diode of a loop-through plate, though not at the outlet after it.
  expect(at(book, "commission_volts_due", "F-06")).toBe(0);
  expect(at(book, "commission_volts_due", "F-07")).toBe(BELOW_V);
});

test("where receivers feed from their outlets, none stand there while they are unplugged", () => {
  const book = recalculate(layOut(multiRoom, guestHouse));
  for (const { outlet } of rooms.filter((row) => String(row.outlet).startsWith("A")))
    expect(at(book, "commission_volts_due", String(outlet))).toBe(0);
});

test("readings as predicted: nothing stands out, every outlet is ok", () => {
  const book = measured(() => ({ volts: 24 }));
  expect(namedValue(book, "diagnosis_cause")).toBe("nothing stands out");
  expect(at(book, "commission_verdict", "G-01")).toBe("ok");
  expect(diagnosisOf(book)!.measured).toHaveLength(24);
});

describe("an unrated splitter behind one outlet", () => {
  const book = measured((outlet) =>
    outlet === "G-07" ? { low: -4, high: -12.5, volts: 0.1 } : { volts: 23.9 },
  );

  test("comes first with its place, evidence and next measurement", () => {
    const [first] = diagnosisOf(book)!.causes;
    expect(first).toMatchObject({ cause: "unrated splitter in the run", where: "G-07" });
    expect(first!.evidence).toContain(
      "−4.0 dB at the lowest frequency and −12.5 dB at the highest frequency",
    );
    expect(first!.evidence).toContain("0.1 V where 24.0 V was predicted");
    expect(first!.next).toContain("1000 MHz");
  });

  test("stands beside its outlet with its probability; the others are ok", () => {
    expect(at(book, "commission_verdict", "G-07")).toBe("look");
    expect(at(book, "commission_cause", "G-07")).toBe("unrated splitter in the run");
    expect(at(book, "commission_chance", "G-07")).toBe(diagnosisOf(book)!.causes[0]!.probability);
    expect(at(book, "commission_cause", "G-06")).toBe("");
    expect(at(book, "commission_verdict", "G-06")).toBe("ok");
  });

  test("no error shows anywhere", () => {
    const errors = book.sheets.flatMap((sheet) =>
      Object.entries(sheet.results).flatMap(([cell, result]) =>
        isBookError(result) ? [`${sheet.name}!${cell} ${result.message}`] : [],
      ),
    );
    expect(errors).toEqual([]);
  });

  test("its chance set to nought on Causes: another cause takes its place", () => {
    const without = measured(
      (outlet) => (outlet === "G-07" ? { low: -4, high: -12.5, volts: 0.1 } : { volts: 23.9 }),
      {
        causes: guestHouse.blocks!.causes!.map((row) =>
          row.cause === "unrated splitter in the run" ? { ...row, chance: 0 } : row,
        ),
      },
    );
    const causes = diagnosisOf(without)!.causes.map(({ cause }) => cause);
    expect(causes).not.toContain("unrated splitter in the run");
    expect(causes[0]).not.toBe("nothing stands out");
  });

  withLibreOffice("the verdicts of an office copy are LibreOffice's too", async () => {
    const again = await readXlsx(await recalculated(await writeXlsx(book, { frozen: true }), { to: "xlsx" }));
    for (const name of ["verdict", "cause", "volts_due", "low_off", "high_off", "chance"]) {
      const ours = namedColumn(book, `commission_${name}`);
      namedColumn(again, `commission_${name}`).forEach((value, row) => {
        const own = ours[row];
        if (typeof own === "number") expect(value).toBeCloseTo(own, 9);
        else expect(value ?? "").toBe(own ?? "");
      });
    }
  });
});

test("all outlets of one head unit down alike: the dish, named for each of them", () => {
  const annexe = (outlet: string): boolean => outlet.startsWith("A");
  const book = measured((outlet) =>
    annexe(outlet) ? { low: -6.2, high: -5.8 } : { volts: outlet === "F-06" ? 0 : 24 },
  );
  expect(diagnosisOf(book)!.causes[0]).toMatchObject({ cause: "misaligned", where: "H3" });
  for (const { outlet } of rooms) {
    expect(at(book, "commission_cause", String(outlet))).toBe(annexe(String(outlet)) ? "misaligned" : "");
  }
});

test("one bad row: the diagnosis names the outlet whose prediction is missing, and the others keep their verdicts", () => {
  const broken = recalculate(
    layOut(multiRoom, {
      ...guestHouse,
      blocks: {
        ...guestHouse.blocks,
        rooms: rooms.map((row, index) => ({
          ...row,
          ...(index === 4 && { run: -3 }),
          built_low: middle(String(row.outlet))[0],
          built_high: middle(String(row.outlet))[1],
        })),
      },
    }),
  );
  expect(diagnosisOf(broken)!.trouble).toBe("Predicted level of G-05 is missing. Enter a level in dBµV.");
  expect(at(broken, "commission_verdict", "G-05")).toBe("look");
  expect(at(broken, "commission_verdict", "G-06")).toBe("ok");
  expect(at(broken, "commission_cause", "G-05")).toBe("see Diagnosis");
});

test("Causes lists what the diagnosis knows, with its own figures, so that nothing is hidden", () => {
  const book = layOut(multiRoom, guestHouse);
  const rows = namedRows(book, "causes_table").filter(([cause]) => cause !== undefined);
  expect(rows).toEqual(
    CAUSES.map(({ cause, chance, low, high, spread, tilt }) => [cause, chance, low, high, spread, tilt]),
  );
});

describe("Alignment", () => {
  const peak = (more: Readonly<Record<string, number | string>>) => ({
    what: "H1",
    axis: "elevation",
    step: 1,
    kind: "dB",
    here: 62,
    plus: 61.0493,
    minus: 58.1973,
    ...more,
  });
  const book = measured(() => undefined, {
    peaks: [
      peak({}),
      peak({ kind: "percent" }),
      peak({ plus: 64, minus: 62.5 }),
      peak({ step: 1, plus: 50, minus: 50 }),
      // Drops of a beam 0.45 times as wide as this dish's: the lobe beside the main one.
      peak({ step: 0.3, plus: 59.4, minus: 59.2 }),
    ],
  });
  const shown = (name: string, row: number) => {
    const value = namedColumn(book, `peaks_found_${name}`)[row + 1];
    return isBookError(value) ? value.message : value;
  };

  test("beam and face are labelled apart; the face leans by the elevation less the offset", () => {
    const heads = Object.values(book.sheets.find(({ name }) => name === "Alignment")!.cells).map(
      ({ value }) => value,
    );
    expect(heads).toEqual(
      expect.arrayContaining(["Beam elevation, above the horizon", "Rim angle, back from upright"]),
    );
    const beams = namedColumn(book, "align_elevation");
    namedColumn(book, "align_face").forEach((face, row) => {
      if (typeof face === "number") expect(face).toBeCloseTo(Number(beams[row]) - 22.6, 9);
    });
    expect(namedColumn(book, "align_face").filter((face) => typeof face === "number")).toHaveLength(2);
    const aims = namedColumn(book, "aimed_azimuth");
    const bearings = namedColumn(book, "aimed_compass").filter((bearing) => typeof bearing === "number");
    expect(bearings).toHaveLength(guestHouse.blocks!.dishes!.length);
    namedColumn(book, "aimed_compass").forEach((bearing, row) => {
      if (typeof bearing === "number")
        expect(bearing).toBeCloseTo(Number(aims[row]) - Number(namedValue(book, "align_declination")), 9);
    });
  });

  test("readings give the correction and its doubt", () => {
    // Worked forwards from a beam of 2.247 deg, 0.3 deg off.
    expect(shown("turn", 0)).toBeCloseTo(0.3, 3);
    expect(shown("beam", 0)).toBeCloseTo(2.247, 3);
    expect(shown("verdict", 0)).toBe("turn");
  });

  test.each([
    [1, /quality in percent/],
    [2, /at a peak the sum must be more than 0 dB/],
    [3, /smaller step/],
    [4, /side lobe/],
  ])("readings that cannot be right are told, row %i", (row, sentence) => {
    expect(shown("turn", row)).toMatch(sentence);
  });
});
