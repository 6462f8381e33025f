/** What does not hold of rows by themselves: commands, connectors, open ports, user bands. */
import { faults, isFault, type Fault } from "../faults";
import type { Volts } from "../quantity";
import { canUse, WIDTH_PER_SYMBOL_RATE, type BandPlan } from "./bandPlan";
import { LEAST_COMMAND_VOLTS, MOST_REST_VOLTS, type CommandVerdict } from "./commands";
import type { Distribution } from "./distribution";
import type { Finding } from "./finding";
import { THROUGH } from "./ports";
import { nameOf, OUTLET, type Tree } from "./tree";

export const rowFindings = (found: Distribution): Finding[] => [
  ...commands(found),
  ...connectors(found.tree),
  ...openPorts(found.tree),
  ...userBands(found),
];

const headOf = ({ job, row, output, pointOfOutlet }: Tree, outlet: number) =>
  job.headUnits[row[output[pointOfOutlet[outlet]!]!]!]!;

function commands(found: Distribution): Finding[] {
  const highest = highestAtRest(found);
  return found.commands.flatMap((verdict, row): Finding[] =>
    verdict?.can === "no"
      ? [{ check: "commands", rows: [{ list: "outlets", row }], fault: said(found, row, verdict, highest) }]
      : [],
  );
}

interface Standing {
  readonly volts: Volts;
  readonly from: string;
}

function said(
  { tree, nodes }: Distribution,
  row: number,
  verdict: CommandVerdict & { can: "no" },
  highest: ReadonlyMap<number, Standing>,
): Fault {
  const { name, receiver } = tree.job.outlets[row]!;
  const { name: head, kind } = headOf(tree, row);
  const outlet = String(name);
  switch (verdict.because) {
    case "standard":
      return faults.commandStandard(outlet, receiver!.standard, head, kind.standard!);
    case "blocked":
      return faults.commandBlocked(outlet, head, nameOf(tree, verdict.point), verdict.what);
    case "too little while commanding":
      return faults.commandWeak(outlet, head, verdict.volts, LEAST_COMMAND_VOLTS);
    case "too much at rest": {
      const output = nodes.ofPoint[tree.output[tree.pointOfOutlet[row]!]!]!;
      const { from, volts } = highest.get(nodes.circuit[output]!)!;
      const limit = kind.deafAbove ?? MOST_REST_VOLTS;
      return faults.commandDrowned(outlet, head, verdict.volts, limit, `${from} with ${volts} V`);
    }
  }
}

/** @returns by circuit what stands highest in it while all receivers rest: a supply, or one of them */
function highestAtRest({ tree: { job }, nodes }: Distribution): ReadonlyMap<number, Standing> {
  const highest = new Map<number, Standing>();
  const note = (node: number, volts: Volts, from: () => string): void => {
    const circuit = nodes.circuit[node]!;
    if (volts > (highest.get(circuit)?.volts ?? 0)) highest.set(circuit, { volts, from: from() });
  };
  for (const { node, volts, head, device } of nodes.sources)
    note(node, volts, () =>
      head >= 0 ? `the supply of "${job.headUnits[head]!.name}"` : `"${String(job.devices[device]!.name)}"`,
    );
  for (const { node, outlet } of nodes.receivers)
    note(
      node,
      job.outlets[outlet]!.receiver!.restVolts,
      () => `the receiver of "${String(job.outlets[outlet]!.name)}"`,
    );
  return highest;
}

function connectors({ job }: Tree): Finding[] {
  return job.outlets.flatMap(({ name, receiver, quantity, plate, split }, row): Finding[] => {
    const places = split ? split.ways : (plate?.connectors ?? 1);
    if (!receiver || quantity <= places) return [];
    const fault = faults.receiversOnConnector(String(name), quantity, places, split?.name ?? null);
    return [{ check: "receivers on a connector", rows: [{ list: "outlets", row }], fault }];
  });
}

