/** A survey against what Rooms has: what is added, changed and gone, in figures and in words, and where it is written. */
import type { Zone } from "../../../src/formula/address";
import { estimate } from "../../../src/workbooks/multiRoom/names";
import { rooms } from "../../../src/workbooks/multiRoom/names/rooms";
import { site } from "../../../src/workbooks/multiRoom/names/site";
import { guestHouse } from "../../../src/workbooks/multiRoom/guestHouse";
import { layOut } from "../../../src/workbooks/layOut";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import {
  changeInWords,
  doneInWords,
  mergeInWords,
  mergeOutlets,
  NO_CHANGES,
  shownCell,
  type OutletMerge,
  type RoomsRow,
} from "../../../src/workbooks/survey/merge";
import { placeOutlets } from "../../../src/workbooks/survey/placeOutlets";
import { previewOf, previewText, takenFor } from "../../../src/workbooks/survey/preview";
import { roomsBlock, roomsFrom, roomsIn, settingOf } from "../../../src/workbooks/survey/roomsBlock";
import {
  cellId,
  inWords,
  linesInWords,
  nameId,
  type Survey,
  type SurveyRow,
} from "../../../src/workbooks/survey/survey";
import { WRITING_FIELD } from "../../../src/workbooks/typed/writing";

const row = (offset: number, cells: SurveyRow): RoomsRow => ({ offset, cells });
const changesOf = (now: SurveyRow, before: SurveyRow): unknown =>
  mergeOutlets([{ outlet: "A", ...now }], [row(1, { outlet: "A", ...before })]).changed[0]?.cells ?? [];

describe("one outlet that Rooms has", () => {
  test.each<[string, SurveyRow, SurveyRow, unknown]>([
    ["another run", { run: 12 }, { run: 10 }, [{ key: "run", old: 10, now: 12 }]],
    ["what Rooms had not", { run: 12, note: "x" }, { run: 12 }, [{ key: "note", old: undefined, now: "x" }]],
    ["what the survey has not stays", { run: 12 }, { run: 12, note: "x" }, []],
    ["capitals and blanks make no other room", { room: " main  HALL" }, { room: "Main Hall" }, []],
    ["another room", { room: "Bar" }, { room: "Hall" }, [{ key: "room", old: "Hall", now: "Bar" }]],
    ["a name of figures as text or as a number", { room: "101" }, { room: 101 }, []],
    ["the last digits of a converted length", { run: 3.048 }, { run: 3.04805 }, []],
    [
      "a tenth of a millimetre is another",
      { run: 3.048 },
      { run: 3.0481 + 1e-9 },
      [expect.objectContaining({ key: "run" })],
    ],
    ["a blank quantity is one", { quantity: 1 }, {}, []],
    ["two are not", { quantity: 2 }, {}, [{ key: "quantity", old: undefined, now: 2 }]],
    ["one where there were two", { quantity: 1 }, { quantity: 2 }, [{ key: "quantity", old: 2, now: 1 }]],
    ["a blank of another column is not one", { port: 1 }, {}, [{ key: "port", old: undefined, now: 1 }]],
  ])("%s", (_, now, before, wanted) => {
    expect(changesOf(now, before)).toEqual(wanted);
  });

  test("ends of an earlier range between which the new run does not lie are taken out", () => {
    const before = { run: 10, shortest: 8, longest: 12 };
    expect(changesOf({ run: 11 }, before)).toEqual([{ key: "run", old: 10, now: 11 }]);
    expect(changesOf({ run: 8 }, before)).toEqual([{ key: "run", old: 10, now: 8 }]);
    expect(changesOf({ run: 12 }, before)).toEqual([{ key: "run", old: 10, now: 12 }]);
    expect(changesOf({ run: 7 }, before)).toEqual([
      { key: "run", old: 10, now: 7 },
      { key: "shortest", old: 8, now: undefined },
    ]);
    expect(changesOf({ run: 13 }, before)).toEqual([
      { key: "run", old: 10, now: 13 },
      { key: "longest", old: 12, now: undefined },
    ]);
    // New ends go before.
    expect(changesOf({ run: 13, shortest: 12.5, longest: 14 }, before)).toEqual([
      { key: "run", old: 10, now: 13 },
      { key: "shortest", old: 8, now: 12.5 },
      { key: "longest", old: 12, now: 14 },
    ]);
    // Without a new run the old ends stay; words in them are nobody's end.
    expect(changesOf({ note: "x" }, before)).toEqual([{ key: "note", old: undefined, now: "x" }]);
    expect(changesOf({ run: 13 }, { run: 10, longest: "tbd" })).toEqual([{ key: "run", old: 10, now: 13 }]);
  });
});

