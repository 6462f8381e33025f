import { BOND_RULES } from "../../engine/bonding/constants";
import type { Book } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import { eachPiece, PIECES } from "../../workbooks/multiRoom/names/pieces";
import { namedValue } from "../../workbooks/named";
import type { Finding, FindingPlace } from "../finding";
import { figure, filledCells, hasJob, isBlank, namedCells, plainWord, PRICED_BLOCKS } from "../namedCells";
import type { Rule } from "../rule";
import { rowsIn } from "../rowsIn";

const { passives, units, resistors, labour, fittings, bonds, site } = estimate;

/** A smaller part that costs more by less than this was bought from somebody else, or on another day. */
const DEARER = 1.1;
/** Common practice, no source: no head unit lives on less. */
const LEAST_WATTS = 1;
/** What the letters of two names may differ by, to be one name. */
const LETTERS_OFF = 2;
const FEWEST_LETTERS = 6;

export const partsAgree: Rule = {
  id: "parts that do not agree",
  reason:
    "What one row of Parts says is held to the row beside it: more ways cost more, a piece is counted once, a supplier has one name.",
  example:
    "A 4-way splitter dearer than the 6-way; “grounding block” counted for each connector; an end resistor that passes power.",
  find: ({ read, computed }) =>
    hasJob(read)
      ? [
          ...smallerDearer(read),
          ...watts(read),
          ...openToPower(read),
          ...unclosed(read),
          ...otherPiece(read),
          ...countedTwice(read, computed),
          ...suppliers(read),
          ...thin(read),
        ]
      : [],
};

const doubtful = (
  place: FindingPlace | undefined,
  message: string,
  expected: string,
  effect: string,
  more: Partial<Finding> = {},
): Finding => ({
  weight: "doubtful",
  place,
  message,
  expected,
  effect,
  remedy: "Compare with the maker's sheet and the price list; correct the cell, or say on Log why it is so.",
  ...more,
});

const OF_PASSIVES = {
  kind: passives.kind,
  ways: passives.ways,
  price: passives.price,
  power: passives.power,
};

/** Two rows' prices in each other's place. */
function smallerDearer(read: Book): Finding[] {
  const rows = rowsIn(read, passives.name, OF_PASSIVES).filter(
    (row) => (row.number("price") ?? 0) > 0 && row.number("ways") !== undefined,
  );
  return rows.flatMap((row): Finding[] => {
    const larger = rows.find(
      (other) =>
        other.word("kind") === row.word("kind") &&
        other.word("power") === row.word("power") &&
        other.number("ways")! > row.number("ways")! &&
        row.number("price")! > DEARER * other.number("price")!,
    );
    if (!larger) return [];
    return [
      doubtful(
        row.cell("price")!.place,
        `${row.called} costs ${figure(row.number("price")!)}, and ${larger.called} with more ways ${figure(larger.number("price")!)}.`,
        "Less than the larger one: were the two prices typed in each other's row?",
        "Each piece that is bought carries it into the price.",
      ),
    ];
  });
}

/** Amperes that are said to be watts. */
const watts = (read: Book): Finding[] =>
  rowsIn(read, units.name, { load: units.load, kind: units.kind }).flatMap(
    ({ called, cell, number, word }): Finding[] => {
      const load = number("load");
      if (word("kind") !== "w" || load === undefined || load <= 0 || load >= LEAST_WATTS) return [];
      return [
        doubtful(
          cell("kind")!.place,
          `${called} is said to draw ${figure(load)} W.`,
          `A, if ${figure(load)} amperes were meant; a head unit draws some watts (common practice, no source).`,
          "Its volts are predicted far too high.",
          { meant: "A" },
        ),
      ];
    },
  );

