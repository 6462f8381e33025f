/**
 * The diagnosis held to surveys made by someone who had not seen the code (fixtures/readings). Before any tuning 55
 * of the 102 that must be right were, and 7 of 18 wishes.
 */
import { diagnosed, failingsOf, surveys } from "../support/readingSurveys";
import { isMost } from "../support/tries";

/** Where we judge differently from their maker, or fall short, each with its reason. */
const DIFFERENT: Readonly<Record<string, string>> = {
  "splitter-4-for-6-U1":
    "falls short: 2 dB more at six outlets of one branch is a splitter of another kind, which the list of causes lacks",
  "volts-words":
    "judged differently: with 23.9 V at the head unit its supply is on, so the fault lies between it and its outlets",
  "tap-turned-A1": "a wish: a tap the wrong way round is not in the list of causes",
  "runs-swapped-G01-G08": "a wish: says “wrong port” at both, not “swapped”",
  "runs-swapped-A01-A07": "a wish: says “wrong port” at both, not “swapped”",
  "shifted-one-row": "a wish: readings one row too low are not looked for",
  "one-branch-only": "a wish: outlets that were not measured are not asked for by name",
  "volts-18-from-the-meter": "a wish: a meter that feeds the line itself is not in the list of causes",
  "typed-on-Commissioning":
    "a wish: readings typed over the formulas of Commissioning are left to the review",
};

/** A sample of each kind by default; all with RIGSHEET_RUNS=most. */
const sample = surveys.filter(({ id }, at) => isMost || at % 4 === 0 || id in DIFFERENT);

test("surveys of readings are asked about, refused or explained as their maker expects", async () => {
  const found: Record<string, string[]> = {};
  for (const survey of sample) {
    const failings = failingsOf(survey, await diagnosed(survey));
    if (failings.length > 0) found[survey.id] = failings;
  }
  const right = sample.length - Object.keys(found).length;
  process.stdout.write(`Surveys of readings: ${right} of ${sample.length} as their maker expects\n`);
  // Nothing fails that is not named above, and nothing is named that no longer fails.
  expect(Object.keys(found).sort()).toEqual(Object.keys(DIFFERENT).sort());
}, 600_000);
