/**
 * Slots and obstacles seen from the site, as azimuth against elevation: the belt, the wanted
 * slots, a bar up to the obstacle given under each, and the sun's way past each
 * on its next day of check. A table below has the figures. Between the bars
 * nothing is drawn, because nothing is known.
 */
import { scaleLinear } from "d3-scale";
import { line } from "d3-shape";
import type { Book } from "../workbooks/book";
import { estimate } from "../workbooks/multiRoom/names";
import { namedValue } from "../workbooks/named";
import { axes, type Frame } from "./axes";
import { figure, textOf } from "./columns";
import { ALERT, ALERT_FILL, FAILING_LINE, INK, PAPER, PLAIN_LINE, QUIET, SOLID, TITLE } from "./ink";
import type { Picture } from "./picture";
import {
  azimuthAt,
  offsetFrom,
  slotsInSight,
  type Direction,
  type SlotsInSight,
  type SlotSight,
} from "./slotsInSight";
import { spreadOut } from "./spreadOut";
import { element, group, picture, short, textAt } from "./svg";

const WIDTH = 980;
const FRAME: Frame = { left: 56, top: 60, width: 906, height: 330 };
const TABLE_TOP = FRAME.top + FRAME.height + 62;
const ROW = 19;
const FOOT_LINE = 15;
const BAR_WIDTH = 14;
const MARKER_RADIUS = 5;
const NAME_SIZE = 16;
/** Above the highest thing drawn, in degrees: room for the names. */
const HEADROOM_DEG = 9;
const LEAST_TOP_DEG = 20;

const FOOT = [
  "Curve: the belt of geostationary slots. Circle: a slot wanted. Bar: the highest obstacle given on its bearing; only these bearings are known. Short line above a bar:",
  "the least elevation that clears it as wanted. Dotted: the sun, half an hour before and after it stands behind the slot; an obstacle's shadow on the dish then shows what is hidden.",
  "Never look at the sun; watch the shadow. Look from where the dish will stand, on safe footing: falls, overhead lines and weather come first. Predicted, not certified.",
];

export function slotsPicture(book: Book): Picture {
  const job = textOf(namedValue(book, estimate.site.job.name));
  const title = job ? `Slots and obstacles: ${job}` : "Slots and obstacles";
  const heading = textAt(12, 22, title, { size: TITLE, bold: true, width: WIDTH - 24 });
  const inSight = slotsInSight(book);
  if (!inSight || inSight.belt.length === 0) {
    const description = inSight
      ? "No geostationary slot stands above the horizon at this site."
      : "There is nothing to draw yet: Site has no position.";
    return picture(
      { title, description, width: WIDTH, height: 80, empty: true },
      heading,
      textAt(12, 50, description),
    );
  }
  const height = TABLE_TOP + inSight.slots.length * ROW + FOOT.length * FOOT_LINE + 22;
  return picture(
    { title, description: describe(inSight), width: WIDTH, height },
    heading,
    ...chart(inSight),
    ...table(inSight),
    ...FOOT.map((text, index) =>
      textAt(12, height - 8 - (FOOT.length - 1 - index) * FOOT_LINE, text, { color: QUIET, size: 10 }),
    ),
  );
}

function chart(inSight: SlotsInSight): string[] {
  const { middle, belt, slots } = inSight;
  const offset = ({ azimuth }: Direction): number => offsetFrom(middle, azimuth);
  const everything = [
    ...belt,
    ...slots.flatMap(({ sight, sun }) => [...(sight ? [sight] : []), ...(sun?.track ?? [])]),
  ];
  const widest = Math.min(180, Math.max(...everything.map((one) => Math.abs(offset(one)))) + 3);
  const highest = Math.max(
    LEAST_TOP_DEG,
    ...everything.map(({ elevation }) => elevation),
    ...slots.map(({ obstacle }) => (obstacle ?? 0) + inSight.wanted),
  );
  const x = scaleLinear([-widest, widest], [FRAME.left, FRAME.left + FRAME.width]);
  const y = scaleLinear([0, Math.min(100, highest + HEADROOM_DEG)], [FRAME.top + FRAME.height, FRAME.top]);
  const curve = line<Direction>(
    (one) => x(offset(one)),
    ({ elevation }) => y(elevation),
  ).digits(2);
  const seen = slots.filter((slot) => slot.sight);
  const names = spreadOut(
    seen.map(({ sight }) => x(offset(sight!)) - 30),
    60,
    { from: FRAME.left, to: FRAME.left + FRAME.width },
  );
  return [
    ...axes(FRAME, {
      x: {
        title: "true azimuth, deg",
        ticks: x.ticks(12),
        at: x,
        write: (tick) => azimuthWords(azimuthAt(middle, tick)),
      },
      y: { title: "elevation, deg", ticks: y.ticks(7).filter((tick) => tick <= 90), at: y, write: String },
    }),
    element("path", { d: curve(belt)!, fill: "none", stroke: QUIET, "stroke-width": 1 }),
    ...seen.map((slot) => bar(slot, inSight.wanted, x(offset(slot.sight!)), y)),
    ...slots.map(({ sun }) =>
      sun && sun.track.length > 1
        ? element("path", {
            d: curve(sun.track)!,
            fill: "none",
            stroke: INK,
            "stroke-width": 4,
            "stroke-dasharray": "0.1 8",
            "stroke-linecap": "round",
          })
        : "",
    ),
    ...seen.map((slot, index) =>
      marker(slot, x(offset(slot.sight!)), y(slot.sight!.elevation), names[index]! + 30),
    ),
  ];
}