test("outlets are told by their names: the first of two on Rooms, whatever the capitals", () => {
  const merge = mergeOutlets(
    [
      { outlet: "a1", run: 5 },
      { outlet: "B1", run: 6 },
      { outlet: "C1", run: 7 },
      { outlet: "7", run: 1 },
    ],
    [
      row(1, { outlet: "A1", run: 4 }),
      row(2, { outlet: "A1", run: 5 }),
      row(3, { outlet: "B1", run: 6 }),
      row(4, { outlet: "D1", run: 8 }),
      row(5, { outlet: 7, run: 1 }),
    ],
  );
  expect(merge).toEqual({
    added: [{ outlet: "C1", run: 7 }],
    changed: [{ offset: 1, outlet: "A1", cells: [{ key: "run", old: 4, now: 5 }] }],
    gone: [{ offset: 4, outlet: "D1" }],
    same: 2,
  });
  expect(mergeOutlets([], [])).toEqual({ added: [], changed: [], gone: [], same: 0 });
});

const merged = (added: number, changed = 0, more: Partial<OutletMerge> = {}): OutletMerge => ({
  added: Array.from({ length: added }, (_, index) => ({ outlet: `A${index}`, run: index + 0.5 })),
  changed: Array.from({ length: changed }, (_, index) => ({
    offset: index + 1,
    outlet: `C${index}`,
    cells: [
      { key: "run", old: 1.5, now: 2 },
      { key: "note", old: undefined, now: "No. 1.5" },
    ],
  })),
  gone: [],
  same: 0,
  ...more,
});

describe("in words", () => {
  test.each<[number, number, number, string | undefined]>([
    [0, 0, 0, undefined],
    [1, 0, 0, "Add 1 outlet to Rooms"],
    [2, 0, 0, "Add 2 outlets to Rooms"],
    [2, 1, 0, "Add 2 outlets, change 1 on Rooms"],
    [2, 0, 3, "Add 2 outlets, take out 3 on Rooms"],
    [0, 1, 0, "Change 1 on Rooms"],
    [0, 0, 1, "Take out 1 on Rooms"],
    [1, 2, 3, "Add 1 outlet, change 2, take out 3 on Rooms"],
  ])("the button for %i new, %i changed and %i taken out", (added, changed, cleared, words) => {
    expect(mergeInWords(merged(added, changed), cleared)).toBe(words);
  });

  test.each<[number, number, number, string]>([
    [1, 0, 0, "1 outlet added to Rooms"],
    [2, 1, 1, "2 outlets added to Rooms, 1 outlet changed, 1 outlet taken out"],
    [0, 2, 2, "2 outlets changed, 2 outlets taken out"],
    [0, 0, 0, ""],
  ])("what was done with %i new, %i changed and %i taken out", (added, changed, cleared, words) => {
    const gone = Array.from({ length: cleared }, (_, offset) => ({ offset, outlet: "Z" }));
    expect(doneInWords(added, { changed: merged(0, changed).changed, cleared: gone })).toBe(words);
  });

  test("nothing done", () => {
    expect(doneInWords(0, NO_CHANGES)).toBe("");
  });

  test("a change, in the signs of the workbook's people", () => {
    expect(changeInWords({ key: "run", old: 12, now: 14.5 })).toBe("run: 12 → 14.5");
    expect(changeInWords({ key: "run", old: 12.5, now: 14.5 }, ",")).toBe("run: 12,5 → 14,5");
    expect(changeInWords({ key: "quantity", old: undefined, now: 2 })).toBe("how many: blank → 2");
    expect(changeInWords({ key: "longest", old: 3, now: undefined })).toBe("longest run: 3 → blank");
    // A name with a point in it stays.
    expect(shownCell("1.5", ",")).toBe("1.5");
    expect(shownCell(undefined, ",")).toBeUndefined();
  });

  test("lines and counts", () => {
    expect([inWords(0, "line"), inWords(1, "line"), inWords(2, "line")]).toEqual([
      "0 lines",
      "1 line",
      "2 lines",
    ]);
    expect(linesInWords([4])).toBe("Line 4");
    expect(linesInWords([4, 7])).toBe("Lines 4, 7");
    expect(linesInWords([1, 2, 3, 4, 5, 6])).toBe("Lines 1, 2, 3, 4, 5, 6");
    expect(linesInWords([1, 2, 3, 4, 5, 6, 7])).toBe("Lines 1, 2, 3, 4, 5, 6, …");
    expect([cellId("12", "run"), nameId("cable", "  Indor Drop ")]).toEqual(["12:run", "cable:indor drop"]);
  });
});

