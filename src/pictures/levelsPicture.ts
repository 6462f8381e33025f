/** Level against frequency for the worst, the median and the best outlet, between the limits that Site names. */
import { scaleLinear } from "d3-scale";
import { area, line } from "d3-shape";
import type { Book } from "../workbooks/book";
import { estimate } from "../workbooks/multiRoom/names";
import { namedValue } from "../workbooks/named";
import { axes, type Frame } from "./axes";
import { figure, numberOf, textOf } from "./columns";
import { ALERT, FAILING_LINE, INK, QUIET, TEXT, TITLE } from "./ink";
import { levelCurves, type LevelCurves, type LevelPoint, type OutletCurves } from "./levelCurves";
import type { Picture } from "./picture";
import { spreadOut } from "./spreadOut";
import { element, picture, textAt } from "./svg";

const WIDTH = 980;
const HEIGHT = 500;
const FRAME: Frame = { left: 56, top: 60, width: 610, height: 350 };
const LABEL_LEFT = FRAME.left + FRAME.width + 34;
const LABEL_WIDTH = WIDTH - LABEL_LEFT - 8;
/** Three lines of text. */
const LABEL_HEIGHT = 46;
const LINE = 14;
const PAD_DB = 3;

interface Limit {
  readonly words: string;
  readonly level: number;
  readonly wish: boolean;
}

export function levelsPicture(book: Book): Picture {
  const job = textOf(namedValue(book, estimate.site.job.name));
  const title = job ? `Level against frequency: ${job}` : "Level against frequency";
  const heading = textAt(12, 22, title, { size: TITLE, bold: true, width: WIDTH - 24 });
  const found = levelCurves(book);
  if (!found) {
    const description =
      "There is nothing to draw yet: no outlet has its level at the lowest and the highest frequency.";
    return picture(
      { title, description, width: WIDTH, height: 80, empty: true },
      heading,
      textAt(12, 50, description),
    );
  }
  const limits = limitsOf(book);
  const all = found.curves.flatMap(({ hot, cold }) => [...hot, ...cold].map(({ level }) => level));
  const levels = [...all, ...limits.map(({ level }) => level)];
  const x = scaleLinear([found.low, found.high], [FRAME.left, FRAME.left + FRAME.width]);
  const y = scaleLinear(
    [Math.min(...levels) - PAD_DB, Math.max(...levels) + PAD_DB],
    [FRAME.top + FRAME.height, FRAME.top],
  );
  const middles = found.curves.map(({ hot, cold }) => (y(hot.at(-1)!.level) + y(cold.at(-1)!.level)) / 2);
  const tops = spreadOut(
    middles.map((middle) => middle - LABEL_HEIGHT / 2),
    LABEL_HEIGHT,
    { from: FRAME.top, to: FRAME.top + FRAME.height },
  );
  return picture(
    { title, description: describe(found, limits), width: WIDTH, height: HEIGHT },
    heading,
    ...axes(FRAME, {
      x: { title: "frequency, MHz", ticks: [found.low, ...x.ticks(6), found.high], at: x, write: String },
      y: { title: "level, dBµV", ticks: y.ticks(8), at: y, write: String },
    }),
    ...limits.map(({ words, level, wish }) => limitLine(words, y(level), wish)),
    ...found.curves.flatMap((one, index) => drawCurves(one, x, y, middles[index]!, tops[index]!, found)),
    ...footOf(found).map((text, row) => textAt(12, HEIGHT - 40 + row * (LINE + 2), text, { color: QUIET })),
  );
}

function limitsOf(book: Book): Limit[] {
  return (
    [
      ["minimum level", estimate.site.level_low.name, false],
      ["maximum level", estimate.site.level_high.name, false],
      ["design floor", estimate.site.level_design.name, true],
    ] as const
  ).flatMap(([words, name, wish]) => {
    const level = numberOf(namedValue(book, name));
    return level === undefined ? [] : [{ words: `${words} ${level}`, level, wish }];
  });
}

