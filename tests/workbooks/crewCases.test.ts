/**
 * Crews, days, site costs and doubts of somebody who had not seen the code, worked by hand (tests/fixtures/crew): typed
 * into the sheets by their words, and computed. Travel in minutes and in km, hire with its delivery, attendance and
 * permits become lines of Travel, access and permits; set-up a day and minutes per floor become labour units.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import { recalculate } from "../../src/hosts/headless/recalculate";
import type { Book } from "../../src/workbooks/book";
import { checkLines } from "../../src/workbooks/checkLines";
import type { JobInputs } from "../../src/workbooks/definition";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { estimate } from "../../src/workbooks/multiRoom/names";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { namedColumn, namedValue } from "../../src/workbooks/named";

type Row = Record<string, number | string>;
interface Line {
  readonly name: string;
  readonly times: number;
  readonly minutes: number;
  readonly shortest?: number;
  readonly longest?: number;
  readonly difficulty?: number;
}
interface Given {
  readonly work?: readonly Line[];
  readonly routes?: readonly (Partial<Line> & {
    readonly name: string;
    readonly metres?: number;
    readonly "minutes per metre"?: number;
  })[];
  readonly places?: readonly {
    readonly floor?: string;
    readonly room?: string;
    readonly difficulty: number;
  }[];
  readonly runs?: readonly {
    readonly outlet: string;
    readonly floor: string;
    readonly room?: string;
    readonly metres: number;
    readonly route: string;
    readonly work?: readonly string[];
  }[];
  readonly floors?: number;
  readonly access?: readonly {
    readonly name: string;
    readonly days: number | "whole job";
    readonly "per day": number;
    readonly delivery?: number;
  }[];
  readonly attendance?: readonly {
    readonly name: string;
    readonly hours?: number;
    readonly days?: number;
    readonly rate: number;
  }[];
  readonly permits?: readonly { readonly name: string; readonly sum: number }[];
  readonly "common doubts"?: readonly {
    readonly name: "crew speed" | "difficulty";
    readonly share: number;
    readonly means?: string;
  }[];
  readonly [figure: string]: unknown;
}
interface Case {
  readonly id: string;
  readonly why: string;
  readonly kind: "crew" | "doubt" | "bad" | "money";
  readonly given: Given;
  readonly expect: Readonly<Record<string, unknown>>;
  readonly asks: readonly string[];
}
const CASES = (
  JSON.parse(readFileSync(path.join(__dirname, "../fixtures/crew/outsiderCases.json"), "utf8")) as Case[]
).filter(({ kind, given }) => kind !== "money" && given["crew size"] !== undefined);

const blankless = (row: Readonly<Record<string, unknown>>): Row =>
  Object.fromEntries(Object.entries(row).filter(([, value]) => value !== undefined)) as Row;

/** His words as inputs of the sheets. */
function inputsOf(given: Given): JobInputs {
  const { work = [], routes = [], places = [], runs = [], floors = 1 } = given;
  const figure = (name: string): number | undefined => given[name] as number | undefined;
  const outlets =
    runs.length > 0
      ? runs.map(({ outlet, floor, room, metres, route }) => ({ outlet, floor, room, run: metres, route }))
      : Array.from({ length: floors }, (_, at) => ({ outlet: `O${at}`, floor: `${at + 1}`, run: 1 }));
  // Metres without an outlet run to devices, one behind another.
  const long = routes.filter(({ metres }) => metres !== undefined);
  const feeds = ["H1", ...long.map((_, at) => `R${at}`)];
  const lines = work.map((line) => ({
    name: line.name,
    minutes: line.minutes,
    low: line.shortest,
    high: line.longest,
    difficulty: line.difficulty ?? 1,
    ...(runs.length === 0
      ? { per_outlet: line.times / outlets.length }
      : runs.some((run) => run.work?.includes(line.name))
        ? { per_outlet: line.times / runs.length }
        : { fixed: line.times }),
  }));
  const each = (name: string, minutes: number | undefined, of: Row): Row[] =>
    minutes === undefined ? [] : [{ name, minutes, difficulty: 1, ...of }];
  const travel = figure("travel minutes a day");
  const km = figure("travel km a day");
  const sites = [
    ...(travel === undefined
      ? []
      : [{ name: "travel, time", per: "day on site", cost: (travel / 60) * figure("rate per hour")! }]),
    ...(km === undefined
      ? []
      : [{ name: "travel, km", per: "day on site", quantity: km, cost: figure("per km") }]),
    ...(given.access ?? []).flatMap(({ name, days, "per day": cost, delivery }) => [
      { name, kind: "access hire", cost, ...(days === "whole job" ? { per: "day on site" } : { days }) },
      ...(delivery === undefined ? [] : [{ name: `${name}, delivery`, kind: "access hire", cost: delivery }]),
    ]),
    ...(given.attendance ?? []).map(({ name, hours, days, rate }) => ({
      name,
      kind: "attendance",
      quantity: hours,
      days,
      cost: rate,
    })),
    ...(given.permits ?? []).map(({ name, sum }) => ({ name, kind: "permit", cost: sum })),
  ];
  // Ours is the whole range; who means one deviation types three times as much.
  const share = (of: string): number | undefined => {
    const doubt = given["common doubts"]?.find(({ name }) => name === of);
    return (
      doubt && (doubt.means === "one standard deviation" ? Number((doubt.share * 3).toFixed(9)) : doubt.share)
    );
  };
  const blocks = guestHouse.blocks as Record<string, Row[]>;
  return {
    fields: blankless({
      ...guestHouse.fields,
      // A cable without a route takes no time.
      site_usual_route: undefined,
      labour_rate: figure("rate per hour"),
      crew_size: figure("crew size"),
      crew_hours: figure("hours a day"),
      crew_days: given.days === "counted" ? undefined : given.days,
      crew_speed: share("crew speed"),
      crew_difficulty: share("difficulty"),
    }),
    blocks: {
      ...blocks,
      types: [],
      dishes: [],
      feeders: [],
      bonds: [],
      kinds: [],
      heads: [{ id: "H1", type: "head unit, 8 bands" }],
      branches: [
        ...long.map(({ name, metres }, at) => ({
          id: feeds[at + 1]!,
          from: feeds[at]!,
          device: "2-way splitter",
          length: metres!,
          route: name,
        })),
        { id: "S", from: feeds.at(-1)!, device: "6-way splitter" },
      ],
      rooms: outlets.map((outlet) => blankless({ ...outlet, from: "S" })),
      routes: routes.map((route) =>
        blankless({
          name: route.name,
          minutes: route["minutes per metre"],
          low: route.shortest,
          high: route.longest,
          difficulty: route.difficulty,
        }),
      ),
      labour: [
        ...lines.map(blankless),
        ...each("each floor", figure("per floor minutes"), { per_floor: 1 }),
        ...each("set-up of a day", figure("set-up minutes a day"), { per_day: 1 }),
      ],
      places: places.map(({ floor, room, difficulty }) => blankless({ floor, room, factor: difficulty })),
      sites: sites.map(blankless),
    },
  };
}

