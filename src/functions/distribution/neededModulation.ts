/** What a slot's modulation and code need, from words such as "8PSK 2/3" or "DVB-S QPSK 3/4". */
import { faults, isFault, type Fault } from "../../engine/faults";
import type { Decibels } from "../../engine/quantity";
import { DVB_STANDARDS, MODULATIONS, neededCarrierToNoise } from "../../engine/signal/neededCarrierToNoise";
import { choice } from "../core/parameters";

const standard = choice({ name: "standard", help: "", choices: DVB_STANDARDS });
const modulation = choice({ name: "modulation", help: "", choices: MODULATIONS });

/** @returns dB, without any margin */
export function neededModulation(typed: string): Decibels | Fault {
  const words = typed.split(/\s+/);
  const given = standard.read(words[0]!);
  const [mode, rate, ...more] = isFault(given) ? words : words.slice(1);
  if (mode === undefined || rate === undefined || more.length > 0) return faults.modulationNotRead(typed);
  const read = modulation.read(mode);
  if (isFault(read)) return faults.modulationNotRead(typed);
  const needed = neededCarrierToNoise(isFault(given) ? "DVB-S2" : given, read, rate);
  return isFault(needed) ? faults.modulationUnknown(typed, needed) : needed;
}
