/** The small templates against references that share no code with the product, and against LibreOffice. */
import { magneticField } from "magvar";
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { parseRange, address } from "../../src/formula/address";
import type { Book } from "../../src/workbooks/book";
import { namedColumn, namedRows, namedValue } from "../../src/workbooks/named";
import { alignmentCardExample } from "../../src/workbooks/alignmentCard/definition";
import { quoteReviewExample } from "../../src/workbooks/quoteReview/jobInputs";
import { singleDropExample } from "../../src/workbooks/singleDrop/definition";
import { templates } from "../../src/workbooks/templates";
import { heldTo } from "../support/heldTo";
import { cableLoss, loopOhms } from "../support/cablePhysics";
import { referenceReview, type ReviewJob } from "../support/referenceReview";
import { referenceAngles, referencePair, referencePeak } from "../support/referenceSight";
import { recalculated, withLibreOffice } from "../support/tools";

const demonstration = (id: string): Book =>
  recalculate(templates.find((one) => one.id === id)!.demonstration());

/** Typed over after it was computed: what the file holds is stale, so an agreeing value was worked out anew. */
async function byLibreOffice(
  book: Book,
  typed: Readonly<Record<string, number | undefined>>,
  /** Of the named column, from its thin row on. */
  row = 0,
): Promise<Book> {
  const copy = structuredClone(book);
  for (const [name, value] of Object.entries(typed)) {
    const { sheet, range } = copy.names.find((one) => one.name === name)!;
    const { top, left } = parseRange(range)!;
    const { cells } = copy.sheets.find((one) => one.name === sheet)!;
    const at = address(top + row, left);
    cells[at] = { look: cells[at]?.look, ...(value !== undefined && { value }) };
  }
  return readXlsx(await recalculated(await writeXlsx(copy, { frozen: true }), { to: "xlsx" }));
}

/** Below the thin row, as many as the block has rows. */
const column = (book: Book, name: string, rows: number): unknown[] =>
  namedColumn(book, name).slice(1, 1 + rows);

describe("the quote review", () => {
  const job = quoteReviewExample as unknown as ReviewJob;
  const computed = demonstration("quote-review");
  const reference = referenceReview(job);
  const held = heldTo({
    what: "quote review",
    source: "tests/support/referenceReview.ts",
    basis: "derivation",
    unit: "demonstration money, hours or shares",
  });

  test.each(Object.entries(reference.figures))(
    "%s worked again, off by and word",
    (name, { again, off, word }) => {
      held.row(`${name} again`, namedValue(computed, `review_${name}_again`), again, 1e-9);
      held.row(`${name} off`, namedValue(computed, `review_${name}_off`), off, 1e-9);
      held.same(`${name} word`, namedValue(computed, `review_${name}_word`), word);
    },
  );

  test("the margin added as a markup is named", () => {
    held.same("slip", namedValue(computed, "review_slip"), reference.slip);
    // The demonstration's slips are planted: 3504.64 · 1.22 = 4275.66.
    expect(reference.slip).toBe("look");
  });

  test("every line", () => {
    const rows = reference.lines.length;
    column(computed, "lines_again", rows).forEach((value, row) =>
      held.row(`line ${row}`, value, reference.lines[row]!.again, 1e-9),
    );
    expect(column(computed, "lines_word", rows)).toEqual(reference.lines.map(({ word }) => word));
  });

  test("every ratio and its range", () => {
    const names = namedColumn(computed, "ratio_names");
    const values = namedColumn(computed, "ratio_values");
    // The demonstration's quote names no price of cable.
    expect([names.pop(), values.pop()]).toEqual(["price of each m or ft of cable", ""]);
    expect(names).toEqual(Object.keys(reference.ratios));
    values.forEach((value, row) =>
      held.row(String(names[row]), value, reference.ratios[String(names[row])]!, 1e-9),
    );
    const rows = reference.ranges.length;
    column(computed, "ranges_value", rows).forEach((value, row) =>
      held.row(`range ${row}`, value, reference.ranges[row]!.value, 1e-9),
    );
    expect(column(computed, "ranges_word", rows)).toEqual(reference.ranges.map(({ word }) => word));
  });

  test("every question, and the checks that fail", () => {
    expect(column(computed, "asked_word", reference.asked.length)).toEqual(reference.asked);
    held.same("failing checks", namedValue(computed, "checks_failed"), reference.failing);
  });

  withLibreOffice("LibreOffice works the native formulas out anew to the reference's figures", async () => {
    const typed = { review_contingency: 0.05, review_hours: 33, review_extras: 205.5, review_outlets: 20 };
    const other = referenceReview({ ...job, fields: { ...job.fields, ...typed } });
    const again = await byLibreOffice(computed, typed);
    // Head units, price and tax call our functions, which stand frozen; none of their inputs was changed.
    for (const name of ["heads", "materials", "labour", "cost", "price", "net", "tax", "total"]) {
      const { again: worked, off, word } = other.figures[name]!;
      held.row(`${name} by LibreOffice`, namedValue(again, `review_${name}_again`), worked, 1e-9);
      held.row(`${name} off by LibreOffice`, namedValue(again, `review_${name}_off`), off, 1e-9);
      held.same(`${name} word by LibreOffice`, namedValue(again, `review_${name}_word`), word);
    }
    expect(other.figures.labour!.off).not.toBeCloseTo(reference.figures.labour!.off, 2);
    Object.values(other.ratios).forEach((value, row) =>
      held.row(`ratio ${row} by LibreOffice`, namedColumn(again, "ratio_values")[row], value, 1e-9),
    );
    expect(column(again, "ranges_word", other.ranges.length)).toEqual(other.ranges.map(({ word }) => word));
    expect(column(again, "lines_word", other.lines.length)).toEqual(other.lines.map(({ word }) => word));
    expect(column(again, "asked_word", other.asked.length)).toEqual(other.asked);
    held.same("failing checks by LibreOffice", namedValue(again, "checks_failed"), other.failing);
  });
});

