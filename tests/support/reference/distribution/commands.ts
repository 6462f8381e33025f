/**
 * Whether a receiver's commands come to its head unit, and what stops them.
 *
 * EN 50494 and EN 50607: everything on the way passes direct current towards the head unit and passes commands; at the
 * head unit's output stand at most 15 V with all at rest and at least 15.5 V while the receiver commands. A maker's own
 * way: nothing on the way stops commands, nor a DC block unless the kind says that they pass one, and no more volts stand
 * at the output than it says. A kind that does not say how it is commanded, or not whether they pass a block, is not judged.
 */
import { isFilled } from "../job";
import { howMany, receiverOf } from "./bands";
import { statesFor, type State, type States } from "./supply";
import { numberIn, wordIn, type Tables } from "./tables";
import { stepsToReceiver, type Thing } from "./tree";

const REST_MOST = 15;
const COMMAND_LEAST = 15.5;
/** What two solves of the same circuit may differ by. */
const EXACT = 1e-6;

export interface Commands {
  readonly word: "ok" | "dead" | "not judged";
  /** The device, plate or head unit that stops them, or the volts at the output. */
  readonly by: string | undefined;
}

/** @returns nothing for a spare outlet */
export function commandsOf(tables: Tables, outlet: Thing, states: States): Commands | undefined {
  const receiver = receiverOf(tables, outlet.row);
  if (!receiver) return undefined;
  const { kind } = outlet.head;
  const standard = wordIn(kind, "standard");
  if (standard === "") return { word: "not judged", by: undefined };
  const isOwn = (word: string): boolean => word === "maker's own";
  if (isOwn(standard) !== isOwn(receiver.standard)) return { word: "dead", by: "standard" };
  const ports = Array.from({ length: howMany(outlet.row) }, (_, index) => index + 1);
  const steps = ports.flatMap((port) => stepsToReceiver(outlet, port));
  const stop = steps.find(({ commands }) => !commands);
  const block = steps.find(({ passage }) => passage.way === "none");
  const volts = (state: State | undefined): number => state?.outputVolts(outlet) ?? 0;
  const commanding = Math.min(...statesFor(outlet, states.commanding).map(({ state }) => volts(state)));
  if (isOwn(standard)) {
    if (stop) return { word: "dead", by: stop.of };
    const passes = wordIn(kind, "pass_block");
    if (passes === "") return { word: "not judged", by: undefined };
    if (block && passes === "no") return { word: "dead", by: block.of };
    const most = Math.max(volts(states.off), volts(states.allOn), commanding);
    if (isFilled(kind, "hears_to") && most > numberIn(kind, "hears_to") + EXACT)
      return { word: "dead", by: `${most} V` };
    return { word: "ok", by: undefined };
  }
  const stopping = steps.find(({ commands, passage }) => !commands || passage.way === "none");
  if (stopping) return { word: "dead", by: stopping.of };
  const rest = volts(states.allOn);
  if (rest > REST_MOST + EXACT) return { word: "dead", by: `${rest} V` };
  if (commanding < COMMAND_LEAST - EXACT) return { word: "dead", by: `${commanding} V` };
  return { word: "ok", by: undefined };
}
