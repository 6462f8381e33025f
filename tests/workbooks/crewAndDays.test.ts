/**
 * Crew, days on site, site costs and difficulty of places in the multi-room estimate, by hand. Doubts: of independent
 * errors the variances add, of errors that all lines share the deviations add (the variance of a sum, any textbook of
 * probability); three points give the mean (low + 4 likely + high) / 6 and the deviation (high - low) / 6 (PERT, from
 * memory). At 60 an hour a minute costs 1.
 */
import { recalculate } from "../../src/hosts/headless/recalculate";
import { isBookError, type Book } from "../../src/workbooks/book";
import type { JobInputs } from "../../src/workbooks/definition";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { namedColumn, namedValue } from "../../src/workbooks/named";
import { drawOn } from "../../src/standards/drawOn";
import { differences } from "../../src/standards/differences";
import { standardsExample } from "../../src/workbooks/standards/demonstration";

type Row = Record<string, number | string>;

/** Four outlets on two floors, no routes; what is given replaces what the job has. */
function computed(fields: Row, blocks: Record<string, Row[]>): Book {
  const others = { ...(guestHouse.fields as Row) };
  delete others.site_usual_route;
  const outlet = (floor: string, room: string): Row => ({
    floor,
    room,
    outlet: `${floor}-${room}`,
    from: "S",
    run: 10,
  });
  return recalculate(
    layOut(multiRoom, {
      fields: {
        ...others,
        labour_rate: 60,
        site_contingency: 0,
        site_overhead: 0,
        site_margin: 0,
        ...fields,
      },
      blocks: {
        ...(guestHouse.blocks as Record<string, Row[]>),
        ...{ dishes: [], feeders: [], bonds: [], kinds: [], options: [], provisional: [], routes: [] },
        heads: [{ id: "H", type: "head unit, 8 bands" }],
        branches: [{ id: "S", from: "H", device: "6-way splitter" }],
        rooms: [outlet("1", "a"), outlet("1", "b"), outlet("2", "a"), outlet("2", "c")],
        ...blocks,
      },
    } as JobInputs),
  );
}
const value = (book: Book, name: string): number => Number(namedValue(book, name));
const column = (book: Book, name: string): unknown[] =>
  namedColumn(book, name).filter((one) => one !== undefined && one !== "");
/** So many minutes of work, with the doubt of one outlet's. */
const line = (name: string, minutes: number, more: Row = {}): Row => ({
  name,
  minutes: minutes / 4,
  per_outlet: 1,
  difficulty: 1,
  ...more,
});

describe("doubts", () => {
  const four = (more: Row): Row[] => ["A", "B", "C", "D"].map((name) => line(name, 100, more));

  test.each([
    // 4 lines of 100 with a deviation of 10: √(4 · 10²) = 20.
    ["of each line its own", {}, { low: 17.5, high: 32.5 }, 400, 20],
    // 30 % to either side is a deviation of 10 %: 4 · 10 = 40.
    ["common to all", { crew_speed: 0.3 }, {}, 400, 40],
    // √(20² + 40²)
    ["of both kinds", { crew_speed: 0.3 }, { low: 17.5, high: 32.5 }, 400, Math.sqrt(2000)],
    // Two causes that know nothing of each other: √(40² + 30²) = 50.
    ["of two common causes", { crew_speed: 0.3, crew_difficulty: 0.225 }, {}, 400, 50],
    // (10 + 4 · 25 + 70) / 6 = 30 for each of 4 outlets; (70 - 10) / 6 · 4 = 40 a line, √4 · 40 = 80.
    ["of a long tail", {}, { low: 10, high: 70 }, 480, 80],
  ] as const)("%s", (_, fields, more, cost, deviation) => {
    const book = computed(fields, { labour: four(more) });
    expect(value(book, "work_together")).toBeCloseTo(cost, 9);
    expect(value(book, "work_deviation")).toBeCloseTo(deviation, 9);
  });

  test("the doubt of difficulty is of what difficulty stretches", () => {
    const labour = [
      line("at outlets", 300),
      { name: "the job", minutes: 60, fixed: 1, difficulty: 1 },
      { name: "floors", minutes: 15, per_floor: 2, difficulty: 1 },
      { name: "mornings", minutes: 20, per_day: 1, difficulty: 1 },
      { name: "floors, as pieces", minutes: 10, piece: "floor", difficulty: 1 },
    ];
    const book = computed({ crew_days: 2, crew_speed: 0.3, crew_difficulty: 0.3 }, { labour });
    // 300 + 60 + 2 · 2 · 15 + 2 · 20 + 2 · 10 = 480, of which 300 are stretched.
    expect(value(book, "work_together")).toBeCloseTo(480, 9);
    expect(value(book, "work_speed_deviation")).toBeCloseTo(48, 9);
    expect(value(book, "work_difficulty_deviation")).toBeCloseTo(30, 9);
  });

  test("the range of the total has them, site costs as what is taxed with materials", () => {
    const given = {
      labour: [line("all", 400, { low: 55, high: 145 })],
      sites: [{ name: "hire", cost: 100, low: 70, high: 130 }],
    };
    const range = (fields: Row): number => {
      const book = computed({ site_run_tolerance: 0, site_tax: 0.5, crew_speed: 0.3, ...fields }, given);
      return (value(book, "price_high") - value(book, "price_low")) / 4;
    };
    // Labour: own 4 · 15 = 60, common 0.1 · 400 = 40; hire 10. Half as much again where the tax is.
    expect(range({ site_tax_on: "materials and labour" })).toBeCloseTo(1.5 * Math.sqrt(5300), 6);
    expect(range({ site_tax_on: "labour only" })).toBeCloseTo(Math.sqrt(2.25 * 5200 + 100), 6);
    expect(range({ site_tax_on: "materials only" })).toBeCloseTo(Math.sqrt(5200 + 2.25 * 100), 6);
  });
});

