/** Whether the pane and the functions in the sheet are of one release. */
import { RIGSHEET_VERSION } from "../version";
import type { HostFacts } from "./host";

/** @returns the warning, or undefined where all is well */
export function versionWarning({ functionsVersion, kind }: HostFacts): string | undefined {
  if (functionsVersion === RIGSHEET_VERSION) return undefined;
  const again =
    kind === "excel"
      ? "Close Excel and open it again; if it stays, clear the add-in's cache or ask whoever installed it."
      : "Stop the local workbook and start it again with npm start.";
  return functionsVersion === undefined
    ? `The functions do not answer, so formulas of ours show #NAME?. ${again}`
    : `The functions are version ${functionsVersion}, this pane is ${RIGSHEET_VERSION}. Figures may differ between the two. ${again}`;
}

export const spillWarning = ({ spills }: HostFacts): string | undefined =>
  spills
    ? undefined
    : "This Excel has no formulas that spill down a column, so the templates cannot be worked out here. Use a later Excel, Excel on the web, or the local workbook (npm start).";
