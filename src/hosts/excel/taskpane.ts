/** The pane's page in Excel. Outside Excel it opens without a host. */
import { mountPane } from "../../pane/mountPane";
import "../../pane/pane.css";
import { ExcelHost } from "./excelHost";
import { registerCommands } from "./ribbon";
import "./taskpane.css";

const element = (id: string): HTMLElement => document.getElementById(id)!;

/** Excel answers at once; where it does not, a blank pane would say nothing. */
const SILENCE_MS = 10_000;
const SILENT =
  "Excel has not answered this page yet. Wait a little. If it stays so, close the pane and open it again; if that does not help, start Excel again. Formulas and inputs are not touched meanwhile.";

async function isInExcel(): Promise<boolean> {
  // Without a network office.js is not there; the pane then opens as outside any host.
  if (typeof Office === "undefined") return false;
  const notice = element("notice");
  const waiting = setTimeout(() => (notice.textContent = SILENT), SILENCE_MS);
  const { host } = await Office.onReady();
  clearTimeout(waiting);
  if (notice.textContent === SILENT) notice.textContent = "";
  return host === Office.HostType.Excel;
}

async function open(): Promise<void> {
  if (!(await isInExcel())) {
    mountPane(element("pane"), undefined);
    return;
  }
  const host = new ExcelHost();
  registerCommands(host, element("notice"));
  mountPane(element("pane"), host);
}

void open();
