/**
 * Each change, with a fault at each of its calls in turn: afterwards the
 * workbook is as it was, or all is done, or a sentence says what is left.
 * Which codes a call can answer with is not documented call by call, so that
 * each kind of call meets all of them, and each single call one; a quick run
 * tries every fourth call, and two codes for each kind.
 */
import { ExcelHost } from "../../../src/hosts/excel/excelHost";
import { settleOwed } from "../../../src/hosts/excel/inExcel";
import { HostTrouble } from "../../../src/pane/host";
import { officeError } from "../../support/excel/strict";
import { setOfMember } from "../../support/excel/requirementSets";
import { undoOf } from "../../support/excel/undoSupport";
import { ExcelStandIn } from "../../support/excelStandIn";
import { tries } from "../../support/tries";
import { DOINGS, type Doing } from "../../support/excelFaults/doings";
import { seen } from "../../support/excelFaults/ground";

const LONG_MS = 240_000;
const CODES = [
  "AccessDenied",
  "GeneralException",
  "RequestAborted",
  "InvalidOperationInCellEditMode",
  "UndoNotSupported",
  "ApiNotFound",
];
/** What says that something is left, and what to do about it. */
const LEFT = /Ctrl\+Z|may still show|without a password|still show #NAME/;
const NO_CODES = /^(?:TypeError|undefined|\[object)/;

interface Outcome {
  readonly before: unknown;
  readonly after: unknown;
  /** The files that were handed over. */
  readonly created: number;
  readonly told: unknown;
}

async function outcomeOf(
  { open, options, prepare, act }: Doing,
  call: (member: string, index?: number, grouped?: boolean) => void,
  andThen?: (excel: ExcelStandIn) => Promise<void>,
): Promise<Outcome> {
  let isOn = false;
  const excel = new ExcelStandIn({
    ...options,
    happens: { call: (...given) => (isOn ? call(...given) : undefined) },
  });
  const remove = excel.install();
  try {
    const book = open?.();
    if (book) excel.state.open(book);
    await prepare?.(excel);
    const before = seen(excel);
    let told: unknown;
    isOn = true;
    try {
      told = await act(new ExcelHost());
    } catch (error) {
      told = error;
    }
    isOn = false;
    const outcome = { before, after: seen(excel), created: excel.created.length, told };
    await andThen?.(excel);
    // Nothing of this workbook is owed to the next.
    await settleOwed();
    return outcome;
  } finally {
    remove();
  }
}

/** How a fault ended, in a word; throws where it is none of those that may be. */
function ending({ before, after, told }: Outcome, wanted: Outcome): "as before" | "done" | "said" {
  if (told instanceof Error && !(told instanceof HostTrouble)) throw told;
  if (told instanceof Error) {
    expect(told.message).not.toMatch(NO_CODES);
    if (JSON.stringify(after) === JSON.stringify(before)) return "as before";
    if (!LEFT.test(told.message)) expect([told.message, after]).toEqual([told.message, before]);
    return "said";
  }
  // What is not taken from a file is built, without its protection, and that is said.
  const built = /cell by cell/.test(String(told)) && { guards: [] };
  const due = { ...(wanted.after as object), ...built };
  if (JSON.stringify(after) !== JSON.stringify(due)) expect([told, after]).toEqual([told, due]);
  return "done";
}

/** @param again the kind of call was met before */
function codesFor(again: boolean, at: number): readonly string[] {
  const [one, other] = [CODES[at % CODES.length]!, CODES[(at + 2) % CODES.length]!];
  if (again) return at % tries(4, 1) === 0 ? [one] : [];
  return tries(0, 1) === 0 ? [one, other] : CODES;
}

const recorded: string[] = [];
afterAll(() => void process.stdout.write(`Faults at each call:\n${recorded.join("\n")}\n`));

describe.each(DOINGS.map((one) => [one.what, one] as const))("%s", (what, doing) => {
  let wanted: Outcome;
  const calls: string[] = [];
  beforeAll(async () => {
    wanted = await outcomeOf(doing, (member, _, grouped) => {
      // What was tried in a group and refused there is tried again without.
      if (grouped !== true || undoOf(member) === "yes") calls.push(member);
    });
    if (wanted.told instanceof Error) throw wanted.told;
  }, LONG_MS);

  test(
    "a fault at each call",
    async () => {
      const met = new Set<string>();
      const endings = new Map<string, number>();
      let runs = 0;
      for (const [at, member] of calls.entries()) {
        const codes = codesFor(met.has(member), at);
        met.add(member);
        for (const code of codes) {
          let index = -1;
          const outcome = await outcomeOf(doing, () => {
            index += 1;
            if (index === at) throw officeError(code, "It was refused.");
          });
          runs += 1;
          try {
            const end = ending(outcome, wanted);
            endings.set(end, (endings.get(end) ?? 0) + 1);
          } catch (error) {
            throw new Error(`${code} at call ${at}, ${member}: ${String((error as Error).message)}`, {
              cause: error,
            });
          }
        }
      }
      recorded.push(
        `  ${what}: ${calls.length} calls, ${runs} faults: ${[...endings].map(([end, count]) => `${end} ${count}`).join(", ")}`,
      );
      expect(calls.length).toBeGreaterThan(0);
    },
    LONG_MS,
  );

  test(
    "no connection from a call on: said, and the next press brings it to its end",
    async () => {
      // The first and the last call of each kind: between them lies more of the same.
      const chosen = calls.flatMap((member, at) =>
        calls.indexOf(member) === at || calls.lastIndexOf(member) === at ? [at] : [],
      );
      for (const at of chosen.filter((_, index) => index % tries(3, 1) === 0)) {
        let index = -1;
        let later: unknown;
        const outcome = await outcomeOf(
          doing,
          () => {
            index += 1;
            if (index >= at) throw officeError("RequestAborted", "The request was aborted.");
          },
          async (excel) => {
            // Done all the same, it has nothing more to do.
            if (outcomeIsDone(excel)) return;
            await doing.prepare?.(excel);
            await doing.act(new ExcelHost());
            later = seen(excel);
          },
        );
        ending(outcome, wanted);
        const built = /cell by cell/.test(String(wanted.told)) ? {} : { guards: expect.anything() };
        if (later) expect(later).toEqual({ ...(wanted.after as object), ...built });
      }
      function outcomeIsDone(excel: ExcelStandIn): boolean {
        return JSON.stringify(seen(excel)) === JSON.stringify(wanted.after);
      }
    },
    LONG_MS,
  );

  test(
    "what can't be taken back is not asked for in a group without a plain way",
    async () => {
      // Excel that refuses by the whole table, the web's and the desktop's part of it too.
      const { after, told } = await outcomeOf(doing, (member, _, grouped) => {
        if (grouped && undoOf(member) !== "yes") throw officeError("UndoNotSupported", "Not in a group.");
      });
      expect(told).toEqual(wanted.told);
      expect(after).toEqual(wanted.after);
      // Every call is one that Excel has.
      expect(calls.filter((member) => setOfMember(member) === "unknown")).toEqual([]);
      const kept = [...new Set(calls)].flatMap((member) =>
        undoOf(member) === "yes" ? [] : [`${member} (${undoOf(member)})`],
      );
      recorded.push(`  ${what}: can't be taken back: ${kept.join(", ") || "none"}`);
    },
    LONG_MS,
  );
});
