/** Each kind of trouble put into a sound workbook by hand: it is found where it was put, and nothing else is. */
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { fromModel } from "../../src/hosts/grid/fromModel";
import { loadLibrary } from "../../src/hosts/headless/loadLibrary";
import { openModel, recalculate } from "../../src/hosts/headless/recalculate";
import { WEIGHTS, type Finding } from "../../src/review/finding";
import { formulaDifferences } from "../../src/review/formulaDifferences";
import { labelsIn } from "../../src/review/labels";
import { errorCells } from "../../src/review/rules/errorCells";
import { failingChecks } from "../../src/review/rules/failingChecks";
import { origin, originOf } from "../../src/review/rules/origin";
import { address, parseAddress, parseRange } from "../../src/formula/address";
import { isBookError, type Book, type BookCell } from "../../src/workbooks/book";
import { namedColumn } from "../../src/workbooks/named";
import { placedBlocks, placeIn } from "../../src/workbooks/placedBlocks";
import { planAddedRows } from "../../src/workbooks/planAddedRows";
import { templates } from "../../src/workbooks/templates";

/** What the rules that need one reading only find in a computed book. */
function quickFindings(book: Book): Finding[] {
  const found = originOf(book);
  const definition = found?.made === "now" ? found.template.definition : undefined;
  const labelAt = labelsIn(book, definition);
  return [
    ...origin(book),
    ...(definition ? formulaDifferences(book, book, definition, labelAt) : []),
    ...errorCells(book, labelAt),
    ...failingChecks(book),
  ].sort((a, b) => WEIGHTS.indexOf(a.weight) - WEIGHTS.indexOf(b.weight));
}

const multiRoom = templates.find(({ id }) => id === "multi-room")!;
const sound = recalculate(multiRoom.demonstration());
const soundFindings = quickFindings(sound);

const copyOf = (book: Book): Book => JSON.parse(JSON.stringify(book)) as Book;

/** The cell of a name, so many rows under its first. */
function cellOf(book: Book, name: string, below = 0): { sheet: string; at: string; cell: BookCell } {
  const found = book.names.find((one) => one.name === name)!;
  const zone = parseRange(found.range)!;
  const at = address(zone.top + below, zone.left);
  const { cells } = book.sheets.find((one) => one.name === found.sheet)!;
  return { sheet: found.sheet, at, cell: (cells[at] ??= {}) };
}

const changed = (change: (book: Book) => void): Book => {
  const book = copyOf(sound);
  change(book);
  return recalculate(book);
};

/** What the changed workbook adds to the findings of the sound one. */
const added = (book: Book): Finding[] => {
  const before = new Set(soundFindings.map(({ message, place }) => JSON.stringify([message, place])));
  return quickFindings(book).filter(({ message, place }) => !before.has(JSON.stringify([message, place])));
};

const ofTheTemplate = /template|frozen|Names|typed over/;

describe("a sound workbook", () => {
  test.each(
    templates.flatMap((one) =>
      (["empty", "demonstration"] as const).map((kind) => [one.title, kind, one] as const),
    ),
  )("%s, %s: every formula is as the template has it", (_title, kind, template) => {
    const findings = quickFindings(recalculate(template[kind]()));
    expect(findings.filter(({ message }) => ofTheTemplate.test(message))).toEqual([]);
  });

  test("its failing checks are found, each at its line and no other", () => {
    const results = sound.names.find(({ name }) => name === "checks_result")!;
    const { top, left } = parseRange(results.range)!;
    const failing = namedColumn(sound, "checks_result").flatMap((word, row) =>
      word === "ok" ? [] : [{ sheet: results.sheet, cell: address(top + row, left) }],
    );
    expect(failing.length).toBeGreaterThan(1);
    const found = soundFindings.flatMap(({ place }) => (place?.sheet === results.sheet ? [place] : []));
    expect(new Set(found.map((one) => JSON.stringify(one)))).toEqual(
      new Set(failing.map((one) => JSON.stringify(one))),
    );
  });

  test("a check that counts words leads to the first cell with one of them", () => {
    const low = soundFindings.find(({ message }) => message.startsWith("Outlets too weak"))!;
    const sheet = sound.sheets.find(({ name }) => name === low.cause!.sheet)!;
    expect(sheet.results[low.cause!.cell]).toBe("low");
  });

  test("rows that were added move the formulas along: nothing is found changed", () => {
    const model = openModel(sound);
    const { sheet, at } = cellOf(sound, "rooms_run", 2);
    const blocks = placedBlocks(multiRoom.definition, placeIn(sound.names));
    const plan = planAddedRows(blocks, sheet, parseAddress(at)!.row);
    if (typeof plan === "string") throw new Error(plan);
    for (const { sheet: name, zone } of [...plan.growing].sort((a, b) => b.zone.bottom - a.zone.bottom)) {
      model.dispatch("ADD_COLUMNS_ROWS", {
        sheetId: model.getters.getSheetIdByName(name)!,
        sheetName: name,
        dimension: "ROW",
        base: zone.bottom,
        position: "before",
        quantity: 7,
      });
    }
    expect(added(fromModel(loadLibrary(), model))).toEqual([]);
  });

  test("it is still sound after a way through a file", async () => {
    expect(added(recalculate(await readXlsx(await writeXlsx(sound))))).toEqual([]);
  });
});

