/** What is said of options, alternates and tax classes, each finding whole and each bound on both sides. */
import type { Finding } from "../../src/review/finding";
import { alternates } from "../../src/review/rules/alternates";
import { at, found, messages, smallBook, type Row } from "./smallBook";

type Blocks = Parameters<typeof smallBook>[0];
const all = (blocks: Blocks, fields: Parameters<typeof smallBook>[1] = {}): Finding[] =>
  found(alternates, smallBook(blocks, fields));
const said = (blocks: Blocks): string[] => messages(alternates, smallBook(blocks));
const SAY = {
  weight: "doubtful",
  remedy: "Compare with what was offered; correct the cell, or say on Log why it is so.",
};

describe("an alternate that takes nothing out", () => {
  const RADIO = { name: "Radio outlets", instead: "plain outlets", each: "" };
  const made = (...rows: [part: string, quantity: number | string][]): Row[] =>
    rows.map(([part, quantity]) => ({ option: "radio OUTLETS", part, quantity }));
  const PAID_TWICE = {
    ...SAY,
    message: "Radio outlets is instead of plain outlets, and nothing is taken out.",
    effect: "The customer would pay for both.",
  };
  test("and has its part without the minus", () =>
    expect(all({ options: [RADIO], made: made(["radio plate", 36], ["Plain plate", 36]) })).toStrictEqual([
      { ...PAID_TWICE, place: at("made_quantity", 2), expected: "-36 of Plain plate.", meant: -36 },
    ]));
  const PLAIN = { plates: [{ name: "Plain outlet" }] };
  test("and lacks its row: the part is found on Parts by its name", () => {
    const bare = {
      ...PAID_TWICE,
      place: at("options_instead", 1),
      expected: "What it replaces, with a minus before its number.",
    };
    const blocks = { options: [RADIO], made: [...made(["radio plate", 36]), {}] };
    expect(all({ ...blocks, ...PLAIN })).toStrictEqual([
      {
        ...bare,
        undoing: [
          { place: at("made_option", 2), value: "Radio outlets" },
          { place: at("made_part", 2), value: "Plain outlet" },
          { place: at("made_quantity", 2), value: -36 },
        ],
        isGuess: true,
      },
    ]);
    // By its name as it is said, in whichever list.
    expect(all({ ...blocks, fittings: [{ name: "PLAIN OUTLETS" }] })[0]!.undoing).toContainEqual({
      place: at("made_part", 2),
      value: "PLAIN OUTLETS",
    });
    for (const other of [
      {},
      { ...PLAIN, made: made(["radio plate", 36]) },
      { ...PLAIN, made: [...made(["radio plate", 36], ["tower", 36]), {}] },
    ])
      expect(all({ ...blocks, ...other })).toStrictEqual([bare]);
  });
  test("the free row that comes after its own is taken", () =>
    expect(
      all({ options: [RADIO], made: [{}, ...made(["radio plate", 36]), {}], ...PLAIN })[0]!.undoing,
    ).toContainEqual({ place: at("made_part", 3), value: "Plain outlet" }));
  test.each<[string, Row, Row[], number]>([
    ["it replaces nothing", { instead: "" }, made(["radio plate", 36]), 0],
    ["its price is under nothing", { each: -1 }, made(["radio plate", 36]), 0],
    ["its price is nothing", { each: 0 }, made(["radio plate", 36]), 1],
    ["it has no parts", {}, [], 0],
    ["its row has no number", {}, made(["radio plate", ""]), 0],
    ["its row has no part", {}, made(["", 36]), 0],
    ["the parts are another's", { name: "Other" }, made(["radio plate", 36]), 0],
    // A word of its own name, or of two letters, tells nothing of what is replaced; one of three does.
    ["a short word is shared", { instead: "tv outlets" }, made(["radio plate", 36], ["tv plate", 36]), 1],
  ])("%s", (_, option, rows, count) =>
    expect(all({ options: [{ ...RADIO, ...option }], made: rows })).toHaveLength(count),
  );
  test("only a word of more than two letters that its own name has not tells the part", () => {
    const place = (instead: string, part: string) =>
      all({ options: [{ ...RADIO, instead }], made: made(["x", 1], [part, 36]) })[0]!.place;
    expect(place("tv outlets", "tv plate")).toEqual(at("options_instead", 1));
    expect(place("fan outlets", "Fans")).toEqual(at("made_quantity", 2));
    expect(place("plain outlets", "outlet")).toEqual(at("options_instead", 1));
  });
});

