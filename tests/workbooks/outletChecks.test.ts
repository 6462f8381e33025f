/** Each outlet's own slope, and whether its receiver can command its head unit over the path, against an independent working. */
import { recalculate } from "../../src/hosts/headless/recalculate";
import type { Book } from "../../src/workbooks/book";
import type { JobInputs } from "../../src/workbooks/definition";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { summarise } from "../../src/workbooks/multiRoom/summarise";
import { namedColumn } from "../../src/workbooks/named";
import { referencePrice, type Job } from "../support/referencePrice";

type Rows = Record<string, Record<string, number | string>[]>;
const changed = (change: (blocks: Rows) => void): JobInputs => {
  const copy = JSON.parse(JSON.stringify(guestHouse)) as JobInputs & { blocks: Rows };
  change(copy.blocks);
  return copy;
};
const computed = (inputs: JobInputs): Book => recalculate(layOut(multiRoom, inputs));
const look = (book: Book, what: RegExp) => summarise(book).checks.find((check) => what.test(check.what))!;
/** Outlets in whose row a column says a word. */
const saying = (book: Book, column: string, word: string): unknown[] =>
  namedColumn(book, "rooms_outlet").filter((_, row) => namedColumn(book, column)[row] === word);

describe("15 dB is the limit between channels at one outlet (EN 60728-1, from memory)", () => {
  const SLOPE = /lie more than 15 dB apart over the range/;
  const SPREAD = /^Largest level difference between outlets/;
  /** By the reference program: low end less high end, hot, where a cable's slope is the greater. */
  const slopes = (inputs: JobInputs): Map<string, number> =>
    new Map(
      [...referencePrice(inputs as unknown as Job).levels].map(([outlet, [, low, , high]]) => [
        outlet,
        Math.abs(low! - high!),
      ]),
    );
  const steep = (inputs: JobInputs): string[] =>
    [...slopes(inputs)].flatMap(([outlet, slope]) => (slope > 15 ? [outlet] : []));

  test("in the demonstration outlets lie more than 15 dB from one another and none from itself: a note", () => {
    const levels = [...referencePrice(guestHouse as unknown as Job).levels.values()].map((row) => row[3]!);
    expect(Math.max(...levels) - Math.min(...levels)).toBeGreaterThan(15);
    expect(steep(guestHouse)).toEqual([]);
    const book = computed(guestHouse);
    expect(look(book, SPREAD)).toMatchObject({ result: "note" });
    expect(look(book, SLOPE)).toMatchObject({ found: 0, result: "ok" });
  });

  test("an outlet on a long thin cable is named for its own slope, alone", () => {
    const job = changed(({ rooms }) => Object.assign(rooms![21]!, { cable: "thin drop", run: 50 }));
    expect(steep(job)).toEqual(["A-05"]);
    const book = computed(job);
    expect(look(book, SLOPE)).toMatchObject({
      found: 1,
      result: "look",
      where: "Rooms, slope verdict: A-05",
    });
    expect(saying(book, "rooms_check_slope", "steep")).toEqual(["A-05"]);
  });

  test.each([-0.3, 0.3])("on either side of 15 dB, %d m from it", (past) => {
    // Slope is straight in the length, so the length of 15 dB follows from two of the reference's slopes.
    const at = (run: number): JobInputs =>
      changed(({ rooms }) => Object.assign(rooms![21]!, { cable: "thin drop", run }));
    const [near, far] = [20, 40].map((run) => slopes(at(run)).get("A-05")!);
    const limit = 20 + ((15 - near!) * 20) / (far! - near!);
    expect(look(computed(at(limit + past)), SLOPE)).toMatchObject({ found: past > 0 ? 1 : 0 });
  });

  test("a job whose outlets are alike and steep has no spread, and yet is named", () => {
    const job = changed((blocks) => {
      blocks.rooms = blocks
        .rooms!.slice(17, 20)
        .map((row) => ({ ...row, cable: "thin drop", run: 60, from: "A2" }));
      blocks.heads = blocks.heads!.slice(2);
      blocks.dishes = blocks.dishes!.slice(1);
      blocks.feeders = [];
      blocks.branches = blocks.branches!.filter(({ id }) => /^A/.test(String(id)));
      // Long enough that nobody has to ask how the runs are cut.
      for (const cable of blocks.cables!) cable.reel = 300;
    });
    const all = ["A-01", "A-02", "A-03"];
    expect(steep(job)).toEqual(all);
    const book = computed(job);
    expect(look(book, SPREAD)).toMatchObject({ result: "ok" });
    expect(look(book, SLOPE)).toMatchObject({ found: 3, result: "look" });
  });
});