/** 75 ohms on the volts of a receiver or an inserter. */
const openToPower = (read: Book): Finding[] =>
  rowsIn(read, resistors.name, { blocks: resistors.blocks }).flatMap(({ called, cell, word }): Finding[] =>
    word("blocks") === "no"
      ? [
          doubtful(
            cell("blocks")!.place,
            `${called} lets direct current through: 75 ohms on 24 V are 7.7 W.`,
            "yes: one that blocks power.",
            "It takes the volts of the head unit, and grows hot.",
            { meant: "yes" },
          ),
        ]
      : [],
  );

/** Open ports, an end resistor among the parts, and nothing that says to use it. */
function unclosed(read: Book): Finding[] {
  const [cell] = namedCells(read, site.closes.name);
  const listed = filledCells(read, resistors.name.name);
  if (!cell || !isBlank(cell.value) || listed.length === 0) return [];
  const feeding = new Map<string, number>();
  for (const from of [estimate.rooms.from, estimate.branches.from])
    for (const { value } of filledCells(read, from.name))
      feeding.set(plainWord(value), (feeding.get(plainWord(value)) ?? 0) + 1);
  const ways = new Map(
    rowsIn(read, passives.name, OF_PASSIVES)
      .filter((row) => row.word("kind") === "splitter")
      .map((row) => [plainWord(row.called), row.number("ways") ?? 0]),
  );
  const open = rowsIn(read, estimate.branches.id, { device: estimate.branches.device }).reduce(
    (all, { called, word }) => {
      const ports = ways.get(word("device"));
      return ports === undefined ? all : all + Math.max(0, ports - (feeding.get(plainWord(called)) ?? 0));
    },
    0,
  );
  if (open === 0) return [];
  const name = String(listed[0]!.value);
  return [
    doubtful(
      cell.place,
      `${open} ${open === 1 ? "port of a splitter stays" : "ports of splitters stay"} open, and nothing closes them.`,
      listed.length === 1 ? `“${name}”, which is on Parts.` : "One of the end resistors of Parts.",
      "What comes back from an open port spoils the others; none is bought or fitted.",
      listed.length === 1 ? { meant: name } : {},
    ),
  ];
}

const PIECE_WORDS: readonly string[] = [...PIECES];
/** Pieces by the length of their words, so that the whole word is found before a part of it. */
const BY_LENGTH = [...PIECE_WORDS].sort((a, b) => b.length - a.length);

/** A row that is named as one piece of the distribution, and counted for each of another. */
const otherPiece = (read: Book): Finding[] =>
  [
    { list: labour.name, piece: labour.piece },
    { list: fittings.name, piece: fittings.piece },
  ].flatMap(({ list, piece }) =>
    rowsIn(read, list, { piece }).flatMap(({ called, cell, word }): Finding[] => {
      const counted = word("piece");
      const named = BY_LENGTH.find((one) => new RegExp(`\\b${one}s?\\b`, "i").test(called));
      if (named === undefined || !PIECE_WORDS.includes(counted) || alike(named, counted)) return [];
      return [
        doubtful(
          cell("piece")!.place,
          `${called} is counted for each ${counted}.`,
          `For each ${named}, by its name.`,
          "It is bought, or done, as often as there are of the other.",
          { meant: named },
        ),
      ];
    }),
  );

/** One of the two is said within the other, or both are of one thing. */
function alike(named: string, counted: string): boolean {
  const words = (text: string): ReadonlySet<string> => new Set(text.split(" "));
  const [one, other] = [words(named), words(counted)];
  return [...one].some((word) => word.length > 2 && other.has(word));
}

const COUNTS = ["per_outlet", "per_branch", "per_head", "fixed", "per_floor", "per_day"] as const;

const OF_WORK = {
  per_outlet: labour.per_outlet,
  per_branch: labour.per_branch,
  per_head: labour.per_head,
  fixed: labour.fixed,
  per_floor: labour.per_floor,
  per_day: labour.per_day,
  piece: labour.piece,
};