/** What the sheets say in his words. */
function figuresOf(book: Book, rate: number): Readonly<Record<string, number>> {
  const value = (name: string): number => {
    const found = namedValue(book, name);
    return typeof found === "number" ? found : NaN;
  };
  const sums = namedColumn(book, "sites_priced_sum");
  const names = namedColumn(book, "sites_priced_name");
  const kinds = namedColumn(book, "sites_kind");
  const of = (is: (name: string, kind: string) => boolean): number =>
    sums.reduce<number>(
      (all, sum, at) => (is(String(names[at] ?? ""), String(kinds[at] ?? "")) ? all + Number(sum) : all),
      0,
    );
  return {
    hours: value("work_total_hours"),
    "person hours": value("work_person_hours"),
    days: value("work_days"),
    "labour cost": value("work_together"),
    "standard deviation": value("work_deviation") / rate,
    "standard deviation of cost": value("work_deviation"),
    "travel cost": of((name) => name.startsWith("travel")),
    "access cost": of((_, kind) => kind === "access hire"),
    "attendance cost": of((_, kind) => kind === "attendance"),
    permits: of((_, kind) => kind === "permit"),
    "crew total": value("work_together") + value("work_sites"),
  };
}

/** What our sheets say where he asks for words, taken from his; a note is advice, a look is counted. */
const SAID: Readonly<Record<string, RegExp>> = {
  // He wants a note. It is counted here: a floor of another name has lost its difficulty, and the price with it.
  "crew-08": /^look: Difficulties of floors and rooms that no outlet goes by: .*: 4$/m,
  "crew-14": /^look: Hours that do not fit into the days typed: .*: 2 typed, 3 needed$/m,
  "crew-22": /^note: Site costs for more days than the crew is on site: .*: scaffold, 4 of 2$/m,
  "crew-26": /^note: Site costs by the day where there are no days on site: .*: travel, time/m,
  "bad-01": /^look: Entries missing or out of bounds: Crew: .*People in the crew$/m,
  "bad-02": /^look: Entries missing or out of bounds: Crew: .*Hours worked a day$/m,
  "bad-03": /^look: Entries missing or out of bounds: Crew: .*Hours worked a day$/m,
  "bad-04": /^look: Entries missing or out of bounds: Parts, labour units: .*Difficulty of plate$/m,
  "bad-05": /^look: Entries missing or out of bounds: Parts, labour units: .*Difficulty of plate$/m,
  "bad-06": /^look: Entries missing or out of bounds: Crew: .*Difficulty of row \d+$/m,
  "bad-07": /^look: Labour whose minutes are not between shortest and longest.*: plate$/m,
  "bad-08": /^look: Labour whose minutes are not between shortest and longest.*: plate$/m,
  "bad-09": /^look: Labour whose .* both given or neither: .*: plate$/m,
  "bad-10": /^look: Labour whose .* both given or neither: .*: plate$/m,
  "bad-11": /^look: Entries missing or out of bounds: Parts, routes: .*Minutes .* of ceiling void$/m,
  "bad-12": /^look: Entries missing or out of bounds: Rooms: .*Route of 1-01$/m,
  "bad-13": /^look: Entries missing or out of bounds: Crew: .*Cost each of travel, km$/m,
  "bad-14": /^look: Days of which their own work leaves nothing for all else/m,
  "bad-15": /^look: Entries missing or out of bounds: Crew: .*Days on site, if not counted$/m,
  "bad-16": /^look: Entries missing or out of bounds: Parts, labour units: .*Minutes each of plate$/m,
  "bad-17": /^look: Entries missing or out of bounds: Crew: .*Crew speed ±$/m,
  "bad-18": /^look: Entries missing or out of bounds: Crew: .*Crew rate$/m,
  "bad-30": /^look: Entries missing or out of bounds: Crew: .*Hours worked a day$/m,
};

