/**
 * A supply circuit held in arrays, for asking many states of it: which sources
 * are on and at what volts changes from state to state, nothing else.
 *
 * With known conducting diodes a tree is linear: what each node sees below it
 * is summed from the leaves up, its volts follow from the root down. Diodes
 * that turn out wrong are switched, on and off, and loads of constant power are
 * drawn as their tangent, from no load on, until nothing moves: then Kirchhoff's
 * laws and every diode hold, so the answer is that of supplyState. Where that
 * does not come about, supplyState itself is asked.
 *
 * Source: Kirchhoff's laws; Newton's method for the loads.
 * Accuracy: as supplyCircuit.ts, 1e-9 V.
 */
import type { LoadKind } from "../power/loadVolts";
import type { Amperes, Ohms, Volts, Watts } from "../quantity";
import { LEAST_OHMS, supplyState, type Passes, type SupplyNode } from "./supplyCircuit";

const SETTLED: Volts = 1e-9;
/** Of the figures that a current is the difference of. */
const ROUNDING = 1e-13;
/** As high as any supply, for what rounding does to a difference of volts. */
const FULL_VOLTS: Volts = 100;
const MOST_ROUNDS = 60;
/** Where something draws and nothing conducts to it: low enough for any diode. */
const STARVED: Volts = -1e6;

const WAYS: readonly Passes[] = ["both ways", "to the parent", "from the parent", "nothing"];
const [BOTH, UP, DOWN, CUT] = [0, 1, 2, 3] as const;

export interface NetworkSource {
  readonly node: number;
  readonly volts: Volts;
  /** Behind it; contacts have LEAST_OHMS. */
  readonly ohms?: Ohms;
  /** Of its diode; null where it can be fed backwards. */
  readonly drop: Volts | null;
}

export interface NetworkLoad {
  readonly node: number;
  readonly kind: LoadKind;
  readonly amount: Amperes | Watts;
}

export interface NetworkOptions {
  /** A load that has less than this while none draws is not powered, and draws nothing. */
  readonly leastVolts: Volts;
  /** To the return at every node, where a measuring circuit is to be matched. */
  readonly leakOhms?: Ohms;
}

export class SupplyNetwork {
  /** By source: its volts in the state that is asked; changed from outside. */
  readonly sourceVolts: Float64Array;
  /** By source: whether it is on in the state that is asked; changed from outside. */
  readonly isOn: Uint8Array;
  /** By node, after {@link solve}. */
  readonly volts: Float64Array;
  /** By node: from it to its parent. */
  readonly upwards: Float64Array;
  /** By source: out of it. */
  readonly given: Float64Array;
  /** By load: into it. */
  readonly drawn: Float64Array;
  /** How often supplyState had to be asked. */
  fellBack = 0;

  private readonly parent: Int32Array;
  private readonly ohms: Float64Array;
  private readonly drop: Float64Array;
  private readonly way: Uint8Array;
  private readonly conducts: Uint8Array;
  private readonly fixed: Float64Array;
  private readonly conductance: Float64Array;
  private readonly current: Float64Array;
  private readonly noise: Float64Array;
  private readonly sourceNode: Int32Array;
  private readonly sourceDrop: Float64Array;
  private readonly sourceOhms: Float64Array;
  private readonly hasDiode: Uint8Array;
  private readonly sourceConducts: Uint8Array;
  private readonly loadNode: Int32Array;
  private readonly amount: Float64Array;
  private readonly isPower: Uint8Array;
  private readonly powered: Uint8Array;
  private readonly tangent: Float64Array;

