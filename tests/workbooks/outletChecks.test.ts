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
  const SLOPE = /lowest and the highest frequency lie more than 15 dB apart/;
  const SPREAD = /^Largest level difference between outlets/;
  /** By the reference program: low end less high end, the greater of cold and hot. */
  const slopes = (inputs: JobInputs): Map<string, number> =>
    new Map(
      [...referencePrice(inputs as unknown as Job).levels].map(([outlet, [a, b, c, d]]) => [
        outlet,
        Math.max(Math.abs(a! - c!), Math.abs(b! - d!)),
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
    expect(saying(book, "rooms_slope_check", "steep")).toEqual(["A-05"]);
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
      blocks.heads = blocks.heads!.slice(2).map((row) => ({ ...row, at: "A-01" }));
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
  const DEAD = /blocks power: dead/;
  const ONE = /passes power at one port while several are used/;
  const powered = (device: string, power: string): JobInputs =>
    changed(
      ({ passives }) =>
        void Object.assign(
          passives!.find(({ name }) => name === device)!,
          { power },
        ),
    );

  /** Walked from each outlet up to its head unit, without the product. */
  function behind(
    { blocks }: JobInputs,
    bad: (branch: Rows[string][number], feeds: number) => boolean,
  ): unknown[] {
    const { rooms, branches } = blocks as Rows;
    const feeds = (id: unknown): number => [...rooms!, ...branches!].filter(({ from }) => from === id).length;
    return rooms!
      .filter((room) => {
        for (let at = room.from; ;) {
          const branch = branches!.find(({ id }) => id === at);
          if (!branch) return false;
          if (bad(branch, feeds(branch.id))) return true;
          at = branch.from!;
        }
      })
      .map(({ outlet }) => outlet);
  }

  test.each(["2-way splitter", "4-way splitter", "6-way splitter", "tap 12 dB"])(
    "%s that passes none: each outlet behind it is dead, and no other",
    (device) => {
      const job = powered(device, "no");
      const dead = behind(job, (branch) => branch.device === device);
      expect(dead.length).toBeGreaterThan(0);
      const book = computed(job);
      expect(saying(book, "rooms_commands", "dead")).toEqual(dead);
      expect(look(book, DEAD)).toMatchObject({
        found: dead.length,
        result: "look",
        where: `Rooms, commands: ${String(dead[0])}`,
      });
      expect(summarise(book).verdict).not.toBe("all checks pass");
    },
  );

  test("all splitters without power: all outlets are dead", () => {
    const job = changed(({ passives }) => passives!.forEach((row) => (row.power = "no")));
    expect(look(computed(job), DEAD)).toMatchObject({ found: 24, result: "look" });
  });

  test("one port that passes, of several used: all behind it are doubtful, for the sheet does not know which", () => {
    const job = powered("4-way splitter", "one port");
    const doubtful = behind(job, (branch, feeds) => branch.device === "4-way splitter" && feeds > 1);
    const book = computed(job);
    expect(saying(book, "rooms_commands", "doubtful")).toEqual(doubtful);
    expect(look(book, ONE)).toMatchObject({ found: doubtful.length, result: "look" });
  });

  test("with power at all ports none is named", () => {
    const book = computed(guestHouse);
    for (const what of [DEAD, ONE]) expect(look(book, what)).toMatchObject({ found: 0, result: "ok" });
  });
});
