/** What is said of entries that are missing or outside their rule, by a template of a few cells; and of lists that follow each other. */
import { inputRules } from "../../src/review/rules/inputRules";
import { mirroredRows } from "../../src/review/rules/mirroredRows";
import { missingEntries } from "../../src/review/rules/missingEntries";
import type { Finding } from "../../src/review/finding";
import type { Rule } from "../../src/review/rule";
import type { InputRule, WorkbookDefinition } from "../../src/workbooks/definition";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { at, atField, found, smallBook, type Row } from "./smallBook";

const text: InputRule["rule"] = { kind: "text" };
const number = (min: number, max: number): InputRule["rule"] => ({ kind: "number", min, max });
const field = (name: string, label: string, input: object) => ({
  name,
  label,
  input: { what: `What ${label} is`, rule: text, ...input },
});
const column = (key: string, head: string, input: object = {}) => ({
  key,
  head,
  input: { what: `What ${head} is`, rule: text, ...input },
});
const block = (name: string, heading: string, columns: unknown[], more = {}) => ({
  kind: "block",
  name,
  heading,
  prepared: 3,
  columns,
  ...more,
});

const definition = {
  id: "few",
  version: multiRoom.version,
  sheets: [
    {
      name: "S",
      parts: [
        { kind: "note" },
        {
          kind: "fields",
          fields: [
            field("site_low", "Low", { rule: number(5, 3000), example: "950", required: true }),
            field("site_job", "Job", { required: true }),
            field("site_note", "Note", {}),
            { name: "site_told", label: "Told" },
          ],
        },
        block("rooms", "Outlets", [
          column("outlet", "Outlet"),
          column("floor", "Floor"),
          column("run", "Run", { rule: number(0.5, 500), required: 'rooms_type=""' }),
          column("type", "Type"),
          column("from", "Fed from", { required: true }),
          column("next", "Next", { rule: { kind: "named", name: "rooms_outlet" } }),
          column("receiver", "Receiver"),
          { key: "told", head: "Told" },
        ]),
        block("provisional", "Sums", [
          column("name", "Name"),
          column("sum", "Sum", { rule: number(0, 9000) }),
        ]),
        block("branches", "Devices", [column("id", "Device"), column("device", "Part")], { rowName: "id" }),
        block("work", "Labour", [column("minutes", "Minutes")], { mirrors: "kinds" }),
        block("kinds", "Kinds of work", [column("name", "Name")]),
      ],
    },
  ],
} as unknown as WorkbookDefinition;

const by =
  (rule: Rule) =>
  (blocks: Parameters<typeof smallBook>[0], fields: Row = {}): Finding[] =>
    found(rule, smallBook(blocks, fields), { definition });
const JOB = { outlet: "a", run: 9 };

