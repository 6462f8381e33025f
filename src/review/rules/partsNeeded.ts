import type { Book } from "../../workbooks/book";
import { namedValue } from "../../workbooks/named";
import { estimate } from "../../workbooks/multiRoom/names";
import type { Finding, FindingPlace } from "../finding";
import { inputsIn, type Input } from "../inputsIn";
import { filledCells, hasJob, isBlank, namedCells, plainWord } from "../namedCells";
import { onlyOne } from "../onlyOne";
import { clearing } from "../rowCells";
import { rowsIn } from "../rowsIn";
import type { Rule } from "../rule";
import { dishFitting } from "../dishFitting";

const { bonds, rooms, branches, heads, dishes, feeders, feeds, plates, supplies, site } = estimate;

/** Common practice, no source: what every job of this kind takes, by a word in the part's name. */
const ALWAYS = [
  // A grounding block joins screens; what it is bonded with is another part.
  { words: /bond|earth|ground(?!(?:ing)? ?block)/i, what: "bonding or earthing" },
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
  example: "No fitting is named for bonding; a run has a length and no cable.",
  find: ({ read, computed, definition }) => {
    if (!hasJob(read)) return [];
    const fittings = filledCells(read, estimate.fittings.name.name);
    const needed = namedCells(computed, estimate.fittingsBought.needed.name);
    const findings: Finding[] = [];
    const place = namedCells(read, estimate.fittings.name.name)[1]?.place;
    const bondsScreens = filledCells(read, bonds.kind.name).some(({ value }) =>
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
    const conductors = namedCells(read, bonds.where.name);
    // An early version has no such sheet.
    if (conductors.length > 0 && conductors.every(({ value }) => isBlank(value))) {
      findings.push({
        weight: "doubtful",
        place: conductors[1]?.place,
        message: "No bonding conductor is listed.",
        expected: "Each conductor to look at; the local code and licensed practice decide which.",
        remedy: "List them on Bonding, or have a licensed person say that there are none.",
      });
    }
    findings.push(...mastsUnbonded(read));
    for (const { value, index, place: at } of fittings) {
      if (needed[index]?.value !== 0) continue;
      findings.push({
        weight: "worth knowing",
        place: at,
        message: `Nothing needs ${String(value)}: it is counted by nothing.`,
        remedy: "Say on Parts how many it takes, or clear the line.",
      });
    }
    for (const [owner, of, what] of [
      [heads.id.name, heads.type.name, "kind of head unit"],
      [branches.id.name, branches.device.name, "part"],
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
          effect: "It is neither priced nor worked out, nor what hangs on it.",
          remedy: "Choose it from the list.",
        });
      }
    }
    return [
      ...findings,
      ...cablesUnnamed(read),
      ...platesForgotten(read),
      ...idle(read, inputsIn(read, definition)),
      ...dishesUnbought(read, computed),
      ...dishesWithoutFeed(read),
      ...loopedToNothing(read),
    ];
  },
};

/** Cables with a length, of no kind: neither their row nor Site names one. */
function cablesUnnamed(read: Book): Finding[] {
  if (filledCells(read, site.usual_cable.name).length > 0) return [];
  return [rooms, branches, heads, feeders].flatMap((of) => {
    const [cables, names] = [of.cable.name, nameOf(of)].map((name) => namedCells(read, name));
    const length = of === rooms ? rooms.run.name : (of as typeof heads).length.name;
    return filledCells(read, length).flatMap(({ index }): Finding[] => {
      const [cell, name] = [cables![index], names![index]];
      if (!cell || !isBlank(cell.value) || isBlank(name?.value)) return [];
      return [
        {
          weight: "wrong",
          place: cell.place,
          message: `${String(name?.value)} has a length and no cable.`,
          expected: "A cable of the Parts sheet, here or as the usual one of Site.",
          effect: "It is neither priced nor worked out, nor what hangs on it.",
          remedy: "Choose it from the list.",
        },
      ];
    });
  });
}

const nameOf = (of: typeof rooms | typeof branches | typeof heads | typeof feeders): string =>
  of === rooms ? rooms.outlet.name : of === feeders ? feeders.from.name : (of as typeof heads).id.name;

