/**
 * Room types on the sheets, held to cases by somebody who had seen no code (tests/fixtures/roomTypes/README.md): what
 * counts at each outlet, what is marked as the row's own, and what is said.
 */
import { readFileSync } from "node:fs";
import { recalculate } from "../../src/hosts/headless/recalculate";
import type { JobInputs } from "../../src/workbooks/definition";
import { isBookError, type Book } from "../../src/workbooks/book";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { summarise } from "../../src/workbooks/multiRoom/summarise";
import { namedColumn } from "../../src/workbooks/named";

type Cell = string | number;
type Row = Readonly<Record<string, Cell>>;
type Expected = Readonly<Record<string, Cell | readonly string[]>>;
type Change = Readonly<Record<string, Cell | boolean>>;
interface Case {
  readonly id: string;
  readonly kind: string;
  readonly site?: Row;
  readonly types: readonly Row[];
  readonly rooms: readonly Row[];
  readonly expect: Readonly<Record<string, Expected>>;
  readonly asks: readonly { readonly row: string; readonly words: readonly string[] }[];
  readonly mayAsk: boolean;
  readonly change?: readonly Change[];
  readonly after?: Readonly<Record<string, Expected>>;
}

const cases = ["floors", "moreFloors"].flatMap((file) =>
  (JSON.parse(readFileSync(`${__dirname}/../fixtures/roomTypes/${file}.json`, "utf8")) as Case[]).filter(
    ({ kind }) => kind === "type",
  ),
);

/** As the cases call them, and as the sheet does. */
const KEYS: Readonly<Record<string, string>> = { type: "name", "price group": "kind" };
const HEADS: Readonly<Record<string, string>> = {
  "how many": "quantity",
  "wall plate": "plate",
  "split by": "split",
  "shortest run": "shortest",
  "longest run": "longest",
};

/** Judged otherwise, with the reason. */
const otherwise = JSON.parse(
  readFileSync(`${__dirname}/../fixtures/roomTypes/judged.json`, "utf8"),
) as Readonly<Record<string, string>>;

const rowOf = (row: Row, keys = KEYS): Row =>
  Object.fromEntries(
    Object.entries(row).flatMap(([key, value]) => (value === "" ? [] : [[keys[key] ?? key, value]])),
  );

const { blocks: house = {}, fields } = guestHouse;
const like = (block: string, names: readonly string[], more: Row = {}): Row[] =>
  names.map((name) => ({ ...house[block]![0]!, name, ...more }));

function jobOf(types: readonly Row[], rooms: readonly Row[], site: Row): JobInputs {
  return {
    fields: {
      ...fields,
      site_usual_cable: site.cable ?? "",
      site_usual_plate: site.plate ?? "",
      site_usual_route: site.route ?? "",
    },
    blocks: {
      ...house,
      dishes: [],
      feeders: [],
      cables: like("cables", ["drop cable", "white drop", "black drop"], { reel: 500 }),
      plates: like("plates", ["single plate", "white plate", "steel plate", "twin plate"]),
      routes: like("routes", ["duct", "ceiling", "outside"]),
      kinds: [{ name: "rooms" }, { name: "suites" }],
      receivers: ["set-top box", "small box", "recorder"].map((kind) => ({ kind, tuners: 1 })),
      passives: like("passives", ["2-way splitter", "4-way splitter", "8-way splitter"], { ways: 64 }),
      heads: [{ id: "H1", type: String(house.units![0]!.name) }],
      branches: [{ id: "S1", from: "H1", device: "8-way splitter" }],
      types: types.map((row) => rowOf(row)),
      rooms: rooms.map((row) => ({
        room: String(row.outlet),
        floor: "1",
        from: "S1",
        ...rowOf(row, { "price group": "kind" }),
      })),
    },
  };
}