describe("the single drop", () => {
  const fields = singleDropExample.fields as Readonly<Record<string, number>>;
  const computed = demonstration("single-drop");
  const held = heldTo({
    what: "single drop",
    source: "tests/support/referencePrice.ts, handbook equations",
    basis: "derivation",
    unit: "dB, Ω or V",
  });
  const expected = (plate: number) => {
    const split = 10 * Math.log10(fields.drop_ways!) + fields.drop_excess!;
    const losses = (["low", "low", "high", "high"] as const).map((end, corner) =>
      cableLoss(
        String(fields.drop_cable),
        fields.drop_length!,
        fields[`drop_${end}`]!,
        fields[corner % 2 === 0 ? "drop_cold" : "drop_hot"]!,
      ),
    );
    const levels = losses.map(
      (loss, corner) => fields[corner < 2 ? "drop_in_low" : "drop_in_high"]! - loss - split - plate,
    );
    return { split, losses, levels, slope: levels[1]! - levels[3]! };
  };

  test("every calculated row: splitter, cable, level and word at the four corners, slope, loop, volts", () => {
    const { split, losses, levels, slope } = expected(fields.drop_plate!);
    held.row("splitter", namedValue(computed, "drop_split"), split, 1e-9);
    losses.forEach((loss, corner) =>
      held.row(`cable ${corner}`, namedRows(computed, "drop_loss")[0]![corner], loss, 1e-9),
    );
    levels.forEach((level, corner) => {
      held.row(`level ${corner}`, namedRows(computed, "drop_level")[0]![corner], level, 1e-9);
      const word = level < fields.drop_least! ? "low" : level > fields.drop_most! ? "high" : "ok";
      held.same(`word ${corner}`, namedRows(computed, "drop_verdict")[0]![corner], word);
    });
    held.row("slope", namedValue(computed, "drop_slope"), slope, 1e-9);
    const ohms = loopOhms(String(fields.drop_cable), fields.drop_length!, fields.drop_hot!);
    held.row("loop", namedValue(computed, "drop_ohms"), ohms, 1e-9);
    const volts = fields.drop_supply! - fields.drop_load! * ohms;
    held.row("volts", namedValue(computed, "drop_volts"), volts, 1e-9);
    held.same(
      "volts' word",
      namedValue(computed, "drop_power"),
      volts >= fields.drop_volts_least! ? "ok" : "low",
    );
  });

  withLibreOffice("LibreOffice works levels and slope out anew", async () => {
    const again = await byLibreOffice(computed, { drop_plate: 2.7 });
    const { levels, slope } = expected(2.7);
    levels.forEach((level, corner) =>
      held.row(`level ${corner} by LibreOffice`, namedRows(again, "drop_level")[0]![corner], level, 1e-9),
    );
    held.row("slope by LibreOffice", namedValue(again, "drop_slope"), slope, 1e-9);
    expect(namedValue(again, "checks_failed")).toBe(0);
  });
});

