/** The card of an outlet, line by line, from a few cells. */
import type { Book, BookResult } from "../../../src/workbooks/book";
import { CARD, type Card } from "../../../src/workbooks/multiRoom/cards/cardSheet";
import { outletCards } from "../../../src/workbooks/multiRoom/cards/outletCard";
import { estimate } from "../../../src/workbooks/multiRoom/names";
import { namedBook } from "../../support/namedBook";

type Columns = Readonly<Record<string, readonly (BookResult | undefined)[]>>;

/** One outlet, below the thin row. */
const job = (columns: Columns = {}): Book =>
  namedBook({
    site_quote: ["D-24"],
    site_revision: [1],
    site_unit: ["m"],
    site_low: [950],
    site_high: [2150],
    site_level_low: [47],
    site_level_high: [77],
    commission_tolerance: [3],
    commission_volts_tolerance: [1],
    rooms_outlet: ["", "G-01", ""],
    rooms_from: ["", "S2", ""],
    rooms_plate_used: ["", "plate", ""],
    rooms_cable_used: ["", "drop", ""],
    rooms_run_used: ["", 12.54, ""],
    rooms_run: ["", 99, ""],
    rooms_verdict: ["", "ok", ""],
    ...columns,
  });
/** What stands in a line of the only card, from the left. */
const line = (row: number, columns?: Columns): unknown[] =>
  outletCards(job(columns))[0]!
    .filter((part) => part.row === row && part.value !== undefined)
    .map(({ value }) => value);
const row = (value: BookResult) => ["", value, ""];

test("its title, its job, its heads, and who opens a connector when", () => {
  const { quiet, head, title } = CARD;
  const card: Card = outletCards(job())[0]!;
  expect(card.filter(({ row: at }) => at === 0)).toEqual([
    { row: 0, column: 0, value: "Outlet G-01", look: title },
    { row: 0, column: 3, value: "D-24, rev. 1", look: { ...quiet, align: "right" } },
  ]);
  expect(card.filter(({ row: at }) => at === 5)).toEqual([
    { row: 5, column: 1, value: "predicted", look: head },
    { row: 5, column: 2, value: "within ±", look: head },
    { row: 5, column: 3, value: "measured", look: head },
  ]);
  expect(card.at(-1)).toEqual({
    row: 11,
    column: 0,
    value: "Feed off before a connector is opened; power last.",
    look: quiet,
  });
});

test.each<[string, number, Columns, string]>([
  ["floor and room", 1, { rooms_floor: row("first"), rooms_room: row("12") }, "first, 12"],
  ["a room without a floor", 1, { rooms_room: row("12") }, "12"],
  ["a spare outlet", 2, {}, "spare"],
  ["one receiver", 2, { rooms_receiver_used: row("receiver") }, "receiver"],
  ["one, as a number", 2, { rooms_receiver_used: row("receiver"), rooms_quantity_used: row(1) }, "receiver"],
  ["several", 2, { rooms_receiver_used: row("receiver"), rooms_quantity_used: row(2) }, "2 × receiver"],
  [
    "behind a splitter, at an output",
    2,
    {
      rooms_receiver_used: row("recorder"),
      rooms_split_used: row("2-way"),
      rooms_place_head: row("H1"),
      rooms_place_output: row(2),
    },
    "recorder; split by 2-way; head unit H1, output 2",
  ],
  ["no user band", 3, {}, "no user band"],
  ["none of them", 3, { rooms_place_bands: row("none") }, "no user band"],
  [
    "two user bands with their centres",
    3,
    { rooms_place_bands: row("9, 10"), rooms_place_centres: row("1583,1659") },
    "user band 9: 1583 MHz; 10: 1659 MHz",
  ],
  ["user bands without a plan", 3, { rooms_place_bands: row("9,10") }, "user band 9; 10"],
  ["the run that counts", 4, {}, "from S2: drop, 12.5 m; plate"],
  ["a port", 4, { rooms_place_port: row(4) }, "from S2, port 4: drop, 12.5 m; plate"],
  ["the through port", 4, { rooms_place_port: row("through") }, "from S2, through port: drop, 12.5 m; plate"],
  ["no plate", 4, { rooms_plate_used: row("") }, "from S2: drop, 12.5 m; no plate"],
  ["a good level", 9, {}, "47 to 77 dBµV; predicted ok"],
  ["none found", 9, { rooms_verdict: row("") }, "47 to 77 dBµV; predicted not found"],
  ["a bad row", 9, { rooms_verdict: row("bad") }, "47 to 77 dBµV; predicted not: see Rooms"],
  ["a dead one", 9, { rooms_verdict: row("dead") }, "47 to 77 dBµV; predicted dead: it cannot command"],
  ["a slope", 9, { rooms_verdict: row("steep") }, "47 to 77 dBµV; predicted too steep"],
  ["a crowd", 9, { rooms_verdict: row("too many") }, "47 to 77 dBµV; predicted too many receivers"],
  ["an open port", 9, { rooms_verdict: row("left open") }, "47 to 77 dBµV; predicted a port left open"],
  [
    "power into an end",
    9,
    { rooms_verdict: row("passes power") },
    "47 to 77 dBµV; predicted an end resistor on power",
  ],
  [
    "its own bands",
    9,
    { rooms_level_own: row(52.3) },
    "47 to 77 dBµV; predicted ok; least in its bands 52.3",
  ],
  ["a note", 10, { rooms_note: row("behind the bed") }, "behind the bed"],
  ["nothing to note", 10, {}, ""],
])("%s", (_, at, columns, said) => expect(line(at, columns)).toEqual([said]));

