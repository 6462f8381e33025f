/** What is said of texts that look like others, and of floors in another spelling, each finding whole and each bound on both sides. */
import type { Finding } from "../../src/review/finding";
import { looksAlike } from "../../src/review/rules/looksAlike";
import type { WorkbookDefinition } from "../../src/workbooks/definition";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { at, atField, found, smallBook, type Row } from "./smallBook";

const column = (key: string, head: string, rule: object) => ({ key, head, input: { what: head, rule } });
const definition = {
  id: "few",
  version: multiRoom.version,
  sheets: [
    {
      name: "S",
      parts: [
        {
          kind: "fields",
          fields: [{ name: "site_job", label: "Job", input: { what: "Job", rule: { kind: "text" } } }],
        },
        {
          kind: "block",
          name: "cables",
          columns: [
            column("name", "Cable", { kind: "text" }),
            column("like", "Like", { kind: "named", name: "cables_name" }),
            column("sits", "Sits", { kind: "choice", choices: ["in", "out"] }),
            column("note", "Note", { kind: "text" }),
          ],
        },
      ],
    },
  ],
} as unknown as WorkbookDefinition;
const all = (blocks: Parameters<typeof smallBook>[0], fields: Row = {}): Finding[] =>
  found(looksAlike, smallBook(blocks, fields), { definition });

describe("a letter or a blank that looks like another", () => {
  // The k is Cyrillic.
  const STRANGE = "trunк";
  const SEEN = { remedy: "Type it again by hand." };
  const K = "a Cyrillic letter к that looks like k";
  test("in a cell that names one of a list", () =>
    expect(all({ cables: [{ name: "trunk" }, { name: "thin", like: STRANGE }] })).toStrictEqual([
      {
        ...SEEN,
        weight: "wrong",
        place: at("cables_like", 2),
        message: `Like “${STRANGE}” holds ${K}.`,
        expected: "“trunk”, as it stands on its list.",
        meant: "trunk",
        effect: "It looks like it and is another name: it is not found on its list (Parts, Site).",
      },
    ]));
  test("in the list itself, beside the other or alone", () => {
    const inList = { ...SEEN, weight: "doubtful", message: `Cable “${STRANGE}” holds ${K}.`, meant: "trunk" };
    expect(all({ cables: [{ name: "trunk" }, { name: STRANGE }] })).toStrictEqual([
      {
        ...inList,
        place: at("cables_name", 2),
        expected: "“trunk”, as it stands on its list.",
        effect: "Two entries look alike and are two: which one counts hangs on the keyboard.",
      },
    ]);
    expect(all({ cables: [{ name: STRANGE }] })).toStrictEqual([
      {
        ...inList,
        place: at("cables_name", 1),
        expected: "“trunk”.",
        effect: "It is not found again under what it looks like.",
      },
    ]);
  });
  test("in a text it is worth knowing", () =>
    expect(all({}, { site_job: `Hotel, ${STRANGE} ` })).toStrictEqual([
      {
        ...SEEN,
        weight: "worth knowing",
        place: atField("site_job"),
        message: `Job “Hotel, ${STRANGE} ” holds ${K}.`,
        expected: "“Hotel, trunk”.",
        effect: "It is not found again under what it looks like.",
      },
    ]));
  test("another blank counts in a name, in a choice and in a list, not in a sentence", () => {
    const blank = (row: Row) =>
      all({ cables: [{ name: "two core" }, { name: "x", ...row }] }).map(({ message }) => message);
    const holds = "two\u00A0core” holds a blank of another kind (a no-break space).";
    expect(blank({ like: "two\u00A0core" })).toEqual([`Like “${holds}`]);
    expect(blank({ sits: "two\u00A0core" })).toEqual([`Sits “${holds}`]);
    expect(blank({ name: "two\u00A0core" })).toEqual([`Cable “${holds}`]);
    expect(blank({ note: "two\u00A0core" })).toEqual([]);
  });
  test("plain texts, numbers, and what a formula shows: nothing", () => {
    expect(all({ cables: [{ name: "trunk", like: "trunk", note: 7 }] }, { site_job: 7 })).toEqual([]);
    const book = smallBook({}, { site_job: "" });
    book.sheets[0]!.cells.A1 = { formula: "x" };
    book.sheets[0]!.results.A1 = STRANGE;
    expect(found(looksAlike, book, { definition })).toEqual([]);
  });
});

describe("a floor", () => {
  const floors = (...names: string[]): Finding[] => all({ rooms: names.map((floor) => ({ floor })) });
  test("that others spell with a blank or a stroke more", () =>
    expect(floors("floor3", "Floor 3", "floor 3", "Floor 3", "FLOOR-3")).toStrictEqual(
      [
        [1, "floor3"],
        [5, "FLOOR-3"],
      ].map(([row, value]) => ({
        weight: "doubtful",
        place: at("rooms_floor", row as number),
        message: `The floor is written “${value}”, and “Floor 3” in 3 other rows.`,
        expected: "“Floor 3”.",
        meant: "Floor 3",
        effect: "It counts as a floor of its own: what is said of the other does not reach it.",
        remedy: "Write it as in the other rows.",
      })),
    ));
  test("that two others spell otherwise, or all alike: nothing", () => {
    expect(floors("floor3", "floor 3", "floor 3")).toEqual([]);
    expect(floors("floor 3", "Floor 3", "FLOOR 3 ", "floor 2", "", "")).toEqual([]);
  });
  test("of one row whose name lacks a letter of others", () =>
    expect(floors("flor 3", "Floor 3", "floor 3", "floor 3")).toStrictEqual([
      {
        weight: "doubtful",
        place: at("rooms_floor", 1),
        message: "The floor is written “flor 3” in this row alone, and “Floor 3” in 3 others.",
        expected: "“Floor 3”.",
        meant: "Floor 3",
        effect: "It counts as a floor of its own: it is set up once more.",
        remedy: "Write it as in the other rows.",
      },
    ]));
  test.each<[string, string[], number]>([
    ["two rows of it", ["flor 3", "flor 3", "floor 3", "floor 3", "floor 3"], 0],
    ["two others", ["flor 3", "floor 3", "floor 3"], 0],
    ["another number", ["flor 4", "floor 3", "floor 3", "floor 3"], 0],
    ["another number of as many letters", ["floor 4", "floor 3", "floor 3", "floor 3"], 0],
    ["two letters off", ["flr 3", "floor 3", "floor 3", "floor 3"], 0],
    ["no number", ["Groun", "Ground", "Ground", "Ground"], 0],
    ["five letters and figures", ["lvl 1", "lvll 1", "lvll 1", "lvll 1"], 1],
    ["four", ["lv 1", "lvl 1", "lvl 1", "lvl 1"], 0],
    // That is told of the spelling, once.
    ["a stroke off", ["floor3", "floor 3", "floor 3", "floor 3"], 1],
  ])("%s", (_, names, count) => expect(floors(...names)).toHaveLength(count));
});