  /**
   * @param nodes each after its parent
   * @param resistors to the return
   */
  constructor(
    private readonly nodes: readonly SupplyNode[],
    private readonly sources: readonly NetworkSource[],
    private readonly loads: readonly NetworkLoad[],
    private readonly resistors: readonly { readonly node: number; readonly ohms: Ohms }[],
    private readonly options: NetworkOptions,
  ) {
    this.parent = Int32Array.from(nodes, (node) => node.parent);
    this.ohms = Float64Array.from(nodes, (node) => node.ohms);
    this.drop = Float64Array.from(nodes, ({ passes, drop }) =>
      passes === "to the parent" ? drop : passes === "from the parent" ? 0 - drop : 0,
    );
    this.way = Uint8Array.from(nodes, ({ parent, passes }) => (parent < 0 ? CUT : WAYS.indexOf(passes)));
    this.conducts = Uint8Array.from(this.way, (way) => Number(way === BOTH));
    this.fixed = new Float64Array(nodes.length).fill(options.leakOhms ? 1 / options.leakOhms : 0);
    for (const { node, ohms } of resistors) this.fixed[node]! += 1 / ohms;
    this.conductance = new Float64Array(nodes.length);
    this.current = new Float64Array(nodes.length);
    this.noise = new Float64Array(nodes.length);
    this.volts = new Float64Array(nodes.length);
    this.upwards = new Float64Array(nodes.length);
    this.sourceNode = Int32Array.from(sources, ({ node }) => node);
    this.sourceVolts = Float64Array.from(sources, ({ volts }) => volts);
    this.sourceDrop = Float64Array.from(sources, ({ drop }) => drop ?? 0);
    this.sourceOhms = Float64Array.from(sources, ({ ohms = 0 }) => Math.max(ohms, LEAST_OHMS));
    this.hasDiode = Uint8Array.from(sources, ({ drop }) => Number(drop !== null));
    this.sourceConducts = new Uint8Array(sources.length).fill(1);
    this.isOn = new Uint8Array(sources.length).fill(1);
    this.given = new Float64Array(sources.length);
    this.loadNode = Int32Array.from(loads, ({ node }) => node);
    this.amount = Float64Array.from(loads, ({ amount }) => amount);
    this.isPower = Uint8Array.from(loads, ({ kind }) => Number(kind === "W"));
    this.powered = new Uint8Array(loads.length);
    this.drawn = new Float64Array(loads.length);
    this.tangent = new Float64Array(loads.length);
  }

  /**
   * The state with the sources as they are set now, in {@link volts},
   * {@link upwards}, {@link given} and {@link drawn}.
   *
   * @param loadsDraw false for what stands while nothing draws
   * @returns false where no volts carry the loads
   */
  solve(loadsDraw = true): boolean {
    this.powered.fill(0);
    if (!this.settle()) return this.byCurves(loadsDraw);
    this.drawn.fill(0);
    if (!loadsDraw || this.loadNode.length === 0) return true;
    let some = false;
    for (let load = 0; load < this.loadNode.length; load++) {
      const idle = this.volts[this.loadNode[load]!]!;
      this.tangent[load] = idle;
      this.powered[load] = Number(idle >= this.options.leastVolts);
      some ||= this.powered[load] === 1;
    }
    if (!some) return true;
    if (!this.settle()) return this.byCurves(true);
    for (let load = 0; load < this.loadNode.length; load++)
      if (this.powered[load])
        this.drawn[load] = this.isPower[load]
          ? this.amount[load]! / this.volts[this.loadNode[load]!]!
          : this.amount[load]!;
    return true;
  }

  private settle(): boolean {
    for (let round = 0; round < MOST_ROUNDS; round++) {
      if (!this.sweep()) return false;
      const switched = this.switchDiodes();
      const moved = this.moveTangents();
      if (moved === undefined) return false;
      if (!switched && !moved) return true;
    }
    return false;
  }

  /** @returns false where the tangents of the loads leave no stable point */
  private sweep(): boolean {
    const { parent, drop, conducts, conductance, current, volts, upwards, way } = this;
    conductance.set(this.fixed);
    current.fill(0);
    for (let source = 0; source < this.sourceNode.length; source++) {
      if (!this.isOn[source] || !this.sourceConducts[source]) continue;
      const node = this.sourceNode[source]!;
      const ohms = this.sourceOhms[source]!;
      conductance[node]! += 1 / ohms;
      current[node]! += (this.sourceVolts[source]! - this.sourceDrop[source]!) / ohms;
    }
    for (let load = 0; load < this.loadNode.length; load++) {
      if (!this.powered[load]) continue;
      const node = this.loadNode[load]!;
      const amount = this.amount[load]!;
      if (this.isPower[load]) {
        const at = this.tangent[load]!;
        conductance[node]! -= amount / (at * at);
        current[node]! -= (2 * amount) / at;
      } else current[node]! -= amount;
    }
    for (let node = parent.length - 1; node >= 0; node--) {
      if (!conducts[node]) {
        if (conductance[node]! < 0) return false;
        continue;
      }
      const above = parent[node]!;
      const through = 1 + this.ohms[node]! * conductance[node]!;
      if (through <= 0) return false;
      conductance[above]! += conductance[node]! / through;
      current[above]! += (current[node]! - conductance[node]! * drop[node]!) / through;
    }
    for (let node = 0; node < parent.length; node++) {
      const above = parent[node]!;
      const isHeld = conductance[node] !== 0 || current[node] !== 0;
      if (conducts[node] && (isHeld || way[node] === BOTH)) {
        const held = volts[above]! + drop[node]!;
        const amperes =
          (current[node]! - conductance[node]! * held) / (1 + this.ohms[node]! * conductance[node]!);
        upwards[node] = amperes;
        this.noise[node] = ROUNDING * (Math.abs(current[node]!) + Math.abs(conductance[node]! * held));
        volts[node] = held + this.ohms[node]! * amperes;
        continue;
      }
      upwards[node] = 0;
      if (conductance[node]! > 0) volts[node] = current[node]! / conductance[node]!;
      else if (isHeld) volts[node] = STARVED;
      // What nothing holds lies at 0, or as near to it as its diode lets it.
      else if (way[node] === UP) volts[node] = Math.min(0, volts[above]! + drop[node]!);
      else if (way[node] === DOWN) volts[node] = Math.max(0, volts[above]! + drop[node]!);
      else volts[node] = 0;
    }
    return true;
  }

