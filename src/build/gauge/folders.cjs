/**
 * Which tests judge which folder of the sources. Tests that would see any
 * change and judge none are not among them: hashes, listings and generated
 * files, all of which lie in tests/architecture.
 */
const path = require("node:path");
const { testsByNeed } = require("../../../tests/support/projects.cjs");

const root = path.join(__dirname, "..", "..", "..");

/** These alone decide; a folder's own tests, and of those that use it the ones that look at what it gives. */
const JUDGES = {
  engine: ["tests/engine/", "tests/functions/"],
  functions: ["tests/functions/", "tests/engine/", "tests/help/", "tests/cli/calc"],
  training: ["tests/training/", "tests/cli/exercisesAndMark", "tests/cli/handedIn"],
  workbooks: ["tests/workbooks/", "tests/hosts/grid/inputRules", "tests/hosts/file/roundTrip"],
  // A folder within a folder, and its tests alone: a run of some minutes while they are written.
  "workbooks/prices": ["tests/workbooks/prices/", "tests/workbooks/buyingCases", "tests/cli/prices"],
  "workbooks/survey": [
    "tests/workbooks/imported/",
    "tests/workbooks/survey",
    "tests/workbooks/readingSurveys",
    "tests/workbooks/typed/outsideSurveys",
  ],
  "workbooks/quoteReview": [
    "tests/workbooks/outsideQuotes",
    "tests/workbooks/quoteReview",
    "tests/workbooks/typedQuotes",
    "tests/workbooks/readTypedQuote",
    "tests/workbooks/typed/jotted",
  ],
  // The quick ones that hold the sheets to what was worked by hand or to the reference program, and none of 240 outlets.
  "workbooks/multiRoom": [
    "tests/workbooks/multiRoom/",
    "tests/workbooks/alternates",
    "tests/workbooks/cardBoxes",
    "tests/workbooks/cards.",
    "tests/workbooks/demonstrations",
    "tests/workbooks/outletChecks",
    "tests/workbooks/supplyAndDoubt",
    "tests/upgrade/asOneTree",
  ],
  review: ["tests/review/", "tests/cli/review", "tests/standards/learning"],
  formula: ["tests/formula/", "tests/review/callIn", "tests/hosts/file/arrayFormulas"],
};

/**
 * Hundreds of simulated jobs or sums in each: a run would take hours for the few mutants that these alone catch.
 * The figures are the lower for it.
 */
const SLOW = [
  "tests/engine/diagnosis/diagnose.test",
  "tests/functions/diagnoseJobs",
  "tests/functions/moneyTies",
];

/**
 * Each of these goes through the whole review dozens of times, so nearly every mutant of a rule would wait for all of
 * them: seven of the ten minutes of one run. They judge whole workbooks, the rest the rules and what they stand on.
 */
const WHOLE_REVIEWS = [
  "review",
  "earlier",
  "spoilt",
  "spoiltFiles",
  "outsider",
  "oneReading",
  "excelSaves",
  "stories",
  "strays",
  "thresholdsTogether",
].map((name) => `tests/review/${name}.test`);

/** Needs no other program, though it starts Node once to look at a list. */
const PURE_ENOUGH = ["tests/functions/everyFunction.test.ts"];
/** Looks at the arguments of every function, for which the engine's mutants must wait too long. */
const ONLY_FUNCTIONS = PURE_ENOUGH;

/** Written by `npm run generate`. */
const GENERATED = ["src/functions/all.ts"];

/** Reads a workbook that is generated from the sources, and so is the same whatever is changed in them. */
const OF_GENERATED = ["tests/workbooks/printed"];

const folders = Object.keys(JUDGES);

/** @returns the test files that judge a folder, as paths within the project */
function judgesOf(folder) {
  const { pure, engine } = testsByNeed();
  return [...pure, ...engine, ...PURE_ENOUGH.map((file) => path.join(root, file))]
    .map((file) => path.relative(root, file).split(path.sep).join("/"))
    .filter((file) => JUDGES[folder].some((start) => file.startsWith(start)))
    .filter((file) => ![...SLOW, ...WHOLE_REVIEWS, ...OF_GENERATED].some((start) => file.startsWith(start)))
    .filter((file) => folder === "functions" || !ONLY_FUNCTIONS.includes(file))
    .sort();
}

module.exports = { folders, judgesOf, GENERATED };
