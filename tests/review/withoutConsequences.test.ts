/** What only follows from a named mistake is counted: each way in which something follows, and its nearest neighbour that does not. */
import type { Finding } from "../../src/review/finding";
import { withoutConsequences } from "../../src/review/withoutConsequences";
import type { Book } from "../../src/workbooks/book";
import { bookOf, emptySheet } from "../support/books";

const finding = (rule: string, place?: string, more: Partial<Finding> = {}): Finding => {
  const [sheet, cell] = place?.split("!") ?? [];
  return {
    rule,
    weight: "wrong",
    message: `${rule} is said.`,
    remedy: "Look.",
    ...(sheet !== undefined && cell !== undefined && { place: { sheet, cell } }),
    ...more,
  };
};
const at = (cell: string, sheet = "Rooms") => ({ sheet, cell });
const BOOK: Book = bookOf(
  {
    ...emptySheet("Rooms"),
    cells: { D5: { value: "thin drop" }, E5: { value: "" }, F5: { value: 12 } },
    results: { H5: { error: "#N/A" }, I5: 3 },
  },
  emptySheet("Head units"),
);
const left = (found: readonly Finding[], ...more: unknown[]): Finding[] =>
  withoutConsequences(found, BOOK, BOOK, ...(more as [never]));
const counted = (message: string): Finding => ({
  weight: "worth knowing",
  message,
  rule: "error",
  remedy: "Fix the others and review again; these should then clear, or show what is left.",
});
const ONE = counted("1 more line of errors, checks or limits follows from what is named here.");
const two = (count: number) =>
  counted(`${count} more lines of errors, checks and limits follow from what is named here.`);

const CAUSE = finding("unknown name", "Rooms!D5");
const ERROR = finding("error", "Site!A9");

test("what follows from nothing stays as it is", () => {
  expect(left([])).toEqual([]);
  const found = [CAUSE, ERROR, finding("failing check", "Checks!D9"), finding("outside limits", "Rooms!D5")];
  expect(left(found)).toEqual(found);
});

describe("an error follows", () => {
  const says = (message: string): Finding => finding("error", "Site!A9", { message });
  test.each<[string, Finding, Finding]>([
    ["from what is named in its row", finding("error", "Rooms!AB5"), CAUSE],
    ["from what is doubtful there", finding("error", "Rooms!AB5"), { ...CAUSE, weight: "doubtful" }],
    ["where it speaks of what stands in the named cell", says('No cable is called "thin drop".'), CAUSE],
    ["in single quotes too", says("No cable is called 'thin drop'."), CAUSE],
  ])("%s", (_, error, cause) => expect(left([cause, error])).toEqual([cause, ONE]));
  test.each<[string, Finding, Finding]>([
    ["in another row", finding("error", "Rooms!D6"), CAUSE],
    ["in row 55", finding("error", "Rooms!D55"), CAUSE],
    ["on another sheet", finding("error", "Site!D5"), CAUSE],
    ["from what is worth knowing", finding("error", "Rooms!H5"), { ...CAUSE, weight: "worth knowing" }],
    ["where it speaks of the same without quotes", says("No thin drop."), CAUSE],
    ["where it speaks of nothing", says('It is "".'), finding("unknown name", "Rooms!E5")],
    ["where it speaks of a figure", says('It is "12".'), finding("unknown name", "Rooms!F5")],
    ["from a sheet that is gone", says('It is "thin drop".'), finding("unknown name", "Gone!D5")],
    ["from the whole workbook", finding("error", "Rooms!D5"), finding("name changed")],
    ["from another error", finding("error", "Rooms!H5"), finding("error", "Rooms!I5")],
  ])("not %s", (_, error, cause) => expect(left([cause, error])).toEqual([cause, error]));

  test("the line that counts others goes with the last error that is listed", () => {
    const counts = finding("error", undefined);
    expect(left([CAUSE, counts, ERROR])).toEqual([CAUSE, counts, ERROR]);
    expect(left([CAUSE, counts, finding("error", "Rooms!H5")])).toEqual([CAUSE, two(2)]);
    expect(left([CAUSE, counts])).toEqual([CAUSE, ONE]);
  });
});

