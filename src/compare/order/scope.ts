/**
 * The changes of a job gathered by what a customer has bought: outlets by floor, head units, options, terms. What is
 * the firm's own (prices, minutes, rates, notes, limits) belongs to none of them.
 */
import type { JobInputs } from "../../workbooks/definition";
import { discount, options, provisional } from "../../workbooks/multiRoom/names/terms";
import { LINES } from "../../workbooks/multiRoom/names/lines";
import { estimate } from "../../workbooks/multiRoom/names";
import { taxClass } from "../../workbooks/multiRoom/names/site";
import type { InputChange, Row } from "../change";
import { outletScopes } from "./outletScopes";
import { ended, instead, percent, word, type Around, type Scope } from "./scopeWords";

export interface Scopes {
  /** In the order in which they are told and priced. */
  readonly told: readonly Scope[];
  /** Rows and names that the rest may need; told to nobody. */
  readonly first: readonly InputChange[];
  /** The firm's own. */
  readonly last: readonly InputChange[];
}

/** Lists whose rows the outlets and devices name. */
const PARTS_OF_IT = new Set([
  "cables",
  "passives",
  "units",
  "supplies",
  "plates",
  "feeds",
  "resistors",
  "receivers",
  "types",
  "routes",
  "kinds",
]);
/** What a customer knows by its name. */
const KNOWN_NAMES: Readonly<Record<string, string>> = {
  rooms_outlet: "outlet",
  rooms_floor: "floor",
  rooms_room: "room",
  options_name: "option",
  slots_slot: "orbital slot",
};

/** What a blank of them means. */
const USUAL_DECIMALS = "2";

export function scopesOf(all: readonly InputChange[], around: Around): Scopes {
  const taken = new Set<InputChange>();
  const take = (is: (change: InputChange) => boolean): InputChange[] => {
    const found = all.filter((change) => !taken.has(change) && is(change));
    for (const one of found) taken.add(one);
    return found;
  };
  const first = take(
    ({ kind, of, column }) =>
      (kind === "renamed" && KNOWN_NAMES[`${of}_${column}`] === undefined) ||
      (kind === "added" && PARTS_OF_IT.has(of)),
  );
  const rows = (block: string): InputChange[] => take(({ of }) => of === block);
  const fields = (names: readonly string[]): InputChange[] => take(({ of }) => names.includes(of));
  const told = [
    ...take(({ kind }) => kind === "renamed").map(nameScope),
    ...fields(["site_job", "site_customer", "site_place", "site_until"]).map(factScope),
    ...rows("slots").map(slotScope),
    ...rows("dishes").map((change) => dishScope(change, around)),
    ...gathered("Cables from the dishes", rows("feeders")),
    ...rows("heads").map(headScope),
    ...gathered("Distribution", rows("branches"), deviceInWords),
    ...fields(["site_usual_cable", "site_usual_plate"]).map(usualScope),
    ...take(({ of, kind }) => of === "types" && kind === "changed").flatMap((change) => {
      const scope = typeScope(change, around);
      if (!scope) taken.delete(change);
      return scope ? [scope] : [];
    }),
    ...outletScopes(
      take(({ of }) => of === "rooms"),
      around,
      (change) => taken.delete(change),
    ),
    ...sparesScope(take(({ of }) => of.startsWith("site_spare_"))),
    ...rows("options").flatMap((change) => {
      const scope = optionScope(change, around);
      if (!scope) taken.delete(change);
      return scope ? [scope] : [];
    }),
    ...rows("provisional").map((change) => provisionalScope(change, around)),
    ...discountScope(fields([discount.sum.name, discount.share.name, discount.reason.name]), around),
    ...taxScope(
      take(
        ({ of }) =>
          of === "site_tax" || of === "site_tax_on" || of === "taxes" || of.startsWith("tax_class_"),
      ),
      around,
    ),
    ...gathered(
      "Rounding of money",
      fields(["site_decimals", "site_rounding"]),
      ({ row, cells: [cell] }) =>
        `${row}: ${cell?.after ?? USUAL_DECIMALS} instead of ${cell?.before ?? USUAL_DECIMALS}`,
    ),
    ...rows("assumptions").map((change) => sentenceScope("Assumption", "assumed", change)),
    ...rows("exclusions").map((change) => sentenceScope("Not included", "left out", change)),
  ];
  return { told, first, last: all.filter((change) => !taken.has(change)) };
}