describe("days on site", () => {
  const hours = (fields: Row, minutes: number, each = 0): Book =>
    computed(fields, {
      labour: [
        line("all", minutes),
        ...(each > 0 ? [{ name: "mornings", minutes: each, per_day: 1, difficulty: 1 }] : []),
      ],
    });

  test.each([
    ["24 hours are three days", 24 * 60, 0, 3],
    ["24.0000001 are as well: so much is noise", 24.0000001 * 60, 0, 3],
    ["24.08 are four", 24.08 * 60, 0, 4],
    // 16 h and half an hour each day: 17 h in two days of 8 do not fit, 17.5 in three do.
    ["a day is shorter by its own work", 16 * 60, 30, 3],
    // 15 h and half an hour each day: 16 in two days.
    ["and may be just long enough", 15 * 60, 30, 2],
    ["no work, no days", 0, 30, 0],
  ])("%s", (_, minutes, each, days) => {
    expect(value(hours({ crew_hours: 8 }, minutes, each), "work_days")).toBe(days);
  });

  test("typed days stand, and a check says what is needed", () => {
    const book = hours({ crew_hours: 8, crew_days: 2 }, 24 * 60);
    expect([value(book, "work_days"), value(book, "work_days_needed")]).toEqual([2, 3]);
  });

  test("where nothing is left of a day there is no price, and other work keeps its own", () => {
    const book = hours({ crew_hours: 8 }, 400, 480);
    expect(isBookError(namedValue(book, "work_days"))).toBe(true);
    expect(column(book, "work_sum")[0]).toBeCloseTo(400, 9);
    expect(namedValue(book, "quote_total")).toBe("open");
  });

  test("hours of the people", () => {
    expect(value(hours({ crew_hours: 8, crew_size: 3 }, 600), "work_person_hours")).toBeCloseTo(30, 9);
  });
});

test("site costs by what they are paid for", () => {
  const book = computed(
    { crew_hours: 5, crew_size: 2, site_tax: 0.2, site_tax_on: "labour only" },
    {
      // 10 hours are two days of five.
      labour: [line("all", 600)],
      sites: [
        { name: "permit", kind: "permit", cost: 75 },
        { name: "van, 40 km", quantity: 40, per: "day on site", cost: 0.5 },
        { name: "meals", per: "person and day", cost: 12 },
        { name: "lift to a floor", per: "floor", cost: 9 },
        { name: "towers", quantity: 3, days: 5, cost: 20 },
        { name: "attendance", per: "day on site", days: 1, cost: 180, low: 120, high: 300 },
      ],
    },
  );
  expect(column(book, "sites_priced_times")).toEqual([1, 80, 4, 2, 15, 1]);
  // (120 + 4 · 180 + 300) / 6 = 190
  expect(column(book, "sites_priced_sum")).toEqual([75, 40, 48, 18, 300, 190]);
  expect(namedValue(book, "quote_sites")).toBe(671);
  // Tax on labour leaves them out: 20 % of 600.
  expect(namedValue(book, "quote_tax")).toBe(120);
});

