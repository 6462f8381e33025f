/**
 * Volts down a single cable: the loop, the drop, the longest run.
 *
 * Key: engine/power; Ohm's law, copper's temperature coefficient after IEC
 * 60028 (from memory). That a head unit needs 21 V is common practice, no source.
 */
import { isFault } from "../../engine/faults";
import { atTemperature } from "../../engine/power/atTemperature";
import { COPPER_PER_C } from "../../engine/power/constants";
import { loadVolts } from "../../engine/power/loadVolts";
import { longestRun } from "../../engine/power/longestRun";
import { loopOhms } from "../../engine/power/loopOhms";
import type { Cable } from "../../engine/signal/cable";
import { LOSS_PER_C } from "../../engine/signal/constants";
import { toMetres } from "../../engine/signal/lengthUnits";
import { levelVerdict } from "../../engine/signal/levelVerdict";
import { arithmetic, Working } from "../../engine/working/steps";
import { BONDING_CAUTION, MAINS_CAUTION } from "../cautionLines";
import { trainingSet } from "../exercise";
import { verdictSteps } from "../verdictSteps";
import { workedBy } from "../workedBy";

interface Numbers {
  readonly loop: number;
  readonly feet: number;
  readonly hot: number;
  readonly supply: number;
  readonly milliamperes: number;
  readonly watts: number;
  readonly least: number;
}

/** A cable of which only the loop counts here. */
const cableOf = ({ loop }: Numbers): Cable => ({ name: "run", loss: { k1: 0, k2: 0, k0: 0 }, loop });
const amperes = ({ milliamperes }: Numbers): number => milliamperes / 1000;
const longest = (n: Numbers, temperature: number, least = n.least) =>
  longestRun(n.supply, least, amperes(n), cableOf(n), "A", temperature);
const value = (of: ReturnType<typeof longest>): number => (isFault(of) ? NaN : of);

