/** Calculated cells of a workbook of an earlier version: what is told, and what is only otherwise since, by the comments of earlierDifferences.ts. */
import { earlierDifferences, inWords } from "../../src/review/earlierDifferences";
import { formulaMark } from "../../src/workbooks/formulaMark";
import type { Book, BookCell, BookSheet } from "../../src/workbooks/book";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { bookOf, emptySheet } from "../support/books";

const OF_VERSION = "cables_price/cables_reel*2";
/** Two names of version 4 that was kept; nothing of any other. */
jest.mock("../../src/workbooks/versionFormulas", () => ({
  versionFormulas: (template: string, version: string) =>
    template === "multi-room" && version === "4"
      ? new Map([["cables_each", new Set([formulaMark(OF_VERSION)])]])
      : undefined,
}));

type Results = Readonly<Record<string, unknown>>;
interface Side {
  readonly cells?: Readonly<Record<string, BookCell>>;
  readonly results?: Results;
  readonly total?: unknown;
}

/** The price of a metre in B2 to B5 of Parts, a field on Site and one on Price; the total on Quote. */
function book({ cells = {}, results = {}, total = 100 }: Side, more: Partial<Book> = {}): Book {
  const sheet = (name: string, of: Results = {}): BookSheet => ({
    ...emptySheet(name),
    results: of as BookSheet["results"],
  });
  const of = (name: string): Pick<BookSheet, "cells" | "results"> => {
    const own = <T>(all: Readonly<Record<string, T>>): Record<string, T> =>
      Object.fromEntries(
        Object.entries(all).flatMap(([at, one]) => {
          const [on, cell] = at.split("!");
          return on === name ? [[cell, one] as const] : [];
        }),
      );
    return { cells: own(cells), results: own(results) as BookSheet["results"] };
  };
  return {
    ...bookOf(
      ...["Parts", "Site", "Price", "Checks"].map((name) => ({ ...sheet(name), ...of(name) })),
      sheet("Quote", { B1: total }),
    ),
    template: "multi-room",
    templateVersion: "0",
    names: [
      { name: "cables_each", sheet: "Parts", range: "B2:B5" },
      { name: "price_total", sheet: "Price", range: "B1" },
      { name: "checks_result", sheet: "Checks", range: "B1:B2" },
      { name: "quote_total", sheet: "Quote", range: "B1" },
    ],
    ...more,
  };
}
const differences = (own: Side, today: Side, more: Partial<Book> = {}) =>
  earlierDifferences(book(own, more), book(today), multiRoom);

describe("what was typed where a formula belongs", () => {
  test("is told at the first cell, with what stands there today", () => {
    const { differences: told, others } = differences(
      { cells: { "Parts!B3": { value: 7 } }, results: {} },
      { results: { "Parts!B3": 0.3 } },
    );
    expect(told).toEqual([
      {
        typedOver: true,
        weight: "wrong",
        place: { sheet: "Parts", cell: "B3" },
        message: "Price per m or ft is calculated in the template; here 7 was typed over it.",
        expected: "0.3",
        remedy: "Start a workbook from today's template and copy the inputs over.",
      },
    ]);
    expect(others).toEqual([]);
  });
  test("of several cells the first, and how many more", () => {
    const typed = (...at: string[]) =>
      differences({ cells: Object.fromEntries(at.map((one) => [`Parts!${one}`, { value: "x" }])) }, {})
        .differences;
    expect(typed("B2", "B5").map(({ message }) => message)).toEqual([
      "Price per m or ft is calculated in the template; here x was typed over it and 1 more cell.",
    ]);
    const [three] = typed("B3", "B4", "B5");
    expect(three!.message).toMatch(/ and 2 more cells\.$/);
    // Nothing to compare it with.
    expect(three!.expected).toBe("Calculated.");
    expect(typed("B1", "B6", "A2", "C2")).toEqual([]);
  });
  test("a formula is none, nor a look, nor a cell that was an input then", () => {
    expect(
      differences({ cells: { "Parts!B2": { formula: "1" }, "Parts!B3": { look: 2 } } }, {}).differences,
    ).toEqual([]);
    const withInput = (range: string) => {
      const own = book({ cells: { "Parts!B3": { value: 7 } } });
      const sheets = own.sheets.map((one) => ({
        ...one,
        validations: one.name === "Parts" ? [{ range, rule: { kind: "number" as const } }] : [],
      }));
      return earlierDifferences({ ...own, sheets }, book({}), multiRoom).differences.length;
    };
    // An input's column has a thin row at the top and one at the end.
    expect(["B2:B5", "B3", "B3:B9", "B1:B3", "C2:C5", "#REF!"].map(withInput)).toEqual([0, 0, 1, 1, 1, 1]);
  });
  test("a sheet or a name that is gone says nothing", () => {
    const own = book({ cells: { "Parts!B3": { value: 7 } } });
    const without = (more: Partial<Book>) =>
      earlierDifferences({ ...own, ...more }, book({}), multiRoom).differences;
    expect(without({ sheets: [] })).toEqual([]);
    expect(without({ names: [] })).toEqual([]);
    expect(without({ names: [{ name: "cables_each", sheet: "Parts", range: "#REF!" }] })).toEqual([]);
  });
});

