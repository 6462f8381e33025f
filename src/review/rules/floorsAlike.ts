import type { Named } from "../../formula/build";
import type { Book, BookValue } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import type { Finding, Undoing } from "../finding";
import {
  apartFromFloor,
  areCopies,
  FEWEST_FLOORS,
  fedLike,
  groupsOf,
  linesOf,
  onFloor,
  type Line,
} from "../floors";
import { figure, filledCells, isBlank, namedCells, plainWord, type NamedCell } from "../namedCells";
import { inputsIn, type Input } from "../inputsIn";
import { middleOf } from "../middleOf";
import { clearing, filling, freeRows } from "../rowCells";
import type { Rule } from "../rule";

const { rooms, branches } = estimate;

/** So many floors that say the same leave little doubt. */
const MANY_FLOORS = 5;
/** A length so many times that of the other floors has a decimal point too many. */
const FARTHEST = 3;
/** Of the rows of a floor so many must be on each other one. */
const MOSTLY_ALL = 0.8;
/** Outlets of one flat. */
const MOST_GAPS = 4;

export const floorsAlike: Rule = {
  id: "unlike the other floors",
  reason:
    "Where floors are copies of each other, the one row that differs is a choice, or a slip that no limit sees.",
  example:
    "Outlet 1-13 is a double where 2-13 and 3-13 are family rooms; B1-4 is fed over 1.6 m, B2-4 and B3-4 over 16.",
  find: ({ read, definition }) => [
    ...outlets(read, inputsIn(read, definition)),
    ...devices(read),
    ...otherHouse(read),
    ...sameRoom(read, inputsIn(read, definition)),
    ...otherFloor(read),
    ...oddCables(read),
  ],
};

interface Compared {
  readonly of: Named;
  readonly what: string;
  /** Names count floors. */
  readonly names?: true;
  readonly weight: Finding["weight"];
}

const OF_OUTLETS: readonly Compared[] = [
  { of: rooms.type, what: "type", weight: "doubtful" },
  { of: rooms.from, what: "feed", names: true, weight: "doubtful" },
  { of: rooms.receiver, what: "receiver", weight: "worth knowing" },
  { of: rooms.plate, what: "wall plate", weight: "worth knowing" },
  { of: rooms.cable, what: "cable", weight: "worth knowing" },
  { of: rooms.route, what: "route", weight: "worth knowing" },
];

function outlets(read: Book, inputs: readonly Input[]): Finding[] {
  const lines = linesOf(read, rooms.outlet);
  if (!areCopies(lines)) return [];
  return [
    ...differing(read, lines, OF_OUTLETS),
    ...missing(read, lines, inputs),
    ...floorLeftOut(read, lines, inputs),
    ...lengths(read, lines, rooms.run, "run"),
  ];
}

function devices(read: Book): Finding[] {
  const lines = linesOf(read, branches.id);
  const groups = groupsOf(lines);
  if (lines.length < 2 * FEWEST_FLOORS || lines.some(({ rest }) => groups.get(rest)!.length <= FEWEST_FLOORS))
    return [];
  return [
    ...differing(read, lines, [{ of: branches.device, what: "part", weight: "doubtful" }]),
    ...lengths(read, lines, branches.length, "lead"),
    ...lengthLeftOut(read, lines),
  ];
}

