/** What a proposal says, what it leaves out, and when there is none. */
import type { DocumentPart } from "../../src/proposal/document";
import { PROPOSAL_PARTS } from "../../src/proposal/chosenParts";
import type { JobInputs } from "../../src/workbooks/definition";
import { layOut } from "../../src/workbooks/layOut";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { hostel } from "../../src/workbooks/multiRoom/hostel";
import { startingPoint } from "../../src/workbooks/multiRoom/startingPoint";
import { sheetDate } from "../../src/workbooks/sheetDate";
import { drawOn } from "../../src/standards/drawOn";
import { firmsStandards, type FirmsStandards } from "../../src/standards/firmsStandards";
import { standardsWorkbook } from "../../src/workbooks/standards/definition";
import { standardsExample } from "../../src/workbooks/standards/demonstration";
import { templates } from "../../src/workbooks/templates";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { changedJob, computed, withRow, type Changes, type Row } from "../support/pictureJobs";
import { computedJob, headingsOf, madeOf, proposalIn, wordsIn, type Made } from "../support/proposals";

const plainParts = { parts: { without: ["diagram", "sky"] } } as const;
/** Computed once: many tests look at the job as it is. */
const asItIs = computedJob(guestHouse);
const made = (changes: Changes = {}, more = {}): Made =>
  madeOf(Object.keys(changes).length === 0 ? asItIs : computed(changes), {
    ...plainParts,
    anyway: true,
    ...more,
  });
const refused = (changes: Changes): readonly string[] =>
  proposalIn(computed(changes), plainParts).refused ?? [];
const textOf = ({ document }: Made): string => wordsIn(document).join("\n");
const tablesOf = ({ document: { parts } }: Made) =>
  parts.filter((part): part is Extract<DocumentPart, { kind: "table" }> => part.kind === "table");
/** The first table under a heading. */
const tableUnder = (made: Made, heading: string) => {
  const { parts } = made.document;
  const at = parts.findIndex((part) => part.kind === "heading" && part.text === heading);
  return tablesOf({
    ...made,
    document: { ...made.document, parts: parts.slice(at < 0 ? parts.length : at) },
  })[0]!;
};

/** None of these lists has a row. */
const without = (...lists: readonly string[]): Changes => ({
  blocks: Object.fromEntries(lists.map((list) => [list, []])),
});

describe("the invented guest house", () => {
  // Two of its checks fail on purpose.
  const found = madeOf(asItIs, { anyway: true });
  test("has its parts in the order in which a customer asks", () => {
    expect(found.document.parts.slice(0, 3).map(({ kind }) => kind)).toEqual([
      "letterhead",
      "title",
      "facts",
    ]);
    expect(headingsOf(found.document)).toEqual([
      "What is offered",
      "Price",
      "Provisional sums",
      "Options",
      "Assumptions",
      "Not included",
      "Terms of payment",
      "Warranty",
      "Terms and safety",
      "Acceptance",
      "Room schedule",
    ]);
    // What is looked up comes last.
    expect(found.document.parts.slice(-2).map(({ kind }) => kind)).toEqual(["picture", "picture"]);
    expect(found.document.parts.find(({ kind }) => kind === "signature")).toMatchObject({
      lines: [
        "Total with what is ticked, with tax",
        "",
        "Customer: signature",
        "Firm: signature",
        "Name, place and date",
        "Name, place and date",
      ],
    });
  });
  test("names what fails to the office, and nothing of it to the customer", () => {
    expect(found.missing).toEqual([]);
    expect(found.notes).toEqual([expect.stringContaining("A-07"), expect.stringContaining("H3")]);
    expect(textOf(made())).not.toMatch(/too weak|short of volts|[Cc]hecks? /);
  });
  test("has a box for what can be ticked, and none for what is in the price", () => {
    const rows = tableUnder(found, "Options").rows;
    expect(rows).toEqual([
      { cells: ["second outlet in the lounge", "74.00", "11,168.22"], box: true },
      { cells: ["In the price already", "", ""], is: "group" },
      { cells: ["spare head unit in the cabinet", "145.00", "in the total"] },
    ]);
  });
  test("is marked as invented", () => {
    const [letterhead] = found.document.parts;
    expect(letterhead).toMatchObject({ name: "Invented firm (demonstration)" });
    expect(found.document.author).toBe("Invented firm (demonstration)");
  });
});

