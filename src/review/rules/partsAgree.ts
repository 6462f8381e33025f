import { isFault } from "../../engine/faults";
import { builtInCable } from "../../engine/signal/cable";
import { BOND_RULES } from "../../engine/bonding/constants";
import type { Book } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import { eachPiece, PIECES } from "../../workbooks/multiRoom/names/pieces";
import { namedValue } from "../../workbooks/named";
import type { WorkbookDefinition } from "../../workbooks/definition";
import { doubtfulWith, type Finding, type Undoing } from "../finding";
import { inputsIn } from "../inputsIn";
import { figure, filledCells, hasJob, isBlank, namedCells, plainWord, PRICED_BLOCKS } from "../namedCells";
import { takenFrom, type FirmSays } from "../ranges/firm";
import { filling, freeRows } from "../rowCells";
import type { Rule } from "../rule";
import { rowsIn } from "../rowsIn";
import { lettersApart } from "../spelling";

const { passives, units, resistors, labour, fittings, bonds, site } = estimate;

/** A smaller part that costs more by less than this was bought from somebody else, or on another day. */
const DEARER = 1.1;
/** Prices of two sizes of one kind lie nearer to each other; farther apart a point slipped, and they were not changed over. */
const FARTHEST_SIZES = 3;
/** Common practice, no source: no head unit lives on less. */
const LEAST_WATTS = 1;
/** What the letters of two names may differ by, to be one name. */
const LETTERS_OFF = 2;
const FEWEST_LETTERS = 6;

export const partsAgree: Rule = {
  id: "parts that do not agree",
  reason:
    "What one row of Parts says is held to the row beside it: more ways cost more, a piece is counted once, a supplier has one name.",
  example:
    "A 4-way splitter dearer than the 6-way; “grounding block” counted for each connector; an end resistor that passes power.",
  find: ({ read, computed, definition, options }) =>
    hasJob(read)
      ? [
          ...smallerDearer(read),
          ...watts(read),
          ...openToPower(read),
          ...unclosed(read),
          ...otherPiece(read),
          ...uncounted(read),
          ...workLacking(read, computed, (index, piece) =>
            workOfFirm(read, definition, options.standards ?? takenFrom(read), index, piece),
          ),
          ...perHundredFeet(read),
          ...usualParts(read),
          ...keepsCommands(read, computed),
          ...countedTwice(read, computed),
          ...suppliers(read),
          ...thin(read),
        ]
      : [],
};

const doubtful = doubtfulWith(
  "Compare with the maker's sheet and the price list; correct the cell, or say on Log why it is so.",
);

const OF_PASSIVES = {
  kind: passives.kind,
  ways: passives.ways,
  price: passives.price,
  power: passives.power,
};

/** Two rows' prices in each other's place. */
function smallerDearer(read: Book): Finding[] {
  const rows = rowsIn(read, passives.name, OF_PASSIVES).filter(
    (row) => (row.number("price") ?? 0) > 0 && row.number("ways") !== undefined,
  );
  return rows.flatMap((row): Finding[] => {
    const larger = rows.find(
      (other) =>
        other.word("kind") === row.word("kind") &&
        other.word("power") === row.word("power") &&
        other.number("ways")! > row.number("ways")! &&
        row.number("price")! > DEARER * other.number("price")!,
    );
    if (!larger) return [];
    return [
      doubtful(
        row.cell("price")!.place,
        `${row.called} costs ${figure(row.number("price")!)}, and ${larger.called} with more ways ${figure(larger.number("price")!)}.`,
        "Less than the larger one: were the two prices typed in each other's row?",
        "Each piece that is bought carries it into the price.",
        row.number("price")! < FARTHEST_SIZES * larger.number("price")!
          ? {
              undoing: [
                { place: row.cell("price")!.place, value: larger.number("price")! },
                { place: larger.cell("price")!.place, value: row.number("price")! },
              ],
              isGuess: true,
            }
          : {},
      ),
    ];
  });
}

