/** The page of a trial as a workbook, to save or print. */
import { ASKED_OF_YOU, LIMITS, RULES, summaryOfTrial, type Trial } from "../../../pane/trial";
import { RIGSHEET_VERSION } from "../../../version";
import type { Book } from "../../../workbooks/book";
import type { Table } from "../../../workbooks/definition";
import { layOut } from "../../../workbooks/layOut";

const VERDICT = 10;
const WHAT = 30;
const FOUND = 52;
const READ = 56;
const TIME = 8;

export function trialBook(trial: Trial): Book {
  const tables: Omit<Table, "kind">[] = [
    {
      heading: "Found",
      columns: [
        { head: "Verdict", width: VERDICT },
        { head: "What", width: WHAT, wrap: true },
        { head: "Found", width: FOUND, wrap: true },
        { head: "Read back, as it was read", width: READ, wrap: true },
        { head: "ms", width: TIME },
      ],
      rows: trial.lines.map(({ what, verdict, found, read, milliseconds }) => [
        verdict,
        what,
        found,
        read ?? "",
        milliseconds ?? "",
      ]),
    },
    {
      heading: "Program",
      columns: [
        { head: "", width: VERDICT },
        { head: "Fact", width: WHAT, wrap: true },
        { head: "Value", width: FOUND, wrap: true },
      ],
      rows: [
        ["", "Begun", `${trial.began} (UTC), ${trial.seconds} seconds`],
        ...trial.facts.map(([name, value]) => ["", name, value]),
      ],
    },
    {
      heading: "For a person to look at: not run by the program",
      columns: [
        { head: "Seen", width: VERDICT },
        { head: "", width: WHAT },
        { head: "Question", width: FOUND, wrap: true },
      ],
      rows: ASKED_OF_YOU.map((question) => ["", "", question]),
    },
    {
      heading: "How it is judged",
      columns: [
        { head: "", width: VERDICT },
        { head: "", width: WHAT },
        { head: "Rule", width: FOUND, wrap: true },
      ],
      rows: [...LIMITS, ...RULES].map((rule) => ["", "", rule]),
    },
  ];
  return layOut({
    id: "",
    title: "An Excel tried",
    version: "",
    sheets: [
      {
        name: "Trial",
        kind: "print",
        intro: `Rigsheet ${RIGSHEET_VERSION}. ${summaryOfTrial(trial)}`,
        print: { orientation: "landscape" },
        parts: tables.map((table) => ({ kind: "table", ...table })),
      },
    ],
  });
}