const limitLine = (words: string, y: number, wish: boolean): string =>
  element("path", {
    d: `M${FRAME.left} ${y.toFixed(2)}h${FRAME.width}`,
    stroke: wish ? QUIET : INK,
    "stroke-width": wish ? 1 : 1.5,
    "stroke-dasharray": wish ? "2 3" : undefined,
  }) + textAt(FRAME.left + 6, y - 4, words, { color: wish ? QUIET : INK });

/** How each of the three is drawn while it does not fail. */
const LINES = {
  worst: { stroke: INK, "stroke-width": 2 },
  median: { stroke: INK, "stroke-width": 1 },
  best: { stroke: INK, "stroke-width": 1.5, "stroke-dasharray": "1.5 3" },
} as const;
const BAND = { fill: "#E9EBEE" } as const;

type Scale = (value: number) => number;

function drawCurves(
  { which, outlet, hot, cold }: OutletCurves,
  x: Scale,
  y: Scale,
  middle: number,
  top: number,
  { low, high }: LevelCurves,
): string[] {
  const failing = outlet.troubles.length > 0;
  const style = failing ? FAILING_LINE : LINES[which[0]!];
  const curve = line<LevelPoint>(
    ({ frequency }) => x(frequency),
    ({ level }) => y(level),
  ).digits(2);
  const band = area<number>(
    (index) => x(hot[index]!.frequency),
    (index) => y(hot[index]!.level),
    (index) => y(cold[index]!.level),
  ).digits(2);
  const right = FRAME.left + FRAME.width;
  const label = (row: number, text: string, more = {}): string =>
    textAt(LABEL_LEFT, top + row * LINE + TEXT, text, { width: LABEL_WIDTH, ...more });
  const span = (at: 0 | -1): string => `${hot.at(at)!.level.toFixed(1)} to ${cold.at(at)!.level.toFixed(1)}`;
  return [
    element("path", { d: band(hot.map((_, index) => index))!, ...BAND }),
    element("path", { d: curve(hot)!, fill: "none", ...style }),
    element("path", { d: curve(cold)!, fill: "none", ...style }),
    element("path", {
      d: `M${right + 4} ${middle.toFixed(2)}L${LABEL_LEFT - 5} ${(top + 1.5 * LINE).toFixed(2)}`,
      stroke: QUIET,
    }),
    label(0, [`${which.join(" and ")}: ${outlet.name}`, ...outlet.troubles].join(", "), {
      bold: true,
      color: failing ? ALERT : undefined,
    }),
    label(1, outlet.room),
    label(2, `${low} MHz ${span(0)}; ${high} MHz ${span(-1)}`),
  ];
}

function footOf({ coldest, hottest, curves }: LevelCurves): string[] {
  const straight = curves.some((one) => one.straight);
  return [
    `Lower edge of each band: cable at ${hottest} °C; upper edge: ${coldest} °C. Both ends are the workbook's own levels; predicted, not measured.`,
    straight
      ? "Between them a straight line where a cable could not be computed."
      : "Between them cable follows its loss equation; head unit, devices and plates are taken as straight lines.",
  ];
}

function describe(found: LevelCurves, limits: readonly Limit[]): string {
  const { low, high, coldest, hottest } = found;
  const each = found.curves.map(({ which, outlet, hot, cold }) => {
    const span = (at: 0 | -1): string => `${figure(hot.at(at)!.level)} to ${figure(cold.at(at)!.level)}`;
    return `${which.join(" and ")} outlet ${outlet.name}, ${outlet.verdict}, ${span(0)} dBµV at ${low} MHz, ${span(-1)} at ${high} MHz`;
  });
  return [
    `Predicted level from ${low} to ${high} MHz, with cable from ${hottest} to ${coldest} °C: ${each.join("; ")}.`,
    limits.length > 0 ? `Lines at the ${limits.map(({ words }) => words).join(", ")} dBµV.` : "",
    ...footOf(found).slice(1),
  ]
    .filter(Boolean)
    .join(" ");
}