/** Amperes that are said to be watts. */
const watts = (read: Book): Finding[] =>
  rowsIn(read, units.name, { load: units.load, kind: units.kind }).flatMap(
    ({ called, cell, number, word }): Finding[] => {
      const load = number("load");
      if (word("kind") !== "w" || load === undefined || load <= 0 || load >= LEAST_WATTS) return [];
      return [
        doubtful(
          cell("kind")!.place,
          `${called} is said to draw ${figure(load)} W.`,
          `A, if ${figure(load)} amperes were meant; a head unit draws some watts (common practice, no source).`,
          "Its volts are predicted far too high.",
          { meant: "A" },
        ),
      ];
    },
  );

/** 75 ohms on the volts of a receiver or an inserter. */
const openToPower = (read: Book): Finding[] =>
  rowsIn(read, resistors.name, { blocks: resistors.blocks }).flatMap(({ called, cell, word }): Finding[] =>
    word("blocks") === "no"
      ? [
          doubtful(
            cell("blocks")!.place,
            `${called} lets direct current through: 75 ohms on 24 V are 7.7 W.`,
            "yes: one that blocks power.",
            "It takes the volts of the head unit, and grows hot.",
            { meant: "yes" },
          ),
        ]
      : [],
  );

/** Open ports, an end resistor among the parts, and nothing that says to use it. */
function unclosed(read: Book): Finding[] {
  const [cell] = namedCells(read, site.closes.name);
  const listed = filledCells(read, resistors.name.name);
  if (!cell || !isBlank(cell.value) || listed.length === 0) return [];
  const feeding = new Map<string, number>();
  for (const from of [estimate.rooms.from, estimate.branches.from])
    for (const { value } of filledCells(read, from.name))
      feeding.set(plainWord(value), (feeding.get(plainWord(value)) ?? 0) + 1);
  const ways = new Map(
    rowsIn(read, passives.name, OF_PASSIVES)
      .filter((row) => row.word("kind") === "splitter")
      .map((row) => [plainWord(row.called), row.number("ways") ?? 0]),
  );
  const open = rowsIn(read, estimate.branches.id, { device: estimate.branches.device }).reduce(
    (all, { called, word }) => {
      const ports = ways.get(word("device"));
      return ports === undefined ? all : all + Math.max(0, ports - (feeding.get(plainWord(called)) ?? 0));
    },
    0,
  );
  if (open === 0) return [];
  const name = String(listed[0]!.value);
  return [
    doubtful(
      cell.place,
      `${open} ${open === 1 ? "port of a splitter stays" : "ports of splitters stay"} open, and nothing closes them.`,
      listed.length === 1 ? `“${name}”, which is on Parts.` : "One of the end resistors of Parts.",
      "What comes back from an open port spoils the others; none is bought or fitted.",
      listed.length === 1 ? { meant: name } : {},
    ),
  ];
}

const PIECE_WORDS: readonly string[] = [...PIECES];
/** Pieces by the length of their words, so that the whole word is found before a part of it. */
const BY_LENGTH = [...PIECE_WORDS].sort((a, b) => b.length - a.length);

/** A row that is named as one piece of the distribution, and counted for each of another. */
const otherPiece = (read: Book): Finding[] =>
  [
    { list: labour.name, piece: labour.piece },
    { list: fittings.name, piece: fittings.piece },
  ].flatMap(({ list, piece }) =>
    rowsIn(read, list, { piece }).flatMap(({ called, cell, word }): Finding[] => {
      const counted = word("piece");
      const named = BY_LENGTH.find((one) => new RegExp(`\\b${one}s?\\b`, "i").test(called));
      if (named === undefined || !PIECE_WORDS.includes(counted) || alike(named, counted)) return [];
      return [
        doubtful(
          cell("piece")!.place,
          `${called} is counted for each ${counted}.`,
          `For each ${named}, by its name.`,
          "It is bought, or done, as often as there are of the other.",
          { meant: named },
        ),
      ];
    }),
  );

/** One of the two is said within the other, or both are of one thing. */
function alike(named: string, counted: string): boolean {
  const words = (text: string): ReadonlySet<string> => new Set(text.split(" "));
  const [one, other] = [words(named), words(counted)];
  return [...one].some((word) => word.length > 2 && other.has(word));
}

const COUNTS = ["per_outlet", "per_branch", "per_head", "fixed", "per_floor", "per_day"] as const;

