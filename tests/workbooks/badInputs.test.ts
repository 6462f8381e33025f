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

describe("typed into the rows", () => {
  test.each<[string, Change, RegExp, string, RegExp]>([
    [
      "a run of -3 m",
      ({ blocks }) => void (blocks.rooms![4]!.run = -3),
      /level could not be found/,
      "rooms_loss",
      /^Run of G-05 .* is -3/,
    ],
    [
      "a cable that is not on Parts",
      ({ blocks }) => void (blocks.rooms![4]!.cable = "mystery"),
      /level could not be found/,
      "rooms_loss",
      /mystery/,
    ],
    [
      "1,5 for 1.5",
      ({ blocks }) => void (blocks.rooms![4]!.run = "1,5"),
      /level could not be found/,
      "rooms_loss",
      /decimal comma/,
    ],
    [
      "a branch fed from itself",
      ({ blocks }) => void (blocks.branches![1]!.from = "G1"),
      /level could not be found/,
      "branches_loss",
      /loop|itself/,
    ],
    [
      "33 tuners on a head unit of 32",
      ({ blocks }) => {
        blocks.units![0]!.bands = 32;
        Object.assign(blocks.rooms![0]!, { receiver: "receiver", quantity: 33 });
      },
      /could not be found|without a user band/,
      "rooms_bands",
      /33/,
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
    const messages = namedRows(book, name)
      .flat()
      .flatMap((result) => (isBookError(result) ? [result.message] : []));
    expect(messages).toEqual(expect.arrayContaining([expect.stringMatching(sentence)]));
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
      "33 tuners of 17 outlets on a head unit of 32",
      ({ blocks }) => {
        blocks.units![0]!.bands = 32;
        // H1 feeds eight outlets of the ground floor.
        blocks
          .rooms!.slice(0, 8)
          .forEach((row, index) =>
            Object.assign(row, { receiver: "receiver", quantity: index === 0 ? 5 : 4 }),
          );
      },
      /more tuners than user bands/,
    ],
    [
      "two splitters straight on one head unit",
      ({ blocks }) => void (blocks.branches!.find(({ id }) => id === "U1")!.from = "H2"),
      /several items without a splitter/,
    ],
    [
      "an outlet beside the splitter on the head unit's cable",
      ({ blocks }) => void (blocks.rooms![0]!.from = "H1"),
      /several items without a splitter/,
    ],
    [
      "work without a difficulty",
      ({ blocks }) => void delete blocks.labour![0]!.difficulty,
      /missing or out of bounds: Parts, labour units/,
    ],
    [
      "work without a crew rate",
      ({ fields }) => void delete fields.labour_rate,
      /missing or out of bounds: Parts, crew/,
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
  test("sorted by any column, nothing but the bands changes, and the total stays", () => {
    for (const key of ["outlet", "run", "room"]) {
      const sorted = recalculate(
        filled(({ blocks }) => {
          blocks.rooms!.sort((a, b) => (String(a[key]) < String(b[key]) ? 1 : -1));
        }),
      );
      expect(namedValue(sorted, "quote_total")).toBe(namedValue(good, "quote_total"));
      expect(failing(sorted)).toEqual(usual);
      const level = (book: Book, outlet: unknown) =>
        namedRows(book, "rooms_level")[namedColumn(book, "rooms_outlet").indexOf(outlet as string)];
      for (const { outlet } of guestHouse.blocks!.rooms!) {
        expect(level(sorted, outlet)).toEqual(level(good, outlet));
      }
    }
  });
});
