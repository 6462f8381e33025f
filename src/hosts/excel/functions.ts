/** The functions bundle: registers every sheet function when Excel loads the add-in. */
import { allFunctions } from "../../functions/all";
import { RIGSHEET_VERSION } from "../../version";
import { associateAll } from "./associate";
import { noteFunctionsVersion } from "./functionsVersion";

// In a browser outside Excel there is nothing to register with.
if (typeof CustomFunctions !== "undefined") {
  associateAll(allFunctions);
  noteFunctionsVersion(RIGSHEET_VERSION);
}