const OF_WORK = {
  per_outlet: labour.per_outlet,
  per_branch: labour.per_branch,
  per_head: labour.per_head,
  fixed: labour.fixed,
  per_floor: labour.per_floor,
  per_day: labour.per_day,
  piece: labour.piece,
};

/** Work that is counted for each piece and once more beside. */
function countedTwice(read: Book, computed: Book): Finding[] {
  const counts = new Map(
    PIECES.map((piece, at) => [piece as string, namedValue(computed, eachPiece[at]!.name)]),
  );
  const outlets = namedValue(computed, estimate.count.outlets.name);
  const text = {
    per_outlet: "outlet",
    per_branch: "device",
    per_head: "head unit",
    fixed: "job",
    per_floor: "floor",
    per_day: "day",
  };
  return rowsIn(read, labour.name, OF_WORK).flatMap((row): Finding[] => {
    const used = COUNTS.filter((key) => (row.number(key) ?? 0) > 0);
    const piece = row.word("piece");
    const isOfOutlets = (key: (typeof COUNTS)[number]): boolean =>
      key === "per_outlet" && counts.get(piece) === outlets;
    const beside = piece === "" ? undefined : (used.find(isOfOutlets) ?? used.find((key) => key !== "fixed"));
    const jobAndDay = used.includes("fixed") && used.includes("per_day") ? ("per_day" as const) : undefined;
    const key = beside ?? jobAndDay;
    if (key === undefined) return [];
    const twice = jobAndDay && !beside ? "the job" : `each ${piece}`;
    return [
      doubtful(
        row.cell(key)!.place,
        `${row.called} is counted for ${twice}, and for each ${text[key]} too${isOfOutlets(key) ? `: twice for ${figure(outlets as number)} outlets` : ""}.`,
        "One of the two.",
        "It is priced twice.",
        // Both count as many, so that it is all the same which goes.
        isOfOutlets(key) ? { undoing: [{ place: row.cell(key)!.place }] } : {},
      ),
    ];
  });
}

/** One supplier under two names. */
function suppliers(read: Book): Finding[] {
  const all = PRICED_BLOCKS.flatMap((block) => filledCells(read, estimate[block].supplier.name));
  const counts = new Map<string, number>();
  for (const { value } of all) counts.set(plainWord(value), (counts.get(plainWord(value)) ?? 0) + 1);
  const spelt = new Map(all.map(({ value }) => [plainWord(value), String(value)]));
  return all.flatMap(({ place, value }): Finding[] => {
    const word = plainWord(value);
    if (word.length < FEWEST_LETTERS || counts.get(word)! > 2) return [];
    const other = [...counts].find(
      ([name, count]) =>
        name !== word &&
        count > 2 * counts.get(word)! &&
        lettersApart(name, word, LETTERS_OFF) <= LETTERS_OFF &&
        !/\d/.test(name + word),
    )?.[0];
    if (other === undefined) return [];
    return [
      doubtful(
        place,
        `The supplier is “${String(value)}” here, and “${spelt.get(other)!}” in ${counts.get(other)!} other rows.`,
        `“${spelt.get(other)!}”, if it is the same.`,
        "The order list makes an order of its own for it.",
        { meant: spelt.get(other)! },
      ),
    ];
  });
}

/** A conductor of less than half of what its kind asks: a little less is told by its flag on Bonding. */
const thin = (read: Book): Finding[] =>
  rowsIn(read, bonds.where, { size: bonds.size, kind: bonds.kind }).flatMap(
    ({ called, cell, number, word }): Finding[] => {
      const size = number("size");
      const rule = BOND_RULES.find(({ kind }) => plainWord(kind) === word("kind"));
      if (size === undefined || !rule || size >= rule.leastSize / 2) return [];
      return [
        doubtful(
          cell("size")!.place,
          `${called} has ${figure(size)} mm².`,
          `${figure(rule.leastSize)} mm² or more: ${rule.clause}.`,
          "It would carry a fraction of what it is for; the local code and licensed practice decide.",
        ),
      ];
    },
  );

