import type { Book } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import type { Finding } from "../finding";
import { filledCells, figure, isBlank, namedCells, plainWord } from "../namedCells";
import type { Rule } from "../rule";

/** Common practice, no source: a head unit draws 0.1 to 0.6 A; beyond this, watts were typed as amperes. */
const MOST_AMPERES = 3;

export const suppliesShared: Rule = {
  id: "supply",
  reason:
    "A head unit has one supply: its own or the one that it shares; one that nothing gives, or two, is a slip of the pen.",
  example: "H2 shares the supply of H9, and there is no H9; a load of 7.2 A, where watts were meant.",
  find: ({ read, computed }) => [...shares(read), ...loads(read), ...stopped(read, computed)],
};

function shares(read: Book): Finding[] {
  const supplies = namedCells(read, estimate.heads.supply.name);
  const cells = namedCells(read, estimate.heads.shares.name);
  const heads = filledCells(read, estimate.heads.id.name);
  const sharing = new Set(
    heads.flatMap(({ value, index }) => (isBlank(cells[index]?.value) ? [] : [plainWord(value)])),
  );
  const known = new Set(heads.map(({ value }) => plainWord(value)));
  return heads.flatMap(({ value, index }): Finding[] => {
    const cell = cells[index];
    if (!cell || isBlank(cell.value)) return [];
    const other = plainWord(cell.value);
    const own = supplies[index];
    const message = !known.has(other)
      ? `${String(value)} shares the supply of ${String(cell.value)}, which is not there.`
      : other === plainWord(value)
        ? `${String(value)} shares its own supply.`
        : sharing.has(other)
          ? `${String(value)} shares the supply of ${String(cell.value)}, which has none of its own.`
          : own && !isBlank(own.value)
            ? `${String(value)} shares the supply of ${String(cell.value)} and names ${String(own.value)} of its own.`
            : undefined;
    if (message === undefined) return [];
    return [
      {
        weight: "wrong",
        place: cell.place,
        message,
        expected: "The name of a head unit that has a supply of its own; then none here.",
        effect: "Its volts cannot be right, and its supply is bought once too often or not at all.",
        remedy: "Correct the name, or clear one of the two cells.",
      },
    ];
  });
}

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

/** The device that keeps a supply from its head unit. */
function stopped(read: Book, computed: Book): Finding[] {
  const by = namedCells(computed, estimate.heads.stopped.name);
  const devices = namedCells(read, estimate.branches.device.name);
  const [names, powers] = [
    namedCells(read, estimate.passives.name.name),
    namedCells(read, estimate.passives.power.name),
  ];
  return filledCells(read, estimate.heads.id.name).flatMap(({ value, index }): Finding[] => {
    const branch = plainWord(by[index]?.value);
    const at = filledCells(read, estimate.branches.id.name).find((one) => plainWord(one.value) === branch);
    const device = at && plainWord(devices[at.index]?.value);
    const part = names.find((one) => device !== undefined && plainWord(one.value) === device);
    const place = part && powers[part.index]?.place;
    if (branch === "" || !place) return [];
    return [
      {
        weight: "wrong",
        place,
        message: `${String(part.value)} passes no power, and ${String(value)} gets its supply through one, at ${String(at!.value)}.`,
        expected: "A device that passes power, or a supply that does not feed through it.",
        effect: "The head unit is dead.",
        remedy: "Take another device at that branch, or let the supply sit elsewhere.",
      },
    ];
  });
}