const SURVEY: Survey = {
  source: "text, semicolons, UTF-8",
  sheets: [],
  columns: [
    { column: 0, head: "Outlet", samples: [], key: "outlet" },
    { column: 1, head: "A head that is longer than any column", samples: [] },
    { column: 2, head: "Length", samples: [], key: "run", unit: "ft" },
  ],
  rows: [],
  lines: [],
  troubles: [],
  unknown: [],
  texts: {},
  notes: [],
};

describe("the preview", () => {
  test("shows ten rows of what is new, in the order of Rooms' columns", () => {
    const ten = previewOf(SURVEY, "ft", merged(10));
    expect(ten.table[0]).toEqual(["Outlet", "Run (ft)"]);
    expect(ten.table).toHaveLength(11);
    expect(ten.table[1]).toEqual(["A0", "0.5"]);
    expect(ten.more).toBe("");
    const eleven = previewOf(SURVEY, "m", merged(11), ",");
    expect(eleven.table).toHaveLength(11);
    expect(eleven.table.at(-1)).toEqual(["A9", "9,5"]);
    expect(eleven.more).toBe("and 1 outlet more");
    expect(previewOf(SURVEY, "m", merged(12)).more).toBe("and 2 outlets more");
    const mixed = merged(0, 0, {
      added: [
        { run: 1, outlet: "A" },
        { outlet: "B", floor: "1" },
      ],
    });
    expect(previewOf(SURVEY, "m", mixed).table).toEqual([
      ["Floor", "Outlet", "Run (m)"],
      ["", "A", "1"],
      ["1", "B", ""],
    ]);
    expect(previewOf(SURVEY, "m", merged(0)).table).toEqual([]);
  });

  test("thirty changes and fifty troubles", () => {
    const { changed } = previewOf(SURVEY, "m", merged(0, 30), ",");
    expect(changed).toHaveLength(30);
    expect(changed[29]).toBe("C29: run: 1,5 → 2; note: blank → No. 1.5");
    expect(previewOf(SURVEY, "m", merged(0, 32)).changed.slice(29)).toEqual([
      "C29: run: 1.5 → 2; note: blank → No. 1.5",
      "and 2 more",
    ]);
    const troubles = (count: number) =>
      previewOf(
        {
          ...SURVEY,
          troubles: Array.from({ length: count }, (_, line) => ({
            line,
            reason: "odd.",
            ...(line === 0 && { who: "Bar, A1" }),
          })),
        },
        "m",
        merged(0),
      ).troubles;
    expect(troubles(50)).toHaveLength(50);
    expect(troubles(2)).toEqual(["line 0 (Bar, A1): odd.", "line 1: odd."]);
    expect(troubles(51).slice(49)).toEqual(["line 49: odd.", "and 1 more"]);
  });

  test("what a column is taken for", () => {
    const [outlet, other, run] = SURVEY.columns;
    expect(takenFor(outlet!, "m")).toBe("outlet");
    expect(takenFor(other!, "m")).toBe("not used");
    expect(takenFor(run!, "m")).toBe("run, in ft, converted to m");
    expect(takenFor(run!, "ft")).toBe("run, in ft");
    expect(takenFor({ ...run!, key: "further" }, "ft")).toBe("run, a further part, in ft");
    expect(takenFor({ column: 0, head: "", samples: [], key: "outlets" }, "m")).toBe(
      "how many outlets on the line",
    );
  });

  test("as the command prints it, with every part", () => {
    const survey: Survey = {
      ...SURVEY,
      notes: ["A note."],
      troubles: [{ line: 7, who: "A9", reason: "It is odd." }],
    };
    const gone = [
      { offset: 3, outlet: "Z1" },
      { offset: 4, outlet: "Z2" },
    ];
    expect(previewText(survey, "m", merged(2, 1, { gone, same: 1 }))).toBe(
      [
        "Read as text, semicolons, UTF-8.",
        "",
        "Columns:",
        "  Outlet                    outlet",
        "  A head that is longer t…  not used",
        "  Length                    run, in ft, converted to m",
        "",
        "2 outlets to add:",
        "  Outlet  Run (m)",
        "  A0      0.5",
        "  A1      1.5",
        "",
        "1 outlet that changes:",
        "  C0: run: 1.5 → 2; note: blank → No. 1.5",
        "",
        "On Rooms, and not in the survey:",
        "  Z1, Z2",
        "",
        "Notes:",
        "  A note.",
        "",
        "Bad lines:",
        "  line 7 (A9): It is odd.",
        "",
        "This is a preview; nothing was written.",
      ].join("\n"),
    );
  });

  test("as the command prints it, with as little as there can be", () => {
    expect(previewText({ ...SURVEY, columns: [] }, "m", merged(1))).toBe(
      [
        "Read as text, semicolons, UTF-8.",
        "",
        "1 outlet:",
        "  Outlet  Run (m)",
        "  A0      0.5",
        "",
        "This is a preview; nothing was written.",
      ].join("\n"),
    );
    expect(previewText(SURVEY, "m", merged(0, 2))).toMatch(/\n2 outlets that change:\n/);
    expect(previewText(SURVEY, "m", merged(12))).toMatch(/\n12 outlets:\n[^]*\n {2}and 2 outlets more\n/);
    for (const more of [{ same: 1 }, { gone: [{ offset: 1, outlet: "Z" }] }])
      expect(previewText(SURVEY, "m", merged(1, 0, more))).toMatch(/\n1 outlet to add:\n/);
  });

  test("a cell of 24 signs is shown, one more is cut", () => {
    const text = (length: number): string =>
      previewText(
        { ...SURVEY, columns: [{ column: 0, head: "x".repeat(length), samples: [] }] },
        "m",
        merged(0),
      );
    expect(text(24)).toContain(`\n  ${"x".repeat(24)}  not used`);
    expect(text(25)).toContain(`\n  ${"x".repeat(23)}…  not used`);
  });
});