/** Outlets without a wall plate among more that have one; where most have none, told once. */
function platesForgotten(read: Book): Finding[] {
  const usual = namedCells(read, site.usual_plate.name)[0];
  if (usual && !isBlank(usual.value)) return [];
  const plates = namedCells(read, rooms.plate.name);
  const without = filledCells(read, rooms.outlet.name).flatMap(({ value, index }) => {
    const cell = plates[index];
    return cell && isBlank(cell.value) ? [{ name: String(value), place: cell.place }] : [];
  });
  const forgotten = (place: FindingPlace, message: string): Finding => ({
    weight: "doubtful",
    place,
    message,
    expected: "A wall plate of the Parts sheet, here or as the usual one of Site.",
    effect: "None is bought or fitted, and nothing is lost in it.",
    remedy: "Choose it from the list, or say in the note that the cable ends at the receiver.",
  });
  const [first] = without;
  if (!first) return [];
  return without.length < filledCells(read, rooms.plate.name).length
    ? without.map(({ name, place }) => forgotten(place, `${name} has no wall plate.`))
    : [
        forgotten(
          usual?.place ?? first.place,
          `${without.length} ${without.length === 1 ? "outlet has" : "outlets have"} no wall plate.`,
        ),
      ];
}

/** What is bought and fitted and has nothing behind it. An inserter on a port feeds towards the head unit. */
function idle(read: Book, inputs: readonly Input[]): Finding[] {
  const words = (names: readonly { readonly name: string }[]): ReadonlySet<string> =>
    new Set(names.flatMap(({ name }) => filledCells(read, name).map(({ value }) => plainWord(value))));
  const parts = namedCells(read, branches.device.name);
  const inserters = words([supplies.name]);
  const feeding = words([rooms.from, branches.from, feeders.from]);
  const onDish = words([heads.dish, feeders.from]);
  const all = filledCells(read, dishes.name.name);
  return [
    ...filledCells(read, heads.id.name).map((cell) => ({ cell, of: feeding, what: "head unit" })),
    ...filledCells(read, branches.id.name)
      .filter(({ index }) => !inserters.has(plainWord(parts[index]?.value)))
      .map((cell) => ({ cell, of: feeding, what: "device" })),
    // The only dish need not be named.
    ...(all.length > 1 ? all : []).map((cell) => ({ cell, of: onDish, what: "dish" })),
  ].flatMap(({ cell: { place, value, index }, of, what }): Finding[] =>
    of.has(plainWord(value))
      ? []
      : [
          {
            weight: "doubtful",
            place,
            message: `${String(value)} feeds nothing.`,
            ...(what !== "head unit" && {
              undoing: clearing(read, inputs, what === "dish" ? "dishes" : "branches", index),
              isGuess: true,
            }),
            expected: `A ${what} that feeds something.`,
            effect: "It is bought and fitted for nothing.",
            remedy: "Clear its row, or correct where the name of what feeds is asked for.",
          },
        ],
  );
}

/** Of several dishes some are bought and one is not. */
function dishesUnbought(read: Book, computed: Book): Finding[] {
  const parts = namedCells(read, dishes.part.name);
  const all = filledCells(read, dishes.name.name);
  const without = all.filter(({ index }) => isBlank(parts[index]?.value));
  const sizes = namedCells(read, dishes.size.name);
  const usual = namedValue(read, site.dish.name);
  const fittings = namedCells(read, dishes.name.name).map(({ index }) => {
    const size = isBlank(sizes[index]?.value) ? usual : sizes[index]?.value;
    return typeof size === "number" ? dishFitting(read, size) : undefined;
  });
  // Where none is bought, what is listed in its size and counted by nothing tells that it should be.
  const needed = namedCells(computed, estimate.fittingsBought.needed.name);
  const idleParts = new Set(
    filledCells(read, estimate.fittings.name.name).flatMap(({ value, index }) =>
      needed[index]?.value === 0 ? [String(value)] : [],
    ),
  );
  const lacking =
    without.length === all.length
      ? without.filter(({ index }) => idleParts.has(fittings[index] ?? ""))
      : without;
  return lacking.map(({ value, index }) => ({
    weight: "doubtful",
    place: parts[index]!.place,
    message: `${String(value)} is bought as nothing, and ${without.length === all.length ? `“${fittings[index]}” is listed` : "the other dishes are"}.`,
    expected: "The dish with its mount among the fittings of the Parts sheet.",
    ...(fittings[index] !== undefined && { meant: fittings[index], isGuess: true }),
    effect: "The price holds no dish for it.",
    remedy: "Choose it from the list, or say under Exclusions who supplies it.",
  }));
}

