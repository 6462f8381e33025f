import type { Named } from "../../formula/build";
import type { Book } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import { taxClass, taxes } from "../../workbooks/multiRoom/names/site";
import { namedValue } from "../../workbooks/named";
import type { Finding } from "../finding";
import { dishFitting, isSameSize, metresIn } from "../dishFitting";
import { figure, filledCells, isBlank, namedCells, plainWord } from "../namedCells";
import type { Rule } from "../rule";
import { rowsIn } from "../rowsIn";

const { passives, units, supplies, feeds, receivers, dishes, site } = estimate;

interface Said {
  readonly named: Named;
  readonly of: Named;
  readonly words: RegExp;
  /** What a name may round off. */
  readonly within: number;
  readonly what: string;
  /** Only rows of this kind say it of themselves. */
  readonly kind?: string;
}

/** Figures that the names of parts carry. A name in other words says none, and is left alone. */
const SAID: readonly Said[] = [
  { named: passives.name, of: passives.ways, words: /\b(\d+)[- ]?ways?\b/i, within: 0, what: "ways" },
  {
    named: passives.name,
    of: passives.port_low,
    words: /\btap (\d+(?:\.\d+)?) ?dB/i,
    within: 2,
    what: "dB to a port",
    kind: "tap",
  },
  { named: units.name, of: units.bands, words: /\b(\d+) (?:user )?bands?\b/i, within: 0, what: "user bands" },
  { named: units.name, of: units.outputs, words: /\b(\d+) outputs?\b/i, within: 0, what: "outputs" },
  { named: feeds.name, of: feeds.outputs, words: /\b(\d+) outputs?\b/i, within: 0, what: "outputs" },
  {
    named: supplies.name,
    of: supplies.volts,
    words: /(?<![\d.,])(\d+(?:[.,]\d+)?) ?V\b/,
    within: 0.5,
    what: "V",
  },
  {
    named: supplies.name,
    of: supplies.amps,
    words: /(?<![\d.,])(\d+(?:[.,]\d+)?) ?A\b/,
    within: 0.05,
    what: "A",
  },
  { named: receivers.kind, of: receivers.tuners, words: /\b(\d+) tuners?\b/i, within: 0, what: "tuners" },
];

export const nameSaysOtherwise: Rule = {
  id: "name says otherwise",
  reason: "A part's name carries its size. A row of another size is another part, or a slip of a key.",
  example: "A 4-way splitter with 6 ways; a dish of 1.1 m bought as “dish 0.9 m with mount”.",
  find: ({ read }) => [
    ...SAID.flatMap((said) => unlike(read, said)),
    ...ofDishes(read),
    ...routeAssumed(read),
    ...taxOfWork(read),
    ...bondsOfAnotherDish(read),
  ],
};

function unlike(read: Book, { named, of, words, within, what, kind }: Said): Finding[] {
  return rowsIn(read, named, { of, kind: passives.kind }).flatMap(({ called, cell, number, word }) => {
    const all = [...called.matchAll(new RegExp(words, `${words.flags}g`))];
    // A name with two such figures says neither.
    const said = all.length === 1 ? Number(all[0]![1]!.replace(",", ".")) : 0;
    const is = number("of");
    if (!said || is === undefined || Math.abs(said - is) <= within) return [];
    if (kind !== undefined && word("kind") !== kind) return [];
    return [
      otherwise(
        cell("of")!.place,
        `${called} is entered with ${figure(is)} ${is === 1 ? what.replace(/s$/, "") : what}.`,
        `${figure(said)}, by its name.`,
        { meant: said },
      ),
    ];
  });
}

const otherwise = (
  place: Finding["place"],
  message: string,
  expected: string,
  more: Partial<Finding> = {},
): Finding => ({
  weight: "doubtful",
  place,
  message,
  expected,
  ...more,
  effect: "What is worked out, or bought, goes by the figure.",
  remedy: "Compare with the part's sheet; correct the figure or the name.",
});

/** Common practice, no source: dishes for reception in buildings, in metres. */
const isOff = (size: number): boolean => size < 0.3 || size > 4;

/** The dish that is bought against the dish that is planned. */
function ofDishes(read: Book): Finding[] {
  const usual = namedValue(read, site.dish.name);
  return rowsIn(read, dishes.name, { size: dishes.size, part: dishes.part }).flatMap(
    ({ called, cell, number }) => {
      const part = String(cell("part")?.value ?? "");
      const said = metresIn(part);
      const size = number("size") ?? usual;
      if (said === undefined || typeof size !== "number" || isSameSize(said, size)) return [];
      const fitting = dishFitting(read, size);
      const planned = cell("size");
      return [
        otherwise(
          // No dish of such a size is made: then it is the size that is off.
          (planned && isOff(size) ? planned : cell("part")!).place,
          `${called} of ${figure(size)} m is bought as “${part}”.`,
          fitting === undefined
            ? `A dish of ${figure(size)} m.`
            : `“${fitting}”, or the size of what is bought.`,
          // Of a size that none of Parts has, the size is what is off.
          ...(fitting === undefined && planned && !isBlank(planned.value)
            ? [{ undoing: [{ place: planned.place, value: said }] }]
            : [{ meant: fitting }]),
        ),
      ];
    },
  );
}

