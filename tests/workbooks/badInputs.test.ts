/**
 * Bad input, one at a time, without a screen: a sentence says what and where,
 * a check says so, and no total is ever wrong while the checks stay as they were.
 */
import { recalculate } from "../../src/hosts/headless/recalculate";
import { address, parseRange } from "../../src/formula/address";
import { isBookError, type Book } from "../../src/workbooks/book";
import type { JobInputs } from "../../src/workbooks/definition";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { summarise } from "../../src/workbooks/multiRoom/summarise";
import { namedColumn, namedRows, namedValue } from "../../src/workbooks/named";

type Rows = Record<string, Record<string, number | string>[]>;
type Change = (copy: { fields: Record<string, number | string>; blocks: Rows }) => void;

const filled = (change: Change): Book => {
  const copy = JSON.parse(JSON.stringify(guestHouse)) as Parameters<Change>[0];
  change(copy);
  return layOut(multiRoom, copy as JobInputs);
};
const good = recalculate(filled(() => undefined));
const failing = (book: Book): string[] =>
  summarise(book)
    .checks.filter(({ result }) => result === "look" || result === "error")
    .map(({ what }) => what);
const usual = failing(good);
const placeOf = (book: Book, name: string) => {
  const found = book.names.find((one) => one.name === name)!;
  return { sheet: book.sheets.find((one) => one.name === found.sheet)!, zone: parseRange(found.range)! };
};

/** What is said in a column: texts, and the sentences of errors. */
const sentencesIn = (book: Book, name: string): string[] =>
  namedRows(book, name)
    .flat()
    .flatMap((result) => (isBookError(result) ? [result.message ?? ""] : [String(result ?? "")]));

