/**
 * Whether the receiver of each outlet can command its head unit, and if not,
 * what stands in the way.
 *
 * A head unit of EN 50494 or EN 50607 is commanded by a rise from 13 to 18 V
 * and bursts of 22 kHz: every port on the way must pass the supply towards it,
 * while one commands at least 15.5 V must arrive, and with all at rest at most
 * 15 V may stand. A kind of its maker's own standard is commanded as its two
 * facts say. One whose maker says nothing is not judged.
 *
 * Source: EN 50494 for rise and bursts; that 13 and 18 V are told apart at 15 to
 *   15.5 V from a source that others saw.
 * Accuracy: that of the volts; tone and bursts themselves are not modelled.
 */
import type { Volts } from "../quantity";
import { canUse } from "./bandPlan";
import type { HeadUnitKind, ReceiverKind } from "./parts";
import { ownWay, portWay, throughPort, type Way } from "./supplyNodes";
import type { OutletSupply } from "./supplyOfOutlets";
import { deviceAt, LEAD, OUTPUT, type Tree } from "./tree";

export const LEAST_COMMAND_VOLTS: Volts = 15.5;
export const MOST_REST_VOLTS: Volts = 15;

export type CommandVerdict =
  | { readonly can: "yes" }
  /** The maker does not say how the head unit is commanded, or the supply has a fault of its own. */
  | { readonly can: "not judged" }
  /** The two speak different standards. */
  | { readonly can: "no"; readonly because: "standard" }
  /** The point of the part that does not pass what has to pass, the outlet's own for its wall plate or splitter. */
  | {
      readonly can: "no";
      readonly because: "blocked";
      readonly point: number;
      readonly what: "power" | "commands";
    }
  | {
      readonly can: "no";
      readonly because: "too little while commanding" | "too much at rest";
      readonly volts: Volts;
    };

/** @returns by row of the outlets; null for a spare one and for a bad row */
export function commandVerdicts(tree: Tree, supply: OutletSupply): (CommandVerdict | null)[] {
  const { job, row, output, pointOfOutlet } = tree;
  const blocking = blockedAbove(tree);
  return job.outlets.map(({ receiver }, outlet) => {
    const point = pointOfOutlet[outlet]!;
    if (!receiver || point < 0) return null;
    const { kind } = job.headUnits[row[output[point]!]!]!;
    return verdict(tree, kind, receiver, blocking(point), {
      commanding: supply.outputCommanding[outlet]!,
      resting: supply.outputResting[outlet]!,
    });
  });
}

interface Blocking {
  /** Point of the part nearest to the receiver that blocks the supply towards the head unit; -1 for none. */
  readonly supply: number;
  /** The same that does not pass commands. */
  readonly commands: number;
}

function verdict(
  tree: Tree,
  kind: HeadUnitKind,
  receiver: ReceiverKind,
  blocked: Blocking,
  at: { readonly commanding: Volts; readonly resting: Volts },
): CommandVerdict {
  if (kind.standard === null) return { can: "not judged" };
  if (!canUse(receiver.standard, kind.standard) && !canUse(kind.standard, receiver.standard))
    return { can: "no", because: "standard" };
  const no = (point: number, what: "power" | "commands" = "power"): CommandVerdict => ({
    can: "no",
    because: "blocked",
    point,
    what,
  });
  if (blocked.commands >= 0) return no(blocked.commands, "commands");
  if (kind.standard === "maker's own") {
    if (kind.commandsPassBlock === null) return { can: "not judged" };
    if (!kind.commandsPassBlock && blocked.supply >= 0) return no(blocked.supply);
    return kind.deafAbove !== null && at.resting > kind.deafAbove
      ? { can: "no", because: "too much at rest", volts: at.resting }
      : { can: "yes" };
  }
  const isDrowned = at.resting > MOST_REST_VOLTS;
  // Where a supply in the line is what blocks, its volts are the matter.
  if (blocked.supply >= 0 && !(isDrowned && isSupply(tree, blocked.supply))) return no(blocked.supply);
  if (Number.isNaN(at.resting) || Number.isNaN(at.commanding)) return { can: "not judged" };
  if (isDrowned) return { can: "no", because: "too much at rest", volts: at.resting };
  return at.commanding < LEAST_COMMAND_VOLTS
    ? { can: "no", because: "too little while commanding", volts: at.commanding }
    : { can: "yes" };
}

const isSupply = (tree: Tree, point: number): boolean =>
  tree.kind[point] === LEAD || deviceAt(tree, point)?.kind === "inserter";

/** @returns what blocks the way of an outlet, each point looked at once */
function blockedAbove(tree: Tree): (point: number) => Blocking {
  const { count, parent, port, job, row } = tree;
  const supply = new Int32Array(count).fill(-1);
  const commands = new Int32Array(count).fill(-1);
  const blocks = ({ passes }: Way): boolean => passes === "nothing" || passes === "from the parent";
  for (let point = 0; point < count; point++) {
    const above = parent[point]!;
    if (above < 0) continue;
    supply[point] = blocks(ownWay(tree, point))
      ? point
      : blocks(portWay(tree, above, port[point]!))
        ? above
        : supply[above]!;
    commands[point] = deviceAt(tree, point)?.passesCommands === false ? point : commands[above]!;
  }
  return (point) => {
    if (tree.kind[point] === OUTPUT) return { supply: -1, commands: -1 };
    const { plate, split } = job.outlets[row[point]!]!;
    const own =
      (plate && blocks(throughPort(plate.power, 1, plate.through !== null))) ||
      (split && blocks(throughPort(split.power, 1, split.through !== null)));
    return {
      supply: own ? point : supply[point]!,
      commands: split && !split.passesCommands ? point : commands[point]!,
    };
  };
}
