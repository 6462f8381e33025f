/**
 * The distribution as the workbook has it: head units, the branches and outlets
 * that hang on them, and whatever hangs on nothing. Figures and verdicts are
 * the workbook's own; nothing is computed again here.
 */
import { isFault } from "../engine/faults";
import { distributionTree } from "../engine/signal/distributionTree";
import type { LengthUnit } from "../engine/signal/lengthUnits";
import { nameKey } from "../engine/signal/nameKey";
import { isBookError, type Book } from "../workbooks/book";
import { CORNERS } from "../workbooks/multiRoom/corners";
import { estimate } from "../workbooks/multiRoom/names";
import { namedValue } from "../workbooks/named";
import { figure, filledRows, numberOf, textOf, type Row } from "./columns";

/** Levels in dBµV, from the weakest to the strongest over the band, cold and hot. */
export interface Span {
  readonly least: number;
  readonly most: number;
}

interface Common {
  readonly name: string;
  /** Name of what feeds it; empty for a head unit. */
  readonly from: string;
  /** Its cable, and the length of it in the workbook's unit. */
  readonly cable: string;
  readonly length: number | undefined;
  /** Levels in dBµV at the four corners, in their order; `undefined` unless all are known. */
  readonly corners: readonly number[] | undefined;
  readonly levels: Span | undefined;
  /** Words for what fails; empty when nothing does. */
  readonly troubles: readonly string[];
}

export interface HeadUnit extends Common {
  readonly kind: "head";
  readonly type: string;
  /** The branch or outlet at which it is fed; empty for the lower end of its own cable. */
  readonly fedAt: string;
  /** Supply and volts in words, then tuners and bands. */
  readonly volts: string;
  readonly tuners: string;
}

export interface Branch extends Common {
  readonly kind: "branch";
  readonly device: string;
  readonly power: string;
}

export interface Outlet extends Common {
  readonly kind: "outlet";
  readonly room: string;
  readonly verdict: string;
}

/** Stands at the head of what nothing feeds, or in the place of what an empty branch would feed. */
export interface Placeholder extends Common {
  readonly kind: "nothing";
}

export type Item = HeadUnit | Branch | Outlet | Placeholder;

export interface Hanging {
  readonly item: Item;
  readonly children: Hanging[];
  /** Drawn in full elsewhere: here only its name, and that it goes on. */
  readonly continued?: boolean;
}

export interface Distribution {
  /** Of every length, as people write it. */
  readonly unit: LengthUnit;
  readonly heads: readonly Hanging[];
  /** Branches and outlets that no head unit feeds, side by side. */
  readonly unfed: readonly Hanging[];
}

function cornersOf({ at }: Row): readonly number[] | undefined {
  const levels = Object.keys(CORNERS).map((corner) => numberOf(at(`level_${corner}`)));
  return levels.every((level) => level !== undefined) ? levels : undefined;
}

const spanOf = (corners: readonly number[] | undefined): Span | undefined =>
  corners && { least: Math.min(...corners), most: Math.max(...corners) };

/** @param book a computed multi-room estimate */
export function readDistribution(book: Book): Distribution {
  const unit = textOf(namedValue(book, estimate.site.unit.name)) === "ft" ? "ft" : "m";
  const heads = filledRows(book, "heads", "id").map((row) => hanging(headUnit(row)));
  const branches = filledRows(book, "branches", "id").map((row) => hanging(branch(row)));
  const outlets = filledRows(book, "rooms", "outlet").map((row) => hanging(outlet(row)));

  const headByKey = new Map(heads.map((head) => [nameKey(head.item.name), head]));
  const tree = distributionTree(
    branches.map(({ item }) => item.name),
    // A branch without a feed stands in the tree's top, which here is nothing.
    branches.map(({ item }) => item.from || item.name),
    heads.map(({ item }) => item.name),
  );
  const fedBranch = new Map<string, Hanging>();
  const above = branches.map((one, index) => {
    const place = tree.rows[index];
    if (!place || isFault(place)) return undefined;
    fedBranch.set(nameKey(one.item.name), one);
    return place.parent < 0 ? headByKey.get(nameKey(one.item.from)) : branches[place.parent];
  });
  // What hangs on a branch itself stands before the branches behind it.
  for (const one of outlets) {
    const key = nameKey(one.item.from);
    const feeding = fedBranch.get(key) ?? headByKey.get(key);
    if (feeding) feeding.children.push(one);
  }
  branches.forEach((one, index) => above[index]?.children.push(one));
  const unfed = [
    ...branches.filter((_, index) => !above[index]),
    ...outlets.filter(({ item }) => !fedBranch.has(nameKey(item.from)) && !headByKey.has(nameKey(item.from))),
  ].map(unfedOf);
  return { unit, heads, unfed };
}