describe("the alignment card", () => {
  const fields = alignmentCardExample.fields as Readonly<Record<string, number>>;
  const { card_latitude: latitude = 0, card_longitude: longitude = 0, card_height: metres = 0 } = fields;
  /** 97 W and 113 W. */
  const slots = [-97, -113];
  const computed = demonstration("alignment-card");
  const pair = referencePair(latitude, longitude, slots, metres);
  const held = heldTo({
    what: "alignment card",
    source: "tests/support/referenceSight.ts, WGS84",
    basis: "derivation",
    unit: "deg or km",
  });

  test("each slot: azimuth, elevation, range, tilt of the face", () => {
    slots.forEach((slot, row) => {
      const { azimuth, elevation, range } = referenceAngles(latitude, longitude, slot, metres);
      held.row(`${slot} azimuth`, column(computed, "slots_angles_azimuth", 2)[row], azimuth, 1e-6);
      held.row(`${slot} elevation`, column(computed, "slots_angles_elevation", 2)[row], elevation, 1e-6);
      held.row(`${slot} range`, column(computed, "slots_angles_range", 2)[row], range, 1e-3);
      const face = elevation - fields.card_offset!;
      held.row(`${slot} face`, column(computed, "slots_face", 2)[row], face, 1e-6);
    });
  });

  test("compass bearings by a second program of the magnetic model; the skew by the handbook's short form", () => {
    const { declination } = magneticField(latitude, longitude, metres / 1000, new Date("2026-11-02"));
    slots.forEach((slot, row) => {
      const { azimuth } = referenceAngles(latitude, longitude, slot, metres);
      // That program rounds to 0.01 deg.
      held.row(`${slot} compass`, column(computed, "slots_compass", 2)[row], azimuth - declination, 0.02);
      const short = Math.atan(
        Math.sin(((longitude - slot) * Math.PI) / 180) / Math.tan((latitude * Math.PI) / 180),
      );
      // The short form lies within 0.35 deg of the exact ones.
      held.row(`${slot} skew`, column(computed, "slots_skew", 2)[row], (short * 180) / Math.PI, 0.35);
    });
  });

  test("one dish for both: aim and tilt; the elevation while peaking is the aim's", () => {
    const [aim] = namedRows(computed, "pair_aim");
    held.row("aim azimuth", aim![0], pair.azimuth, 1e-6);
    held.row("aim elevation", aim![1], pair.elevation, 1e-6);
    held.row("tilt", namedValue(computed, "pair_tilt"), pair.tilt, 0.001);
    held.row("peaking elevation", namedValue(computed, "peaks_elevation"), pair.elevation, 1e-6);
  });

  test("equal drops: turn and width of the beam", () => {
    const rows = alignmentCardExample.blocks!.peaks!;
    rows.forEach((row, index) => {
      const { turn, beam } = referencePeak(row, pair.elevation);
      held.row(`turn ${index}`, column(computed, "peaks_found_turn", 2)[index], turn, 1e-9);
      held.row(`beam ${index}`, column(computed, "peaks_found_beam", 2)[index], beam, 1e-6);
    });
  });

  withLibreOffice(
    "LibreOffice: without the second slot the peaking is at the first one's elevation",
    async () => {
      const again = await byLibreOffice(computed, { slots_slot: undefined }, 2);
      const first = referenceAngles(latitude, longitude, slots[0]!, metres);
      held.row(
        "peaking elevation by LibreOffice",
        namedValue(again, "peaks_elevation"),
        first.elevation,
        1e-6,
      );
      expect(namedValue(again, "checks_failed")).toBe(0);
    },
  );
});
