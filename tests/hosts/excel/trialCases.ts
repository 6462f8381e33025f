/** The simulated Excels that an outsider wrote for “Try this Excel”: each as a stand-in, tried, with what its page shows. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { allFunctions } from "../../../src/functions/all";
import { associateAll } from "../../../src/hosts/excel/associate";
import { overall, type Trial, type Verdict } from "../../../src/pane/trial";
import { ExcelStandIn, type StandInOptions } from "../../support/excelStandIn";
import type { ArrivingBlank, Oddities } from "../../support/excel/oddities";

const project = path.join(__dirname, "..", "..", "..");

interface Wanted {
  readonly line: string;
  readonly verdict: Verdict;
  readonly mustMention: readonly string[];
  readonly accept?: readonly Verdict[];
}

interface Simulated {
  readonly api: string;
  readonly platform: string;
  readonly blankInRange: ArrivingBlank;
  readonly blankSingle: ArrivingBlank;
  readonly errorInRange: string;
  readonly spills: boolean;
  readonly addsAt: boolean;
  readonly undoGroups: string;
  readonly protect: string;
  readonly roundTripMs: number;
  readonly policyRefusesCreateWorkbook: boolean;
  readonly functions: string;
  readonly other: Readonly<Record<string, unknown>>;
}

export interface TrialCase {
  readonly id: string;
  readonly description: string;
  readonly excel: Simulated;
  readonly mustShow: readonly Wanted[];
  readonly overall: Verdict;
  readonly overallAccept?: readonly Verdict[];
}

export const trialCases = JSON.parse(
  readFileSync(path.join(project, "tests", "fixtures", "trial", "tryExcels.json"), "utf8"),
) as readonly TrialCase[];

const ANSWERING: Readonly<Record<string, Oddities["answering"]>> = {
  "#NAME?": { code: "#NAME?" },
  "#BUSY! forever": { code: "#BUSY!" },
};

export function oddOptions({ excel }: TrialCase): StandInOptions {
  const { other } = excel;
  const totals = other.demoTotals as { differs?: string; by?: number } | string;
  const grouping: Readonly<Record<string, Oddities["grouping"]>> = {
    UndoNotSupported: "unsupported",
    throws: { throws: String(other.undoThrows) },
  };
  const protection: Readonly<Record<string, Oddities["protection"]>> = {
    AccessDenied: "denied",
    lost: "lost",
  };
  const errors: Readonly<Record<string, Oddities["errorInRange"]>> = {
    "passes as text": "text",
    null: "blank",
    "refuses the call with #VALUE!": "refused",
  };
  const localName = other.valuesGiveLocalErrorText as string | undefined;
  const oddities: Oddities = {
    platform: excel.platform,
    version: String(other.version),
    displayLanguage: other.displayLanguage as string | undefined,
    decimalSeparator: other.decimalSeparator as string,
    errorTexts:
      localName === undefined ? (other.errorTexts as Record<string, string>) : { "#NAME?": localName },
    errorTextsInValues: localName !== undefined,
    calculation: other.calculationMode as Oddities["calculation"],
    date1904: other.date1904 as boolean,
    structureProtected: other.structureProtected as boolean | undefined,
    milliseconds: excel.roundTripMs,
    noFunctions: excel.platform === "iOS",
    answering:
      other.firstAnswerMs === undefined
        ? ANSWERING[excel.functions]
        : { code: "#BUSY!", milliseconds: other.firstAnswerMs as number },
    oldValues: excel.functions === "old values",
    functionsVersion: excel.functions === "wrong version" ? String(other.functionsBuild) : undefined,
    elsewhere: other.sharedMemoryMark === false,
    blankInRange: excel.blankInRange,
    blankAlone: excel.blankSingle,
    blankKinds: other.blankKinds as Oddities["blankKinds"],
    errorInRange: errors[excel.errorInRange],
    spillsNot: !excel.spills && !excel.addsAt,
    addsAt: excel.addsAt,
    wrongBy: typeof totals === "object" ? { name: "quote_total", by: totals.by! } : undefined,
    grouping: grouping[excel.undoGroups],
    protection: other.lockedWritePasses ? "ignored" : protection[excel.protect],
  };
  return {
    api: excel.api,
    refusesNew: excel.policyRefusesCreateWorkbook,
    inserting: excel.policyRefusesCreateWorkbook ? "refused" : undefined,
    opensBrowserWindows: other.openBrowserWindowApi !== false,
    oddities,
  };
}

/** Time passes as fast as the work allows. */
export async function hurried<T>(work: Promise<T>): Promise<T> {
  let isDone = false;
  const done = work.finally(() => (isDone = true));
  done.catch(() => undefined);
  while (!isDone) {
    await new Promise((resolve) => setImmediate(resolve));
    await jest.advanceTimersByTimeAsync(20);
  }
  return await done;
}

/** A server that has the files whose names are so. */
const servedFiles = (served: RegExp): (() => void) => {
  const before = globalThis.fetch;
  globalThis.fetch = async (address) => {
    const [, file] = String(address).split("/");
    if (!served.test(file!)) return new Response("", { status: 404 });
    return new Response(new Uint8Array(readFileSync(path.join(project, "templates", file!))));
  };
  return () => void (globalThis.fetch = before);
};

/** What the add-in's page has of a browser. */
const kept = new Map<string, string>();
const PAGE = {
  location: { origin: "https://addins.example.com" },
  navigator: { userAgent: "a browser" },
  localStorage: {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
    removeItem: (key: string) => void kept.delete(key),
  },
};

/** Work with a simulated Excel in place, and the add-in's functions in it. */
export async function withExcel<T>(
  options: StandInOptions,
  work: (excel: ExcelStandIn) => Promise<T>,
  served = /./,
): Promise<T> {
  const excel = new ExcelStandIn(options);
  const remove = excel.install();
  const closed = servedFiles(served);
  kept.clear();
  Object.assign(globalThis, PAGE);
  try {
    associateAll(allFunctions);
    return await work(excel);
  } finally {
    closed();
    remove();
    for (const key of Object.keys(PAGE)) delete (globalThis as Record<string, unknown>)[key];
  }
}

export const namedLine = (line: string): RegExp => new RegExp(`^${line}(:|$)`, "i");

const WORST: readonly Verdict[] = ["bad", "look", "not run", "good"];

/** @param named his line's names as the page has them */
export function judged(
  one: TrialCase,
  trial: Trial | undefined,
  named: (line: string) => RegExp,
): { line: string; wanted: string; shown: string; right: boolean }[] {
  const lines = trial?.lines ?? [];
  const rows = one.mustShow.map(({ line, verdict, accept, mustMention }) => {
    const found = lines.filter(({ what }) => named(line).test(what));
    const worst = WORST.find((each) => found.some((shown) => shown.verdict === each));
    const said = found
      .map((each) => `${each.what} ${each.found} ${each.read ?? ""}`)
      .join(" ")
      .toLowerCase();
    const mentions = mustMention.every((words) =>
      words.split("|").some((word) => said.includes(word.toLowerCase())),
    );
    const right = worst !== undefined && (accept ?? [verdict]).includes(worst) && mentions;
    return {
      line,
      wanted: `${(accept ?? [verdict]).join("|")} ${mustMention.join(", ")}`,
      shown: `${worst ?? "no such line"}: ${said.slice(0, 300)}`,
      right,
    };
  });
  const word = trial ? overall(trial) : undefined;
  rows.push({
    line: "overall",
    wanted: one.overall,
    shown: word ?? "no page",
    right: word !== undefined && [one.overall, ...(one.overallAccept ?? [])].includes(word),
  });
  return rows;
}