describe("an alternate that puts in other than it takes out", () => {
  const exchange = (taken: number, given: number, more: Blocks = {}) => ({
    options: [{ name: "Radio", instead: "plain plate" }],
    made: [
      { option: "Radio", part: "plain plate", quantity: -taken },
      { option: "Radio", part: "radio plate", quantity: given },
    ],
    ...more,
  });
  const ODD = { ...SAY, effect: "Its price is that of other pieces than it changes." };
  test("what it puts in is off", () =>
    expect(all(exchange(36, 63))).toStrictEqual([
      {
        ...ODD,
        place: at("made_quantity", 2),
        message: "Radio takes out 36 of plain plate and puts in 63 of radio plate.",
        expected: "As many in as out: 36.",
        meant: 36,
      },
    ]));
  test.each([
    ["plates", 63, true],
    ["units", 63, true],
    ["passives", 63, true],
    ["supplies", 63, true],
    ["plates", 36, false],
  ])("unless the job buys as many of the usual one: %s, %d", (block, needed, isTaken) => {
    const parts = { [block]: [{ name: "Plain plate", bought_needed: needed }] };
    expect(all(exchange(36, 63, parts))).toMatchObject([
      isTaken
        ? { place: at("made_quantity", 1), expected: "As many in as out: -63.", meant: -63 }
        : { place: at("made_quantity", 2), expected: "As many in as out: 36.", meant: 36 },
    ]);
  });
  test("as many, or several rows of either: nothing", () => {
    expect(said(exchange(36, 36))).toEqual([]);
    const rows = exchange(36, 63);
    const more = (quantity: number) => ({
      ...rows,
      made: [...rows.made, { option: "Radio", part: "box", quantity }],
    });
    expect([said(more(1)), said(more(-1))]).toEqual([[], []]);
    expect(said({ ...rows, made: rows.made.slice(0, 1) })).toEqual([]);
  });
});

test("two alternates of one thing, both chosen", () => {
  const options = (...rows: [name: string, instead: string, chosen: string][]) => ({
    options: rows.map(([name, instead, chosen]) => ({ name, instead, chosen })),
  });
  expect(all(options(["A", "plate", "yes"], ["B", "PLATE", "Yes"], ["C", "plate", "yes"]))).toStrictEqual(
    [2, 3].map((row) => ({
      ...SAY,
      place: at("options_chosen", row),
      message:
        row === 2
          ? "B and A are both chosen, and both are instead of PLATE."
          : "C and A are both chosen, and both are instead of plate.",
      expected: "One of them.",
      effect: "What they replace is taken out twice, or paid for twice.",
    })),
  );
  expect(said(options(["A", "plate", "yes"], ["B", "plate", "no"], ["C", "box", "yes"]))).toEqual([]);
  expect(said(options(["A", "", "yes"], ["B", "", "yes"]))).toEqual([]);
});

describe("an option's price beside the parts that it speaks of", () => {
  const units = [{ price: 100 }, { price: 200 }, { price: 0 }, { price: "?" }];
  const offered = (each: number | string, option: Row = {}, factor: number | string = 2) =>
    all(
      { options: [{ name: "One more head unit", each, instead: "", ...option }], units },
      { price_factor: factor },
    );
  test("far from them", () =>
    expect(offered(24)).toStrictEqual([
      {
        ...SAY,
        place: at("options_each", 1),
        message:
          "One more head unit is offered at 24; such parts cost from 100 and are sold for up to 400.00.",
        expected: "A price like that of the part, with its work.",
        effect: "It is printed, and in the price where it is chosen.",
        usual: { low: 100, high: 400 },
      },
    ]));
  // A fourth of the cheapest, and four times the dearest as it is sold.
  test.each([
    [25, 0],
    [24.9, 1],
    [1600, 0],
    [1601, 1],
    [0, 0],
    [-1, 0],
    ["", 0],
  ])("at %j: %d", (each, count) => expect(offered(each)).toHaveLength(count));
  test("without a factor at cost; of switches too; of anything else, or instead of something, nothing", () => {
    expect([offered(800, {}, ""), offered(801, {}, "").length]).toEqual([[], 1]);
    expect(offered(24, { name: "Second SWITCH" })).toHaveLength(1);
    expect(offered(24, { name: "Two switches" })).toHaveLength(1);
    expect([offered(24, { name: "Switchboard" }), offered(24, { instead: "box" })]).toEqual([[], []]);
    expect(said({ options: [{ name: "head unit", each: 24 }], units: [{ price: 0 }] })).toEqual([]);
  });
});

describe("a class of tax", () => {
  const taxes = [{ name: "Reduced" }];
  const IDLE = {
    ...SAY,
    place: at("taxes_name", 1),
    message: "Nothing is taxed by the class “Reduced”.",
    expected: "A line, an option or a provisional sum that has it; or no such row.",
    effect: "What it was meant for is taxed otherwise.",
  };
  test("that nothing has", () => expect(all({ taxes })).toStrictEqual([IDLE]));
  test("of a firm's own list, which has more than a job needs", () =>
    expect(all({ taxes, taken: [{ list: "taxes", line: "Reduced" }] })).toStrictEqual([
      { ...IDLE, weight: "worth knowing" },
    ]));
  test.each<[string, Blocks, Parameters<typeof smallBook>[1]]>([
    ["a line", {}, { tax_class_labour: "reduced" }],
    ["an option", { options: [{ tax: "REDUCED" }] }, {}],
    ["a provisional sum", { provisional: [{ tax: "Reduced" }] }, {}],
  ])("that %s has: nothing", (_, blocks, fields) => expect(all({ taxes, ...blocks }, fields)).toEqual([]));
});
