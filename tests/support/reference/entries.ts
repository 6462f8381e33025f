/**
 * Which entries are missing or out of bounds, by the rules of the input cells; and which figures are 0 without a
 * reason. Of the definition only the inputs are read: what they ask for, and the bounds.
 */
import type { Block, Fields, InputRule, WorkbookDefinition } from "../../../src/workbooks/definition";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import {
  enteredRows,
  field,
  filledRows,
  isFilled,
  isSame,
  orNought,
  plain,
  sum,
  type Cells,
  type Job,
  type Row,
  type Value,
} from "./job";

/** Names or figures that Terms lists as 0 on purpose, with a reason. */
const isMeant = (job: Job, what: Value | undefined): boolean =>
  filledRows(job, "onpurpose", "what").some((row) => plain(row.what) === plain(what) && isFilled(row, "why"));

type InputPart = Fields | Block;
/** Nobody fills what the program writes for itself. */
const inputParts = ({ sheets }: WorkbookDefinition) =>
  sheets.flatMap((sheet) =>
    sheet.parts
      .filter(
        (part): part is InputPart =>
          part.kind === "fields" || (part.kind === "block" && part.record !== true),
      )
      .map((part) => ({ sheet: sheet.name, part })),
  );

export function zerosNoted(job: Job, definition: WorkbookDefinition = multiRoom): number {
  let count = 0;
  for (const { part } of inputParts(definition)) {
    if (part.kind === "fields") {
      for (const { name, label, input } of part.fields)
        if (input?.zero === "note" && job.fields[name] === 0 && !isMeant(job, label)) count++;
    } else
      for (const { key, input } of part.columns)
        if (input?.zero === "note")
          for (const row of enteredRows(job, part.name))
            if (row[key] === 0 && !isMeant(job, row[part.rowName ?? part.columns[0]!.key])) count++;
  }
  return count;
}

/** Whether what stands in an input cell is what it asks for. */
function isWithin(definition: WorkbookDefinition, job: Job, value: Value, { rule }: InputRule): boolean {
  switch (rule.kind) {
    case "number": {
      if (rule.orWords?.includes(String(value))) return true;
      if (typeof value !== "number") return false;
      const isBeyond = (over: number, { orEqual }: { orEqual?: true }): boolean =>
        over < 0 || (over === 0 && !orEqual);
      const isBound =
        (rule.atLeast && isBeyond(value - field(job, rule.atLeast.name), rule.atLeast)) ||
        (rule.atMost && isBeyond(field(job, rule.atMost.name) - value, rule.atMost));
      return (
        value >= (rule.min ?? -Infinity) &&
        value <= (rule.max ?? Infinity) &&
        (!rule.integer || Number.isInteger(value)) &&
        !isBound
      );
    }
    case "date":
      return typeof value === "number" && value > 0;
    case "choice":
      return rule.choices.some((choice) => plain(choice) === plain(value));
    case "named":
      return offered(definition, job, rule.name).some((name) => plain(name) === plain(value));
    default:
      return true;
  }
}
function offered({ sheets }: WorkbookDefinition, job: Job, name: string): Value[] {
  const words = sheets
    .flatMap(({ parts }) => parts)
    .find((part) => part.kind === "words" && part.name === name);
  if (words?.kind === "words") return [...words.words];
  const [block, key] = name.split("_") as [string, string];
  return filledRows(job, block, key).map((row) => row[key]!);
}

/** By a sheet's part where the sheet has several that are asked about one by one. */
export function entriesOf(
  job: Job,
  cells: Cells,
  definition: WorkbookDefinition = multiRoom,
): Readonly<Record<string, number>> {
  const found = new Map<string, number>();
  for (const { sheet, part } of inputParts(definition)) {
    const inputs = part.kind === "fields" ? part.fields : part.columns;
    if (!inputs.some(({ input }) => input)) continue;
    const many = ["Site", "Standards", "Parts"].includes(sheet);
    const what = `Entries missing or out of bounds: ${sheet}${many ? `, ${part.heading[0]!.toLowerCase()}${part.heading.slice(1)}` : ""}`;
    const count =
      part.kind === "fields"
        ? part.fields.filter(
            ({ name, input }) =>
              input && isWrong(definition, job, cells, job.fields, name, name, input, undefined),
          ).length
        : sum(enteredRows(job, part.name).map((row, at) => wrongIn(definition, job, cells, part, row, at)));
    found.set(what, (found.get(what) ?? 0) + count);
  }
  return Object.fromEntries(found);
}

