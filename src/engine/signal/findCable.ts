/** A cable by its name: the user's own table counts before the built-in types. */
import { faults, type Fault } from "../faults";
import { BUILT_IN_CABLES, builtInCable, namesIn, type Cable, type CableBook } from "./cable";
import { nameKey } from "./nameKey";

/**
 * @param name compared without case and surplus blanks
 * @param own the user's cables, if any
 * @returns the cable; a fault when the name is unknown or its row is not usable
 */
export function findCable(name: string, own?: CableBook): Cable | Fault {
  return (
    own?.get(nameKey(name)) ??
    builtInCable(name) ??
    faults.unknownCable(name, [...(own ? namesIn(own) : []), ...BUILT_IN_CABLES])
  );
}