/** The one row of a group in which something else stands than in all the others. */
function differing(read: Book, lines: readonly Line[], columns: readonly Compared[]): Finding[] {
  return columns.flatMap(({ of, what, names, weight }) => {
    const cells = namedCells(read, of.name);
    const said = (line: Line): string =>
      names ? apartFromFloor(cells[line.index]?.value) : plainWord(cells[line.index]?.value);
    const odd = [...groupsOf(lines).values()].flatMap((group) => {
      if (group.length <= FEWEST_FLOORS) return [];
      const counts = new Map<string, Line[]>();
      for (const line of group) {
        const alike = counts.get(said(line));
        if (alike) alike.push(line);
        else counts.set(said(line), [line]);
      }
      if (counts.size !== 2) return [];
      const [usual, alone] = [...counts.values()].sort((a, b) => b.length - a.length) as [Line[], Line[]];
      return alone.length === 1 && usual.length >= FEWEST_FLOORS
        ? [{ line: alone[0]!, like: { ...usual[0]!, of: usual.length } }]
        : [];
    });
    // Several of one column are another kind of floor, not a slip.
    if (odd.length > 2) return [];
    return odd.flatMap(({ line, like }): Finding[] => {
      const [cell, other] = [cells[line.index], cells[like.index]];
      if (!cell || !other) return [];
      const shown = (one: NamedCell): string => (isBlank(one.value) ? "blank" : `“${String(one.value)}”`);
      const own = names ? fedLike(read, of, lines, line) : undefined;
      return [
        {
          weight: like.of >= MANY_FLOORS ? "doubtful" : weight,
          place: cell.place,
          message: `The ${what} of ${line.called} is ${shown(cell)}, on the other floors (${like.called}) ${shown(other)}.`,
          expected: names
            ? "The one of its own floor that the others have."
            : `${shown(other)}, if the floors are alike.`,
          ...(own !== undefined && { meant: own, isGuess: true }),
          ...(!names && typeof other.value === "string" && !isBlank(other.value) && { meant: other.value }),
          ...(!names && isBlank(other.value) && { undoing: [{ place: cell.place }] }),
          effect: "It is priced and predicted otherwise than its like.",
          remedy: "Compare with the plan; say in the note why it differs, if it does.",
        },
      ];
    });
  });
}

/** A length of another size than on the other floors. */
function lengths(read: Book, lines: readonly Line[], of: Named, what: string): Finding[] {
  const cells = namedCells(read, of.name);
  const length = (line: Line): number | undefined => {
    const value = cells[line.index]?.value;
    return typeof value === "number" && value > 0 ? value : undefined;
  };
  return [...groupsOf(lines).values()].flatMap((group) => {
    const known = group.filter((line) => length(line) !== undefined);
    if (known.length <= FEWEST_FLOORS) return [];
    return known.flatMap((line): Finding[] => {
      const others = known.filter((one) => one !== line).map((one) => length(one)!);
      const [low, high] = [Math.min(...others), Math.max(...others)];
      const is = length(line)!;
      if (is > low / FARTHEST && is < high * FARTHEST) return [];
      return [
        {
          weight: "doubtful",
          place: cells[line.index]!.place,
          message: `The ${what} of ${line.called} is ${figure(is)}, on the other floors ${low === high ? figure(low) : `${figure(low)} to ${figure(high)}`}.`,
          expected: "A length like those of the other floors.",
          usual: { low, high },
          effect: "Its level and the cable to buy go by it.",
          remedy: "Compare with the plan, above all the decimal point.",
        },
      ];
    });
  });
}

/** A blank is a device that sits right at what feeds it; on all other floors it hangs on a lead. */
function lengthLeftOut(read: Book, lines: readonly Line[]): Finding[] {
  const cells = namedCells(read, branches.length.name);
  return [...groupsOf(lines).values()].flatMap((group): Finding[] => {
    const without = group.filter((line) => isBlank(cells[line.index]?.value));
    const others = group.flatMap((line) => {
      const value = cells[line.index]?.value;
      return typeof value === "number" && value > 0 ? [value] : [];
    });
    const [line] = without;
    if (!line || without.length > 1 || others.length < FEWEST_FLOORS || others.length < group.length - 1)
      return [];
    const [low, high] = [Math.min(...others), Math.max(...others)];
    return [
      {
        weight: "doubtful",
        place: cells[line.index]!.place,
        message: `The lead of ${line.called} is blank, on the other floors ${low === high ? figure(low) : `${figure(low)} to ${figure(high)}`}.`,
        expected: "A length like those of the other floors, unless it sits right at what feeds it.",
        ...(low === high ? { meant: low, isGuess: true as const } : { usual: { low, high } }),
        effect: "Its cable is neither bought nor reckoned with.",
        remedy: "Compare with the plan.",
      },
    ];
  });
}

