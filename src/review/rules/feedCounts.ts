import type { Book } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import type { Finding, Undoing } from "../finding";
import { areCopies, groupsOf, linesOf } from "../floors";
import { inputsIn } from "../inputsIn";
import { filledCells, figure, isBlank, namedCells, plainWord, type NamedCell } from "../namedCells";
import { clearing } from "../rowCells";
import type { Rule } from "../rule";

/** Something that is fed: where that is said, and on which floor it is. */
interface Fed {
  readonly name: string;
  readonly from: string;
  readonly place: NamedCell["place"];
  readonly kind: "outlet" | "device";
  readonly floor: string;
  readonly index: number;
}

export const feedCounts: Rule = {
  id: "too many on one feed",
  reason:
    "A port feeds one thing: more than there are ports get a level that no device gives, as if a splitter cost nothing.",
  example:
    "Seven outlets on a splitter of six ways; an outlet beside the splitter on a head unit's one output.",
  find: ({ read, computed, definition }) => {
    const fed = allFed(read);
    const inputs = inputsIn(read, definition);
    return [
      ...devices(read, fed, (rows) => rows.flatMap(({ index }) => clearing(read, inputs, "rooms", index))),
      ...heads(read, fed),
      ...receivers(read, computed),
    ];
  },
};

function allFed(read: Book): Fed[] {
  const rows = (named: string, from: string, kind: Fed["kind"], floors: string): Fed[] => {
    const [sources, floor] = [namedCells(read, from), namedCells(read, floors)];
    return filledCells(read, named).flatMap(({ index, value }) => {
      const source = sources[index];
      return source && !isBlank(source.value)
        ? [
            {
              name: String(value),
              from: plainWord(source.value),
              place: source.place,
              kind,
              floor: plainWord(floor[index]?.value),
              index,
            },
          ]
        : [];
    });
  };
  return [
    ...rows(estimate.branches.id.name, estimate.branches.from.name, "device", ""),
    ...rows(estimate.rooms.outlet.name, estimate.rooms.from.name, "outlet", estimate.rooms.floor.name),
  ];
}

/** The ways of a device, and for a tap the line that goes on; an inserter stands in a line. */
function devices(
  read: Book,
  fed: readonly Fed[],
  cleared: (rows: readonly Fed[]) => readonly Undoing[],
): Finding[] {
  const alone = onNoOtherFloor(read);
  const parts = namedCells(read, estimate.branches.device.name);
  const [ways, kinds] = [
    namedCells(read, estimate.passives.ways.name),
    namedCells(read, estimate.passives.kind.name),
  ];
  const known = new Map(
    filledCells(read, estimate.passives.name.name).map(({ value, index }) => [plainWord(value), index]),
  );
  const inserters = new Set(
    filledCells(read, estimate.supplies.name.name).map(({ value }) => plainWord(value)),
  );
  return filledCells(read, estimate.branches.id.name).flatMap(({ value, index }) => {
    const part = plainWord(parts[index]?.value);
    const device = known.get(part);
    const count = device !== undefined ? ways[device]?.value : inserters.has(part) ? 1 : undefined;
    if (typeof count !== "number") return [];
    const own = fed.filter(({ from }) => from === plainWord(value));
    const isTap = device !== undefined && plainWord(kinds[device]?.value) === "tap";
    const ports = count + (isTap ? 1 : 0);
    if (own.length <= ports) return [];
    const strange = own.filter(({ kind, index: row }) => kind === "outlet" && alone.has(row));
    const isPasted = strange.length === own.length - ports;
    return [
      tooMany(
        (isPasted ? strange[0] : oddOneOut(own)) ?? { place: parts[index]!.place },
        `${String(value)} feeds ${own.length}: ${listed(own)}. Its part has ${figure(ports)} ${ports === 1 ? "port" : "ports"}.`,
        "As many as it has ports.",
        isPasted ? { undoing: cleared(strange), isGuess: true } : {},
      ),
    ];
  });
}

