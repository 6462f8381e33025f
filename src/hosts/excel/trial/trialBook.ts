/** The page of a trial as a workbook, to save or print. */
import { ASKED_OF_YOU, summaryOfTrial, type Trial } from "../../../pane/trial";
import { RIGSHEET_VERSION } from "../../../version";
import type { Book } from "../../../workbooks/book";
import type { Table } from "../../../workbooks/definition";
import { layOut } from "../../../workbooks/layOut";

const WIDE = 78;

export function trialBook(trial: Trial): Book {
  const tables: Omit<Table, "kind">[] = [
    {
      heading: "Found",
      columns: [
        { head: "Verdict", width: 10 },
        { head: "What", width: 34, wrap: true },
        { head: "Read back", width: WIDE, wrap: true },
      ],
      rows: trial.lines.map(({ what, verdict, found }) => [verdict, what, found]),
    },
    {
      heading: "Program",
      columns: [
        { head: "Fact", width: 10, wrap: true },
        { head: "Value", width: 34, wrap: true },
      ],
      rows: trial.facts.map(([name, value]) => [name, value]),
    },
    {
      heading: "Not run: for a person to look at",
      columns: [
        { head: "Seen", width: 10 },
        { head: "Question", width: 34, wrap: true },
      ],
      rows: ASKED_OF_YOU.map((question) => ["", question]),
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
        intro: `Rigsheet ${RIGSHEET_VERSION}. ${summaryOfTrial(trial)} Begun ${trial.began}, ${trial.seconds} seconds. It says what this one Excel did at this one time; it is no certificate.`,
        print: { orientation: "landscape" },
        parts: tables.map((table) => ({ kind: "table", ...table })),
      },
    ],
  });
}