export const supplySet = trainingSet<Numbers>({
  id: "supply",
  title: "Supply volts",
  about: "Whether a head unit gets its volts down the same cable that brings its signal.",
  cautions: [MAINS_CAUTION, BONDING_CAUTION],
  draw: (random) => ({
    loop: random.stepped(3.4, 14, 0.1),
    feet: random.stepped(80, 300, 5),
    hot: random.stepped(45, 65, 1),
    supply: random.pick([22, 24, 26, 28]),
    milliamperes: random.stepped(160, 420, 10),
    watts: random.stepped(4, 9, 0.5),
    least: random.pick([18, 19, 20, 21]),
  }),
  plausible: ({ least }, { volts, run }) =>
    Number(volts) >= 14 && Math.abs(Number(volts) - least) >= 0.2 && Number(run) >= 15 && Number(run) <= 400,
  questions: [
    {
      key: "ohms",
      heading: "Loop resistance",
      task: "What is the loop resistance of the run at 20 °C? The maker's figure is for the loop: centre out and shield back.",
      given: ({ loop, feet }) => [
        { label: "Loop resistance at 20 °C", value: loop, unit: "ohm/100 m" },
        { label: "Length of the run, one way", value: feet, unit: "ft" },
      ],
      answer: { kind: "number", unit: "ohm", decimals: 2 },
      needs: [],
      solve: (n) => loopOhms(cableOf(n), toMetres(n.feet, "ft"), 20),
      slips: [
        { name: "feet taken for metres", wrong: (n) => loopOhms(cableOf(n), n.feet, 20) },
        {
          name: "there and back counted twice",
          wrong: (n) => loopOhms(cableOf(n), 2 * toMetres(n.feet, "ft"), 20),
        },
        {
          name: "feet multiplied by 3.28 instead of divided",
          wrong: (n) => loopOhms(cableOf(n), n.feet / 0.3048, 20),
        },
      ],
      hints: ["A foot is 0.3048 m. The loop already has both ways in it."],
      example: ({ loop, feet }) =>
        workedBy("LOOPOHMS", ["run", feet, 20, "ft", [["run", null, 0, 0, 0, loop]]]).filter(
          ({ symbol }) => symbol !== "t" && symbol !== "R",
        ),
    },
    {
      key: "hotOhms",
      heading: "The same in heat",
      task: "What is it on the hottest day? Use your answer to 1.",
      given: ({ hot }) => [{ label: "Hottest cable", value: hot, unit: "°C" }],
      answer: { kind: "number", unit: "ohm", decimals: 2 },
      needs: ["ohms"],
      solve: ({ hot }, { ohms }) => atTemperature(ohms!, hot),
      slips: [
        {
          name: "the whole temperature taken instead of what it is above 20 °C",
          wrong: ({ hot }, { ohms }) => ohms! * (1 + COPPER_PER_C * hot),
        },
        {
          name: "factor of the signal's loss taken for that of the resistance",
          wrong: ({ hot }, { ohms }) => ohms! * (1 + LOSS_PER_C * (hot - 20)),
        },
        {
          name: "heat subtracted instead of added",
          wrong: ({ hot }, { ohms }) => ohms! * (1 - COPPER_PER_C * (hot - 20)),
        },
        { name: "heat left out", wrong: (_, { ohms }) => ohms },
      ],
      hints: ["R = R at 20 °C·(1 + 0.00393·(T - 20))."],
      example: ({ hot }, { ohms }) => {
        const work = new Working();
        const r = work.given("R20", "loop resistance at 20 °C", ohms!, "ohm");
        const t = work.given("T", "temperature of the cable", hot, "°C");
        const factor = work.worked(
          "t",
          "factor, 1 + 0.00393·(T − 20)",
          1 + COPPER_PER_C * (t - 20),
          "",
          arithmetic`1 + ${COPPER_PER_C}·(${t} − 20)`,
          "Copper, IEC 60028 (from memory)",
        );
        work.worked(
          "R",
          "loop resistance in heat",
          atTemperature(r, t),
          "ohm",
          arithmetic`${r}·${factor}`,
          "",
        );
        return work.steps;
      },
    },
    {
      key: "drop",
      heading: "Volts lost in the cable",
      task: "How many volts does the cable take on the hottest day? The head unit keeps its current. Use your answer to 2.",
      given: ({ milliamperes }) => [{ label: "Current of the head unit", value: milliamperes, unit: "mA" }],
      answer: { kind: "number", unit: "V", decimals: 2 },
      needs: ["hotOhms"],
      solve: (n, { hotOhms }) => amperes(n) * hotOhms!,
      slips: [
        {
          name: "milliamperes taken for amperes",
          wrong: ({ milliamperes }, { hotOhms }) => milliamperes * hotOhms!,
        },
        {
          name: "divided instead of multiplied",
          wrong: (n, { hotOhms }) => hotOhms! / amperes(n),
        },
      ],
      hints: ["Ohm's law: volts = amperes·ohms. 1000 mA are 1 A."],
      example: (n, { hotOhms }) => {
        const work = new Working();
        const mA = work.given("i", "current", n.milliamperes, "mA");
        const r = work.given("R", "loop resistance in heat", hotOhms!, "ohm");
        const i = work.worked("I", "current in amperes, i/1000", mA / 1000, "A", arithmetic`${mA}/1000`, "");
        work.worked("ΔV", "volts lost, I·R", i * r, "V", arithmetic`${i}·${r}`, "Ohm's law");
        return work.steps;
      },
    },
    {
      key: "volts",
      heading: "Volts at the head unit",
      task: "How many volts are left at the head unit? Use your answer to 3.",
      given: ({ supply }) => [{ label: "Volts of the supply", value: supply, unit: "V" }],
      answer: { kind: "number", unit: "V", decimals: 2 },
      needs: ["drop"],
      solve: ({ supply }, { drop }) => supply - drop!,
      slips: [
        { name: "added instead of subtracted", wrong: ({ supply }, { drop }) => supply + drop! },
        { name: "there and back counted twice", wrong: ({ supply }, { drop }) => supply - 2 * drop! },
      ],
      hints: ["What the cable takes is missing at its end."],
      example: ({ supply }, { drop }) => {
        const work = new Working();
        const vs = work.given("Vs", "volts of the supply", supply, "V");
        const lost = work.given("ΔV", "volts lost", drop!, "V");
        work.worked(
          "V",
          "volts left, Vs − ΔV",
          vs - lost,
          "V",
          arithmetic`${vs} − ${lost}`,
          "Kirchhoff's law of voltages",
        );
        return work.steps;
      },
    },
    {
      key: "verdict",
      heading: "Verdict",
      task: "Is that low, ok or high for the head unit? Use your answer to 4.",
      given: ({ least, supply }) => [
        { label: "Least volts of the head unit", value: least, unit: "V" },
        { label: "Greatest volts", value: supply, unit: "V" },
      ],
      answer: { kind: "choice", choices: ["low", "ok", "high"] },
      needs: ["volts"],
      solve: ({ least, supply }, { volts }) => levelVerdict(volts!, least, supply),
      slips: [],
      hints: ["Take the figure of your own head unit; 21 V is common practice, no source."],
      example: ({ least, supply }, { volts }) => verdictSteps(volts!, least, supply, "V"),
    },
    {
      key: "run",
      heading: "The longest run",
      task: "How long may the run be on the hottest day, so that the head unit still has its least volts? Figures as before.",
      given: ({ loop, hot, supply, milliamperes, least }) => [
        { label: "Loop resistance at 20 °C", value: loop, unit: "ohm/100 m" },
        { label: "Hottest cable", value: hot, unit: "°C" },
        { label: "Volts of the supply", value: supply, unit: "V" },
        { label: "Least volts of the head unit", value: least, unit: "V" },
        { label: "Current of the head unit", value: milliamperes, unit: "mA" },
      ],
      answer: { kind: "number", unit: "m", decimals: 0 },
      needs: [],
      solve: (n) => longest(n, n.hot),
      slips: [
        { name: "heat left out", wrong: (n) => longest(n, 20) },
        { name: "least volts left out", wrong: (n) => longest(n, n.hot, 0) },
        { name: "there and back counted twice", wrong: (n) => value(longest(n, n.hot)) / 2 },
        { name: "answer left in feet", wrong: (n) => value(longest(n, n.hot)) / 0.3048 },
      ],
      hints: ["Volts that may be lost = supply - least. Length = those volts/(amperes·ohms of 1 m in heat)."],
      example: (n) => {
        const work = new Working();
        const r = work.given("r", "loop resistance of 100 m at 20 °C", n.loop, "ohm/100 m");
        const t = work.given("T", "hottest cable", n.hot, "°C");
        const vs = work.given("Vs", "volts of the supply", n.supply, "V");
        const vl = work.given("Vl", "least volts", n.least, "V");
        const i = work.given("I", "current", amperes(n), "A");
        const one = work.worked(
          "r1",
          "ohms of 1 m in heat",
          atTemperature(r / 100, t),
          "ohm/m",
          arithmetic`${r}/100·(1 + ${COPPER_PER_C}·(${t} − 20))`,
          "Copper, IEC 60028 (from memory)",
        );
        work.worked(
          "L",
          "longest run, (Vs − Vl)/(I·r1)",
          value(longest(n, t)),
          "m",
          arithmetic`(${vs} − ${vl})/(${i}·${one})`,
          "Ohm's law",
        );
        return work.steps;
      },
    },
    {
      key: "power",
      heading: "A head unit that keeps its power",
      task: "Another head unit keeps its power instead of its current. What volts has it on the same run in heat? Use your answer to 2.",
      given: ({ watts, supply }) => [
        { label: "Power of the head unit", value: watts, unit: "W" },
        { label: "Volts of the supply", value: supply, unit: "V" },
      ],
      answer: { kind: "number", unit: "V", decimals: 2 },
      needs: ["hotOhms"],
      solve: ({ supply, watts }, { hotOhms }) => loadVolts(supply, watts, hotOhms!, "W"),
      slips: [
        {
          name: "current reckoned with the supply's volts",
          wrong: ({ supply, watts }, { hotOhms }) => supply - (watts / supply) * hotOhms!,
        },
        {
          name: "the lower root taken",
          wrong: ({ supply, watts }, { hotOhms }) =>
            (supply - Math.sqrt(supply * supply - 4 * watts * hotOhms!)) / 2,
        },
        {
          name: "watts taken for amperes",
          wrong: ({ supply, watts }, { hotOhms }) => supply - watts * hotOhms!,
        },
      ],
      hints: [
        "V = (Vs + √(Vs² - 4·P·R))/2. Fewer volts draw more current, so the drop is greater than it looks.",
      ],
      example: ({ supply, watts }, { hotOhms }) => workedBy("LOADVOLTS", [supply, watts, hotOhms!, "W"]),
    },
  ],
});