function openPorts(tree: Tree): Finding[] {
  const { job, kind, row, openPorts: open } = tree;
  const { endResistor } = job.site;
  if (endResistor && !isFault(endResistor)) return [];
  const others = new Map<number, number>();
  const found: Finding[] = [];
  const rowsOf = (point: number): Finding["rows"] => [
    { list: kind[point] === OUTLET ? "outlets" : "devices", row: row[point]! },
  ];
  for (const { point, port } of open) {
    if (port !== THROUGH) others.set(point, (others.get(point) ?? 0) + 1);
    else
      found.push({
        check: "open through port",
        rows: rowsOf(point),
        fault: endResistor ?? faults.openThroughPort(nameOf(tree, point)),
      });
  }
  for (const [point, ports] of others)
    found.push({
      check: "open ports",
      rows: rowsOf(point),
      fault: endResistor ?? faults.openPorts(nameOf(tree, point), ports),
    });
  return found;
}

function userBands({ tree, bands }: Distribution): Finding[] {
  const { job } = tree;
  const widest = Math.max(0, ...job.slots.map(({ symbolRate }) => symbolRate ?? 0));
  /** By head unit of which no band is wide enough: its outlets. */
  const tooNarrow = new Map<number, number[]>();
  const found = bands.findings.flatMap(({ outlet, trouble, band }): Finding[] => {
    const { name: own, receiver, kept, quantity } = job.outlets[outlet]!;
    const name = String(own);
    const { name: head, kind } = headOf(tree, outlet);
    const { standard, tuners } = receiver!;
    const usable = kind.bands.filter((one) => canUse(standard, one.standard)).length;
    const fault = ((): Fault | null => {
      switch (trouble) {
        case "no such band":
          return faults.bandMissing(name, band!, head, kind.bands.length);
        case "taken":
          return faults.bandTaken(name, band!, keeperOf(tree, bands, outlet, band!));
        case "too many kept":
          return faults.bandsKept(name, kept, tuners * quantity);
        case "standard":
          return band === null
            ? faults.bandsUsedUp(name, head, standard, usable, kind.bands.length)
            : faults.bandStandard(name, band, standard);
        case "none left":
          return faults.bandsUsedUp(name, head, standard, usable, kind.bands.length);
        case "too narrow": {
          const wanted = WIDTH_PER_SYMBOL_RATE * widest;
          if (kind.bands.every(({ width }) => width !== null && width < wanted)) {
            const at = tree.row[tree.output[tree.pointOfOutlet[outlet]!]!]!;
            tooNarrow.set(at, [...(tooNarrow.get(at) ?? []), outlet]);
            return null;
          }
          const { width } = kind.bands.find(({ number }) => number === band)!;
          return faults.bandNarrow(`User band ${band} of "${name}" is`, width!, wanted, widest);
        }
      }
    })();
    return fault ? [{ check: "user bands", rows: [{ list: "outlets", row: outlet }], fault }] : [];
  });
  const ofHeadUnits = [...tooNarrow].map(([head, outlets]): Finding => {
    const { name, kind } = job.headUnits[head]!;
    const width = Math.max(...kind.bands.map((band) => band.width!));
    return {
      check: "user bands",
      rows: [{ list: "headUnits", row: head }, ...outlets.map((row) => ({ list: "outlets" as const, row }))],
      fault: faults.bandNarrow(
        `The user bands of "${name}" are`,
        width,
        WIDTH_PER_SYMBOL_RATE * widest,
        widest,
      ),
    };
  });
  return [...found, ...ofHeadUnits];
}

/** @returns the name of the outlet that a kept band of the same output went to */
function keeperOf(tree: Tree, { bands }: BandPlan, outlet: number, band: number): string {
  const output = (row: number): number => tree.output[tree.pointOfOutlet[row]!]!;
  const keeper = bands.findIndex(
    (some, row) =>
      row !== outlet && some.some(({ number }) => number === band) && output(row) === output(outlet),
  );
  return String(tree.job.outlets[keeper]!.name);
}
