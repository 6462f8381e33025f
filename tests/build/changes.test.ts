/** The notes of a release say what is new, gone and otherwise, in words; every expected line is written by hand. */
import { changes } from "../../src/build/changes";
import { hasNow, lastBefore, releaseRecord, type Had } from "../../src/build/releaseRecord";
import { allFunctions } from "../../src/functions/all";

const before: Had = {
  functions: {
    GONE: { description: "Went.", arguments: [] },
    SAME: { description: "Stays.", arguments: [{ name: "a", description: "First." }] },
    OTHER: {
      description: "Loss of a run.",
      arguments: [
        { name: "length", description: "Length. Default: 10 m.", optional: true },
        { name: "old", description: "Once." },
        { name: "last", description: "Left." },
      ],
    },
  },
  templates: { "multi-room": "2", "single-drop": "2", past: "1" },
};
const now: Had = {
  functions: {
    SAME: before.functions.SAME!,
    OTHER: {
      description: "Loss of a run, hot.",
      arguments: [
        { name: "length", description: "Length. Default: 20 m." },
        { name: "young", description: "Now." },
        { name: "shade", description: "Share in the shade.", optional: true },
      ],
    },
    FRESH: {
      description: "Answers.",
      arguments: [
        { name: "x", description: "Needed." },
        { name: "y", description: "Not.", optional: true },
      ],
    },
  },
  templates: { "multi-room": "4", "single-drop": "2", "alignment-card": "1" },
};
const versions = {
  "multi-room": ["The first.", "The second.", "A third.", "A fourth."].map((said, index) => ({
    version: String(index + 1),
    changes: said,
  })),
};

test("each kind of change has its line", () => {
  expect(changes("2.0.0", now, ["1.0.0", before], versions).split("\n")).toEqual([
    "Rigsheet 2.0.0: what changed since 1.0.0",
    "",
    "FUNCTIONS",
    "New",
    "  RIG.FRESH",
    "    Answers.",
    "    Takes x, y (may be left out).",
    "",
    "Gone: a workbook that calls one shows an error there",
    "  RIG.GONE",
    "",
    "Changed",
    "  RIG.OTHER",
    "    What it answers reads now: Loss of a run, hot.",
    "      before: Loss of a run.",
    "    “length” must be given now.",
    "    “length” reads now: Length. Default: 20 m.",
    "      before: Length. Default: 10 m.",
    "    “old” is called “young” now: Now.",
    "    “last” is called “shade” now (may be left out): Share in the shade.",
    "",
    "  All others (1) are as they were.",
    "",
    "TEMPLATES",
    "  Multi-room estimate (multi-room): version 4, before 2.",
    "    3: A third.",
    "    4: A fourth.",
    "  Single-drop check (single-drop): version 2, as it was.",
    "  Alignment card (alignment-card): version 1, new.",
    "  past: no longer made. Workbooks of it open as before.",
    "",
    "A workbook keeps the version that it was made with, and goes on working; Check says what is newer.",
    "",
  ]);
});

const ofOne = (names: readonly string[]): Had => ({
  functions: {
    F: { description: "F.", arguments: names.map((name) => ({ name, description: `${name}.` })) },
  },
  templates: {},
});
test.each<[string, string[], string[], string[]]>([
  ["one more at the end", ["a"], ["a", "b"], ["    Takes one more value, “b”, at place 2: b."]],
  ["one fewer", ["a", "b"], ["a"], ["    “b” is taken no longer."]],
  [
    "two that changed places",
    ["a", "b"],
    ["b", "a"],
    ["    “b” stands at place 1 now, before at 2.", "    “a” stands at place 2 now, before at 1."],
  ],
])("%s", (_what, was, is, said) => {
  const lines = changes("2", ofOne(is), ["1", ofOne(was)], {}).split("\n");
  expect(lines.slice(lines.indexOf("  RIG.F") + 1, lines.indexOf("TEMPLATES") - 3)).toEqual(said);
});

test("nothing changed is said, not left blank", () => {
  const said = changes("0.2.0", now, ["0.1.0", now], versions);
  expect(said).toContain("  Nothing changed: all are as they were.");
  expect(said).toContain("Multi-room estimate (multi-room): version 4, as it was.");
});

test("the first release on record names every function", () => {
  const said = changes("0.1.0", hasNow());
  for (const { name } of allFunctions) expect(said).toContain(`\n  RIG.${name}\n`);
  expect(said).not.toMatch(/, new|before \d|undefined/);
});

test("a release is noted when it is closed, under its version, beside the one before and no other", () => {
  expect(releaseRecord({}, false, "1.0.0", before)).toEqual({});
  const first = releaseRecord({}, true, "1.0.0", before);
  expect(first).toEqual({ "1.0.0": before });
  // Closed again, before the version was raised.
  expect(releaseRecord(first, true, "1.0.0", now)).toEqual({ "1.0.0": now });
  const second = releaseRecord(first, true, "2.10.0", now);
  expect(Object.keys(second)).toEqual(["1.0.0", "2.10.0"]);
  // Whether it was closed already makes no difference to its notes.
  expect(lastBefore(first, "2.10.0")).toEqual(["1.0.0", before]);
  expect(lastBefore(second, "2.10.0")).toEqual(["1.0.0", before]);
  expect(Object.keys(releaseRecord(second, true, "3.0.0", now))).toEqual(["2.10.0", "3.0.0"]);
});