describe("an entry that is missing", () => {
  const missing = by(missingEntries);
  const FILL = { weight: "wrong", remedy: "Fill the cell." };
  test("a field, a text that says nothing, and a cell of a row", () =>
    expect(
      missing(
        { rooms: [JOB, { outlet: " b ", run: "", type: "", from: "" }, { outlet: "", run: "", type: "" }] },
        { site_low: "", site_job: " – ", site_note: "" },
      ),
    ).toStrictEqual([
      {
        ...FILL,
        place: atField("site_low"),
        message: "Low is blank.",
        expected: "What Low is, such as 950.",
        effect: "A blank counts as zero, and prints as nothing.",
      },
      {
        ...FILL,
        place: atField("site_job"),
        message: "Job is “ – ”.",
        expected: "What Job is.",
        effect: "A blank counts as zero, and prints as nothing.",
      },
      {
        ...FILL,
        place: at("rooms_run", 2),
        message: "Run of b is blank.",
        expected: "What Run is.",
        effect: "A blank counts as zero.",
      },
    ]));
  test("a row that the template does not ask, and a workbook without a job: nothing", () => {
    expect(
      missing({ rooms: [{ outlet: "a", run: "", type: "single" }] }, { site_low: 950, site_job: "Inn" }),
    ).toEqual([]);
    expect(missing({ rooms: [{ outlet: "", run: "" }] }, { site_low: "" })).toEqual([]);
    // A figure may be 0, and a text of a stroke with a letter says something.
    expect(missing({ rooms: [{ outlet: "a", run: 0 }] }, { site_low: 0, site_job: "-A-" })).toEqual([]);
  });

  const NAMELESS = {
    weight: "wrong",
    place: at("rooms_outlet", 2),
    message: "This row is filled and has no name: Outlet is blank.",
    expected: "A name of its own, or an empty row.",
    effect: "It is neither counted nor priced, and what names it elsewhere is not found.",
    remedy: "Fill the cell, or clear the row.",
  };
  test("the name of a row", () => {
    const rooms = (first: Row, second: Row) =>
      missing({
        rooms: [
          { ...JOB, ...first },
          { outlet: "", ...second },
        ],
      });
    expect(rooms({}, { run: 7 })).toEqual([NAMELESS]);
    // A floor that is typed ahead makes no outlet.
    expect([rooms({}, { floor: "North" }), rooms({}, { run: "" })]).toEqual([[], []]);
    // The one name that is asked for and is not there was meant.
    expect(rooms({ next: "b" }, { run: 7 })).toEqual([{ ...NAMELESS, meant: "b" }]);
    expect(rooms({ next: "A" }, { run: 7 })).toEqual([NAMELESS]);
    expect(rooms({ next: "b" }, { run: 7, next: "c" })).toEqual([NAMELESS]);
  });

  test("the receiver of so many", () => {
    const of = (row: Row) =>
      missing({ rooms: [JOB, { outlet: "b", run: 9, quantity: 2, receiver: "", ...row }] });
    expect(of({})).toStrictEqual([
      {
        weight: "doubtful",
        place: at("rooms_receiver", 2),
        message: "b has 2 of a receiver that is not named.",
        expected: "The kind of receiver; both blank for a spare outlet.",
        effect: "It gets no user band, and nothing of it is counted.",
        remedy: "Fill the cell, or clear “How many”.",
      },
    ]);
    for (const row of [{ receiver: "twin" }, { quantity: 0 }, { quantity: "" }] as Row[])
      expect(of(row)).toEqual([]);
    expect(missing({ rooms: [JOB, { outlet: "", quantity: 2, receiver: "" }] })).toEqual([]);
    expect(missing({ rooms: [{ ...JOB, quantity: 2 }] })).toEqual([]);
  });

  test("what the slots beside the focus of a dish lose", () => {
    const dish = (slots: string, off: string | number, listed: string[] = []) =>
      missing({
        rooms: [JOB],
        dishes: [{ name: "D1", slots, off_focus: off }],
        slots: listed.map((slot) => ({ slot })),
      });
    expect(dish("Ku 1, Ku-2", "")).toHaveLength(1);
    expect(dish("K1;K2", "")).toStrictEqual([
      {
        weight: "wrong",
        place: at("dishes_off_focus", 1),
        message: "D1 receives 2 slots, and what those beside its focus lose is blank.",
        expected: "Usually 1 to 2 dB (common practice, no source).",
        usual: { low: 1, high: 2 },
        effect: "Neither the dish nor what hangs on it can be worked out.",
        remedy: "Fill the cell.",
      },
    ]);
    expect([dish("K1", ""), dish("K1;K2", 0), dish("K1;K2", 1.5), dish("", "", ["K1"])]).toEqual([
      [],
      [],
      [],
      [],
    ]);
    // Without a list of its own it receives all of them.
    expect(dish("", "", ["K1", "K2", "K3"]).map(({ message }) => message)).toEqual([
      "D1 receives 3 slots, and what those beside its focus lose is blank.",
    ]);
  });
});

