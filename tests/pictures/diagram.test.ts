/** The one-line diagram: everything once with its figure, what fails by word and line, nothing on top of another. */
import fc from "fast-check";
import { scaledJob } from "../../src/build/scaledJob";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { columnsFor } from "../../src/pictures/diagramColumns";
import { itemsOf, readDistribution, type Hanging } from "../../src/pictures/distribution";
import { WIDEST } from "../../src/pictures/ink";
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
import { referencePrice, type Job } from "../support/referencePrice";
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

  test("each outlet once, in a row with its room, run and levels", () => {
    const outlets = filled(book, "rooms_outlet");
    expect(outlets).toHaveLength(24);
    for (const { at, name } of outlets) {
      const row = guestHouse.blocks!.rooms!.find(({ outlet }) => outlet === name)!;
      expect(textsIn(oneGroup(svg, name))).toEqual([
        name,
        `${row.floor}, ${row.room}`,
        `${row.cable}, ${Number(row.run).toFixed(1)} m`,
        `${oneDecimal(book, "rooms_weakest", at)}–${oneDecimal(book, "rooms_strongest", at)}`,
        namedColumn(book, "rooms_verdict")[at],
      ]);
    }
  });

  test("each branch once, with its device, trunk and levels at a port", () => {
    const branches = filled(book, "branches_id");
    expect(branches).toHaveLength(8);
    for (const { at, name } of branches) {
      const texts = textsIn(oneGroup(svg, name));
      const row = guestHouse.blocks!.branches!.find(({ id }) => id === name)!;
      expect(texts).toContain(row.device);
      expect(texts).toContain(`${row.cable}, ${Number(row.length).toFixed(1)} m`);
      const [least, most] = [
        oneDecimal(book, "branches_level_high_hot", at),
        oneDecimal(book, "branches_level_low_cold", at),
      ];
      expect(texts).toContain(`${least}–${most} dBµV a port`);
    }
  });

  test("each head unit once, with its volts, tuners and level", () => {
    const heads = filled(book, "heads_id");
    expect(heads).toHaveLength(3);
    for (const { at, name } of heads) {
      const texts = textsIn(oneGroup(svg, name)).join("\n");
      expect(texts).toContain(`→ ${oneDecimal(book, "heads_volts", at)} V, least 10.5`);
      expect(texts).toContain(
        `${String(namedColumn(book, "heads_tuners")[at])} tuners, ${String(namedColumn(book, "heads_bands")[at])} bands`,
      );
      expect(texts).toMatch(/\d–\d+\.\d dBµV at its end/);
    }
  });

  test("what fails, and only that, has its word and a dashed line in its own group", () => {
    expect(textsIn(oneGroup(svg, "H3"))).toContain("short of volts");
    expect(textsIn(oneGroup(svg, "A-07"))).toContain("low");
    const dashed = innerGroups(svg).filter((inside) => inside.includes(DASHED));
    expect(dashed.map((inside) => textsIn(inside)[0])).toEqual(["H3", "A-07"]);
    // The line that feeds the outlet.
    expect(svg.match(/<path[^>]*stroke-dasharray/g)).toHaveLength(1);
  });

  test("the description counts the parts and names each that fails with its figure", () => {
    expect(description).toContain("3 head units, 8 branches, 24 outlets");
    expect(description).toMatch(/head unit H3 short of volts \(13\.0 V at A-06 becomes 10\.4 V, least 10\.5/);
    const levels = referencePrice(guestHouse as unknown as Job).levels.get("A-07")!;
    const [least, most] = [Math.min(...levels), Math.max(...levels)].map((level) => level.toFixed(1));
    expect(description).toContain(`outlet A-07 low, ${least} to ${most} dBµV`);
    expect(description).not.toMatch(/outlet A-06/);
  });

  test("the same workbook gives the same picture, with no id to clash on a page", () => {
    expect(oneLineDiagram(computed()).svg).toBe(svg);
    expect(svg).not.toMatch(/\sid=|url\(|<script|<style|href/);
  });
});

describe("what can be wrong with a distribution", () => {
  test("too many tuners for the user bands: over", () => {
    const { svg, description } = oneLineDiagram(
      computed({ blocks: { rooms: withRow("outlet", "A-01", { receiver: "recorder, 4 tuners" }) } }),
    );
    expect(textsIn(oneGroup(svg, "H3")).join()).toContain("over its bands");
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
    expect(svg.match(/<path[^>]*fill="none"/g)).toHaveLength(8 + 24 - loose + fillers);
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
    expect(texts).toContain("unknown");
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
  expect(groupsWith(svg, "continued").map((inside) => textsIn(inside)[0])).toEqual(["T3", "T6"]);
  expect(width).toBeLessThanOrEqual(WIDEST);
});

/** Any distribution: a branch without children stands for one that feeds nothing. */
const anyNode: fc.Arbitrary<Hanging> = fc.letrec<{ node: Hanging; branch: Hanging; outlet: Hanging }>(
  (tie) => {
    const item = {
      name: "x",
      from: "",
      cable: "",
      length: 1,
      corners: undefined,
      levels: undefined,
      troubles: [],
    };
    return {
      node: fc.oneof({ depthSize: "small", withCrossShrink: true }, tie("outlet"), tie("branch")),
      outlet: fc
        .constant(null)
        .map((): Hanging => ({ item: { ...item, kind: "outlet", room: "", verdict: "ok" }, children: [] })),
      branch: fc
        .array(tie("node"), { maxLength: 5 })
        .map((children): Hanging => ({ item: { ...item, kind: "branch", device: "", power: "" }, children })),
    };
  },
).branch;
const anyHeads = fc.array(
  anyNode.map((one): Hanging => ({
    item: { ...one.item, kind: "head", type: "", volts: "", tuners: "" } as Hanging["item"],
    children: one.children,
  })),
  { minLength: 1, maxLength: 3 },
);

const overlap = (a: Placed, b: Placed): boolean =>
  a.left < b.left + b.width &&
  b.left < a.left + a.width &&
  a.top < b.top + b.height &&
  b.top < a.top + a.height;

test("no box stands on another, and no line runs through one", () => {
  fc.assert(
    fc.property(anyHeads, (heads) => {
      const sections = sectionsOf({ heads, unfed: [] });
      const columns = columnsFor(sections);
      for (const section of sections) {
        const { boxes } = layOutSection(section, columns);
        const pairs = boxes.flatMap((a, index) => boxes.slice(index + 1).map((b) => [a, b] as const));
        expect(pairs.filter(([a, b]) => overlap(a, b))).toEqual([]);
        for (const to of boxes.filter(({ feed }) => feed >= 0)) {
          const from = boxes[to.feed]!;
          const turn = from.left + from.width + columns.gap / 2;
          const [y1, y2] = [from.top + from.height / 2, to.top + to.height / 2];
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
      const sections = sectionsOf({ heads, unfed: [] });
      for (const section of sections) expect(depth(section)).toBeLessThanOrEqual(MOST_LEVELS + 1);
      const outlets = (all: readonly Hanging[]): number =>
        all.reduce(
          (sum, { item, children }) => sum + (item.kind === "outlet" ? 1 : 0) + outlets(children),
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
    expect(itemsOf(readDistribution(book))).toHaveLength(30 + 80 + 240);
    const texts = textsIn(svg);
    for (const column of ["rooms_outlet", "branches_id", "heads_id"]) {
      for (const { name } of filled(book, column)) {
        expect([name, texts.filter((text) => text === name).length]).toEqual([name, 1]);
      }
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
