import type { Book } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import type { Finding } from "../finding";
import { inputsIn, type Input } from "../inputsIn";
import { middleOf } from "../middleOf";
import { filledCells, isBlank, lookupWord, namedCells, plainWord } from "../namedCells";
import { filling, freeRows } from "../rowCells";
import type { Rule } from "../rule";
import { rowsIn } from "../rowsIn";

export const feeding: Rule = {
  id: "feeding",
  reason:
    "An outlet is fed by one device, head unit or outlet before it; by none, by two or in a ring the tree cannot be added up.",
  example: "Outlet 12-1 is fed from S9, and there is no S9; or S2 is fed from S3 and S3 from S2.",
  find: ({ read, computed, definition }) => {
    const inputs = inputsIn(read, definition);
    const sources = [
      ...filledCells(read, estimate.branches.id.name),
      ...filledCells(read, estimate.heads.id.name),
    ];
    const known = new Map<string, string>();
    const twice: Finding[] = [];
    for (const { place, value } of sources) {
      const id = plainWord(value);
      const first = known.get(id);
      if (first === undefined) known.set(id, `${place.sheet} ${place.cell}`);
      else {
        twice.push({
          weight: "wrong",
          place,
          message: `${String(value)} is the name of another feeder too, in ${first}.`,
          expected: "A name of its own.",
          effect: "Its feed is ambiguous; the first match is used.",
          remedy: "Rename one, and correct “fed from” where it was meant.",
        });
      }
    }
    // A loop-through outlet feeds the next; its own name is the rule of duplicates' to look at.
    for (const { place, value } of filledCells(read, estimate.rooms.outlet.name))
      if (!known.has(plainWord(value))) known.set(plainWord(value), `${place.sheet} ${place.cell}`);
    // A feeder that is named as another has lost its own name, and what names that one is not at fault.
    const renamedFrom = renamedSources(read, known);
    const renamed = new Set(lostNames(read, known).slice(0, twice.length));
    return [
      ...twice.map((one, index): Finding => {
        const lost = [...renamed][index];
        return lost === undefined
          ? one
          : { ...one, meant: lost, expected: `A name of its own: ${lost}, by what is fed from it.` };
      }),
      ...fedByTwo(read),
      ...rings(read),
      ...unfed(estimate.rooms.outlet.name, estimate.rooms.from.name),
      ...unfed(estimate.branches.id.name, estimate.branches.from.name),
      ...aloft(read, renamedFrom),
      ...feederLost(read, inputs),
      ...feederTurned(read),
      ...feederCounted(read, computed),
    ];

    function unfed(named: string, from: string): Finding[] {
      const sources = namedCells(read, from);
      return filledCells(read, named).flatMap(({ index, value }): Finding[] => {
        const source = sources[index];
        if (!source || known.has(lookupWord(source.value)) || renamed.has(String(source.value))) return [];
        const alike = isBlank(source.value) ? undefined : known.get(plainWord(source.value));
        if (alike !== undefined)
          return [
            {
              weight: "wrong",
              place: source.place,
              message: `${String(value)} is fed from “${String(source.value)}”, with a blank at its end.`,
              expected: `“${String(source.value).trim()}”, as in ${alike}.`,
              effect: "Its level cannot be found, and its tuners are counted nowhere.",
              remedy: "Enter the name again.",
              meant: String(source.value).trim(),
            },
          ];
        return [
          {
            weight: "wrong",
            place: source.place,
            message: isBlank(source.value)
              ? `Nothing feeds ${String(value)}.`
              : `${String(value)} is fed from ${String(source.value)}, which is not there.`,
            expected: "A device, head unit or outlet of this workbook.",
            ...renamedFrom(String(source.value ?? "")),
            effect: "Its level cannot be found, and its tuners are counted nowhere.",
            remedy: "Enter the name of what feeds it as it stands on Distribution, Head units or Rooms.",
          },
        ];
      });
    }
  },
};

/** A source that feeds nothing and whose name is the lost one with a word more was given another name there. */
function renamedSources(
  read: Book,
  known: ReadonlyMap<string, string>,
): (lost: string) => Pick<Finding, "undoing" | "isGuess"> {
  const feeding = new Set(
    [estimate.rooms.from, estimate.branches.from, estimate.feeders.to, estimate.feeders.from].flatMap(
      ({ name }) => filledCells(read, name).map(({ value }) => plainWord(value)),
    ),
  );
  const idle = [estimate.branches.id, estimate.heads.id, estimate.dishes.name]
    .flatMap(({ name }) => filledCells(read, name))
    .filter(({ value }) => !feeding.has(plainWord(value)));
  return (lost) => {
    const word = plainWord(lost);
    const begins = idle.filter(({ value }) => plainWord(value).startsWith(`${word} `));
    return word !== "" && !known.has(word) && begins.length === 1
      ? { undoing: [{ place: begins[0]!.place, value: lost }], isGuess: true }
      : {};
  };
}

