/** Titles, remarks, sentences and types of a job: each finding whole, and each bound on both sides. */
import type { Finding } from "../../src/review/finding";
import { numbersLeftOut } from "../../src/review/rules/numbersLeftOut";
import { officeRemarks } from "../../src/review/rules/officeRemarks";
import { printedTwice } from "../../src/review/rules/printedTwice";
import { typeEntries } from "../../src/review/rules/typeEntries";
import { at, atField, found, messages, smallBook, type Row } from "./smallBook";

describe("a number left out", () => {
  const book = (title: string, ...outlets: readonly string[]) =>
    smallBook({ rooms: outlets.map((outlet) => ({ outlet })) }, { site_job: title });
  const told = (...asked: Parameters<typeof book>): Finding[] => found(numbersLeftOut, book(...asked));
  const said = (...asked: Parameters<typeof book>): string[] => messages(numbersLeftOut, book(...asked));
  /** So many from a number on. */
  const row = (from: number, count: number): string[] =>
    Array.from({ length: count }, (_, index) => `A${String(from + index).padStart(2, "0")}`);

  test("that the title counts, between its neighbours in whatever order", () =>
    expect(told("Guest house, 5 Outlets", "A-02", "A-04 ", "", "a-01", "A-05")).toStrictEqual([
      {
        weight: "doubtful",
        place: at("rooms_outlet", 2),
        message:
          "A-03 is not listed, between A-02 and A-04 ; the job's title counts 5 outlets, and 4 are listed.",
        expected: "A row for A-03, unless there is no such outlet.",
        effect: "It is neither priced nor planned.",
        remedy: "Compare with the plan: was its row cleared? Else correct the title on Site.",
      },
    ]));
  test("up to three, each named", () => {
    expect(said("13 outlets", ...row(1, 4), ...row(8, 6)).map((one) => one.slice(0, 3))).toEqual([
      "A05",
      "A06",
      "A07",
    ]);
    expect(said("18 outlets", ...row(1, 7), ...row(12, 7))).toEqual([]);
  });
  test.each<[string, string, string[]]>([
    ["as many as are listed", "4 outlets", ["A1", "A2", "A4", "A5"]],
    ["three in a row", "5 outlets", ["A1", "A2", "A4", "B"]],
    ["more gaps than the title counts", "8 outlets", ["A1", "A2", "A4", "A6", "A7", "A8", "A9"]],
    ["none between, for it is the last", "5 outlets", ["A1", "A2", "A3", "A4"]],
    ["one in two rows", "5 outlets", ["A1", "A1", "A2", "A3"]],
    ["a title that counts none", "Guest house", ["A1", "A2", "A4", "A5"]],
    ["a gap of more than is left out", "13 outlets", [...row(1, 4), ...row(10, 6)]],
  ])("%s: nothing", (_, title, outlets) => expect(said(title, ...outlets)).toEqual([]));
  test("a title that counts many more, or fewer, is another job's", () => {
    expect(told("Hostel, 14 outlets", ...row(1, 10))).toStrictEqual([
      {
        weight: "worth knowing",
        place: atField("site_job"),
        message: "The job is called “Hostel, 14 outlets”, and 10 outlets are listed.",
        expected: "The title of this job.",
        effect: "It is printed on the quote.",
        remedy: "Correct the title, or look whether outlets are missing.",
      },
    ]);
    expect(said("Hostel, 6 outlets", ...row(1, 10))).toHaveLength(1);
    expect(said("Hostel, 7 outlets", ...row(1, 10))).toEqual([]);
    expect(said("Hostel, 13 outlets", ...row(1, 10))).toEqual([]);
  });
});

describe("a remark to a colleague", () => {
  test.each([
    ["assumptions", "text"],
    ["exclusions", "text"],
    ["options", "name"],
    ["provisional", "name"],
    ["letterhead", "line"],
  ])("among the %s", (block, key) =>
    expect(
      found(
        officeRemarks,
        smallBook({ [block]: [{ [key]: "Painting." }, { [key]: "Enough??" }, { [key]: 3 }] }),
      ),
    ).toStrictEqual([
      {
        weight: "doubtful",
        place: at(`${block}_${key}`, 2),
        message: "“Enough??” reads like a remark to a colleague.",
        expected: "What the customer may read.",
        effect: "It is printed on the quote.",
        remedy: "Settle the question and clear the line, or put it on Log.",
      },
    ]),
  );
  test.each([
    ["customer", "Customer"],
    ["job", "Job"],
    ["place", "Site address"],
  ])("a word for another where the %s is named", (key, label) => {
    const name = `site_${key}`;
    expect(found(officeRemarks, smallBook({}, { [name]: " TBC " }))).toStrictEqual([
      {
        weight: "doubtful",
        place: atField(name),
        message: `${label} is “ TBC ”.`,
        expected: "The name that the customer reads on the quote.",
        effect: "It is printed on the quote.",
        remedy: "Enter it.",
      },
    ]);
    for (const value of ["Guest house", "", "Max Name"])
      expect(messages(officeRemarks, smallBook({}, { [name]: value }))).toEqual([]);
  });
});