describe("difficulty of places", () => {
  const harder = (places: Row[], labour: Row[], more: Record<string, Row[]> = {}): Book =>
    computed({}, { places, labour, ...more });

  test("a room before the room anywhere, before the floor", () => {
    const places: Row[] = [
      { floor: "1", factor: 2 },
      { room: "a", factor: 3 },
      { floor: "2", room: "a", factor: 5 },
    ];
    expect(column(harder(places, [line("all", 60)]), "rooms_difficulty")).toEqual([3, 2, 5, 1]);
  });

  test("it stretches work at outlets, and nothing else", () => {
    const labour = [
      line("outlets", 40),
      ...["wall plate", "outlet to measure", "connector", "splitter", "floor"].map((piece) => ({
        name: piece,
        minutes: 10,
        piece,
        difficulty: 1,
      })),
      { name: "devices", minutes: 10, per_branch: 1, per_head: 1, difficulty: 1 },
      { name: "the job", minutes: 10, fixed: 1, difficulty: 1 },
    ];
    // Two of four outlets at 1.5: one outlet's work more. Each of the four runs has two connectors and, coming off the
    // dish, a grounding block with two more: 16, and of the runs' own two for the harder ones.
    const book = harder([{ floor: "2", factor: 1.5 }], labour);
    expect(column(book, "work_places")).toEqual([1, 1, 1, 2, 0, 0, 0, 0]);
    expect(column(book, "work_sum")).toEqual([50, 50, 50, 180, 10, 20, 20, 10]);
  });

  test("it stretches the run by its route, beside the difficulty of the route", () => {
    const routes: Row[] = [
      { name: "clips", minutes: 1, difficulty: 2 },
      { name: "void", minutes: 1 },
    ];
    const rooms: Row[] = [
      { floor: "1", room: "a", outlet: "1", from: "S", run: 10, route: "clips" },
      { floor: "2", room: "a", outlet: "2", from: "S", run: 20, route: "CLIPS" },
      { floor: "2", room: "b", outlet: "3", from: "S", run: 30 },
    ];
    const book = computed(
      { site_usual_route: "void" },
      { places: [{ floor: "2", factor: 1.5 }], labour: [], routes, rooms },
    );
    // 10 + 20 · 1.5 = 40 at 2 minutes; 30 · 1.5 = 45 at 1.
    expect(column(book, "route_work_sum")).toEqual([80, 45]);
  });

  test("extra minutes of a type go by the place of each of its outlets", () => {
    const types = [{ name: "suite", minutes: 10 }];
    const rooms = ["1", "1", "2"].map((floor, at) => ({
      floor,
      outlet: `O${at}`,
      from: "S",
      run: 5,
      type: "suite",
    }));
    const book = harder([{ floor: "2", factor: 2.5 }], [line("all", 60)], { types, rooms });
    // 10 + 10 + 25
    expect(column(book, "type_work_sum")).toEqual([45]);
  });
});

describe("the firm's standards", () => {
  const standards = (cost: number) => ({
    firm: "Firm",
    edition: 1,
    date: 46000,
    inputs: {
      fields: {
        ...standardsExample.fields,
        crew_size: 3,
        crew_hours: 7.5,
        crew_speed: 0.2,
        crew_difficulty: 0.1,
      },
      blocks: {
        ...standardsExample.blocks,
        sites: [{ name: "van", kind: "travel", per: "day on site", cost }],
      },
    },
  });
  const job = drawOn(standards(35), {}, 46001);

  test("a new job draws the crew and what being on site costs", () => {
    expect(job.fields).toMatchObject({
      crew_size: 3,
      crew_hours: 7.5,
      crew_speed: 0.2,
      crew_difficulty: 0.1,
    });
    expect(job.blocks?.sites).toEqual([{ name: "van", kind: "travel", per: "day on site", cost: 35 }]);
  });

  test("and is told of a change", () => {
    expect(differences(job, standards(36)).map(({ list, line, from, to }) => [list, line, from, to])).toEqual(
      [["sites", "van", 35, 36]],
    );
  });
});
