/** The spreadsheet library with all that we register in it; preparing it twice changes nothing. */
import { allFunctions } from "../../functions/all";
import { registerBookFacts } from "./bookFacts";
import { registerColumnCriteria } from "./columnCriteria";
import { registerColumnOperators } from "./columnOperators";
import { registerInOrder } from "./inOrder";
import type { GridLibrary } from "./library";
import { registerNamesStayText } from "./namesStayText";
import { sayPlainly } from "./plainWords";
import { registerFunctions } from "./registerFunctions";
import { registerRuleRanges } from "./ruleRanges";
import { registerStyledColors } from "./styledColors";
import { registerTooDeep } from "./tooDeep";

const prepared = new WeakSet<object>();

export function prepareLibrary(library: GridLibrary): void {
  if (prepared.has(library)) return;
  prepared.add(library);
  sayPlainly(library);
  registerFunctions(library, allFunctions);
  registerBookFacts(library);
  registerRuleRanges(library);
  registerNamesStayText(library);
  registerInOrder(library);
  registerColumnCriteria(library);
  registerColumnOperators(library);
  registerStyledColors(library);
  registerTooDeep(library);
}