test("before version 6 there were no types: the row's own run counts", () => {
  const book = job();
  book.names = book.names.filter(({ name }) => name !== "rooms_run_used");
  expect(outletCards(book)[0]!.find(({ row: at }) => at === 4)!.value).toBe("from S2: drop, 99.0 m; plate");
});

test("what is predicted, within which bounds, and where what is measured is typed", () => {
  const columns = {
    commission_low_from: row(66.5),
    commission_low_to: row(68.3),
    commission_high_from: row(60),
    commission_high_to: row(60),
    commission_volts_due: row(0),
  };
  expect([6, 7, 8].map((at) => line(at, columns))).toEqual([
    ["dBµV at 950 MHz", "66.5 to 68.3", "3.0"],
    ["dBµV at 2150 MHz", "60.0", "3.0"],
    ["volts, unplugged", "0.0", "1.0"],
  ]);
  // Where no volts are predicted, none can be off.
  expect(line(8)).toEqual(["volts, unplugged", "-", ""]);
  const { built_low, built_high, built_volts } = estimate.rooms;
  expect(outletCards(job())[0]!.filter(({ into }) => into)).toEqual(
    [built_low, built_high, built_volts].map((column, index) => ({
      row: 6 + index,
      column: 3,
      look: CARD.box,
      into: { columns: [column], row: 0 },
    })),
  );
});

describe("the through port of an outlet", () => {
  const through = (columns: Columns = {}): unknown[] =>
    outletCards(
      job({
        rooms_outlet: ["", "A", "B", "C", "D", ""],
        rooms_from: ["", "S2", "a", "A", "S2", ""],
        rooms_plate_used: ["", "loop", "loop", "plate", "", ""],
        plates_name: ["", "plate", "loop", ""],
        plates_through_low: ["", "", 1.5, ""],
        ...columns,
      }),
    ).map((card) => card.find(({ row: at }) => at === 10)!.value);

  test("goes on to the first that it feeds, or is closed; others have none", () => {
    expect(through({ site_closes: ["end resistor"] })).toEqual([
      "through port: on to B",
      "through port: end resistor",
      "",
      "",
    ]);
  });
  test("open where nothing closes it; a note stands behind", () => {
    expect(through({ rooms_note: ["", "", "damp", "", "", ""] })[1]).toBe("through port: open; damp");
  });
});

test("no outlet, no card; a blank row has none", () => {
  expect(outletCards(job({ rooms_outlet: ["", "", ""] }))).toEqual([]);
  const cards = outletCards(job({ rooms_outlet: ["", "", "G-02", ""], rooms_room: ["", "1", "2", ""] }));
  expect(cards.map((card) => card.filter(({ row: at }) => at < 2).map(({ value }) => value))).toEqual([
    ["Outlet G-02", "D-24, rev. 1", "2"],
  ]);
});
