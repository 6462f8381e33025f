/**
 * A job drawn on the firm's standards and brought up to date with a later edition. What is bought and what it comes
 * to is worked by hand in the comments; sums after that are the workbook's own arithmetic, held elsewhere.
 */
import { recalculate } from "../../src/hosts/headless/recalculate";
import { withEntries } from "../../src/hosts/headless/withEntries";
import { differences, type Difference } from "../../src/standards/differences";
import { drawOn } from "../../src/standards/drawOn";
import { firmsStandards, type FirmsStandards } from "../../src/standards/firmsStandards";
import { inWords, takenByItself, totalInWords } from "../../src/standards/inWords";
import { bringing } from "../../src/standards/bringing";
import { totalWith, upToDate, type UpToDate } from "../../src/standards/upToDate";
import type { Book } from "../../src/workbooks/book";
import type { JobInputs } from "../../src/workbooks/definition";
import { jobInputsOf } from "../../src/workbooks/jobInputsOf";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { startingPoint } from "../../src/workbooks/multiRoom/startingPoint";
import { namedValue } from "../../src/workbooks/named";
import { sheetDate } from "../../src/workbooks/sheetDate";
import { singleDrop } from "../../src/workbooks/singleDrop/definition";
import { standardsWorkbook } from "../../src/workbooks/standards/definition";

type Row = Readonly<Record<string, number | string>>;

const TODAY = sheetDate(2026, 11, 10);
const DATES = { priced: sheetDate(2026, 10, 1), until: sheetDate(2027, 3, 31) };

const FIRM = {
  fields: {
    standards_firm: "Quay Aerials (invented)",
    standards_edition: 3,
    standards_date: sheetDate(2026, 11, 2),
    standards_days: 60,
    site_currency: "EUR",
    site_unit: "m",
    site_slack: 0,
    site_waste: 0,
    site_run_tolerance: 0,
    site_low: 950,
    site_high: 2150,
    site_cold: -15,
    site_hot: 55,
    site_level_low: 47,
    site_level_high: 77,
    site_level_design: 53,
    site_contingency: 0,
    site_overhead: 0,
    site_margin: 0,
    site_tax: 0,
    site_tax_on: "materials and labour",
    site_rounding: "half away",
    site_usual_cable: "drop",
    site_usual_plate: "plate",
    labour_rate: 60,
  },
  blocks: {
    cables: [
      { name: "drop", like: "series 6, copper", reel: 100, price: 40, ...DATES },
      { name: "trunk", like: "series 11, copper", reel: 150, price: 265, ...DATES },
    ],
    plates: [{ name: "plate", loss_low: 0.7, loss_high: 1.4, price: 6.5, ...DATES }],
    passives: [
      {
        name: "4-way splitter",
        kind: "splitter",
        ways: 4,
        port_low: 7.8,
        port_high: 9.4,
        power: "all ports",
        price: 12.5,
        ...DATES,
      },
      {
        name: "old splitter",
        kind: "splitter",
        ways: 2,
        port_low: 4.2,
        port_high: 5.4,
        power: "all ports",
        price: 8,
        ...DATES,
      },
    ],
    units: [
      {
        name: "head unit",
        bands: 8,
        out_low: 90,
        out_high: 88,
        least: 10.5,
        load: 0.2,
        kind: "A",
        price: 100,
        ...DATES,
      },
    ],
    labour: [{ name: "fit an outlet", minutes: 30, per_outlet: 1, difficulty: 1 }],
    assumptions: [{ text: "Ducts are clear." }, { text: "Rooms are free." }],
    exclusions: [{ text: "Receivers." }],
  },
} satisfies JobInputs;

type Changed = {
  fields: Record<string, number | string>;
  blocks: Record<string, Record<string, number | string>[]>;
};
const changed = (of: JobInputs, change: (copy: Changed) => void): JobInputs => {
  const copy = JSON.parse(JSON.stringify(of)) as Changed;
  change(copy);
  return copy;
};

const bookOf = (inputs: JobInputs): Book => recalculate(layOut(standardsWorkbook, inputs));
function read(inputs: JobInputs): FirmsStandards {
  const found = firmsStandards(bookOf(inputs), "firm.xlsx");
  if (typeof found === "string") throw new Error(found);
  return found;
}
const refusal = (inputs: JobInputs): unknown => firmsStandards(bookOf(inputs), "firm.xlsx");