/** Figures of his that are otherwise here, with the reason. */
const OTHERWISE: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  // ± is the shortest and the longest, as of minutes, and its note says so: one of the three readings that he names.
  "doubt-14": { "standard deviation": 0.5 },
};
const CENT = 0.005;
const MILLIONTH = 1.5e-6;
const allowed = (what: string): number => (/cost|permits|total/.test(what) ? CENT : MILLIONTH);

test.each(CASES.map((one) => [one.id, one.why, one] as const))(
  "%s: %s",
  (id, _, { given, expect: his, asks }) => {
    const book = recalculate(layOut(multiRoom, inputsOf(given)));
    const figures = figuresOf(book, Number(given["rate per hour"]));
    const wanted = { ...his, ...OTHERWISE[id] };
    const off = Object.entries(wanted).filter(
      ([what, value]) =>
        what in figures && typeof value === "number" && !(Math.abs(figures[what]! - value) <= allowed(what)),
    );
    expect(off.map(([what, value]) => `${what}: ${String(value)}, not ${figures[what]}`)).toEqual([]);
    const lines = checkLines(book).filter(({ result }) => result !== "ok");
    const said = lines.map(({ what, where, result }) => `${result}: ${what}: ${where}`).join("\n");
    if (his.sentence !== undefined) expect(SAID[id]).toBeDefined();
    if (SAID[id]) expect(said).toMatch(SAID[id]);
    else expect(said).not.toMatch(OURS);
    // A quote that could not go out says so; one of a crew that nobody objects to is no draft for that.
    if (his.refused === true && !/shortest|longest/.test(asks.join()))
      expect(namedValue(book, "quote_draft")).not.toBe("");
  },
);

/** Of checks those that look at the crew, its work and its days; laying a cable of these cases may take no time. */
const OURS =
  /out of bounds: (Crew|Rooms|Parts, (labour|routes))|: (Hours that|Days of|Site costs|Difficulties|Labour whose)/;

test("the note of ± says what it is a range of", () => {
  expect(estimate.crew.speed.words.note).toMatch(
    /shortest to longest.*third of it is one standard deviation/,
  );
});
