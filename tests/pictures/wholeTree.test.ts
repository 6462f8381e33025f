/**
 * The diagrams of the six jobs of tests/fixtures/distribution/jobs-as-built.json: every kind of part is there from the
 * sky to the receiver, by its shape and its word. What is expected is counted from the jobs' rows, and from their
 * answers where it is worked out.
 */
import { recalculate } from "../../src/hosts/headless/recalculate";
import { oneLineDiagram } from "../../src/pictures/oneLineDiagram";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { jobOnSheets } from "../support/jobsOnSheets";
import { innerGroups, textsIn } from "../support/pictureJobs";

const drawn = (id: string) => oneLineDiagram(recalculate(layOut(multiRoom, jobOnSheets(id))));

/** How often each shape stands in a picture; each is a path with its name for whoever points at it. */
function shapesIn(svg: string): Record<string, number> {
  const found: Record<string, number> = {};
  for (const [, shape] of svg.matchAll(/<path[^>]*><title>([^<]*)<\/title><\/path>/g))
    found[shape!] = (found[shape!] ?? 0) + 1;
  return found;
}

const groupOf = (svg: string, name: string): string[] =>
  innerGroups(svg)
    .map((inside) => textsIn(inside))
    .find(([first]) => first === name)!;

test("the smallest job: a dish, a head unit that is its feed, a splitter, four outlets with receivers", () => {
  const { svg } = drawn("1-smallest");
  expect(shapesIn(svg)).toEqual({ dish: 1, "head unit": 1, splitter: 1, outlet: 4, receiver: 4 });
  expect(groupOf(svg, "D1")).toEqual(["D1", "dish", "0.80 m, 13E", expect.stringMatching(/^C\/N \d/)]);
  expect(groupOf(svg, "4")).toContain("4, 5: recorder");
});

test("the cascade: feeders counted over their line, onward ports of the last switch closed", () => {
  const { svg } = drawn("2-cascade");
  expect(shapesIn(svg)).toEqual({
    dish: 1,
    switch: 2,
    splitter: 4,
    outlet: 16,
    receiver: 16,
    "end resistor": 1,
  });
  expect(groupOf(svg, "D1")).toContain("feed: four-output feed");
  const h1 = innerGroups(svg)
    .map((inside) => textsIn(inside))
    .filter(([first]) => first === "H1");
  expect(h1.find((texts) => texts.includes("switch"))).toContain("D1: 4 × drop, copper, 18.0 m");
  expect(h1.find((texts) => texts.includes("drawn elsewhere"))).toBeDefined();
  const h2 = groupOf(svg, "H2");
  expect(h2).toContain("H1: 4 × drop, copper, 4.0 m");
  expect(h2).toContain("supply: mains pack 18 V");
  expect(h2).toContain("onward ports: end resistor");
});

test("the hall: outlets one through the other, the last one closed", () => {
  const { svg } = drawn("3-hall");
  expect(shapesIn(svg)).toEqual({
    dish: 1,
    "head unit": 1,
    "loop-through outlet": 5,
    "last loop-through outlet": 1,
    receiver: 6,
  });
  // One line from the dish, one to the first outlet, five from each to the next.
  const lines = svg.match(/<path[^>]*fill="none"[^>]*>/g)!.filter((path) => !path.includes("transform="));
  expect(lines).toHaveLength(1 + 1 + 5);
  expect(groupOf(svg, "R6")).toContain("5.5 m, loop plate 10 dB, closed");
});

test("the annexe: equaliser, amplifier, inserter and splitter in one line, the amplifier's output beside its limit", () => {
  const { svg } = drawn("4-annexe");
  expect(shapesIn(svg)).toMatchObject({ equaliser: 1, amplifier: 1, inserter: 1, splitter: 2 });
  // 90.8 against 104.2: the job's answer.
  expect(groupOf(svg, "A1")).toContain("output 90.8 of 104.2");
  expect(groupOf(svg, "P1")).toContain("inserter");
});

test("the job that must fail: each of its mistakes has its word where it is, and nothing else has one", () => {
  const { svg } = drawn("5-must-fail");
  const failing = innerGroups(svg)
    .filter((inside) => inside.includes("stroke-dasharray"))
    .map((inside) => textsIn(inside));
  expect(
    Object.fromEntries(failing.map((texts) => [texts[0], /^\d$/.test(texts[0]!) ? texts.at(-1) : texts[1]])),
  ).toEqual({
    1: "volts",
    2: "volts",
    3: "commands",
    4: "commands",
    5: "connectors",
    6: "commands",
    7: "commands",
    H2: "short of volts",
    T1: "open port",
  });
  // What is wrong stands in the workbook's words for whoever points at it.
  expect(svg).toMatch(/<title>[^<]*end resistor[^<]*<\/title>/);
  expect(shapesIn(svg)).toMatchObject({ tap: 1, "open port": 2 });
  expect(groupOf(svg, "T1")).toContain("through port: open");
});

test("two dishes on one switch: each with its own feeders, user bands before each receiver", () => {
  const { svg } = drawn("6-two-dishes");
  expect(shapesIn(svg)).toMatchObject({ dish: 2, switch: 1, splitter: 6, "end resistor": 2 });
  expect(groupOf(svg, "D1")).toContain("1.10 m, 97W 113W");
  expect(groupOf(svg, "H1")).toEqual(
    expect.arrayContaining(["D1: 4 × drop, copper, 16.0 m", "D2: 2 × drop, copper, 21.0 m"]),
  );
  // Six cables together: four and two, over the lines.
  const words = textsIn(svg);
  for (const cables of ["4", "2"]) expect(words).toContain(cables);
  expect(groupOf(svg, "1-4")).toContain("9, 10: recorder");
  expect(groupOf(svg, "S12")).toContain("3 ports: end resistor");
});

test("a dish that feeds nothing, and a head unit on a dish that is not there", () => {
  const job = jobOnSheets("5-must-fail");
  const blocks = {
    ...job.blocks,
    dishes: [...job.blocks!.dishes!, { name: "D3", slots: "13E", size: 1.2 }],
    heads: job.blocks!.heads!.map((row) => (row.id === "H2" ? { ...row, dish: "D9" } : row)),
  };
  const { svg, description } = oneLineDiagram(recalculate(layOut(multiRoom, { ...job, blocks })));
  expect(groupOf(svg, "D3")).toBeDefined();
  expect(groupOf(svg, "D9")).toContain("not known");
  expect(textsIn(svg)).toContain("Loose ends");
  expect(description).toMatch(/^3 dishes|^2 dishes/);
});
