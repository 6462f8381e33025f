/**
 * What was entered, or was not: every blank, zero, swapped or impossible entry
 * makes the master check speak and is named with its place. Which entries are
 * needed and what they may be is written here by hand, apart from the marks and
 * rules of the template; figures of the trade are common practice, no source,
 * unless one is named.
 */
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { alignmentCard, alignmentCardExample } from "../../src/workbooks/alignmentCard/definition";
import type { Book } from "../../src/workbooks/book";
import type { JobInputs, WorkbookDefinition } from "../../src/workbooks/definition";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { summarise } from "../../src/workbooks/multiRoom/summarise";
import { namedValue } from "../../src/workbooks/named";
import { singleDrop, singleDropExample } from "../../src/workbooks/singleDrop/definition";
import { recalculated, withLibreOffice } from "../support/tools";

interface Job {
  fields: Record<string, number | string | undefined>;
  blocks: Record<string, Record<string, number | string | undefined>[]>;
}
type Change = (job: Job) => void;

/** The demonstration with its two faults mended: all its checks pass. */
const sound: Change = ({ blocks }) => {
  blocks.heads![2]!.cable = "trunk";
  Object.assign(blocks.rooms![23]!, { cable: "trunk", run: 30 });
};

function computed(
  change: Change,
  definition: WorkbookDefinition = multiRoom,
  inputs: JobInputs = guestHouse,
): Book {
  const job = JSON.parse(JSON.stringify({ blocks: {}, ...inputs })) as Job;
  if (definition === multiRoom) sound(job);
  change(job);
  return recalculate(layOut(definition, job as JobInputs));
}

/** Places of the checks that do not pass. */
const places = (book: Book): string[] =>
  summarise(book)
    .checks.filter(({ result }) => result === "look" || result === "error")
    .map(({ where }) => where);
const notes = (book: Book): string[] =>
  summarise(book)
    .checks.filter(({ result }) => result === "note")
    .map(({ where }) => where);

function expectNamed(book: Book, place: string): void {
  expect(places(book)).toContainEqual(expect.stringContaining(place));
  expect(summarise(book).verdict).toMatch(/^(?:1 check needs|\d+ checks need) attention$/);
}

const field =
  (name: string, value: number | string | undefined): Change =>
  ({ fields }) =>
    void (fields[name] = value);
const cell =
  (block: string, column: string, value: number | string | undefined, row = 0): Change =>
  ({ blocks }) =>
    void (blocks[block]![row]![column] = value);

test("before any of these the demonstration's checks pass", () => {
  expect(places(computed(() => undefined))).toEqual([]);
});

describe("a blank that the customer would see", () => {
  /** Field of Site, its label there, and its cell on the Quote. */
  const SEEN = [
    ["site_job", "Job", "quote_job"],
    ["site_customer", "Customer", "quote_customer"],
    ["site_place", "Site address", "quote_place"],
    ["site_prepared_by", "Prepared by", "quote_by"],
    ["site_date", "Date of the quote", "quote_date"],
    ["site_until", "Quote valid until", "quote_until"],
    ["site_currency", "Currency", "quote_currency"],
    ["site_tax", "Tax", "quote_tax"],
  ] as const;

  test.each(SEEN)("%s: no zero and no day of 1899 on the Quote, a check names “%s”", (name, label, shown) => {
    const book = computed(field(name, undefined));
    expect(namedValue(book, shown)).toBe(name === "site_tax" ? "open" : "");
    expect(namedValue(book, "quote_draft")).toBe("Entries are missing or wrong: see Checks");
    expect(places(book)).toContainEqual(expect.stringMatching(new RegExp(`^Site: (?:.*; )?${label}(?:;|$)`)));
  });

  test("a blank of spaces is one too", () => {
    const book = computed(field("site_customer", "   "));
    expect(namedValue(book, "quote_customer")).toBe("");
    expectNamed(book, "Site: Customer");
  });

  test("without a rate of tax no sum with tax is shown", () => {
    const book = computed(field("site_tax", undefined));
    for (const name of ["quote_tax", "quote_total"])
      expect([name, namedValue(book, name)]).toEqual([name, "open"]);
    // Nor does the office's sheet tax at 100 %, as a factor left blank would.
    expect(namedValue(book, "price_tax")).toBe(0);
  });

  withLibreOffice("LibreOffice shows the same blanks", async () => {
    const all = computed(({ fields }) => {
      for (const [name] of SEEN) fields[name] = undefined;
    });
    const again = await readXlsx(await recalculated(await writeXlsx(all, { frozen: true }), { to: "xlsx" }));
    for (const [name, , shown] of SEEN)
      expect([shown, namedValue(again, shown) ?? ""]).toEqual([shown, name === "site_tax" ? "open" : ""]);
  });
});

