/**
 * Counting tuners, head units and user bands, and the words that tune them.
 *
 * Key: engine/tuners. That a recorder counts with all its tuners is common
 * practice, no source; tuning words after EN 50494 and EN 50607.
 */
import { isFault, type Fault } from "../../engine/faults";
import { tunersOfKind } from "../../engine/tuners/tunersOfKind";
import { tuningWord } from "../../engine/tuners/tuningWord";
import { userBands } from "../../engine/tuners/userBands";
import { arithmetic, Working } from "../../engine/working/steps";
import { trainingSet, type Given, type Slip } from "../exercise";
import { headUnitsQuestion } from "../questions/headUnitsQuestion";
import { receivers, recorders } from "../slips/counts";
import { freeBandSlips } from "../slips/freeBands";
import { forgotten } from "../slips/terms";
import { workedBy } from "../workedBy";

interface Numbers {
  readonly receivers: number;
  readonly two: number;
  readonly four: number;
  readonly capacity: number;
  /** Kinds of receiver of four rooms on one head unit, in the order of its list. */
  readonly rooms: readonly string[];
  readonly frequency: number;
  readonly band: number;
}

const KINDS = ["receiver", "recorder, 2 tuners", "recorder, 4 tuners"] as const;
const [ONE, TWO, FOUR] = KINDS;

/** The kinds are the engine's own, so it knows them all. */
const tunersOf = (kind: string): number => tunersOfKind(kind) as number;

const total = ({ receivers: ones, two, four }: Numbers): number =>
  ones * tunersOf(ONE) + two * tunersOf(TWO) + four * tunersOf(FOUR);

const kindsGiven = ({ receivers: ones, two, four }: Numbers): Given[] => [
  { label: "Receivers", value: ones, unit: "pieces", of: "receivers", invites: [receivers] },
  { label: "Recorders of two tuners", value: two, unit: "pieces", of: "two", invites: [recorders(2)] },
  { label: "Recorders of four tuners", value: four, unit: "pieces", of: "four", invites: [recorders(4)] },
];

/** The first user band of the last room, as the engine hands them out. */
function firstBand(rooms: readonly string[]): number | Fault {
  const bands = userBands(
    rooms.map(() => "H"),
    rooms.map(tunersOf),
  );
  if (isFault(bands)) return bands;
  const last = bands.at(-1)!;
  return isFault(last) ? last : Number(last.split("-")[0]);
}

/** The tuners of rooms, each kind counted as `as` says. */
const counted = (rooms: readonly string[], as: (tuners: number) => number = (tuners) => tuners): number =>
  rooms.reduce((sum, kind) => sum + as(tunersOf(kind)), 0);

/** A first band from tuners that are counted wrongly; nothing where no room of that kind stands before. */
const countedWrongly = (name: string, as: (tuners: number) => number, seldom = false): Slip<Numbers> => ({
  name,
  wrong: ({ rooms }) => {
    const ahead = rooms.slice(0, -1);
    return counted(ahead, as) === counted(ahead) ? undefined : counted(ahead, as) + 1;
  },
  seldom,
});

const FIGURES = (n: Numbers): Given[] => [
  {
    label: "Wanted frequency, intermediate band",
    called: "wanted frequency",
    value: n.frequency,
    unit: "MHz",
    of: "frequency",
    invites: [forgotten],
  },
  {
    label: "Centre of the user band",
    called: "user band",
    value: n.band,
    unit: "MHz",
    of: "band",
    invites: [forgotten],
  },
];
/** The word of EN 50494 before it is rounded. */
const exactWord = ({ frequency, band }: Numbers): number => (frequency + band) / 4 - 350;

/** Words that come of another formula, each rounded. */
const words = (
  of: readonly (readonly [string, (f: number, band: number) => number, boolean?])[],
): Slip<Numbers>[] =>
  of.map(([name, word, seldom = false]) => ({
    name,
    wrong: ({ frequency, band }) => Math.round(word(frequency, band)),
    seldom,
  }));

const COUNT = { kind: "number", decimals: 0, exact: true } as const;

