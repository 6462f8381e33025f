import { aboutSheet } from "../aboutSheet";
import { versionNow } from "../versions";

export const about = aboutSheet({
  template: `quote review, version ${versionNow("quote-review")}`,
  purpose: [
    "For the office: look over a quote that somebody else made, in two minutes, before it goes out.",
    "It works the sums again from the figures on the page, holds a few ratios against your own ranges,",
    "and asks what a reader of the quote would ask.",
  ],
  howToFill: [
    "On Review, type each figure as the quote or its price sheet has it; a line that is not there stays blank and says so.",
    "Or let it be filled from an estimate or from a typed list: on the desk New, Review of a list; by the command rigsheet new quote-review --from.",
    "Each figure is worked again from the figures typed above it, so that one slip shows in one place.",
    "Put your firm's own ranges beside the ratios once, and keep the workbook. Answer the questions with yes, no or not applicable.",
  ],
  leftOut: [
    "Levels, volts and user bands: those are on the estimate itself; open its Checks sheet or run the reviewer over its file.",
    "Whether quantities fit the building, and whether prices are those of the day: the questions ask, a person answers.",
  ],
});
