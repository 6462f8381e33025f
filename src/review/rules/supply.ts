import type { Book } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import type { Finding } from "../finding";
import { filledCells, figure, isBlank, namedCells, plainWord, type NamedCell } from "../namedCells";
import { onlyOne } from "../onlyOne";
import type { Rule } from "../rule";

/** Common practice, no source: a head unit draws 0.1 to 0.6 A; beyond this, watts were typed as amperes. */
const MOST_AMPERES = 3;

export const supply: Rule = {
  id: "supply",
  reason:
    "A head unit is fed by its own supply, by an inserter or by its receivers; a device that passes no power keeps all of these from it.",
  example:
    "A splitter that passes no power, and only receivers behind it; a load of 7.2 A, where watts were meant.",
  find: ({ read, computed }) => [...loads(read), ...stopped(read, computed), ...leftOut(read, computed)],
};

function loads(read: Book): Finding[] {
  const [amounts, kinds] = [
    namedCells(read, estimate.units.load.name),
    namedCells(read, estimate.units.kind.name),
  ];
  return filledCells(read, estimate.units.name.name).flatMap(({ value, index }): Finding[] => {
    const [amount, kind] = [amounts[index]?.value, kinds[index]];
    if (typeof amount !== "number" || !kind || plainWord(kind.value) !== "a" || amount <= MOST_AMPERES)
      return [];
    return [
      {
        weight: "doubtful",
        place: kind.place,
        message: `${String(value)} is said to draw ${figure(amount)} A.`,
        expected: `W, if ${figure(amount)} watts were meant; a head unit draws a few tenths of an ampere.`,
        effect: "Its volts are predicted far too low.",
        remedy: "Compare with the maker's sheet: amperes or watts.",
        meant: "W",
      },
    ];
  });
}

/** The devices that keep all that could feed a head unit from it. */
function stopped(read: Book, computed: Book): Finding[] {
  const [powers, own] = [
    namedCells(computed, estimate.heads.check.power.name),
    namedCells(read, estimate.heads.supply.name),
  ];
  return filledCells(read, estimate.heads.id.name).flatMap(({ value, index }): Finding[] => {
    if (powers[index]?.value !== "low" || !isBlank(own[index]?.value)) return [];
    const blocks = blocksUnder(read, plainWord(value));
    return blocks.map(({ part, power, at }) => ({
      weight: "wrong",
      place: power.place,
      message: `${part} passes no power, and ${String(value)} could be fed through one only, at ${at}.`,
      expected: "A device that passes power, or a supply that does not feed through it.",
      effect: "The head unit is dead.",
      remedy: "Take another device there, or give the head unit a supply of its own.",
    }));
  });
}

interface Block {
  readonly part: string;
  /** The cell on Parts that says so. */
  readonly power: NamedCell;
  readonly at: string;
}

/** @returns the devices at which power from below ends; none where something feeds past them */
function blocksUnder(read: Book, head: string): Block[] {
  const [parts, froms] = [
    namedCells(read, estimate.branches.device.name),
    namedCells(read, estimate.branches.from.name),
  ];
  const powers = namedCells(read, estimate.passives.power.name);
  const kinds = new Map(
    filledCells(read, estimate.passives.name.name).map(({ value, index }) => [plainWord(value), index]),
  );
  const devices = filledCells(read, estimate.branches.id.name).map(({ value, index }) => ({
    id: plainWord(value),
    name: String(value),
    from: plainWord(froms[index]?.value),
    part: parts[index]?.value,
  }));
  const outlets = new Set(filledCells(read, estimate.rooms.from.name).map(({ value }) => plainWord(value)));
  const found: Block[] = [];
  const seen = new Set<string>();
  const open = [head];
  for (let at = open.pop(); at !== undefined; at = open.pop()) {
    if (seen.has(at)) continue;
    seen.add(at);
    if (outlets.has(at)) return [];
    for (const device of devices.filter(({ from }) => from === at)) {
      const row = kinds.get(plainWord(device.part));
      // What is no device of Parts is an inserter, or a name that another rule looks at.
      if (row === undefined) return [];
      const power = powers[row];
      if (power && plainWord(power.value) === "no")
        found.push({ part: String(device.part), power, at: device.name });
      else open.push(device.id);
    }
  }
  return found;
}

/** Switches in a row that have too few volts, and none of them a supply: it feeds them from the last one on. */
function leftOut(read: Book, computed: Book): Finding[] {
  const { heads, feeders } = estimate;
  const [powers, own] = [namedCells(computed, heads.check.power.name), namedCells(read, heads.supply.name)];
  const known = new Map(
    filledCells(read, heads.id.name).map(({ value, index }) => [plainWord(value), index]),
  );
  const tos = namedCells(read, feeders.to.name);
  const links = filledCells(read, feeders.from.name).map(({ value, index }) => ({
    from: plainWord(value),
    to: plainWord(tos[index]?.value),
  }));
  const before = new Map(links.map(({ from, to }) => [to, from]));
  const hasSupply = (head: string): boolean => !isBlank(own[known.get(head) ?? -1]?.value);
  /** The switches before it, up to the dish. */
  const row = (head: string): string[] => {
    const found = [head];
    for (
      let at = before.get(head);
      at !== undefined && known.has(at) && !found.includes(at);
      at = before.get(at)
    )
      found.push(at);
    return found;
  };
  const taken = filledCells(read, heads.supply.name).map(({ value }) => String(value));
  const listed = filledCells(read, estimate.supplies.name.name).map(({ value }) => String(value));
  const meant = onlyOne(taken, listed);
  return [...known].flatMap(([head, index]): Finding[] => {
    const cell = own[index];
    const isLast = before.has(head) && !links.some(({ from }) => from === head);
    if (!cell || !isLast || powers[index]?.value !== "low" || row(head).some(hasSupply)) return [];
    return [
      {
        weight: "doubtful",
        place: cell.place,
        message: `${row(head).length === 1 ? "It has" : `The ${row(head).length} switches from here up have`} too few volts, and no supply.`,
        expected: "A supply at one of them, unless their receivers are to feed them.",
        ...(meant !== undefined && { meant, isGuess: true }),
        effect: "They are dead.",
        remedy: "Choose it from the list.",
      },
    ];
  });
}
