/**
 * What both manifests say: one set of facts for the XML and the JSON form, so
 * that a name, an address or an id stands in one place.
 */
import { NAMESPACE } from "../../../formula/namespace";
import { COMMANDS } from "../commands";
import { ADD_IN_ID, RIGSHEET_VERSION } from "../../../version";

/** Where the add-in is served while it is tried out on one's own computer. */
export const LOCAL_ADDRESS = "https://localhost:3000";

/** Stands for an office's own; nobody has it (RFC 2606). */
export const EXAMPLE_ADDRESS = "https://addins.example.com/rigsheet";

/** The view that a workbook may open ([MS-OWEMXML] 2.2.59, TaskpaneId). */
export const PANE_ID = "Office.AutoShowTaskpaneWithDocument";

export const ICON_SIZES = [16, 20, 24, 32, 40, 48, 64, 80] as const;

interface RibbonButton {
  readonly id: string;
  readonly label: string;
  readonly tip: string;
  /** Absent for the button that opens the pane. */
  readonly command?: (typeof COMMANDS)[keyof typeof COMMANDS];
}

export const BUTTONS: readonly RibbonButton[] = [
  {
    id: "OpenPane",
    label: "Rigsheet pane",
    tip: "Start a workbook, find a function, check this workbook, see how a cell was calculated.",
  },
  {
    id: "AddRow",
    label: "Add a row",
    tip: "Adds a row to the block of the chosen cell, and to the blocks that follow it on other sheets.",
    command: COMMANDS.addRow,
  },
  {
    id: "EnterAgain",
    label: "Repair formulas",
    tip: "Enters every Rigsheet formula again where it stands at #NAME?.",
    command: COMMANDS.enterAgain,
  },
  {
    id: "OpenHelp",
    label: "Help",
    tip: "Opens the help of all functions in the browser: units, limits, equations, sources, examples.",
    command: COMMANDS.help,
  },
];

export const TEXTS = {
  name: "Rigsheet",
  provider: "Rigsheet",
  short: "Plans and prices multi-room single-cable satellite reception jobs.",
  long: "Worksheet functions and template workbooks for people who plan, price, check and commission multi-room single-cable satellite reception: look angles, levels, supply voltage, user bands, materials and price, a row for each outlet.",
  startedTitle: "Rigsheet is ready",
  started: "Choose Rigsheet pane on the Home tab to start a workbook, or type =RIG. in a cell.",
  group: "Rigsheet",
} as const;

/** @param address where the add-in is served, without a slash at its end */
export const addresses = (address: string) => ({
  page: `${address}/taskpane.html`,
  script: `${address}/functions.js`,
  metadata: `${address}/functions.json`,
  helpFolder: `${address}/help`,
  help: `${address}/help/index.html`,
  support: `${address}/support.html`,
  icon: (size: number) => `${address}/icons/icon-${size}.png`,
});

export { ADD_IN_ID, NAMESPACE, RIGSHEET_VERSION };
