/** What is told of measured outlets, read from a few cells. */
import type { BookResult } from "../../../src/workbooks/book";
import { diagnosisOf } from "../../../src/workbooks/multiRoom/diagnosisOf";
import { namedBook } from "../../support/namedBook";

type Values = readonly (BookResult | undefined)[];
const CAUSE = ["wrong cable", "A-07", 0.8, "4 dB too weak at the high end", "look at its label"];

/** Three outlets below a thin row; what stands in some of the columns. */
const book = (columns: Readonly<Record<string, Values>> = {}, diagnosis: readonly Values[] = [CAUSE]) =>
  namedBook({
    rooms_outlet: ["", "A-07", "A-08", "A-09", ""],
    // All columns of what is measured; its first is what an outlet is found by.
    rooms_built: [
      ["", ""],
      ["", ""],
      ["", ""],
      ["", ""],
      ["", ""],
    ],
    ...columns,
    diagnosis,
  });
const measuredIn = (columns: Readonly<Record<string, Values>>) => diagnosisOf(book(columns))!.measured;

test("a workbook without a diagnosis, or without measured columns, has none", () => {
  expect(diagnosisOf(namedBook({ rooms_built: ["", ""] }))).toBeUndefined();
  expect(diagnosisOf(namedBook({ diagnosis: [CAUSE] }))).toBeUndefined();
  const elsewhere = book();
  elsewhere.names = elsewhere.names.map((one) =>
    one.name === "rooms_built" ? { ...one, range: "#REF!" } : one,
  );
  expect(diagnosisOf(elsewhere)).toBeUndefined();
});

test("causes in order, without blank rows; what is no chance is none", () => {
  const blank = ["", "", "", "", ""];
  expect(diagnosisOf(book({}, [CAUSE, blank, ["water", undefined, "", "", ""]]))).toEqual({
    causes: [
      {
        cause: "wrong cable",
        where: "A-07",
        probability: 0.8,
        evidence: "4 dB too weak at the high end",
        next: "look at its label",
      },
      { cause: "water", where: "", probability: 0, evidence: "", next: "" },
    ],
    outlets: 3,
    measured: [],
  });
});

test.each<[BookResult, string]>([
  [{ error: "#VALUE!", message: "Causes C4 is no chance." }, "Causes C4 is no chance."],
  [{ error: "#N/A" }, "#N/A"],
])("where it failed there are no causes, but why: %p", (error, trouble) =>
  expect(diagnosisOf(book({}, [[error]]))).toMatchObject({ causes: [], trouble }),
);

test("an outlet that was measured: what was read beside what was predicted, and the cell of its first reading", () => {
  const measured = measuredIn({
    rooms_room: ["", "Attic", "Hall", "Hall"],
    rooms_built_low: ["", undefined, 66.5, ""],
    rooms_built_high: ["", undefined, undefined, ""],
    rooms_built_volts: ["", undefined, 12.9, ""],
    commission_low_from: ["", 1, 65, 1],
    commission_low_to: ["", 1, 68, 1],
    commission_high_from: ["", 1, 61, 1],
    commission_high_to: ["", 1, "", 1],
    commission_volts_due: ["", 1, 13, 1],
    commission_verdict: ["", "to measure", "ok", "to measure"],
  });
  expect(measured).toEqual([
    {
      outlet: "A-08",
      room: "Hall",
      sheet: "Values",
      cell: "B3",
      low: { measured: 66.5, from: 65, to: 68 },
      high: { measured: null, from: 61, to: null },
      volts: { measured: 12.9, from: 13, to: 13 },
      verdict: "ok",
    },
  ]);
});

test.each(["low", "high", "volts"])("a single reading of %s is enough, as are words", (which) => {
  const measured = measuredIn({ [`rooms_built_${which}`]: ["", 0, "no signal", "  "] });
  expect(measured.map(({ outlet }) => outlet)).toEqual(["A-07", "A-08"]);
  expect(measured.map((one) => one[which as "low"])).toEqual([
    { measured: 0, from: null, to: null },
    { measured: null, typed: "no signal", from: null, to: null },
  ]);
});

test("rows without an outlet count for nothing", () => {
  const { outlets, measured } = diagnosisOf(
    book({ rooms_outlet: ["", "A-07", { error: "#REF!" }, "", ""], rooms_built_low: ["", "", 60, 60, ""] }),
  )!;
  expect([outlets, measured]).toEqual([1, []]);
});
