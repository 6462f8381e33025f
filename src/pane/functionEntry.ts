/** One function in the finder: what it answers, what it takes, an example for the selected cell. */
import type { Example, SheetFunction } from "../functions/core/declare";
import { argumentFacts, executed, fullName, pageOf } from "../help/facts";
import { button, make, paragraph } from "./dom";
import { placeInWords, type PaneContext } from "./view";

/** @param context undefined where there is no sheet to put an example into */
export function functionEntry(one: SheetFunction, context: PaneContext | undefined): HTMLLIElement {
  const details = make(
    "details",
    { className: "pane-function" },
    make("summary", {}, make("code", {}, fullName(one.name)), ` ${one.summary}`),
  );
  // Only what is looked at is made: there are many functions, and each has a long help.
  details.addEventListener("toggle", () => {
    if (details.open && details.childElementCount === 1) details.append(...bodyOf(one, context));
  });
  return make("li", {}, details);
}

function bodyOf(one: SheetFunction, context: PaneContext | undefined): HTMLElement[] {
  const { tasks, parameters, result, caution, examples } = one;
  return [
    ...(caution ? [paragraph(`Caution: ${caution}`, "pane-caution")] : []),
    make("ul", { className: "pane-tasks" }, ...tasks.map((task) => make("li", {}, task))),
    ...(parameters.length > 0
      ? [make("h2", {}, "Takes"), make("dl", {}, ...parameters.flatMap(argument))]
      : []),
    make("h2", {}, "Gives"),
    paragraph(`${result.help}${result.unit ? ` In ${result.unit}.` : ""}`),
    ...(result.columns ? [make("ul", {}, ...result.columns.map((text) => make("li", {}, text)))] : []),
    make("h2", {}, "Example"),
    ...examples.slice(0, 1).flatMap((example) => exampleOf(one, example, context)),
    make(
      "p",
      {},
      make(
        "a",
        { href: `help/${pageOf(one.name)}`, target: "_blank", rel: "noopener" },
        `Help of ${fullName(one.name)}, in a window of its own`,
      ),
    ),
  ];
}

function argument(parameter: SheetFunction["parameters"][number]): HTMLElement[] {
  const { name, help, unit, allowed, whenLeftOut } = argumentFacts(parameter);
  const facts = [unit && `in ${unit}`, allowed, parameter.optional && `left out: ${whenLeftOut}`];
  return [
    make("dt", {}, make("code", {}, name)),
    make("dd", {}, `${help} `, make("span", { className: "pane-quiet" }, facts.filter(Boolean).join("; "))),
  ];
}

function exampleOf(one: SheetFunction, example: Example, context: PaneContext | undefined): HTMLElement[] {
  const { formula, ours, source } = executed(one, example);
  const gives = ours.map((row) => row.join(" | ")).join("; ");
  return [
    make("p", {}, make("code", {}, `=${formula}`)),
    paragraph(`Gives ${gives}${one.result.unit ? ` ${one.result.unit}` : ""}. From ${source}.`, "pane-quiet"),
    ...(context ? [putter(formula, context)] : []),
  ];
}

/** A cell that holds something is overwritten only when the person says so. */
function putter(formula: string, { host, run, say }: PaneContext): HTMLElement {
  const put = (): void => {
    question.hidden = true;
    void run("Entering the example…", async () => {
      const { sheet, at } = await host.selection();
      await host.enterFormula(formula);
      return `The example is in ${placeInWords({ sheet, at })}.`;
    });
  };
  const words = make("p", {});
  const keep = button("Keep the cell", () => {
    question.hidden = true;
    ask.focus();
    say("The cell was left as it is.");
  });
  const question = make(
    "div",
    { className: "pane-question", hidden: true },
    words,
    make("div", { className: "pane-row" }, button("Replace it", put), keep),
  );
  const ask = button("Put the example into the selected cell", () => {
    question.hidden = true;
    void run("Looking at the selected cell…", async () => {
      const chosen = await host.selection();
      const holds = chosen.formula !== undefined || (chosen.result ?? "") !== "";
      if (!holds) {
        await host.enterFormula(formula);
        return `The example is in ${placeInWords(chosen)}.`;
      }
      words.textContent = `${placeInWords(chosen)} is not empty. Replace what is in it?`;
      question.hidden = false;
      keep.focus();
      return `${placeInWords(chosen)} is not empty: replace it, keep it, or select another cell.`;
    });
  });
  return make("div", {}, ask, question);
}
