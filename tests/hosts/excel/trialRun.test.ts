/** “Try this Excel” where it is broken off, pressed twice, or where work of a person's stands in the workbook. */
import type { ExcelHost } from "../../../src/hosts/excel/excelHost";
import { demonstrations, firstNumber } from "../../../src/hosts/excel/trial/demonstrations";
import { RULES, trialText, type Trial } from "../../../src/pane/trial";
import { tryExcel } from "../../../src/pane/views/tryExcel";
import type { PaneHost } from "../../../src/pane/host";
import { recalculate } from "../../../src/hosts/headless/recalculate";
import { namedValue } from "../../../src/workbooks/named";
import { layOut } from "../../../src/workbooks/layOut";
import { singleDrop, singleDropExample } from "../../../src/workbooks/singleDrop/definition";
import type { ExcelStandIn, StandInOptions } from "../../support/excelStandIn";
import { hurried, judged, namedLine, oddOptions, trialCases, withExcel as withAllFiles } from "./trialCases";

beforeEach(() => void jest.useFakeTimers({ doNotFake: ["setImmediate", "nextTick", "queueMicrotask"] }));
afterEach(() => void jest.useRealTimers());

const OWN = "Rigsheet trial";
/** Without the large demonstrations, which take their time. */
const withExcel = (options: StandInOptions, work: (excel: ExcelStandIn) => Promise<void>): Promise<void> =>
  withAllFiles(options, work, /^(single-drop|alignment-card|quote-review)/);
const usual = trialCases.find(({ id }) => id === "01-all-as-designed")!;
const sheetNames = ({ state }: ExcelStandIn): string[] => state.book.sheets.map(({ name }) => name);

/** The add-in's page, loaded anew. */
async function reloaded(): Promise<ExcelHost> {
  let host: ExcelHost | undefined;
  await jest.isolateModulesAsync(async () => {
    const module = await import("../../../src/hosts/excel/excelHost");
    host = new module.ExcelHost();
  });
  return host!;
}

/** A trial that the closing of the pane breaks off after a line. */
async function brokenOff(excel: ExcelStandIn, after: string): Promise<void> {
  const host = await reloaded();
  let isBroken = false;
  void host.tryExcel({
    tell: ({ what }) => {
      if (what !== after) return;
      isBroken = true;
      excel.isStopped = true;
    },
  });
  await hurried(untilTrue(() => isBroken));
  excel.isStopped = false;
}

async function untilTrue(is: () => boolean): Promise<void> {
  while (!is()) await new Promise((resolve) => setTimeout(resolve, 10));
}

test("39-interrupted: the next pane shows the page so far, and the next press removes what was left", async () => {
  const one = trialCases.find(({ id }) => id === "39-interrupted")!;
  await withExcel(oddOptions(one), async (excel) => {
    await brokenOff(excel, "Blank alone");
    expect(sheetNames(excel)).toEqual(["Sheet1", OWN]);
    const host = await reloaded();
    const trial = host.interruptedTrial()!;
    expect(judged(one, trial, namedLine).filter(({ right }) => !right)).toEqual([]);
    expect(trialText(trial, "1.2.3")).toMatch(
      /Stopped after “Blank alone”.*“Rigsheet trial” may still be there/,
    );
    const again = await hurried(host.tryExcel({ tell: () => undefined }));
    expect(sheetNames(excel)).toEqual(["Sheet1"]);
    expect(again.lines[0]!.found).toMatch(/an earlier trial had left was removed/);
    expect(host.interruptedTrial()).toBeUndefined();
  });
});

test("broken off within a demonstration: its sheets go, but not one that has been made anew under its name", () =>
  withExcel(oddOptions(usual), async (excel) => {
    const { state } = excel;
    await brokenOff(excel, "Demonstration totals: Single-drop check");
    // As it stood in the middle of the next one: two sheets in the workbook, one of them not the trial's.
    for (const name of ["Drop", "Card"]) state.addSheet(name);
    state.enter(
      OWN,
      "B1",
      `'${JSON.stringify([
        ["Drop", state.idOf("Drop")],
        ["Card", "{of another}"],
      ])}`,
    );
    await hurried((await reloaded()).tryExcel({ tell: () => undefined }));
    expect(sheetNames(excel)).toEqual(["Sheet1", "Card"]);
  }));