/** Rows of outlets that one floor alone has, in a house whose floors are copies. */
function onNoOtherFloor(read: Book): ReadonlySet<number> {
  const lines = linesOf(read, estimate.rooms.outlet);
  if (!areCopies(lines)) return new Set();
  return new Set(
    [...groupsOf(lines).values()].flatMap((group) => (group.length === 1 ? [group[0]!.index] : [])),
  );
}

/** Common practice, no source: so many receivers may stand at one outlet. */
const MOST_RECEIVERS = 4;

/** More receivers than their outlet has connectors, with nothing that splits them. */
function receivers(read: Book, computed: Book): Finding[] {
  const verdicts = namedCells(computed, estimate.rooms.check.connectors.name);
  const [counts, runs] = [estimate.rooms.quantity, estimate.rooms.run].map(({ name }) =>
    namedCells(read, name),
  );
  return filledCells(read, estimate.rooms.outlet.name).flatMap(({ value, index }): Finding[] => {
    const cell = counts![index];
    if (verdicts[index]?.value !== "too many" || typeof cell?.value !== "number" || cell.value < 2) return [];
    const run = runs![index];
    // A run of a metre beside a dozen receivers: the two were exchanged.
    const isExchanged =
      typeof run?.value === "number" &&
      Number.isInteger(run.value) &&
      run.value >= 1 &&
      run.value <= MOST_RECEIVERS &&
      cell.value > MOST_RECEIVERS;
    return [
      {
        weight: "doubtful",
        place: cell.place,
        ...(isExchanged && {
          undoing: [
            { place: cell.place, value: run.value! },
            { place: run.place, value: cell.value },
          ],
        }),
        message: `${String(value)} has ${figure(cell.value)} receivers, and nothing splits its connector.`,
        expected: "One, or what splits them, in Split by.",
        usual: { low: 1, high: 1 },
        effect: "Only one of them can be connected.",
        remedy: "Look whether so many were meant, and name what splits them.",
      },
    ];
  });
}

/** The outputs of a head unit; one where Parts says nothing. */
function heads(read: Book, fed: readonly Fed[]): Finding[] {
  const [types, outputs] = [
    namedCells(read, estimate.heads.type.name),
    namedCells(read, estimate.units.outputs.name),
  ];
  const known = new Map(
    filledCells(read, estimate.units.name.name).map(({ value, index }) => [
      plainWord(value),
      Number(outputs[index]?.value) || 1,
    ]),
  );
  return filledCells(read, estimate.heads.id.name).flatMap(({ value, index }) => {
    const own = fed.filter(({ from }) => from === plainWord(value));
    const has = known.get(plainWord(types[index]?.value)) ?? 1;
    if (own.length <= has) return [];
    return [
      tooMany(
        own.find(({ kind }) => kind === "outlet") ?? own.at(-1)!,
        `${has === 1 ? "The one output" : `Each of the ${has} outputs`} of ${String(value)} feeds one thing, and ${own.length} are said to hang there: ${listed(own)}.`,
        `${has === 1 ? "One" : "One each"}: a splitter parts it.`,
      ),
    ];
  });
}

function tooMany(
  { place }: Pick<Fed, "place">,
  message: string,
  expected: string,
  more: Partial<Finding> = {},
): Finding {
  return {
    weight: "wrong",
    place,
    message,
    expected,
    effect: "Each is predicted the full level of a port.",
    remedy: "Compare “fed from” with the plan, first in this row; or choose a device with more ports.",
    ...more,
  };
}

/** The one device among outlets, the one outlet among devices, or the one of another floor: the likely slip. */
function oddOneOut(own: readonly Fed[]): Fed | undefined {
  for (const key of ["kind", "floor"] as const) {
    const groups = new Map<string, Fed[]>();
    for (const one of own) groups.set(one[key], [...(groups.get(one[key]) ?? []), one]);
    const alone = [...groups.values()].filter((group) => group.length === 1);
    if (groups.size === 2 && alone.length === 1) return alone[0]![0];
  }
  return undefined;
}

const MOST_LISTED = 8;
const listed = (own: readonly Fed[]): string =>
  own
    .slice(0, MOST_LISTED)
    .map(({ name }) => name)
    .join(", ") + (own.length > MOST_LISTED ? ` and ${own.length - MOST_LISTED} more` : "");