/** A number that all other floors have, and one has not. */
function missing(read: Book, lines: readonly Line[], inputs: readonly Input[]): Finding[] {
  const floors = [...new Set(lines.map(({ floor }) => floor))];
  const gaps = [...groupsOf(lines).values()].flatMap((group) => {
    const without = floors.filter((floor) => !group.some((line) => line.floor === floor));
    return without.length === 1 && group.length >= FEWEST_FLOORS && group.length === floors.length - 1
      ? [{ floor: without[0]!, like: group[0]! }]
      : [];
  });
  // A flat has some; a floor that lacks more, or floors that lack something each, are another kind of house.
  if (gaps.length > MOST_GAPS || new Set(gaps.map(({ floor }) => floor)).size > 1) return [];
  return gaps.slice(0, 1).flatMap(({ floor, like }): Finding[] => {
    const own = lines.filter((line) => line.floor === floor);
    const number = (line: Line): string => line.rest;
    const before = own
      .filter((line) => number(line).localeCompare(like.rest, "en", { numeric: true }) < 0)
      .at(-1);
    const after = own.find(
      (line) =>
        line !== before && number(line).localeCompare(gaps.at(-1)!.like.rest, "en", { numeric: true }) > 0,
    );
    // At the end of a floor it may just have a room less.
    if (!before || !after) return [];
    const gap = { sheet: before.place.sheet, cell: below(before.place.cell) };
    const lost = gaps.map((one) => ({ rest: one.like.rest, floor }));
    const undoing = rowsLike(read, lines, inputs, lost, before.index + 1);
    return [
      {
        weight: "doubtful",
        place: gap,
        ...(undoing && { undoing, isGuess: true }),
        message: `Floor ${floor} has ${before.called} and ${after.called}, and not what is ${like.called} on another floor${gaps.length > 1 ? `, and ${gaps.length - 1} more` : ""}.`,
        expected: "An outlet there, as on the other floors; or a note that there is none.",
        effect: "It is neither priced nor planned.",
        remedy: "Compare with the plan: was its row deleted?",
      },
    ];
  });
}

/** Devices of a floor that has no outlet, where each other floor with devices has all of them. */
function floorLeftOut(read: Book, lines: readonly Line[], inputs: readonly Input[]): Finding[] {
  const devices = linesOf(read, branches.id);
  const filled = new Set(lines.map(({ floor }) => Number(floor)));
  const empty = [...new Set(devices.map(({ floor }) => Number(floor)))].filter((one) => !filled.has(one));
  const groups = groupsOf(lines);
  if (empty.length !== 1 || filled.size <= FEWEST_FLOORS) return [];
  const onAll = [...groups.values()].filter((group) => group.length === filled.size);
  const of = devices.filter(({ floor }) => Number(floor) === empty[0]);
  // A cellar has devices and other outlets.
  const isLike = of.every(({ rest }) => devices.filter((one) => one.rest === rest).length > FEWEST_FLOORS);
  if (onAll.length < MOSTLY_ALL * groups.size || !isLike) return [];
  const floor = of[0]!.floor;
  const lost = onAll.map(([like]) => ({ rest: like!.rest, floor }));
  const undoing = rowsLike(read, lines, inputs, lost, lines.at(-1)!.index + 1);
  return [
    {
      weight: "doubtful",
      place: of[0]!.place,
      message: `Floor ${floor} has ${of.length} ${of.length === 1 ? "device" : "devices"} and no outlet; the other floors have ${onAll.length} each.`,
      expected: "Its outlets, as on the other floors; or no devices.",
      ...(undoing && { undoing, isGuess: true }),
      effect: "They are neither priced nor planned, and its devices are bought for nothing.",
      remedy: "Compare with the plan: were its rows left out?",
    },
  ];
}

/** Rows that are on the other floors, as they are likely on this one; undefined where there is no room for them. */
function rowsLike(
  read: Book,
  lines: readonly Line[],
  inputs: readonly Input[],
  lost: readonly Pick<Line, "floor" | "rest">[],
  near: number,
): Undoing[] | undefined {
  const free = freeRows(inputs, "rooms", near);
  const own = inputs.filter(({ block }) => block === "rooms");
  const floorCells = namedCells(read, rooms.floor.name);
  const groups = groupsOf(lines);
  if (free.length < lost.length) return undefined;
  return lost.flatMap(({ floor, rest }, at) => {
    const alike = groups.get(rest)!;
    const there = lines.find((one) => one.floor === floor);
    const [like] = alike as [Line];
    const values = Object.fromEntries(
      own.map(({ name, cells }): [string, BookValue | undefined] => {
        const said = alike.flatMap(({ index }) => {
          const value = cells.find((cell) => cell.index === index)?.value;
          return isBlank(value) || typeof value === "object" ? [] : [value];
        });
        return [name.slice("rooms_".length), said.length * 2 > alike.length ? middleOf(said) : undefined];
      }),
    );
    const floorOfLike = floorCells[like.index]?.value;
    return filling(inputs, "rooms", free[at]!, {
      ...values,
      // Which of its rooms it is the other floors do not say.
      room: undefined,
      note: undefined,
      floor: there
        ? String(floorCells[there.index]?.value ?? "")
        : onFloor(String(floorOfLike ?? ""), like.floor, floor),
      outlet: onFloor(like.called, like.floor, floor),
      from: fedLike(read, rooms.from, lines, { floor, rest, index: -1 }),
    });
  });
}