/** Cables come from a dish on which nothing receives. */
function dishesWithoutFeed(read: Book): Finding[] {
  const cells = namedCells(read, dishes.feed.name);
  const from = new Set(filledCells(read, feeders.from.name).map(({ value }) => plainWord(value)));
  const others = filledCells(read, dishes.feed.name).map(({ value }) => String(value));
  const kinds = filledCells(read, feeds.name.name).map(({ value }) => String(value));
  const meant = onlyOne(others, kinds);
  return filledCells(read, dishes.name.name).flatMap(({ value, index }): Finding[] => {
    const cell = cells[index];
    if (!cell || !isBlank(cell.value) || !from.has(plainWord(value))) return [];
    return [
      {
        weight: "wrong",
        place: cell.place,
        message: `${String(value)} has no feed, and feeders come from it.`,
        expected: "A feed of the Parts sheet.",
        ...(meant !== undefined && { meant, isGuess: true }),
        effect: "Nothing is received on it, and its feed is not priced.",
        remedy: "Choose it from the list.",
      },
    ];
  });
}

const MAST = /\b(?:mast|pole|tripod)/i;

/** A dish on a mast, and no conductor for any mast. What must be bonded the local code and licensed practice decide. */
function mastsUnbonded(read: Book): Finding[] {
  const listed = filledCells(read, bonds.where.name);
  const onMast = filledCells(read, dishes.mounting.name).find(({ value }) => MAST.test(String(value)));
  const said = [...listed, ...filledCells(read, bonds.kind.name)];
  if (listed.length === 0 || !onMast || said.some(({ value }) => MAST.test(String(value)))) return [];
  const dish = namedCells(read, dishes.name.name)[onMast.index]?.value;
  return [
    {
      weight: "doubtful",
      place: namedCells(read, bonds.where.name)
        .slice(1)
        .find(({ value }) => isBlank(value))?.place,
      message: `${String(dish)} stands on a mast (${String(onMast.value)}), and no conductor of a mast is listed.`,
      expected: "The conductor of the mast; the local code and licensed practice decide which.",
      effect: "It is neither priced nor looked at.",
      remedy: "List it on Bonding, or have a licensed person say that there is none.",
    },
  ];
}

/** An outlet with a loop-through plate from which nothing goes on, and that is not the end of a row of such outlets. */
function loopedToNothing(read: Book): Finding[] {
  const through = namedCells(read, plates.through_low.name);
  const loops = new Set(
    filledCells(read, plates.name.name).flatMap(({ value, index }) =>
      isBlank(through[index]?.value) ? [] : [plainWord(value)],
    ),
  );
  const outlets = rowsIn(read, rooms.outlet, { plate: rooms.plate, from: rooms.from });
  const feeding = new Set(
    [rooms.from, branches.from].flatMap(({ name }) =>
      filledCells(read, name).map(({ value }) => plainWord(value)),
    ),
  );
  const names = new Set(outlets.map(({ called }) => plainWord(called)));
  const usual = namedCells(read, site.usual_plate.name)[0];
  const alone = outlets.filter(
    ({ called, word }) =>
      loops.has(word("plate")) && !feeding.has(plainWord(called)) && !names.has(word("from")),
  );
  return alone.map(({ called, cell }): Finding => ({
    weight: "doubtful",
    place: cell("plate")!.place,
    message: `${called} has a loop-through plate, and nothing goes on from it.`,
    expected: "A single outlet; or the outlet that it feeds.",
    ...(usual && !isBlank(usual.value) && !loops.has(plainWord(usual.value))
      ? { undoing: [{ place: cell("plate")!.place }], isGuess: true }
      : {}),
    effect: "It costs more, and its open port must be closed.",
    remedy: "Choose the plate from the list, or name this outlet where the next one is fed.",
  }));
}
