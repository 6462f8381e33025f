/** The one-line diagram: everything once with its figure, what fails by word and line, nothing on top of another. */
import fc from "fast-check";
import { scaledJob } from "../../src/build/scaledJob";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { columnsFor } from "../../src/pictures/diagramColumns";
import { itemsOf, readDistribution } from "../../src/pictures/distribution";
import { WIDEST } from "../../src/pictures/ink";
import { placeholder, type Hanging } from "../../src/pictures/items";
import { layOutSection, type Placed } from "../../src/pictures/layOutSection";
import { diagramPages, oneLineDiagram } from "../../src/pictures/oneLineDiagram";
import { MOST_LEVELS, sectionsOf } from "../../src/pictures/sections";
import type { Book } from "../../src/workbooks/book";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { apartmentBlock } from "../../src/workbooks/multiRoom/apartmentBlock";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { namedColumn } from "../../src/workbooks/named";
import { computed, innerGroups, textsIn, withRow, type Row } from "../support/pictureJobs";
import { tries } from "../support/tries";

const DASHED = "stroke-dasharray";

/** The groups that hold a text exactly. */
const groupsWith = (svg: string, text: string): string[] =>
  innerGroups(svg).filter((inside) => textsIn(inside).includes(text));

const oneGroup = (svg: string, text: string): string => {
  const found = groupsWith(svg, text);
  expect([text, found.length]).toEqual([text, 1]);
  return found[0]!;
};

const filled = (book: Book, name: string): { at: number; name: string }[] =>
  namedColumn(book, name).flatMap((value, at) => (value ? [{ at, name: String(value) }] : []));

const oneDecimal = (book: Book, name: string, at: number): string =>
  Number(namedColumn(book, name)[at]).toFixed(1);

