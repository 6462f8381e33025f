/** The pane: one frame around its views, for whichever host opens it. */
import { Frame } from "./frame";
import { USUAL_PREFERENCES, type PaneHost, type Selection } from "./host";
import { warningsOf, type Warning } from "./versions";
import type { PaneContext, View } from "./view";
import { addRows } from "./views/addRows";
import { cautions } from "./views/cautions";
import { check } from "./views/check";
import { copies } from "./views/copies";
import { diagnose } from "./views/diagnose";
import { enterAgain } from "./views/enterAgain";
import { findFunction } from "./views/findFunction";
import { pictures } from "./views/pictures";
import { prices } from "./views/prices";
import { readTable } from "./views/readTable";
import { settings } from "./views/settings";
import { standards } from "./views/standards";
import { start } from "./views/start";
import { steps } from "./views/steps";
import { floors } from "./views/floors";
import { survey } from "./views/survey";
import { training } from "./views/training";
import { tryExcel } from "./views/tryExcel";
import { upgrade } from "./views/upgrade";
import { whyCell } from "./views/whyCell";
import { working } from "./views/working";

/** What a person is doing, and what helps with it; the first of each comes up until another was chosen. */
const GROUPS: readonly { readonly label: string; readonly views: readonly View[] }[] = [
  { label: "Start", views: [start, upgrade, settings, tryExcel] },
  { label: "Fill in", views: [steps, addRows, survey, floors, standards, prices] },
  { label: "Check", views: [check, whyCell, readTable, diagnose, enterAgain] },
  { label: "Hand over", views: [copies, pictures] },
  { label: "Learn", views: [findFunction, working, training, cautions] },
];

/**
 * Fills the root with the pane. The page brings pane.css.
 * @param host undefined where the page is open by itself, outside Excel and the desk
 * @param why there is none
 */
export function mountPane(root: HTMLElement, host: PaneHost | undefined, why: Warning = NO_HOST): void {
  if (!host) {
    mountWithoutHost(root, why);
    return;
  }
  const frame = new Frame(root);
  const context = contextOf(host, frame);
  for (const { label, views } of GROUPS)
    frame.addGroup(
      label,
      views
        .filter((view) => view.isFor?.(host) ?? true)
        .map((view) => ({ ...view, build: () => view.build(context) })),
    );
  frame.show(start.id);
  void warn(host, frame);
}

function contextOf(host: PaneHost, frame: Frame): PaneContext {
  let last: Selection | undefined;
  const listeners: ((selection: Selection) => void)[] = [];
  const changed = (selection: Selection): void => {
    last = selection;
    frame.showSelection(selection);
    for (const listener of listeners) listener(selection);
  };
  host.watchSelection(changed);
  // Where nothing is selected yet, the first selection tells of itself.
  host.selection().then(changed, () => undefined);
  return {
    host,
    run: (what, work) => frame.run(what, work),
    say: (sentence) => frame.say(sentence),
    onSelection: (listener) => {
      listeners.push(listener);
      if (last) listener(last);
    },
    preferences: () => host.preferences().catch(() => USUAL_PREFERENCES),
  };
}

async function warn(host: PaneHost, frame: Frame): Promise<void> {
  try {
    frame.showWarnings(warningsOf(await host.facts()));
  } catch (error) {
    frame.sayTrouble(error);
  }
}

const NO_HOST: Warning = {
  message: "There is no workbook beside this page, so it can only look things up.",
  remedy:
    "In Excel, open it with the Rigsheet button of the Home tab. Without Excel, run npm start and press Pane.",
};

function mountWithoutHost(root: HTMLElement, why: Warning): void {
  const frame = new Frame(root);
  frame.showWarnings([why]);
  frame.addGroup(
    "Look up",
    [findFunction, cautions].map((view) => ({ ...view, build: () => view.build(undefined) })),
  );
  frame.show(findFunction.id);
}