test("the hostel has tax classes, room types, and an alternate with what it replaces", () => {
  const found = madeOf(computedJob(hostel), plainParts);
  expect(found.notes).toEqual([]);
  const cells = tablesOf(found).flatMap(({ rows }) => rows.map((row) => row.cells));
  expect(cells).toContainEqual(["work in homes", "5,089.67", "10%", "508.97"]);
  expect(cells).toContainEqual(["usual", "4,607.35", "20%", "921.47"]);
  expect(cells).toContainEqual(["113", "family room", "1-13", "recorder, 2 tuners"]);
  expect(cells).toContainEqual([
    "radio at every outlet of a double, instead of single outlets",
    "384.24",
    "11,588.55",
  ]);
  expect(textOf(found)).toContain("family room: 3 outlets, for: recorder, 2 tuners");
});

test("a discount stands under what it is taken off, with its reason", () => {
  const fields = { discount_sum: 232.85, discount_reason: "three houses together" };
  const price = tableUnder(made({ fields }), "Price");
  const labels = price!.rows.map(({ cells }) => cells[0]);
  const at = labels.indexOf("Discount");
  expect(labels.slice(at - 1, at + 2)).toEqual([
    "Price before the discount",
    "Discount",
    "Price without tax",
  ]);
  expect(price!.rows.slice(at - 1, at + 2).map(({ cells }) => cells[1])).toEqual([
    "9,232.85",
    "-232.85",
    "9,000.00",
  ]);
  expect(textOf(made({ fields }))).toContain("Reason for the discount: three houses together");
  // Where no lines are shown, there is nothing to take it off.
  expect(textOf(made({ fields: { ...fields, proposal_lines: "no" } }))).not.toMatch(/[Dd]iscount/);
});

test("no tax is said, too", () => {
  const found = made({
    fields: { site_tax: 0 },
    blocks: { onpurpose: [{ what: "Tax", why: "small firm" }] },
  });
  expect(tableUnder(found, "Price").rows).toContainEqual({ cells: ["Tax, 0% of 9,232.85", "0.00"] });
  expect(textOf(found)).toContain("Reason for no tax: small firm");
});

test("one room without a floor", () => {
  const rooms = [{ room: "flat", outlet: "1", receiver: "receiver", quantity: 2, from: "G1", run: 9 }];
  const schedule = tableUnder(made({ blocks: { rooms } }), "Room schedule");
  expect(schedule!.rows).toEqual([{ cells: ["flat", "1", "2 × receiver"] }]);
});

describe("what is blank is left out", () => {
  test("lists without a row have no heading, and lines without a sum no line", () => {
    const found = made(without("options", "provisional", "assumptions", "exclusions", "payment", "warranty"));
    expect(headingsOf(found.document)).toEqual([
      "What is offered",
      "Price",
      "Terms and safety",
      "Acceptance",
      "Room schedule",
    ]);
    expect(textOf(found)).not.toMatch(/Provisional|Options|ticked|none\n/);
  });
  test("no part stands empty, and no label without what it is", () => {
    for (const part of made(without("payment", "letterhead")).document.parts) {
      if (part.kind === "list") expect(part.items.every((item) => item !== "")).toBe(true);
      if (part.kind === "table") expect(part.rows.length).toBeGreaterThan(0);
      if (part.kind === "facts") expect(part.rows.every(({ value }) => value !== "")).toBe(true);
    }
  });
  test("a floor without a name has no head of its own", () => {
    const rows = guestHouse.blocks!.rooms!.map(({ floor: _, ...row }): Row => row);
    const schedule = tableUnder(made({ blocks: { rooms: rows } }), "Room schedule");
    expect(schedule!.rows.filter(({ is }) => is === "group")).toEqual([]);
    expect(schedule!.rows).toHaveLength(24);
  });
});

