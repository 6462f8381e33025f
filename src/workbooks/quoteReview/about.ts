import { cautions, keyToTheMarks, madeAfter } from "../cautions";
import type { SheetDefinition } from "../definition";

export const about: SheetDefinition = {
  name: "About",
  kind: "about",
  intro: "What this workbook is for, how to fill it, what it leaves out, and the cautions.",
  print: { orientation: "portrait" },
  parts: [
    {
      kind: "text",
      heading: "Purpose",
      lines: [
        "For the office: look over a quote that somebody else made, in two minutes, before it goes out.",
        "It works the sums again from the figures on the page, holds a few ratios against your own ranges,",
        "and asks what a reader of the quote would ask.",
      ],
    },
    {
      kind: "fields",
      heading: "Versions",
      fields: [
        { name: "about_template", label: "Template", formula: '"quote review, version 1"' },
        { name: "about_functions", label: "Functions", formula: "RIG.VERSION()" },
      ],
    },
    {
      kind: "text",
      heading: "How to fill it",
      lines: [
        "On Review, type each figure as the quote or its price sheet has it; a line that is not there stays blank and says so.",
        "Each figure is worked again from the figures typed above it, so that one slip shows in one place.",
        "Put your firm's own ranges beside the ratios once, and keep the workbook. Answer the questions with yes, no or not here.",
      ],
    },
    keyToTheMarks,
    {
      kind: "text",
      heading: "What the model leaves out",
      lines: [
        "Levels, volts and user bands: those are on the estimate itself; open its Checks sheet or run the reviewer over its file.",
        "Whether quantities fit the building, and whether prices are those of the day: the questions ask, a person answers.",
      ],
    },
    cautions,
    madeAfter,
  ],
};
