/** The pane's page in Excel. Outside Excel it opens without a host. */
import { mountPane } from "../../pane/mountPane";
import "../../pane/pane.css";
import type { Warning } from "../../pane/versions";
import { ExcelHost } from "./excelHost";
import { registerCommands } from "./ribbon";
import "./taskpane.css";
import { OFFICE_ADDRESS } from "./taskpaneHtml";

const element = (id: string): HTMLElement => document.getElementById(id)!;

/** Excel answers at once; where it does not, a blank pane would say nothing. */
const SILENCE_MS = 10_000;
const SILENT =
  "Excel has not answered this page yet. Wait a little. If it stays so, close the pane and open it again; if that does not help, start Excel again. Formulas and inputs are not touched meanwhile.";

async function isInExcel(): Promise<boolean> {
  const notice = element("notice");
  const waiting = setTimeout(() => (notice.textContent = SILENT), SILENCE_MS);
  const { host } = await Office.onReady();
  clearTimeout(waiting);
  if (notice.textContent === SILENT) notice.textContent = "";
  return host === Office.HostType.Excel;
}

/** The pane then opens as outside any host. */
const NO_OFFICE: Warning = {
  message: "office.js could not be loaded, so this pane cannot reach the workbook beside it.",
  remedy: `It comes from ${OFFICE_ADDRESS}. Look whether there is a network, or ask whoever looks after yours to allow that address; then close this pane and open it again. Formulas and inputs are not touched.`,
};

async function open(): Promise<void> {
  if (typeof Office === "undefined") {
    mountPane(element("pane"), undefined, NO_OFFICE);
    return;
  }
  if (!(await isInExcel())) {
    mountPane(element("pane"), undefined);
    return;
  }
  const host = new ExcelHost();
  registerCommands(host, element("notice"));
  mountPane(element("pane"), host);
}

void open();