/** A switch to which no feeder comes, where one comes to each other of its kind. */
function feederLost(read: Book, inputs: readonly Input[]): Finding[] {
  const { heads, feeders } = estimate;
  const rows = rowsIn(read, heads.id, { type: heads.type });
  const cables = rowsIn(read, feeders.from, { to: feeders.to });
  const to = new Set(cables.map(({ word }) => word("to")));
  const lost = rows.filter(
    (row) =>
      !to.has(plainWord(row.called)) &&
      rows.filter((other) => other !== row && other.word("type") === row.word("type")).length > 0 &&
      rows.every(
        (other) =>
          other === row || other.word("type") !== row.word("type") || to.has(plainWord(other.called)),
      ),
  );
  // With two feeders to one switch it is a feeder that goes the wrong way.
  if (lost.length !== 1 || to.size < cables.length) return [];
  const head = lost[0]!;
  const ids = new Set(rows.map(({ called }) => plainWord(called)));
  const next = new Map(cables.map(({ called, word }) => [plainWord(called), word("to")]));
  const below = new Set<string>();
  for (
    let at: string | undefined = plainWord(head.called);
    at !== undefined && !below.has(at);
    at = next.get(at)
  )
    below.add(at);
  const before = rows.filter(({ called }) => !next.has(plainWord(called)) && !below.has(plainWord(called)));
  const between = cables.filter(({ called }) => ids.has(plainWord(called)));
  const [row] = freeRows(inputs, "feeders", gapIn(read, feeders.from.name));
  const place = row === undefined ? head.place : namedCells(read, feeders.from.name)[row]!.place;
  const own = inputs.filter(({ block }) => block === "feeders");
  const values = Object.fromEntries(
    own.map(({ name, cells }) => [
      name.slice("feeders_".length),
      middleOf(
        between.flatMap(({ index }) => {
          const value = cells.find((cell) => cell.index === index)?.value;
          return isBlank(value) || typeof value === "object" ? [] : [value];
        }),
      ),
    ]),
  );
  const undoing =
    row === undefined || before.length !== 1 || between.length === 0
      ? undefined
      : filling(inputs, "feeders", row, { ...values, from: before[0]!.called, to: head.called });
  return [
    {
      weight: "wrong",
      place,
      message: `No feeder comes to ${head.called}, and one comes to each other of its kind.`,
      expected: `A row from a dish, or from the switch before${before.length === 1 ? `, likely ${before[0]!.called}` : ""}.`,
      ...(undoing && { undoing, isGuess: true }),
      effect: "What hangs on it cannot be worked out, and no cable to it is bought.",
      remedy: "Compare with the plan: was its row left out?",
    },
  ];
}

/** @returns the first empty row among the filled ones, else the one after them */
function gapIn(read: Book, name: string): number {
  const filled = filledCells(read, name).map(({ index }) => index);
  const gap = filled.find((index, at) => at > 0 && index > filled[at - 1]! + 1);
  return gap === undefined ? (filled.at(-1) ?? 0) + 1 : filled[filled.indexOf(gap) - 1]! + 1;
}

/** A feeder to a switch that has another, from one that has none: it is typed the wrong way round. */
function feederTurned(read: Book): Finding[] {
  const { heads, feeders } = estimate;
  const ids = new Set(filledCells(read, heads.id.name).map(({ value }) => plainWord(value)));
  const rows = rowsIn(read, feeders.from, { to: feeders.to });
  const comes = (id: string): number => rows.filter(({ word }) => word("to") === id).length;
  const turned = rows.filter(
    ({ called, word }) =>
      ids.has(plainWord(called)) && comes(plainWord(called)) === 0 && comes(word("to")) > 1,
  );
  if (turned.length !== 1) return [];
  const { called, place, cell } = turned[0]!;
  const to = cell("to")!;
  return [
    {
      weight: "wrong",
      place,
      message: `The feeder from ${called} to ${String(to.value)}: another comes there, and none to ${called}.`,
      expected: `From ${String(to.value)} to ${called}, likely.`,
      undoing: [
        { place, value: String(to.value) },
        { place: to.place, value: called },
      ],
      isGuess: true,
      effect: "Neither can be worked out, nor what hangs on them.",
      remedy: "Compare with the plan: was it typed the wrong way round?",
    },
  ];
}

/** A number of cables that its switch or feed does not take, where the other rows leave it to their kind. */
function feederCounted(read: Book, computed: Book): Finding[] {
  const { from, to, quantity, check } = estimate.feeders;
  const rows = rowsIn(read, from, { to, quantity });
  const [verdicts, reasons] = [check.row, check.trouble].map(({ name }) => namedCells(computed, name));
  const counted = rows.filter(({ number }) => number("quantity") !== undefined);
  if (counted.length !== 1 || rows.length < 2) return [];
  const { called, index, cell, number } = counted[0]!;
  if (verdicts![index]?.value !== "bad") return [];
  const why = reasons![index]?.value;
  return [
    {
      weight: "doubtful",
      place: cell("quantity")!.place,
      message: `${String(number("quantity"))} ${number("quantity") === 1 ? "cable runs" : "cables run"} from ${called} to ${String(cell("to")?.value)}: ${typeof why === "string" ? why : "they do not fit."}`,
      expected: "Blank, as in the other rows: what the kind of head unit asks.",
      undoing: [{ place: cell("quantity")!.place }],
      isGuess: true,
      effect: "What hangs on it is not worked out, and another number of cables is bought.",
      remedy: "Clear the cell, or correct the number.",
    },
  ];
}

