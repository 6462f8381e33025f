import type { Book, BookResult } from "../../workbooks/book";
import type { EstimateCheck } from "../../workbooks/multiRoom/checks";
import { estimate } from "../../workbooks/multiRoom/names";
import type { Finding, FindingPlace } from "../finding";
import { filledCells, isBlank, namedCells, plainWord } from "../namedCells";
import { mendsOf } from "../mends";
import type { Rule } from "../rule";

const { rooms, heads, branches, site, settings } = estimate;

interface Limit {
  readonly check: EstimateCheck;
  readonly verdict: string;
  readonly bad: string;
  readonly of: string;
  readonly named: string;
  readonly what: string;
  readonly unit: string;
  /** The column or field of the limit; absent where the part's own row has it. */
  readonly limit?: string;
  readonly remedy: string;
}

const COLUMNS: readonly Limit[] = [
  {
    check: "level too low",
    verdict: rooms.check.level.name,
    bad: "low",
    of: rooms.weakest.name,
    named: rooms.outlet.name,
    what: "too little level",
    unit: "dBµV",
    limit: site.level_low.name,
    remedy: "Shorten the run, take a better cable, or a splitter that loses less.",
  },
  {
    check: "level too high",
    verdict: rooms.check.level.name,
    bad: "high",
    of: rooms.strongest.name,
    named: rooms.outlet.name,
    what: "too much level",
    unit: "dBµV",
    limit: site.level_high.name,
    remedy: "Take a tap or an outlet that loses more.",
  },
  {
    check: "slope too steep",
    verdict: rooms.check.slope.name,
    bad: "steep",
    of: rooms.slope.name,
    named: rooms.outlet.name,
    what: "too much difference between the ends of the range",
    unit: "dB",
    limit: settings.slope.name,
    remedy: "Put an equaliser into the trunk, or take a cable that loses less at the highest frequency.",
  },
  {
    check: "applied volts too high",
    verdict: rooms.check.applied.name,
    bad: "high",
    of: rooms.volts.applied.name,
    named: rooms.outlet.name,
    what: "too many volts from elsewhere at its connector",
    unit: "V",
    remedy:
      "Take devices that pass power towards the head unit only, or an inserter whose other side passes none.",
  },
  {
    check: "short of volts",
    verdict: heads.check.power.name,
    bad: "low",
    of: heads.fed.least.name,
    named: heads.id.name,
    what: "too few volts",
    unit: "V",
    limit: heads.least.name,
    remedy: "Take a cable with less resistance, a supply with more volts, or move it nearer.",
  },
  {
    check: "supply overloaded",
    verdict: heads.check.current.name,
    bad: "high",
    of: heads.fed.supplied.name,
    named: heads.id.name,
    what: "too much current for its supply",
    unit: "A",
    remedy: "Take a supply that gives more.",
  },
  {
    check: "amplifiers short of volts",
    verdict: branches.check.power.name,
    bad: "low",
    of: branches.check.volts.name,
    named: branches.id.name,
    what: "too few volts to amplify",
    unit: "V",
    remedy: "Put an inserter where its power passes to the amplifier.",
  },
  {
    check: "devices overloaded",
    verdict: branches.check.current.name,
    bad: "high",
    of: branches.check.amps.name,
    named: branches.id.name,
    what: "too much current through it",
    unit: "A",
    remedy: "Take a device that bears more, or feed the head unit past it.",
  },
  {
    check: "amplifiers overdriven",
    verdict: branches.check.output.name,
    bad: "high",
    of: branches.level.greatest.name,
    named: branches.id.name,
    what: "too much output for the carriers that it carries",
    unit: "dBµV",
    limit: branches.level.limit.name,
    remedy: "Put an attenuator before it, or take an amplifier with less gain.",
  },
];

/** Below a volt nothing is too long or too thin. */
const NOTHING_ARRIVES = "No supply reaches it: add one, or mend what stands between.";

interface InWords {
  readonly check: EstimateCheck;
  readonly verdict: string;
  readonly bad: readonly string[];
  readonly named: string;
  readonly why: string;
  readonly what: string;
  /** Of several outlets of one head unit. */
  readonly ofMany?: string;
  readonly remedy: string;
}