function differencesIn(
  book: Book,
  expected: Case["expect"],
  types: readonly Row[],
  rooms: readonly Row[],
  site: Row,
) {
  const column = (key: string) => namedColumn(book, `rooms_${key}`).slice(1);
  const own = column("own");
  const found: string[] = [];
  for (const [outlet, wants] of Object.entries(expected)) {
    const at = rooms.findIndex((row) => row.outlet === outlet);
    for (const [key, wanted] of Object.entries(wants)) {
      if (key === "minutes") continue;
      if (key === "overridden") {
        const marked = String(own[at] ?? "")
          .split(", ")
          .filter(Boolean)
          .map((head) => HEADS[head] ?? head.replace("price group", "kind"));
        const type = types.find(
          ({ type: name }) => String(name).toLowerCase() === String(rooms[at]!.type).toLowerCase(),
        );
        // What its type does not say may be marked or not.
        const open = (one: string): boolean => rowOf(type ?? {})[one] === undefined;
        const wantedKeys = (wanted as readonly string[]).map((one) => KEYS[one] ?? one);
        const differing = [
          ...marked.filter((one) => !wantedKeys.includes(one)),
          ...wantedKeys.filter((one) => !marked.includes(one) && !open(one)),
        ];
        if (differing.length > 0)
          found.push(`${outlet} marked: ${wantedKeys.join(", ")} expected, ${marked.join(", ")} got`);
        continue;
      }
      const value = column(`${KEYS[key] ?? key}_used`)[at] ?? "";
      const counts =
        value !== "" ? value : key === "quantity" ? 1 : key === "route" ? (site.route ?? "") : "";
      if (isBookError(counts) || String(counts) !== String(wanted))
        found.push(`${outlet} ${key}: ${String(wanted)} expected, ${JSON.stringify(counts)} got`);
    }
  }
  return found;
}

/** What the workbook says, check by check and row by row. */
const saidBy = (book: Book): string =>
  [
    ...summarise(book)
      .checks.filter(({ result }) => result !== "ok")
      .map(({ what, where }) => `${what}: ${where}`),
    ...namedColumn(book, "rooms_check_trouble").map(String),
  ]
    .join("\n")
    .toLowerCase();

function differencesOf({
  types,
  rooms,
  site = {},
  expect: expected,
  asks,
  mayAsk,
  change,
  after,
}: Case): string[] {
  const book = recalculate(layOut(multiRoom, jobOf(types, rooms, site)));
  const said = saidBy(book);
  const found = differencesIn(book, expected, types, rooms, site);
  const entries = said.split("\n").filter((line) => /missing or out of bounds: room|stand twice/.test(line));
  if (found.length > 0 && mayAsk && entries.length > 0) found.length = 0;
  for (const { words } of asks)
    for (const word of words) if (!said.includes(word.toLowerCase())) found.push(`does not say ${word}`);
  if (asks.length === 0 && !mayAsk && !/[*?~]/.test(JSON.stringify(types)))
    found.push(...entries.map((line) => `says ${line}`));
  if (change && after && found.length === 0) {
    const changed = (rows: readonly Row[], key: "type" | "outlet"): Row[] => [
      ...rows.flatMap((row): Row[] => {
        const one = change.find(
          (to) => (key === "type" ? to.outlet === undefined : true) && to[key] === row[key],
        );
        if (!one) return [row];
        const { remove, ...rest } = one;
        return remove ? [] : [{ ...row, ...(rest as Row) }];
      }),
      ...(key === "type"
        ? (change.filter(
            (to) => to.outlet === undefined && !rows.some(({ type }) => type === to.type),
          ) as Row[])
        : []),
    ];
    const [nextTypes, nextRooms] = [changed(types, "type"), changed(rooms, "outlet")];
    const next = recalculate(layOut(multiRoom, jobOf(nextTypes, nextRooms, site)));
    found.push(
      ...differencesIn(next, after, nextTypes, nextRooms, site).map((one) => `after the change, ${one}`),
    );
  }
  return found;
}

test.each(cases.map((one) => [one.id, one] as const))("%s", (_, one) => {
  // A case that is judged otherwise and is met all the same is none.
  expect(differencesOf(one).length > 0).toBe(one.id in otherwise);
});