/** A part that is named as a piece of the distribution, and that nothing counts. */
const uncounted = (read: Book): Finding[] =>
  rowsIn(read, fittings.name, {
    piece: fittings.piece,
    per_outlet: fittings.per_outlet,
    per_branch: fittings.per_branch,
    per_head: fittings.per_head,
    fixed: fittings.fixed,
  }).flatMap(({ called, cell, number, word }): Finding[] => {
    const named = BY_LENGTH.find((one) => plainWord(called) === one);
    const isCounted = (["per_outlet", "per_branch", "per_head", "fixed"] as const).some(
      (key) => (number(key) ?? 0) > 0,
    );
    if (named === undefined || word("piece") !== "" || isCounted) return [];
    return [
      doubtful(
        cell("piece")!.place,
        `Nothing counts ${called}.`,
        `For each ${named}, by its name; or no such row.`,
        "None is bought.",
        { meant: named },
      ),
    ];
  });

/** Common practice, no source: a list of work that goes by pieces has these. */
const WORK_ON: readonly (typeof PIECES)[number][] = ["connector", "wall plate", "outlet to measure", "dish"];
const FEWEST_WORKS = 6;

/** Pieces that the job has, and that no work of a list by pieces is done on. */
function workLacking(
  read: Book,
  computed: Book,
  rowOfFirm: (index: number, piece: string) => readonly Undoing[],
): Finding[] {
  const rows = rowsIn(read, labour.name, OF_WORK);
  const done = new Set(rows.map(({ word }) => word("piece")).filter((piece) => piece !== ""));
  if (done.size < FEWEST_WORKS || done.size < rows.length / 2) return [];
  // A row that was emptied among the others is where it stood.
  const all = namedCells(read, labour.name.name).slice(1, -1);
  const last = all.findLastIndex(({ value }) => !isBlank(value));
  const gap = all.slice(0, last).find(({ value }) => isBlank(value)) ?? all[last + 1] ?? all[0];
  const byOutlet = rows.some(({ number }) => (number("per_outlet") ?? 0) > 0);
  return WORK_ON.filter((piece) => !done.has(piece) && !byOutlet).flatMap((piece): Finding[] => {
    const count = namedValue(computed, eachPiece[PIECES.indexOf(piece)]!.name);
    if (typeof count !== "number" || count === 0) return [];
    const row = gap && isBlank(gap.value) ? rowOfFirm(gap.index, piece) : [];
    return [
      doubtful(
        gap?.place,
        `No work is listed for each ${piece}, and the job has ${figure(count)}.`,
        "A line of work for it, unless it is in another line.",
        "Nothing is charged for it.",
        row.length > 0 ? { undoing: row, isGuess: true } : {},
      ),
    ];
  });
}

/** The firm's own line of work on a piece, to fill an empty row with. */
function workOfFirm(
  read: Book,
  definition: WorkbookDefinition | undefined,
  firm: FirmSays | undefined,
  index: number,
  piece: string,
): readonly Undoing[] {
  const rows = Object.entries(firm?.rows["labour"] ?? {}).filter(
    ([, row]) => plainWord(row["piece"]) === piece,
  );
  const inputs = inputsIn(read, definition);
  return rows.length === 1 && freeRows(inputs, "labour", index)[0] === index
    ? filling(inputs, "labour", index, rows[0]![1])
    : [];
}

const FEET_PER_METRE = 3.2808;
/** As near to it as two makers' figures lie. */
const LIKE = 1.35;
const AT_MHZ = 1000;

/** Own figures of a cable that are a third, or three times, those of the built-in type that it names. */
const perHundredFeet = (read: Book): Finding[] =>
  rowsIn(read, estimate.cables.name, {
    like: estimate.cables.like,
    k1: estimate.cables.k1,
    k2: estimate.cables.k2,
    k0: estimate.cables.k0,
  }).flatMap(({ called, cell, number }): Finding[] => {
    const [k1, k2, k0] = [number("k1"), number("k2"), number("k0")];
    const type = builtInCable(String(cell("like")?.value ?? ""));
    if (k1 === undefined || k2 === undefined || k0 === undefined || !type || isFault(type.loss)) return [];
    const at = (one: { k1: number; k2: number; k0: number }): number =>
      one.k1 * Math.sqrt(AT_MHZ) + one.k2 * AT_MHZ + one.k0;
    const [own, usual] = [at({ k1, k2, k0 }), at(type.loss)];
    if (own * 2 > usual && own < usual * 2) return [];
    const ofFeet = own * FEET_PER_METRE;
    return [
      doubtful(
        cell("k1")!.place,
        `${called} loses ${own.toFixed(1)} dB per 100 m at ${AT_MHZ} MHz by its own figures; its built-in type, ${type.name}, ${usual.toFixed(1)}.`,
        ofFeet < usual * LIKE && ofFeet > usual / LIKE
          ? "Figures per 100 m: these are those of 100 ft."
          : "Figures near those of its type, or another type.",
        "Every outlet on it is predicted too much level, or too little.",
      ),
    ];
  });