export const tunerSet = trainingSet<Numbers>({
  id: "tuners",
  title: "Tuners and user bands",
  about:
    "How many tuners a house has, how many head units they need, which bands they get and how they are tuned.",
  cautions: [],
  draw: (random) => ({
    receivers: random.whole(5, 18),
    two: random.whole(2, 9),
    four: random.whole(1, 5),
    capacity: random.pick([4, 6, 8, 12, 16]),
    rooms: Array.from({ length: 5 }, () => random.pick(KINDS)),
    frequency: random.stepped(960, 2140, 1),
    band: random.stepped(974, 2096, 2),
  }),
  plausible: ({ rooms, frequency, band }, { units }) =>
    Number(units) >= 2 &&
    Number(units) <= 12 &&
    new Set(rooms.slice(0, -1)).size >= 2 &&
    // A fraction of a half would be a question of the rule for ties.
    [1, 3].includes((frequency + band) % 4),
  questions: [
    {
      key: "tuners",
      heading: "Tuners in the house",
      task: "How many tuners, and so user bands, does the house need?",
      given: kindsGiven,
      answer: { ...COUNT, unit: "tuners" },
      needs: [],
      solve: (n) => total(n),
      formula: ({ receivers: ones, two, four }) => ones + 2 * two + 4 * four,
      slips: [
        {
          name: "every box counted as one tuner",
          wrong: ({ receivers: ones, two, four }) => ones + two + four,
        },
        { name: "recorders left out", wrong: (n) => n.receivers },
        {
          name: "two and four tuners exchanged",
          wrong: ({ receivers: ones, two, four }) => ones + 4 * two + 2 * four,
          seldom: true,
        },
        {
          name: "one tuner more for each recorder",
          wrong: ({ receivers: ones, two, four }) => ones + 3 * two + 5 * four,
          seldom: true,
        },
      ],
      hints: ["One tuner takes one user band (EN 50494). A recorder counts with all its tuners."],
      example: (n) => {
        const work = new Working();
        work.given("r", "receivers of one tuner", n.receivers);
        work.given("p", "recorders of two tuners", n.two);
        work.given("q", "recorders of four tuners", n.four);
        work.worked(
          "n",
          "tuners, r·1 + p·2 + q·4",
          total(n),
          "tuners",
          arithmetic`${n.receivers}·1 + ${n.two}·2 + ${n.four}·4`,
          "EN 50494; recorders: common practice, no source",
        );
        return work.steps;
      },
    },
    headUnitsQuestion<Numbers>(
      "How many head units are needed at the least? Use your answer to 1.",
      "Divide and round up: a head unit is not divided.",
      { all: (n) => n.receivers + n.two + n.four, recorders: ({ two, four }) => two + four },
    ),
    {
      key: "free",
      heading: "Bands left over",
      task: "How many user bands of all those head units are left free? Use your answers to 1 and 2.",
      given: () => [],
      answer: { ...COUNT, unit: "bands" },
      needs: ["tuners", "units"],
      solve: ({ capacity }, { tuners, units }) => units! * capacity - tuners!,
      slips: freeBandSlips,
      hints: ["Head units times what each serves, less the tuners."],
      example: ({ capacity }, { tuners, units }) => {
        const work = new Working();
        const h = work.given("h", "head units", units!);
        const c = work.given("c", "tuners that one serves", capacity);
        const t = work.given("n", "tuners", tuners!);
        work.worked("f", "bands left, h·c − n", h * c - t, "bands", arithmetic`${h}·${c} − ${t}`, "");
        return work.steps;
      },
    },
    {
      key: "band",
      heading: "The bands in order",
      task: "On another head unit of 32 bands the rooms get their bands in the order of the list, from 1. Which is the first band of the last room?",
      given: ({ rooms }) => rooms.map((kind, row) => ({ label: `Room ${row + 1}`, value: kind })),
      answer: { ...COUNT, unit: "band" },
      needs: [],
      solve: ({ rooms }) => firstBand(rooms),
      slips: [
        { name: "last band of the room before given", wrong: ({ rooms }) => counted(rooms.slice(0, -1)) },
        countedWrongly("two-tuner recorder counted as one", (tuners) => (tuners === 2 ? 1 : tuners)),
        countedWrongly("four-tuner recorder counted as two", (tuners) => (tuners === 4 ? 2 : tuners)),
        countedWrongly("four-tuner recorder counted as one", (tuners) => (tuners === 4 ? 1 : tuners)),
        countedWrongly("receivers left out", (tuners) => (tuners === 1 ? 0 : tuners), true),
        countedWrongly("one tuner more for each recorder", (tuners) => (tuners > 1 ? tuners + 1 : 1), true),
        { name: "rooms counted instead of tuners", wrong: ({ rooms }) => rooms.length },
        { name: "last band of the last room given", wrong: ({ rooms }) => counted(rooms), seldom: true },
        {
          name: "first band after the last room given",
          wrong: ({ rooms }) => counted(rooms) + 1,
          seldom: true,
        },
        {
          name: "first band of the room before given",
          wrong: ({ rooms }) => counted(rooms.slice(0, -2)) + 1,
          seldom: true,
        },
        {
          name: "counted down from 32",
          wrong: ({ rooms }) => 32 - counted(rooms.slice(0, -1)),
          seldom: true,
        },
        {
          name: "counted from the end of the list",
          wrong: ({ rooms }) => counted(rooms.slice(1)) + 1,
          seldom: true,
        },
        {
          name: "four bands kept for every room",
          wrong: ({ rooms }) => 4 * (rooms.length - 1) + 1,
          seldom: true,
        },
      ],
      hints: ["Add up the tuners of the rooms before; the next band is the first of this room."],
      example: (n) => {
        const work = new Working();
        const counts = n.rooms
          .slice(0, -1)
          .map((kind, row) =>
            work.given(`t${row + 1}`, `tuners of room ${row + 1}: ${kind}`, tunersOf(kind)),
          );
        work.worked(
          "b",
          "first band of the last room, one more than all before",
          firstBand(n.rooms) as number,
          "",
          [...counts, 1].map((count) => arithmetic`${count}`).join(" + "),
          "Handed out in order: our choice",
        );
        return work.steps;
      },
    },
    {
      key: "word",
      heading: "Tuning word of EN 50494",
      task: "Which tuning word does a receiver of EN 50494 send?",
      given: FIGURES,
      answer: { ...COUNT, unit: "" },
      needs: [],
      solve: ({ frequency, band }) => tuningWord(frequency, band, "EN 50494"),
      formula: (n) => Math.round(exactWord(n)),
      slips: [
        ...words([
          ["user band subtracted instead of added", (f, band) => (f - band) / 4 - 350],
          ["350 taken off before the division by 4", (f, band) => (f + band - 350) / 4],
          ["350 left out", (f, band) => (f + band) / 4],
          ["350 added instead of subtracted", (f, band) => (f + band) / 4 + 350],
          ["not divided by 4", (f, band) => f + band - 350],
          ["GHz taken for MHz", (f, band) => (f + band) / 4000 - 350],
          ["rule of EN 50607 used", (f) => f - 100],
          ["divided by 2 instead of 4", (f, band) => (f + band) / 2 - 350, true],
          ["only the user band divided by 4", (f, band) => f + band / 4 - 350, true],
          ["digits of 350 exchanged", (f, band) => (f + band) / 4 - 305, true],
          ["100 taken for 350", (f, band) => (f + band) / 4 - 100, true],
          ["multiplied by 4 instead of divided", (f, band) => (f + band) * 4 - 350, true],
        ]),
        {
          name: "digits cut off instead of rounded",
          wrong: (n) => (exactWord(n) % 1 > 0.5 ? Math.floor(exactWord(n)) : undefined),
        },
        {
          name: "rounded up instead of to the nearest",
          wrong: (n) => (exactWord(n) % 1 < 0.5 ? Math.ceil(exactWord(n)) : undefined),
          seldom: true,
        },
        { name: "not rounded to a whole number", wrong: exactWord },
      ],
      hints: ["Word = (frequency + user band)/4 - 350, rounded to a whole number."],
      example: ({ frequency, band }) => workedBy("TUNINGWORD", [frequency, band, "EN 50494"]),
    },
    {
      key: "word2",
      heading: "Tuning word of EN 50607",
      task: "And which one does a receiver of EN 50607 send, for the same frequency?",
      given: (n) => FIGURES(n).slice(0, 1),
      answer: { ...COUNT, unit: "" },
      needs: [],
      solve: ({ frequency }) => tuningWord(frequency, undefined, "EN 50607"),
      formula: ({ frequency }) => frequency - 100,
      slips: words([
        ["rule of EN 50494 used", (f, band) => (f + band) / 4 - 350],
        ["100 added instead of subtracted", (f) => f + 100],
        ["100 left out", (f) => f],
        ["350 taken for 100", (f) => f - 350, true],
        ["divided by 4 as for EN 50494", (f) => (f - 100) / 4, true],
        ["user band added", (f, band) => f + band - 100, true],
        ["user band taken for the frequency", (_, band) => band - 100, true],
        ["user band subtracted", (f, band) => f - band - 100, true],
        ["frequency taken off 100", (f) => 100 - f, true],
        ["1000 taken for 100", (f) => f - 1000, true],
        ["10 taken for 100", (f) => f - 10, true],
      ]).concat([{ name: "GHz taken for MHz", wrong: ({ frequency }) => frequency / 1000 - 100 }]),
      hints: ["EN 50607 counts steps of 1 MHz: word = frequency - 100. It does not need the user band."],
      example: ({ frequency }) => workedBy("TUNINGWORD", [frequency, null, "EN 50607"]),
    },
  ],
});