describe("an amount that the price needs, blank or zero, is named with its place", () => {
  const NEEDED: readonly [string, (value: 0 | undefined) => Change, string, "blank or zero" | "blank"][] = [
    ["the crew's rate", (value) => field("labour_rate", value), "Crew: Crew rate", "blank or zero"],
    [
      "minutes of a piece of work",
      (value) => cell("labour", "minutes", value, 3),
      "Parts: Minutes each of fit a head unit",
      "blank or zero",
    ],
    [
      "the price of a cable",
      (value) => cell("cables", "price", value, 2),
      "Parts: Price per reel of trunk",
      "blank or zero",
    ],
    [
      "the reel of a cable",
      (value) => cell("cables", "reel", value, 2),
      "Parts: Reel of trunk",
      "blank or zero",
    ],
    [
      "the price of a splitter",
      (value) => cell("passives", "price", value),
      "Parts: Price each of 2-way splitter",
      "blank or zero",
    ],
    [
      "the price of a head unit",
      (value) => cell("units", "price", value),
      "Parts: Price each of head unit, 16 bands",
      "blank or zero",
    ],
    [
      "the price of an outlet",
      (value) => cell("plates", "price", value),
      "Parts: Price each of single outlet",
      "blank or zero",
    ],
    [
      "the price of a fitting",
      (value) => cell("fittings", "price", value),
      "Parts: Price per pack of compression connector",
      "blank or zero",
    ],
    [
      "a pack",
      (value) => cell("fittings", "pack", value),
      "Parts: In a pack of compression connector",
      "blank or zero",
    ],
    ["a run", (value) => cell("rooms", "run", value, 4), "Rooms: Run of G-05", "blank or zero"],
    ["a feeder", (value) => cell("feeders", "length", value), "Dishes: Length of D1", "blank"],
    [
      "the price of an option",
      (value) => cell("options", "each", value),
      "Terms: Price each of second outlet in the lounge",
      "blank or zero",
    ],
    [
      "a provisional sum",
      (value) => cell("provisional", "sum", value),
      "Terms: Sum of opening a blocked duct to the annexe",
      "blank or zero",
    ],
    ["the tax", (value) => field("site_tax", value), "Site: Tax", "blank"],
    ["the margin", (value) => field("site_margin", value), "Site: Margin", "blank"],
  ];
  const all = NEEDED.flatMap(([what, change, place, when]) => [
    [what, "blank", change(undefined), place] as const,
    ...(when === "blank" ? [] : [[what, "0", change(0), place] as const]),
  ]);
  test.each(all)("%s, %s", (_, __, change, place) => expectNamed(computed(change), place));

  test("no labour at all, its counts emptied", () => {
    const book = computed(({ blocks }) => {
      for (const row of blocks.labour!)
        for (const key of ["per_outlet", "per_branch", "per_head", "fixed", "piece"]) row[key] = undefined;
      for (const row of blocks.routes!) Object.assign(row, { minutes: 0, low: undefined, high: undefined });
    });
    expectNamed(book, "Parts, labour units");
  });

  test("a tax or a margin of 0 is worth a note, and none with its reason on Terms", () => {
    const zero: Change = ({ fields }) => Object.assign(fields, { site_tax: 0, site_margin: 0 });
    expect(notes(computed(zero))).toContainEqual(expect.stringMatching(/: Margin; Tax$/));
    const told = computed((job) => {
      zero(job);
      job.blocks.onpurpose = ["Tax", "Margin"].map((what) => ({ what, why: "a favour (demonstration)" }));
    });
    expect(notes(told).join()).not.toMatch(/Margin|Tax/);
  });

  test("a price of 0 passes with its reason on Terms, and not without one beside its name", () => {
    const free = (why: string | undefined): Book =>
      computed((job) => {
        cell("plates", "price", 0)(job);
        job.blocks.onpurpose = [{ what: "single outlet", why }];
      });
    expect(places(free("supplied by the customer"))).toEqual([]);
    expectNamed(free(undefined), "Terms: Why of single outlet");
  });

  test("a part that this job does not use may cost nothing", () => {
    // No outlet of the demonstration has a second kind of supply.
    expect(places(computed(cell("supplies", "price", 0, 1)))).toEqual([]);
  });
});

