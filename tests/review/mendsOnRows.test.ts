/** Which rows a mend is looked for in: those that the wrong row is made of and hangs on, never the first that comes. */
import { goesTo, likeliest, mendsOf } from "../../src/review/mends";
import type { FindingPlace } from "../../src/review/finding";
import type { EstimateCheck } from "../../src/workbooks/multiRoom/checks";
import { estimate } from "../../src/workbooks/multiRoom/names";
import { at, atField, smallBook, type Row } from "./smallBook";

const { rooms, branches, types, dishes, feeders, site } = estimate;
const HEAD_OF_OUTLET = rooms.place.head.name.slice("rooms_".length);
const HEAD_OF_DEVICE = branches.level.head.name.slice("branches_".length);

const named = (...names: string[]): Row[] =>
  names.map((name) => ({ name, power: "", gain_high: "", longest: "", loop: "", noise: "", standard: "" }));
/** Everything that o2 hangs on stands in a second row, behind one that it has nothing to do with. */
const blocks = {
  rooms: [
    { outlet: "o1", from: "G1", run: 1, cable: "C1", plate: "P1", type: "T1", receiver: "R1", split: "S1" },
    { outlet: "o2", from: "G2", run: 2, cable: "C2", plate: "P2", type: "T2", receiver: "R2", split: "S2" },
  ].map((row, index) => ({ ...row, port: "", longest: "", [HEAD_OF_OUTLET]: `H${index + 1}` })),
  branches: [
    { id: "G1", from: "H1", device: "S1", cable: "C1" },
    { id: "G2", from: "H2", device: "S3", cable: "C1" },
  ].map((row, index) => ({ ...row, length: 1, [HEAD_OF_DEVICE]: `H${index + 1}` })),
  heads: [
    { id: "H1", type: "U1", cable: "C1", supply: "V1", dish: "D1" },
    { id: "H2", type: "U2", cable: "C3", supply: "V2", dish: "" },
  ].map((row) => ({ ...row, length: 1 })),
  feeders: [
    { from: "D1", to: "H1" },
    { from: "D2", to: "H2" },
  ],
  dishes: [
    { name: "D1", feed: "F1" },
    { name: "D2", feed: "F2" },
  ].map((row) => ({ ...row, size: 0.8, off_focus: "" })),
  types: named("T1", "T2"),
  cables: named("C1", "C2", "C3"),
  plates: named("P1", "P2"),
  passives: named("S1", "S2", "S3"),
  units: named("U1", "U2"),
  feeds: named("F1", "F2"),
  receivers: ["R1", "R2"].map((kind) => ({ kind, bears: "", standard: "", noise: "" })),
  supplies: ["V1", "V2"].map((name) => ({ name, other_side: "" })),
};
type Changed = Partial<Record<keyof typeof blocks, Row[]>>;
const places = (
  check: EstimateCheck,
  seenAt?: FindingPlace,
  changed: Changed = {},
  fields: Row = {},
): FindingPlace[] =>
  mendsOf(check, smallBook({ ...blocks, ...changed }, fields), seenAt).map(({ place }) => place);
const of = (
  check: EstimateCheck,
  column: string,
  seenAt: FindingPlace,
  changed: Changed = {},
  fields: Row = {},
) => places(check, seenAt, changed, fields).find(({ sheet }) => sheet === column);

const O2 = at("rooms_run", 2);

