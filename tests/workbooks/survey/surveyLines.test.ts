/** The lines of a survey: which are outlets, what each becomes, and what is asked about or told. */
import { runsOf, surveyOf, troublesOf } from "../../support/surveyTables";
import type { SurveyRow } from "../../../src/workbooks/survey/survey";

const LISTS = {
  cable: ["indoor drop", "outdoor drop"],
  plate: ["single outlet", "outlet with radio"],
  receiver: ["receiver", "recorder, 2 tuners"],
};

/** One line below heads that name a unit, so that nothing else is told. */
const line = (heads: string, cells: string, lists = {}) => surveyOf([heads, cells], undefined, { lists });
const rowOf = (heads: string, cells: string, lists = {}): SurveyRow | undefined =>
  line(heads, cells, lists).rows[0];
const reasonOf = (heads: string, cells: string, lists = {}): string | undefined =>
  line(heads, cells, lists).troubles[0]?.reason;

describe("lines between the outlets", () => {
  const HEAD = "Room;Outlet;Receiver;Run (m)";
  const read = (...lines: string[]) => surveyOf([HEAD, "101;A1;receiver;10", ...lines, "102;A2;receiver;12"]);
  const BOTH = [
    ["A1", 10],
    ["A2", 12],
  ];

  test.each([
    ["the heads again", "Room;Outlet;Receiver;Run (m)"],
    ["in capitals", "ROOM;OUTLET;RECEIVER;RUN (M)"],
    ["not all of them", "Room;Outlet;;"],
    ["in other words of the same meaning", ";Outlet no;;Length"],
    ["the foot of a page", "Page 2;;;"],
    ["the foot of a page, to the right", ";;;Seite 2"],
    ["with a date beside it", "May 2031;;;page 2"],
    ["of three", "page 2 of 3;;;"],
  ])("%s", (_, again) => {
    const survey = read(again);
    expect([runsOf(survey), survey.troubles]).toEqual([BOTH, []]);
    expect(survey.notes).toEqual(["1 line with the heads again, or a page's foot, is passed over."]);
  });

  test("names that are as their heads make no line of heads", () => {
    const heads = "Room;Outlet;Receiver;Cable;Run (m)";
    // Two of five cells are those of the heads.
    expect(troublesOf(surveyOf([heads, "101;A1;receiver;cable;tbd"]))).toHaveLength(1);
    // Two of four, and a length.
    expect(runsOf(surveyOf(["Outlet;Receiver;Cable;Run (m)", "A1;receiver;cable;10"]))).toEqual([["A1", 10]]);
  });

  test("two of them are told in the plural", () => {
    expect(read(HEAD, "Page 2;;;").notes).toEqual([
      "2 lines with the heads again, or a page's foot, are passed over.",
    ]);
  });

  test.each([
    ["four words", "all walls are brick;;;"],
    ["a sentence", "Look here:;;;"],
    ["ends with a full stop", "By hand.;;;"],
    ["a shout", "Dogs!;;;"],
    ["a mark", "* guess;;;"],
    ["a dagger", ";† guess;;"],
    ["a figure and a bracket", "1) guess;;;"],
    ["two long words", `${"x".repeat(20)} ${"y".repeat(12)};;;`],
    ["an average", "Average;;;11"],
    ["an average in other words", "avg;;;11"],
  ])("words: %s", (_, words) => {
    const survey = read(words);
    expect([runsOf(survey), survey.troubles]).toEqual([BOTH, []]);
    const said = words
      .split(";")
      .filter((text) => text !== "")
      .join(" ");
    expect(survey.notes).toEqual([`Passed over as words: line 3 (“${said}”).`]);
  });

  test("of many words five are told, and a long one is cut", () => {
    const long = `these are far more words ${"x".repeat(60)}`;
    const { notes } = read(...Array.from({ length: 6 }, () => `${long};;;`));
    const shown = (at: number): string => `line ${at} (“${long.slice(0, 59)}…”)`;
    expect(notes).toEqual([`Passed over as words: ${[3, 4, 5, 6, 7].map(shown).join(", ")}, ….`]);
    const sixty = `one two three ${"x".repeat(46)}`;
    expect(read(...Array.from({ length: 5 }, () => `${sixty};;;`)).notes).toEqual([
      `Passed over as words: ${[3, 4, 5, 6, 7].map((at) => `line ${at} (“${sixty}”)`).join(", ")}.`,
    ]);
  });

  test.each([
    ["three words", "by the door;;;"],
    ["one long word", `${"x".repeat(33)};;;`],
    ["a name that ends with a point", ";Nr.;;"],
    ["a length that ends with a point", ";;;12 m."],
    ["a code", ";B2;;"],
    ["a line that was parted otherwise", "a whole line, parted, otherwise, than others;;;"],
  ])("%s may be an outlet, and is asked about", (_, text) => {
    const survey = read(text);
    expect(runsOf(survey)).toEqual(BOTH);
    expect(survey.troubles.map((one) => one.line)).toEqual([3]);
    expect(survey.notes).toEqual([]);
  });

  test.each([
    ["First floor:", "First floor"],
    ["1. OG", "1. OG"],
    ["Level 2 : ", "Level 2"],
  ])("a floor's heading is the floor of what stands below it: %s", (heading, floor) => {
    const survey = read(`${heading};;;`);
    expect(survey.rows.map((row) => row.floor)).toEqual([undefined, floor]);
    expect([survey.troubles, survey.notes]).toEqual([[], []]);
  });

  test("a code is a floor only where no outlet's name stands", () => {
    expect(read("B2;;;").rows.map((row) => row.floor)).toEqual([undefined, "B2"]);
    expect(read(";;B2;").rows.map((row) => row.floor)).toEqual([undefined, "B2"]);
    expect(read(";First floor;;").rows.map((row) => row.floor)).toEqual([undefined, "First floor"]);
  });

  test("a floor above the heads counts, where no column names floors", () => {
    const lines = ["Survey of a house;;", "Ground floor;;", "Outlet;Receiver;Run (m)", "A1;receiver;10"];
    expect(surveyOf(lines).rows).toEqual([
      { outlet: "A1", receiver: "receiver", run: 10, floor: "Ground floor" },
    ]);
    const named = [
      "Ground floor;;;",
      "Floor;Outlet;Receiver;Run (m)",
      ";A1;receiver;10",
      "2;A2;receiver;9",
      ";A3;receiver;8",
    ];
    // A floor that is named once stands for the lines below it.
    expect(surveyOf(named).rows.map((row) => row.floor)).toEqual([undefined, "2", "2"]);
  });

  test.each([
    "cancelled",
    "canceled by the owner",
    "(deleted)",
    "omitted",
    "void",
    "not required",
    "no longer needed",
    "entfällt",
    "- gestrichen",
    "annulé",
    "Supprimée",
    "supprimé",
    "vervallen",
  ])("struck out: %s", (word) => {
    const lines = [`${HEAD};Note`, "101;A1;receiver;10;", `102;A2;receiver;12;${word}`];
    const survey = surveyOf(lines);
    expect(runsOf(survey)).toEqual([["A1", 10]]);
    expect(survey.troubles).toEqual([
      { line: 3, id: "3", isLeftOut: true, reason: `The line says “${word}”: it is left out.` },
    ]);
    expect(runsOf(surveyOf(lines, { takenIn: ["3"] }))).toEqual(BOTH);
    // Left out by a person, there is nothing to ask.
    const left = surveyOf(lines, { leftOut: ["3"] });
    expect([runsOf(left), left.troubles]).toEqual([[["A1", 10]], []]);
    expect(left.notes).toEqual(["1 line left out, as you chose."]);
  });

  test("within other words only those that mean nothing else strike a line out", () => {
    const kept = surveyOf([
      `${HEAD};Note`,
      "101;A1;receiver;10;void above the ceiling is not it, omit nothing".replace(
        "void above",
        "the void above",
      ),
    ]);
    expect(runsOf(kept)).toEqual([["A1", 10]]);
    const struck = surveyOf([`${HEAD};Note`, "101;A1;receiver;10;this one was cancelled"]);
    expect(struck.rows).toEqual([]);
  });

  test("lines left out by a person, in the plural", () => {
    expect(
      surveyOf([HEAD, "101;A1;receiver;10", "102;A2;receiver;12"], { leftOut: ["2", "3"] }).notes,
    ).toEqual(["2 lines left out, as you chose."]);
  });
});