describe("what must be there is asked for", () => {
  test.each([
    ["site_customer", "“Customer” on Site is blank"],
    ["site_place", "“Site address” on Site is blank"],
    ["site_quote", "“Quote number” on Site is blank"],
    ["site_revision", "“Revision” on Site is blank"],
    ["site_prepared_by", "“Prepared by” on Site is blank"],
  ])("%s", (field, sentence) => {
    const found = made({ fields: { [field]: undefined } as never });
    expect(found.missing).toEqual([expect.stringContaining(sentence)]);
    // Nobody signs a draft.
    expect(found.document.foot).toMatch(/^Draft: not to be sent · /);
    expect(headingsOf(found.document)).not.toContain("Acceptance");
  });
  test("blanks alone are no customer", () => {
    expect(made({ fields: { site_customer: "   " } }).missing).toHaveLength(1);
  });
  test("a firm; nobody else signs in its place", () => {
    const found = made(without("letterhead"));
    expect(found.missing).toEqual([expect.stringContaining("The firm has no name")]);
    expect(found.document.author).toBe("");
    expect(headingsOf(found.document)).not.toContain("Acceptance");
  });
  test("with all of it there is nothing to ask", () => {
    expect(made().missing).toEqual([]);
    expect(headingsOf(made().document)).toContain("Acceptance");
  });
});

describe("a price that can't be relied on makes none", () => {
  test.each<[string, Changes, RegExp]>([
    [
      "a row that can't be worked out",
      { blocks: { rooms: withRow("outlet", "G-05", { from: "nowhere" }) } },
      /Rooms cost is not in it.*G-05/,
    ],
    [
      "a price that is missing",
      { blocks: { cables: withRow("name", "indoor drop", { price: "" }) } },
      /Parts/,
    ],
    [
      "two discounts",
      { fields: { discount_sum: 100, discount_share: 0.05, discount_reason: "both" } },
      /Discounts that are both/,
    ],
    [
      "more discount than price",
      { fields: { discount_sum: 1_000_000, discount_reason: "much" } },
      /Discounts that are both a sum and a share, more than the price/,
    ],
    ["no tax rate", { fields: { site_tax: "" as never } }, /prints no total|Draft/],
    [
      "an option without a price",
      { blocks: { options: [{ name: "lift", quantity: 1, chosen: "no" }] } },
      /Terms: Price each of lift/,
    ],
    [
      "an alternate that would pay the customer",
      {
        blocks: { options: [{ name: "less", quantity: 1, each: -1_000_000, chosen: "no", instead: "all" }] },
      },
      /with “less, instead of all” the total would be -/,
    ],
    [
      "an end before the date",
      { fields: { site_until: sheetDate(2026, 10, 1) } },
      /dated 2026-11-02 and valid until 2026-10-01/,
    ],
  ])("%s", (_, changes, words) => {
    expect(refused(changes).join(" ")).toMatch(words);
    expect(refused(changes).at(-1)).toMatch(/^No proposal was made/);
  });

  test("a sum that was typed over", () => {
    const book = computed();
    for (const name of ["quote_total", "quote_labour", "quote_net", "quote_tax"]) {
      const { sheet, range } = book.names.find((one) => one.name === name)!;
      const changed = {
        ...book,
        sheets: book.sheets.map((one) =>
          one.name === sheet ? { ...one, results: { ...one.results, [range]: 1 } } : one,
        ),
      };
      expect(proposalIn(changed, plainParts).refused!.join(" ")).toContain("do not add up");
      const failed = {
        ...book,
        sheets: book.sheets.map((one) =>
          one.name === sheet
            ? { ...one, results: { ...one.results, [range]: { error: "#N/A", message: "unknown" } } }
            : one,
        ),
      };
      expect(proposalIn(failed, plainParts).refused!.length).toBeGreaterThan(1);
    }
  });

  test("an unfilled job", () => {
    expect(proposalIn(computedJob(startingPoint)).refused).toEqual([
      "The price can't be relied on: its Quote prints no total.",
      expect.stringContaining("No proposal was made"),
    ]);
  });

  test.each(templates.filter(({ id }) => id !== "multi-room"))(
    "$id is no estimate",
    ({ id, definition, demonstration }) => {
      const shown = demonstration();
      const book = recalculate("sheets" in shown ? (shown as never) : layOut(definition, shown as JobInputs));
      expect(proposalIn(book).refused).toEqual([expect.stringContaining(`made from the template ${id}`)]);
    },
  );
});