describe("an entry outside its rule", () => {
  const outside = by(inputRules);
  test("a number, an error and a name", () => {
    expect(
      outside(
        {
          rooms: [
            { outlet: "a ", run: 501 },
            { outlet: "b", run: 500 },
          ],
        },
        { site_low: 4.9999999 },
      ),
    ).toStrictEqual([
      {
        weight: "wrong",
        place: atField("site_low"),
        message: "Low is 5.",
        expected: "From 5 to 3000.",
        effect: undefined,
        remedy: "Enter it again. What Low is.",
      },
      {
        weight: "wrong",
        place: at("rooms_outlet", 1),
        message: "Outlet is “a ”.",
        expected: "“a”, without a blank at its end.",
        meant: "a",
        effect: undefined,
        remedy: "Enter it again. What Outlet is.",
      },
      {
        weight: "wrong",
        place: at("rooms_run", 1),
        message: "Run is 501.",
        expected: "From 0.5 to 500.",
        effect: undefined,
        remedy: "Enter it again. What Run is.",
      },
    ]);
  });
  test("blanks, what no name is, and what a formula shows: nothing", () => {
    expect(outside({ rooms: [{ outlet: "a", run: "", floor: "North " }] }, { site_low: " " })).toEqual([]);
    const book = smallBook({}, { site_low: 4 });
    book.sheets[0]!.cells.A1 = { formula: "2+2" };
    book.sheets[0]!.results.A1 = 4;
    expect(found(inputRules, book, { definition })).toEqual([]);
  });
  test("a sum under nothing hides a discount", () => {
    const sum = (fields: Row, value = -50) => outside({ provisional: [{ name: "x", sum: value }] }, fields);
    const HIDDEN = {
      weight: "wrong",
      place: at("provisional_sum", 1),
      message: "Sum is -50.",
      expected: "From 0 to 9000.",
      effect: "The price is lowered, and the quote does not say so.",
    };
    expect(sum({ discount_sum: "" })).toStrictEqual([
      {
        ...HIDDEN,
        remedy: "Enter a discount in its own cells on Terms, with its reason; then it prints as one.",
      },
    ]);
    expect(sum({})).toStrictEqual([{ ...HIDDEN, remedy: "Enter it again. What Sum is." }]);
    const [more] = sum({ discount_sum: "" }, 9001);
    expect(more).toMatchObject({ effect: undefined, remedy: "Enter it again. What Sum is." });
    expect(outside({ rooms: [{ outlet: "a", run: -1 }] }, { discount_sum: "" })[0]!.effect).toBeUndefined();
  });

  test("a part that is a slip away from one of its list", () => {
    const device = (
      typed: string | number,
      lists: Parameters<typeof smallBook>[0] = {
        passives: [{ name: "Splitter" }],
        supplies: [{ name: "inserter" }],
      },
    ) => outside({ branches: [{ id: "G1", device: typed }], ...lists });
    expect(device("spliter")).toStrictEqual([
      {
        weight: "wrong",
        place: at("branches_device", 1),
        message: "Part of G1 is “spliter”, which is not on its list.",
        expected: "“Splitter”, likely.",
        meant: "Splitter",
        isGuess: true,
        effect: "It is neither priced nor worked out, nor what hangs on it.",
        remedy: "Choose it from the list.",
      },
    ]);
    expect(device("insreter")[0]!.meant).toBe("inserter");
    expect([device("SPLITTER "), device("amplifier"), device(""), device(7), device("spliter", {})]).toEqual([
      [],
      [],
      [],
      [],
      [],
    ]);
  });
  test("a receiver by its number of tuners needs no row", () => {
    const receiver = (typed: string) =>
      outside({ rooms: [{ outlet: "a", receiver: typed }], receivers: [{ kind: "receiver, 3 tuners" }] });
    expect(receiver("receiver, 2 tuners")).toEqual([]);
    expect(receiver("reciever, 3 tuners")[0]!.meant).toBe("receiver, 3 tuners");
  });
});

describe("a list that follows another row by row", () => {
  const rows = (count: number, key: string): Row[] => Array.from({ length: count }, () => ({ [key]: 1 }));
  const lists = (work: number, kinds: number) =>
    by(mirroredRows)({ work: rows(work, "minutes"), kinds: rows(kinds, "name") });
  const UNLIKE = {
    weight: "wrong",
    place: at("kinds_name", 0),
    expected: "As many rows in both.",
    effect: "Sums over both are an error or leave something out.",
  };
  test("is longer, or shorter", () => {
    expect(lists(3, 2)).toStrictEqual([
      {
        ...UNLIKE,
        message: "Kinds of work has 1 row fewer than labour, which follows it row by row.",
        remedy:
          "A row was deleted here: insert one again between the thin rows, and fill it if it was needed.",
      },
    ]);
    expect(lists(2, 4)).toStrictEqual([
      {
        ...UNLIKE,
        message: "Kinds of work has 2 rows more than labour, which follows it row by row.",
        remedy: "Add rows with Add rows, which lets both grow.",
      },
    ]);
  });
  test("is as long, or one of the two is not there, or the workbook is of an earlier version: nothing", () => {
    expect(lists(3, 3)).toEqual([]);
    expect(by(mirroredRows)({ work: rows(3, "minutes") })).toEqual([]);
    expect(by(mirroredRows)({ kinds: rows(3, "name") })).toEqual([]);
    const book = smallBook({ work: rows(3, "minutes"), kinds: rows(2, "name") });
    expect(found(mirroredRows, book, { definition, earlier: { others: [] } })).toEqual([]);
    expect(found(mirroredRows, book, { definition: undefined })).toEqual([]);
  });
});