describe("one line", () => {
  const HEADS = "Outlet;Receiver;Run (m)";

  test("what is missing is asked for, by its column", () => {
    expect(reasonOf(HEADS, ";receiver;10")).toBe("outlet is missing. Enter a name of its own.");
    expect(reasonOf(HEADS, "A1;receiver;")).toBe("run is missing. Enter its length.");
    expect(reasonOf(HEADS, ";receiver;")).toBe(
      "outlet is missing. Enter a name of its own. run is missing. Enter its length.",
    );
    // One reason for a cell is enough.
    expect(reasonOf(HEADS, "A1;receiver;tbd")).toBe(
      "run: “tbd” is no length yet. Enter it, or an estimate such as ca. 12.",
    );
  });

  test("a trouble names the line, the room and the outlet, the columns, and keeps what stands there", () => {
    const survey = line("Room;Outlet;Receiver;Run (m)", "101;A1;receiver;tbd");
    expect(survey.troubles).toEqual([
      { line: 2, id: "2", who: "101, A1", keys: ["run"], reason: expect.anything() },
    ]);
    expect(survey.texts).toEqual({ "2": { room: "101", outlet: "A1", receiver: "receiver", run: "tbd" } });
    expect(line(HEADS, ";receiver;tbd").troubles[0]).not.toHaveProperty("who");
    expect(line(HEADS, "A1;receiver;10").texts).toEqual({});
  });

  test("two outlets of one name, whatever its capitals", () => {
    const survey = surveyOf([HEADS, "A1;receiver;10", "a1;receiver;12", "A1;receiver;14"]);
    expect(runsOf(survey)).toEqual([["A1", 10]]);
    expect(troublesOf(survey)).toEqual([
      [3, 'The outlet "a1" stands on line 2 already. Give each outlet a name of its own.'],
      [4, 'The outlet "A1" stands on line 2 already. Give each outlet a name of its own.'],
    ]);
    expect(survey.troubles[0]!.keys).toEqual(["outlet"]);
  });

  test.each([
    "ditto",
    "do.",
    "dto.",
    '"',
    "''",
    "〃",
    "same",
    "as above",
    "wie oben",
    "s.o.",
    "idem",
    "igual",
    "↓",
  ])("%s is what stands above, but for a name of an outlet", (mark) => {
    const survey = surveyOf([
      HEADS,
      "A1;receiver;10",
      `A2;${mark};${mark}`,
      `A3;${mark};9`,
      `A4;${mark};${mark}`,
    ]);
    expect(survey.rows).toEqual([
      { outlet: "A1", receiver: "receiver", run: 10 },
      { outlet: "A2", receiver: "receiver", run: 10 },
      { outlet: "A3", receiver: "receiver", run: 9 },
      { outlet: "A4", receiver: "receiver", run: 9 },
    ]);
  });

  test("ditto below nothing is asked about; a blank between is passed over", () => {
    expect(reasonOf(HEADS, "A1;ditto;10")).toBe(
      "receiver: “ditto” stands for the line above, which has nothing here.",
    );
    const survey = surveyOf([HEADS, "A1;receiver;10", "A2;;11", "A3;ditto;12"]);
    expect(survey.rows.map(({ receiver }) => receiver)).toEqual(["receiver", undefined, "receiver"]);
    expect(surveyOf([HEADS, "A1;receiver;10", "ditto;receiver;11"]).rows[1]).toMatchObject({
      outlet: "ditto",
    });
  });

  test.each(["-", "–", "none", "no", "nil", "n/a", "kein", "aucun", "spare", "empty"])(
    "a receiver %s is none",
    (word) => {
      const survey = line(HEADS, `A1;${word};10`, LISTS);
      expect(survey.rows).toEqual([{ outlet: "A1", run: 10 }]);
      expect(survey.notes).toEqual(["Line 2 names no receiver: it is a spare outlet."]);
    },
  );

  test("several spare outlets are told together, six by their lines", () => {
    const spares = (count: number): readonly string[] =>
      surveyOf([HEADS, ...Array.from({ length: count }, (_, index) => `A${index};;10`)]).notes;
    expect(spares(2)).toEqual(["Lines 2, 3 name no receiver: they are spare outlets."]);
    expect(spares(6)).toEqual(["Lines 2, 3, 4, 5, 6, 7 name no receiver: they are spare outlets."]);
    expect(spares(7)).toEqual(["Lines 2, 3, 4, 5, 6, 7, … name no receiver: they are spare outlets."]);
  });

  test.each(["tbd", "?", "unknown", "offen", "xx", "to be chosen"])(
    "a receiver %s is not decided",
    (word) => {
      expect(reasonOf(HEADS, `A1;${word};10`, LISTS)).toBe(
        `receiver: “${word}” is not decided yet. Enter one of the workbook's, or leave it blank.`,
      );
    },
  );

  test("a name that no list has: the nearest are offered", () => {
    const heads = "Outlet;Cable;Receiver;Run (m)";
    expect(reasonOf(heads, "A1;indor drop;receiver;10", LISTS)).toBe(
      "cable: “indor drop” is not on the workbook's list. Nearest: “indoor drop”, “outdoor drop”. Choose one, or keep it as it is.",
    );
    expect(reasonOf(heads, "A1;xyzzy;receiver;10", LISTS)).toBe(
      "cable: “xyzzy” is not on the workbook's list. Choose one, or keep it as it is.",
    );
    const survey = surveyOf(
      [heads, "A1;indor drop;receiver;10", "A2;Indor Drop;receiver;11", "A3;xyzzy;receiver;12"],
      undefined,
      { lists: LISTS },
    );
    expect(survey.unknown).toEqual([
      { key: "cable", text: "indor drop", lines: [2, 3], nearest: ["indoor drop", "outdoor drop"] },
      { key: "cable", text: "xyzzy", lines: [4], nearest: [] },
    ]);
    // A workbook without a list judges nothing.
    expect(rowOf(heads, "A1;xyzzy;receiver;10")).toMatchObject({ cable: "xyzzy" });
  });

  test("one put right for all its lines", () => {
    const heads = "Outlet;Cable;Receiver;Run (m)";
    const lines = [heads, "A1;indor drop;receiver;10", "A2; INDOR DROP ;receiver;11"];
    const survey = surveyOf(lines, { names: { "cable:indor drop": "outdoor drop" } }, { lists: LISTS });
    expect(survey.rows.map(({ cable }) => cable)).toEqual(["outdoor drop", "outdoor drop"]);
  });

  test("a list that the workbook has not been given yet leaves what it does not know", () => {
    const lists = { ...LISTS, open: ["receiver"] };
    expect(rowOf(HEADS, "A1;Magic box;10", lists)).toMatchObject({ receiver: "Magic box" });
    expect(rowOf(HEADS, "A1;RECEIVER;10", lists)).toMatchObject({ receiver: "receiver" });
    expect(reasonOf(HEADS, "A1;Magic box;10", LISTS)).toMatch(/“Magic box” is not on the workbook's list/);
  });

  test("a device that is not drawn yet is taken, and told; another outlet of the file is known", () => {
    const heads = "Outlet;Fed from;Receiver;Run (m)";
    const lists = { ...LISTS, from: ["GA"] };
    const survey = surveyOf(
      [
        heads,
        "A1;ga;receiver;10",
        "A2;A1;receiver;11",
        "A3;S7;receiver;12",
        "A4;S7;receiver;12",
        "A5;;receiver;3",
      ],
      undefined,
      { lists },
    );
    expect(survey.rows.map(({ from }) => from)).toEqual(["GA", "A1", "S7", "S7", undefined]);
    expect(survey.notes).toEqual([
      "The workbook has nothing yet that is called “S7”; outlets are fed from there.",
    ]);
    const many = (count: number): readonly string[] =>
      surveyOf(
        [heads, ...Array.from({ length: count }, (_, index) => `B${index};X${index};receiver;9`)],
        undefined,
        { lists },
      ).notes;
    expect(many(6)[0]).toBe(
      "The workbook has nothing yet that is called “X0”, “X1”, “X2”, “X3”, “X4”, “X5”; outlets are fed from there.",
    );
    expect(many(7)[0]).toMatch(/“X5”, …; outlets are fed from there\.$/);
    // Nothing is drawn: nothing can be strange.
    expect(surveyOf([heads, "A3;S7;receiver;12"]).notes).toEqual([]);
  });

  test.each([
    ["2 receivers", "receiver", 2],
    ["2x receiver", "receiver", 2],
    ["3 × receiver", "receiver", 3],
    ["2 pcs. receiver", "receiver", 2],
    ["2 off receiver", "receiver", 2],
    ["12 receivers", "receiver", 12],
  ])("%s are so many at one outlet", (text, receiver, quantity) => {
    expect(rowOf(HEADS, `A1;${text};10`, LISTS)).toEqual({ outlet: "A1", receiver, quantity, run: 10 });
  });

  test("not where a column counts them otherwise", () => {
    const heads = "Outlet;Qty;Receiver;Run (m)";
    expect(reasonOf(heads, "A1;3;2 receivers;10", LISTS)).toMatch(
      /“2 receivers” is not on the workbook's list/,
    );
    expect(rowOf(heads, "A1;;2 receivers;10", LISTS)).toMatchObject({ quantity: 2, receiver: "receiver" });
    expect(reasonOf(HEADS, "A1;2 screens;10", LISTS)).toMatch(/“2 screens” is not on the workbook's list/);
  });

  test("a quantity", () => {
    const heads = "Outlet;Qty;Receiver;Run (m)";
    for (const [text, quantity] of [
      ["2", 2],
      ["x2", 2],
      ["× 2", 2],
      ["2x", 2],
      ["2 no.", 2],
      ["2 nos", 2],
      ["-", undefined],
      ["", undefined],
    ] as const)
      expect([text, rowOf(heads, `A1;${text};receiver;10`)?.quantity]).toEqual([text, quantity]);
    expect(reasonOf(heads, "A1;0;receiver;10")).toBe(
      "how many: 0 of “receiver” are none. Enter how many, or leave the receiver out for a spare outlet.",
    );
    expect(rowOf(heads, "A1;0;;10")).toMatchObject({ quantity: 0 });
    expect(reasonOf(heads, "A1;two;receiver;10")).toMatch(/^how many: “two”/);
    expect(reasonOf(heads, "A1;2x2;receiver;10")).toMatch(/^how many: “2x2”/);
  });

  test("without receivers a quantity is told to be of receivers", () => {
    const survey = surveyOf(["Outlet;Qty;Run (m)", "A1;2;10", "A2;1;11", "A3;;12"]);
    expect(survey.notes).toEqual([
      "No column names the receivers: choose them on Rooms, where an outlet without one has no tuner and needs no user band.",
      "Line 2: 2 is taken as the receivers at one outlet, not as outlets.",
    ]);
  });

  test("remarks of several columns stand together", () => {
    const heads = "Outlet;Receiver;Run (m);Note;Remarks";
    expect(rowOf(heads, "A1;receiver;10;by the door;high")).toMatchObject({ note: "by the door; high" });
    expect(rowOf(heads, "A1;receiver;10;;high")).toMatchObject({ note: "high" });
    expect(rowOf(heads, "A1;receiver;10;;")).not.toHaveProperty("note");
  });

  test("a date was a name", () => {
    const survey = surveyOf([HEADS, [{ number: 45_000, shown: undefined }, "receiver", "10"]]);
    expect(troublesOf(survey)).toEqual([
      [
        2,
        "outlet: the file holds a date here, into which a workbook program turns names such as 3-16. Type the name itself as text",
      ],
    ]);
  });

  test("a number of a workbook may be a name or a count", () => {
    const survey = surveyOf([
      "Outlet;Qty;Receiver;Run (m)",
      [{ number: 7, shown: "007" }, { number: 2, shown: "2" }, "receiver", { number: 10, shown: "10.0" }],
    ]);
    expect(survey.rows).toEqual([{ outlet: "007", quantity: 2, receiver: "receiver", run: 10 }]);
  });

  test("a cell put right by a person", () => {
    const lines = [HEADS, "A1;receiver;tbd", "A2;receiver;12"];
    expect(runsOf(surveyOf(lines, { cells: { "2:run": "9", "3:outlet": "B2" } }))).toEqual([
      ["A1", 9],
      ["B2", 12],
    ]);
  });

  test("a name with the word for an outlet, where most have it", () => {
    const names = (...given: string[]): unknown[] =>
      surveyOf([HEADS, ...given.map((name) => `${name};receiver;10`)]).rows.map(({ outlet }) => outlet);
    expect(names("outlet G1", "Outlet G2", "G3")).toEqual(["G1", "G2", "G3"]);
    expect(names("outlet G1", "G2")).toEqual(["outlet G1", "G2"]);
    expect(names("outlet G1")).toEqual(["outlet G1"]);
    // Half of them are not most.
    expect(names("outlet G1", "outlet G2", "G3", "G4")).toEqual(["outlet G1", "outlet G2", "G3", "G4"]);
    expect(names("outlet bar", "outlet den", "outlet hall")).toEqual([
      "outlet bar",
      "outlet den",
      "outlet hall",
    ]);
  });
});

describe("runs in more than one column", () => {
  test("the ends of a run beside it", () => {
    const heads = "Outlet;Receiver;Run (m);Shortest (m);Longest (m)";
    expect(rowOf(heads, "A1;receiver;10;8;12")).toMatchObject({ run: 10, shortest: 8, longest: 12 });
    expect(rowOf(heads, "A1;receiver;10;10;10")).toMatchObject({ run: 10, shortest: 10, longest: 10 });
    expect(rowOf(heads, "A1;receiver;10;;")).toEqual({ outlet: "A1", receiver: "receiver", run: 10 });
    expect(reasonOf(heads, "A1;receiver;10;11;12")).toBe(
      "run: 10 does not lie between its shortest (11) and its longest (12).",
    );
    expect(reasonOf(heads, "A1;receiver;10;8;9")).toBe(
      "run: 10 does not lie between its shortest (8) and its longest (9).",
    );
    expect(reasonOf(heads, "A1;receiver;10;11;")).toBe(
      "run: 10 does not lie between its shortest (11) and its longest (none).",
    );
    expect(reasonOf(heads, "A1;receiver;10;;9")).toBe(
      "run: 10 does not lie between its shortest (none) and its longest (9).",
    );
    expect(reasonOf(heads, "A1;receiver;10;low;12")).toMatch(
      /^shortest run: “low” can't be read as a length/,
    );
  });

  test("both ends alone: their middle", () => {
    const heads = "Outlet;Receiver;Min (m);Max (m)";
    expect(rowOf(heads, "A1;receiver;8;13")).toEqual({
      outlet: "A1",
      receiver: "receiver",
      run: 10.5,
      shortest: 8,
      longest: 13,
    });
    expect(line(heads, "A1;receiver;8;").rows).toEqual([{ outlet: "A1", receiver: "receiver" }]);
  });

  describe("a further part", () => {
    const CHOSEN = { columns: { 3: { key: "further", unit: "m" } } };
    const further = (cells: string) => surveyOf(["Outlet;Receiver;Run (m);In room (m)", cells], CHOSEN);

    test.each([
      ["10;3", { run: 13 }],
      ["10;0.1", { run: 10.1 }],
      ["8 - 12;3", { run: 13, shortest: 11, longest: 15 }],
      ["10;2 - 4", { run: 13, shortest: 12, longest: 14 }],
      ["8 - 12;2 - 4", { run: 13, shortest: 10, longest: 16 }],
      ["ca. 10;3", { run: 13 }],
    ])("%s", (cells, wanted) => {
      const { rows, troubles } = further(`A1;receiver;${cells}`);
      expect([rows, troubles]).toEqual([[{ outlet: "A1", receiver: "receiver", ...wanted }], []]);
    });

    test.each(["ca. 10;3", "10;ca. 3"])("%s is an estimate", (cells) => {
      expect(further(`A1;receiver;${cells}`).notes).toEqual([
        "Line 2: the run is an estimate, taken as it stands.",
      ]);
    });

    test("a blank one is asked about", () => {
      expect(troublesOf(further("A1;receiver;10;"))).toEqual([
        [2, "run, a further part: its further part (“In room (m)”) is blank. Enter it, or 0."],
      ]);
      expect(troublesOf(further("A1;receiver;10;tbd"))[0]![1]).toMatch(
        /^run, a further part: “tbd” is no length yet/,
      );
    });

    test("two of them are both added", () => {
      const survey = surveyOf(["Outlet;Receiver;Run (m);In room (m);Extra (m)", "A1;receiver;10;3;2"], {
        columns: { 3: { key: "further", unit: "m" }, 4: { key: "further", unit: "m" } },
      });
      expect(runsOf(survey)).toEqual([["A1", 15]]);
    });

    test("whether it is one is asked first", () => {
      expect(surveyOf(["Outlet;Receiver;Run (m);In room (m)", "A1;receiver;10;3"]).unsure).toBe(
        "“In room (m)” is taken for a part that is added to “Run (m)”. Say whether it is, or whether it is not used.",
      );
    });
  });

  test("a cable named with the run, where no column names it", () => {
    const heads = "Outlet;Receiver;Run (m)";
    expect(rowOf(heads, "A1;receiver;12 m indoor drop", LISTS)).toMatchObject({
      run: 12,
      cable: "indoor drop",
    });
    expect(rowOf(heads, "A1;receiver;12 Indoor Drop", LISTS)).toMatchObject({
      run: 12,
      cable: "indoor drop",
    });
    expect(reasonOf(heads, "A1;receiver;12 m of something", LISTS)).toMatch(/“12 m of something”/);
    const both = "Outlet;Cable;Receiver;Run (m)";
    expect(reasonOf(both, "A1;outdoor drop;receiver;12 m indoor drop", LISTS)).toMatch(/“12 m indoor drop”/);
  });
});

describe("a line for several outlets", () => {
  test("as many names as it counts: an outlet each, with the run of the line", () => {
    const survey = surveyOf(["Room;Outlet;Qty;Receiver;Run (m)", "11, 12;A1, A2;2;receiver;10"]);
    expect(survey.rows).toEqual([
      { room: "11", outlet: "A1", quantity: 1, receiver: "receiver", run: 10 },
      { room: "12", outlet: "A2", quantity: 1, receiver: "receiver", run: 10 },
    ]);
    expect(survey.lines).toEqual([2, 2]);
    expect(survey.notes).toEqual([
      "Line 2 stands for 2 outlets, as its names and its quantity say: each has the line's run.",
    ]);
  });

  test("rooms that are not as many stay as they are", () => {
    const survey = surveyOf(["Room;Outlet;Qty;Receiver;Run (m)", "hall;A1 to A3;3;receiver;10"]);
    expect(survey.rows.map(({ room, outlet }) => [room, outlet])).toEqual([
      ["hall", "A1"],
      ["hall", "A2"],
      ["hall", "A3"],
    ]);
  });

  test("a column that counts outlets leaves the receivers alone", () => {
    const survey = surveyOf(["Outlet;Outlets;Qty;Receiver;Run (m)", "A1, A2;2;3;receiver;10"]);
    expect(survey.rows).toEqual([
      { outlet: "A1", quantity: 3, receiver: "receiver", run: 10 },
      { outlet: "A2", quantity: 3, receiver: "receiver", run: 10 },
    ]);
  });

  test("names without a count, and a count without names, are asked about", () => {
    expect(reasonOf("Outlet;Receiver;Run (m)", "A1, A2;receiver;10")).toBe(
      "outlet: “A1, A2” stands for 2 outlets. Write a line for each, with a name and a run of its own.",
    );
    expect(reasonOf("Outlet;Qty;Receiver;Run (m)", "A1, A2;3;receiver;10")).toBe(
      "outlet: “A1, A2” stands for 2 outlets, and the line counts 3. Write a line for each, with a name and a run of its own.",
    );
    expect(reasonOf("Outlet;Outlets;Receiver;Run (m)", "A1;2;receiver;10")).toBe(
      "The line stands for 2 outlets. Write a line for each, with a name and a run of its own.",
    );
    expect(rowOf("Outlet;Outlets;Receiver;Run (m)", "A1;1;receiver;10")).toEqual({
      outlet: "A1",
      receiver: "receiver",
      run: 10,
    });
  });
});

describe("outlets without a column of names", () => {
  test("are called after their rooms, numbered where a room has several", () => {
    const survey = surveyOf(
      ["Room;Receiver;Run (m)", "Bar;receiver;10", "bar;receiver;11", "Hall;receiver;12"],
      {
        confirmed: true,
      },
    );
    expect(runsOf(survey)).toEqual([
      ["Bar-1", 10],
      ["bar-2", 11],
      ["Hall", 12],
    ]);
    expect(survey.notes).toEqual([
      "No column names the outlets: each is called after its room, numbered where a room has several.",
    ]);
  });

  test("whether they are is asked first", () => {
    expect(surveyOf(["Room;Receiver;Run (m)", "Bar;receiver;10"]).unsure).toBe(
      "No column names the outlets. Say which does; or each outlet is called after its room, numbered where a room has several.",
    );
  });
});

describe("what is told of the lines", () => {
  const HEADS = "Outlet;Receiver;Run";

  test("a head without a unit", () => {
    expect(surveyOf([HEADS, "A1;receiver;10"]).notes).toEqual([
      "“Run” names no unit: it is taken in m, the unit of this workbook.",
    ]);
    expect(surveyOf([HEADS, "A1;receiver;10"], undefined, { unit: "ft" }).notes).toEqual([
      "“Run” names no unit: it is taken in ft, the unit of this workbook.",
    ]);
    // Where other cells name theirs, the first that does not is told.
    expect(surveyOf([HEADS, "A1;receiver;10 m", "A2;receiver;11", "A3;receiver;12"]).notes).toEqual([
      "Line 3 names no unit: it is taken in m, the unit of this workbook.",
    ]);
    expect(surveyOf([HEADS, "A1;receiver;10 m"]).notes).toEqual([]);
  });

  test("a unit said in words, above the heads or at the end", () => {
    const said = "Lengths are taken in ft, as the file says in words.";
    // 10 ft = 3.048 m.
    const above = surveyOf(["All lengths in feet", HEADS, "A1;receiver;10"]);
    expect([runsOf(above), above.notes]).toEqual([
      [["A1", 3.048]],
      ["1 line above the head row is passed over.", said],
    ]);
    const below = surveyOf([HEADS, "A1;receiver;10", "all measurements are in ft.;;"]);
    expect(runsOf(below)).toEqual([["A1", 3.048]]);
    expect(below.notes).toContain(said);
    // The head's own goes before it.
    const named = surveyOf(["All lengths in feet", "Outlet;Receiver;Run (m)", "A1;receiver;10"]);
    expect([runsOf(named), named.notes]).toEqual([
      [["A1", 10]],
      ["1 line above the head row is passed over."],
    ]);
  });

  test("estimates and ranges", () => {
    const { notes } = surveyOf([
      "Outlet;Receiver;Run (m)",
      "A1;receiver;ca. 10",
      "A2;receiver;~11",
      "A3;receiver;10 - 12",
      "A4;receiver;5",
    ]);
    expect(notes).toEqual([
      "Lines 2, 3: the runs are estimates, taken as they stand.",
      "Line 4: a range; the run is its middle, its ends are the shortest and the longest run.",
    ]);
  });

  test("runs that are more often a slip: beyond 200 m", () => {
    const told = (runs: readonly string[], unit: "m" | "ft" = "m"): readonly string[] =>
      surveyOf(
        [`Outlet;Receiver;Run (${unit})`, ...runs.map((run, index) => `A${index};receiver;${run}`)],
        undefined,
        { unit },
      ).notes;
    expect(told(["200", "201"])).toEqual(["Look again at the run of line 3 (201 m)."]);
    // 200 m are 656.17 ft.
    expect(told(["656", "657"], "ft")).toEqual(["Look again at the run of line 3 (657 ft)."]);
    expect(told(["301", "302", "303", "304", "305"])).toEqual([
      "Look again at the run of line 2 (301 m), line 3 (302 m), line 4 (303 m), line 5 (304 m), line 6 (305 m).",
    ]);
    expect(told(["301", "302", "303", "304", "305", "306"])[0]).toMatch(/line 6 \(305 m\), …\.$/);
  });

  test("one run out of all proportion, without a unit, is in another", () => {
    const survey = (...runs: string[]) =>
      surveyOf(["Outlet;Receiver;Run (m)", ...runs.map((run, index) => `A${index};receiver;${run}`)]);
    const odd = survey("10", "12", "1200");
    expect(troublesOf(odd)).toEqual([
      [4, "run: 1200 m is many times the other runs, and the cell names no unit. Write it with its unit."],
    ]);
    expect(odd.troubles[0]).toMatchObject({ id: "4", keys: ["run"] });
    expect(odd.texts["4"]).toMatchObject({ run: "1200", outlet: "A2" });
    expect(runsOf(odd)).toEqual([
      ["A0", 10],
      ["A1", 12],
    ]);
    // With its unit it is meant; so it is where others are as long, and where there are but two.
    expect(survey("10", "12", "1200 m").troubles).toEqual([]);
    expect(survey("10", "1200").troubles).toEqual([]);
    expect(survey("101", "110", "1200").troubles).toEqual([]);
    expect(survey("10", "20", "200").troubles).toEqual([]);
    expect(survey("10", "21", "210").troubles).toEqual([]);
    expect(survey("10", "20", "201").troubles).toHaveLength(1);
    expect(survey("10", "20", "201.5").troubles).toEqual([]);
  });

  test("decimal commas, of each column", () => {
    expect(surveyOf(["Outlet;Receiver;Run (m)", "A1;receiver;10,5"]).notes).toEqual([
      'The decimal commas of "run" are read as points: 10,5 is 10.5.',
    ]);
  });
});
