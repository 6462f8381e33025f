/**
 * A floor copied with its names counted on, held to cases by somebody who had seen no code
 * (tests/fixtures/roomTypes/README.md).
 */
import { readFileSync } from "node:fs";
import { copyFloor, type FloorRow } from "../../src/workbooks/floors/copyFloor";

interface Case {
  readonly id: string;
  readonly why: string;
  readonly kind: string;
  readonly from: string | number | null;
  readonly to: string | number | readonly (string | number)[];
  readonly rooms: readonly Readonly<Record<string, string | number | null>>[];
  readonly devices?: readonly Readonly<Record<string, string | null>>[];
  readonly heads?: readonly Readonly<Record<string, string>>[];
  readonly expect: {
    readonly outlets: Readonly<Record<string, string | readonly string[]>>;
    readonly rooms: Readonly<Record<string, string | readonly string[]>>;
    readonly devices: Readonly<Record<string, string | readonly string[]>>;
    readonly from: Readonly<Record<string, string>>;
    readonly floor: string | readonly string[] | null;
  };
  readonly asks: readonly string[];
  readonly mayAsk: boolean;
}

const cases = ["floors", "moreFloors"].flatMap((file) =>
  (JSON.parse(readFileSync(`${__dirname}/../fixtures/roomTypes/${file}.json`, "utf8")) as Case[]).filter(
    ({ kind }) => kind === "copy",
  ),
);

const filled = (row: Readonly<Record<string, string | number | null | undefined>>): FloorRow =>
  Object.fromEntries(
    Object.entries(row).filter((one): one is [string, string | number] => one[1] !== null && one[1] !== ""),
  ) as FloorRow;
const list = <T>(one: T | readonly T[]): readonly T[] => (Array.isArray(one) ? one : [one as T]);

function differencesOf(one: Case): string[] {
  const to = list(one.to).map(String);
  const copy = copyFloor(
    {
      rooms: one.rooms.map(filled),
      devices: (one.devices ?? []).map(({ device, part, ...row }) =>
        filled({ id: device, device: part, ...row }),
      ),
      heads: (one.heads ?? []).map((head) => head["head unit"]!),
    },
    String(one.from ?? ""),
    to,
  );
  const said = [...copy.notes, ...copy.troubles].join(" ").toLowerCase();
  const asked = one.asks
    .filter((word) => !said.includes(String(word).toLowerCase()))
    .map((word) => `does not say ${word}`);
  const isHeldBack = copy.rooms.length === 0 && copy.troubles.length > 0;
  if (isHeldBack && (one.mayAsk || one.expect.floor === null)) return asked;
  const found: string[] = [...asked];
  const differs = (what: string, expected: unknown, got: unknown): void => {
    // A name is the same in capitals.
    if (String(expected ?? "").toLowerCase() !== String(got ?? "").toLowerCase())
      found.push(`${what}: ${String(expected)} expected, ${String(got)} got`);
  };
  const perFloor = copy.rooms.length / Math.max(1, to.length);
  const own = one.rooms.filter(
    ({ floor }) => String(floor ?? "").toLowerCase() === String(one.from ?? "").toLowerCase(),
  );
  to.forEach((_, floor) => {
    own.forEach((row, at) => {
      const got = copy.rooms[floor * perFloor + at];
      const [outlet, room] = [String(row.outlet), String(row.room ?? "")];
      const expected = one.expect.outlets[outlet];
      if (expected === undefined) {
        // A name that was made up is right where it is said.
        if (got && !said.includes(String(got.outlet).toLowerCase()))
          found.push(`${outlet} copied unsaid as ${got.outlet}`);
      } else differs(outlet, list(expected)[floor], got?.outlet);
      const inRoom = one.expect.rooms[room];
      if (inRoom !== undefined) differs(`room ${room}`, list(inRoom)[floor], got?.room);
      if (one.expect.floor !== null) differs(`floor of ${outlet}`, list(one.expect.floor)[floor], got?.floor);
    });
  });
  for (const [old, now] of Object.entries(one.expect.devices))
    list(now).forEach((name) => {
      if (!copy.devices.some(({ id }) => String(id) === name)) found.push(`no device ${name} of ${old}`);
    });
  const wanted = new Set(Object.values(one.expect.devices).flatMap((now) => list(now)));
  for (const { id } of copy.devices)
    if (!wanted.has(String(id)) && !said.includes(String(id).toLowerCase()))
      found.push(`device ${id} not expected`);
  for (const row of [...copy.rooms, ...copy.devices]) {
    const name = String(row.outlet ?? row.id);
    const from = one.expect.from[name];
    if (from !== undefined) differs(`what feeds ${name}`, from, row.from);
  }
  return found;
}

test.each(cases.map((one) => [one.id, one] as const))("%s", (_, one) => {
  expect(differencesOf(one)).toEqual([]);
});

test("a number by which the devices of one floor are told apart is not the floor's", () => {
  const rooms = [
    { floor: "first", room: "room 5", outlet: "F-01", from: "U1" },
    { floor: "first", room: "room 6", outlet: "F-02", from: "U2" },
  ];
  const devices = [
    { id: "U1", from: "H2" },
    { id: "U2", from: "H2" },
  ];
  const copy = copyFloor({ rooms, devices, heads: ["H2"] }, "first", ["second"]);
  expect(copy.troubles).toEqual([]);
  expect(copy.renamed.map(({ now }) => now)).toEqual([
    "U1 second",
    "U2 second",
    "F-01 second",
    "F-02 second",
  ]);
  expect(copy.notes.join(" ")).toContain("F-01 does not hold its floor: the copy is called F-01 second");
});

test("what is measured and what is installed stays where it is", () => {
  const rooms = [
    {
      floor: "2",
      outlet: "2-01",
      from: "S2",
      port: 3,
      kept: "9 10",
      built_low: 61,
      type: "double",
      note: "key",
    },
  ];
  const devices = [{ id: "S2", from: "T1", port: 2 }];
  const copy = copyFloor({ rooms, devices, heads: [] }, "2", ["3"]);
  expect(copy.rooms).toEqual([
    { floor: "3", outlet: "3-01", from: "S3", port: 3, type: "double", note: "key" },
  ]);
  // The port of what feeds both floors is taken.
  expect(copy.devices).toEqual([{ id: "S3", from: "T1" }]);
});
