/**
 * The supply of drawn distributions against ngspice, each built a second time
 * from its rows as a netlist.
 *
 * Source: ngspice, operating point (.op); diodes `n=0.001` in series with a
 * source of their drop, 10 MΩ from every node to the return, as in
 * dc-networks.json. Started from above, so that a load of constant power
 * settles at the higher volts. Where ngspice does not converge nothing is said.
 */
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import type { DeviceRow, DistributionJob, OutletRow } from "../../../src/engine/distribution/job";
import type { PowerPath, Run } from "../../../src/engine/distribution/parts";
import {
  everyState,
  supplyCircuits,
  type SupplyStateName,
} from "../../../src/engine/distribution/supplyCircuits";
import { supplyNodes } from "../../../src/engine/distribution/supplyNodes";
import { buildTree, type Tree } from "../../../src/engine/distribution/tree";
import { trunksOf } from "../../../src/engine/distribution/trunks";
import { drawn } from "../../support/drawn";
import { heldTo } from "../../support/heldTo";
import {
  amplifier,
  device,
  headUnit,
  headUnitKind,
  inserter,
  job,
  loopPlate,
  outlet,
  plate,
  power,
  run,
  SITE,
  splitter,
  supply,
  tap,
} from "../../support/smallDistribution";
import { withNgspice } from "../../support/tools";
import { tries } from "../../support/tries";

const JOBS = tries(25, 200);
const LEAK_OHMS = 1e7;
/** In place of none, with which ngspice seldom converges. */
const CONTACT_OHMS = 1e-4;
/** ngspice is sometimes 10 to 20 mV off. */
const LIMIT_V = 0.025;
/** The loop of run() in smallDistribution.ts: ohms per 100 m at 20 °C, copper's 0.00393 per °C. */
const LOOP_OHMS = 10;

const held = heldTo({
  what: "supplyNodes and supplyNetwork",
  source: "ngspice, netlists from the rows",
  basis: "reference library",
  unit: "V",
});

function drawnJob(seed: number): DistributionJob {
  const draw = drawn(seed);
  const piece = (): Run | null => (draw.chance(0.2) ? null : run(draw.between(1, 40, 1)));
  const passing = () =>
    power(
      draw.pick(["no", "one port", "all ports", "towards head unit", "towards head unit"]),
      draw.pick([0.3, 0.7]),
      0.1,
    );
  const devices: DeviceRow[] = [];
  const open = ["H1", "H1"];
  const place = (): string => open.splice(draw.whole(0, open.length - 1), 1)[0]!;
  for (let index = 1; index <= draw.whole(1, 5); index++) {
    const name = `P${index}`;
    const part = draw.pick([
      () => splitter(3, { power: passing() }),
      () => splitter(2, { power: passing() }),
      () => tap(2, { power: passing() }),
      () => amplifier({ power: passing() }),
      () => inserter({ otherSide: draw.pick(["no", "all ports"]) }),
    ])();
    devices.push(device(name, place(), part, { run: piece() }));
    for (let way = 0; way < part.ways; way++) open.push(name);
  }
  const outlets: OutletRow[] = [];
  for (let index = 1; open.length > 0 && index <= 10; index++) {
    const name = `O${index}`;
    const loops = draw.chance(0.3);
    const own = (loops ? loopPlate : plate)({ power: passing() });
    outlets.push(outlet(name, place(), { run: piece(), plate: own }));
    if (loops) open.push(name);
  }
  const senses = draw.chance(0.2);
  const watts = draw.chance(0.5);
  const kind = headUnitKind({
    outputs: 2,
    outputDrop: draw.pick([null, 0.4]),
    senseAmperes: senses ? 0.02 : null,
    load: watts ? draw.between(1, 3, 1) : draw.between(0.05, 0.25, 2),
    loadKind: watts ? "W" : "A",
  });
  const own = draw.pick([
    null,
    null,
    supply({ otherSide: draw.pick(["no", "all ports"]) }),
    supply({ stands: "at the head unit", volts: 18 }),
  ]);
  return job({ headUnits: [headUnit("H1", { kind, run: piece(), supply: own })], devices, outlets });
}

