/** What does not hold of rows by themselves: commands, connectors, open ports, user bands. */
import { faults, isFault, type Fault } from "../faults";
import { WIDTH_PER_SYMBOL_RATE } from "./bandPlan";
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

function commands({ tree, commands: verdicts }: Distribution): Finding[] {
  return verdicts.flatMap((verdict, row): Finding[] =>
    verdict?.can === "no"
      ? [{ check: "commands", rows: [{ list: "outlets", row }], fault: said(tree, row, verdict) }]
      : [],
  );
}

function said(tree: Tree, row: number, verdict: CommandVerdict & { can: "no" }): Fault {
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
    case "too much at rest":
      return faults.commandDrowned(outlet, head, verdict.volts, kind.deafAbove ?? MOST_REST_VOLTS);
  }
}

function connectors({ job }: Tree): Finding[] {
  return job.outlets.flatMap(({ name, receiver, quantity, plate, split }, row): Finding[] => {
    const places = split ? split.ways : (plate?.connectors ?? 1);
    if (!receiver || quantity <= places) return [];
    const fault = faults.receiversOnConnector(String(name), quantity, places);
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
  return bands.findings.map(({ outlet, trouble, band }): Finding => {
    const { name: own, receiver, kept, quantity } = job.outlets[outlet]!;
    const name = String(own);
    const { name: head, kind } = headOf(tree, outlet);
    const { standard, tuners } = receiver!;
    const fault = ((): Fault => {
      switch (trouble) {
        case "no such band":
          return faults.bandMissing(name, band!, head);
        case "taken":
          return faults.bandTaken(name, band!);
        case "too many kept":
          return faults.bandsKept(name, kept.length, tuners * quantity);
        case "standard":
          return band === null
            ? faults.bandsUsedUp(name, head, standard)
            : faults.bandStandard(name, band, standard);
        case "none left":
          return faults.bandsUsedUp(name, head, standard);
        case "too narrow": {
          const { width } = kind.bands.find(({ number }) => number === band)!;
          return faults.bandNarrow(name, band!, width!, WIDTH_PER_SYMBOL_RATE * widest);
        }
      }
    })();
    return { check: "user bands", rows: [{ list: "outlets", row: outlet }], fault };
  });
}