describe("a failing check follows", () => {
  const check = (more: Partial<Finding>): Finding => finding("failing check", "Checks!D9", more);
  const of = (id: string, entriesOf?: string): Partial<Finding> => ({
    check: { id, ...(entriesOf !== undefined && { entriesOf }) } as NonNullable<Finding["check"]>,
  });
  test.each<[string, Finding, Finding]>([
    ["from the cell that brings it about", check({ cause: at("D5") }), CAUSE],
    ["from its row, where an error stands", check({ cause: at("H5") }), CAUSE],
    ["from the rule that names what it counts", check(of("outlets unfed")), finding("feeding", "Rooms!D9")],
    ["from that rule on its sheet", check(of("head units wrong")), finding("feeding", "Head units!D9")],
    [
      "from the rule that names a sheet's entries",
      check(of("entries of Parts", "Parts")),
      finding("price missing, expired or changed", "Parts!H7"),
    ],
  ])("%s", (_, one, cause) => expect(left([cause, one])).toEqual([cause, ONE]));
  test.each<[string, Finding, Finding]>([
    ["from its row, where a figure stands", check({ cause: at("I5") }), CAUSE],
    ["from its row, where nothing stands", check({ cause: at("J5") }), CAUSE],
    ["from another row with an error", check({ cause: at("H5") }), finding("unknown name", "Rooms!D6")],
    ["from the row of another sheet", check({ cause: at("H5") }), finding("unknown name", "Site!D5")],
    ["without a cause", check({}), CAUSE],
    ["from a rule that names other things", check(of("outlets unfed")), finding("duplicate", "Rooms!D9")],
    [
      "from what is only worth knowing",
      check(of("outlets unfed")),
      finding("feeding", "Rooms!D9", { weight: "worth knowing" }),
    ],
    ["from that rule on another sheet", check(of("head units wrong")), finding("feeding", "Rooms!D9")],
    ["from that rule of the whole workbook", check(of("head units wrong")), finding("feeding")],
    [
      "of another sheet's entries",
      check(of("entries of Rooms", "Rooms")),
      finding("price missing, expired or changed", "Parts!H7"),
    ],
    ["without an id", check({}), finding("feeding", "Rooms!D9")],
    [
      "of which nothing could be found out, without an error",
      check({ message: "It could not be found out." }),
      CAUSE,
    ],
    // Only a check is told by the rule of its id.
    [
      "by another rule",
      finding("outside limits", "Rooms!A9", of("outlets unfed")),
      finding("feeding", "Rooms!D9"),
    ],
  ])("not %s", (_, one, cause) => expect(left([cause, one])).toEqual([cause, one]));
  test("from any error, where it could not be found out", () => {
    const one = check({ message: "Whether it adds up could not be found out." });
    expect(left([ERROR, one])).toEqual([ERROR, ONE]);
  });
});

describe("what would not be said with the mistakes mended", () => {
  const DOUBT = finding("far from neighbours", "Rooms!F5", { weight: "doubtful" });
  const LIMIT = finding("outside limits", "Rooms!K9");
  const ROW = finding("row that cannot be worked out", "Rooms!K8");
  const CHECK = finding("failing check", "Checks!D9");
  const WHOLE = finding("failing check");
  const found = [CAUSE, DOUBT, LIMIT, ROW, CHECK, WHOLE, ERROR];

  test("hangs on them; what is said all the same, or of the whole workbook, stays", () => {
    const ifMended = jest.fn(() => [CHECK, { ...LIMIT, message: "Otherwise." }, { ...ROW, place: at("K7") }]);
    expect(left(found, ifMended)).toEqual([CAUSE, DOUBT, CHECK, WHOLE, two(3)]);
    expect(ifMended.mock.calls).toEqual([[[CAUSE]]]);
  });
  test("of what follows by itself it is not asked", () => {
    const ifMended = jest.fn(() => []);
    expect(left([CAUSE, finding("error", "Rooms!H5")], ifMended)).toEqual([CAUSE, ONE]);
    expect(left([DOUBT, LIMIT], ifMended)).toEqual([DOUBT, LIMIT]);
    expect(left([LIMIT, CHECK], ifMended)).toEqual([LIMIT, CHECK]);
    expect(ifMended).not.toHaveBeenCalled();
  });
  test("where it cannot be computed all stay", () => expect(left(found, () => undefined)).toEqual(found));
});