describe("an outlet behind a port without power cannot command its head unit (EN 50494, EN 50607)", () => {
  const DEAD = /^Outlets whose receiver cannot command its head unit/;
  const powered = (device: string, power: string): JobInputs =>
    changed(
      ({ passives }) =>
        void Object.assign(
          passives!.find(({ name }) => name === device)!,
          { power },
        ),
    );

  type Row = Rows[string][number];
  /** Outlets with a receiver whose way up comes by such a port, walked from each without the product. */
  function behind({ blocks }: JobInputs, bad: (branch: Row, port: number) => boolean): unknown[] {
    const { rooms, branches } = blocks as Rows;
    const nameOf = (row: Row): unknown => row.outlet ?? row.id;
    // Ports in the order of the rows, devices before outlets; a tap's through port is named.
    const portOf = (row: Row): number =>
      1 +
      [...branches!, ...rooms!].filter((one) => one.from === row.from && one.port === undefined).indexOf(row);
    return rooms!
      .filter(({ receiver }) => receiver !== undefined)
      .filter((room) => {
        for (let row = room; ;) {
          const branch = branches!.find(({ id }) => id === row.from);
          if (branch && bad(branch, portOf(row))) return true;
          const above = branch ?? rooms!.find(({ outlet }) => outlet === row.from);
          if (!above) return false;
          row = above;
        }
      })
      .map(nameOf);
  }

  test.each(["2-way splitter", "4-way splitter", "6-way splitter", "tap 12 dB"])(
    "%s that passes none: each receiver behind it is dead, and no other",
    (device) => {
      const job = powered(device, "no");
      const dead = behind(job, (branch) => branch.device === device);
      expect(dead.length).toBeGreaterThan(0);
      const book = computed(job);
      expect(saying(book, "rooms_check_commands", "dead")).toEqual(dead);
      expect(look(book, DEAD)).toMatchObject({
        found: dead.length,
        result: "look",
        where: `Rooms, can command: ${String(dead[0])}`,
      });
      expect(summarise(book).verdict).not.toBe("all checks pass");
    },
  );

  test("all devices without power: all receivers are dead, and the sentence names the device", () => {
    const job = changed(({ passives }) => passives!.forEach((row) => (row.power = "no")));
    const book = computed(job);
    // 24 outlets, one of them spare.
    expect(look(book, DEAD)).toMatchObject({ found: 23, result: "look" });
    const row = namedColumn(book, "rooms_outlet").indexOf("G-01");
    expect(namedColumn(book, "rooms_check_trouble")[row]).toMatch(/"G-01".*"H1".*"G1"/);
  });

  test("one port that passes: a receiver on the first is heard, those on the others are not", () => {
    const job = powered("4-way splitter", "one port");
    const dead = behind(job, (branch, port) => branch.device === "4-way splitter" && port > 1);
    const book = computed(job);
    expect(saying(book, "rooms_check_commands", "dead")).toEqual(dead);
    expect(saying(book, "rooms_check_commands", "ok")).toEqual(
      expect.arrayContaining(["G-01", "G-05", "F-06", "F-07"]),
    );
    expect(look(book, DEAD)).toMatchObject({ found: dead.length, result: "look" });
  });

  test("with power towards the head unit, or at all ports, none is named", () => {
    for (const job of [
      guestHouse,
      changed(({ passives }) => passives!.forEach((row) => (row.power = "all ports"))),
    ])
      expect(look(computed(job), DEAD)).toMatchObject({ found: 0, result: "ok" });
  });
});

describe("what stands at a receiver's connector, and what is connected to it", () => {
  const annexe = guestHouse
    .blocks!.rooms!.map(({ outlet }) => String(outlet))
    .filter((one) => /^A/.test(one));
  /** The annexe's head unit fed by an inserter whose other side is open, or shut, to the receivers. */
  const fedBy = (other: string): Book =>
    computed(
      changed(({ heads, supplies, passives }) => {
        Object.assign(heads![2]!, {
          type: "head unit, higher voltage",
          supply: "supply for the higher voltage",
        });
        for (const row of supplies!) if (row.volts === 24) row.other_side = other;
        for (const row of passives!) row.power = "all ports";
      }),
    );
  const APPLIED = /^Receivers at whose connector more volts stand than they bear/;

  test("24 V from an inserter that is open to them: each is named, for it bears 19 V (common practice)", () => {
    const book = fedBy("all ports");
    expect(saying(book, "rooms_check_applied", "high")).toEqual(annexe);
    expect(look(book, APPLIED)).toMatchObject({
      found: annexe.length,
      result: "look",
      where: "Rooms, applied volts verdict: A-01",
    });
  });

  test("none from one that is shut", () => {
    expect(look(fedBy("no"), APPLIED)).toMatchObject({ found: 0, result: "ok" });
  });

  test("two receivers on a plain outlet: it is named until something splits them", () => {
    const CONNECTORS = /^Outlets with more receivers than connectors/;
    const two = (split: string) =>
      computed(changed(({ rooms }) => void Object.assign(rooms![4]!, { quantity: 2, split })));
    expect(look(two(""), CONNECTORS)).toMatchObject({
      found: 1,
      result: "look",
      where: "Rooms, split by: G-05",
    });
    expect(look(two("2-way splitter"), CONNECTORS)).toMatchObject({ found: 0, result: "ok" });
  });

  test("a loop-through outlet at the end of its line is open until something closes it", () => {
    const OPEN = /^Through ports that nothing closes/;
    const last = (closes: string): Book => {
      const job = changed((blocks) => {
        blocks.rooms = blocks.rooms!.filter(({ outlet }) => outlet !== "F-07");
      });
      return computed({ ...job, fields: { ...job.fields, site_closes: closes } });
    };
    expect(look(last(""), OPEN)).toMatchObject({ found: 1, result: "look" });
    expect(look(last("end resistor"), OPEN)).toMatchObject({ found: 0, result: "ok" });
  });
});
