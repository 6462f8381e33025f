/** What a box of the one-line diagram says: beside its name, and in the lines below. */
import type { DeviceKind } from "../engine/distribution/parts";
import type { LengthUnit } from "../engine/signal/lengthUnits";
import { figure } from "./columns";
import type { Shape } from "./glyphs";
import type { Hanging, HeadUnit, Inlet, Item, Span } from "./items";

export const spanText = (levels: Span | undefined): string =>
  levels ? `${levels.least.toFixed(1)}–${levels.most.toFixed(1)}` : "?";

/** Nothing where a part sits right at the one before it. */
export const leadText = ({ cable, length }: Pick<Item, "cable" | "length">, unit: LengthUnit): string =>
  length === undefined ? "" : [cable, `${figure(length)} ${unit}`].filter(Boolean).join(", ");

const feederText = ({ source, feeders }: Inlet, unit: LengthUnit): string[] =>
  feeders.map(({ slot, cables, ...lead }) =>
    [[source.name, slot].filter(Boolean).join(" "), `${figure(cables, 0)} × ${leadText(lead, unit)}`].join(
      ": ",
    ),
  );

/** Of a box that stands for what another piece shows in full. */
const ELSEWHERE = "drawn elsewhere";

/** A line of text, and the shape that stands before it. */
export interface Line {
  readonly text: string;
  readonly shape?: Shape;
}

/** @returns the word beside the name, then the lines */
export function linesOf(item: Item, unit: LengthUnit): readonly [beside: Line, ...lines: Line[]] {
  const [beside, ...lines] = textsOf(item, unit);
  const closed = item.kind === "device" ? item.open : item.kind === "head" ? item.onward : undefined;
  return [
    { text: beside },
    ...lines.map((text) => ({ text })),
    ...(closed
      ? [{ text: closed.words, shape: closed.by ? ("end resistor" as const) : ("open port" as const) }]
      : []),
  ];
}

function textsOf(item: Item, unit: LengthUnit): readonly [beside: string, ...lines: string[]] {
  const troubles = item.troubles.join(", ");
  switch (item.kind) {
    case "dish":
      return [
        troubles || "dish",
        [item.size === undefined ? "" : `${item.size.toFixed(2)} m`, item.slots].filter(Boolean).join(", "),
        ...some(item.feed && `feed: ${item.feed}`, item.seen),
      ];
    case "head":
      return [
        troubles || kindOf(item),
        ...some(troubles && kindOf(item)),
        item.type,
        ...item.inlets.flatMap((inlet) => feederText(inlet, unit)),
        item.supply ? `supply: ${item.supply}` : "no supply of its own",
        item.volts,
        item.tuners,
        ...some(
          leadText(item, unit),
          `${spanText(item.levels)} dBµV${item.length === undefined ? "" : " at its end"}`,
        ),
      ];
    case "device":
      return [
        troubles || kindOfDevice(item.shape),
        ...some(troubles && kindOfDevice(item.shape), item.part, leadText(item, unit)),
        `${spanText(item.levels)} dBµV`,
        ...some(item.output),
      ];
    case "nothing":
      return [troubles || ELSEWHERE];
    default:
      return [troubles];
  }
}

const some = (...lines: readonly string[]): string[] => lines.filter((line) => line !== "");
const kindOf = ({ isSwitch }: HeadUnit): string => (isSwitch ? "switch" : "head unit");
const kindOfDevice = (shape: DeviceKind | undefined): string => shape ?? "part not known";

/** Whether it stands in a box, or is one row among the ends. */
export const isBox = ({ children }: Hanging): boolean => children.length > 0;

/** What Site names for every outlet that names none: left out of its row. */
export interface Usual {
  readonly cable: string;
  readonly plate: string;
}

/** What an outlet's row says of its cable and its plate, and of what closes the last through port. */
export function rowLead(item: Item, unit: LengthUnit, usual: Usual): string {
  if (item.kind === "dish" || item.kind === "nothing") return "";
  const cable = item.cable === usual.cable ? "" : item.cable;
  if (item.kind !== "outlet") return leadText({ ...item, cable }, unit);
  return [
    cable,
    `${figure(item.length)} ${unit}`,
    item.plate === usual.plate ? "" : item.plate,
    item.ends ? "closed" : "",
  ]
    .filter(Boolean)
    .join(", ");
}
