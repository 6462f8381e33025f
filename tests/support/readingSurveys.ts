/** Surveys of readings made by someone who had not seen the code: filled in, diagnosed and judged. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { upgrade } from "../../src/upgrade/upgrade";
import type { JobInputs } from "../../src/workbooks/definition";
import { jobInputsOf } from "../../src/workbooks/jobInputsOf";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { diagnosisOf, type JobDiagnosis } from "../../src/workbooks/multiRoom/diagnosisOf";
import { placeOfName } from "../../src/workbooks/named";

const FOLDER = path.join(__dirname, "..", "fixtures", "readings");

export interface Survey {
  readonly id: string;
  readonly workbook: string;
  readonly fault: string;
  readonly readings: Readonly<Record<string, Readonly<Record<string, number | string | boolean>> | number[]>>;
  readonly expect: {
    readonly refuseOrAsk: boolean;
    readonly says: readonly string[];
    readonly causeFirst: { readonly anyOf: readonly string[]; readonly where: readonly string[] } | null;
    readonly mustNotSay: readonly string[];
    readonly exit: number | string;
    readonly grade: "must" | "wish";
  };
}

export const surveys = JSON.parse(readFileSync(path.join(FOLDER, "readings.json"), "utf8")) as Survey[];

const FILES: Readonly<Record<string, string>> = {
  "multi-room-demonstration.xlsx": "guest-house.xlsx",
  "multi-room-apartment-block.xlsx": "apartment-block.xlsx",
};
const jobInputs = new Map<string, Promise<JobInputs>>();

function fillingIn(workbook: string): Promise<JobInputs> {
  let inputs = jobInputs.get(workbook);
  if (!inputs) {
    const bytes = readFileSync(path.join(FOLDER, FILES[workbook]!));
    inputs = readXlsx(bytes).then((book) => {
      // They are of the sheets before dishes and devices: as today's workbook has them.
      const made = upgrade(book);
      if (!("book" in made)) throw new Error(made.sentence);
      return asThen(jobInputsOf(multiRoom, made.book));
    });
    jobInputs.set(workbook, inputs);
  }
  return inputs;
}

/** What the sheets of then took for granted: each head unit has a dish of its own, and its supply's volts reach the outlets. */
function asThen(inputs: JobInputs): JobInputs {
  const { heads = [], supplies = [] } = inputs.blocks!;
  const dishOf = (id: unknown): string => `dish of ${String(id)}`;
  return {
    ...inputs,
    blocks: {
      ...inputs.blocks,
      dishes: heads.map(({ id }) => ({ name: dishOf(id), off_focus: 1 })),
      heads: heads.map((row) => ({ ...row, dish: dishOf(row.id) })),
      supplies: supplies.map((row) => ({ ...row, other_side: "all ports" })),
    },
  };
}

/** Fills a survey into its job, as typed, and has it diagnosed. */
export async function diagnosed(survey: Survey): Promise<JobDiagnosis> {
  const inputs = structuredClone(await fillingIn(survey.workbook)) as {
    fields: Record<string, number | string>;
    blocks: Record<string, Record<string, number | string>[]>;
  };
  const book = layOut(multiRoom, inputs);
  for (const [name, typed] of Object.entries(survey.readings)) {
    const place = book.names.find((one) => one.name === name);
    if (!place) throw new Error(`no cells ${name}`);
    const sheet = book.sheets.find((one) => one.name === place.sheet)!;
    if (Array.isArray(typed)) {
      // Typed over the formulas of the sheet Diagnosis.
      const [, column, row] = /^([A-Z]+)(\d+)/.exec(place.range)!;
      typed.forEach((value, at) => {
        sheet.cells[`${String.fromCharCode(column!.charCodeAt(0) + at)}${row}`] = { value };
      });
      continue;
    }
    const [block, key] = name.startsWith("heads_")
      ? (["heads", "id"] as const)
      : (["rooms", "outlet"] as const);
    const first = placeOfName(book, name)!.at;
    const [, letters, top] = /^([A-Z]+)(\d+)$/.exec(first)!;
    const rows = inputs.blocks[block]!;
    for (const [who, value] of Object.entries(typed)) {
      const row = rows.findIndex((one) => String(one[key]) === who);
      if (row < 0) throw new Error(`no ${who} in ${block}`);
      const at = `${letters}${Number(top) + row}`;
      const look = sheet.cells[at]?.look;
      sheet.cells[at] =
        typeof value === "string" && value.startsWith("=")
          ? { formula: value.slice(1), look }
          : { value, look };
    }
  }
  return diagnosisOf(recalculate(book))!;
}

