/**
 * Volts down a single cable: the loop, the drop, the longest run.
 *
 * Key: engine/power; Ohm's law, copper's temperature coefficient after IEC
 * 60028 (from memory). Supply and least volts are invented.
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
import { trainingSet, type Given } from "../exercise";
import { constantPowerSlips } from "../slips/constantPower";
import { dropSlips } from "../slips/drops";
import { cableDropSlips, longestRunSlips } from "../slips/runs";
import { loop, milliamperes, perHundred, watts } from "../slips/factors";
import { heat } from "../slips/heat";
import { feet } from "../slips/lengths";
import { takenOff } from "../slips/terms";
import { drawnVerdict, VERDICTS, verdictSlips, type Verdict } from "../slips/verdicts";
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
  readonly most: number;
  /** How the volts are to come out, so that no verdict is the usual one. */
  readonly wanted: Verdict;
}

/** A cable of which only the loop counts here. */
const cableOf = ({ loop }: Numbers): Cable => ({ name: "run", loss: { k1: 0, k2: 0, k0: 0 }, loop });
const amperesOf = (n: Numbers): number => n.milliamperes / 1000;
const longest = (n: Numbers) => longestRun(n.supply, n.least, amperesOf(n), cableOf(n), "A", n.hot);
const value = (of: ReturnType<typeof longest>): number => (isFault(of) ? NaN : of);
const inHeat = (n: Numbers): number => 1 + COPPER_PER_C * (n.hot - 20);

const LOOP = (n: Numbers): Given => ({
  label: "Loop resistance at 20 °C",
  value: n.loop,
  unit: "ohm/100 m",
  of: "loop",
  invites: [perHundred, loop],
});
const HOT = (n: Numbers): Given => ({
  label: "Hottest cable",
  value: n.hot,
  unit: "°C",
  of: "hot",
  invites: [heat(COPPER_PER_C, { k: LOSS_PER_C, of: "the signal's loss" })],
});
const SUPPLY = (n: Numbers): Given => ({
  label: "Volts of the supply",
  value: n.supply,
  unit: "V",
  of: "supply",
});
const CURRENT = (n: Numbers): Given => ({
  label: "Current of the head unit",
  called: "current",
  value: n.milliamperes,
  unit: "mA",
  of: "milliamperes",
  invites: [milliamperes],
});