describe("typed into the rows", () => {
  test.each<[string, Change, RegExp, string, RegExp]>([
    [
      "a run of -3 m",
      ({ blocks }) => void (blocks.rooms![4]!.run = -3),
      /cannot be worked out/,
      "rooms_check_trouble",
      /^"G-05": run is -3/,
    ],
    [
      "a run of -3 m, where reels are counted",
      ({ blocks }) => void (blocks.rooms![4]!.run = -3),
      /Cost cross-check/,
      "cables_bought_quantity",
      /^Run of G-05 .* is -3/,
    ],
    [
      "a cable that is not on Parts",
      ({ blocks }) => void (blocks.rooms![4]!.cable = "mystery"),
      /cannot be worked out/,
      "rooms_check_trouble",
      /^"G-05": .*mystery/,
    ],
    [
      "1,5 for 1.5",
      ({ blocks }) => void (blocks.rooms![4]!.run = "1,5"),
      /cannot be worked out/,
      "rooms_check_trouble",
      /^"G-05": .*decimal comma/,
    ],
    [
      "a receiver that no list knows",
      ({ blocks }) => void (blocks.rooms![4]!.receiver = "wall clock"),
      /cannot be worked out/,
      "rooms_check_trouble",
      /^"G-05" names the receiver "wall clock"/,
    ],
    [
      "a device fed from itself",
      ({ blocks }) => void (blocks.branches![1]!.from = "G1"),
      /^Devices .*cannot be worked out/,
      "branches_check_trouble",
      /^"G1" is fed from itself/,
    ],
    [
      "an outlet below a device that is fed from itself",
      ({ blocks }) => void (blocks.branches![1]!.from = "G1"),
      /^Outlets .*cannot be worked out/,
      "rooms_check_trouble",
      /^"G-01" hangs below "G1"/,
    ],
    [
      "outlets far below a head unit of no known kind are sent to its row",
      ({ blocks }) => void (blocks.heads![2]!.type = "mystery"),
      /^Outlets .*cannot be worked out/,
      "rooms_check_trouble",
      /^"A-02" hangs below "H3"/,
    ],
    [
      "33 receivers at one outlet",
      ({ blocks }) => void Object.assign(blocks.rooms![0]!, { receiver: "receiver", quantity: 33 }),
      /without the user bands/,
      "rooms_check_trouble",
      /^"G-01" has 33 receivers and 1 connector/,
    ],
    [
      "two splitters straight on one output",
      ({ blocks }) => void (blocks.branches!.find(({ id }) => id === "U1")!.from = "H2"),
      /^Devices .*cannot be worked out/,
      "branches_check_trouble",
      /^"H2" has no port left for "U1"/,
    ],
    [
      "an outlet beside the splitter on the head unit's output",
      ({ blocks }) => void (blocks.rooms![0]!.from = "H1"),
      /^Outlets .*cannot be worked out/,
      "rooms_check_trouble",
      /^"H1" has no port left for "G-01"/,
    ],
    [
      "a slot that is not one",
      ({ blocks }) => void (blocks.slots![1]!.slot = "somewhere"),
      /does not clear/,
      "sight_angles",
      /not an orbital slot/,
    ],
  ])("%s", (_, change, check, name, sentence) => {
    const book = recalculate(filled(change));
    expect(failing(book)).toEqual(expect.arrayContaining([expect.stringMatching(check)]));
    expect(failing(book).length).toBeGreaterThan(usual.length);
    expect(sentencesIn(book, name)).toEqual(expect.arrayContaining([expect.stringMatching(sentence)]));
  });

  test.each<[string, Change, RegExp]>([
    ["an outlet fed from itself", ({ blocks }) => void (blocks.rooms![4]!.from = "G-05"), /nothing feeds/],
    ["a price past its date", ({ blocks }) => void (blocks.cables![0]!.until = 46_000), /expired on the day/],
    ["no slots at all", ({ blocks }) => void (blocks.slots = []), /There are orbital slots/],
    [
      "a slot left out where its service and obstacle stand",
      ({ blocks }) => void delete blocks.slots![0]!.slot,
      /missing or out of bounds: Site, orbital slots/,
    ],
    [
      "18 tuners on a head unit of 16 bands",
      ({ blocks }) => {
        // H1 feeds eight outlets of the ground floor: 7 x 2 tuners, and 4.
        blocks
          .rooms!.slice(0, 8)
          .forEach((row, index) =>
            Object.assign(row, { receiver: `recorder, ${index < 7 ? 2 : 4} tuners`, quantity: 1 }),
          );
      },
      /without the user bands/,
    ],
    [
      "a receiver more than a plate has connectors",
      ({ blocks }) => void (blocks.rooms![4]!.quantity = 2),
      /more receivers than connectors/,
    ],
    [
      "work without a difficulty",
      ({ blocks }) => void delete blocks.labour![0]!.difficulty,
      /missing or out of bounds: Parts, labour units/,
    ],
    [
      "work without a crew rate",
      ({ fields }) => void delete fields.labour_rate,
      /missing or out of bounds: Crew/,
    ],
    [
      "an outlet without a name",
      ({ blocks }) => void delete blocks.rooms![4]!.outlet,
      /missing or out of bounds: Rooms/,
    ],
  ])("%s", (_, change, check) => {
    const book = recalculate(filled(change));
    expect(failing(book)).toEqual(expect.arrayContaining([expect.stringMatching(check)]));
    expect(namedValue(book, "checks_verdict")).not.toBe("all checks pass");
  });
});

