import { RIGSHEET_VERSION } from "../../version";
import { declare } from "../core/declare";

export const version = declare({
  name: "VERSION",
  group: "About",
  summary: "The version of these functions, to note in a workbook.",
  parameters: [],
  result: { shape: "cell", help: "Version as text, such as 1.2.3." },
  equation: "The version of the package that holds the functions.",
  source: "package.json of the release",
  accuracy: "Exact.",
  tasks: ["Which version of the functions worked this workbook out?"],
  examples: [{ formula: "RIG.VERSION()", result: RIGSHEET_VERSION, source: "package.json of the release" }],
  seeAlso: [],
  compute: () => RIGSHEET_VERSION,
});
