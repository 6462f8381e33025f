import type { Book } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import type { Finding } from "../finding";
import { filledCells, figure, isBlank, namedCells, plainWord, type NamedCell } from "../namedCells";
import type { Rule } from "../rule";

/** Something that is fed: where that is said, and on which floor it is. */
interface Fed {
  readonly name: string;
  readonly from: string;
  readonly place: NamedCell["place"];
  readonly kind: "outlet" | "branch";
  readonly floor: string;
}

export const feedCounts: Rule = {
  id: "too many on one feed",
  reason:
    "A port feeds one thing: more than there are ports get a level that no device gives, as if a splitter cost nothing.",
  example:
    "Seven outlets on a splitter of six ways; an outlet beside the splitter on a head unit's one cable.",
  find: ({ read }) => {
    const fed = allFed(read);
    return [...branches(read, fed), ...heads(read, fed)];
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
            },
          ]
        : [];
    });
  };
  return [
    ...rows(estimate.branches.id.name, estimate.branches.from.name, "branch", ""),
    ...rows(estimate.rooms.outlet.name, estimate.rooms.from.name, "outlet", estimate.rooms.floor.name),
  ];
}

/** The ways of a branch's device, and for a tap the line that goes on. */
function branches(read: Book, fed: readonly Fed[]): Finding[] {
  const devices = namedCells(read, estimate.branches.device.name);
  const [ways, kinds] = [
    namedCells(read, estimate.passives.ways.name),
    namedCells(read, estimate.passives.kind.name),
  ];
  const known = new Map(
    filledCells(read, estimate.passives.name.name).map(({ value, index }) => [plainWord(value), index]),
  );
  return filledCells(read, estimate.branches.id.name).flatMap(({ value, index }) => {
    const device = known.get(plainWord(devices[index]?.value));
    const count = device === undefined ? undefined : ways[device]?.value;
    if (typeof count !== "number") return [];
    const own = fed.filter(({ from }) => from === plainWord(value));
    const ports = count + (plainWord(kinds[device!]?.value) === "tap" ? 1 : 0);
    if (own.length <= ports) return [];
    return [
      tooMany(
        oddOneOut(own) ?? { place: devices[index]!.place },
        `${String(value)} feeds ${own.length}: ${listed(own)}. Its device has ${figure(ports)} ports.`,
        "As many as it has ports.",
      ),
    ];
  });
}

const heads = (read: Book, fed: readonly Fed[]): Finding[] =>
  filledCells(read, estimate.heads.id.name).flatMap(({ value }) => {
    const own = fed.filter(({ from }) => from === plainWord(value));
    if (own.length < 2) return [];
    return [
      tooMany(
        own.find(({ kind }) => kind === "outlet") ?? own.at(-1)!,
        `The one cable of ${String(value)} is said to feed ${own.length}: ${listed(own)}.`,
        "One: a splitter parts it; a second output is a head unit of its own.",
      ),
    ];
  });

function tooMany({ place }: Pick<Fed, "place">, message: string, expected: string): Finding {
  return {
    weight: "wrong",
    place,
    message,
    expected,
    effect: "Each is predicted the full level of a port.",
    remedy: "Compare “fed from” with the plan, first in this row; or choose a device with more ports.",
  };
}

/** The one branch among outlets, the one outlet among branches, or the one of another floor: the likely slip. */
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