describe("names of all kinds", () => {
  const LONG = "W".repeat(300);
  const RTL = "فندق الواحة (24)";
  const CJK = "緑町旅館 株式会社";
  test.each([LONG, RTL, CJK, "=2+2", "{{customer}} **bold**", "007", "3-16", "1E5", "TRUE"])("%s", (name) => {
    const found = made({
      fields: { site_customer: name },
      blocks: {
        rooms: withRow("outlet", "G-05", { room: name }),
        assumptions: [{ text: name }],
        letterhead: [{ line: name }],
      },
    });
    const facts = found.document.parts.find(({ kind }) => kind === "facts");
    expect(facts).toMatchObject({ rows: expect.arrayContaining([{ label: "Customer", value: name }]) });
    expect(tableUnder(found, "Room schedule").rows).toContainEqual({ cells: [name, "G-05", "receiver"] });
    expect(found.document).toMatchObject({ author: name });
    expect(found.document.parts).toContainEqual({ kind: "list", items: [name] });
  });
  test("line ends and signs that turn the writing are blanks", () => {
    const found = made({ fields: { site_customer: "A & B <Ltd>\nsecond\u0007 \u202eenil" } });
    expect(textOf(found)).toContain("A & B <Ltd> second enil");
  });
});

describe("a job of which checks fail", () => {
  test("is a draft without a place to sign, and each check is told to the office", () => {
    const found = made({}, { anyway: false });
    expect(headingsOf(found.document)).not.toContain("Acceptance");
    expect(found.document.foot).toMatch(/^Draft: not to be sent/);
    expect(found.notes.filter((note) => note.startsWith("A check fails"))).toHaveLength(2);
  });
  test("may be signed where somebody says so", () => {
    expect(headingsOf(made().document)).toContain("Acceptance");
    expect(made().document.foot).not.toMatch(/Draft/);
  });
});

test("what can't be set on the page is not signed for", () => {
  const found = made({}, { isIncomplete: true });
  expect(headingsOf(found.document)).not.toContain("Acceptance");
});

test("a rate has all its digits, and none that say nothing", () => {
  expect(
    tableUnder(made({ fields: { site_tax: 0.0825 } }), "Price").rows.map(({ cells }) => cells[0]),
  ).toContain("Tax, 8.25% of 9,232.85");
});

test("of an option that is several it says how many", () => {
  const options = [{ name: "outlet in the bar", quantity: 3, each: 92, chosen: "no" }];
  expect(tableUnder(made({ blocks: { options } }), "Options").rows).toContainEqual(
    expect.objectContaining({ cells: ["3 × outlet in the bar", "276.00", expect.any(String)], box: true }),
  );
});

test("a later revision takes the place of the earlier ones", () => {
  const says = "It takes the place of every earlier revision of this number.";
  expect(textOf(made({ fields: { site_revision: 2 } }))).toContain(says);
  expect(textOf(made())).not.toContain(says);
});

describe("which is which", () => {
  test("a long name of the firm leaves the foot to what tells them apart", () => {
    const found = made({ blocks: { letterhead: [{ line: "W".repeat(61) }] } });
    expect(found.document.foot).toMatch(/^D-24, revision 1 · 2026-11-02 · text [0-9a-f]{8}$/);
    expect(made({ blocks: { letterhead: [{ line: "W".repeat(60) }] } }).document.foot).toMatch(
      /^W{60} · D-24/,
    );
  });
  const marks = (found: Made): string => found.document.foot;
  test("two of one number and revision that say otherwise have other marks", () => {
    const [first, again, other, next] = [
      made(),
      made(),
      made({ fields: { site_place: "another address" } }),
      made({ fields: { site_revision: 2 } }),
    ].map(marks);
    expect(again).toBe(first);
    expect(other).not.toBe(first);
    expect(next).toMatch(/ · D-24, revision 2 · 2026-11-02 · text [0-9a-f]{8}$/);
  });
  test("a quote that is over is told to the office", () => {
    const notes = (day: number) => made({}, { today: sheetDate(2027, 1, day) }).notes.join(" ");
    expect(notes(1)).toContain("The quote was valid until 2026-12-31, which is past.");
    expect(made({}, { today: sheetDate(2026, 12, 31) }).notes.join(" ")).not.toContain("past");
  });
});

