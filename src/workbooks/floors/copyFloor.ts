/**
 * A floor copied to another: the rows of its outlets and of the devices that serve it alone, with their names counted
 * on. What feeds it from elsewhere is kept, or counted on where the next one is there (a riser's device a floor, a head
 * unit a floor). Nothing is written here: the plan says what would be added, what a person should know, and what is in
 * the way of all of it.
 */
import { countedOn, floorNumber, withItsRoom } from "./countedOn";

export type FloorRow = Readonly<Record<string, number | string>>;

export interface Floors {
  /** Rows of Rooms, by column key. */
  readonly rooms: readonly FloorRow[];
  /** Rows of Distribution, by column key. */
  readonly devices: readonly FloorRow[];
  /** Names of the head units. */
  readonly heads: readonly string[];
}

export interface Renamed {
  readonly what: "outlet" | "device";
  readonly old: string;
  readonly now: string;
}

export interface FloorCopy {
  readonly rooms: readonly FloorRow[];
  readonly devices: readonly FloorRow[];
  readonly renamed: readonly Renamed[];
  /** To know before it is done, in sentences. */
  readonly notes: readonly string[];
  /** Sentences; while there is one, nothing may be written. */
  readonly troubles: readonly string[];
}

/** Of an outlet's row these are its own alone: what is measured there, and the bands of a receiver that hangs there. */
const NOT_COPIED: ReadonlySet<string> = new Set(["built_low", "built_high", "built_volts", "kept"]);

const text = (value: number | string | undefined): string => String(value ?? "").trim();
const plain = (value: number | string | undefined): string => text(value).toLowerCase();

/**
 * @param from label of the floor, as in the column Floor
 * @param to labels of the new floors, from the nearest on
 */