const below = (cell: string): string => cell.replace(/\d+$/, (row) => String(Number(row) + 1));

/** An outlet that hangs on a device of another floor, while all others of its floor hang together. */
function otherHouse(read: Book): Finding[] {
  const [floors, froms] = [namedCells(read, rooms.floor.name), namedCells(read, rooms.from.name)];
  const rows = filledCells(read, rooms.outlet.name)
    .map(({ value, index }) => ({
      called: String(value),
      floor: plainWord(floors[index]?.value),
      from: plainWord(froms[index]?.value),
      cell: froms[index]!,
    }))
    .filter(({ floor, from }) => floor !== "" && from !== "");
  // Counted once, because a job may have thousands.
  const floorsOf = countedBy(rows, "from", "floor");
  const feedsOf = countedBy(rows, "floor", "from");
  const odd = rows.flatMap((row): { row: (typeof rows)[number]; usual: string }[] => {
    const [beside, home] = [floorsOf.get(row.from)!, feedsOf.get(row.floor)!];
    const isAlone = beside.get(row.floor) === 1 && beside.size > 1;
    if (!isAlone || sumOf(beside) <= FEWEST_FLOORS || sumOf(home) <= FEWEST_FLOORS) return [];
    // What feeds the others of its floor feeds that floor alone.
    const ownFeeds = [...home.keys()].filter((from) => from !== row.from);
    return ownFeeds.length > 0 && ownFeeds.every((from) => floorsOf.get(from)!.size === 1)
      ? [{ row, usual: ownFeeds[0]! }]
      : [];
  });
  if (odd.length > 1) return [];
  return odd.map(({ row, usual }) => ({
    weight: "doubtful",
    place: row.cell.place,
    message: `${row.called} is fed from ${String(row.cell.value)}, which else feeds another floor alone.`,
    expected: `What feeds the others of its floor, such as ${usual.toUpperCase()}.`,
    effect: "Its run, its level and its head unit are those of another place.",
    remedy: "Compare with the plan.",
  }));
}

type FedRow = Readonly<Record<"floor" | "from", string>>;

function countedBy(
  rows: readonly FedRow[],
  key: keyof FedRow,
  of: keyof FedRow,
): ReadonlyMap<string, ReadonlyMap<string, number>> {
  const all = new Map<string, Map<string, number>>();
  for (const row of rows) {
    const counts = all.get(row[key]) ?? new Map<string, number>();
    all.set(row[key], counts.set(row[of], (counts.get(row[of]) ?? 0) + 1));
  }
  return all;
}

const sumOf = (counts: ReadonlyMap<string, number>): number =>
  [...counts.values()].reduce((sum, count) => sum + count, 0);

/** Where more rooms have several outlets, a room that has two is none the less one of them. */
const FEW = 1 / 12;

/** A row that was copied and kept its room and its run, where each room has one outlet. */
function sameRoom(read: Book, inputs: readonly Input[]): Finding[] {
  const [floors, names, runs, froms] = [rooms.floor, rooms.room, rooms.run, rooms.from].map(({ name }) =>
    namedCells(read, name),
  ) as [NamedCell[], NamedCell[], NamedCell[], NamedCell[]];
  const rows = filledCells(read, rooms.outlet.name).flatMap(({ value, index }) =>
    isBlank(names[index]?.value)
      ? []
      : [
          {
            called: String(value),
            room: JSON.stringify([plainWord(floors[index]?.value), plainWord(names[index]?.value)]),
            copied: JSON.stringify([runs[index]?.value, plainWord(froms[index]?.value)]),
            index,
            cell: names[index]!,
          },
        ],
  );
  const counts = new Map<string, number>();
  for (const { room } of rows) counts.set(room, (counts.get(room) ?? 0) + 1);
  const several = [...counts.values()].filter((count) => count > 1).length;
  if (several === 0 || several > rows.length * FEW) return [];
  const seen = new Map<string, (typeof rows)[number]>();
  return rows.flatMap((row): Finding[] => {
    const first = seen.get(row.room);
    seen.set(row.room, first ?? row);
    if (!first || first.copied !== row.copied || plainWord(first.called) === plainWord(row.called)) return [];
    return [
      {
        weight: "doubtful",
        place: row.cell.place,
        message: `${row.called} is in ${String(row.cell.value)} as ${first.called} is, with the same run and feed; other rooms have one outlet.`,
        expected: "Its own room and run: was the row copied?",
        effect: "Its length, and what the crew finds on its list, are another room's.",
        remedy: "Compare with the plan.",
        undoing: clearing(read, inputs, "rooms", row.index),
        isGuess: true,
      },
    ];
  });
}