describe("two ends that are swapped are refused, and both are named", () => {
  const swap =
    (one: string, other: string): Change =>
    ({ fields }) =>
      void ([fields[one], fields[other]] = [fields[other], fields[one]]);
  const BOTH: readonly [string, string, string, string][] = [
    ["cold and hot", "site_cold", "site_hot", "Coldest cable; Hottest cable"],
    [
      "the lowest and the highest frequency",
      "site_low",
      "site_high",
      "Lowest frequency on the cable; Highest frequency",
    ],
    [
      "the least and the greatest level",
      "site_level_low",
      "site_level_high",
      "Minimum level at an outlet; Maximum level",
    ],
  ];
  test.each(BOTH)("%s on Site", (_, one, other, named) => expectNamed(computed(swap(one, other)), named));

  test.each<[string, string, string, string]>([
    ["cold and hot", "drop_cold", "drop_hot", "Coldest cable; Hottest cable"],
    ["the frequencies", "drop_low", "drop_high", "Lowest frequency; Highest frequency"],
    ["the levels", "drop_least", "drop_most", "Minimum level at the outlet; Maximum level"],
  ])("%s of a single drop", (_, one, other, named) => {
    expect(places(computed(() => undefined, singleDrop, singleDropExample))).toEqual([]);
    expectNamed(computed(swap(one, other), singleDrop, singleDropExample), `Drop: ${named}`);
  });

  test.each(BOTH)(
    "nothing is worked out with %s swapped, so that no level looks better for it",
    (_, one, other) => {
      const worst = summarise(computed(swap(one, other))).worst;
      expect(worst.length).toBeGreaterThan(0);
      for (const outlet of worst) expect(outlet).toMatchObject({ weakest: null, verdict: "bad" });
    },
  );
});

describe("what cannot be is named, not left to the review", () => {
  test.each<[string, Change, string]>([
    ["a tax of 20 for 20 %", field("site_tax", 20), "Site: Tax"],
    ["an overhead of 12 for 12 %", field("site_overhead", 12), "Site: Overhead"],
    ["a contingency of 3 for 3 %", field("site_contingency", 3), "Site: Contingency"],
    ["a waste of 5 for 5 %", field("site_waste", 5), "Site: Waste added to each run"],
    ["a negative price", cell("passives", "price", -12.5), "Parts: Price each of 2-way splitter"],
    ["a negative crew rate", field("labour_rate", -58), "Crew: Crew rate"],
    ["a negative option", cell("options", "each", -74), "Terms: What it replaces of second outlet"],
    [
      "a difficulty of 0.1",
      cell("labour", "difficulty", 0.1),
      "Parts: Difficulty of mount and align the dish",
    ],
    // EN 60728-1, from memory: 47 to 77 dBµV at a satellite IF outlet.
    ["a least level under the standard's", field("site_level_low", 40), "Site: Minimum level at an outlet"],
    [
      "a greatest level over the standard's",
      field("site_level_high", 85),
      "Site: Maximum level at an outlet",
    ],
    ["a word for a rate", field("site_tax", "a fifth"), "Site: Tax"],
    ["half a receiver", cell("rooms", "quantity", 1.5, 2), "Rooms: How many of G-03"],
    ["a cable that is not on Parts", cell("rooms", "cable", "mystery", 2), "Rooms: Cable of G-03"],
  ])("%s", (_, change, place) => expectNamed(computed(change), place));

  test.each<[string, Record<string, number>, string]>([
    ["a drop of no length", { drop_length: 0 }, "Drop: Length"],
    ["a least level under the standard's", { drop_least: 40 }, "Drop: Minimum level at the outlet"],
  ])("%s, on a single drop", (_, fields, place) =>
    expectNamed(
      computed((job) => void Object.assign(job.fields, fields), singleDrop, singleDropExample),
      place,
    ),
  );

  test.each([
    ["card_latitude", "Latitude"],
    ["card_longitude", "Longitude"],
    ["card_date", "Date"],
  ])("an alignment card without its %s, which would count as 0", (name, label) => {
    expect(places(computed(() => undefined, alignmentCard, alignmentCardExample))).toEqual([]);
    expectNamed(computed(field(name, undefined), alignmentCard, alignmentCardExample), `Card: ${label}`);
  });
});
