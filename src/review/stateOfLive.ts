/**
 * What keeps the figures of an open workbook from being the job's, where
 * nothing here can compute them anew: one thing to know and to do first, in
 * place of a list of what follows from it.
 */
import type { Book } from "../workbooks/book";
import { about, STATES as ANSWERS } from "../workbooks/aboutNames";
import { namedValue } from "../workbooks/named";
import { silenceOf } from "../workbooks/silence";
import type { Finding } from "./finding";

const SAFE = "Your inputs are safe; results are missing, or stand still and are not to be trusted.";
const THEN = "Then check again.";

export function stateOfLive(read: Book): Finding | undefined {
  if (read.saved?.boundElsewhere) {
    return {
      weight: "doubtful",
      message:
        "Calls of our functions are bound to another add-in, or to a second copy of this one, that uses the same names. They do not compute.",
      effect: SAFE,
      remedy: `Remove the other one (Home, Add-ins), then press “Repair formulas”. ${THEN}`,
    };
  }
  const silence = silenceOf(read);
  if (silence) {
    const show = `${silence.count} ${silence.count === 1 ? "cell shows" : "cells show"} ${silence.shown}.`;
    const computing = silence.shown === "#BUSY!" || silence.shown === "#GETTING_DATA";
    return {
      weight: "doubtful",
      message: computing
        ? `Our functions are still computing: ${show}`
        : `Our functions are not loaded in this Excel, or do not answer: ${show}`,
      effect: SAFE,
      remedy: computing
        ? `Wait a little. If it stays so for a minute, close this pane, open it again and press “Repair formulas”. ${THEN}`
        : `Close this pane and open it again to load them, then press “Repair formulas”; if it stays so, ask whoever looks after the add-in. ${THEN}`,
    };
  }
  if (namedValue(read, about.state.name) !== ANSWERS.zeros) return undefined;
  return {
    weight: "wrong",
    message:
      "This Excel hands blank cells to our functions as 0: do not trust levels and volts, although prices may look right.",
    effect: "The workbook's checks fail for that, and nothing else was looked at.",
    remedy: "Update this Excel, or open the workbook in Excel on the web or on Rigsheet's own desk.",
  };
}
