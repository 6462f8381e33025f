/**
 * The same take-off of 240 outlets made twice, row by row and by four types: the same value in every calculated cell,
 * and on every page that is printed but those that are filled by hand.
 */
import { copyOf } from "../../src/hosts/file/copy/copyOf";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { parseRange, address } from "../../src/formula/address";
import type { Book } from "../../src/workbooks/book";
import type { JobInputs } from "../../src/workbooks/definition";
import { layOut } from "../../src/workbooks/layOut";
import { cardsOf } from "../../src/workbooks/multiRoom/cards/cardsOf";
import { apartmentBlock } from "../../src/workbooks/multiRoom/apartmentBlock";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";

type Row = Readonly<Record<string, number | string>>;

const TYPES: readonly Row[] = [
  { name: "near", receiver: "receiver", quantity: 1, run: 6, kind: "flat" },
  { name: "far", receiver: "receiver", quantity: 1, run: 13.5, shortest: 12, longest: 16, kind: "flat" },
  {
    name: "clipped",
    receiver: "receiver",
    run: 9,
    plate: "outlet with radio",
    route: "surface clips",
    kind: "flat",
  },
  { name: "recorder", receiver: "recorder, 2 tuners", quantity: 1, run: 8, kind: "flat" },
];
const outlets = apartmentBlock.blocks!.rooms!;
const typeAt = (at: number): Row =>
  outlets[at]!.receiver === "recorder, 2 tuners" ? TYPES[3]! : TYPES[at % 3]!;

/** Some rows have a run of their own in both. */
const ownRun = (at: number): Row => (at % 17 === 5 ? { run: 7.5 } : {});
const bare = ({ floor, room, outlet, from }: Row): Row => ({
  floor: floor!,
  room: room!,
  outlet: outlet!,
  from: from!,
});

const jobOf = (types: readonly Row[], rooms: readonly Row[]): JobInputs => ({
  ...apartmentBlock,
  blocks: { ...apartmentBlock.blocks, types, rooms },
});
const withoutName = (type: Row): Row =>
  Object.fromEntries(Object.entries(type).filter(([key]) => key !== "name"));
const byTypes = recalculate(
  layOut(
    multiRoom,
    jobOf(
      TYPES,
      outlets.map((row, at) => ({ ...bare(row), type: typeAt(at).name!, ...ownRun(at) })),
    ),
  ),
);
const rowByRow = recalculate(
  layOut(
    multiRoom,
    jobOf(
      [],
      outlets.map((row, at) => {
        return { ...bare(row), ...withoutName(typeAt(at)), ...ownRun(at) };
      }),
    ),
  ),
);

/** What tells of the types themselves: nothing of the job follows from it. */
const OF_TYPES = new Set([
  "rooms_own",
  "rooms_own_key",
  "rooms_type_key",
  "rooms_room_key",
  "rooms_type_row",
]);
const SHEETS_OF_TYPES = new Set(["Room types"]);

function calculated(book: Book): Map<string, unknown> {
  const left = book.names
    .filter(({ name }) => OF_TYPES.has(name))
    .map(({ sheet, range }) => ({ sheet, zone: parseRange(range)! }));
  const cells = new Map<string, unknown>();
  for (const { name, results } of book.sheets) {
    if (SHEETS_OF_TYPES.has(name)) continue;
    for (const [at, value] of Object.entries(results)) cells.set(`${name}!${at}`, value);
    for (const { sheet, zone } of left)
      if (sheet === name)
        for (let row = zone.top; row <= zone.bottom; row++)
          for (let column = zone.left; column <= zone.right; column++)
            cells.delete(`${name}!${address(row, column)}`);
  }
  return cells;
}

test("every calculated cell has the same value", () => {
  const [one, other] = [calculated(rowByRow), calculated(byTypes)];
  expect([...other.keys()].sort()).toEqual([...one.keys()].sort());
  const differing = [...one].filter(([at, value]) => JSON.stringify(value) !== JSON.stringify(other.get(at)));
  expect(
    differing.map(([at, value]) => `${at}: ${JSON.stringify(value)}, ${JSON.stringify(other.get(at))}`),
  ).toEqual([]);
  expect(one.size).toBeGreaterThan(20_000);
});

/** What stands on paper of a sheet: the values of its sealed copy, but for the column that names the type. */
function onPaper(book: Book, name: string): Record<string, unknown> {
  const { sheets } = copyOf(book, "sealed", { now: new Date(0), version: "0", sheets: [name] });
  const { cells, results, print } = sheets.find((sheet) => sheet.name === name)!;
  const area = parseRange(print?.area ?? "A1:XFD9999")!;
  const typeColumn = name === "Rooms" ? "J" : undefined;
  return Object.fromEntries(
    Object.keys({ ...cells, ...results }).flatMap((at) => {
      const { left } = parseRange(at)!;
      const value = results[at] ?? cells[at]?.value ?? "";
      return left > area.right || value === "" || at.replace(/\d+/, "") === typeColumn ? [] : [[at, value]];
    }),
  );
}

test.each(multiRoom.sheets.map(({ name }) => name).filter((name) => !SHEETS_OF_TYPES.has(name)))(
  "%s prints the same",
  (name) => {
    const one = onPaper(rowByRow, name);
    const other = onPaper(byTypes, name);
    expect(other).toEqual(one);
    expect(Object.keys(one).length).toBeGreaterThan(3);
  },
);

test("the crew's cards are the same", () => {
  const cards = (book: Book) => cardsOf(book)!.sheets.map(({ cells }) => cells);
  expect(cards(byTypes)).toEqual(cards(rowByRow));
  expect(Math.max(...cards(rowByRow).map((cells) => Object.keys(cells).length))).toBeGreaterThan(1000);
});