describe("a sentence printed twice", () => {
  test.each([
    ["assumptions", "text"],
    ["exclusions", "text"],
    ["letterhead", "line"],
  ])("among the %s, but for case, strokes and stops", (block, key) =>
    expect(
      found(
        printedTwice,
        smallBook({
          [block]: ["Repair of walls.", "- repair of  Walls", "Painting", "...", "!", "repair of walls"].map(
            (text) => ({ [key]: text }),
          ),
        }),
      ),
    ).toStrictEqual(
      [[2, "- repair of  Walls"] as const, [6, "repair of walls"] as const].map(([row, text]) => ({
        weight: "doubtful",
        place: at(`${block}_${key}`, row),
        message: `“${text}” stands in A2 already.`,
        expected: "Each sentence once.",
        effect: "The customer reads it twice.",
        remedy: "Clear one of the two rows, or write what was meant.",
        undoing: [{ place: at(`${block}_${key}`, row) }],
      })),
    ),
  );
  test("of one list; what stands once in each of two lists does not", () =>
    expect(
      messages(
        printedTwice,
        smallBook({ assumptions: [{ text: "Painting" }], exclusions: [{ text: "Painting" }] }),
      ),
    ).toEqual([]));
});

describe("a type unlike its rooms", () => {
  const outlet = (room: string, type: string, floor = "1"): Row => ({ outlet: "o", floor, room, type });
  const told = (types: Row[], ...rooms: Row[]): Finding[] => found(typeEntries, smallBook({ types, rooms }));
  const double = (outlets: number | string): Row[] => [{ name: "Double", outlets }];
  const EACH = {
    weight: "wrong",
    place: at("types_outlets", 1),
    effect: "Checks counts the rooms that are otherwise.",
    remedy: "Correct the type, or add the outlets on Rooms.",
  };
  test("in the outlets of each, by floor and room", () =>
    expect(
      told(
        double(2),
        outlet("101", "double"),
        outlet("102", "Double "),
        outlet("101", "double", "2"),
        outlet("", "double"),
        outlet("103", "suite"),
        outlet("103", "suite"),
      ),
    ).toStrictEqual([
      {
        ...EACH,
        message: "Double is said to have 2 outlets a room, and its 3 rooms have 1 each.",
        expected: "1, as Rooms has them.",
        meant: 1,
      },
    ]));
  const one = outlet("101", "double");
  const two = outlet("102", "double");
  test.each<[string, Row[], Row[], number]>([
    ["two rooms", double(3), [one, two], 1],
    ["one room", double(3), [one], 0],
    ["as it says", double(1), [one, two], 0],
    [
      "one of them as it says",
      double(2),
      [one, two, two, outlet("103", "double"), outlet("104", "double")],
      0,
    ],
    ["half of them one, half two", double(3), [one, two, two], 0],
    ["a type that does not say", double(""), [one, two], 0],
    ["no column that could", [{ name: "Double" }], [one, two], 0],
  ])("%s", (_, types, rooms, count) => expect(told(types, ...rooms)).toHaveLength(count));

  test("a room called as a type that no room has", () =>
    expect(
      told(
        [{ name: "Office" }, { name: "Suite" }],
        { outlet: "a", room: "office ", type: "Suite" },
        { outlet: "b", room: "Suite", type: "Suite" },
        { outlet: "c", room: "Hall", type: "Suite" },
        { outlet: "d", room: "Office", type: "" },
      ),
    ).toStrictEqual([
      {
        weight: "doubtful",
        place: at("rooms_type", 1),
        message: "a is in the Office, and its type is “Suite”; no room has the type “Office”.",
        expected: "“Office”.",
        meant: "Office",
        effect: "It is equipped and priced as another room.",
        remedy: "Choose the type from the list.",
      },
    ]));
  test("a room called as a type that another has, or without a column of types: nothing", () => {
    const types = [{ name: "Office" }, { name: "Suite" }];
    const mixed = { outlet: "a", room: "Office", type: "Suite" };
    expect(told(types, mixed, { outlet: "b", room: "Hall", type: "office" })).toEqual([]);
    expect(told(types, { outlet: "a", room: "Office" })).toEqual([]);
  });
});
