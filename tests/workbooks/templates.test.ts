/** Every template: empty and filled, as every host must find it. */
import { recalculate } from "../../src/hosts/headless/recalculate";
import { isBookError } from "../../src/workbooks/book";
import { jobInputsOf } from "../../src/workbooks/jobInputsOf";
import { namedColumn, namedRows, namedValue } from "../../src/workbooks/named";
import { summarise } from "../../src/workbooks/multiRoom/summarise";
import { templates } from "../../src/workbooks/templates";
import { heldTo } from "../support/heldTo";
import { referencePrice, type Job } from "../support/referencePrice";

describe.each(templates.map((template) => [template.id, template] as const))("%s", (id, template) => {
  const filled = recalculate(template.demonstration());

  test("its demonstration shows no error and is marked as a demonstration", () => {
    const errors = filled.sheets.flatMap((sheet) =>
      Object.entries(sheet.results).flatMap(([at, result]) =>
        isBookError(result) ? [`${sheet.name}!${at}: ${result.message}`] : [],
      ),
    );
    expect(errors).toEqual([]);
    const texts = filled.sheets.flatMap((sheet) => Object.values(sheet.cells).map(({ value }) => value));
    expect(texts.some((value) => typeof value === "string" && value.includes("demonstration"))).toBe(true);
  });

  test("its head says how the checks stand, and an empty one never passes them all", () => {
    for (const book of [filled, recalculate(template.empty())]) {
      for (const sheet of book.sheets) expect(sheet.results.D1).toBe(namedValue(book, "checks_verdict"));
    }
    expect(namedValue(recalculate(template.empty()), "checks_verdict")).not.toBe("all checks pass");
  });

  test("about: purpose, versions, key, what is left out, cautions", () => {
    const about = Object.values(filled.sheets[0]!.cells).map(({ value }) => value);
    for (const heading of [
      "Purpose",
      "Versions",
      "Key to the marks",
      "What the model leaves out",
      "Cautions",
    ]) {
      expect(about).toContain(heading);
    }
  });

  test("at most 34 calls of ours, and what was filled in comes back", () => {
    const formulas = filled.sheets.flatMap((sheet) =>
      Object.values(sheet.cells).flatMap(({ formula }) => formula ?? []),
    );
    const calls = formulas.flatMap((formula) => formula.match(/RIG\.[A-Z]+\(/g) ?? []);
    expect(calls.length).toBeGreaterThan(0);
    expect(calls.length).toBeLessThanOrEqual(34);
    expect(jobInputsOf(template.definition, filled)).toEqual(
      jobInputsOf(template.definition, template.demonstration()),
    );
    expect(id).toBe(filled.template);
  });
});

describe("the apartment block of 240 outlets", () => {
  const { book } = templates[0]!.more[0]!;
  const computed = recalculate(book());
  const reference = referencePrice(jobInputsOf(templates[0]!.definition, book()) as unknown as Job);
  const levels = heldTo({
    what: "multi-room levels",
    source: "tests/support/referencePrice.ts, handbook equations",
    basis: "derivation",
    unit: "dB",
  });

  test("every outlet's level, and the price to the cent, as the reference program has them; all checks pass", () => {
    const outlets = namedColumn(computed, "rooms_outlet");
    const rows = namedRows(computed, "rooms_level");
    expect(reference.levels.size).toBe(240);
    for (const [outlet, expected] of reference.levels) {
      expected.forEach((level, corner) =>
        levels.row(`${outlet} corner ${corner}`, rows[outlets.indexOf(outlet)]![corner], level, 1e-9),
      );
    }
    expect(Number(namedValue(computed, "quote_total")).toFixed(2)).toBe(reference.total);
    expect(summarise(computed)).toMatchObject({ outlets: 240, verdict: "all checks pass" });
  });
});
