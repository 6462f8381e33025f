/**
 * Nothing that is the firm's own gets into a proposal: not into its pages, its pictures, what is said beside them, nor
 * its properties. In drawn jobs, and in the demonstrations, all that is inside is made recognisable and looked for.
 */
import { formattedIn } from "../../src/hosts/headless/formattedIn";
import type { Book } from "../../src/workbooks/book";
import type { JobInputs } from "../../src/workbooks/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { hostel } from "../../src/workbooks/multiRoom/hostel";
import { generatedJob } from "../support/generatedJobs";
import { computedJob, proposalIn, wordsIn } from "../support/proposals";
import { tries } from "../support/tries";

type Row = Readonly<Record<string, number | string>>;

/** Of each list the columns of words that only the office reads. */
const OFFICE_WORDS: Readonly<Record<string, readonly string[]>> = {
  ...Object.fromEntries(
    ["cables", "passives", "units", "supplies", "plates", "feeds", "resistors", "fittings"].map((list) => [
      list,
      ["supplier", "article", "source"],
    ]),
  ),
  rooms: ["note"],
  branches: ["note"],
  log: ["who", "what", "why"],
  sites: ["name"],
  causes: ["name"],
  bonds: ["note"],
};
const CANARY = "CANARY";

/** Words are put where some stand; amounts get figures that are nowhere else. */
function marked({ fields = {}, blocks = {} }: JobInputs): JobInputs {
  return {
    fields: {
      ...fields,
      labour_rate: 61.37,
      site_contingency: 0.0317,
      site_overhead: 0.1279,
      site_margin: 0.2371,
      site_standards: `${CANARY} firm`,
    },
    blocks: Object.fromEntries(
      Object.entries(blocks).map(([list, rows]) => [
        list,
        rows.map((row, at): Row => ({
          // A row that was left empty stays so.
          ...row,
          ...Object.fromEntries(
            (OFFICE_WORDS[list] ?? []).flatMap((column) =>
              row[column] === undefined &&
              (Object.keys(row).length === 0 || !["supplier", "note"].includes(column))
                ? []
                : [[column, `${CANARY} ${list} ${column}`]],
            ),
          ),
          ...(typeof row.price === "number" && row.price > 0 && { price: row.price + 0.013 * (at + 1) }),
        })),
      ]),
    ),
  };
}

/** Sheets of which a customer reads nothing. */
const INSIDE = ["Parts", "Crew", "Materials", "Cutting plan", "Order list", "Labour", "Price", "Causes"];
const FIGURES = /\d[\d,]*\.?\d*/g;
const significant = (figure: string): number => figure.replace(/[,.]/g, "").replace(/^0+/, "").length;

/** The figures of those sheets, as a cell shows them and as it holds them; round ones stand anywhere. */
function insideOf(book: Book): Set<string> {
  const formatted = formattedIn(book);
  const found = new Set<string>();
  const outside = new Set<string>();
  for (const { name, cells, results } of book.sheets)
    for (const at of new Set([...Object.keys(cells), ...Object.keys(results)])) {
      const value = results[at] ?? cells[at]?.value;
      if (typeof value !== "number") continue;
      const shown = formatted(value, book.looks[cells[at]?.look ?? -1]?.format);
      if (name === "Quote") outside.add(shown);
      if (!INSIDE.includes(name)) continue;
      for (const one of [shown, String(value), value.toFixed(2)])
        for (const figure of one.match(FIGURES) ?? [])
          if (significant(figure) >= 4 && figure.includes(".")) found.add(figure);
    }
  // A selling price that the Quote prints is on Price too; so is the sum that a tax is on.
  for (const one of outside) for (const figure of one.match(FIGURES) ?? []) found.delete(figure);
  return found;
}

/** On Price, for the customer all the same. */
const TAXED = ["price_taxable", "price_before"];
function taxedIn(book: Book): string[] {
  const formatted = formattedIn(book);
  return TAXED.flatMap((wanted) => {
    const { sheet, range } = book.names.find(({ name }) => name === wanted)!;
    const { cells, results } = book.sheets.find(({ name }) => name === sheet)!;
    const value = results[range];
    return typeof value === "number" ? [formatted(value, book.looks[cells[range]?.look ?? -1]?.format)] : [];
  });
}

function leaked(book: Book, words: readonly string[]): string[] {
  const inside = insideOf(book);
  for (const one of taxedIn(book)) inside.delete(one);
  return words.flatMap((text) => [
    ...(text.includes(CANARY) ? [text] : []),
    ...(text.match(FIGURES) ?? [])
      .filter((figure) => inside.has(figure))
      .map((figure) => `${figure}: ${text}`),
  ]);
}

const ALL_PARTS = {
  parts: { with: ["diagram", "sky", "schedule", "lines", "offer", "acceptance"] },
} as const;

test.each(Object.entries({ guestHouse, hostel }))("%s, marked all over", (_, job) => {
  const book = computedJob(marked(job));
  const made = proposalIn(book, ALL_PARTS);
  if (made.refused) throw new Error(made.refused.join(" "));
  expect(insideOf(book).size).toBeGreaterThan(200);
  expect(leaked(book, wordsIn(made.document))).toEqual([]);
});

test("it would be found: what the sheets inside say is, each", () => {
  const book = computedJob(marked(guestHouse));
  const formatted = formattedIn(book);
  for (const inside of ["Parts", "Materials", "Labour", "Price"]) {
    const { cells, results } = book.sheets.find(({ name }) => name === inside)!;
    const words = [...new Set([...Object.keys(cells), ...Object.keys(results)])].map((at) => {
      const value = results[at] ?? cells[at]?.value;
      return typeof value === "number"
        ? formatted(value, book.looks[cells[at]?.look ?? -1]?.format)
        : String(value ?? "");
    });
    expect(leaked(book, words).length).toBeGreaterThan(10);
  }
});

test("drawn jobs", () => {
  const found: string[] = [];
  let made = 0;
  for (let seed = 0; seed < tries(24, 60, 200); seed++) {
    const book = computedJob(marked(generatedJob(seed) as JobInputs));
    const proposal = proposalIn(book, ALL_PARTS);
    if (proposal.refused) continue;
    made++;
    found.push(...leaked(book, wordsIn(proposal.document)).map((one) => `${seed}: ${one}`));
  }
  expect(found).toEqual([]);
  expect(made).toBeGreaterThan(3);
});
