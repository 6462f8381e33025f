/** Outlets that came, went or are otherwise, gathered by floor. */
import { estimate } from "../../workbooks/multiRoom/names";
import type { InputChange, Row, Value } from "../change";
import { instead, namesListed, type Around, type Scope } from "./scopeWords";
import { USED } from "./usedValues";

const { rooms } = estimate;
/** What else of an outlet a customer knows. */
const WHERE = ["floor", "room"] as const;

const wordIn = (row: Row, key: string): string => (row[key] === undefined ? "" : String(row[key]));

const called = (row: Row): string => {
  const room = wordIn(row, rooms.room.key);
  return `${wordIn(row, rooms.outlet.key)}${room === "" ? "" : ` (${room})`}`;
};
const onFloor = (row: Row): string => {
  const floor = wordIn(row, rooms.floor.key);
  return floor === "" ? "" : `, ${floor}`;
};
const counted = (count: number, ending: string): string =>
  count === 1 ? `Outlet ${ending}` : `${count} outlets ${ending}`;

interface Aspect {
  readonly key: string;
  readonly before: Value | undefined;
  readonly after: Value | undefined;
}

/** @param leave what is the firm's own is given back */
export function outletScopes(
  changes: readonly InputChange[],
  around: Around,
  leave: (change: InputChange) => void,
): Scope[] {
  const groups = new Map<string, { changes: InputChange[]; aspects: Aspect[][] }>();
  for (const change of changes) {
    const row = (change.after ?? change.before)!;
    const aspects = change.kind === "changed" ? aspectsOf(change, around) : [];
    if (change.kind === "changed" && aspects.length === 0) {
      leave(change);
      continue;
    }
    const key = JSON.stringify([change.kind, onFloor(row), aspects.map((one) => one.key)]);
    const group = groups.get(key) ?? { changes: [], aspects: [] };
    groups.set(key, group);
    group.changes.push(change);
    group.aspects.push(aspects);
  }
  return [...groups.values()].map(({ changes: own, aspects }): Scope => {
    const [{ kind, after, before }] = own as [InputChange];
    const floor = onFloor((after ?? before)!);
    if (kind !== "changed")
      return {
        changes: own,
        what: `${counted(own.length, kind === "added" ? "added" : "omitted")}${floor}`,
        details: namesListed(own.map((one) => called((one.after ?? one.before)!))),
      };
    const runs = aspects[0]!.length === 1 && aspects[0]![0]!.key === rooms.run.key;
    const isName = aspects.every((all) => all.every(({ key }) => (WHERE as readonly string[]).includes(key)));
    return {
      changes: own,
      ...(isName && { isName }),
      what: runs ? `${runsInWords(aspects)}${floor}` : `${counted(own.length, "changed")}${floor}`,
      details: namesListed(
        own.map((one, index) => `${called(one.after!)}: ${aspectsInWords(aspects[index]!, around)}`),
      ),
    };
  });
}

function aspectsOf({ before, after }: InputChange, { before: was, after: is }: Around): Aspect[] {
  const outlet = wordIn(after!, rooms.outlet.key);
  const where = WHERE.map((key): Aspect => ({ key, before: before![key], after: after![key] }));
  const used = USED.map((key): Aspect => ({
    key,
    before: was.at(outlet, key) ?? before![key],
    after: is.at(outlet, key) ?? after![key],
  }));
  // What a type gives otherwise is told of the type.
  const typed = used.filter(({ key }) => before![key] !== after![key] || before!.type !== after!.type);
  return [...where, ...typed].filter((one) => one.before !== one.after);
}

function runsInWords(aspects: readonly Aspect[][]): string {
  const longer = aspects.map(([run]) => Number(run!.after ?? 0) > Number(run!.before ?? 0));
  const ending = longer.every(Boolean) ? " longer" : longer.some(Boolean) ? "" : " shorter";
  return aspects.length === 1 ? `Cable run${ending}` : `Cable runs of ${aspects.length} outlets${ending}`;
}

function aspectsInWords(aspects: readonly Aspect[], { newer }: Around): string {
  const unit = newer.fields?.site_unit ?? "m";
  return aspects
    .map(({ key, before, after }) => {
      if (key === rooms.run.key && typeof before === "number" && typeof after === "number") {
        const by = Number(Math.abs(after - before).toPrecision(12));
        return `${by} ${unit} ${after > before ? "longer" : "shorter"}`;
      }
      const { head } = rooms[key as "floor"].words;
      return `${head.toLowerCase()} ${instead(before, after)}`;
    })
    .join("; ");
}
