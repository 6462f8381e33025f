/**
 * The shape of each kind of part, in a square that its word stands beside. Our
 * own, drawn plainly: what is in the box says what it does.
 */
import type { DeviceKind } from "../engine/distribution/parts";
import { INK } from "./ink";
import { element, short } from "./svg";

export type Shape =
  | DeviceKind
  | "dish"
  | "head unit"
  | "switch"
  | "outlet"
  | "loop-through outlet"
  | "last loop-through outlet"
  | "receiver"
  | "spare"
  | "end resistor"
  | "open port";

/** Side of the square, in pixels. */
export const GLYPH = 12;

/** Paths within a square of 12; those of the second list are filled. */
const SHAPES: Readonly<Record<Shape, readonly [lines: string, filled?: string]>> = {
  // A bowl with its feed before it.
  dish: ["M1.5 1A9 9 0 0 0 11 10.5ZM6 6L9.5 2.5", "M8 1.5h3v3h-3z"],
  "head unit": ["M1 3h10v6H1zM11 6h1", "M3 5h2v2H3z"],
  // Inputs that cross to outputs.
  switch: ["M0.5 0.5h11v11h-11zM2.5 3L9.5 9M2.5 9L9.5 3"],
  splitter: ["M0 6h3M3 6L10 1M3 6H12M3 6L10 11"],
  tap: ["M0 4h12M6 4v7", "M4 4a2 2 0 1 0 4 0a2 2 0 1 0 -4 0z"],
  amplifier: ["M1.5 0.5v11L11 6z"],
  equaliser: ["M0.5 0.5h11v11h-11zM2 9.5L10 2.5"],
  attenuator: ["M0.5 0.5h11v11h-11zM3.5 6h5"],
  filter: ["M0.5 0.5h11v11h-11zM2 8c2-8 3 0 4 0s2-8 4 0"],
  // Direct current put into the line.
  inserter: ["M0 10.5h12M6 10.5V6.5M3 0.5h6v6H3zM4.5 3.5h3M6 2v3"],
  outlet: ["M1.5 1.5h9v9h-9z", "M4.5 6a1.5 1.5 0 1 0 3 0a1.5 1.5 0 1 0 -3 0z"],
  "loop-through outlet": ["M1.5 1.5h9v9h-9zM3 1.5v9", "M5.5 6a1.5 1.5 0 1 0 3 0a1.5 1.5 0 1 0 -3 0z"],
  // Closed below.
  "last loop-through outlet": [
    "M1.5 1.5h9v9h-9zM3 1.5v9M6 10.5v1.5",
    "M3 11h6v1h-6zM5.5 6a1.5 1.5 0 1 0 3 0a1.5 1.5 0 1 0 -3 0z",
  ],
  receiver: ["M1 2.5h10v7H1z", "M2.5 7h3v1h-3z"],
  spare: ["M2 6a4 4 0 1 0 8 0a4 4 0 1 0 -8 0z"],
  "end resistor": ["M0 6h2M10 6h2M2 3.5h8v5H2z"],
  "open port": ["M0 6h5M5 6a2 2 0 1 0 4 0a2 2 0 1 0 -4 0z"],
};

/** @param left, top of its square */
export function glyph(shape: Shape, left: number, top: number): string {
  const [lines, filled] = SHAPES[shape];
  const transform = `translate(${short(left)} ${short(top)})`;
  const path = { d: lines, transform, fill: "none", stroke: INK, "stroke-width": 1 };
  return [
    element("path", path, element("title", {}, shape)),
    ...(filled ? [element("path", { d: filled, transform, fill: INK })] : []),
  ].join("");
}
