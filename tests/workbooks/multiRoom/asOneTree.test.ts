/** Each way in which supplies of an older estimate become today's, told in sentences; tests/upgrade does it with a file. */
import type { BookResult } from "../../../src/workbooks/book";
import type { JobInputs } from "../../../src/workbooks/definition";
import { asOneTree } from "../../../src/workbooks/multiRoom/asOneTree";
import type { GivenUp } from "../../../src/workbooks/multiRoom/givenUp";
import { namedBook } from "../../support/namedBook";

type Blocks = NonNullable<JobInputs["blocks"]>;
type Given = Partial<Record<GivenUp, readonly BookResult[]>>;

/** Columns have a thin row above and below. */
const made = (given: Given, blocks?: Blocks) =>
  asOneTree(
    namedBook(Object.fromEntries(Object.entries(given).map(([name, values]) => [name, ["", ...values, ""]]))),
    { fields: { site_job: "House" }, ...(blocks && { blocks }) },
  );
const told = (name: string, index: number, became: string, lost = false) => ({ name, index, became, lost });

const RECEIVER = { name: "receiver", volts: 13, amps: 0.4 };
const MAINS = { name: "mains", volts: 24, amps: 1 };
const BY = ["a receiver", "the mains"];
const NO_ONE_NAMED = "No receiver needs to be named as the one that feeds: each is asked alone.";
const NO_SUPPLY =
  "“receiver” is no supply of this job: a receiver gives 13 V at rest and at most 0.4 A wherever Receivers on Parts says nothing else.";

test("what has none of the older names stays as it is", () => {
  const inputs = { blocks: { heads: [{ id: "H1", supply: "receiver" }], supplies: [RECEIVER] } };
  const { inputs: same, rearranged } = asOneTree(namedBook({ heads_id: ["", "H1", ""] }), inputs);
  expect(same).toBe(inputs);
  expect(rearranged).toEqual([]);
});

test("without a row there is nothing to rearrange, and the rest is kept", () => {
  const { inputs, rearranged } = made({ heads_at: [] });
  expect(inputs).toEqual({
    fields: { site_job: "House" },
    blocks: { heads: [], branches: [], supplies: [] },
  });
  expect(rearranged).toEqual([]);
});

test("what receivers feed has no supply, and their row is empty; what was given is not changed", () => {
  const heads: Record<string, string>[] = [
    { id: "H1", supply: "RECEIVER" },
    { id: "H2", supply: "mains" },
    { id: "H3", supply: "receiver" },
    { id: "H4" },
  ];
  const { inputs, rearranged } = made(
    { supplies_by: BY, heads_at: ["G-08", "", "", "G-09"] },
    { heads, supplies: [RECEIVER, MAINS], rooms: [{ outlet: "G-08" }] },
  );
  expect(inputs.blocks).toEqual({
    heads: [{ id: "H1" }, { id: "H2", supply: "mains" }, { id: "H3" }, { id: "H4" }],
    branches: [],
    supplies: [{}, MAINS],
    rooms: [{ outlet: "G-08" }],
  });
  expect(rearranged).toEqual([
    told("heads_at", 1, NO_ONE_NAMED),
    told("heads_supply", 1, "The receivers feed H1, so its supply is blank."),
    told("heads_supply", 3, "The receivers feed H3, so its supply is blank."),
    told("supplies_name", 1, NO_SUPPLY),
  ]);
  expect(heads[0]).toEqual({ id: "H1", supply: "RECEIVER" });
});

test.each<[object, string]>([
  [{ volts: 14, amps: 0.4 }, "14 V and 0.4 A"],
  [{ volts: 13, amps: 0.5 }, "13 V and 0.5 A"],
  [{}, "? V and ? A"],
])("a receiver with figures of its own, %p, is lost", (figures, said) => {
  const { rearranged } = made({ supplies_by: BY }, { supplies: [{ name: "receiver", ...figures }] });
  expect(rearranged).toEqual([
    told(
      "supplies_name",
      1,
      `“receiver” is no supply of this job, and its ${said} were not carried over. Receivers on Parts has them by kind: enter there what your receivers give where it is not 13 V and 0.4 A.`,
      true,
    ),
  ]);
});

describe("the loop resistance of a shared lead", () => {
  const rearrangedBy = (common: BookResult) =>
    made({ heads_common: [common] }, { heads: [{ id: "H1" }] }).rearranged;
  test.each<[BookResult]>([[0], [""], ["0"], [{ error: "#N/A" }]])("of %p is none", (common) =>
    expect(rearrangedBy(common)).toEqual([]),
  );
  test.each<[BookResult]>([[0.8], ["0.8 ohm"]])("of %p is lost, with what to do", (common) =>
    expect(rearrangedBy(common)).toEqual([
      told(
        "heads_common",
        1,
        "The loop resistance of H1's shared lead has no cell of its own. Give H1 a supply with its own cable, and let the cable's length and loop resistance say it.",
        true,
      ),
    ]),
  );
});