  private switchDiodes(): boolean {
    const { parent, drop, way, conducts, volts, upwards } = this;
    let switched = false;
    for (let node = 0; node < parent.length; node++) {
      if (way[node] !== UP && way[node] !== DOWN) continue;
      const sign = way[node] === UP ? 1 : -1;
      const wrong = conducts[node]
        ? sign * upwards[node]! < -this.noise[node]!
        : sign * (volts[node]! - volts[parent[node]!]! - drop[node]!) > SETTLED;
      if (!wrong) continue;
      conducts[node] = 1 - conducts[node]!;
      switched = true;
    }
    for (let source = 0; source < this.sourceNode.length; source++) {
      if (!this.isOn[source]) {
        this.given[source] = 0;
        continue;
      }
      const over = this.sourceVolts[source]! - this.sourceDrop[source]! - volts[this.sourceNode[source]!]!;
      this.given[source] = this.sourceConducts[source] ? over / this.sourceOhms[source]! : 0;
      if (!this.hasDiode[source]) continue;
      const wrong = this.sourceConducts[source] ? over < -ROUNDING * FULL_VOLTS : over > SETTLED;
      if (!wrong) continue;
      this.sourceConducts[source] = 1 - this.sourceConducts[source]!;
      switched = true;
    }
    return switched;
  }

  /** @returns whether a tangent moved; undefined where a load is left without volts */
  private moveTangents(): boolean | undefined {
    let moved = false;
    let starved = false;
    for (let load = 0; load < this.loadNode.length; load++) {
      if (!this.powered[load]) continue;
      const before = this.tangent[load]!;
      const found = this.volts[this.loadNode[load]!]!;
      if (found <= 0) starved = true;
      if (!this.isPower[load] || Math.abs(found - before) <= SETTLED) continue;
      // No further than half: a diode may conduct before that.
      this.tangent[load] = Math.max(found, before / 2);
      if (this.tangent[load]! < SETTLED) return undefined;
      moved = true;
    }
    return !moved && starved ? undefined : moved;
  }

  /** The same state by the chains of straight pieces, which need no luck. */
  private byCurves(loadsDraw: boolean): boolean {
    this.fellBack += 1;
    const on = this.sources.flatMap((source, index) => (this.isOn[index] ? [{ source, index }] : []));
    const { leastVolts, leakOhms } = this.options;
    const state = supplyState({
      nodes: this.nodes,
      sources: [
        ...on.map(({ source: { node, drop }, index }) => ({
          node,
          volts: this.sourceVolts[index]!,
          ohms: this.sourceOhms[index]!,
          drop,
        })),
        // A resistance to the return is a source of 0 V.
        ...this.resistors.map(({ node, ohms }) => ({ node, volts: 0, ohms, drop: null })),
      ],
      loads: loadsDraw ? this.loads : [],
      leastVolts,
      ...(leakOhms === undefined ? {} : { leakOhms }),
    });
    // The next state starts from no guess.
    this.conducts.set(this.way.map((way) => Number(way === BOTH)));
    this.sourceConducts.fill(1);
    if (!state) return false;
    this.volts.set(state.volts);
    this.upwards.set(state.upwards);
    this.given.fill(0);
    on.forEach(({ index }, place) => (this.given[index] = state.given[place]!));
    this.drawn.fill(0);
    this.drawn.set(state.drawn);
    return true;
  }
}