describe("where the job as a whole cannot be worked out", () => {
  test.each<[string, Change, RegExp]>([
    [
      "no lowest frequency",
      ({ fields }) => void delete fields.site_low,
      /^Lowest frequency on the cable \(Site/,
    ],
    ["a latitude of words", ({ fields }) => void (fields.site_latitude = "no"), /^Latitude \(Site/],
    [
      "a minimum level above the maximum",
      ({ fields }) => void (fields.site_level_low = 90),
      /^Minimum level at an outlet \(Site B\d+\) is 90 dBµV, above Maximum level at an outlet \(Site/,
    ],
  ])("%s: no row says ok, and the checks count them all", (_, change, sentence) => {
    const book = recalculate(filled(change));
    expect(sentencesIn(book, "rooms_check")).toEqual(
      expect.arrayContaining([expect.stringMatching(sentence)]),
    );
    for (const [block, key, count, check] of [
      ["rooms", "outlet", 24, /^Outlets that nothing feeds/],
      ["branches", "id", 9, /^Devices that nothing feeds/],
      ["heads", "id", 3, /^Head units that cannot/],
      ["feeders", "from", 2, /^Feeders that cannot/],
      ["dishes", "name", 2, /^Dishes that cannot/],
    ] as const) {
      const rows = namedColumn(book, `${block}_${key}`);
      const verdicts = namedColumn(book, `${block}_verdict`).filter((_, row) => rows[row]);
      expect({ block, verdicts }).toEqual({ block, verdicts: Array(count).fill("bad") });
      expect(summarise(book).checks.find(({ what }) => check.test(what))).toMatchObject({
        found: count,
        result: "look",
      });
    }
  });
});

describe("a pasted block that overruns the prepared rows", () => {
  test.each(["rooms", "branches", "heads", "cables", "labour", "options"])("of %s", (block) => {
    const book = filled(() => undefined);
    const key = multiRoom.sheets
      .flatMap(({ parts }) => parts)
      .flatMap((part) => (part.kind === "block" && part.name === block ? part.columns : []))[0]!.key;
    const { sheet, zone } = placeOf(book, `${block}_${key}`);
    // Two rows more than there are: one in the closing row, one below it.
    for (const row of [zone.bottom, zone.bottom + 1]) {
      sheet.cells[address(row, zone.left)] = { value: `too many ${row}`, look: 0 };
    }
    const after = recalculate(book);
    expect(summarise(after).checks.find(({ what }) => /below the closing row/.test(what))).toMatchObject({
      found: 2,
      result: "look",
    });
  });
});

describe("a named range that somebody deleted", () => {
  const used = good.names
    .map(({ name }) => name)
    .filter((name) =>
      /^(rooms_(run|cable|plate|outlet|from|quantity)|branches_(length|device|id)|heads_(type|id|supply)|cables_(price|reel|name)|plates_price|fittings_(pack|price)|labour_(rate|minutes|per_outlet)|work_sum|price_(sections|factor|lines|net)|site_(margin|tax|overhead|waste)|cables_bought_sum|options_chosen|provisional_sum)$/.test(
        name,
      ),
    );

  test.each(used)("%s", (name) => {
    const book = filled(() => undefined);
    const after = recalculate({ ...book, names: book.names.filter((one) => one.name !== name) });
    const total = namedValue(after, "quote_total");
    const wrong = total !== namedValue(good, "quote_total");
    if (wrong) {
      const more = failing(after).filter((what) => !usual.includes(what));
      expect({ name, total, more: more.length > 0 }).toEqual({ name, total, more: true });
    }
  });
});

describe("rows in another order", () => {
  test("sorted by any column, nothing but ports and bands changes, and the total stays", () => {
    for (const key of ["outlet", "run", "room"]) {
      const sorted = recalculate(
        filled(({ blocks }) => {
          blocks.rooms!.sort((a, b) => (String(a[key]) < String(b[key]) ? 1 : -1));
        }),
      );
      expect(namedValue(sorted, "quote_total")).toBe(namedValue(good, "quote_total"));
      expect(failing(sorted)).toEqual(usual);
      // All but the level at its own bands.
      const level = (book: Book, outlet: unknown) =>
        namedRows(book, "rooms_level")[namedColumn(book, "rooms_outlet").indexOf(outlet as string)]!.filter(
          (_, column) => column !== 4,
        );
      for (const { outlet } of guestHouse.blocks!.rooms!) {
        expect(level(sorted, outlet)).toEqual(level(good, outlet));
      }
    }
  });
});