/** Verdicts without a figure of their own. */
const WORDS: readonly InWords[] = [
  {
    check: "no user band",
    verdict: rooms.check.bands.name,
    bad: ["bad"],
    named: rooms.outlet.name,
    why: rooms.check.trouble.name,
    what: "has not the user bands that it needs",
    ofMany: "have not the user bands that they need",
    remedy: "Add an output or a head unit, or keep other user bands.",
  },
  {
    check: "outlets dead",
    verdict: rooms.check.commands.name,
    bad: ["dead"],
    named: rooms.outlet.name,
    why: rooms.check.trouble.name,
    what: "cannot command its head unit",
    ofMany: "cannot command it",
    remedy:
      "Look at what stands between the two: what blocks power, an amplifier without return, an inserter.",
  },
  {
    check: "connectors too few",
    verdict: rooms.check.connectors.name,
    bad: ["too many"],
    named: rooms.outlet.name,
    why: rooms.check.trouble.name,
    what: "has more receivers than connectors",
    remedy: "Name what splits them, in Split by.",
  },
  {
    check: "through ports open",
    verdict: rooms.check.port.name,
    bad: ["left open"],
    named: rooms.outlet.name,
    why: rooms.check.trouble.name,
    what: "has a through port that nothing closes",
    remedy: "Close it with an end resistor that blocks power.",
  },
  {
    check: "through ports open",
    verdict: branches.check.port.name,
    bad: ["left open"],
    named: branches.id.name,
    why: branches.check.trouble.name,
    what: "has a through port that nothing closes",
    remedy: "Close it with an end resistor that blocks power.",
  },
  {
    check: "inputs out of range",
    verdict: heads.check.input.name,
    bad: ["low", "high"],
    named: heads.id.name,
    why: heads.check.trouble.name,
    what: "has a level at its inputs that it does not take",
    remedy: "Look at the feeders and at the feed's gain.",
  },
  {
    check: "feeds short of volts",
    verdict: heads.check.feed.name,
    bad: ["low"],
    named: heads.id.name,
    why: heads.check.trouble.name,
    what: "does not give its feed the volts that it needs",
    remedy: "Take feeders with less resistance, or a head unit that powers its feed.",
  },
];

/** A hundredth tells a level or a voltage from its limit. */
const inShort = (value: number): string => String(Number(value.toFixed(2)));

/** The supply of a head unit, where its own volts are already too few. */
function tooWeak(read: Book, head: number): FindingPlace | undefined {
  const supply = namedCells(read, heads.supply.name)[head];
  const of = (list: string, column: string, name: BookResult | undefined): BookResult | undefined => {
    const row = filledCells(read, list).find(({ value }) => plainWord(value) === plainWord(name));
    return row && namedCells(read, column)[row.index]?.value;
  };
  const volts = of(estimate.supplies.name.name, estimate.supplies.volts.name, supply?.value);
  const least = of(
    estimate.units.name.name,
    estimate.units.least.name,
    namedCells(read, heads.type.name)[head]?.value,
  );
  return typeof volts === "number" && typeof least === "number" && volts < least ? supply?.place : undefined;
}

export const limits: Rule = {
  id: "outside limits",
  reason: "An outlet without level, commands or user bands, or a head unit without volts, does not work.",
  example: "Outlet A-07 gets 42 dBµV where 47 is the least.",
  find: ({ read, computed }) => [
    ...COLUMNS.flatMap((one) => beyond(one, read, computed)),
    ...noise(computed),
    ...WORDS.flatMap((one) => inWords(one, read, computed)),
  ],
};

/** From so many outlets of one head unit on, they are one finding: what is wrong then is the head unit, or above them. */
const TOGETHER = 3;

/** Where a receiver is said to keep what its head unit does not have, that is the entry to look at. */
const KEEPS = /\bkeeps user band/;