describe("a formula that comes to something else", () => {
  const each = (
    own: unknown,
    today: unknown,
    total: unknown = 100,
    more: Partial<Book> = {},
    formula = "A2*2",
  ) =>
    differences(
      { cells: { "Parts!B2": { formula } }, results: { "Parts!B3": own }, total },
      { results: { "Parts!B3": today } },
      more,
    );
  const price = (own: unknown, today: unknown, total: unknown) =>
    differences(
      { cells: { "Price!B1": { formula: "A1" } }, results: { "Price!B1": own }, total },
      { results: { "Price!B1": today } },
    );
  const other = {
    name: "cables_each",
    formula: "A2*2",
    place: { sheet: "Parts", cell: "B3" },
    label: "Price per m or ft",
    own: 5,
    today: 6,
  };

  test("away from the sheets of money is one of the others, though the total moves", () =>
    expect(each(5, 6, 120)).toEqual({ differences: [], others: [other] }));
  test("on a sheet of money is told where the total moves by half a cent", () => {
    const { differences: told, others } = price(5, { error: "#N/A" }, 100.0051);
    expect(told).toEqual([
      {
        typedOver: false,
        weight: "doubtful",
        place: { sheet: "Price", cell: "B1" },
        message: expect.stringMatching(/ comes to 5 by the formula that stands here\.$/),
        expected: "#N/A, by today's template.",
        remedy:
          "See whether the formula was changed or the template has; a workbook made from today's template with these inputs decides.",
      },
    ]);
    expect(others).toEqual([]);
    for (const total of [100, 100.004, "", { error: "#N/A" }])
      expect(price(5, 6, total)).toMatchObject({ differences: [], others: [{ own: 5, today: 6 }] });
  });
  test("that its own version had is no change of a person's, another is", () => {
    const kept = { templateVersion: "4" };
    expect(each(5, 6, 120, kept, OF_VERSION)).toMatchObject({ differences: [], others: [{ own: 5 }] });
    const { differences: told, others } = each(5, 6, 100, kept);
    expect(told.map(({ message, expected }) => [message, expected])).toEqual([
      [
        "Price per m or ft comes to 5 by a formula that version 4 of the template did not have: =A2*2",
        "6, by today's template.",
      ],
    ]);
    expect(others).toEqual([]);
  });

  test.each<[string, unknown, unknown]>([
    ["the same", 5, 5],
    ["but for the last digits", 5, 5.0000001],
    ["blank both", "", undefined],
    ["words that are put otherwise", "as on the sheet", "as it stands"],
    ["a word and a verdict", "fine so far", "ok"],
  ])("is none where the results are %s", (_, own, today) =>
    expect(each(own, today)).toEqual({ differences: [], others: [] }),
  );
  test.each<[unknown, unknown]>([
    ["ok", "low"],
    ["high", "look"],
    ["", "ok so far"],
    ["ok so far", ""],
    ["5", 5],
    [5, { error: "#N/A" }],
  ])("is one of %j and %j", (own, today) => expect(each(own, today).others).toHaveLength(1));

  test("is none with today's formula, however it is written", () =>
    expect(each(5, 6, 120, {}, 'if(Cables_name="","",Cables_price/Cables_reel)').others).toEqual([]));
  test("is none without a formula at its top, and of the first cell that differs only", () => {
    expect(differences({ results: { "Parts!B3": 5 } }, { results: { "Parts!B3": 6 } }).others).toEqual([]);
    const three = (value: number) => ({ "Parts!B3": value, "Parts!B4": value, "Parts!B5": value });
    expect(
      differences({ cells: { "Parts!B2": { formula: "A2" } }, results: three(5) }, { results: three(6) })
        .others,
    ).toMatchObject([{ place: { cell: "B3" } }]);
  });
  test("of a cell that was typed over is told once, as typed", () => {
    const found = differences(
      { cells: { "Parts!B2": { formula: "A2" }, "Parts!B3": { value: 7 } }, results: { "Parts!B3": 7 } },
      { results: { "Parts!B3": 6 } },
    );
    expect(found.differences.map(({ typedOver }) => typedOver)).toEqual([true]);
    expect(found.others).toEqual([]);
  });
  test("of the checks is the version's own", () =>
    expect(
      differences(
        { cells: { "Checks!B1": { formula: "A1" } }, results: { "Checks!B1": "ok" } },
        { results: { "Checks!B1": "low" } },
      ),
    ).toEqual({ differences: [], others: [] }));
  test("of a field that has another size than today's is another thing", () => {
    const wide = { names: [{ name: "price_total", sheet: "Price", range: "B1:B2" }] };
    const own = book({ cells: { "Price!B1": { formula: "A1" } }, results: { "Price!B1": 5 } }, wide);
    const today = book({ results: { "Price!B1": 6 } }, wide);
    expect(earlierDifferences(own, today, multiRoom).others).toEqual([]);
  });
});

test("a result in words", () =>
  expect([5.25, "", undefined, "low", true, { error: "#N/A" }].map((one) => inWords(one))).toEqual([
    "5.25",
    "nothing",
    "nothing",
    "“low”",
    "“true”",
    "#N/A",
  ]));
