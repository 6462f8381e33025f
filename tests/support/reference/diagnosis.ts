/**
 * Diagnosis, and the columns of Commissioning that read it. What it answers is a model of its own, which is held to its
 * makers' cases in tests/engine/diagnosis; here its answer need only be one that could be: known causes, likeliest
 * first. Where each outlet finds itself in it is worked out again.
 */
import { isBookError, type Book } from "../../../src/workbooks/book";
import { namedColumn } from "../../../src/workbooks/named";
import {
  eachRow,
  field,
  isFilled,
  isSame,
  rowsOf,
  type Cells,
  type Expected,
  type Job,
  type Row,
  type Value,
} from "./job";
import { headNameOf } from "./rooms";

/** Stands for no line: taken from the formula. */
const NO_LINE = 99;
const LINES = 8;
const KNOWN =
  /^(misaligned|wrong or wet cable|unrated splitter in the run|bad connector|leg that passes no power|wrong port|inserter missing or weak|over-level|something not in this list|nothing is wrong|nothing stands out|check the readings)/;

const probability: Expected = {
  about: "0 to 1",
  holds: (got) => typeof got === "number" && got >= 0 && got <= 1 + 1e-9,
};
const sentence = /^[^#].{10,}/s;

/** A level beyond it is refused (its sentence). */
const MOST_LEVEL = 200;

const isInTrouble = (job: Job, figures: Cells): boolean =>
  (figures.rooms_level as Value[][]).flat().some((level) => !(Math.abs(Number(level)) <= MOST_LEVEL)) ||
  (figures.branches_level as Value[][]).flat().some(Number.isNaN) ||
  [...(figures.rooms_verdict as Value[]), ...(figures.branches_verdict as Value[])].includes("bad") ||
  field(job, "site_low") >= field(job, "site_high") ||
  rowsOf(job, "rooms").some((row, at) =>
    rowsOf(job, "rooms").some((other, second) => second > at && isSame(other.outlet, row.outlet)),
  ) ||
  rowsOf(job, "causes").some(({ chance }) => Number(chance) > 0.5);

export function diagnosed(job: Job, figures: Cells, book: Book): Cells {
  const where = namedColumn(book, "diagnosis_where").map((value) => (typeof value === "string" ? value : ""));
  const causes = namedColumn(book, "diagnosis_cause");
  const chances = namedColumn(book, "diagnosis_probability");
  const rows = rowsOf(job, "rooms");
  const column = (of: (row: Row, index: number) => Expected): Expected[] =>
    eachRow<Expected>(rows, "outlet", of, "");
  const lineOf = (name: Value | undefined): number => {
    const at = where.findIndex((one) => isSame(one, name));
    return at < 0 ? NO_LINE : at + 1;
  };
  const atHead = (row: Row): number => lineOf(headNameOf(job, row));
  const near = (row: Row): number => Math.min(lineOf(row.outlet), lineOf(row.from));
  /** The dish of its head unit, or what the feeders to it come from. */
  const atAbove = (row: Row): number => {
    const name = headNameOf(job, row);
    if (name === "") return NO_LINE;
    const feeder = rowsOf(job, "feeders").find(({ to }) => isSame(to, name));
    const head = rowsOf(job, "heads").find(({ id }) => isSame(id, name));
    const [only] = figures.aims_dish as Value[];
    return lineOf(feeder ? feeder.from : head?.dish || only);
  };
  const far = (row: Row): number => Math.min(atHead(row), atAbove(row));
  const line = (row: Row): number => Math.min(near(row), far(row));
  const isOff = (index: number): boolean => (figures.commission_verdict as Value[])[index] === "look";
  const isMeasured =
    rows.some(
      (row) =>
        isFilled(row, "outlet") &&
        ["built_low", "built_high", "built_volts"].some((key) => isFilled(row, key)),
    ) || rowsOf(job, "heads").some((row) => isFilled(row, "built_volts"));
  // It has no answer for levels that are not known, names that stand twice, or chances that cannot be.
  const isTroubled = isBookError(causes[0]) && isInTrouble(job, figures);
  const answer: Cells = isTroubled
    ? {
        diagnosis_cause: [NaN],
        diagnosis_where: [""],
        diagnosis_probability: [""],
        diagnosis_evidence: [""],
        diagnosis_next: [""],
      }
    : isMeasured
      ? {
          diagnosis_cause: causes.map((cause) => (cause === undefined ? "" : KNOWN)),
          diagnosis_where: where,
          diagnosis_probability: chances.map((chance) => (chance === undefined ? "" : probability)),
          diagnosis_evidence: causes.map((cause) => (cause === undefined ? "" : sentence)),
          diagnosis_next: causes.map((cause) => (cause === undefined ? "" : sentence)),
        }
      : {
          diagnosis_cause: ["nothing is measured yet"],
          diagnosis_where: [""],
          diagnosis_probability: [0],
          diagnosis_evidence: ["No outlet has a measured level."],
          diagnosis_next: [sentence],
        };
  const all = (cells: Cells): Cells =>
    Object.fromEntries(
      Object.entries(cells).map(([name, list]) => [
        name,
        Array.from({ length: LINES }, (_, at) => (list as Expected[])[at] ?? ""),
      ]),
    );
  return {
    ...all(answer),
    commission_at_outlet: column((row) => lineOf(row.outlet)),
    commission_at_branch: column((row) => lineOf(row.from)),
    commission_at_head: column(atHead),
    commission_at_above: column(atAbove),
    commission_near: column(near),
    commission_far: column(far),
    commission_line: column(line),
    commission_cause: column((row, index) => {
      if (!isOff(index)) return "";
      const cause = causes[line(row) - 1];
      return typeof cause === "string" ? cause : "see Diagnosis";
    }),
    commission_chance: column((row, index) => {
      if (!isOff(index)) return "";
      const chance = chances[line(row) - 1];
      return typeof chance === "number" ? chance : "";
    }),
  };
}