/** Five outlets of 30 m each on two splitters: 150 m of cable, so two reels; five plates, two splitters, one head unit. */
const RUNS: readonly Row[] = [1, 2, 3, 4, 5].map((index) => ({
  floor: "ground",
  room: `room ${index}`,
  outlet: `G-${index}`,
  receiver: "receiver",
  quantity: 1,
  from: index < 4 ? "B1" : "B2",
  run: 30,
}));
const THE_JOB: Readonly<Record<string, readonly Row[]>> = {
  heads: [{ id: "H1", type: "head unit" }],
  branches: [
    { id: "B1", from: "H1", device: "4-way splitter" },
    { id: "B2", from: "B1", device: "4-way splitter" },
  ],
  rooms: RUNS,
};
const drawnJob = (firm: JobInputs): JobInputs => {
  const job = drawOn(read(firm), startingPoint, TODAY);
  return { fields: { ...job.fields, site_job: "Hostel (invented)" }, blocks: { ...job.blocks, ...THE_JOB } };
};
const job = recalculate(layOut(multiRoom, drawnJob(FIRM)));

function found(book: Book, firm: JobInputs): UpToDate {
  const all = upToDate(book, read(firm));
  if (typeof all === "string") throw new Error(all);
  return all;
}
function brought(book: Book, all: UpToDate, chosen: readonly Difference[]): Book {
  const done = withEntries(book, multiRoom, bringing(all, chosen, { today: TODAY }));
  if (typeof done === "string") throw new Error(done);
  return done;
}
const inputs = (book: Book): JobInputs => jobInputsOf(multiRoom, book);
const row = (book: Book, block: string, name: string): Row | undefined =>
  inputs(book).blocks?.[block]?.find((one) => one.name === name);

/** Five prices otherwise, one part gone, one new, a margin, a sentence in other words. */
const NEXT = changed(FIRM, ({ fields, blocks }) => {
  fields.standards_edition = 4;
  fields.standards_date = sheetDate(2027, 1, 4);
  fields.site_margin = 0.2;
  blocks.cables![0]!.price = 45.5;
  blocks.cables![1]!.price = 280;
  blocks.plates![0]!.price = 6.3;
  blocks.passives![0]!.price = 14;
  blocks.units![0]!.price = 110.25;
  blocks.passives!.splice(1, 1);
  blocks.plates!.push({ name: "plate with radio", loss_low: 1.6, loss_high: 2.6, price: 11, ...DATES });
  blocks.assumptions![0]!.text = "Ducts are clear and may be used.";
});
/**
 * By hand: 2 reels × 5.50 = 11.00; no trunk is bought; 5 plates × −0.20 = −1.00; 2 splitters × 1.50 = 3.00;
 * 1 head unit × 10.25: together 23.25.
 */
const RAISED = "+23.25";

describe("a job drawn on standards", () => {
  test("has their parts, figures and terms, which edition they are, and the days that a quote holds", () => {
    const { fields = {}, blocks = {} } = inputs(job);
    expect(fields).toMatchObject({
      site_standards: "Quay Aerials (invented)",
      site_standards_edition: 3,
      site_standards_date: sheetDate(2026, 11, 2),
      site_date: TODAY,
      site_until: TODAY + 60,
      site_tax_on: "materials and labour",
      labour_rate: 60,
    });
    for (const list of ["cables", "plates", "passives", "units", "labour", "assumptions", "exclusions"])
      expect(blocks[list]).toEqual(FIRM.blocks[list as keyof typeof FIRM.blocks]);
  });

  test("differs in nothing from what it drew on", () => {
    const all = found(job, FIRM);
    expect(all.differences).toEqual([]);
    expect(inWords(all).summary).toBe("Nothing differs: the job is up to date.");
  });

  test("keeps what it took when the standards change", () => {
    expect(row(job, "cables", "drop")!.price).toBe(40);
  });
});