describe("of an outlet", () => {
  test("its own row, its device and its head unit", () =>
    expect(places("level too low", O2)).toEqual([
      at("rooms_run", 2),
      at("rooms_cable", 2),
      at("rooms_from", 2),
      at("rooms_port", 2),
      at("rooms_plate", 2),
      at("rooms_split", 2),
      at("branches_device", 2),
      at("branches_length", 2),
      at("branches_cable", 2),
      at("branches_from", 2),
      at("heads_length", 2),
      at("heads_cable", 2),
      at("heads_type", 2),
    ]));
  test("the parts that it names, before those of its device", () => {
    expect(of("short of volts", "cables_loop", O2)).toEqual(at("cables_loop", 2));
    expect(of("applied volts too high", "passives_power", O2)).toEqual(at("passives_power", 2));
    expect(of("applied volts too high", "supplies_other_side", O2)).toEqual(at("supplies_other_side", 2));
    expect(of("applied volts too high", "receivers_bears", O2)).toEqual(at("receivers_bears", 2));
    expect(of("low at longest lengths", "types_longest", O2)).toEqual(at("types_longest", 2));
    expect(of("carrier to noise too low", "dishes_size", O2)).toEqual(at("dishes_size", 2));
    expect(of("carrier to noise not judged", "feeds_noise", O2)).toEqual(at("feeds_noise", 2));
    expect(of("commands not judged", "units_standard", O2)).toEqual(at("units_standard", 2));
  });
  const bare = (more: Row): Changed => ({ rooms: [blocks.rooms[0]!, { ...blocks.rooms[1]!, ...more }] });
  test("where it names none: its type's, and then the usual", () => {
    const typed: Row[] = [{ name: "T1" }, { name: "T2", cable: "C3", receiver: "R2", split: "S2" }];
    const blank = bare({ cable: "", receiver: "", split: "" });
    expect(of("short of volts", "cables_loop", O2, { ...blank, types: typed })).toEqual(at("cables_loop", 3));
    expect(of("applied volts too high", "receivers_bears", O2, { ...blank, types: typed })).toEqual(
      at("receivers_bears", 2),
    );
    expect(of("applied volts too high", "passives_power", O2, { ...blank, types: typed })).toEqual(
      at("passives_power", 2),
    );
    expect(of("short of volts", "cables_loop", O2, blank, { [site.usual_cable.name]: "C2" })).toEqual(
      at("cables_loop", 2),
    );
    // Its device's own part where it has none.
    expect(of("applied volts too high", "passives_power", O2, blank)).toEqual(at("passives_power", 3));
  });
  test("through the outlets that pass on to it to the device behind them", () => {
    const through: Changed = {
      rooms: [
        { ...blocks.rooms[0]!, from: "o3" },
        { ...blocks.rooms[1]!, from: "O1 " },
        { ...blocks.rooms[1]!, outlet: "o3", from: "G2" },
      ],
    };
    expect(of("level too low", "branches_device", O2, through)).toEqual(at("branches_device", 2));
    // A round of outlets has no device: any row will do.
    const round: Changed = {
      rooms: [
        { ...blocks.rooms[0]!, from: "o2" },
        { ...blocks.rooms[1]!, from: "o1", [HEAD_OF_OUTLET]: "" },
      ],
    };
    expect(of("level too low", "branches_device", O2, round)).toEqual(at("branches_device", 1));
  });
});

describe("of other rows", () => {
  test("a device: what feeds it, and the head unit whose level it has", () => {
    const chain: Changed = {
      branches: [...blocks.branches, { ...blocks.branches[1]!, id: "G3", from: "G2" }],
    };
    const seen = at("branches_length", 3);
    expect(of("level too low", "branches_device", seen, chain)).toEqual(at("branches_device", 3));
    expect(of("level too low", "heads_type", seen, chain)).toEqual(at("heads_type", 2));
    expect(of("applied volts too high", "passives_power", seen, chain)).toEqual(at("passives_power", 3));
    // No outlet is meant: the first that is filled.
    expect(of("level too low", "rooms_run", seen, chain)).toEqual(at("rooms_run", 1));
  });
  test("a head unit: its kind, its supply, its dish by its own word or by its feeder", () => {
    const seen = at("heads_length", 2);
    expect(of("applied volts too high", "supplies_other_side", seen)).toEqual(at("supplies_other_side", 2));
    expect(of("carrier to noise not judged", "units_noise", seen)).toEqual(at("units_noise", 2));
    expect(of("short of volts", "cables_loop", seen)).toEqual(at("cables_loop", 3));
    expect(of("carrier to noise too low", "dishes_size", seen)).toEqual(at("dishes_size", 2));
    const own: Changed = { heads: [blocks.heads[0]!, { ...blocks.heads[1]!, dish: "D1" }] };
    expect(of("carrier to noise too low", "dishes_size", seen, own)).toEqual(at("dishes_size", 1));
  });
  test("a feeder: the dish that it comes from, and that dish's feed", () => {
    const seen = at(feeders.to.name, 2);
    expect(of("carrier to noise too low", dishes.size.name, seen)).toEqual(at("dishes_size", 2));
    expect(of("carrier to noise not judged", "feeds_noise", seen)).toEqual(at("feeds_noise", 2));
  });
  test("nothing that is there, or the whole job: the first row that is filled", () => {
    const first = places("level too low", undefined);
    expect(first.every(({ cell }) => cell === at("", 1).cell)).toBe(true);
    expect(places("level too low", { sheet: "elsewhere", cell: "A3" })).toEqual(first);
    expect(places("level too low", { sheet: "rooms_run", cell: "nowhere" })).toEqual(first);
    expect(places("level too low", { sheet: "rooms_run", cell: "B3" })).toEqual(first);
    expect(places("level too low", { sheet: "rooms_run", cell: "A9" })).toEqual(first);
  });
});