describe("changed formulas", () => {
  const field = (book: Book) => cellOf(book, "price_sell");
  const column = (book: Book) => cellOf(book, "rooms_slope");

  test("a total typed over", () => {
    const findings = added(
      changed((book) => {
        const { cell } = field(book);
        delete cell.formula;
        cell.value = 1234;
      }),
    );
    const { sheet, at } = field(copyOf(sound));
    const { formula } = field(copyOf(sound)).cell;
    expect(findings.filter(({ message }) => ofTheTemplate.test(message))).toEqual([
      expect.objectContaining({ weight: "wrong", place: { sheet, cell: at }, expected: `=${formula}` }),
    ]);
    expect(findings[0]!.message).toMatch(/1234 was typed over/);
  });

  test("a column's one formula removed", () => {
    const findings = added(changed((book) => void delete column(book).cell.formula));
    const { sheet, at } = column(copyOf(sound));
    expect(findings.find(({ message }) => /formula is gone/.test(message))?.place).toEqual({
      sheet,
      cell: at,
    });
  });

  test("another formula: doubtful, with both", () => {
    const findings = added(changed((book) => void (field(book).cell.formula += "*0.9")));
    const found = findings.find(({ message }) => /another formula/.test(message))!;
    expect(found.weight).toBe("doubtful");
    expect(found.message).toMatch(/\*0\.9$/);
    expect(found.expected).not.toMatch(/\*0\.9$/);
  });

  test("case and blanks are no difference", () => {
    const book = copyOf(sound);
    const { cell } = column(book);
    cell.formula = cell.formula!.toLowerCase().replace(/,/g, " , ");
    expect(added(book)).toEqual([]);
  });

  test("a number typed where a column's results belong", () => {
    const findings = added(changed((book) => void (cellOf(book, "rooms_slope", 3).cell.value = 2)));
    const { sheet, at } = cellOf(copyOf(sound), "rooms_slope", 3);
    expect(findings.find(({ message }) => /typed over/.test(message))?.place).toEqual({ sheet, cell: at });
    // The results can't spill any more, and that is said of the cell with the formula.
    expect(findings.some(({ message }) => message.includes("#SPILL!"))).toBe(true);
  });

  test("a name that is gone", () => {
    const book = copyOf(sound);
    book.names = book.names.filter(({ name }) => name !== "rooms_cable");
    expect(added(book)[0]).toMatchObject({
      weight: "wrong",
      message: expect.stringMatching(/gone: rooms_cable\./),
    });
  });

  test("an office copy is said to be one, and its frozen cells are not called typed over", async () => {
    const book = recalculate(await readXlsx(await writeXlsx(sound, { frozen: true })));
    const findings = added(book).filter(({ message }) => ofTheTemplate.test(message));
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({
      weight: "worth knowing",
      message: expect.stringMatching(/frozen to values/),
    });
  });
});

