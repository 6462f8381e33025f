/** What does not hold of the supply: volts too low or standing where they must not, currents beyond a limit. */
import { faults } from "../faults";
import type { Volts } from "../quantity";
import type { Distribution } from "./distribution";
import type { Finding, RowOf } from "./finding";
import { portWay, type SupplySourceOf } from "./supplyNodes";
import { PRODUCT_OPTIONS } from "./supplyStates";
import { feedsInAt, nameOf, OUTLET, type Tree } from "./tree";

/** Between a limit and what is said to be beyond it: less than anyone measures. */
export const SLIGHT = 1e-3;

export function supplyFindings(found: Distribution): Finding[] {
  return [
    ...brokenCircuits(found),
    ...headUnitVolts(found),
    ...feedVolts(found),
    ...amplifierVolts(found),
    ...receiverVolts(found),
    ...resistors(found),
    ...currents(found),
  ];
}

const outlet = (row: number): RowOf => ({ list: "outlets", row });
const device = (row: number): RowOf => ({ list: "devices", row });

/** A cable without loop resistance, or a state without an operating point: said at the head units that it leaves in doubt. */
function brokenCircuits({ tree: { job }, nodes, supply }: Distribution): Finding[] {
  return [...supply.faults].flatMap(([circuit, fault]): Finding[] => {
    const heads = job.headUnits.flatMap((_, row): RowOf[] =>
      nodes.circuit[nodes.common[row]!] === circuit ? [{ list: "headUnits", row }] : [],
    );
    const outlets = nodes.receivers.flatMap((one): RowOf[] =>
      nodes.circuit[one.node] === circuit ? [outlet(one.outlet)] : [],
    );
    const rows = heads.length > 0 ? heads : outlets;
    return rows.length > 0 ? [{ check: "head unit volts", rows, fault }] : [];
  });
}

function headUnitVolts({ tree: { job }, trunks, supply }: Distribution): Finding[] {
  const handsOn = new Set(trunks.inlets.flatMap((some) => some.map(({ above }) => above)));
  return supply.headUnits.flatMap(
    ({ allOff, allOn, leastAlone, alone, fedWithoutReceivers }, head): Finding[] => {
      const { name, kind } = job.headUnits[head]!;
      // What should power a switch through its feeders is not known then.
      if (kind.sits === "fed" && trunks.headFaults[head]) return [];
      const least = kind.leastVolts - SLIGHT;
      const low = [...alone].filter(([, volts]) => volts < least).map(([row]) => outlet(row));
      const when = (volts: Volts, words: string): Finding => ({
        check: "head unit volts",
        rows: [{ list: "headUnits", row: head }, ...low],
        fault: faults.headUnitVolts(name, volts, kind.leastVolts, words),
      });
      // Without a supply nothing is to work while all are off.
      if (fedWithoutReceivers && allOff.volts < least) return [when(allOff.volts, "with all receivers off")];
      if (leastAlone && leastAlone.volts < least) {
        const row = String(job.outlets[leastAlone.outlet]!.name);
        return [when(leastAlone.volts, `with the receiver of "${row}" on alone`)];
      }
      // One without receivers of its own works only for those that it hands on to.
      const isUsed = leastAlone !== null || handsOn.has(head);
      return isUsed && allOn.volts < least ? [when(allOn.volts, "with all receivers on")] : [];
    },
  );
}

function feedVolts({ tree: { job }, nodes, supply }: Distribution): Finding[] {
  return nodes.feeds.flatMap(({ dish, slot, head }, index): Finding[] => {
    const { name, feed } = job.dishes[dish]!;
    const volts = supply.feedLeast[index]!;
    if (!feed || !(volts < feed.leastVolts - SLIGHT)) return [];
    return [
      {
        check: "feed volts",
        rows: [{ list: "dishes", row: dish }],
        fault: faults.feedVolts(name, slot, job.headUnits[head]!.name, volts, feed.leastVolts),
      },
    ];
  });
}

function amplifierVolts({ tree, supply }: Distribution): Finding[] {
  return tree.job.devices.flatMap(({ name, part: { amplifier } }, row): Finding[] => {
    const volts = supply.amplifierLeast[row]!;
    if (!amplifier || !(volts < amplifier.leastVolts - SLIGHT)) return [];
    const blockedBy = volts < PRODUCT_OPTIONS.leastVolts ? blockingAbove(tree, row) : null;
    const fault = faults.amplifierVolts(String(name), volts, amplifier.leastVolts, blockedBy);
    return [{ check: "amplifier volts", rows: [device(row)], fault }];
  });
}

/** @returns the name of the part that keeps the supplies above an amplifier from it; null where there is none */
function blockingAbove(tree: Tree, device: number): string | null {
  const { parent, port } = tree;
  let blocking = -1;
  for (let point = tree.pointOfDevice[device]!; parent[point]! >= 0; point = parent[point]!) {
    const above = parent[point]!;
    const { passes } = portWay(tree, above, port[point]!);
    const passesDown = passes === "both ways" || passes === "from the parent";
    if (blocking < 0 && !passesDown) blocking = above;
    if (blocking >= 0 && feedsInAt(tree, above)) return nameOf(tree, blocking);
  }
  return null;
}