const COMPASS_WORDS: Readonly<Record<number, string>> = { 0: "N", 90: "E", 180: "S", 270: "W" };
const azimuthWords = (azimuth: number): string =>
  [COMPASS_WORDS[azimuth], String(Math.round(azimuth))].filter(Boolean).join(" ");

/** From the horizon up to the obstacle, with the line that the beam has to pass. */
function bar(
  { obstacle, failing }: SlotSight,
  wanted: number,
  x: number,
  y: (degrees: number) => number,
): string {
  if (obstacle === undefined) return "";
  const [top, least] = [y(obstacle), y(obstacle + wanted)];
  return group(
    {},
    element("rect", {
      x: x - BAR_WIDTH / 2,
      y: top,
      width: BAR_WIDTH,
      height: y(0) - top,
      fill: failing ? ALERT_FILL : SOLID,
      ...(failing ? FAILING_LINE : PLAIN_LINE),
    }),
    element("path", {
      d: `M${short(x - BAR_WIDTH)} ${short(least)}h${2 * BAR_WIDTH}`,
      stroke: failing ? ALERT : INK,
      "stroke-width": 1.5,
    }),
  );
}

function marker({ name, verdict, failing }: SlotSight, x: number, y: number, nameX: number): string {
  const nameY = y - 2 * NAME_SIZE;
  const color = failing ? ALERT : INK;
  return group(
    {},
    element("path", { d: `M${short(x)} ${short(y)}L${short(nameX)} ${short(nameY + 4)}`, stroke: QUIET }),
    element("circle", {
      cx: x,
      cy: y,
      r: MARKER_RADIUS,
      fill: PAPER,
      stroke: color,
      "stroke-width": failing ? 3 : 2,
    }),
    textAt(nameX, nameY, failing ? `${name} ${verdict}` : name, { bold: true, color, anchor: "middle" }),
  );
}

/** Head, left edge and figure of each column. */
const COLUMNS: readonly (readonly [
  head: string,
  left: number,
  width: number,
  text: (slot: SlotSight) => string,
])[] = [
  ["slot", 12, 60, ({ name }) => name],
  ["for", 76, 150, ({ service }) => service],
  ["true", 232, 60, ({ sight }) => degrees(sight?.azimuth)],
  ["compass", 296, 66, ({ compass }) => degrees(compass)],
  ["elevation", 366, 66, ({ sight }) => degrees(sight?.elevation)],
  ["obstacle", 438, 62, ({ obstacle }) => degrees(obstacle)],
  ["over it", 506, 60, ({ clearance }) => degrees(clearance)],
  ["verdict", 570, 120, ({ verdict }) => verdict],
  ["next sun check, UTC (peak)", 694, 274, ({ sun }) => (sun ? passWords(sun.peakMs) : "none in reach")],
];

const degrees = (value: number | undefined): string => (value === undefined ? "-" : `${value.toFixed(1)}°`);

function passWords(peakMs: number): string {
  const clock = (ms: number): string => minuteOf(ms).slice(11);
  const half = 30 * 60_000;
  return `${minuteOf(peakMs).slice(0, 10)}, ${clock(peakMs - half)} to ${clock(peakMs + half)} (${clock(peakMs)})`;
}

const minuteOf = (ms: number): string =>
  new Date(Math.round(ms / 60_000) * 60_000).toISOString().slice(0, 16);

function table({ slots }: SlotsInSight): string[] {
  return [
    ...COLUMNS.map(([head, left]) => textAt(left, TABLE_TOP, head, { color: QUIET })),
    ...slots.flatMap((slot, row) =>
      COLUMNS.map(([, left, width, text]) =>
        textAt(left, TABLE_TOP + (row + 1) * ROW, text(slot), {
          width,
          bold: slot.failing,
          color: slot.failing ? ALERT : undefined,
        }),
      ),
    ),
  ];
}

function describe({ slots, wanted }: SlotsInSight): string {
  if (slots.length === 0) return "The visible belt of geostationary slots; no slot is named on Site yet.";
  const each = slots.map(({ name, sight, obstacle, clearance, verdict, failing, sun }) =>
    [
      sight
        ? `${name} at true azimuth ${figure(sight.azimuth)}, elevation ${figure(sight.elevation)} degrees`
        : name,
      obstacle === undefined ? "no obstacle given" : `obstacle up to ${figure(obstacle)}`,
      failing ? `marked ${verdict}` : `${figure(clearance)} over it, ${verdict}`,
      sun ? `next sun check peaks ${minuteOf(sun.peakMs).replace("T", " at ")} UTC` : "",
    ]
      .filter(Boolean)
      .join(", "),
  );
  return `The visible belt of geostationary slots over true azimuth, with the wanted slots: ${each.join("; ")}. Clearance wanted: ${figure(wanted)} degrees. Only the obstacles given are drawn.`;
}