/** The rows as a netlist; loads are those named, each with the volts that it starts from. */
function netlist(
  one: DistributionJob,
  tree: Tree,
  onVolts: ReadonlyMap<string, number>,
  loads: ReadonlyMap<string, number>,
): string {
  const lines: string[] = [];
  const nodes = new Set<string>();
  let count = 0;
  const node = (name: string): string => {
    const found = `n_${name}`.toLowerCase();
    nodes.add(found);
    return found;
  };
  /** Between two elements of one part: without a leak, which would draw current through the source of a drop. */
  const inner = (): string => `m_${++count}`;
  const ohms = (a: string, b: string, value: number): void =>
    void lines.push(`R${++count} ${node(a)} ${node(b)} ${Math.max(value, CONTACT_OHMS)}`);
  /** Current from a to b only, less the drop. */
  const diode = (a: string, b: string, drop: number, own = 0): void => {
    const [beyondOhms, beyondDiode] = [inner(), inner()];
    lines.push(`R${++count} ${node(a)} ${beyondOhms} ${Math.max(own, CONTACT_OHMS)}`);
    lines.push(`D${++count} ${beyondOhms} ${beyondDiode} ideal`);
    lines.push(`V${++count} ${beyondDiode} ${node(b)} ${drop}`);
  };
  const volts = (at: string, value: number): void => {
    const behind = inner();
    lines.push(`V${++count} ${behind} 0 ${value}`);
    lines.push(`R${++count} ${behind} ${node(at)} 1e-3`);
  };
  const cable = (piece: Run | null): number =>
    piece ? (LOOP_OHMS / 100) * piece.length * (1 + 0.00393 * (SITE.hot - 20)) : 0;
  /** From a port, on the outlets' side, to the part. */
  const port = (
    from: string,
    to: string,
    { passes, drop, ohms: own }: PowerPath,
    isFirst: boolean,
    isThrough: boolean,
  ): void => {
    if (passes === "no" || (passes === "one port" && !isFirst)) return;
    if (passes !== "towards head unit" || isThrough) return ohms(from, to, own);
    diode(from, to, drop, own);
  };
  const load = (at: string, kind: string, amount: number): void => {
    const start = loads.get(node(at));
    if (start === undefined) return;
    lines.push(
      kind === "A"
        ? `I${++count} ${node(at)} 0 ${amount}`
        : `B${++count} ${node(at)} 0 I=${amount}/max(V(${node(at)}),0.5)`,
    );
    lines.push(`.nodeset V(${node(at)})=${start}`);
  };

  const { kind, supply: own, run: lead } = one.headUnits[0]!;
  for (const output of [1, 2]) {
    if (kind.senseAmperes !== null) load(`out${output}`, "A", kind.senseAmperes);
    else if (kind.outputDrop === null) ohms(`out${output}`, "head", 0);
    else diode(`out${output}`, "head", kind.outputDrop);
  }
  load("head", kind.loadKind, kind.load);
  ohms("lead", "out1", cable(lead));
  if (own?.stands === "in the line") volts("lead", own.volts);
  else if (own) volts("head", own.volts);
  if (!own || own.stands !== "in the line" || own.otherSide === "all ports") ohms("beyond", "lead", 0);

  const rowOf = (name: string): { row: DeviceRow | OutletRow; point: number } => {
    const inDevices = one.devices.findIndex((row) => row.name === name);
    if (inDevices >= 0) return { row: one.devices[inDevices]!, point: tree.pointOfDevice[inDevices]! };
    const inOutlets = one.outlets.findIndex((row) => row.name === name);
    return { row: one.outlets[inOutlets]!, point: tree.pointOfOutlet[inOutlets]! };
  };
  for (const { name } of [...one.devices, ...one.outlets]) {
    const { row, point } = rowOf(String(name));
    const at = String(name);
    const end = `${at}_in`;
    ohms(at, end, cable(row.run));
    const number = tree.port[point]!;
    if (row.from === "H1") ohms(end, number === 1 ? "beyond" : "out2", 0);
    else {
      const feeding = rowOf(String(row.from)).row;
      const above = String(row.from);
      if ("plate" in feeding) {
        const { power: passing } = feeding.plate!;
        port(end, above, passing, true, true);
      } else if (feeding.part.kind === "splitter") port(end, above, feeding.part.power, number === 1, false);
      else if (feeding.part.kind === "tap") port(end, above, feeding.part.power, number === 0, number === 0);
      else if (feeding.part.kind === "amplifier") ohms(end, `${above}_out`, 0);
      else if (feeding.part.supply!.otherSide === "all ports") ohms(end, above, 0);
    }
    if ("plate" in row) {
      const loops = row.plate!.through !== null;
      port(`${at}_c`, at, row.plate!.power, !loops, false);
      const given = onVolts.get(at);
      if (given !== undefined) {
        volts(`${at}_v`, given);
        diode(`${at}_v`, `${at}_c`, 0);
      } else node(`${at}_c`);
    } else if (row.part.amplifier) {
      port(`${at}_out`, at, row.part.power, true, false);
      load(`${at}_out`, "A", row.part.amplifier.load);
      node(`${at}_out`);
    } else if (row.part.supply) volts(at, row.part.supply.volts);
  }
  for (const one of nodes) lines.push(`R${++count} ${one} 0 ${LEAK_OHMS}`);
  return [
    "* a distribution",
    ".model ideal d(n=0.001)",
    ".options reltol=1e-6 abstol=1e-10 vntol=1e-7 gmin=1e-15 itl1=500",
    ...lines,
    ".op",
    ".control",
    "op",
    "print all",
    ".endc",
    ".end",
    "",
  ].join("\n");
}

