/** The pane's page in Excel. Outside Excel it opens without a host. */
import { mountPane } from "../../pane/mountPane";
import "../../pane/pane.css";
import { ExcelHost } from "./excelHost";
import { registerCommands } from "./ribbon";
import "./taskpane.css";

const element = (id: string): HTMLElement => document.getElementById(id)!;

async function open(): Promise<void> {
  // Without a network office.js is not there; the pane then opens as outside any host.
  const inExcel = typeof Office !== "undefined" && (await Office.onReady()).host === Office.HostType.Excel;
  if (!inExcel) {
    mountPane(element("pane"), undefined);
    return;
  }
  const host = new ExcelHost();
  registerCommands(host, element("notice"));
  mountPane(element("pane"), host);
}

void open();
