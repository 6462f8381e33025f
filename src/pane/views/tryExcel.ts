/** Trying what this Excel does, on sheets of its own, and keeping the page that says it. */
import { RIGSHEET_VERSION } from "../../version";
import { button, make, paragraph } from "../dom";
import { ASKED_OF_YOU, summaryOfTrial, trialText, type Trial, type TrialLine } from "../trial";
import type { View } from "../view";

export const tryExcel: View = {
  id: "try",
  label: "Try this Excel",
  title: "Try this Excel",
  isFor: ({ tryExcel: tried }) => tried !== undefined,
  build: ({ host, run }) => {
    const list = make("ul", { className: "pane-trial" });
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
    let last: Trial | undefined;
    const tried = (): void => {
      list.replaceChildren();
      page.hidden = true;
      void run("Trying this Excel: leave the workbook alone until it is done…", async () => {
        last = await host.tryExcel!((line) => list.append(item(line)));
        kept.value = trialText(last, RIGSHEET_VERSION);
        page.hidden = false;
        return summaryOfTrial(last);
      });
    };
    return {
      body: [
        paragraph(
          "Nobody who made Rigsheet had an Excel. This tries what it needs: functions, blank cells, arrays, protection, files, and the five demonstrations against the figures of the desk. It works on sheets of its own, takes them away again, and at the end opens one small workbook. A minute or two, best in an empty workbook.",
        ),
        button("Try it", tried, "pane-button pane-first"),
        list,
        page,
      ],
    };
  },
};

const item = ({ what, verdict, found }: TrialLine): HTMLLIElement =>
  make(
    "li",
    { className: `pane-trial-${verdict.replace(" ", "-")}` },
    make("strong", {}, verdict),
    ` ${what}: ${found}`,
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
