/** Trying what this Excel does, on sheets of its own, and keeping the page that says it. */
import { RIGSHEET_VERSION } from "../../version";
import { button, make, paragraph } from "../dom";
import { ASKED_OF_YOU, summaryOfTrial, trialText, type Trial, type TrialLine } from "../trial";
import type { View } from "../view";

const WHAT =
  "Nobody who made Rigsheet had an Excel. This tries what it needs: functions, blank cells, arrays, protection, files, and the demonstrations against the figures of the desk. What comes out is a page to keep or to send; nothing is sent by itself.";
const MIND = [
  "It adds a sheet at the end of this workbook, for a moment also those of the demonstrations, and takes all of them away again. Your own sheets are left alone.",
  "What you could undo before is lost, and with AutoSave on colleagues may see the sheets meanwhile: best in a new, empty workbook.",
  "At the end it opens one small workbook; close it without saving. It takes a minute or two, on a slow machine some more.",
];

export const tryExcel: View = {
  id: "try",
  label: "Try this Excel",
  title: "Try this Excel",
  isFor: ({ tryExcel: tried }) => tried !== undefined,
  build: ({ host, run, say }) => {
    let last: Trial | undefined;
    const list = make("ul", { className: "pane-list pane-trial" });
    const kept = make("textarea", {
      id: "pane-trial-text",
      className: "pane-input pane-page",
      readOnly: true,
      rows: 10,
      spellcheck: false,
    });
    const page = make(
      "div",
      { hidden: true },
      make("h2", {}, "The page to keep or to send"),
      make("label", { htmlFor: kept.id }, "Text, to copy into a mail or a file"),
      kept,
      make(
        "div",
        { className: "pane-row" },
        button("Copy", () => void run("Copying…", () => copied(kept))),
        button(
          "As a workbook",
          () =>
            void run("Making the workbook…", async () => {
              await host.handOverTrial!(last!);
              return "The page is open as a workbook of its own, to save or print.";
            }),
        ),
      ),
      make("h2", {}, "For you to look at"),
      make("ul", {}, ...ASKED_OF_YOU.map((one) => make("li", {}, one))),
    );
    const withKeys = make("input", { type: "checkbox", id: "pane-trial-keys" });
    const question = make("div", { hidden: true, className: "pane-trial-question" });
    const undone = (): Promise<boolean> =>
      new Promise((resolve) => {
        const answer = (is: boolean) => (): void => {
          question.hidden = true;
          resolve(is);
        };
        question.replaceChildren(
          paragraph("Click the trial's sheet, press Ctrl+Z (on a Mac, Cmd+Z) once, then press here."),
          make(
            "div",
            { className: "pane-row" },
            button("I pressed it once", answer(true)),
            button("Leave it out", answer(false)),
          ),
        );
        question.hidden = false;
      });
    const showPage = (trial: Trial): string => {
      last = trial;
      list.replaceChildren(...trial.lines.map(item));
      kept.value = trialText(trial, RIGSHEET_VERSION);
      page.hidden = false;
      return summaryOfTrial(trial);
    };
    const start = button("Try it", () => void tried(), "pane-button pane-first");
    const tried = async (): Promise<void> => {
      start.disabled = true;
      list.replaceChildren();
      page.hidden = true;
      await run("Trying this Excel: leave the workbook alone until it is done…", async () =>
        showPage(
          await host.tryExcel!({
            tell: (line) => list.append(item(line)),
            ...(withKeys.checked && { undone }),
          }),
        ),
      );
      start.disabled = false;
    };
    return {
      body: [
        paragraph(WHAT),
        make("ul", {}, ...MIND.map((one) => make("li", {}, one))),
        make(
          "label",
          { htmlFor: withKeys.id, className: "pane-choice" },
          withKeys,
          " I stay here, and press Ctrl+Z once when I am asked to",
        ),
        start,
        question,
        list,
        page,
      ],
      shown: () => {
        const interrupted = last ? undefined : host.interruptedTrial?.();
        if (interrupted) say(showPage(interrupted));
      },
    };
  },
};

const item = ({ what, verdict, found, read }: TrialLine): HTMLLIElement =>
  make(
    "li",
    { className: `pane-trial-${verdict.replace(" ", "-")}` },
    make("strong", {}, verdict),
    " ",
    make("strong", {}, what),
    `: ${found}`,
    ...(read === undefined ? [] : [paragraph(read, "pane-quiet")]),
  );

async function copied(text: HTMLTextAreaElement): Promise<string> {
  text.select();
  try {
    await navigator.clipboard.writeText(text.value);
    return "The page is on the clipboard.";
  } catch {
    // Excel's browser may not allow it; the text is marked, so the keys do.
    text.focus();
    return "The text is marked: press Ctrl+C (on a Mac, Cmd+C).";
  }
}