const nameScope = (change: InputChange): Scope => {
  const { of, column, cells } = change;
  const known = KNOWN_NAMES[`${of}_${column}`]!;
  return {
    changes: [change],
    what: `Renamed: ${known}`,
    details: `${cells[0]!.before} is called ${cells[0]!.after} now`,
    isName: true,
  };
};

const factScope = (change: InputChange): Scope => ({
  changes: [change],
  what: change.row,
  details: `${change.cells[0]!.after ?? "blank"}, before: ${change.cells[0]!.before ?? "blank"}`,
  isFree: true,
});

const slotScope = (change: InputChange): Scope => {
  const { slots } = estimate;
  const row = change.after ?? change.before!;
  return {
    changes: [change],
    what: `Orbital slot ${ended(change.kind)}`,
    details: [word(row[slots.slot.key]), word(row[slots.service.key])].filter(Boolean).join(": "),
  };
};

function dishScope(change: InputChange, { older, newer }: Around): Scope {
  const { kind, before, after } = change;
  const all = (job: JobInputs): string =>
    (job.blocks?.slots ?? []).flatMap(({ slot }) => (slot === undefined ? [] : [String(slot)])).join(" ");
  const slots = (row: Row | undefined, job: JobInputs): string => word(row?.slots) || all(job);
  const told = [
    ...(kind === "changed" && before!.slots !== after!.slots
      ? [`receives ${slots(after, newer)}, before: ${slots(before, older)}`]
      : []),
    ...(kind === "changed" && before!.size !== after!.size
      ? [`size ${instead(before!.size, after!.size)} m`]
      : []),
    ...(kind === "changed" && before!.location !== after!.location
      ? [`stands: ${instead(before!.location, after!.location)}`]
      : []),
  ];
  return {
    changes: [change],
    what: `Dish ${change.row} ${ended(kind)}`,
    details: told.join("; "),
  };
}

function headScope(change: InputChange): Scope {
  const { kind, before, after } = change;
  const told =
    kind === "changed"
      ? [
          ...(before!.type !== after!.type ? [instead(before!.type, after!.type)] : []),
          ...(before!.supply !== after!.supply
            ? [`power supply: ${instead(before!.supply, after!.supply)}`]
            : []),
          ...(before!.cable !== after!.cable || before!.length !== after!.length ? ["its cable"] : []),
        ]
      : [word((after ?? before)!.type)];
  return { changes: [change], what: `Head unit ${change.row} ${ended(kind)}`, details: told.join("; ") };
}

const gathered = (
  what: string,
  changes: readonly InputChange[],
  inWords: (change: InputChange) => string = ({ row, kind }) => `${row} ${ended(kind)}`,
): Scope[] =>
  changes.length === 0 ? [] : [{ changes, what, details: changes.map(inWords).filter(Boolean).join("; ") }];

function deviceInWords({ row, kind, before, after }: InputChange): string {
  const { device, from, length } = estimate.branches;
  if (kind !== "changed") return `${row} (${word((after ?? before)![device.key])}) ${ended(kind)}`;
  if (before![device.key] !== after![device.key])
    return `${row}: ${instead(before![device.key], after![device.key])}`;
  if (before![from.key] !== after![from.key])
    return `${row} fed from ${instead(before![from.key], after![from.key])}`;
  return before![length.key] === after![length.key] ? `${row} changed` : `cable to ${row}`;
}

const usualScope = (change: InputChange): Scope => ({
  changes: [change],
  what: change.row,
  details: instead(change.cells[0]!.before ?? undefined, change.cells[0]!.after ?? undefined),
});

/** What of a room type a customer reads; undefined where it is the firm's own. */
function typeScope(change: InputChange, { after: used, newer }: Around): Scope | undefined {
  const { types } = estimate;
  const { before, after } = change as { before: Row; after: Row };
  const unit = word(newer.fields?.site_unit) || "m";
  const differs = (key: string): boolean => before[key] !== after[key];
  const told = [
    ...(differs(types.run.key) ? [`cable run ${instead(before.run, after.run)} ${unit}`] : []),
    ...(["receiver", "quantity", "cable", "plate", "split"] as const).flatMap((key) =>
      differs(key) ? [`${types[key].words.head.toLowerCase()}: ${instead(before[key], after[key])}`] : [],
    ),
    ...(differs(types.minutes.key) ? ["labour"] : []),
  ];
  if (told.length === 0) return undefined;
  const outlets = used.ofType(String(after.name));
  return {
    changes: [change],
    what: `Rooms of the type ${change.row} (${outlets} ${outlets === 1 ? "outlet" : "outlets"})`,
    details: told.join("; "),
  };
}