describe("parts", () => {
  test.each(PROPOSAL_PARTS)("without %s", (part) => {
    const all = { with: PROPOSAL_PARTS };
    const [whole, less] = [all, { with: PROPOSAL_PARTS.filter((one) => one !== part), without: [part] }].map(
      (parts) => madeOf(asItIs, { parts, anyway: true }),
    ) as [Made, Made];
    expect(textOf(less).length).toBeLessThan(textOf(whole).length);
    expect(textOf(less)).toContain("11,079.42");
    expect(textOf(less)).toContain("not a safety certificate");
    expect(textOf(less)).toContain("Repair and painting of finishes.");
  });
  test("as Terms says; what is said for this one counts before it", () => {
    const lines = (word: string, parts = {}) =>
      textOf(
        made({ fields: { proposal_lines: word } }, { parts: { without: ["diagram", "sky"], ...parts } }),
      );
    expect(lines("yes")).toContain("5,103.04");
    expect(lines("no")).not.toContain("5,103.04");
    expect(lines("no", { with: ["lines"] })).toContain("5,103.04");
  });
  test("a picture of nothing is asked for", () => {
    const found = madeOf(computed({ fields: { site_latitude: 89 } }), {
      parts: { with: ["sky"], without: ["diagram"] },
    });
    expect(found.missing.join(" ")).toContain("No geostationary slot");
  });
});

const ofProposal = ({ fields = {} }: JobInputs) =>
  Object.fromEntries(Object.entries(fields).filter(([name]) => name.startsWith("proposal_")));

describe("the firm's standards", () => {
  const firm: JobInputs = {
    ...standardsExample,
    blocks: { ...standardsExample.blocks, warranty: [{ text: "As the standards say." }] },
    fields: {
      ...standardsExample.fields,
      proposal_registration: "Register of the firm",
      proposal_paper: "letter",
    },
  };
  test("say what the job does not", () => {
    const found = made(
      { ...without("letterhead", "warranty"), fields: { proposal_registration: "" } },
      { firm },
    );
    expect(found.missing).toEqual([]);
    expect(found.paper).toBe("letter");
    expect(found.document.parts[0]).toEqual({
      kind: "letterhead",
      name: "Invented firm (demonstration)",
      lines: [
        "1 Invented Street, Invented Town",
        "no telephone, no address of mail",
        "Register of the firm",
        "Tax number: none (demonstration)",
      ],
    });
    expect(textOf(found)).toContain("As the standards say.");
  });
  test("never what it does", () => {
    const found = made({ fields: { proposal_paper: "a4" } }, { firm });
    expect(found.paper).toBe("a4");
    expect(textOf(found)).not.toMatch(/As the standards say|Register of the firm|no telephone/);
  });
  test("a job that draws on them has it all by itself", () => {
    const { inputs } = firmsStandards(layOut(standardsWorkbook, firm), "firm.xlsx") as FirmsStandards;
    const job = drawOn({ inputs, firm: "invented", edition: 1, date: 46_000 }, guestHouse, 46_000);
    const found = madeOf(
      computedJob({
        ...guestHouse,
        fields: { ...guestHouse.fields, ...ofProposal(job) },
        blocks: { ...guestHouse.blocks, warranty: job.blocks!.warranty! },
      }),
      plainParts,
    );
    expect(textOf(found)).toContain("As the standards say.");
    expect(textOf(found)).toContain("Register of the firm");
    expect(found.paper).toBe("letter");
  });
  test("tell nothing else", () => {
    expect(textOf(made({}, { firm }))).toBe(textOf(made()));
  });
});

test("figures are written as the workbook says", () => {
  const found = made({ fields: changedJob({ fields: { written_as: "German" } }).fields });
  expect(textOf(found)).toContain("11.079,42");
  expect(textOf(found)).not.toContain("11,079.42");
});
