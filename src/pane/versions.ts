/** Whether the pane and the functions in the sheet are of one release, and can work here at all. */
import { RIGSHEET_VERSION } from "../version";
import type { HostFacts } from "./host";

export interface Warning {
  readonly message: string;
  readonly remedy: string;
}

/** @returns what to warn of, nothing where all is well */
export const warningsOf = (facts: HostFacts): Warning[] =>
  [versionWarning(facts), spillWarning(facts)].flatMap((one) => one ?? []);

function versionWarning({ functionsVersion, kind }: HostFacts): Warning | undefined {
  if (functionsVersion === RIGSHEET_VERSION) return undefined;
  const again =
    kind === "excel"
      ? "Close Excel and open it again; if it stays, clear the add-in's cache or ask whoever installed it."
      : "Stop the local workbook and start it again with npm start.";
  return functionsVersion === undefined
    ? {
        message: "The functions do not answer.",
        remedy: `Formulas of ours show #NAME? until they do. ${again}`,
      }
    : {
        message: `The functions are version ${functionsVersion}, this pane is ${RIGSHEET_VERSION}.`,
        remedy: `Figures may differ between the two. ${again}`,
      };
}

const spillWarning = ({ spills }: HostFacts): Warning | undefined =>
  spills
    ? undefined
    : {
        message: "This Excel has no formulas that spill down a column.",
        remedy:
          "The templates cannot be worked out here. Use a later Excel, Excel on the web, or the local workbook (npm start).",
      };
