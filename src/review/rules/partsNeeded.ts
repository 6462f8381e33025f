import type { BookResult } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import type { Finding } from "../finding";
import { filledCells, hasJob, isBlank, namedCells, plainWord } from "../namedCells";
import type { Rule } from "../rule";

/** Common practice, no source: what every job of this kind takes, by a word in the part's name. */
const ALWAYS = [
  { words: /bond|earth|ground/i, what: "bonding or earthing" },
  { words: /connector|plug/i, what: "connectors" },
  { words: /dish|antenna|reflector/i, what: "a dish" },
] as const;
/** Where cable screens are bonded they need a block or bar to be bonded at. Common practice, no source. */
const SCREEN_BLOCK = {
  words: /(?=.*(?:bond|earth|ground))(?=.*(?:\bbar|block|clamp|\bset|\bkit))/i,
  what: "a ground block or bonding bar, at which the cable screens are bonded",
};

export const partsNeeded: Rule = {
  id: "part lacking or not needed",
  reason:
    "A part that the design needs and the list lacks is work at our cost; one that nothing needs is a wrong price.",
  example: "No fitting is named for bonding; a head unit has no inserter.",
  find: ({ read, computed }) => {
    if (!hasJob(read)) return [];
    const fittings = filledCells(read, estimate.fittings.name.name);
    const needed = namedCells(computed, estimate.fittingsBought.needed.name);
    const findings: Finding[] = [];
    const place = namedCells(read, estimate.fittings.name.name)[1]?.place;
    const bondsScreens = filledCells(read, estimate.bonds.kind.name).some(({ value }) =>
      /screen/i.test(String(value)),
    );
    for (const { words, what } of [...ALWAYS, ...(bondsScreens ? [SCREEN_BLOCK] : [])]) {
      const there = fittings.some(
        ({ value, index }) => words.test(String(value)) && needed[index]?.value !== 0,
      );
      if (there) continue;
      const uncounted = fittings.find(({ value }) => words.test(String(value)));
      findings.push({
        weight: "doubtful",
        place: uncounted ? namedCells(read, estimate.fittings.fixed.name)[uncounted.index]?.place : place,
        message: uncounted
          ? `Nothing counts “${String(uncounted.value)}”.`
          : `No fitting that is counted is named for ${what}.`,
        expected: `A line for ${what}, unless others supply it.`,
        effect: "The price holds nothing for it.",
        remedy: "Add the fitting on Parts, or say under Exclusions who supplies it.",
      });
    }
    const bonds = namedCells(read, estimate.bonds.where.name);
    // An early version has no such sheet.
    if (bonds.length > 0 && bonds.every(({ value }) => isBlank(value))) {
      findings.push({
        weight: "doubtful",
        place: bonds[1]?.place,
        message: "No bonding conductor is listed.",
        expected: "Each conductor to look at; the local code and licensed practice decide which.",
        remedy: "List them on Bonding, or have a licensed person say that there are none.",
      });
    }
    for (const { value, index, place: at } of fittings) {
      if (needed[index]?.value !== 0) continue;
      findings.push({
        weight: "worth knowing",
        place: at,
        message: `Nothing needs ${String(value)}: it is counted by nothing.`,
        remedy: "Say on Parts how many it takes, or clear the line.",
      });
    }
    for (const [of, what] of [
      [estimate.heads.supply.name, "supply or inserter"],
      [estimate.heads.type.name, "kind of head unit"],
    ] as const) {
      const cells = namedCells(read, of);
      const shares = namedCells(read, estimate.heads.shares.name);
      for (const { value, index } of filledCells(read, estimate.heads.id.name)) {
        const cell = cells[index];
        if (!cell || !isBlank(cell.value)) continue;
        if (of === estimate.heads.supply.name && !isBlank(shares[index]?.value)) continue;
        findings.push({
          weight: "wrong",
          place: cell.place,
          message: `Head unit ${String(value)} has no ${what}.`,
          expected: "One of the Parts sheet.",
          effect: "It is neither priced nor powered.",
          remedy: "Choose it from the list.",
        });
      }
    }
    for (const [owner, of, what] of [
      [estimate.rooms.outlet.name, estimate.rooms.plate.name, "wall plate"],
      [estimate.branches.id.name, estimate.branches.device.name, "splitter or tap"],
    ] as const) {
      const cells = namedCells(read, of);
      for (const { value, index } of filledCells(read, owner)) {
        const cell = cells[index];
        if (!cell || !isBlank(cell.value)) continue;
        findings.push({
          weight: "wrong",
          place: cell.place,
          message: `${String(value)} has no ${what}.`,
          expected: "One of the Parts sheet.",
          effect: "It is not priced, and its level cannot be found.",
          remedy: "Choose it from the list.",
        });
      }
    }
    for (const [owner, count, what] of [
      [estimate.heads.id.name, estimate.heads.tuners.name, "head unit"],
      [estimate.branches.id.name, estimate.branches.fed.name, "splitter or tap"],
    ] as const) {
      const counts = namedCells(computed, count);
      for (const { value, index, place: at } of filledCells(read, owner)) {
        if (counts[index]?.value !== 0 || isInLine(owner, value)) continue;
        findings.push({
          weight: "doubtful",
          place: at,
          message: `${String(value)} feeds nothing.`,
          expected: `A ${what} that feeds something.`,
          effect: "It is bought and fitted for nothing.",
          remedy: "Clear its row, or correct “fed from” of what it should feed.",
        });
      }
    }
    return findings;

    /** A tap whose ports are free feeds nothing by them, and still what hangs on its line. */
    function isInLine(owner: string, name: BookResult | undefined): boolean {
      if (owner !== estimate.branches.id.name) return false;
      return filledCells(read, estimate.branches.from.name).some(
        (from) => plainWord(from.value) === plainWord(name),
      );
    }
  },
};