/** Each with the volts that a receiver gives in it; 0 is off. */
const STATES: readonly (readonly [SupplyStateName, (row: number, last: number) => number])[] = [
  ["all off", () => 0],
  ["alone", (row, last) => (row === last ? 13 : 0)],
  ["all on", () => 13],
  ["off among others", (row, last) => (row === last ? 0 : 18)],
];

withNgspice(`${JOBS} drawn distributions in four states each`, (program) => {
  const folder = mkdtempSync(path.join(tmpdir(), "rigsheet-ngspice-"));
  const solved = (text: string): Map<string, number> | undefined => {
    const file = path.join(folder, "one.cir");
    writeFileSync(file, text);
    let said: string;
    try {
      said = execFileSync(program, ["-b", file], { encoding: "utf8", stdio: ["ignore", "pipe", "pipe"] });
    } catch {
      return undefined;
    }
    const found = new Map(
      [...said.matchAll(/^(n_\S+) = (\S+)$/gm)].map(([, name, value]) => [name!, Number(value)]),
    );
    return found.size > 0 && !said.includes("aborted") ? found : undefined;
  };
  let [compared, unsolved] = [0, 0];
  try {
    for (let seed = 1; seed <= JOBS; seed++) {
      const one = drawnJob(seed);
      const tree = buildTree(one);
      const whole = supplyNodes(tree, trunksOf(one));
      const states = new Map<SupplyStateName, Map<string, number>>();
      const bad = new Set<SupplyStateName>();
      const last = one.outlets.length - 1;
      for (const circuit of supplyCircuits(whole, { leastVolts: 1, leakOhms: LEAK_OHMS })) {
        const about = circuit.receivers.findIndex((receiver) => whole.receivers[receiver]!.outlet === last);
        const note = (state: SupplyStateName): void => {
          const into = states.get(state) ?? new Map<string, number>();
          states.set(state, into);
          if (circuit.has(whole.common[0]!)) into.set("n_head", circuit.voltsAt(whole.common[0]!));
          one.outlets.forEach(({ name }, row) => {
            const at = whole.connector[row]!;
            if (circuit.has(at)) into.set(`n_${String(name)}_c`.toLowerCase(), circuit.voltsAt(at));
          });
        };
        const failed = everyState(tree, whole, circuit, false, (state, receiver) => {
          if (receiver < 0 || receiver === about) note(state);
          // Where the last receiver is none of this circuit's, on alone it leaves all off here.
          if (about < 0 && state === "all off") note("alone");
        });
        if (failed) for (const [state] of STATES) bad.add(state);
      }
      const names = one.outlets.map(({ name }) => String(name));
      for (const [state, voltsOf] of STATES) {
        const onVolts = new Map(
          names.flatMap((name, row) => (voltsOf(row, last) > 0 ? [[name, voltsOf(row, last)] as const] : [])),
        );
        const mine = states.get(state);
        if (!mine || bad.has(state)) continue;
        const idle = solved(netlist(one, tree, onVolts, new Map()));
        const powered = new Map([...(idle ?? [])].filter(([, value]) => value >= 1));
        const found = idle && solved(netlist(one, tree, onVolts, powered));
        // At less than half it is the lower point of a load of constant power, or none.
        const isLower = found && [...powered].some(([name, value]) => found.get(name)! < value / 2);
        if (!found || isLower) {
          unsolved += 1;
          continue;
        }
        for (const [name, value] of mine) {
          compared += 1;
          held.row(`${seed} ${state} ${name}`, value, found.get(name)!, LIMIT_V);
        }
      }
    }
  } finally {
    rmSync(folder, { recursive: true });
  }
  process.stdout.write(`  ngspice: ${compared} volts compared, ${unsolved} states in which it found none\n`);
  expect(compared).toBeGreaterThan(JOBS * 10);
  expect(unsolved).toBeLessThan(JOBS * 0.2);
});