describe("the demonstration", () => {
  const book = computed();
  const { svg, description } = oneLineDiagram(book);

  const usual = (key: "cable" | "plate"): string => String(guestHouse.fields![`site_usual_${key}`]);

  test("each outlet once, in a row with its room, run, receiver, user bands and levels; usual parts are left out", () => {
    const outlets = filled(book, "rooms_outlet");
    expect(outlets).toHaveLength(24);
    for (const { at, name } of outlets) {
      const row = guestHouse.blocks!.rooms!.find(({ outlet }) => outlet === name)!;
      const bands = namedColumn(book, "rooms_place_bands")[at];
      expect(textsIn(oneGroup(svg, name))).toEqual([
        name,
        `${row.floor}, ${row.room}`,
        [
          row.cable === usual("cable") ? "" : row.cable,
          `${Number(row.run).toFixed(1)} m`,
          row.plate === usual("plate") ? "" : row.plate,
        ]
          .filter(Boolean)
          .join(", "),
        row.receiver ? `${String(bands)}: ${row.receiver}` : "spare",
        `${oneDecimal(book, "rooms_weakest", at)}–${oneDecimal(book, "rooms_strongest", at)}`,
        namedColumn(book, "rooms_verdict")[at],
      ]);
    }
  });

  test("each device once, with its kind, part, cable and levels at a port", () => {
    const devices = filled(book, "branches_id");
    expect(devices).toHaveLength(guestHouse.blocks!.branches!.length);
    for (const { at, name } of devices) {
      const texts = textsIn(oneGroup(svg, name));
      const row = guestHouse.blocks!.branches!.find(({ id }) => id === name)!;
      const part = guestHouse.blocks!.passives!.find((one) => one.name === row.device)!;
      expect(texts).toContain(part.kind);
      expect(texts).toContain(row.device);
      if (row.length !== undefined)
        expect(texts).toContain(`${String(row.cable ?? usual("cable"))}, ${Number(row.length).toFixed(1)} m`);
      const corners = ["low_cold", "low_hot", "high_cold", "high_hot"].map((corner) =>
        Number(namedColumn(book, `branches_level_${corner}`)[at]),
      );
      expect(texts).toContain(`${Math.min(...corners).toFixed(1)}–${Math.max(...corners).toFixed(1)} dBµV`);
    }
  });

  test("each head unit once, with its volts, tuners and level; a switch with its feeders", () => {
    const heads = filled(book, "heads_id");
    expect(heads).toHaveLength(3);
    for (const { at, name } of heads) {
      const [texts] = groupsWith(svg, name)
        .map((inside) => textsIn(inside))
        .filter((one) => !one.includes("drawn elsewhere"));
      const least = oneDecimal(book, "heads_fed_least", at);
      expect(texts).toContain(`${least} V, minimum ${oneDecimal(book, "heads_least", at)}`);
      expect(texts).toContain(
        `${String(namedColumn(book, "heads_fed_tuners")[at])} tuners, ${String(namedColumn(book, "heads_fed_bands")[at])} bands`,
      );
    }
    for (const { from, to, cable, length } of guestHouse.blocks!.feeders!) {
      const switchBox = groupsWith(svg, String(to))
        .map((inside) => textsIn(inside))
        .find((one) => one.some((text) => text.startsWith(`${from}: `)))!;
      expect(switchBox.join("\n")).toMatch(
        new RegExp(`${from}: \\d+ × ${String(cable ?? usual("cable"))}, ${Number(length).toFixed(1)} m`),
      );
    }
  });

  test("each dish once, with its size, its slots and its feed", () => {
    for (const row of guestHouse.blocks!.dishes!) {
      const texts = textsIn(oneGroup(svg, String(row.name)));
      expect(texts).toContain("dish");
      expect(
        texts.some((text) =>
          text.startsWith(`${Number(row.size ?? guestHouse.fields!.site_dish).toFixed(2)} m`),
        ),
      ).toBe(true);
      if (row.feed) expect(texts).toContain(`feed: ${row.feed}`);
    }
  });

  test("what fails, and only that, has its word and a dashed line in its own group", () => {
    expect(textsIn(oneGroup(svg, "H3"))).toContain("short of volts");
    expect(textsIn(oneGroup(svg, "A-07"))).toContain("low");
    const dashed = innerGroups(svg).filter((inside) => inside.includes(DASHED));
    expect(dashed.map((inside) => textsIn(inside)[0])).toEqual(["H3", "A-07"]);
    // The lines that feed the outlet, and the head unit from its dish.
    expect(svg.match(/<path[^>]*stroke-dasharray/g)).toHaveLength(2);
  });

  test("the description counts the parts and names each that fails with its figure", () => {
    expect(description).toContain("2 dishes, 3 head units, 9 devices, 24 outlets");
    expect(description).toMatch(/head unit H3 short of volts \(9\.9 V, minimum 10\.5/);
    const at = namedColumn(book, "rooms_outlet").indexOf("A-07");
    const [least, most] = ["weakest", "strongest"].map((key) => oneDecimal(book, `rooms_${key}`, at));
    expect(description).toContain(`outlet A-07 low, ${least} to ${most} dBµV`);
    expect(description).not.toMatch(/outlet A-06/);
  });

  test("the same workbook gives the same picture, with no id to clash on a page", () => {
    expect(oneLineDiagram(computed()).svg).toBe(svg);
    expect(svg).not.toMatch(/\sid=|url\(|<script|<style|href/);
  });
});

describe("what can be wrong with a distribution", () => {
  test("too many tuners for the user bands: who gets none has the word", () => {
    const { svg, description } = oneLineDiagram(
      computed({ blocks: { rooms: withRow("outlet", "A-01", { receiver: "recorder, 4 tuners" }) } }),
    );
    expect(textsIn(svg)).toContain("bands");
    expect(description).toContain("11 tuners, 8 bands");
  });

  test("too much level: high", () => {
    const { svg } = oneLineDiagram(computed({ fields: { site_level_high: 73 } }));
    expect(textsIn(oneGroup(svg, "G-01"))).toContain("high");
  });

  const loose = (from: string) => withRow("outlet", "F-01", { from });
  test.each([
    ["an outlet on a branch that is not there", { rooms: loose("X9") }, ["F-01"]],
    ["an outlet fed from itself", { rooms: loose("F-01") }, ["F-01"]],
    ["an outlet fed from nothing", { rooms: loose("") }, ["F-01"]],
    [
      "branches in a ring, with what hangs on them",
      { branches: withRow("id", "U0", { from: "U2" }) },
      ["U0", "U1", "U2", "F-01", "F-02", "F-03", "F-04", "F-05", "F-06", "F-07", "F-08", "F-09"],
    ],
    ["two branches of one name", { branches: withRow("id", "A2", { id: "A1" }) }, ["A-01"]],
  ])("%s: not fed, and still there once", (_, blocks, names) => {
    const { svg, description } = oneLineDiagram(computed({ blocks }));
    // Every branch and outlet hangs on a line, but for the loose ones, which stand under a head of their own.
    const loose = textsIn(svg).filter((text) => text === "not fed").length - 1;
    expect(loose).toBeGreaterThanOrEqual(names.length);
    const fillers = textsIn(svg).filter((text) => text === "no outlets").length;
    // A shape is moved to its place, a line is not; each head unit has one from the sky.
    const lines = svg
      .match(/<path[^>]*>/g)!
      .filter((path) => path.includes('fill="none"') && !path.includes("transform="));
    expect(lines).toHaveLength(3 + 9 + 24 - loose + fillers);
    for (const name of names) {
      const group = oneGroup(svg, name);
      expect(textsIn(group)).toContain("not fed");
      expect(group).toContain(DASHED);
    }
    expect(description).toContain("not fed");
    expect(description).toContain("24 outlets");
  });

  test("figures that are missing show a question mark, never a number", () => {
    const { svg } = oneLineDiagram(
      computed({ blocks: { rooms: withRow("outlet", "G-01", { cable: "no such cable" }) } }),
    );
    const texts = textsIn(oneGroup(svg, "G-01"));
    expect(texts).toContain("?");
    expect(texts).toContain("see Rooms");
  });

  test("a workbook that has lost the names of columns is drawn without their figures", () => {
    const whole = computed();
    const names = whole.names.filter(
      ({ name }) => !/^(rooms_(weakest|strongest|level)|heads_volts)/.test(name),
    );
    const { svg, description } = oneLineDiagram({ ...whole, names });
    expect(textsIn(oneGroup(svg, "G-01"))).toContain("?");
    expect(description).toContain("24 outlets");
  });

  test("an empty job says what to fill", () => {
    const empty = oneLineDiagram(recalculate(layOut(multiRoom)));
    expect(empty.empty).toBe(true);
    expect(empty.description).toMatch(/nothing to draw yet: fill Rooms/);
  });

  test.each([
    ["markup", `<script>alert("1")</script> & 'so'`],
    ["an entity", "&amp;lt; &#39;"],
    ["the end of a section", "]]> -->"],
  ])("%s in a room's name stays text", (_, room) => {
    const { svg } = oneLineDiagram(computed({ blocks: { rooms: withRow("outlet", "G-01", { room }) } }));
    expect(textsIn(oneGroup(svg, "G-01"))).toContain(`ground, ${room}`);
    expect(svg).not.toMatch(/<script|alert\("/);
  });

  test("half a character and control characters become the sign for an unknown one", () => {
    const whole = computed();
    const sheet = whole.sheets.find(({ name }) => name === "Rooms")!;
    const at = Object.keys(sheet.cells).find((one) => sheet.cells[one]!.value === "reception")!;
    sheet.cells[at] = { value: "a\u0001b\uD800c" };
    expect(textsIn(oneLineDiagram(whole).svg)).toContain("ground, a\uFFFDb\uFFFDc");
  });
});

test("taps in a long row: each drawn in full once, taken up again by name, never wider than a page can show", () => {
  const taps = Array.from({ length: 9 }, (_, index): Row => ({
    id: `T${index + 1}`,
    from: index === 0 ? "H1" : `T${index}`,
    device: "tap 12 dB",
    cable: "trunk",
    length: 3,
  }));
  const rooms = taps.map(({ id }, index): Row => ({ ...guestHouse.blocks!.rooms![index]!, from: id! }));
  const { svg, width } = oneLineDiagram(computed({ blocks: { branches: taps, rooms } }));
  for (const { id } of taps) {
    const groups = groupsWith(svg, String(id));
    expect(groups.filter((inside) => textsIn(inside).includes("tap 12 dB"))).toHaveLength(1);
  }
  for (const { outlet } of rooms) oneGroup(svg, String(outlet));
  expect(groupsWith(svg, "continued").map((inside) => textsIn(inside)[0])).toEqual(["T2", "T4", "T6", "T8"]);
  expect(width).toBeLessThanOrEqual(WIDEST);
});

/** Any distribution: a device without children stands for one that feeds nothing. */
const bare = { ...placeholder("x"), length: 1 };
const anyNode: fc.Arbitrary<Hanging> = fc.letrec<{ node: Hanging; device: Hanging; outlet: Hanging }>(
  (tie) => ({
    node: fc.oneof({ depthSize: "small", withCrossShrink: true }, tie("outlet"), tie("device")),
    outlet: fc.array(tie("node"), { maxLength: 1 }).map((children): Hanging => ({
      item: {
        ...bare,
        kind: "outlet",
        room: "",
        plate: "",
        loops: children.length > 0,
        ends: false,
        receiver: "",
        verdict: "ok",
      },
      children,
    })),
    device: fc.array(tie("node"), { maxLength: 5 }).map((children): Hanging => ({
      item: { ...bare, kind: "device", shape: "splitter", part: "a part", output: "", open: undefined },
      children,
    })),
  }),
).device;
const anyHeads = fc.array(
  fc.tuple(anyNode, fc.integer({ min: 1, max: 3 })).map(([one, dishes]): Hanging => ({
    item: {
      ...bare,
      kind: "head",
      type: "",
      isSwitch: true,
      inlets: Array.from({ length: dishes }, (_, dish) => ({
        source: { ...bare, name: `D${dish}`, kind: "dish" as const, size: 1, slots: "", feed: "", seen: "" },
        feeders: [],
      })),
      supply: "",
      volts: "",
      tuners: "",
      onward: undefined,
    },
    children: one.children,
  })),
  { minLength: 1, maxLength: 3 },
);
const LEAD = (): string => "";

const overlap = (a: Placed, b: Placed): boolean =>
  a.left < b.left + b.width &&
  b.left < a.left + a.width &&
  a.top < b.top + b.height &&
  b.top < a.top + a.height;

test("no box stands on another, and no line runs through one", () => {
  fc.assert(
    fc.property(anyHeads, (heads) => {
      const sections = sectionsOf({ heads, unused: [], unfed: [] });
      const columns = columnsFor(sections, "m", LEAD);
      for (const section of sections) {
        const { boxes } = layOutSection(section, columns, "m");
        const pairs = boxes.flatMap((a, index) => boxes.slice(index + 1).map((b) => [a, b] as const));
        expect(pairs.filter(([a, b]) => overlap(a, b))).toEqual([]);
        for (const to of boxes.filter(({ feed }) => feed >= 0)) {
          const from = boxes[to.feed]!;
          const turn = from.left + from.width + columns.gap / 2;
          const [y1, y2] = [from.outlet, to.inlet];
          const down = { left: turn, width: 0.1, top: Math.min(y1, y2), height: Math.abs(y1 - y2) } as Placed;
          const along = { left: turn, width: to.left - turn, top: y2, height: 0.1 } as Placed;
          expect(boxes.filter((box) => overlap(down, box) || overlap(along, box))).toEqual([]);
        }
      }
    }),
    { numRuns: tries(30, 300) },
  );
});

test("pieces never hold more levels than there are columns, and lose nothing", () => {
  fc.assert(
    fc.property(anyHeads, (heads) => {
      const depth = ({ children }: Hanging): number => Math.max(0, ...children.map((one) => 1 + depth(one)));
      const sections = sectionsOf({ heads, unused: [], unfed: [] });
      for (const section of sections) expect(depth(section)).toBeLessThanOrEqual(MOST_LEVELS + 1);
      // One that a device hangs on behind it is named again where that goes on.
      const outlets = (all: readonly Hanging[]): number =>
        all.reduce(
          (sum, { item, children, continued }) =>
            sum + (item.kind === "outlet" && !continued ? 1 : 0) + outlets(children),
          0,
        );
      expect(outlets(sections)).toBe(outlets(heads));
    }),
    { numRuns: tries(30, 300) },
  );
});

describe("240 outlets", () => {
  const book = recalculate(layOut(multiRoom, scaledJob(guestHouse, 240)));
  const PAGE = 560;

  test("the whole has every part once, and no two boxes on one place", () => {
    const { svg, description } = oneLineDiagram(book);
    expect(itemsOf(readDistribution(book))).toHaveLength(20 + 30 + 90 + 240);
    const texts = textsIn(svg);
    for (const column of ["rooms_outlet", "branches_id"]) {
      for (const { name } of filled(book, column)) {
        expect([name, texts.filter((text) => text === name).length]).toEqual([name, 1]);
      }
    }
    // A switch before another is named again above that.
    for (const { name } of filled(book, "heads_id")) {
      const own = groupsWith(svg, name).filter((inside) => !textsIn(inside).includes("drawn elsewhere"));
      expect([name, own.length]).toEqual([name, 1]);
    }
    expect(description).toMatch(/; and 12 more\.$/);
    expect(description.length).toBeLessThan(1200);
  });

  test("the pages have every outlet once, each no higher than a page and described for itself", () => {
    const pages = diagramPages(book, PAGE);
    expect(pages.length).toBeGreaterThan(5);
    const texts = pages.flatMap(({ svg }) => textsIn(svg));
    for (const { name } of filled(book, "rooms_outlet")) {
      expect([name, texts.filter((text) => text === name).length]).toEqual([name, 1]);
    }
    for (const { height, width, title } of pages) {
      expect([title, height * Math.min(1, 980 / width) <= PAGE + 1]).toEqual([title, true]);
    }
    expect(pages[0]!.title).toContain(`part 1 of ${pages.length}`);
    expect(pages[1]!.description).not.toBe(pages[0]!.description);
  });

  test("a head unit with more outlets than a page holds is cut, and named again where it goes on", () => {
    const rooms = (rows: readonly Row[]) =>
      Array.from({ length: 90 }, (_, index): Row => ({
        ...rows[index % 24]!,
        outlet: `R${index}`,
        from: index < 60 ? "G1" : "G2",
      }));
    const crowded = computed({ blocks: { rooms } });
    const pages = diagramPages(crowded, PAGE);
    const texts = pages.flatMap(({ svg }) => textsIn(svg));
    for (let index = 0; index < 90; index++)
      expect(texts.filter((text) => text === `R${index}`)).toHaveLength(1);
    expect(texts).toContain("continued");
    for (const { height, width } of pages)
      expect(height * Math.min(1, 980 / width)).toBeLessThanOrEqual(PAGE + 1);
  });
});

test("no room of the apartment block loses a letter: the row takes what the boxes leave", () => {
  const pages = diagramPages(recalculate(layOut(multiRoom, apartmentBlock)), 560);
  const texts = new Set(pages.flatMap(({ svg }) => textsIn(svg)));
  const rooms = apartmentBlock.blocks!.rooms!.map(({ floor, room }) => `${floor}, ${room}`);
  expect(rooms.filter((room) => !texts.has(room))).toEqual([]);
  expect(pages.filter(({ svg }) => /<text[^>]*>[^<]*…/.test(svg)).map(({ title }) => title)).toEqual([]);
  expect(pages.every(({ width }) => width <= WIDEST)).toBe(true);
});