export function copyFloor(job: Floors, from: string, to: readonly string[]): FloorCopy {
  const none = (...troubles: string[]): FloorCopy => ({
    rooms: [],
    devices: [],
    renamed: [],
    notes: [],
    troubles,
  });
  const outlets = job.rooms.filter((row) => text(row.outlet) !== "");
  const own = outlets.filter(({ floor }) => plain(floor) === plain(from));
  if (text(from) === "" || own.length === 0)
    return none(
      `There is no floor "${text(from)}" on Rooms to copy. The floors are: ${floorsOf(job).join(", ") || "none"}.`,
    );
  const wanted = to.map(text).filter((label) => label !== "");
  if (wanted.length === 0) return none("Say to which floor it is copied, for example 3rd.");
  const twice = wanted.find(
    (label, at) =>
      plain(label) === plain(from) || wanted.findIndex((one) => plain(one) === plain(label)) < at,
  );
  if (twice !== undefined)
    return none(`The floor "${twice}" is named twice. Give each new floor a label of its own.`);

  const devices = devicesOf(job, own, from);
  const [roomNames, outletNames] = [own.map(({ room }) => text(room)), own.map(({ outlet }) => text(outlet))];
  const deviceNames = devices.map(({ id }) => text(id));
  const names = new Names(job);
  const made: { rooms: FloorRow[]; devices: FloorRow[]; renamed: Renamed[] } = {
    rooms: [],
    devices: [],
    renamed: [],
  };
  const shared = new Map<string, number>();
  const onward = new Map<string, string>();
  for (const label of wanted) {
    const renamed = new Map<string, string>();
    const rename = (what: Renamed["what"], old: string, counted: string | undefined): string => {
      const now = names.take(what, old, counted, label);
      renamed.set(plain(old), now);
      made.renamed.push({ what, old, now });
      return now;
    };
    const nextOf = (name: string, others: readonly string[]): string | undefined =>
      countedOn(name, from, label, others);
    const rooms = new Map(own.map((row) => [plain(row.room), nextOf(text(row.room), roomNames)]));
    for (const row of devices) rename("device", text(row.id), nextOf(text(row.id), deviceNames));
    for (const row of own) {
      const name = text(row.outlet);
      const inRoom = withItsRoom(name, text(row.room), rooms.get(plain(row.room)));
      rename("outlet", name, inRoom ?? nextOf(name, outletNames));
    }
    /** What feeds the copy, and whether it feeds the floor that is copied as well. */
    const fedBy = (feed: string, of: string): { from: string; isKept: boolean } => {
      const copied = renamed.get(plain(feed));
      if (copied !== undefined) return { from: copied, isKept: false };
      const next = names.nextThere(feed, of, from, label);
      if (next !== undefined) {
        onward.set(feed, next);
        return { from: next, isKept: false };
      }
      if (feed !== "") shared.set(feed, (shared.get(feed) ?? 0) + 1);
      return { from: feed, isKept: true };
    };
    for (const row of devices) made.devices.push(copied(row, { id: renamed.get(plain(row.id))! }, fedBy));
    for (const row of own)
      made.rooms.push(
        copied(
          row,
          {
            floor: label,
            ...(text(row.room) !== "" && { room: rooms.get(plain(row.room)) ?? text(row.room) }),
            outlet: renamed.get(plain(row.outlet))!,
          },
          fedBy,
        ),
      );
  }
  if (names.taken.length > 0)
    return none(
      ...names.taken.map(
        ({ what, old, now }) =>
          `${what === "outlet" ? "The outlet" : "The name"} "${now}", which ${old} would get, is there already. Rename it, or choose another floor; nothing was copied.`,
      ),
    );
  return {
    ...made,
    notes: [
      ...wanted
        .filter((label) => outlets.some(({ floor }) => plain(floor) === plain(label)))
        .map(
          (label) => `The floor ${label} is on Rooms already: its rows stay, and the copy is added to them.`,
        ),
      ...names.invented.map(
        ({ old, now }) =>
          `The name ${old} does not hold its floor: the copy is called ${now}. Rename it as you like.`,
      ),
      ...[...onward].map(([feed, next]) => `What ${feed} feeds hangs on ${next} in the copy.`),
      ...[...shared].map(
        ([feed, count]) =>
          `${feed} feeds the new ${wanted.length === 1 ? "floor" : "floors"} as well: ${count === 1 ? "one more cable hangs" : `${count} more cables hang`} on it. Look whether its ports, levels and user bands suffice.`,
      ),
    ],
    troubles: [],
  };
}

/** Labels of the floors on Rooms, in the order of the sheet. */
export const floorsOf = ({ rooms }: Pick<Floors, "rooms">): string[] => [
  ...new Map(
    rooms.filter(({ floor }) => text(floor) !== "").map(({ floor }) => [plain(floor), text(floor)]),
  ).values(),
];

/** A likely label of the floor after it: `3rd` of `2nd`; empty where it holds no number. */
export function nextFloor(label: string): string {
  const number = floorNumber(label);
  if (number === undefined || !/\d/.test(label)) return "";
  const next = number < 0 ? number - 1 : number + 1;
  return label
    .trim()
    .replace(/-?\d+(st|nd|rd|th)?/i, (_, ending?: string) => `${next}${ending ? endingOf(next) : ""}`);
}

const endingOf = (number: number): string => {
  const [tens, ones] = [number % 100, number % 10];
  if (tens > 10 && tens < 14) return "th";
  return ["th", "st", "nd", "rd"][ones] ?? "th";
};

function copied(
  row: FloorRow,
  names: FloorRow,
  fedBy: (feed: string, of: string) => { from: string; isKept: boolean },
): FloorRow {
  const feed = fedBy(text(row.from), text(row.outlet ?? row.id));
  const kept = Object.entries(row).filter(
    // A port of what feeds both is taken.
    ([key, value]) => text(value) !== "" && !NOT_COPIED.has(key) && !(key === "port" && feed.isKept),
  );
  return { ...Object.fromEntries(kept), ...names, ...(feed.from !== "" && { from: feed.from }) };
}

