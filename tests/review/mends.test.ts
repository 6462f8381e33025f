/** The list leads to what mends a finding, held to an outsider's word (tests/fixtures/mends/README.md) and to a job. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { recalculate } from "../../src/hosts/headless/recalculate";
import type { Finding } from "../../src/review/finding";
import { MENDED_BY } from "../../src/review/mendedBy";
import { goesTo, mendsOf } from "../../src/review/mends";
import { namedCells, plainWord } from "../../src/review/namedCells";
import { review } from "../../src/review/review";
import { inputsIn } from "../../src/review/inputsIn";
import type { Book } from "../../src/workbooks/book";
import { layOut } from "../../src/workbooks/layOut";
import type { EstimateCheck } from "../../src/workbooks/multiRoom/checks";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";

interface Case {
  readonly id: string;
  readonly inputs: readonly { readonly sheet: string; readonly column: string }[];
}

const cases = JSON.parse(
  readFileSync(path.join(__dirname, "../fixtures/mends/mends.json"), "utf8"),
) as readonly Case[];

/** The checks that tell of each. */
const TOLD_BY: Readonly<Record<string, readonly EstimateCheck[]>> = {
  "weak-hot": ["level too low"],
  "strong-cold": ["level too high"],
  slope: ["slope too steep"],
  cn: ["carrier to noise too low"],
  "cn-not-judged": ["carrier to noise not judged", "carrier to noise not asked"],
  "too-many-tuners": ["no user band"],
  "band-clash": ["no user band"],
  "supply-current": ["supply overloaded"],
  "device-current": ["devices overloaded"],
  "volts-low": ["short of volts"],
  "amp-volts": ["amplifiers short of volts"],
  "amp-output": ["amplifiers overdriven"],
  "applied-volts": ["applied volts too high"],
  deaf: ["outlets dead"],
  "control-unknown": ["commands not judged"],
  "not-fed": ["outlets unfed", "branches unfed"],
  "ports-full": ["outlets unfed", "branches unfed"],
  loop: ["branches unfed"],
  "open-through": ["through ports open"],
  "resistor-power": ["resistors on power"],
  connectors: ["connectors too few"],
  "switch-input": ["inputs out of range"],
  "feed-volts": ["feeds short of volts"],
  clearance: ["beam obstructed", "dish obstructed"],
  "slot-not-received": ["slots without dish"],
  "no-letterhead": ["terms empty"],
  "price-expired": ["prices expired"],
  "price-expires-within": ["prices run out"],
  "validity-before-date": ["days of validity"],
  "reel-short": ["runs not planned"],
  "no-hours": ["hours of labour"],
  "no-route": ["cables without route"],
  "days-too-few": ["days too few"],
  "discount-two": ["discount twice"],
  "discount-under-cost": ["price after discount"],
  "alternates-clash": ["alternates together"],
  "option-no-price": ["options without a cost"],
};
const AT_THE_ENTRY = ["no-customer", "zero-free", "tax-class-unknown"];
/** Where the first is another than theirs, and why. */
const OTHERWISE: Readonly<Record<string, string>> = {
  "band-clash": "the check counts all outlets without bands; the finding of one goes to what it keeps",
};

/** The demonstration without what its letterhead says. */
const blank = layOut(multiRoom, { ...guestHouse, blocks: { ...guestHouse.blocks, letterhead: [] } });
const labelled = new Map<string, string>(
  inputsIn(blank, multiRoom).flatMap(({ label, cells }) =>
    cells.map(({ place }) => [`${place.sheet}!${place.cell}`, label] as const),
  ),
);

test("each case is told by a check, or at its entry", () => {
  expect([...Object.keys(TOLD_BY), ...AT_THE_ENTRY].sort()).toEqual(cases.map(({ id }) => id).sort());
});

test.each(cases.filter(({ id }) => id in TOLD_BY && !(id in OTHERWISE)).map((one) => [one.id, one] as const))(
  "%s: the list leads to an input that mends it",
  (id, { inputs }) => {
    const firsts = TOLD_BY[id]!.map((check) => mendsOf(check, blank)[0]?.place);
    for (const place of firsts) {
      const label = labelled.get(`${place?.sheet}!${place?.cell}`);
      expect(inputs.map(({ sheet, column }) => `${sheet}, ${column}`)).toContain(`${place?.sheet}, ${label}`);
    }
  },
);

test("every way is an input", () => {
  for (const check of Object.keys(MENDED_BY) as EstimateCheck[])
    for (const { place } of mendsOf(check, blank)) {
      const at = `${place.sheet}!${place.cell}`;
      expect([check, at, labelled.has(at)]).toEqual([check, at, true]);
    }
});

describe("in the guest house", () => {
  let computed: Book;
  let findings: readonly Finding[];
  beforeAll(() => {
    computed = recalculate(layOut(multiRoom, guestHouse));
    findings = review(computed);
  });
  const cellOf = (column: string, names: string, name: string) =>
    namedCells(computed, column)[
      namedCells(computed, names).find(({ value }) => plainWord(value) === name.toLowerCase())!.index
    ]!.place;

  test("a weak outlet leads to its own run, then its cable, its device and its head unit", () => {
    const weak = findings.find(({ message }) => message.startsWith("A-07 has too little level"))!;
    const { rooms, branches } = guestHouse.blocks as Record<string, Record<string, string>[]>;
    const device = rooms!.find(({ outlet }) => outlet === "A-07")!.from!;
    // Up to what no device of the list feeds: a head unit.
    let head = device;
    for (let row; (row = branches!.find(({ id }) => id === head));) head = row.from!;
    expect(goesTo(weak)).toEqual(cellOf("rooms_run", "rooms_outlet", "A-07"));
    expect(weak.mends!.map(({ place }) => place)).toEqual(
      expect.arrayContaining([
        cellOf("rooms_cable", "rooms_outlet", "A-07"),
        cellOf("branches_device", "branches_id", device),
        cellOf("heads_cable", "heads_id", head),
      ]),
    );
    expect(weak.mends!.map(({ what }) => what)).toContain(`Cable of ${head}`);
  });

  test("what moves the limit and not the job is no way", () => {
    const weak = findings.find(({ message }) => message.startsWith("A-07 has too little level"))!;
    expect(weak.mends!.filter(({ place }) => place.sheet === "Site")).toEqual([]);
  });

  test("a head unit short of volts leads to its own cable", () => {
    const short = findings.find(({ message }) => message.startsWith("H3 has too few volts"))!;
    expect(goesTo(short)).toEqual(cellOf("heads_cable", "heads_id", "H3"));
  });
});
