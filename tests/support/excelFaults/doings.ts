/** Everything of the add-in that changes something in Excel, done once. */
import type { ExcelHost } from "../../../src/hosts/excel/excelHost";
import { layOut } from "../../../src/workbooks/layOut";
import { singleDrop, singleDropStart } from "../../../src/workbooks/singleDrop/definition";
import type { Book } from "../../../src/workbooks/book";
import type { SurveyRow } from "../../../src/workbooks/survey/survey";
import type { ExcelStandIn, StandInOptions } from "../excelStandIn";
import { atFirstOutlet, demonstration } from "./ground";

export interface Doing {
  readonly what: string;
  /** An empty workbook where there is none. */
  readonly open?: () => Book;
  readonly options?: StandInOptions;
  readonly prepare?: (excel: ExcelStandIn) => Promise<void> | void;
  readonly act: (host: ExcelHost) => Promise<unknown>;
}

const small = (): Book => layOut(singleDrop, singleDropStart);
/** More than there is room for, so that rows must be added. */
const survey: readonly SurveyRow[] = Array.from({ length: 12 }, (_, index) => ({
  outlet: `S-${index}`,
  run: 10 + index,
}));

export const DOINGS: readonly Doing[] = [
  { what: "rows added", open: demonstration, prepare: atFirstOutlet, act: (host) => host.addRows(3) },
  { what: "a survey added", open: demonstration, act: (host) => host.addOutlets(survey) },
  {
    what: "a workbook's sheets inserted",
    act: (host) => host.startHere({ book: small() }),
  },
  {
    what: "a workbook built",
    options: { inserting: "refused" },
    act: (host) => host.startHere({ book: small() }),
  },
  {
    what: "formulas entered again",
    open: small,
    prepare: (excel) => void excel.state.forgetOurs(),
    act: (host) => host.enterOursAgain(),
  },
  {
    what: "a formula entered",
    prepare: (excel) => excel.choose("Sheet1", "B2"),
    act: (host) => host.enterFormula("RIG.RAYHEIGHT(10,45)"),
  },
  { what: "the pane opens with the workbook", act: (host) => host.openingOfPane.keep(true) },
  { what: "a copy handed over", open: small, act: (host) => host.handOverCopy("sealed") },
  { what: "another workbook handed over", act: (host) => host.handOverBook(small()) },
];
