/** What a person should know of a survey's outlets that were read: what was taken, and what to look at again. */
import { textOf, type ImportedLine } from "../imported/table";
import type { MappedColumn } from "../imported/columns";
import { asFigures, asWord } from "../typed/plainText";
import { LONGEST_TEXT } from "../typed/typedKind";
import type { Head, Layout } from "./layout";
import type { LengthRead } from "./lengthCell";
import { factorBetween } from "./meanings";
import { matchName, type SurveyLists } from "./partNames";
import type { ReadLine } from "./readLine";
import { linesInWords, type SurveySetting } from "./survey";

export interface ReadOutlet {
  readonly line: ImportedLine;
  readonly id: string;
  readonly row: Readonly<Record<string, number | string>>;
  readonly length: LengthRead | undefined;
  readonly isGood: boolean;
  readonly unknown: ReadLine["unknown"];
  readonly texts: ReadLine["texts"];
}

interface Around {
  readonly layout: Layout;
  readonly head: Head;
  readonly setting: SurveySetting;
  readonly lists: SurveyLists;
  readonly outlets: readonly ImportedLine[];
  readonly unnamed: MappedColumn | undefined;
}

/** A run that is no usual drop, in metres; common practice, no source. */
export const LONG_RUN = 200;

export function notesOf(good: readonly ReadOutlet[], around: Around): string[] {
  const { layout, setting, unnamed } = around;
  const numbers = (which: (one: ReadOutlet) => boolean): number[] =>
    good.filter(which).map(({ line }) => line.line);
  const estimates = numbers(({ length }) => length?.approximate === true);
  const ranges = numbers(({ length }) => length?.shortest !== undefined && !layout.columns.has("shortest"));
  const hasReceivers = layout.columns.has("receiver");
  const spares = hasReceivers ? numbers(({ row }) => row.receiver === undefined) : [];
  return [
    unnamed === undefined ? "" : unitNote(around, unnamed),
    estimates.length > 0
      ? `${linesInWords(estimates)}: ${estimates.length === 1 ? "the run is an estimate" : "the runs are estimates"}, taken as ${estimates.length === 1 ? "it stands" : "they stand"}.`
      : "",
    ranges.length > 0
      ? `${linesInWords(ranges)}: a range; the run is its middle, its ends are the shortest and the longest run.`
      : "",
    layout.columns.has("outlet")
      ? ""
      : "No column names the outlets: each is called after its room, numbered where a room has several.",
    hasReceivers
      ? ""
      : "No column names the receivers: choose them on Rooms, where an outlet without one has no tuner and needs no user band.",
    spares.length === 1
      ? `Line ${spares[0]} names no receiver: it is a spare outlet.`
      : spares.length > 1
        ? `${linesInWords(spares)} name no receiver: they are spare outlets.`
        : "",
    lookAt(good, setting.unit),
    feedsNote(good, around.lists),
    ...(hasReceivers ? [] : countsOf(good)),
  ];
}

/** Bare numbers of a column whose head names no unit are taken in the workbook's own; that is said. */
function unitNote({ head, outlets, setting }: Around, { column }: MappedColumn): string {
  const figures = (line: ImportedLine): string =>
    asFigures(textOf(line.cells[column]).slice(0, LONGEST_TEXT));
  const bare = outlets.filter((line) => /^[+-]?[\d., ]*\d$/.test(figures(line)));
  if (bare.length === 0) return "";
  const others = outlets.some((line) => /\d ?[a-z'"]/i.test(figures(line)));
  const which = others ? `Line ${bare[0]!.line}` : `“${head.texts[column] ?? ""}”`;
  return `${which} names no unit: it is taken in ${setting.unit}, the unit of this workbook.`;
}

/** Without receivers a quantity may have been meant as outlets. */
const countsOf = (good: readonly ReadOutlet[]): string[] =>
  good.flatMap(({ row: { quantity }, line }) =>
    quantity === undefined || quantity === 1
      ? []
      : [`Line ${line.line}: ${quantity} is taken as the receivers at one outlet, not as outlets.`],
  );

/** Runs that can be so, and are more often a slip. */
function lookAt(good: readonly ReadOutlet[], unit: "m" | "ft"): string {
  const long = LONG_RUN * factorBetween("m", unit);
  const odd = good.flatMap(({ row: { run }, line }) =>
    run === 0 || Number(run) > long ? [`line ${line.line} (${run} ${unit})`] : [],
  );
  return odd.length > 0
    ? `Look again at the run of ${odd.slice(0, 5).join(", ")}${odd.length > 5 ? ", …" : ""}.`
    : "";
}

/** A survey may name what is drawn only later. */
function feedsNote(good: readonly ReadOutlet[], { from = [] }: SurveyLists): string {
  if (from.length === 0) return "";
  const outlets = new Set(good.map(({ row }) => asWord(String(row.outlet))));
  const strange = new Set(
    good.flatMap(({ row }) => {
      const name = row.from === undefined ? "" : String(row.from);
      return name === "" || outlets.has(asWord(name)) || "name" in matchName("from", name, from)
        ? []
        : [name];
    }),
  );
  return strange.size === 0
    ? ""
    : `The workbook has nothing yet that is called ${[...strange]
        .slice(0, 6)
        .map((name) => `“${name}”`)
        .join(", ")}${strange.size > 6 ? ", …" : ""}; outlets are fed from there.`;
}
