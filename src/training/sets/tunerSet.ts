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
import { trainingSet, type Given } from "../exercise";
import { headUnitsQuestion } from "../questions/headUnitsQuestion";
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

const total = ({ receivers, two, four }: Numbers, ofTwo = tunersOf(TWO), ofFour = tunersOf(FOUR)): number =>
  receivers * tunersOf(ONE) + two * ofTwo + four * ofFour;

const kindsGiven = ({ receivers, two, four }: Numbers): Given[] => [
  { label: "Receivers", value: receivers, unit: "pieces" },
  { label: "Recorders of two tuners", value: two, unit: "pieces" },
  { label: "Recorders of four tuners", value: four, unit: "pieces" },
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

const before = ({ rooms }: Numbers, count: (kind: string) => number): number =>
  rooms.slice(0, -1).reduce((sum, kind) => sum + count(kind), 0);

const FIGURES = (n: Numbers): Given[] => [
  { label: "Wanted frequency, intermediate band", value: n.frequency, unit: "MHz" },
  { label: "Centre of the user band", value: n.band, unit: "MHz" },
];

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
      slips: [
        { name: "two-tuner recorder counted as one", wrong: (n) => total(n, 1) },
        { name: "every box counted as one tuner", wrong: (n) => total(n, 1, 1) },
        { name: "recorders left out", wrong: (n) => n.receivers },
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
    headUnitsQuestion(
      "How many head units are needed at the least? Use your answer to 1.",
      "Divide and round up: a head unit is not divided.",
    ),
    {
      key: "free",
      heading: "Bands left over",
      task: "How many user bands of all those head units are left free? Use your answers to 1 and 2.",
      given: () => [],
      answer: { ...COUNT, unit: "bands" },
      needs: ["tuners", "units"],
      solve: ({ capacity }, { tuners, units }) => units! * capacity - tuners!,
      slips: [
        {
          name: "bands in use on the last head unit given instead of those left",
          wrong: ({ capacity }, { tuners, units }) => tuners! - (units! - 1) * capacity,
        },
      ],
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
        { name: "last band of the room before given", wrong: (n) => before(n, tunersOf) },
        {
          name: "two-tuner recorder counted as one",
          wrong: (n) =>
            n.rooms.slice(0, -1).includes(TWO)
              ? before(n, (kind) => (kind === TWO ? 1 : tunersOf(kind))) + 1
              : undefined,
        },
        {
          name: "rooms counted instead of tuners",
          wrong: (n) => n.rooms.length,
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
      slips: [
        {
          name: "user band subtracted instead of added",
          wrong: ({ frequency, band }) => Math.round((frequency - band) / 4 - 350),
        },
        {
          name: "350 taken off before the division by 4",
          wrong: ({ frequency, band }) => Math.round((frequency + band - 350) / 4),
        },
        {
          name: "digits cut off instead of rounded",
          wrong: ({ frequency, band }) => {
            const exact = (frequency + band) / 4 - 350;
            return exact - Math.floor(exact) > 0.5 ? Math.floor(exact) : undefined;
          },
        },
        { name: "350 left out", wrong: ({ frequency, band }) => Math.round((frequency + band) / 4) },
      ],
      hints: ["Word = (frequency + user band)/4 - 350, rounded to a whole number."],
      example: ({ frequency, band }) => workedBy("TUNINGWORD", [frequency, band, "EN 50494"]),
    },
    {
      key: "word2",
      heading: "Tuning word of EN 50607",
      task: "And which one does a receiver of EN 50607 send, for the same frequency?",
      given: ({ frequency }) => [
        { label: "Wanted frequency, intermediate band", value: frequency, unit: "MHz" },
      ],
      answer: { ...COUNT, unit: "" },
      needs: [],
      solve: ({ frequency }) => tuningWord(frequency, undefined, "EN 50607"),
      slips: [
        {
          name: "rule of EN 50494 used",
          wrong: ({ frequency, band }) => tuningWord(frequency, band, "EN 50494"),
        },
        { name: "100 added instead of subtracted", wrong: ({ frequency }) => frequency + 100 },
        { name: "100 left out", wrong: ({ frequency }) => frequency },
      ],
      hints: ["EN 50607 counts steps of 1 MHz: word = frequency - 100. It does not need the user band."],
      example: ({ frequency }) => workedBy("TUNINGWORD", [frequency, null, "EN 50607"]),
    },
  ],
});