const hanging = (item: Item): Hanging => ({ item, children: [] });

const unfedOf = ({ item }: Hanging): Hanging =>
  hanging({ ...item, troubles: ["not fed", ...item.troubles.filter((word) => word !== "unknown")] });

function headUnit(row: Row): HeadUnit {
  const { at } = row;
  const [volts, least, tuners, bands] = ["volts", "least", "tuners", "bands"].map((key) => numberOf(at(key)));
  const [current, amps, stops] = ["current", "amps", "stops"].map((key) => numberOf(at(key)));
  const troubles: string[] = [];
  if (textOf(at("power")) === "low") troubles.push("short of volts");
  else if (textOf(at("power")) !== "ok") troubles.push("volts unknown");
  if ((stops ?? 0) > 0) troubles.push("power stopped on its way");
  if (current !== undefined && amps !== undefined && current > amps) troubles.push("supply overloaded");
  if (textOf(at("capacity")) === "high") troubles.push("over its bands");
  else if (textOf(at("capacity")) !== "ok") troubles.push("bands unknown");
  const supplied = numberOf(at("supplied"));
  return {
    kind: "head",
    name: textOf(at("id")),
    from: "",
    cable: textOf(at("cable")),
    length: numberOf(at("length")),
    corners: cornersOf(row),
    levels: spanOf(cornersOf(row)),
    troubles,
    type: textOf(at("type")),
    fedAt: textOf(at("at")),
    volts: `${figure(supplied)} V → ${figure(volts)} V, least ${figure(least)}`,
    tuners: `${figure(tuners, 0)} tuners, ${figure(bands, 0)} bands`,
  };
}

function branch(row: Row): Branch {
  const { at } = row;
  const corners = cornersOf(row);
  const power = textOf(at("power"));
  return {
    kind: "branch",
    name: textOf(at("id")),
    from: textOf(at("from")),
    cable: textOf(at("cable")),
    length: numberOf(at("length")),
    corners,
    levels: spanOf(corners),
    troubles: corners ? [] : ["level unknown"],
    device: textOf(at("device")),
    power: power && `power: ${power}`,
  };
}

function outlet(row: Row): Outlet {
  const { at } = row;
  const verdict = at("verdict");
  const word = isBookError(verdict) || verdict === undefined ? "unknown" : textOf(verdict);
  const [least, most] = [numberOf(at("weakest")), numberOf(at("strongest"))];
  return {
    kind: "outlet",
    name: textOf(at("outlet")),
    from: textOf(at("from")),
    cable: textOf(at("cable")),
    length: numberOf(at("run")),
    corners: cornersOf(row),
    levels: least !== undefined && most !== undefined ? { least, most } : spanOf(cornersOf(row)),
    troubles: word === "ok" ? [] : [word],
    room: [textOf(at("floor")), textOf(at("room"))].filter(Boolean).join(", "),
    verdict: word,
  };
}

/** Everything of a distribution, each once. */
export function itemsOf({ heads, unfed }: Distribution): readonly Item[] {
  const items: Item[] = [];
  const waiting = [...heads, ...unfed].reverse();
  for (let one = waiting.pop(); one; one = waiting.pop()) {
    items.push(one.item);
    waiting.push(...[...one.children].reverse());
  }
  return items;
}
