/**
 * The spreadsheet library with all that we register in it, each part held to what
 * it stands on (gridContract.ts); preparing it twice changes nothing.
 */
import { allFunctions } from "../../functions/all";
import { registerAsOne } from "./asOne";
import { provideGroupBy } from "./provideGroupBy";
import { registerBookFacts } from "./bookFacts";
import { registerColumnCriteria } from "./columnCriteria";
import { registerColumnOperators } from "./columnOperators";
import { registerEvaluationOrder } from "./evaluationOrder";
import { checkVersion, requireMembers, type Part } from "./gridContract";
import type { GridLibrary } from "./library";
import { registerNamesStayText } from "./namesStayText";
import { registerKnownNames } from "./knownNames";
import { translateLibraryMessages } from "./libraryMessages";
import { registerFunctions } from "./registerFunctions";
import { registerRuleRanges } from "./ruleRanges";
import { registerShownFormats } from "./shownFormats";
import { registerStyledColors } from "./styledColors";
import { registerTooDeep } from "./tooDeep";

const prepared = new WeakSet<object>();

/**
 * @param without parts that are left to the library's own way, to measure them
 * @throws GridTrouble where the library lacks what figures depend on
 */
export function prepareLibrary(library: GridLibrary, without: readonly Part[] = []): void {
  if (prepared.has(library)) return;
  const use = (part: Part, register: (library: GridLibrary) => void): void => {
    if (!without.includes(part)) requireMembers(library, part, () => register(library));
  };
  checkVersion(library);
  provideGroupBy();
  use("model", (all) => {
    registerFunctions(all, allFunctions);
    registerBookFacts(all);
    registerAsOne(all);
  });
  use("libraryMessages", translateLibraryMessages);
  use("ruleRanges", registerRuleRanges);
  use("namesStayText", registerNamesStayText);
  use("evaluationOrder", (all) => registerEvaluationOrder(all, !without.includes("keptSpills")));
  use("columnCriteria", registerColumnCriteria);
  use("columnOperators", registerColumnOperators);
  use("styledColors", registerStyledColors);
  use("shownFormats", registerShownFormats);
  use("knownNames", registerKnownNames);
  use("tooDeep", registerTooDeep);
  // Called where a model is exported, or left alone there.
  use("exportedBy", () => undefined);
  // The first model, of nothing: what is only there in one is looked for before a job is opened.
  new library.Model();
  prepared.add(library);
}