describe("errors", () => {
  const NONSENSE = "no such cable <b>&";
  const unknownCable = changed((book) => void (cellOf(book, "rooms_cable", 3).cell.value = NONSENSE));

  test("the sentence of the function, in the row where the input is, once", () => {
    const findings = added(unknownCable).filter(
      ({ message, place }) =>
        message.includes(NONSENSE) &&
        !message.includes("could not be found out") &&
        // The plan has rows of its own.
        place?.sheet !== "Cutting plan",
    );
    const row = parseAddress(cellOf(copyOf(sound), "rooms_cable", 3).at)!.row;
    expect(findings.length).toBeGreaterThan(0);
    for (const { place } of findings) expect(parseAddress(place!.cell)!.row).toBe(row);
    const ours = findings.filter(({ message }) => message.includes("is not among the names"));
    expect(ours).toHaveLength(1);
  });

  test("those that follow from it are counted, not listed", () => {
    const all = unknownCable.sheets.flatMap(({ results }) => Object.values(results).filter(isBookError));
    const listed = added(unknownCable).filter(({ message }) => /: #/.test(message));
    const [more] = added(unknownCable).filter(({ message }) => /more cells? show/.test(message));
    expect(Number(/^\d+/.exec(more!.message)?.[0])).toBeGreaterThan(5);
    expect(listed.length).toBeLessThan(all.length / 3);
  });

  test("where a host hands out the code alone, the sentence of a function is found again", () => {
    const negative = changed((book) => void (cellOf(book, "rooms_run", 3).cell.value = -3));
    const bare = copyOf(negative);
    for (const { results } of bare.sheets) {
      for (const [at, result] of Object.entries(results)) {
        if (isBookError(result)) results[at] = { error: result.error };
      }
    }
    const ofTheFunction = (book: Book) =>
      added(book).filter(({ message }) => /#VALUE!, Run .* is -3/.test(message));
    expect(ofTheFunction(negative)).toHaveLength(1);
    expect(ofTheFunction(bare)).toEqual(ofTheFunction(negative));
  });

  test("a text where a run belongs", () => {
    const findings = added(changed((book) => void (cellOf(book, "rooms_run", 3).cell.value = "far")));
    expect(findings.filter(({ message }) => message.includes('"far"')).map(({ weight }) => weight)).toContain(
      "wrong",
    );
  });
});

describe("a workbook that cannot be held to a template", () => {
  test("one that is not ours: said, and its errors are still found", () => {
    const book = recalculate({
      template: "",
      templateVersion: "",
      title: "",
      looks: [],
      names: [],
      sheets: [
        {
          ...copyOf(sound).sheets[0]!,
          name: "Mine",
          cells: { B2: { formula: "1/0" }, B3: { formula: 'RIG.CABLELOSS("series 6",-1,950)' } },
          results: {},
          validations: [],
          marks: [],
        },
      ],
    });
    const findings = quickFindings(book);
    expect(findings.at(-1)?.message).toMatch(/not made from one of our templates/);
    expect(findings.map(({ place }) => place?.cell)).toEqual(["B2", "B3", undefined]);
    expect(findings[1]!.message).toMatch(/length is -1/);
  });

  test("an older version of a template: said, and its formulas are not compared", () => {
    const book = copyOf(sound);
    book.templateVersion = "0";
    cellOf(book, "price_sell").cell.formula = "1";
    const findings = added(book);
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({ weight: "doubtful", expected: expect.stringMatching(/^Version /) });
    expect(findings[0]!.message).toMatch(/version 0 of/);
  });

  test("a template that is not known here is named", () => {
    expect(
      quickFindings({ ...copyOf(sound), template: "other" }).some(({ message }) =>
        message.includes("“other”"),
      ),
    ).toBe(true);
  });

  test("a book without a sheet has nothing but that", () => {
    expect(quickFindings({ ...copyOf(sound), sheets: [], names: [], template: "" })).toHaveLength(1);
  });
});

test("the weightiest come first, and each says what to do", () => {
  const findings = quickFindings(changed((book) => void (cellOf(book, "rooms_cable", 3).cell.value = "x")));
  const order = findings.map(({ weight }) => WEIGHTS.indexOf(weight));
  expect(order).toEqual([...order].sort((a, b) => a - b));
  for (const { message, remedy } of findings) {
    expect(message).toMatch(/\S/);
    expect(remedy).toMatch(/\.$/);
  }
});