test("a shared supply: as the other's where receivers feed it, else to be chosen", () => {
  const { inputs, rearranged } = made(
    { supplies_by: BY, heads_shares: ["", "h1", "H4", "H9", ""] },
    {
      heads: [
        { id: "H1", supply: "receiver" },
        { id: "H2" },
        { id: "H3" },
        { id: "H5" },
        { id: "H4", supply: "mains" },
      ],
      supplies: [RECEIVER, MAINS],
    },
  );
  const choose = (who: string, other: string): string =>
    `${who} shared the supply of ${other}. A supply feeds the cable that it stands in: choose one for ${who} too, or put an inserter on Distribution; until then only receivers feed it.`;
  expect(rearranged).toEqual([
    told("heads_supply", 1, "The receivers feed H1, so its supply is blank."),
    told("heads_shares", 2, "The receivers feed H2 as they feed h1."),
    told("heads_shares", 3, choose("H3", "H4"), true),
    told("heads_shares", 4, choose("H5", "H9"), true),
    told("supplies_name", 1, NO_SUPPLY),
  ]);
  expect(inputs.blocks!.heads![4]).toEqual({ id: "H4", supply: "mains" });
});

describe("a supply that fed from farther down", () => {
  interface Around {
    readonly part?: object;
    /** What else hangs on the branch. */
    readonly devices?: readonly string[];
    readonly outlets?: readonly string[];
  }
  const at = (where: BookResult, { part, devices = [], outlets = [] }: Around = {}) =>
    made(
      { heads_at: [where] },
      {
        heads: [{ id: "H1", supply: "mains" }],
        supplies: [MAINS],
        branches: [
          { id: "S1", device: "divider" },
          ...devices.map((from, index) => ({ id: `B${index}`, from })),
        ],
        rooms: outlets.map((from, index) => ({ outlet: `O${index}`, from })),
        passives: part ? [{ name: "Divider", ...part }] : [],
      },
    );
  const NO_PORT =
    "“mains” fed H1 from S1, where no port is free for an inserter. Put it in the line on Distribution, and let it be fed from what came before; until then only receivers feed H1.";

  test.each<[BookResult]>([["H1"], ["h1"], [""]])("at %p, its own place, stays", (where) => {
    const { inputs, rearranged } = at(where, { part: { ways: 4 } });
    expect(inputs.blocks!.heads).toEqual([{ id: "H1", supply: "mains" }]);
    expect(rearranged).toEqual([]);
  });

  test.each<[string, Around, object]>([
    ["any port", { part: { kind: "splitter", ways: 2 }, outlets: ["S1"] }, {}],
    ["any port, others' outlets do not count", { part: { ways: 1 }, outlets: ["S2", "S3"] }, {}],
    ["the last port of a tap, its through port", { part: { kind: "tap", ways: 1 }, outlets: ["s1"] }, {}],
    [
      "the one port that passes power",
      { part: { ways: 2, power: "one port" }, devices: ["S1"] },
      { port: 1 },
    ],
    [
      "the through port of a tap that passes power there alone",
      { part: { kind: "Tap", ways: 2, power: "one port" }, outlets: ["S1"] },
      { port: "through" },
    ],
  ])("takes %s", (_, around, port) => {
    const { inputs, rearranged } = at("s1", around);
    expect(inputs.blocks!.heads).toEqual([{ id: "H1" }]);
    expect(inputs.blocks!.branches!.at(-1)).toEqual({ id: "P1", from: "s1", device: "mains", ...port });
    expect(rearranged).toEqual([
      told("heads_at", 1, "“mains” is the inserter P1 on Distribution, at s1, and feeds H1 from there."),
    ]);
  });

  test.each<[string, Around]>([
    ["a part that Parts does not have", {}],
    ["a part without a number of ways", { part: { ways: "two" } }],
    ["a splitter that is full", { part: { kind: "splitter", ways: 2 }, outlets: ["S1"], devices: ["S1"] }],
    ["a tap that is full", { part: { kind: "tap", ways: 1 }, outlets: ["S1", "S1"] }],
    [
      "a tap whose through port is taken",
      { part: { kind: "tap", ways: 4, power: "one port" }, devices: ["S1"] },
    ],
  ])("finds no place at %s", (_, around) => {
    const { inputs, rearranged } = at("S1", around);
    expect(inputs.blocks!.heads).toEqual([{ id: "H1" }]);
    expect(inputs.blocks!.branches).toHaveLength(1 + (around.devices ?? []).length);
    expect(rearranged).toEqual([told("heads_at", 1, NO_PORT, true)]);
  });

  test("its inserter takes no name of a device, a head unit or an outlet", () => {
    const { inputs } = made(
      { heads_at: ["S1"] },
      {
        heads: [{ id: "P1", supply: "mains" }],
        branches: [{ id: "p2" }, { id: "S1", device: "divider" }],
        rooms: [{ outlet: "P3" }, {}],
        passives: [{ name: "divider", ways: 4 }],
      },
    );
    expect(inputs.blocks!.branches!.at(-1)).toEqual({ id: "P4", from: "S1", device: "mains" });
  });
});
