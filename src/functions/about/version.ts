import { isFault } from "../../engine/faults";
import { RIGSHEET_VERSION } from "../../version";
import { BLANKS_AS_ZERO } from "../core/blanksAsZero";
import { declare } from "../core/declare";
import { list, number, optional } from "../core/parameters";

export const version = declare({
  name: "VERSION",
  group: "About",
  summary: "The version of these functions, and whether blank cells reach them as blanks.",
  parameters: [
    // As a whole: of one value a row, a blank row would stay blank.
    optional(
      list(
        number({
          name: "blank",
          help: "A cell that is blank. Some versions of Excel hand it over as 0, which is then said.",
          min: 0,
          max: 0,
        }),
      ),
    ),
  ],
  result: {
    shape: "cell",
    help: `Version as text, such as 1.2.3; behind it “, ${BLANKS_AS_ZERO}” where the blank cell came as 0.`,
  },
  equation: "The version of the package that holds the functions.",
  source: "package.json of the release",
  accuracy: "Exact.",
  tasks: [
    "Which version of the functions worked this workbook out?",
    "Does this program tell blank cells from zeros?",
  ],
  examples: [{ formula: "RIG.VERSION()", result: RIGSHEET_VERSION, source: "package.json of the release" }],
  seeAlso: [],
  compute: (blank) =>
    blank?.find(isFault) ??
    (blank?.includes(0) ? `${RIGSHEET_VERSION}, ${BLANKS_AS_ZERO}` : RIGSHEET_VERSION),
});
