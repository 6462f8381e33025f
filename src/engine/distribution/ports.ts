/**
 * Which port of the part that feeds it each row of a distribution is on: the
 * one that its row names, or the next free one, devices before outlets. At a
 * tap a device takes the through port and an outlet a tap port; from a
 * loop-through plate leads its through port only.
 */
import { faults, type Fault } from "../faults";
import type { PortWanted } from "./job";

/** Port 0 stands for the through port; numbered ones count from 1. */
export const THROUGH = 0;

export interface Feeding {
  readonly name: string;
  /** Numbered ports. */
  readonly ports: number;
  readonly hasThrough: boolean;
}

export interface PortAsked {
  readonly name: string;
  readonly wanted: PortWanted;
  readonly isDevice: boolean;
}

/** The ports of one part, and who is on them. */
export class Ports {
  private readonly users: (string | undefined)[];
  private nextFree = 1;

  constructor(private readonly feeding: Feeding) {
    this.users = new Array<string | undefined>(feeding.ports + 1);
  }

  /** For a row that names its port. All of these come before the rows that do not. */
  named({ name, wanted }: PortAsked): number | Fault {
    const { name: by, ports, hasThrough } = this.feeding;
    const port = wanted === "through" ? THROUGH : wanted!;
    if (port === THROUGH && !hasThrough) return faults.noThroughPort(by, name);
    if (!Number.isInteger(port) || port < 0 || port > ports) return faults.portBeyond(by, name, port, ports);
    const taken = this.users[port];
    if (taken !== undefined) return faults.portTaken(by, name, port === THROUGH ? "through" : port, taken);
    this.users[port] = name;
    return port;
  }

  /** For a row that leaves its port blank. */
  next({ name, isDevice }: PortAsked): number | Fault {
    const { name: by, ports, hasThrough } = this.feeding;
    if (ports === 0 && !hasThrough) return faults.noThroughPort(by, name);
    // From a loop-through plate whoever comes takes the through port.
    if (hasThrough && (isDevice || ports === 0) && this.users[THROUGH] === undefined) {
      this.users[THROUGH] = name;
      return THROUGH;
    }
    while (this.nextFree <= ports && this.users[this.nextFree] !== undefined) this.nextFree += 1;
    if (this.nextFree > ports)
      return ports === 0
        ? faults.throughTaken(by, name, this.users[THROUGH]!)
        : faults.noPortLeft(by, name, ports);
    this.users[this.nextFree] = name;
    return this.nextFree;
  }

  isOpen = (port: number): boolean => this.users[port] === undefined;
}
