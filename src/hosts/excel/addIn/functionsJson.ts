import { allFunctions } from "../../../functions/all";
import { functionMetadata } from "../functionMetadata";
import { addresses } from "./facts";

/** Excel's function metadata, with a help link for each function. */
export const functionsJson = (address: string): string =>
  `${JSON.stringify(functionMetadata(allFunctions, addresses(address).helpFolder), null, 2)}\n`;