/** The names that are fed from and that no feeder has, once each. */
function lostNames(read: Book, known: ReadonlyMap<string, string>): string[] {
  const wanted = [estimate.rooms.from.name, estimate.branches.from.name].flatMap((name) =>
    filledCells(read, name).map(({ value }) => String(value)),
  );
  return [...new Set(wanted)].filter((one) => !known.has(plainWord(one)));
}

/** The same outlet in two rows with two feeders; with one feeder it is a row pasted twice, which has a rule of its own. */
function fedByTwo(book: Book): Finding[] {
  const sources = namedCells(book, estimate.rooms.from.name);
  const first = new Map<string, string>();
  return filledCells(book, estimate.rooms.outlet.name).flatMap(({ index, value }): Finding[] => {
    const source = sources[index];
    const name = plainWord(value);
    const other = first.get(name);
    if (!source || isBlank(source.value)) return [];
    if (other === undefined) {
      first.set(name, String(source.value));
      return [];
    }
    if (other.trim().toLowerCase() === plainWord(source.value)) return [];
    return [
      {
        weight: "wrong",
        place: source.place,
        message: `${String(value)} is fed from ${String(source.value)} here and from ${other} further up.`,
        expected: "One feeder for each outlet.",
        effect: "It is counted and priced twice, and its tuners on both.",
        remedy: "Clear the row that is wrong, or give the second outlet a name of its own.",
      },
    ];
  });
}

/** Dishes and head units that the sheets of what lies before the tree name, and that are not there. */
function aloft(read: Book, renamed: (lost: string) => Pick<Finding, "undoing" | "isGuess">): Finding[] {
  const named = (name: string): string[] => filledCells(read, name).map(({ value }) => lookupWord(value));
  const dishes = named(estimate.dishes.name.name);
  const onDish = new Set(dishes.length > 0 ? dishes : [ONLY_DISH]);
  const heads = new Set(named(estimate.heads.id.name));
  const either = new Set([...onDish, ...heads]);
  return [
    { of: estimate.heads.dish.name, there: onDish, what: "A dish of the sheet Dishes" },
    { of: estimate.feeders.from.name, there: either, what: "A dish, or the switch before" },
    { of: estimate.feeders.to.name, there: heads, what: "A head unit of this workbook" },
  ].flatMap(({ of, there, what }) =>
    filledCells(read, of).flatMap(({ place, value }): Finding[] =>
      there.has(lookupWord(value))
        ? []
        : [
            {
              weight: "wrong",
              place,
              message: `${String(value)} is named here, and is not there.`,
              expected: `${what}.`,
              ...renamed(String(value)),
              effect: "What comes from it cannot be found, and nothing of it is counted.",
              remedy: "Enter the name as it stands on Dishes or Head units.",
            },
          ],
    ),
  );
}

/** What the dish is called where Dishes has no row. */
const ONLY_DISH = "dish";

/** Devices or outlets that feed each other: told once, at the one of the ring that stands highest. */
function rings(book: Book): Finding[] {
  const rows = [
    { named: estimate.branches.id.name, from: estimate.branches.from.name },
    { named: estimate.rooms.outlet.name, from: estimate.rooms.from.name },
  ].flatMap(({ named, from }) => {
    const sources = namedCells(book, from);
    return filledCells(book, named).map(({ index, value }) => ({
      id: plainWord(value),
      name: String(value),
      from: plainWord(sources[index]?.value),
      place: sources[index]?.place,
    }));
  });
  const byId = new Map([...rows].reverse().map((row) => [row.id, row]));
  const told = new Set<string>();
  return rows.flatMap((start): Finding[] => {
    const path = new Set<string>();
    let at: (typeof rows)[number] | undefined = start;
    while (at && !path.has(at.id)) {
      path.add(at.id);
      at = byId.get(at.from);
    }
    if (at !== start || told.has(start.id)) return [];
    for (const id of path) told.add(id);
    return [
      {
        weight: "wrong",
        place: start.place,
        message: `${start.name} is fed by itself${path.size > 1 ? `, round by ${path.size - 1} ${path.size === 2 ? "other" : "others"}` : ""}.`,
        expected: "A way from each device and outlet back to a head unit.",
        effect: "No level behind it can be found.",
        remedy: "Compare “fed from” with the plan; one of them names the wrong one.",
      },
    ];
  });
}