/** Named as a cause: on the first line, or with more than a passing chance. */
const NAMED = 0.2;

/** @returns what is not as the survey's maker expects; nothing where all is */
export function failingsOf({ expect }: Survey, found: JobDiagnosis): string[] {
  const failings: string[] = [];
  const asks = (cause: string): boolean => cause.startsWith("check the");
  const causes = found.causes.filter(({ cause }) => !asks(cause));
  const real = causes.filter(({ cause }) => !cause.startsWith("nothing "));
  const first = causes[0];
  const asked = found.trouble !== undefined || (found.causes[0] !== undefined && asks(found.causes[0].cause));
  const text = [
    found.trouble ?? "",
    ...found.causes.flatMap(({ cause, where, evidence, next }) => [cause, where, evidence, next]),
  ]
    .join("\n")
    .toLowerCase();

  const evidence = found.causes.map((one) => one.evidence.toLowerCase()).join("\n");

  if (expect.refuseOrAsk && !asked) failings.push("does not ask");
  for (const word of expect.says)
    // An address is the cell's that was read from; the outlet is named in its place.
    if (!word.startsWith("Rooms!") && !text.includes(word.toLowerCase()))
      failings.push(`does not say ${word}`);
  if (expect.causeFirst) {
    const { anyOf, where } = expect.causeFirst;
    if (!first || !anyOf.some((cause) => first.cause.includes(cause)))
      failings.push(`first is ${first?.cause ?? found.trouble}`);
    else if (!where.includes("all") && !where.some((place) => first.where.includes(place)))
      failings.push(`first is at ${first.where}`);
  }
  const named = real.filter((one) => one.probability >= NAMED || one === first);
  for (const not of expect.mustNotSay) {
    const over = /^probability over (\d+) %/.exec(not);
    const place = /\b[A-Z]-?\d+\b/.exec(not)?.[0];
    const at = /^(.+?) (?:missing )?(?:at|alone)?\s?.*first$/.exec(not);
    if (over) {
      if (real.some(({ probability }) => probability > Number(over[1]) / 100)) failings.push(`says ${not}`);
    } else if (not.startsWith("any number for a ")) {
      if (
        evidence.includes(not.includes("high-end") ? "at the highest frequency" : "at the lowest frequency")
      )
        failings.push(`says ${not}`);
    } else if (not.endsWith(" first")) {
      const cause = (at?.[1] ?? not.slice(0, -6)).replace(/ (missing|at).*$/, "");
      if (first && (first.cause.startsWith(cause) || first.where === cause)) failings.push(`says ${not}`);
    } else if (/over (\d+) %/.test(not)) {
      const least = Number(/over (\d+) %/.exec(not)![1]) / 100;
      const cause = not.replace(/ (at|with) .*$/, "");
      if (
        real.some(
          (one) => one.cause.startsWith(cause) && (!place || one.where === place) && one.probability > least,
        )
      )
        failings.push(`says ${not}`);
    } else if (named.some(({ cause, where }) => cause.startsWith(not) || where === not))
      failings.push(`says ${not}`);
  }
  const exit =
    first === undefined || found.trouble !== undefined || asked || !first.cause.startsWith("nothing ")
      ? 1
      : 0;
  if (typeof expect.exit === "number" && expect.exit !== exit) failings.push(`exit ${exit}`);
  return failings;
}