/** A trunk cable, or a plate with a through port, as what every outlet has. */
function usualParts(read: Book): Finding[] {
  const [cable, plate] = [site.usual_cable, site.usual_plate].map(({ name }) => namedCells(read, name)[0]);
  const outlets = new Set(filledCells(read, estimate.rooms.outlet.name).map(({ value }) => plainWord(value)));
  const fedFromOutlets = filledCells(read, estimate.rooms.from.name).some(({ value }) =>
    outlets.has(plainWord(value)),
  );
  const ofCable = rowsIn(read, estimate.cables.name, { like: estimate.cables.like }).find(
    (row) => plainWord(row.called) === plainWord(cable?.value),
  );
  const ofPlate = rowsIn(read, estimate.plates.name, { through: estimate.plates.through_low }).find(
    (row) => plainWord(row.called) === plainWord(plate?.value),
  );
  const dropCables = rowsIn(read, estimate.cables.name, { like: estimate.cables.like })
    .filter(({ word }) => /^series (?:6|59|7)\b/.test(word("like")))
    .map(({ called }) => called);
  return [
    ...(cable && ofCable && /^series 11\b/.test(ofCable.word("like")) && dropCables.length > 0
      ? [
          doubtful(
            cable.place,
            `The usual cable is ${ofCable.called}, of ${String(ofCable.cell("like")!.value)}: a cable for trunks.`,
            "A cable of series 6 or 59, as outlets have (common practice, no source).",
            "Every run that names no cable is bought in it.",
            theOnly(dropCables),
          ),
        ]
      : []),
    ...(plate && ofPlate && ofPlate.number("through") !== undefined && !fedFromOutlets
      ? [
          doubtful(
            plate.place,
            `The usual wall plate is ${ofPlate.called}, which has a through port, and no outlet is fed from another.`,
            "A plate without a through port.",
            "Each has an open port, loses more, and wants an end resistor.",
            theOnly(
              rowsIn(read, estimate.plates.name, { through: estimate.plates.through_low })
                .filter((row) => row.number("through") === undefined)
                .map(({ called }) => called),
            ),
          ),
        ]
      : []),
  ];
}

/** Where but one fits, it is likely meant. */
const theOnly = (names: readonly string[]): Partial<Finding> =>
  names.length === 1 ? { meant: names[0]!, isGuess: true } : {};

/** A device that keeps commands from the head unit above it. */
function keepsCommands(read: Book, computed: Book): Finding[] {
  if (!filledCells(computed, estimate.rooms.check.commands.name).some(({ value }) => value === "dead"))
    return [];
  const feeding = new Set(
    [estimate.rooms.from, estimate.branches.from].flatMap(({ name }) =>
      filledCells(read, name).map(({ value }) => plainWord(value)),
    ),
  );
  const used = new Map(
    rowsIn(read, estimate.branches.id, { device: estimate.branches.device })
      .filter(({ called }) => feeding.has(plainWord(called)))
      .map(({ called, word }) => [word("device"), called]),
  );
  return rowsIn(read, passives.name, OF_PASSIVES).flatMap(({ called, cell, word }): Finding[] => {
    const at = used.get(plainWord(called));
    if (word("power") !== "no" || at === undefined) return [];
    return [
      doubtful(
        cell("power")!.place,
        `${called} passes no power, and receivers behind ${at} can't command their head unit through it.`,
        "A device that passes power towards the head unit.",
        "What hangs behind it gets no user band.",
        { weight: "wrong", meant: "towards head unit" },
      ),
    ];
  });
}