const wrongIn = (
  definition: WorkbookDefinition,
  job: Job,
  cells: Cells,
  part: Block,
  row: Row,
  at: number,
): number => {
  if (Object.keys(row).length === 0) return 0;
  // Of a row that has no name only that is told.
  if (!isFilled(row, part.rowName ?? part.columns[0]!.key)) return 1;
  return part.columns.filter(
    ({ key, input }) =>
      input && isWrong(definition, job, cells, row, key, `${part.name}_${key}`, input, { part, at }),
  ).length;
};

/** What only some rows need, in words of its own: the rules' formulas are not read. */
const NEEDED: Readonly<Record<string, (row: Row, job: Job) => boolean>> = {
  crew_size: (_, job) => filledRows(job, "sites", "name").some(({ per }) => per === "person and day"),
  // Whatever is paid by the day asks how many there are.
  crew_hours: (fields, job) =>
    !isFilled(fields, "crew_days") &&
    (enteredRows(job, "labour").some(({ per_day: often }) => Number(often ?? 0) > 0) ||
      filledRows(job, "sites", "name").some(
        (row) => !isFilled(row, "days") && ["day on site", "person and day"].includes(String(row.per)),
      )),
  cables_like: (row) => !isFilled(row, "k1"),
  ...Object.fromEntries(
    ["k1", "k2", "k0"].map((key) => [
      `cables_${key}`,
      (row: Row) => ["k1", "k2", "k0"].some((one) => isFilled(row, one)),
    ]),
  ),
  passives_through_low: ({ kind }) => kind === "tap",
  passives_through_high: ({ kind }) => kind === "tap",
  passives_port_low: ({ kind }) => kind !== "amplifier",
  passives_port_high: ({ kind }) => kind !== "amplifier",
  ...Object.fromEntries(
    ["gain_low", "gain_high", "noise", "load", "least"].map((key) => [
      `passives_${key}`,
      ({ kind }: Row) => kind === "amplifier",
    ]),
  ),
  units_in_low: (row) => isFilled(row, "in_high"),
  units_in_high: (row) => isFilled(row, "in_low"),
  units_onward_low: (row) => isFilled(row, "onward_high"),
  units_onward_high: (row) => isFilled(row, "onward_low"),
  plates_through_low: (row) => isFilled(row, "through_high"),
  plates_through_high: (row) => isFilled(row, "through_low"),
  // A type may say it; where it does not, the row's verdict does.
  rooms_run: (row) => !isFilled(row, "type"),
  // What it is made of has a price as well.
  options_instead: (row) => orNought(row, "each") < 0,
  options_each: (row, job) =>
    !filledRows(job, "made", "option").some(({ option }) => isSame(option, row.name)),
  discount_reason: (row) => isFilled(row, "discount_sum") || isFilled(row, "discount_share"),
};

function isWrong(
  definition: WorkbookDefinition,
  job: Job,
  cells: Cells,
  row: Row,
  key: string,
  name: string,
  input: InputRule,
  place: { part: Block; at: number } | undefined,
): boolean {
  if (!isFilled(row, key)) {
    const isName = place && key === (place.part.rowName ?? place.part.columns[0]!.key);
    if (isName) return true;
    return typeof input.required === "string" ? NEEDED[name]!(row, job) : input.required === true;
  }
  const value = row[key]!;
  if (value === 0 && input.zero === "reason") {
    // Of a part that is bought, of work that is done; where nothing is bought, of each.
    const bought: Readonly<Record<string, string>> = {
      minutes: place?.part.name === "routes" ? "route_work_length" : "work_quantity",
      price: `${place?.part.name}_bought_quantity`,
    };
    const amounts = cells[bought[key] ?? ""] as Value[] | undefined;
    const often = place && amounts ? Number(amounts[place.at]) : 1;
    return often > 0 && !isMeant(job, row[place!.part.columns[0]!.key]);
  }
  return !isWithin(definition, job, value, input);
}