test("41-second-press: one run, one sheet, and a sentence", () =>
  withExcel(oddOptions(usual), async (excel) => {
    const host = await reloaded();
    const said: string[] = [];
    let most = 0;
    const trial = await hurried(
      host.tryExcel({
        tell: ({ what }) => {
          most = Math.max(most, sheetNames(excel).filter((name) => name.startsWith(OWN)).length);
          if (what === "Functions answer")
            host.tryExcel({ tell: () => undefined }).catch((error: Error) => said.push(error.message));
        },
      }),
    );
    expect(said).toEqual([expect.stringMatching(/running already/)]);
    expect(most).toBe(1);
    expect(trial.lines.filter(({ verdict }) => verdict === "bad")).toEqual([]);
  }));

test("while a cell is edited nothing is begun, and it is said", () =>
  withExcel(oddOptions(usual), async (excel) => {
    excel.editing = true;
    const host = await reloaded();
    await expect(hurried(host.tryExcel({ tell: () => undefined }))).rejects.toThrow(/A cell is being edited/);
    expect(sheetNames(excel)).toEqual(["Sheet1"]);
    expect(host.interruptedTrial()).toBeUndefined();
    excel.editing = false;
    const trial = await hurried(host.tryExcel({ tell: () => undefined }));
    expect(trial.stopped).toBeUndefined();
  }));

test("a person's job stays as it is: the demonstrations do not come into it", () =>
  withExcel(oddOptions(usual), async (excel) => {
    const { state } = excel;
    state.open(recalculate(layOut(singleDrop, singleDropExample)));
    await excel.choose("Drop", "B8");
    const held = () => ({
      sheets: state.book.sheets.map(({ name, cells }) => [
        name,
        Object.fromEntries(
          Object.entries(cells).flatMap(([at, { value, formula }]) =>
            value === undefined && formula === undefined ? [] : [[at, formula ?? value]],
          ),
        ),
      ]),
      names: state.book.names.map(({ name, sheet, range }) => `${name} ${sheet} ${range}`).sort(),
      properties: [...state.properties],
      guards: [...state.protectedSheets],
      active: state.active,
    });
    const before = JSON.parse(JSON.stringify(held())) as object;
    const trial = await hurried((await reloaded()).tryExcel({ tell: () => undefined }));
    expect(held()).toEqual(before);
    const totals = trial.lines.filter(({ what }) => what.startsWith("Demonstration totals"));
    expect(new Set(totals.map(({ verdict, found }) => `${verdict} ${found}`))).toEqual(
      new Set([expect.stringMatching(/^not run .*a job made from a template/) as unknown as string]),
    );
  }));

test("sheets of a demonstration that can't be taken out again are named", () =>
  withExcel(oddOptions(usual), async (excel) => {
    const tell = ({ what }: { what: string }): void => {
      if (what === "File handed over")
        excel.state.oddities = { ...excel.state.oddities, deletingThrows: "AccessDenied" };
    };
    const trial = await hurried((await reloaded()).tryExcel({ tell }));
    const last = trial.lines.find(({ what }) => what === "Left nothing behind")!;
    expect(last.verdict).toBe("bad");
    for (const name of sheetNames(excel).slice(1)) expect(last.found).toContain(`“${name}”`);
    expect(trial.lines.filter(({ found }) => /earlier demonstration could not/.test(found))).toHaveLength(2);
  }));

test.each(demonstrations.map((one) => [one.file, one] as const))(
  "%s: the total with moved inputs is the desk's",
  (_, { book, inputs, total, moved }) => {
    const filled = book();
    for (const name of inputs) {
      const { sheet, at, value } = firstNumber(filled, name);
      Object.assign(filled.sheets.find((one) => one.name === sheet)!.cells[at]!, { value: value + 1 });
    }
    expect(namedValue(recalculate(filled), total)).toBeCloseTo(moved, 9);
    expect(namedValue(recalculate(book()), total)).not.toBeCloseTo(moved, 2);
  },
);

test("the page tells how it judges, and whether a program has the view", () => {
  const trial: Trial = { began: "", seconds: 1, facts: [], lines: [] };
  for (const rule of RULES) expect(trialText(trial, "1.2.3")).toContain(rule);
  expect(tryExcel.isFor!({} as PaneHost)).toBe(false);
});