const sparesScope = (changes: readonly InputChange[]): Scope[] =>
  gathered(
    "Spare parts",
    changes,
    ({ row, cells: [cell] }) => `${row}: ${cell?.after ?? "none"} instead of ${cell?.before ?? "none"}`,
  );

/** Undefined where nothing is bought otherwise, nor offered. */
function optionScope(change: InputChange, { money }: Around): Scope | undefined {
  const { kind, before, after } = change;
  const [was, is] = [before?.[options.chosen.key] === "yes", after?.[options.chosen.key] === "yes"];
  const row = (after ?? before)!;
  const quantity = row[options.quantity.key];
  const replaced = row[options.instead.key];
  const details = [
    String(row[options.name.key] ?? ""),
    ...(typeof quantity === "number" && quantity !== 1 ? [`${quantity} of them`] : []),
    ...(replaced === undefined ? [] : [`instead of ${replaced}`]),
  ];
  if (is && !was) return { changes: [change], what: "Option taken", details: details.join(", ") };
  if (was && !is) return { changes: [change], what: "Option omitted", details: details.join(", ") };
  if (is && before![options.quantity.key] !== after![options.quantity.key])
    return {
      changes: [change],
      what: "Option changed",
      details: `${row.name}: ${instead(before![options.quantity.key], after![options.quantity.key])}`,
    };
  const each = row[options.each.key];
  if (kind === "added")
    return {
      changes: [change],
      what: "Option offered, not taken",
      details: [...details, ...(typeof each === "number" ? [`${money(each)} each`] : [])].join(", "),
    };
  return undefined;
}

function provisionalScope(change: InputChange, { money }: Around): Scope {
  const { kind, before, after } = change;
  const sumOf = (row: Row | undefined): string | undefined => {
    const sum = row?.[provisional.sum.key];
    return typeof sum === "number" ? money(sum) : undefined;
  };
  const name = String((after ?? before)![provisional.name.key] ?? "");
  const sums = kind === "changed" ? `: ${instead(sumOf(before), sumOf(after))}` : "";
  return { changes: [change], what: `Provisional sum ${ended(kind)}`, details: `${name}${sums}` };
}

function discountScope(changes: readonly InputChange[], { newer, money }: Around): Scope[] {
  if (changes.length === 0) return [];
  const { fields = {} } = newer;
  const [sum, share, reason] = [discount.sum, discount.share, discount.reason].map(
    ({ name }) => fields[name],
  );
  const told = [
    ...(typeof sum === "number" ? [money(sum)] : []),
    ...(typeof share === "number" ? [percent(share)] : []),
    ...(reason === undefined ? [] : [String(reason)]),
  ];
  return [{ changes, what: told.length > 0 ? "Discount" : "Discount omitted", details: told.join(", ") }];
}

function taxScope(changes: readonly InputChange[], { older, newer }: Around): Scope[] {
  if (changes.length === 0) return [];
  const lineOf = new Map(
    Object.entries(taxClass).map(([key, { name }]) => [name, LINES[key as keyof typeof taxClass]]),
  );
  const told = changes.map((change): string => {
    const { of, row, before, after } = change;
    const [was, is] = [older.fields?.[of], newer.fields?.[of]];
    const line = lineOf.get(of);
    if (line !== undefined) return `${line}: ${is ?? "the usual tax"} instead of ${was ?? "the usual tax"}`;
    if (of === "taxes") {
      const rate = (one: Row | undefined): string | undefined =>
        typeof one?.rate === "number" ? percent(one.rate) : undefined;
      return `${row}: ${change.kind === "changed" ? instead(rate(before), rate(after)) : `${rate(after ?? before)}, ${ended(change.kind)}`}`;
    }
    return typeof was === "number" && typeof is === "number"
      ? `${percent(is)} instead of ${percent(was)}`
      : `on ${instead(was, is)}`;
  });
  return [{ changes, what: "Tax", details: told.join("; ") }];
}

function sentenceScope(what: string, had: string, change: InputChange): Scope {
  const text = (row: Row | undefined): string => word(row?.text);
  return {
    changes: [change],
    what: change.kind === "removed" ? `${what}: no longer ${had}` : `${what}, new`,
    details: text(change.after ?? change.before),
    isFree: true,
  };
}
