/** Whether functions answer in this Excel, whose they are, and whether they follow their inputs. */
import { NAMESPACE } from "../../../formula/namespace";
import { RIGSHEET_VERSION } from "../../../version";
import { azimuthFormula, azimuthOf, drawn } from "./drawn";
import {
  bad,
  calculated,
  entered,
  good,
  isBusy,
  look,
  sameNumber,
  settled,
  sheetOf,
  shown,
  type Settled,
  type Step,
} from "./steps";

const CALL = "C2";
const INPUT = "A2";
const PROMPT_MS = 5_000;
/** An error that stands so long is no sign of a late start. */
const ERROR_PATIENCE_MS = 5_000;

const sets = (set: string): boolean => Office.context.requirements.isSetSupported(set, "1.1");

export const answers: Step = {
  what: "Functions answer",
  run: async (context, ground) => {
    if (!sets("CustomFunctionsRuntime")) {
      ground.silence = "this Excel has no custom functions (CustomFunctionsRuntime 1.1), as on an iPad";
      return bad(`${ground.silence}: use Excel on a computer or on the web, or Rigsheet's own desk`);
    }
    const latitude = drawn();
    const wanted = azimuthOf(latitude);
    const call = { at: CALL, formula: azimuthFormula(latitude) };
    const isRight = ([row]: unknown[][]): boolean => sameNumber(row![0], wanted);
    let errorSince: number | undefined;
    const orStandsAtAnError = (values: unknown[][], [row]: boolean[][]): boolean => {
      if (!row![0]) errorSince = undefined;
      else errorSince ??= performance.now();
      return (
        isRight(values) || (errorSince !== undefined && performance.now() - errorSince >= ERROR_PATIENCE_MS)
      );
    };
    const first = await entered(context, ground, call, orStandsAtAnError);
    const read = `${call.formula} gave ${shown(first.values[0]![0])}, expected ${wanted}, after ${first.milliseconds} ms`;
    if (isRight(first.values)) {
      const seconds = (first.milliseconds / 1000).toFixed(1);
      return first.milliseconds <= PROMPT_MS
        ? good(`the right number after ${seconds} s`, read)
        : look(`the right number, but only after ${seconds} s: wait as long after opening a workbook`, read);
    }
    errorSince = undefined;
    const again = isBusy(first.values[0]![0])
      ? first
      : await entered(context, ground, call, orStandsAtAnError);
    const both = `${read}; entered again ${shown(again.values[0]![0])}`;
    if (isRight(again.values)) return look("the right number, but only when it was entered again", both);
    ground.silence = `the functions do not answer: ${shown(again.values[0]![0])} after ${Math.round((first.milliseconds + (again === first ? 0 : again.milliseconds)) / 1000)} s`;
    return bad(
      `${ground.silence}. Load the add-in again (Home, Add-ins, Rigsheet), and press once more`,
      both,
    );
  },
};

export const whose: Step = {
  what: "Which add-in answers",
  needs: "functions",
  run: async (context, ground) => {
    const { values } = await entered(context, ground, { at: "C3", formula: `=${NAMESPACE}.VERSION()` });
    sheetOf(context, ground).getRange("C3").clear("Contents");
    await context.sync();
    const version = String(values[0]![0]);
    const isHeard = ground.heard.some(({ name }) => name === "AZIMUTH");
    const read = `version ${version}, pane ${RIGSHEET_VERSION}; the pane ${isHeard ? "heard" : "did not hear"} the call`;
    if (version !== RIGSHEET_VERSION)
      return bad(
        `functions of version ${version} answer, and the pane is ${RIGSHEET_VERSION}: figures may differ. Close Excel for good and open it again; its cache can hold an older file for 24 hours`,
        read,
      );
    if (isHeard) return good(`version ${version}, and the call arrived in this very pane`, read);
    return sets("SharedRuntime")
      ? bad(
          "the right numbers, but the call did not arrive in this pane: another add-in with the same names answers, or another copy of this one. Remove the other one under Home, Add-ins",
          read,
        )
      : look("this Excel has no shared runtime, so only the version can be compared", read);
  },
};

export const fresh: Step = {
  what: "Fresh results",
  needs: "functions",
  run: async (context, ground) => {
    const input = sheetOf(context, ground).getRange(INPUT);
    const call = sheetOf(context, ground).getRange("C4");
    input.values = [[drawn()]];
    call.formulas = [[azimuthFormula(INPUT)]];
    calculated(context, ground);
    const first = await settled(context, call);
    let before = first.values[0]![0];
    const readings = [`first ${shown(before)}`];
    for (const latitude of [drawn(), drawn()]) {
      const wanted = azimuthOf(latitude);
      const isRight = ([row]: unknown[][]): boolean => sameNumber(row![0], wanted);
      input.values = [[latitude]];
      calculated(context, ground);
      let now: Settled = await settled(context, call, isRight);
      readings.push(
        `after ${latitude}: ${shown(now.values[0]![0])}, expected ${wanted}, ${now.milliseconds} ms`,
      );
      if (!now.done) {
        call.calculate();
        now = await settled(context, call, isRight);
        readings.push(`calculated by itself: ${shown(now.values[0]![0])}`);
        const old = `the old value stayed after its input had changed (${shown(before)})`;
        if (now.done) return look(`${old}, until the cell was calculated by itself`, readings.join("; "));
        ground.oldValues = `${old}; see Fresh results`;
        return bad(`${old}: figures would be wrong without anyone noticing`, readings.join("; "));
      }
      before = now.values[0]![0];
    }
    return good(
      ground.manual
        ? "two changes of the input followed, when the trial's sheet was calculated"
        : "two changes of the input followed by themselves",
      readings.join("; "),
    );
  },
};

export const omitted: Step = {
  what: "Omitted argument",
  needs: "functions",
  run: async (context, ground) => {
    const before = ground.heard.length;
    await entered(context, ground, { at: "C5", formula: `=${NAMESPACE}.VERSION()` });
    const call = ground.heard.slice(before).findLast(({ name }) => name === "VERSION");
    sheetOf(context, ground).getRange("C5").clear("Contents");
    await context.sync();
    if (!call) return look("the call was not heard by the pane, so what arrives is not seen");
    const read = JSON.stringify(call.args);
    const isOmitted = call.args.flat(2).every((one) => one === null || one === undefined);
    return isOmitted
      ? good("arrives as nothing, so defaults hold", read)
      : bad(`arrives as ${read}: defaults do not hold`, read);
  },
};