function receiverVolts(found: Distribution): Finding[] {
  const { tree, nodes, supply } = found;
  const highest = new Map<number, SupplySourceOf>();
  for (const source of nodes.sources) {
    const circuit = nodes.circuit[source.node]!;
    if (source.volts > (highest.get(circuit)?.volts ?? 0)) highest.set(circuit, source);
  }
  const seen = new Set<number>();
  return nodes.receivers.flatMap(({ outlet: row, node }): Finding[] => {
    const { name, receiver } = tree.job.outlets[row]!;
    const volts = Math.max(supply.fromSupplies[row]!, supply.standing[row]!);
    if (seen.has(row) || !(volts > receiver!.bearsVolts + SLIGHT)) return [];
    seen.add(row);
    const source = highest.get(nodes.circuit[node]!);
    const fault = faults.receiverVolts(
      String(name),
      volts,
      receiver!.bearsVolts,
      source ? supplyName(found, source) : null,
    );
    return [{ check: "volts on a receiver", rows: [outlet(row)], fault }];
  });
}

function resistors({ tree, nodes, supply }: Distribution): Finding[] {
  return nodes.resistors.flatMap(({ point, ohms }, index): Finding[] => {
    const volts = supply.resistorMost[index]!;
    if (!(volts > SLIGHT)) return [];
    const list = tree.kind[point] === OUTLET ? "outlets" : "devices";
    const row = tree.row[point]!;
    return [
      {
        check: "end resistor on power",
        rows: [{ list, row }],
        fault: faults.resistorOnPower(nameOf(tree, point), volts, (volts * volts) / ohms),
      },
    ];
  });
}

function currents(found: Distribution): Finding[] {
  const { tree, nodes, supply } = found;
  const { job } = tree;
  /** Circuits in which one supply is fed by another: what flows there follows from that. */
  const backwards = new Set<number>();
  const follows = (node: number): boolean => backwards.has(nodes.circuit[node]!);
  const ofSupplies = nodes.sources.flatMap((source, index): Finding[] => {
    const rows: RowOf[] = [
      source.head >= 0 ? { list: "headUnits", row: source.head } : device(source.device),
    ];
    const what = supplyName(found, source).replace(/^t/, "T");
    const most = supply.supplyMost[index]!;
    const least = supply.supplyLeast[index]!;
    const limit = source.mostAmperes;
    if (least < -SLIGHT) {
      const circuit = nodes.circuit[source.node]!;
      const other = highestIn(found, circuit);
      backwards.add(circuit);
      return [{ check: "current", rows, fault: faults.fedBackwards(what, source.volts, -least, other) }];
    }
    if (limit !== null && most > limit + SLIGHT)
      return [{ check: "current", rows, fault: faults.tooMuchCurrent(what, most, limit) }];
    return most < SLIGHT ? [{ check: "supply without use", rows, fault: faults.feedsNothing(what) }] : [];
  });
  const ofDevices = job.devices.flatMap(({ name, part }, row): Finding[] => {
    const limit = part.power.mostAmperes;
    const most = supply.deviceMost[row]!;
    if (limit === null || !(most > limit + SLIGHT) || follows(nodes.ofPoint[tree.pointOfDevice[row]!]!))
      return [];
    return [
      {
        check: "current",
        rows: [device(row)],
        fault: faults.tooMuchCurrent(`"${String(name)}"`, most, limit),
      },
    ];
  });
  const ofReceivers = job.outlets.flatMap(({ name, receiver }, row): Finding[] => {
    const most = supply.given[row]!;
    if (!receiver || !(most > receiver.mostAmperes + SLIGHT) || follows(nodes.connector[row]!)) return [];
    const what = `The receiver of "${String(name)}"`;
    return [
      {
        check: "current",
        rows: [outlet(row)],
        fault: faults.tooMuchCurrent(what, most, receiver.mostAmperes),
      },
    ];
  });
  return [...ofSupplies, ...ofDevices, ...ofReceivers];
}

/** @returns the highest volts of any supply or commanding receiver of a circuit */
const highestIn = ({ tree: { job }, nodes }: Distribution, circuit: number): Volts =>
  Math.max(
    ...nodes.sources.flatMap(({ node, volts }) => (nodes.circuit[node] === circuit ? volts : [])),
    ...nodes.receivers.flatMap(({ node, outlet }) => {
      const { restVolts, commandVolts } = job.outlets[outlet]!.receiver!;
      return nodes.circuit[node] === circuit ? Math.max(restVolts, commandVolts) : [];
    }),
  );

const supplyName = ({ tree: { job } }: Distribution, { head, device }: SupplySourceOf): string =>
  head >= 0 ? `the supply of "${job.headUnits[head]!.name}"` : `"${String(job.devices[device]!.name)}"`;