describe("what a workbook has", () => {
  const NAMES = {
    [site.unit.name]: ["m"],
    [rooms.outlet.name]: ["", "A1", 7, "", "thin"],
    rooms_run: ["", 10, "", 99, 5],
    rooms_note: ["", "", "by hand", "x", ""],
    [estimate.heads.id.name]: ["", "H1", ""],
    [estimate.branches.id.name]: ["", "B1", 3],
    [estimate.cables.name.name]: ["", "indoor drop"],
    [estimate.plates.name.name]: ["single outlet"],
    [estimate.routes.name.name]: ["duct"],
    [estimate.passives.name.name]: ["splitter"],
    [estimate.kinds.name.name]: ["flat"],
    [estimate.receivers.kind.name]: ["", "Kiosk", "receiver"],
    [WRITING_FIELD]: ["German"],
  };
  const from = (names: Readonly<Record<string, readonly unknown[]>>) =>
    roomsFrom({ column: (name) => names[name] });

  test("its unit, its rows without the thin ones and without a name, its lists and its writing", () => {
    expect(from(NAMES)).toEqual({
      unit: "m",
      writing: "de-DE",
      rows: [
        { offset: 1, cells: { outlet: "A1", run: 10 } },
        { offset: 2, cells: { outlet: "7", note: "by hand" } },
      ],
      lists: {
        cable: ["indoor drop"],
        plate: ["single outlet"],
        route: ["duct"],
        split: ["splitter"],
        kind: ["flat"],
        receiver: ["Kiosk", "receiver", "recorder, 2 tuners"],
        open: [],
        // An outlet feeds others through its port.
        from: ["H1", "B1", "A1", "7"],
      },
    });
  });

  test("in feet, without writing, receivers and devices of its own", () => {
    const bare = { [site.unit.name]: ["ft"], [rooms.outlet.name]: ["", "A1", ""] };
    expect(from(bare)).toEqual({
      unit: "ft",
      rows: [{ offset: 1, cells: { outlet: "A1" } }],
      lists: {
        cable: [],
        plate: [],
        route: [],
        split: [],
        kind: [],
        receiver: ["receiver", "recorder, 2 tuners"],
        open: ["receiver"],
        from: [],
      },
    });
    expect(from({ ...bare, [site.unit.name]: [""] })!.unit).toBe("m");
  });

  test("without its unit or its outlets it is none of ours", () => {
    expect(from({ [rooms.outlet.name]: ["", "A1", ""] })).toBeUndefined();
    expect(from({ [site.unit.name]: ["m"] })).toBeUndefined();
  });

  test("as the setting of a survey", () => {
    const { writing, ...setting } = settingOf(from(NAMES)!);
    expect(setting).toEqual({ unit: "m", lists: from(NAMES)!.lists });
    expect(writing).toMatchObject({ tag: "de-DE", decimal: "," });
    expect(settingOf({ unit: "ft", rows: [], lists: {} })).toEqual({ unit: "ft", lists: {} });
  });

  test("a book of our own template, and of another", () => {
    const book = layOut(multiRoom, guestHouse);
    const names = guestHouse.blocks!.rooms!.map(({ outlet }) => String(outlet));
    expect(roomsIn(book)!.rows.map(({ cells }) => cells.outlet)).toEqual(names);
    expect(roomsIn({ ...book, template: "readings" })).toBeUndefined();
    expect(roomsIn({ ...book, names: [] })).toBeUndefined();
  });
});

