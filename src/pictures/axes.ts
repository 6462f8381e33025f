/** The frame of a chart: its two axes with ticks, figures and titles, and faint lines across. */
import { FAINT, INK, QUIET } from "./ink";
import { element, short, textAt } from "./svg";

export interface Frame {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export interface Axis {
  readonly title: string;
  readonly ticks: readonly number[];
  readonly at: (value: number) => number;
  readonly write: (value: number) => string;
}

/** Figures nearer than this to one before them are left out. */
const LEAST_APART = 36;

export function axes({ left, top, width, height }: Frame, { x, y }: { x: Axis; y: Axis }): string[] {
  const bottom = top + height;
  // The ends come first, so that a round figure beside one gives way.
  const ends = [x.ticks[0]!, x.ticks.at(-1)!];
  const shown: number[] = [];
  for (const tick of [...ends, ...x.ticks]) {
    if (shown.every((other) => Math.abs(x.at(other) - x.at(tick)) >= LEAST_APART)) shown.push(tick);
  }
  return [
    ...y.ticks.flatMap((tick) => [
      element("path", { d: `M${left} ${short(y.at(tick))}h${width}`, stroke: FAINT, "stroke-width": 0.5 }),
      textAt(left - 7, y.at(tick) + 4, y.write(tick), { anchor: "end" }),
    ]),
    ...shown.flatMap((tick) => [
      element("path", { d: `M${short(x.at(tick))} ${bottom}v5`, stroke: INK }),
      textAt(x.at(tick), bottom + 18, x.write(tick), { anchor: "middle" }),
    ]),
    element("path", { d: `M${left} ${top}V${bottom}H${left + width}`, fill: "none", stroke: INK }),
    textAt(left + width, bottom + 34, x.title, { anchor: "end", color: QUIET }),
    // Clear of the figure at the axis's own upper end.
    textAt(left - 44, top - 14, y.title, { color: QUIET }),
  ];
}