describe("a row of its own", () => {
  test("the first free one, and where none is, the thin one below", () => {
    const outlets = (...names: string[]): FindingPlace[] =>
      mendsOf("outlets to price", smallBook({ rooms: names.map((outlet) => ({ outlet })) })).map(
        ({ place }) => place,
      );
    expect(outlets("a", "", "c")).toEqual([at("rooms_outlet", 2)]);
    expect(outlets("a", "b")).toEqual([at("rooms_outlet", 3)]);
    expect(outlets("", "")).toEqual([at("rooms_outlet", 1)]);
  });
});

test("a mend is named with its row, but not the name of a row itself, and a field by its label alone", () => {
  const said = mendsOf(
    "low at longest lengths",
    smallBook(blocks, { [site.run_tolerance.name]: 0.1 }),
    O2,
  ).map(({ what, place }) => [place.sheet, what]);
  expect(said).toContainEqual(["rooms_run", `${rooms.run.words.head} of o2`]);
  expect(said).toContainEqual(["types_longest", `${types.longest.words.head} of T2`]);
  expect(said.at(-1)![0]).toBe(site.run_tolerance.name);
  expect(said.at(-1)![1]).not.toMatch(/ of /);
  const [own] = mendsOf("outlets named twice", smallBook(blocks), O2);
  expect(own!.what).toBe(rooms.outlet.words.head);
});

test("a check that is put right where it is seen, or is none, has no mend", () => {
  expect(mendsOf("no such check", smallBook(blocks), O2)).toEqual([]);
  expect(mendsOf("level too low", smallBook({}), O2)).toEqual([]);
});

describe("where a person goes", () => {
  const [place, cause, other] = [at("a", 1), at("b", 1), at("c", 1)];
  const mend = (one: FindingPlace) => ({ place: one, what: "", does: "" });
  const finding = { weight: "wrong", message: "", remedy: "", place, cause } as const;
  test.each([
    ["to its own cell where that mends it", [mend(other), mend(place)], place],
    ["to its cause where that does", [mend(other), mend(cause)], cause],
    ["else to the likeliest", [mend(other), mend(at("d", 1))], other],
    ["to its own cell where nothing is known", [], place],
  ])("%s", (_, mends, to) => expect(goesTo({ ...finding, mends })).toEqual(to));
  test("nowhere where it has no place", () => {
    expect(goesTo({ weight: "wrong", message: "", remedy: "" })).toBeUndefined();
    expect(goesTo({ weight: "wrong", message: "", remedy: "", mends: [mend(atField("x"))] })).toEqual(
      atField("x"),
    );
  });
  test("where there is little room, three ways", () => {
    const all = [1, 2, 3, 4].map((row) => mend(at("a", row)));
    expect(likeliest(all)).toEqual(all.slice(0, 3));
  });
});