/** A floor that one outlet alone has, among others of the same feed that are all on one. */
function otherFloor(read: Book): Finding[] {
  const [floors, froms] = [rooms.floor, rooms.from].map(({ name }) => namedCells(read, name)) as [
    NamedCell[],
    NamedCell[],
  ];
  const rows = filledCells(read, rooms.outlet.name).flatMap(({ value, index }) => {
    const cell = floors[index];
    return cell && !isBlank(cell.value)
      ? [{ called: String(value), floor: plainWord(cell.value), from: plainWord(froms[index]?.value), cell }]
      : [];
  });
  const counts = new Map<string, number>();
  const byFeed = new Map<string, typeof rows>();
  for (const row of rows) {
    counts.set(row.floor, (counts.get(row.floor) ?? 0) + 1);
    const fed = byFeed.get(row.from);
    if (fed) fed.push(row);
    else byFeed.set(row.from, [row]);
  }
  return rows.flatMap((row): Finding[] => {
    if (counts.get(row.floor) !== 1 || row.from === "") return [];
    const beside = (byFeed.get(row.from) ?? []).filter((other) => other !== row);
    const [usual] = beside;
    if (beside.length <= FEWEST_FLOORS || beside.some(({ floor }) => floor !== usual!.floor)) return [];
    return [
      {
        weight: "doubtful",
        place: row.cell.place,
        message: `${row.called} alone is on “${String(row.cell.value)}”; the ${beside.length} others of ${String(froms.find(({ value }) => plainWord(value) === row.from)?.value)} are on “${String(usual!.cell.value)}”.`,
        expected: `“${String(usual!.cell.value)}”, as those fed beside it.`,
        meant: String(usual!.cell.value),
        effect: "A floor more is counted, and difficulties of its floor pass it by.",
        remedy: "Compare with the plan.",
      },
    ];
  });
}

const SAME_CABLE = 6;

/** One feeder or lead of another cable than all the others of its list. */
const oddCables = (read: Book): Finding[] =>
  [
    { named: estimate.feeders.from, cable: estimate.feeders.cable, what: "feeder" },
    { named: branches.id, cable: branches.cable, what: "lead" },
  ].flatMap(({ named, cable, what }): Finding[] => {
    const cells = namedCells(read, cable.name);
    const rows = filledCells(read, named.name).flatMap(({ value, index }) =>
      cells[index] ? [{ called: String(value), cell: cells[index] }] : [],
    );
    const counts = new Map<string, typeof rows>();
    for (const row of rows)
      counts.set(plainWord(row.cell.value), [...(counts.get(plainWord(row.cell.value)) ?? []), row]);
    if (counts.size !== 2) return [];
    const [usual, alone] = [...counts.values()].sort((a, b) => b.length - a.length) as [
      typeof rows,
      typeof rows,
    ];
    if (
      alone.length !== 1 ||
      usual.length < SAME_CABLE ||
      isBlank(alone[0]!.cell.value) ||
      isBlank(usual[0]!.cell.value)
    )
      return [];
    return [
      {
        weight: "worth knowing",
        place: alone[0]!.cell.place,
        message: `The ${what} of ${alone[0]!.called} is of “${String(alone[0]!.cell.value)}”, the ${usual.length} others are of “${String(usual[0]!.cell.value)}”.`,
        expected: `“${String(usual[0]!.cell.value)}”, unless it is meant.`,
        effect: "It loses, costs and resists otherwise.",
        remedy: "Compare with the plan.",
      },
    ];
  });