describe("a later edition", () => {
  const all = found(job, NEXT);

  test("in words and money, with what each line was and is", () => {
    const { head, summary, lists } = inWords(all);
    expect(head).toBe("Standards of Quay Aerials (invented), edition 4 of 2027-01-04.");
    expect(summary).toBe(
      `5 prices changed, ${RAISED} on what is bought; 1 part gone; 1 part new; margin 0 % → 20 %; 1 entry of work and terms changed.`,
    );
    expect(
      lists.map(({ heading, lines }) => [heading, lines.map(({ words, taken }) => [words, taken])]),
    ).toEqual([
      ["Site", [["Margin: 0 % → 20 %", true]]],
      [
        "Cables",
        [
          ["drop, price per reel: 40 → 45.5", true],
          ["trunk, price per reel: 265 → 280", true],
        ],
      ],
      [
        "Devices of the distribution",
        [
          ["4-way splitter, price each: 12.5 → 14", true],
          ["old splitter: gone from the standards, or renamed in them; the job keeps it", false],
        ],
      ],
      ["Head units", [["head unit, price each: 100 → 110.25", true]]],
      [
        "Wall plates",
        [
          ["plate, price each: 6.5 → 6.3", true],
          ["plate with radio: new", true],
        ],
      ],
      ["Assumptions", [["Ducts are clear. → Ducts are clear and may be used.", true]]],
    ]);
  });

  test("the total after is that of a copy: material and labour by hand", () => {
    // 2 × 40 + 5 × 6.50 + 2 × 12.50 + 100 = 237.50; 5 × 30 min at 60 an hour = 150.00.
    expect(all.total).toBeCloseTo(387.5, 9);
    // 237.50 + 23.25 + 150.00 = 410.75; a margin of 20 % of the price: / 0.8 = 513.4375, lines rounded by half a cent.
    const after = totalWith(all, takenByItself(all.differences), recalculate)!;
    expect(Math.abs(after - 513.4375)).toBeLessThan(0.02);
    expect(totalInWords(387.5, 513.44, "EUR")).toBe("Total 387.50 → 513.44 (+125.94) EUR.");
    expect(namedValue(job, "quote_total")).toBeCloseTo(387.5, 9);
  });

  const done = brought(job, all, takenByItself(all.differences));

  test("taken, it stands in the job, the gone part too, with a line in its log", () => {
    expect(row(done, "cables", "drop")!.price).toBe(45.5);
    expect(row(done, "passives", "old splitter")!.price).toBe(8);
    expect(row(done, "plates", "plate with radio")!.price).toBe(11);
    expect(inputs(done).blocks!.assumptions).toEqual(NEXT.blocks!.assumptions);
    expect(inputs(done).fields).toMatchObject({ site_margin: 0.2, site_standards_edition: 4 });
    expect(inputs(done).blocks!.log!.at(-1)).toMatchObject({
      date: TODAY,
      what: `standards of Quay Aerials (invented), edition 4 of 2027-01-04: 5 prices changed, ${RAISED} on what is bought; 1 part new; margin 0 % → 20 %; 1 entry of work and terms changed.`,
    });
    expect(inputs(done).blocks!.rooms).toEqual(RUNS);
  });

  test("once more, nothing differs", () => {
    expect(found(done, NEXT).differences).toEqual([]);
  });

  test("what is left out stays as it was, and is offered again", () => {
    const chosen = takenByItself(all.differences).filter(({ line }) => !["drop", "Margin"].includes(line));
    const partly = brought(job, all, chosen);
    expect(row(partly, "cables", "drop")!.price).toBe(40);
    expect(inputs(partly).fields!.site_margin).toBe(0);
    const again = found(partly, NEXT).differences;
    expect(again.map(({ line, byHand }) => [line, byHand])).toEqual([
      ["Margin", false],
      ["drop", false],
    ]);
  });
});