/** Work that is counted for each piece and once more beside. */
function countedTwice(read: Book, computed: Book): Finding[] {
  const counts = new Map(
    PIECES.map((piece, at) => [piece as string, namedValue(computed, eachPiece[at]!.name)]),
  );
  const outlets = namedValue(computed, estimate.count.outlets.name);
  const text = {
    per_outlet: "outlet",
    per_branch: "device",
    per_head: "head unit",
    fixed: "job",
    per_floor: "floor",
    per_day: "day",
  };
  return rowsIn(read, labour.name, OF_WORK).flatMap((row): Finding[] => {
    const used = COUNTS.filter((key) => (row.number(key) ?? 0) > 0);
    const piece = row.word("piece");
    const isOfOutlets = (key: (typeof COUNTS)[number]): boolean =>
      key === "per_outlet" && counts.get(piece) === outlets;
    const beside = piece === "" ? undefined : (used.find(isOfOutlets) ?? used.find((key) => key !== "fixed"));
    const jobAndDay = used.includes("fixed") && used.includes("per_day") ? ("per_day" as const) : undefined;
    const key = beside ?? jobAndDay;
    if (key === undefined) return [];
    const twice = jobAndDay && !beside ? "the job" : `each ${piece}`;
    return [
      doubtful(
        row.cell(key)!.place,
        `${row.called} is counted for ${twice}, and for each ${text[key]} too${isOfOutlets(key) ? `: twice for ${figure(outlets as number)} outlets` : ""}.`,
        "One of the two.",
        "It is priced twice.",
      ),
    ];
  });
}

/** One supplier under two names. */
function suppliers(read: Book): Finding[] {
  const all = PRICED_BLOCKS.flatMap((block) => filledCells(read, estimate[block].supplier.name));
  const counts = new Map<string, number>();
  for (const { value } of all) counts.set(plainWord(value), (counts.get(plainWord(value)) ?? 0) + 1);
  const spelt = new Map(all.map(({ value }) => [plainWord(value), String(value)]));
  return all.flatMap(({ place, value }): Finding[] => {
    const word = plainWord(value);
    if (word.length < FEWEST_LETTERS || counts.get(word)! > 2) return [];
    const other = [...counts].find(
      ([name, count]) =>
        name !== word &&
        count > 2 * counts.get(word)! &&
        differsBy(name, word) <= LETTERS_OFF &&
        !/\d/.test(name + word),
    )?.[0];
    if (other === undefined) return [];
    return [
      doubtful(
        place,
        `The supplier is “${String(value)}” here, and “${spelt.get(other)!}” in ${counts.get(other)!} other rows.`,
        `“${spelt.get(other)!}”, if it is the same.`,
        "The order list makes an order of its own for it.",
        { meant: spelt.get(other)! },
      ),
    ];
  });
}

/** Letters to change, add or leave out to make one word of the other. */
function differsBy(a: string, b: string): number {
  if (Math.abs(a.length - b.length) > LETTERS_OFF) return LETTERS_OFF + 1;
  let before = Array.from({ length: b.length + 1 }, (_, at) => at);
  for (let row = 1; row <= a.length; row++) {
    const now = [row];
    for (let at = 1; at <= b.length; at++)
      now.push(
        Math.min(before[at]! + 1, now[at - 1]! + 1, before[at - 1]! + (a[row - 1] === b[at - 1] ? 0 : 1)),
      );
    before = now;
  }
  return before[b.length]!;
}

/** A conductor of less than half of what its kind asks: a little less is told by its flag on Bonding. */
const thin = (read: Book): Finding[] =>
  rowsIn(read, bonds.where, { size: bonds.size, kind: bonds.kind }).flatMap(
    ({ called, cell, number, word }): Finding[] => {
      const size = number("size");
      const rule = BOND_RULES.find(({ kind }) => plainWord(kind) === word("kind"));
      if (size === undefined || !rule || size >= rule.leastSize / 2) return [];
      return [
        doubtful(
          cell("size")!.place,
          `${called} has ${figure(size)} mm².`,
          `${figure(rule.leastSize)} mm² or more: ${rule.clause}.`,
          "It would carry a fraction of what it is for; the local code and licensed practice decide.",
        ),
      ];
    },
  );