function inWords(
  { check, verdict, bad, named, why, what, remedy, ofMany }: InWords,
  read: Book,
  computed: Book,
): Finding[] {
  const [names, reasons, above] = [named, why, rooms.place.head.name].map((name) =>
    namedCells(computed, name),
  );
  const kept = verdict === rooms.check.bands.name ? namedCells(read, rooms.kept.name) : [];
  // One that cannot command gets no user band either.
  const dead = verdict === rooms.check.bands.name ? namedCells(computed, rooms.check.commands.name) : [];
  const found = filledCells(computed, verdict).filter(
    ({ index, value }) => bad.some((word) => word === value) && dead[index]?.value !== "dead",
  );
  const headOf = (index: number): BookResult | undefined => (ofMany ? above![index]?.value : undefined);
  const groups = new Map<BookResult | undefined | number, typeof found>();
  for (const cell of found) {
    const key = headOf(cell.index) ?? cell.index;
    groups.set(key, [...(groups.get(key) ?? []), cell]);
  }
  return [...groups.values()].flatMap((cells): Finding[] => {
    const isTogether = cells.length >= TOGETHER;
    return (isTogether ? [cells[0]!] : cells).map(({ place, index }) => {
      const name = String(names![index]?.value ?? "");
      const reason = reasons![index]?.value;
      const who = isTogether
        ? `${name} and ${cells.length - 1} more of ${String(headOf(index))} ${ofMany}`
        : `${name} ${what}`;
      const keeps = !isTogether && typeof reason === "string" && KEEPS.test(reason) ? kept[index] : undefined;
      return {
        weight: "wrong",
        place: keeps && !isBlank(keeps.value) ? keeps.place : place,
        message: `${who}.${typeof reason === "string" && reason !== "" ? ` ${reason}` : ""}`,
        effect: "It will not work as quoted.",
        remedy,
        mends: mendsOf(check, computed, place),
      };
    });
  });
}

function beyond(
  { check, verdict, bad, of, named, what, unit, limit, remedy }: Limit,
  read: Book,
  computed: Book,
): Finding[] {
  const figures = namedCells(computed, of);
  const names = namedCells(computed, named);
  const bounds = limit === undefined ? [] : namedCells(computed, limit);
  return filledCells(computed, verdict).flatMap(({ place, index, value }): Finding[] => {
    if (value !== bad) return [];
    const found = figures[index]?.value;
    const bound = (bounds.length > 1 ? bounds[index] : bounds[0])?.value;
    // The supply is what was chosen; of the others' kind, if they have one.
    const own = verdict === heads.check.current.name ? namedCells(read, heads.supply.name)[index] : undefined;
    return [
      {
        weight: "wrong",
        place: own && !isBlank(own.value) ? own.place : place,
        ...(named === heads.id.name && unit === "V" && { cause: tooWeak(read, index) }),
        message: `${String(names[index]?.value ?? "")} has ${what}${typeof found === "number" ? `: ${inShort(found)} ${unit}` : ""}.`,
        ...(typeof bound === "number" && {
          expected: `${bad === "low" ? "At least" : "At most"} ${inShort(bound)} ${unit}.`,
        }),
        effect: "It will not work as quoted.",
        remedy:
          unit === "V" && bad === "low" && typeof found === "number" && found < 1 ? NOTHING_ARRIVES : remedy,
        mends: mendsOf(check, computed, place),
      },
    ];
  });
}

/** Of the slot that is nearest its limit; in rain only where an availability is wanted. */
function noise(computed: Book): Finding[] {
  const [names, slots, clear, rain, needed] = [
    rooms.outlet,
    rooms.noise.slot,
    rooms.noise.clear,
    rooms.noise.rain,
    rooms.noise.needed,
  ].map(({ name }) => namedCells(computed, name));
  return filledCells(computed, rooms.check.noise.name).flatMap(({ place, index, value }): Finding[] => {
    if (value !== "low") return [];
    const [sky, wet, wanted] = [clear, rain, needed].map((cells) => cells![index]?.value);
    const inRain = typeof wet === "number" && (typeof sky !== "number" || sky >= Number(wanted));
    const found = inRain ? wet : sky;
    return [
      {
        weight: "wrong",
        place,
        message: `${String(names![index]?.value ?? "")} has too little carrier to noise of ${String(slots![index]?.value ?? "a slot")}${typeof found === "number" ? `: ${inShort(found)} dB ${inRain ? "at the availability wanted" : "in clear sky"}` : ""}.`,
        ...(typeof wanted === "number" && { expected: `At least ${inShort(wanted)} dB.` }),
        effect: "Pictures break up, or never come.",
        remedy: "Take a larger dish, or a feed with less noise; a level that is too low adds noise as well.",
        mends: mendsOf("carrier to noise too low", computed, place),
      },
    ];
  });
}