/** Devices that serve the floor alone, and those of a riser that are called after it. In the order of the sheet. */
function devicesOf({ rooms, devices, heads }: Floors, own: readonly FloorRow[], from: string): FloorRow[] {
  const byName = new Map(devices.map((row) => [plain(row.id), row]));
  const isHead = new Set(heads.map(plain));
  const fed = new Map<string, FloorRow[]>();
  for (const row of [...devices, ...rooms])
    fed.set(plain(row.from), [...(fed.get(plain(row.from)) ?? []), row]);
  const onFloor = new Set(own);
  const isOwn = new Map<string, boolean>();
  const judge = (row: FloorRow, above: ReadonlySet<string>): boolean => {
    const name = plain(row.id);
    const known = isOwn.get(name);
    if (known !== undefined) return known;
    // A ring is the sheet's to tell.
    if (above.has(name)) return false;
    const below = fed.get(name) ?? [];
    const others = below.filter((one) =>
      one.outlet === undefined && (fed.get(plain(one.id)) ?? []).length === 0
        ? false
        : one.outlet === undefined
          ? !judge(one, new Set([...above, name]))
          : !onFloor.has(one),
    );
    const serves = below.length > others.length;
    // The next floor's device of a riser hangs on this floor's; a device with spare ports feeds nothing yet.
    const isRiser = others.length === 1 && isNextOf(row, others[0]!, from);
    const is =
      below.length === 0
        ? byName.has(plain(row.from)) && judge(byName.get(plain(row.from))!, new Set([...above, name]))
        : serves && (others.length === 0 || isRiser);
    isOwn.set(name, is);
    return is;
  };
  return devices.filter(
    (row) =>
      text(row.id) !== "" &&
      !isHead.has(plain(row.id)) &&
      byName.get(plain(row.id)) === row &&
      judge(row, new Set()),
  );
}

/** Whether one device is called after its floor, and the other as it is on the next floor, or the one before. */
const isNextOf = ({ id }: FloorRow, { id: other }: FloorRow, from: string): boolean => {
  const number = floorNumber(from);
  return (
    number !== undefined &&
    other !== undefined &&
    [1, -1].some((step) => plain(countedOn(text(id), String(number), String(number + step))) === plain(other))
  );
};

/** The names of a job, and what the copy adds to them. */
class Names {
  readonly taken: Renamed[] = [];
  readonly invented: Renamed[] = [];
  private readonly known = new Map<string, string>();

  constructor({ rooms, devices, heads }: Floors) {
    for (const name of [
      ...rooms.map(({ outlet }) => text(outlet)),
      ...devices.map(({ id }) => text(id)),
      ...heads,
    ])
      if (name !== "") this.known.set(plain(name), name);
  }

  take(what: Renamed["what"], old: string, counted: string | undefined, label: string): string {
    const now = counted === undefined || plain(counted) === plain(old) ? `${old} ${label}` : counted;
    const one: Renamed = { what, old, now };
    if (now !== counted) this.invented.push(one);
    if (this.known.has(plain(now))) this.taken.push(one);
    this.known.set(plain(now), now);
    return now;
  }

  /**
   * What stands for the feed on the new floor, by its number: the same of this floor, or, in a line that goes from floor
   * to floor, the one before it.
   */
  nextThere(feed: string, of: string, from: string, to: string): string | undefined {
    const [number, next] = [floorNumber(from), floorNumber(to)];
    if (number === undefined || next === undefined) return undefined;
    const there = (name: string | undefined): string | undefined =>
      name === undefined || plain(name) === plain(feed) ? undefined : this.known.get(plain(name));
    const same = there(countedOn(feed, String(number), String(next)));
    if (same !== undefined) return same;
    const step = next > number ? 1 : -1;
    const isLine = plain(countedOn(feed, String(number - step), String(number))) === plain(of);
    return isLine ? there(countedOn(feed, String(number - step), String(next - step))) : undefined;
  }
}