export const supplySet = trainingSet<Numbers>({
  id: "supply",
  title: "Supply volts",
  about: "Whether a head unit gets its volts down the same cable that brings its signal.",
  cautions: [MAINS_CAUTION, BONDING_CAUTION],
  draw: (random, once) => {
    const least = random.stepped(8, 12.5, 0.5);
    return {
      wanted: drawnVerdict(once),
      loop: random.stepped(3.4, 14, 0.1),
      feet: random.stepped(80, 300, 5),
      hot: random.stepped(45, 65, 1),
      supply: random.pick([13, 13.5, 14, 14.5]),
      milliamperes: random.stepped(160, 400, 10),
      watts: random.stepped(2, 4.5, 0.5),
      least,
      most: least + random.stepped(1.5, 3.5, 0.5),
    };
  },
  plausible: ({ least, most, wanted }, { volts, run, verdict }) =>
    Number(volts) >= 7 &&
    verdict === wanted &&
    [least, most].every((edge) => Math.abs(Number(volts) - edge) >= 0.2) &&
    Number(run) >= 15 &&
    Number(run) <= 400,
  questions: [
    {
      key: "ohms",
      heading: "Loop resistance",
      task: "What is the loop resistance of the run at 20 °C? The maker's figure is for the loop: centre out and shield back.",
      given: (n) => [
        LOOP(n),
        { label: "Length of the run, one way", value: n.feet, unit: "ft", of: "feet", invites: [feet] },
      ],
      answer: { kind: "number", unit: "ohm", decimals: 2 },
      needs: [],
      solve: (n) => loopOhms(cableOf(n), toMetres(n.feet, "ft"), 20),
      formula: (n) => (n.loop / 100) * toMetres(n.feet, "ft"),
      slips: [
        {
          name: "divided by the length instead of multiplied",
          wrong: (n) => (n.loop * 100) / toMetres(n.feet, "ft"),
          seldom: true,
        },
        {
          name: "length divided by the figure",
          wrong: (n) => toMetres(n.feet, "ft") / n.loop,
          seldom: true,
        },
      ],
      hints: ["A foot is 0.3048 m. The loop already has both ways in it."],
      example: (n) =>
        workedBy("LOOPOHMS", ["run", n.feet, 20, "ft", [["run", null, 0, 0, 0, n.loop]]]).filter(
          ({ symbol }) => symbol !== "t" && symbol !== "R",
        ),
    },
    {
      key: "hotOhms",
      heading: "The same in heat",
      task: "What is it on the hottest day? Use your answer to 1.",
      given: (n) => [HOT(n)],
      answer: { kind: "number", unit: "ohm", decimals: 2 },
      needs: ["ohms"],
      solve: ({ hot }, { ohms }) => atTemperature(ohms!, hot),
      uses: { ohms: [loop] },
      slips: [
        {
          name: "what heat adds taken as ohms",
          wrong: ({ hot }, { ohms }) => ohms! + COPPER_PER_C * (hot - 20),
          seldom: true,
        },
        { name: "figure of 100 m taken for that of the run", wrong: (n) => n.loop * inHeat(n), seldom: true },
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
      given: (n) => [CURRENT(n)],
      answer: { kind: "number", unit: "V", decimals: 2 },
      needs: ["hotOhms"],
      solve: (n, { hotOhms }) => amperesOf(n) * hotOhms!,
      uses: { hotOhms: [loop] },
      slips: cableDropSlips,
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
      given: (n) => [SUPPLY(n)],
      answer: { kind: "number", unit: "V", decimals: 2 },
      needs: ["drop"],
      solve: ({ supply }, { drop }) => supply - drop!,
      slips: [
        { name: "added instead of subtracted", wrong: ({ supply }, { drop }) => supply + drop! },
        { name: "volts of the supply given", wrong: ({ supply }) => supply },
        {
          name: "milliamperes taken for amperes",
          wrong: ({ supply }, { drop }) => supply - 1000 * drop!,
        },
        {
          name: "heat left out",
          wrong: (n, { ohms }) => n.supply - amperesOf(n) * ohms!,
        },
        ...dropSlips<Numbers>(
          ({ supply }) => supply,
          (_, { drop }) => drop!,
          (_, { hotOhms }) => hotOhms!,
          amperesOf,
        ),
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
      given: ({ least, most }) => [
        { label: "Minimum volts of the head unit", value: least, unit: "V", of: "least" },
        { label: "Maximum volts", value: most, unit: "V", of: "most" },
      ],
      answer: { kind: "choice", choices: VERDICTS },
      needs: ["volts"],
      solve: ({ least, most }, { volts }) => levelVerdict(volts!, least, most),
      slips: verdictSlips<Numbers>(
        (volts, { least, most }) => levelVerdict(volts, least, most) as Verdict,
        (_, { volts }) => volts!,
        [
          { name: "volts of the supply compared", value: ({ supply }) => supply },
          { name: "volts lost compared", value: (_, { drop }) => drop! },
          { name: "drop added instead of subtracted", value: ({ supply }, { drop }) => supply + drop! },
          { name: "heat left out", value: (n, { ohms }) => n.supply - amperesOf(n) * ohms! },
          { name: "one way taken for the loop", value: ({ supply }, { drop }) => supply - drop! / 2 },
        ],
      ),
      hints: [
        "Take the figure of your own head unit; kinds fed by receivers need about 10.5 V (EN 50494, EN 50607: from memory).",
      ],
      example: ({ least, most }, { volts }) => verdictSteps(volts!, least, most, "V"),
    },
    {
      key: "run",
      heading: "The longest run",
      task: "How long may the run be on the hottest day, so that the head unit still has its minimum volts? Figures as before.",
      given: (n) => [
        LOOP(n),
        HOT(n),
        SUPPLY(n),
        {
          label: "Minimum volts of the head unit",
          called: "minimum volts",
          value: n.least,
          unit: "V",
          of: "least",
          invites: [takenOff],
        },
        CURRENT(n),
      ],
      answer: { kind: "number", unit: "m", decimals: 0 },
      needs: [],
      solve: longest,
      formula: (n) => (n.supply - n.least) / (amperesOf(n) * (n.loop / 100) * inHeat(n)),
      slips: longestRunSlips<Numbers>((n) => value(longest(n))),
      hints: ["Volts that may be lost = supply - least. Length = those volts/(amperes·ohms of 1 m in heat)."],
      example: (n) => {
        const work = new Working();
        const r = work.given("r", "loop resistance of 100 m at 20 °C", n.loop, "ohm/100 m");
        const t = work.given("T", "hottest cable", n.hot, "°C");
        const vs = work.given("Vs", "volts of the supply", n.supply, "V");
        const vl = work.given("Vl", "minimum volts", n.least, "V");
        const i = work.given("I", "current", amperesOf(n), "A");
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
          value(longest(n)),
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
      task: "Another head unit keeps its power instead of its current. What voltage reaches it on the same run in heat? Use your answer to 2.",
      given: (n) => [
        {
          label: "Power of the head unit",
          value: n.watts,
          unit: "W",
          of: "watts",
          invites: [watts],
        },
        SUPPLY(n),
      ],
      answer: { kind: "number", unit: "V", decimals: 2 },
      needs: ["hotOhms"],
      solve: (n, { hotOhms }) => loadVolts(n.supply, n.watts, hotOhms!, "W"),
      formula: (n, { hotOhms }) => (n.supply + Math.sqrt(n.supply ** 2 - 4 * n.watts * hotOhms!)) / 2,
      uses: { hotOhms: [loop] },
      slips: constantPowerSlips<Numbers>((_, { hotOhms }) => hotOhms!),
      hints: [
        "V = (Vs + √(Vs² - 4·P·R))/2. Fewer volts draw more current, so the drop is greater than it looks.",
      ],
      example: (n, { hotOhms }) => workedBy("LOADVOLTS", [n.supply, n.watts, hotOhms!, "W"]),
    },
  ],
});