describe("where outlets are written", () => {
  const zone = (left: number, top = 4, bottom = 20): Zone => ({ top, bottom, left, right: left });
  const placeOf =
    (lost: readonly string[] = []) =>
    (name: string) => {
      const keys = ["floor", "room", "outlet", "run", "note"];
      const at = keys.indexOf(name.replace(/^rooms_/, ""));
      return at < 0 || lost.includes(name) ? undefined : { sheet: "Rooms", zone: zone(at) };
    };

  test("in the columns of the block, between its thin rows", () => {
    expect(roomsBlock(multiRoom, placeOf(), [{ outlet: "A", run: 1 }], NO_CHANGES)).toEqual({
      sheet: "Rooms",
      top: 4,
      bottom: 20,
      columns: new Map([
        ["floor", 0],
        ["room", 1],
        ["outlet", 2],
        ["run", 3],
        ["note", 4],
      ]),
    });
  });

  const lost = (name: string): string =>
    `The workbook has no cells named ${name} any more, so the survey has no place. Open the workbook it was made from.`;

  test("a name that is lost is told where it is needed", () => {
    expect(roomsBlock(multiRoom, placeOf(["rooms_outlet"]), [], NO_CHANGES)).toBe(lost("rooms_outlet"));
    expect(roomsBlock(multiRoom, placeOf(["rooms_floor"]), [], NO_CHANGES)).toBe(lost("rooms_floor"));
    expect(roomsBlock(multiRoom, placeOf(["rooms_note"]), [], NO_CHANGES)).toHaveProperty("sheet");
    expect(roomsBlock(multiRoom, placeOf(["rooms_note"]), [{ note: "x" }], NO_CHANGES)).toBe(
      lost("rooms_note"),
    );
    const changed = [{ offset: 1, outlet: "A", cells: [{ key: "note", old: "x", now: "y" }] }];
    expect(roomsBlock(multiRoom, placeOf(["rooms_note"]), [], { changed, cleared: [] })).toBe(
      lost("rooms_note"),
    );
  });

  test("a workbook of another template takes none", () => {
    const sentence = "This workbook was not made from our multi-room template, so it takes no survey.";
    expect(roomsBlock(undefined, placeOf(), [], NO_CHANGES)).toBe(sentence);
    expect(roomsBlock({ ...multiRoom, sheets: [] }, placeOf(), [], NO_CHANGES)).toBe(sentence);
  });

  test("below the last row that holds anything, with rows added where they do not suffice", () => {
    const block = {
      sheet: "Rooms",
      top: 4,
      bottom: 10,
      columns: new Map([
        ["outlet", 2],
        ["note", 5],
      ]),
    };
    const at = (filled: readonly [number, number][], count: number) =>
      placeOutlets(block, (row, column) => filled.some(([r, c]) => r === row && c === column), count);
    // Rows 5 to 9 are the block's.
    expect(at([], 3)).toEqual({ first: 5, quantity: 0 });
    expect(at([], 5)).toEqual({ first: 5, quantity: 0 });
    expect(at([], 6)).toEqual({ first: 5, quantity: 1 });
    expect(at([[6, 2]], 3)).toEqual({ first: 7, quantity: 0 });
    expect(
      at(
        [
          [6, 2],
          [8, 5],
        ],
        3,
      ),
    ).toEqual({ first: 9, quantity: 2 });
    expect(at([[9, 5]], 1)).toEqual({ first: 10, quantity: 1 });
    // Another column is none of the block's inputs, nor are the thin rows.
    expect(
      at(
        [
          [8, 3],
          [4, 2],
        ],
        1,
      ),
    ).toEqual({ first: 5, quantity: 0 });
  });
});