describe("what was changed in the job by hand", () => {
  const own = recalculate(
    layOut(
      multiRoom,
      changed(drawnJob(FIRM), ({ fields, blocks }) => {
        fields.site_waste = 0.12;
        blocks.plates![0]!.price = 5;
        blocks.passives!.splice(1, 1);
        blocks.units!.push({ ...blocks.units![0]!, name: "the job's own head unit", price: 77 });
      }),
    ),
  );

  test("is named, and kept unless it is asked for", () => {
    const all = found(own, NEXT);
    const mine = all.differences.filter(({ byHand }) => byHand);
    expect(mine.map(({ line, from, to }) => [line, from, to])).toEqual([
      ["Waste added to each run", 0.12, 0],
      ["plate", 5, 6.3],
    ]);
    expect(inWords(all).summary).toContain("2 entries of the job's own differ and are kept.");
    const kept = brought(own, all, takenByItself(all.differences));
    expect(row(kept, "plates", "plate")!.price).toBe(5);
    expect(row(kept, "units", "the job's own head unit")!.price).toBe(77);
    const asked = brought(own, all, [...takenByItself(all.differences), ...mine]);
    expect(row(asked, "plates", "plate")!.price).toBe(6.3);
    expect(inputs(asked).fields!.site_waste).toBe(0);
    expect(found(asked, NEXT).differences).toEqual([]);
  });

  test("a part that was taken out comes back only when it is asked for", () => {
    const [removed] = found(own, FIRM).differences.filter(({ kind }) => kind === "removed");
    expect(removed).toMatchObject({ line: "old splitter", byHand: true });
    expect(inWords(found(own, FIRM)).lists.flatMap(({ lines }) => lines)).toContainEqual(
      expect.objectContaining({
        words: "old splitter: taken out of the job, or renamed in it; left out",
        taken: false,
      }),
    );
  });

  test("a part that was renamed in the standards is one gone and one new", () => {
    const renamed = changed(FIRM, ({ blocks }) => {
      blocks.plates![0]!.name = "wall plate";
    });
    expect(found(job, renamed).differences.map(({ kind, line }) => [kind, line])).toEqual([
      ["new", "wall plate"],
      ["gone", "plate"],
    ]);
  });

  test("a job that never drew on standards keeps all of its own", () => {
    const plain = changed(drawnJob(FIRM), ({ fields, blocks }) => {
      delete blocks.taken;
      delete fields.site_standards;
    });
    const all = found(recalculate(layOut(multiRoom, plain)), NEXT);
    expect(all.notes).toEqual([
      "This job has not drawn on any standards: whatever differs in it is its own, and is kept unless you ask for it.",
    ]);
    expect(takenByItself(all.differences).map(({ line }) => line)).toEqual([
      "plate with radio",
      "Ducts are clear and may be used.",
    ]);
  });
});

describe("refused with a sentence", () => {
  const told = (firm: JobInputs, book = job): unknown => upToDate(book, read(firm), "job.xlsx");

  test("standards of another currency or unit of length", () => {
    expect(told(changed(NEXT, ({ fields }) => void (fields.site_currency = "XTS")))).toBe(
      "job.xlsx is in EUR and the standards are in XTS. Nothing was taken: a price in another currency is another price. Use standards in EUR.",
    );
    expect(told(changed(NEXT, ({ fields }) => void (fields.site_unit = "ft")))).toBe(
      "Lengths of job.xlsx are in m and those of the standards in ft. Nothing was taken: reels, slack and minutes for a length would all be wrong. Use standards in m.",
    );
  });

  test("what is no standards workbook, or of a later version", () => {
    expect(firmsStandards(job, "job.xlsx")).toBe(
      "job.xlsx is no workbook of a firm's standards. Give one that was made from the template “Firm's standards”.",
    );
    expect(firmsStandards({ ...bookOf(FIRM), templateVersion: "99" }, "firm.xlsx")).toMatch(
      /^firm\.xlsx was made from version 99 of “Firm's standards”; this Rigsheet is older/,
    );
  });

  test("standards that say not whose they are, or have a part twice", () => {
    expect(refusal(changed(FIRM, ({ fields }) => void delete fields.standards_firm))).toBe(
      "firm.xlsx does not say what jobs are to tell of it: Firm. Fill that in on its sheet Standards.",
    );
    expect(refusal(changed(FIRM, ({ blocks }) => void blocks.plates!.push(blocks.plates![0]!)))).toBe(
      "“plate” stands twice in firm.xlsx under “Wall plates”, so it is not known which of the two is meant. Take one of them out, or give it another name.",
    );
  });

  test("a job that is no estimate, or of a version that knew no standards", () => {
    expect(told(NEXT, recalculate(layOut(singleDrop)))).toBe(
      "job.xlsx is no multi-room estimate of ours, so it draws on no standards.",
    );
    expect(told(NEXT, { ...job, templateVersion: "5" })).toMatch(
      /^job\.xlsx is of version 5 of “Multi-room estimate”, which knew no standards; today's is \d+\. Upgrade it first/,
    );
  });

  test("a name that is gone: nothing is changed", () => {
    const all = found(job, NEXT);
    const lost = { ...job, names: job.names.filter(({ name }) => name !== "plates_price") };
    expect(withEntries(lost, multiRoom, bringing(all, all.differences, { today: TODAY }))).toBe(
      "The workbook has no cells named plates_price any more, so nothing was changed. Open the workbook it was made from.",
    );
  });
});

test("a record that was spoilt is no reason to overwrite anything", () => {
  const spoilt = changed(drawnJob(FIRM), ({ blocks }) => {
    for (const one of blocks.taken!) one.values = "{";
  });
  const all = differences(inputs(recalculate(layOut(multiRoom, spoilt))), read(NEXT));
  expect(all.filter(({ kind, byHand }) => kind === "changed" && !byHand)).toEqual([]);
});