/** A route that the assumptions speak of, and that no cable has while all go by another. */
function routeAssumed(read: Book): Finding[] {
  const [usual] = filledCells(read, site.usual_route.name);
  if (!usual) return [];
  const own = new Set(
    [estimate.rooms, estimate.branches, estimate.heads, estimate.feeders].flatMap(({ route }) =>
      filledCells(read, route.name).map(({ value }) => plainWord(value)),
    ),
  );
  const said = filledCells(read, estimate.assumptions.text.name).map(({ value }) => plainWord(value));
  const routes = filledCells(read, estimate.routes.name.name).map(({ value }) => String(value));
  const is = plainWord(usual.value);
  if (said.some((text) => text.includes(is))) return [];
  const assumed = routes.filter(
    (route) => !own.has(plainWord(route)) && said.some((text) => text.includes(plainWord(route))),
  );
  const [meant] = assumed;
  if (assumed.length !== 1 || meant === undefined || plainWord(meant) === is) return [];
  return [
    {
      ...otherwise(
        usual.place,
        `The usual route is “${String(usual.value)}”, and the assumptions speak of “${meant}”, by which no cable goes.`,
        `“${meant}”.`,
        { meant, isGuess: true },
      ),
      effect: "Every cable without a route of its own is run and priced so.",
      remedy: "Choose the route from the list, or correct the assumption.",
    },
  ];
}

/** A class of tax that is called after work, while labour has none. */
function taxOfWork(read: Book): Finding[] {
  const [labour] = namedCells(read, taxClass.labour.name);
  if (!labour || !isBlank(labour.value)) return [];
  const ofWork = filledCells(read, taxes.name.name).filter(({ value }) =>
    /\b(?:work|labour)\b/i.test(String(value)),
  );
  const [meant] = ofWork;
  if (!meant || ofWork.length > 1) return [];
  const onGoods = [taxClass.reception, taxClass.cable, taxClass.fittings].flatMap(({ name }) =>
    filledCells(read, name).filter(({ value }) => plainWord(value) === plainWord(meant.value)),
  );
  // A job may have work that is taxed so among its options alone.
  const isIdle = ![...Object.values(taxClass), estimate.options.tax, estimate.provisional.tax].some(
    ({ name }) => filledCells(read, name).some(({ value }) => plainWord(value) === plainWord(meant.value)),
  );
  if (onGoods.length === 0 && !isIdle) return [];
  return [
    {
      ...otherwise(
        labour.place,
        `Labour has no tax class, and “${String(meant.value)}” is ${isIdle ? "on nothing" : "on what is bought"}.`,
        `“${String(meant.value)}”, if it is meant for labour.`,
        {
          undoing: [
            { place: labour.place, value: String(meant.value) },
            // A line may have slipped up by one.
            ...(onGoods.length === 1 ? [{ place: onGoods[0]!.place }] : []),
          ],
          isGuess: true,
        },
      ),
      effect: "Labour is taxed at the usual rate.",
      remedy: "Choose the class for labour on Site, and clear it where goods have it, or leave it.",
    },
  ];
}

/** A conductor that is called after one dish, and said to bond another. */
function bondsOfAnotherDish(read: Book): Finding[] {
  const names = filledCells(read, dishes.name.name).map(({ value }) => String(value));
  return rowsIn(read, estimate.bonds.where, { dish: estimate.bonds.dish }).flatMap(
    ({ called, cell, word }): Finding[] => {
      const words = new Set(plainWord(called).split(/[^\p{L}\p{N}-]+/u));
      const meant = names.filter((name) => words.has(plainWord(name)));
      const [own] = meant;
      const dish = cell("dish");
      if (
        own === undefined ||
        meant.length > 1 ||
        !dish ||
        isBlank(dish.value) ||
        word("dish") === plainWord(own)
      )
        return [];
      return [
        {
          ...otherwise(dish.place, `“${called}” is said to bond ${String(dish.value)}.`, `${own}.`, {
            meant: own,
          }),
          effect: `${own} then counts as a dish without a conductor.`,
          remedy:
            "Correct the dish, or the name of the conductor. What must be bonded is settled by the local code and a licensed person.",
        },
      ];
    },
  );
}
